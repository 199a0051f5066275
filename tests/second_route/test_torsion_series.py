"""Torsion of rectangles: Timoshenko's series summed as printed, and the same by finite elements."""

from __future__ import annotations

import numpy as np
import pytest
from second_kit import told

from mountlimit.formulas import section

GRID = np.geomspace(0.02, 50, 41)  # width over thickness, either way round
THICKNESS = 0.008


def printed(b: float, t: float) -> tuple[float, float]:
    """Give torsion constant and modulus: Timoshenko & Goodier art. 109, 5000 terms, b >= t."""
    b, t = max(b, t), min(b, t)
    n = np.arange(1, 10_001, 2, dtype=float)[::-1]  # small terms first
    x = n * np.pi * b / (2 * t)
    constant = b * t**3 / 3 * (1 - 192 / np.pi**5 * t / b * np.sum(np.tanh(x) / n**5))
    peak = 1 - 8 / np.pi**2 * np.sum(1 / (n**2 * np.cosh(np.minimum(x, 500.0))))  # over G theta t
    return constant, constant / (peak * t)


@pytest.mark.parametrize("ratio", GRID)
def test_series_as_printed(ratio):
    """The program's sum is rearranged and cut short: within 1e-7 over 0.02 to 50, and its arrays alike."""
    constant, modulus = printed(ratio * THICKNESS, THICKNESS)
    ours = section.rectangle_torsion_constant(ratio * THICKNESS, THICKNESS)
    of_modulus = section.rectangle_torsion_modulus(ratio * THICKNESS, THICKNESS)
    told("torsion constant, series", abs(ours / constant - 1))
    told("torsion modulus, series", abs(of_modulus / modulus - 1))
    assert ours == pytest.approx(constant, rel=1e-8, abs=0.0)
    assert of_modulus == pytest.approx(modulus, rel=2e-7, abs=0.0)


@pytest.mark.parametrize("ratio", [1.0, 1.3, 2.0, 3.5, 6.0, 10.0])
def test_poisson_by_finite_elements(ratio):
    """Prandtl's stress function by quadratic elements of a general library (scikit-fem): J = 4 int phi."""
    pytest.importorskip("skfem", reason="needs the extra 'second'")
    from skfem import Basis, ElementTriP2, MeshTri, condense, solve
    from skfem.models.poisson import laplace, unit_load

    fine = 24
    x, y = np.linspace(0, ratio, int(np.ceil(ratio)) * fine + 1), np.linspace(0, 1, fine + 1)
    basis = Basis(MeshTri.init_tensor(x, y), ElementTriP2())
    load = unit_load.assemble(basis)
    phi = solve(*condense(laplace.assemble(basis), load, D=basis.get_dofs()))
    constant = 4 * load @ phi * THICKNESS**4
    ours = section.rectangle_torsion_constant(ratio * THICKNESS, THICKNESS)
    told("torsion constant, finite elements", abs(constant / ours - 1))
    assert ours == pytest.approx(constant, rel=2e-5, abs=0.0)
