"""Ratings of a ball bearing: from its designation, or of those that fit the shaft."""

from __future__ import annotations

from .. import cards
from ..picking import Picker
from ..worked import Value


def ratings(picker: Picker, part: str, diameter: Value) -> tuple[Value, Value | None, str]:
    """Give static and dynamic rating of the bearing of a section of the file, and its name.

    The dynamic rating is None where nothing asks for it: no motor speed.
    """
    card = picker.card(f"{part}.bearing")
    if card is not None:
        if abs(card.bore - diameter) > 0.25 * diameter:
            picker.warnings.append(
                f"Bearing {card.designation} has a {card.bore * 1000:g} mm bore, the shaft is "
                f"{diameter * 1000:g} mm at the bearing: check which is right."
            )
        return card.static_load_rating, card.dynamic_load_rating, str(card.designation)
    fitting = [
        b for b in cards.bearings("deep groove") if abs(b.bore - diameter) <= 0.13 * diameter
    ] or cards.bearings("deep groove")
    near = min(fitting, key=lambda b: abs(b.bore - diameter))
    same = [b for b in fitting if b.bore == near.bore]
    words = f"light to heavy deep-groove bearing on a {near.bore * 1000:g} mm shaft: {near.source}"

    def rating(key: str, values: list[float]) -> Value:
        ranked = sorted(values)
        return picker.between(key, ranked[0], ranked[len(ranked) // 2], ranked[-1], words)

    return (
        rating(f"{part}.static_rating", [float(b.static_load_rating) for b in same]),
        rating(f"{part}.dynamic_rating", [float(b.dynamic_load_rating) for b in same])
        if "motor.speed" in picker.given
        else None,
        "unknown",
    )
