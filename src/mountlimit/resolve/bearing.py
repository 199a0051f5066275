"""A bearing that stands in the file by its designation or by its ratings."""

from __future__ import annotations

from ..held import Bearing
from ..picking import Picker

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
    if shaft is not None and abs(card.bore - shaft) > FIT * shaft:
        picker.warnings.append(
            f"Bearing {card.designation} has a {card.bore * 1000:g} mm bore, the shaft is "
            f"{shaft * 1000:g} mm there: check which is right."
        )
    return Bearing(
        words=str(card.designation), static_rating=card.static_load_rating,
        dynamic_rating=card.dynamic_load_rating,
    )  # fmt: skip
