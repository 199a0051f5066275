"""How a sprocket is joined to its hub: ring of bolts, ring of weld, key; the same on both sides."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from .. import cards
from ..formulas import welds
from ..held import BoltRing, BoltSet, Key, RingWeld
from ..picking import Picker
from ..worked import Value
from . import preload
from .motor import bolt_set, unmarked

# EN 1993-1-8 table 4.1: up to which ultimate strength a steel takes the factor of a grade.
STEELS = ((360e6, "S235"), (430e6, "S275"), (510e6, "S355"))
STRONG_STEEL = 1.0
TABLE = "EN 1993-1-8 table 4.1"
ALUMINIUM = Value(
    1.0, "correlation factor", "derived",
    "EN 1999-1-1 clause 8.6.3 (from memory): judged with the heat-affected strength",
)  # fmt: skip


def bolt_ring(picker: Picker, part: str, bore: float) -> BoltRing | None:
    """Give the bolts between a sprocket and its hub, or None; ``bore`` is the shaft they clear."""
    key, circle_key = f"{part}.bolts", f"{part}.bolt_circle"
    if not _together(picker, key, circle_key, "bolts on a circle"):
        return None
    thread = picker.card(key)[1]
    bolts = bolt_set(picker, key, f"{part}.bolt_class", unmarked(thread))
    circle = picker.number(circle_key)
    bolts = _refuse_ring(picker, key, circle_key, bolts, circle, bore)
    return BoltRing(
        bolts=bolts, circle=circle, preload=preload.preload(picker, f"{part}.", bolts),
        friction=picker.number(f"{part}.friction"), piloted=_piloted(picker, part),
    )  # fmt: skip


def _refuse_ring(
    picker: Picker, key: str, circle_key: str, bolts: BoltSet, circle: Value, bore: float
) -> BoltSet:
    """Refuse a ring that cannot be; give a set of two bolts in place of one."""
    if bolts.count < 2:
        picker.mistake(key, "needs at least two bolts on the circle")
        bolts = replace(bolts, count=2, number=Value(2, key, "assumed"))
    hole = float(bolts.thread.clearance_hole)
    if circle * np.sin(np.pi / bolts.count) <= hole:
        picker.mistake(circle_key, f"puts {bolts.count} bolt holes into one another")
    elif circle - hole <= bore:
        picker.mistake(circle_key, f"lets the bolts run into the shaft ({bore * 1000:g} mm)")
    return bolts


def ring_weld(picker: Picker, part: str, bore: float) -> RingWeld | None:
    """Give the ring of weld between a sprocket and its hub, or None."""
    key, leg_key = f"{part}.weld_diameter", f"{part}.weld_leg"
    if not _together(picker, key, leg_key, "a ring of weld"):
        return None
    diameter, material_key = picker.number(key), f"{part}.weld_material"
    if diameter <= bore:
        picker.mistake(key, f"is inside the shaft ({bore * 1000:g} mm)")
    card = picker.card(material_key)
    if card is None:
        card = cards.material("s235")
        picker.words[material_key] = card.name
    strength, correlation = _beside_weld(picker, material_key, card)
    return RingWeld(
        diameter=diameter, throat=welds.fillet_throat(picker.number(leg_key)),
        sides=picker.number(f"{part}.weld_sides"), share=picker.number(f"{part}.weld_share"),
        ultimate_strength=strength, correlation=correlation, family=card.family,
        piloted=_piloted(picker, part),
    )  # fmt: skip


def _beside_weld(picker: Picker, key: str, card: cards.Material) -> tuple[Value, Value]:
    """Give the ultimate strength beside the weld, and the weld's correlation factor."""
    strength = card.haz_ultimate
    if not card.weldable or strength is None or card.family not in ("steel", "aluminium"):
        picker.mistake(key, "is not a material this program knows welded", "for example 's235'")
        return card.ultimate_strength, ALUMINIUM
    if card.family == "aluminium":
        return strength, ALUMINIUM
    grade = next((g for most, g in STEELS if card.ultimate_strength <= most), None)
    factor = welds.CORRELATION[grade] if grade else STRONG_STEEL
    words = f"{TABLE}, as {grade}" if grade else f"{TABLE}, S420 and up (from memory)"
    return strength, Value(factor, "correlation factor", "card", words)


def _together(picker: Picker, first: str, second: str, what: str) -> bool:
    """Tell whether both keys are there; one without the other is a mistake."""
    given = [k for k in (first, second) if k in picker.given]
    if len(given) == 1:
        missing = second if given[0] == first else first
        picker.mistake(missing, f"is missing: {what} needs it together with {given[0]}")
    return len(given) == 2


def _piloted(picker: Picker, part: str) -> bool:
    return picker.word(f"{part}.pilot", "no") == "yes"


def given_key(picker: Picker, key: str, shaft: Value | None = None) -> Key | None:
    """Give the key that stands in the file, or None; one as high as the shaft it is for is a mistake."""
    sizes = picker.card(key)
    if sizes is None:
        return None
    text = picker.given[key].text
    width, height, length = (Value(v, key, "given", f"'{text}'") for v in sizes)
    if shaft is not None and height >= shaft:
        picker.mistake(key, f"does not fit a shaft of {shaft * 1000:g} mm")
    return Key(width=width, height=height, length=length)
