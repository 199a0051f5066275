"""Driven sprocket bolted on a circle: shear of the bolts, and slip of the joint."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..model import Drive
from . import _torque
from .hub_bolts import hammers, shear_rows, slip_rows, works_loose


def rows(case: Case) -> list[Row]:
    """Compare shear of the driven sprocket's bolts with what they bear."""
    return shear_rows(case.drive.driven.bolts, _torque.driven(case), _torque.driven_pull(case))


def grip_rows(case: Case) -> list[Row]:
    """Compare the driven sprocket's bolts with the friction they make."""
    return slip_rows(case.drive.driven.bolts, _torque.driven(case), _torque.driven_pull(case))


def loosening_rows(case: Case) -> list[Row]:
    """Compare the pull of every turn with the friction of the driven sprocket's bolts."""
    pull = _torque.driven_pull(case)
    return slip_rows(case.drive.driven.bolts, _torque.driven(case), pull, "safe")


def _bolted(drive: Drive) -> bool:
    return drive.driven.bolts is not None


CHECKS = (
    Check(
        name="driven_bolts", part="bolts of the driven sprocket", kind="strength",
        groups=("pull", "reverse"),
        leads_to="chain off", sees="the driven sprocket comes off its hub; the chain goes with it",
        applies=_bolted, rows=rows,
    ),
    Check(
        name="driven_bolt_slip", part="bolted face of the driven sprocket", kind="grip",
        groups=("pull", "reverse"),
        leads_to="no drive", sees="play between driven sprocket and hub on reversing; holes grow long",
        applies=lambda drive: hammers(drive.driven.bolts, drive), rows=grip_rows,
    ),
    Check(
        name="driven_bolt_loosening", part="bolted face of the driven sprocket", kind="life",
        groups=("steady",), leads_to="notice",
        sees="brown dust round the sprocket's bolts, a click at every turn; they work loose and then shear",
        applies=lambda drive: works_loose(drive.driven.bolts, drive), rows=loosening_rows,
    ),
)  # fmt: skip
