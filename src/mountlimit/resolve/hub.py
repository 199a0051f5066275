"""The driving hub: what holds the sprocket on the motor shaft."""

from __future__ import annotations

import math
from typing import Any

from .. import cards
from ..formulas import flats as flat_formulas
from ..held import Flats, Grip, Key
from ..model import ChainDrive, Hub, Shaft
from ..picking import Picker
from ..worked import Value
from . import preload
from .motor import bolt_set
from .pins import pin
from .sprocket import bolt_ring, given_key, ring_weld
from .teeth import sprocket

COMMON = "common practice, no source"
DEEPEST_FLAT = (
    0.3  # of the diameter, to where the torsion formulas of Roark table 10.1 were compared
)
THIN_HUB = 1.6  # diameters of the shaft
WRAP = (1.0, 4 / math.pi, math.pi / 2)
WRAP_SOURCE = "statics: hub pressing along two lines, as a cosine round the shaft, evenly"


def hub(picker: Picker, shaft: Shaft, chain: ChainDrive) -> Hub:
    """Give what turns the sprocket; a key of the usual size when nothing is said."""
    drive = _drive(picker)
    key = _key(picker) if drive == "key" else None
    count, hold, pair = _set_screws(picker, drive)
    strength = picker.number("hub.key_yield")
    flats = _flats(picker, shaft.diameter) if drive == "flats" else None
    grip = _grip(picker, drive) if drive in ("taper bush", "clamp") else None
    bolts = bolt_ring(picker, "hub", shaft.diameter)
    return Hub(
        drive=drive, key=key, set_screw_count=count, set_screw_hold=hold, set_screw_pair=pair,
        yield_strength=strength, flats=flats, grip=grip, bolts=bolts,
        weld=ring_weld(picker, "hub", shaft.diameter),
        pin=pin(picker, "hub", shaft.diameter, "hub.outer_diameter"),
        sprocket=sprocket(picker, "hub", chain.chain, chain.driving_teeth, bolts),
    )  # fmt: skip


# What stands in the file says how the hub is driven: the first that is given counts.  Screws alone
# may belong to a bush or to a clamp; the clamp holds less.  A pin on a circle of its own holds no shaft.
TELLING = {
    "hub.key": "key", "hub.pin": "pin", "hub.set_screw": "set screw", "hub.flat_depth": "flats",
    "hub.across_flats": "flats", "hub.rated_torque": "taper bush", "hub.screws": "clamp",
}  # fmt: skip

# Of these drives alone each key says something; beside another one it is said to idle.
IDLE = {
    "hub.flat_depth": ("flats",), "hub.across_flats": ("flats",), "hub.outer_diameter": ("key", "pin"),
    "hub.rated_torque": ("taper bush", "clamp"), "hub.screws": ("taper bush", "clamp"),
}  # fmt: skip


def _drive(picker: Picker) -> str:
    known = {k for k in picker.given if k != "hub.pin" or "hub.pin_circle" not in picker.given}
    told = next((word for key, word in TELLING.items() if key in known), None)
    plain = told in ("key", "pin", "set screw", "flats") and "hub.drive" not in picker.given
    drive = str(told) if plain else picker.word("hub.drive", told or "key")
    if drive == "pin" and "hub.pin" not in picker.given:
        picker.mistake("hub.pin", "is missing: diameter of the pin", "for example '5 mm'")
    for key, meant in IDLE.items():
        if key in picker.given and drive not in meant:
            picker.warnings.append(f"{key} does nothing here: hub.drive is '{drive}'.")
    return drive


def _set_screws(picker: Picker, drive: str) -> tuple[int, Value | None, Value]:
    """Give number of set screws, what one holds, and what all hold over one."""
    screws = picker.card("hub.set_screw")
    if drive == "set screw" and not screws:
        picker.mistake(
            "hub.set_screw", "is missing: number and size of set screws, for example '1 x M6'"
        )
    count, hold = 0, None
    if screws:
        count, screw = screws
        hold = picker.uncertain(
            "hub.set_screw_hold", screw.holding_low, screw.holding, screw.holding_high,
            screw.source, "assumed", kind="force",
        )  # fmt: skip
    pair = picker.uncertain(
        "hub.set_screw_pair", 1.3, 1.5, 1.8, "common practice, no source (two screws hold less than twice one)",
        "assumed", kind="ratio",
    ) if count > 1 else Value(1.0, "hub.set_screw", "given", "one set screw")  # fmt: skip
    return count, hold, pair


def _key(picker: Picker) -> Key:
    key = given_key(picker, "hub.key")
    if key is None:
        return _usual_key(picker)
    _look_at_wall(picker, key)
    return key


def _usual_key(picker: Picker) -> Key:
    diameter = picker.number("shaft.diameter")
    size = cards.key_for_shaft(float(diameter), "metric")
    if size is None:
        picker.mistake(
            "hub.key", "is missing, and no standard key fits this shaft", "'3 x 3 x 12 mm'"
        )
        least = Value(0.003, "hub.key", "assumed")
        return Key(width=least, height=least, length=least)
    picker.words["hub.key"] = f"{size.width * 1000:g} x {size.height * 1000:g} mm by shaft diameter"
    length = picker.uncertain(
        "hub.key_length", 0.8 * diameter, 1.1 * diameter, 1.5 * diameter, COMMON, "assumed",
        kind="length",
    )  # fmt: skip
    key = Key(width=size.width, height=size.height, length=length)
    _look_at_wall(picker, key)
    return key


def _look_at_wall(picker: Picker, key: Key) -> None:
    """Warn of a thin hub over its keyway; the keyway goes half the key's height into the hub."""
    outer, shaft = picker.optional("hub.outer_diameter"), picker.number("shaft.diameter")
    if outer is None:
        return
    wall = (outer - shaft - key.height) / 2
    if wall <= 0:
        picker.mistake("hub.outer_diameter", "leaves no wall over the keyway",
                       f"with this key it must be over {(shaft + key.height) * 1000:g} mm")  # fmt: skip
    elif outer < THIN_HUB * shaft:
        picker.warnings.append(
            f"The hub's wall over the keyway is {wall * 1000:.1f} mm: hubs of steel with a key are usually "
            f"{THIN_HUB} to 1.8 shaft diameters wide outside ({THIN_HUB * shaft * 1000:.0f} mm and up here; "
            "Roloff/Matek, Maschinenelemente ch. 12, from memory). A thin or hard one splits at the keyway."
        )


def _flats(picker: Picker, diameter: Value) -> Flats | None:
    """Give the flats of the shaft, or None when they were not measured."""
    across, deep = "hub.across_flats", "hub.flat_depth"
    given = [k for k in (across, deep) if k in picker.given]
    if not given:
        return None
    if len(given) == 2:
        picker.mistake(across, "give hub.flat_depth or hub.across_flats, not both")
    number = picker.number("hub.flats")
    depth: Any = picker.optional(deep)
    if depth is None:
        depth = flat_formulas.flat_depth(diameter, picker.number(across), number)
    if not 0 < depth <= DEEPEST_FLAT * diameter:
        most, least = DEEPEST_FLAT * diameter, (1 - number * DEEPEST_FLAT) * diameter
        picker.mistake(
            given[-1], f"does not fit a shaft of {diameter * 1000:g} mm",
            f"flats may be {most * 1000:.1f} mm deep, or {least * 1000:.1f} mm across, but less than the diameter",
        )  # fmt: skip
        depth = Value(0.1 * diameter, given[-1], "assumed")
    length = picker.between(
        "hub.flat_length", 0.8 * diameter, 1.1 * diameter, 1.5 * diameter, COMMON
    )
    return Flats(number=number, depth=depth, length=length)


def _grip(picker: Picker, drive: str) -> Grip | None:
    """Give what a taper bush or a clamp holds by, or None for a bush nothing is told of."""
    rated = picker.optional("hub.rated_torque")
    if rated is not None:
        return Grip(words=drive, rated_torque=rated, screws=None, preload=None, friction=None, wrap=None)  # fmt: skip
    if "hub.screws" not in picker.given:
        if drive == "clamp":
            picker.mistake("hub.screws", "is missing: number and size of the clamping screws",
                           "for example '2 x M6', or give hub.rated_torque")  # fmt: skip
        return None
    thread = picker.card("hub.screws")[1]
    usual = "8.8" if thread.system == "metric" else "SAE 5"  # socket screws are sold in it and up
    screws = bolt_set(picker, "hub.screws", "hub.screw_class", usual)
    wrap = None
    if drive == "clamp":
        wrap = picker.uncertain("hub.clamp_wrap", *WRAP, WRAP_SOURCE, "assumed", kind="ratio")
    return Grip(
        words=drive, rated_torque=None, screws=screws,
        preload=preload.preload(picker, "hub.screw_", screws),
        friction=picker.number("hub.shaft_friction"), wrap=wrap,
    )  # fmt: skip
