"""Driven sprocket welded to its hub or adapter: shear in the throat of the ring of weld."""

from __future__ import annotations

from ..case import Case, Check, Row
from . import _torque
from .hub_weld import weld_rows


def rows(case: Case) -> list[Row]:
    """Compare the driven sprocket's weld with what it bears."""
    return weld_rows(case.drive.driven.weld, _torque.driven(case), _torque.driven_pull(case))


CHECKS = (
    Check(
        name="driven_weld", part="weld of the driven sprocket", kind="strength",
        groups=("pull", "reverse"),
        leads_to="no drive", sees="a hairline round the weld, rust from it, then the driven sprocket turns alone",
        applies=lambda drive: drive.driven.weld is not None, rows=rows,
    ),
)  # fmt: skip
