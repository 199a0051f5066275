"""One line of the answer as a worked calculation, recorded from the pipeline as it ran."""

from __future__ import annotations

import math
from dataclasses import dataclass

from . import crosscheck, evaluate, limits, structure
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


def work(
    file: DriveFile,
    name: str,
    current: float | None = None,
    likely: bool = False,
    found: Found | None = None,
) -> Worked:
    """Work one check out step by step.

    The current is the safe limit itself unless another is asked for (the set current where the
    limit is not reached); inputs stand at the ends the safe limit takes, or at likely values.
    ``found`` saves finding the limits again.

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
    limit = next((x for x in found.limits if x.check.name == name), None)
    if limit is None:
        raise MountlimitError(
            f"the check {name} does not speak of this drive ({BY_NAME[name].part})"
        )
    if current is None:
        usable = math.isfinite(limit.safe) and limit.safe > 0
        current = limit.safe if usable else float(found.drive.current.set)
    corner = {} if likely else limit.corner
    level = "continuous" if limit.current_kind == "continuous" else "safe"
    seen = evaluate.governing(resolve(file, corner), limit.check, current, level)
    if seen is None:
        raise UnknownCard("load case", name)
    with recording() as tape:
        drive = resolve(file, corner)
        case = evaluate.case_at(drive, current, seen.index)
        rows = evaluate.rows_of(limit.check, case, level)
        row = next(r for r in rows if r.station == seen.row.station)
        steps = lineage(tape.steps, [row.utilisation, row.demand, row.capacity])
    return Worked(
        drive=drive, limit=limit, current=current, ends="likely" if likely else "safe-side",
        case=seen.case, row=row, steps=tuple(steps), utilisation=float(row.utilisation) * limit.factor,
        ranges=tuple(r for r in found.drive.ranges if r.key in limit.corner),
        held_ends=()
        if drive.plates is not None
        else tuple((s.name, structure.held_ends(drive, s)) for s in drive.mount.segments),
        route=crosscheck.governing_route(drive),
        both=crosscheck.compare(drive, current, seen.index) if name in ON_THE_MOUNT else (),
    )  # fmt: skip
