"""The errors of a user's own outline: each keeps its parts, so that a drive file can list them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from ..errors import MountlimitError


class Fault(NamedTuple):
    """One thing wrong with an outline: the key it stands under, what was found, what was expected."""

    key: str
    value: str
    expected: str
    suggestion: str = ""

    def __str__(self) -> str:
        found = f" = '{self.value}'" if self.value else ""
        hint = f" ({self.suggestion})" if self.suggestion else ""
        return f"{self.key}{found}: {self.expected}{hint}"


class OutlineError(MountlimitError):
    """An outline that cannot be a plate: every fault found, in order."""

    def __init__(self, *faults: Fault) -> None:
        self.faults: Sequence[Fault] = faults
        super().__init__("\n".join(str(fault) for fault in faults))


class EntryMistake(MountlimitError):
    """One entry of a list of places, holes or slots that cannot be read."""

    def __init__(self, entry: object, expected: str, suggestion: str = "") -> None:
        self.entry, self.expected, self.suggestion = entry, expected, suggestion
        super().__init__(f"'{entry}': {expected}" + (f" ({suggestion})" if suggestion else ""))
