"""How often the true limit of a synthetic drive lies in the stated 90 of 100 band.

    python tests/sure/coverage_run.py --drives 100 --truths 20 --processes 2

Each base drive is a random one (``tests/random_drives``, every form, plate model).  Its band comes
from ``mountlimit.sure``.  Each of its truths is a synthetic drive: inputs drawn from the stated
spreads by the distributions of scipy.stats, the whole pipeline run at them with the plate model, and
every part's limit off by a model error of 10 per cent.  No code of the sampler or of its stand-in
takes part in a truth.  Goes on where it stopped; results in ``coverage_results.json``.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
import time
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import Any

for _name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")
HERE = Path(__file__).parent
sys.path[:0] = [
    str(HERE),
    str(HERE.parent),
    str(HERE.parent / "random_drives"),
    str(HERE.parent.parent / "src"),
]
RESULTS = HERE / "coverage_results.json"
FIRST_NUMBER = 500_000  # of the random drives: no other run looks at these


def truths(found: Any, count: int, seed: int) -> list[float]:
    """Give what gives first in each of some synthetic drives of one file, A."""
    import numpy as np

    from mountlimit.errors import MountlimitError

    chance = np.random.default_rng([seed, 77])
    ranges = [r for r in found.drive.ranges if r.low < r.high]
    out: list[float] = []
    while len(out) < count:
        try:
            out.append(_truth(found, _values(ranges, chance), chance))
        except MountlimitError:
            continue  # a draw that cannot be built, such as a hole over an edge
    return out


def _values(ranges: list[Any], chance: Any) -> dict[str, float]:
    """Draw the inputs from their stated spreads."""
    import numpy as np
    from scipy import stats

    score = {r.key: float(chance.standard_normal()) for r in ranges}
    for one, other, share in (
        ("shaft.yield_strength", "shaft.ultimate_strength", 0.8),
        ("mount.yield_strength", "mount.fatigue_strength", 0.5),
        ("second.yield_strength", "second.fatigue_strength", 0.5),
        ("fixings.preload", "motor.preload", 0.5),
        ("fixings.friction", "motor.face_friction", 0.5),
    ):
        if one in score and other in score:
            score[other] = share * score[one] + float(np.sqrt(1 - share**2)) * score[other]
    found = {}
    for r in ranges:
        share = float(stats.norm.cdf(score[r.key]))
        if r.key == "policy.throw_level":
            found[r.key] = 0.0 if share < 0.25 else (1.0 if share < 0.75 else 2.0)
            continue
        logs = r.low > 0 and r.high > 2 * r.low
        low, mode, high = (np.log(v) if logs else v for v in (r.low, r.likely, r.high))
        x = stats.triang((mode - low) / (high - low), loc=low, scale=high - low).ppf(share)
        found[r.key] = float(np.exp(x) if logs else x)
    return found


def _truth(found: Any, values: dict[str, float], chance: Any) -> float:
    import numpy as np

    from mountlimit import crossings, evaluate
    from mountlimit.resolve import resolve

    drive = resolve(found.file, values)
    currents = crossings.grid(found.reach)
    first = float("inf")
    for curve in evaluate.curves(drive, currents).values():
        if curve.check.kind == "life" or curve.gives is None:
            continue
        true = crossings.crossing(currents, curve.gives) * float(
            np.exp(0.1 * chance.standard_normal())
        )
        first = min(first, true if true <= found.reach else float("inf"))
    return first


def one(number: int, count: int) -> dict[str, Any] | None:
    """Give the band of one base drive and its truths; None where the drive is refused."""
    import draw

    from mountlimit import limits, sampling, sure
    from mountlimit.errors import InputError

    start = time.process_time()
    try:
        found = limits.find(draw.read(number))
    except InputError:
        return None
    answer = sure.of(found, sampling.take(found))
    band = answer.gives
    errors = [p.error for p in answer.parts if p.first > 0.01]
    result = {
        "number": number, "form": found.drive.mount.form, "low": band.low, "high": band.high,
        "stand_in": max(errors, default=0.0), "truths": [], "seconds": 0.0,
    }  # fmt: skip
    if band.high > 0 and band.low < found.reach:
        result["truths"] = truths(found, count, number)
    result["seconds"] = round(time.process_time() - start, 2)
    return result


def covered(results: list[dict[str, Any]]) -> tuple[int, int]:
    """Give how many truths lie in their band, and how many there are."""
    inside = [r["low"] <= t <= r["high"] for r in results for t in r["truths"]]
    return sum(inside), len(inside)


def main() -> int:
    """Read the command line and run."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--drives", type=int, default=100)
    parser.add_argument("--truths", type=int, default=20)
    parser.add_argument("--processes", type=int, default=1)
    given = parser.parse_args()
    known = (
        json.loads(RESULTS.read_text())
        if RESULTS.exists()
        else {"upto": 0, "refused": 0, "drives": []}
    )
    with ProcessPoolExecutor(given.processes) as pool:
        while sum(bool(d["truths"]) for d in known["drives"]) < given.drives:
            numbers = range(
                FIRST_NUMBER + known["upto"], FIRST_NUMBER + known["upto"] + given.processes
            )
            for result in pool.map(one, numbers, [given.truths] * given.processes):
                known["refused"] += result is None
                known["drives"] += [result] if result else []
            known["upto"] += given.processes
            inside, count = covered(known["drives"])
            known |= {"inside": inside, "count": count}
            RESULTS.write_text(json.dumps(known, indent=1) + "\n")
            print(f"{len(known['drives'])} drives: {inside} of {count} inside", flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main())
