"""Motor shaft at its front bearing, and under the sprocket before an outboard one: bending and torsion against yield, and against fatigue."""

from __future__ import annotations

from .. import shaft_line
from ..case import Case, Check, Row
from . import _shaft, _torque


def yield_rows(case: Case) -> list[Row]:
    """Compare the equivalent stress of the round shaft with its yield strength."""
    torque = _torque.driving(case)
    return [
        _shaft.strength_row(place, moment, torque, steel)
        for place, moment, steel in shaft_line.moments(case.drive, case.loads)
    ]


def fatigue_rows(case: Case) -> list[Row]:
    """Compare the turning shaft's stress swing with its endurance limit, after Goodman."""
    drive, torque = case.drive, case.loads.torque
    return [
        row
        for place, moment, steel in shaft_line.moments(drive, case.loads)
        for row in _shaft.fatigue_rows(place, moment, torque, drive.duty.reverse, steel)
    ]


CHECKS = (
    Check(
        name="motor_shaft", part="motor shaft", kind="strength", groups=("pull", "reverse"),
        leads_to="notice", sees="the sprocket wobbles: the motor shaft is bent at its front bearing",
        rows=yield_rows,
    ),
    Check(
        name="shaft_fatigue", part="motor shaft", kind="life", groups=("steady",),
        leads_to="chain off", sees="after many turns at this pull the motor shaft breaks at a notch; no warning before it",
        rows=fatigue_rows,
    ),
)  # fmt: skip
