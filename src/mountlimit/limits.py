"""The motor current at which each check is used up: safe to, gives at, and how sure.

*Safe to* takes, for each uncertain input, the end of its range that raises this check's
utilisation, and the design factor on top.  *Gives at* takes the likely values and factor 1.  The
band of *gives at* puts the effects of the inputs together as independent (root of the sum of
squares of their effects on the logarithm of the limit).  The first crossing of 1 counts.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from . import evaluate, units
from .case import Check
from .crossings import crossing, grid, refine
from .drivefile import DriveFile
from .evaluate import Curve
from .model import Array, Drive, Range
from .plate_route import with_plates
from .resolve import resolve
from .safe_side import Ends, Worst, ends_of, worst

REACH = 10.0  # times the largest current asked about


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """One limit in motor current; infinity means not reached below ``reach``."""

    check: Check
    current_kind: str  # "peak setting" or "continuous"
    safe: float
    gives: float | None
    gives_low: float | None
    gives_high: float | None
    factor: float
    factor_source: str
    ends: Mapping[str, str]  # "low" or "high" for each uncertain input that the safe current takes
    corner: Mapping[str, float]  # the same as values
    reach: float
    why_not: str = ""  # why a limit is not reached, or is used up before any current

    @property
    def counts(self) -> bool:
        """Whether it forms the safe current: peak setting, and not a matter of life."""
        return self.current_kind == "peak setting" and self.check.kind != "life"


@dataclass(frozen=True, slots=True, kw_only=True)
class Effect:
    """What one uncertain input does to each limit: the limit with the input low and high."""

    range: Range
    low: Mapping[str, float]
    high: Mapping[str, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """All limits of a drive, and the effects of its uncertain inputs."""

    file: DriveFile  # with the plate model behind it where there is one
    drive: Drive
    limits: tuple[Limit, ...]
    effects: tuple[Effect, ...]
    reach: float
    balance: float

    @property
    def first_safe(self) -> Limit:
        """The limit that forms the safe current."""
        return min((x for x in self.limits if x.counts), key=lambda x: x.safe)

    @property
    def first_gives(self) -> Limit | None:
        """What gives first; None when nothing does below ``reach``."""
        giving = [(x.gives, x) for x in self.limits if x.counts and x.gives is not None]
        return min(
            (g for g in giving if math.isfinite(g[0])), key=lambda g: g[0], default=(0, None)
        )[1]


def reach_of(drive: Drive) -> float:
    """Give the largest current looked at."""
    asked = [drive.current.set, drive.current.wanted or 0.0, drive.current.continuous or 0.0]
    return REACH * float(max(asked))


def find(file: DriveFile, only: list[str] | None = None) -> Found:
    """Find every limit of a drive file, or those named. Raises ``InputError`` as ``resolve``."""
    file = with_plates(file)
    drive = resolve(file)
    reach = reach_of(drive)
    currents = grid(reach)
    likely = evaluate.curves(drive, currents, only)
    variants = {
        r.key: ends_of(file, r, currents, only=only) for r in drive.ranges if r.low < r.high
    }
    found = [
        _limit(file, drive, curve, level, variants, currents, reach)
        for curve in likely.values()
        for level in ("continuous", "safe")
        if getattr(curve, level) is not None
    ]
    effects = tuple(
        Effect(range=e.range, low=_at(e.low, currents, drive), high=_at(e.high, currents, drive))
        for e in variants.values()
    )
    found.sort(key=_order)
    return Found(
        file=file, drive=drive, limits=tuple(found), effects=effects, reach=reach,
        balance=float(np.max(evaluate.case_at(drive, currents).response.balance)),
    )  # fmt: skip


def _order(limit: Limit) -> tuple[bool, bool, float]:
    return (not limit.counts, limit.current_kind != "peak setting", limit.safe)


def _at(curves: Mapping[str, Curve], currents: Array, drive: Drive) -> dict[str, float]:
    """Give each check's safe limit (design factor in), between samples."""
    found = {}
    for name, curve in curves.items():
        u = curve.safe if curve.safe is not None else curve.continuous
        if u is not None:
            found[name] = crossing(currents, u * evaluate.design_factor(curve.check, drive)[0])
    return found


def _limit(
    file: DriveFile, drive: Drive, curve: Curve, level: str, variants: Mapping[str, Ends],
    currents: Array, reach: float,
) -> Limit:  # fmt: skip
    name = curve.check.name
    factor, source = evaluate.design_factor(curve.check, drive)
    at = worst(file, drive, curve, level, variants, currents)
    gives = low = high = None
    if level == "safe" and curve.gives is not None:
        gives = refine(drive, curve.check, "gives", currents, curve.gives, 1.0)
        low, high = band(gives, spread(name, variants, currents), reach)
    return Limit(
        check=curve.check, current_kind="continuous" if level == "continuous" else "peak setting",
        safe=at.safe, gives=gives, gives_low=low, gives_high=high, factor=factor,
        factor_source=source, ends=at.ends, corner=at.corner, reach=reach,
        why_not=_why_not(drive, curve.check, at, reach),
    )  # fmt: skip


def spread(name: str, variants: Mapping[str, Ends], currents: Array) -> list[tuple[float, float]]:
    """Give each input's pair of gives-at limits for one check."""
    found = []
    for ends in variants.values():
        curves = [c[name].gives for c in (ends.low, ends.high) if name in c]
        if len(curves) == 2 and curves[0] is not None and curves[1] is not None:
            found.append((crossing(currents, curves[0]), crossing(currents, curves[1])))
    return found


def band(gives: float, pairs: list[tuple[float, float]], reach: float) -> tuple[float, float]:
    """Give the low-high band of a limit from one-at-a-time effects taken as independent."""
    if not math.isfinite(gives) or gives <= 0:
        lowest = min([gives, *(min(p) for p in pairs)])
        return lowest, gives
    down = up = 0.0
    for pair in pairs:
        low, high = (max(min(p, 10 * reach), 1e-6 * gives) for p in (min(pair), max(pair)))
        down += min(math.log(low / gives), 0.0) ** 2
        up += max(math.log(high / gives), 0.0) ** 2
    return gives * math.exp(-math.sqrt(down)), gives * math.exp(math.sqrt(up))


# What uses a part up without any current.
THERE = {
    "chain line": "out of line as built, bearing play, a slack or worn chain",
    "clamped tube": "the pull of the clamp's own bolts",
}
THERE_ELSE = "weight, pull of the slack chain, knocks"
KNOCK = "duty.bump"


def _why_not(drive: Drive, check: Check, at: Worst, reach: float) -> str:
    if at.safe == 0.0:
        there = THERE.get(check.part, THERE_ELSE)
        if KNOCK in at.corner and check.part not in THERE:
            there += f", taken as {units.show(at.corner[KNOCK], 'acceleration')}: {KNOCK}"
        if drive.policy.jam and check.meets_a_jam:
            there += ", a dead stop from motor.speed"
        return (
            f"used up before any current by what is there without it ({there}); measure those first"
        )
    if math.isinf(at.safe):
        share = 100 * float(at.used[-1])
        return (
            f"not reached below {reach:.0f} A: {share:.0f} % used there"
            if share >= 0.5
            else (f"not reached below {reach:.0f} A: hardly anything used there")
        )
    return ""
