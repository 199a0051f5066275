"""The starting factor: peak chain pull at a start over the steady pull, and where it came from."""

from __future__ import annotations

import numpy as np

from .formulas import chain_length, give
from .formulas import starting as formulas
from .model import Drive, Number
from .worked import Value

UNKNOWN = 2.0
UNKNOWN_REVERSING = 3.0
SLACK_IS_LOOSE = 0.03
HEAVY_SIDE = Value(
    1.0,
    "starting.inertia_share",
    "assumed",
    "strength: the driven side may be held (wheel against a kerb)",
)


def raised(pull: Number, factor: Number) -> Number:
    """Give the peak pull; a factor of one leaves the pull as it is."""
    if np.ndim(factor) == 0 and factor == 1.0:
        return pull
    return give.peak_pull(pull, factor)


def factor(drive: Drive, torque: Number, radius: Number, run: Number, softness: Number) -> Number:
    """Give the starting factor for strength, grip and stiffness; never below 1.

    The user's own factor wins; a given slack (or reversing with it) means free travel that is
    taken up with a blow; a given ramp softens; nothing known gives the usual value.
    """
    duty = drive.duty
    if duty.starting_factor is not None:
        return duty.starting_factor
    reversing = duty.reverse > 0
    if drive.chain.slack_given:
        return _backlash(drive, torque, radius, run, softness)
    if duty.ramp is not None and not reversing:
        if duty.ramp == 0:
            return formulas.step_factor(HEAVY_SIDE)
        return _ramp(drive, radius, run, softness)
    usual = UNKNOWN_REVERSING if reversing or drive.chain.slack > SLACK_IS_LOOSE else UNKNOWN
    words = "nothing known of ramp and slack" + (", reversing or loose" if usual > UNKNOWN else "")
    return Value(usual, "duty.starting_factor", "assumed", f"common practice, no source ({words})")


def explain(drive: Drive) -> str:
    """Say in words where the starting factor comes from."""
    duty = drive.duty
    if duty.starting_factor is not None:
        return "given in the file"
    if drive.chain.slack_given:
        return "slack taken up with a blow (energy balance)"
    if duty.ramp is not None and not duty.reverse > 0:
        if duty.ramp == 0:
            return "no ramp: full torque at once"
        return "your ramp against the swing of the rotor on chain and mount"
    return "usual value, nothing known of ramp and slack"


def turning_stiffness(drive: Drive, radius: Number, run: Number, softness: Number) -> Number:
    """Give the stiffness of chain and mount in series, felt at the motor shaft, N*m/rad."""
    chain = drive.chain
    own = give.chain_stiffness(chain.stretch_ratio, chain.chain.minimum_tensile_strength, run)
    return give.turning_stiffness(own, softness, radius)


def _backlash(
    drive: Drive, torque: Number, radius: Number, run: Number, softness: Number
) -> Number:
    stiffness = turning_stiffness(drive, radius, run, softness)
    sag = give.sag_depth(drive.chain.slack, run)
    angle = formulas.slack_angle(chain_length.excess_from_sag(run, sag), radius)
    safe_torque = np.maximum(torque, 1e-9) if np.ndim(torque) else torque
    if np.ndim(torque) == 0 and torque <= 0:
        return Value(1.0, "duty.starting_factor", "derived", "no torque")
    return formulas.backlash_factor(HEAVY_SIDE, stiffness, angle, safe_torque)


def _ramp(drive: Drive, radius: Number, run: Number, softness: Number) -> Number:
    stiffness = turning_stiffness(drive, radius, run, softness)
    period = formulas.natural_period(drive.motor.rotor_inertia, stiffness)
    ratio = formulas.ramp_ratio(drive.duty.ramp, period)
    return formulas.ramp_factor(HEAVY_SIDE, ratio)
