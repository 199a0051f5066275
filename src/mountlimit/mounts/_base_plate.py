"""Base plate under a motor that stands on it in rows: shared by motors on feet and in a cradle.

The plate lies in the x-z plane under the motor, at y = -shaft height; y points away from the frame.
z is along the shaft as everywhere: z = 0 at the motor's mounting face, from which the front row is
``Feet.to_face`` back.  The frame bolts are a rectangle with the same middle as the rows.  The plate
rests on two rails along x under its bolt rows, or on a flat frame under the whole of it.

The motor's body is rigid; it is tied to the plate under the washers of its bolts only, both ways.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from ..fields import choose, need
from ..formulas import layout
from ..model import Drive, Feet, Fixings
from ..mounting import Beyond, BoltPlane, Cut, Mount
from ..worked import Value
from . import _common
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import MotorBolt, PlateModel

FIELDS = (
    need("mount.thickness", "length", "thickness of the base plate", "0.5 mm", "150 mm", "8 mm"),
    need("mount.width", "length", "width of the base plate, square to the shaft", "20 mm", "2 m", "190 mm"),
    choose("mount.rests", "what the base plate lies on: two rails along its bolt rows, or the whole of it on a flat frame", ("rails", "whole")),
    need("fixings.bolts", "bolts", "number of frame bolts in both rows together, and size", "", "", "4 x M8"),
    need("fixings.span_across", "length", "outermost frame bolt centres of a row, square to the shaft", "10 mm", "2 m", "150 mm"),
    need("fixings.span_along", "length", "front row to rear row of frame bolts, along the shaft", "10 mm", "2 m", "160 mm"),
)  # fmt: skip
UNUSED = (
    "motor.bolt_circle", "motor.bore", "motor.thread_depth", "motor.thread_strength", "motor.spigot",
    "mount.route", "mount.warping_held", *_common.NO_FACE,
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Stands:
    """What the motor stands by, in words and keys."""

    form: str
    rows: str  # "feet"
    bolt: str  # "foot bolt"
    across: str  # key of the distance square to the shaft
    along: str  # key of the distance along it


def build(picker: Picker, parts: Parts, stands: Stands, **more: Any) -> Mount:
    """Lay out the base plate: frame bolts in two rows, the motor's rows between them."""
    thickness, width = picker.number("mount.thickness"), picker.number("mount.width")
    rests = picker.word("mount.rests", "rails")
    motor, fixings = parts.motor, parts.fixings
    feet = motor.feet
    assert feet is not None  # these forms have no motor.bolt_circle
    _refuse(picker, parts, feet, width, stands)
    _say_frame(picker)
    under = layout.opposite(layout.total(feet.shaft_height, thickness))
    middle = layout.opposite(layout.total(feet.to_face, layout.half(feet.along)))
    rows, columns = _common.pattern(fixings)
    cuts = _cuts(parts, feet, thickness, width, len(columns), stands)
    if not cuts:
        picker.warnings.append(
            f"The {stands.rows} do not stand between the two rows of frame bolts: no section of the base plate "
            "has a load of its own, and its fatigue is not checked."
        )
    plane = BoltPlane(
        centre=(0.0, under, middle), first="x", second="z", normal="y",
        bolts=tuple((x, z) for z in rows for x in columns), half_first=layout.half(width),
        edge_second=fixings.edge, thickness=thickness, towards_motor=0.0,
        contacts=tuple(range(len(_strips(rests, feet, fixings)))), on_member=False,
    )  # fmt: skip
    area = float(width * (fixings.span_along + 2 * fixings.edge))
    return _common.mount(
        stands.form, picker, parts, thickness, width, (), cuts, (plane,), area, flat_face=False,
        own={"rests": rests}, **more,
    )  # fmt: skip


def _between(feet: Feet, fixings: Fixings) -> bool:
    """Tell whether the outer rows stand clear between the strips under the frame bolts."""
    return float(feet.along) <= float(fixings.span_along - 2 * fixings.edge)


def _cuts(
    parts: Parts, feet: Feet, thickness: Value, width: Value, row: int, stands: Stands
) -> tuple[Cut, ...]:  # fmt: skip
    """Give the cuts at the outer rows: past each only one row of frame bolts and its strip are left."""
    if not _between(feet, parts.fixings):
        return ()
    hole, half = float(parts.motor.bolts.thread.clearance_hole), float(feet.across) / 2
    level = layout.opposite(layout.total(feet.shaft_height, layout.half(thickness)))
    front = layout.opposite(feet.to_face)
    rear = layout.opposite(layout.total(feet.to_face, feet.along))
    return tuple(
        Cut(
            name=f"base plate at the {name} {stands.rows}", place=(0.0, level, z), axis="z", across="x",
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


def _refuse(picker: Picker, parts: Parts, feet: Feet, width: Value, stands: Stands) -> None:
    """Record mistakes when the motor's bolts or the frame's leave the plate or meet one another."""
    fixings, thread = parts.fixings, parts.motor.bolts.thread
    washer = float(thread.washer_diameter)
    length = float(fixings.span_along + 2 * fixings.edge)
    if fixings.span_across + fixings.washer_diameter > width:
        picker.mistake(
            "fixings.span_across", f"leaves the base plate, which is {width * 1000:.1f} mm wide"
        )
    if feet.across + washer > width:
        picker.mistake(stands.across, f"leaves the base plate, which is {width * 1000:.1f} mm wide")
    if feet.along + washer > length:
        picker.mistake(
            stands.along, f"leaves the base plate, which is {length * 1000:.1f} mm long",
            "its length is fixings.span_along and an edge at both ends",
        )  # fmt: skip
    rows, columns = _common.pattern(fixings)
    if len(columns) > 1 and fixings.span_across / (len(columns) - 1) <= fixings.hole_diameter:
        picker.mistake("fixings.span_across", "puts the frame bolt holes into one another")
    nearest = min(
        (
            math.dist((float(x), float(z)), place)
            for x in columns
            for z in rows
            for place in places(feet)
        ),
        default=math.inf,  # a pattern that cannot be has its own mistake
    )
    least = (washer + float(fixings.washer_diameter)) / 2
    if nearest < least:
        picker.mistake(
            "fixings.span_along", f"puts a frame bolt {nearest * 1000:.1f} mm from a {stands.bolt}; their washers need {least * 1000:.1f} mm",
            f"the frame bolts are a rectangle round the middle of the {stands.rows}",
        )  # fmt: skip


def _say_frame(picker: Picker) -> None:
    """Say what the frame member stands for."""
    if picker.card("frame.member") != "rigid":
        picker.warnings.append(
            "The frame member is taken as one, along x under the middle of the base plate, with the "
            "whole load. Two rails under its ends give less; call the frame rigid if they hardly do."
        )


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out the base plate as one facet, normal downwards; the motor stands on its bolts."""
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
        facets=[facet], motor_bolts=_tied(drive, feet), motor_centre=(0.0, 0.0, 0.0),
        frame_bolts=bolts,
        contacts=[
            Contact(facet=0, side=1, stiffness=pressing, region=_common.rectangle(half, low, high))
            for low, high in _strips(str(mount.own["rests"]), feet, fixings)
        ],
    )  # fmt: skip


def places(feet: Feet) -> list[tuple[float, float]]:
    """Give where the motor is held down, about the middle of its rows: rear left, rear right, and so on."""
    x, end = float(feet.across) / 2, float(feet.along) / 2
    rows = [end * (2 * i / (feet.rows - 1) - 1) for i in range(feet.rows)]
    return [(side, z) for z in rows for side in (-x, x)]


def _tied(drive: Drive, feet: Feet) -> list[MotorBolt]:
    """Give the motor's bolts on the base plate."""
    from ..plates import MotorBolt

    thread = drive.motor.bolts.thread
    return [
        MotorBolt(
            facet=0, centre=place, hole_diameter=float(thread.clearance_hole),
            washer_diameter=float(thread.washer_diameter),
        )
        for place in places(feet)
    ]  # fmt: skip
