"""The answer to "what is the cheapest change that buys the amps", as text and as JSON-ready data."""

from __future__ import annotations

import math
from typing import Any

from rich.console import Console
from rich.padding import Padding

from ..assess import CAUTIONS
from ..changes import COST_WORDS, COSTS, Edit
from ..limits import Limit
from ..traction import Lines
from ..what_to_change import LARGEST, Answer, Outcome
from .quantities import number, quantity
from .table import heading, new_table
from .words import PLAIN, amperes, upto

DEEP = 5  # columns that what belongs to a line is set in


def write(a: Answer, console: Console) -> None:
    """Print what buys the wanted current, then every single change that helps."""
    console.print(_first(a))
    console.print(_nothing(a))
    if a.safe < a.wanted:
        for title, outcome in _sets(a):
            heading(console, f"\n{title}")
            _set(outcome, console)
        if a.singles:
            heading(console, "\nOne change at a time, most current first")
            _table(a, console)
        _tried(a, console)
    _cautions(a, console)


def _first(a: Answer) -> str:
    """Answer the question in plain words."""
    now = f"Safe to {_safe(a.safe, a)} now ({_name(a.base.first_safe)})"
    if a.safe >= a.wanted:
        return f"No change is needed for {a.wanted:g} A. {now}."
    if a.cheapest is not None:
        return (
            f"{_count(a.cheapest)} {a.wanted:g} A; it takes {COST_WORDS[a.cheapest.cost]}. "
            f"{now}, {_safe(a.cheapest.safe, a)} after."
        )
    if a.best is None:
        return f"None of the {a.tried} changes tried carries {a.wanted:g} A. {now}."
    first = a.best.found.first_safe
    many = f"the best {len(a.best.edits)} together" if len(a.best.edits) > 1 else "the best"
    return (
        f"None of the {a.tried} changes tried, and no set of up to {LARGEST} of them that was found, carries "
        f"{a.wanted:g} A. {now}; even with {many} {_safe(a.best.safe, a)} ({_name(first)})."
    )


def _count(o: Outcome) -> str:
    count = len(o.edits)
    return "One change carries" if count == 1 else f"{count} changes together carry"


def _sets(a: Answer) -> list[tuple[str, Outcome]]:
    found = []
    if a.cheapest is not None:
        found.append(("The cheapest found that carries it", a.cheapest))
    if a.fewest is not None and a.fewest is not a.cheapest:
        found.append(("With fewer changes, for more work or money", a.fewest))
    if a.best is not None:
        found.append(("The nearest found", a.best))
    return found


def _set(o: Outcome, console: Console) -> None:
    for i, edit in enumerate(o.edits, 1):
        words = f"{_words(edit, o)}. {_upper(COST_WORDS[edit.change.cost])}; tools: {edit.change.tools}."
        table = new_table()
        table.show_header = False
        table.add_row(f"  {i}.", words)
        console.print(table)
    safe = f"over {o.found.reach:.0f} A" if math.isinf(o.safe) else _amps(o.safe)
    deep = (
        f"Safe to {safe} instead of {_amps(o.before)}; the limit then: {_name(o.found.first_safe)}.",
        _gives(o),
        f"In the file: {', '.join(_key(k, v) for k, v in o.keys.items())}.",
    )
    for words in deep:
        console.print(Padding(words, (0, 0, 0, DEEP)))


def _words(edit: Edit, o: Outcome) -> str:
    """Write a change; the torque that suits the frame bolts is known once all changes are made."""
    torque = o.keys.get("fixings.tightening_torque")
    to = f" (frame bolts to {torque})" if edit.suits and torque else ""
    return f"{_upper(edit.words)}{to}"


def _key(key: str, value: Any) -> str:
    if value is None:
        return f"{key} left out"
    return f'{key} = "{value}"' if isinstance(value, str) else f"{key} = {value}"


def _gives(o: Outcome) -> str:
    """Say what gives first after the change, with its band."""
    one = o.found.first_gives
    if one is None:
        return f"Nothing is likely to give below {o.found.reach:.0f} A then."
    return (
        f"What gives first then: the {one.check.part}, at about {amperes(one.gives)} A {_band(one)}. "
        f"You would see: {one.check.sees}."
    )


def _band(one: Limit) -> str:
    return f"({upto(one.gives_low, one.reach)} to {upto(one.gives_high, one.reach)} A)"


def _table(a: Answer, console: Console) -> None:
    table = new_table()
    for name in ("safe to", "gain", "enough", "change, what it costs, what limits it then"):
        table.add_column(name, justify="right" if name in ("safe to", "gain") else "left")
    for o in a.singles:
        edit, one = o.edits[0], o.found.first_gives
        gives = "" if one is None else f"; gives first: {one.check.part}, about {amperes(one.gives)} A {_band(one)}"  # fmt: skip
        words = (
            f"{_words(edit, o)}. {_upper(COSTS[edit.change.cost])}: {edit.change.tools}. "
            f"Limit then: {_name(o.found.first_safe)}{gives}."
        )
        table.add_row(_safe(o.safe, a), _gain(o), "yes" if o.reaches else "no", words)
    console.print(table)
    reach = (
        f"Enough: carries {a.wanted:g} A by itself. " if any(o.reaches for o in a.singles) else ""
    )
    console.print(f"{reach}Of each kind the smallest size that does is shown, else the best tried.")


def _gain(o: Outcome) -> str:
    if math.isinf(o.safe):
        return "-"
    gain = o.safe - o.before
    return f"+{gain:.0f} A" if gain >= 10 else f"+{gain:.1f} A"


def _nothing(a: Answer) -> str:
    """Give the lines that cost nothing: leave it and set the limit, and where the wheels spin."""
    if a.safe < 0.1:
        first = (
            "Or do nothing: but no current is safe as it stands. Mend that before the drive runs."
        )
    elif math.isinf(a.safe):
        first = f"No limit below {a.base.reach:.0f} A."
    else:
        first = f"Or do nothing: set the limit to {amperes(a.safe, down=True)} A."
    return " ".join(x for x in (first, spins(a.uses, a.wanted)) if x)


def spins(uses: Lines, wanted: float) -> str:
    """Say that the wheels spin before the wanted current; empty where they do not or it is not known."""
    high = uses.traction_high
    if high is None or high >= wanted:
        return ""
    return (
        f"The wheels spin from about {amperes(high)} A even on good ground: more only spins them, and makes "
        "no limit safer."
    )


def _tried(a: Answer, console: Console) -> None:
    """Say what was looked at, and what was left out."""
    console.print()
    if a.less:
        console.print(f"Less gain alone: {', '.join(a.less)}.")
    if a.no_gain:
        console.print(f"No gain alone: {', '.join(a.no_gain)}.")
    words = f"{a.tried} changes were tried one by one"
    if a.pairs_possible:
        words += f", {a.pairs} of the {a.pairs_possible} pairs that could carry it, likeliest first"
    words += f", then sets of up to {LARGEST}."
    if a.refused:
        words += f" {len(a.refused)} more do not fit this drive; --json says why."
    words += " Every current shown is what `mountlimit check` gives with the keys in the file."
    console.print(words)


def _cautions(a: Answer, console: Console) -> None:
    own = [e.change.caution for _, o in _sets(a) for e in o.edits if e.change.caution]
    own += [o.edits[0].change.caution for o in a.singles if o.edits[0].change.caution]
    heading(console, "\nTake care")
    for words in dict.fromkeys((*own, *CAUTIONS)):
        console.print(Padding(f"- {words}", (0, 0, 0, 2)))


def _upper(words: str) -> str:
    return words[:1].upper() + words[1:]


def _name(limit: Limit) -> str:
    """Give a limit's name for a sentence, short."""
    return PLAIN.get(limit.check.name, limit.check.part).split(":")[0]


def _amps(value: float) -> str:
    return f"{amperes(value, down=True)} A"


def _safe(value: float, a: Answer) -> str:
    return f"over {a.base.reach:.0f} A" if math.isinf(value) else _amps(value)


def record(a: Answer) -> dict[str, Any]:
    """Give the answer as JSON-ready data in SI."""
    return {
        "schema": "mountlimit-changes-1", "wanted": quantity(a.wanted, "A"),
        "safe": {**quantity(a.safe, "A"), "check": a.base.first_safe.check.name},
        "reached": a.safe >= a.wanted or a.cheapest is not None,
        "cheapest": _outcome(a.cheapest), "fewest": _outcome(a.fewest), "best": _outcome(a.best),
        "singles": [_outcome(o) for o in a.singles], "less_gain_alone": list(a.less),
        "no_gain_alone": list(a.no_gain),
        "refused": [{"change": r.name, "words": r.words, "why": r.why} for r in a.refused],
        "tried": a.tried, "pairs_run": a.pairs, "pairs_possible": a.pairs_possible,
        "wheels_spin_from": quantity(a.uses.traction_high, "A"), "cautions": list(CAUTIONS),
    }  # fmt: skip


def _outcome(o: Outcome | None) -> dict[str, Any] | None:
    if o is None:
        return None
    one = o.found.first_gives
    gives = {
        "check": one.check.name if one else None, **quantity(one.gives if one else None, "A"),
        "low": number(one.gives_low) if one else None, "high": number(one.gives_high) if one else None,
    }  # fmt: skip
    return {
        "changes": [_edit(e) for e in o.edits], "keys": dict(o.keys), "cost": COSTS[o.cost],
        "reaches": o.reaches, "safe_before": quantity(o.before, "A"),
        "safe": {**quantity(o.safe, "A"), "check": o.found.first_safe.check.name},
        "gain": quantity(o.safe - o.before, "A"), "then_gives": gives,
    }  # fmt: skip


def _edit(e: Edit) -> dict[str, Any]:
    return {
        "change": e.change.name, "words": e.words, "cost": COSTS[e.change.cost],
        "tools": e.change.tools, "caution": e.change.caution,
    }  # fmt: skip
