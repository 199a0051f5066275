"""Pins, teeth, jack screw and caliper readings of a random drive: what is drawn together."""

from __future__ import annotations

from typing import Any

from chance import Chance
from sizes import Build

from mountlimit import cards

Keys = dict[str, Any]
TOOTHED = ("s235", "s355", "6061", "7075", "pom_c")
PIN_KINDS = ("mild steel", "spring pin", "brass", "hardened dowel")
SPOKEN = (
    *(f"{side}.{key}" for side in ("hub", "driven") for key in (
        "pin", "pin_kind", "pin_shear_strength", "pin_circle", "pin_planes", "shear_pin",
        "sprocket_material", "tooth_width", "tooth_share")),
    "driven.outer_diameter", "fixings.jack_screw", "fixings.jack_screw_class", "fixings.jack_screw_tip",
    "fixings.jack_screw_off", "chain.sprockets", "chain.ten_pitches", "chain.roller_diameter",
    "chain.inner_width", "shaft.places",
)  # fmt: skip


def small_parts(c: Chance, b: Build, keys: Keys) -> Keys:
    """Draw what goes with the parts that are there already."""
    found: Keys = {}
    if keys.get("hub.drive") == "pin":
        found |= _pin(c, "hub", b.shaft)
    free = "driven.shaft_diameter" in keys and "driven.key" not in keys
    if free and keys.get("driven.axle") != "dead" and c.happens(0.4):
        found |= _pin(c, "driven", b.shaft)
    for side in ("hub", "driven"):
        if c.happens(0.3):
            found |= _teeth(c, side, keys)
    if keys.get("fixings.holes") == "slotted" and c.happens(0.4):
        found |= {
            "fixings.jack_screw": c.one_of(("M6", "M8", "M10")),
            "fixings.jack_screw_class": "8.8",
        }
    if c.happens(0.15):
        form = c.one_of(("shoulder, sharp", "shoulder, rounded", "groove", "keyway", "plain"))
        found["shaft.places"] = [
            [form, f"{c.between(2, 8):.3g} mm", f"{b.shaft * c.between(0.75, 1.0):.4g} mm"]
        ]
    return {**found, **_readings(c, keys)}


def _pin(c: Chance, side: str, shaft: float) -> Keys:
    """A pin through hub and shaft, or between two flanges well outside the shaft."""
    keys: Keys = {
        f"{side}.pin": c.written(shaft * c.between(0.2, 0.4)),
        f"{side}.pin_kind": c.one_of(PIN_KINDS),
    }
    if c.happens(0.3):
        keys[f"{side}.pin_circle"] = c.written(shaft * c.between(4, 6))
    elif c.happens(0.4):
        keys[f"{side}.outer_diameter"] = c.written(shaft * c.between(3.0, 4.0))
    if c.happens(0.3):
        keys[f"{side}.shear_pin"] = True
    return keys


def _teeth(c: Chance, side: str, keys: Keys) -> Keys:
    found: Keys = {f"{side}.sprocket_material": c.one_of(TOOTHED)}
    if c.happens(0.5):
        width = 1000 * float(cards.chain(str(keys["chain.type"])).inner_width)
        if side == "hub" or "second_chain.type" not in keys:
            found[f"{side}.tooth_width"] = c.written(width * c.between(0.7, 0.95))
    if c.happens(0.3):
        found[f"{side}.tooth_share"] = round(c.between(0.6, 1.0), 3)
    return found


def _readings(c: Chance, keys: Keys) -> Keys:
    """Readings of the chain that is on it, a little off; now and then those of another one."""
    if c.happens(0.85):
        return {}
    card = cards.chain(str(keys["chain.type"]))
    off = c.one_of((1.0, 1.0, 1.0, 1.028))
    return {
        "chain.ten_pitches": f"{1e4 * float(card.pitch) * off * c.between(1.0, 1.001):.5g} mm",
        "chain.roller_diameter": f"{1000 * float(card.roller_diameter):.4g} mm",
        "chain.inner_width": f"{1000 * float(card.inner_width):.4g} mm",
    }
