"""40 thicknesses of 3 materials, and the whole `thickness` command, over one `check`; processor time.

At most three times one check is aimed at for the 120 thicknesses; the figure of a run is noted.
"""

from __future__ import annotations

import resource
import subprocess
import sys

import pytest

from mountlimit.cards import folder

MATERIALS = ("al6061_t6", "s235", "pom_c")
SWEEP = """
import sys
import numpy as np
from mountlimit import cards, limits, quick
from mountlimit.drivefile import read
from mountlimit.thickness import with_material
from mountlimit.thinner import Sweep

file = read(sys.argv[1])
base = limits.find(file)
for name in sys.argv[2:]:
    edited = with_material(file, cards.material(name))
    sweep = Sweep(edited, quick.safe_ends(base), limits.grid(300.0), 0.05)
    assert len(sweep.points(np.geomspace(0.002, 0.049, 40))) == 40
"""


def spent(*words: str) -> float:
    """Give the processor seconds of one Python process of its own."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    done = subprocess.run([sys.executable, *words], capture_output=True)
    assert done.returncode in (0, 1), done.stderr
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


@pytest.mark.benchmark(group="thickness over check")
@pytest.mark.parametrize("what", ["120 thicknesses", "command"])
def test_thickness_over_check(benchmark, what):
    """Three materials against one check of the same drive in the same run, in turns."""
    path = str(folder("examples") / "orchard_barrow.toml")
    tried = [word for name in MATERIALS for word in ("--material", name)]
    words = ("-m", "mountlimit", "thickness", path, "--for", "30A", *tried)
    if what != "command":
        words = ("-c", SWEEP, path, *MATERIALS)
    check, job = [], []

    def both() -> None:
        check.append(spent("-m", "mountlimit", "check", path))
        job.append(spent(*words))

    benchmark.pedantic(both, rounds=3)
    ratio = min(job) / min(check)
    benchmark.extra_info["over one check"] = round(ratio, 2)
    print(f"\n{what} over check: {ratio:.2f} ({min(check):.2f} s for the check)")
