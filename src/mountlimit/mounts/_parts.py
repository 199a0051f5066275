"""What a mount form is given: how it asks for its inputs, and the parts of the drive it needs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Protocol

from ..errors import Mistake
from ..model import Fixings, Motor
from ..mounting import Clamp, Substance
from ..worked import Value


class Picker(Protocol):
    """How a form asks for its inputs; ``resolve`` provides it."""

    def number(self, key: str) -> Value:
        """Give a required number, or one with a default."""
        ...

    def optional(self, key: str) -> Value | None:
        """Give a number that may be absent."""
        ...

    def card(self, key: str) -> Any:
        """Give what a key's card name stood for, or None."""
        ...

    def word(self, key: str, otherwise: str) -> str:
        """Give a word; when absent ``otherwise`` is noted as assumed."""
        ...

    def between(self, key: str, low: float, likely: float, high: float, source: str) -> Value:
        """Give a number, or a default worked out from other inputs."""
        ...

    warnings: list[str]
    mistakes: list[Mistake]
    system: str  # units of messages
    file: Any  # the drive file
    plates: Any  # the plate model behind the file, or None

    def mistake(self, key: str, expected: str, suggestion: str = "") -> None:
        """Record a mistake that only shows when several keys are seen together."""
        ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Parts:
    """What a form needs of the rest of the drive."""

    motor: Motor
    fixings: Fixings
    material: Substance
    second: Substance | None = None
    clamp: Clamp | None = None  # for forms held on a tube, without its place
