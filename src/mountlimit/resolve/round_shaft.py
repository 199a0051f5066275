"""A round shaft of any section of the file: its diameter, strength and notch."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..formulas.shaft import CONCENTRATION
from ..held import RoundShaft
from ..picking import Picker
from ..worked import Value

ULTIMATE = (500e6, 600e6, 900e6, "from memory (plain to heat-treated medium-carbon shaft steel)")
# Where the usual steel of a section's shaft is another.
ULTIMATES = {
    "driven": (360e6, 450e6, 600e6, "from memory (mild steel bar, hot rolled to bright)"),
}
NOTCH_TABLE = "Shigley's Mechanical Engineering Design 9th ed. table 7-1 (from memory)"
UNKNOWN_NOTCH = ("plain", "shoulder, rounded", "shoulder, sharp")
PARTS = ("diameter", "yield_strength", "ultimate_strength", "notch")
# Where a section's keys are not named after the parts.
NAMES = {"driven": ("shaft_diameter", "shaft_yield", "shaft_ultimate", "notch")}


def round_shaft(picker: Picker, section: str) -> RoundShaft:
    """Give the round shaft of a section of the file (``NAMES``, else ``PARTS``); its diameter must be there."""
    return RoundShaft(**form(picker, section), **strength(picker, section))


def form(picker: Picker, section: str) -> dict[str, Any]:
    """Give diameter and notch of a section's ``RoundShaft``."""
    diameter = picker.number(_keys(section)[0])
    word, in_bending, in_torsion, radius = _notch(picker, _keys(section)[3], diameter)
    return {
        "diameter": diameter, "notch": word, "notch_bending": in_bending,
        "notch_torsion": in_torsion, "notch_radius": radius,
    }  # fmt: skip


def notched(key: str, word: str, diameter: Value) -> dict[str, Any]:
    """Give diameter and notch of a ``RoundShaft`` whose form is told by its word."""
    bending, torsion, share = CONCENTRATION[word]
    source = f"'{word}', {NOTCH_TABLE}"
    return {
        "diameter": diameter, "notch": word, "notch_bending": Value(bending, key, "given", source),
        "notch_torsion": Value(torsion, key, "given", source),
        "notch_radius": Value(share * diameter, key, "given", f"{share:g} of the diameter: {source}"),
    }  # fmt: skip


def strength(picker: Picker, section: str) -> dict[str, Any]:
    """Give yield and ultimate strength of a section's ``RoundShaft``."""
    _, yield_key, ultimate_key, _ = _keys(section)
    return {
        "yield_strength": picker.number(yield_key),
        "ultimate_strength": _ultimate(
            picker, ultimate_key, yield_key, *ULTIMATES.get(section, ULTIMATE)
        ),
    }


def _keys(section: str) -> tuple[str, ...]:
    return tuple(f"{section}.{name}" for name in NAMES.get(section, PARTS))


def _ultimate(
    picker: Picker, key: str, yield_key: str, low: float, likely: float, high: float, source: str
) -> Value:  # fmt: skip
    """Give the ultimate strength of the shaft, never under a yield strength that is given."""
    given = picker.given.get(yield_key)
    least = float(given.value) if given else 0.0
    low, likely, high = (max(v, least) for v in (low, likely, high))
    strength = picker.between(key, low, likely, high, source)
    if key in picker.given and strength < least:
        picker.mistake(key, "is below the yield strength of the shaft")
    return strength


def _notch(picker: Picker, key: str, diameter: Value) -> tuple[str, Value, Value, Value]:
    """Give the notch in words, its factors in bending and in torsion, and its radius."""
    word = picker.card(key)
    if word is not None:
        bending, torsion, share = CONCENTRATION[word]
        origin, source = "given", f"'{word}', {NOTCH_TABLE}"
        in_bending = Value(bending, key, origin, source)
    else:
        origin, source = "assumed", f"bending, from plain to a sharp shoulder: {NOTCH_TABLE}"
        known = [CONCENTRATION[w] for w in UNKNOWN_NOTCH]
        column = [k[0] for k in known]
        low, likely, high = column
        in_bending = picker.uncertain(key, low, likely, high, source, origin, kind="number")
        torsion = float(np.interp(in_bending, column, [k[1] for k in known]))
        # concentration goes with a power of the radius, so radii lie between on logarithms
        radii = np.log([k[2] for k in known])
        share = float(np.exp(np.interp(np.log(float(in_bending)), np.log(column), radii)))
    radius = Value(share * diameter, key, origin, f"{share:g} of the diameter: {source}")
    return word or "form unknown", in_bending, Value(torsion, key, origin, source), radius
