"""The chain line: chain and sprockets, motor shaft, and what the drive pushes against."""

from __future__ import annotations

import math

from .. import cards, spectrum, units
from ..factors import DESIGN_FACTORS
from ..model import ChainDrive, Duty, DutyStep, Motor, Policy, Shaft, ShaftPlace, Use
from ..picking import Picker
from ..worked import Value
from . import bearing, chain_kind, chain_run, round_shaft
from .outboard import outboard

COMMON = "common practice, no source"
EVERY_WAY = (("across", 0.0), ("away", 90.0), ("towards", -90.0), ("across reversed", 180.0))
TOOTH_RELIEF = {"chamfered": (0.10, 0.13, 0.15), "flat": (0.0, 0.03, 0.05)}
UNKNOWN_RELIEF = (0.03, 0.10, 0.15)
STANDING = ("stands still", "holds a load")  # machines that meet no kerb
STANDING_KNOCK = ("1 g", "1.5 g", "3 g")


def chain(picker: Picker) -> ChainDrive:
    """Give the chain drive; an unknown direction of pull means that every direction is tried."""
    card: cards.Chain = picker.card("chain.type")
    chain_kind.compare(picker, card)
    sizes = chain_run.sprockets(picker, "chain", card)
    centres = sizes["centre_distance"]
    sides = picker.card("chain.tooth_sides")
    relief = TOOTH_RELIEF[sides] if sides else UNKNOWN_RELIEF
    return ChainDrive(
        chain=card, **sizes, pulls=_pulls(picker), slack=picker.number("chain.slack"),
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
        **chain_run.strengths(picker, "chain", card, picker.optional("motor.speed")),
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
    static, dynamic, name = bearing.ratings(picker, "shaft", diameter)
    overhang = picker.number("shaft.face_overhang")
    third = outboard(picker, diameter, overhang)
    return Shaft(
        **round_shaft.form(picker, "shaft"), face_overhang=overhang,
        face_to_bearing=picker.number("shaft.face_to_bearing"),
        bearing_span=picker.between("shaft.bearing_span", *span, COMMON),
        static_rating=static, dynamic_rating=dynamic, bearing=name,
        rear=bearing.told(picker, "shaft.rear_bearing", "shaft.rear_static_rating", "shaft.rear_dynamic_rating"),
        **round_shaft.strength(picker, "shaft"),
        elastic_modulus=Value(205e9, "shaft.elastic_modulus", "card", "steel, from memory"),
        bearing_play=picker.number("shaft.bearing_play"),
        outboard=third, places=_places(picker, overhang if third is None else third.place),
    )  # fmt: skip


def _places(picker: Picker, end: Value) -> tuple[ShaftPlace, ...]:
    """Give the further places of the motor shaft, all between its front bearing and its end."""
    key = "shaft.places"
    rows = picker.card(key) or ()
    strength = round_shaft.strength(picker, "shaft")
    for word, at, _ in rows:
        if not -picker.number("shaft.face_to_bearing") < at < end:
            picker.mistake(
                key, f"'{word}' at {1000 * at:g} mm is not between the front bearing and the "
                f"{'sprocket' if 'outboard.at' not in picker.given else 'outboard bearing'}",
                "distances are measured from the motor's face, towards the sprocket",
            )  # fmt: skip
    return tuple(
        ShaftPlace(
            at=Value(at, key, "given", word), **strength, **round_shaft.notched(key, word, Value(d, key, "given", word)),
        )
        for word, at, d in rows
    )  # fmt: skip


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
        machine=str(picker.card("use.machine") or ""),
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


def _for_welds(picker: Picker, key: str, welded: bool) -> Value | None:
    """Give an input of the welds' fatigue; where nothing is welded nothing asks for it."""
    if welded:
        return picker.number(key)
    if key in picker.given:
        picker.warnings.append(f"{key} does nothing here: nothing is welded.")
    return None


def duty(picker: Picker, welded: bool) -> Duty:
    """Give how torque comes on, and how often."""
    factor = picker.optional("duty.starting_factor")
    return Duty(
        reverse=picker.number("duty.reverse"), ramp=picker.optional("duty.ramp"),
        starting_factor=factor, bump=_knock(picker), hours=picker.number("duty.hours"),
        bearing_hours=_for_life(picker, "duty.bearing_hours"),
        chain_factor=_for_life(picker, "duty.chain_factor"),
        starts=_for_welds(picker, "duty.starts", welded), spectrum=_spectrum(picker),
    )  # fmt: skip


def _knock(picker: Picker) -> Value:
    """Give the knock the frame sees; what stands still meets no kerb."""
    standing = "use.machine" in picker.given and picker.given["use.machine"].value in STANDING
    if not standing:
        return picker.number("duty.bump")
    low, likely, high = (units.parse(g, "acceleration") for g in STANDING_KNOCK)
    return picker.between("duty.bump", low, likely, high, f"a machine that stands ({COMMON})")


def _spectrum(picker: Picker) -> tuple[DutyStep, ...]:
    """Give the steps of the duty; without the motor's speed nothing asks for them."""
    key = "duty.spectrum"
    if key in picker.given and "motor.speed" not in picker.given:
        picker.warnings.append(f"{key} does nothing yet: the bearing's life needs motor.speed too.")
    return tuple(
        DutyStep(
            **{
                name: Value(share, key, "given", f"step {i}, share of the {name}")
                for name, share in zip(spectrum.NAMES, step, strict=True)
            }
        )
        for i, step in enumerate(picker.card(key) or (), start=1)
    )


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
