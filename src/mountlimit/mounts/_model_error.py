"""How far the plate model may be off: true give, stress and tension over the model's, as listed ranges.

Plates over ten-node tetrahedra, 103 random mounts of every form (tests/audit).  Give and tension of
the frame bolts are off alike whatever the mount is; stress round the bolts is too low where a plate is
thick against a washer's ring, short between washers, or thin under wide ones.  Its range grows evenly
with these, so that no size of a plate makes a jump.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from ..mounting import BoltPlane
from ..worked import Value
from ._parts import Parts, Picker

SOFTNESS = (0.9, 1.0, 1.15)
PRYING = (0.9, 1.0, 1.2)  # tension of frame bolts
# Stress round the bolts: where each begins to count and where it counts in full, and how much.
THICK, STRESS_THICK = (2.0, 10.0), 0.1  # thickness over the width of a motor washer's ring
SHORT, STRESS_SHORT = (0.15, 1.0), 0.2  # thickness over clear length
WIDE, STRESS_WIDE = (3.0, 5.5), 0.15  # motor washer over thickness: 12 points are coarse there
STRESS_LIKELY, STRESS_LOW = 1 / 3, -1 / 3  # shares of what the high ratio is over one
UNTOLD = 0.01  # less of it is no line worth reading


@dataclass(frozen=True, slots=True)
class Surroundings:
    """What stands round the motor's bolts.

    ``side`` is how far from the middle a fold stiffens the motor's plate left and right, m.
    """

    parts: Parts
    thickness: Value
    planes: tuple[BoltPlane, ...]
    side: float = math.inf

    @property
    def thick(self) -> float:
        """Thickness over the width of the motor washers' rings."""
        washer = float(self.parts.motor.bolts.thread.washer_diameter)
        ring = (washer - float(self.parts.motor.hole_diameter)) / 2
        return float(self.thickness) / ring if ring > 0 else math.inf  # a mistake told elsewhere

    @property
    def clear(self) -> float:
        """Clear length over thickness."""
        return clear_length(self.parts, self.planes, self.side) / float(self.thickness)

    @property
    def wide(self) -> float:
        """Motor washer over thickness."""
        return float(self.parts.motor.bolts.thread.washer_diameter) / float(self.thickness)

    @property
    def words(self) -> str:
        """Say it, for the source of a range."""
        return (
            f"{self.thick:.2g} times as thick as a motor washer's ring is wide, clear length "
            f"{self.clear:.2g} thicknesses, motor washers {self.wide:.2g} thicknesses wide"
        )


def _ramp(value: float, begins: float, full: float) -> float:
    return min(1.0, max(0.0, (value - begins) / (full - begins)))


def softness(picker: Picker) -> Value:
    """Give the true give over the model's."""
    return picker.between(
        "mount.softness", *SOFTNESS,
        "the model of the mount: plates lean 14 % less to 17 % more than solid elements (computed)",
    )  # fmt: skip


def local_stress(picker: Picker, near: Surroundings) -> Value:
    """Give the true stress round the bolts over the plate model's, where that is not to be trusted."""
    key = "mount.local_stress"
    if picker.optional(key) is not None:
        return picker.number(key)
    if picker.plates is None:
        return Value(1.0, key, "derived", "no plate model")
    short = 1.0 / near.clear if near.clear > 0.0 else math.inf
    high = (
        STRESS_THICK * _ramp(near.thick, *THICK)
        + STRESS_SHORT * _ramp(short, *SHORT)
        + STRESS_WIDE * _ramp(near.wide, *WIDE)
    )
    if high < UNTOLD:
        return Value(1.0, key, "derived", "plates within 10 % of solid elements")
    return picker.between(
        key, 1.0 + STRESS_LOW * high, 1.0 + STRESS_LIKELY * high, 1.0 + high,
        f"the plate model against solid elements round the bolts (computed); this plate: {near.words}",
    )  # fmt: skip


def prying(picker: Picker, planes: tuple[BoltPlane, ...]) -> Value:
    """Give the true tension of the frame bolts over the plate model's."""
    key = "mount.prying"
    if picker.optional(key) is not None:
        return picker.number(key)
    if picker.plates is None or not any(p.bolts for p in planes):
        return Value(1.0, key, "derived", "no plate model, or no frame bolts")
    return picker.between(
        key, *PRYING,
        "the plate model against solid elements (computed): the bearing face in few cells",
    )  # fmt: skip


def clear_length(parts: Parts, planes: tuple[BoltPlane, ...], side: float = math.inf) -> float:
    """Give the least clear length between the motor bolts' washers and what holds the mount, m.

    In the plane of the motor's bolts the frame bolts' washers hold; else the plate ends at the plane.
    ``side`` is where folds end it left and right, from the middle.
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
    found = [side - abs(x) - washer for x, _ in places]
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
