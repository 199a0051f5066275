"""Flat plate with a strut: the plate form, held at the motor's rear or at the plate's top as well.

The strut is a straight bar that turns freely at both ends; it pulls and presses along itself only.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from ..fields import COMMON, Field, choose, may, need
from ..formulas import layout, struts
from ..model import Drive, Number
from ..mounting import Beyond, Cut, Mount, Rod, Substance
from ..worked import Value
from . import _common, plate
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import PlateModel

FORM = "plate with strut"
TITLE = "flat plate with a strut from the motor's rear or the plate's top to the frame"
SECOND = True  # the strut
UNUSED = ("second.thickness", "mount.warping_held")
FIELDS = (
    *plate.FIELDS,
    Field(key="second.material", kind="material", required=True, example="S235", meaning="what the strut is made of"),
    choose("mount.strut_from", "where the strut starts", ("motor", "plate")),
    may("mount.strut_diameter", "length", "outer diameter of a round strut", "2 mm", "200 mm", example="12 mm"),
    may("mount.strut_bore", "length", "inner diameter, when it is a tube", "1 mm", "190 mm", example="9 mm"),
    may("mount.strut_width", "length", "width of a flat strut", "4 mm", "300 mm", example="20 mm"),
    may("mount.strut_thickness", "length", "thickness of a flat strut", "1 mm", "100 mm", example="5 mm"),
    need("mount.strut_start_height", "length", "start of the strut above the shaft axis, away from the frame bolts", "-1 m", "1 m", "0 mm"),
    may("mount.strut_start_behind", "length", "start behind the motor's mounting face", "0 mm", "1 m", ("0 mm", "0 mm", "0 mm"), "the plate's rear; a start on the motor must be given", example="110 mm"),
    may("mount.strut_start_across", "length", "start to the side of the shaft, along x", "-1 m", "1 m", ("0 mm", "0 mm", "0 mm"), "none assumed"),
    need("mount.strut_end_height", "length", "end on the frame above the shaft axis; below it with a minus", "-3 m", "3 m", "-90 mm"),
    need("mount.strut_end_behind", "length", "end on the frame behind the motor's mounting face", "-3 m", "3 m", "200 mm"),
    may("mount.strut_end_across", "length", "end to the side of the shaft, along x", "-3 m", "3 m", ("0 mm", "0 mm", "0 mm"), "none assumed"),
    may("mount.strut_joint_stiffness", "stiffness", "stiffness of one end joint along the strut: lug, bolt and frame wall", "1 N/mm", "10000 kN/mm", ("2 kN/mm", "10 kN/mm", "50 kN/mm"), "common practice, no source (bolted lug on a thin wall to a stiff block)"),
)  # fmt: skip
STARTER = {
    "mount.strut_diameter": "12 mm", "mount.strut_start_behind": "110 mm", "shaft.face_overhang": "35 mm",
}  # fmt: skip
SHORTEST = 0.01  # m
LUG = (
    1.5  # washer of the strut on the plate over its diameter or width (common practice, no source)
)


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out the plate, its cuts by what lies beyond them, and the strut."""
    lay = plate.lay_out(picker, parts, None)
    rod = _rod(picker, parts, lay)
    bolts = Beyond(bolts=tuple(range(len(lay.plane.bolts))), contacts=(0,))
    cuts = tuple(replace(cut, beyond=_beyond(bolts, cut, rod)) for cut in lay.cuts)
    return _common.mount(
        FORM, picker, parts, lay.thickness, lay.width, (), cuts, (lay.plane,), lay.area,
        second=parts.second, rods=(rod,),
    )  # fmt: skip


def _beyond(bolts: Beyond, cut: Cut, rod: Rod) -> Beyond:
    """Give the supports on the frame's side of a cut: a strut from the plate below it too."""
    below = not rod.on_motor and float(rod.start[1]) < float(cut.place[1])
    return replace(bolts, struts=(0,)) if below else bolts


def _rod(picker: Picker, parts: Parts, lay: plate.Layout) -> Rod:
    """Read the strut: where it runs, its section, how it gives."""
    on_motor = picker.word("mount.strut_from", "motor") == "motor"
    if on_motor and picker.optional("mount.strut_start_behind") is None:
        picker.mistake(
            "mount.strut_start_behind", "is missing: how far behind the mounting face it starts",
            "for example '110 mm'; or strut_from = 'plate'",
        )  # fmt: skip
    start, end = _place(picker, "start"), _place(picker, "end")
    length = struts.strut_length(
        *(layout.difference(a, b) for a, b in zip(start, end, strict=True))
    )
    if length < SHORTEST:
        picker.mistake(
            "mount.strut_end_behind", "leaves the strut no length", "its ends are the same place"
        )
        length = Value(SHORTEST, "mount.strut_end_behind", "derived", "no length")
    area, second_moment, size = _section(picker)
    washer = Value(LUG * size, "washer of the strut", "derived", COMMON)
    if not on_motor:
        _refuse_off_plate(picker, parts, lay, start, float(washer))
    stuff: Substance = parts.second or parts.material
    joint = picker.number("mount.strut_joint_stiffness")
    stiffness = struts.strut_stiffness(stuff.elastic_modulus, area, length, joint)
    return Rod(
        name="strut from the motor" if on_motor else "strut from the plate", length=length, area=area,
        second_moment=second_moment, elastic_modulus=stuff.elastic_modulus,
        yield_strength=stuff.yield_strength, stiffness=stiffness, start=start, end=end,
        on_motor=on_motor, washer_diameter=washer,
    )  # fmt: skip


def _place(picker: Picker, which: str) -> tuple[Number, Number, Number]:
    """Give one end in the drive's axes."""
    across, height, behind = (
        picker.number(f"mount.strut_{which}_{way}") for way in ("across", "height", "behind")
    )
    return across, height, layout.opposite(behind)


def _section(picker: Picker) -> tuple[Number, Number, float]:
    """Give cross-section, least second moment and outer size of the strut; round or flat."""
    diameter, bore = (picker.optional(f"mount.strut_{k}") for k in ("diameter", "bore"))
    flat = [picker.optional(f"mount.strut_{k}") for k in ("width", "thickness")]
    given = [v for v in flat if v is not None]
    if (diameter is None) == (not given):
        picker.mistake(
            "mount.strut_diameter", "give the strut in one way: round by its diameter, or flat",
            "strut_diameter (and strut_bore for a tube), or strut_width and strut_thickness",
        )  # fmt: skip
    elif diameter is None and (bore is not None or len(given) < 2):
        picker.mistake(
            "mount.strut_width", "a flat strut needs width and thickness, and has no bore"
        )
    elif diameter is None:
        return struts.bar_area(*given), struts.bar_second_moment(*given), float(given[0])
    elif bore is not None and bore >= diameter:
        picker.mistake("mount.strut_bore", f"leaves no wall of {1000 * diameter:.1f} mm")
    else:
        hollow = Value(0.0, "bore of the strut", "derived", "a solid rod") if bore is None else bore
        area = struts.tube_area(diameter, hollow)
        return area, struts.tube_second_moment(diameter, hollow), float(diameter)
    return Value(1e-4, "strut", "derived"), Value(1e-9, "strut", "derived"), 0.01


def _refuse_off_plate(
    picker: Picker, parts: Parts, lay: plate.Layout, start: tuple[Number, ...], washer: float
) -> None:
    """Record a mistake where the strut's washer leaves the plate or meets the bore."""
    side, height = abs(float(start[0])), float(start[1])
    top = _common.top_of_motor(parts.motor)
    if not -float(lay.free) < height - washer / 2 < height + washer / 2 <= top + 1e-9:
        picker.mistake(
            "mount.strut_start_height",
            f"is not on the plate, whose top is {1000 * top:.1f} mm above the shaft axis, with the "
            f"strut's washer of {1000 * washer:.1f} mm",
            "or strut_from = 'motor'",
        )  # fmt: skip
    elif side + washer / 2 > float(lay.width) / 2:
        picker.mistake(
            "mount.strut_start_across", f"leaves the plate, {1000 * lay.width:.1f} mm wide"
        )
    elif (side**2 + height**2) ** 0.5 < (float(parts.motor.bore) + washer) / 2:
        picker.mistake("mount.strut_start_height", "puts the strut into the motor's bore")


def plates(drive: Drive, normal: float, tangential: float, pressing: float) -> PlateModel:
    """Lay out the flat plate and the strut from motor or plate."""
    from ..plates import Strut  # heavy: only when the plate route is asked for

    rods = [
        Strut(
            start=tuple(float(v) for v in rod.start), end=tuple(float(v) for v in rod.end),
            stiffness=float(rod.stiffness), facet=None if rod.on_motor else 0,
            washer_diameter=float(rod.washer_diameter),
        )
        for rod in drive.mount.rods
    ]  # fmt: skip
    return replace(plate.plates(drive, normal, tangential, pressing), struts=rods)
