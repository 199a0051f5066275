"""The motor's torque held on a lever with the rotor locked: it takes the place of the torque constant."""

from __future__ import annotations

from ..formulas import pull_test as formulas
from ..model import Number
from ..picking import Picker
from ..worked import Value

NEEDED = ("torque_test.current", "torque_test.force", "torque_test.lever")


def given(picker: Picker) -> bool:
    """Tell whether a torque test was made and told in full."""
    return all(k in picker.given for k in NEEDED)


def constant(picker: Picker) -> Number:
    """Give torque per ampere as it was measured; None without a test."""
    if not any(k.startswith("torque_test.") for k in picker.given):
        return None
    if not given(picker):
        missing = next(k for k in NEEDED if k not in picker.given)
        picker.mistake(missing, "is missing: a torque test needs current, force and lever")
        return None
    if "motor.points" in picker.given:
        picker.mistake("motor.points", "is measured too: leave out the points or [torque_test]")
        return None
    current = _ranged(picker, NEEDED[0], share="torque_test.current_error")
    force = _ranged(picker, NEEDED[1], share="torque_test.force_error")
    lever = _ranged(picker, NEEDED[2], size="torque_test.lever_error")
    idle = picker.number("motor.no_load_current")
    if current <= idle:
        picker.mistake(
            NEEDED[0], "is no more than motor.no_load_current, so no torque is left",
            "test with more current",
        )  # fmt: skip
        return None
    return formulas.torque_constant_from_lever(formulas.lever_torque(force, lever), current, idle)


def _ranged(picker: Picker, key: str, share: str = "", size: str = "") -> Value:
    """Give a measured value with its error, relative or as a size, as its range."""
    own = picker.given[key]
    if own.low is not None:
        return picker.number(key)
    v = float(own.value)
    error = v * float(picker.number(share)) if share else float(picker.number(size))
    return picker.uncertain(
        key, max(v - error, 0.1 * v), v, v + error, "the reading and its error", "given"
    )


def scatter(picker: Picker) -> Value:
    """Give the scatter of the torque; of a motor that was tested itself there is none."""
    if given(picker) and "motor.torque_scatter" not in picker.given:
        return Value(1.0, "motor.torque_scatter", "derived", "this motor itself was tested")
    return picker.number("motor.torque_scatter")
