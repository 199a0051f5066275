"""Angle: a leg that carries the motor and a foot bolted to the frame, with or without gussets."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from ..fields import Field, need
from ..formulas import layout
from ..model import Drive, Number
from ..mounting import BoltPlane, Cut, Gussets, Mount, Segment
from . import _angle, _common, _gussets, _heel, _welding
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import PlateModel

FORM = "angle"
TITLE = "angle: leg with the motor, foot on the frame"
FIELDS = (
    need("mount.thickness", "length", "thickness of the leg, and of the foot where no foot thickness is given", "0.5 mm", "150 mm", "8 mm"),
    need("mount.width", "length", "width of the angle", "10 mm", "2 m", "120 mm"),
    need("mount.free_length", "length", "heel (top of the foot) to the shaft axis", "5 mm", "2 m", "90 mm"),
    need("mount.heel_to_bolts", "length", "leg to the nearest row of foot bolts", "3 mm", "1 m", "35 mm"),
    _angle.FOOT_THICKNESS,
    _angle.BEND_RADIUS,
    _heel.FIELD,
    Field(key="mount.foot_points", kind="choice", meaning="where the foot points", choices=("motor", "sprocket")),
    *_gussets.FIELDS,
)  # fmt: skip


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out leg (along y) and foot (along z); the frame is under the foot."""
    thickness = picker.number("mount.thickness")
    width = picker.number("mount.width")
    free = picker.number("mount.free_length")
    to_bolts = picker.number("mount.heel_to_bolts")
    foot_thickness = picker.optional("mount.foot_thickness") or thickness
    side = -1.0 if picker.word("mount.foot_points", "motor") == "motor" else 1.0
    motor, fixings = parts.motor, parts.fixings
    reach = layout.nearest_motor_bolts(motor.bolt_circle, motor.bolts.number)
    _common.refuse_short(picker, "mount.free_length", free, reach)
    _common.refuse_narrow(picker, width, parts)
    middle = layout.half(thickness)
    heel, motor_line = layout.opposite(free), layout.opposite(reach)
    foot_middle = layout.opposite(layout.total(free, layout.half(foot_thickness)))
    foot_length = layout.total(to_bolts, middle)
    row = layout.difference(middle, foot_length) if side < 0 else layout.total(middle, foot_length)
    half = layout.half(fixings.span_along)
    centre = layout.difference(row, half) if side < 0 else layout.total(row, half)
    rows, columns = _common.pattern(fixings)
    leg = Segment(
        name="leg between heel and motor bolts",
        start=(0.0, heel, middle), end=(0.0, motor_line, middle), axis="y", across="x", normal="z",
        length=layout.difference(free, reach), width=width, thickness=thickness,
    )  # fmt: skip
    foot = Segment(
        name="foot between bolts and heel",
        start=(0.0, foot_middle, row), end=(0.0, foot_middle, middle), axis="z", across="x",
        normal="y", length=foot_length, width=width, thickness=foot_thickness,
    )  # fmt: skip
    plane = BoltPlane(
        centre=(0.0, layout.opposite(layout.total(free, foot_thickness)), centre),
        first="x", second="z", normal="y",
        bolts=tuple((x, z) for z in rows for x in columns),
        half_first=layout.half(width), edge_second=fixings.edge, thickness=foot_thickness,
        towards_motor=-side,
    )  # fmt: skip
    height = free + reach + fixings.edge
    depth = to_bolts + fixings.span_along + fixings.edge
    area = float(width * (height + depth * foot_thickness / thickness))
    cuts = _ends(parts, foot, leg, reach)
    heel = _heel.bears_from(picker, parts, thickness, to_bolts)
    bolts = [(float(x), float(to_bolts + half + side * z)) for x, z in plane.bolts]
    room = _gussets.Room(
        leg=float(free) + _common.top_of_motor(motor), foot=float(depth), axis=float(free),
        to_motor=side < 0, bolts=bolts,
    )  # fmt: skip
    gussets = _gussets.pick(picker, parts, thickness, width, room)
    if gussets is None:
        _common.warn_short(picker, leg.length, width)
        way = float(min(to_bolts, free - reach))
        radius = _angle.bend_radius(picker, parts, thickness, way)
        cut = _with_heel(cuts, foot, leg, radius)
        return _common.mount(
            FORM, picker, parts, thickness, width, (foot, leg), cut, (plane,), area, heel=heel
        )
    parts = _welding.welded(picker, parts)
    return _common.mount(
        FORM, picker, parts, thickness, width, (), _plain(picker, parts, gussets, cuts, to_bolts, leg),
        (plane,), area + _gussets.area(gussets, float(thickness)), gussets=gussets, heel=heel,
    )  # fmt: skip


def _ends(parts: Parts, foot: Segment, leg: Segment, reach: Number) -> tuple[Cut, Cut]:
    """Give the cuts through the holes at either end: foot and leg."""
    fixings, width = parts.fixings, float(foot.width)
    columns = _common.pattern(fixings)[1]
    return (
        Cut(name="foot at the frame bolts", place=foot.start, axis="z", across="x", normal="y",
            width=width, thickness=float(foot.thickness), segment=0,
            holes=tuple((float(x), float(fixings.hole_diameter)) for x in columns)),
        Cut(name="leg at the motor bolts", place=leg.end, axis="y", across="x", normal="z",
            width=width, thickness=float(leg.thickness), segment=1,
            holes=_common.motor_holes(parts.motor, float(reach))),
    )  # fmt: skip


def _with_heel(
    ends: tuple[Cut, Cut], foot: Segment, leg: Segment, radius: Number
) -> tuple[Cut, ...]:
    """Add the cuts on both sides of the heel between those of the ends."""
    width = float(foot.width)
    return (
        ends[0],
        Cut(name="foot at the heel", place=foot.end, axis="z", across="x", normal="y",
            width=width, thickness=float(foot.thickness), holes=(), segment=0,
            inside_factor=_angle.inside(radius, foot.thickness)),
        Cut(name="leg at the heel", place=leg.start, axis="y", across="x", normal="z",
            width=width, thickness=float(leg.thickness), holes=(), segment=1,
            inside_factor=_angle.inside(radius, leg.thickness)),
        ends[1],
    )  # fmt: skip


def _plain(
    picker: Picker, parts: Parts, gussets: Gussets, ends: tuple[Cut, Cut], to_bolts: Number, leg: Segment
) -> tuple[Cut, ...]:  # fmt: skip
    """Keep the cuts that gussets end short of: there the whole load goes through a plain section."""
    foot, motor = (replace(cut, segment=None) for cut in ends)
    kept = _gussets.above(picker, parts, gussets, motor, float(leg.length))
    if gussets.depth <= to_bolts - parts.fixings.hole_diameter / 2:
        return (foot, *kept)
    picker.warnings.append(_gussets.PAST_BOLTS)
    return kept


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out leg, foot and gussets as facets that meet on their mid-planes; the foot bears past its heel."""
    from ..plates import Bend, Contact, PlateModel  # heavy: only when asked for

    mount, fixings = drive.mount, drive.fixings
    plane, corner = mount.plane, _angle.corner_of(drive)
    to_centre = corner.side * (float(plane.centre[2]) - corner.z)
    length = to_centre + float(fixings.span_along) / 2 + float(fixings.edge)
    places = [(float(x), to_centre + corner.side * float(z)) for x, z in plane.bolts]
    bolts = [
        _common.frame_bolt_on(drive, 1, place, corner.under, normal, tangential) for place in places
    ]
    out = float(fixings.washer_diameter) / 2 + corner.foot_thickness
    lines = _gussets.lines(
        drive, corner, length, _gussets.motor_circles(drive, float(mount.thickness)),
        [(x, y, out) for x, y in places],
    )  # fmt: skip
    return PlateModel(
        facets=[*_angle.facets(drive, corner, length), *_gussets.facets(drive, corner)],
        motor_bolts=_common.motor_bolts_on(drive, 0), motor_centre=(0.0, 0.0, 0.0), frame_bolts=bolts,
        bends=[Bend(facets=(0, 1))],  # a fillet would stiffen the corner: left out, the safe side
        contacts=[Contact(facet=1, side=corner.under, stiffness=pressing)], section_lines=lines,
    )  # fmt: skip
