"""What the fatigue checks of welds share: detail categories, and a row of one throat.

The categories of steel do not hang on its grade.  Those of aluminium are the lower ones of two
rules; EN 1999-1-3 has twice as much for the throat.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from ..case import Row
from ..formulas import usage, weld_fatigue
from ..model import Number
from ..worked import Value

_STEEL = "EN 1993-1-9 table 8.5 detail 3, root of a fillet"
_TOE = "IIW recommendations for fatigue design, detail 413, toe of a T-joint's fillet (from memory)"
_ALUMINIUM = "IIW recommendations for fatigue design, fillet in aluminium (from memory)"
ENDLESS = Value(
    1e8, "cycles at the cut-off", "derived",
    "EN 1993-1-9 figure 7.1: ranges below do nothing, however many",
)  # fmt: skip


class Categories(NamedTuple):
    """Detail categories of a fillet: across and along its throat, and at its toe."""

    across: Value
    along: Value
    toe: Value


_NAMES = ("category across the throat", "category along the throat", "category of the toe")
STEEL, ALUMINIUM = (
    Categories(*(Value(v, n, "assumed", s) for v, n, s in zip(values, _NAMES, where, strict=True)))
    for values, where in (
        ((36e6, 80e6, 63e6), (_STEEL, _STEEL, _TOE)),
        ((12e6, 28e6, 22e6), (_ALUMINIUM,) * 3),
    )
)


def categories(family: str) -> Categories:
    """Give the detail categories of a weld in a family of materials, steel or aluminium."""
    return ALUMINIUM if family == "aluminium" else STEEL


def throat_row(
    place: str, words: str, ranges: tuple[Number, Number], family: str, cycles: Number
) -> Row:
    """Compare the stress ranges across and along a throat with what so many cycles allow.

    For plain numbers the station says which of the two does more.
    """
    across, along = ranges
    of = categories(family)
    allowed = weld_fatigue.range_allowed(of.across, cycles)
    shear_allowed = weld_fatigue.shear_range_allowed(of.along, cycles)
    both = weld_fatigue.equal_range(across, along, allowed, shear_allowed)
    many = bool(np.ndim(both))
    way = ""
    if not many:
        more = float(across) / float(allowed) >= float(along) / float(shear_allowed)
        way = f" mostly {'across' if more else 'along'}"
    return Row(station=f"{place}, throat{way}, {words}", demand=both, capacity=allowed, quantity="stress",
               utilisation=usage.utilisation(both, allowed), level="safe", many=many)  # fmt: skip


def number(starts: Number) -> str:
    """Give a number of starts in words."""
    return f"{float(starts):.0e} starts"
