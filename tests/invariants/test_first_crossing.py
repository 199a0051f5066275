"""A limit is the first current that uses a part up, and no drive within its ranges is used up sooner."""

from __future__ import annotations

import math
from random import Random

import numpy as np
from hypothesis import example, given
from invariant_kit import depth, drawn, file_of, looked, numbers

from mountlimit import evaluate, limits
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

DENSE = 1500
BELOW = 1e-6  # of the limit: the grid stops short of it by this much
INSIDE = 1e-3


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


@given(numbers)
@example(99_999_998)  # a knock that governs at the safe current only
@example(62_366_125)  # a gap whose other end counts once the rest stand at theirs
@depth(ordinary=2, deep=8)
def test_no_inputs_within_their_ranges_use_more_than_the_safe_ends(number):
    """At a safe current, twenty draws of the uncertain inputs: none uses its check up."""
    found = limits.find(file_of(drawn(number)))
    chance = Random(number)
    kept = [x for x in found.limits if math.isfinite(x.safe) and x.safe > 0]
    for _ in range(20):
        ends = {r.key: chance.choice((r.low, r.high, r.likely, chance.uniform(r.low, r.high))) for r in found.drive.ranges}  # fmt: skip
        try:
            drive = resolve(found.file, ends)
        except InputError:
            continue
        currents = np.array([x.safe for x in kept])
        if not len(currents):
            return
        curves = evaluate.curves(drive, currents)
        for i, limit in enumerate(kept):
            level = "continuous" if limit.current_kind == "continuous" else "safe"
            if limit.check.name not in curves:
                continue
            each = getattr(curves[limit.check.name], level)
            if each is None:
                continue
            over = float(each[i] * limit.factor - 1)
            looked("over 1 at the safe current, inputs within their ranges", max(over, 0.0))
            assert over < INSIDE, (limit.check.name, over, ends)
