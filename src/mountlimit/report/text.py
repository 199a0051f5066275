"""The answer on a terminal: plain words first, then the list, then what was assumed."""

from __future__ import annotations

import math

from rich.console import Console
from rich.table import Table

from .. import units
from ..assess import CAUTIONS, Assessment, not_checked
from ..consequence import RANK_WORDS
from ..limits import Effect
from ..stages import second_drive
from . import jam_text, upkeep_text
from .table import heading, new_table
from .words import amperes, first_words, gives_cell, passed_at, safe_cell, shown, upto
from .worked_text import both_lines

SHOWN_EFFECTS = 12
# Inputs that stand for the model or a maker's tolerance: no caliper settles them.
MODEL_KEYS = (
    "mount.warping_held",
    "mount.softness",
    "mount.local_stress",
    "mount.prying",
    "policy.throw_level",
    "chain.stretch_ratio",
    "motor.torque_scatter",
)
EFFECT_SHOWN = 0.002  # change of the logarithm of the first limit


def write(a: Assessment, console: Console) -> None:
    """Print the assessment."""
    console.print(first_words(a))
    write_limits(a, console)
    write_at_currents(a, console)
    write_routes(a, console)
    write_wanted(a, console)
    write_notes(a, console)
    write_assumed(a, console)
    write_upkeep(a, console)
    write_list(console, "\nNot checked", not_checked(a.drive))
    write_list(console, "Take care", CAUTIONS)


def write_limits(a: Assessment, console: Console) -> None:
    """Print the list of limits, and what its columns mean."""
    heading(console, "\nLimits in motor current, smallest first")
    console.print(_limits(a))
    _under_the_list(a, console)


def write_at_currents(a: Assessment, console: Console) -> None:
    """Print loads and movement at the set current, and what a dead stop would do."""
    _at_the_set_current(a, console)
    jam_text.write(a.stops, a.drive.system, console)


def write_assumed(a: Assessment, console: Console) -> None:
    """Print the assumed inputs, by what they do to the first safe limit."""
    first = a.first_safe.limit.check.name
    heading(console, f"\nAssumed inputs, by what they do to the safe limit of {first}")
    console.print("One input at a time at its low and high end, all others at their likely value.")
    console.print(_effects(a))
    _assumed_in_words(a, console)


def write_upkeep(a: Assessment, console: Console) -> None:
    """Print what to set and measure on the chain, or on both."""
    upkeep_text.write(a.upkeep, a.drive, console)
    if a.second_upkeep:
        upkeep_text.write(a.second_upkeep, second_drive(a.drive), console, "second chain")


def _limits(a: Assessment) -> Table:
    table = new_table()
    table.add_column("what, and how it limits")
    table.add_column("safe to", justify="right", no_wrap=True)
    table.add_column("gives at (band)", justify="right")
    table.add_column(f"used at {float(a.drive.current.set):g} A", justify="right")
    table.add_column("name for why", no_wrap=True)
    for line in a.lines:
        x = line.limit
        mark = "" if x.counts else (" *" if x.current_kind == "continuous" else " ~")
        over = "!" if line.at_set.utilisation > 1 else ""
        table.add_row(
            f"{x.check.part}, {x.check.kind}{mark}", safe_cell(x), gives_cell(x),
            f"{over}{100 * line.at_set.utilisation:.0f} %", x.check.name,
        )  # fmt: skip
    return table


def _under_the_list(a: Assessment, console: Console) -> None:
    if any(x.limit.current_kind == "continuous" for x in a.lines):
        console.print("* of the current held for hours; does not count for the peak setting.")
    if any(x.limit.current_kind != "continuous" and not x.limit.counts for x in a.lines):
        console.print(
            "~ starts: endless up to this current, a limited number above it; does not count for the peak setting."
        )
    console.print(
        "Used: share of the safe limit. Weight and knocks count in it, so it need not grow in step with current."
    )
    lines = a.uses
    if lines.traction_low is not None:
        console.print(
            f"Wheels spin from {amperes(lines.traction_low)} A on the worst ground, "
            f"{amperes(lines.traction_high)} A on the best. This never raises a safe limit."
        )
    else:
        console.print(f"Wheelspin: not worked out ({lines.why_not}).")


def _at_the_set_current(a: Assessment, console: Console) -> None:
    loads, system = a.at_set.loads, a.drive.system
    factor = float(loads.starting_factor)
    console.print(
        f"At {float(a.drive.current.set):g} A, likely values: torque {units.show_both(float(loads.torque), 'torque', system)}, "
        f"chain pull at a start {units.show_both(float(loads.tight_side_tension), 'force', system)} "
        f"({factor:.2f} times the steady pull: {a.starting_from}); the sprocket is "
        f"{math.degrees(a.skew_at_set[0]):.2f} deg and {units.show_both(a.skew_at_set[1], 'length', system)} out of line, "
        f"{units.show_both(a.skew_at_set[2], 'length', system)} nearer to the driven sprocket."
    )


def write_routes(a: Assessment, console: Console) -> None:
    """Say which model governs, and how the other one sees the same case."""
    console.print(f"Stiffness and bolt forces by the {a.route}.")
    for line in both_lines(a.both, a.drive.system):
        console.print(f"  {line}")


def write_wanted(a: Assessment, console: Console) -> None:
    """Say which safe limits the wanted current passes, if one is told, and what follows."""
    wanted = float(a.drive.current.wanted or 0.0)
    passed = passed_at(a, wanted)
    if not passed:
        return
    heading(console, f"\nAt the {wanted:g} A you want")
    table = new_table()
    for name in ("passed", "times over", "what you would see"):
        table.add_column(name, justify="right" if name == "times over" else "left")
    for line in sorted(passed, key=lambda x: x.consequence.rank):
        gives = line.limit.gives
        sure = "likely" if gives is not None and gives <= wanted else "no longer safe"
        over = line.at_wanted.utilisation if line.at_wanted else 0.0
        table.add_row(line.limit.check.part, f"{over:.1f}", f"{sure}: {line.limit.check.sees}")
    console.print(table)
    for rank in sorted({line.consequence.rank for line in passed}):
        of_rank = [x for x in passed if x.consequence.rank == rank]
        parts = ", ".join(dict.fromkeys(x.limit.check.part for x in of_rank))
        words = "; ".join(dict.fromkeys(x.consequence.words for x in of_rank))
        console.print(f"What {RANK_WORDS[rank]}: {parts} ({words}).")


def write_notes(a: Assessment, console: Console) -> None:
    """Print what stands beside the limits, and the warnings."""
    notes = [(x.limit, n) for x in a.lines for n in x.notes if not math.isinf(x.limit.safe)]
    if notes or a.warnings:
        console.print()
    for limit, note in notes:
        console.print(f"{limit.check.name}: {note}.")
    far = [x.limit.check.name for x in a.lines if math.isinf(x.limit.safe)]
    if far:
        console.print(f"Not reached below {a.reach:.0f} A: {', '.join(far)}.")
    for warning in a.warnings:
        console.print(f"Warning: {warning}")


def effect_size(effect: Effect, check: str) -> float:
    """Give how far one input moves one check's limit, as a ratio of logarithms."""
    low, high = effect.low.get(check), effect.high.get(check)
    if not low or not high or math.isinf(low) or math.isinf(high):
        return 0.0 if low == high else math.inf
    return abs(math.log(high / low))


def _ordered(a: Assessment) -> list[Effect]:
    """Give the uncertain inputs, the ones that move the first limit most in front."""
    first = a.first_safe.limit.check.name
    moving = [e for e in a.effects if effect_size(e, first) > EFFECT_SHOWN]
    return sorted(moving, key=lambda e: -effect_size(e, first))


def _effects(a: Assessment) -> Table:
    first = a.first_safe.limit.check.name
    table = new_table()
    for name in ("input", "low", "likely", "high", "safe with it low", "with it high"):
        table.add_column(
            name, justify="left" if name == "input" else "right", no_wrap=name == "input"
        )
    for effect in _ordered(a)[:SHOWN_EFFECTS]:
        r = effect.range
        table.add_row(
            r.key, *(shown(v, r.kind, a.drive.system, r.high) for v in (r.low, r.likely, r.high)),
            f"{upto(effect.low.get(first), a.reach)} A", f"{upto(effect.high.get(first), a.reach)} A",
        )  # fmt: skip
    return table


def _assumed_in_words(a: Assessment, console: Console) -> None:
    ordered = _ordered(a)
    measurable = [e for e in ordered if e.range.key not in MODEL_KEYS]
    if measurable:
        effect, first = measurable[0], a.first_safe.limit.check.name
        low, high = (upto(e.get(first), a.reach) for e in (effect.low, effect.high))
        console.print(f"Measure {effect.range.key} first: between {low} A and {high} A hang on it.")
    seen = {e.range.key for e in ordered[:SHOWN_EFFECTS]}
    rest = [e.range.key for e in a.effects if e.range.key not in seen]
    if rest:
        console.print(
            "Also assumed, with less or no effect on this limit: " + ", ".join(rest) + "."
        )
    if a.drive.words:
        console.print(
            "Taken for granted: " + "; ".join(f"{k} = {v}" for k, v in a.drive.words) + "."
        )
    console.print("All low and high ends with their sources: --json.")


def write_list(console: Console, title: str, items: tuple[str, ...]) -> None:
    """Print a list under a heading."""
    heading(console, f"{title}:")
    for item in items:
        console.print(f"  - {item}")
