"""ISO 281 (rating life of rolling bearings) and ISO 76 (static load).

The table of axial factors is from memory of ISO 281 table 3; worked examples of bearing makers'
catalogues (from memory) confirm its interpolation.  Tolerance: half the last printed digit.
"""

import pytest
from printed import printed

from mountlimit.formulas import bearings


@pytest.mark.parametrize("percent", bearings.RELIABILITY_FACTOR)
def test_reliability_factor(percent: int) -> None:
    """From memory: ISO 281:2007 table 12 against its three-parameter Weibull form.

    Tolerance 0.005, half the last printed digit.
    """
    assert bearings.reliability_factor(percent / 100) == printed(
        f"{bearings.RELIABILITY_FACTOR[percent]:.2f}"
    )


def test_reliability_table_is_that_of_2007() -> None:
    """From memory: older editions print 0.62 at 95 % and 0.21 at 99 %."""
    table = bearings.RELIABILITY_FACTOR
    assert (table[90], table[95], table[99]) == (1.0, 0.64, 0.25)
    assert bearings.adjusted_life(1000.0, table[95]) == 640.0


def test_static_load_of_deep_groove_bearings() -> None:
    """Computed: ISO 76, P0 = 0.6 Fr + 0.5 Fa but not under Fr."""
    assert bearings.equivalent_static_load(1000.0, 500.0) == 1000.0
    assert bearings.equivalent_static_load(1000.0, 2000.0) == 1600.0
    assert bearings.static_safety(2400.0, bearings.equivalent_static_load(1000.0, 2000.0)) == 1.5


def test_radial_load_alone() -> None:
    """From memory (catalogue example, 6208, 3.2 kN, 650 rpm): chart 27 000 h, exactly 26 862 h."""
    factors = bearings.load_factors(3200.0, 0.0, 0.0)
    assert factors == (1.0, 0.0)
    load = bearings.equivalent_dynamic_load(3200.0, 0.0, *factors)
    life = bearings.rating_life_hours(bearings.rating_life_revs(32500.0, load, 3.0), 650 / 60)
    assert life == printed("26862")
    assert life == printed("27000", 2)


def test_radial_and_axial_load() -> None:
    """From memory (catalogue example): f0 Fa/C0 1.42, e 0.30, Y 1.43 or 1.44 (it prints both).

    Load 4.38 kN and 10 500 h with the rounded Y.  Tolerance: Y is printed with two values 0.01
    apart, which moves the load by 0.018 kN and the life by 130 h.
    """
    relative = 14.0 * 1.8 / 17.8
    assert relative == printed("1.42")
    assert bearings.axial_limit(relative) == printed("0.30")
    x, y = bearings.load_factors(3.2, 1.8, relative)
    assert (x, y) == (0.56, pytest.approx(1.435, abs=0.01))
    load = bearings.equivalent_dynamic_load(3.2, 1.8, x, y)
    assert load == pytest.approx(4.38, abs=0.018)
    life = bearings.rating_life_hours(bearings.rating_life_revs(32.5, load, 3.0), 650 / 60)
    assert life == pytest.approx(10500, abs=130)


def test_insert_bearing() -> None:
    """From memory (catalogue example, UC306): ratio 0.754, e 0.264, Y 1.68, 2.27 kN, 15 800 h."""
    relative = 13.3 * 0.85 / 15.0
    assert relative == printed("0.754")
    assert bearings.axial_limit(relative) == printed("0.264")
    x, y = bearings.load_factors(1.5, 0.85, relative)
    assert (x, y) == (0.56, printed("1.68"))
    load = bearings.equivalent_dynamic_load(1.5, 0.85, x, y)
    assert load == printed("2.27")
    life = bearings.rating_life_hours(bearings.rating_life_revs(26.7, 2.72, 3.0), 1000 / 60)
    assert life == printed("15800", 3)


def test_rating_for_a_wanted_life() -> None:
    """From memory (catalogue example): 10 000 h at 8 rpm under 12 kN need 20.2 kN."""
    low, high = (
        bearings.rating_life_hours(bearings.rating_life_revs(c, 12.0, 3.0), 8 / 60)
        for c in (20.15, 20.25)
    )
    assert low < 10000 < high
