"""Beam formulas against numerical integration of curvature, and sections against small squares."""

from __future__ import annotations

import numpy as np
import pytest

from mountlimit.formulas import flexure, section, stress

E_MODULUS, SECOND, LENGTH = 2.0e11, 1.0e-8, 0.5
X = np.linspace(0.0, LENGTH, 40001)


def integral(values: np.ndarray) -> np.ndarray:
    """Give the running trapezium integral over X."""
    return np.concatenate(([0.0], np.cumsum((values[1:] + values[:-1]) / 2 * (X[1] - X[0]))))


def cantilever(moment: np.ndarray) -> tuple[float, float]:
    """Give end deflection and end slope of a beam held at X = 0."""
    slope = integral(moment / (E_MODULUS * SECOND))
    return float(integral(slope)[-1]), float(slope[-1])


def test_cantilever_under_an_end_force() -> None:
    bent, slope = cantilever(300.0 * (LENGTH - X))
    arguments = (300.0, LENGTH, E_MODULUS, SECOND)
    assert flexure.end_deflection_force(*arguments) == pytest.approx(bent, rel=1e-7)
    assert flexure.end_slope_force(*arguments) == pytest.approx(slope, rel=1e-7)


def test_cantilever_under_an_end_moment() -> None:
    bent, slope = cantilever(np.full_like(X, 40.0))
    arguments = (40.0, LENGTH, E_MODULUS, SECOND)
    assert flexure.end_deflection_moment(*arguments) == pytest.approx(bent, rel=1e-7)
    assert flexure.end_slope_moment(*arguments) == pytest.approx(slope, rel=1e-7)


def two_sided(load: np.ndarray, kink: float, fixed: bool) -> tuple[float, float]:
    """Give mid-span deflection and rotation of a beam on two ends; ``kink`` is a mid-span jump.

    The end reactions are found from the end conditions: two unknowns (moment and shear at the
    left end) for a beam held against rotation, or the shear alone for simple supports.
    """
    shapes = [np.ones_like(X), X] if fixed else [X]
    middle = len(X) // 2

    def ends(moment: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        slope = integral(moment / (E_MODULUS * SECOND))
        return slope, integral(slope)

    base = load + np.where(X > LENGTH / 2, kink, 0.0)
    slope_0, sag_0 = ends(base)
    parts = [ends(shape) for shape in shapes]
    if fixed:
        matrix = [[p[0][-1] for p in parts], [p[1][-1] for p in parts]]
        a, b = np.linalg.solve(matrix, [-slope_0[-1], -sag_0[-1]])
        slope = slope_0 + a * parts[0][0] + b * parts[1][0]
        sag = sag_0 + a * parts[0][1] + b * parts[1][1]
    else:
        # Moment zero at the right end fixes the shear; the left slope brings the end back to zero.
        shear = -base[-1] / X[-1]
        slope, sag = slope_0 + shear * parts[0][0], sag_0 + shear * parts[0][1]
        tilt = -sag[-1] / LENGTH
        slope, sag = slope + tilt, sag + tilt * X
    return float(sag[middle]), float(slope[middle])


def test_fixed_beam_under_a_midspan_force() -> None:
    sag, turn = two_sided(-1000.0 * np.maximum(X - LENGTH / 2, 0.0), 0.0, fixed=True)
    formula = flexure.fixed_beam_midspan_deflection(1000.0, LENGTH, E_MODULUS, SECOND)
    assert formula == pytest.approx(abs(sag), rel=1e-6)
    assert abs(turn) < 1e-9


def test_fixed_beam_under_a_midspan_moment() -> None:
    sag, turn = two_sided(np.zeros_like(X), 50.0, fixed=True)
    formula = flexure.fixed_beam_midspan_rotation(50.0, LENGTH, E_MODULUS, SECOND)
    assert formula == pytest.approx(abs(turn), rel=1e-3)
    assert abs(sag) < 1e-7


def test_simple_beam_under_a_midspan_force() -> None:
    sag, _ = two_sided(-1000.0 * np.maximum(X - LENGTH / 2, 0.0), 0.0, fixed=False)
    formula = flexure.simple_beam_midspan_deflection(1000.0, LENGTH, E_MODULUS, SECOND)
    assert formula == pytest.approx(abs(sag), rel=1e-6)


def test_held_tube_is_two_halves_in_parallel() -> None:
    half = flexure.twist_free(1.0, LENGTH / 2, 7.9e10, 2e-8)
    both = flexure.held_tube_twist(1.0, LENGTH, 7.9e10, 2e-8)
    assert 1 / both == pytest.approx(2 / half, rel=1e-12, abs=0.0)


def test_plate_modulus_is_the_stiffness_with_no_strain_across() -> None:
    """Plane stress with zero strain across: sigma_x / eps_x from the 2 x 2 compliance."""
    nu = 0.33
    compliance = np.array([[1.0, -nu], [-nu, 1.0]]) / E_MODULUS
    assert flexure.plate_modulus(E_MODULUS, nu) == pytest.approx(np.linalg.inv(compliance)[0, 0])


def squares(inside: np.ndarray, cell: float, y: np.ndarray) -> tuple[float, float]:
    """Give area and second moment of a shape drawn on small squares."""
    return float(inside.sum() * cell), float((y**2 * inside).sum() * cell)


def test_tubes_by_small_squares() -> None:
    n, size = 2000, 0.06
    line = (np.arange(n) + 0.5) / n * size - size / 2
    x, y = np.meshgrid(line, line)
    cell = (size / n) ** 2
    r = np.hypot(x, y)
    area, second = squares((r < 0.025) & (r > 0.022), cell, y)
    assert section.round_tube_area(0.05, 0.003) == pytest.approx(area, rel=2e-3, abs=0.0)
    assert section.round_tube_second_moment(0.05, 0.003) == pytest.approx(second, rel=2e-3, abs=0.0)
    outer = (abs(x) < 0.015) & (abs(y) < 0.0255)
    inner = (abs(x) < 0.012) & (abs(y) < 0.0225)
    area, second = squares(outer & ~inner, cell, y)
    assert section.box_area(0.03, 0.051, 0.003) == pytest.approx(area, rel=1e-6)
    assert section.box_second_moment(0.03, 0.051, 0.003) == pytest.approx(second, rel=1e-4, abs=0.0)


def test_hollow_rectangle_of_a_validation_manual() -> None:
    """20 x 50 mm tube of one wall, 2 mm: outer less inner rectangle."""
    inner = section.rectangle_second_moment(16.0, 46.0)
    outer = section.rectangle_second_moment(20.0, 50.0)
    assert section.box_second_moment(20.0, 50.0, 2.0) == pytest.approx(
        outer - inner, rel=1e-12, abs=0.0
    )
    area = section.rectangle_area(20.0, 50.0) - section.rectangle_area(16.0, 46.0)
    assert section.box_area(20.0, 50.0, 2.0) == pytest.approx(area, rel=1e-12, abs=0.0)


def test_parallel_axis_of_a_split_rectangle() -> None:
    """A rectangle is two halves moved from its middle."""
    half = section.rectangle_second_moment(0.06, 0.01)
    moved = section.second_moment_parallel_axis(half, section.rectangle_area(0.06, 0.01), 0.005)
    assert 2 * moved == pytest.approx(
        section.rectangle_second_moment(0.06, 0.02), rel=1e-12, abs=0.0
    )


def test_solid_round_bar_is_a_tube_without_a_hole() -> None:
    d = 0.02
    assert section.round_torsion_constant(d) == pytest.approx(
        section.round_tube_torsion_constant(d, d / 2), rel=1e-12, abs=0.0
    )
    modulus = section.round_torsion_constant(d) / (d / 2)
    assert stress.torsion_stress(30.0, modulus) == pytest.approx(
        stress.round_torsion_stress(30.0, d), rel=1e-12, abs=0.0
    )


def test_peak_shear_of_a_rectangle() -> None:
    """tau = V Q / (I b) at the middle, Q of the upper half."""
    b, h, force = 0.006, 0.06, 900.0
    first = b * h / 2 * h / 4
    jourawski = force * first / (section.rectangle_second_moment(b, h) * b)
    area = section.rectangle_area(b, h)
    assert stress.rectangle_shear_stress(force, area) == pytest.approx(
        jourawski, rel=1e-12, abs=0.0
    )
