"""The errors a user can meet: each keeps its parts and builds its own sentence."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass

MOST_SHOWN = 50  # mistakes of one file
_UNSEEN = ("Cc", "Cs", "Zl", "Zp")  # control characters, halves of characters, other line ends


def one_line(text: str, most: int = 500) -> str:
    """Give a text as part of one line: control characters written out, cut where it is too long."""
    if len(text) > most:
        text = text[: most - 3] + "..."
    if text.isprintable():
        return text
    return "".join(
        c.encode("unicode_escape").decode() if unicodedata.category(c) in _UNSEEN else c
        for c in text
    )


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
        file = one_line(self.file, 5000)
        where = f"{file}: {one_line(self.key, 100)}" if self.key else file
        found = f" = {one_line(self.value, 100)}" if self.value else ""
        hint = f" ({one_line(self.suggestion)})" if self.suggestion else ""
        return f"{where}{found}: {one_line(self.expected)}{hint}"


class InputError(MountlimitError):
    """All mistakes found in one input, in file order; the words show the first ``MOST_SHOWN``."""

    def __init__(self, mistakes: Sequence[Mistake]) -> None:
        self.mistakes = tuple(mistakes)
        shown = [str(m) for m in self.mistakes[:MOST_SHOWN]]
        rest = len(self.mistakes) - len(shown)
        if rest > 0:
            shown.append(str(Mistake(self.mistakes[0].file, "", "", f"and {rest} more mistakes")))
        super().__init__("\n".join(shown))


class UnknownCard(MountlimitError):
    """A name that no data card carries."""

    def __init__(self, kind: str, name: str, nearest: Sequence[str] = ()) -> None:
        self.kind, self.name, self.nearest = kind, name, tuple(nearest)
        hint = f"; did you mean {' or '.join(self.nearest)}?" if self.nearest else ""
        super().__init__(f"no {kind} called '{one_line(name, 60)}'{hint}")


class OutOfRange(MountlimitError):
    """A value outside the range in which a formula or card is known to hold."""

    def __init__(self, quantity: str, value: float, low: float, high: float) -> None:
        self.quantity, self.value, self.low, self.high = quantity, value, low, high
        super().__init__(f"{quantity} = {value:g} is outside {low:g} to {high:g}")


class BalanceError(MountlimitError):
    """Reactions and applied loads do not close: a fault of the program, never of the user."""
