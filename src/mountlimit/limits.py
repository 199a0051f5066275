"""The motor current at which each check is used up: safe to, gives at, and how sure.

*Safe to* takes, for each uncertain input, the end of its range that raises this check's
utilisation, and the design factor on top.  *Gives at* takes the likely values and factor 1.  The
band of *gives at* puts the effects of the inputs together as independent (root of the sum of
squares of their effects on the logarithm of the limit).  The first crossing of 1 counts.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

import numpy as np

from . import evaluate, units
from .case import Check
from .drivefile import DriveFile
from .evaluate import Curve
from .model import Array, Drive, Range
from .plate_route import with_plates
from .resolve import resolve

SAMPLES = 64
LOWEST_SHARE = 1e-3  # of the largest current looked at
ROUNDING = 1e-12  # of a utilisation
TINY = 1e-300
REACH = 10.0  # times the largest current asked about

# Utilisation of every check (or those named) over the sampled values: of current, or of speed.
CurvesOf = Callable[[Drive, Array, list[str] | None], dict[str, Curve]]


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


def grid(reach: float) -> Array:
    """Give the sampled currents, closer together where they are small."""
    return np.geomspace(LOWEST_SHARE * reach, reach, SAMPLES)


def crossing(currents: Array, utilisation: Array) -> float:
    """Give the first current at which utilisation reaches 1, between samples on logarithms."""
    over = np.flatnonzero(utilisation >= 1.0)
    if over.size == 0:
        return math.inf
    i = int(over[0])
    if i == 0:
        return 0.0
    u0, u1 = max(float(utilisation[i - 1]), 1e-300), float(utilisation[i])
    if not math.isfinite(u1):
        return float(currents[i])
    share = -math.log(u0) / (math.log(u1) - math.log(u0))
    return float(currents[i - 1] * (currents[i] / currents[i - 1]) ** share)


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


@dataclass(frozen=True, slots=True)
class Ends:
    """Every check's curve with one uncertain input at its low and at its high end."""

    range: Range
    low: dict[str, Curve]
    high: dict[str, Curve]


def ends_of(
    file: DriveFile, item: Range, values: Array, curves: CurvesOf = evaluate.curves,
    only: list[str] | None = None,
) -> Ends:  # fmt: skip
    """Give every check's curve with one uncertain input at its two ends."""
    low, high = (curves(resolve(file, {item.key: v}), values, only) for v in (item.low, item.high))
    return Ends(item, low, high)


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
    ends = safe_ends(name, level, curve, variants)
    corner = corner_values(drive, ends)
    worst = resolve(file, corner)
    worst_curve = evaluate.curves(worst, currents, [name])[name]
    utilisation = getattr(worst_curve, level)
    safe = refine(worst, curve.check, level, currents, utilisation * factor, factor)
    gives = low = high = None
    if level == "safe" and curve.gives is not None:
        gives = refine(drive, curve.check, "gives", currents, curve.gives, 1.0)
        low, high = band(gives, spread(name, variants, currents), reach)
    return Limit(
        check=curve.check, current_kind="continuous" if level == "continuous" else "peak setting",
        safe=safe, gives=gives, gives_low=low, gives_high=high, factor=factor, factor_source=source,
        ends=ends, corner=corner, reach=reach, why_not=_why_not(drive, curve.check, safe, utilisation * factor, reach, corner),
    )  # fmt: skip


def safe_ends(name: str, level: str, curve: Curve, variants: Mapping[str, Ends]) -> dict[str, str]:
    """Pick, for each uncertain input, the end that raises this check's utilisation.

    That is looked for where the part is used up, and for an end that changes nothing there from there
    down: an input that speaks in another load case only, such as a knock, shows at the smaller currents
    at which that case governs.
    """
    base = getattr(curve, level)
    over = np.flatnonzero(base >= 1.0)
    at = int(over[0]) if over.size else len(base) - 1  # near where it is used up
    found = {}
    for key, ends in variants.items():
        if name not in ends.low or name not in ends.high:
            continue
        raised = {
            end: _raised(getattr(curves[name], level)[: at + 1] / np.maximum(base[: at + 1], TINY))
            for end, curves in (("low", ends.low), ("high", ends.high))
        }
        end = max(raised, key=lambda e: raised[e])
        if raised[end] > (-1, 0.0):
            found[key] = end
    return found


def _raised(ratio: Array) -> tuple[int, float]:
    """Give the last sample at which an end raises the utilisation, and how much; -1 where it never counts.

    An end that eases the part where it is used up is not taken for what it does below.
    """
    over = np.flatnonzero(ratio > 1 + ROUNDING)
    if over.size == 0 or ratio[-1] < 1 - ROUNDING:
        return -1, 0.0
    return int(over[-1]), float(ratio[over[-1]])


def corner_values(drive: Drive, ends: Mapping[str, str]) -> dict[str, float]:
    """Give the values of the named ends on a drive; inputs it does not have are left out."""
    return {r.key: getattr(r, ends[r.key]) for r in drive.ranges if r.key in ends}


def refine(
    drive: Drive, check: Check, level: str, currents: Array, utilisation: Array, factor: float,
    curves: CurvesOf = evaluate.curves,
) -> float:  # fmt: skip
    """Refine the first crossing of 1 by Brent's method on the pipeline itself."""
    from scipy.optimize import brentq

    over = np.flatnonzero(utilisation >= 1.0)
    if over.size == 0:
        return math.inf
    i = int(over[0])
    if i == 0:
        below = _utilisation(drive, check, level, 0.0, curves) * factor
        if below >= 1.0:
            return 0.0
    low = float(currents[i - 1]) if i else 0.0

    def over_one(current: float) -> float:
        return min(_utilisation(drive, check, level, current, curves) * factor, 1e6) - 1.0

    while i > 1 and over_one(low) >= 0.0:  # the search looked at fewer places than are there
        i -= 1
        low = float(currents[i - 1])
    return float(brentq(over_one, low, float(currents[i]), xtol=1e-9 * currents[i], rtol=1e-10))


def _utilisation(drive: Drive, check: Check, level: str, value: float, curves: CurvesOf) -> float:
    curve = curves(drive, np.array([value]), [check.name])[check.name]
    return float(getattr(curve, level)[0])


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


def _why_not(
    drive: Drive, check: Check, safe: float, utilisation: Array, reach: float,
    corner: Mapping[str, float],
) -> str:  # fmt: skip
    if safe == 0.0:
        there = THERE.get(check.part, THERE_ELSE)
        if KNOCK in corner and check.part not in THERE:
            there += f", taken as {units.show(corner[KNOCK], 'acceleration')}: {KNOCK}"
        if drive.policy.jam and check.meets_a_jam:
            there += ", a dead stop from motor.speed"
        return (
            f"used up before any current by what is there without it ({there}); measure those first"
        )
    if math.isinf(safe):
        share = 100 * float(utilisation[-1])
        return (
            f"not reached below {reach:.0f} A: {share:.0f} % used there"
            if share >= 0.5
            else (f"not reached below {reach:.0f} A: hardly anything used there")
        )
    return ""
