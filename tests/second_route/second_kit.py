"""Shared by the second routes: how far two answers are apart, and the largest met by what is compared."""

from __future__ import annotations

import os

import numpy as np

DEEP = bool(os.environ.get("SECOND_ROUTE_DEEP"))
MET: dict[str, dict[str, float]] = {}


def off(ours, theirs) -> float:
    """Give the largest difference over the largest size."""
    ours, theirs = np.asarray(ours, float), np.asarray(theirs, float)
    return float(np.max(np.abs(ours - theirs)) / (np.max(np.abs(theirs)) + 1e-300))


def told(what: str, difference: float, cases: int = 1) -> None:
    """Keep count of a comparison, and its largest difference."""
    row = MET.setdefault(what, {"cases": 0, "largest": 0.0})
    row["cases"] += cases
    row["largest"] = max(row["largest"], float(difference))
