"""Numbers read off the plate model for a drive's loads: arrays for a search, worked lines for ``why``.

With the contact settled every answer is a sum of coefficients times the six loads on the motor; a
worked line prints that sum.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from .case import Loads
from .model import Array, Drive, Number
from .plate_route import Route
from .plates import Answer
from .plates.model import IntArray
from .structure import wrench
from .worked import DataSheet, Symbol, Value, is_recording, note

MOTOR = (0.0, 0.0, 0.0)
LETTERS = ("F_x", "F_y", "F_z", "M_x", "M_y", "M_z")
WORDS = ("force along x", "force along y", "force along z",
         "moment about x", "moment about y", "moment about z")  # fmt: skip
SOURCE = "plate model of this mount: six-node triangles, washers as springs, frame in contact"
# unit of the result -> of its coefficients per newton, per newton metre
PER = {"m": ("m/N", "1/N"), "rad": ("rad/N", "rad/(N*m)"), "N": ("-", "1/m"),
       "N*m": ("m", "-"), "Pa": ("1/m^2", "1/m^3")}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Line:
    """What a worked line says: title, letter and unit of the result."""

    title: str
    letter: str
    unit: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Settled:
    """The plate model under a drive's loads, contact settled for every one.

    ``loads`` are the six loads on the motor centre (numbers, or arrays that broadcast to ``shape``);
    ``groups`` are pairs of the answers used and where, as numbers into the flattened shape.
    """

    route: Route
    loads: tuple[Number, ...]
    shape: tuple[int, ...]
    groups: tuple[tuple[Answer, IntArray], ...]
    shares: tuple[Array, ...]
    ways: tuple[object, ...]  # load cases and chain angles: tells sets of loads apart

    def read(self, rows: Sequence[Array], lines: Sequence[Line]) -> list[Number]:
        """Give one number per row; ``rows`` has for each group an array (numbers, shares)."""
        if is_recording() and not self.shape:
            return [self._worked(row, line) for row, line in zip(rows[0], lines, strict=True)]
        found = np.empty((len(lines), int(np.prod(self.shape, dtype=int))))
        for own, (_, where), shares in zip(rows, self.groups, self.shares, strict=True):
            found[:, where] = own @ shares.T
        return [part.reshape(self.shape) if self.shape else float(part[0]) for part in found]

    def _worked(self, row: Array, line: Line) -> Number:
        answer = self.groups[0][0]
        bearing = answer.bearing(np.array([float(x) for x in self.loads]))
        coefficients = row[:6] + row[6:] @ bearing.forces
        mesh = self.route.family.mesh
        where = (
            f"{len(mesh.triangles)} triangles, {int(bearing.points.sum())} of "
            f"{len(bearing.points)} contact cells bear"
        )
        symbols: list[Symbol] = []
        values: dict[str, Any] = {}
        terms, total = [], 0.0
        for i, (load, letter, words) in enumerate(zip(self.loads, LETTERS, WORDS, strict=True)):
            if load == 0:
                continue
            name, unit = f"c_{i + 1}", PER[line.unit][0 if i < 3 else 1]
            symbols += [Symbol(letter, letter, "N" if i < 3 else "N*m"), Symbol(name, name, unit)]
            values |= {letter: load, name: Value(coefficients[i], f"per {words}", "model", where)}
            terms.append(f"{name} * {letter}")
            total += float(coefficients[i]) * float(load)
        sheet = DataSheet(line.title, f"{line.letter} = {' + '.join(terms) or '0'}", tuple(symbols),
                          Symbol("", line.letter, line.unit), SOURCE)  # fmt: skip
        return note(sheet, values, total)


def settle(drive: Drive, loads: Loads) -> Settled:
    """Settle the plate model's contact under every load case."""
    route: Route = drive.plates
    force, moment = wrench(drive, loads, MOTOR)
    six = (*force, *moment)
    shape = np.broadcast_shapes(*(np.shape(x) for x in six), np.shape(loads.torque))
    flat = np.stack([np.broadcast_to(np.asarray(x, float), shape).ravel() for x in six], axis=1)
    groups = _groups(drive, route, loads, shape)
    return Settled(
        route=route, loads=six, shape=shape, groups=groups,
        shares=tuple(answer.shares(flat[where]) for answer, where in groups),
        ways=(loads.groups, tuple(np.round(np.ravel(np.asarray(loads.pull_angle, float)), 6))),
    )  # fmt: skip


def _groups(
    drive: Drive, route: Route, loads: Loads, shape: tuple[int, ...]
) -> tuple[tuple[Answer, IntArray], ...]:
    """Give the answers by which each load is answered: held loads see the creep modulus."""
    held = np.array([g == "hold" for g in loads.groups])
    count = int(np.prod(shape, dtype=int))
    if not shape or held.all() or not held.any():
        return ((route.answer(drive, bool(held[0])), np.arange(count)),)
    marks = np.broadcast_to(held.reshape(-1, *(1,) * (len(shape) - 1)), shape).ravel()
    return (
        (route.answer(drive, False), np.flatnonzero(~marks)),
        (route.answer(drive, True), np.flatnonzero(marks)),
    )
