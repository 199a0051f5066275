"""The answer on a terminal: plain words first, then the list, then what was assumed."""

from __future__ import annotations

import math

from rich.console import Console
from rich.table import Table

from .. import units
from ..assess import CAUTIONS, NOT_CHECKED, Assessment, Line
from ..limits import Effect, Limit

SHOWN_EFFECTS = 12
EFFECT_SHOWN = 0.002  # change of the logarithm of the first limit


def amperes(value: float | None, down: bool = False) -> str:
    """Write a current with the digits it deserves; a safe one is rounded down."""
    if value is None:
        return "-"
    if math.isinf(value):
        return "-"
    if value == 0:
        return "0"
    size = 10.0 ** (math.floor(math.log10(abs(value))) - 1)
    if abs(value) >= 100 and down:
        size /= 10
    step = value / size
    number = (math.floor(step + 1e-9) if down else round(step)) * size
    return f"{number:.0f}" if number >= 10 else f"{number:.1f}"


def shown(value: float, kind: str, system: str) -> str:
    """Write an input in its display unit; plain numbers as they are."""
    return units.show(value, kind, system) if kind in units.KINDS else f"{value:g}"


def first_words(a: Assessment) -> str:
    """Say the answer in one or two sentences."""
    current, safe = a.drive.current, a.first_safe.limit
    if math.isinf(safe.safe):
        head = f"No safe limit below {a.reach:.0f} A."
    elif safe.safe == 0:
        head = f"Not safe at any current as it stands: {_what(a.first_safe)}, {safe.why_not}."
    else:
        head = f"Safe to {amperes(safe.safe, down=True)} A, set by the {_what(a.first_safe)}."
    words = [head]
    if a.first_gives is not None:
        g = a.first_gives.limit
        words.append(
            f"What gives first is the {_what(a.first_gives)}, at about {amperes(g.gives)} A "
            f"({_upto(g.gives_low, g.reach)} to {_upto(g.gives_high, g.reach)} A): {g.check.sees}."
        )
    words.append(f"You have {float(current.set):g} A set" + _verdict(a) + ".")
    if current.wanted is not None:
        passed = [
            x
            for x in a.lines
            if x.limit.current_kind == "peak setting" and x.limit.safe < current.wanted
        ]
        count = (
            f"{len(passed)} safe limit{'s' if len(passed) != 1 else ''}"
            if passed
            else "no safe limit"
        )
        words.append(f"At the {float(current.wanted):g} A you want, {count} would be passed.")
    return " ".join(words)


def _what(line: Line) -> str:
    names = {
        "alignment": "alignment of the chain (the mount gives until the chain runs off)",
        "bolt_slip": "frame joint (the mount slides)",
        "mount_section": "mount itself (it bends for good)",
    }
    return names.get(line.limit.check.name, line.limit.check.part)


def _verdict(a: Assessment) -> str:
    if not a.over:
        return ", which is within the safe limit"
    safe = a.first_safe.limit.safe
    return (
        ", which is over the safe limit"
        if safe == 0
        else f", {float(a.drive.current.set) / safe:.1f} times the safe limit"
    )


def write(a: Assessment, console: Console) -> None:
    """Print the assessment."""
    console.print(first_words(a), highlight=False, soft_wrap=False)
    console.print()
    heading(console, "Limits in motor current, smallest first")
    console.print(_limits(a))
    _lines_of_use(a, console)
    if a.drive.current.wanted is not None:
        _wanted(a, console)
    _notes(a, console)
    heading(
        console,
        f"Assumed inputs, by what they do to the first limit ({a.first_safe.limit.check.name})",
    )
    console.print(_effects(a))
    _words(a, console)
    _list(console, "Not checked", NOT_CHECKED)
    _list(console, "Take care", CAUTIONS)


def new_table() -> Table:
    """Give an empty table in the house form: no frame, bold heads."""
    return Table(box=None, pad_edge=False, header_style="bold", padding=(0, 2, 0, 0))


def heading(console: Console, words: str) -> None:
    """Print a heading over a table or list."""
    console.print(words, style="bold")


def _limits(a: Assessment) -> Table:
    set_now = f"used at {float(a.drive.current.set):g} A"
    table = new_table()
    table.add_column("what", no_wrap=True)
    table.add_column("kind")
    table.add_column("safe to", justify="right")
    table.add_column("gives at (band)", justify="right", no_wrap=True)
    table.add_column(set_now, justify="right")
    table.add_column("where")
    for line in a.lines:
        x = line.limit
        gives = _gives(x)
        safe = f"over {a.reach:.0f} A" if math.isinf(x.safe) else f"{amperes(x.safe, down=True)} A"
        mark = " *" if x.current_kind == "continuous" else ""
        used = f"{100 * line.at_set.utilisation:.0f} %"
        flag = "!" if line.at_set.utilisation > 1 else ""
        table.add_row(x.check.name + mark, x.check.kind, safe, gives, flag + used, line.station)
    return table


def _upto(value: float | None, reach: float) -> str:
    """Write one end of a band; nothing is claimed beyond the currents looked at."""
    return f"over {reach:.0f}" if value is None or value > reach else amperes(value)


def _gives(x: Limit) -> str:
    if x.gives is None:
        return "-"
    low = "" if x.gives_low is None or x.gives_low > x.reach else amperes(x.gives_low)
    if math.isinf(x.gives):
        return f"over {x.reach:.0f} A" + (f" (from {low})" if low else "")
    return f"{amperes(x.gives)} A ({low} to {_upto(x.gives_high, x.reach)})"


def _lines_of_use(a: Assessment, console: Console) -> None:
    if any(x.limit.current_kind == "continuous" for x in a.lines):
        console.print(
            "* limits of the current held for hours; they do not count for the peak setting."
        )
    lines = a.uses
    if lines.traction_low is not None:
        console.print(
            f"Traction: the wheels spin from {amperes(lines.traction_low)} A on the worst ground, "
            f"{amperes(lines.traction_high)} A on the best. This never raises a safe limit."
        )
    else:
        console.print(f"Traction: not worked out ({lines.why_not}).")
    loads = a.at_set.loads
    system = a.drive.system
    console.print(
        f"At {float(a.drive.current.set):g} A: torque {units.show_both(float(loads.torque), 'torque', system)}, "
        f"chain pull at a start {units.show_both(float(loads.tight_side_tension), 'force', system)} "
        f"(starting factor {float(loads.starting_factor):.2f}: {a.starting_from}), "
        f"sprocket skew {math.degrees(a.skew_at_set[0]):.2f} deg, offset {a.skew_at_set[1] * 1000:.2f} mm, "
        f"movement towards the driven sprocket {a.skew_at_set[2] * 1000:.2f} mm."
    )
    console.print()


def _wanted(a: Assessment, console: Console) -> None:
    wanted = float(a.drive.current.wanted or 0.0)
    passed = [
        x for x in a.lines if x.limit.current_kind == "peak setting" and x.limit.safe < wanted
    ]
    if not passed:
        console.print(f"At {wanted:g} A every safe limit holds.\n")
        return
    heading(console, f"At the {wanted:g} A you want")
    table = new_table()
    for name in ("passed", "times over", "what you would see"):
        table.add_column(name, justify="right" if name == "times over" else "left")
    for line in passed:
        gives = line.limit.gives
        sure = "likely" if gives is not None and gives <= wanted else "no longer safe"
        over = line.at_wanted.utilisation if line.at_wanted else 0.0
        table.add_row(line.limit.check.name, f"{over:.1f}", f"{sure}: {line.limit.check.sees}")
    console.print(table)
    console.print()


def _notes(a: Assessment, console: Console) -> None:
    for line in a.lines:
        for note in line.notes:
            console.print(f"{line.limit.check.name}: {note}.")
    for warning in a.warnings:
        console.print(f"Warning: {warning}")
    console.print()


def effect_size(effect: Effect, check: str) -> float:
    """Give how far one input moves one check's limit, as a ratio of logarithms."""
    low, high = effect.low.get(check), effect.high.get(check)
    if not low or not high or math.isinf(low) or math.isinf(high):
        return 0.0 if low == high else math.inf
    return abs(math.log(high / low))


def _effects(a: Assessment) -> Table:
    first = a.first_safe.limit.check.name
    table = new_table()
    for name in ("input", "low", "likely", "high", f"{first} with it low", "with it high"):
        table.add_column(name, justify="left" if name == "input" else "right")
    for effect in _ordered(a)[:SHOWN_EFFECTS]:
        r = effect.range
        table.add_row(
            r.key, *(shown(v, r.kind, a.drive.system) for v in (r.low, r.likely, r.high)),
            _amps(effect.low.get(first), a.reach), _amps(effect.high.get(first), a.reach),
        )  # fmt: skip
    return table


def _amps(value: float | None, reach: float) -> str:
    if value is None:
        return "-"
    return f"over {reach:.0f} A" if math.isinf(value) else f"{amperes(value)} A"


def _ordered(a: Assessment) -> list[Effect]:
    """Give the uncertain inputs, the ones that move the first limit most in front."""
    first = a.first_safe.limit.check.name
    moving = [e for e in a.effects if effect_size(e, first) > EFFECT_SHOWN]
    return sorted(moving, key=lambda e: -effect_size(e, first))


def _words(a: Assessment, console: Console) -> None:
    shown_keys = {e.range.key for e in _ordered(a)[:SHOWN_EFFECTS]}
    rest = [e.range.key for e in a.effects if e.range.key not in shown_keys]
    if rest:
        console.print("Also assumed, with no or less effect on it: " + ", ".join(rest) + ".")
    if a.drive.words:
        console.print(
            "Taken for granted: " + "; ".join(f"{k} = {v}" for k, v in a.drive.words) + "."
        )
    console.print("The low and high ends of all of these are in the JSON record (--json).\n")


def _list(console: Console, title: str, items: tuple[str, ...]) -> None:
    heading(console, f"{title}:")
    for item in items:
        console.print(f"  - {item}")
