"""Rows of a rolling bearing under a radial load: static safety, and hours it lasts."""

from __future__ import annotations

from ..case import Case, Row
from ..formulas import bearings, rigid, usage
from ..formulas import duty as duties
from ..loads import pull_at
from ..model import DutyStep, Number
from ..worked import Value

NO_THRUST = Value(0.0, "axial load", "derived", "a chain in line pulls radially")
BALL = Value(3.0, "life exponent", "derived", "ISO 281: ball bearing")
RADIAL = Value(1.0, "radial factor", "derived", "ISO 281: no axial load")
AXIAL = Value(0.0, "axial factor", "derived", "ISO 281: no axial load")
RELIABILITY = Value(0.9, "reliability", "derived", "ISO 281: L10, nine of ten bearings live longer")


def static_row(station: str, reaction: Number, rating: Number) -> Row:
    """Compare the equivalent static load of a bearing with its static rating, both N (ISO 76)."""
    load = bearings.equivalent_static_load(reaction, NO_THRUST)
    return Row(station=station, demand=load, capacity=rating, quantity="force",
               utilisation=usage.utilisation(load, rating))  # fmt: skip


def life_row(
    case: Case, station: str, reaction: Number, rating: Number, speed: Number, carried: Number = None
) -> Row:  # fmt: skip
    """Compare the hours of duty wanted of a bearing with its rating life (ISO 281).

    ``reaction`` (N) is that of the chain, in proportion to the load on its shaft and without a
    starting factor; ``carried`` (N) a weight that rests on the bearing whatever the chain does.
    ``rating`` (N) is the dynamic one, ``speed`` (rad/s) that of the bearing's shaft.  Needs
    ``motor.speed``: hours wanted and chain factor are asked for with it only.  With a spectrum of
    duty the hours count standing still too.
    """
    duty = case.drive.duty
    load, mean_speed = _duty_load(case, reaction, speed, carried)
    turns = bearings.rating_life_revs(rating, load, BALL)
    rated = bearings.rating_life(turns, mean_speed)
    life = bearings.adjusted_life(rated, bearings.reliability_factor(RELIABILITY))
    return Row(station=station, demand=duty.bearing_hours, capacity=life, quantity="time",
               utilisation=usage.utilisation(duty.bearing_hours, life), level="continuous")  # fmt: skip


def _duty_load(
    case: Case, reaction: Number, speed: Number, carried: Number
) -> tuple[Number, Number]:
    """Give the steady dynamic load that wears as much as the duty, N, and the mean speed, rad/s."""
    steps = case.drive.duty.spectrum
    if not steps:
        return _dynamic(case, reaction, carried), speed
    load: Number = None
    mean: Number = None
    for step in steps:
        turned = duties.step_speed(speed, step.time, step.speed)
        pressed = _dynamic(case, _in_step(case, reaction, step), carried)
        if mean is None:
            load, mean = pressed, turned
        else:
            load = duties.equivalent_load(load, mean, pressed, turned, BALL)
            mean = duties.speed_sum(mean, turned)
    return load, mean


def _in_step(case: Case, reaction: Number, step: DutyStep) -> Number:
    """Give the force on the bearing in a step of the duty."""
    loads = case.loads
    pull = pull_at(case.drive, duties.step_current(loads.current, step.current))
    return duties.step_reaction(reaction, loads.shaft_load, loads.effective_pull, pull)


def _dynamic(case: Case, reaction: Number, carried: Number) -> Number:
    """Give the equivalent dynamic load, with the jerk of the chain on the chain's part."""
    radial = bearings.jerked_load(reaction, case.drive.duty.chain_factor)
    if carried is not None:
        radial = rigid.sum_of_two(radial, carried)
    return bearings.equivalent_dynamic_load(radial, NO_THRUST, RADIAL, AXIAL)
