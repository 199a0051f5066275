"""Flat plate of plastic or wood with steel compression sleeves in its bolt holes.

Laid out as the form "plate".  A sleeve is as long as the plate is thick, or a trifle longer: the
bolt clamps washer, sleeve and frame together, metal on metal, and keeps its preload.  The plate is
held by the sleeve's fit in its hole and by the rim of the washer, or of the sleeve's flange, that
reaches over the sleeve; the pressure cone under that rim is its spring.  The hole in the plate is
the sleeve's outer diameter, and that diameter bears on it.
"""

from __future__ import annotations

from dataclasses import replace

from ..fields import may, need
from ..model import Motor
from ..mounting import Mount
from ..worked import Value
from . import _common, plate
from ._common import BoltHoles
from ._parts import Parts, Picker

FORM = "sleeved plate"
TITLE = "flat plate of plastic or wood, steel sleeves in its bolt holes"
FIELDS = (
    *plate.FIELDS,
    need("mount.sleeve_diameter", "length", "outer diameter of the sleeves in the frame bolts' holes; as long as the plate is thick or a trifle longer", "3 mm", "100 mm", "12 mm"),
    may("mount.sleeve_flange", "length", "diameter of the flange that presses on the plate, when the sleeves have one", "4 mm", "200 mm", example="20 mm"),
    may("mount.motor_sleeve_diameter", "length", "outer diameter of sleeves in the motor bolts' holes, when there are any", "2 mm", "100 mm", example="9 mm"),
)  # fmt: skip
UNUSED = ("fixings.holes", "fixings.slot_length", "fixings.slots_run", *_common.NO_JACK)
STARTER = {
    "mount.material": "pom", "mount.thickness": "20 mm", "mount.sleeve_diameter": "12 mm",
    "fixings.washer": "wide", "motor.spigot": "yes",
}  # fmt: skip
RIM = 0.001  # m, least width of the rim that holds the plate

plates = plate.plates


def bolt_holes(picker: Picker, motor: Motor) -> tuple[BoltHoles, BoltHoles | None]:
    """Give the sleeves' holes: of the frame bolts, and of the motor bolts where they have sleeves."""
    sleeve, own = picker.number("mount.sleeve_diameter"), picker.optional("mount.motor_sleeve_diameter")  # fmt: skip
    _refuse_wall(picker, "mount.sleeve_diameter", sleeve, picker.card("fixings.bolts")[1])
    frame = BoltHoles(
        diameter=sleeve, body=sleeve, sleeve=True, face=picker.optional("mount.sleeve_flange")
    )
    if own is None:
        return frame, None
    _refuse_wall(picker, "mount.motor_sleeve_diameter", own, motor.bolts.thread)
    if picker.card("motor.holes") == "slotted":
        picker.mistake(
            "motor.holes", "a sleeve needs a round hole", "leave out the motor's sleeves"
        )
    return frame, BoltHoles(diameter=own, body=own, sleeve=True)


def _refuse_wall(picker: Picker, key: str, sleeve: Value, thread: object) -> None:
    """Record a sleeve that leaves no wall round its bolt."""
    hole, name = float(thread.clearance_hole), thread.designation  # type: ignore[attr-defined]
    if sleeve <= hole:
        picker.mistake(key, f"leaves no wall round {name}, whose hole is {hole * 1000:.1f} mm",
                       "it is the outer diameter")  # fmt: skip


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out the plain plate, its holes those of the sleeves."""
    family = parts.material.card.family
    if family not in ("plastic", "wood"):
        picker.mistake("mount.material", f"{family} keeps its clamp without sleeves",
                       "use the form 'plate', or a plastic or wooden plate")  # fmt: skip
    sleeve, face = parts.fixings.hole_diameter, parts.fixings.washer_diameter
    if picker.card("mount.sleeve_flange") is not None:
        _refuse_rim(picker, "mount.sleeve_flange", "the flange", sleeve, face)
    else:
        _refuse_rim(picker, "mount.sleeve_diameter", "the frame bolts' washer", sleeve, face)
    if picker.card("mount.motor_sleeve_diameter") is not None:
        washer = parts.motor.bolts.thread.washer_diameter
        sleeve = parts.motor.hole_diameter
        _refuse_rim(
            picker, "mount.motor_sleeve_diameter", "the motor bolts' washer", sleeve, washer
        )
    return replace(plate.build(picker, parts), form=FORM)


def _refuse_rim(picker: Picker, key: str, what: str, sleeve: Value, face: Value) -> None:
    """Record a sleeve that nothing reaches over: the plate would be held by its fit alone."""
    if (face - sleeve) / 2 < RIM * (1 - 1e-9):
        picker.mistake(
            key,
            f"{what} ({face * 1000:.1f} mm) must reach 1 mm or more over the sleeve "
            f"({sleeve * 1000:.1f} mm) all round, or nothing holds the plate down",
            "take wide washers or a sleeve with a flange",
        )
