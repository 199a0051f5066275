"""Lines of the use, drawn through the list of limits; they never raise a safe limit.

The wheels spin when the pull at the ground reaches friction times the weight on the driven wheels.
With mass, wheelbase and centre of mass given, the weight that shifts while pulling counts, up to
the pull at which the front lifts; otherwise the weights at rest and with the front lifted do.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from . import loads
from .formulas import traction as formulas
from .model import Drive, Number, Use
from .worked import Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Lines:
    """Currents at which the wheels spin on the worst and the best ground; None when not known."""

    traction_low: float | None
    traction_high: float | None
    continuous: float | None
    why_not: str = ""


def lines(drive: Drive) -> Lines:
    """Give the traction lines and the continuous current."""
    use, current = drive.use, drive.current
    continuous = None if current.continuous is None else float(current.continuous)
    if use.wheel_diameter is None or (use.wheel_load is None and use.mass is None):
        return Lines(
            traction_low=None, traction_high=None, continuous=continuous,
            why_not="needs use.wheel_diameter and use.wheel_load, or mass and wheelbase",
        )  # fmt: skip
    return Lines(
        traction_low=_current(drive, ground_force(use, use.grip_low, lifted=False)),
        traction_high=_current(drive, ground_force(use, use.grip_high, lifted=True)),
        continuous=continuous,
    )


def ground_force(use: Use, grip: Value, lifted: bool) -> Number:
    """Give the pull at the ground, in newtons, at which the driven wheels spin."""
    if use.mass is None:
        load = (use.lifted_load if lifted else None) or use.wheel_load
        return formulas.friction_force(load, grip)
    if use.driven == "all":
        return formulas.traction_force_all(use.mass, grip)
    place = (use.mass, use.front_to_centre, use.centre_height, use.wheelbase)
    if use.driven == "front":
        return formulas.traction_force_front_drive(*place, grip)
    whole = formulas.traction_force_all(use.mass, grip)
    if whole >= formulas.lift_force(*place):  # the front is in the air: all weight is on the rear
        return whole
    return formulas.traction_force_rear_drive(*place, grip)


def _current(drive: Drive, force: Number) -> float:
    """Give the motor current at which the wheels slip; infinity when no current reaches it."""
    from scipy.optimize import brentq

    use, chain = drive.use, drive.chain
    assert use.wheel_diameter is not None
    ratio = float(chain.driven_teeth) / float(chain.driving_teeth) * float(use.gear_after_chain)
    if drive.jackshaft is not None:
        run = drive.jackshaft.run
        ratio *= float(run.driven_teeth) / float(run.driving_teeth)
    torque = float(formulas.traction_torque(force, use.wheel_diameter / 2, ratio)) / float(
        use.efficiency
    )
    high = 10.0
    while loads.torque_at(drive, high) < torque:
        high *= 2
        if high > 1e7:
            return math.inf
    return float(brentq(lambda i: float(loads.torque_at(drive, i)) - torque, 0.0, high))
