"""The driven side: only what the file tells of it."""

from __future__ import annotations

from ..held import Bearing, DrivenShaft, ShaftWeight
from ..model import ChainRun, Driven
from ..picking import Picker
from ..worked import Value
from . import bearing, round_shaft
from .pins import pin
from .sprocket import bolt_ring, given_key, ring_weld
from .teeth import sprocket

OUTSIDE, BETWEEN = "outside the bearings", "between the bearings"
FATIGUE = ("driven.notch", "driven.shaft_ultimate")
BEARINGS = ("driven.bearing", "driven.static_rating", "driven.dynamic_rating")
NEEDS_SHAFT = (
    *FATIGUE, "driven.axle", "driven.weight", "driven.weight_overhang", "driven.weight_at", *BEARINGS,
)  # fmt: skip


def driven(picker: Picker, chain: ChainRun) -> Driven:
    """Give the driven side; None for every part that is not told."""
    diameter = picker.optional("driven.shaft_diameter")
    bore = float(diameter or 0.0)
    key = given_key(picker, "driven.key", diameter)
    if key is not None and diameter is None:
        picker.mistake("driven.shaft_diameter", "is missing: the driven key needs it")
    shaft = _shaft(picker)
    if key is not None and shaft is not None and shaft.dead:
        picker.mistake("driven.key", "turns nothing on a dead axle", "leave it out")
    bolts = bolt_ring(picker, "driven", bore)
    cross = pin(picker, "driven", diameter, "driven.outer_diameter")
    return Driven(
        bolts=bolts, sprocket=sprocket(picker, "driven", chain.chain, chain.driven_teeth, bolts),
        weld=ring_weld(picker, "driven", bore), key=key, pin=cross,
        key_yield=picker.number("driven.key_yield") if key or cross else None,
        shaft=shaft, bearings=_bearings(picker, shaft), shaft_diameter=diameter,
        freewheel_torque=picker.optional("driven.freewheel_torque"),
    )  # fmt: skip


def _shaft(picker: Picker) -> DrivenShaft | None:
    """Give the driven shaft where its diameter and the overhang are told."""
    diameter, overhang, span_key = "driven.shaft_diameter", "driven.overhang", "driven.bearing_span"
    if not _placed(picker, diameter, overhang):
        return None
    span = picker.optional(span_key)
    between = picker.word("driven.sprocket_at", OUTSIDE) == BETWEEN
    if between and not _held_between(picker, span, overhang, "a sprocket between the bearings"):
        return None
    fatigue = any(key in picker.given for key in FATIGUE)
    return DrivenShaft(
        diameter=picker.number(diameter), overhang=picker.number(overhang), between=between,
        bearing_span=span, dead=picker.card("driven.axle") == "dead", weight=_weight(picker, span),
        yield_strength=picker.number("driven.shaft_yield"),
        fatigue=round_shaft.round_shaft(picker, "driven") if fatigue else None,
    )  # fmt: skip


def _placed(picker: Picker, diameter: str, overhang: str) -> bool:
    """Tell whether the shaft is told; what needs it and does not have it is a mistake."""
    if overhang not in picker.given:
        lonely = next((key for key in NEEDS_SHAFT if key in picker.given), None)
        if lonely is not None:
            picker.mistake(overhang, f"is missing: {lonely} only helps together with it")
        return False
    if diameter not in picker.given:
        picker.mistake(diameter, "is missing: driven.overhang only helps together with it")
        return False
    return True


def _held_between(picker: Picker, span: Value | None, place: str, what: str) -> bool:
    """Tell whether there is a span for a place between the bearings, and refuse one outside it."""
    if span is None:
        picker.mistake("driven.bearing_span", f"is missing for {what}")
        return False
    if picker.number(place) >= span:
        picker.mistake(place, "is not between the bearings", "it is less than the span")
    return True


def _weight(picker: Picker, span: Value | None) -> ShaftWeight | None:
    """Give the steady force on the driven shaft where it is told."""
    force, place = picker.optional("driven.weight"), "driven.weight_overhang"
    if force is None:
        for key in (place, "driven.weight_at"):
            if key in picker.given:
                picker.mistake("driven.weight", f"is missing: {key} only helps together with it")
        return None
    if place not in picker.given:
        picker.mistake(place, "is missing: driven.weight only helps together with it")
        return None
    between = picker.word("driven.weight_at", OUTSIDE) == BETWEEN
    if between and not _held_between(picker, span, place, "a weight between the bearings"):
        return None
    return ShaftWeight(force=force, overhang=picker.number(place), between=between)


def _bearings(picker: Picker, shaft: DrivenShaft | None) -> Bearing | None:
    """Give the driven shaft's bearings where they are told; they need the span between them."""
    found = bearing.told(picker, *BEARINGS, shaft=None if shaft is None else float(shaft.diameter))
    if found is None or shaft is None:
        return None
    named = next(key for key in BEARINGS if key in picker.given)
    if shaft.dead:
        picker.mistake(
            named, "is not worked out on a dead axle, whose bearings sit in the hub", "leave it out"
        )
    elif shaft.bearing_span is None:
        picker.mistake("driven.bearing_span", f"is missing: {named} only helps together with it")
        return None
    return found
