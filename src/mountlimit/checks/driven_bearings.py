"""Bearings of the driven shaft: static safety and hours, the weight told added in size."""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import torque
from ..model import Drive, Number
from ..stages import second_drive
from . import _driven
from ._bearing import life_row, static_row


def rows(case: Case) -> list[Row]:
    """Compare the equivalent static load of each driven bearing with its static rating."""
    driven = case.drive.driven
    shaft, bearing = driven.shaft, driven.bearings
    if shaft is None or bearing is None:
        return []
    return [
        static_row(
            f"{words} ({bearing.words})", _driven.with_weight(case, shaft, reaction),
            bearing.static_rating,
        )
        for words, reaction in _driven.reactions(case, shaft)
    ]  # fmt: skip


def life_rows(case: Case) -> list[Row]:
    """Compare the hours wanted with the rating life of each driven bearing."""
    driven = case.drive.driven
    shaft, bearing = driven.shaft, driven.bearings
    if shaft is None or bearing is None:
        return []
    speed, weight = _speed(case.drive), _driven.carried(case, shaft)
    return [
        life_row(
            case, f"{words} ({bearing.words})", reaction, bearing.dynamic_rating, speed, weight
        )
        for words, reaction in _driven.reactions(case, shaft)
    ]


def _speed(drive: Drive) -> Number:
    end = drive if drive.jackshaft is None else second_drive(drive)
    chain = end.chain
    return torque.driven_speed(end.motor.speed, chain.driving_teeth, chain.driven_teeth)


def _rated(drive: Drive) -> bool:
    bearing = drive.driven.bearings
    return bearing is not None and bearing.static_rating is not None


def _lives(drive: Drive) -> bool:
    bearing = drive.driven.bearings
    return (
        bearing is not None and bearing.dynamic_rating is not None and drive.motor.speed is not None
    )


CHECKS = (
    Check(
        name="driven_bearings", part="driven bearings", kind="strength",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="notice", sees="the driven shaft growls and clicks: the balls have dented their track",
        applies=_rated, rows=rows,
    ),
    Check(
        name="driven_bearing_life", part="driven bearings", kind="life", groups=("hold",),
        leads_to="notice", sees="the driven shaft grows rough and loose long before the hours you want are run",
        applies=_lives, rows=life_rows,
    ),
)  # fmt: skip
