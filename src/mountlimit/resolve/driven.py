"""The driven side: only what the file tells of it."""

from __future__ import annotations

from ..held import DrivenShaft
from ..model import ChainDrive, Driven
from ..picking import Picker
from .pins import pin
from .sprocket import bolt_ring, given_key, ring_weld
from .teeth import sprocket

BETWEEN = "between the bearings"


def driven(picker: Picker, chain: ChainDrive) -> Driven:
    """Give the driven side; None for every part that is not told."""
    diameter = picker.optional("driven.shaft_diameter")
    bore = float(diameter or 0.0)
    key = given_key(picker, "driven.key")
    if key is not None and diameter is None:
        picker.mistake("driven.shaft_diameter", "is missing: the driven key needs it")
    elif key is not None and diameter is not None and key.height >= diameter:
        picker.mistake("driven.key", f"does not fit a shaft of {diameter * 1000:g} mm")
    bolts = bolt_ring(picker, "driven", bore)
    cross = pin(picker, "driven", diameter, "driven.outer_diameter")
    return Driven(
        bolts=bolts, sprocket=sprocket(picker, "driven", chain.chain, chain.driven_teeth, bolts), weld=ring_weld(picker, "driven", bore), key=key,
        pin=cross,
        key_yield=picker.number("driven.key_yield") if key or cross else None,
        shaft=_shaft(picker), shaft_diameter=diameter,
        freewheel_torque=picker.optional("driven.freewheel_torque"),
    )  # fmt: skip


def _shaft(picker: Picker) -> DrivenShaft | None:
    """Give the driven shaft where its diameter and the overhang are told."""
    diameter, overhang = "driven.shaft_diameter", "driven.overhang"
    if overhang not in picker.given:
        return None
    if diameter not in picker.given:
        picker.mistake(diameter, "is missing: driven.overhang only helps together with it")
        return None
    span = None
    if picker.word("driven.sprocket_at", "outside the bearings") == BETWEEN:
        if "driven.bearing_span" not in picker.given:
            picker.mistake("driven.bearing_span", "is missing for a sprocket between the bearings")
            return None
        span = picker.number("driven.bearing_span")
        if picker.number(overhang) >= span:
            picker.mistake(overhang, "is not between the bearings", "it is less than the span")
    return DrivenShaft(
        diameter=picker.number(diameter), overhang=picker.number(overhang), bearing_span=span,
        yield_strength=picker.number("driven.shaft_yield"),
    )  # fmt: skip
