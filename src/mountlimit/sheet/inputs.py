"""The inputs of a drive as a table: what was given, what was assumed, what comes from a card."""

from __future__ import annotations

from collections.abc import Iterable

from .. import units
from ..assess import Assessment
from ..report.words import shown
from ..report.worked_text import number
from ..why import Worked
from .blocks import Grid

HEADS = ("input", "value", "low to high", "origin", "source")


def table(a: Assessment, worked: Iterable[Worked]) -> Grid:
    """Give every input, with the cards' numbers that the worked lines used."""
    rows = [*_given(a), *_assumed(a), *_words(a), *_cards(worked, a.drive.system)]
    return Grid(
        caption="Inputs: given, assumed, from a card", heads=HEADS, rows=tuple(rows),
        right=(False, True, True, False, False),
    )  # fmt: skip


def _given(a: Assessment) -> list[tuple[str, ...]]:
    found: list[tuple[str, ...]] = []
    for key, given in a.file.given.items():
        value, both = given.text, ""
        if given.kind in units.KINDS and given.kind != "ratio" and isinstance(given.value, float):
            value = f"{given.text} ({_si(given.value, given.kind)})"
        if given.low is not None and given.high is not None:
            low, likely, high = (
                shown(float(v), given.kind, a.drive.system, given.high)
                for v in (given.low, given.value, given.high)
            )
            value, both = likely, f"{low} to {high}"
        found.append((key, value, both, "given", "your file"))
    return found


def _si(value: float, kind: str) -> str:
    unit = units.KINDS[kind].si
    return f"{value:.6g}" if unit in ("", "-") else f"{value:.6g} {unit}"


def _assumed(a: Assessment) -> list[tuple[str, ...]]:
    found: list[tuple[str, ...]] = []
    for r in a.drive.ranges:
        if r.origin == "given":
            continue
        low, likely, high = (
            shown(v, r.kind, a.drive.system, r.high) for v in (r.low, r.likely, r.high)
        )
        found.append(
            (r.key, likely, "" if r.low == r.high else f"{low} to {high}", "assumed", r.source)
        )
    return found


def _words(a: Assessment) -> list[tuple[str, ...]]:
    return [(key, word, "", "assumed", "taken for granted") for key, word in a.drive.words]


def _cards(worked: Iterable[Worked], system: str) -> list[tuple[str, ...]]:
    """Give the numbers of cards that some worked line put in, once each."""
    found: dict[tuple[str, ...], None] = {}
    for work in worked:
        for step in work.steps:
            for entry in step.entries:
                if entry.origin == "card":
                    value = number(entry.value, entry.symbol.unit, system, 6)
                    found[entry.key, value, "", "card", entry.source] = None
    return sorted(found)
