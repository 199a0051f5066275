"""Clamp block: a plate ear bolted to a split block that its own bolts clamp round a frame tube.

The ear is the plate of the form "plate": z = 0 to t, its bolts and contact behind its foot; behind them
is the block.  The tube runs across (along x, behind the ear) or with the shaft (along z, square to
the ear).  Block and clamp are stiff until they slip; the tube bends and twists as the frame member.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..fields import may, need
from ..formulas import layout
from ..model import Drive, Number
from ..mounting import BoltPlane, Mount
from ..worked import Value
from . import _clamped, _common
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import PlateModel

FORM = "clamp block"
TITLE = "plate ear on a split block clamped round a tube"
FIELDS = (
    need("mount.thickness", "length", "thickness of the ear of the block, which the motor is bolted to", "0.5 mm", "150 mm", "8 mm"),
    need("mount.width", "length", "width of the ear", "10 mm", "2 m", "120 mm"),
    need("mount.free_length", "length", "row of the ear's bolts nearest the motor to the shaft axis", "5 mm", "2 m", "85 mm"),
    may("mount.bolts_to_tube", "length", "middle of the ear's bolts to the axis of the tube, away from the motor", "-500 mm", "500 mm", ("0 mm", "0 mm", "0 mm"), "the bolts stand evenly about the tube"),
    may("mount.face_to_tube", "length", "tube across: back of the ear to the axis of the tube; with the shaft: to the middle of the grip", "3 mm", "500 mm", example="30 mm"),
    *_clamped.TUBE,
    need("fixings.clamp_bolts", "bolts", "number and size of the bolts that clamp the block round the tube", "", "", "4 x M8"),
    *_clamped.HOLD,
)  # fmt: skip
STARTER = {
    **_clamped.STARTER,
    "fixings.clamp_tightening_torque": "8 N*m",
    "fixings.span_along": "60 mm",
}
UNUSED = _clamped.UNUSED
COVER = (0.003, 0.006, 0.012)  # m of block between tube and ear


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out the ear on its bolts, and the clamp on the tube's axis."""
    thickness, width = picker.number("mount.thickness"), picker.number("mount.width")
    free, fixings = picker.number("mount.free_length"), parts.fixings
    reach = layout.nearest_motor_bolts(parts.motor.bolt_circle, parts.motor.bolts.number)
    _common.refuse_short(picker, "mount.free_length", free, reach)
    _common.refuse_narrow(picker, width, parts)
    rows, columns = _common.pattern(fixings)
    middle = layout.opposite(layout.total(free, layout.half(fixings.span_along)))
    ear = BoltPlane(
        centre=(0.0, middle, 0.0), first="x", second="y", normal="z",
        bolts=tuple((x, y) for y in rows for x in columns), half_first=layout.half(width),
        edge_second=fixings.edge, thickness=thickness, towards_motor=1.0, on_member=False,
    )  # fmt: skip
    with_shaft = _clamped.runs_with_shaft(picker)
    tube = _tube(picker, with_shaft, middle, width)
    holes = tuple((float(x), float(fixings.hole_diameter)) for x in columns)
    foot = _clamped.cut("ear at its bolts", layout.opposite(free), width, thickness, holes)
    area = float(width * (free + reach + fixings.span_along + 3 * fixings.edge))
    radius = layout.half(picker.number("frame.size"))
    return _common.mount(
        FORM, picker, parts, thickness, width, (),
        (foot, _clamped.motor_cut(parts.motor, reach, width, thickness)), (tube, ear), area,
        clamp=_clamped.placed(parts, with_shaft, tube, radius),
    )  # fmt: skip


def _tube(picker: Picker, with_shaft: bool, middle: Number, width: Value) -> BoltPlane:
    """Give the tube's surface towards the ear, or towards the motor where the tube is square to it."""
    size, grip = picker.number("frame.size"), picker.number("mount.grip_length")
    least = grip / 2 if with_shaft else size / 2
    low, likely, high = (grip / 2,) * 3 if with_shaft else (size / 2 + c for c in COVER)
    behind = picker.between("mount.face_to_tube", low, likely, high, "common practice, no source")
    if behind < least * (1 - 1e-9):
        what = "half the grip" if with_shaft else "half the tube"
        picker.mistake(
            "mount.face_to_tube", f"is less than {what} ({least * 1000:.1f} mm): the ear would cut into it"
        )  # fmt: skip
    axis = layout.difference(middle, picker.number("mount.bolts_to_tube"))
    radius = layout.half(size)
    if with_shaft:
        place = (0.0, layout.total(axis, radius), layout.opposite(behind))
        return _clamped.tube_plane(place, "y", width)
    return _clamped.tube_plane(
        (0.0, axis, layout.opposite(layout.difference(behind, radius))), "z", width
    )  # fmt: skip


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out the ear as one facet: its bolts, and the block that it presses on at its foot."""
    from ..plates import Contact, PlateModel  # heavy: only when asked for

    mount, edge = drive.mount, float(drive.fixings.edge)
    half, thickness = float(mount.width) / 2, float(mount.thickness)
    ear = mount.planes[1]
    middle, row = float(ear.centre[1]), float(mount.cuts[0].place[1])
    low = 2 * middle - row - edge
    facet = _common.facet_of(
        drive, "ear", _common.rectangle(half, low, _common.top_of(drive)),
        (0.0, 0.0, thickness / 2), (0.0, 1.0, 0.0), thickness, True,
    )  # fmt: skip
    bolts = [
        _common.frame_bolt_on(drive, 0, (float(x), middle + float(y)), -1, normal, tangential)
        for x, y in ear.bolts
    ]
    region = _common.rectangle(half, low, row + edge)
    return PlateModel(
        facets=[facet], motor_bolts=_common.motor_bolts_on(drive, 0), motor_centre=(0.0, 0.0, 0.0),
        frame_bolts=bolts, contacts=[Contact(facet=0, side=-1, stiffness=pressing, region=region)],
    )  # fmt: skip
