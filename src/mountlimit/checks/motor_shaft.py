"""Motor shaft at the front bearing: bending and torsion against yield, and against fatigue."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import layout, statics
from ..model import Number
from . import _shaft, _torque


def _moment(case: Case) -> Number:
    """Give the bending moment of the pull at the front bearing."""
    s = case.drive.shaft
    overhang = layout.bearing_overhang(s.face_overhang, s.face_to_bearing)
    return statics.overhung_moment(case.loads.shaft_load, overhang)


def yield_rows(case: Case) -> list[Row]:
    """Compare the equivalent stress of the round shaft with its yield strength."""
    torque = _torque.driving(case)
    return [_shaft.strength_row("front bearing", _moment(case), torque, case.drive.shaft)]


def fatigue_rows(case: Case) -> list[Row]:
    """Compare the turning shaft's stress swing with its endurance limit, after Goodman."""
    drive = case.drive
    return _shaft.fatigue_rows(
        "front bearing", _moment(case), case.loads.torque, drive.duty.reverse, drive.shaft
    )


CHECKS = (
    Check(
        name="motor_shaft", part="motor shaft", kind="strength", groups=("pull", "reverse"),
        sees="the sprocket wobbles: the motor shaft is bent at its front bearing",
        rows=yield_rows,
    ),
    Check(
        name="shaft_fatigue", part="motor shaft", kind="life", groups=("steady",),
        sees="after many turns at this pull the motor shaft breaks at a notch; no warning before it",
        rows=fatigue_rows,
    ),
)  # fmt: skip
