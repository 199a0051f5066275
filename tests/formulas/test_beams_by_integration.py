"""Beam formulas against numerical integration of curvature, and sections against small squares."""

from __future__ import annotations

import numpy as np
import pytest

from mountlimit.formulas import flexure, section

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


def two_sided(load: np.ndarray, kink: float) -> tuple[float, float]:
    """Give mid-span deflection and rotation of a beam held at two ends; ``kink`` is a mid-span jump.

    Moment and shear at the left end are found from the end conditions.
    """
    middle = len(X) // 2

    def ends(moment: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        slope = integral(moment / (E_MODULUS * SECOND))
        return slope, integral(slope)

    slope_0, sag_0 = ends(load + np.where(X > LENGTH / 2, kink, 0.0))
    parts = [ends(shape) for shape in (np.ones_like(X), X)]
    matrix = [[p[0][-1] for p in parts], [p[1][-1] for p in parts]]
    a, b = np.linalg.solve(matrix, [-slope_0[-1], -sag_0[-1]])
    slope = slope_0 + a * parts[0][0] + b * parts[1][0]
    sag = sag_0 + a * parts[0][1] + b * parts[1][1]
    return float(sag[middle]), float(slope[middle])


def test_fixed_beam_under_a_midspan_force() -> None:
    sag, turn = two_sided(-1000.0 * np.maximum(X - LENGTH / 2, 0.0), 0.0)
    formula = flexure.fixed_beam_midspan_deflection(1000.0, LENGTH, E_MODULUS, SECOND)
    assert formula == pytest.approx(abs(sag), rel=1e-6)
    assert abs(turn) < 1e-9


def test_fixed_beam_under_a_midspan_moment() -> None:
    sag, turn = two_sided(np.zeros_like(X), 50.0)
    formula = flexure.fixed_beam_midspan_rotation(50.0, LENGTH, E_MODULUS, SECOND)
    assert formula == pytest.approx(abs(turn), rel=1e-3)
    assert abs(sag) < 1e-7


def test_held_tube_is_two_halves_in_parallel() -> None:
    half = flexure.twist_free(1.0, LENGTH / 2, 7.9e10, 2e-8)
    both = flexure.held_tube_twist(1.0, LENGTH, 7.9e10, 2e-8)
    assert 1 / both == pytest.approx(2 / half, rel=1e-12, abs=0.0)


def second_moment(inside: np.ndarray, cell: float, y: np.ndarray) -> float:
    """Give the second moment of a shape drawn on small squares."""
    return float((y**2 * inside).sum() * cell)


def test_tubes_by_small_squares() -> None:
    n, size = 2000, 0.06
    line = (np.arange(n) + 0.5) / n * size - size / 2
    x, y = np.meshgrid(line, line)
    cell = (size / n) ** 2
    r = np.hypot(x, y)
    second = second_moment((r < 0.025) & (r > 0.022), cell, y)
    assert section.round_tube_second_moment(0.05, 0.003) == pytest.approx(second, rel=2e-3, abs=0.0)
    outer = (abs(x) < 0.015) & (abs(y) < 0.0255)
    inner = (abs(x) < 0.012) & (abs(y) < 0.0225)
    second = second_moment(outer & ~inner, cell, y)
    assert section.box_second_moment(0.03, 0.051, 0.003) == pytest.approx(second, rel=1e-4, abs=0.0)


def test_hollow_rectangle_of_a_validation_manual() -> None:
    """20 x 50 mm tube of one wall, 2 mm: outer less inner rectangle."""
    inner = section.rectangle_second_moment(16.0, 46.0)
    outer = section.rectangle_second_moment(20.0, 50.0)
    assert section.box_second_moment(20.0, 50.0, 2.0) == pytest.approx(
        outer - inner, rel=1e-12, abs=0.0
    )
