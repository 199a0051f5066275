"""Stress by the plate model where it can be judged: round washers, along lines, at free edges.

A search over many currents looks at the places that govern at some of them; where few loads are
asked for, every place is looked at.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from .case import Case
from .model import Array, Number
from .plate_reading import Line, Settled
from .plates import Reading
from .plates.model import IntArray
from .worked import is_recording

FEW = 64  # loads at which every place is looked at
SAMPLED = 160  # loads that tell which places govern
Criterion = Callable[[Number, Number, Number, Number], Number]  # sigma_x, sigma_y, tau_xy, ratio
PLACES = {
    "ring": "plate round {}",
    "line": "plate along line {}",
    "edge": "free edge or hole of {}",
}


@dataclass(frozen=True, slots=True)
class Peak:
    """The largest stress of one kind of place."""

    station: str
    stress: Number


def peaks(
    case: Case, criterion: Criterion, kinds: tuple[str, ...], second: bool = False
) -> list[Peak]:
    """Give the largest stress of each kind of place, in Pa by ``criterion``; none without plates.

    Of the facets of the mount's own material, or of its ``second`` one.
    """
    settled: Settled | None = case.response.plates
    if settled is None:
        return []
    mount = case.drive.mount
    ratio = mount.substance(second).compressive_over_tensile
    facets = settled.route.family.model.facets
    others = () if mount.second is None else mount.second_facets  # none: all of one material
    own = np.array([(f.name in others) == second for f in facets])
    found = []
    for kind in kinds:
        chosen = np.flatnonzero(own[settled.groups[0][0].reading(kind).samples.facet])
        if chosen.size:
            found.append(_peak(settled, kind, chosen, criterion, ratio))
    return found


def _peak(
    settled: Settled, kind: str, chosen: IntArray, criterion: Criterion, ratio: Number
) -> Peak:
    count = int(np.prod(settled.shape, dtype=int))
    worst = np.empty(count)
    for (answer, where), shares in zip(settled.groups, settled.shares, strict=True):
        reading = answer.reading(kind)
        places = chosen
        if len(where) > FEW:
            places = _governing(settled, kind, chosen, reading, shares, criterion, ratio)
        worst[where] = _faces(reading.rows[places], shares, criterion, ratio).max(axis=(0, 1))
    if settled.shape:
        return Peak(PLACES[kind].format("the bolts"), worst.reshape(settled.shape))
    return _named(settled, kind, chosen, criterion, ratio, float(worst[0]))


def _faces(rows: Array, shares: Array, criterion: Criterion, ratio: Number) -> Array:
    """Give the stress by the criterion on both faces: (2, places, loads)."""
    stress = rows @ shares.T
    faces = [[stress[:, i] + sign * stress[:, 3 + i] for i in range(3)] for sign in (1.0, -1.0)]
    return np.array([criterion(x, y, xy, ratio) for x, y, xy in faces])


def _governing(
    settled: Settled,
    kind: str,
    chosen: IntArray,
    reading: Reading,
    shares: Array,
    criterion: Criterion,
    ratio: Number,
) -> IntArray:
    """Give the places that govern under some of the loads, found once for a reduced model."""
    known = settled.route.governing
    key = (kind, id(reading.samples), int(chosen[0]), criterion.__name__, settled.ways)
    if key not in known:
        step = max(1, len(shares) // SAMPLED)
        found = _faces(reading.rows[chosen], shares[::step], criterion, ratio).max(axis=0)
        known[key] = chosen[np.unique(found.argmax(axis=0))]
    return known[key]


def _named(
    settled: Settled, kind: str, chosen: IntArray, criterion: Criterion, ratio: Number, worst: float
) -> Peak:
    """Name the governing place under one load; while recording, work its stress out step by step."""
    answer = settled.groups[0][0]
    reading, model = answer.reading(kind), settled.route.family.model
    both = _faces(reading.rows[chosen], settled.shares[0], criterion, ratio)[:, :, 0]
    face, first = (int(i) for i in np.unravel_index(int(both.argmax()), both.shape))
    at = int(chosen[first])
    samples = reading.samples
    facet = model.facets[int(samples.facet[at])]
    owner = int(samples.owner[at])
    names = [name for name, _ in model.named_bolts]
    what = {"ring": names, "line": [str(i + 1) for i in range(samples.count)]}.get(kind)
    place = tuple(1000 * v for v in samples.place[at])
    station = f"{facet.name}, {PLACES[kind].format(what[owner] if what else facet.name)} by the plate model"
    if not is_recording():
        return Peak(station, worst)
    sign = 1.0 if face == 0 else -1.0
    rows = reading.rows[at, :3] + sign * reading.rows[at, 3:]
    where = f"at x {place[0]:.1f}, y {place[1]:.1f}, z {place[2]:.1f} mm on the {'first' if face == 0 else 'second'} face"
    lines = [
        Line(f"Stress along the {facet.name}'s first axis, {where}", "s_x", "Pa"),
        Line(f"Stress along its second axis, {where}", "s_y", "Pa"),
        Line(f"Shear stress, {where}", "t_xy", "Pa"),
    ]
    x, y, xy = settled.read([rows], lines)
    return Peak(station, criterion(x, y, xy, ratio))
