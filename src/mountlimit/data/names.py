"""Names of cards: what people leave out or add, names used twice, and the nearest known name."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import TypeVar

from ..errors import Mistake, UnknownCard
from .reading import Card

C = TypeVar("C", bound=Card)
T = TypeVar("T")


@lru_cache(maxsize=4096)
def plain(name: str) -> str:
    """Give a name without what people leave out or add: case, spaces, hyphens, number signs."""
    return re.sub(r"[\s#_\"'\-]+|\bchain\b|\bno\.", "", name.lower().replace("×", "x"))


def twice(shown: str, cards: Iterable[Card]) -> list[Mistake]:
    """Find names that two cards share."""
    owner: dict[str, str] = {}
    names = [(card.id, plain(name)) for card in cards for name in (card.id, *card.aliases)]
    return [
        Mistake(shown, card, f"'{name}'", f"is also a name of {owner[name]}")
        for card, name in names
        if owner.setdefault(name, card) != card
    ]


def pick(kind: str, name: str, cards: Iterable[C]) -> C:
    """Give the card a name stands for.

    Raises
    ------
    UnknownCard
        with the nearest names.
    """
    return find(kind, name, [(n, card) for card in cards for n in (card.id, *card.aliases)])


def find(kind: str, name: str, spellings: Sequence[tuple[str, T]]) -> T:
    """Give what a spelling of ``name`` stands for; raises UnknownCard with the nearest names."""
    known = {plain(spelling): (spelling, what) for spelling, what in reversed(spellings)}
    asked = plain(name)
    if asked in known:
        return known[asked][1]
    near = difflib.get_close_matches(asked, known, 5, 0.5)
    near += [n for n in known if len(asked) > 1 and (n.startswith(asked) or asked.startswith(n))]
    shown: list[str] = []
    seen: list[T] = []
    for spelling, what in (known[n] for n in near):
        if what not in seen and len(shown) < 3:
            shown.append(spelling)
            seen.append(what)
    raise UnknownCard(kind, name, shown)
