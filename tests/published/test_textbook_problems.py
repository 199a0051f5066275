"""Single problems of machine-design texts and shop rules, each named in its test.

Tolerance: half the last printed digit unless a test says why not.
"""

import numpy as np
import pytest
from printed import printed

from mountlimit.formulas import chain_drive, clamps, hub, shaft, slip, statics, stress


def largest_shear(normal: float, shear: float) -> float:
    """Give the larger principal stress less half the normal stress."""
    return stress.principal_max(normal, 0.0, shear) - normal / 2


def test_key_length() -> None:
    """From memory: worked key problem, 61 mm printed, 800 N*m, 40 mm shaft, 15 x 12 mm.

    Allowed 58 MPa in shear and 110 MPa in crushing; the unrounded lengths are recomputed. KEY-01.
    """
    by_shear = shaft.key_shear(800.0, 0.04, 0.015, 1.0) / 58e6 * 1000
    by_crushing = shaft.key_crushing(800.0, 0.04, 0.012, 1.0) / 110e6 * 1000
    assert by_shear == printed("45.98")
    assert by_crushing == printed("60.61")
    assert np.ceil(max(by_shear, by_crushing)) == 61


def test_key_with_round_ends() -> None:
    """Computed: 20 mm shaft, 6 x 6 x 25 key, bearing length 19 mm, 40 N*m."""
    assert shaft.key_shear(40.0, 0.02, 0.006, 0.019) / 1e6 == printed("35.1")


def test_overhung_line_shaft() -> None:
    """Computed: statement of a line-shaft problem read, 30 kW at 160 rpm, 1 m pulley.

    Belt tension ratio 2.5, overhang 150 mm, 1600 N; ASME code factors 2.0 and 1.5, 60 MPa.
    The largest shear stress at the diameter, half a printed digit up and down, brackets 60 MPa.

    SHA-01.
    """
    torque = 30000.0 / (2 * np.pi * 160 / 60)
    assert torque == printed("1790.49")
    pull = chain_drive.effective_pull(torque, 0.5)
    tight, slack = pull * 2.5 / 1.5, pull / 1.5
    assert (tight, slack) == (printed("5968.31"), printed("2387.32"))
    load = tight + slack + 1600.0
    assert load == pytest.approx(9955.63, abs=0.011)  # sum of two printed roundings
    moment = statics.overhung_moment(load, 0.15)
    assert moment == printed("1493.35")
    low, high = (
        largest_shear(
            stress.round_bending_stress(2.0 * moment, d),
            stress.round_torsion_stress(1.5 * torque, d),
        )
        for d in (0.069865, 0.069855)
    )
    assert low < 60e6 < high


def test_equivalent_torque_and_moment() -> None:
    """Computed: M 1493.345, T 1790.493 N*m; T_e, M_e and the von Mises moment.

    The stresses of the equivalent moments are those of the pair, at any diameter. CMB-03.
    """
    d, moment, torque = 0.07, 1493.345, 1790.493
    bent, twisted = stress.round_bending_stress(moment, d), stress.round_torsion_stress(torque, d)
    per_torque = stress.round_torsion_stress(1.0, d)
    per_moment = stress.round_bending_stress(1.0, d)
    assert largest_shear(bent, twisted) / per_torque == printed("2331.51")
    assert stress.principal_max(bent, 0.0, twisted) / per_moment == printed("1912.43")
    mises = stress.von_mises(bent, twisted)
    assert mises / per_moment == pytest.approx(2152.7, abs=0.1)  # 2152.78, cut off


def test_shaft_stresses_and_their_combination() -> None:
    """From memory: 180 lbf*in on 0.75 in gives 2173 psi; 8780 and 2170 psi combine to 4897 shear and
    9287 normal (problems of a machine-design text, chapter 17)."""
    assert stress.round_torsion_stress(180.0, 0.75) == printed("2173")
    assert largest_shear(8780.0, 2170.0) == printed("4897")
    assert stress.principal_max(8780.0, 0.0, 2170.0) == printed("9287")


def test_motor_face_held_by_friction() -> None:
    """Computed: four screws of 2.5 kN on a 12.5 mm radius, friction 0.15 (common practice,
    no source): 18.75 N*m, with a factor of 1.5 12.5 N*m. FRC-05."""
    held = slip.friction_torque(0.15, 4, 2500.0, 0.0125)
    assert held == pytest.approx(18.75, rel=1e-12)
    assert held / 1.5 == pytest.approx(12.5, rel=1e-12)


def test_split_clamp_coupling() -> None:
    """From memory: Khurmi & Gupta, A Textbook of Machine Design, clamp coupling: 30 kW at 100 rpm,
    75 mm shaft, six bolts (three on each shaft end) at 70 MPa, friction 0.3, even pressure all round;
    core of the bolts 22.2 mm. FRC-03."""
    torque = 30000.0 / (2 * np.pi * 100 / 60)
    assert torque == pytest.approx(2865, abs=0.5)
    asked = clamps.surface_slip(torque, 0.075, 0.0)
    spread = clamps.contact_spread(np.pi / 2)

    def held(core: float) -> float:
        pull = 70e6 * np.pi / 4 * core**2
        return clamps.friction_hold(
            0.3, clamps.pressure_sum(clamps.clamp_force(3, 1, pull), spread)
        )

    assert held(0.02215) < asked < held(0.02225)


def test_set_screw() -> None:
    """Computed: 1000 lbf holding force on a 3/4 in shaft are 375 lbf*in, 42 N*m (Shigley's
    Mechanical Engineering Design 9th ed. table 7-4, from memory)."""
    assert shaft.set_screw_torque(1000.0, 0.75) == printed("375")
    assert shaft.set_screw_torque(4448.2216, 0.01905) == printed("42")


def test_khurmi_chain_speed_and_diameters() -> None:
    """From memory: R. S. Khurmi, J. K. Gupta, Machine Design, example 21.1: 25 and 72 teeth, pitch
    19.05 mm, 1000 rpm; 152 mm, 436 mm, 7.96 m/s at the pitch circle."""
    d = chain_drive.pitch_diameter(0.01905, 25)
    assert d * 1000 == printed("152")
    # 436.7 mm: the book cuts off to whole millimetres.
    assert int(chain_drive.pitch_diameter(0.01905, 72) * 1000) == 436
    assert np.pi * d * 1000 / 60 == printed("7.96")
    assert chain_drive.chain_speed(25, 0.01905, 1000 / 60) == pytest.approx(7.96, rel=0.003)


def test_split_clamp_coupling_as_a_hub() -> None:
    """From memory (Khurmi & Gupta, clamp coupling): 30 kW at 100 rpm, 75 mm shaft, six bolts at 70 MPa.

    Half the bolts press on each shaft end, evenly round it; core 22.2 mm, friction 0.3.  FRC-03.
    """
    torque = 30000.0 / (2 * np.pi * 100 / 60)
    assert torque == pytest.approx(2865, rel=1e-3)
    force = 70e6 * np.pi / 4 * 0.0222**2
    held = hub.clamp_torque(np.pi / 2, 0.3, 3, force, 0.075)
    assert held == pytest.approx(2865, rel=0.01)  # the core is printed to three figures, squared
