"""Chain, static: tight-side pull at a start against the minimum tensile strength."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import usage


def rows(case: Case) -> list[Row]:
    """Compare the tight-side tension, starting factor in, with the minimum tensile strength."""
    demand = case.loads.tight_side_tension
    capacity = case.drive.chain.chain.minimum_tensile_strength
    return [Row(station="tight run", demand=demand, capacity=capacity, quantity="force",
                utilisation=usage.utilisation(demand, capacity))]  # fmt: skip


CHECKS = (
    Check(
        name="chain_static", part="chain", kind="strength", groups=("pull", "reverse"),
        sees="the chain parts with a bang; on a single-track vehicle it may lock the wheel",
        rows=rows,
    ),
)  # fmt: skip
