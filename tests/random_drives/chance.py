"""Chance that one number settles: numbers with units, the same for the same drive every time."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from typing import Any, TypeVar

T = TypeVar("T")
IN_INCHES = 0.12  # share of lengths that are written in inches


class Chance:
    """Draws that follow from the number of a drive."""

    def __init__(self, number: int) -> None:
        """Take the number of the drive."""
        self._random = random.Random(f"drive {number}")

    def happens(self, share: float) -> bool:
        """Tell whether something of this share comes about."""
        return self._random.random() < share

    def one_of(self, things: Sequence[T]) -> T:
        """Pick one of some things."""
        return things[self._random.randrange(len(things))]

    def between(self, low: float, high: float) -> float:
        """Draw evenly on the logarithm where both ends are above nothing, else evenly."""
        if low > 0:
            return math.exp(self._random.uniform(math.log(low), math.log(high)))
        return self._random.uniform(low, high)

    def amount(self, low: float, high: float, unit: str) -> str:
        """Draw a quantity with its unit."""
        return f"{self.between(low, high):.3g} {unit}"

    def length(self, low: float, high: float) -> str:
        """Draw a length between two sizes in mm."""
        return self.written(self.between(low, high))

    def written(self, size: float) -> str:
        """Write a length of some mm, now and then in inches."""
        if self.happens(IN_INCHES):
            return f"{size / 25.4:.4g} in"
        return f"{size:.4g} mm"

    def spread(self, low: float, high: float, unit: str) -> Any:
        """Draw a quantity, now and then with its low and high end."""
        likely = self.between(low, high)
        if likely <= 0 or self.happens(0.8):
            return f"{likely:.4g} {unit}".strip()
        least, most = likely * self.between(0.7, 1.0), likely * self.between(1.0, 1.4)
        ends = zip(("low", "likely", "high"), (least, likely, most), strict=True)
        return {k: f"{min(max(v, low), high):.4g} {unit}".strip() for k, v in ends}
