"""Front bearing of the motor: static safety under the overhung pull."""

from __future__ import annotations

from .. import shaft_line
from ..case import Case, Check, Row
from ._bearing import static_row


def rows(case: Case) -> list[Row]:
    """Compare the equivalent static load of the front bearing with its static rating."""
    s, force = case.drive.shaft, shaft_line.front_reaction(case.drive, case.loads)
    return [static_row(f"front bearing ({s.bearing})", force, s.static_rating)]


CHECKS = (
    Check(
        name="front_bearing", part="front bearing", kind="strength", groups=("pull", "reverse"),
        leads_to="notice", sees="the motor growls at its nose: the balls have dented their track",
        rows=rows,
    ),
)  # fmt: skip
