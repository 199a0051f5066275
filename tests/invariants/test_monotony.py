"""What physics wants one way only: stronger, more friction, more clamp, less pull never use more."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from invariant_kit import SHARES, depth, drawn, file_of, holds, looked, numbers

from mountlimit import evaluate, loads, structure
from mountlimit.drivefile import DriveFile, fields_for
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

ROUNDING = 1e-9
STRENGTH = (
    "shaft.yield_strength", "shaft.ultimate_strength", "hub.key_yield", "driven.key_yield",
    "driven.shaft_yield", "driven.shaft_ultimate", "frame.yield_strength", "fixings.weld_ultimate",
    "motor.thread_strength", "mount.yield_strength", "mount.fatigue_strength", "second.yield_strength",
    "second.fatigue_strength", "mount.spacer_yield", "mount.screw_hold", "mount.screw_bearing",
    "mount.screw_head_pull", "hub.pin_shear_strength", "driven.pin_shear_strength",
    "chain.joint_pressure", "second_chain.joint_pressure", "shaft.static_rating",
    "shaft.dynamic_rating", "driven.static_rating", "driven.dynamic_rating", "driven.freewheel_torque",
    "hub.rated_torque", "jackshaft.yield_strength", "jackshaft.ultimate_strength",
    "jackshaft.key_yield", "jackshaft.static_rating", "outboard.static_rating",
)  # fmt: skip
FRICTION = (
    "fixings.friction", "motor.face_friction", "hub.friction", "driven.friction",
    "hub.shaft_friction", "fixings.clamp_friction",
)  # fmt: skip
CLAMP = (
    "fixings.preload", "motor.preload", "hub.preload", "driven.preload", "hub.screw_preload",
    "fixings.clamp_preload",
)  # fmt: skip
WORSE = (  # more of it is more load, or more out of line
    "duty.bump", "duty.hours", "chain.wear", "chain.skew", "chain.offset", "shaft.bearing_play", "duty.starts", "duty.chain_factor",
)  # fmt: skip
MORE_PULL = ("motor.torque_scatter", "duty.starting_factor")  # which may hold the motor's weight up
# Tightening loads the bolt itself and what it presses on; a wider clamp force crushes a tube.
TIGHTENED = {
    "fixings.preload": {"bolt_strength", "pull_through", "spacer_strength"},
    "motor.preload": {"motor_bolts", "motor_threads", "motor_feet", "pull_through", "band_screw"},
    "hub.preload": {"hub_bolts"}, "driven.preload": {"driven_bolts"},
    "hub.screw_preload": {"clamp_hub", "taper_bush"}, "fixings.clamp_preload": {"tube_crush"},
}  # fmt: skip


def used(file: DriveFile, over: dict) -> dict[str, np.ndarray]:
    """Give the share used by check over the currents, some inputs set beside the file."""
    drive = resolve(file, over)
    found = evaluate.curves(drive, SHARES * float(drive.current.set))
    return {
        f"{name} {level}": getattr(curve, level)
        for name, curve in found.items()
        for level in ("safe", "gives", "continuous")
        if getattr(curve, level) is not None
    }


def values(file: DriveFile) -> dict[str, float]:
    """Give the inputs that stand in the file as one number, and those assumed, at their likely value."""
    given = {k: g.value for k, g in file.given.items() if isinstance(g.value, float)}
    return given | {r.key: r.likely for r in resolve(file).ranges}


def two_bearings(keys: dict) -> dict:
    """Give the drive without a third bearing, which eases other parts once it begins to carry."""
    return {k: v for k, v in keys.items() if not k.startswith("outboard.")}


def never_rises(number: int, keys: tuple[str, ...], factor: float, what: str, allowed=None) -> None:
    """Multiply each input by a factor in turn: no check may be used more than before."""
    file = file_of(two_bearings(drawn(number)))
    known = values(file)
    before = used(file, {})
    for key in keys:
        if key not in known or known[key] == 0:
            continue
        field = fields_for(str(file.given["mount.form"].value)).get(key)
        assert field is not None, key
        try:
            after = used(file, {key: known[key] * factor})
        except InputError:  # a value that cannot go with the others
            continue
        for name, old in before.items():
            if name.split()[0] in (allowed or {}).get(key, ()):
                continue
            rise = float(np.max(after[name] / (old + ROUNDING) - 1))
            looked(what, max(rise, 0.0))
            assert rise < ROUNDING, (key, name, rise)


@given(numbers, st.floats(1.05, 2.0))
@depth(ordinary=8, deep=40)
def test_stronger_parts_raise_no_utilisation(number, factor):
    never_rises(number, STRENGTH, factor, "stronger")


@given(numbers, st.floats(1.05, 1.5))
@depth(ordinary=5, deep=40)
def test_more_friction_raises_no_utilisation(number, factor):
    never_rises(number, FRICTION, factor, "more friction")


@given(numbers, st.floats(1.05, 1.5))
@depth(ordinary=5, deep=40)
def test_more_clamp_raises_only_what_it_presses(number, factor):
    never_rises(number, CLAMP, factor, "more clamp", TIGHTENED)


@given(numbers, st.floats(0.6, 0.95))
@depth(ordinary=5, deep=40)
def test_less_load_raises_no_utilisation(number, factor):
    never_rises(number, WORSE, factor, "less load")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(loads, "weight", lambda *_, **__: (0.0, 0.0, 0.0))
        never_rises(number, MORE_PULL, factor, "less load, no weight")


@given(numbers)
@depth(ordinary=8, deep=40)
def test_more_current_raises_every_utilisation(number):
    """Without weight and knocks everything comes from the pull: more of it never uses less.

    A third bearing that begins to carry takes load off the motor's own: left out.
    """
    keys = two_bearings(drawn(number))
    keys.pop("motor.no_load_current", None)
    drive = resolve(file_of(keys))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(loads, "weight", lambda *_, **__: (0.0, 0.0, 0.0))
        found = evaluate.curves(drive, np.geomspace(0.01, 10, 60) * float(drive.current.set))
    for name, curve in found.items():
        for level in ("safe", "gives", "continuous"):
            each = getattr(curve, level)
            if each is None:
                continue
            fall = float(np.max((each[:-1] - each[1:]) / (each[:-1] + ROUNDING)))
            looked("more current", max(fall, 0.0))
            assert fall < 1e-6, (name, level, fall)


@given(numbers)
@depth(ordinary=6, deep=40)
def test_fewer_teeth_pull_more(number):
    """Two teeth fewer on the motor: more pull and more load on its shaft in every case, the torque alike."""
    keys = {**drawn(number), "duty.starting_factor": 2}
    keys.pop("duty.ramp", None)
    keys.pop("policy.jam", None)
    keys.pop("motor.speed", None)  # slower chain, less thrown
    assume(keys["chain.driving_teeth"] >= 9)
    few = {**keys, "chain.driving_teeth": keys["chain.driving_teeth"] - 2}
    one, two = (resolve(file_of(k)) for k in (keys, few))
    currents = SHARES * float(one.current.set)
    many, less = (loads.at(d, currents, evaluate.give_of(d)) for d in (one, two))
    assert np.all(less.effective_pull >= many.effective_pull * (1 - ROUNDING))
    assert np.all(less.torque == many.torque)
    looked("fewer teeth")


@given(numbers, st.floats(1.02, 1.5))
@depth(ordinary=8, deep=40)
def test_a_thicker_plate_leans_less(number, factor):
    """Every segment of the mount turns less by the same load at the sprocket (no foot of its own thickness)."""
    keys = drawn(number)
    keys.pop("mount.foot_thickness", None)
    assume(holds(keys))
    file = file_of(keys)
    thick = file.edited(mount__thickness=f"{file.given['mount.thickness'].value * factor!r} m")
    turned = []
    for f in (file, thick):
        try:
            drive = resolve(f)
        except InputError:
            assume(False)
        parts = structure.model_parts(drive, structure.unit_load(0.7, 0.02))
        own = {s.name for s in drive.mount.segments}
        turned.append({p.name: np.linalg.norm(np.array(p.turn, float)) for p in parts if p.name in own})  # fmt: skip
    for name, thin in turned[0].items():
        rise = float(turned[1][name] / thin - 1)
        looked("thicker plate", max(rise, 0.0))
        assert rise < 0, name
