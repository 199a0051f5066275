"""V. Z. Vlasov, Thin-Walled Elastic Beams, 2nd ed., 1961: torsion with held warping."""

import numpy as np
import pytest
from printed import near, printed
from scipy.integrate import solve_bvp

from mountlimit.formulas import flexure, stress, warping

E, NU = 210e9, 1 / 3
G = E / (2 * (1 + NU))
J, CW, LENGTH, TORQUE = 113333e-12, 12567270000.0e-18, 1.0, 1000.0


def test_channel_held_at_one_end() -> None:
    """Computed: thin channel 80 x 180 x 10 mm, 1 m, 1 kN*m at the free end. WRP-03."""
    shear = flexure.shear_modulus(E, NU)
    decay = flexure.warping_decay(shear, J, E, CW)
    assert decay * LENGTH == printed("1.839")
    assert flexure.twist_held_free(TORQUE, LENGTH, shear, J, decay) == printed("0.05412")
    assert flexure.twist_free(TORQUE, LENGTH, shear, J) == near(0.11204, abs=6e-6)
    bimoment = stress.bimoment_held_free(TORQUE, decay, LENGTH)
    # The figure, in N*mm^2, is from a numerical solution; the closed form is 2.2e-4 above it.
    assert bimoment * 1e6 == near(516860000.0, rel=3e-4)
    # Warping of a flange tip of the thin channel: h / 2 (b - e), e its shear centre from the web.
    b, h = 0.08, 0.18
    tip = h / 2 * (b - 3 * b**2 / (6 * b + h))
    assert warping.warping_stress(bimoment, tip, CW) / 1e6 == near(188.4, rel=5e-4)


@pytest.mark.parametrize("ends", [1, 2])
def test_held_warping_against_the_differential_equation(ends: int) -> None:
    """Computed: T = G J phi' - E Cw phi''' solved numerically, phi' = 0 at every held end."""
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
    assert answer.y[0, -1] == near(twist(TORQUE, LENGTH, G, J, decay), rel=1e-6)
    assert E * CW * answer.y[2, 0] == near(bimoment(TORQUE, decay, LENGTH), rel=1e-6)
