"""Channel: a piece of U section, the motor on its web, the web bolted to the frame along the bottom.

    seen along the shaft              seen from the side
    (flanges point at the reader)     (they point to the motor, or to the sprocket)

      ||-----------------||                 ___________
      ||      o   o      ||          motor [___________]=====|  sprocket
      ||        O        || shaft            flange    ||
      ||      o   o      ||           :::::::::::::::::||
      ||                 ||                            ||#####
      ||  o    o    o    || frame bolts                ||# frame, against the flat back
      ||-----------------||                            ||#####

The commonest way to use one: the web lies flat on the frame and the flanges, at x = +-width / 2, run
up both sides as stiffeners over its whole length.  A channel on its back between two rails is
another form.  Axes as in DEVELOPERS.md: the web fills z = 0 to t, the motor behind it.  The frame
always lies against the flat back of the web: in front of it (z = t) when the flanges point to the
motor, which then hangs between them; behind it (z = 0), as with a plate, when they point to the sprocket.

The web bends between its bolts and drags the flanges along: no beam works on that, so the plate model
alone answers, and there is no cut of which the load is known without it.  Stress is read round the
washers, across the web and along both flange tips; fatigue of the channel is not checked.

A channel twists about a line off its web.  Pulled across, with the flanges to the motor, a sprocket
nearer the face can therefore load the frame bolts a little more: their slip limit fell by up to
0.8 % for a fifth less overhang (computed); every other limit rises.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from ..fields import choose, need
from ..formulas import layout
from ..model import Drive
from ..mounting import BoltPlane, Mount
from ..worked import Value
from . import _common
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import PlateModel, SectionLine

FORM = "channel"
TITLE = "channel: web with the motor, bolted to the frame along the bottom, flanges up both sides"
FIELDS = (
    need("mount.thickness", "length", "thickness of web and flanges alike", "0.5 mm", "50 mm", "6 mm"),
    need("mount.width", "length", "width of the web, outside to outside of the flanges", "10 mm", "2 m", "120 mm"),
    need("mount.flange_height", "length", "back of the web to the tips of the flanges", "5 mm", "500 mm", "40 mm"),
    need("mount.free_length", "length", "frame bolt row nearest the motor to the shaft axis", "5 mm", "2 m", "85 mm"),
    choose("mount.flanges_point", "where the flanges point; the frame is on the other side", ("motor", "sprocket")),
)  # fmt: skip
UNUSED = ("mount.route", "mount.warping_held")  # no beams: the plate model alone
STARTER = {
    "mount.thickness": "6 mm",
    "mount.width": "140 mm",
    "mount.flange_height": "40 mm",
    "chain.pull": "away",
}
INSET = 0.995  # of the way to an edge or a bend: where stress is read beside it


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out the bolts in the web; the frame lies against its back."""
    thickness, width = picker.number("mount.thickness"), picker.number("mount.width")
    height = picker.number("mount.flange_height")
    free = picker.number("mount.free_length")
    to_motor = picker.word("mount.flanges_point", "motor") == "motor"
    motor, fixings = parts.motor, parts.fixings
    reach = layout.nearest_motor_bolts(motor.bolt_circle, motor.bolts.number)
    _common.refuse_short(picker, "mount.free_length", free, reach)
    _refuse(picker, parts, width, height, to_motor)
    _warn(picker, height, to_motor)
    rows, columns = _common.pattern(fixings)
    row_middle = layout.total(free, layout.half(fixings.span_along))
    plane = BoltPlane(
        centre=(0.0, layout.opposite(row_middle), thickness if to_motor else 0.0),
        first="x", second="y", normal="z", bolts=tuple((x, y) for y in rows for x in columns),
        half_first=layout.half(width), edge_second=fixings.edge, thickness=thickness,
        towards_motor=1.0,
    )  # fmt: skip
    area = float((width + 2 * height) * (free + reach + fixings.span_along + 3 * fixings.edge))
    own = {"flange height": height, "flange side": -1.0 if to_motor else 1.0}
    return _common.mount(
        FORM, picker, parts, thickness, width, (), (), (plane,), area, own=own,
        side=float(width) / 2 - float(thickness),
    )  # fmt: skip


def _refuse(
    picker: Picker, parts: Parts, width: Value, height: Value, to_motor: bool
) -> None:  # fmt: skip
    """Record mistakes when flanges, bolts and motor do not fit beside one another."""
    motor, fixings, thickness = parts.motor, parts.fixings, picker.number("mount.thickness")
    clear = float(width - 2 * thickness)
    between = f"does not fit between the flanges, which are {1000 * clear:.1f} mm apart inside"
    if clear <= 0:
        picker.mistake("mount.width", "is less than the two flanges are thick")
        return
    if height <= 2 * thickness:
        picker.mistake(
            "mount.flange_height", f"is measured from the back of the web and must be over {2000 * thickness:.1f} mm",
            "a strip without flanges is the form 'plate'",
        )  # fmt: skip
    if fixings.span_across + fixings.washer_diameter > clear:
        picker.mistake("fixings.span_across", f"with its washers {between}")
    _common.refuse_narrow(picker, width, parts)
    washer = float(motor.bolts.thread.washer_diameter)
    half_span = layout.motor_bolt_half_span(motor.bolt_circle, motor.bolts.number)
    needs = float(motor.bolt_circle if to_motor else 2 * half_span) + washer
    if needs > clear:
        what = "with the motor round it" if to_motor else "with its washers"
        picker.mistake("motor.bolt_circle", f"{what} {between}", "a wider channel, or a plate")


def _warn(picker: Picker, height: Value, to_motor: bool) -> None:
    """Say where chain or motor may meet a flange, and what is not checked."""
    if not to_motor and height > picker.number("shaft.face_overhang"):
        picker.warnings.append(
            "The flanges stand higher than the chain runs: it must leave along the channel, between them."
        )
    picker.warnings.append(
        "Fatigue of the channel is not checked: no section of it has a load known without the plate model."
    )


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out web and two flanges, met on their mid-planes; the web's back bears on the frame."""
    from ..plates import Contact, PlateModel  # heavy: only when asked for

    mount, edge = drive.mount, float(drive.fixings.edge)
    thickness = float(mount.thickness)
    half = (float(mount.width) - thickness) / 2
    side = float(mount.own["flange side"])
    span = float(drive.fixings.span_along)
    middle_row = float(mount.plane.centre[1])
    low, top = middle_row - span / 2 - edge, _common.top_of(drive)
    web = _common.facet_of(
        drive, "web", _common.rectangle(half, low, top), (0.0, 0.0, thickness / 2),
        (0.0, 1.0, 0.0), thickness, True,
    )  # fmt: skip
    tip = float(mount.own["flange height"]) - thickness / 2
    flanges = [
        _common.facet_of(
            drive, name, [(0.0, low), (tip, low), (tip, top), (0.0, top)],
            (x, 0.0, thickness / 2), (0.0, 1.0, 0.0), thickness, False, e1=(0.0, 0.0, side),
        )
        for name, x in (("flange at x < 0", -half), ("flange at x > 0", half))
    ]  # fmt: skip
    bolts = [
        _common.frame_bolt_on(
            drive, 0, (float(x), middle_row + float(y)), -int(side), normal, tangential
        )
        for x, y in mount.plane.bolts
    ]
    under = _common.rectangle(half, low, middle_row + span / 2 + edge)
    return PlateModel(
        facets=[web, *flanges], motor_bolts=_common.motor_bolts_on(drive, 0),
        motor_centre=(0.0, 0.0, 0.0), frame_bolts=bolts,
        contacts=[Contact(facet=0, side=-int(side), stiffness=pressing, region=under)],
        section_lines=_lines(drive, half - thickness / 2, tip, (low, top)),
    )  # fmt: skip


def _lines(drive: Drive, inside: float, tip: float, ends: tuple[float, float]) -> list[SectionLine]:
    """Give lines across the web beside the bolts, and along both flange tips."""
    from ..plates import SectionLine

    mount, fixings, motor = drive.mount, drive.fixings, drive.motor
    thickness = float(mount.thickness)
    row = float(mount.plane.centre[1]) + float(fixings.span_along) / 2
    reach = float(layout.nearest_motor_bolts(motor.bolt_circle, motor.bolts.number))
    above = row + float(fixings.washer_diameter) / 2 + thickness
    below = -reach - float(motor.bolts.thread.washer_diameter) / 2 - thickness
    x, places = INSET * inside, [above, below] if above < below else [(above + below) / 2]
    found = [SectionLine(facet=0, start=(-x, y), end=(x, y)) for y in places]
    found += [
        SectionLine(
            facet=i, start=(INSET * tip, INSET * ends[0]), end=(INSET * tip, INSET * ends[1])
        )
        for i in (1, 2)
    ]
    return found
