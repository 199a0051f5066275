"""A plan for raising the current step by step: what to set, what should move, when to stop.

The plan never passes the safe current.  A step adds at most a sixth of a limit's safe capacity, and
at most a sixth of the last current; every number is the one pipeline's at the step's own current.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from . import consequence, evaluate, limits, units
from .case import Case
from .checks import alignment
from .consequence import Consequence
from .drivefile import DriveFile
from .errors import OutOfRange
from .formulas import duty
from .limits import Found, Limit
from .model import Array, Drive
from .progress import step as progress
from .resolve import resolve

START_SHARE = 0.6  # of the safe current; common practice, no source
LARGEST_RISE = 1 / 6  # of a limit's safe capacity, and of the last current, in one step
FINEST = 1 / 20  # of the last current: currents are rounded to the next smaller of 1, 2, 5, 10 ...
FINER = 1 / 100  # the rounding where a fine one is needed to keep the largest rise
LEAST_START = 1.0  # A: what controllers can be set to; common practice, no source
MOST_AT_START = 0.9  # used at the start: beyond it steps tell nothing of what pull does
PULL_TIME = 3.0  # s, of one pull; common practice, no source
NEAR = 0.5  # of the largest use: limits from there on are looked at, ...
MOST_LOOKS = 3  # ... the nearest ones
PULLS = ("pull", "reverse")
GRID = 400
MOST_ASKED = 5000.0  # A


@dataclass(frozen=True, slots=True, kw_only=True)
class Movement:
    """What the sprocket does under the pull, the largest over the load cases of a pull."""

    along_chain: float  # towards the driven sprocket, m
    along_shaft: float  # either way, m
    lean: float  # of the shaft along the chain, either way, rad


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """A limit that is near at a step: how far it is used (design factor and safe-side ends in it)."""

    limit: Limit
    used: float
    consequence: Consequence


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One current of the plan."""

    current: float  # A
    used: float  # of the nearest limit
    looks: tuple[Look, ...]  # nearest first
    likely: Movement
    high: Movement  # at the safe-side ends of the alignment limit; never under the likely one
    pull_time: float  # s
    rest: float | None  # s, after each pull; None when the current held for hours is not known
    tires: tuple[Limit, ...]  # limits of life that this current passes


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A step-up plan, or why there is none (``why_not``, and then no steps)."""

    found: Found
    asked: float  # A
    asked_on_the_line: bool
    safe: Limit
    steps: tuple[Step, ...]
    at_once: tuple[Look, ...]  # near limits whose part can hurt somebody at once
    why_not: str = ""

    @property
    def drive(self) -> Drive:
        """The drive it is for."""
        return self.found.drive

    @property
    def cut(self) -> bool:
        """Whether the current asked for is over the safe current."""
        return self.asked > self.safe.safe


def plan(file: DriveFile, wanted: float | None = None) -> Plan:
    """Plan the steps up to a current, or to the safe current where that is less.

    ``wanted`` in A; the file's wanted or set current by default.

    Raises
    ------
    InputError
        as ``resolve``.
    """
    progress("finding the limits", 0, 1)
    found = limits.find(file)
    progress("finding the limits", 1, 1)
    current, safe = found.drive.current, found.first_safe
    asked = float(current.wanted or current.set) if wanted is None else wanted
    least = max(LEAST_START, float(found.drive.motor.no_load_current))
    if safe.safe < least:
        return _refused(found, asked, wanted is not None, least)
    used = _Used(found)
    currents = currents_of(float(current.set), asked, safe.safe, used.most, least)
    at_start = float(used.most(np.array(currents[:1]))[0])
    if at_start > MOST_AT_START and safe.safe < asked:
        return _used_up(found, asked, wanted is not None, currents[0], at_start)
    ends = next(x for x in found.limits if x.check.name == "alignment").corner
    careful = resolve(found.file, ends)
    steps = []
    for i, value in enumerate(currents):
        progress("working out the steps", i, len(currents))
        steps.append(_step(found, used, careful, value))
    progress("working out the steps", len(currents), len(currents))
    looks = {x.limit.check.name: x for s in steps for x in s.looks if x.consequence.rank == 1}
    return Plan(
        found=found, asked=asked, asked_on_the_line=wanted is not None, safe=safe,
        steps=tuple(steps), at_once=tuple(looks.values()),
    )  # fmt: skip


def _refused(found: Found, asked: float, on_the_line: bool, least: float) -> Plan:
    safe = found.first_safe
    why = safe.why_not or (
        f"safe to {safe.safe:.2g} A only, and no sensible first pull is under {least:g} A"
    )
    return _no_plan(found, asked, on_the_line, why)


def _used_up(found: Found, asked: float, on_the_line: bool, start: float, used: float) -> Plan:
    part = found.first_safe.check.part
    there = limits.THERE.get(part, limits.THERE_ELSE)
    why = (
        f"at {start:g} A already {100 * used:.0f} % used, by what is there with hardly any current "
        f"({there}); measure those first"
    )
    return _no_plan(found, asked, on_the_line, why)


def _no_plan(found: Found, asked: float, on_the_line: bool, why: str) -> Plan:
    return Plan(
        found=found, asked=asked, asked_on_the_line=on_the_line, safe=found.first_safe,
        steps=(), at_once=(), why_not=why,
    )  # fmt: skip


class _Used:
    """How far every limit of the peak setting is used, each at its own safe-side ends."""

    def __init__(self, found: Found) -> None:
        self.groups: dict[tuple[tuple[str, float], ...], tuple[Drive, list[Limit]]] = {}
        for limit in found.limits:
            if limit.counts:
                key = tuple(sorted(limit.corner.items()))
                if key not in self.groups:
                    self.groups[key] = (resolve(found.file, limit.corner), [])
                self.groups[key][1].append(limit)

    def each(self, currents: Array) -> list[tuple[Limit, Array]]:
        """Give each limit's use over the currents."""
        found = []
        for drive, of_drive in self.groups.values():
            curves = evaluate.curves(drive, currents, [x.check.name for x in of_drive])
            for limit in of_drive:
                curve = curves[limit.check.name].safe
                if curve is not None:
                    found.append((limit, curve * limit.factor))
        return found

    def most(self, currents: Array) -> Array:
        """Give the use of the nearest limit over the currents."""
        largest: Array = np.max([u for _, u in self.each(currents)], axis=0)
        return largest


def nice_below(value: float) -> float:
    """Give the largest of 1, 2, 5, 10, 20 ... (and 0.5, 0.2 ...) that is not over a value."""
    size = 10.0 ** math.floor(math.log10(value))
    return max(n * size for n in (1, 2, 5) if n * size <= value * (1 + 1e-9))


def rounded_down(value: float, unit: float) -> float:
    """Round a current down to whole units."""
    return round(math.floor(value / unit + 1e-9) * unit, 9)


def _printed(value: float) -> float:
    """Give the last place that a safe current is printed with."""
    return 10.0 ** (math.floor(math.log10(value)) - (2 if value >= 100 else 1))


def currents_of(
    set_current: float,
    asked: float,
    safe: float,
    most: Callable[[Array], Array],
    least: float = 0.0,
) -> list[float]:
    """Give the rising currents of a plan, A; the last one is ``asked`` or just within ``safe``.

    ``most`` gives the use of the nearest limit over currents; ``least`` is the smallest sensible
    start, A.
    """
    unit = nice_below(FINEST * min(asked, safe))
    top = asked if asked <= safe else rounded_down(safe, _printed(safe))
    start = min(set_current, START_SHARE * safe, top)
    start = max(rounded_down(start, unit), rounded_down(start, nice_below(start)), least)
    if start >= top:
        return [top]
    fine = nice_below(FINER * top)
    grid = np.linspace(start, top, GRID)
    use = np.maximum.accumulate(most(grid))
    found = [start]
    while found[-1] < top:
        at = found[-1]
        allowed = float(np.interp(at, grid, use)) + LARGEST_RISE
        over = np.flatnonzero(use > allowed + 1e-12)
        reach = float(grid[over[0] - 1]) if over.size else top
        reach = min(reach, at + LARGEST_RISE * top)
        if reach >= top * (1 - 1e-9):
            found.append(top)
            break
        step = next((r for u in (unit, fine) if (r := rounded_down(reach, u)) > at), reach)
        found.append(step if step > at else min(top, at + fine))  # where the use itself jumps
    return found


def movement(drive: Drive, current: float) -> Movement:
    """Give the largest movement of the sprocket over the load cases of a pull at a current (A)."""
    case = evaluate.case_at(drive, np.array([current]))
    return _movement(case)


def _movement(case: Case) -> Movement:
    shape = (len(case.loads.groups), 1)
    keep = np.array([[g in PULLS] for g in case.loads.groups])
    yaw, along, near = (np.broadcast_to(np.asarray(v), shape) for v in alignment.lean(case))
    return Movement(
        along_chain=float(np.max(np.where(keep, near, 0.0))),
        along_shaft=float(np.max(np.where(keep, np.abs(along), 0.0))),
        lean=float(np.max(np.where(keep, np.abs(yaw), 0.0))),
    )


def _larger(one: Movement, other: Movement) -> Movement:
    return Movement(
        along_chain=max(one.along_chain, other.along_chain),
        along_shaft=max(one.along_shaft, other.along_shaft),
        lean=max(one.lean, other.lean),
    )


def _step(found: Found, used: _Used, careful: Drive, current: float) -> Step:
    each = sorted(
        ((float(u[0]), x) for x, u in used.each(np.array([current]))), key=lambda p: -p[0]
    )
    looks = [
        Look(limit=x, used=u, consequence=consequence.of(x.check, found.drive))
        for u, x in each
        if u >= NEAR * each[0][0]
    ]
    likely = movement(found.drive, current)
    return Step(
        current=current, used=each[0][0], looks=tuple(looks[:MOST_LOOKS]), likely=likely,
        high=_larger(likely, movement(careful, current)), pull_time=PULL_TIME,
        rest=_rest(found.drive, current),
        tires=tuple(
            x for x in found.limits
            if x.check.kind == "life" and x.current_kind == "peak setting" and x.safe < current
        ),
    )  # fmt: skip


def _rest(drive: Drive, current: float) -> float | None:
    held = drive.current.continuous
    if held is None:
        return None
    return max(0.0, float(duty.rest_after_pull(PULL_TIME, current, held)))


def current_asked(text: str | None) -> float | None:
    """Read the current of the command line, A.

    Raises
    ------
    OutOfRange
        for a current that is not above nothing.
    UnitMistake
        for a text that is no current.
    """
    if text is None:
        return None
    value = units.parse(text, "current")
    if not 0 < value <= MOST_ASKED:
        raise OutOfRange("--for, A", value, 0, MOST_ASKED)
    return value
