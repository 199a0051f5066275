"""How sure: bands of the giving and the safe current, what is first how often, what to measure next."""

from __future__ import annotations

import difflib
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from . import limits, sampling, trials
from .case import Check
from .checks import BY_NAME
from .drivefile import DriveFile
from .errors import UnknownCard
from .limits import Found
from .model import Array, Range
from .sampling import Samples
from .stand_in import StandIn
from .trials import Verdict

BAND = (0.05, 0.5, 0.95)
BINS = 10
BATCHES = 10
SHRUNK = (0.01, 0.1, 1.0)  # shares of the samples at which the band is looked at again


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """5, 50 and 95 of 100 samples, A; infinity where nothing gives below the largest current."""

    low: float
    middle: float
    high: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """One part: where it gives, and how often it is the first."""

    check: Check
    gives: Band
    first: float  # share of the samples
    error: float  # of the stand-in, root mean square, over the limit
    worst: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """What knowing one input exactly would do to the band of what gives first."""

    range: Range
    left: float  # width of the band on the logarithm, over the width now; expected
    at_low: Band  # with the input in the lowest tenth of its spread
    at_high: Band


@dataclass(frozen=True, slots=True, kw_only=True)
class Settled:
    """The band with fewer samples, to see that it has settled."""

    samples: int
    gives: Band


@dataclass(frozen=True, slots=True, kw_only=True)
class Sure:
    """The whole answer."""

    found: Found
    part: str  # the check that ``gives`` and ``measures`` speak of; "" for whatever gives first
    samples: int
    effective: float  # samples that still count after the trials
    seed: int
    gives: Band
    gives_error: tuple[float, float]  # of the 5 and the 95 of 100, one standard deviation, A
    safe: Band
    under_stated: float  # share of samples whose safe current is under the one `check` states
    under_set: float  # share in which something gives at or below the set current
    under_wanted: float | None
    parts: tuple[Part, ...]  # by chance of being first
    measures: tuple[Measure, ...]
    settled: tuple[Settled, ...]
    verdict: Verdict
    before: Band  # what gives first, before the trials
    runs: int
    refused: int
    stand_ins: tuple[StandIn, ...]


def sure(
    file: DriveFile, count: int = sampling.SAMPLES, seed: int = sampling.SEED, part: str = ""
) -> Sure:
    """Answer for a drive file, of what gives first or of one part (the name of a check).

    More samples are taken than asked for where trials leave too few that agree with them.

    Raises
    ------
    InputError
        as ``resolve``.
    UnknownCard
        for a part that does not give on this drive.
    """
    found = limits.find(file)
    trials.refuse_unknown(file.name, found.drive.trials)
    tried = sampling.tried(found, seed)
    while True:
        taken = sampling.drawn(tried, count, seed)
        answer = of(found, taken, part)
        if not answer.verdict.starved or count >= sampling.MOST_SAMPLES:
            return answer
        count = min(10 * count, sampling.MOST_SAMPLES)


def of(found: Found, taken: Samples, part: str = "") -> Sure:
    """Read the answer off the samples."""
    verdict = trials.weigh(found.drive.trials, taken)
    first, weight = _of_part(taken, part) if part else taken.first_gives, verdict.weights
    now = band(first, weight)
    current = found.drive.current
    return Sure(
        found=found, part=part, samples=len(first), effective=verdict.effective, seed=taken.seed, gives=now,
        gives_error=_sampling_error(first, weight), safe=band(np.asarray(taken.safe, float), weight),
        under_stated=_share(taken.safe < found.first_safe.safe * (1 - 1e-6), weight),
        under_set=_share(first <= float(current.set), weight),
        under_wanted=None if current.wanted is None else _share(first <= float(current.wanted), weight),
        parts=_parts(taken, weight), measures=_measures(taken, first, weight, now),
        settled=tuple(_settled(first, weight, s) for s in SHRUNK), verdict=verdict,
        before=band(first, np.ones(len(first))), runs=taken.runs, refused=taken.refused,
        stand_ins=tuple(taken.stand_ins.values()),
    )  # fmt: skip


def band(values: Array, weight: Array) -> Band:
    """Give 5, 50 and 95 of 100 of weighted samples."""
    low, middle, high = quantiles(values, weight, BAND)
    return Band(low=low, middle=middle, high=high)


def quantiles(values: Array, weight: Array, shares: tuple[float, ...]) -> list[float]:
    """Give weighted quantiles: the first value at which the weight so far reaches each share."""
    order = np.argsort(values, kind="stable")
    reached = np.cumsum(weight[order])
    at = np.searchsorted(reached, np.array(shares) * reached[-1])
    return [float(values[order[min(int(i), len(order) - 1)]]) for i in at]


def _share(these: NDArray[np.bool_], weight: Array) -> float:
    return float(weight[these].sum() / weight.sum())


def _sampling_error(first: Array, weight: Array) -> tuple[float, float]:
    """Give the standard deviation of both ends of the band, from batches."""
    ends = [
        quantiles(first[k::BATCHES], weight[k::BATCHES], (BAND[0], BAND[2])) for k in range(BATCHES)
    ]
    with np.errstate(invalid="ignore"):
        low, high = np.std(np.array(ends), axis=0, ddof=1) / np.sqrt(BATCHES)
    return float(low), float(high)


def _of_part(taken: Samples, part: str) -> Array:
    if part not in taken.parts:
        near = difflib.get_close_matches(part, taken.parts, 1, 0.5) or taken.parts
        raise UnknownCard("part that gives on this drive", part, near)
    return np.asarray(taken.gives[:, taken.parts.index(part)], float)


def _parts(taken: Samples, weight: Array) -> tuple[Part, ...]:
    first, found = taken.first_gives, []
    for k, name in enumerate(taken.parts):
        own = np.asarray(taken.gives[:, k], float)
        models = [
            m for (n, level, _), m in taken.stand_ins.items() if (n, level) == (name, "gives")
        ]
        found.append(
            Part(
                check=BY_NAME[name], gives=band(own, weight),
                first=_share((own <= first) & np.isfinite(own), weight),
                error=max(m.error for m in models), worst=max(m.worst for m in models),
            )
        )  # fmt: skip
    return tuple(sorted(found, key=lambda p: (-p.first, p.gives.middle)))


def _width(found: Band, reach: float) -> float:
    low, high = (min(max(v, 1e-6 * reach), reach) for v in (found.low, found.high))
    return float(np.log(high / low))


def _measures(taken: Samples, first: Array, weight: Array, now: Band) -> tuple[Measure, ...]:
    """Give each input's share of the band: the band left when it is known, averaged over its spread."""
    wide = _width(now, taken.reach)
    found = []
    for k, spread in enumerate(taken.spreads):
        groups = _groups(np.asarray(taken.values[:, k], float), weight)
        bands = [band(first[g], weight[g]) for g in groups]
        shares = np.array([weight[g].sum() for g in groups])
        left = float(np.dot([_width(b, taken.reach) for b in bands], shares) / shares.sum())
        found.append(
            Measure(
                range=spread.range,
                left=left / wide if wide > 0 else 1.0,
                at_low=bands[0],
                at_high=bands[-1],
            )
        )
    return tuple(sorted(found, key=lambda m: m.left))


def _groups(values: Array, weight: Array) -> list[NDArray[np.intp]]:
    """Split samples into tenths of an input's spread; the values of an input with steps one by one."""
    steps = np.unique(values)
    if len(steps) <= BINS:
        return [np.flatnonzero(values == v) for v in steps]
    edges = quantiles(values, weight, tuple(np.arange(1, BINS) / BINS))
    which = np.searchsorted(edges, values)
    groups = [np.flatnonzero(which == b) for b in range(BINS)]
    return [g for g in groups if weight[g].sum() > 0]


def _settled(first: Array, weight: Array, share: float) -> Settled:
    count = max(int(share * len(first)), 1)
    return Settled(samples=count, gives=band(first[:count], weight[:count]))
