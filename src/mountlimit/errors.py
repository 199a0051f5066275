"""The errors a user can meet: each keeps its parts and builds its own sentence."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


class MountlimitError(Exception):
    """Base of every error this package raises on purpose; ``exit_status`` is what the command exits with."""

    exit_status = 2


@dataclass(frozen=True)
class Mistake:
    """One mistake in an input file: where it stands, what was found, what was expected."""

    file: str
    key: str
    value: str
    expected: str
    suggestion: str = ""

    def __str__(self) -> str:
        where = f"{self.file}: {self.key}" if self.key else self.file
        found = f" = {self.value}" if self.value else ""
        hint = f" ({self.suggestion})" if self.suggestion else ""
        return f"{where}{found}: {self.expected}{hint}"


class InputError(MountlimitError):
    """All mistakes found in one input, in file order."""

    def __init__(self, mistakes: Sequence[Mistake]) -> None:
        self.mistakes = tuple(mistakes)
        super().__init__("\n".join(str(m) for m in self.mistakes))


class UnknownCard(MountlimitError):
    """A name that no data card carries."""

    def __init__(self, kind: str, name: str, nearest: Sequence[str] = ()) -> None:
        self.kind, self.name, self.nearest = kind, name, tuple(nearest)
        hint = f"; did you mean {' or '.join(self.nearest)}?" if self.nearest else ""
        super().__init__(f"no {kind} called '{name}'{hint}")


class OutOfRange(MountlimitError):
    """A value outside the range in which a formula or card is known to hold."""

    def __init__(self, quantity: str, value: float, low: float, high: float) -> None:
        self.quantity, self.value, self.low, self.high = quantity, value, low, high
        super().__init__(f"{quantity} = {value:g} is outside {low:g} to {high:g}")


class BalanceError(MountlimitError):
    """Reactions and applied loads do not close: a fault of the program, never of the user."""
