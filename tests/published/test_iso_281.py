"""ISO 281:2007, Rolling bearings: dynamic load ratings and rating life.

Tolerance: half the last printed digit.
"""

import pytest
from printed import exactly, printed

from mountlimit.formulas import bearings


@pytest.mark.parametrize(
    ("percent", "factor"),
    [(90, "1.00"), (95, "0.64"), (96, "0.55"), (97, "0.47"), (98, "0.37"), (99, "0.25")],
)
def test_reliability_factor(percent: int, factor: str) -> None:
    """From memory: ISO 281:2007 table 12 against its three-parameter Weibull form.

    Tolerance 0.005, half the last printed digit: older editions print 0.62 at 95 % and 0.21 at
    99 %, which it would not let pass. BRG-04.
    """
    assert bearings.reliability_factor(percent / 100) == printed(factor)


def test_life_at_another_reliability() -> None:
    """From memory: 0.64 of the life at 95 %; at 90 % it is the rating life itself."""
    assert bearings.adjusted_life(1000.0, bearings.reliability_factor(0.95)) == printed("640", 2)
    assert bearings.adjusted_life(1000.0, bearings.reliability_factor(0.9)) == exactly(1000.0)
