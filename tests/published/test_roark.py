"""W. C. Young, R. G. Budynas, Roark's Formulas for Stress and Strain, 7th ed., table 17.1: holes."""

import pytest
from printed import near, printed

from mountlimit.formulas import concentration


@pytest.mark.parametrize(("share", "factor"), [(0.0, 3.0), (0.24, 2.44), (0.5, 2.16)])
def test_central_hole_in_tension(share: float, factor: float) -> None:
    """Confirmed: polynomial printed; 2.44 is a chart reading of Shigley's A-15-1.

    Tolerance 0.01, what a chart can be read to. KTC-01.
    """
    assert concentration.central_hole_tension(share, 1.0) == near(factor, abs=0.01)


def test_central_hole_against_finite_elements() -> None:
    """Computed: d/w 0.3; polynomial 2.349 net, finite elements 2.362 net, 3.374 gross. KTC-02."""
    factor = concentration.central_hole_tension(0.3, 1.0)
    assert factor == printed("2.349")
    assert factor == near(2.362, rel=0.012)
    assert factor / 0.7 == near(3.374, rel=0.012)


def test_hole_in_a_bent_plate() -> None:
    """Computed: limits 3 for a small hole and (5 + 3 nu) / (3 + nu) = 1.788 for a large.

    Tolerance 1 %: the fitted formula itself gives 2.98 and 1.79. KTC-03.
    """
    assert concentration.hole_in_bending(1e-9, 1.0) == near(3.0, rel=0.01)
    assert concentration.hole_in_bending(1e4, 1.0) == near(5.9 / 3.3, rel=0.003)
