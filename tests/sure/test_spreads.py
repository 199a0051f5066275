"""Spreads of the uncertain inputs, against scipy.stats."""

from __future__ import annotations

import numpy as np
import pytest
from scipy import stats

from mountlimit.model import Range
from mountlimit.spreads import correlation, draw, spreads_of


def a_range(key="x", low=1.0, likely=1.2, high=1.9):
    return Range(key=key, low=low, likely=likely, high=high, source="", kind="ratio")


@pytest.mark.parametrize(
    ("low", "likely", "high"), [(1, 1.2, 1.9), (-3, 0, 1), (5, 5, 8), (0, 2, 2)]
)
def test_triangular(low, likely, high):
    """Between ends less than twice apart the number itself is triangular (Kolmogorov-Smirnov)."""
    (spread,) = spreads_of([a_range(low=low, likely=likely, high=high)])
    values = draw([spread], 4000, np.random.default_rng(3))[:, 0]
    known = stats.triang((likely - low) / (high - low), loc=low, scale=high - low)
    assert stats.kstest(values, known.cdf).pvalue > 0.01
    assert values.min() >= low
    assert values.max() <= high


def test_wide_ranges_are_spread_on_the_logarithm():
    """100 to 1600 with 400 likely: the middle is 400, not 700."""
    (spread,) = spreads_of([a_range(low=100.0, likely=400.0, high=1600.0)])
    values = draw([spread], 20000, np.random.default_rng(4))[:, 0]
    known = stats.triang(0.5, loc=np.log(100), scale=np.log(16))
    assert stats.kstest(np.log(values), known.cdf).pvalue > 0.01


def test_places_run_from_one_end_to_the_other():
    """-1 at the low end, 1 at the high end."""
    for spread in spreads_of([a_range(), a_range(low=10.0, likely=20.0, high=90.0)]):
        ends = np.array([spread.range.low, spread.range.high])
        assert spread.place(ends) == pytest.approx([-1.0, 1.0])


def test_inputs_of_one_cause_go_together():
    """Normal scores of yield and ultimate strength are correlated as stated, others not at all."""
    ranges = [a_range("shaft.yield_strength"), a_range("shaft.ultimate_strength"), a_range("other")]
    spreads = spreads_of(ranges)
    values = draw(spreads, 40000, np.random.default_rng(5))
    ranks = stats.spearmanr(values).statistic
    stated = correlation(spreads)
    assert ranks == pytest.approx(6 / np.pi * np.arcsin(stated / 2), abs=0.02)  # of a normal copula
    assert stated[0, 1] > 0.5


def test_steps_take_their_chances():
    """The edge of the throw criterion is 0, 1 or 2, each with its share."""
    (spread,) = spreads_of([a_range("policy.throw_level", 0.0, 1.0, 2.0)])
    values = draw([spread], 40000, np.random.default_rng(6))[:, 0]
    for value, chance in spread.steps:
        assert np.mean(values == value) == pytest.approx(chance, abs=0.01)
    assert set(values) == {0.0, 1.0, 2.0}


def test_what_has_one_value_is_no_spread():
    """low = high is a known input."""
    assert spreads_of([a_range(low=2.0, likely=2.0, high=2.0)]) == ()
