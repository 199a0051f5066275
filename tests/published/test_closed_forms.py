"""Closed forms and free bodies worked out anew: no book's figure, each form named in its test.

Tolerance: half the last printed digit unless a test says why not.
"""

import numpy as np
import pytest
from principal import largest_shear
from printed import aside, between, exactly, near, printed

from mountlimit.formulas import (
    chain_drive,
    motor,
    section,
    shaft,
    slip,
    statics,
    stress,
    traction,
)


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
    assert torque == aside("1790.49")
    pull = chain_drive.effective_pull(torque, 0.5)
    tight, slack = pull * 2.5 / 1.5, pull / 1.5
    assert (tight, slack) == (aside("5968.31"), aside("2387.32"))
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
    assert between(low, 60e6, high)


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
    assert mises / per_moment == near(2152.7, abs=0.1)  # 2152.78, cut off


def test_motor_face_held_by_friction() -> None:
    """Common practice (friction 0.15 has no source): four screws of 2.5 kN on a 12.5 mm radius: 18.75 N*m, with a factor of 1.5 12.5 N*m. FRC-05."""
    held = slip.friction_torque(0.15, 4, 2500.0, 0.0125)
    assert held == near(18.75, rel=1e-12)
    assert held / 1.5 == near(12.5, rel=1e-12)


def test_round_tube_is_exact_and_bredt_is_near() -> None:
    """Computed: a thin round tube, exact constant against 2 pi r^3 t (within (t/D)^2)."""
    exact = section.round_tube_torsion_constant(25.4, 1.0)
    assert exact == near(2 * np.pi * 12.2**3, rel=0.002)
    assert exact == near(2 * section.round_tube_second_moment(25.4, 1.0), rel=1e-14)


def test_flat_bar_warping_by_integration() -> None:
    """Computed: over the rectangle, warping is y z (thin strip); Cw is the integral of its
    square, b^3 t^3 / 144."""
    b, t = 0.06, 0.006
    y, z = ((np.arange(n) + 0.5) / n - 0.5 for n in (600, 600))
    grid = np.outer(y * b, z * t)
    integral = np.sum(grid**2) * b * t / grid.size
    assert section.flat_bar_warping_constant(b, t) == near(integral, rel=1e-5, abs=0.0)


@pytest.mark.parametrize(("kind", "scale"), [("phase peak", 1.0), ("phase rms", np.sqrt(2.0))])
def test_ampere_factor_by_instantaneous_power(kind: str, scale: float) -> None:
    """Computed: power of three sinusoidal phases over a turn, against torque times speed."""
    angle = np.linspace(0.0, 2 * np.pi, 3600, endpoint=False)
    speed, kv = 100.0, 20.0
    phases = [np.sin(angle + k * 2 * np.pi / 3) for k in range(3)]
    volts = [p / np.max(np.abs(phases[0] - phases[1])) * speed / kv for p in phases]
    power = sum(np.mean(v * scale * p) for v, p in zip(volts, phases, strict=True))
    constant = motor.phase_torque_constant(1 / kv, motor.AMPERE_FACTOR[kind])
    assert power / speed == near(constant, rel=1e-6)


def test_linear_torque() -> None:
    """Computed: the no-load current makes no torque, and less than it none either."""
    assert motor.linear_torque(0.12, 103.0, 3.0) == near(12.0)
    assert motor.linear_torque(0.12, 2.0, 3.0) == exactly(0.0)


def test_rear_drive_by_axle_loads() -> None:
    """Computed: the force is friction times the rear axle load it brings about itself."""
    mass, behind, height, base, friction = 120.0, 0.6, 0.7, 1.0, 0.5
    force = traction.traction_force_rear_drive(mass, behind, height, base, friction)
    rear_load = mass * 9.80665 * behind / base + force * height / base
    assert force == near(friction * rear_load, rel=1e-9)
    lifted = traction.lift_force(mass, behind, height, base)
    assert lifted * height == near(mass * 9.80665 * (base - behind), rel=1e-9)
