"""Outboard bearing of the motor shaft: static safety, and the hours it lasts."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..model import Drive
from ._bearing import life_row, static_row


def _station(drive: Drive) -> str:
    third = drive.shaft.outboard
    return f"outboard bearing ({third.bearing})" if third else ""


def rows(case: Case) -> list[Row]:
    """Compare the outboard bearing's part of the pull with its static rating."""
    third = case.drive.shaft.outboard
    if third is None:
        return []
    return [static_row(_station(case.drive), case.loads.outboard, third.static_rating)]


def life_rows(case: Case) -> list[Row]:
    """Compare the hours wanted with the rating life of the outboard bearing."""
    third, speed = case.drive.shaft.outboard, case.drive.motor.speed
    if third is None:
        return []
    return [life_row(case, _station(case.drive), case.loads.outboard, third.dynamic_rating, speed)]


CHECKS = (
    Check(
        name="outboard_bearing", part="outboard bearing", kind="strength", groups=("pull", "reverse"),
        leads_to="notice", sees="the bearing beyond the sprocket growls: its balls have dented their track",
        applies=lambda drive: drive.shaft.outboard is not None, rows=rows,
    ),
    Check(
        name="outboard_bearing_life", part="outboard bearing", kind="life", groups=("hold",),
        leads_to="notice", sees="the bearing beyond the sprocket grows rough and loud long before the hours you want are run",
        applies=lambda drive: drive.shaft.outboard is not None and drive.motor.speed is not None,
        rows=life_rows,
    ),
)  # fmt: skip
