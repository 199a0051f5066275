"""Beam formulas against numerical integration of curvature, and sections against small squares."""

from __future__ import annotations

import numpy as np
import pytest

from mountlimit.formulas import flexure, member, section, span_beams

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


def between(load: np.ndarray, place: float, held: bool) -> tuple[float, float]:
    """Give deflection and slope at the place of a beam on two ends, held or hinged.

    ``load`` is E I w'' of the load alone, from the left end; what the ends add is straight in x
    and found from the end conditions.
    """
    at = round(place * (len(X) - 1))

    def ends(moment: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        slope = integral(moment / (E_MODULUS * SECOND))
        return slope, integral(slope)

    if not held:
        slope, sag = ends(load - load[-1] * X / LENGTH)
        start = -sag[-1] / LENGTH
        return float(sag[at] + start * X[at]), float(slope[at] + start)
    slope_0, sag_0 = ends(load)
    parts = [ends(shape) for shape in (np.ones_like(X), X)]
    matrix = [[p[0][-1] for p in parts], [p[1][-1] for p in parts]]
    a, b = np.linalg.solve(matrix, [-slope_0[-1], -sag_0[-1]])
    slope = slope_0 + a * parts[0][0] + b * parts[1][0]
    sag = sag_0 + a * parts[0][1] + b * parts[1][1]
    return float(sag[at]), float(slope[at])


PLACES = (0.1, 0.25, 0.5, 0.7)
BEAMS = {
    True: (span_beams.held_sag_force, span_beams.held_turn_force,
           span_beams.held_sag_couple, span_beams.held_turn_couple),
    False: (span_beams.hinged_sag_force, span_beams.hinged_turn_force,
            span_beams.hinged_sag_couple, span_beams.hinged_turn_couple),
}  # fmt: skip


@pytest.mark.parametrize("held", [True, False])
@pytest.mark.parametrize("place", PLACES)
def test_force_and_couple_anywhere_on_a_span(held: bool, place: float) -> None:
    """The fourth derivative of E I w is the load: a force is a ramp, a couple a step the other way.

    The step falls on a grid point, which costs M dx / (4 E I) of slope: 1e-4.
    """
    centre = place * LENGTH
    arguments = (LENGTH, place, E_MODULUS, SECOND)
    force = 1000.0 * np.maximum(X - centre, 0.0)
    couple = -50.0 * (np.sign(np.round(X - centre, 9)) + 1) / 2
    want = (*between(force, place, held), *between(couple, place, held))
    loads = (1000.0, 1000.0, 50.0, 50.0)
    for beam, load, value in zip(BEAMS[held], loads, want, strict=True):
        assert beam(load, *arguments) == pytest.approx(value, rel=2e-4, abs=1e-9), beam.__name__


def test_middle_of_the_span_against_handbook_coefficients() -> None:
    """Shigley's Mechanical Engineering Design 9th ed. table A-9, cases 5 and 14: 1/48 and 1/192.

    Couple in the middle: 1/12 and 1/16 of M L / (E I), Roark's Formulas for Stress and Strain,
    beam tables (from memory).
    """
    one = (1.0, 1.0, 0.5, 1.0, 1.0)
    assert 1 / span_beams.hinged_sag_force(*one) == pytest.approx(48.0, rel=1e-12)
    assert 1 / span_beams.held_sag_force(*one) == pytest.approx(192.0, rel=1e-12)
    assert 1 / span_beams.hinged_turn_couple(*one) == pytest.approx(12.0, rel=1e-12)
    assert 1 / span_beams.held_turn_couple(*one) == pytest.approx(16.0, rel=1e-12)


@pytest.mark.parametrize("place", PLACES)
def test_span_in_twist_is_two_parts_in_parallel(place: float) -> None:
    one, other = (flexure.twist_free(1.0, LENGTH * s, 7.9e10, 2e-8) for s in (place, 1 - place))
    both = member.span_twist(1.0, LENGTH, place, 7.9e10, 2e-8)
    assert 1 / both == pytest.approx(1 / one + 1 / other, rel=1e-12, abs=0.0)


@pytest.mark.parametrize("decay", [0.5, 5.0, 50.0])
def test_twist_with_warping_against_the_differential_equation(decay: float) -> None:
    """Unit torque and G J: phi = c x + d sinh(k x) from each end; phi, phi', phi'' go on at the load."""
    place, k = 0.3, decay
    a, b = place * LENGTH, (1 - place) * LENGTH
    sh, ch = np.sinh, np.cosh
    matrix = [
        [a, sh(k * a), -b, -sh(k * b)],
        [1, k * ch(k * a), 1, k * ch(k * b)],
        [0, sh(k * a), 0, -sh(k * b)],
        [1, 0, 1, 0],  # torque of a part, phi' - phi'''/k^2, is c from the left, -c from the right
    ]
    c = np.linalg.solve(np.array(matrix), [0, 0, 0, 1.0])
    got = member.span_twist_warping(1.0, LENGTH, place, 1.0, 1.0, k)
    assert got == pytest.approx(c[0] * a + c[1] * sh(k * a), rel=1e-6)


def test_warping_free_of_a_long_thin_member_no_longer_counts() -> None:
    plain = member.span_twist(1.0, 5.0, 0.4, 1.0, 1.0)
    assert member.span_twist_warping(1.0, 5.0, 0.4, 1.0, 1.0, 1e4) == pytest.approx(plain, rel=1e-4)


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
