"""ISO 281 (rating life of rolling bearings) and ISO 76 (static load).

Worked examples are those of bearing makers' catalogues (from memory); their axial factors are
put in as printed.  Tolerance: half the last printed digit unless a test says why not.
"""

import numpy as np
import pytest
from printed import printed

from mountlimit.formulas import bearings


def hours(dynamic_rating: float, load: float, revolutions_per_minute: float) -> float:
    """Rating life of a ball bearing in hours."""
    turns = bearings.rating_life_revs(dynamic_rating, load, 3.0)
    return bearings.rating_life(turns, revolutions_per_minute * 2 * np.pi / 60) / 3600


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
    assert bearings.adjusted_life(1000.0, bearings.reliability_factor(0.9)) == 1000.0


def test_static_load_of_deep_groove_bearings() -> None:
    """Computed: ISO 76, P0 = 0.6 Fr + 0.5 Fa but not under Fr. BST-01."""
    assert bearings.equivalent_static_load(1000.0, 500.0) == 1000.0
    assert bearings.equivalent_static_load(1000.0, 2000.0) == 1600.0


def test_radial_load_alone() -> None:
    """From memory (catalogue example, 6208, 3.2 kN, 650 rpm): chart 27 000 h, exactly 26 862 h."""
    life = hours(32500.0, bearings.equivalent_dynamic_load(3200.0, 0.0, 1.0, 0.0), 650)
    assert life == printed("26862")
    assert life == printed("27000", 2)


def test_radial_and_axial_load() -> None:
    """From memory (catalogue example): X 0.56, Y 1.43 or 1.44 (it prints both), 4.38 kN, 10 500 h.

    Tolerance of the life: the load is printed to three figures and enters cubed, 36 h.
    """
    load = bearings.equivalent_dynamic_load(3.2, 1.8, 0.56, 1.44)
    assert load == printed("4.38")
    assert hours(32.5, 4.38, 650) == pytest.approx(10500, abs=50 + 36)


def test_insert_bearing() -> None:
    """From memory (catalogue example, UC306): Y 1.68, 2.27 kN; machine factor 1.2, 15 800 h."""
    load = bearings.equivalent_dynamic_load(1.5, 0.85, 0.56, 1.68)
    assert load == printed("2.27")
    assert bearings.jerked_load(2.27, 1.2) == printed("2.72")
    assert hours(26.7, 2.72, 1000) == printed("15800", 3)


def test_rating_for_a_wanted_life() -> None:
    """From memory (catalogue example): 10 000 h at 8 rpm under 12 kN need 20.2 kN."""
    low, high = (hours(c, 12.0, 8) for c in (20.15, 20.25))
    assert low < 10000 < high
