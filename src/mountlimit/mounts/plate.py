"""Flat plate: bolted to the frame along one edge, the motor's face bolted to it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from ..fields import need
from ..formulas import layout
from ..model import Drive, Number
from ..mounting import BoltPlane, Cut, Mount, Segment
from ..worked import Value
from . import _common
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import PlateModel

FORM = "plate"
TITLE = "flat plate, bolted to the frame along one edge"
FIELDS = (
    need("mount.width", "length", "width of the plate", "10 mm", "2 m", "120 mm"),
    need("mount.free_length", "length", "frame bolt row nearest the motor to the shaft axis", "5 mm", "2 m", "90 mm"),
)  # fmt: skip


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out the plate: x across, y from the bolt row to the shaft, z through the thickness."""
    lay = lay_out(picker, parts, 0)
    length = layout.difference(lay.free, lay.reach)
    _common.warn_short(picker, length, lay.width)
    middle = layout.half(lay.thickness)
    segment = Segment(
        name="plate between frame bolts and motor bolts",
        start=(0.0, layout.opposite(lay.free), middle), end=(0.0, layout.opposite(lay.reach), middle),
        axis="y", across="x", normal="z", length=length, width=lay.width, thickness=lay.thickness,
    )  # fmt: skip
    return _common.mount(
        FORM, picker, parts, lay.thickness, lay.width, (segment,), lay.cuts, (lay.plane,), lay.area
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """A flat plate between its frame bolts and the motor's."""

    thickness: Value
    width: Value
    free: Value
    reach: Number  # shaft axis to the nearest motor bolts
    cuts: tuple[Cut, ...]
    plane: BoltPlane
    area: float


def lay_out(picker: Picker, parts: Parts, segment: int | None) -> Layout:
    """Read a flat plate and lay out its cuts and its bolts."""
    thickness = picker.number("mount.thickness")
    width = picker.number("mount.width")
    free = picker.number("mount.free_length")
    motor, fixings = parts.motor, parts.fixings
    reach = layout.nearest_motor_bolts(motor.bolt_circle, motor.bolts.number)
    _common.refuse_short(picker, "mount.free_length", free, reach)
    _common.refuse_narrow(picker, width, parts)
    foot_line, motor_line = layout.opposite(free), layout.opposite(reach)
    middle = layout.half(thickness)
    rows, columns = _common.pattern(fixings)
    cuts = (
        Cut(
            name="plate at the frame bolts", place=(0.0, foot_line, middle), axis="y", across="x",
            normal="z", width=float(width), thickness=float(thickness),
            holes=tuple((float(x), float(fixings.hole_diameter)) for x in columns), segment=segment,
        ),
        Cut(
            name="plate at the motor bolts", place=(0.0, motor_line, middle), axis="y", across="x",
            normal="z", width=float(width), thickness=float(thickness),
            holes=_common.motor_holes(motor, float(reach)), segment=segment,
        ),
    )  # fmt: skip
    plane = BoltPlane(
        centre=(0.0, layout.opposite(layout.total(free, layout.half(fixings.span_along))), 0.0),
        first="x", second="y", normal="z",
        bolts=tuple((x, y) for y in rows for x in columns),
        half_first=layout.half(width), edge_second=fixings.edge, thickness=thickness,
        towards_motor=1.0,
    )  # fmt: skip
    area = float(width * (free + reach + fixings.span_along + 3 * fixings.edge))
    return Layout(
        thickness=thickness, width=width, free=free, reach=reach, cuts=cuts, plane=plane, area=area
    )


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out the plate as one facet: frame bolts and contact at its foot, the motor's bolts above."""
    from ..plates import Contact, PlateModel  # heavy: only when the plate route is asked for

    mount, fixings = drive.mount, drive.fixings
    half, thickness = float(mount.width) / 2, float(mount.thickness)
    row = float(mount.cuts[0].place[1])
    last = row - float(fixings.span_along)
    edge = float(fixings.edge)
    outline = _common.rectangle(half, last - edge, _common.top_of(drive))
    facet = _common.facet_of(
        drive, "plate", outline, (0.0, 0.0, thickness / 2), (0.0, 1.0, 0.0), thickness, True
    )
    middle = (row + last) / 2
    bolts = [
        _common.frame_bolt_on(drive, 0, (float(x), middle + float(y)), -1, normal, tangential)
        for x, y in mount.plane.bolts
    ]
    region = _common.rectangle(half, last - edge, row + edge)
    return PlateModel(
        facets=[facet], motor_bolts=_common.motor_bolts_on(drive, 0), motor_centre=(0.0, 0.0, 0.0),
        frame_bolts=bolts, contacts=[Contact(facet=0, side=-1, stiffness=pressing, region=region)],
    )  # fmt: skip
