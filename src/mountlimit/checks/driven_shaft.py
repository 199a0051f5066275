"""Driven shaft: bending by the chain's pull and torsion against yield.

The weight it carries and the wheels' side forces are not asked for and not in it.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import statics
from ..held import DrivenShaft
from ..model import Number
from . import _shaft, _torque


def _moment(shaft: DrivenShaft, pull: Number) -> Number:
    """Give the largest bending moment of the pull, N*m."""
    if shaft.bearing_span is None:
        return statics.overhung_moment(pull, shaft.overhang)
    far = statics.far_reaction(pull, shaft.overhang, shaft.bearing_span)
    return statics.moment_between(far, shaft.overhang, shaft.bearing_span)


def rows(case: Case) -> list[Row]:
    """Compare the equivalent stress of the round driven shaft with its yield strength."""
    shaft = case.drive.driven.shaft
    if shaft is None:
        return []
    station = (
        "at the bearing beside the sprocket" if shaft.bearing_span is None else "under the sprocket"
    )
    moment = _moment(shaft, _torque.driven_pull(case))
    return [_shaft.strength_row(station, moment, _torque.driven(case), shaft)]


CHECKS = (
    Check(
        name="driven_shaft", part="driven shaft", kind="strength", groups=("pull", "reverse"),
        sees="the driven sprocket wobbles and the chain slackens once in every turn",
        applies=lambda drive: drive.driven.shaft is not None, rows=rows,
    ),
)  # fmt: skip
