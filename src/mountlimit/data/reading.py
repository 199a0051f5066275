"""Turns the text of a card file into checked values; finds every mistake of a file in one pass.

A card type is a dataclass whose annotations say what the file must hold (``quantity``, ``word``,
``words``, ``flag``, ``curve``, ``quantities``); what has a default may lack.  A number stands as

- ``pitch = "12.7 mm"`` with the card's own ``source``, or its own one under ``sources.pitch``;
- a table ``[yield_strength]`` with ``value``, ``source`` and further keys such as ``cov``, each of
  which may have its own source ``cov_source``.
"""

from __future__ import annotations

import difflib
import math
from collections.abc import Iterator, Mapping
from dataclasses import MISSING, dataclass, fields
from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Annotated, Any, TypeVar, cast, get_type_hints

from .. import units
from ..errors import MOST_SHOWN, InputError, Mistake, MountlimitError, one_line
from ..worked import Value
from .toml_file import NotToml, contents, parsed

C = TypeVar("C")
FAMILIES = ("plastic", "aluminium", "steel", "iron", "wood")
SYSTEMS = ("metric", "inch")


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a card file must hold for one field: kind, range (SI), place, and allowed words."""

    kind: str
    least: float = -math.inf
    most: float = math.inf
    at: str = ""
    choices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Retention:
    """Share of a property left at rising temperatures, of its value at the first of them."""

    temperatures: tuple[float, ...]
    factors: tuple[float, ...]
    source: str

    def at(self, temperature: float) -> float:
        """Give the factor by straight lines between the points; 1 below the first."""
        if temperature <= self.temperatures[0]:
            return self.factors[0]
        points = zip(self.temperatures, self.factors, strict=True)
        for (cold, more), (hot, less) in pairwise(points):
            if temperature <= hot:
                return more + (less - more) * (temperature - cold) / (hot - cold)
        return self.factors[-1]


def quantity(kind: str, least: float, most: float, *, at: str = "") -> Wanted:
    """Declare a number of a unit kind within a range (SI)."""
    return Wanted(kind, least, most, at)


def quantities(kind: str, least: float, most: float) -> Wanted:
    """Declare a rising list of numbers of a unit kind."""
    return Wanted("list " + kind, least, most)


def word(*choices: str, at: str = "") -> Wanted:
    """Declare a text, one of ``choices`` when there are any."""
    return Wanted("word", at=at, choices=choices)


def words() -> Wanted:
    """Declare a list of texts."""
    return Wanted("words")


def flag() -> Wanted:
    """Declare true or false."""
    return Wanted("flag")


def curve() -> Wanted:
    """Declare a retention table: temperatures, factors and source."""
    return Wanted("curve")


@cache
def declared(card: Any) -> dict[str, tuple[Wanted, bool]]:
    """Give what a card type wants in each field, and whether it must be there."""
    hints = get_type_hints(card, include_extras=True)
    found = {}
    for entry in fields(card):
        extras = getattr(hints[entry.name], "__metadata__", ())
        if extras:
            found[entry.name] = (extras[0], entry.default is MISSING)
    return found


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """What all cards share: a name, other spellings, and a source for every number."""

    id: str
    source: str
    aliases: Annotated[tuple[str, ...], words()] = ()
    note: Annotated[str, word()] = ""

    def source_of(self, name: str) -> str:
        """Give the source of one field; the card's own one for words."""
        found = getattr(self, name)
        if isinstance(found, tuple) and found and isinstance(found[0], Value):
            return found[0].source
        return str(getattr(found, "source", "") or self.source)


def folder(name: str) -> Path:
    """Find a folder of files that users may read and add to: "materials" or "examples".

    Raises
    ------
    MountlimitError
        when it is neither in the installed package nor beside its source.
    """
    here = Path(__file__).resolve().parents[1]
    for place in (here / name, here.parents[1] / name):
        if place.is_dir():
            return place
    raise MountlimitError(f"the folder '{name}' is missing from this installation")


def read_toml(path: Path, shown: str) -> dict[str, Any]:
    """Read a card file.

    Raises
    ------
    InputError
        when the file cannot be read or is not TOML; ``shown`` names it.
    """
    try:
        return parsed(contents(path))
    except OSError as error:
        problem, hint = f"cannot be read: {error.strerror}", ""
    except NotToml as error:
        problem, hint = error.problem, error.suggestion
    raise InputError([Mistake(shown, "", "", problem, hint)])


_WARMTH = Wanted("temperature", 200.0, 900.0)
_SHARE = Wanted("ratio", 0.0, 1.0)


class Reader:
    """Reads one card out of a table and keeps the mistakes it meets."""

    def __init__(self, shown: str, label: str, key: str, table: Mapping[str, Any]) -> None:
        self.shown, self.label, self.key, self.table = shown, label, key, table
        self.mistakes: list[Mistake] = []
        self.used: set[str] = {"source", "sources"}

    def fail(self, place: str, value: Any, expected: str, suggestion: str = "") -> Any:
        """Keep one mistake; gives None, so that a reader may return it."""
        where = f"{self.label}: {place}" if self.label else place
        found = "" if value is None else f"'{value}'" if isinstance(value, str) else str(value)
        found = found.lower() if isinstance(value, bool) else found
        found = one_line(found, 60)
        self.mistakes.append(Mistake(self.shown, where, found, expected, suggestion))
        return None

    def build(self, card: type[C], **known: Any) -> C | None:
        """Give the card, or None when it has a mistake."""
        filled, kind = dict(known), cast(Any, card)
        for name, (wanted, needed) in declared(kind).items():
            if name in known:
                continue
            value = self._read(name, wanted, needed)
            if value is not None:
                filled[name] = value
        self._strangers()
        return None if self.mistakes else card(**filled)

    def _read(self, name: str, wanted: Wanted, needed: bool) -> Any:
        key = wanted.at or name
        place, raw, source = self._find(key, wanted.kind, needed)
        if raw is None:
            return None
        if wanted.kind in ("word", "words", "flag"):
            return self._plain(place, raw, wanted)
        if wanted.kind == "curve":
            return self._curve(place, raw)
        if not source:
            self.fail(place, raw, "has no source")
        kind = wanted.kind.removeprefix("list ")
        if kind != wanted.kind:
            found = self._list(place, raw, kind, wanted)
            return found and tuple(Value(n, f"{self.key}.{key}", "card", source) for n in found)
        number = self._number(place, raw, kind, wanted)
        return None if number is None else Value(number, f"{self.key}.{key}", "card", source)

    def _find(self, place: str, kind: str, needed: bool) -> tuple[str, Any, str]:
        """Give where exactly a figure stands in the file, what is there, and its source."""
        head, _, inner = place.partition(".")
        self.used.add(head)
        found = self.table.get(head)
        own = self._sources().get(head) or self.table.get("source")
        if isinstance(found, Mapping) and kind != "curve":
            needed = needed or not inner  # a table without its value is never meant
            inner = inner or "value"
            place = f"{head}.{inner}"
            self.used |= {place, f"{head}.source", f"{place}_source"}
            own = found.get(f"{inner}_source") or found.get("source")
            found = found.get(inner)
        elif inner:
            found = None
        if found is None and needed:
            self.fail(place, None, "is missing")
        return place, found, own.strip() if isinstance(own, str) else ""

    def _sources(self) -> Mapping[str, Any]:
        own = self.table.get("sources", {})
        return own if isinstance(own, Mapping) else {}

    def _plain(self, place: str, raw: Any, wanted: Wanted) -> Any:
        if wanted.kind == "flag":
            return raw if isinstance(raw, bool) else self.fail(place, raw, "expected true or false")
        if wanted.kind == "words":
            if isinstance(raw, list) and all(isinstance(w, str) and w.strip() for w in raw):
                return tuple(raw)
            return self.fail(place, raw, "expected a list of texts")
        if not isinstance(raw, str) or not raw.strip():
            return self.fail(place, raw, "expected a text")
        if wanted.choices and raw not in wanted.choices:
            return self.fail(place, raw, f"expected one of: {', '.join(wanted.choices)}")
        return raw

    def _number(self, place: str, raw: Any, kind: str, wanted: Wanted) -> float | None:
        try:
            number = units.parse_value(raw, kind)
        except units.UnitMistake as wrong:
            self.fail(place, raw, f"expected {wrong.expected}", f"for example {wrong.suggestion}")
            return None
        if not wanted.least <= number <= wanted.most:
            low, high = (units.show(v, kind) for v in (wanted.least, wanted.most))
            self.fail(place, raw, f"expected {low} to {high}")
            return None
        return number

    def _list(self, place: str, raw: Any, kind: str, wanted: Wanted) -> Any:
        if not isinstance(raw, list) or not raw:
            return self.fail(place, raw, "expected a list")
        found = [self._number(place, entry, kind, wanted) for entry in raw]
        numbers = [n for n in found if n is not None]
        if any(b <= a for a, b in pairwise(numbers)):
            return self.fail(place, None, "expected rising values")
        return numbers

    def _curve(self, place: str, raw: Any) -> Any:
        wanted = {"temperatures", "factors", "source"}
        if not isinstance(raw, Mapping) or set(raw) != wanted:
            return self.fail(place, None, "expected temperatures, factors and source")
        heats, shares = raw["temperatures"], raw["factors"]
        self.used |= {f"{place}.{key}" for key in wanted}
        if not isinstance(heats, list) or not isinstance(shares, list) or len(heats) != len(shares):
            return self.fail(place, None, "expected as many factors as temperatures")
        hot = [self._number(place, h, "temperature", _WARMTH) for h in heats]
        left = [self._number(place, s, "ratio", _SHARE) for s in shares]
        source = raw["source"].strip() if isinstance(raw["source"], str) else ""
        if None in hot or None in left or not source or len(hot) < 2:
            return self.fail(place, None, "expected two or more points and a source")
        warm, kept = [float(h or 0) for h in hot], [float(s or 0) for s in left]
        if any(b <= a for a, b in pairwise(warm)):
            return self.fail(place, None, "expected rising temperatures")
        if kept[0] != 1.0 or any(b > a for a, b in pairwise(kept)):
            return self.fail(place, None, "expected factors from 1 on, never rising")
        return Retention(temperatures=tuple(warm), factors=tuple(kept), source=source)

    def _strangers(self) -> None:
        """Find keys that no field asked for."""
        for place in self._places():
            if place not in self.used:
                few = len(self.mistakes) < MOST_SHOWN
                near = difflib.get_close_matches(place, sorted(self.used), 1) if few else []
                hint = f"did you mean {near[0]}?" if near else ""
                self.fail(place, None, "is not a known key", hint)
        for name in self._sources():
            if name not in self.used:
                self.fail(f"sources.{name}", None, "is not a known key")

    def _places(self) -> Iterator[str]:
        for head, found in self.table.items():
            yield head
            if isinstance(found, Mapping) and head != "sources":
                yield from (f"{head}.{inner}" for inner in found)
