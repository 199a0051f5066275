"""Takes one value after another from a drive file, filling gaps with listed defaults."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any

from . import units
from .drivefile import DriveFile, fields_for
from .errors import Mistake
from .fields import Field
from .model import Range
from .worked import Value


@cache
def _known(form: str) -> dict[str, Field]:
    return fields_for(form)


@cache
def _default(text: str, kind: str) -> float:
    if kind in ("number", "integer") or (kind == "ratio" and "%" not in text):
        return float(text)
    return units.parse(text, kind)


class Picker:
    """Reads ``given`` keys, or their overrides, and remembers what had to be assumed."""

    def __init__(self, file: DriveFile, overrides: Mapping[str, float]) -> None:
        self.file, self.given, self.overrides = file, file.given, overrides
        self.plates = file.plates
        self.ranges: dict[str, Range] = {}
        self.words: dict[str, str] = {}
        self.mistakes: list[Mistake] = []
        self.warnings: list[str] = []
        self._fields = _known(str(file.given["mount.form"].value))

    def number(self, key: str) -> Value:
        """Give a required number, or one whose default stands in the field table."""
        field = self._fields[key]
        if key in self.given or field.default is None:
            return self._given(key)
        d, kind = field.default, field.kind
        low, likely, high = (_default(t, kind) for t in (d.low, d.likely, d.high))
        return self.between(key, low, likely, high, d.source)

    @property
    def system(self) -> str:
        """Units of the printed answer: those asked for, else those most lengths are given in."""
        if "units" in self.given:
            return str(self.given["units"].value)
        return units.system_of(g.text for g in self.given.values() if g.kind == "length")

    def knows(self, key: str) -> bool:
        """Tell whether the form has a use for a key."""
        return key in self._fields

    def optional(self, key: str) -> Value | None:
        """Give a number that may be absent."""
        return self._given(key) if key in self.given else None

    def between(self, key: str, low: float, likely: float, high: float, source: str) -> Value:
        """Give a number, or a default worked out from other inputs, as a listed range."""
        if key in self.given:
            return self._given(key)
        return self.uncertain(key, low, likely, high, source, "assumed")

    def uncertain(
        self, key: str, low: float, likely: float, high: float, source: str, origin: str,
        kind: str = "",
    ) -> Value:  # fmt: skip
        """List a range and give its likely value, or the override of this run."""
        kind = kind or self._fields[key].kind
        self.ranges[key] = Range(
            key=key, low=float(low), likely=float(likely), high=float(high), source=source,
            kind=kind, origin=origin,
        )  # fmt: skip
        return Value(self.overrides.get(key, likely), key, origin, source)

    def _given(self, key: str) -> Value:
        found = self.given[key]
        if found.low is not None and found.high is not None:
            return self.uncertain(
                key, found.low, found.value, found.high, "given as a range", "given"
            )
        return Value(self.overrides.get(key, found.value), key, "given", f"'{found.text}'")

    def word(self, key: str, otherwise: str) -> str:
        """Give a word; when it is absent ``otherwise`` is noted as assumed."""
        if key in self.given:
            return str(self.given[key].value)
        self.words[key] = otherwise
        return otherwise

    def card(self, key: str) -> Any:
        """Give what a key's card name stood for, or None."""
        return self.given[key].value if key in self.given else None

    def mistake(self, key: str, expected: str, suggestion: str = "") -> None:
        """Record a mistake that only shows when several keys are seen together, one for each key."""
        if any(m.key == key for m in self.mistakes):
            return
        text = f"'{self.given[key].text}'" if key in self.given else ""
        self.mistakes.append(Mistake(self.file.name, key, text, expected, suggestion))
