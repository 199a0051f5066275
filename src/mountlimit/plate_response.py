"""What the mount does under the loads by the plate model: movement, bolt forces, forces in cuts."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np

from . import plate_fasteners, pulled, shaft_line, structure
from .case import BoltForces, Displacement, Loads, Response, SectionForces
from .drivefile import DriveFile
from .formulas import rigid, tipping
from .model import Array, Drive, Number, PullTest
from .mounting import AXES, Beyond, BoltPlane
from .plate_reading import LETTERS, Line, Settled, settle
from .plate_route import Route, with_plates
from .plates import Answer, readings
from .plates.ties import rigid_rows
from .structure import refuse_unbalanced
from .worked import Value

NAME = "mount and its joint (plate model)"


def solve(drive: Drive, loads: Loads) -> Response:
    """Give forces in the cuts, movement at the sprocket and what every fastener takes."""

    @cache
    def settled() -> Settled:
        found = settle(drive, loads)
        refuse_unbalanced(_balance(found))
        return found

    return Response(
        sections=lambda: sections(drive, loads, settled), plates=settled,
        displacements=lambda: (
            *displacements_of(drive, loads, settled()), shaft_line.at_sprocket(drive, loads)
        ),
        bolts=lambda: _bolts(drive, settled()), balance=lambda: _balance(settled()),
        motor_bolts=lambda: plate_fasteners.motor_bolts(settled()),
        screws=lambda: plate_fasteners.screws(settled()),
        rods=lambda: plate_fasteners.rods(settled()), welds=lambda: plate_fasteners.welds(settled()),
    )  # fmt: skip


def sections(
    drive: Drive, loads: Loads, settled: Callable[[], Settled] | None = None
) -> tuple[SectionForces, ...]:
    """Give the forces in every cut; the contact is settled only where supports share the load."""
    found = []
    for index, cut in enumerate(drive.mount.cuts):
        if cut.beyond is None:
            found.append(structure.section_forces(drive, loads, index))
        else:
            settled = settled or cache(lambda: settle(drive, loads))
            found.append(_shared_forces(drive, index, cut.beyond, settled()))
    return tuple(found)


def displacements_of(
    drive: Drive, loads: Loads, settled: Settled | None = None
) -> tuple[Displacement, ...]:
    """Give the movement at the sprocket from the mount with its joint, and from the frame member.

    What the motor's own weight does is left out: it hangs there when the sprockets are lined up.
    """
    parts = model_parts(drive, loads, settled)
    return structure.softened(drive, parts, *pulled.factors(drive, "plates", as_tested))


def model_parts(
    drive: Drive, loads: Loads, settled: Settled | None = None
) -> tuple[Displacement, ...]:
    """Give the movement of mount and joint together, and of the frame, as the model has it."""
    pull = replace(loads, weight=(0.0, 0.0, 0.0))
    weighs = any(np.any(w) for w in loads.weight)
    together = _six(drive, settled or settle(drive, loads), "")
    if weighs:
        alone = _six(
            drive, settle(drive, structure.weight_only(loads)), ", the motor's weight alone"
        )
        less = [rigid.moved_by_pull] * 3 + [rigid.turned_by_pull] * 3
        together = [f(a, b) for f, a, b in zip(less, together, alone, strict=True)]
    found = [Displacement(name=NAME, move=tuple(together[:3]), turn=tuple(together[3:]))]
    if drive.frame.span is not None:
        found.append(structure.frame_part(drive, pull))
    return tuple(found)


_PLATED: deque[tuple[DriveFile, Route | None]] = deque(maxlen=8)  # of files as they were pulled


def as_tested(test: PullTest) -> tuple[Drive, pulled.Parts]:
    """Give the drive as it was pulled, its plate model behind it; by beams where it has none."""
    drive = test.tested
    if drive.plates is None:
        known = next((p for p in _PLATED if p[0] is test.file), None)
        if known is None:
            known = (test.file, with_plates(test.file).plates)
            _PLATED.append(known)
        drive = replace(drive, plates=known[1])
    if drive.plates is None:
        return drive, lambda d, x: structure.model_parts(d, replace(x, weight=(0.0, 0.0, 0.0)))
    return drive, model_parts


def _six(drive: Drive, settled: Settled, words: str) -> list[Number]:
    """Give the three movements and turns of the sprocket point, rigid with the motor."""
    at = rigid_rows(np.array([0.0, 0.0, float(drive.shaft.face_overhang)]))
    rows = [at @ answer.motor for answer, _ in settled.groups]
    lines = [Line(f"Movement of the sprocket along {a}, mount and joint{words}", f"w_{a}", "m")
             for a in AXES]  # fmt: skip
    lines += [Line(f"Turn of the sprocket about {a}, mount and joint{words}", f"theta_{a}", "rad")
              for a in AXES]  # fmt: skip
    return settled.read(rows, lines)


def _bolts(drive: Drive, settled: Settled) -> BoltForces:
    """Give tension and shear of every frame bolt, prying included."""
    tension, first, second, net = [], [], [], []
    number = 0
    for plane in drive.mount.planes:
        numbers = tuple(range(number, number + len(plane.bolts)))
        if not numbers:
            continue
        pull = _net_pull(drive, settled, plane, numbers)
        for i in numbers:
            pulled, one, two = _bolt(settled, plane, i)
            tension.append(_true(drive, tipping.pulled_only(pulled)))
            first.append(one)
            second.append(two)
            net.append(pull)
        number += len(plane.bolts)
    return BoltForces(
        tension=tuple(tension), net_pull=tuple(net),
        shear=tuple(tipping.bolt_shear(a, b) for a, b in zip(first, second, strict=True)),
        shear_first=tuple(first), shear_second=tuple(second), contacts=(),
    )  # fmt: skip


def _true(drive: Drive, tension: Number) -> Number:
    """Give a frame bolt's tension with what the plate model may be off by."""
    if drive.mount.prying == 1.0:
        return tension
    return tipping.pried(tension, drive.mount.prying)


def _bolt(settled: Settled, plane: BoltPlane, i: int) -> list[Number]:
    """Give pull on the washer and both shears of one frame bolt."""
    out = _away_from_frame(settled, i)
    axes = [AXES.index(a) for a in (plane.first, plane.second)]
    rows = []
    for answer, _ in settled.groups:
        force = answer.supports.frame_bolts[i, :3]
        rows.append(np.array([out @ force, force[axes[0]], force[axes[1]]]))
    title = f"of frame bolt {i + 1}"
    lines = [
        Line(f"Pull on its washer {title}, prying included", "N_p", "N"),
        Line(f"Shear along {plane.first} {title}", "V_1", "N"),
        Line(f"Shear along {plane.second} {title}", "V_2", "N"),
    ]
    return settled.read(rows, lines)


def _away_from_frame(settled: Settled, bolt: int) -> Array:
    """Give the unit vector from the frame to the plate at a bolt."""
    model = settled.route.family.model
    part = model.frame_bolts[bolt]
    return np.asarray(-part.frame_side * model.facets[part.facet].axes[2])


def _net_pull(drive: Drive, settled: Settled, plane: BoltPlane, numbers: tuple[int, ...]) -> Number:
    """Give each bolt's share of what pulls a plane off the frame: bolts less contact."""
    beyond = Beyond(bolts=numbers, contacts=plane.contacts)
    out = _away_from_frame(settled, numbers[0])
    place = np.array([float(v) for v in plane.centre])
    rows = [(out @ _beyond(settled, a, beyond, place)[:3])[None] for a, _ in settled.groups]
    words = "" if len(drive.mount.planes) == 1 else f" {numbers[0] + 1} to {numbers[-1] + 1}"
    line = Line(f"Pull that lifts the joint off the frame, bolts{words}", "N_z", "N")
    count = Value(len(numbers), "bolts of the joint", "derived", "counted")
    return tipping.pulled_only(tipping.direct_tension(settled.read(rows, [line])[0], count))


def _shared_forces(drive: Drive, index: int, beyond: Beyond, settled: Settled) -> SectionForces:
    """Give the forces in a cut past which other supports share the load: what those beyond it take."""
    cut = drive.mount.cuts[index]
    place = np.array([float(v) for v in cut.place])
    rows = [_beyond(settled, answer, beyond, place) for answer, _ in settled.groups]
    lines = [
        Line(f"{'Force along' if i < 3 else 'Moment about'} {AXES[i % 3]} in the cut '{cut.name}'",
             LETTERS[i].lower(), "N" if i < 3 else "N*m") for i in range(6)
    ]  # fmt: skip
    found = settled.read(rows, lines)
    return structure.in_axes_of_cut(drive, index, tuple(found[:3]), tuple(found[3:]))


def _beyond(settled: Settled, answer: Answer, beyond: Beyond, place: Array) -> Array:
    """Give the wrench on the supports beyond a cut, about its place, per share: (6, shares)."""
    key = (beyond, tuple(place.tolist()))
    return answer.once(key, lambda: _wrench_beyond(settled, answer, beyond, place))


def _wrench_beyond(settled: Settled, answer: Answer, beyond: Beyond, place: Array) -> Array:
    family = settled.route.family
    chosen = readings.Chosen(
        bolts=beyond.bolts, welds=beyond.welds, struts=beyond.struts, spacers=beyond.spacers
    )
    total = readings.wrench_on(family.model, answer.supports, chosen, place)
    own = [i for i, c in enumerate(family.model.contacts) if c.number(i) in beyond.contacts]
    on = np.flatnonzero(np.isin(family.points.contact, own))
    total[:, 6 + on] -= readings.push_wrenches(family.points, place)[:, on]
    return total


def _balance(settled: Settled) -> Any:
    """Give what is left of loads and reactions, over the load, the worst of all loads."""
    model = settled.route.family.model
    place = np.asarray(model.motor_centre, float)
    everything = Beyond(
        bolts=tuple(range(len(model.frame_bolts))), welds=tuple(range(len(model.welds))),
        contacts=tuple(range(len(model.contacts))), struts=tuple(range(len(model.struts))),
    )  # fmt: skip
    reach = float(np.max(np.ptp(settled.route.family.mesh.points, axis=0)))
    scale = np.r_[np.ones(3), np.full(3, 1.0 / reach)]
    worst = 0.0
    for (answer, _), shares in zip(settled.groups, settled.shares, strict=True):
        left = shares[:, :6] - shares @ _beyond(settled, answer, everything, place).T
        size = np.maximum(np.abs(shares[:, :6] * scale).max(axis=1), 1e-12)
        worst = max(worst, float(np.max(np.abs(left * scale).max(axis=1) / size, initial=0.0)))
    return worst
