"""Numbers in the JSON records."""

from __future__ import annotations

import math
from typing import Any


def number(value: float | None) -> float | None:
    """Give a JSON number; infinity (not reached) and absence become null."""
    return None if value is None or not math.isfinite(value) else float(value)


def quantity(value: float | None, unit: str) -> dict[str, Any]:
    """Give a JSON number with its SI unit beside it."""
    return {"value": number(value), "unit": unit}
