"""Flat plate welded to the frame along its lower edge, which stands on the frame.

The plate stands square on the frame's face, as the leg of an angle does; axes as in DEVELOPERS.md,
the frame's face at y = -free length.  A fillet runs along the whole edge, on both faces of the plate
or on one.  The weld holds both ways, so no contact of the edge with the frame is counted.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from ..fields import need
from ..formulas import layout
from ..model import Drive
from ..mounting import BoltPlane, Cut, Mount, Segment
from . import _common, _welding
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import PlateModel

FORM = "welded plate"
TITLE = "flat plate, welded to the frame along its lower edge"
FIELDS = (
    need("mount.width", "length", "width of the plate, along the weld", "10 mm", "2 m", "120 mm"),
    need("mount.free_length", "length", "welded edge to the shaft axis", "5 mm", "2 m", "90 mm"),
    _welding.LEG,
    replace(_welding.SIDES, required=True, example="both"),
    _welding.QUALITY,
    _welding.ULTIMATE,
)  # fmt: skip
UNUSED = (*_welding.NO_BOLTS, *_common.NO_FACE)
STARTER = {"mount.material": "s235", "mount.thickness": "6 mm"}


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out the plate as a beam from the weld to the motor bolts."""
    thickness = picker.number("mount.thickness")
    width = picker.number("mount.width")
    free = picker.number("mount.free_length")
    motor = parts.motor
    reach = layout.nearest_motor_bolts(motor.bolt_circle, motor.bolts.number)
    _common.refuse_short(picker, "mount.free_length", free, reach)
    _common.refuse_narrow_motor(picker, width, parts)
    length = layout.difference(free, reach)
    _common.warn_short(picker, length, width)
    parts = _welding.welded(picker, parts)
    _welding.warn_aluminium(picker, parts)
    both = picker.word("fixings.weld_sides", "both") == "both"
    if not both:
        picker.warnings.append(
            "Welded on one side, the fillet is bent about its own line; EN 1993-1-8 clause 4.12 asks to avoid that."
        )
    weld = _welding.weld(
        picker, parts, "weld along the plate's edge", "mount.width", width,
        *_welding.throats(picker, thickness), "x", thickness if both else 0.0,
    )  # fmt: skip
    edge, motor_line = layout.opposite(free), layout.opposite(reach)
    middle = layout.half(thickness)
    segment = Segment(
        name="plate between weld and motor bolts",
        start=(0.0, edge, middle), end=(0.0, motor_line, middle),
        axis="y", across="x", normal="z", length=length, width=width, thickness=thickness,
    )  # fmt: skip
    cuts = (
        Cut(name="plate at the weld", place=segment.start, axis="y", across="x", normal="z",
            width=float(width), thickness=float(thickness), holes=(), segment=0, toe=True),
        Cut(name="plate at the motor bolts", place=segment.end, axis="y", across="x", normal="z",
            width=float(width), thickness=float(thickness), segment=0,
            holes=_common.motor_holes(motor, float(reach))),
    )  # fmt: skip
    plane = BoltPlane(
        centre=(0.0, edge, middle), first="x", second="z", normal="y", bolts=(),
        half_first=layout.half(width), edge_second=middle, thickness=thickness, towards_motor=0.0,
        contacts=(),
    )  # fmt: skip
    area = float(width) * (float(free) + _common.top_of_motor(motor))
    return _common.mount(
        FORM, picker, parts, thickness, width, (segment,), cuts, (plane,), area, welds=(weld,)
    )


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out the plate as one facet on a row of springs; stress is read one thickness off the weld."""
    from ..plates import LineWeld, PlateModel, SectionLine  # heavy: only when asked for

    mount = drive.mount
    half, thickness = float(mount.width) / 2, float(mount.thickness)
    low = float(mount.plane.centre[1])
    facet = _common.facet_of(
        drive, "plate", _common.rectangle(half, low, _common.top_of(drive)),
        (0.0, 0.0, thickness / 2), (0.0, 1.0, 0.0), thickness, True,
    )  # fmt: skip
    weld = LineWeld(
        facet=0, start=(-half, low), end=(half, low), double_sided=True,
        stiffness=_welding.stiffness(mount, mount.welds[0]),
    )  # fmt: skip
    line = low + thickness
    return PlateModel(
        facets=[facet], motor_bolts=_common.motor_bolts_on(drive, 0), motor_centre=(0.0, 0.0, 0.0),
        welds=[weld], section_lines=[SectionLine(facet=0, start=(-half, line), end=(half, line))],
    )  # fmt: skip
