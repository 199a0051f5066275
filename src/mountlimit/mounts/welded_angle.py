"""Angle whose foot is welded to the frame, with or without gussets.

The foot lies on the frame as in the form "angle".  Fillets run along toe and heel (both along the
width, the usual way on a rail no wider than the foot), along both side edges of the foot, or all
round.  Each is a single fillet and counts as a hinge about its own line; the foot also presses on the
frame, so that a leg leaning over the foot prys at the heel.  The plate model alone works it out: no
beam holds for a foot welded at its edges.  The fillets' lines are drawn on the mid-plane of the foot.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..fields import Field, choose, need
from ..formulas import layout
from ..model import Drive, Number
from ..mounting import BoltPlane, Cut, Gussets, Mount, Weld
from ..worked import Value
from . import _angle, _common, _gussets, _welding
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import LineWeld, PlateModel, SectionLine

FORM = "welded angle"
TITLE = "angle: leg with the motor, foot welded to the frame"
TOE_AND_HEEL, SIDES, ROUND = "toe and heel", "both sides", "all round"
FIELDS = (
    need("mount.thickness", "length", "thickness of the leg, and of the foot where no foot thickness is given", "0.5 mm", "150 mm", "8 mm"),
    need("mount.width", "length", "width of the angle", "10 mm", "2 m", "120 mm"),
    need("mount.free_length", "length", "heel (top of the foot) to the shaft axis", "5 mm", "2 m", "90 mm"),
    need("mount.foot_depth", "length", "leg to the toe of the foot", "10 mm", "1 m", "50 mm"),
    _angle.FOOT_THICKNESS,
    _angle.BEND_RADIUS,
    Field(key="mount.foot_points", kind="choice", meaning="where the foot points", choices=("motor", "sprocket")),
    *_gussets.FIELDS,
    _welding.LEG,
    choose("fixings.weld_lines", "edges of the foot that are welded", (TOE_AND_HEEL, SIDES, ROUND)),
    _welding.QUALITY,
    _welding.ULTIMATE,
)  # fmt: skip
UNUSED = (*_welding.NO_BOLTS, *_common.NO_FACE, "mount.route", "mount.warping_held")
STARTER = {"mount.material": "s235", "mount.thickness": "6 mm"}
PRY = 2.0  # foot thicknesses from the leg: contact points there stand closer


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out leg (along y) and foot (along z); the frame is under the foot."""
    thickness = picker.number("mount.thickness")
    width = picker.number("mount.width")
    free = picker.number("mount.free_length")
    depth = picker.number("mount.foot_depth")
    foot_thickness = picker.optional("mount.foot_thickness") or thickness
    side = -1.0 if picker.word("mount.foot_points", "motor") == "motor" else 1.0
    motor = parts.motor
    reach = layout.nearest_motor_bolts(motor.bolt_circle, motor.bolts.number)
    _common.refuse_short(picker, "mount.free_length", free, reach)
    _common.refuse_narrow_motor(picker, width, parts)
    parts = _welding.welded(picker, parts)
    _welding.warn_aluminium(picker, parts)
    room = _gussets.Room(
        leg=float(free) + _common.top_of_motor(motor), foot=float(depth), axis=float(free),
        to_motor=side < 0,
    )  # fmt: skip
    gussets = _gussets.pick(picker, parts, thickness, width, room)
    middle = layout.half(thickness)
    half = layout.half(layout.total(depth, middle))
    centre = layout.difference(middle, half) if side < 0 else layout.total(middle, half)
    plane = BoltPlane(
        centre=(0.0, layout.opposite(layout.total(free, foot_thickness)), centre),
        first="x", second="z", normal="y", bolts=(), half_first=layout.half(width),
        edge_second=half, thickness=foot_thickness, towards_motor=-side, contacts=(0, 1),
    )  # fmt: skip
    cuts = _cuts(picker, parts, thickness, width, (free, reach), gussets)
    height = float(free) + _common.top_of_motor(motor)
    area = float(width) * (height + float(depth * foot_thickness / thickness))
    return _common.mount(
        FORM, picker, parts, thickness, width, (), cuts, (plane,),
        area + _gussets.area(gussets, float(thickness)), gussets=gussets,
        welds=_welds(picker, parts, foot_thickness, width, depth),
    )  # fmt: skip


def _welds(
    picker: Picker, parts: Parts, foot_thickness: Value, width: Value, depth: Value
) -> tuple[Weld, ...]:
    """Give the fillets of the foot, in the order of ``_lines``."""
    lines = picker.word("fixings.weld_lines", TOE_AND_HEEL)
    full, sound = _welding.throats(picker, foot_thickness)
    long = [
        ("weld at the heel", "mount.width", width, "x"),
        ("weld at the toe", "mount.width", width, "x"),
    ]
    short = [
        (f"weld at the {way} side", "mount.foot_depth", depth, "z") for way in ("left", "right")
    ]
    wanted = [*(long if lines != SIDES else ()), *(short if lines != TOE_AND_HEEL else ())]
    return tuple(
        _welding.weld(picker, parts, name, key, length, full, sound, along)
        for name, key, length, along in wanted
    )


def _cuts(
    picker: Picker, parts: Parts, thickness: Value, width: Value, lengths: tuple[Number, Number],
    gussets: Gussets | None,
) -> tuple[Cut, ...]:  # fmt: skip
    """Give the cuts of the leg: at its heel, where no gussets are, and at the motor bolts."""
    (free, reach), motor = lengths, parts.motor
    middle, long = layout.half(thickness), float(free - reach)
    at_motor = Cut(
        name="leg at the motor bolts", place=(0.0, layout.opposite(reach), middle), axis="y",
        across="x", normal="z", width=float(width), thickness=float(thickness),
        holes=_common.motor_holes(motor, float(reach)),
    )  # fmt: skip
    if gussets is not None:
        return _gussets.above(picker, parts, gussets, at_motor, long)
    radius = _angle.bend_radius(picker, parts, thickness, long)
    at_heel = Cut(
        name="leg at the heel", place=(0.0, layout.opposite(free), middle), axis="y", across="x",
        normal="z", width=float(width), thickness=float(thickness), holes=(),
        inside_factor=_angle.inside(radius, thickness), toe=True,
    )  # fmt: skip
    return (at_heel, at_motor)


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out leg, foot and gussets; the foot bears on the frame between its welds."""
    from ..plates import Bend, Contact, PlateModel  # heavy: only when asked for

    mount, corner = drive.mount, _angle.corner_of(drive)
    length = 2 * abs(float(mount.plane.centre[2]) - corner.z)
    circles = _gussets.motor_circles(drive, float(mount.thickness))
    return PlateModel(
        facets=[*_angle.facets(drive, corner, length), *_gussets.facets(drive, corner)],
        motor_bolts=_common.motor_bolts_on(drive, 0), motor_centre=(0.0, 0.0, 0.0),
        welds=_lines(mount, length),
        bends=[Bend(facets=(0, 1))],  # a fillet would stiffen the corner: left out, the safe side
        contacts=[
            Contact(facet=1, side=corner.under, stiffness=pressing, region=region)
            for region in _bearing(mount, corner, length)
        ],
        section_lines=[
            *_foot_lines(mount, corner, length), *_gussets.lines(drive, corner, length, circles, ()),
        ],
    )  # fmt: skip


def _bearing(mount: Mount, corner: _angle.Corner, length: float) -> list[_common.Outline]:
    """Give two strips of the foot: at the heel, where the foot prys, contact points stand closer."""
    half, near = float(mount.width) / 2, min(PRY * corner.foot_thickness, length / 2)
    return [_common.rectangle(half, 0.0, near), _common.rectangle(half, near, length)]


def _lines(mount: Mount, length: float) -> list[LineWeld]:
    """Give the fillets on the foot in the order of the mount's welds."""
    from ..plates import LineWeld

    half = float(mount.width) / 2
    ends = {
        "weld at the heel": ((-half, 0.0), (half, 0.0)),
        "weld at the toe": ((-half, length), (half, length)),
        "weld at the left side": ((-half, 0.0), (-half, length)),
        "weld at the right side": ((half, 0.0), (half, length)),
    }
    return [
        LineWeld(
            facet=1, start=ends[weld.name][0], end=ends[weld.name][1], double_sided=False,
            stiffness=_welding.shear_modulus(mount),
        )
        for weld in mount.welds
    ]  # fmt: skip


def _foot_lines(mount: Mount, corner: _angle.Corner, length: float) -> list[SectionLine]:
    """Give lines on the foot one thickness off the leg's face and off every other weld."""
    t, half = corner.foot_thickness, float(mount.width) / 2
    low, high = float(mount.thickness) / 2 + t, length - t
    names = {weld.name for weld in mount.welds}
    found = _gussets.pieces(1, (-half, low), (half, low), (), t) if mount.gussets is None else []
    if "weld at the toe" in names:
        found += _gussets.pieces(1, (-half, high), (half, high), (), t)
    if "weld at the left side" in names:
        for x in (-half + t, half - t):
            found += _gussets.pieces(1, (x, low), (x, high), (), t)
    return found
