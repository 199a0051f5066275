"""Angle: a leg that carries the motor and a foot bolted to the frame."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..data.bends import least_radius
from ..fields import Field, may, need
from ..formulas import concentration, layout
from ..model import BoltPlane, Cut, Drive, Mount, Number, Segment
from ..worked import Value
from . import _common
from ._common import Parts, Picker

if TYPE_CHECKING:
    from ..plates import PlateModel

FORM = "angle"
TITLE = "angle: leg with the motor, foot on the frame"
FIELDS = (
    need("mount.width", "length", "width of the angle", "10 mm", "2 m", "120 mm"),
    need("mount.free_length", "length", "heel (top of the foot) to the shaft axis", "5 mm", "2 m", "90 mm"),
    need("mount.heel_to_bolts", "length", "leg to the nearest row of foot bolts", "3 mm", "1 m", "35 mm"),
    may("mount.foot_thickness", "length", "thickness of the foot when it differs", "0.5 mm", "150 mm"),
    may("mount.bend_radius", "length", "inside radius of the bend at the heel", "0.1 mm", "500 mm", example="16 mm"),
    Field(key="mount.foot_points", kind="choice", meaning="where the foot points", choices=("motor", "sprocket")),
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
    _common.warn_short(picker, layout.difference(free, reach), width)
    radius = _bend_radius(picker, parts, thickness, float(min(to_bolts, free - reach)))
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
    holes = tuple((float(x), float(fixings.hole_diameter)) for x in columns)
    b, t, tf = float(width), float(thickness), float(foot_thickness)
    cuts = (
        Cut(name="foot at the frame bolts", place=(0.0, foot_middle, row), axis="z", across="x",
            normal="y", width=b, thickness=tf, holes=holes, segment=0),
        Cut(name="foot at the heel", place=(0.0, foot_middle, middle), axis="z", across="x",
            normal="y", width=b, thickness=tf, holes=(), segment=0,
            inside_factor=_inside(radius, foot_thickness)),
        Cut(name="leg at the heel", place=(0.0, heel, middle), axis="y", across="x",
            normal="z", width=b, thickness=t, holes=(), segment=1,
            inside_factor=_inside(radius, thickness)),
        Cut(name="leg at the motor bolts", place=(0.0, motor_line, middle), axis="y", across="x",
            normal="z", width=b, thickness=t, holes=_common.motor_holes(motor, float(reach)), segment=1),
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
    return _common.mount(FORM, picker, parts, thickness, width, (foot, leg), cuts, (plane,), area)


TIGHT, USUAL, WIDE = 1.0, 2.0, 4.0  # inside radius over thickness
TIGHTEST = 0.5  # the same, of an extruded angle and of soft sheet
ROOM = 0.8  # of the way from the heel to the nearest bolts


def _bend_radius(picker: Picker, parts: Parts, thickness: Value, way: float) -> Value:
    """Give the inside radius of the heel; a rolled or extruded angle may be tighter than a bent one."""
    t, card = float(thickness), parts.material.card
    known = least_radius(card.id, t)
    least = known[0] if known else TIGHT * t
    tight = TIGHTEST if least < t or "extrusion" in card.form else TIGHT
    low, likely, high = tight * t, max(USUAL * t, least), max(WIDE * t, least)
    source = f"common practice, no source ({tight:g} to 4 thicknesses, bent, rolled or extruded)"
    if known and least > USUAL * t:
        source += f"; least bend radius: {known[1]}"
    low, likely, high = (min(radius, ROOM * way) for radius in (low, likely, high))
    radius = picker.between("mount.bend_radius", low, likely, high, source)
    if radius >= way:
        picker.mistake(
            "mount.bend_radius",
            f"reaches the nearest bolts, {way * 1000:.1f} mm from the heel",
            "it is the inside radius of the bend",
        )
    given = picker.optional("mount.bend_radius") is not None
    if known and given and radius < least * (1 - 1e-9):
        picker.warnings.append(
            f"mount.bend_radius: bent cold, {card.name} of {t * 1000:g} mm cracks when the inside "
            f"radius is below {least * 1000:.1f} mm ({known[1]}); by hand allow 1.5 times that. "
            "A rolled or extruded angle may be tighter."
        )
    return radius


def _inside(radius: Value, thickness: Value) -> Number:
    """Give the stress inside the bend over that of a straight bar."""
    middle = layout.half(thickness)
    return concentration.curved_bar_inside(layout.total(radius, middle), middle)


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out leg and foot as two facets that meet on their mid-planes; the whole foot bears."""
    from ..plates import Bend, Contact, PlateModel  # heavy: only when asked for

    mount, fixings = drive.mount, drive.fixings
    foot = mount.segments[0]
    half, thickness = float(mount.width) / 2, float(mount.thickness)
    corner, middle = float(foot.end[1]), float(foot.end[2])
    side = 1.0 if float(foot.start[2]) > middle else -1.0
    to_bolts, edge = float(foot.length), float(fixings.edge)
    along = float(fixings.span_along)
    upright = _common.facet_of(
        drive, "leg", _common.rectangle(half, corner, _common.top_of(drive)),
        (0.0, 0.0, middle), (0.0, 1.0, 0.0), thickness, True,
    )  # fmt: skip
    flat = _common.facet_of(
        drive, "foot", _common.rectangle(half, 0.0, to_bolts + along + edge),
        (0.0, corner, middle), (0.0, 0.0, side), float(foot.thickness), False,
    )  # fmt: skip
    under = 1 if side > 0 else -1  # the facet's normal is e1 x e2 = -side along y
    bolts = [
        _common.frame_bolt_on(
            drive, 1, (float(x), to_bolts + along / 2 + side * float(z)), under, normal, tangential
        )
        for x, z in mount.plane.bolts
    ]
    return PlateModel(
        facets=[upright, flat], motor_bolts=_common.motor_bolts_on(drive, 0),
        motor_centre=(0.0, 0.0, 0.0), frame_bolts=bolts,
        bends=[Bend(facets=(0, 1))],  # a fillet would stiffen the corner: left out, the safe side
        contacts=[Contact(facet=1, side=under, stiffness=pressing)],
    )  # fmt: skip
