"""Safe-side ends are the worst together, not only one by one."""

from __future__ import annotations

import math
from itertools import product

import numpy as np
import pytest

from mountlimit import evaluate, limits, safe_side
from mountlimit.cards import folder
from mountlimit.drivefile import read
from mountlimit.resolve import resolve

# Invented drives in which an end that eases a part alone raises it once the others stand at theirs.
TOGETHER = [
    ("log_carrier", "running_alignment", "continuous"),
    ("turf_roller", "running_alignment", "continuous"),
    ("willow_stripper", "running_alignment", "continuous"),
    ("clay_pug", "front_bearing", "safe"),
]


def limit_of(found, name, level):
    kind = "continuous" if level == "continuous" else "peak setting"
    return next(x for x in found.limits if x.check.name == name and x.current_kind == kind)


def used(found, limit, level, corner, current):
    drive = resolve(found.file, corner)
    curve = evaluate.curves(drive, np.array([current]), [limit.check.name])[limit.check.name]
    return float(getattr(curve, level)[0]) * limit.factor


@pytest.mark.parametrize(("drive", "name", "level"), TOGETHER)
def test_no_set_of_ends_uses_more_at_the_safe_current(drive, name, level):
    """Every set of ends of the inputs that matter most, at the safe current or next to none."""
    found = limits.find(read(str(folder("examples") / f"{drive}.toml")), [name])
    limit = limit_of(found, name, level)
    current = limit.safe if limit.safe > 0 else 1e-3
    base = used(found, limit, level, limit.corner, current)
    assert base >= 1 - 1e-6
    ranges = [r for r in found.drive.ranges if r.low < r.high]
    moved = {
        r.key: max(
            abs(math.log(used(found, limit, level, {**limit.corner, r.key: v}, current) / base))
            for v in (r.low, r.high)
        )
        for r in ranges
    }
    chosen = sorted(ranges, key=lambda r: -moved[r.key])[:7]
    for values in product(*((r.low, r.high) for r in chosen)):
        corner = {**limit.corner, **dict(zip((r.key for r in chosen), values, strict=True))}
        assert used(found, limit, level, corner, current) < base * (1 + 1e-3), corner


@pytest.mark.parametrize(("drive", "name", "level"), TOGETHER)
def test_ends_taken_one_by_one_would_have_been_too_good(drive, name, level, monkeypatch):
    """The second look lowers these limits, and raises none."""
    file = read(str(folder("examples") / f"{drive}.toml"))
    together = limit_of(limits.find(file, [name]), name, level)
    monkeypatch.setattr(safe_side, "FLIPS", 1)
    alone = limit_of(limits.find(file, [name]), name, level)
    assert together.safe < 0.999 * alone.safe
    assert together.ends != alone.ends
