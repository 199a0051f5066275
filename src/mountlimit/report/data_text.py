"""Lists of the data cards, filtered by words, every number with its source on demand."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import asdict, fields, is_dataclass
from typing import Any

from rich.console import Console

from .. import cards, units
from ..worked import Value
from .table import heading, new_table

KINDS: dict[str, tuple[Callable[[], Sequence[Any]], tuple[tuple[str, str], ...]]] = {
    "materials": (cards.materials, (("elastic_modulus", "stress"), ("yield_strength", "stress"), ("ultimate_strength", "stress"), ("density", "density"))),
    "chains": (cards.chains, (("pitch", "length"), ("inner_width", "length"), ("roller_diameter", "length"), ("minimum_tensile_strength", "force"), ("mass_per_length", "mass_per_length"))),
    "bolts": (cards.threads, (("diameter", "length"), ("pitch", "length"), ("stress_area", "area"), ("clearance_hole", "length"), ("washer_diameter", "length"))),
    "classes": (cards.bolt_classes, (("proof_stress", "stress"), ("yield_strength", "stress"), ("ultimate_strength", "stress"))),
    "bearings": (cards.bearings, (("bore", "length"), ("outside_diameter", "length"), ("dynamic_load_rating", "force"), ("static_load_rating", "force"))),
    "keys": (cards.keys, (("shaft_over", "length"), ("shaft_to", "length"), ("width", "length"), ("height", "length"))),
    "set-screws": (cards.set_screws, (("seating_torque", "torque"), ("holding_low", "force"), ("holding", "force"), ("holding_high", "force"))),
    "friction": (cards.frictions, (("low", "ratio"), ("likely", "ratio"), ("high", "ratio"))),
    "stock": (cards.stocks, (("thicknesses", "length"),)),
}  # fmt: skip


def find(kind: str, words: Sequence[str]) -> list[Any]:
    """Give the cards of a kind whose name, family or note holds all the words."""
    listed = KINDS[kind][0]()
    return [c for c in listed if all(w.lower() in _searched(c) for w in words)]


def _searched(card: Any) -> str:
    parts = [card.id, *card.aliases, card.note]
    parts += [
        str(getattr(card, f, ""))
        for f in ("name", "family", "series", "system", "availability", "kind")
    ]
    return " ".join(parts).lower()


def write(kind: str, words: Sequence[str], sources: bool, system: str, console: Console) -> int:
    """Print the cards; with ``sources`` every number of each with where it comes from. Gives the count."""
    found = find(kind, words)
    if not found:
        console.print(f"No {kind} match {' '.join(words)}.")
        return 0
    if sources:
        for card in found:
            _sheet(card, system, console)
        return len(found)
    heading(console, f"{len(found)} of {len(KINDS[kind][0]())} {kind}")
    labels = [getattr(c, "yield_kind", "") or getattr(c, "tensile_kind", "") for c in found]
    table = new_table()
    table.add_column("name")
    for name, _ in KINDS[kind][1]:
        table.add_column(name.replace("_", " "), justify="left" if kind == "stock" else "right")
    if any(labels):
        table.add_column("strength is")
    for card, label in zip(found, labels, strict=True):
        shown = [_value(getattr(card, n), k, system) for n, k in KINDS[kind][1]]
        table.add_row(card.id, *shown, *[label] * any(labels))
    console.print(table)
    console.print("\nSources: add --sources. More words narrow the list.")
    return len(found)


def record(kind: str, words: Sequence[str]) -> list[dict[str, Any]]:
    """Give the cards as data, SI: every number with its unit and source; what a card lacks is null."""
    return [_record(card) for card in find(kind, words)]


def _record(card: Any) -> dict[str, Any]:
    kinds = cards.kinds_of(type(card))
    found: dict[str, Any] = {}
    for field in fields(card):
        value = getattr(card, field.name)
        unit = kinds.get(field.name, "").removeprefix("list ")
        if unit in units.KINDS and value is not None:
            number = [float(v) for v in value] if isinstance(value, tuple) else float(value)
            source = getattr(value, "source", card.source)
            value = {"value": number, "unit": units.KINDS[unit].si, "source": source}
        elif is_dataclass(value) and not isinstance(value, type):
            value = asdict(value)
        found[field.name] = value
    return found


def _value(value: Any, kind: str, system: str) -> str:
    if isinstance(value, tuple):
        return ", ".join(_value(v, kind, system) for v in value)
    return "-" if value is None else units.show(float(value), kind, system)


def _sheet(card: Any, system: str, console: Console) -> None:
    console.print(f"{card.id}", style="bold")
    kinds = cards.kinds_of(type(card))
    for field in fields(card):
        value = getattr(card, field.name)
        if isinstance(value, Value) or (isinstance(value, tuple) and field.name != "aliases"):
            shown = _value(value, kinds.get(field.name, "ratio").removeprefix("list "), system)
            console.print(
                f"  {field.name.replace('_', ' ')}: {shown}   ({getattr(value, 'source', card.source)})"
            )
        elif isinstance(value, str) and value and field.name not in ("id", "source"):
            console.print(f"  {field.name.replace('_', ' ')}: {value}")
    if card.source:
        console.print(f"  source of the card: {card.source}")
    console.print()
