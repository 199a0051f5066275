"""Samples of the whole answer: each check's limit at values of the inputs drawn at random.

The pipeline is run at a few hundred sets of values (``runs``); a polynomial fitted to them
(``stand_in``) answers for the samples, and its error is kept beside the answer.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from . import progress, stand_in
from .checks import BY_NAME
from .crossings import grid
from .limits import Found
from .model import Array
from .runs import MINDS_THE_STEP, THROW, Columns, Key, Runs, run
from .spreads import Spread, draw, spreads_of
from .stand_in import StandIn

RUNS = 150  # drives drawn for the fit, beside likely and ends
SAMPLES = 10_000
MOST_SAMPLES = 1_000_000
SEED = 20_000
CHUNK = 20_000
# Relative, one standard deviation of the logarithm: solid elements against the plate model, and
# worked examples, within about a tenth (tests/solid); the design factor carries it in *safe to*.
MODEL_ERROR = 0.10

Small = NDArray[np.float32]


@dataclass(frozen=True, slots=True, kw_only=True)
class Samples:
    """Limits drawn at random; shapes (samples, ...), amperes, infinity where nothing gives."""

    spreads: tuple[Spread, ...]
    values: Small  # (samples, inputs), SI
    parts: tuple[str, ...]  # checks that give below the largest current in some sample
    gives: Small  # (samples, parts), model error in
    rubs: Small  # (samples,), where the chain's plates rub on the teeth, model error in
    safe: Small  # (samples,), the first safe limit, design factor in
    stand_ins: dict[Key, StandIn]
    runs: int
    refused: int
    reach: float
    seed: int

    @property
    def first_gives(self) -> Array:
        """What gives first in each sample, A."""
        if not self.parts:
            return np.full(len(self.values), np.inf)
        return np.asarray(self.gives.min(axis=1), float)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tried:
    """The runs of the pipeline, and the stand-ins fitted to them."""

    spreads: tuple[Spread, ...]
    runs: Runs
    stand_ins: dict[Key, StandIn]
    reach: float


def take(found: Found, count: int = SAMPLES, seed: int = SEED) -> Samples:
    """Draw ``count`` samples of a drive's limits; the same seed gives the same samples."""
    return drawn(tried(found, seed), count, seed)


def tried(found: Found, seed: int = SEED, runs: int = RUNS) -> Tried:
    """Run the pipeline for the fit, and fit every check that some run uses up."""
    spreads = spreads_of(found.drive.ranges)
    plain = tuple(s for s in spreads if not s.steps)
    done = run(found.file, plain, grid(found.reach), runs, np.random.default_rng(seed))
    models = {
        key: one
        for key, used in done.used.items()
        if (one := stand_in.fit(done.currents, used, done.places, done.ends)) is not None
    }
    return Tried(spreads=spreads, runs=done, stand_ins=models, reach=found.reach)


def drawn(tried: Tried, count: int, seed: int = SEED) -> Samples:
    """Draw samples in chunks, so that a million of them stay under a gigabyte."""
    chance = np.random.default_rng(seed + 1)
    spreads, models, reach = tried.spreads, tried.stand_ins, tried.reach
    parts, safe_parts = (_parts(models, level) for level in ("gives", "safe"))
    values = np.empty((count, len(spreads)), np.float32)
    gives = np.empty((count, len(parts)), np.float32)
    rubs, safe = (np.full(count, np.inf, np.float32) for _ in range(2))
    for start in range(0, count, CHUNK):
        progress.step("drawing samples", start, count)
        rows = slice(start, min(start + CHUNK, count))
        one = draw(spreads, rows.stop - start, chance)
        values[rows] = one
        columns, step = _columns(tried.runs.columns, spreads, one)
        for k, name in enumerate(parts):
            gives[rows, k] = _with_error(models, name, "gives", columns, step, chance)
        if (MINDS_THE_STEP, "rubs", 0) in models:
            rubs[rows] = _with_error(models, MINDS_THE_STEP, "rubs", columns, step, chance)
        gives[rows] = np.where(gives[rows] > reach, np.inf, gives[rows])
        if safe_parts:
            safe[rows] = np.min(
                [_limits(models, n, "safe", columns, step) for n in safe_parts], axis=0
            )
    progress.step("drawing samples", count, count)
    return Samples(
        spreads=spreads, values=values, parts=parts, gives=gives, rubs=rubs, safe=safe,
        stand_ins=models, runs=len(tried.runs.places), refused=tried.runs.refused, reach=reach, seed=seed,
    )  # fmt: skip


def _parts(models: dict[Key, StandIn], level: str) -> tuple[str, ...]:
    named = dict.fromkeys(name for name, at, _ in models if at == level)
    return tuple(name for name in named if BY_NAME[name].kind != "life")


def _columns(
    columns: Columns, spreads: Sequence[Spread], values: Array
) -> tuple[Array, NDArray[np.intp] | None]:
    """Give the stand-in's columns, and the place in the steps of the stepped input if there is one."""
    plain = [k for k, s in enumerate(spreads) if not s.steps]
    stepped = next((k for k, s in enumerate(spreads) if s.key == THROW), None)
    step = None
    if stepped is not None:
        steps = [v for v, _ in spreads[stepped].steps]
        step = np.asarray(np.searchsorted(steps, values[:, stepped]), np.intp)
    return columns.of(values[:, plain]), step


def _limits(
    models: dict[Key, StandIn], name: str, level: str, columns: Array, step: NDArray[np.intp] | None
) -> Array:  # fmt: skip
    """Give one check's limit in each sample; where its model has steps, of the sample's own step."""
    places = [p for n, at, p in models if (n, at) == (name, level)]
    many = step is not None and any((name, level, p) in models for p in (1, 2))
    if not many or step is None:
        return models[name, level, places[0]].limits(columns)
    found = np.full(len(columns), np.inf)
    for place in np.unique(step):
        model = models.get((name, level, int(place)))
        if model is not None:
            found[step == place] = model.limits(columns[step == place])
    return found


def _with_error(
    models: dict[Key, StandIn], name: str, level: str, columns: Array, step: NDArray[np.intp] | None,
    chance: np.random.Generator,
) -> Array:  # fmt: skip
    """Give a limit in each sample, off by the error of the model and of its stand-in."""
    limit = _limits(models, name, level, columns, step)
    off = np.hypot(MODEL_ERROR, _error(models, name, level))
    return np.asarray(limit * np.exp(off * chance.standard_normal(len(limit))))


def _error(models: dict[Key, StandIn], name: str, level: str) -> float:
    return max(m.error for (n, at, _), m in models.items() if (n, at) == (name, level))
