"""How far the plate model may be off: true give and true stress over the model's, as listed ranges.

The plate model clamps its motor bolts' rings through the whole thickness and stands its contact on
few points, so it is too stiff where the plate is thick against a washer's ring, or short between
the washers of motor and frame. Plates over solid elements in tilt, 64 random mounts (tests/audit).
"""

from __future__ import annotations

import math

from ..mounting import BoltPlane
from ..worked import Value
from ._parts import Parts, Picker

THICK, STUBBY = 4.0, 5.0  # thickness over a ring's width; clear length over thickness
VERY_THICK, VERY_SHORT = 8.0, 2.0
WIDE = 4.0  # washer over thickness: the mesh round it, 12 points, is coarser than a thickness
CLOSE = 2.5  # clear length over thickness below which stress is off as well
CLOSE_STRESS, THICK_STRESS, BASE_STRESS = (0.95, 1.05, 1.15), (0.9, 1.1, 1.25), (1.0, 1.2, 1.5)
MODEL_SPREAD = (0.9, 1.0, 1.1)
LOCAL_SPREAD = (0.95, 1.05, 1.2)
STOUT_SPREAD = (0.95, 1.15, 1.35)
MODEL_SOURCE = "the model itself: plates within 8 % of solid elements in tilt, and the contact points (computed)"


def _stoutness(
    parts: Parts, thickness: Value, planes: tuple[BoltPlane, ...]
) -> tuple[float, float]:
    """Give thickness over the width of the motor washers' rings, and clear length over thickness."""
    washer = float(parts.motor.bolts.thread.washer_diameter)
    ring = (washer - float(parts.motor.hole_diameter)) / 2
    thick = float(thickness) / ring if ring > 0 else math.inf  # such a hole has its own mistake
    return thick, clear_length(parts, planes) / float(thickness)


def softness(
    picker: Picker, parts: Parts, thickness: Value, planes: tuple[BoltPlane, ...]
) -> Value:
    """Give the true give over the model's; a plate thick against its rings or short gives more."""
    thick, short = _stoutness(parts, thickness, planes)
    if thick > VERY_THICK or (thick > THICK and short < VERY_SHORT):
        return picker.between(
            "mount.softness", *STOUT_SPREAD,
            "a plate this thick and short gives locally under the motor bolts' washers, which plate "
            "theory leaves out: 12 to 28 % against solid elements (computed)",
        )  # fmt: skip
    if thick > THICK or short < STUBBY:
        return picker.between(
            "mount.softness", *LOCAL_SPREAD,
            "a plate this thick or short also gives locally under washers and at the frame's edge, "
            "which the plate model leaves out: up to 21 % against solid elements (computed)",
        )  # fmt: skip
    return picker.between("mount.softness", *MODEL_SPREAD, MODEL_SOURCE)


def local_stress(
    picker: Picker, parts: Parts, thickness: Value, planes: tuple[BoltPlane, ...]
) -> Value:
    """Give the true stress round the bolts over the plate model's, where that is not to be trusted."""
    key = "mount.local_stress"
    if picker.optional(key) is not None:
        return picker.number(key)
    if picker.plates is None:
        return Value(1.0, key, "derived", "no plate model")
    thick, short = _stoutness(parts, thickness, planes)
    if parts.motor.feet is not None and short < STUBBY:
        return picker.between(
            key, *BASE_STRESS,
            "a base plate pressed down close to its frame bolts: plates up to 36 % under solid "
            "elements round the bolts (computed)",
        )  # fmt: skip
    if thick > THICK:
        return picker.between(
            key, *THICK_STRESS,
            "a plate this thick against its washers: plates up to 27 % under solid elements round "
            "the bolts (computed)",
        )  # fmt: skip
    wide = float(parts.motor.bolts.thread.washer_diameter) > WIDE * float(thickness)
    if short < CLOSE or parts.motor.feet is not None or wide:
        return picker.between(
            key, *CLOSE_STRESS,
            "a plate this short, thin under wide washers, or pressed down on strips: up to 17 % under "
            "solid elements round the bolts (computed)",
        )  # fmt: skip
    return Value(1.0, key, "derived", "plates within 10 % of solid elements")


def clear_length(parts: Parts, planes: tuple[BoltPlane, ...]) -> float:
    """Give the least clear length between the motor bolts' washers and what holds the mount, m.

    In the plane of the motor's bolts the frame bolts' washers hold; else the plate ends at the plane.
    """
    motor = parts.motor
    washer = float(motor.bolts.thread.washer_diameter) / 2
    own = washer + float(parts.fixings.washer_diameter) / 2
    if motor.feet is not None:
        x, z = float(motor.feet.across) / 2, float(motor.feet.along) / 2
        places = [(a, b) for a in (-x, x) for b in (-z, z)]
    else:
        radius, count = float(motor.bolt_circle) / 2, motor.bolts.count
        turns = [math.pi * (2 * i + 1) / count for i in range(count)]
        places = [(radius * math.sin(a), -radius * math.cos(a)) for a in turns]
    found = []
    for plane in [p for p in planes if p.bolts] or planes:
        middle = (float(plane.centre[0]), float(plane.centre[1]))
        if motor.feet is not None:
            middle = (0.0, 0.0)
        elif plane.normal != "z" or not plane.bolts:
            found.append(min(abs(y - middle[1]) for _, y in places) - washer)
            continue
        found += [
            math.hypot(middle[0] + float(x) - u, middle[1] + float(y) - v) - own
            for x, y in plane.bolts for u, v in places
        ]  # fmt: skip
    return max(0.0, min(found, default=math.inf))
