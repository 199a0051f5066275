"""What wears and weakens a chain: pressure allowed in its joints, and the link that closes it."""

from __future__ import annotations

import math

import numpy as np

from .. import cards
from ..model import Number
from ..picking import Picker
from ..worked import Value

# Turns per minute of the small sprocket -> pressure allowed in MPa, for about 15 000 hours.
SPEEDS = (50, 200, 400, 600, 800, 1000, 1200, 1600, 2000)
ALLOWED = {  # largest pitch of the column -> its pressures
    0.0165: (35, 31.5, 28.5, 26, 24, 22.5, 21, 18.5, 16.5),
    math.inf: (35, 30, 26, 23.5, 21, 19, 17.5, 15),
}
TABLE = (
    "table of allowable bearing stress by pitch and speed, PSG Design Data and other machine-elements texts "
    "(from memory); a third less where it is oiled now and then (common practice, no source)"
)
SELDOM_OILED, WELL_OILED = 0.67, 1.2
CLIP = (0.7, 0.8, 1.0)
CLIP_SOURCE = (
    "The Complete Guide to Chain 1.1.1 and table 2.1: a slip-fit connecting link has 20 % (0 to 20 %) less "
    "fatigue strength than the chain; one maker says up to 30 %"
)


def table_pressure(pitch: float, turns_per_minute: float) -> float:
    """Give the pressure allowed in the joints, Pa; between and past the printed speeds on logarithms."""
    column = next(v for most, v in ALLOWED.items() if pitch <= most)
    x, y = np.log(SPEEDS[: len(column)]), np.log(column)
    at = math.log(max(turns_per_minute, SPEEDS[0]))
    past = max(at - float(x[-1]), 0.0) * float((y[-1] - y[-2]) / (x[-1] - x[-2]))
    return 1e6 * math.exp(float(np.interp(at, x, y)) + past)


def joint_pressure(
    picker: Picker, card: cards.Chain, part: str, speed: Number | None
) -> Value | None:
    """Give the pressure allowed in a chain's joints; None where neither it nor its speed is known.

    ``part`` is the chain's section of the file, ``speed`` that of its driving sprocket, rad/s.
    """
    key = f"{part}.joint_pressure"
    if key in picker.given:
        return picker.number(key)
    if speed is None:
        return None
    likely = table_pressure(float(card.pitch), float(speed) * 30 / math.pi)
    return picker.between(key, SELDOM_OILED * likely, likely, WELL_OILED * likely, TABLE)


def link_share(picker: Picker, part: str) -> Value | None:
    """Give the strength of a clip link over that of the chain; None where it is riveted."""
    key = f"{part}.link"
    if picker.word(key, "rivet") == "rivet":
        return None
    return picker.uncertain(key, *CLIP, CLIP_SOURCE, "assumed", kind="ratio")
