"""What must hold of the limits of every drive, whatever it is."""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from mountlimit import evaluate
from mountlimit.limits import Found, Limit
from mountlimit.resolve import resolve

CLOSE = 1e-6  # utilisation at the safe current, from 1
BALANCED = 1e-9
TINY = 1e-9  # rounding of a limit


def wrongs(found: Found) -> list[str]:
    """Give a line for everything that does not hold; empty when all does."""
    wrong = [w for limit in found.limits for w in _of_limit(found, limit)]
    counted = [x.safe for x in found.limits if x.counts]
    if found.first_safe.safe != min(counted):
        wrong.append(f"first safe limit {found.first_safe.safe} is not the least, {min(counted)}")
    if not found.balance < BALANCED:
        wrong.append(f"loads and reactions do not close: {found.balance:.3g}")
    return wrong


def _of_limit(found: Found, limit: Limit) -> Iterator[str]:
    name = f"{limit.check.name} ({limit.current_kind})"
    if math.isnan(limit.safe) or limit.safe < 0:
        yield f"{name}: safe limit is {limit.safe}"
        return
    if math.isinf(limit.safe) and not limit.why_not.startswith("not reached below"):
        yield f"{name}: not reached, and does not say so"
    if limit.safe == 0 and not limit.why_not.startswith("used up before any current"):
        yield f"{name}: used up before any current, and does not say so"
    yield from _gives(name, limit)
    if math.isfinite(limit.safe) and limit.safe > 0:
        used = utilisation(found, limit, limit.safe)
        if abs(used - 1) > CLOSE and not _steps_over(found, limit):
            yield f"{name}: {used:.9g} used at its safe current {limit.safe:.9g}"


def _gives(name: str, limit: Limit) -> Iterator[str]:
    gives, low, high = limit.gives, limit.gives_low, limit.gives_high
    if gives is None or low is None or high is None:
        return
    if any(math.isnan(v) or v < 0 for v in (gives, low, high)):
        yield f"{name}: gives at {low} / {gives} / {high}"
    if limit.safe > gives * (1 + TINY):
        yield f"{name}: safe to {limit.safe:.6g}, gives at {gives:.6g}"
    if not low * (1 - TINY) <= gives <= high * (1 + TINY):
        yield f"{name}: gives at {gives:.6g}, outside its own {low:.6g} to {high:.6g}"


def _steps_over(found: Found, limit: Limit) -> bool:
    """Tell whether the share used jumps past 1 there: an open frame member changes the way it leans."""
    below, above = (utilisation(found, limit, limit.safe * (1 + s)) for s in (-CLOSE, CLOSE))
    return below < 1 <= above


def utilisation(found: Found, limit: Limit, current: float) -> float:
    """Give the share used at a current, inputs at their safe-side ends, design factor in."""
    worst = resolve(found.file, dict(limit.corner))
    level = "continuous" if limit.current_kind == "continuous" else "safe"
    curve = evaluate.curves(worst, np.array([current]), [limit.check.name])[limit.check.name]
    return float(getattr(curve, level)[0]) * limit.factor
