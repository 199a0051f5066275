"""A stand-in for the pipeline: a second-degree polynomial of the uncertain inputs, with its error.

What is fitted is the logarithm of a check's utilisation at a few currents round its limit, over the
places of the inputs between their ends (-1 to 1).  The error is found by leaving each of the drives
it was fitted to out in turn, and is of the limit itself, in amperes over amperes.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from .model import Array

LEAST = 1e-12  # utilisation taken for nothing
RIDGE = 1e-9
EACH_FIT = 3.0  # drives run for each term fitted, at least
MOVES = 1e-4  # of the utilisation: an input that moves it less is left out
MOST_CURRENTS = 14


@dataclass(frozen=True, slots=True, kw_only=True)
class StandIn:
    """The polynomial of one check: utilisation at ``currents`` for any places of the inputs."""

    currents: Array  # (k,)
    active: NDArray[np.intp]  # inputs that move it, those that move it most first
    within: tuple[float, float]  # lowest and highest current that was looked at, A
    crossed: int  # of them, how many also count in products
    coefficients: Array  # (terms, k)
    error: float  # root mean square of the logarithm of its limit, each drive left out in turn
    worst: float  # largest of the same
    missed: float  # share of drives for which it says "reached" wrongly, or misses it

    def limits(self, places: Array) -> Array:
        """Give the first crossing of 1 for places (n, inputs), in A.

        0 below the lowest current looked at, infinity above the highest, as the pipeline's.
        """
        logs = terms(places[:, self.active], self.crossed) @ self.coefficients
        return _reaching_out(crossings(self.currents, logs), self.currents, logs, self.within)


def crossings(currents: Array, logs: Array) -> Array:
    """Give where each row of logarithms of utilisation (n, k) first reaches 0, between samples."""
    over = logs >= 0.0
    first = np.argmax(over, axis=1)
    reached = over[np.arange(len(logs)), first]
    rows, before = np.arange(len(logs)), np.maximum(first - 1, 0)
    low, high = logs[rows, before], logs[rows, first]
    share = np.where(first > 0, -low / np.where(high > low, high - low, 1.0), 0.0)
    steps = np.log(currents)
    found = np.exp(steps[before] + share * (steps[first] - steps[before]))
    return np.where(reached, np.where(first > 0, found, 0.0), np.inf)


def _reaching_out(found: Array, currents: Array, logs: Array, within: tuple[float, float]) -> Array:
    """Carry on past the currents of the fit, up to those that were looked at."""
    for off, (near, far), end in ((0.0, (0, 1), within[0]), (np.inf, (-1, -2), within[1])):
        if currents[near] == end:
            continue
        rows = np.flatnonzero(found == off)
        slope = (logs[rows, near] - logs[rows, far]) / np.log(currents[near] / currents[far])
        out = currents[near] * np.exp(-logs[rows, near] / np.where(slope > 0, slope, np.nan))
        inside = (out >= within[0]) & (out <= within[1])
        found[rows[inside]] = out[inside]
    return found


def terms(places: Array, crossed: int) -> Array:
    """Give the terms of the polynomial, shape (n, terms): 1, each place, its square, products."""
    count = places.shape[1]
    parts = [np.ones((len(places), 1)), places, places**2]
    parts += [
        places[:, i : i + 1] * places[:, i + 1 : crossed] for i in range(min(crossed, count) - 1)
    ]
    return np.hstack(parts)


def fit(currents: Array, used: Array, places: Array, ends: int) -> StandIn | None:
    """Fit one check to the drives that were run; None where none of them reaches 1.

    Parameters
    ----------
    currents : shape (k,)
    used : utilisation, shape (runs, k); the first run is the likely drive, then come ``ends``
        runs with one input at an end, then drives drawn at random
    places : shape (runs, inputs)
    """
    logs = np.log(np.maximum(np.nan_to_num(used, nan=np.inf, posinf=1e12), LEAST))
    kept = _round_the_limits(logs)
    if kept is None:
        return None
    within = (float(currents[0]), float(currents[-1]))
    logs, currents = logs[:, kept], currents[kept]
    effect = _effects(logs, places, ends)
    active = np.flatnonzero(effect > MOVES)
    active = active[np.argsort(-effect[active])]
    crossed = _products(len(active), len(logs))
    rows = terms(places[:, active], crossed)
    inverse = np.linalg.inv(rows.T @ rows + RIDGE * len(rows) * np.eye(rows.shape[1]))
    coefficients = inverse @ rows.T @ logs
    alone = (
        logs - (logs - rows @ coefficients) / (1 - np.sum((rows @ inverse) * rows, axis=1))[:, None]
    )
    drawn = slice(1 + ends, None)
    true, found = (
        _reaching_out(crossings(currents, x[drawn]), currents, x[drawn], within)
        for x in (logs, alone)
    )
    error, worst, missed = _errors(true, found)
    return StandIn(
        within=within,
        currents=currents, active=active, crossed=crossed, coefficients=coefficients,
        error=error, worst=worst, missed=missed,
    )  # fmt: skip


def _round_the_limits(logs: Array) -> NDArray[np.intp] | None:
    """Pick the currents round the limits of all runs; None where no run reaches one."""
    over = logs >= 0.0
    reached = over.any(axis=1)
    if not reached.any():
        return None
    first = np.argmax(over[reached], axis=1)
    last = logs.shape[1] - 1
    low = max(int(first.min()) - 2, 0)
    high = last if not reached.all() else min(int(first.max()) + 1, last)
    if high == low:
        high = min(low + 1, last)
    return np.unique(
        np.linspace(low, high, min(MOST_CURRENTS, high - low + 1)).round().astype(np.intp)
    )


def _effects(logs: Array, places: Array, ends: int) -> Array:
    """Give how far each input alone moves the utilisation, from the runs with one input at an end."""
    moved = np.abs(logs[1 : 1 + ends] - logs[0]).max(axis=1)
    turned = places[1 : 1 + ends] != places[0]
    return np.asarray(np.max(moved[:, None] * turned, axis=0, initial=0.0))


def _products(active: int, runs: int) -> int:
    """Give how many inputs may count in products with so many runs."""
    room = runs / EACH_FIT - 1 - 2 * active
    crossed = active
    while crossed > 1 and crossed * (crossed - 1) / 2 > room:
        crossed -= 1
    return crossed


def _errors(true: Array, found: Array) -> tuple[float, float, float]:
    both = np.isfinite(true) & np.isfinite(found) & (true > 0) & (found > 0)
    off = np.log(found[both] / true[both])
    wrong = (np.isinf(true) != np.isinf(found)) | ((true == 0) != (found == 0))
    if not off.size:
        return 0.0, 0.0, float(wrong.mean())
    return float(np.sqrt(np.mean(off**2))), float(np.abs(off).max()), float(wrong.mean())
