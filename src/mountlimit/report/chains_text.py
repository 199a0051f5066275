"""The answer to "which chain pitch", as text and as JSON-ready data."""

from __future__ import annotations

import math
from typing import Any

from rich.console import Console

from .. import units
from ..chains import Choice
from ..model import Drive
from .text import new_table
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
    table = new_table()
    names = (
        "chain",
        "teeth",
        "links",
        "pull",
        "of tensile",
        "of dynamic",
        "pin",
        "rub at",
        "kg/m",
        "chain alone",
        "drive safe to",
        "set by",
    )
    for name in names:
        table.add_column(name, justify="left" if name in ("chain", "set by") else "right")
    for c in shown:
        table.add_row(*_row(c, own, system))
    console.print(table)
    console.print(
        "\npull: tight side at a start. of tensile: that pull over the minimum tensile strength. of dynamic: the steady "
        "pull over the minimum dynamic strength (over 100 % the plates tire). pin: pressure in the joints. rub deg: skew "
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


def _row(c: Choice, own: str, system: str) -> list[str]:
    name = ("> " if c.chain.id == own else "  ") + c.chain.id
    teeth = f"{c.driving_teeth}/{c.driven_teeth}"
    if math.isnan(c.pull):
        return [name, teeth, *["-"] * 10]
    safe = "over" if math.isinf(c.safe) else f"{amperes(c.safe, down=True)} A"
    alone = "over" if math.isinf(c.chain_safe) else f"{amperes(c.chain_safe, down=True)} A"
    return [
        name, teeth, str(c.links), units.show(c.pull, "force", system), f"{100 * c.tensile_share:.0f} %",
        f"{100 * c.dynamic_share:.0f} %", units.show(c.pin_pressure, "stress", system, 2),
        f"{math.degrees(c.rub_angle):.2f}", f"{float(c.chain.mass_per_length):.2f}", alone, safe, c.safe_check,
    ]  # fmt: skip


def record(choices: list[Choice], current: float) -> dict[str, Any]:
    """Give the comparison as JSON-ready data in SI."""
    return {
        "schema": "mountlimit-chains-1", "current": {"value": current, "unit": "A"},
        "chains": [_record(c) for c in choices],
    }  # fmt: skip


def _record(c: Choice) -> dict[str, Any]:
    def number(value: float) -> float | None:
        return value if math.isfinite(value) and value >= 0 else None

    return {
        "chain": c.chain.id, "series": c.chain.series, "availability": c.chain.availability,
        "driving_teeth": c.driving_teeth, "driven_teeth": c.driven_teeth,
        "links": c.links, "centre_distance": {"value": number(c.centre_distance), "unit": "m"},
        "sprocket_diameter": {"value": number(c.sprocket_diameter), "unit": "m"},
        "pull": {"value": number(c.pull), "unit": "N"}, "tensile_share": number(c.tensile_share),
        "dynamic_share": number(c.dynamic_share), "pin_pressure": {"value": number(c.pin_pressure), "unit": "Pa"},
        "rub_angle": {"value": number(c.rub_angle), "unit": "rad"}, "speed_ripple": number(c.speed_ripple),
        "chain_speed": {"value": c.chain_speed, "unit": "m/s"},
        "power_rating": {"value": c.power_rating, "unit": "W"},
        "chain_safe": {"value": number(c.chain_safe), "unit": "A"},
        "drive_safe": {"value": number(c.safe), "unit": "A", "check": c.safe_check},
        "strength_kind": c.chain.tensile_kind, "source": c.chain.source, "why_not": c.why_not,
    }  # fmt: skip
