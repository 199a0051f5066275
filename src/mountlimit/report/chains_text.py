"""The answer to "which chain pitch", as text and as JSON-ready data."""

from __future__ import annotations

import math
from typing import Any

from rich.console import Console

from .. import units
from ..chains import Choice, Gives, Running
from ..model import Drive
from .quantities import number, quantity
from .table import heading, new_table
from .words import amperes, upto

SAME = 0.0005  # m
TO_BE_HAD = {"everyday": "shops", "specialist": "dealers", "rare": "order"}
CHANGES_WITH_IT = (
    "With another chain both sprockets change (bore and key as now), a tensioner's wheel too. Turn the drive by hand "
    "before power: a larger tip needs room to ground, guard and frame, a wider chain room beside the plate; set the "
    "sprockets in line anew, because their teeth are of another width. tip: over the teeth of the driving sprocket, and "
    "how much more than now. wide: over the plates, without the heads of the pins. centres: what the even number of links "
    "gives; more or less is for the tensioner. Bands as in check; ... is beyond the currents looked at. from: shops (bicycle, motorcycle, farm), dealers (chains and bearings), "
    "order (not kept in stock); common practice, no source."
)


def write(
    choices: list[Choice], current: float, drive: Drive, everything: bool, console: Console
) -> None:
    """Print the chains: the most useful columns, the drive's own chain marked."""
    own = drive.chain.chain.id
    shown = [
        c for c in choices if everything or c.chain.availability != "rare" or c.chain.id == own
    ]
    system = drive.system
    console.print(
        f"Chains at {current:g} A, about the same driving sprocket and ratio; the chain of the file is marked >. "
        "Sorted by the safe current of the whole drive.\n"
    )
    turning = drive.motor.speed
    table = new_table()
    for name in _names(turning is not None):
        table.add_column(name, justify="left" if name in ("chain", "set by") else "right")
    for c in shown:
        table.add_row(*_row(c, own, system, turning is not None))
    console.print(table)
    console.print()
    _what_else(shown, drive, console)
    console.print(
        "\npull: tight side at a start. of tensile: that pull over the minimum tensile strength. of dynamic: the steady "
        f"pull over the minimum dynamic strength (over 100 % the plates tire). {_wear_words(drive)} rub: skew in degrees "
        "at which plates rub on the teeth. chain alone: the chain's own safe current."
    )
    for c in shown:
        if c.why_not:
            console.print(f"{c.chain.id}: left out: {c.why_not}")
    weak = [c.chain.id for c in shown if c.chain.tensile_kind == "from memory"]
    if weak:
        console.print(f"Strength only remembered, not read in a standard: {', '.join(weak)}.")
    console.print(CHANGES_WITH_IT)
    if drive.jackshaft is not None:
        console.print(
            "Compared is the first chain, on the motor; the second stays as the file has it."
        )
    if any(not c.exact and not c.why_not for c in shown):
        console.print("~ safe current near, without a search of its own (rare chains).")
    if not everything:
        console.print("Rare chains are left out; --all shows them.")


def _what_else(shown: list[Choice], drive: Drive, console: Console) -> None:
    """Print where each chain gives, and what changes on the machine with it."""
    heading(console, "When it gives, and what changes on the machine")
    unit, scale, digits = ("in", 1 / 0.0254, 2) if drive.system == "inch" else ("mm", 1000.0, 0)
    table = new_table()
    for name in (
        "chain",
        "chain gives at, A",
        "first to give",
        "at, A",
        f"tip, {unit}",
        "more",
        f"wide, {unit}",
        f"centres, {unit}",
        "from",
    ):
        table.add_column(
            name, justify="left" if name in ("chain", "first to give", "from") else "right"
        )
    for c in shown:
        if c.why_not:
            continue
        more = "0" if abs(c.tip_change) < SAME else f"{scale * c.tip_change:+.{digits}f}"
        lengths = (
            f"{scale * v:.{digits}f}" for v in (c.sprocket_diameter, c.width, c.centre_distance)
        )
        tip, wide, centres = lengths
        part = c.first.part if c.first else ("none" if c.exact else "-")
        table.add_row(
            c.chain.id, _band(c.chain_gives, c.reach), part, _band(c.first, c.reach), tip, more, wide, centres,
            TO_BE_HAD[c.chain.availability],
        )  # fmt: skip
    console.print(table)


def _band(gives: Gives | None, reach: float) -> str:
    if gives is None:
        return "-"
    if math.isinf(gives.likely):
        low = "" if gives.low > reach else f" (could be {amperes(gives.low)})"
        return f"over {reach:.0f}{low}"
    return f"{amperes(gives.likely)} ({upto(gives.low, reach)}-{_end(gives.high, reach)})"


def _end(value: float, reach: float) -> str:
    """Write the high end of a band short enough for a column."""
    return "..." if value > reach else amperes(value)


def _names(rated: bool) -> list[str]:
    """Give the heads; where a speed is given the use of the rating stands for the pin pressure."""
    wear = "of rating" if rated else "pin"
    return ["chain", "teeth", "links", "pull", "of tensile", "of dynamic", wear, "rub", "kg/m",
            "chain alone", "drive safe to", "set by"]  # fmt: skip


def _wear_words(drive: Drive) -> str:
    """Explain the column of wear: of rating, or pin."""
    if drive.motor.speed is None:
        return "pin: pressure in the joints."
    held = float(drive.current.continuous or drive.current.set)
    speed = units.show(drive.motor.speed, "rotational_speed", drive.system)
    return (
        f"of rating: power at {held:g} A and {speed}, times 1.3 for some impact, over the chain's power rating for "
        "15 000 h at these teeth."
    )


def _row(c: Choice, own: str, system: str, rated: bool) -> list[str]:
    name = ("> " if c.chain.id == own else "  ") + c.chain.id
    teeth = f"{c.driving_teeth}/{c.driven_teeth}"
    if math.isnan(c.pull):
        return [name, teeth, *["-"] * (len(_names(rated)) - 2)]
    safe = "over" if math.isinf(c.safe) else f"{amperes(c.safe, down=True)} A"
    alone = "over" if math.isinf(c.chain_safe) else f"{amperes(c.chain_safe, down=True)} A"
    wear = _rating(c.running) if rated else units.show(c.pin_pressure, "stress", system, 2)
    return [
        name, teeth, str(c.links), units.show(c.pull, "force", system), f"{100 / c.tensile_factor:.0f} %",
        f"{100 * c.dynamic_share:.0f} %", wear, f"{math.degrees(c.rub_angle):.2f}",
        f"{float(c.chain.mass_per_length):.2f}", alone, safe, c.safe_check,
    ]  # fmt: skip


def _rating(running: Running | None) -> str:
    share = running.rating_share if running else None
    return "-" if share is None else f"{100 * share:.0f} %"


def record(choices: list[Choice], current: float) -> dict[str, Any]:
    """Give the comparison as JSON-ready data in SI."""
    return {
        "schema": "mountlimit-chains-1", "current": quantity(current, "A"),
        "chains": [_record(c) for c in choices],
    }  # fmt: skip


def _record(c: Choice) -> dict[str, Any]:
    def amperes_of(safe: float) -> float | None:
        return safe if safe >= 0 else None  # a chain that does not fit this drive

    return {
        "chain": c.chain.id, "series": c.chain.series, "availability": c.chain.availability,
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
        "exact": c.exact, "first_gives": _gives_record(c.first), "chain_gives": _gives_record(c.chain_gives),
        "tip_diameter_change": quantity(c.tip_change, "m"), "width_over_plates": quantity(c.width, "m"),
        "strength_kind": c.chain.tensile_kind, "source": c.chain.source, "why_not": c.why_not,
    }  # fmt: skip


def _gives_record(gives: Gives | None) -> dict[str, Any] | None:
    if gives is None:
        return None
    return {
        "check": gives.check, "low": number(gives.low), "likely": number(gives.likely),
        "high": number(gives.high), "unit": "A",
    }  # fmt: skip


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
