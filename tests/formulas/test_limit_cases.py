"""Formulas against an independent route, a known limit case, or their own inverse."""

from __future__ import annotations

import numpy as np
import pytest

from mountlimit.formulas import (
    alignment,
    chain_drive,
    holes,
    shaft,
    statics,
    stress,
    threads,
    tightening,
    torque,
    traction,
)


def yield_scale(principal: tuple[float, float], ratio: float) -> float:
    """Give the tension-scale equivalent stress by solving the parabolic criterion itself.

    (s1-s2)^2 + (s2-s3)^2 + (s3-s1)^2 + 2 (C - T)(s1 + s2 + s3) = 2 C T with C = ratio T.
    """
    s1, s2 = principal
    distortion = (s1 - s2) ** 2 + s2**2 + s1**2
    roots = np.roots([-2 * ratio, 2 * (ratio - 1) * (s1 + s2), distortion])
    return float(max(roots.real))


@pytest.mark.parametrize("ratio", [1.0, 1.2, 1.6])
@pytest.mark.parametrize("point", [(10.0, 0.0), (-10.0, 0.0), (8.0, 5.0), (0.0, 6.0)])
def test_pressure_sensitive_yield(point: tuple[float, float], ratio: float) -> None:
    """The closed form solves the criterion of Raghava, Caddell and Yeh (from memory)."""
    normal, shear = point
    low, high = np.linalg.eigvalsh([[normal, shear], [shear, 0.0]])
    value = stress.pressure_sensitive(normal, shear, ratio)
    assert value == pytest.approx(yield_scale((high, low), ratio), rel=1e-9)
    assert stress.principal_max(normal, 0.0, shear) == pytest.approx(high, rel=1e-12)
    if ratio == 1.0:
        assert value == pytest.approx(stress.von_mises(normal, shear), rel=1e-12)


def test_pressure_sensitive_limits() -> None:
    """Tension s, compression s / S, shear sqrt(3 / S)."""
    assert stress.pressure_sensitive(10.0, 0.0, 1.25) == pytest.approx(10.0)
    assert stress.pressure_sensitive(-10.0, 0.0, 1.25) == pytest.approx(8.0)
    assert stress.pressure_sensitive(0.0, 10.0, 1.25) == pytest.approx(10.0 * np.sqrt(3 / 1.25))


def test_sag_against_the_catenary() -> None:
    """A hanging chain of 300 mm: tension and excess length of the shallow parabola are near it.

    y = a cosh(x / a), horizontal tension q g a.  At 4 % sag the parabola is within 1 %.
    """
    span, q, a = 0.3, 0.62, 0.93
    sag = a * (np.cosh(span / 2 / a) - 1)
    assert 0.038 < sag / span < 0.042
    tension = chain_drive.sag_tension(q, span, sag)
    assert tension == pytest.approx(q * 9.80665 * a, rel=0.01)
    excess = 2 * a * np.sinh(span / 2 / a) - span
    assert chain_drive.excess_from_sag(span, sag) == pytest.approx(excess, rel=0.01)


def test_tensions_add_up() -> None:
    """Effective pull is tight less slack side; the speed part is in both."""
    slack = chain_drive.slack_side_tension(chain_drive.centrifugal_tension(0.62, 10.0), 15.0)
    assert slack == pytest.approx(62.0 + 15.0)
    assert chain_drive.tight_side_tension(900.0, slack) - slack == pytest.approx(900.0)


def test_pin_pressure_of_a_10b_drive() -> None:
    """1840 N on 66.3 mm^2 are 27.8 MPa (computed)."""
    assert chain_drive.pin_pressure(1840.0, 66.3e-6) / 1e6 == pytest.approx(27.8, abs=0.05)


def test_wear_of_a_chain() -> None:
    """1.5 % of 122 pitches of 12.7 mm."""
    assert chain_drive.wear_length(0.015, 122, 12.7) == pytest.approx(23.241)


def test_offsets() -> None:
    """2 mm per metre on 400 mm."""
    assert alignment.offset_allowed(0.002, 0.4) == pytest.approx(0.0008)


def test_tapped_thread_of_aluminium() -> None:
    """M8 x 1.25, 8 mm engaged: 176 mm^2, 27.4 kN at 0.6 of 260 MPa (computed, FED-STD-H28 form)."""
    area = threads.strip_area_internal(8.0, 1.25, 8.0, 7.188)
    assert area == pytest.approx(176, abs=0.5)
    assert threads.strip_force(0.6 * 0.26, 176.0) == pytest.approx(27.4, abs=0.06)


def test_sheared_cylinder_of_a_thread() -> None:
    """At a cylinder of diameter D the tooth of a 60-degree thread is P/2 + (D - D2) tan 30 wide."""
    d, p, engaged = 8.0, 1.25, 10.0
    height = np.sqrt(3) / 2 * p
    outer = threads.strip_area_internal(engaged, p, d, d - 0.75 * height)
    # ISO 68-1: the flat of the basic profile at the nominal diameter of the bolt is an eighth.
    assert outer / (engaged / p * np.pi * d) == pytest.approx(0.875 * p, rel=1e-5)


def test_tightening_scatter() -> None:
    """A factor of 1.6 between the largest and the least preload (VDI 2230, from memory)."""
    assert tightening.lowest_preload(16.0, 1.6) == pytest.approx(10.0)


def test_plate_at_a_hole() -> None:
    """Two shear planes, projected bearing area."""
    assert holes.tear_out_shear(15.5, 10.0, 12.0) == 2 * 15.5 * 10.0 * 12.0
    assert holes.bearing_force(8.0, 10.0, 9.0) == 720.0


@pytest.mark.parametrize("strength", [470e6, 690e6, 1034e6])
def test_notch_sensitivity_falls_with_the_notch_radius(strength: float) -> None:
    """Blunt notches count in full; at the material length it is half.  Length at 2070 MPa 25.4 um."""
    length = shaft.notch_length(strength)
    assert shaft.notch_length(2070e6) == pytest.approx(25.4e-6)
    assert length == pytest.approx(25.4e-6 * (2070e6 / strength) ** 1.8, rel=1e-12)
    assert shaft.notch_sensitivity(length, length) == 0.5
    assert shaft.notch_sensitivity(length, 1.0) == pytest.approx(1.0, abs=0.001)


def test_weight_and_bump() -> None:
    assert statics.weight(2.0) == pytest.approx(19.6133)
    assert torque.knock_force(2.0, 3 * 9.80665) == pytest.approx(3 * statics.weight(2.0))
    assert torque.knock_force(2.0, 1.0) == pytest.approx(statics.weight(2.0))


def test_traction_torque_by_power() -> None:
    """Force times road speed is torque times motor speed."""
    torque, speed = traction.traction_torque(600.0, 0.15, 6.0), 4.0
    assert torque * speed / 0.15 * 6.0 == pytest.approx(600.0 * speed)
