"""NIST Special Publication 811, 2008 ed., Guide for the Use of the SI, appendix B: factors for units.

Tolerance: half the last printed digit; exact factors to the precision of a float.
"""

import pytest
from printed import near

from mountlimit.units import convert, parse

PRINTED = (  # text, kind, SI value as printed, half its last digit
    ("1 lbf*in", "torque", 0.11298, 5e-6),
    ("1 lbf*ft", "torque", 1.3558, 5e-5),
    ("1 psi", "stress", 6894.8, 0.05),
    ("1 hp", "power", 745.7, 0.05),
    ("1 in^4", "second_moment", 4.1623e-7, 5e-12),
    ("1 lbf/in", "stiffness", 175.13, 0.005),
)

SMALL_TORQUES = (
    ("1 kgf*cm", "torque", 0.0980665, 5e-8),
    ("1 ozf*in", "torque", 0.00706, 5e-6),
)

TORQUE_IN = (("lbf*in", 8.8507, 5e-5), ("ozf*in", 141.612, 5e-4))

EXACT = (
    ("1 in", "length", 0.0254),
    ("1 ft", "length", 0.3048),
    ("1 lb", "mass", 0.45359237),
    ("1 oz", "mass", 0.45359237 / 16),
    ("1 kgf", "force", 9.80665),
    ("1 lbf", "force", 4.4482216152605),
    ("1 g", "acceleration", 9.80665),
    ("1 bar", "stress", 1e5),
    ("1 mph", "speed", 0.44704),
    ("0 degC", "temperature", 273.15),
)


@pytest.mark.parametrize(("text", "kind", "value", "half_digit"), PRINTED)
def test_conversion_factors(text, kind, value, half_digit):
    """Confirmed: factors as printed. UNT-01."""
    assert parse(text, kind) == near(value, abs=half_digit)


@pytest.mark.parametrize(("text", "kind", "value", "half_digit"), SMALL_TORQUES)
def test_small_torque_units(text, kind, value, half_digit):
    """Confirmed: factors as printed. UNT-03."""
    assert parse(text, kind) == near(value, abs=half_digit)


@pytest.mark.parametrize(("unit", "value", "half_digit"), TORQUE_IN)
def test_one_newton_metre(unit, value, half_digit):
    """Confirmed: the factors turned round. UNT-03."""
    assert convert(1.0, "torque", unit) == near(value, abs=half_digit)


@pytest.mark.parametrize(("text", "kind", "value"), EXACT)
def test_exact_definitions(text, kind, value):
    """Confirmed: factors printed as exact."""
    assert parse(text, kind) == near(value, rel=1e-15)
