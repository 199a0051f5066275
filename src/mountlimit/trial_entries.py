"""Reads trials: currents that were run, and what was seen at each."""

from __future__ import annotations

import difflib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from . import units
from .errors import one_line
from .outlines import EntryMistake

SEEN = ("fine", "rubs", "thrown", "slipped", "bent", "broke")
KEYS = ("current", "seen", "part", "note")
MOST = 40
EXAMPLE = '[{ current = "60 A", seen = "fine" }]'


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """A current that was run, and what came of it."""

    current: float  # A, the most that flowed
    seen: str  # one of SEEN
    part: str  # name of a check, or "" where it is not told
    note: str

    def __str__(self) -> str:
        part = f" ({self.part})" if self.part else ""
        return f"{self.seen}{part} at {self.current:g} A"


def read(value: object) -> tuple[Trial, ...]:
    """Give the trials of a list of tables, in their order.

    Raises
    ------
    EntryMistake
        for what is no such list, an unknown word, a current that is none.
    """
    if not isinstance(value, list) or not 0 < len(value) <= MOST:
        raise EntryMistake(
            value, f"expected 1 to {MOST} tables [[trial]]", f"for example {EXAMPLE}"
        )
    return tuple(_trial(entry) for entry in value)


def _trial(entry: object) -> Trial:
    if not isinstance(entry, Mapping) or not {"current", "seen"} <= set(entry):
        raise EntryMistake(
            entry, "expected a table with current and seen", f"for example {EXAMPLE}"
        )
    for key in entry:
        if key not in KEYS:
            raise EntryMistake(
                entry, f"'{key}' is not a known key; expected {', '.join(KEYS)}", near(key, KEYS)
            )
    seen = str(entry["seen"]).strip().lower()
    if seen not in SEEN:
        raise EntryMistake(entry, f"seen: expected one of: {', '.join(SEEN)}", near(seen, SEEN))
    try:
        current = units.parse_value(entry["current"], "current")
    except units.UnitMistake as error:
        raise EntryMistake(entry, f"current: {error.problem}; expected {error.expected}") from None
    if not 0 < current <= 100_000:
        raise EntryMistake(entry, "current: expected more than 0 A")
    part = one_line(str(entry.get("part", "")).strip(), 200)
    if part and seen in ("fine", "rubs", "thrown"):
        raise EntryMistake(entry, f"part: '{seen}' names no part; leave it out")
    return Trial(
        current=current, seen=seen, part=part, note=one_line(str(entry.get("note", "")), 200)
    )


def near(word: str, known: Sequence[str]) -> str:
    """Give a hint at the known word nearest to one, or nothing."""
    match = difflib.get_close_matches(word, known, 1, 0.6)
    return f"did you mean '{match[0]}'?" if match else ""
