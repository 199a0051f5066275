"""How an uncertain input is spread between its low and its high end, and which inputs go together.

Triangular: nothing outside low and high, most often likely.  On the logarithm where the high end is
more than twice the low one, since such an input is known by its order of size.  Inputs that count in
whole steps take each step with a set chance.  All of this is common practice with no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from .model import Array, Range

WIDE = 2.0  # high over low from which the logarithm is spread evenly instead of the number
STEPS = {"policy.throw_level": ((0.0, 0.25), (1.0, 0.5), (2.0, 0.25))}  # value, chance

# Normal-score correlation of inputs that one cause moves: common practice, no source.
TOGETHER = (
    ("shaft.yield_strength", "shaft.ultimate_strength", 0.8),  # one steel
    ("mount.yield_strength", "mount.fatigue_strength", 0.5),
    ("second.yield_strength", "second.fatigue_strength", 0.5),
    ("fixings.preload", "motor.preload", 0.5),  # one hand on the spanner
    ("fixings.friction", "motor.face_friction", 0.5),  # one shed, one can of oil
)


@dataclass(frozen=True, slots=True)
class Spread:
    """One uncertain input: its range, and whether its logarithm is what is spread."""

    range: Range
    on_log: bool

    @property
    def key(self) -> str:
        """Key of the input."""
        return self.range.key

    @property
    def steps(self) -> tuple[tuple[float, float], ...]:
        """Values with their chances, of an input that counts in whole steps; else empty."""
        return STEPS.get(self.key, ())

    def quantile(self, share: Array) -> Array:
        """Give the value below which a share (0 to 1, any shape) of all drives lies, SI."""
        if self.steps:
            values, chances = zip(*self.steps, strict=True)
            index = np.searchsorted(np.cumsum(chances)[:-1], share, side="right")
            return np.asarray(values, float)[index]
        low, mode, high = self._scaled(
            np.array([self.range.low, self.range.likely, self.range.high])
        )
        width, left = high - low, mode - low
        below = low + np.sqrt(share * width * left)
        above = high - np.sqrt((1.0 - share) * width * (high - mode))
        found = np.where(share * width < left, below, above)
        return np.asarray(np.exp(found) if self.on_log else found)

    def place(self, value: Array) -> Array:
        """Give where a value stands between the low end (-1) and the high end (1)."""
        low, high = self._scaled(np.array([self.range.low, self.range.high]))
        return np.asarray(
            (2.0 * self._scaled(np.asarray(value, float)) - low - high) / (high - low)
        )

    def _scaled(self, value: Array) -> Array:
        return np.asarray(np.log(value) if self.on_log else value)


def spreads_of(ranges: Sequence[Range]) -> tuple[Spread, ...]:
    """Give the spread of every range that is one; what has one value is left out."""
    return tuple(
        Spread(r, on_log=r.low > 0 and r.high > WIDE * r.low) for r in ranges if r.low < r.high
    )


def correlation(spreads: Sequence[Spread]) -> Array:
    """Give the correlation of the normal scores, shape (inputs, inputs)."""
    index = {s.key: i for i, s in enumerate(spreads)}
    found = np.eye(len(spreads))
    for one, other, share in TOGETHER:
        if one in index and other in index:
            i, j = index[one], index[other]
            found[i, j] = found[j, i] = share
    return found


def draw(spreads: Sequence[Spread], count: int, chance: np.random.Generator) -> Array:
    """Draw values of every input at random, shape (count, inputs), SI."""
    from scipy.special import ndtr

    scores = chance.standard_normal((count, len(spreads)))
    if spreads:
        scores = scores @ np.linalg.cholesky(correlation(spreads)).T
    shares = ndtr(scores)
    values = np.empty_like(shares)
    for k, spread in enumerate(spreads):
        values[:, k] = spread.quantile(shares[:, k])
    return values
