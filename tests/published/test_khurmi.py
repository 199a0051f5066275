"""R. S. Khurmi, J. K. Gupta, A Textbook of Machine Design: examples 13.3 and 21.1.

Both recalled.  Tolerance: half the last printed digit unless a test says why not.
"""

import numpy as np
from printed import aside, between, near, printed

from mountlimit.formulas import chain_drive, clamps, hub


def test_split_clamp_coupling() -> None:
    """From memory: clamp coupling, 30 kW at 100 rpm,
    75 mm shaft, six bolts (three on each shaft end) at 70 MPa, friction 0.3, even pressure all round;
    core of the bolts 22.2 mm. FRC-03."""
    torque = 30000.0 / (2 * np.pi * 100 / 60)
    assert torque == aside("2865")
    asked = clamps.surface_slip(torque, 0.075, 0.0)
    spread = clamps.contact_spread(np.pi / 2)

    def held(core: float) -> float:
        pull = 70e6 * np.pi / 4 * core**2
        return clamps.friction_hold(
            0.3, clamps.pressure_sum(clamps.clamp_force(3, 1, pull), spread)
        )

    assert between(held(0.02215), asked, held(0.02225))


def test_split_clamp_coupling_as_a_hub() -> None:
    """From memory: clamp coupling, 30 kW at 100 rpm, 75 mm shaft, six bolts at 70 MPa.

    Half the bolts press on each shaft end, evenly round it; core 22.2 mm, friction 0.3.  FRC-03.
    """
    torque = 30000.0 / (2 * np.pi * 100 / 60)
    assert torque == aside("2865")
    force = 70e6 * np.pi / 4 * 0.0222**2
    held = hub.clamp_torque(np.pi / 2, 0.3, 3, force, 0.075)
    assert held == near(2865, rel=0.01)  # the core is printed to three figures, squared


def test_chain_speed_and_diameters() -> None:
    """From memory: example 21.1: 25 and 72 teeth, pitch
    19.05 mm, 1000 rpm; 152 mm, 436 mm, 7.96 m/s at the pitch circle."""
    d = chain_drive.pitch_diameter(0.01905, 25)
    assert d * 1000 == printed("152")
    # 436.7 mm: the book cuts off to whole millimetres.
    assert int(chain_drive.pitch_diameter(0.01905, 72) * 1000) == 436
    assert np.pi * d * 1000 / 60 == printed("7.96")
    assert chain_drive.chain_speed(25, 0.01905, 1000 / 60) == near(7.96, rel=0.003)
