"""Chain, fatigue: steady peak pull against the minimum dynamic strength."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import usage


def rows(case: Case) -> list[Row]:
    """Compare the tight-side tension, starting factor left out, with the dynamic strength."""
    demand, capacity = case.loads.steady_tension, case.drive.chain.minimum_dynamic_strength
    return [Row(station="link plates", demand=demand, capacity=capacity, quantity="force",
                utilisation=usage.utilisation(demand, capacity), level="safe")]  # fmt: skip


CHECKS = (
    Check(
        name="chain_fatigue", part="chain", kind="life", groups=("steady",),
        sees="after many starts at this pull a link plate cracks; no warning before it",
        rows=rows,
    ),
)  # fmt: skip
