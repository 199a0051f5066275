"""AISC, Steel Construction Manual, 14th ed., table 3-23: beam overhanging one support (from memory).

R1 = -P a / L, R2 = P (1 + a / L), deflection at the load P a^2 (L + a) / (3 E I).  The figures
are computed; the deflection is also checked by integrating the beam's curvature.
"""

import numpy as np
from printed import near

from mountlimit.formulas import flexure, section, statics

LOAD, OVERHANG, SPAN, DIAMETER, MODULUS = 1000.0, 0.03, 0.05, 0.012, 207e9


def test_reactions_and_moment() -> None:
    """From memory in its formulas: 1000 N, 30 mm outside bearings 50 mm apart. SHA-04."""
    assert statics.front_bearing_reaction(LOAD, OVERHANG, SPAN) == near(1600.0)
    assert statics.rear_bearing_reaction(LOAD, OVERHANG, SPAN) == near(600.0)
    assert statics.overhung_moment(LOAD, OVERHANG) == near(30.0)


def test_tip_deflection() -> None:
    """From memory in its formula: 12 mm steel shaft, 0.11393 mm by an independent direct-stiffness run.

    Tolerance 3e-4: that run's figure stands 2e-4 above the closed form's. SHA-04.
    """
    second = section.round_second_moment(DIAMETER)
    tip = flexure.overhung_deflection(LOAD, OVERHANG, SPAN, MODULUS, second)
    assert tip * 1000 == near(0.11393, rel=3e-4)


def test_tip_deflection_and_slope_by_integration() -> None:
    """Computed: double integral of M / (E I) with zero deflection at both bearings."""
    x = np.linspace(0.0, SPAN + OVERHANG, 80001)
    bent = np.where(x < SPAN, LOAD * OVERHANG / SPAN * x, LOAD * (SPAN + OVERHANG - x))
    second = section.round_second_moment(DIAMETER)
    step = x[1] - x[0]
    slope = np.concatenate(([0.0], np.cumsum((bent[1:] + bent[:-1]) / 2 * step)))
    slope /= MODULUS * second
    sag = np.concatenate(([0.0], np.cumsum((slope[1:] + slope[:-1]) / 2 * step)))
    tilt = np.interp(SPAN, x, sag) / SPAN
    tip = sag[-1] - tilt * x[-1]
    closed = flexure.overhung_deflection(LOAD, OVERHANG, SPAN, MODULUS, second)
    assert tip == near(closed, rel=1e-6)
    angle = flexure.overhung_slope(LOAD, OVERHANG, SPAN, MODULUS, second)
    assert slope[-1] - tilt == near(angle, rel=1e-6)
