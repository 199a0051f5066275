"""Flat plate bolted along two edges, below and above the motor, or at its four corners.

One straight row of bolts near each end, the motor between; both ends lie on the frame, behind the
plate as in the form "plate".  Axes as in DEVELOPERS.md; the lower row is at y = -free length, the
upper one at y = span along - free length.

The frame is stiff behind both rows in the plate model.  The frame member of the file stands for the
part under the lower row and takes the whole load: on the safe side as long as the part under the
upper row gives no more.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..fields import need
from ..formulas import layout
from ..model import Drive, Number
from ..mounting import Beyond, BoltPlane, Mount
from ..worked import Value
from . import _common
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import PlateModel

FORM = "plate two rows"
TITLE = "flat plate, bolted to the frame along two edges or at four corners"
FIELDS = (
    need("mount.width", "length", "width of the plate, along the rows", "10 mm", "2 m", "120 mm"),
    need("mount.free_length", "length", "lower row of frame bolts to the shaft axis", "5 mm", "2 m", "85 mm"),
    need("fixings.bolts", "bolts", "number of frame bolts in both rows together, and size", "", "", "4 x M8"),
    need("fixings.span_across", "length", "outermost bolt centres of a row", "5 mm", "2 m", "90 mm"),
    need("fixings.span_along", "length", "lower row to upper row of frame bolts", "10 mm", "4 m", "170 mm"),
)  # fmt: skip
STARTER = {"fixings.span_along": "170 mm"}
UNUSED = ("mount.route", "mount.warping_held", *_common.NO_JACK)  # no beams: the plate model alone


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out both rows of bolts and the cuts between each row and the motor."""
    thickness = picker.number("mount.thickness")
    width = picker.number("mount.width")
    free = picker.number("mount.free_length")
    motor, fixings = parts.motor, parts.fixings
    upper = layout.difference(fixings.span_along, free)
    _refuse(picker, parts, free, upper, width)
    _say_frame(picker)
    middle = layout.half(thickness)
    columns = _common.pattern(fixings)[1]
    reach, low_holes = _common.lower_motor_cut(motor)
    top, high_holes = _common.upper_motor_cut(motor)
    row = tuple((float(x), float(fixings.hole_diameter)) for x in columns)
    count = len(columns)
    below = Beyond(bolts=tuple(range(count)), contacts=(0,))
    above = Beyond(bolts=tuple(range(count, 2 * count)), contacts=(1,))
    size = (float(width), float(thickness))
    cuts = (
        _common.cross_cut("plate at the lower frame bolts", layout.opposite(free), middle, size, row, below),
        _common.cross_cut("plate at the lower motor bolts", layout.opposite(reach), middle, size, low_holes, below),
        _common.cross_cut("plate at the upper motor bolts", top, middle, size, high_holes, above),
        _common.cross_cut("plate at the upper frame bolts", upper, middle, size, row, above),
    )  # fmt: skip
    planes = tuple(
        BoltPlane(
            centre=(0.0, place, 0.0), first="x", second="y", normal="z",
            bolts=tuple((x, 0.0) for x in columns), half_first=layout.half(width),
            edge_second=fixings.edge, thickness=thickness, towards_motor=way, contacts=(number,),
        )
        for number, (place, way) in enumerate(((layout.opposite(free), 1.0), (upper, -1.0)))
    )  # fmt: skip
    area = float(width * (fixings.span_along + 2 * fixings.edge))
    return _common.mount(FORM, picker, parts, thickness, width, (), cuts, planes, area)


def _refuse(picker: Picker, parts: Parts, free: Value, upper: Number, width: Value) -> None:
    """Record mistakes when a row lies under the motor, or its bolts do not fit."""
    motor, fixings = parts.motor, parts.fixings
    washers = float(motor.bolts.thread.washer_diameter + fixings.washer_diameter) / 2
    lowest = float(_common.lower_motor_cut(motor)[0]) + washers
    highest = float(_common.upper_motor_cut(motor)[0]) + washers
    if free < lowest:
        picker.mistake(
            "mount.free_length",
            "is measured from the lower row to the shaft axis and must be at least "
            f"{1000 * lowest:.1f} mm, or washers of frame and motor meet",
            "check motor.bolt_circle",
        )
    if upper < highest:
        picker.mistake(
            "fixings.span_along",
            "is measured from the lower row to the upper one and must be at least "
            f"{1000 * (float(free) + highest):.1f} mm, so that the upper row lies above the motor bolts",
            "the form 'plate' has all its frame bolts on one side of the motor",
        )
    _common.refuse_narrow(picker, width, parts)


def _say_frame(picker: Picker) -> None:
    """Say what the frame member stands for."""
    if picker.card("frame.member") != "rigid":
        picker.warnings.append(
            "Both rows are bolted to parts of the frame; the member in [frame] stands for the lower one "
            "and takes the whole load. That is on the safe side if the upper part gives no more."
        )


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out the plate as one facet, bolts and a strip of contact at both its ends."""
    from ..plates import Contact, PlateModel  # heavy: only when asked for

    mount, edge = drive.mount, float(drive.fixings.edge)
    half, thickness = float(mount.width) / 2, float(mount.thickness)
    low, high = (float(plane.centre[1]) for plane in mount.planes)
    facet = _common.facet_of(
        drive, "plate", _common.rectangle(half, low - edge, high + edge),
        (0.0, 0.0, thickness / 2), (0.0, 1.0, 0.0), thickness, True,
    )  # fmt: skip
    bolts = [
        _common.frame_bolt_on(drive, 0, (float(x), row), -1, normal, tangential)
        for row, plane in zip((low, high), mount.planes, strict=True)
        for x, _ in plane.bolts
    ]
    strips = [_common.rectangle(half, row - edge, row + edge) for row in (low, high)]
    return PlateModel(
        facets=[facet], motor_bolts=_common.motor_bolts_on(drive, 0), motor_centre=(0.0, 0.0, 0.0),
        frame_bolts=bolts,
        contacts=[Contact(facet=0, side=-1, stiffness=pressing, region=s) for s in strips],
    )  # fmt: skip
