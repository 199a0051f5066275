"""A limit is the first current that uses a part up."""

from __future__ import annotations

import math

import numpy as np
from hypothesis import given
from invariant_kit import depth, drawn, file_of, looked, numbers

from mountlimit import evaluate, limits
from mountlimit.resolve import resolve

DENSE = 1500
BELOW = 1e-6  # of the limit: the grid stops short of it by this much


def used(drive, name: str, level: str, currents: np.ndarray) -> np.ndarray:
    return getattr(evaluate.curves(drive, currents, [name])[name], level)


@given(numbers)
@depth(ordinary=2, deep=8)
def test_no_current_below_a_limit_uses_the_part_up(number):
    """On 1500 currents below it the share stays under 1; at it, it is 1 or steps over it."""
    found = limits.find(file_of(drawn(number)))
    likely = found.drive
    for limit in found.limits:
        level = "continuous" if limit.current_kind == "continuous" else "safe"
        name = limit.check.name
        worst = resolve(found.file, dict(limit.corner))
        ways = [(limit.safe, worst, level, limit.factor)]
        if limit.gives is not None:
            ways.append((limit.gives, likely, "gives", 1.0))
        for current, drive, which, factor in ways:
            top = limit.reach if math.isinf(current) else current * (1 - BELOW)
            if top == 0.0:
                assert used(drive, name, which, np.array([0.0]))[0] * factor >= 1 - BELOW
                continue
            grid = np.r_[np.geomspace(1e-4 * top, top, DENSE // 2), np.linspace(0, top, DENSE // 2)]
            share = used(drive, name, which, grid) * factor
            looked("share used below a limit", float(np.max(share)), len(grid))
            assert np.max(share) < 1.0, (name, which, current, grid[np.argmax(share)])
            if math.isfinite(current):
                around = used(drive, name, which, current * np.array([1.0, 1 + BELOW])) * factor
                off = abs(around[0] - 1)
                stepped = around[1] >= 1.0  # jumps past 1 there
                looked("share used at a limit, off 1", float(0 if stepped and off > BELOW else off))
                assert off < BELOW or stepped, (name, which, around)
