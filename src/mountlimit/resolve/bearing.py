"""Ball bearings: by designation, by their ratings, or those that usually sit on such a shaft."""

from __future__ import annotations

from .. import cards
from ..held import Bearing
from ..picking import Picker
from ..worked import Value

FIT = 0.25  # of the shaft, from which a bore is doubted


def told(
    picker: Picker, name: str, static: str, dynamic: str, shaft: float | None = None
) -> Bearing | None:
    """Give the bearing of three keys (designation, static and dynamic rating), None where all are out.

    ``shaft`` (m) is the diameter its bore is compared with, where that is known.
    """
    card = picker.card(name)
    ratings = [key for key in (static, dynamic) if key in picker.given]
    if dynamic in ratings and "motor.speed" not in picker.given:
        picker.warnings.append(
            f"{dynamic} does nothing yet: the bearing's life needs motor.speed too."
        )
    if card is None:
        if not ratings:
            return None
        return Bearing(
            words="number unknown", static_rating=picker.optional(static),
            dynamic_rating=picker.optional(dynamic),
        )  # fmt: skip
    for key in ratings:
        picker.mistake(key, f"is known already from {name}", "leave one of the two out")
    if shaft is not None:
        _doubt_fit(picker, card, shaft, "there")
    return Bearing(
        words=str(card.designation), static_rating=card.static_load_rating,
        dynamic_rating=card.dynamic_load_rating,
    )  # fmt: skip


def _doubt_fit(picker: Picker, card: cards.Bearing, shaft: float, where: str) -> None:
    """Warn of a bore far from the shaft's diameter."""
    if abs(card.bore - shaft) > FIT * shaft:
        picker.warnings.append(
            f"Bearing {card.designation} has a {card.bore * 1000:g} mm bore, the shaft is "
            f"{shaft * 1000:g} mm {where}: check which is right."
        )


def ratings(picker: Picker, part: str, diameter: Value) -> tuple[Value, Value | None, str]:
    """Give static and dynamic rating of the bearing of a section of the file, and its name.

    The dynamic rating is None where nothing asks for it: no motor speed.
    """
    card = picker.card(f"{part}.bearing")
    if card is not None:
        _doubt_fit(picker, card, diameter, "at the bearing")
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
