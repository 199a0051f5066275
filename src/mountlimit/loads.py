"""Drive + motor current -> the loads of every case.

Conventions (one place): the chain always pulls the motor sprocket towards the driven sprocket, in
drive and in reverse; only the sign of the torque changes.  Which strand is the tight one is not
known, so both signs of the stator torque are tried.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache, lru_cache

import numpy as np

from . import starting
from .case import Give, Loads
from .formulas import chain_drive, chain_length, give, outboard, rigid, sprocket, statics
from .formulas import motor as motor_formulas
from .formulas import starting as starting_formulas
from .formulas import torque as torque_formulas
from .model import Drive, Number
from .worked import Value

GiveOf = Callable[[Value, bool], Give]  # chain angle, held for hours -> movement per newton
DOWN = {"towards": (0.0, -1.0), "away": (0.0, 1.0), "across": (1.0, 0.0)}
AS_IT_IS = Value(1.0, "starting factor", "derived", "the pull of a dead stop is worked out itself")
NO_START = Value(1.0, "starting factor", "derived", "this load case is no start")
NO_TORQUE = Value(0.0, "no torque", "derived", "this load case has none")
CASES = ("pull", "reverse", "steady", "bump", "bump alone", "hold", "jam")

# group of load cases -> (share of torque is the reverse share, starting factor counts, bump counts)
_KIND = {
    "pull": (False, True, False),
    "reverse": (True, True, False),
    "steady": (False, False, False),
    "bump": (False, False, True),
    "bump alone": (False, False, True),
    "hold": (False, False, False),
    "jam": (False, False, False),  # its pull comes from the speed of the rotor
}


def torque_at(drive: Drive, current: Number) -> Number:
    """Give the torque of the motor at a motor current, in N*m.

    Raises
    ------
    OutOfRange
        never; beyond the last measured point the curve goes on straight, and is warned about.
    """
    motor = drive.motor
    if motor.points:
        return torque_formulas.scaled_torque(
            _interpolated(motor.points, current), motor.torque_scatter
        )
    plain = motor_formulas.linear_torque(motor.torque_constant, current, motor.no_load_current)
    return torque_formulas.scaled_torque(plain, motor.torque_scatter)


def pull_at(drive: Drive, current: Number) -> Number:
    """Give the steady pull of the chain at a motor current, in N."""
    return chain_drive.effective_pull(torque_at(drive, current), _run(drive)[0])


def _interpolated(points: tuple[tuple[float, float], ...], current: Number) -> Number:
    curve, end, last = _curve(points)
    beyond = np.maximum(np.asarray(current) - end, 0.0)
    value = curve(np.minimum(current, end)) + last * beyond
    if np.ndim(current):
        return value
    return Value(float(value), "motor.points", "given", "smooth curve through the measured points")


@lru_cache(maxsize=64)
def _curve(
    points: tuple[tuple[float, float], ...],
) -> tuple[Callable[[Number], Number], float, float]:
    """Give the curve through measured points, its end, and its slope from there on."""
    from scipy.interpolate import PchipInterpolator

    i, t = (np.array(column) for column in zip(*points, strict=True))
    if i[0] > 0:
        i, t = np.insert(i, 0, 0.0), np.insert(t, 0, 0.0)
    curve = PchipInterpolator(i, t)
    last = max(float(curve.derivative()(i[-1])), float((t[-1] - t[-2]) / (i[-1] - i[-2])))
    return curve, float(i[-1]), last


def case_list(drive: Drive) -> list[tuple[str, str, float, Value, float]]:
    """Give (words, group, sign of torque, chain angle, sign of weight) for every case to try.

    A jam, at the motor's speed, is among them when ``policy.jam`` asks for it.
    """
    left_out = {"reverse": not drive.duty.reverse > 0, "jam": not drive.policy.jam}
    return _listed(drive, tuple(g for g in CASES if not left_out.get(g, False)))


def jam_list(drive: Drive) -> list[tuple[str, str, float, Value, float]]:
    """Give the cases of a dead stop alone, as ``case_list`` does."""
    return _listed(drive, ("jam",))


def _listed(drive: Drive, groups: tuple[str, ...]) -> list[tuple[str, str, float, Value, float]]:
    found: list[tuple[str, str, float, Value, float]] = []
    for words, angle in drive.chain.pulls:
        for group in groups:
            for sign in (1.0, -1.0):
                if group == "bump alone" and words != drive.chain.pulls[0][0]:
                    continue
                turn = "" if group == "bump alone" else (", torque +" if sign > 0 else ", torque -")
                pull = "" if group == "bump alone" else f", chain {words}"
                for weight in (1.0, -1.0) if "bump" in group else (1.0,):
                    bounce = "" if "bump" not in group else (" down" if weight > 0 else " up")
                    if group == "bump alone" and sign < 0:
                        continue
                    found.append((f"{group}{bounce}{pull}{turn}", group, sign, angle, weight))
    return found


def at(
    drive: Drive, current: Number, give_of: GiveOf,
    pick: int | None = None, stop_from: Number = None,
) -> Loads:  # fmt: skip
    """Give the loads at motor current(s); ``pick`` keeps one case and plain numbers.

    ``give_of`` gives the movement per newton of pull along a chain angle; held or not.
    ``stop_from`` (rad/s, one for each current) gives the cases of a dead stop from that speed alone.
    """
    cases = case_list(drive) if stop_from is None else jam_list(drive)
    speed = drive.motor.speed if stop_from is None else stop_from

    @cache
    def pulled(group: str, angle: Value) -> Pulled:
        return _pulled(drive, current, give_of, group, angle, speed)

    alike = drive.shaft.outboard is None  # without a start or a blow no angle matters

    def one(case: tuple[str, str, float, Value, float]) -> Loads:
        group = case[1]
        any_angle = alike and group != "jam" and not _KIND[group][1]
        return _one(drive, current, pulled(group, cases[0][3] if any_angle else case[3]), case)

    if pick is not None:
        return one(cases[pick])
    return _stack([one(case) for case in cases], current)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pulled:
    """What a group of load cases and a chain angle bring, whatever the sign of torque and knock."""

    torque: Number
    motor_torque: Number  # what the stator feels
    starting_factor: Number
    strands: Strands
    outboard: Number


def _pulled(
    drive: Drive, current: Number, give_of: GiveOf, group: str, angle: Value, speed: Number
) -> Pulled:  # fmt: skip
    """Give torque and tensions of a group of load cases along one chain angle."""
    if group == "jam":
        return _jam(drive, current, give_of, angle, speed)
    reversing, shocked, _ = _KIND[group]
    torque = torque_at(drive, current)
    if reversing:
        torque = torque_formulas.scaled_torque(torque, drive.duty.reverse)
    if group == "bump alone":
        torque = torque_formulas.scaled_torque(torque, NO_TORQUE)
    factor: Number = NO_START
    if shocked:
        factor = starting.factor(drive, torque, *_run(drive)[:2], give_of(angle, False).sprocket)
    found = strands(drive, torque, factor)
    return Pulled(
        torque=torque, motor_torque=torque, starting_factor=factor, strands=found,
        outboard=_outboard(drive, found.shaft_load, lambda: give_of(angle, group == "hold")),
    )  # fmt: skip


def _run(drive: Drive) -> tuple[Number, Number, Number]:
    """Give the radius the chain pulls at, the length of its run and the tension of its weight."""
    chain, card = drive.chain, drive.chain.chain
    diameter = sprocket.pitch_diameter(card.pitch, chain.driving_teeth)
    radius = sprocket.smallest_effective_radius(diameter, chain.driving_teeth)
    driven = sprocket.pitch_diameter(card.pitch, chain.driven_teeth)
    run = chain_length.span(chain.centre_distance, driven, diameter)
    sag = give.sag_depth(chain.slack, run)
    return radius, run, chain_drive.sag_tension(card.mass_per_length, run, sag)


@dataclass(frozen=True, slots=True, kw_only=True)
class Strands:
    """Tensions of a chain under a torque, N."""

    effective_pull: Number  # steady
    tight: Number  # with the starting factor
    slack: Number
    steady: Number  # tight side without the starting factor
    shaft_load: Number  # both strands, with the starting factor


def strands(drive: Drive, torque: Number, factor: Number) -> Strands:
    """Give the tensions of the drive's chain under a torque (N*m) on its driving sprocket."""
    radius, _, hanging = _run(drive)
    pull = chain_drive.effective_pull(torque, radius)
    slack_side = _with_speed(drive, hanging)
    peak = starting.raised(pull, factor)
    # the chain's own centrifugal tension does not load the shafts of a straight run
    load = rigid.sum_of_two(chain_drive.tight_side_tension(peak, hanging), hanging)
    return Strands(
        effective_pull=pull, tight=chain_drive.tight_side_tension(peak, slack_side),
        slack=slack_side, steady=chain_drive.tight_side_tension(pull, slack_side), shaft_load=load,
    )  # fmt: skip


def _jam(drive: Drive, current: Number, give_of: GiveOf, angle: Value, speed: Number) -> Pulled:
    """Give torque and tensions of a dead stop of the driven side: the chain brings the rotor to rest.

    The chain has stopped, so it throws no tension of its own; the motor goes on pulling.
    """
    torque = torque_at(drive, current)
    radius, run, hanging = _run(drive)
    soft = give_of(angle, False)
    stiffness = starting.turning_stiffness(drive, radius, run, soft.sprocket)
    inertia = drive.motor.rotor_inertia
    pull = starting_formulas.impact_pull(torque, radius, stiffness, inertia, speed)
    tight = chain_drive.tight_side_tension(pull, hanging)
    load = rigid.sum_of_two(tight, hanging)
    return Pulled(
        torque=starting_formulas.stopping_torque(pull, radius), motor_torque=torque,
        starting_factor=AS_IT_IS,
        strands=Strands(effective_pull=pull, tight=tight, slack=hanging, steady=tight, shaft_load=load),
        outboard=_outboard(drive, load, lambda: soft),
    )  # fmt: skip


def _one(
    drive: Drive, current: Number, pulled: Pulled, case: tuple[str, str, float, Value, float]
) -> Loads:
    """Give the loads of one case: what its group brings, with the signs of torque and weight."""
    name, group, sign, angle, weight_sign = case
    found = pulled.strands
    stator = pulled.motor_torque
    return Loads(
        names=(name,), groups=(group,), current=current, torque=pulled.torque,
        stator_torque=torque_formulas.reversed_torque(stator) if sign < 0 else stator,
        starting_factor=pulled.starting_factor, effective_pull=found.effective_pull,
        tight_side_tension=found.tight, slack_side_tension=found.slack, steady_tension=found.steady,
        shaft_load=found.shaft_load, pull_angle=angle, outboard=pulled.outboard,
        weight=weight(drive, weight_sign, bumped=_KIND[group][2]),
    )  # fmt: skip


def _outboard(drive: Drive, load: Number, give: Callable[[], Give]) -> Number:
    """Give the force of the outboard bearing, N; nothing without one."""
    third = drive.shaft.outboard
    if third is None:
        return 0.0
    soft = give()
    return outboard.reaction(load, soft.outboard, soft.back, third.gap, third.stiffness)


def _with_speed(drive: Drive, hanging: Number) -> Number:
    """Give the slack-side tension; at a known speed under load the centrifugal tension adds to it."""
    if drive.motor.speed is None:
        return hanging
    chain, card = drive.chain, drive.chain.chain
    turns = torque_formulas.turns_per_second(drive.motor.speed)
    speed = chain_drive.chain_speed(chain.driving_teeth, card.pitch, turns)
    thrown = chain_drive.centrifugal_tension(card.mass_per_length, speed)
    return chain_drive.slack_side_tension(thrown, hanging)


def weight(drive: Drive, sign: float, bumped: bool) -> tuple[Number, Number, Number]:
    """Give the motor's weight, or what a knock makes of it, as force along x, y and z, N."""
    mass = drive.motor.mass
    size = torque_formulas.knock_force(mass, drive.duty.bump) if bumped else statics.weight(mass)
    x, y = DOWN[drive.mount.weight_acts]
    parts = {1.0: size, -1.0: rigid.reversed_force(size), 0.0: 0.0}
    return parts[x * sign], parts[y * sign], 0.0


def _stack(each: list[Loads], current: Number) -> Loads:
    """Stack cases into arrays of shape (cases, currents)."""
    width = np.shape(np.atleast_1d(current))[-1]

    def rows(name: str) -> Number:
        stacked = np.empty((len(each), width))
        for row, one in zip(stacked, each, strict=True):
            row[:] = getattr(one, name)  # a number fills the row
        return stacked

    x, y, z = (np.array([[float(e.weight[k])] for e in each]) for k in range(3))
    first = each[0]
    names = [
        f
        for f in Loads.__slots__
        if f not in ("names", "groups", "current", "weight", "pull_angle")
    ]
    return replace(
        first, names=tuple(e.names[0] for e in each), groups=tuple(e.groups[0] for e in each),
        current=np.atleast_1d(current), weight=(x, y, z),
        pull_angle=np.array([[float(e.pull_angle)] for e in each]),
        **{name: rows(name) for name in names},
    )  # fmt: skip
