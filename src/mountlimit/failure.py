"""What would have made a part look like this: the current, the jerk, the dead stop or the input.

Every number is one run of the pipeline: the current by ``limits.find`` (or, for checks of life, by its
search), the jerk by edits of ``duty.starting_factor``, the dead stop by ``jam``, the inputs one at a time.
Likely values and no design factor throughout: this asks what happened, not what is safe.
"""

from __future__ import annotations

import difflib
import math
from collections.abc import Callable
from dataclasses import dataclass, replace

import numpy as np

from . import crossings, evaluate, jam, limits, progress, safe_side
from .case import Check
from .checks import BY_NAME
from .drivefile import DriveFile
from .errors import InputError, Mistake
from .failure_signs import CALLED, LOOKS, MADE_BY
from .limits import Found, Limit
from .model import Drive, Range
from .resolve import resolve
from .starting import UNKNOWN_REVERSING

JERKS = (1.0, 1.5, 2.0, 3.0, 4.5, 6.5, 10.0)  # looked at; 10 is the largest a file may hold
STEP = 1e-6  # past a step, of the way to an input's end
LEVELS = ("gives", "safe", "continuous")


@dataclass(frozen=True, slots=True, kw_only=True)
class Alone:
    """One assumed input that makes the set current enough, the others at their likely values."""

    range: Range
    value: float  # at which the part is just used up, SI
    share: float  # of the way from likely to the end


@dataclass(frozen=True, slots=True, kw_only=True)
class Explanation:
    """One way it may have happened, and how far it lies from what the drive does.

    ``times`` is over what the drive is known to do (1: it does it as it stands); None where that is
    not known.
    """

    kind: str  # "as it stands", "input", "jerk", "dead stop", "all inputs"
    times: float | None
    within: bool  # of what the drive does, or what its inputs may be


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """One check that can make the look; currents in A, speeds in rad/s, infinity where not reached."""

    check: Check
    level: str  # of the rows it counts by
    current: float  # at which one pull does it, or endless starts do
    current_low: float
    current_high: float
    used: float  # at the set current, likely values, no design factor
    used_worst: float  # every input at its bad end
    jerk: (
        float | None
    )  # starting factor that does it; infinity over 10; None where it does not count
    stop: jam.Stop | None
    alone: tuple[Alone, ...]
    explanations: tuple[Explanation, ...]  # the likeliest first


@dataclass(frozen=True, slots=True, kw_only=True)
class Failure:
    """What a broken part and its look say; causes with the one nearest to what the drive does first."""

    file: str  # its name
    drive: Drive
    part: str
    look: str
    current: float  # set
    reach: float  # largest current looked at
    jerk_now: float  # starting factor the drive has at the set current
    causes: tuple[Cause, ...]


def explain(file: DriveFile, part: str, looks: str, found: Found | None = None) -> Failure:
    """Say what would have done it; ``found`` saves finding the limits again (without ``policy.jam``).

    Raises
    ------
    InputError
        for a part or a look that is not known, or not of this drive.
    """
    look = look_named(looks)
    drive = resolve(file)
    checks = [c for c in parts_named(drive, part) if look in MADE_BY[c.name].split()]
    if not checks:
        known = sorted({w for c in parts_named(drive, part) for w in MADE_BY[c.name].split()})
        raise _mistake("--looks", looks, f"no check of this drive makes a {part} look {look}", f"known for it: {', '.join(known)}")  # fmt: skip
    found = found or limits.find(without_stop(file))
    current = float(found.drive.current.set)
    now = float(np.max(evaluate.case_at(found.drive, current).loads.starting_factor))
    causes = []
    for i, check in enumerate(checks):
        progress.step("looking back from the broken part", i, len(checks))
        causes.append(_cause(found, check, current, now))
    causes.sort(key=_nearness)
    return Failure(
        file=file.name, drive=found.drive, part=part, look=look, current=current, reach=found.reach, jerk_now=now,
        causes=tuple(causes),
    )  # fmt: skip


def without_stop(file: DriveFile) -> DriveFile:
    """Give the file without a dead stop in its load cases: here it is a cause of its own."""
    return file.edited(policy__jam=None) if "policy.jam" in file.given else file


def _nearness(cause: Cause) -> tuple[bool, float]:
    first = cause.explanations[0]
    return (not first.within, first.times or math.inf)


def _mistake(key: str, value: str, expected: str, suggestion: str = "") -> InputError:
    return InputError([Mistake("explain-failure", key, f"'{value}'", expected, suggestion)])


def look_named(words: str) -> str:
    """Give the look some words stand for. Raises InputError with the nearest."""
    asked = " ".join(words.lower().split())
    known = {name: look for look, others in LOOKS.items() for name in (look, *others)}
    if asked in known:
        return known[asked]
    inside = [known[n] for n in known if len(n) > 3 and n in asked]
    if len(set(inside)) == 1:
        return inside[0]
    near = difflib.get_close_matches(asked, known, 1, 0.6)
    hint = f"did you mean {near[0]}?" if near else ""
    raise _mistake("--looks", words, f"expected one of: {', '.join(LOOKS)}", hint)


def parts_named(drive: Drive, words: str) -> list[Check]:
    """Give the checks of this drive that a part's name means.

    Raises
    ------
    InputError
        with the nearest names, or saying that this drive has no such part.
    """
    applicable = evaluate.applicable(drive)
    asked = " ".join(words.lower().replace("_", " ").replace("-", " ").split())
    found = _meant(asked, applicable)
    if found:
        return found
    if _meant(asked, list(BY_NAME.values())):
        raise _mistake("PART", words, "this drive has no such part, or its file does not tell enough of it", _list(applicable))  # fmt: skip
    names = sorted({c.part for c in applicable} | {n for n in CALLED if _meant(n, applicable)})
    near = difflib.get_close_matches(asked, names, 3, 0.5)
    hint = f"did you mean {' or '.join(near)}?" if near else _list(applicable)
    raise _mistake("PART", words, "no such part is known", hint)


def _list(checks: list[Check]) -> str:
    return f"parts of this drive: {', '.join(sorted({c.part for c in checks}))}"


def _meant(asked: str, checks: list[Check]) -> list[Check]:
    if not asked:
        return []
    for names in (asked, asked.removesuffix("s"), asked + "s"):
        if names in CALLED:
            return [c for c in checks if c.name in CALLED[names]]
        exact = [c for c in checks if names in (c.part, c.name.replace("_", " "))]
        if exact:
            return [c for c in checks if c.part in {e.part for e in exact}]
    stems = [w.removesuffix("s") for w in asked.split()]
    return [c for c in checks if all(any(p.startswith(s) for p in c.part.split()) for s in stems)]


def _cause(found: Found, check: Check, current: float, now: float) -> Cause:
    file, drive, name = found.file, found.drive, check.name
    currents = crossings.grid(found.reach)
    likely = evaluate.curves(drive, currents, [name])[name]
    level = next(at for at in LEVELS if getattr(likely, at) is not None)
    limit = _limit(found, name, level)
    gives, low, high = _current(found, check, level, limit)
    used = _used(drive, check, level, current)
    worst = _used(resolve(file, limit.corner), check, level, current)
    stop = None
    if level == "gives" and check.meets_a_jam:
        stop = jam.stops(found, current, only=name).parts[0]
    jerk = jerk_for(file, check, level, current)
    alone = () if used >= 1 else _alone(file, drive, check, level, current)
    cause = Cause(
        check=check, level=level, current=gives, current_low=low, current_high=high, used=used,
        used_worst=worst, jerk=jerk, stop=stop, alone=alone, explanations=(),
    )  # fmt: skip
    return replace(cause, explanations=_explanations(cause, drive, now))


def _limit(found: Found, name: str, level: str) -> Limit:
    kind = "continuous" if level == "continuous" else "peak setting"
    return next(x for x in found.limits if x.check.name == name and x.current_kind == kind)


def _current(found: Found, check: Check, level: str, limit: Limit) -> tuple[float, float, float]:
    """Give the current that does it at likely values, and its band."""
    if level == "gives" and limit.gives is not None:
        low, high = (math.inf if v is None else v for v in (limit.gives_low, limit.gives_high))
        return limit.gives, low, high
    currents = crossings.grid(found.reach)
    pairs = []
    for r in (r for r in found.drive.ranges if r.low < r.high):
        ends = safe_side.ends_of(found.file, r, currents, only=[check.name])
        curves = [c[check.name] for c in (ends.low, ends.high) if check.name in c]
        if len(curves) == 2:
            low, high = (crossings.crossing(currents, getattr(c, level)) for c in curves)
            pairs.append((low, high))
    utilisation = getattr(evaluate.curves(found.drive, currents, [check.name])[check.name], level)
    gives = crossings.refine(found.drive, check, level, currents, utilisation, 1.0)
    return gives, *limits.band(gives, pairs, found.reach)


def _used(drive: Drive, check: Check, level: str, current: float) -> float:
    curve = evaluate.curves(drive, np.array([current]), [check.name]).get(check.name)
    used = None if curve is None else getattr(curve, level)
    return 0.0 if used is None else float(used[0])


def jerk_for(file: DriveFile, check: Check, level: str, current: float) -> float | None:
    """Give the starting factor that uses a part up at a current.

    None where no start counts for the check, 1 where the steady pull alone does it, infinity where
    10 is not enough.
    """
    if level != "gives" or not {"pull", "reverse"} & set(check.groups):
        return None

    def over_one(factor: float) -> float:
        edited = file.edited(duty__starting_factor=factor)
        # a start does not change the mount: the reduced plate model stays
        drive = resolve(replace(edited, plates=file.plates))
        return _used(drive, check, level, current) - 1.0

    over = [over_one(f) for f in JERKS]
    if over[0] >= 0:
        return 1.0
    first = next((i for i, v in enumerate(over) if v >= 0), None)
    return math.inf if first is None else _root(over_one, JERKS[first - 1], JERKS[first])


def _root(over_one: Callable[[float], float], low: float, high: float) -> float:
    from scipy.optimize import brentq

    return float(brentq(over_one, low, high, rtol=1e-8))


def _alone(
    file: DriveFile, drive: Drive, check: Check, level: str, current: float
) -> tuple[Alone, ...]:
    """Give the inputs whose end alone makes the current enough, the smallest move first."""
    found = []
    for r in drive.ranges:
        for end in (r.low, r.high):

            def over_one(share: float, r: Range = r, end: float = end) -> float:
                value = r.likely + share * (end - r.likely)
                return _used(resolve(file, {r.key: value}), check, level, current) - 1.0

            if end != r.likely and over_one(1.0) >= 0:
                share = _root(over_one, 0.0, 1.0)
                if over_one(share) < 0:  # it steps over 1, as a chain that begins to count as loose
                    share = min(share + STEP, 1.0)
                found.append(Alone(range=r, value=r.likely + share * (end - r.likely), share=share))
    return tuple(sorted(found, key=lambda a: a.share))


def _explanations(cause: Cause, drive: Drive, now: float) -> tuple[Explanation, ...]:
    """List the ways it may have happened, those within what the drive does first."""
    short = math.inf if cause.used <= 0 else 1 / cause.used
    found = [Explanation(kind="as it stands", times=max(short, 1.0), within=cause.used >= 1)]
    found += [Explanation(kind="input", times=1 + a.share, within=True) for a in cause.alone[:1]]
    if cause.used < 1 and cause.jerk is not None and math.isfinite(cause.jerk):
        within = cause.jerk <= max(now, UNKNOWN_REVERSING)
        found.append(Explanation(kind="jerk", times=cause.jerk / now, within=within))
    if cause.stop is not None and cause.stop.gives is not None and math.isfinite(cause.stop.gives):
        speed = drive.motor.speed
        times = None if speed is None else cause.stop.gives / float(speed)
        known = times is not None and times <= 1
        found.append(Explanation(kind="dead stop", times=times, within=known))
    if cause.used < 1 <= cause.used_worst and not cause.alone:
        found.append(Explanation(kind="all inputs", times=None, within=True))
    return tuple(sorted(found, key=lambda e: (not e.within, max(e.times or math.inf, 1.0))))
