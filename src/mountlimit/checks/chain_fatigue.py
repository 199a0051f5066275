"""Chain, fatigue: steady peak pull against the minimum dynamic strength."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import usage
from .chain_static import weakest


def rows(case: Case) -> list[Row]:
    """Compare the tight-side tension, starting factor left out, with the dynamic strength."""
    demand = case.loads.steady_tension
    strength = case.drive.chain.minimum_dynamic_strength
    station, capacity = weakest(case.drive, strength, "link plates")
    return [Row(station=station, demand=demand, capacity=capacity, quantity="force",
                utilisation=usage.utilisation(demand, capacity), level="safe")]  # fmt: skip


CHECKS = (
    Check(
        name="chain_fatigue", part="chain", kind="life", groups=("steady",),
        leads_to="chain off", sees="after many starts at this pull a link plate cracks; no warning before it",
        rows=rows,
    ),
)  # fmt: skip
