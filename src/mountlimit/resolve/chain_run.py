"""A chain on two sprockets, the first or the second: what their sections of the file have in common."""

from __future__ import annotations

from typing import Any

from .. import cards
from ..formulas import give
from ..model import Number
from ..picking import Picker
from . import chain_life

APART = (
    6.3  # a little over 2 pi: sum of the teeth times the pitch over it, where the sprockets touch
)


def sprockets(picker: Picker, part: str, card: cards.Chain) -> dict[str, Any]:
    """Give teeth and centres of a ``ChainRun``; sprockets that would touch are a mistake."""
    centres = picker.number(f"{part}.centre_distance")
    driving, driven = (picker.number(f"{part}.{n}_teeth") for n in ("driving", "driven"))
    if centres <= card.pitch * (driving + driven) / APART:
        picker.mistake(
            f"{part}.centre_distance", "the two sprockets would touch", "check pitch and teeth"
        )
    return {"driving_teeth": driving, "driven_teeth": driven, "centre_distance": centres}


def strengths(picker: Picker, part: str, card: cards.Chain, speed: Number | None) -> dict[str, Any]:
    """Give what a ``ChainRun`` bears; ``speed`` is that of its driving sprocket, rad/s, where known."""
    dynamic = card.minimum_dynamic_strength
    if dynamic is None:
        dynamic = give.dynamic_strength(card.minimum_tensile_strength)
    return {
        "minimum_dynamic_strength": dynamic,
        "joint_pressure": chain_life.joint_pressure(picker, card, part, speed),
        "link_share": chain_life.link_share(picker, part),
    }
