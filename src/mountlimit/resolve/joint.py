"""The mount's material at work, and the bolted joint."""

from __future__ import annotations

from dataclasses import replace

from .. import cards
from ..formulas import flexure, give
from ..held import BoltSet
from ..model import Fixings, Motor, MotorFace, Number
from ..mounting import Substance
from ..mounts._common import BoltHoles
from ..picking import Picker
from ..worked import Value
from . import jack, preload
from .motor import bolt_set, unmarked

COMMON = "common practice, no source"
ROOM = 273.15 + 23.0
PLASTIC_AT_WORK = (273.15 + 45.0, 273.15 + 60.0, 273.15 + 60.0)
SPREAD = 1.645  # 5 % and 95 % of a normal distribution
HEAT_SPREAD = 0.15  # of a retention factor, from memory
# Of the card's fatigue strength: low, likely, high, and why.
_SCATTER = "scatter 8 % (Shigley's Mechanical Engineering Design 9th ed. section 6-17, from memory)"
_ORDER = "an order of magnitude, so 0.6 to 1.4 of it (from memory)"
FATIGUE_SHARE = {
    "steel": (0.87, 1.0, 1.13, _SCATTER),
    "iron": (0.87, 1.0, 1.13, _SCATTER),
    "aluminium": (0.7, 0.8, 1.0, f"polished bar; 0.8 of it as cut (from memory), {_SCATTER}"),
    "plastic": (0.6, 1.0, 1.4, _ORDER),
    "wood": (0.6, 1.0, 1.4, _ORDER),
}
EDGE_LEAST = 1.2  # hole diameters from hole to edge: EN 1993-1-8 table 3.3
FACE_FRICTION = (0.1, 0.15, 0.25, "from memory (bare or painted motor face on a metal mount)")

RUBBER_FRICTION = (0.1, 0.3, 0.6, "from memory (rubber on a painted motor, oily to dry)")


def second_substance(picker: Picker) -> Substance | None:
    """Give the mount's second material, None where none is named. Raises as ``substance``."""
    if picker.card("second.material") is None:
        return None
    return substance(picker, "second")


def substance(picker: Picker, part: str = "mount") -> Substance:
    """Give stiffness and strength of a part of the mount at the mount's temperature.

    Raises
    ------
    OutOfRange
        when the temperature is above what the material can stand.
    """
    card: cards.Material = picker.card(f"{part}.material")
    soft = card.family == "plastic"
    heat = picker.between(
        "mount.temperature", *(PLASTIC_AT_WORK if soft else (313.15, 313.15, 313.15)),
        "common practice, no source (a plastic plate clamped to a motor is taken at 60 C)",
    )  # fmt: skip
    if soft and "mount.temperature" not in picker.given:
        heat = _no_hotter(picker, card, heat)
    hours = picker.number("duty.hours")
    modulus = _modulus(picker, part, card, heat, soft)
    strength = _strength(picker, part, card, heat, soft)
    nu = card.poissons_ratio
    creep = modulus
    if card.creep_source:
        share = give.creep_share(card.aged_modulus(hours), card.elastic_modulus)
        creep = give.share_of_modulus(modulus, share)
    shear, creep_shear = _shear_moduli(card, modulus, creep)
    return Substance(
        card=card, elastic_modulus=modulus, creep_modulus=creep, poissons_ratio=nu,
        shear_modulus=shear, creep_shear_modulus=creep_shear, yield_strength=strength,
        fatigue_strength=_fatigue(picker, part, card, heat),
        compressive_over_tensile=card.compressive_over_tensile,
        strain_limit=card.design_strain_limit if soft else None, density=float(card.density),
    )  # fmt: skip


def _no_hotter(picker: Picker, card: cards.Material, heat: Value) -> Value:
    """Keep the assumed temperature within what the material can stand, and say so."""
    top = card.greatest_temperature
    if heat <= top:
        return heat
    picker.warnings.append(
        f"{card.name} must not get hotter than {top - 273.15:.0f} C; a motor's face often does (60 C). "
        "The answer holds only if you keep it cooler."
    )
    return picker.uncertain(
        "mount.temperature", min(PLASTIC_AT_WORK[0], top), top, top,
        "the most this plastic can stand", "assumed",
    )  # fmt: skip


def _modulus(picker: Picker, part: str, card: cards.Material, heat: float, soft: bool) -> Value:
    """Give the elastic modulus at work with the scatter of its card."""
    at_work = card.modulus_at(heat)
    scatter = SPREAD * float(card.modulus_cov)
    if soft:
        scatter += HEAT_SPREAD * (1 - at_work / card.elastic_modulus)
    return picker.between(
        f"{part}.elastic_modulus", at_work * (1 - scatter), at_work, at_work * (1 + scatter),
        f"{card.elastic_modulus.source}; scatter of the card",
    )  # fmt: skip


def _strength(picker: Picker, part: str, card: cards.Material, heat: float, soft: bool) -> Value:
    """Give the yield strength: minimum below, mean as likely for metals; typical for plastics."""
    at_work = card.yield_at(heat)
    scatter = SPREAD * float(card.yield_cov)
    if soft:
        scatter += HEAT_SPREAD * (1 - at_work / card.yield_strength)
        low, likely = at_work * (1 - scatter), at_work
    else:
        low, likely = at_work, at_work * card.yield_mean_ratio
    return picker.between(
        f"{part}.yield_strength", low, likely, likely * (1 + scatter),
        f"{card.yield_strength.source}; {card.yield_kind} value, scatter of the card",
    )  # fmt: skip


def _fatigue(picker: Picker, part: str, card: cards.Material, heat: float) -> Value:
    """Give the fatigue strength at work; that of a plate as cut, with scatter."""
    at_work = card.fatigue_at(heat)
    low, likely, high, why = FATIGUE_SHARE[card.family]
    return picker.between(
        f"{part}.fatigue_strength", at_work * low, at_work * likely, at_work * high,
        f"{card.fatigue_strength.source}; {why}",
    )  # fmt: skip


def _shear_moduli(card: cards.Material, modulus: Value, creep: Value) -> tuple[Number, Number]:
    if card.isotropic:
        nu = card.poissons_ratio
        return flexure.shear_modulus(modulus, nu), flexure.shear_modulus(creep, nu)
    ratio = Value(card.shear_modulus / card.elastic_modulus, f"material:{card.id}.shear_modulus",
                  "card", card.shear_modulus.source)  # fmt: skip
    return give.share_of_modulus(modulus, ratio), give.share_of_modulus(creep, ratio)


OF_KEYS: tuple[None, None] = (None, None)  # the holes are what the common keys say


def fixings(picker: Picker, material: Substance, own: BoltHoles | None) -> Fixings:
    """Give the frame bolts with their clamping force as it will really be there.

    ``own`` are the form's own holes.  A form without frame bolts gets none: a count of nought.
    """
    if not picker.knows("fixings.bolts"):
        return _no_bolts()
    thread = picker.card("fixings.bolts")[1]
    bolts = bolt_set(picker, "fixings.bolts", "fixings.bolt_class", unmarked(thread))
    holes = own or _holes(picker, thread)
    across, along = _pattern(picker, bolts.count, holes.diameter)
    washer = _washer(picker, "fixings.washer", thread)
    kept = _kept(material, washer, thread, holes)
    hole = holes.diameter
    edge = picker.between("fixings.edge", 1.2 * hole, 1.5 * hole, 2.5 * hole, COMMON)
    _refuse_edge(picker, edge, hole)
    return Fixings(
        bolts=bolts, span_across=across, span_along=along,
        edge=edge, preload=preload.preload(picker, "fixings.", bolts, kept),
        assembly_torque=preload.assembly_torque(bolts, kept, thread.clearance_hole),
        friction=_friction(picker, "steel" if holes.sleeve else material.card.family),
        slotted=holes.slotted, slot_length=holes.slot_length, slots_along=holes.slots_along,
        washer_diameter=holes.face or washer, hole_diameter=hole, body_diameter=holes.body,
        joint_stiffness=picker.number("fixings.joint_stiffness"),
        jack=jack.jack_screw(picker, holes.slotted),
    )  # fmt: skip


def _kept(
    material: Substance, washer: float, thread: cards.Thread, holes: BoltHoles
) -> preload.Kept | None:
    """Give the clamp that stays for good on what lies under a head: the mount, or a sleeve."""
    if holes.sleeve:
        return preload.sleeved(holes.body, thread.clearance_hole)
    return preload.pressed(material, washer, holes.diameter)


def _pattern(picker: Picker, count: int, hole: Value) -> tuple[Value, Value]:
    """Give the spans of the bolts; nought where the form has them at places of its own."""
    if not picker.knows("fixings.span_across"):
        none = Value(0.0, "fixings.span_across", "derived", "the bolts have places of their own")
        return none, none
    across, along = picker.number("fixings.span_across"), picker.number("fixings.span_along")
    _refuse_pattern(picker, count, across, along, hole)
    return across, along


def _holes(picker: Picker, thread: cards.Thread) -> BoltHoles:
    """Give the frame bolts' holes as the common keys have them."""
    hole, body = thread.clearance_hole, thread.diameter
    if picker.word("fixings.holes", "round") != "slotted":
        return BoltHoles(diameter=hole, body=body)
    length = picker.between("fixings.slot_length", 1.5 * hole, 2.0 * hole, 3.0 * hole, COMMON)
    if length <= hole:
        picker.mistake("fixings.slot_length", f"is not longer than the hole ({hole * 1000:.1f} mm)",
                       "it is measured end to end")  # fmt: skip
    along = picker.word("fixings.slots_run", "square") == "along"
    return BoltHoles(diameter=hole, body=body, slotted=True, slot_length=length, slots_along=along)


def _no_bolts() -> Fixings:
    """Give the fixings of a form that has no frame bolts."""
    none = Value(0.0, "frame bolts", "derived", "this form has none")
    thread = cards.thread("M6")
    bolts = BoltSet(count=0, number=none, thread=thread, grade=cards.bolt_class("8.8"))
    return Fixings(
        bolts=bolts, span_across=none, span_along=none, edge=none, preload=none, assembly_torque=none,
        friction=none, slotted=False, slot_length=none, slots_along=False, washer_diameter=thread.washer_diameter,
        hole_diameter=thread.clearance_hole, body_diameter=thread.diameter,
        joint_stiffness=Value(1.0, "joint stiffness", "derived", "this form has no frame bolts"),
    )  # fmt: skip


def _refuse_pattern(picker: Picker, count: int, across: float, along: float, hole: float) -> None:
    if count > 1 and across == 0 and along == 0:
        picker.mistake(
            "fixings.span_across", f"{count} bolts need span_across or span_along above zero"
        )
    per_column = 2 if across > 0 else count
    if count > 1 and 0 < along <= (per_column - 1) * hole:
        picker.mistake("fixings.span_along", "puts the frame bolt holes into one another")
    if across > 0 and along > 0 and (count % 2 or count < 4):
        picker.mistake("fixings.bolts", "two rows need an even number of bolts, four or more",
                       "leave span_along out for one row")  # fmt: skip


def _refuse_edge(picker: Picker, edge: Value, hole: Value) -> None:
    if edge <= hole / 2:
        picker.mistake("fixings.edge", f"puts the holes, {hole * 1000:.1f} mm, through the end",
                       "it is measured from the hole's centre")  # fmt: skip
    elif edge < EDGE_LEAST * hole * (1 - 1e-9):
        picker.warnings.append(
            f"The frame bolts sit nearer than 1.2 hole diameters ({1200 * hole:.0f} mm) to the end "
            "(EN 1993-1-8 table 3.3): bearing there is extrapolated."
        )


def _washer(picker: Picker, key: str, thread: cards.Thread) -> Value:
    kind = picker.word(key, "standard")
    if kind == "wide":
        return thread.wide_washer_diameter
    return thread.washer_diameter if kind == "standard" else thread.head_diameter


SURFACES = {
    "plastic": "plastic on steel",
    "wood": "wood on steel",
    "aluminium": "aluminium on steel",
}


def _friction(picker: Picker, family: str) -> Value:
    surface = picker.card("fixings.surface")
    if surface is None and "fixings.friction" not in picker.given:
        surface = SURFACES.get(family, "painted")
        picker.words["fixings.surface"] = surface
    found = cards.friction(surface or "painted")
    return picker.between("fixings.friction", found.low, found.likely, found.high, found.source)


def face(
    picker: Picker, motor: Motor, material: Substance, own: BoltHoles | None
) -> tuple[MotorFace, Motor]:
    """Give how the motor's face is clamped to the mount, and the motor with its holes there."""
    thread, family = motor.bolts.thread, material.card.family
    usual = "slotted" if motor.feet else "round"
    holes = own or BoltHoles(
        diameter=thread.clearance_hole, body=thread.diameter,
        slotted=picker.word("motor.holes", usual) == "slotted",
    )  # fmt: skip
    low, likely, high, source = FACE_FRICTION
    if family in ("plastic", "wood") and not holes.sleeve:
        found = cards.friction(SURFACES[family])
        low, likely, high, source = found.low, found.likely, found.high, found.source
    if picker.knows("mount.lining") and picker.word("mount.lining", "none") == "rubber":
        low, likely, high, source = RUBBER_FRICTION
    washer = _washer(picker, "motor.washer", thread)
    if motor.feet is None and picker.card("motor.spigot") == "no":
        off = 500 * float(holes.diameter - holes.body)
        picker.warnings.append(
            f"No spigot centres the motor: its holes let it sit {off:.1f} mm to any side, and the chain line with it. "
            "Set the chain line with the face bolts tight, and look again when they were loosened."
        )
    clamped = MotorFace(
        preload=preload.preload(
            picker, "motor.", motor.bolts, _kept(material, washer, thread, holes)
        ),
        friction=picker.between("motor.face_friction", low, likely, high, source),
        spigot=motor.feet is None and picker.word("motor.spigot", "no") == "yes",
        slotted=holes.slotted, washer_diameter=holes.face or washer,
    )  # fmt: skip
    return clamped, replace(motor, hole_diameter=holes.diameter)
