"""Key between driven sprocket or hub and driven shaft: shear and crushing at a start."""

from __future__ import annotations

from ..case import Case, Check, Row
from . import _torque
from .key import key_rows


def rows(case: Case) -> list[Row]:
    """Compare the driven key with the softest of key, shaft and hub."""
    told = case.drive.driven
    if told.key is None:
        return []
    return key_rows(told.key, _torque.driven(case), told.shaft_diameter, told.key_yield)


CHECKS = (
    Check(
        name="driven_key", part="key of the driven hub", kind="strength", groups=("pull", "reverse"),
        leads_to="no drive", sees="a click on reversing, then the driven hub turns on its shaft",
        applies=lambda drive: drive.driven.key is not None, rows=rows,
    ),
)  # fmt: skip
