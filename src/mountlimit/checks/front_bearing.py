"""Front bearing of the motor: static safety under the overhung pull."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import layout, statics
from ..model import Number
from ._bearing import static_row


def reaction(case: Case) -> Number:
    """Give the force on the front bearing, N."""
    s = case.drive.shaft
    overhang = layout.bearing_overhang(s.face_overhang, s.face_to_bearing)
    return statics.front_bearing_reaction(case.loads.shaft_load, overhang, s.bearing_span)


def rows(case: Case) -> list[Row]:
    """Compare the equivalent static load of the front bearing with its static rating."""
    s = case.drive.shaft
    return [static_row(f"front bearing ({s.bearing})", reaction(case), s.static_rating)]


CHECKS = (
    Check(
        name="front_bearing", part="front bearing", kind="strength", groups=("pull", "reverse"),
        sees="the motor growls at its nose: the balls have dented their track",
        rows=rows,
    ),
)  # fmt: skip
