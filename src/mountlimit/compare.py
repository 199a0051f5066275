"""Two drive files side by side: what changed in the input, and what it did to every limit."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from typing import Any

from . import limits
from .drivefile import DriveFile, fields_for
from .limits import Found, Limit
from .model import Drive
from .progress import step
from .worked import Value

GIVEN, ASSUMED, CARD = "given", "assumed", "card"
ROUNDING = 1e-9  # relative: less is the same number
WALKED = ("motor", "face", "current", "chain", "shaft", "hub", "jackshaft", "driven", "mount",
          "fixings", "frame", "use", "duty", "policy")  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Input:
    """What one key stands for in one file: its words, or low, likely and high in SI."""

    key: str
    origin: str  # given, assumed, card
    kind: str  # of unit; "" for words
    text: str = ""  # as the user wrote it, or the word that is taken for granted
    low: float | None = None
    likely: float | None = None
    high: float | None = None
    meaning: Any = None  # what the words stand for: a card, a count and a thread ...

    def like(self, other: Input) -> bool:
        """Tell whether another file holds the same here; how a given number is written is no matter."""
        if self.origin != other.origin or self.kind != other.kind:
            return False
        pairs = [
            (self.low, other.low),
            (self.likely, other.likely),
            (self.high, other.high),
        ]
        if all(a is None for a, _ in pairs) or all(b is None for _, b in pairs):
            if self.meaning is not None and other.meaning is not None:
                return bool(self.meaning == other.meaning)
            return self.text == other.text
        return all(_same(a, b) for a, b in pairs)


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One key that differs; ``None`` where a file has no such input."""

    key: str
    a: Input | None
    b: Input | None

    @property
    def written(self) -> bool:
        """Whether somebody wrote it in a file; else it follows from what was written."""
        return any(x is not None and x.origin == GIVEN for x in (self.a, self.b))


@dataclass(frozen=True, slots=True, kw_only=True)
class Pair:
    """One limit in both files; ``None`` where a file does not have it."""

    name: str
    current_kind: str
    a: Limit | None
    b: Limit | None

    @property
    def either(self) -> Limit:
        """The limit in whichever file has it."""
        found = self.a or self.b
        assert found is not None
        return found


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """Everything the report says of two files."""

    a: Found
    b: Found
    changes: tuple[Change, ...]
    pairs: tuple[Pair, ...]
    became_known: tuple[str, ...]  # assumed in A, given in B
    became_assumed: tuple[str, ...]
    assumed: tuple[int, int]  # how many uncertain inputs are assumed in A and in B

    @property
    def written(self) -> tuple[Change, ...]:
        """Changes that somebody wrote."""
        return tuple(c for c in self.changes if c.written)

    @property
    def followed(self) -> tuple[Change, ...]:
        """Assumed and card values that differ because of them."""
        return tuple(c for c in self.changes if not c.written)


def compare(a: DriveFile, b: DriveFile) -> Comparison:
    """Compare two drives, also of different mount forms.

    Raises
    ------
    InputError
        as ``resolve``, of either file.
    """
    step("finding the limits", 0, 2)
    one = limits.find(a)
    step("finding the limits", 1, 2)
    two = limits.find(b)
    step("finding the limits", 2, 2)
    return side_by_side(one, two)


def side_by_side(one: Found, two: Found) -> Comparison:
    """Compare two drives whose limits are found."""
    first, second = inputs(one.file, one.drive), inputs(two.file, two.drive)
    return Comparison(
        a=one, b=two, changes=tuple(_changes(first, second)), pairs=tuple(_pairs(one, two)),
        became_known=_became(first, second), became_assumed=_became(second, first),
        assumed=(_assumed(one.drive), _assumed(two.drive)),
    )  # fmt: skip


def inputs(file: DriveFile, drive: Drive) -> dict[str, Input]:
    """Give every input of a drive by key: what was given, then ranges, words and single values."""
    known = fields_for(str(file.given["mount.form"].value))
    found = {
        key: Input(
            key=key, origin=GIVEN, kind=g.kind, text=g.text, low=g.low,
            likely=_number(g.value), high=g.high, meaning=g.value,
        )
        for key, g in file.given.items()
    }  # fmt: skip
    for r in drive.ranges:
        origin = r.origin if r.origin in (ASSUMED, CARD) else ASSUMED
        found.setdefault(
            r.key,
            Input(key=r.key, origin=origin, kind=r.kind, low=r.low, likely=r.likely, high=r.high),
        )
    for key, word in drive.words:
        found.setdefault(key, Input(key=key, origin=ASSUMED, kind="", text=word))
    for value in _values(drive):
        if value.key in known and value.origin in (ASSUMED, CARD):
            kind = known[value.key].kind
            found.setdefault(
                value.key,
                Input(key=value.key, origin=value.origin, kind=kind, likely=float(value)),
            )
    return found


def _number(value: Any) -> float | None:
    return float(value) if isinstance(value, int | float) and not isinstance(value, bool) else None


def _values(drive: Drive) -> Iterator[Value]:
    for name in WALKED:
        yield from _walk(getattr(drive, name))


def _walk(thing: Any) -> Iterator[Value]:
    """Give every number that knows its key inside a drive."""
    if isinstance(thing, Value):
        yield thing
    elif isinstance(thing, Mapping):
        for inner in thing.values():
            yield from _walk(inner)
    elif isinstance(thing, tuple):
        for inner in thing:
            yield from _walk(inner)
    elif is_dataclass(thing):
        for one in fields(thing):
            yield from _walk(getattr(thing, one.name))


def _same(a: float | None, b: float | None) -> bool:
    if a is None or b is None:
        return a is b
    return abs(a - b) <= ROUNDING * max(abs(a), abs(b))


def _changes(a: Mapping[str, Input], b: Mapping[str, Input]) -> Iterator[Change]:
    for key in [*a, *(k for k in b if k not in a)]:
        one, two = a.get(key), b.get(key)
        if one is None or two is None or not one.like(two):
            yield Change(key=key, a=one, b=two)


def _became(a: Mapping[str, Input], b: Mapping[str, Input]) -> tuple[str, ...]:
    return tuple(
        key for key, one in a.items()
        if one.origin != GIVEN and key in b and b[key].origin == GIVEN
    )  # fmt: skip


def _assumed(drive: Drive) -> int:
    return sum(r.origin == ASSUMED and r.low < r.high for r in drive.ranges)


def _pairs(a: Found, b: Found) -> list[Pair]:
    one, two = (
        {(x.check.name, x.current_kind): x for x in found.limits} for found in (a, b)
    )  # fmt: skip
    pairs = [
        Pair(name=key[0], current_kind=key[1], a=one.get(key), b=two.get(key))
        for key in dict.fromkeys([*one, *two])
    ]
    return sorted(pairs, key=_order)


def _order(pair: Pair) -> tuple[bool, bool, float]:
    limit = pair.either
    smallest = min(x.safe for x in (pair.a, pair.b) if x is not None)
    return (not limit.counts, limit.current_kind != "peak setting", smallest)
