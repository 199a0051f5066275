"""Sag, wear and length of the chain as notes, and as JSON-ready data."""

from __future__ import annotations

from typing import Any

from rich.console import Console

from .. import units
from ..model import Drive
from ..upkeep import SAG, Upkeep
from .quantities import quantity
from .table import heading


def write(found: Upkeep, drive: Drive, console: Console, which: str = "chain") -> None:
    """Print what to set and measure on a chain."""
    heading(console, f"\nThe {which}: what to set and measure")
    for line in (_sag(found, drive), _wear(found, drive), _links(found, drive)):
        console.print(f"  - {line}")


def _sag(found: Upkeep, drive: Drive) -> str:
    least, most, run = _lengths(drive, found.sag_least, found.sag_most, found.run, digits=2)
    near = ", nearer to 2 % where it starts often or reverses"
    text = f"Sag at the middle of the slack run: {least} to {most} (2 to 4 % of its {run}{near}; The Complete Guide to Chain p. 70)"
    slack = float(drive.chain.slack)
    if drive.chain.slack_given and not SAG[0] <= slack <= SAG[1]:
        text += f"; yours is {100 * slack:g} %"
    return text + "."


def _wear(found: Upkeep, drive: Drive) -> str:
    worn, new = _lengths(drive, found.measured_worn, found.measured_new, digits=4)
    return (
        f"Replace the chain when ten pitches measure {worn} pulled straight (new {new}): "
        f"{100 * found.wear_share:.2g} %, from the 1.5 % of The Complete Guide to Chain p. 14 or 200 over the larger sprocket's "
        "teeth, whichever is less."
    )


def _links(found: Upkeep, drive: Drive) -> str:
    asked = float(drive.chain.centre_distance)
    own, centres = _lengths(drive, asked, found.centre_distance, digits=4)
    return (
        f"{found.links} links put the centres at {centres} (your {own} would take {found.links_exact:.1f}); an odd number "
        "needs a cranked link, a third weaker (The Complete Guide to Chain 1.1.1)."
    )


def _lengths(drive: Drive, *values: float, digits: int) -> list[str]:
    return [units.show(v, "length", drive.system, digits) for v in values]


def record(found: Upkeep) -> dict[str, Any]:
    """Give the targets as JSON-ready data in SI."""
    return {
        "run": quantity(found.run, "m"),
        "sag": {"low": found.sag_least, "high": found.sag_most, "unit": "m"},
        "wear_limit": quantity(found.wear_share, "-"),
        "ten_pitches_new": quantity(found.measured_new, "m"),
        "ten_pitches_worn": quantity(found.measured_worn, "m"),
        "links": found.links, "links_exact": found.links_exact,
        "centre_distance": quantity(found.centre_distance, "m"), "speed_ripple": found.speed_ripple,
    }  # fmt: skip
