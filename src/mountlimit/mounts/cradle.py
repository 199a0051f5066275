"""Motor in a cradle: a round motor lies in a saddle on a base plate, held down by bands.

        seen along the shaft                       seen from above

           .-------.      band               o---------------------o   rear row
          |         |                        |    =============    |   = bands, screwed down
          |    o    |     motor              |      |  motor|      |     at both ends
          |         |                        |    =============    |   o frame bolts
       ___|'.     .'|___  cradle             o---------------------o   front row
      ==x============x==  base plate                 ||  shaft

Where the plate lies and what it rests on stands in ``_base_plate``; the front band is
``motor.band_to_face`` behind the mounting face, to which ``shaft.face_overhang`` is measured.

Motor and cradle are one rigid body, tied to the plate under the washers of the bands' screws only,
both ways (softer than a cradle fastened along its length: the safe side).  A band with a single screw
is hooked or hinged at its other end, at the same distance.  A single band is two rows, half the
cradle's length apart, which is where its halves press if the cradle bears evenly.  A rubber lining
gives: it widens ``mount.softness`` and lets go of some tension; a pull by hand settles both.
"""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING

from ..fields import Field, choose, may, need
from ..formulas import bands, layout
from ..mounting import Bands, Mount
from ..worked import Value
from . import _base_plate
from ._common import BoltHoles
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..model import Feet, Motor

FORM = "cradle"
TITLE = "round motor in a cradle on a base plate, held by bands"
FIELDS = (
    need("motor.bolts", "bolts", "screws of all bands together: one or two for each band", "", "", "4 x M6"),
    Field(key="motor.bolt_class", kind="bolt class", meaning="property class of the bands' screws"),
    need("motor.diameter", "length", "diameter of the motor where it lies in the cradle", "20 mm", "1 m", "110 mm"),
    need("motor.shaft_height", "length", "top of the base plate to the shaft axis", "10 mm", "1 m", "71 mm"),
    Field(key="mount.bands", kind="integer", meaning="number of bands round the motor", required=True, least="1", most="4", example="2"),
    need("motor.band_across", "length", "between the two ends of a band where they are held down, square to the shaft", "10 mm", "1 m", "130 mm"),
    may("motor.band_along", "length", "middle of the first to middle of the last band, along the shaft", "10 mm", "1 m", example="90 mm"),
    need("motor.band_to_face", "length", "middle of the front band to the motor's mounting face", "0 mm", "500 mm", "30 mm"),
    may("mount.cradle_length", "length", "length of the cradle along the shaft, where there is a single band", "10 mm", "1 m", example="100 mm"),
    may("mount.seat_angle", "angle", "half the arc in which the motor lies in its cradle, from the middle to the edge of the seat", "10 deg", "85 deg", ("30 deg", "45 deg", "60 deg")),
    may("mount.band_wrap", "angle", "arc of the motor that each band lies on", "60 deg", "200 deg", ("140 deg", "160 deg", "180 deg")),
    choose("mount.lining", "what lies between motor and cradle", ("none", "rubber")),
    may("mount.band_kept", "ratio", "share of the bands' tension that stays once they have settled", "0.05", "1"),
    may("motor.tightening_torque", "torque", "torque each screw of a band was tightened to", "0.05 N*m", "2000 N*m"),
    may("motor.preload", "force", "tension of each screw of a band when it is known", "10 N", "1000 kN"),
    may("motor.face_friction", "ratio", "friction between the motor and its cradle and bands", "0.01", "1"),
    choose("motor.washer", "washers under the heads of the bands' screws", ("standard", "wide", "none")),
    *_base_plate.FIELDS,
)  # fmt: skip
UNUSED = (*_base_plate.UNUSED, "motor.holes")
STARTER = {
    "motor.tightening_torque": "6 N*m", "mount.thickness": "10 mm", "motor.band_along": "90 mm",
    "fixings.span_across": "160 mm", "fixings.span_along": "170 mm", "mount.lining": "none",
    "mount.seat_angle": "60 deg",
}  # fmt: skip
STANDS = _base_plate.Stands(FORM, "bands", "band screw", "motor.band_across", "motor.band_along")
plates = _base_plate.plates

KEPT = {"none": (0.8, 0.9, 1.0), "rubber": (0.4, 0.6, 0.8)}
RUBBER_SOFTNESS = (
    1.0, 1.6, 4.0, "common practice, no source (a rubber lining gives; one pull by hand tells)",
)  # fmt: skip


def bolt_holes(_: Picker, motor: Motor) -> tuple[None, BoltHoles]:
    """Give the holes: round ones for the bands' screws, the frame bolts' as the common keys say."""
    thread = motor.bolts.thread
    return None, BoltHoles(diameter=thread.clearance_hole, body=thread.diameter)


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out the base plate under the bands, and what the bands press with."""
    feet, diameter = parts.motor.feet, picker.number("motor.diameter")
    assert feet is not None  # this form has no motor.bolt_circle
    lining = picker.word("mount.lining", "none")
    single = int(picker.number("mount.bands")) == 1
    stands = replace(STANDS, along="mount.cradle_length") if single else STANDS
    softness = picker.between("mount.softness", *RUBBER_SOFTNESS) if lining == "rubber" else None
    held = _bands(picker, feet, diameter, lining)
    _refuse(picker, feet, held)
    return _base_plate.build(picker, parts, stands, bands=held, softness=softness)


def _bands(picker: Picker, feet: Feet, diameter: Value, lining: str) -> Bands:
    """Give the bands and the rows they hold the motor by."""
    rows = Value(
        feet.rows, "rows that hold the motor", "derived", "the bands, or the halves of one"
    )
    return Bands(
        number=picker.number("mount.bands"), rows=rows, place=layout.half(feet.along),
        square_sum=bands.row_square_sum(feet.along, rows), diameter=diameter,
        seat_angle=picker.number("mount.seat_angle"), wrap=picker.number("mount.band_wrap"),
        kept=picker.between(
            "mount.band_kept", *KEPT[lining], f"common practice, no source (lining: {lining})"
        ),
    )  # fmt: skip


def _refuse(picker: Picker, feet: Feet, held: Bands) -> None:
    """Record mistakes when motor, cradle and bands cannot lie as they are said to."""
    size = float(held.diameter)
    if feet.shaft_height <= size / 2:
        picker.mistake("motor.shaft_height", f"is no more than half the motor's diameter ({500 * size:.1f} mm)",
                       "it is measured from the top of the base plate to the shaft axis")  # fmt: skip
    if feet.across < size:
        picker.mistake("motor.band_across", f"is less than the motor's diameter ({1000 * size:.1f} mm)",
                       "it is measured between the screws at the two ends of a band")  # fmt: skip
    if 2 * held.seat_angle + held.wrap > math.tau:
        picker.mistake("mount.band_wrap", "and the seat together go more than once round the motor",
                       "mount.seat_angle is half the arc of the seat")  # fmt: skip
