"""Trials: what they do to the band against closed forms, and what cannot be true together."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import integrate, stats

from conftest import changed, drive_file, toml_text
from mountlimit import sure, trials
from mountlimit.drivefile import parse
from mountlimit.errors import InputError
from mountlimit.sampling import Samples
from mountlimit.trial_entries import Trial

MIDDLE, SPREAD = 200.0, 0.3  # of an invented limit: logarithm normal


def samples(count=200_000, parts=("mount_section",)):
    chance = np.random.default_rng(8)
    gives = MIDDLE * np.exp(SPREAD * chance.standard_normal((count, len(parts))))
    return Samples(
        spreads=(), values=np.empty((count, 0), np.float32), parts=parts, gives=gives.astype(np.float32),
        rubs=np.full(count, np.inf, np.float32), safe=np.full(count, 50, np.float32),
        stand_ins={}, runs=0, refused=0, reach=2000.0, seed=0,
    )  # fmt: skip


def trial(seen, current, part=""):
    return Trial(current=current, seen=seen, part=part, note="")


def posterior_mean(agrees):
    """Mean of the logarithm of the limit after Bayes, by quadrature over its normal prior."""
    prior = stats.norm(math.log(MIDDLE), SPREAD)
    low, high = prior.ppf(1e-9), prior.ppf(1 - 1e-9)
    total = integrate.quad(lambda x: prior.pdf(x) * agrees(x), low, high, limit=200)[0]
    return integrate.quad(lambda x: x * prior.pdf(x) * agrees(x), low, high, limit=200)[0] / total


@pytest.mark.parametrize(
    ("seen", "current"), [("fine", 150.0), ("fine", 220.0), ("bent", 220.0), ("bent", 150.0)]
)
def test_one_trial_is_bayes(seen, current):
    """Weighted mean of the logarithm against quadrature, within five standard errors."""
    taken = samples()
    verdict = trials.weigh([trial(seen, current)], taken)

    def holds(x):
        return stats.norm.cdf((x - math.log(current)) / trials.KNOWN_TO)

    want = posterior_mean(holds if seen == "fine" else lambda x: 1 - holds(x))
    logs = np.log(taken.gives[:, 0].astype(float))
    found = np.average(logs, weights=verdict.weights)
    assert found == pytest.approx(want, abs=5 * SPREAD / math.sqrt(verdict.effective))
    assert not verdict.flags


def test_two_trials_close_in():
    """Fine at 180 A, bent at 220 A: the limit is between them."""
    taken = samples()
    verdict = trials.weigh([trial("fine", 180.0), trial("bent", 220.0)], taken)
    band = sure.band(taken.first_gives, verdict.weights)
    assert 170 < band.low < band.middle < band.high < 235


def test_contradictory_trials_are_told_and_not_averaged():
    """Bent at 150 A and fine at 220 A: only the one that gave counts."""
    taken = samples()
    verdict = trials.weigh([trial("bent", 150.0), trial("fine", 220.0)], taken)
    alone = trials.weigh([trial("bent", 150.0)], taken)
    assert [t.seen for t in verdict.used] == ["bent"]
    assert np.array_equal(verdict.weights, alone.weights)
    assert "fine at 220 A, although it was bent at 150 A" in verdict.flags[0]


def test_what_the_estimate_thought_hardly_possible_is_told():
    """Fine at twice the middle: about 1 in 100 or less."""
    verdict = trials.weigh([trial("fine", 430.0)], samples())
    assert "times" not in verdict.flags[0]
    assert "1 time in" in verdict.flags[0]


def test_too_few_that_agree_change_nothing():
    """Far beyond what can be: the weights stay alike and it is said."""
    verdict = trials.weigh([trial("fine", 900.0)], samples(2000))
    assert verdict.starved
    assert np.all(verdict.weights == 1)
    assert any("stays as it was" in flag for flag in verdict.flags)


def test_a_named_part_is_the_one_that_moves():
    """Two parts: the named one moves, the other stays where it was."""
    taken = samples(parts=("mount_section", "motor_shaft"))
    verdict = trials.weigh([trial("bent", 140.0, "motor_shaft")], taken)
    means = [
        np.average(np.log(taken.gives[:, k].astype(float)), weights=verdict.weights) for k in (0, 1)
    ]
    assert means[0] == pytest.approx(math.log(MIDDLE), abs=0.01)
    assert means[1] < math.log(140.0)


TRIALS = [{"current": "100 A", "seen": "fine"}]


def test_in_a_file():
    """A fine trial near the low end raises it; *safe to* stays; check says where to look."""
    plain = sure.sure(drive_file())
    at = f"{plain.gives.middle:.0f} A"
    told = sure.sure(drive_file(trial=[{"current": at, "seen": "fine"}]))
    assert told.gives.low > plain.gives.low * 1.05
    assert told.found.first_safe.safe == plain.found.first_safe.safe
    assert told.before == plain.gives


def test_an_event_inside_the_safe_limit_is_warned_of():
    """Thrown at 20 A where the file says safe to more."""
    from mountlimit.assess import assess

    answer = assess(
        drive_file(
            chain__skew="0.05 deg",
            chain__offset="0.2 mm",
            trial=[{"current": "20 A", "seen": "thrown"}],
        )
    )
    assert answer.first_safe.limit.safe > 20
    assert any("the file is not your drive" in w for w in answer.warnings)


@pytest.mark.parametrize(
    ("entry", "words"),
    [
        ({"current": "60 A", "seen": "fien"}, "did you mean 'fine'?"),
        ({"current": "60", "seen": "fine"}, "current"),
        ({"current": "-5 A", "seen": "fine"}, "more than 0 A"),
        ({"seen": "fine"}, "expected a table with current and seen"),
        ({"current": "60 A", "seen": "fine", "curent": "1 A"}, "is not a known key"),
        ({"current": "60 A", "seen": "fine", "part": "key"}, "leave it out"),
    ],
)
def test_mistakes_in_a_trial(entry, words):
    """One line each, with what was expected."""
    with pytest.raises(InputError) as caught:
        parse(toml_text(changed(trial=[entry])).encode(), "x.toml")
    (mistake,) = caught.value.mistakes
    assert mistake.key == "trial"
    assert words in str(mistake)


def test_a_trial_of_a_part_nobody_knows():
    """The nearest name is suggested."""
    with pytest.raises(InputError, match="did you mean 'motor shaft'"):
        sure.sure(
            drive_file(trial=[{"current": "60 A", "seen": "bent", "part": "motr shaft"}]), 1000
        )
