"""The second stage of a two-stage drive: jackshaft and second chain."""

from __future__ import annotations

import math

from .. import cards
from ..formulas import torque
from ..model import ChainDrive, ChainRun, Jackshaft
from ..picking import Picker
from ..worked import Value
from . import chain_run, round_shaft
from .bearing import ratings
from .sprocket import given_key

PART = "second_chain"
CHAIN = ("type", "driving_teeth", "driven_teeth", "centre_distance")
SHAFT = ("diameter", "bearing_span", "first_at", "second_at")
EVERY_ANGLE = (("the same way", 0.0), ("square to each other", 90.0), ("against each other", 180.0))


def jackshaft(picker: Picker, first: ChainDrive) -> Jackshaft | None:
    """Give jackshaft and second chain, or None where the file tells of one chain only."""
    told = [k for k in picker.given if k.partition(".")[0] in ("second_chain", "jackshaft")]
    if not told:
        return None
    wanted = [f"{PART}.{n}" for n in CHAIN] + [f"jackshaft.{n}" for n in SHAFT]
    missing = [k for k in wanted if k not in picker.given]
    for key in missing:
        picker.mistake(key, f"is missing: {told[0]} tells of a two-stage drive, which needs it")
    if missing:
        return None
    run = _run(picker, first)
    shaft = round_shaft.form(picker, "jackshaft") | round_shaft.strength(picker, "jackshaft")
    static, dynamic, name = ratings(picker, "jackshaft", shaft["diameter"])
    keys = [given_key(picker, f"jackshaft.{n}_key", shaft["diameter"]) for n in ("first", "second")]
    if picker.number("jackshaft.first_at") == picker.number("jackshaft.second_at"):
        picker.mistake("jackshaft.second_at", "puts both sprockets in the same place")
    return Jackshaft(
        **shaft, bearing_span=picker.number("jackshaft.bearing_span"),
        first_at=picker.number("jackshaft.first_at"), second_at=picker.number("jackshaft.second_at"),
        angles=_angles(picker), static_rating=static, dynamic_rating=dynamic, bearing=name,
        first_key=keys[0], second_key=keys[1],
        key_yield=picker.number("jackshaft.key_yield") if any(keys) else None, run=run,
    )  # fmt: skip


def _angles(picker: Picker) -> tuple[tuple[str, Value], ...]:
    key = "jackshaft.angle"
    if key in picker.given:
        return ((f"pulls at {picker.given[key].text}", picker.number(key)),)
    picker.words[key] = "unknown: 0, 90 and 180 deg are tried"
    return tuple((f"pulls {w}", Value(math.radians(a), key, "assumed", w)) for w, a in EVERY_ANGLE)


def _run(picker: Picker, first: ChainDrive) -> ChainRun:
    card: cards.Chain = picker.card("second_chain.type")
    sizes, speed = chain_run.sprockets(picker, PART, card), picker.optional("motor.speed")
    slow = None
    if speed is not None:
        slow = torque.driven_speed(speed, first.driving_teeth, first.driven_teeth)
    return ChainRun(
        chain=card, **sizes, slack=picker.number(f"{PART}.slack"),
        **chain_run.strengths(picker, PART, card, slow),
    )  # fmt: skip
