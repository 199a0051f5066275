"""What the mount forms share: bolt patterns, holes, and the checks of their sizes."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from ..fields import FIXINGS
from ..formulas import layout
from ..model import Drive, Fixings, Motor, Number
from ..mounting import Beyond, BoltPlane, Cut, Mount, Segment
from ..worked import Value
from . import _model_error as model_error
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import Cutout, Facet, FrameBolt, Hole, MotorBolt, Slot


# Keys of a form whose bolts have no slots, or are not one set that a single screw can hold.
NO_JACK = tuple(f.key for f in FIXINGS.fields if f.key.startswith("fixings.jack_screw"))
NO_FACE = ("frame.face_width",)  # a mount that is not bolted to the face of the frame member
Outline = list[tuple[float, float]]
Holes = tuple[tuple[float, float], ...]  # (place across, diameter)


NO_SLOT = Value(0.0, "slot length", "derived", "round holes")


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltHoles:
    """The holes in the mount for a set of bolts, and what sits in them."""

    diameter: Value
    body: Value  # outer diameter of what bears on the hole: the bolt, or its sleeve
    sleeve: bool = False  # a steel sleeve takes the clamp past the mount
    face: Value | None = None  # diameter of what presses on the mount, when it is not the washer
    slotted: bool = False
    slot_length: Value = NO_SLOT
    slots_along: bool = False


def spread(count: int, span: Value) -> tuple[Number, ...]:
    """Give ``count`` places evenly over ``span``, centred on zero."""
    if count == 1:
        return (0.0,)
    places = (Value(i, "bolt place", "derived", "counted along the row") for i in range(count))
    number = Value(count, "bolts in a row", "derived", "from the number of bolts and rows")
    return tuple(layout.bolt_place(span, place, number) for place in places)


def pattern(
    fixings: Fixings, count: int | None = None
) -> tuple[tuple[Number, ...], tuple[Number, ...]]:
    """Give places of the rows and of the columns of the frame bolts, each about the centre.

    ``count`` is how many of them form the pattern: all when left out.
    """
    count = fixings.bolts.count if count is None else count
    if float(fixings.span_along) == 0:
        return (0.0,), spread(count, fixings.span_across)
    if float(fixings.span_across) == 0:
        return spread(count, fixings.span_along), (0.0,)
    return spread(2, fixings.span_along), spread(count // 2, fixings.span_across)


def motor_holes(motor: Motor, reach: float) -> Holes:
    """Give the motor bolt holes cut by the line through the two nearest the frame, and the bore."""
    half = float(layout.motor_bolt_half_span(motor.bolt_circle, motor.bolts.number))
    hole = motor.hole_diameter
    holes = [(-half, float(hole)), (half, float(hole))]
    radius = float(motor.bore) / 2
    if radius > abs(reach):
        holes.insert(1, (0.0, 2 * math.sqrt(radius**2 - reach**2)))
    return tuple(holes)


def lower_motor_cut(motor: Motor) -> tuple[Number, Holes]:
    """Give how far below the shaft axis the nearest motor bolts are, and the holes cut there."""
    reach = layout.nearest_motor_bolts(motor.bolt_circle, motor.bolts.number)
    return reach, motor_holes(motor, float(reach))


def upper_motor_cut(motor: Motor) -> tuple[Number, Holes]:
    """Give the same above the axis, where an odd number of bolts has a single one."""
    if motor.bolts.count % 2 == 0:
        return lower_motor_cut(motor)
    return layout.half(motor.bolt_circle), ((0.0, float(motor.bolts.thread.clearance_hole)),)


def cross_cut(
    name: str, y: Number, z: Number, size: tuple[float, float], holes: Holes, beyond: Beyond,
    second: bool = False,
) -> Cut:  # fmt: skip
    """Give a cut across a plate that stands along y; ``size`` is its width and thickness, m."""
    return Cut(
        name=name, place=(0.0, y, z), axis="y", across="x", normal="z", width=size[0],
        thickness=size[1], holes=holes, beyond=beyond, second=second,
    )  # fmt: skip


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


def refuse_narrow(picker: Picker, width: Value, parts: Parts, count: int | None = None) -> None:
    """Record mistakes when bolts, bore or their holes do not fit in the width; ``count`` as above."""
    fixings = parts.fixings
    hole = float(fixings.hole_diameter)
    if fixings.span_across + hole >= width:
        picker.mistake(
            "fixings.span_across", f"leaves the mount, which is {width * 1000:.1f} mm wide"
        )
    per_row = len(pattern(fixings, count)[1])
    if per_row > 1 and fixings.span_across / (per_row - 1) <= hole:
        picker.mistake("fixings.span_across", "puts the frame bolt holes into one another")
    refuse_narrow_motor(picker, width, parts)


def refuse_narrow_motor(picker: Picker, width: Value, parts: Parts) -> None:
    """Record mistakes when the motor's bolts or bore do not fit in the width."""
    motor = parts.motor
    if motor.bolt_circle + float(motor.hole_diameter) >= width:
        picker.mistake(
            "motor.bolt_circle", f"leaves the mount, which is {width * 1000:.1f} mm wide"
        )
    if motor.bore + float(motor.hole_diameter) >= motor.bolt_circle:
        picker.mistake("motor.bore", "runs into the holes of the motor bolts")


def _warping(picker: Picker, beams: bool) -> Value:
    """Give how far warping is held in the section route; with plates it is only a reference."""
    if picker.plates is not None or not beams:
        return Value(1.0, "mount.warping_held", "derived", "reference: ends held")
    return picker.between(
        "mount.warping_held", 0.0, 1.0, 1.0,
        "the softer of free and held governs the safe side (section route)",
    )  # fmt: skip


def mount(
    form: str, picker: Picker, parts: Parts, thickness: Value, width: Value,
    segments: tuple[Segment, ...], cuts: tuple[Cut, ...], planes: tuple[BoltPlane, ...],
    area: float, softness: Value | None = None, side: float = math.inf, **more: Any,
) -> Mount:  # fmt: skip
    """Put the common fields to a form's layout; ``more`` are those of ``Mount`` that few forms have.

    ``side`` is how far from the middle a fold stiffens the motor's plate left and right, m.
    """
    near = model_error.Surroundings(parts, thickness, planes, side)
    return Mount(
        form=form,
        material=parts.material,
        thickness=thickness,
        width=width,
        grade=picker.word("mount.grade", "scrap" if parts.material.card.scrap else "known"),
        weight_acts=picker.word("mount.weight_acts", "towards"),
        warping_held=_warping(picker, bool(segments)),
        softness=softness or model_error.softness(picker),
        local_stress=model_error.local_stress(picker, near),
        prying=model_error.prying(picker, planes),
        segments=segments,
        cuts=cuts,
        planes=planes,
        area=area,
        **more,
    )  # fmt: skip


FRAME_FACE = 2.0e12  # N/m3, contact of metal on metal (common practice, no source)


def soft_face(through: float) -> float:
    """Give the stiffness of a pressed face, N/m3: modulus over thickness, in series with the faces."""
    return FRAME_FACE * through / (FRAME_FACE + through)


def motor_bolts_on(drive: Drive, facet: int) -> list[MotorBolt]:
    """Give the face bolts on a facet whose plane places are measured from the shaft axis."""
    from ..plates import MotorBolt

    bolts, circle = drive.motor.bolts, float(drive.motor.bolt_circle)
    turns = [math.pi * (2 * i + 1) / bolts.count for i in range(bolts.count)]
    washer = min(
        float(bolts.thread.washer_diameter), 0.9 * circle * math.sin(math.pi / bolts.count)
    )
    return [
        MotorBolt(
            facet=facet, centre=(circle / 2 * math.sin(a), -circle / 2 * math.cos(a)),
            hole_diameter=float(drive.motor.hole_diameter), washer_diameter=washer,
        )
        for a in turns
    ]  # fmt: skip


def frame_bolt_on(
    drive: Drive,
    facet: int,
    centre: tuple[float, float],
    side: int,
    normal: float,
    tangential: float,
) -> FrameBolt:
    """Give one frame bolt on a facet, its washer as springs."""
    from ..plates import FrameBolt

    return FrameBolt(
        facet=facet, centre=centre, hole_diameter=float(drive.fixings.hole_diameter),
        washer_diameter=float(drive.fixings.washer_diameter), normal_stiffness=normal,
        tangential_stiffness=tangential, frame_side=side,
        slot_length=float(drive.fixings.slot_length),
        slot_angle=0.0 if drive.fixings.slots_along else math.pi / 2,
    )  # fmt: skip


def facet_of(
    drive: Drive, name: str, outline: Outline, origin: tuple[float, float, float],
    e2: tuple[float, float, float], thickness: float, bored: bool,
    e1: tuple[float, float, float] = (1.0, 0.0, 0.0), holes: Sequence[Hole | Slot | Cutout] = (),
) -> Facet:  # fmt: skip
    """Give a facet; ``e1`` is the width, and its material the one the mount has for that name.

    ``bored`` cuts the motor's bore at the facet's own origin.
    """
    from ..plates import Facet, Hole

    mount = drive.mount
    own = mount.second is not None and name in mount.second_facets
    material = mount.second if own and mount.second else mount.material
    bore = [Hole(centre=(0.0, 0.0), diameter=float(drive.motor.bore))] if bored else []
    return Facet(
        name=name, outline=outline, origin=origin, e1=e1, e2=e2, thickness=thickness,
        elastic_modulus=float(material.elastic_modulus), poissons_ratio=float(material.poissons_ratio),
        shear_modulus=float(material.shear_modulus), holes=[*bore, *holes],
    )  # fmt: skip


def top_of(drive: Drive) -> float:
    """Give how far the mount goes on beyond the shaft axis: past the farthest face bolts."""
    return top_of_motor(drive.motor)


def top_of_motor(motor: Motor) -> float:
    """Give the same of a motor alone."""
    return float(motor.bolt_circle) / 2 + 1.5 * float(motor.bolts.thread.washer_diameter)


def rectangle(half: float, low: float, high: float) -> list[tuple[float, float]]:
    """Give the corners of a rectangle about the middle of the width."""
    return [(-half, low), (half, low), (half, high), (-half, high)]
