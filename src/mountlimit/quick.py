"""Safe currents of an edited drive, with the safe-side ends found once on the drive it came from.

The edits of ``thickness`` and ``chains`` hardly move which end of an uncertain input is the bad
one, so the ends are taken from the base drive; the pipeline itself is run afresh for every edit.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from . import evaluate
from .checks import BY_NAME
from .crossings import crossing
from .drivefile import DriveFile
from .limits import Found
from .model import Array, Drive
from .resolve import resolve
from .safe_side import corner_values


@dataclass(frozen=True, slots=True)
class Safe:
    """Safe current of every peak-setting check at one edit, and the check that governs."""

    drive: Drive
    by_check: Mapping[str, float]

    @property
    def first(self) -> str:
        """Name of the check with the smallest safe current; life does not count."""
        counted = [name for name in self.by_check if BY_NAME[name].kind != "life"]
        return min(counted, key=lambda name: self.by_check[name])

    @property
    def current(self) -> float:
        """Smallest safe current, A; infinity when nothing is reached."""
        return self.by_check[self.first]


EndsOf = Mapping[str, Mapping[str, str]]


def safe_ends(found: Found) -> dict[str, dict[str, str]]:
    """Give the safe-side ends ("low" or "high") of every peak-setting check."""
    return {x.check.name: dict(x.ends) for x in found.limits if x.current_kind != "continuous"}


def safe_currents(
    file: DriveFile, ends: EndsOf, currents: Array, only: Collection[str] | None = None
) -> Safe:
    """Run the pipeline for an edited file and give each check's safe current, or those named.

    Raises
    ------
    InputError
        as ``resolve``: the edit may not fit the drive.
    """
    likely = resolve(file)
    used = utilisations(file, likely, ends, currents, only)
    return Safe(likely, {name: crossing(currents, u) for name, u in used.items()})


def utilisations(
    file: DriveFile, likely: Drive, ends: EndsOf, currents: Array,
    only: Collection[str] | None = None,
) -> dict[str, Array]:  # fmt: skip
    """Give each peak-setting check's utilisation over the currents, ends and design factor in."""
    found = {}
    for corner, names in _grouped(likely, ends, only):
        worst = resolve(file, corner)
        for name, curve in evaluate.curves(worst, currents, names).items():
            if curve.safe is not None:
                found[name] = curve.safe * evaluate.design_factor(curve.check, worst)[0]
    return found


def likely_utilisations(
    likely: Drive, currents: Array, only: Collection[str] | None = None
) -> dict[str, Array]:
    """Give each check's utilisation at likely values, without design factors."""
    curves = evaluate.curves(likely, currents, only)
    return {name: c.gives for name, c in curves.items() if c.gives is not None}


def near_the_first(parts: Iterable[Mapping[str, float]], times: float, least: float) -> set[str]:
    """Give the checks whose limit lies within so many times the first of its part; life does not count.

    ``least`` stands in for a first limit below it (0 where a part is used up without any current).
    """
    found: set[str] = set()
    for part in parts:
        counted = {name: at for name, at in part.items() if BY_NAME[name].kind != "life"}
        most = times * max(min(counted.values(), default=0.0), least)
        found |= {name for name, at in counted.items() if at <= most}
    return found


def _grouped(
    drive: Drive, ends: EndsOf, only: Collection[str] | None
) -> list[tuple[dict[str, float], list[str]]]:
    """Group checks whose ends do not contradict each other.

    A check's ends are those of every input that moves it, so the ends of the others in its group do
    nothing to it; only the few inputs that are bad low for one part and high for another part them.
    """
    groups: list[tuple[dict[str, float], list[str]]] = []
    for check in evaluate.applicable(drive):
        if only is not None and check.name not in only:
            continue
        corner = corner_values(drive, ends.get(check.name, {}))
        fits = next(
            (g for g in groups if all(g[0].get(k, v) == v for k, v in corner.items())), None
        )
        if fits is None:
            fits = ({}, [])
            groups.append(fits)
        fits[0].update(corner)
        fits[1].append(check.name)
    return groups
