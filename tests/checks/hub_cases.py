"""A drive whose torque is easily worked out: 12 N*m at 100 A, no shock at a start, no scatter."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from conftest import drive_file
from mountlimit import crossings, evaluate
from mountlimit.resolve import resolve

CURRENTS = np.geomspace(0.1, 1e5, 200)
PLAIN = {
    "duty__starting_factor": 1, "motor__torque_scatter": 1, "mount__route": "sections",
    "chain__driving_teeth": 11, "chain__driven_teeth": 55,
}  # fmt: skip
TORQUE = 12.0  # N*m at 100 A
DRIVEN_TORQUE = 60.0  # 55 teeth to 11


def file_of(**changes):
    """The plain drive with changes."""
    return drive_file(**{**PLAIN, **changes})


def check_of(name, drive):
    """A check by its name, where it speaks of the drive; else None."""
    return next((c for c in evaluate.applicable(drive) if c.name == name), None)


def rows_of(name, loads=None, current=100.0, **changes):
    """A check's rows in the first pull case, with some of its loads replaced, and that case."""
    drive = resolve(file_of(**changes))
    case = evaluate.case_at(drive, current, 0)
    case = replace(case, loads=replace(case.loads, **(loads or {})))
    return check_of(name, drive).rows(case), case


def limit_of(name, **changes):
    """Current at which a check is used up at likely values, factor 1."""
    drive = resolve(file_of(**changes))
    curve = evaluate.curves(drive, CURRENTS, [name])[name]
    return crossings.refine(drive, check_of(name, drive), "gives", CURRENTS, curve.gives, 1.0)
