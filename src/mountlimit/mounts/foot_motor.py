"""Motor on feet: it stands on a base plate that is bolted to the frame along both its ends.

        seen from the side                         seen from above

      [============]                       o---------------------o   rear row
      [   motor    ]=======|  sprocket     |    x           x    |   x  foot bolts
      [============]                       |                     |
        |__|    |__|    feet               |    x           x    |   o  frame bolts
     o==============o   base plate         o---------------------o   front row
     ##            ##   rails, along x               ||  shaft
                                                     ||
     rear         front

The plate lies in the x-z plane under the feet, at y = -shaft height; y points away from the frame.
z is along the shaft as everywhere: z = 0 at the motor's mounting face, from which the front foot
bolts are ``motor.foot_to_face`` back, and to which ``shaft.face_overhang`` is measured.  The frame
bolts are a rectangle with the same middle as the foot bolts.  The plate rests on two rails along x
under its bolt rows, or on a flat frame under the whole of it.

The motor's body is rigid; its feet are tied to the plate under the washers of their bolts only, both
ways (softer than feet that rest on their whole face: the safe side).  Slots for the foot bolts count
for slip, not as cut-outs in the plate.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from ..fields import Field, choose, may, need
from ..formulas import layout
from ..model import Drive, Feet, Fixings
from ..mounting import Beyond, BoltPlane, Cut, Mount
from ..worked import Value
from . import _common
from ._common import Parts, Picker

if TYPE_CHECKING:
    from ..plates import MotorBolt, PlateModel

FORM = "foot motor"
TITLE = "motor on feet: base plate bolted to the frame along both its ends"
FIELDS = (
    need("motor.bolts", "bolts", "bolts that hold the motor's feet, with nuts", "", "", "4 x M8"),
    Field(key="motor.bolt_class", kind="bolt class", meaning="property class of the foot bolts"),
    need("motor.shaft_height", "length", "underside of the feet to the shaft axis", "10 mm", "1 m", "71 mm"),
    need("motor.foot_across", "length", "between the foot bolt centres, square to the shaft", "10 mm", "1 m", "112 mm"),
    need("motor.foot_along", "length", "between the foot bolt centres, along the shaft", "10 mm", "1 m", "90 mm"),
    need("motor.foot_to_face", "length", "front foot bolts to the motor's mounting face", "0 mm", "500 mm", "30 mm"),
    may("motor.tightening_torque", "torque", "torque each foot bolt was tightened to", "0.05 N*m", "2000 N*m"),
    may("motor.preload", "force", "clamping force of each foot bolt when it is known", "10 N", "1000 kN"),
    may("motor.face_friction", "ratio", "friction between the motor's feet and the base plate", "0.01", "1"),
    choose("motor.washer", "washers under the heads of the foot bolts", ("standard", "wide", "none")),
    choose("motor.holes", "holes for the foot bolts: slots to set the chain, or round", ("slotted", "round")),
    need("mount.thickness", "length", "thickness of the base plate", "0.5 mm", "150 mm", "8 mm"),
    need("mount.width", "length", "width of the base plate, square to the shaft", "20 mm", "2 m", "190 mm"),
    choose("mount.rests", "what the base plate lies on: two rails along its bolt rows, or the whole of it on a flat frame", ("rails", "whole")),
    need("fixings.bolts", "bolts", "number of frame bolts in both rows together, and size", "", "", "4 x M8"),
    need("fixings.span_across", "length", "outermost frame bolt centres of a row, square to the shaft", "10 mm", "2 m", "150 mm"),
    need("fixings.span_along", "length", "front row to rear row of frame bolts, along the shaft", "10 mm", "2 m", "160 mm"),
)  # fmt: skip
UNUSED = (
    "motor.bolt_circle", "motor.bore", "motor.thread_depth", "motor.thread_strength", "motor.spigot",
    "mount.route", "mount.warping_held",
)  # fmt: skip
STARTER = {
    "motor.bolts": "4 x M8", "motor.tightening_torque": "20 N*m", "mount.thickness": "10 mm",
    "fixings.span_across": "150 mm", "fixings.span_along": "160 mm",
}  # fmt: skip


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out the base plate: frame bolts in two rows, feet between them."""
    thickness, width = picker.number("mount.thickness"), picker.number("mount.width")
    rests = picker.word("mount.rests", "rails")
    motor, fixings = parts.motor, parts.fixings
    feet = motor.feet
    assert feet is not None  # this form has no motor.bolt_circle
    _refuse(picker, parts, feet, width)
    _say_frame(picker)
    under = layout.opposite(layout.total(feet.shaft_height, thickness))
    middle = layout.opposite(layout.total(feet.to_face, layout.half(feet.along)))
    rows, columns = _common.pattern(fixings)
    cuts = _cuts(parts, feet, thickness, width, len(columns))
    if not cuts:
        picker.warnings.append(
            "The feet do not stand between the two rows of frame bolts: no section of the base plate "
            "has a load of its own, and its fatigue is not checked."
        )
    plane = BoltPlane(
        centre=(0.0, under, middle), first="x", second="z", normal="y",
        bolts=tuple((x, z) for z in rows for x in columns), half_first=layout.half(width),
        edge_second=fixings.edge, thickness=thickness, towards_motor=0.0,
        contacts=tuple(range(len(_strips(rests, feet, fixings)))),
    )  # fmt: skip
    area = float(width * (fixings.span_along + 2 * fixings.edge))
    return _common.mount(
        FORM, picker, parts, thickness, width, (), cuts, (plane,), area, flat_face=False,
        own={"rests": rests},
    )  # fmt: skip


def _between(feet: Feet, fixings: Fixings) -> bool:
    """Tell whether both rows of feet stand clear between the strips under the frame bolts."""
    return float(feet.along) <= float(fixings.span_along - 2 * fixings.edge)


def _cuts(
    parts: Parts, feet: Feet, thickness: Value, width: Value, row: int
) -> tuple[Cut, ...]:  # fmt: skip
    """Give the cuts at the feet: past each only one row of frame bolts and its strip are left."""
    if not _between(feet, parts.fixings):
        return ()
    hole, half = float(parts.motor.bolts.thread.clearance_hole), float(feet.across) / 2
    level = layout.opposite(layout.total(feet.shaft_height, layout.half(thickness)))
    front = layout.opposite(feet.to_face)
    rear = layout.opposite(layout.total(feet.to_face, feet.along))
    return tuple(
        Cut(
            name=f"base plate at the {name} feet", place=(0.0, level, z), axis="z", across="x",
            normal="y", width=float(width), thickness=float(thickness), holes=((-half, hole), (half, hole)),
            beyond=Beyond(bolts=bolts, contacts=contacts),
        )
        for name, z, bolts, contacts in (
            ("rear", rear, tuple(range(row)), (0,)),
            ("front", front, tuple(range(row, 2 * row)), (1,)),
        )
    )  # fmt: skip


def _strips(rests: str, feet: Feet, fixings: Fixings) -> list[tuple[float, float]]:
    """Give where the plate may press on the frame, from and to along z about the middle: rear, front, rest."""
    row, edge = float(fixings.span_along) / 2, float(fixings.edge)
    end = row + edge
    if rests == "rails":
        return [(-end, edge - row), (row - edge, end)]
    foot = float(feet.along) / 2
    if _between(feet, fixings):
        return [(-end, -foot), (foot, end), (-foot, foot)]
    return [(-end, end)]


def _refuse(picker: Picker, parts: Parts, feet: Feet, width: Value) -> None:
    """Record mistakes when feet or frame bolts leave the plate or meet one another."""
    fixings, thread = parts.fixings, parts.motor.bolts.thread
    washer = float(thread.washer_diameter)
    length = float(fixings.span_along + 2 * fixings.edge)
    if fixings.span_across + fixings.washer_diameter > width:
        picker.mistake(
            "fixings.span_across", f"leaves the base plate, which is {width * 1000:.1f} mm wide"
        )
    if feet.across + washer > width:
        picker.mistake(
            "motor.foot_across", f"leaves the base plate, which is {width * 1000:.1f} mm wide"
        )
    if feet.along + washer > length:
        picker.mistake(
            "motor.foot_along", f"leaves the base plate, which is {length * 1000:.1f} mm long",
            "its length is fixings.span_along and an edge at both ends",
        )  # fmt: skip
    rows, columns = _common.pattern(fixings)
    if len(columns) > 1 and fixings.span_across / (len(columns) - 1) <= fixings.hole_diameter:
        picker.mistake("fixings.span_across", "puts the frame bolt holes into one another")
    foot = (float(feet.across) / 2, float(feet.along) / 2)
    nearest = min(
        math.hypot(abs(float(x)) - foot[0], abs(float(z)) - foot[1]) for x in columns for z in rows
    )
    least = (washer + float(fixings.washer_diameter)) / 2
    if nearest < least:
        picker.mistake(
            "fixings.span_along", f"puts a frame bolt {nearest * 1000:.1f} mm from a foot bolt; their washers need {least * 1000:.1f} mm",
            "the frame bolts are a rectangle round the middle of the feet",
        )  # fmt: skip


def _say_frame(picker: Picker) -> None:
    """Say what the frame member stands for."""
    if picker.card("frame.member") != "rigid":
        picker.warnings.append(
            "The frame member is taken as one, along x under the middle of the base plate, with the "
            "whole load. Two rails under its ends give less; call the frame rigid if they hardly do."
        )


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out the base plate as one facet, normal downwards; the motor stands on its foot bolts."""
    from ..plates import Contact, PlateModel  # heavy: only when asked for

    mount, fixings, feet = drive.mount, drive.fixings, drive.motor.feet
    assert feet is not None
    half, thickness = float(mount.width) / 2, float(mount.thickness)
    middle = float(mount.plane.centre[2])
    end = float(fixings.span_along) / 2 + float(fixings.edge)
    facet = _common.facet_of(
        drive, "base plate", _common.rectangle(half, -end, end),
        (0.0, -float(feet.shaft_height) - thickness / 2, middle), (0.0, 0.0, 1.0), thickness, False,
    )  # fmt: skip
    bolts = [
        _common.frame_bolt_on(drive, 0, (float(x), float(z)), 1, normal, tangential)
        for x, z in mount.plane.bolts
    ]
    return PlateModel(
        facets=[facet], motor_bolts=_foot_bolts(drive, feet), motor_centre=(0.0, 0.0, 0.0),
        frame_bolts=bolts,
        contacts=[
            Contact(facet=0, side=1, stiffness=pressing, region=_common.rectangle(half, low, high))
            for low, high in _strips(str(mount.own["rests"]), feet, fixings)
        ],
    )  # fmt: skip


def _foot_bolts(drive: Drive, feet: Feet) -> list[MotorBolt]:
    """Give the foot bolts on the base plate: rear left, rear right, front left, front right."""
    from ..plates import MotorBolt

    thread = drive.motor.bolts.thread
    x, z = float(feet.across) / 2, float(feet.along) / 2
    return [
        MotorBolt(
            facet=0, centre=place, hole_diameter=float(thread.clearance_hole),
            washer_diameter=float(thread.washer_diameter),
        )
        for place in ((-x, -z), (x, -z), (-x, z), (x, z))
    ]  # fmt: skip
