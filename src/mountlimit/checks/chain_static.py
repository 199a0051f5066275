"""Chain, static: tight-side pull at a start against the minimum tensile strength."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import give, usage
from ..model import Drive, Number


def weakest(drive: Drive, strength: Number, station: str) -> tuple[str, Number]:
    """Give where a chain of this strength gives first: at its clip link, or at the station named."""
    share = drive.chain.link_share
    if share is None:
        return station, strength
    return "clip link", give.joined_strength(strength, share)


def rows(case: Case) -> list[Row]:
    """Compare the tight-side tension, starting factor in, with the minimum tensile strength."""
    demand = case.loads.tight_side_tension
    strength = case.drive.chain.chain.minimum_tensile_strength
    station, capacity = weakest(case.drive, strength, "tight run")
    return [Row(station=station, demand=demand, capacity=capacity, quantity="force",
                utilisation=usage.utilisation(demand, capacity))]  # fmt: skip


CHECKS = (
    Check(
        name="chain_static", part="chain", kind="strength", groups=("pull", "reverse"),
        leads_to="chain off", sees="the chain parts with a bang; on a single-track vehicle it may lock the wheel",
        rows=rows,
    ),
)  # fmt: skip
