"""Sampling as ratios within one run: samples against one check, growth with their number."""

from __future__ import annotations

import pytest

from mountlimit import limits, sampling, sure
from mountlimit.cards import folder
from mountlimit.drivefile import read

EXAMPLE = str(folder("examples") / "orchard_barrow.toml")


@pytest.fixture(scope="module")
def found():
    return limits.find(read(EXAMPLE))


@pytest.fixture(scope="module")
def tried(found):
    return sampling.tried(found)


@pytest.mark.benchmark(group="sampling")
def test_find_all_limits(benchmark):
    """The yardstick: every limit with all uncertain inputs."""
    benchmark.pedantic(limits.find, (read(EXAMPLE),), rounds=5, warmup_rounds=1)


@pytest.mark.benchmark(group="sampling")
def test_runs_and_fit(benchmark, found):
    """The pipeline at some 200 sets of values, and the fit."""
    benchmark.pedantic(sampling.tried, (found,), rounds=3)


@pytest.mark.benchmark(group="sampling")
@pytest.mark.parametrize("count", [10_000, 100_000, 1_000_000])
def test_samples(benchmark, found, tried, count):
    """Samples and everything read off them."""
    benchmark.pedantic(lambda: sure.of(found, sampling.drawn(tried, count)), rounds=1)
