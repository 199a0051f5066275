"""The errors of a user's own outline: each keeps its parts, so that a drive file can list them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from ..errors import MOST_SHOWN, MountlimitError, one_line


class Fault(NamedTuple):
    """One thing wrong with an outline: the key it stands under, what was found, what was expected."""

    key: str
    value: str
    expected: str
    suggestion: str = ""

    def __str__(self) -> str:
        found = f" = '{one_line(self.value)}'" if self.value else ""
        hint = f" ({one_line(self.suggestion)})" if self.suggestion else ""
        return f"{self.key}{found}: {one_line(self.expected)}{hint}"


class OutlineError(MountlimitError):
    """An outline that cannot be a plate: every fault found, in order."""

    def __init__(self, *faults: Fault) -> None:
        self.faults: Sequence[Fault] = faults
        shown = [str(fault) for fault in faults[:MOST_SHOWN]]
        rest = len(faults) - len(shown)
        super().__init__("\n".join([*shown, f"and {rest} more"] if rest else shown))


class EntryMistake(MountlimitError):
    """One entry of a list of places, holes or slots that cannot be read."""

    def __init__(self, entry: object, expected: str, suggestion: str = "") -> None:
        self.entry, self.expected, self.suggestion = entry, expected, suggestion
        super().__init__(
            f"'{one_line(str(entry), 100)}': {expected}"
            + (f" ({suggestion})" if suggestion else "")
        )
