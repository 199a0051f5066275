"""Saddle: a plate ear welded to a saddle or half-shell that U-bolts or a band hold on a frame tube.

The ear is a flat plate from z = 0 to t as in the form "plate"; its lower edge is welded along y = -free
length to the saddle, which stands on the tube.  The tube runs across (along x, its axis under the
middle of the ear's thickness) or with the shaft (along z).  Saddle and clamp are stiff until they
slip; the tube bends and twists as the frame member.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from ..fields import choose, may, need
from ..formulas import layout, welds
from ..model import Drive
from ..mounting import Mount, Weld
from ..worked import Value
from . import _clamped, _common, _welding
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import PlateModel

FORM = "saddle"
TITLE = "plate ear on a saddle, held on a tube by U-bolts or a band"
FIELDS = (
    need("mount.thickness", "length", "thickness of the ear, which the motor is bolted to", "0.5 mm", "150 mm", "8 mm"),
    need("mount.width", "length", "width of the ear", "10 mm", "2 m", "100 mm"),
    need("mount.free_length", "length", "weld along the ear's lower edge to the shaft axis", "5 mm", "2 m", "85 mm"),
    may("mount.stand_off", "length", "surface of the tube out to the weld: the thickness or height of the saddle", "0 mm", "200 mm", ("2 mm", "4 mm", "8 mm")),
    may("mount.weld_length", "length", "length of the weld along the ear's lower edge; when left out the whole width, at most the size of a tube that is square to the ear", "5 mm", "2 m", example="80 mm"),
    may("fixings.weld_leg", "length", "leg of the fillet weld", "1 mm", "30 mm", example="4 mm"),
    choose("fixings.weld_sides", "sides of the ear that are welded", ("both", "one")),
    _welding.QUALITY,
    _welding.ULTIMATE,
    *_clamped.TUBE,
    choose("fixings.clamp", "what pulls the saddle on the tube", ("u-bolts", "band")),
    need("fixings.clamp_bolts", "bolts", "number of U-bolts or bands, and their thread", "", "", "2 x M8"),
    *_clamped.HOLD,
)  # fmt: skip
STARTER = {
    **_clamped.STARTER, "fixings.clamp_tightening_torque": "12 N*m", "fixings.weld_sides": "both",
}  # fmt: skip
UNUSED = (
    *_clamped.UNUSED, "fixings.bolts", "fixings.bolt_class", "fixings.span_across",
    "fixings.span_along", "fixings.edge", "fixings.tightening_torque", "fixings.preload",
    "fixings.surface", "fixings.friction", "fixings.washer", "fixings.holes", "fixings.slot_length",
    "fixings.slots_run", "fixings.joint_stiffness", *_common.NO_JACK,
)  # fmt: skip
LEG = (0.5, 0.7, 1.0)  # of the ear's thickness


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out the ear, its weld, and the clamp on the tube's axis."""
    thickness, width = picker.number("mount.thickness"), picker.number("mount.width")
    free, stand_off = picker.number("mount.free_length"), picker.number("mount.stand_off")
    reach = layout.nearest_motor_bolts(parts.motor.bolt_circle, parts.motor.bolts.number)
    _common.refuse_short(picker, "mount.free_length", free, reach)
    _common.refuse_narrow(picker, width, parts)
    parts = _welding.welded(picker, parts)
    _welding.warn_aluminium(picker, parts)
    with_shaft, size = _clamped.runs_with_shaft(picker), picker.number("frame.size")
    weld = _weld(picker, parts, width, thickness, size if with_shaft and size < width else width)
    middle = layout.half(thickness)
    surface = layout.opposite(layout.total(free, stand_off))
    plane = _clamped.tube_plane((0.0, surface, middle), "y", width)
    at_weld = replace(
        _clamped.cut("ear at its weld", layout.opposite(free), weld.length, thickness, ()),
        toe=True,
    )
    return _common.mount(
        FORM, picker, parts, thickness, width, (),
        (at_weld, _clamped.motor_cut(parts.motor, reach, width, thickness)), (plane,),
        float(width * (free + reach)), welds=(weld,),
        clamp=_clamped.placed(parts, with_shaft, plane, layout.half(size)),
    )  # fmt: skip


def _weld(picker: Picker, parts: Parts, width: Value, thickness: Value, usual: Value) -> Weld:
    """Give the weld along the ear's lower edge."""
    length = picker.optional("mount.weld_length") or usual
    if length > width:
        picker.mistake(
            "mount.weld_length", f"is longer than the ear is wide ({width * 1000:.1f} mm)"
        )
    low, likely, high = (share * thickness for share in LEG)
    leg = picker.between("fixings.weld_leg", low, likely, high, "common practice, no source")
    both = picker.word("fixings.weld_sides", "one") == "both"
    full = welds.fillet_throat(leg)
    sound = welds.sound_throat(full, picker.number("fixings.weld_quality"))
    return _welding.weld(
        picker, parts, "ear to saddle", "mount.weld_length", length, full, sound, "x",
        thickness if both else 0.0,
    )  # fmt: skip


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out the ear as one facet, welded along its lower edge to a saddle that does not give."""
    from ..plates import LineWeld, PlateModel, SectionLine  # heavy: only when asked for

    mount, (weld,) = drive.mount, drive.mount.welds
    thickness = float(mount.thickness)
    low = float(mount.cuts[0].place[1])
    half, side = float(weld.length) / 2, float(mount.width) / 2
    outline = _common.rectangle(side, low, _common.top_of(drive))
    facet = _common.facet_of(
        drive, "ear", outline, (0.0, 0.0, thickness / 2), (0.0, 1.0, 0.0), thickness, True
    )
    # held against turning about its line as well, even by a single fillet: else the ear would swing
    line = LineWeld(
        facet=0, start=(-half, low), end=(half, low),
        stiffness=_welding.stiffness(mount, weld),
    )  # fmt: skip
    toe = low + thickness  # stress is read one thickness off the weld
    return PlateModel(
        facets=[facet], motor_bolts=_common.motor_bolts_on(drive, 0), motor_centre=(0.0, 0.0, 0.0),
        welds=[line],
        section_lines=[SectionLine(facet=0, start=(-side, toe), end=(side, toe))],
    )  # fmt: skip
