"""Driving sprocket held along its shaft by set screws: does a skewed chain push it off its line?

The side force of the chain is taken from a simulation, no source is published.  The axial hold of a set
screw is its tabulated one; a screw that must hold the torque as well is looked at in ``set_screw``.
What else keeps the sprocket in place (shoulder, ring, end screw) is not asked for and not counted.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import hub as hub_formulas
from ..formulas import shaft, usage
from .alignment import skew


def rows(case: Case) -> list[Row]:
    """Compare the side force of the chain with what the set screws hold along the shaft."""
    hub = case.drive.hub
    pushed = shaft.side_force(case.loads.shaft_load, skew(case)[0])
    hold = hub_formulas.screws_along(hub.set_screw_hold, hub.set_screw_pair)
    return [Row(station="along the shaft", demand=pushed, capacity=hold, quantity="force",
                utilisation=usage.utilisation(pushed, hold))]  # fmt: skip


CHECKS = (
    Check(
        name="axial_hold", part="sprocket along its shaft", kind="grip", groups=("pull", "reverse"),
        leads_to="chain off",
        sees="a bright ring on the shaft beside the hub: the sprocket has crept along it, the chain runs off",
        applies=lambda drive: drive.hub.set_screw_count > 0, rows=rows,
    ),
)  # fmt: skip
