"""The chain line: chain and sprockets, motor shaft, and what the drive pushes against."""

from __future__ import annotations

import math

import numpy as np

from .. import cards
from ..factors import DESIGN_FACTORS
from ..formulas import give
from ..formulas import shaft as shaft_formulas
from ..model import ChainDrive, Duty, Motor, Policy, Shaft, Use
from ..picking import Picker
from ..worked import Value
from . import chain_kind, chain_life

COMMON = "common practice, no source"
EVERY_WAY = (("across", 0.0), ("away", 90.0), ("towards", -90.0), ("across reversed", 180.0))
TOOTH_RELIEF = {"chamfered": (0.10, 0.13, 0.15), "flat": (0.0, 0.03, 0.05)}
ULTIMATE = (500e6, 600e6, 900e6)
NOTCH_TABLE = "Shigley's Mechanical Engineering Design 9th ed. table 7-1 (from memory)"
UNKNOWN_NOTCH = ("plain", "shoulder, rounded", "shoulder, sharp")
UNKNOWN_RELIEF = (0.03, 0.10, 0.15)


def chain(picker: Picker) -> ChainDrive:
    """Give the chain drive; an unknown direction of pull means that every direction is tried."""
    card: cards.Chain = picker.card("chain.type")
    chain_kind.compare(picker, card)
    centres = picker.number("chain.centre_distance")
    sides = picker.card("chain.tooth_sides")
    relief = TOOTH_RELIEF[sides] if sides else UNKNOWN_RELIEF
    driving, driven = picker.number("chain.driving_teeth"), picker.number("chain.driven_teeth")
    if centres <= card.pitch * (driving + driven) / 6.3:
        picker.mistake(
            "chain.centre_distance", "the two sprockets would touch", "check pitch and teeth"
        )
    dynamic = card.minimum_dynamic_strength
    if dynamic is None:
        dynamic = give.dynamic_strength(card.minimum_tensile_strength)
    return ChainDrive(
        chain=card, driving_teeth=driving, driven_teeth=driven, centre_distance=centres,
        pulls=_pulls(picker), slack=picker.number("chain.slack"),
        slack_given="chain.slack" in picker.given, wear=picker.number("chain.wear"),
        tooth_relief=picker.between(
            "chain.tooth_relief", *relief,
            "ISO 606 (0.10 to 0.15 of the pitch, from memory); home-made teeth are often flat",
        ),
        offset=picker.between(
            "chain.offset", 0.0, 0.001 * centres, 0.0015 * centres,
            "common practice, no source (set up with a straightedge)",
        ),
        skew=picker.number("chain.skew"), stretch_ratio=picker.number("chain.stretch_ratio"),
        minimum_dynamic_strength=dynamic, joint_pressure=chain_life.joint_pressure(picker, card),
        link_share=chain_life.link_share(picker),
    )  # fmt: skip


def _pulls(picker: Picker) -> tuple[tuple[str, Value], ...]:

    if "chain.pull" in picker.given:
        found = picker.given["chain.pull"].value
        return tuple((words, Value(angle, "chain.pull", "given", words)) for words, angle in found)
    picker.words["chain.pull"] = "unknown: every direction is tried"
    return tuple((w, Value(math.radians(a), "chain.pull", "assumed", w)) for w, a in EVERY_WAY)


def shaft(picker: Picker, motor: Motor) -> Shaft:
    """Give the motor shaft on its bearings."""
    diameter = picker.number("shaft.diameter")
    span = (0.05, 0.06, 0.09) if motor.mass < 2.5 else (0.09, 0.11, 0.16)
    static, dynamic, name = _ratings(picker, diameter)
    notch, in_bending, in_torsion, radius = _notch(picker, diameter)
    return Shaft(
        diameter=diameter, face_overhang=picker.number("shaft.face_overhang"),
        face_to_bearing=picker.number("shaft.face_to_bearing"),
        bearing_span=picker.between("shaft.bearing_span", *span, COMMON),
        static_rating=static, dynamic_rating=dynamic, bearing=name,
        yield_strength=picker.number("shaft.yield_strength"), ultimate_strength=_ultimate(picker),
        notch=notch, notch_bending=in_bending, notch_torsion=in_torsion, notch_radius=radius,
        elastic_modulus=Value(205e9, "shaft.elastic_modulus", "card", "steel, from memory"),
        bearing_play=picker.number("shaft.bearing_play"),
    )  # fmt: skip


def _ultimate(picker: Picker) -> Value:
    """Give the ultimate strength of the shaft, never under a yield strength that is given."""
    given = picker.given.get("shaft.yield_strength")
    least = float(given.value) if given else 0.0
    low, likely, high = (max(v, least) for v in ULTIMATE)
    strength = picker.between(
        "shaft.ultimate_strength", low, likely, high,
        "from memory (plain to heat-treated medium-carbon shaft steel)",
    )  # fmt: skip
    if "shaft.ultimate_strength" in picker.given and strength < least:
        picker.mistake("shaft.ultimate_strength", "is below the yield strength of the shaft")
    return strength


def _notch(picker: Picker, diameter: Value) -> tuple[str, Value, Value, Value]:
    """Give the notch in words, its factors in bending and in torsion, and its radius."""
    table, key = shaft_formulas.CONCENTRATION, "shaft.notch"
    word = picker.card(key)
    if word is not None:
        bending, torsion, share = table[word]
        origin, source = "given", f"'{word}', {NOTCH_TABLE}"
        in_bending = Value(bending, key, origin, source)
    else:
        origin, source = "assumed", f"bending, from plain to a sharp shoulder: {NOTCH_TABLE}"
        known = [table[w] for w in UNKNOWN_NOTCH]
        column = [k[0] for k in known]
        low, likely, high = column
        in_bending = picker.uncertain(key, low, likely, high, source, origin, kind="number")
        torsion, share = (
            float(np.interp(in_bending, column, [k[i] for k in known])) for i in (1, 2)
        )
    radius = Value(share * diameter, key, origin, f"{share:g} of the diameter: {source}")
    return word or "form unknown", in_bending, Value(torsion, key, origin, source), radius


def _ratings(picker: Picker, diameter: Value) -> tuple[Value, Value | None, str]:
    """Give static and dynamic rating of the front bearing, and its name."""
    card = picker.card("shaft.bearing")
    if card is not None:
        if abs(card.bore - diameter) > 0.25 * diameter:
            picker.warnings.append(
                f"Bearing {card.designation} has a {card.bore * 1000:g} mm bore, the shaft is "
                f"{diameter * 1000:g} mm at the bearing: check which is right."
            )
        return card.static_load_rating, card.dynamic_load_rating, str(card.designation)
    fitting = [
        b for b in cards.bearings("deep groove") if abs(b.bore - diameter) <= 0.13 * diameter
    ] or cards.bearings("deep groove")
    near = min(fitting, key=lambda b: abs(b.bore - diameter))
    same = [b for b in fitting if b.bore == near.bore]
    words = f"light to heavy deep-groove bearing on a {near.bore * 1000:g} mm shaft: {near.source}"

    def rating(key: str, values: list[float]) -> Value:
        ranked = sorted(values)
        return picker.between(key, ranked[0], ranked[len(ranked) // 2], ranked[-1], words)

    return (
        rating("shaft.static_rating", [float(b.static_load_rating) for b in same]),
        rating("shaft.dynamic_rating", [float(b.dynamic_load_rating) for b in same])
        if "motor.speed" in picker.given
        else None,
        "unknown",
    )


VEHICLE = ("use.mass", "use.wheelbase", "use.front_to_centre", "use.centre_height")


def use(picker: Picker) -> Use:
    """Give what limits the pull outside the mount."""
    gear = picker.optional("use.gear_after_chain") or Value(
        1.0, "use.gear_after_chain", "assumed", "none"
    )
    given = [k for k in VEHICLE if k in picker.given]
    if given and len(given) < len(VEHICLE):
        missing = next(k for k in VEHICLE if k not in picker.given)
        picker.mistake(missing, f"is missing: {', '.join(given)} only help together with it")
    driven = picker.word("use.driven", "rear") if given else "rear"
    mass, wheelbase, to_centre, height = (picker.optional(k) for k in VEHICLE)
    if wheelbase is not None and to_centre is not None and to_centre >= wheelbase:
        picker.mistake("use.front_to_centre", "is not between the axles")
    return Use(
        wheel_load=picker.optional("use.wheel_load"), lifted_load=picker.optional("use.lifted_load"),
        driven=driven, mass=mass, wheelbase=wheelbase, front_to_centre=to_centre,
        centre_height=height, wheel_diameter=picker.optional("use.wheel_diameter"),
        grip_low=picker.number("use.grip_low"), grip_high=picker.number("use.grip_high"),
        gear_after_chain=gear, efficiency=picker.number("use.efficiency"),
    )  # fmt: skip


def _for_life(picker: Picker, key: str) -> Value | None:
    """Give an input of the bearing's life; without the motor's speed nothing asks for it."""
    if "motor.speed" in picker.given:
        return picker.number(key)
    if key in picker.given:
        picker.warnings.append(f"{key} does nothing yet: the bearing's life needs motor.speed too.")
    return None


def duty(picker: Picker) -> Duty:
    """Give how torque comes on."""
    factor = picker.optional("duty.starting_factor")
    return Duty(
        reverse=picker.number("duty.reverse"), ramp=picker.optional("duty.ramp"),
        starting_factor=factor, bump=picker.number("duty.bump"), hours=picker.number("duty.hours"),
        bearing_hours=_for_life(picker, "duty.bearing_hours"),
        chain_factor=_for_life(picker, "duty.chain_factor"),
    )  # fmt: skip


def policy(picker: Picker) -> Policy:
    """Give thresholds and the design factors the user set himself."""
    factors = {}
    for name in DESIGN_FACTORS:
        own = picker.optional(f"policy.factor_{name}")
        if own is not None:
            factors[name] = own
            picker.warnings.append(
                f"Design factor of {name} set to {own:g} in the file (usual: {DESIGN_FACTORS[name][0]:g})."
            )
    peak = picker.optional("policy.peak_skew")
    if peak is not None:
        picker.warnings.append("The angle allowed at peak pull was changed in the file.")
    return Policy(
        peak_skew=peak or Value(_ARC_40, "policy.peak_skew", "assumed",
                                "chain makers' rule, 40 arc-minutes for a single strand (from memory)"),
        peak_offset=picker.number("policy.peak_offset"),
        running_skew=picker.optional("policy.running_skew"),
        running_offset=picker.optional("policy.running_offset"),
        throw_level=picker.number("policy.throw_level"), factors=factors, jam=_jam(picker),
    )  # fmt: skip


def _jam(picker: Picker) -> bool:
    """Tell whether a dead stop counts in the safe current; it needs the speed it starts from."""
    asked = bool(picker.card("policy.jam"))
    if asked and "motor.speed" not in picker.given:
        picker.mistake(
            "policy.jam", "needs motor.speed, the speed the drive stops dead from",
            "give motor.speed, or leave policy.jam out: the dead stop is then shown beside the list",
        )  # fmt: skip
    return asked


_ARC_40 = 0.011635528346628864  # 40 arc-minutes in radians
