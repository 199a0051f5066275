"""Reads further places of the motor shaft: rows of form, distance from the motor's face, diameter there."""

from __future__ import annotations

from . import units
from .formulas.shaft import CONCENTRATION
from .outlines import EntryMistake

EXAMPLE = '[["shoulder, sharp", "18 mm", "10 mm"]]'
MOST = 12
LIMITS = (("distance from the motor's face", -0.2, 0.6), ("diameter", 0.003, 0.2))  # m


def read(value: object) -> tuple[tuple[str, float, float], ...]:
    """Give (form, distance from the motor's face in m, diameter in m) for each row.

    Raises
    ------
    EntryMistake
        for what is no such list, for a form nobody knows, for a length out of its range.
    """
    if not isinstance(value, list) or not 0 < len(value) <= MOST:
        raise EntryMistake(value, f"expected 1 to {MOST} rows", f"for example {EXAMPLE}")
    return tuple(_place(row) for row in value)


def _place(row: object) -> tuple[str, float, float]:
    if not isinstance(row, list) or len(row) != 3:
        raise EntryMistake(
            row, "expected a form, a distance from the motor's face and a diameter", f"for example {EXAMPLE}"
        )  # fmt: skip
    if row[0] not in CONCENTRATION:
        forms = ", ".join(f'"{word}"' for word in CONCENTRATION)
        raise EntryMistake(row, f"expected one of the forms {forms}")
    at, diameter = (
        _length(row, part, *limits) for part, limits in zip(row[1:], LIMITS, strict=True)
    )
    return str(row[0]), at, diameter


def _length(row: list[object], part: object, name: str, low: float, high: float) -> float:
    size = units.parse_value(part, "length")
    if not low <= size <= high:
        raise EntryMistake(row, f"expected a {name} from {1000 * low:g} to {1000 * high:g} mm")
    return size
