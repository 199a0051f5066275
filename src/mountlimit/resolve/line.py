"""The chain line: chain and sprockets, motor shaft, hub, and what the drive pushes against."""

from __future__ import annotations

import math

from .. import cards
from ..factors import DESIGN_FACTORS
from ..formulas import give
from ..model import ChainDrive, Duty, Hub, Motor, Policy, Shaft, Use
from ..picking import Picker
from ..worked import Value

COMMON = "common practice, no source"
EVERY_WAY = (("across", 0.0), ("away", 90.0), ("towards", -90.0), ("across reversed", 180.0))
TOOTH_RELIEF = {"chamfered": (0.10, 0.13, 0.15), "flat": (0.0, 0.03, 0.05)}
UNKNOWN_RELIEF = (0.03, 0.10, 0.15)


def chain(picker: Picker) -> ChainDrive:
    """Give the chain drive; an unknown direction of pull means that every direction is tried."""
    card: cards.Chain = picker.card("chain.type")
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
        minimum_dynamic_strength=dynamic,
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
    rating, name = _static_rating(picker, diameter)
    return Shaft(
        diameter=diameter, face_overhang=picker.number("shaft.face_overhang"),
        face_to_bearing=picker.number("shaft.face_to_bearing"),
        bearing_span=picker.between("shaft.bearing_span", *span, COMMON),
        static_rating=rating, bearing=name, yield_strength=picker.number("shaft.yield_strength"),
        elastic_modulus=Value(205e9, "shaft.elastic_modulus", "card", "steel, from memory"),
        bearing_play=picker.number("shaft.bearing_play"),
    )  # fmt: skip


def _static_rating(picker: Picker, diameter: Value) -> tuple[Value, str]:
    card = picker.card("shaft.bearing")
    if card is not None:
        if abs(card.bore - diameter) > 0.25 * diameter:
            picker.warnings.append(
                f"Bearing {card.designation} has a {card.bore * 1000:g} mm bore, the shaft is "
                f"{diameter * 1000:g} mm at the bearing: check which is right."
            )
        return card.static_load_rating, str(card.designation)
    fitting = [
        b for b in cards.bearings("deep groove") if abs(b.bore - diameter) <= 0.13 * diameter
    ] or cards.bearings("deep groove")
    near = min(fitting, key=lambda b: abs(b.bore - diameter))
    ratings = sorted(float(b.static_load_rating) for b in fitting if b.bore == near.bore)
    return (
        picker.between(
            "shaft.static_rating", ratings[0], ratings[len(ratings) // 2], ratings[-1],
            f"light to heavy deep-groove bearing on a {near.bore * 1000:g} mm shaft: {near.source}",
        ),
        "unknown",
    )  # fmt: skip


def hub(picker: Picker) -> Hub:
    """Give what turns the sprocket; a key of the usual size when nothing is said."""
    keyed, screws = picker.card("hub.key"), picker.card("hub.set_screw")
    otherwise = "set screw" if screws and not keyed else "key"
    drive = picker.word("hub.drive", otherwise)
    if drive == "set screw" and not screws:
        picker.mistake(
            "hub.set_screw", "is missing: number and size of set screws, for example '1 x M6'"
        )
    width, height, length = _key(picker, keyed) if drive == "key" else (None, None, None)
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
    return Hub(
        drive=drive, key_width=width, key_height=height, key_length=length,
        key_yield=picker.number("hub.key_yield"), set_screw_count=count, set_screw_hold=hold,
        set_screw_pair=pair,
    )  # fmt: skip


def _key(picker: Picker, keyed: tuple[float, float, float] | None) -> tuple[Value, ...]:
    if keyed:
        text = picker.given["hub.key"].text
        return tuple(Value(v, "hub.key", "given", f"'{text}'") for v in keyed)
    diameter = picker.number("shaft.diameter")
    size = cards.key_for_shaft(float(diameter), "metric")
    if size is None:
        picker.mistake(
            "hub.key", "is missing, and no standard key fits this shaft", "'3 x 3 x 12 mm'"
        )
        return (Value(0.003, "hub.key", "assumed"),) * 3
    picker.words["hub.key"] = f"{size.width * 1000:g} x {size.height * 1000:g} mm by shaft diameter"
    length = picker.uncertain(
        "hub.key_length",
        0.8 * diameter,
        1.1 * diameter,
        1.5 * diameter,
        COMMON,
        "assumed",
        kind="length",
    )
    return size.width, size.height, length


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


def duty(picker: Picker) -> Duty:
    """Give how torque comes on."""
    factor = picker.optional("duty.starting_factor")
    return Duty(
        reverse=picker.number("duty.reverse"), ramp=picker.optional("duty.ramp"),
        starting_factor=factor, bump=picker.number("duty.bump"), hours=picker.number("duty.hours"),
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
        throw_level=picker.number("policy.throw_level"), factors=factors,
    )  # fmt: skip


_ARC_40 = 0.011635528346628864  # 40 arc-minutes in radians
