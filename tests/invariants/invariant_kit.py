"""Shared by the tests of what must not change: drawn drives, their answer, how deep to look.

A drawn drive is a number (``tests/random_drives``).  Its *answer* is the utilisation of every check at
eight currents, with every uncertain input at its likely value, at its low and at its high end; every
limit the program prints is worked out from such answers, and asking for them is fifty times quicker.
"""

from __future__ import annotations

import math
import os
from collections.abc import Callable
from typing import Any

import draw
import numpy as np
from hypothesis import HealthCheck, Phase, assume, seed, settings
from hypothesis import strategies as st

from conftest import toml_text
from mountlimit import evaluate
from mountlimit.drivefile import DriveFile, parse
from mountlimit.errors import InputError
from mountlimit.plate_route import with_plates
from mountlimit.resolve import resolve

DEEP = os.environ.get("INVARIANTS_DEEP", "")  # number of the chunk, by invariants_run.py
FORMS = tuple(draw.LAYOUTS)
BEAMS = draw.BEAMS
SHARES = np.geomspace(0.03, 10.0, 8)  # of the set current
NOTHING = 1e-9  # a share used that is rounding
TALLY: dict[str, dict[str, float]] = {}

numbers = st.integers(2_000_000, 99_999_999)


def depth(ordinary: int, deep: int) -> Callable[[Any], Any]:
    """Give the settings of a property: few settled cases in the ordinary run, many in a deep chunk."""

    def wrap(test: Any) -> Any:
        plain = settings(
            max_examples=deep if DEEP else ordinary, derandomize=not DEEP, deadline=None,
            database=None, suppress_health_check=list(HealthCheck),
            phases=(Phase.explicit, Phase.generate),  # a smaller number is no simpler drive
        )(test)  # fmt: skip
        return seed(int(DEEP))(plain) if DEEP else plain

    return wrap


def looked(what: str, off: float = 0.0, cases: int = 1) -> None:
    """Keep count of a case, and of the largest deviation met."""
    row = TALLY.setdefault(what, {"cases": 0, "largest": 0.0})
    row["cases"] += cases
    row["largest"] = max(row["largest"], off)


def drawn(number: int, forms: tuple[str, ...] = BEAMS, route: str = "sections") -> dict[str, Any]:
    """Give the keys of a drawn drive that holds together; others are passed over."""
    keys = draw.drive(number, forms, route)
    assume(holds(keys))
    return keys


def holds(keys: dict[str, Any]) -> bool:
    """Tell whether a drive is accepted."""
    try:
        resolve(with_plates(file_of(keys)))
    except InputError:
        return False
    return True


def file_of(keys: dict[str, Any]) -> DriveFile:
    """Read flat keys as a drive file."""
    return parse(toml_text(draw.nested(keys)).encode(), "drawn")


def answer(file: DriveFile, turned_round: tuple[str, ...] = ()) -> dict[str, Any]:
    """Give the utilisation of every check and level, inputs likely, all low and all high.

    Inputs ``turned_round`` stand at their high end among the low ones, and at their low among the high.
    """
    file = with_plates(file)
    drive = resolve(file)
    currents = SHARES * float(drive.current.set)
    corners = {
        "likely": {},
        "low": {r.key: r.high if r.key in turned_round else r.low for r in drive.ranges},
        "high": {r.key: r.low if r.key in turned_round else r.high for r in drive.ranges},
    }
    found: dict[str, Any] = {}
    for words, corner in corners.items():
        try:
            at = resolve(file, corner)
        except InputError as error:  # ends of two inputs that cannot go together
            found[words] = sorted({m.key for m in error.mistakes})
            continue
        for name, curve in evaluate.curves(at, currents).items():
            for level in ("safe", "gives", "continuous"):
                if (used := getattr(curve, level)) is not None:
                    found[f"{words} {name} {level}"] = used
    return found


def difference(one: dict[str, Any], two: dict[str, Any]) -> tuple[float, str]:
    """Give the largest relative difference of two answers, and where; infinity where a check is missing."""
    if one.keys() != two.keys():
        return math.inf, str(sorted(one.keys() ^ two.keys()))
    worst, where = 0.0, ""
    for name, a in one.items():
        if isinstance(a, list):
            off = 0.0 if a == two[name] else math.inf
        else:
            b = two[name]
            with np.errstate(invalid="ignore"):
                each = np.abs(a - b) / (np.maximum(np.abs(a), np.abs(b)) + NOTHING)
            off = float(np.max(np.where(a == b, 0.0, each)))
        if not off <= worst:
            worst, where = off, name
    return worst, where
