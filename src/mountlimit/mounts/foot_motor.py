"""Motor on feet: it stands on a base plate that is bolted to the frame along both its ends.

        seen from the side                         seen from above

      [============]                       o---------------------o   rear row
      [   motor    ]=======|  sprocket     |    x           x    |   x  foot bolts
      [============]                       |                     |
        |__|    |__|    feet               |    x           x    |   o  frame bolts
     o==============o   base plate         o---------------------o   front row
     ##            ##   rails, along x               ||  shaft
                                                     ||
     rear         front

Where the plate lies and what it rests on stands in ``_base_plate``; the front foot bolts are
``motor.foot_to_face`` behind the mounting face, to which ``shaft.face_overhang`` is measured.

The feet are tied to the plate under the washers of their bolts only, both ways (softer than feet
that rest on their whole face: the safe side).  Slots for the foot bolts count for slip, not as
cut-outs in the plate.
"""

from __future__ import annotations

from ..fields import Field, choose, may, need
from ..mounting import Mount
from . import _base_plate
from ._parts import Parts, Picker

FORM = "foot motor"
TITLE = "motor on feet: base plate bolted to the frame along both its ends"
FIELDS = (
    need("motor.bolts", "bolts", "bolts that hold the motor's feet, with nuts", "", "", "4 x M8"),
    Field(key="motor.bolt_class", kind="bolt class", meaning="property class of the foot bolts"),
    need("motor.shaft_height", "length", "underside of the feet to the shaft axis", "10 mm", "1 m", "71 mm"),
    need("motor.foot_across", "length", "between the foot bolt centres, square to the shaft", "10 mm", "1 m", "112 mm"),
    need("motor.foot_along", "length", "between the foot bolt centres, along the shaft", "10 mm", "1 m", "90 mm"),
    need("motor.foot_to_face", "length", "front foot bolts to the motor's mounting face", "0 mm", "500 mm", "30 mm"),
    may("motor.tightening_torque", "torque", "torque each foot bolt was tightened to", "0.05 N*m", "2000 N*m"),
    may("motor.preload", "force", "clamping force of each foot bolt when it is known", "10 N", "1000 kN"),
    may("motor.face_friction", "ratio", "friction between the motor's feet and the base plate", "0.01", "1"),
    choose("motor.washer", "washers under the heads of the foot bolts", ("standard", "wide", "none")),
    choose("motor.holes", "holes for the foot bolts: slots to set the chain, or round", ("slotted", "round")),
    *_base_plate.FIELDS,
)  # fmt: skip
UNUSED = _base_plate.UNUSED
STARTER = {
    "motor.bolts": "4 x M8", "motor.tightening_torque": "20 N*m", "mount.thickness": "10 mm",
    "fixings.span_across": "150 mm", "fixings.span_along": "160 mm",
}  # fmt: skip
STANDS = _base_plate.Stands(FORM, "feet", "foot bolt", "motor.foot_across", "motor.foot_along")
plates = _base_plate.plates


def build(picker: Picker, parts: Parts) -> Mount:
    """Lay out the base plate: frame bolts in two rows, feet between them."""
    return _base_plate.build(picker, parts, STANDS)
