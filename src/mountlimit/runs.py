"""The pipeline run at many sets of the uncertain inputs: what a stand-in is fitted to.

First the likely drive, then each input at its low and its high end, then drives drawn at random from
the stated spreads.  Every run is the one pipeline: resolve, loads, response, every check.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from . import evaluate, progress
from .case import Case
from .checks import BY_NAME
from .checks.alignment import RUBS
from .drivefile import DriveFile
from .errors import MountlimitError
from .model import Array
from .resolve import resolve
from .spreads import STEPS, Spread, draw
from .worked import Value

THROW = "policy.throw_level"  # stepped: it changes what is compared, not loads nor response
MINDS_THE_STEP = "alignment"
NUDGE = 1e-7  # of the way to an end
JUMP = 1e-4  # of the utilisation: more than a nudge can do
TINY = 1e-9
Key = tuple[str, str, int]  # check, "safe", "gives" or "rubs", place in the steps (0 without steps)


@dataclass(frozen=True, slots=True)
class Columns:
    """What the stand-in takes for a set of values: places, and on which side of a jump they are.

    An input jumps where a step of nothing from its likely value moves some check, as a slack over
    3 % does that starts harder.
    """

    spreads: tuple[Spread, ...]
    jumps: tuple[tuple[int, float], ...]  # (input, 1 where the likely value counts as above)

    def of(self, values: Array) -> Array:
        """Give the columns, shape (n, inputs + jumps), of values (n, inputs) in SI."""
        places = [s.place(values[:, k]) for k, s in enumerate(self.spreads)]
        for k, side in self.jumps:
            likely = self.spreads[k].range.likely
            above = values[:, k] >= likely if side > 0 else values[:, k] > likely
            places.append(np.where(above, 1.0, -1.0))
        return np.array(places).reshape(len(places), len(values)).T


@dataclass(frozen=True, slots=True, kw_only=True)
class Runs:
    """Utilisation (design factor in for "safe") of every check at every run."""

    currents: Array  # (k,)
    places: Array  # (runs, columns), see ``Columns``
    columns: Columns
    ends: int  # runs with one input at an end, after the first
    used: dict[Key, Array]  # (runs, k)
    refused: int  # draws that the reader refused, such as a bolt hole that would leave the plate


def run(
    file: DriveFile, spreads: Sequence[Spread], currents: Array, count: int, chance: np.random.Generator
) -> Runs:  # fmt: skip
    """Run the pipeline at the likely values, at every end and at ``count`` random draws.

    ``spreads`` are those without steps; the stepped input is tried at each of its values.
    """
    likely = np.array([s.range.likely for s in spreads])
    points = [likely]
    for k, spread in enumerate(spreads):
        for end in (spread.range.low, spread.range.high):
            points.append(likely.copy())
            points[-1][k] = end
    points = [*points, *draw(spreads, count, chance)]
    found: dict[Key, list[Array]] = {}
    kept = []
    for number, values in enumerate(points):
        progress.step("running the drive with other values", number, len(points))
        try:
            case = _case(file, spreads, values, currents)
        except MountlimitError:
            if number <= 2 * len(spreads):  # likely and ends were run by the limits already
                raise
            continue
        for key, used in _used(case).items():
            found.setdefault(key, []).append(used)
        kept.append(values)
    progress.step("running the drive with other values", len(points), len(points))
    columns = Columns(tuple(spreads), _jumps(file, spreads, currents, found))
    values = np.array(kept).reshape(len(kept), len(spreads))
    return Runs(
        currents=currents, places=columns.of(values), columns=columns, ends=2 * len(spreads),
        used={key: np.array(rows) for key, rows in found.items() if len(rows) == len(kept)},
        refused=len(points) - len(kept),
    )  # fmt: skip


def _jumps(
    file: DriveFile, spreads: Sequence[Spread], currents: Array, found: dict[Key, list[Array]]
) -> tuple[tuple[int, float], ...]:
    """Find the inputs whose likely value is the edge of a jump."""
    likely = np.array([s.range.likely for s in spreads])
    jumps = []
    for k, spread in enumerate(spreads):
        ends = slice(1 + 2 * k, 3 + 2 * k)
        if not any(_apart(rows[0], row) for rows in found.values() for row in rows[ends]):
            continue
        for side, end in ((1.0, spread.range.low), (-1.0, spread.range.high)):
            beside = likely.copy()
            beside[k] += NUDGE * (end - likely[k])
            if beside[k] == likely[k]:
                continue
            used = _used(_case(file, spreads, beside, currents))
            if any(_apart(found[key][0], row) for key, row in used.items() if key in found):
                jumps.append((k, side))
    return tuple(jumps)


def _apart(one: Array, other: Array) -> bool:
    return bool(np.any(np.abs(other - one) > JUMP * (np.abs(one) + TINY)))


def _case(file: DriveFile, spreads: Sequence[Spread], values: Array, currents: Array) -> Case:
    drive = resolve(file, {s.key: float(v) for s, v in zip(spreads, values, strict=True)})
    return evaluate.case_at(drive, currents)


def _used(case: Case) -> dict[Key, Array]:
    """Give every counting check's utilisation on one drive, at each step of the stepped input."""
    found = _of(case, 0, None)
    rubs = evaluate.used_at_station(BY_NAME[MINDS_THE_STEP], case, RUBS)
    if rubs is not None:
        found[MINDS_THE_STEP, "rubs", 0] = rubs
    level = case.drive.policy.throw_level
    if any(r.key == THROW and r.low < r.high for r in case.drive.ranges):
        for place, (value, _) in enumerate(STEPS[THROW]):
            stepped = Value(value, level.key, level.origin, level.source)
            policy = replace(case.drive.policy, throw_level=stepped)
            other = replace(case, drive=replace(case.drive, policy=policy))
            found |= _of(other, place, [MINDS_THE_STEP])
    return found


def _of(case: Case, place: int, only: list[str] | None) -> dict[Key, Array]:
    found = {}
    for name, curve in evaluate.curves_of(case, only).items():
        if curve.check.kind == "life" or curve.safe is None:
            continue
        factor = evaluate.design_factor(curve.check, case.drive)[0]
        found[name, "safe", place] = curve.safe * factor
        if curve.gives is not None:
            found[name, "gives", place] = curve.gives
    return found
