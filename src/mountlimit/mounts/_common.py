"""What the mount forms share: bolt patterns, holes, and the checks of their sizes."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Protocol

from ..formulas import layout
from ..model import BoltPlane, Cut, Fixings, Motor, Mount, Number, Segment, Substance
from ..worked import Value


class Picker(Protocol):
    """How a form asks for its inputs; ``resolve`` provides it."""

    def number(self, key: str) -> Value:
        """Give a required number, or one with a default."""
        ...

    def optional(self, key: str) -> Value | None:
        """Give a number that may be absent."""
        ...

    def word(self, key: str, otherwise: str) -> str:
        """Give a word; when absent ``otherwise`` is noted as assumed."""
        ...

    def between(self, key: str, low: float, likely: float, high: float, source: str) -> Value:
        """Give a number, or a default worked out from other inputs."""
        ...

    warnings: list[str]

    def mistake(self, key: str, expected: str, suggestion: str = "") -> None:
        """Record a mistake that only shows when several keys are seen together."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Parts:
    """What a form needs of the rest of the drive."""

    motor: Motor
    fixings: Fixings
    material: Substance


def spread(count: int, span: Value) -> tuple[Number, ...]:
    """Give ``count`` places evenly over ``span``, centred on zero."""
    if count == 1:
        return (0.0,)
    places = (Value(i, "bolt place", "derived", "counted along the row") for i in range(count))
    number = Value(count, "bolts in a row", "derived", "from the number of bolts and rows")
    return tuple(layout.bolt_place(span, place, number) for place in places)


def pattern(fixings: Fixings) -> tuple[tuple[Number, ...], tuple[Number, ...]]:
    """Give places of the rows and of the columns of the frame bolts, each about the centre."""
    count = fixings.bolts.count
    if float(fixings.span_along) == 0:
        return (0.0,), spread(count, fixings.span_across)
    if float(fixings.span_across) == 0:
        return spread(count, fixings.span_along), (0.0,)
    return spread(2, fixings.span_along), spread(count // 2, fixings.span_across)


def motor_holes(motor: Motor, reach: float) -> tuple[tuple[float, float], ...]:
    """Give the motor bolt holes cut by the line through the two nearest the frame, and the bore."""
    half = float(layout.motor_bolt_half_span(motor.bolt_circle, motor.bolts.number))
    hole = motor.bolts.thread.clearance_hole
    holes = [(-half, float(hole)), (half, float(hole))]
    radius = float(motor.bore) / 2
    if radius > abs(reach):
        holes.insert(1, (0.0, 2 * math.sqrt(radius**2 - reach**2)))
    return tuple(holes)


def refuse_short(picker: Picker, key: str, free: Value, reach: Number) -> None:
    """Record a mistake when the motor bolts reach past the fixings."""
    if free <= reach * 1.02:
        picker.mistake(
            key,
            "is measured to the shaft axis and must be longer than the distance from the axis to "
            f"the lowest motor bolts ({reach * 1000:.1f} mm)",
            "check motor.bolt_circle",
        )


SHORT = 0.25  # of the width; shorter than this a strip is no beam


def warn_short(picker: Picker, length: Number, width: Value) -> None:
    """Warn where beam theory makes a stiff, short strip too stiff."""
    if length < SHORT * width:
        picker.warnings.append(
            f"The mount is only {float(length) * 1000:.0f} mm long between bolts and {float(width) * 1000:.0f} mm wide: "
            "no beam, and softer than worked out here. Leave a margin on alignment."
        )


def refuse_narrow(picker: Picker, width: Value, parts: Parts) -> None:
    """Record mistakes when bolts, bore or their holes do not fit in the width."""
    motor, fixings = parts.motor, parts.fixings
    hole = float(fixings.hole_diameter)
    if fixings.span_across + hole >= width:
        picker.mistake(
            "fixings.span_across", f"leaves the mount, which is {width * 1000:.1f} mm wide"
        )
    per_row = len(pattern(fixings)[1])
    if per_row > 1 and fixings.span_across / (per_row - 1) <= hole:
        picker.mistake("fixings.span_across", "puts the frame bolt holes into one another")
    if motor.bolt_circle + float(motor.bolts.thread.clearance_hole) >= width:
        picker.mistake(
            "motor.bolt_circle", f"leaves the mount, which is {width * 1000:.1f} mm wide"
        )
    if motor.bore + float(motor.bolts.thread.clearance_hole) >= motor.bolt_circle:
        picker.mistake("motor.bore", "runs into the holes of the motor bolts")


def mount(
    form: str, picker: Picker, parts: Parts, thickness: Value, width: Value,
    segments: tuple[Segment, ...], cuts: tuple[Cut, ...], plane: BoltPlane,
    area: float,
) -> Mount:  # fmt: skip
    """Put the common fields to a form's layout."""
    return Mount(
        form=form,
        material=parts.material,
        thickness=thickness,
        width=width,
        grade=picker.word("mount.grade", "scrap" if parts.material.card.scrap else "known"),
        weight_acts=picker.word("mount.weight_acts", "towards"),
        warping_held=picker.between(
            "mount.warping_held", 0.0, 1.0, 1.0,
            "the softer of free and held governs the safe side (section route)",
        ),
        segments=segments,
        cuts=cuts,
        plane=plane,
        area=area,
    )  # fmt: skip
