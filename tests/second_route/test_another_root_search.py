"""Limits by another search: TOMS 748 and plain halving on fresh runs of the pipeline, on every example.

``limits.find`` looks at 64 currents and refines by Brent's method.  Here each current is a run of its own,
the first crossing is looked for on a grid of other currents, and the root by other methods.
"""

from __future__ import annotations

import json
import math
from pathlib import Path

import numpy as np
import pytest
from scipy.optimize import toms748
from second_kit import told

from mountlimit import cards, drivefile, evaluate, limits
from mountlimit.resolve import resolve

EXAMPLES = sorted(p.stem for p in Path(cards.folder("examples")).glob("*.toml"))
CHEAP = ("hay_elevator",)
RESULTS = Path(__file__).parent / "second_results.json"
SAME = 1e-7


def used(drive, name: str, level: str, factor: float, current: float) -> float:
    curve = evaluate.curves(drive, np.array([current]), [name])[name]
    return float(getattr(curve, level)[0]) * factor


def first_grid(
    drive, name: str, level: str, factor: float, reach: float
) -> tuple[float, float] | None:
    """Give the piece of an even-ratio grid of 301 currents that holds the first crossing."""
    grid = np.r_[0.0, np.geomspace(2e-4 * reach, reach, 300)]
    share = getattr(evaluate.curves(drive, grid, [name])[name], level) * factor
    over = np.flatnonzero(share >= 1.0)
    if over.size == 0:
        return None
    i = int(over[0])
    return (0.0, 0.0) if i == 0 else (float(grid[i - 1]), float(grid[i]))


def halved(f, low: float, high: float) -> float:
    while high - low > 1e-12 * high:
        middle = 0.5 * (low + high)
        low, high = (middle, high) if f(middle) < 0 else (low, middle)
    return high


def compared(name: str, route: str | None = None) -> None:
    """Compare every limit of an example."""
    file = drivefile.read(cards.folder("examples") / f"{name}.toml")
    if route:
        file = file.edited(mount__route=route)
    found = limits.find(file)
    for limit in found.limits:
        level = "continuous" if limit.current_kind == "continuous" else "safe"
        asked = [(limit.safe, resolve(found.file, dict(limit.corner)), level, limit.factor)]
        if limit.gives is not None:
            asked.append((limit.gives, found.drive, "gives", 1.0))
        for ours, drive, which, factor in asked:
            piece = first_grid(drive, limit.check.name, which, factor, limit.reach)
            if piece is None:
                assert math.isinf(ours), (limit.check.name, which)
                continue
            if piece == (0.0, 0.0):
                assert ours == 0.0, (limit.check.name, which)
                continue

            def over(current: float, _at=(drive, limit.check.name, which, factor)) -> float:
                return min(used(*_at, current), 1e6) - 1.0

            if over(piece[0]) >= 0:  # more places are looked at for one current than for a grid
                piece = (0.0, piece[0])
            theirs = float(toms748(over, *piece, xtol=1e-12 * piece[1], rtol=1e-13))
            plain = halved(over, *piece)
            apart = abs(ours - theirs) / theirs
            told(f"limits, {'beams' if route else 'all routes'}", apart)
            told("halving against TOMS 748", abs(plain / theirs - 1))
            assert apart < SAME, (limit.check.name, which, ours, theirs)


@pytest.mark.parametrize("name", CHEAP)
def test_cheap_examples(name):
    compared(name, "sections")


def deep() -> None:
    """Every example as it stands; run by ``second_run.py``."""
    for name in EXAMPLES:
        compared(name)


def test_the_deep_run():
    """What ``second_run.py`` wrote: every comparison there, none failed, every example's limits among them."""
    result = json.loads(RESULTS.read_text())
    assert result["failed"] == []
    assert result["looked"]["limits, all routes"]["cases"] > 10 * len(EXAMPLES)
    assert result["examples"] == EXAMPLES
