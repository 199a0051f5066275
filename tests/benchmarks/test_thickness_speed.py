"""`thickness` with three materials and their stock thicknesses, over one `check`: whole processes.

At most three times one check is aimed at; the figure of a run is printed and noted.
"""

from __future__ import annotations

import subprocess
import sys
import time

import pytest

from mountlimit.cards import folder

MATERIALS = ("al6061_t6", "s235", "pom_c")


def timed(*words: str) -> float:
    """Give the seconds of one command as a process of its own."""
    began = time.perf_counter()
    done = subprocess.run([sys.executable, "-m", "mountlimit", *words], capture_output=True)
    assert done.returncode in (0, 1), done.stderr
    return time.perf_counter() - began


@pytest.mark.benchmark(group="thickness over check")
def test_thickness_over_check(benchmark):
    """Three materials against one check of the same drive in the same run."""
    path = str(folder("examples") / "orchard_barrow.toml")
    tried = [word for name in MATERIALS for word in ("--material", name)]
    check = min(timed("check", path) for _ in range(3))
    benchmark.pedantic(timed, ("thickness", path, "--for", "30A", *tried), rounds=3)
    ratio = benchmark.stats.stats.min / check
    benchmark.extra_info["over one check"] = round(ratio, 1)
    print(f"\nthickness over check: {ratio:.1f} ({check:.2f} s for the check)")
