"""Freewheel, ratchet or one-way clutch on the driven side: torque against what its maker states."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import usage
from . import _torque


def rows(case: Case) -> list[Row]:
    """Compare the torque at a start with the stated one."""
    held, torque = case.drive.driven.freewheel_torque, _torque.driven(case)
    return [Row(station="as stated by its maker", demand=torque, capacity=held, quantity="torque",
                utilisation=usage.utilisation(torque, held))]  # fmt: skip


CHECKS = (
    Check(
        name="freewheel", part="freewheel", kind="strength", groups=("pull",),
        leads_to="no drive", sees="a crunch, then no drive one way",
        applies=lambda drive: drive.driven.freewheel_torque is not None, rows=rows,
    ),
)  # fmt: skip
