"""One line of the answer as a worked calculation, recorded from the pipeline as it ran."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from . import crosscheck, evaluate, jam, limits, structure
from .case import Row
from .checks import BY_NAME
from .crosscheck import Both
from .drivefile import DriveFile
from .errors import MountlimitError, UnknownCard
from .limits import Found, Limit
from .model import Drive, Range
from .resolve import resolve
from .worked import Step, lineage, recording

# Checks whose numbers rest on how the mount bends and pulls at its bolts.
ON_THE_MOUNT = (
    "alignment",
    "running_alignment",
    "mount_section",
    "mount_strain",
    "bolt_slip",
    "bolt_strength",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """The steps that lead to one row, and the row."""

    drive: Drive
    limit: Limit
    current: float
    ends: str  # "safe-side" or "likely"
    case: str
    row: Row
    steps: tuple[Step, ...]
    utilisation: float  # design factor included
    ranges: tuple[Range, ...]
    held_ends: tuple[tuple[str, int], ...]  # of the section route
    route: str  # which model governs stiffness and bolt forces
    both: tuple[Both, ...]  # the two routes side by side, where the line rests on one
    stop_from: float | None  # rad/s; speed of the dead stop the line is worked for


def work(
    file: DriveFile,
    name: str,
    current: float | None = None,
    likely: bool = False,
    found: Found | None = None,
    dead_stop: bool = False,
    limit: Limit | None = None,
) -> Worked:
    """Work one check out step by step.

    The current is the safe limit itself unless another is asked for (the set current where the
    limit is not reached); inputs stand at the ends the safe limit takes, or at likely values.
    ``found`` saves finding the limits again; ``limit`` is the one of them meant, where a check has two.  ``dead_stop`` works the line for a dead stop, with that
    current (the set one unless asked for) flowing, from the speed that uses the part up.

    Raises
    ------
    UnknownCard
        when there is no such check, or it does not apply to this drive.
    """
    import difflib

    if name not in BY_NAME:
        raise UnknownCard(
            "check", name, difflib.get_close_matches(name, BY_NAME, 2, 0.4) or sorted(BY_NAME)
        )
    found = found or limits.find(file)
    file = found.file
    limit = limit or next((x for x in found.limits if x.check.name == name), None)
    if limit is None:
        raise MountlimitError(
            f"the check {name} does not speak of this drive ({BY_NAME[name].part})"
        )
    stop_from = None
    if dead_stop:
        limit, current, stop_from = _dead_stop(found, limit, current)
    if current is None:
        usable = math.isfinite(limit.safe) and limit.safe > 0
        current = limit.safe if usable else float(found.drive.current.set)
    corner = {} if likely else limit.corner
    level = "continuous" if limit.current_kind == "continuous" else "safe"
    seen = evaluate.governing(resolve(file, corner), limit.check, current, level, stop_from)
    if seen is None:
        raise UnknownCard("load case", name)
    with recording() as tape:
        drive = resolve(file, corner)
        case = evaluate.case_at(drive, current, seen.index, stop_from)
        rows = evaluate.rows_of(limit.check, case, level)
        row = next(r for r in rows if r.station == seen.row.station)
        steps = lineage(tape.steps, [row.utilisation, row.demand, row.capacity])
    beside = name in ON_THE_MOUNT and stop_from is None
    return Worked(
        drive=drive, limit=limit, current=current, ends="likely" if likely else "safe-side",
        case=seen.case, row=row, steps=tuple(steps), utilisation=float(row.utilisation) * limit.factor,
        ranges=tuple(r for r in found.drive.ranges if r.key in limit.corner),
        held_ends=()
        if drive.plates is not None
        else tuple((s.name, structure.held_ends(drive, s)) for s in drive.mount.segments),
        route=crosscheck.governing_route(drive),
        both=crosscheck.compare(drive, current, seen.index) if beside else (), stop_from=stop_from,
    )  # fmt: skip


def _dead_stop(found: Found, limit: Limit, current: float | None) -> tuple[Limit, float, float]:
    """Give the limit at the ends of a dead stop, the current that flows and the speed it starts from."""
    if not limit.check.meets_a_jam:
        raise MountlimitError(
            f"a dead stop is looked at for strength and grip only, not for {limit.check.name}"
        )
    at = jam.stops(found, current, only=limit.check.name)
    (stop,) = at.parts
    usable = math.isfinite(stop.safe) and stop.safe > 0
    speed = stop.safe if usable else (at.speed or at.reach)
    return replace(limit, corner=stop.corner, why_not=""), at.current, speed
