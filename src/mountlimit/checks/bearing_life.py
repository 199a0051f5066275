"""Front bearing of the motor: hours it lasts at the current held, against the hours wanted."""

from __future__ import annotations

from .. import shaft_line
from ..case import Case, Check, Row
from ._bearing import life_row


def rows(case: Case) -> list[Row]:
    """Compare the hours wanted with the rating life of the front bearing."""
    s, speed = case.drive.shaft, case.drive.motor.speed  # there, or the check would not apply
    force = shaft_line.front_reaction(case.drive, case.loads)
    return [life_row(case, f"front bearing ({s.bearing})", force, s.dynamic_rating, speed)]


CHECKS = (
    Check(
        name="bearing_life", part="front bearing", kind="life", groups=("hold",),
        leads_to="notice", sees="the motor's nose grows rough and loud long before the hours you want are run",
        applies=lambda drive: drive.motor.speed is not None, rows=rows,
    ),
)  # fmt: skip
