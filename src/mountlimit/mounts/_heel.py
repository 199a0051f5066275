"""Where the foot of an angle begins to bear: at the back of the leg, or past the round of its bend.

A rolled, extruded or milled angle has a square heel.  A plate bent to an angle is round outside and
leaves its frame one outside radius from the back of the leg, which shortens the lever by which the
bolts hold a leg that is pulled over its heel.
"""

from __future__ import annotations

from ..fields import may
from ..worked import Value
from . import _angle
from ._parts import Parts, Picker

KEY = "mount.heel_bears_from"
FIELD = may(
    KEY, "length",
    "from the back of the leg to where the foot begins to bear on the frame: 0 for a square heel; "
    "how far a strip of paper goes in under a bent one",
    "0 mm", "500 mm",
)  # fmt: skip
SQUARE, BENT = "a rolled, extruded or milled heel", "a bent one"


def bears_from(picker: Picker, parts: Parts, thickness: Value, to_bolts: Value) -> Value:
    """Give the distance from the back of the leg to where the foot bears.

    ``to_bolts`` is the distance from the leg to the nearest bolts, whose washers lie flat.
    """
    t = float(thickness)
    room = t + float(to_bolts) - float(parts.fixings.washer_diameter) / 2
    if picker.optional("mount.foot_thickness") not in (None, t):
        return Value(0.0, KEY, "derived", "leg and foot differ in thickness: not one plate, bent")
    given = picker.optional("mount.bend_radius")
    _, likely, high, _ = _angle.radii(parts, t)
    if given is not None:
        likely = high = float(given)
    rolled = "extrusion" in parts.material.card.form
    found = picker.between(
        KEY, 0.0, 0.0 if rolled else max(0.0, min(t + likely, room)), max(0.0, min(t + high, room)),
        f"common practice, no source ({SQUARE} bears from the back of the leg, {BENT} from its outside "
        f"radius on{'; an extrusion is taken as square' if rolled else ''})",
    )  # fmt: skip
    if found > room + 1e-9 and picker.optional(KEY) is not None:
        picker.mistake(
            KEY, f"reaches under the nearest bolts' washers, {room * 1000:.1f} mm from the back of the leg",
            "the foot lies flat under its bolts",
        )  # fmt: skip
    return found
