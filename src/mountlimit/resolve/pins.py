"""A pin that turns a sprocket: through hub and shaft, or between two flanges; the same on both sides."""

from __future__ import annotations

from ..held import Pin
from ..picking import Picker
from ..worked import Value

# Shear strength in MPa: low, likely, high, and where it comes from.
KINDS = {
    "mild steel": (240, 320, 420, "from memory (mild or free-cutting steel, plain, taper or grooved pin)"),
    "spring pin": (425, 480, 560, "ISO 8752, least double shear 425 to 460 MPa of the full circle; above it from memory"),
    "brass": (180, 240, 310, "from memory (brass rod)"),
    "hardened dowel": (600, 750, 1000, "from memory (hardened dowel pins)"),
}  # fmt: skip
THICKEST = 0.6  # of the shaft's diameter
OTHERS = ("pin_kind", "pin_shear_strength", "pin_circle", "pin_planes", "shear_pin")


def pin(picker: Picker, part: str, shaft: Value | None, outer_key: str) -> Pin | None:
    """Give the pin of one side, or None where there is none; ``outer_key`` tells the hub's diameter."""
    key, circle_key = f"{part}.pin", f"{part}.pin_circle"
    if key not in picker.given:
        idle = next((k for k in OTHERS if f"{part}.{k}" in picker.given), None)
        if idle:
            picker.mistake(key, f"is missing: {part}.{idle} needs it", "for example '5 mm'")
        return None
    diameter, circle = picker.number(key), picker.optional(circle_key)
    flanged = circle is not None
    if circle is None:
        circle = shaft
    if circle is None:
        picker.mistake(f"{part}.shaft_diameter", f"is missing: {key} needs it, or {circle_key}")
        return None
    _refuse(picker, key, circle_key if flanged else "", diameter, circle, shaft)
    hub = None if flanged else _hub(picker, outer_key, key, circle)
    number = picker.optional(f"{part}.pin_planes") or (
        Value(1, f"{part}.pin_planes", "assumed", "one pin between two flanges")
        if flanged
        else Value(2, f"{part}.pin_planes", "assumed", "a pin through hub and shaft is cut twice")
    )
    low, likely, high, source = KINDS[picker.word(f"{part}.pin_kind", "mild steel")]
    return Pin(
        diameter=diameter, circle=circle, planes=number, through_shaft=not flanged, hub_diameter=hub,
        shear_strength=picker.between(
            f"{part}.pin_shear_strength", low * 1e6, likely * 1e6, high * 1e6, source
        ),
        fuse=bool(picker.card(f"{part}.shear_pin")),
    )  # fmt: skip


def _refuse(
    picker: Picker, key: str, circle_key: str, diameter: Value, circle: Value, shaft: Value | None
) -> None:
    if circle_key and shaft is not None and circle - diameter < shaft:
        picker.mistake(
            circle_key, f"lets the pin run into the shaft ({shaft * 1000:g} mm)",
            "leave it out for a pin through hub and shaft",
        )  # fmt: skip
    elif not circle_key and diameter > THICKEST * circle:
        picker.mistake(
            key, f"leaves no shaft beside it ({circle * 1000:g} mm)",
            "cross pins are a fifth to a third of the shaft's diameter",
        )  # fmt: skip


def _hub(picker: Picker, outer_key: str, key: str, shaft: Value) -> Value | None:
    outer = picker.optional(outer_key)
    if outer is not None and outer <= shaft:
        picker.mistake(outer_key, f"is no more than the shaft ({shaft * 1000:g} mm): {key} has no hub to hold")  # fmt: skip
        return None
    return outer
