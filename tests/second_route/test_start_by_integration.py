"""Starts and dead stops of drawn drives, integrated in time with scipy's general solver.

The rotor winds up the chain and what gives behind it against a held driven side: at once, over a ramp, after
taking up slack, and running into a dead stop.  The spring is that of the drive: chain in series with mount.
"""

from __future__ import annotations

from random import Random

import draw
import numpy as np
import pytest
from scipy.integrate import solve_ivp
from second_kit import DEEP, told

from conftest import toml_text
from mountlimit import evaluate, loads
from mountlimit.drivefile import parse
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

CASES = 30 if DEEP else 6
NEAR = 2e-4


def peak(stiffness: float, inertia: float, torque: float, ramp: float = 0.0, gap: float = 0.0, speed: float = 0.0) -> float:  # fmt: skip
    """Give the largest torque in the spring, piece by piece: before and after the slack is gone."""
    swing = 2 * np.pi * np.sqrt(inertia / stiffness)

    def motor(t: float) -> float:
        return torque * min(t / ramp, 1.0) if ramp else torque

    def free(t: float, y: np.ndarray) -> list[float]:
        return [y[1], motor(t) / inertia]

    def tight(t: float, y: np.ndarray) -> list[float]:
        return [y[1], (motor(t) - stiffness * (y[0] - gap)) / inertia]

    def shut(t: float, y: np.ndarray) -> float:
        return y[0] - gap

    def turns_back(t: float, y: np.ndarray) -> float:
        return y[1]

    shut.terminal, turns_back.direction = True, -1
    t, y = 0.0, np.array([0.0, speed])
    if gap > 0:
        first = solve_ivp(free, (0.0, 1e3), y, events=shut, rtol=1e-10, atol=1e-13, method="DOP853", first_step=1e-6)  # fmt: skip
        t, y = float(first.t_events[0][0]), first.y_events[0][0]
    span = (t, t + ramp + 1.1 * swing)
    answer = solve_ivp(tight, span, y, events=turns_back, rtol=1e-10, atol=1e-13, method="DOP853", max_step=swing / 40)  # fmt: skip
    tops = [stiffness * (v[0] - gap) for v in answer.y_events[0]]
    return float(max([*tops, stiffness * (answer.y[0].max() - gap)]))


def drives(first: int, **changes):
    """Give drawn drives with a start of one kind; forms by beams, so that the give is cheap."""
    found, number = [], first
    while len(found) < CASES:
        number += 1
        keys = draw.drive(number, draw.BEAMS, "sections")
        for key in (
            "duty.starting_factor",
            "duty.ramp",
            "chain.slack",
            "duty.reverse",
            "policy.jam",
        ):
            keys.pop(key, None)
        keys |= {k.replace("__", "."): v for k, v in changes.items()}
        try:
            found.append(resolve(parse(toml_text(draw.nested(keys)).encode(), f"drawn {number}")))
        except InputError:
            continue
    return found


def spring(drive, angle) -> tuple[float, float, float, float]:
    """Give stiffness at the motor shaft, inertia, radius and length of the run, from the drive's own numbers.

    Pitch circles, run and stretch are worked out here; the give of mount and shaft is the program's.
    """
    chain, card = drive.chain, drive.chain.chain
    d1, d2 = (float(card.pitch) / np.sin(np.pi / float(z)) for z in (chain.driving_teeth, chain.driven_teeth))  # fmt: skip
    radius = d1 / 2 * np.cos(np.pi / float(chain.driving_teeth))
    run = np.sqrt(float(chain.centre_distance) ** 2 - ((d2 - d1) / 2) ** 2)
    soft = run / (float(chain.stretch_ratio) * float(card.minimum_tensile_strength))
    soft += float(evaluate.give_of(drive)(angle, False).sprocket)
    return radius**2 / soft, float(drive.motor.rotor_inertia), radius, run


def pulls(drive, current: float):
    pick = next(i for i, c in enumerate(loads.case_list(drive)) if c[1] == "pull")
    return evaluate.case_at(drive, current, pick).loads


def test_full_torque_at_once():
    """No ramp, no slack: twice the torque."""
    for drive in drives(60_000, duty__ramp="0 s", duty__reverse="0 %"):
        load = pulls(drive, float(drive.current.set))
        k, inertia, *_ = spring(drive, load.pull_angle)
        found = peak(k, inertia, float(load.torque)) / float(load.torque)
        told("start at once", abs(float(load.starting_factor) / found - 1))
        assert float(load.starting_factor) == pytest.approx(found, rel=NEAR)


def test_ramp_of_any_length():
    """From a tenth to five swings: never under what the integration gives, and met at odd half swings."""
    for number, drive in enumerate(drives(61_000, duty__ramp="0.1 s", duty__reverse="0 %")):
        chance = Random(number)
        load = pulls(drive, float(drive.current.set))
        k, inertia, *_ = spring(drive, load.pull_angle)
        swing = 2 * np.pi * np.sqrt(inertia / k)
        for swings in (chance.uniform(0.1, 5.0), chance.choice((1.5, 2.5, 3.5))):
            file_ramp = swings * swing
            other = _with_ramp(drive, file_ramp)
            factor = float(pulls(other, float(drive.current.set)).starting_factor)
            found = peak(k, inertia, float(load.torque), ramp=file_ramp) / float(load.torque)
            told("ramp, under the integration", max(found / factor - 1, 0.0))
            assert factor >= found * (1 - NEAR), swings
            if swings in (1.5, 2.5, 3.5):
                told("ramp, odd half swings", abs(factor / found - 1))
                assert factor == pytest.approx(found, rel=NEAR)


def _with_ramp(drive, ramp: float):
    from dataclasses import replace

    from mountlimit.worked import Value

    return replace(drive, duty=replace(drive.duty, ramp=Value(ramp, "duty.ramp", "given", "")))


def test_slack_taken_up():
    """The free angle is that of the arc's length over its chord, found by quadrature."""
    for number, drive in enumerate(drives(62_000, chain__slack="2 %")):
        share = Random(number).uniform(0.2, 3.0)
        load = pulls(drive, share * float(drive.current.set))
        k, inertia, radius, run = spring(drive, load.pull_angle)
        x = np.linspace(-0.5, 0.5, 100_001)
        arc = np.trapezoid(np.sqrt(1 + (8 * float(drive.chain.slack) * x) ** 2), x)
        found = peak(k, inertia, float(load.torque), gap=run * (arc - 1) / radius) / float(load.torque)  # fmt: skip
        told("slack taken up", float(load.starting_factor) / found - 1 if load.starting_factor > found else found / float(load.starting_factor) - 1)  # fmt: skip
        assert float(load.starting_factor) == pytest.approx(
            found, rel=2e-3
        )  # arc by its first term
        assert float(load.starting_factor) >= found * (1 - NEAR)


def test_dead_stop():
    """The rotor at speed, the driven side stops, the motor goes on pulling."""
    for number, drive in enumerate(drives(63_000)):
        chance = Random(number)
        speed = np.array([chance.uniform(5, 500)])
        current = np.array([chance.uniform(0, 2) * float(drive.current.set)])
        case = evaluate.case_at(drive, current, stop_from=speed).loads
        for row in range(len(case.names)):
            k, inertia, *_ = spring(drive, loads.jam_list(drive)[row][3])
            torque = float(loads.torque_at(drive, current[0]))
            found = peak(k, inertia, torque, speed=float(speed[0]))
            told("dead stop", abs(float(case.torque[row, 0]) / found - 1))
            assert float(case.torque[row, 0]) == pytest.approx(found, rel=NEAR)
