"""Rear bearing of the motor: static safety and hours; the overhung pull lifts it."""

from __future__ import annotations

from .. import shaft_line
from ..case import Case, Check, Row
from ..model import Drive
from ._bearing import life_row, static_row


def rows(case: Case) -> list[Row]:
    """Compare the equivalent static load of the rear bearing with its static rating."""
    rear = case.drive.shaft.rear
    if rear is None:
        return []
    return [
        static_row(
            f"rear bearing ({rear.words})",
            shaft_line.rear_reaction(case.drive, case.loads),
            rear.static_rating,
        )
    ]


def life_rows(case: Case) -> list[Row]:
    """Compare the hours wanted with the rating life of the rear bearing."""
    rear, speed = case.drive.shaft.rear, case.drive.motor.speed
    if rear is None:
        return []
    station = f"rear bearing ({rear.words})"
    return [
        life_row(
            case,
            station,
            shaft_line.rear_reaction(case.drive, case.loads),
            rear.dynamic_rating,
            speed,
        )
    ]


def _rated(drive: Drive) -> bool:
    rear = drive.shaft.rear
    return rear is not None and rear.static_rating is not None


def _lives(drive: Drive) -> bool:
    rear = drive.shaft.rear
    return rear is not None and rear.dynamic_rating is not None and drive.motor.speed is not None


CHECKS = (
    Check(
        name="rear_bearing", part="rear bearing", kind="strength", groups=("pull", "reverse"),
        leads_to="notice", sees="the motor growls at its back end: the balls have dented their track",
        applies=_rated, rows=rows,
    ),
    Check(
        name="rear_bearing_life", part="rear bearing", kind="life", groups=("hold",),
        leads_to="notice", sees="the motor's back end grows rough and loud long before the hours you want are run",
        applies=_lives, rows=life_rows,
    ),
)  # fmt: skip
