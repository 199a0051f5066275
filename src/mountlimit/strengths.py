"""Strength of the piece in hand: what a material of the mount bears at work, Pa."""

from __future__ import annotations

from .formulas import equivalent, hole_limits
from .held import Number
from .mounting import Substance


def ultimate(material: Substance) -> Number:
    """Give the ultimate strength: the card's, lowered with the yield strength of the piece."""
    card = material.card
    return hole_limits.ultimate_at_work(
        card.ultimate_strength, material.yield_strength, card.yield_strength
    )


def yielding_shear(material: Substance) -> Number:
    """Give the shear stress that may act: yield in shear, not over a shear strength of the card."""
    shear = equivalent.shear_yield(material.yield_strength)
    if material.card.shear_strength is not None:
        shear = hole_limits.shear_at_work(shear, material.card.shear_strength)
    return shear
