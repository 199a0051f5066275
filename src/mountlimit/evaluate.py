"""The one pipeline: drive + motor current -> load cases -> response -> every check's rows."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from functools import cache

import numpy as np

from . import loads, respond
from .case import Case, Check, Give, Row
from .checks import CHECKS
from .factors import DESIGN_FACTORS
from .model import Array, Drive, Number
from .worked import Value, is_recording


@dataclass(frozen=True, slots=True)
class Curve:
    """One check over a set of currents: utilisation (without design factor) and what governs."""

    check: Check
    safe: Array | None  # utilisation of the rows that count for the safe current
    gives: Array | None
    continuous: Array | None


@dataclass(frozen=True, slots=True)
class Governing:
    """The row that governs one check at one current."""

    check: Check
    row: Row
    case: str
    index: int  # of the load case
    utilisation: float


def design_factor(check: Check, drive: Drive) -> tuple[float, str]:
    """Give the design factor of a check on this drive, and its source."""
    if check.name in drive.policy.factors:
        return float(drive.policy.factors[check.name]), "set in the file"
    if check.choose_factor is not None:
        return check.choose_factor(drive)
    return DESIGN_FACTORS[check.name]


def applicable(drive: Drive) -> list[Check]:
    """Give the checks that speak of this drive."""
    return [c for c in CHECKS if c.applies(drive)]


# The last drives asked for: a search asks for the same one at current after current.
_KEPT: deque[tuple[Drive, Callable[[Number, bool], Give]]] = deque(maxlen=4)


def give_of(drive: Drive) -> Callable[[Number, bool], Give]:
    """Give the softness along a chain angle, worked out once per angle (afresh while recording)."""
    if is_recording():
        return lambda angle, held: respond.give(drive, angle, held)
    known = next((once for kept, once in _KEPT if kept is drive), None)
    if known is not None:
        return known

    @cache
    def once(angle: float, held: bool) -> Give:
        found = respond.give(drive, angle, held)
        return Give(
            sprocket=float(found.sprocket),
            outboard=None if found.outboard is None else float(found.outboard),
            back=None if found.back is None else float(found.back),
        )

    _KEPT.append((drive, once))
    return once


def case_at(
    drive: Drive, current: Number, pick: int | None = None, stop_from: Number = None
) -> Case:
    """Give the drive under its loads; ``pick`` keeps one load case.

    With ``stop_from`` (rad/s, one for each current) the cases are those of a dead stop alone.
    """
    if np.ndim(current) == 0:
        current = Value(current, "current", "derived", "motor current looked at")
    if stop_from is not None and np.ndim(stop_from) == 0:
        stop_from = Value(stop_from, "speed", "derived", "speed of the dead stop looked at")
    load = loads.at(drive, current, give_of(drive), pick, stop_from)
    return Case(drive=drive, loads=load, response=respond.solve(drive, load))


def curves(
    drive: Drive, currents: Array, only: Iterable[str] | None = None, stop_from: Number = None
) -> dict[str, Curve]:
    """Give every check's utilisation over the currents (shape (n,)), the worst load case at each.

    With ``stop_from`` (rad/s, shape (n,)) the load cases are those of a dead stop alone.
    """
    return curves_of(case_at(drive, np.asarray(currents, float), stop_from=stop_from), only)


def curves_of(case: Case, only: Iterable[str] | None = None) -> dict[str, Curve]:
    """Give every check's utilisation on a drive under its loads, the worst load case at each current."""
    wanted = None if only is None else set(only)
    found = {}
    for check in applicable(case.drive):
        if wanted is None or check.name in wanted:
            found[check.name] = _curve(check, case)
    return found


def rows_of(check: Check, case: Case, level: str) -> list[Row]:
    """Give the rows of a check that count for a level ("safe", "gives" or "continuous")."""
    return [r for r in check.rows(case) if _counts(r, level)]


def _counts(row: Row, level: str) -> bool:
    return row.level == level or (row.level == "both" and level != "continuous")


def _worst(check: Check, case: Case, rows: list[Row]) -> Array | None:
    """Give the largest utilisation of rows, (cases, currents); -inf in cases it does not look at."""
    if not rows:
        return None
    keep = np.array([[check.looks_at(g)] for g in case.loads.groups])
    shape = (len(case.loads.groups), np.size(case.loads.current))
    worst = np.max([np.broadcast_to(r.utilisation, shape) for r in rows], axis=0)
    return np.where(keep, worst, -np.inf)


def used_at_station(check: Check, case: Case, station: str) -> Array | None:
    """Give the utilisation of one named row of a check over the currents; None where it has none."""
    found = _worst(check, case, [r for r in check.rows(case) if r.station == station])
    return None if found is None else np.maximum(found.max(axis=0), 0.0)


def _curve(check: Check, case: Case) -> Curve:
    rows = check.rows(case)

    def worst(level: str) -> Array | None:
        u = _worst(check, case, [r for r in rows if _counts(r, level)])
        return None if u is None else np.maximum(u.max(axis=0), 0.0)

    return Curve(check, worst("safe"), worst("gives"), worst("continuous"))


def governing(
    drive: Drive, check: Check, current: float, level: str, stop_from: float | None = None
) -> Governing | None:
    """Give the row that governs a check at one current, over every load case."""
    stops = None if stop_from is None else [stop_from]
    return governing_at(drive, check, [current], level, stops)[0]


def governing_at(
    drive: Drive, check: Check, currents: Sequence[float], level: str,
    stop_from: Sequence[float] | None = None,
) -> list[Governing | None]:  # fmt: skip
    """Give the row that governs a check at each of some currents, over every load case.

    With ``stop_from`` (rad/s, one for each current) the load cases are those of a dead stop alone.
    """
    stops = None if stop_from is None else np.array(stop_from, float)
    case = case_at(drive, np.array(currents, float), stop_from=stops)
    rows = rows_of(check, case, level)
    worst = _worst(check, case, rows)
    if worst is None or np.isneginf(worst).all():
        return [None] * len(currents)
    found: list[Governing | None] = []
    for column, current in enumerate(currents):
        index = int(np.argmax(worst[:, column]))
        row = max((_number_row(r, worst.shape, index, column) for r in rows), key=_used)
        if row.many:
            stop = None if stop_from is None else float(stop_from[column])
            alone = case_at(drive, float(current), index, stop)
            row = max(rows_of(check, alone, level), key=_used)
        found.append(Governing(check, row, case.loads.names[index], index, _used(row)))
    return found


def _used(row: Row) -> float:
    return float(row.utilisation)


def _number_row(row: Row, shape: tuple[int, ...], index: int, column: int) -> Row:
    """Give a row of arrays at one load case and current."""
    demand, capacity, used = (
        float(np.broadcast_to(np.asarray(v, float), shape)[index, column])
        for v in (row.demand, row.capacity, row.utilisation)
    )
    return replace(row, demand=demand, capacity=capacity, utilisation=used)
