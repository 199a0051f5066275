"""Torque constant from KV: published motor data, and the conventions of motor controllers.

Tolerance: half the last printed digit.
"""

import numpy as np
import pytest
from printed import printed

from mountlimit.formulas import motor

TURNS_PER_MINUTE = 2 * np.pi / 60


def torque_constant(turns_per_volt: float) -> float:
    """Give the torque constant of a KV in revolutions per minute per volt."""
    return motor.torque_constant_from_speed_constant(turns_per_volt * TURNS_PER_MINUTE)


def test_published_pair() -> None:
    """From memory: motor data print 505 rpm/V beside 0.0189 N*m/A. MOT-01."""
    assert torque_constant(505.0) == printed("0.0189")


def test_products_of_the_two_conventions() -> None:
    """Exact and from memory: 9.5493 by energy balance; 8.27 of open controllers' documents
    for the phase peak with KV between lines. MOT-03."""
    assert 190.0 * torque_constant(190.0) == printed("9.5493")
    assert torque_constant(190.0) == printed("0.050259")
    peak = motor.phase_torque_constant(torque_constant(190.0), motor.AMPERE_FACTOR["phase peak"])
    assert 190.0 * peak == printed("8.2699")
    assert peak == printed("0.043526")
    assert motor.AMPERE_FACTOR["phase rms"] == pytest.approx(1.22, abs=0.005)


@pytest.mark.parametrize(("kind", "scale"), [("phase peak", 1.0), ("phase rms", np.sqrt(2.0))])
def test_ampere_factor_by_instantaneous_power(kind: str, scale: float) -> None:
    """Independent: power of three sinusoidal phases over a turn, against torque times speed."""
    angle = np.linspace(0.0, 2 * np.pi, 3600, endpoint=False)
    speed, kv = 100.0, 20.0
    phases = [np.sin(angle + k * 2 * np.pi / 3) for k in range(3)]
    volts = [p / np.max(np.abs(phases[0] - phases[1])) * speed / kv for p in phases]
    power = sum(np.mean(v * scale * p) for v, p in zip(volts, phases, strict=True))
    constant = motor.phase_torque_constant(1 / kv, motor.AMPERE_FACTOR[kind])
    assert power / speed == pytest.approx(constant, rel=1e-6)


def test_linear_torque() -> None:
    """Computed: the no-load current makes no torque, and less than it none either."""
    assert motor.linear_torque(0.12, 103.0, 3.0) == pytest.approx(12.0)
    assert motor.linear_torque(0.12, 2.0, 3.0) == 0.0
