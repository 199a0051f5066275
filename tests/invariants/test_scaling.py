"""A whole machine k times as large, of the same metals, at the same current, uses up the same share.

What scales: every length with k, force and mass (weight, chain strength, preload, bearing ratings) with
k^2, torque and torque constant with k^3, stiffness with k, the rotor's inertia with k^3 (so that times
stay), weight per length with k; stress, moduli, angles, ratios, times and knocks in g stay.  Cards of
chains, threads, bearings, keys and set screws are scaled the same way by the kind of each number.  Then
pull, moments and torque go with k^2 and k^3, stress and lean stay, and so does every share used, but for
the checks in ``NOT_SIMILAR``: they rest on laws that know a size.

The motor's speed is left out: at the same speed a chain k times as large throws k^3 the tension.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import draw
import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from invariant_kit import BEAMS, SHARES, depth, drawn, looked, numbers
from plate_kit import model_of, sprocket_of

from conftest import toml_text
from mountlimit import cards, evaluate, units
from mountlimit.checks import BY_NAME
from mountlimit.drivefile import fields_for, parse
from mountlimit.errors import InputError
from mountlimit.formulas import flexure, section, warping
from mountlimit.plates import solve
from mountlimit.plates.mesh import build, default_size
from mountlimit.resolve import resolve

SAME = 1e-9
POWER = {
    "length": 1, "area": 2, "section_modulus": 3, "second_moment": 4, "mass": 2, "force": 2,
    "torque": 3, "mass_per_length": 1, "inertia": 3, "torque_constant": 3, "speed_constant": -3, "stiffness": 1,
    "rotational_stiffness": 3, "power": 3,
}  # fmt: skip
CARDS = ("chain", "thread", "bearing", "key_for_shaft", "set_screw")
NOT_SIMILAR = {
    "shaft_fatigue": "size factor of a shaft, notch sensitivity by radius (Shigley)",
    "driven_shaft_fatigue": "as the motor's shaft",
    "jackshaft_fatigue": "as the motor's shaft",
    "mount_fatigue": "notch sensitivity by the radius of a hole",
    "sprocket_teeth": "the tooth form of ASME B29.1 has lengths of its own, in inches",
    "driven_teeth": "as the motor's sprocket",
    "hub_bolt_holes": "metal left up to the roots of the same tooth form",
    "driven_bolt_holes": "as the motor's sprocket",
}
BY_PITCH = {"alignment", "running_alignment"}  # teeth are relatively wider over 12.7 mm: ISO 606
STEP = 0.0127 * 1.0001
OTHER_MESH = 5e-3  # places are rounded to 1 nm, which may choose other triangles
# Its formula has a nanometre in place of nothing before the gap is closed.
OUTBOARD = "outboard."
STEADY = ("motor.speed", "policy.jam")


def larger(value: Any, kind: str, k: float) -> Any:
    """Give a value of the file k times as large, by its kind."""
    if isinstance(value, dict):
        return {end: larger(v, kind, k) for end, v in value.items()}
    if kind in POWER:
        return f"{units.parse_value(value, kind) * k ** POWER[kind]!r} {units.KINDS[kind].si}"
    if kind in ("key size", "place", "hole", "screws"):
        return _lengths(value, k)
    if kind == "shaft places":
        return [[form, *(larger(v, "length", k) for v in rest)] for form, *rest in value]
    if kind == "points":
        return [[current, larger(torque, "torque", k)] for current, torque in value]
    if isinstance(value, list):
        return [larger(v, kind, k) for v in value]
    return value


def _lengths(value: Any, k: float) -> Any:
    if isinstance(value, list):
        return [_lengths(v, k) for v in value]
    if " x M" in value:
        return value  # threads are cards
    split = " x " if " x " in value else ", "
    parts = value.split(split)
    unit = parts[-1].split()[-1]
    if value[0].isdigit() and split == " x " and len(parts) == 2:
        return f"{parts[0]} x {units.parse(parts[1], 'length') * k!r} m"
    each = [units.parse(p if p.endswith(unit) else f"{p} {unit}", "length") * k for p in parts]
    return split.join(repr(v) for v in each) + " m"


def scaled_card(card: Any, k: float) -> Any:
    if card is None:
        return None
    changes = {
        name: type(v)(float(v) * k ** POWER[kind], *_origin(v))
        for name, kind in cards.kinds_of(type(card)).items()
        if kind in POWER and (v := getattr(card, name)) is not None
    }
    return replace(card, **changes)


def _origin(value: Any) -> tuple[Any, ...]:
    return (value.key, value.origin, value.source) if hasattr(value, "origin") else ()


def used(keys: dict, k: float, ranges: dict | None, patch: pytest.MonkeyPatch) -> Any:
    """Give the share used by check, of the machine k times as large, and its uncertain inputs."""
    plain = {name: getattr(cards, name) for name in CARDS}
    for name in CARDS:
        if name == "key_for_shaft":
            patch.setattr(cards, name, lambda d, s="metric": scaled_card(plain["key_for_shaft"](d / k, s), k))  # fmt: skip
        else:
            patch.setattr(cards, name, lambda text, _f=plain[name]: scaled_card(_f(text), k))
    known = fields_for(keys["mount.form"])
    flat = {name: larger(v, known[name].kind, k) if name in known else v for name, v in keys.items()}  # fmt: skip
    file = parse(toml_text(draw.nested(flat)).encode(), "scaled")
    if ranges is None:
        ranges = {r.key: (r.likely, r.kind) for r in resolve(file).ranges}
    over = {key: v * k ** POWER.get(kind, 0) for key, (v, kind) in ranges.items()}
    drive = resolve(file, over)
    curves = evaluate.curves(drive, SHARES * float(drive.current.set))
    return curves, ranges


@given(numbers, st.floats(0.7, 1.6))
@depth(ordinary=8, deep=40)
def test_a_machine_k_times_as_large(number, k):
    keys = {n: v for n, v in drawn(number, BEAMS).items() if n not in STEADY and not n.startswith(OUTBOARD)}  # fmt: skip
    pitch = float(cards.chain(keys["chain.type"]).pitch)
    steps = (pitch <= STEP) != (k * pitch <= STEP)
    try:
        with pytest.MonkeyPatch.context() as patch:
            one, ranges = used(keys, 1.0, None, patch)
        with pytest.MonkeyPatch.context() as patch:
            two, _ = used(keys, k, ranges, patch)
    except InputError:  # the ends of the field table, 300 mm of this or 500 kN of that
        assume(False)
    assert one.keys() == two.keys()
    for name, curve in one.items():
        if name in NOT_SIMILAR or (steps and name in BY_PITCH):
            continue
        for level in ("safe", "gives", "continuous"):
            a, b = getattr(curve, level), getattr(two[name], level)
            if a is None:
                continue
            off = float(np.max(np.abs(a - b) / (np.abs(a) + 1e-9)))
            looked("machine k times as large", off)
            assert off < SAME, (name, level, off)


def test_only_checks_that_exist_are_left_out():
    assert set(NOT_SIMILAR) | BY_PITCH <= set(BY_NAME)


@given(st.floats(0.3, 4.0), st.sampled_from(["C2C", "C6"]))
@depth(ordinary=2, deep=4)
def test_plates_k_times_as_large(k, name):
    """The plate engine alone: k^2 of force and k^3 of moment move it k as far, turn it alike, stress it alike.

    Lengths with k, stiffness of bolts with k, of contact per area with 1 / k.
    """
    model = model_of(name)
    model = replace(model, contacts=[replace(c, pitch=0.012) for c in model.contacts])
    at, load = sprocket_of(name), np.array([1800.0, -2400.0, 150.0, 3.0, -8.0, 5.0])
    size = default_size(model)
    other = scaled_model(model, k)
    same = np.array_equal(build(model, size).triangles, build(other, size * k).triangles)
    one = solve(model, size).response(load, at)
    large = solve(other, size * k).response(load * np.array([k**2] * 3 + [k**3] * 3), at * k)  # fmt: skip
    for a, b in (
        (one.displacement * k, large.displacement), (one.rotation, large.rotation),
        (one.bolt_tension * k**2, large.bolt_tension), (one.contact_force.sum() * k**2, large.contact_force.sum()),
    ):  # fmt: skip
        off = float(np.max(np.abs(a - b)) / (np.max(np.abs(a)) + 1e-30))
        looked(f"plates k times as large, {'the same' if same else 'other'} triangles", off)
        assert off < (1e-5 if same else OTHER_MESH)


def scaled_model(model: Any, k: float) -> Any:
    lengths = {"outline", "origin", "thickness", "centre", "diameter", "hole_diameter", "start", "end",
               "washer_diameter", "fillet_radius", "pitch", "bore", "length", "width", "region", "motor_centre"}  # fmt: skip

    def one(part: Any) -> Any:
        changes = {}
        for name in part.__dataclass_fields__:
            value = getattr(part, name)
            if name in lengths and value is not None:
                changes[name] = np.asarray(value, float) * k if np.ndim(value) else value * k
            elif name in ("normal_stiffness", "tangential_stiffness"):
                changes[name] = value * k
            elif name == "stiffness":
                changes[name] = value / k
            elif isinstance(value, list) and value and hasattr(value[0], "__dataclass_fields__"):
                changes[name] = [one(v) for v in value]
        return replace(part, **changes)

    return one(model)


@given(st.floats(0.02, 0.3), st.floats(1.5, 30), st.floats(1.5, 30), st.floats(0.2, 5.0))
@depth(ordinary=60, deep=1000)
def test_beam_and_twist_formulas_k_times_as_large(length, slender, flat, k):
    """Of one bar: sag k, slope and twist alike under k^2 and k^3, with warping held as without."""
    width = length / slender * 3
    t = width / flat
    e, g = 70e9, 26e9

    def answers(s: float) -> np.ndarray:
        b, h, run = width * s, t * s, length * s
        second = section.rectangle_second_moment(b, h)
        j, cw = section.rectangle_torsion_constant(b, h), section.flat_bar_warping_constant(b, h)
        decay = warping.warping_decay(g, j, e, cw)
        force, moment = 500.0 * s**2, 20.0 * s**3
        return np.array([
            flexure.end_deflection_force(force, run, e, second) / s,
            flexure.end_deflection_moment(moment, run, e, second) / s,
            flexure.end_slope_force(force, run, e, second), flexure.twist_free(moment, run, g, j),
            warping.twist_held_held(moment, run, g, j, decay), warping.twist_held_free(moment, run, g, j, decay),
            moment / section.rectangle_torsion_modulus(b, h), warping.bimoment_held_held(moment, decay, run) / s**4,
        ], float)  # fmt: skip

    one, two = answers(1.0), answers(k)
    off = float(np.max(np.abs(one - two) / np.abs(one)))
    looked("formulas k times as large", off)
    assert off < 1e-9
