"""The answer to "which chain pitch", as text and as JSON-ready data."""

from __future__ import annotations

import math
from dataclasses import fields
from typing import Any

from rich.console import Console

from .. import units
from ..chains import Band, Changes, Choice, Running
from ..checks import BY_NAME
from ..model import ChainRun, Drive
from ..stages import second_drive
from .quantities import number, quantity
from .table import heading, new_table
from .words import amperes, upto

NOT_TOLD = "-"


def is_shown(c: Choice, own: str, everything: bool) -> bool:
    """Tell whether a chain is shown: all of them, or those that are not rare and the file's own."""
    return everything or c.chain.availability != "rare" or c.chain.id == own


def write(
    choices: list[Choice], current: float, drive: Drive, console: Console, *,
    second: bool = False, everything: bool = False, strains: bool = False,
) -> None:  # fmt: skip
    """Print the answer, the limits, and what else comes with each chain; ``strains`` adds the pulls."""
    run = drive.jackshaft.run if second and drive.jackshaft else drive.chain
    console.print(_first(choices, current, drive, run, second) + "\n")
    _limits(choices, run, console)
    console.print(
        "\ngives first: likely, and its band. chain's own: safe to, of the chain alone (t: its plates tire first, after "
        "many starts). stocked by: common practice, no source.\n"
    )
    _comes_with(choices, run, drive.system, console)
    console.print(
        "\ncentres: to set for that even number of links, and against now (an odd number needs a cranked link, which is "
        "weaker). tips: how much further than now the teeth of the driving and the driven sprocket reach, so how much less "
        "they clear ground, tyre and guard. teeth: width of those of sprockets made for the chain; the chain line and the overhang "
        "stay where they are. plates: width over them, the room the chain needs, pin ends stand out a little more. new: both sprockets."
    )
    if strains:
        console.print()
        _strains(choices, run, drive, second, console)
    for c in choices:
        if c.why_not:
            console.print(f"{c.chain.id}: left out: {c.why_not}")
    weak = [c.chain.id for c in choices if c.chain.tensile_kind == "from memory"]
    if weak:
        console.print(f"Strength only remembered, not read in a standard: {', '.join(weak)}.")
    if not everything:
        console.print("Rare chains are left out; --all shows them.")
    if not strains:
        console.print("Pull, shares of strength and rub of each chain: --loads.")


def _first(
    choices: list[Choice], current: float, drive: Drive, run: ChainRun, second: bool
) -> str:  # fmt: skip
    """Answer in plain words: whether another chain lets the drive carry more, and the chain itself."""
    which = "first" if drive.jackshaft is not None else ""
    which = "second" if second else which
    name = f"{which} chain".strip()
    mine = next((c for c in choices if c.chain.id == run.chain.id and c.whole), None)
    best = next((c for c in choices if c.whole), None)
    if mine is None or best is None or mine.whole is None or best.whole is None:
        return f"No {name} fits this drive."
    said = f"With the {name} as it is ({mine.chain.id}) the drive is safe to {_safe(mine.whole)}"
    said += f"; set by: {_part(mine.whole.safe_check)}."
    if best.safe > 1.05 * mine.safe:
        said += f" Best is {best.chain.id}, {_teeth(best)} teeth: {_safe(best.whole)}, set by: {_part(best.whole.safe_check)}."
    else:
        said += " No other chain carries more than 5 % more."
    if drive.jackshaft is not None and not second:
        said += " The second chain stays; --second compares that one."
    return (
        f"{said} You asked about {current:g} A. About the same driving sprocket and ratio; > marks the chain of the file; "
        "sorted by the safe current of the whole drive."
    )


def _part(check: str) -> str:
    return BY_NAME[check].part


def _teeth(c: Choice) -> str:
    return f"{c.driving_teeth}/{c.driven_teeth}"


def _name(c: Choice, run: ChainRun) -> str:
    return ("> " if c.chain.id == run.chain.id else "  ") + c.chain.id


def _safe(b: Band) -> str:
    return f"over {b.reach:.0f} A" if math.isinf(b.safe) else f"{amperes(b.safe, down=True)} A"


def _gives(b: Band) -> str:
    if b.gives is None:
        return NOT_TOLD
    if math.isinf(b.gives):
        return f"over {b.reach:.0f} A"
    low = NOT_TOLD if b.gives_low is None else amperes(b.gives_low)
    return f"{amperes(b.gives)} A ({low} to {upto(b.gives_high, b.reach)})"


def _limits(choices: list[Choice], run: ChainRun, console: Console) -> None:
    table = new_table()
    for name in ("chain", "teeth", "safe to", "gives first", "part", "chain's own", "stocked by"):
        left = name in ("chain", "gives first", "part", "stocked by")
        table.add_column(name, justify="left" if left else "right", overflow="fold")
    for c in choices:
        if c.whole is None or c.own is None:
            continue
        tires = " t" if c.own.safe_check.endswith("fatigue") and math.isfinite(c.own.safe) else ""
        part = _part(c.whole.gives_check) if c.whole.gives_check else NOT_TOLD
        table.add_row(_name(c, run), _teeth(c), _safe(c.whole), _gives(c.whole), part,
                      _safe(c.own) + tires, c.chain.market)  # fmt: skip
    console.print(table)


def _comes_with(choices: list[Choice], run: ChainRun, system: str, console: Console) -> None:
    """Print what else each chain changes."""
    heading(console, f"What comes with it, lengths in {'inches' if system == 'inch' else 'mm'}")
    table = new_table()
    for name in ("chain", "links", "centres", "tips", "teeth", "plates", "kg/m", "new",
                 "chain alone gives"):  # fmt: skip
        table.add_column(name, justify="left" if name in ("chain", "new") else "right")
    for c in choices:
        if c.changes is None or c.own is None:
            continue
        x = c.changes
        table.add_row(
            _name(c, run), str(c.links),
            f"{_length(c.centre_distance, system)} ({_more(x.centre_more, system)})",
            f"{_more(x.driving_radius, system)}, {_more(x.driven_radius, system)}",
            _length(x.tooth_width, system),
            _length(x.width_over_plates, system),
            f"{float(c.chain.mass_per_length):.2f}", "yes" if x.new_sprockets else "no", _gives(c.own),
        )  # fmt: skip
    console.print(table)


def _more(length: float, system: str) -> str:
    """Write a difference as ``_length`` does, with its sign."""
    value, digits = _bare(length, system)
    return f"{value:+.{digits}f}"


def _length(length: float, system: str) -> str:
    """Write a length as a bare number; the unit stands over the table."""
    value, digits = _bare(length, system)
    return f"{value:.{digits}f}"


def _bare(length: float, system: str) -> tuple[float, int]:
    """Give millimetres to a tenth, or inches to a hundredth, and the digits."""
    digits = 2 if system == "inch" else 1
    return round(length / (0.0254 if system == "inch" else 1e-3), digits) + 0.0, digits


def _strains(
    choices: list[Choice], run: ChainRun, drive: Drive, second: bool, console: Console
) -> None:  # fmt: skip
    """Print pull, shares of strength and rub at the current asked about."""
    rated = drive.motor.speed is not None
    heading(console, "At the current asked about")
    table = new_table()
    for name in (
        "chain",
        "pull",
        "of tensile",
        "of dynamic",
        "of rating" if rated else "pin",
        "rub",
    ):
        table.add_column(name, justify="left" if name == "chain" else "right")
    for c in choices:
        if math.isnan(c.pull):
            continue
        wear = (
            _rating(c.running) if rated else units.show(c.pin_pressure, "stress", drive.system, 2)
        )
        rub = NOT_TOLD if math.isnan(c.rub_angle) else f"{math.degrees(c.rub_angle):.2f}"
        table.add_row(
            _name(c, run), units.show(c.pull, "force", drive.system), f"{100 / c.tensile_factor:.0f} %",
            f"{100 * c.dynamic_share:.0f} %", wear, rub,
        )  # fmt: skip
    console.print(table)
    console.print(
        "\npull: tight side at a start. of tensile: that pull over the minimum tensile strength. of dynamic: the steady "
        f"pull over the minimum dynamic strength (over 100 % the plates tire). {_wear_words(drive, second)} rub: skew in "
        "degrees at which plates rub on the teeth."
    )


def _wear_words(drive: Drive, second: bool) -> str:
    """Explain the column of wear: of rating, or pin."""
    if drive.motor.speed is None:
        return "pin: pressure in the joints."
    held = float(drive.current.continuous or drive.current.set)
    speed = second_drive(drive).motor.speed if second else drive.motor.speed
    return (
        f"of rating: power at {held:g} A and {units.show(float(speed or 0.0), 'rotational_speed', drive.system)}, times 1.3 for some "
        "impact, over the chain's power rating for 15 000 h at these teeth."
    )


def _rating(running: Running | None) -> str:
    share = running.rating_share if running else None
    return NOT_TOLD if share is None else f"{100 * share:.0f} %"


def record(choices: list[Choice], current: float, second: bool = False) -> dict[str, Any]:
    """Give the comparison as JSON-ready data in SI."""
    return {
        "schema": "mountlimit-chains-1", "current": quantity(current, "A"),
        "compared": "second_chain" if second else "chain",
        "chains": [_record(c) for c in choices],
    }  # fmt: skip


def _record(c: Choice) -> dict[str, Any]:
    def amperes_of(safe: float) -> float | None:
        return safe if safe >= 0 else None  # a chain that does not fit this drive

    return {
        "chain": c.chain.id, "series": c.chain.series, "availability": c.chain.availability,
        "market": c.chain.market,
        "driving_teeth": c.driving_teeth, "driven_teeth": c.driven_teeth,
        "links": c.links, "centre_distance": quantity(c.centre_distance, "m"),
        "sprocket_diameter": quantity(c.sprocket_diameter, "m"),
        "pull": quantity(c.pull, "N"), "tensile_factor": number(c.tensile_factor),
        "tensile_share": number(1 / c.tensile_factor),
        "dynamic_share": number(c.dynamic_share), "pin_pressure": quantity(c.pin_pressure, "Pa"),
        "rub_angle": quantity(c.rub_angle, "rad"), "speed_ripple": number(c.speed_ripple),
        **_running(c.running),
        "chain_safe": quantity(amperes_of(c.chain_safe), "A"),
        "drive_safe": {**quantity(amperes_of(c.safe), "A"), "check": c.safe_check},
        "own": _band(c.own), "whole": _band(c.whole), "changes": _changes(c.changes),
        "strength_kind": c.chain.tensile_kind, "source": c.chain.source, "why_not": c.why_not,
    }  # fmt: skip


def _band(b: Band | None) -> dict[str, Any] | None:
    """Give exact limits; null for a chain that is only ranked."""
    if b is None:
        return None
    return {
        "safe": {**quantity(b.safe, "A"), "check": b.safe_check},
        "gives": {**quantity(b.gives, "A"), "check": b.gives_check},
        "gives_low": quantity(b.gives_low, "A"), "gives_high": quantity(b.gives_high, "A"),
        "reach": quantity(b.reach, "A"),
    }  # fmt: skip


def _changes(x: Changes | None) -> dict[str, Any] | None:
    if x is None:
        return None
    lengths = [f.name for f in fields(x) if f.name != "new_sprockets"]
    found: dict[str, Any] = {n: quantity(getattr(x, n), "m") for n in lengths}
    return found | {"new_sprockets": x.new_sprockets}


def _running(running: Running | None) -> dict[str, Any]:
    """Give what is known at the motor's speed; all null without one."""
    pairs = (
        ("chain_speed", "m/s"),
        ("power_rating", "W"),
        ("rated_pull", "N"),
        ("rating_needed", "W"),
    )
    found: dict[str, Any] = {
        name: quantity(getattr(running, name, None), unit) for name, unit in pairs
    }
    return found | {"rating_share": running.rating_share if running else None}
