"""Two drives side by side, as text and as JSON-ready data."""

from __future__ import annotations

import math
from typing import Any

from rich.console import Console
from rich.table import Table

from ..compare import ASSUMED, GIVEN, Change, Comparison, Input, Pair
from ..limits import Found, Limit
from ..units import KINDS
from .quantities import number, quantity
from .table import heading, new_table
from .words import PLAIN, amperes, gives_cell, safe_cell, shown

SCHEMA = "mountlimit-compare-1"
ALIKE = 0.005  # relative: less is no difference worth the name
NONE = "-"


def write(c: Comparison, console: Console) -> None:
    """Print the comparison."""
    console.print(_first(c))
    console.print(f"A: {_title(c.a)}. B: {_title(c.b)}.")
    if not c.changes:
        return
    if c.written:
        heading(console, "\nWhat was changed in the file")
        console.print(_changes(c, c.written))
    if c.followed:
        heading(console, "\nWhat is assumed or read off a card, and so changed with it")
        console.print(_changes(c, c.followed))
    heading(console, "\nLimits in motor current")
    console.print(_limits(c))
    _under_the_list(c, console)
    for line in _known(c):
        console.print(line)


def _title(found: Found) -> str:
    return f"{found.drive.title or 'no title'} ({found.file.name})"


def _name(limit: Limit) -> str:
    return f"the {limit.check.part}"


def _plain(limit: Limit) -> str:
    return PLAIN.get(limit.check.name, limit.check.part)


def _safe(found: Found) -> str:
    safe = found.first_safe.safe
    if math.isinf(safe):
        return f"over {found.reach:.0f} A"
    return "no current at all" if safe < 0.1 else f"{amperes(safe, down=True)} A"


def _first(c: Comparison) -> str:
    one, two = c.a.first_safe, c.b.first_safe
    if not c.changes:
        return f"Nothing changed: A and B are the same drive, safe to {_safe(c.a)} ({_plain(one)})."
    by = (
        f"{_name(two)} sets it, as before"
        if one.check.name == two.check.name
        else f"{_name(one)} no longer sets it, {_name(two)} does"
    )
    if _safe(c.a) == _safe(c.b):
        return f"B is safe to {_safe(c.b)}, as A is: {by}. {_gives(c)}"
    return f"B is safe to {_safe(c.b)} instead of {_safe(c.a)}: {by}. {_gives(c)}"


def _giving(found: Found) -> str:
    first = found.first_gives
    if first is None or first.gives is None:
        return f"nothing below {found.reach:.0f} A"
    at = "before any current" if first.gives < 0.1 else f"at about {amperes(first.gives)} A"
    return f"{_name(first)} {at}"


def _gives(c: Comparison) -> str:
    one, two = _giving(c.a), _giving(c.b)
    if one == two:
        return f"What gives first is in both {one}."
    return f"What gives first: in A {one}, in B {two}."


def _cell(found: Input | None, system: str) -> str:
    if found is None:
        return NONE
    if found.origin == GIVEN:
        return found.text
    mark = "assumed" if found.origin == ASSUMED else "card"
    if found.likely is None:
        return f"{found.text} ({mark})"
    likely = shown(found.likely, found.kind, system)
    if found.low is None or found.high is None or found.low == found.high:
        return f"{likely} ({mark})"
    low, high = (shown(v, found.kind, system, found.high) for v in (found.low, found.high))
    return f"{likely} ({mark}: {low} to {high})"


def _changes(c: Comparison, changes: tuple[Change, ...]) -> Table:
    system = c.a.drive.system
    table = new_table()
    table.add_column("key", no_wrap=True)
    table.add_column("A")
    table.add_column("B")
    for change in changes:
        table.add_row(change.key, _cell(change.a, system), _cell(change.b, system))
    return table


def difference(pair: Pair) -> float | None:
    """Give by how much B is safe to more (A); None where either is not reached or not there."""
    if pair.a is None or pair.b is None:
        return None
    change = pair.b.safe - pair.a.safe
    return change if math.isfinite(change) else None


def _difference(pair: Pair) -> str:
    if pair.a is None:
        return "only in B"
    if pair.b is None:
        return "only in A"
    if math.isinf(pair.a.safe) and math.isinf(pair.b.safe):
        return NONE
    change = difference(pair)
    if change is None:
        return "more" if math.isinf(pair.b.safe) else "less"
    if abs(change) <= ALIKE * max(pair.a.safe, pair.b.safe):
        return "same"
    return f"{'+' if change > 0 else '-'}{amperes(abs(change))} A"


def _limits(c: Comparison) -> Table:
    table = new_table()
    table.add_column("what, and how it limits")
    for name in ("A safe to", "B safe to", "change"):
        table.add_column(name, justify="right", no_wrap=True)
    for name in ("A gives at", "B gives at"):
        table.add_column(name, justify="right")
    firsts = (c.a.first_safe, c.b.first_safe)
    for pair in c.pairs:
        x = pair.either
        mark = "" if x.counts else (" *" if x.current_kind == "continuous" else " ~")
        cells = [
            NONE if limit is None else (">" if limit is first else "") + safe_cell(limit)
            for limit, first in zip((pair.a, pair.b), firsts, strict=True)
        ]
        gives = [NONE if v is None else _gives_cell(v) for v in (pair.a, pair.b)]
        table.add_row(f"{x.check.part}, {x.check.kind}{mark}", *cells, _difference(pair), *gives)
    return table


def _gives_cell(limit: Limit) -> str:
    return gives_cell(limit).split(" (")[0]


def _under_the_list(c: Comparison, console: Console) -> None:
    console.print("> sets the safe current. gives at: likely value; its band: mountlimit check.")
    kinds = {(x.either.counts, x.either.current_kind) for x in c.pairs}
    if (False, "continuous") in kinds:
        console.print("* of the current held for hours; does not count for the peak setting.")
    if (False, "peak setting") in kinds:
        console.print("~ starts: endless up to this current; does not count for the peak setting.")


def _known(c: Comparison) -> list[str]:
    one, two = c.assumed
    found = [f"Assumed as a range: {one} inputs in A, {two} in B."]
    if c.became_known:
        found.append(f"Assumed in A, told in B: {', '.join(c.became_known)}.")
    if c.became_assumed:
        found.append(f"Told in A, assumed in B: {', '.join(c.became_assumed)}.")
    return found


def _input(found: Input | None) -> dict[str, Any] | None:
    if found is None:
        return None
    unit = KINDS[found.kind].si if found.kind in KINDS else ""
    return {
        "origin": found.origin, "text": found.text, "low": number(found.low),
        "likely": number(found.likely), "high": number(found.high), "unit": unit,
    }  # fmt: skip


def _limit(limit: Limit | None) -> dict[str, Any] | None:
    if limit is None:
        return None
    return {
        "safe": quantity(limit.safe, "A"), "gives": quantity(limit.gives, "A"),
        "counts_for_safe_current": limit.counts,
    }  # fmt: skip


def _side(found: Found) -> dict[str, Any]:
    safe, gives = found.first_safe, found.first_gives
    return {
        "file": found.file.name, "title": found.drive.title, "input_sha256": found.file.sha256,
        "safe_current": {**quantity(safe.safe, "A"), "check": safe.check.name},
        "gives_current": None if gives is None else {**quantity(gives.gives, "A"), "check": gives.check.name},
        "not_reached_below": quantity(found.reach, "A"),
    }  # fmt: skip


def record(c: Comparison) -> dict[str, Any]:
    """Give the comparison as plain JSON-ready data."""
    changed, followed = (
        [{"key": x.key, "a": _input(x.a), "b": _input(x.b)} for x in changes]
        for changes in (c.written, c.followed)
    )
    return {
        "schema": SCHEMA, "a": _side(c.a), "b": _side(c.b),
        "changed": changed, "changed_with_it": followed,
        "limits": [
            {"check": p.name, "part": p.either.check.part, "current": p.current_kind, "a": _limit(p.a),
             "b": _limit(p.b), "safe_change": quantity(difference(p), "A")}
            for p in c.pairs
        ],
        "assumed_in_a": c.assumed[0], "assumed_in_b": c.assumed[1],
        "became_known": list(c.became_known), "became_assumed": list(c.became_assumed),
    }  # fmt: skip
