"""Driven sprocket welded to its hub or adapter, against fatigue: as ``hub_weld_fatigue``."""

from __future__ import annotations

from ..case import Case, Check, Row
from . import _torque
from .hub_weld_fatigue import ring_rows


def rows(case: Case) -> list[Row]:
    """Compare the driven sprocket's weld with what it bears again and again."""
    drive = case.drive
    return ring_rows(drive.driven.weld, drive.duty, _torque.driven(case), _torque.driven_pull(case))


CHECKS = (
    Check(
        name="driven_weld_fatigue", part="weld of the driven sprocket", kind="life", groups=("steady",),
        leads_to="no drive", sees="after as many starts as you asked for (duty.starts), or after some millions of turns, a "
        "hairline round the weld, rust from it, then the driven sprocket turns alone",
        applies=lambda drive: drive.driven.weld is not None, rows=rows,
    ),
)  # fmt: skip
