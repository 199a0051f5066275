"""Closed forms in a row: motor current to the stress of a strip, and back.

Computed: kt = 60 / (2 pi KV), F = T / (D / 2), M = F L, T = F e, Saint-Venant's rectangle and von
Mises.  190 rpm/V, 40 A, 11 teeth of 8 mm pitch; strip 60 x 5 mm, 40 mm long, pulled 25 mm off its
axis; 120 MPa allowed.  The program's own pull stands on the smallest radius of the polygon; the
figures here on the pitch circle.  Tolerance: half the last printed digit unless a line says why not.
"""

import numpy as np
from printed import near, printed

from mountlimit import crossings, meshed
from mountlimit.formulas import chain_drive, motor, section, stress

WIDTH, THICKNESS = 0.060, 0.005


def pull(current: float) -> float:
    """Give the chain pull at a current, N."""
    constant = motor.torque_constant_from_speed_constant(190 * 2 * np.pi / 60)
    radius = chain_drive.pitch_diameter(0.008, 11) / 2
    return chain_drive.effective_pull(motor.linear_torque(constant, current, 0.0), radius)


def test_current_to_stress() -> None:
    """Computed: torque, pull, bending stress, largest twist stress and their equivalent. E2E-01."""
    force = pull(40.0)
    assert force * chain_drive.pitch_diameter(0.008, 11) / 2 == printed("2.01038")
    assert force == printed("141.597")
    bent = force * 0.040 * max(meshed.net_section(WIDTH, THICKNESS, ()).moment_across)
    twisted = force * 0.025 / section.rectangle_torsion_modulus(WIDTH, THICKNESS)
    assert bent / 1e6 == printed("22.6556")
    assert twisted / 1e6 == printed("7.4723")
    assert stress.von_mises(bent, twisted) / 1e6 == printed("26.0918")


def test_twist_stress_of_the_meshed_cut() -> None:
    """Computed: the cut's own field, by finite elements: 7.4723 MPa within 0.5 % (mesh of 110 elements)."""
    unit = meshed.net_section(WIDTH, THICKNESS, ()).torsion
    largest = np.max(np.hypot(unit[:, 0], unit[:, 1])) * pull(40.0) * 0.025
    assert largest / 1e6 == near(7.4723, rel=0.005)


def test_stress_back_to_current() -> None:
    """Computed: the current at which 120 MPa is reached, found as every limit is: 183.966 A. E2E-01."""
    currents = crossings.grid(400.0)
    net = meshed.net_section(WIDTH, THICKNESS, ())
    force = pull(currents)
    mises = stress.von_mises(
        force * 0.040 * max(net.moment_across),
        force * 0.025 / section.rectangle_torsion_modulus(WIDTH, THICKNESS),
    )
    assert crossings.crossing(currents, mises / 120e6) == printed("183.966")
