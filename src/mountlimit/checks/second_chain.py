"""The second chain of a two-stage drive: the checks of the first one on its own pull and speed."""

from __future__ import annotations

from collections.abc import Callable

from ..case import Case, Check, Row
from ..model import Drive
from ..stages import second, second_drive
from . import chain_fatigue, chain_pin_pressure, chain_power, chain_static


def _there(drive: Drive) -> bool:
    return drive.jackshaft is not None


def _of(rows: Callable[[Case], list[Row]]) -> Callable[[Case], list[Row]]:
    """Give a check's rows for the second chain."""

    def on_second(case: Case) -> list[Row]:
        return rows(second(case)) if _there(case.drive) else []

    return on_second


def _has_pressure(drive: Drive) -> bool:
    return drive.jackshaft is not None and drive.jackshaft.run.joint_pressure is not None


def _is_rated(drive: Drive) -> bool:
    return _there(drive) and chain_power.is_rated(second_drive(drive))


CHECKS = (
    Check(
        name="second_chain_static", part="second chain", kind="strength", groups=("pull", "reverse"),
        leads_to="chain off", sees="the second chain parts with a bang; on a single-track vehicle it may lock the wheel",
        applies=_there, rows=_of(chain_static.rows),
    ),
    Check(
        name="second_chain_fatigue", part="second chain", kind="life", groups=("steady",),
        leads_to="chain off", sees="after many starts at this pull a link plate of the second chain cracks; no warning before it",
        applies=_there, rows=_of(chain_fatigue.rows),
    ),
    Check(
        name="second_chain_pin_pressure", part="joints of the second chain", kind="life", groups=("hold",),
        leads_to="notice", sees="the second chain grows longer week by week and rides up the teeth of its large sprocket",
        applies=_has_pressure, rows=_of(chain_pin_pressure.rows),
    ),
    Check(
        name="second_chain_power", part="second chain at speed", kind="life", groups=("hold",),
        leads_to="notice", sees="rollers of the second chain crack or its link plates tire well before the 15 000 hours of the rating",
        applies=_is_rated, rows=_of(chain_power.rows),
    ),
)  # fmt: skip
