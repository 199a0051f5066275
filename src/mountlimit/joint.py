"""The bolted joint between mount and frame: how the bolts share the load, and how much it gives.

The mount tips about the edge of its bearing surface (contact pushes only), so each bolt's lever is
its distance from that edge; shear is shared elastically.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np

from .case import BoltForces
from .formulas import bolt_group, layout, tipping
from .formulas import joint as joint_formulas
from .model import Drive, Number
from .mounting import BoltPlane
from .worked import DataSheet, Symbol, Value, is_recording, note

SHEAR_SHARE = Value(0.5, "joint.shear_share", "assumed", "common practice, no source")


def _axes(plane: BoltPlane) -> tuple[int, int, int, float]:
    f, s, n = ("xyz".index(a) for a in (plane.first, plane.second, plane.normal))
    handed = 1.0 if (f, s, n) in ((0, 1, 2), (1, 2, 0), (2, 0, 1)) else -1.0
    return f, s, n, handed


def _pick(condition: Any, yes: Number, no: Number) -> Number:
    if np.ndim(condition) == 0:
        return yes if condition else no
    return np.where(condition, yes, no)


ALONE = Value(0.0, "bolt pattern", "derived", "counted from the middle of the pattern")


def square_sum(values: list[Number]) -> Number:
    """Give the sum of squares of lengths, m^2; recorded with every length in it."""
    total = sum(float(v) ** 2 for v in values)
    if not is_recording():
        return total
    letters = [f"l_{i}" for i in range(1, len(values) + 1)]
    symbols = tuple(Symbol(letter, letter, "m") for letter in letters)
    sheet = DataSheet(
        "Sum of squares of the bolts' lengths", f"S = {' + '.join(f'{x}**2' for x in letters)}",
        symbols, Symbol("", "S", "m^2"), "Shigley's Mechanical Engineering Design 9th ed. sec. 8-12",
    )  # fmt: skip
    return note(sheet, dict(zip(letters, values, strict=True)), total)


def levers(plane: BoltPlane) -> dict[str, list[Number]]:
    """Give each bolt's lever from the four edges of the bearing surface."""
    firsts = [b[0] for b in plane.bolts]
    seconds = [b[1] for b in plane.bolts]
    low, high = min(seconds), max(seconds)
    edge, half = plane.bearing_edge, plane.half_first
    return {
        "second from low": [layout.pivot_lever(s, low, edge) for s in seconds],
        "second from high": [layout.pivot_lever(high, s, edge) for s in seconds],
        "first from low": [layout.pivot_lever(f, ALONE, half) for f in firsts],
        "first from high": [layout.pivot_lever(ALONE, f, half) for f in firsts],
    }


def bolt_forces(plane: BoltPlane, count: Number, force: Any, moment: Any) -> BoltForces:
    """Share a wrench (about the plane's centre, N and N*m) over the frame bolts."""
    f, s, n, handed = _axes(plane)
    arm = levers(plane)
    square = {name: square_sum(values) for name, values in arm.items()}
    lifts_second, lifts_first = moment[f] * handed > 0, moment[s] * handed < 0
    direct = tipping.direct_tension(force[n], count)
    about_first, about_second = tipping.size_of(moment[f]), tipping.size_of(moment[s])
    tension, from_first, from_second = [], [], []
    for i in range(len(plane.bolts)):
        low, high = "second from low", "second from high"
        lever = _pick(lifts_second, arm[low][i], arm[high][i])
        total = _pick(lifts_second, square[low], square[high])
        from_first.append(bolt_group.moment_tension(about_first, lever, total))
        low, high = "first from low", "first from high"
        lever = _pick(lifts_first, arm[low][i], arm[high][i])
        total = _pick(lifts_first, square[low], square[high])
        from_second.append(bolt_group.moment_tension(about_second, lever, total))
        tension.append(tipping.bolt_tension(direct, from_first[-1], from_second[-1]))
    one, two = _shears(plane, count, force, moment)
    seconds = [float(b[1]) for b in plane.bolts]
    edge, half = float(plane.bearing_edge), float(plane.half_first)
    contacts = (
        (sum(from_first), 0.0, _pick(lifts_second, min(seconds) - edge, max(seconds) + edge)),
        (sum(from_second), _pick(lifts_first, -half, half), 0.0),
        (np.maximum(-np.asarray(force[n], float), 0.0), 0.0, 0.0),
    )
    return BoltForces(
        tension=tuple(tension), net_pull=(tipping.pulled_only(direct),) * len(tension), shear=tuple(tipping.bolt_shear(a, b) for a, b in zip(one, two, strict=True)),
        shear_first=tuple(one), shear_second=tuple(two), contacts=contacts,
    )  # fmt: skip


def _shears(
    plane: BoltPlane, count: Number, force: Any, moment: Any
) -> tuple[list[Number], list[Number]]:
    """Give each bolt's shear along the first and the second axis."""
    f, s, n, handed = _axes(plane)
    straight = [bolt_group.direct_shear(force[axis], count) for axis in (f, s)]
    if len(plane.bolts) == 1:
        return [straight[0]], [straight[1]]
    polar = square_sum([v for b in plane.bolts for v in b])
    # right-handed about the normal: (first, second) may be a left-handed pair
    way, other = (
        Value(h, "axes", "derived", "handedness of the joint's axes") for h in (handed, -handed)
    )
    one = [
        tipping.shear_part(straight[0], bolt_group.torsional_shear(moment[n], b[1], polar), other)
        for b in plane.bolts
    ]
    two = [
        tipping.shear_part(straight[1], bolt_group.torsional_shear(moment[n], b[0], polar), way)
        for b in plane.bolts
    ]
    return one, two


def balance(plane: BoltPlane, bolts: BoltForces, force: Any, moment: Any) -> Number:
    """Give the largest unbalanced force or moment of the joint, over the applied load."""
    f, s, n, handed = _axes(plane)
    size = np.sqrt(sum(np.square(np.asarray(c, float)) for c in force)) + 1e-12
    reach = max(math.hypot(float(b[0]), float(b[1])) for b in plane.bolts) + float(
        plane.bearing_edge
    )
    pulls = [(t, b[0], b[1]) for t, b in zip(bolts.tension, plane.bolts, strict=True)]
    pulls += [(-c, x, y) for c, x, y in bolts.contacts]
    pairs = list(zip(plane.bolts, bolts.shear_first, bolts.shear_second, strict=True))
    left = [
        sum(bolts.shear_first) - force[f],
        sum(bolts.shear_second) - force[s],
        sum(p for p, _, _ in pulls) - force[n],
        (handed * sum(p * y for p, _, y in pulls) - moment[f]) / reach,
        (-handed * sum(p * x for p, x, _ in pulls) - moment[s]) / reach,
    ]
    if len(plane.bolts) > 1:
        turning = handed * sum(b[0] * two - b[1] * one for b, one, two in pairs)
        left.append((turning - moment[n]) / reach)
    shape = np.broadcast(*(np.asarray(x, float) for x in left)).shape
    worst = np.max([np.abs(np.broadcast_to(np.asarray(x, float), shape)) for x in left], axis=0)
    return worst / size


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
        modulus, fixings.body_diameter, drive.mount.thickness, fixings.washer_diameter
    )
    normal = joint_formulas.spring_series(fixings.joint_stiffness, cone)
    arm = levers(plane)
    second = min(square_sum(arm["second from low"]), square_sum(arm["second from high"]))
    first = min(square_sum(arm["first from low"]), square_sum(arm["first from high"]))
    count = fixings.bolts.number
    sideways = tipping.in_plane_stiffness(normal, SHEAR_SHARE)
    move: list[Number] = [0.0, 0.0, 0.0]
    turn: list[Number] = [0.0, 0.0, 0.0]
    move[f] = tipping.slide(force[f], sideways, count)
    move[s] = tipping.slide(force[s], sideways, count)
    move[n] = tipping.slide(force[n], normal, count)
    turn[f] = tipping.tip(moment[f], normal, second)
    turn[s] = tipping.tip(moment[s], normal, first)
    if len(plane.bolts) > 1:
        polar = square_sum([v for b in plane.bolts for v in b])
    else:
        polar = tipping.washer_square(fixings.washer_diameter)
    turn[n] = tipping.tip(moment[n], sideways, polar)
    return tuple(move), tuple(turn)
