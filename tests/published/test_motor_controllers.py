"""Documents of open motor controllers: conventions of the torque constant (no names; from memory).

Tolerance: half the last printed digit.
"""

import numpy as np
from printed import near, printed

from mountlimit.formulas import motor

TURNS_PER_MINUTE = 2 * np.pi / 60


def torque_constant(turns_per_volt: float) -> float:
    """Give the torque constant of a KV in revolutions per minute per volt."""
    return motor.torque_constant_from_speed_constant(turns_per_volt * TURNS_PER_MINUTE)


def test_products_of_the_two_conventions() -> None:
    """From memory: 9.5493 by energy balance; 8.27 of open controllers' documents
    for the phase peak with KV between lines. MOT-03."""
    assert 190.0 * torque_constant(190.0) == printed("9.5493")
    assert torque_constant(190.0) == printed("0.050259")
    peak = motor.phase_torque_constant(torque_constant(190.0), motor.AMPERE_FACTOR["phase peak"])
    assert 190.0 * peak == printed("8.2699")
    assert peak == printed("0.043526")
    assert motor.AMPERE_FACTOR["phase rms"] == near(1.22, abs=0.005)
