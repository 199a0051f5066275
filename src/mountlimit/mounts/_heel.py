"""Where the foot of an angle begins to bear: at the back of the leg, or past the round of its bend.

A rolled, extruded or milled angle has a square heel.  A plate bent to an angle is round outside and
leaves its frame one outside radius from the back of the leg, which shortens the lever by which the
bolts hold a leg that is pulled over its heel.
"""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from ..fields import may
from ..model import Drive
from ..worked import Value
from . import _angle, _common
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import Contact

KEY = "mount.heel_bears_from"
FIELD = may(
    KEY, "length",
    "from the back of the leg to where the foot begins to bear on the frame: 0 for a square heel; "
    "how far a strip of paper goes in under a bent one",
    "0 mm", "500 mm",
)  # fmt: skip
SQUARE, BENT = "a rolled, extruded or milled heel", "a bent one"
NUMBERS = (0, 1, 2, 3, 4)  # of the contacts, at most, in the plate model
NARROWEST = 0.002  # m, of a piece of the bearing face


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


def contacts(drive: Drive, corner: _angle.Corner, length: float, pressing: float) -> list[Contact]:
    """Give what of the foot bears for certain, then the pieces that bear if the heel lets them."""
    from ..plates import Contact

    half = float(drive.mount.width) / 2
    starts = _starts(drive)

    def piece(low: float, high: float, strip: bool) -> Contact:
        return Contact(
            facet=1, side=corner.under, stiffness=pressing, strip=strip,
            region=_common.rectangle(half, low, high),
        )  # fmt: skip

    if starts == [0.0]:
        return [Contact(facet=1, side=corner.under, stiffness=pressing)]
    return [
        piece(starts[-1], length, False),
        *(piece(low, high, True) for low, high in pairwise(starts)),
    ]


def _starts(drive: Drive) -> list[float]:
    """Give where the foot may begin to bear, from the leg's mid-plane, where the plates meet."""
    mount = drive.mount
    assert mount.heel is not None
    known = next((r for r in drive.ranges if r.key == KEY), None)
    ends = (
        [float(mount.heel)]
        if known is None
        else [known.low, (known.low + known.likely) / 2, known.likely, (known.likely + known.high) / 2, known.high]
    )  # fmt: skip
    found: list[float] = []
    for end in (max(0.0, x - float(mount.thickness) / 2) for x in reversed(ends)):
        if not found or found[0] - end >= NARROWEST:
            found.insert(0, end)
    return found
