"""The clamp that holds a mount on a frame tube: bolts, pull, friction and how it bears."""

from __future__ import annotations

import math

from .. import cards
from ..mounting import Clamp, Substance
from ..picking import Picker
from ..worked import Value
from . import preload
from .motor import bolt_set

COMMON = "common practice, no source"
KEYS = "fixings.clamp_"
DEGREE = math.pi / 180
# Half the arc that bears on a round tube: low, likely, high, in degrees.
SEATS = {"shell": (30.0, 60.0, 90.0), "flat": (3.0, 10.0, 30.0)}


def clamp(picker: Picker, material: Substance) -> Clamp | None:
    """Give the clamp without its place; None for forms that have none."""
    if not picker.knows("fixings.clamp_bolts") or picker.card("fixings.clamp_bolts") is None:
        return None
    kind = (
        picker.word("fixings.clamp", "u-bolts") if picker.knows("fixings.clamp") else "split block"
    )
    bolts = bolt_set(picker, "fixings.clamp_bolts", "fixings.clamp_class", _unmarked(picker))
    pulls = 1 if kind == "split block" else 2
    words = {1: "each bolt pulls once", 2: "two legs or strands"}[pulls]
    thread = bolts.thread
    found = cards.friction(picker.word("fixings.clamp_surface", "painted"))
    return Clamp(
        kind=kind, bolts=bolts, pulls=Value(pulls, "pulls of a clamp bolt", "derived", words),
        preload=preload.preload(
            picker, KEYS, bolts,
            preload.pressed(material, thread.washer_diameter, thread.clearance_hole),
        ),
        friction=picker.between(
            "fixings.clamp_friction", found.low, found.likely, found.high, found.source
        ),
        contact_angle=_contact(picker), length=picker.number("mount.grip_length"),
    )  # fmt: skip


def _unmarked(picker: Picker) -> str:
    thread = picker.card("fixings.clamp_bolts")[1]
    return "4.6" if thread.system == "metric" else "SAE 2"


def _contact(picker: Picker) -> Value | None:
    """Give half the arc that bears on a round tube; a square one bears on its flats."""
    if picker.card("frame.member") == "square tube":
        for key in ("fixings.contact_angle", "fixings.seat"):
            if key in picker.given:
                picker.mistake(key, "is for a round tube; a square one bears on its flats",
                               "leave it out")  # fmt: skip
        return None
    seat = picker.word("fixings.seat", "shell")
    low, likely, high = (DEGREE * a for a in SEATS[seat])
    source = f"{COMMON} ({seat}: half the arc that bears)"
    return picker.between("fixings.contact_angle", low, likely, high, source)
