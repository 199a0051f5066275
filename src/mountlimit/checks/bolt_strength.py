"""Frame bolts: tension, shear and both together, once friction no longer holds."""

from __future__ import annotations

from ..case import Case, Check, Row, has_frame_bolts
from ..factors import AT_THE_END
from ..formulas import bolt_group, usage
from .motor_bolts import combined_row


def rows(case: Case) -> list[Row]:
    """Compare tension alone, and tension with shear, of every bolt with EN 1993-1-8 table 3.4."""
    fixings, bolts = case.drive.fixings.bolts, case.response.bolts
    found = []
    for i, (tension, shear) in enumerate(zip(bolts.tension, bolts.shear, strict=True), 1):
        pull = bolt_group.tension_resistance(
            fixings.grade.ultimate_strength, fixings.thread.stress_area, AT_THE_END
        )
        found.append(
            Row(station=f"frame bolt {i}, tension", demand=tension, capacity=pull, quantity="force",
                utilisation=usage.utilisation(tension, pull))
        )  # fmt: skip
        found.append(combined_row(f"frame bolt {i}, tension and shear", fixings, tension, shear))
    return found


CHECKS = (
    Check(
        name="bolt_strength", part="frame bolts", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="a frame bolt is found loose, stretched or in two",
        applies=has_frame_bolts, rows=rows,
    ),
)  # fmt: skip
