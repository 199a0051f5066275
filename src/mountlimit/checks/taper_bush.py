"""Taper bush or clamped hub: torque that friction on the motor shaft holds."""

from __future__ import annotations

import math

from ..case import Case, Check, Row
from ..formulas import hub as hub_formulas
from ..formulas import usage
from ..held import Grip
from ..model import Number
from ..worked import Value
from . import _torque

HALF_TAPER = Value(
    math.radians(4.0), "half of the taper's angle", "assumed", "from memory (common bushes: 8 degrees)"
)  # fmt: skip


def rows(case: Case) -> list[Row]:
    """Compare the torque at a start with what the hub holds: as rated, else by its screws."""
    grip, torque = case.drive.hub.grip, _torque.driving(case)
    if grip is None:
        return []
    held = _held(grip, case.drive.shaft.diameter)
    station = (
        f"{grip.words}, as rated"
        if grip.rated_torque is not None
        else f"{grip.words}, by its screws"
    )
    return [Row(station=station, demand=torque, capacity=held, quantity="torque",
                utilisation=usage.utilisation(torque, held))]  # fmt: skip


def _held(grip: Grip, diameter: Number) -> Number:
    """Give the torque held, N*m."""
    if grip.rated_torque is not None or grip.screws is None:
        return grip.rated_torque
    count = grip.screws.number
    if grip.wrap is not None:
        return hub_formulas.clamp_torque(grip.wrap, grip.friction, count, grip.preload, diameter)
    return hub_formulas.taper_bush_torque(grip.friction, count, grip.preload, HALF_TAPER, diameter)


CHECKS = (
    Check(
        name="taper_bush", part="grip of the hub on the motor shaft", kind="grip",
        groups=("pull", "reverse"),
        leads_to="no drive", sees="the hub creeps round the shaft: bright rings, a smell, no drive on a hard start",
        applies=lambda drive: drive.hub.grip is not None, rows=rows,
    ),
)  # fmt: skip
