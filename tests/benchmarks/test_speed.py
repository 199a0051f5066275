"""Speed as ratios within one run: `pytest tests/benchmarks --benchmark-only -n 0`."""

from __future__ import annotations

import subprocess
import sys

import pytest

from mountlimit import limits
from mountlimit.cards import folder
from mountlimit.drivefile import read

EXAMPLE = str(folder("examples") / "orchard_barrow.toml")


def run(*arguments: str) -> None:
    subprocess.run([sys.executable, *arguments], capture_output=True, check=False)


@pytest.mark.benchmark(group="whole process")
def test_bare_interpreter(benchmark):
    """Starting Python and doing nothing: the yardstick."""
    benchmark(run, "-c", "pass")


@pytest.mark.benchmark(group="whole process")
def test_help(benchmark):
    """`mountlimit --help`."""
    benchmark(run, "-m", "mountlimit", "--help")


@pytest.mark.benchmark(group="whole process")
def test_check_an_example(benchmark):
    """`mountlimit check` on an example, whole process."""
    benchmark.pedantic(run, ("-m", "mountlimit", "check", EXAMPLE), rounds=5, warmup_rounds=1)


@pytest.mark.benchmark(group="inside one process")
def test_read(benchmark):
    """Reading a drive file."""
    benchmark(read, EXAMPLE)


@pytest.mark.benchmark(group="inside one process")
def test_find_all_limits(benchmark):
    """Finding every limit with all uncertain inputs, section shapes already solved."""
    file = read(EXAMPLE)
    benchmark(limits.find, file)
