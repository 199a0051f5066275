"""Lines of the use, drawn through the list of limits; they never raise a safe limit."""

from __future__ import annotations

import math
from dataclasses import dataclass

from . import loads
from .formulas import traction as formulas
from .model import Drive


@dataclass(frozen=True, slots=True, kw_only=True)
class Lines:
    """Currents at which the wheels spin on the worst and the best ground; None when not known."""

    traction_low: float | None
    traction_high: float | None
    continuous: float | None
    why_not: str = ""


def lines(drive: Drive) -> Lines:
    """Give the traction lines: weight on the driven wheels (when the front lifts, for the best ground)."""
    use, current = drive.use, drive.current
    continuous = None if current.continuous is None else float(current.continuous)
    if use.wheel_load is None or use.wheel_diameter is None:
        return Lines(traction_low=None, traction_high=None, continuous=continuous,
                     why_not="needs use.wheel_load and use.wheel_diameter")  # fmt: skip
    low = _current(drive, float(use.wheel_load), float(use.grip_low))
    high = _current(drive, float(use.lifted_load or use.wheel_load), float(use.grip_high))
    return Lines(traction_low=low, traction_high=high, continuous=continuous)


def _current(drive: Drive, load: float, grip: float) -> float:
    """Give the motor current at which the wheels slip."""
    from scipy.optimize import brentq

    use, chain = drive.use, drive.chain
    assert use.wheel_diameter is not None
    ratio = float(chain.driven_teeth) / float(chain.driving_teeth) * float(use.gear_after_chain)
    torque = formulas.traction_torque(grip * load, float(use.wheel_diameter) / 2, ratio)
    torque /= float(use.efficiency)  # losses have to be driven too
    high = 10.0
    while loads.torque_at(drive, high) < torque:
        high *= 2
        if high > 1e7:
            return math.inf
    return float(brentq(lambda i: float(loads.torque_at(drive, i)) - float(torque), 0.0, high))
