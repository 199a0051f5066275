"""The first value at which a part is used up: sampled, then refined on the pipeline itself.

The value is a motor current, or the speed of a dead stop.  Nothing is assumed monotonic.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np

from . import evaluate
from .case import Check
from .evaluate import Curve
from .model import Array, Drive

SAMPLES = 64
LOWEST_SHARE = 1e-3  # of the largest current looked at

# Utilisation of every check (or those named) over the sampled values: of current, or of speed.
CurvesOf = Callable[[Drive, Array, list[str] | None], dict[str, Curve]]


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
