"""A reduced basis: the mount's answers at any thickness, modulus and joint stiffness from a few solves.

The stiffness is a sum of parts that each grow in a known way (``scales``); every part is projected
once on what the answers at a few snapshots span, and on the six rigid movements, so that loads and
reactions close at any scale.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from scipy import sparse
from scipy.linalg import cho_factor, cho_solve

from .assemble import System
from .model import FloatArray
from .scales import Growth, Scales, total
from .solution import solve_columns
from .ties import rigid_rows

DROPPED = 1e-13  # shapes with less than this share of the largest square are left out


@dataclass(frozen=True, kw_only=True)
class Reduced:
    """The parts (n, k, k) with how each grows, and the load columns (k, loads)."""

    parts: FloatArray
    growth: tuple[tuple[int, Growth], ...]
    load: FloatArray

    def coordinates(self, scales: Scales) -> FloatArray:
        """Give the reduced answers to all load columns, shape (k, loads)."""
        factors = [scales.factor(power, grows) for power, grows in self.growth]
        stiffness = np.tensordot(factors, self.parts, axes=1)
        factor = cho_factor(stiffness, check_finite=False)
        found = cho_solve(factor, self.load)
        return np.asarray(found + cho_solve(factor, self.load - stiffness @ found))


def reduce(
    system: System, load: FloatArray, snapshots: Sequence[Scales], with_contact: Sequence[bool]
) -> tuple[Reduced, FloatArray]:
    """Solve at the snapshots, reduce everything to what those answers span; give the shapes too.

    ``with_contact`` tells at which of them the unit contact forces are solved as well. The shapes
    are columns in all nodal unknowns.

    Raises
    ------
    PlateError
        when part of the mount is not held
    """
    found = []
    for scales, contact in zip(snapshots, with_contact, strict=True):
        columns = load if contact else load[:, :6]
        stiffness = sparse.csc_array(total(system.terms, scales))
        found.append(solve_columns(stiffness, columns, refine=False))
    rigid = np.linalg.qr(_rigid(system))[0]
    strained = np.hstack(found)
    strained -= rigid @ (rigid.T @ strained)
    shapes = np.hstack([rigid, _independent(strained)])
    parts = np.array([shapes.T @ (term.matrix @ shapes) for term in system.terms])
    for part, term in zip(parts, system.terms, strict=True):
        # A rigid movement strains no plate: not even by rounding.
        if term.grows in ("plate", "second"):
            part[:6] = part[:, :6] = 0.0
    reduced = Reduced(
        parts=0.5 * (parts + parts.transpose(0, 2, 1)),
        growth=tuple((term.power, term.grows) for term in system.terms),
        load=shapes.T @ load,
    )
    return reduced, np.asarray(system.ties.expand @ shapes)


def _rigid(system: System) -> FloatArray:
    """Give the six rigid movements of the whole mount in the kept unknowns."""
    points = np.vstack([system.mesh.points, system.ties.bodies])
    centre = system.ties.bodies[0]
    nodal = rigid_rows(system.mesh.points - centre).reshape(-1, 6)
    expand = system.ties.expand
    bodies = rigid_rows(system.ties.bodies - centre).reshape(-1, 6)
    kept = expand.shape[1]
    size = float(np.max(np.ptp(points, axis=0)))
    # Kept unknowns that are nodal ones stand alone in their row with a one.
    found = np.zeros((kept, 6))
    found[kept - len(bodies) :] = bodies
    alone = np.diff(expand.indptr) == 1
    rows = np.flatnonzero(alone)
    columns = expand.indices[expand.indptr[:-1][alone]]
    ones = np.isclose(expand.data[expand.indptr[:-1][alone]], 1.0) & (columns < kept - len(bodies))
    found[columns[ones]] = nodal[rows[ones]]
    return np.asarray(found / np.r_[np.ones(3), np.full(3, size)])


def _independent(columns: FloatArray) -> FloatArray:
    """Give columns, near enough orthonormal, that span the same shapes without the repeats."""
    columns = columns / np.linalg.norm(columns, axis=0)
    values, turns = np.linalg.eigh(columns.T @ columns)
    kept = values > DROPPED * values[-1]
    return np.asarray(columns @ (turns[:, kept] / np.sqrt(values[kept])))
