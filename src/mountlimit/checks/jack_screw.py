"""Jack screw: the screw itself in compression, and the mount's edge under its tip.

The screw stops the mount along the slots one way, against the pull of the chain.  Its strength is
looked at as if the bolts held nothing; what it leaves to them is in ``bolt_slip``.  How hard it was
driven against the mount, and the threads that hold it, are not known and not checked.
"""

from __future__ import annotations

import math
from functools import reduce

import numpy as np

from .. import shaft_line
from ..case import BoltForces, Case, Check, Row
from ..formulas import jack, rigid, threads, usage
from ..model import Drive, JackScrew, Number
from ..mounting import BoltPlane
from ..worked import Value

NO_RADIUS = Value(0.0, "distance of the bolt", "derived", "a single bolt stands in the middle")
NO_SUM = Value(1.0, "sum of squared distances", "derived", "a single bolt: nothing is divided")

IDLE = 0.1  # of the pull along the slots, below which the screw is as good as idle


def has_jack(drive: Drive) -> bool:
    """Say that a check speaks of drives with a jack screw."""
    return drive.fixings.jack is not None


def along_and_pull(case: Case) -> tuple[Number, Number]:
    """Give the force of the mount on its bolts along the slots, and the chain's own part of it, N."""
    along, _ = _ways(case.drive, case.response.bolts)
    loads, axis = case.loads, axis_of_slots(case.drive)
    if axis == "z":
        pull: Number = 0.0  # the chain never pulls along the shaft
    else:
        part = rigid.across_part if axis == "x" else rigid.along_part
        pull = part(shaft_line.pull_on_mount(case.drive, loads), loads.pull_angle)
    return reduce(rigid.sum_of_two, along), pull


def axis_of_slots(drive: Drive) -> str:
    """Give the axis, "x", "y" or "z", along which the slots of the frame bolts run."""
    plane = _plane(drive)
    return plane.first if drive.fixings.slots_along else plane.second


def stands_idle(drive: Drive) -> bool:
    """Tell whether the slots run across every pull of the chain, so that the screw stops nothing."""
    ways = {"x": math.cos, "y": math.sin}
    axis = axis_of_slots(drive)
    return all(axis not in ways or abs(ways[axis](angle)) < IDLE for _, angle in drive.chain.pulls)


def left_to_friction(case: Case, screw: JackScrew) -> tuple[Number, ...]:
    """Give the shear that friction must hold at every bolt, N, beside the screw.

    Any force from nothing to the pull may stand at the screw, so whichever of the two lets the worst
    bolt off more counts: a screw can only help.
    """
    bolts, plane = case.response.bolts, _plane(case.drive)
    total, pull = along_and_pull(case)
    taken = jack.jack_share(total, pull)
    count = case.drive.fixings.bolts.number
    radii, polar = _places(plane)
    held = [
        jack.held_shear(a, c, taken, count, screw.off, r, polar)
        for a, c, r in zip(*_ways(case.drive, bolts), radii, strict=True)
    ]
    helps = reduce(np.maximum, held) <= reduce(np.maximum, bolts.shear)
    if np.ndim(helps):
        return tuple(np.where(helps, h, v) for h, v in zip(held, bolts.shear, strict=True))
    return tuple(held) if helps else bolts.shear


def _plane(drive: Drive) -> BoltPlane:
    """Give the one plane with frame bolts; forms with more have no jack screw."""
    return next(p for p in drive.mount.planes if p.bolts)


def _ways(drive: Drive, bolts: BoltForces) -> tuple[tuple[Number, ...], tuple[Number, ...]]:
    """Give the shears along the slots and across them."""
    both = (bolts.shear_first, bolts.shear_second)
    return both if drive.fixings.slots_along else both[::-1]


def _places(plane: BoltPlane) -> tuple[list[Value], Value]:
    """Give the distance of every bolt from their middle, and the sum of the squares."""
    places = np.array([[float(v) for v in b] for b in plane.bolts])
    radii = np.hypot(*(places - places.mean(axis=0)).T)
    if not radii.any():
        return [NO_RADIUS] * len(radii), NO_SUM
    words = "from the places of the frame bolts"
    each = [Value(r, f"bolt {i}, to the middle", "derived", words) for i, r in enumerate(radii, 1)]
    return each, Value(float(radii @ radii), "sum of squared distances", "derived", words)


def rows(case: Case) -> list[Row]:
    """Compare the force on the screw with its proof load and with the yield of the edge it bears on."""
    screw = case.drive.fixings.jack
    assert screw is not None  # ``has_jack``
    plane = _plane(case.drive)
    material = case.drive.mount.substance(plane.of_second)
    asked = jack.jack_force(*along_and_pull(case))
    proof = threads.proof_load(screw.grade.proof_stress, screw.thread.stress_area)
    edge = jack.crushing_force(
        material.yield_strength, material.compressive_over_tensile,
        jack.tip_area(screw.tip_diameter, plane.thickness),
    )  # fmt: skip
    return [
        Row(station=words, demand=asked, capacity=hold, quantity="force",
            utilisation=usage.utilisation(asked, hold))
        for words, hold in (("jack screw, pressed along", proof), ("the mount's edge under its tip", edge))
    ]  # fmt: skip


CHECKS = (
    Check(
        name="jack_screw", part="jack screw", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="the screw is bent, or its tip has sunk into the mount's edge; the chain goes slack",
        applies=has_jack, rows=rows,
    ),
)  # fmt: skip
