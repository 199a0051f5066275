"""Frame joint: does the clamped mount slide on the frame?"""

from __future__ import annotations

from ..formulas import tipping, usage
from ..model import Case, Check, Row


def rows(case: Case) -> list[Row]:
    """Compare the clamp each bolt needs to hold by friction with its preload."""
    fixings, bolts = case.drive.fixings, case.response.bolts
    found = []
    for i, (tension, shear) in enumerate(zip(bolts.tension, bolts.shear, strict=True), 1):
        need = tipping.clamp_needed(shear, fixings.friction, tension)
        found.append(
            Row(station=f"frame bolt {i}", demand=need, capacity=fixings.preload, quantity="force",
                utilisation=usage.utilisation(need, fixings.preload))
        )  # fmt: skip
    return found


CHECKS = (
    Check(
        name="bolt_slip", part="frame joint", kind="grip",
        groups=("pull", "reverse", "bump", "bump alone"),
        sees="the mount slides: bright marks beside the washers, the chain goes slack in steps",
        rows=rows,
    ),
)  # fmt: skip
