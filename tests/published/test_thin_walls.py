"""Thin walls: Bredt's formulas (C. Hartsuijker, J. W. Welleman, Engineering Mechanics volume 2,
chapter 6) and Vlasov's torsion with held warping (Thin-Walled Elastic Beams).
"""

import numpy as np
import pytest
from printed import printed
from scipy.integrate import solve_bvp

from mountlimit.formulas import flexure, section, stress, tube, warping


def test_rectangular_box() -> None:
    """Computed: 100 x 50 x 5 mm under 1 kN*m, formula read.

    The true constant with square corners is 1 354 064 mm^4, 3.7 % more: the formula is safe.

    TOR-07.
    """
    constant = section.box_torsion_constant(100.0, 50.0, 5.0)
    assert constant == printed("1305402")
    area = tube.box_enclosed_area(100.0, 50.0, 5.0)
    assert area == 95.0 * 45.0
    assert stress.bredt_stress(1.0e6, area, 5.0) == printed("23.392")
    assert 0.96 < constant / 1354064 < 1.0


def test_round_tube_is_exact_and_bredt_is_near() -> None:
    """Computed: a thin round tube, exact constant against 2 pi r^3 t (within (t/D)^2)."""
    exact = section.round_tube_torsion_constant(25.4, 1.0)
    assert exact == pytest.approx(2 * np.pi * 12.2**3, rel=0.002)
    assert exact == pytest.approx(2 * section.round_tube_second_moment(25.4, 1.0), rel=1e-14)


E, NU = 210e9, 1 / 3
G = E / (2 * (1 + NU))
J, CW, LENGTH, TORQUE = 113333e-12, 12567270000.0e-18, 1.0, 1000.0


def test_channel_held_at_one_end() -> None:
    """Computed: thin channel 80 x 180 x 10 mm, 1 m, 1 kN*m at the free end. WRP-03."""
    shear = flexure.shear_modulus(E, NU)
    decay = flexure.warping_decay(shear, J, E, CW)
    assert decay * LENGTH == printed("1.839")
    assert flexure.twist_held_free(TORQUE, LENGTH, shear, J, decay) == printed("0.05412")
    assert flexure.twist_free(TORQUE, LENGTH, shear, J) == pytest.approx(0.11204, abs=6e-6)
    bimoment = stress.bimoment_held_free(TORQUE, decay, LENGTH)
    # The figure, in N*mm^2, is from a numerical solution; the closed form is 2.2e-4 above it.
    assert bimoment * 1e6 == pytest.approx(516860000.0, rel=3e-4)
    # Warping of a flange tip of the thin channel: h / 2 (b - e), e its shear centre from the web.
    b, h = 0.08, 0.18
    tip = h / 2 * (b - 3 * b**2 / (6 * b + h))
    assert warping.warping_stress(bimoment, tip, CW) / 1e6 == pytest.approx(188.4, rel=5e-4)


@pytest.mark.parametrize("ends", [1, 2])
def test_held_warping_against_the_differential_equation(ends: int) -> None:
    """Independent: T = G J phi' - E Cw phi''' solved numerically, phi' = 0 at every held end."""
    decay = flexure.warping_decay(G, J, E, CW)

    def right(_x: np.ndarray, y: np.ndarray) -> np.ndarray:
        return np.vstack([y[1], y[2], decay**2 * y[1] - TORQUE / (E * CW)])

    def edge(a: np.ndarray, b: np.ndarray) -> np.ndarray:
        return np.array([a[0], a[1], b[1] if ends == 2 else b[2]])

    x = np.linspace(0.0, LENGTH, 41)
    answer = solve_bvp(right, edge, x, np.zeros((3, x.size)), tol=1e-9)
    assert answer.success
    twist = flexure.twist_held_held if ends == 2 else flexure.twist_held_free
    bimoment = stress.bimoment_held_held if ends == 2 else stress.bimoment_held_free
    assert answer.y[0, -1] == pytest.approx(twist(TORQUE, LENGTH, G, J, decay), rel=1e-6)
    assert E * CW * answer.y[2, 0] == pytest.approx(bimoment(TORQUE, decay, LENGTH), rel=1e-6)


def test_flat_bar_warping_by_integration() -> None:
    """Independent: over the rectangle, warping is y z (thin strip); Cw is the integral of its
    square, b^3 t^3 / 144."""
    b, t = 0.06, 0.006
    y, z = ((np.arange(n) + 0.5) / n - 0.5 for n in (600, 600))
    grid = np.outer(y * b, z * t)
    integral = np.sum(grid**2) * b * t / grid.size
    assert section.flat_bar_warping_constant(b, t) == pytest.approx(integral, rel=1e-5, abs=0.0)
