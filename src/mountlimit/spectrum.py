"""Reads a duty spectrum: rows of a share of the current, of the time and, if told, of the speed."""

from __future__ import annotations

from . import units
from .outlines import EntryMistake

EXAMPLE = '[["100 %", "10 %"], ["50 %", "40 %"]]'
LONGEST = 24
NAMES = ("current", "time", "speed")
LIMITS = ((0.0, 1.0), (0.0, 1.0), (0.0, 2.0))  # speed beyond 1: above motor.speed


def read(value: object) -> tuple[tuple[float, float, float], ...]:
    """Give (share of the current, of the time, of motor.speed) for each row; speed 1 if not told.

    Raises
    ------
    EntryMistake
        for what is no such list, for a share out of its range, for more time than there is.
    """
    if not isinstance(value, list) or not 0 < len(value) <= LONGEST:
        raise EntryMistake(
            value, f"expected 1 to {LONGEST} rows of shares of current and time", f"for example {EXAMPLE}"
        )  # fmt: skip
    steps = tuple(_step(row) for row in value)
    time = sum(step[1] for step in steps)
    if time > 1 + 1e-9:
        raise EntryMistake(
            value, f"the shares of the time make {100 * time:g} %, expected 100 % or less",
            "what is left over stands still",
        )  # fmt: skip
    return steps


def _step(row: object) -> tuple[float, float, float]:
    if not isinstance(row, list) or len(row) not in (2, 3):
        raise EntryMistake(
            row, "expected a share of the current, of the time and, if you know it, of motor.speed",
            'for example ["50 %", "40 %"]',
        )  # fmt: skip
    found = [_share(row, k, part) for k, part in enumerate(row)]
    return found[0], found[1], found[2] if len(found) == 3 else 1.0


def _share(row: list[object], place: int, part: object) -> float:
    share = units.parse_value(part, "ratio")
    low, high = LIMITS[place]
    least_too = place == 0  # no current at all is a step: the drive runs along
    if not (low <= share <= high and (least_too or share > low)):
        least = "0 %" if least_too else "more than 0 %"
        raise EntryMistake(row, f"expected a share of the {NAMES[place]} from {least} to {100 * high:g} %")  # fmt: skip
    return share
