"""The motor: torque per ampere of the controller's own kind, and what the mount carries of it."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

from .. import cards
from ..formulas import layout, starting
from ..formulas import motor as motor_formulas
from ..formulas import torque as torque_formulas
from ..held import BoltSet
from ..model import Current, Feet, Motor, Number
from ..picking import Picker
from ..worked import Value
from . import torque_test

COMMON = "common practice, no source"
FOOT_BOLTS = 4


def bolt_set(picker: Picker, key: str, class_key: str, otherwise: str) -> BoltSet:
    """Give a set of bolts; without a class they are taken as ``otherwise``, and that is noted."""
    count, thread = picker.card(key)
    named = picker.card(class_key)
    grade = cards.bolt_class(named.id if named else otherwise, float(thread.diameter))
    if class_key not in picker.given:
        picker.words[class_key] = otherwise
    number = Value(count, key, "given", f"'{picker.given[key].text}'")
    return BoltSet(count=count, number=number, thread=thread, grade=grade)


def unmarked(thread: cards.Thread) -> str:
    """Give the class an unmarked bolt is taken as: the weakest sold (bolts.md: 4.6 or SAE 2)."""
    return "4.6" if thread.system == "metric" else "SAE 2"


def motor(picker: Picker) -> Motor:
    """Give the motor, its bolts and what of it is estimated from its mass."""
    thread = picker.card("motor.bolts")[1]
    bolts = bolt_set(picker, "motor.bolts", "motor.bolt_class", unmarked(thread))
    if bolts.count < 2:
        picker.mistake("motor.bolts", "needs at least two bolts to hold the motor's face")
        bolts = replace(bolts, count=2, number=Value(2, "motor.bolts", "assumed"))
    mass = picker.number("motor.mass")
    size = (4 * mass / (math.pi * 5000.0)) ** (1 / 3)  # a solid drum as long as it is thick
    inertia = float(starting.rotor_inertia(0.35 * mass, 0.3 * size))
    constant = torque_test.constant(picker) or _torque_constant(picker)
    return Motor(
        torque_constant=constant,
        points=picker.card("motor.points") or (),
        torque_scatter=torque_test.scatter(picker),
        no_load_current=picker.number("motor.no_load_current"),
        speed=picker.optional("motor.speed"),
        mass=mass,
        centre_of_mass=picker.between(
            "motor.centre_of_mass", 0.35 * size, 0.5 * size, 0.7 * size,
            "from memory (half the length of a motor of this mass)",
        ),
        bolts=bolts,
        hole_diameter=bolts.thread.clearance_hole,
        rotor_inertia=picker.between(
            "duty.rotor_inertia", inertia / 3, inertia, inertia * 3,
            "from memory (a third of the motor's mass at a third of its size)",
        ),
        **_held(picker, bolts),
    )  # fmt: skip


def _held(picker: Picker, bolts: BoltSet) -> dict[str, Any]:
    """Give what the motor is held by: its face, its feet, or bands round it."""
    if picker.knows("motor.bolt_circle"):
        return _face(picker, bolts)
    none = dict.fromkeys(("bolt_circle", "bore", "thread_depth", "thread_strength"))
    return {**none, "feet": (_bands if picker.knows("mount.bands") else _feet)(picker, bolts)}


def _face(picker: Picker, bolts: BoltSet) -> dict[str, Any]:
    """Give the tapped holes and the bore of a motor that is bolted on by its face."""
    circle, diameter = picker.number("motor.bolt_circle"), bolts.thread.diameter
    return {
        "bolt_circle": circle,
        "bore": _bore(picker, circle),
        "thread_depth": picker.between(
            "motor.thread_depth", 0.8 * diameter, 1.2 * diameter, 1.5 * diameter, COMMON
        ),
        "thread_strength": picker.number("motor.thread_strength"),
    }


def _feet(picker: Picker, bolts: BoltSet) -> Feet:
    """Give where a motor on feet stands; it has no face bolts."""
    if bolts.count != FOOT_BOLTS:
        picker.mistake("motor.bolts", "stands on four bolts, one at each corner of its feet")
    return Feet(
        shaft_height=picker.number("motor.shaft_height"), across=picker.number("motor.foot_across"),
        along=picker.number("motor.foot_along"), to_face=picker.number("motor.foot_to_face"),
    )  # fmt: skip


def _bands(picker: Picker, bolts: BoltSet) -> Feet:
    """Give where the bands hold a motor; a single one counts as two halves, half the cradle apart."""
    bands, height = int(picker.number("mount.bands")), picker.number("motor.shaft_height")
    across, to_face = picker.number("motor.band_across"), picker.number("motor.band_to_face")
    if bolts.count not in (bands, 2 * bands):
        picker.mistake(
            "motor.bolts", f"are for mount.bands = {bands}: one screw or two for each band"
        )
    if bands > 1:
        along = _needed(picker, "motor.band_along", "is missing: there are two bands or more")
        return Feet(shaft_height=height, across=across, along=along, to_face=to_face, rows=bands)
    length = _needed(picker, "mount.cradle_length", "is missing: a single band leans on its length")
    half = layout.half(length)
    if to_face < half:
        picker.mistake("mount.cradle_length", "reaches past the motor's mounting face",
                       "its middle is taken under the band")  # fmt: skip
    front = layout.difference(to_face, layout.half(half))
    return Feet(shaft_height=height, across=across, along=half, to_face=front)


def _needed(picker: Picker, key: str, words: str) -> Value:
    """Give a number that this drive cannot do without."""
    found = picker.optional(key)
    if found is not None:
        return found
    picker.mistake(key, words)
    return Value(0.1, key, "assumed", "")


def _bore(picker: Picker, circle: Value) -> Value:
    """Give the hole for spigot or shaft; a form may have it among its own holes."""
    if not picker.knows("motor.bore"):
        return Value(0.0, "motor.bore", "derived", "among the mount's own holes")
    return picker.between("motor.bore", 0.5 * circle, 0.5 * circle, 0.5 * circle, COMMON)


def _torque_constant(picker: Picker) -> Number:
    """Give torque per ampere of the controller's kind; None when measured points are given."""
    ways = [
        k
        for k in ("motor.torque_constant", "motor.speed_constant", "motor.points")
        if k in picker.given
    ]
    rated = [k for k in ("motor.rated_torque", "motor.rated_current") if k in picker.given]
    if len(rated) == 1:
        picker.mistake(rated[0], "needs motor.rated_torque and motor.rated_current together")
    if len(ways) + bool(rated) != 1:
        key = (ways + rated + ["motor.torque_constant"])[-1]
        picker.mistake(
            key,
            "give the torque in one way: torque_constant, speed_constant, "
            "rated_torque with rated_current, or points",
        )
        return Value(1.0, "motor.torque_constant", "assumed", "")
    if ways == ["motor.points"]:
        return None
    kind = str(picker.card("current.kind") or "unknown")
    if ways == ["motor.speed_constant"]:
        factor = _ampere_factor(picker, kind)
        base = motor_formulas.torque_constant_from_speed_constant(
            picker.number("motor.speed_constant")
        )
        return motor_formulas.phase_torque_constant(base, factor)
    if rated:
        if len(rated) == 1:
            return Value(1.0, "motor.rated_torque", "assumed", "")
        base = torque_formulas.torque_constant_from_rating(
            picker.number("motor.rated_torque"), picker.number("motor.rated_current")
        )
    else:
        base = picker.number("motor.torque_constant")
    quoted = picker.card("motor.torque_per")
    if quoted is None:
        picker.words["motor.torque_per"] = "the same ampere as the controller counts"
    if quoted in (None, kind) or kind not in motor_formulas.AMPERE_FACTOR:
        return base
    ratio = motor_formulas.AMPERE_FACTOR[kind] / motor_formulas.AMPERE_FACTOR[str(quoted)]
    return motor_formulas.phase_torque_constant(
        base, Value(ratio, "motor.torque_per", "given", "ratio of the two kinds of ampere")
    )


def _ampere_factor(picker: Picker, kind: str) -> Value:
    """Give the torque of one controller ampere over that of one motor (direct-current) ampere."""
    known = motor_formulas.AMPERE_FACTOR
    source = "from the energy balance of a motor with sinusoidal currents (see formulas/motor.py)"
    if kind in known:
        return Value(known[kind], "current.kind", "given", source)
    if kind == "battery":
        return Value(known["motor"], "current.kind", "given", source)
    return picker.uncertain(
        "current.kind", min(known.values()), known["motor"], max(known.values()),
        "kind of ampere unknown: every candidate is possible", "assumed", kind="ratio",
    )  # fmt: skip


def current(picker: Picker) -> Current:
    """Give the currents asked about, and the kind of ampere the controller counts."""
    kind = picker.word("current.kind", "unknown")
    limit = picker.optional("current.motor_limit")
    if kind == "battery" and limit is None:
        picker.warnings.append(
            "The controller limits battery amperes only. At low speed the motor current is several "
            "times the battery current, so the limits below are motor amperes that this controller "
            "does not hold. Find its motor-side limit and give it as current.motor_limit."
        )
    continuous = picker.optional("current.continuous")
    asked = picker.number("current.set")
    return Current(
        kind=kind, set=asked, wanted=picker.optional("current.wanted"),
        continuous=continuous, motor_limit=limit,
    )  # fmt: skip
