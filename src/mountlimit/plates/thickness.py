"""Thickness sweeps: one mesh and one reduced basis for a whole range of thicknesses.

The middle of the range (geometric mean) is laid out; what is held there stands in ``family``.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from .answer import Answer, Reading
from .error import PlateError
from .family import family
from .model import FloatArray, PlateModel
from .scales import Scales, Varying
from .solution import bolt_forces, moved
from .stress import equivalent
from .ties import rigid_rows

SNAPSHOTS = 6

Load = Sequence[tuple[ArrayLike, ArrayLike]]


@dataclass(frozen=True, kw_only=True)
class SweepResponse:
    """Responses over thickness and load: the first axis is the thickness, the second the load.

    Movement is that of the motor's rigid body at the first point of each load. Rings hold the
    larger equivalent stress of the two faces, per bolt, on the ring stress is judged by: one
    thickness outside the washer, half where that meets a corner or a spacer.
    """

    thickness: FloatArray
    displacement: FloatArray
    rotation: FloatArray
    bolt_tension: FloatArray
    bolt_shear: FloatArray
    frame_ring: FloatArray
    motor_ring: FloatArray
    contact_force: FloatArray


def sweep(
    model: PlateModel,
    thicknesses: ArrayLike,
    loads_on_motor: Sequence[Load],
    facets: Sequence[int] | None = None,
    mesh_size: float | None = None,
    strength_ratio: float = 1.0,
) -> SweepResponse:
    """Give responses for many thicknesses.

    Parameters
    ----------
    thicknesses : t [m]
        of the first facet that varies; all facets that vary keep their ratio to it
    loads_on_motor : loads
        each a sequence of (wrench, point) that act together
    facets : numbers
        of the facets whose thickness varies, all without it
    mesh_size : h [m]
        element size
    strength_ratio : S [-]
        compressive over tensile yield strength, for the rings

    Raises
    ------
    PlateError
        when a thickness is not above nothing, or the model cannot be meshed
    """
    wanted = np.atleast_1d(np.asarray(thicknesses, float))
    if not np.all(wanted > 0.0):
        raise PlateError("thickness", "every one must be above nothing")
    chosen = tuple(range(len(model.facets))) if facets is None else tuple(facets)
    middle = float(np.sqrt(wanted.min() * wanted.max()))
    middling = at_thickness(model, middle, chosen)
    marks = np.isin(np.arange(len(model.facets)), chosen)
    still = np.zeros(len(marks), bool)
    varying = Varying(thickness=marks, modulus=still, second=still)
    scales = wanted / middle
    places = snapshot_scales(float(scales.min()), float(scales.max()), SNAPSHOTS)
    mounts = family(middling, varying, [Scales(thickness=float(t)) for t in places], mesh_size)
    centre = np.asarray(model.motor_centre, float)
    load = np.array([sum(moved(w, p, centre) for w, p in each) for each in loads_on_motor])
    at = rigid_rows(np.array([np.asarray(each[0][1], float) for each in loads_on_motor]) - centre)
    mounts.lay_rings([float(t) for t in scales])
    rows = [
        _row(middling, mounts.at(Scales(thickness=float(t))), load, at, strength_ratio)
        for t in scales
    ]
    columns = [np.array(column) for column in zip(*rows, strict=True)]
    names = [f.name for f in dataclasses.fields(SweepResponse)][1:]
    return SweepResponse(thickness=wanted, **dict(zip(names, columns, strict=True)))


def at_thickness(model: PlateModel, thickness: float, facets: Sequence[int]) -> PlateModel:
    """Give a model whose facets named have their thickness scaled so that the first has this one."""
    scale = thickness / model.facets[facets[0]].thickness
    changed = [
        dataclasses.replace(facet, thickness=facet.thickness * scale) if i in facets else facet
        for i, facet in enumerate(model.facets)
    ]
    return dataclasses.replace(model, facets=changed)


def snapshot_scales(low: float, high: float, count: int) -> FloatArray:
    """Give Chebyshev points in the logarithm of a scale; one where the range is a point."""
    if high / low < 1.0 + 1e-9:
        return np.array([low])
    angle = (2.0 * np.arange(count) + 1.0) * np.pi / (2.0 * count)
    middle, half = 0.5 * np.log(high * low), 0.5 * np.log(high / low)
    return np.asarray(np.exp(middle + half * np.cos(angle)))


def _row(
    model: PlateModel, answer: Answer, load: FloatArray, at: FloatArray, strength_ratio: float
) -> tuple[FloatArray, ...]:
    """Give movement, turn, bolt forces, rings and contact forces at one thickness, per load."""
    shares = answer.shares(load)
    movement = np.einsum("lij,jk,lk->li", at, answer.motor, shares)
    tension, shear = bolt_forces(model, answer.supports.frame_bolts @ shares.T)
    ring = _largest(answer.reading("ring"), shares, strength_ratio)
    frame = len(model.frame_bolts)
    return (
        movement[:, :3], movement[:, 3:], tension.T, np.moveaxis(shear, -1, 0),
        ring[:, :frame], ring[:, frame:], shares[:, 6:],
    )  # fmt: skip


def _largest(reading: Reading, shares: FloatArray, strength_ratio: float) -> FloatArray:
    """Give the largest equivalent of the two faces on every ring, (loads, bolts)."""
    stress = np.moveaxis(reading.rows @ shares.T, 1, -1)
    faces = [stress[..., :3] + sign * stress[..., 3:] for sign in (1.0, -1.0)]
    worst = np.maximum(*(equivalent(face, strength_ratio) for face in faces))
    found = np.full((reading.samples.count, len(shares)), -np.inf)
    np.maximum.at(found, reading.samples.owner, worst)
    return np.where(np.isinf(found), np.nan, found).T
