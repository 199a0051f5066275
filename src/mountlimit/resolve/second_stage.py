"""The second stage of a two-stage drive: jackshaft and second chain."""

from __future__ import annotations

import math

from .. import cards
from ..formulas import give, torque
from ..held import Key
from ..model import ChainDrive, ChainRun, Jackshaft
from ..picking import Picker
from ..worked import Value
from . import chain_life, round_shaft
from .bearing import ratings
from .sprocket import given_key

CHAIN = ("type", "driving_teeth", "driven_teeth", "centre_distance")
SHAFT = ("diameter", "bearing_span", "first_at", "second_at")
EVERY_ANGLE = (("the same way", 0.0), ("square to each other", 90.0), ("against each other", 180.0))


def jackshaft(picker: Picker, first: ChainDrive) -> Jackshaft | None:
    """Give jackshaft and second chain, or None where the file tells of one chain only."""
    told = [k for k in picker.given if k.partition(".")[0] in ("second_chain", "jackshaft")]
    if not told:
        return None
    wanted = [f"second_chain.{n}" for n in CHAIN] + [f"jackshaft.{n}" for n in SHAFT]
    missing = [k for k in wanted if k not in picker.given]
    for key in missing:
        picker.mistake(key, f"is missing: {told[0]} tells of a two-stage drive, which needs it")
    if missing:
        return None
    run = _run(picker, first)
    shaft = round_shaft.round_shaft(picker, "jackshaft")
    static, dynamic, name = ratings(picker, "jackshaft", shaft.diameter)
    keys = [_key(picker, f"jackshaft.{n}_key", shaft.diameter) for n in ("first", "second")]
    if picker.number("jackshaft.first_at") == picker.number("jackshaft.second_at"):
        picker.mistake("jackshaft.second_at", "puts both sprockets in the same place")
    return Jackshaft(
        **{f: getattr(shaft, f) for f in shaft.__dataclass_fields__},
        bearing_span=picker.number("jackshaft.bearing_span"),
        first_at=picker.number("jackshaft.first_at"), second_at=picker.number("jackshaft.second_at"),
        angles=_angles(picker), static_rating=static, dynamic_rating=dynamic, bearing=name,
        first_key=keys[0], second_key=keys[1],
        key_yield=picker.number("jackshaft.key_yield") if any(keys) else None, run=run,
    )  # fmt: skip


def _key(picker: Picker, name: str, diameter: Value) -> Key | None:
    key = given_key(picker, name)
    if key is not None and key.height >= diameter:
        picker.mistake(name, f"does not fit a shaft of {diameter * 1000:g} mm")
    return key


def _angles(picker: Picker) -> tuple[tuple[str, Value], ...]:
    key = "jackshaft.angle"
    if key in picker.given:
        return ((f"pulls at {picker.given[key].text}", picker.number(key)),)
    picker.words[key] = "unknown: 0, 90 and 180 deg are tried"
    return tuple((f"pulls {w}", Value(math.radians(a), key, "assumed", w)) for w, a in EVERY_ANGLE)


def _run(picker: Picker, first: ChainDrive) -> ChainRun:
    card: cards.Chain = picker.card("second_chain.type")
    driving, driven = (picker.number(f"second_chain.{n}_teeth") for n in ("driving", "driven"))
    centres = picker.number("second_chain.centre_distance")
    if centres <= card.pitch * (driving + driven) / 6.3:
        picker.mistake("second_chain.centre_distance", "the two sprockets would touch", "check pitch and teeth")  # fmt: skip
    speed = picker.optional("motor.speed")
    slow = None
    if speed is not None:
        slow = torque.driven_speed(speed, first.driving_teeth, first.driven_teeth)
    dynamic = card.minimum_dynamic_strength
    if dynamic is None:
        dynamic = give.dynamic_strength(card.minimum_tensile_strength)
    return ChainRun(
        chain=card, driving_teeth=driving, driven_teeth=driven, centre_distance=centres,
        slack=picker.number("second_chain.slack"), minimum_dynamic_strength=dynamic,
        joint_pressure=chain_life.joint_pressure(picker, card, "second_chain", slow),
        link_share=chain_life.link_share(picker, "second_chain"),
    )  # fmt: skip
