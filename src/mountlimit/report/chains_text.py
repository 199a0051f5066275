"""The answer to "which chain pitch", as text and as JSON-ready data."""

from __future__ import annotations

import math
from typing import Any

from rich.console import Console

from .. import units
from ..chains import Choice, Running
from ..model import Drive
from .quantities import number, quantity
from .table import new_table
from .words import amperes


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
    if not everything:
        console.print("Rare chains are left out; --all shows them.")


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
        "strength_kind": c.chain.tensile_kind, "source": c.chain.source, "why_not": c.why_not,
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
