"""The bolted joint between mount and frame: how the bolts share the load, and how much it gives.

The mount tips about the edge of its bearing surface (contact pushes only), so each bolt's lever is
its distance from that edge; shear is shared elastically.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from .formulas import bolt_group, layout, tipping
from .formulas import joint as joint_formulas
from .model import BoltForces, BoltPlane, Drive, Number

SHEAR_SHARE = 0.5  # of the normal stiffness, per bolt (common practice, no source)


def _axes(plane: BoltPlane) -> tuple[int, int, int, float]:
    f, s, n = ("xyz".index(a) for a in (plane.first, plane.second, plane.normal))
    handed = 1.0 if (f, s, n) in ((0, 1, 2), (1, 2, 0), (2, 0, 1)) else -1.0
    return f, s, n, handed


def _pick(condition: Any, yes: Number, no: Number) -> Number:
    if np.ndim(condition) == 0:
        return yes if condition else no
    return np.where(condition, yes, no)


def square_sum(values: list[Number]) -> Number:
    """Give the sum of squares of lengths."""
    return sum(v * v for v in values)


def levers(plane: BoltPlane) -> dict[str, list[Number]]:
    """Give each bolt's lever from the four edges of the bearing surface, and their square sums."""
    firsts = [b[0] for b in plane.bolts]
    seconds = [b[1] for b in plane.bolts]
    low, high = min(seconds), max(seconds)
    return {
        "second from low": [layout.pivot_lever(s, low, plane.edge_second) for s in seconds],
        "second from high": [layout.pivot_lever(high, s, plane.edge_second) for s in seconds],
        "first from low": [layout.pivot_lever(f, 0.0, plane.half_first) for f in firsts],
        "first from high": [layout.pivot_lever(-f, 0.0, plane.half_first) for f in firsts],
    }


def bolt_forces(plane: BoltPlane, force: Any, moment: Any) -> BoltForces:
    """Share a wrench (about the plane's centre, N and N*m) over the frame bolts."""
    f, s, n, handed = _axes(plane)
    count = len(plane.bolts)
    arm = levers(plane)
    polar = square_sum([v for b in plane.bolts for v in b])
    lifts_second = moment[f] * handed > 0
    lifts_first = moment[s] * handed < 0
    direct = tipping.direct_tension(force[n], count)
    tension, one, two, shear = [], [], [], []
    square = {name: square_sum(values) for name, values in arm.items()}
    for i, (at_first, at_second) in enumerate(plane.bolts):
        lever_2 = _pick(lifts_second, arm["second from low"][i], arm["second from high"][i])
        sum_2 = _pick(lifts_second, square["second from low"], square["second from high"])
        lever_1 = _pick(lifts_first, arm["first from low"][i], arm["first from high"][i])
        sum_1 = _pick(lifts_first, square["first from low"], square["first from high"])
        tension.append(
            tipping.bolt_tension(
                direct,
                bolt_group.moment_tension(tipping.size_of(moment[f]), lever_2, sum_2),
                bolt_group.moment_tension(tipping.size_of(moment[s]), lever_1, sum_1),
            )
        )
        if polar > 0:
            turn_1 = bolt_group.torsional_shear(moment[n], -at_second, polar)
            turn_2 = bolt_group.torsional_shear(moment[n], at_first, polar)
        else:
            turn_1 = turn_2 = 0.0
        # right-handed about the normal: (f, s) may be a left-handed pair
        one.append(tipping.shear_part(bolt_group.direct_shear(force[f], count), turn_1, handed))
        two.append(tipping.shear_part(bolt_group.direct_shear(force[s], count), turn_2, handed))
        shear.append(tipping.bolt_shear(one[-1], two[-1]))
    contact = sum(tension[1:], start=tension[0]) - force[n]
    return BoltForces(
        tension=tuple(tension), shear=tuple(shear), shear_first=tuple(one),
        shear_second=tuple(two), contact=contact,
    )  # fmt: skip


def balance(plane: BoltPlane, bolts: BoltForces, force: Any, moment: Any) -> Number:
    """Give the largest unbalanced part of the joint over the applied load."""
    f, s, n, handed = _axes(plane)
    size = np.sqrt(sum(np.square(c) for c in force)) + 1e-12
    left = [
        sum(bolts.shear_first) - force[f],
        sum(bolts.shear_second) - force[s],
        sum(bolts.tension) - bolts.contact - force[n],
    ]
    about = sum(
        handed * (b[0] * two - b[1] * one)
        for b, one, two in zip(plane.bolts, bolts.shear_first, bolts.shear_second, strict=True)
    )
    if len(plane.bolts) > 1:
        reach = max(np.hypot(*b) for b in plane.bolts)
        left.append((about - moment[n]) / reach)
    return np.max(np.abs(np.array([np.asarray(x, float) for x in left])), axis=0) / size


def give(
    drive: Drive, plane: BoltPlane, force: Any, moment: Any, modulus: Number
) -> tuple[Any, Any]:
    """Give movement and turn of the mount on its frame bolts.

    Each bolted point is the given joint stiffness in series with the mount's own material under
    the washer (pressure cone); in-plane stiffness is half of it.
    """
    f, s, n, _ = _axes(plane)
    fixings = drive.fixings
    cone = joint_formulas.frustum_stiffness(
        modulus, fixings.bolts.thread.diameter, drive.mount.thickness, fixings.washer_diameter
    )
    normal = joint_formulas.spring_series(fixings.joint_stiffness, cone)
    arm = levers(plane)
    second = min(square_sum(arm["second from low"]), square_sum(arm["second from high"]))
    first = min(square_sum(arm["first from low"]), square_sum(arm["first from high"]))
    polar = square_sum([v for b in plane.bolts for v in b])
    count = len(plane.bolts)
    move: list[Number] = [0.0, 0.0, 0.0]
    turn: list[Number] = [0.0, 0.0, 0.0]
    move[f] = tipping.slide(force[f], normal, SHEAR_SHARE, count)
    move[s] = tipping.slide(force[s], normal, SHEAR_SHARE, count)
    move[n] = tipping.slide(force[n], normal, 1.0, count)
    turn[f] = tipping.tip(moment[f], normal, second)
    turn[s] = tipping.tip(moment[s], normal, first)
    if polar > 0:
        turn[n] = tipping.tip(moment[n], normal, SHEAR_SHARE * polar)
    else:
        turn[n] = tipping.tip(moment[n], normal, fixings.washer_diameter**2 / 16)
    return tuple(move), tuple(turn)
