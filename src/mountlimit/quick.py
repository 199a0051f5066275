"""Safe currents of an edited drive, with the safe-side ends found once on the drive it came from.

The edits of ``thickness`` and ``chains`` hardly move which end of an uncertain input is the bad
one, so the ends are taken from the base drive; the pipeline itself is run afresh for every edit.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from . import evaluate
from .checks import BY_NAME
from .drivefile import DriveFile
from .limits import Found, corner_values, crossing
from .model import Array, Drive
from .resolve import resolve


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


def safe_currents(file: DriveFile, ends: EndsOf, currents: Array) -> Safe:
    """Run the pipeline for an edited file and give each check's safe current.

    Raises
    ------
    InputError
        as ``resolve``: the edit may not fit the drive.
    """
    likely = resolve(file)
    used = utilisations(file, likely, ends, currents)
    return Safe(likely, {name: crossing(currents, u) for name, u in used.items()})


def utilisations(file: DriveFile, likely: Drive, ends: EndsOf, currents: Array) -> dict[str, Array]:
    """Give each peak-setting check's utilisation over the currents, ends and design factor in."""
    found = {}
    for corner, names in _grouped(likely, ends):
        worst = resolve(file, corner)
        for name, curve in evaluate.curves(worst, currents, names).items():
            if curve.safe is not None:
                found[name] = curve.safe * evaluate.design_factor(curve.check, worst)[0]
    return found


def _grouped(drive: Drive, ends: EndsOf) -> list[tuple[dict[str, float], list[str]]]:
    """Group checks whose ends do not contradict each other.

    A check's ends are those of every input that moves it, so the ends of the others in its group do
    nothing to it; only the few inputs that are bad low for one part and high for another part them.
    """
    groups: list[tuple[dict[str, float], list[str]]] = []
    for check in evaluate.applicable(drive):
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


def shortfall(file: DriveFile, ends: EndsOf, wanted: float) -> tuple[float, str]:
    """Give the largest utilisation (design factor in) up to the wanted current, and its check.

    Below 1 the edit carries the wanted current.
    """
    used = utilisations(file, resolve(file), ends, np.geomspace(wanted / 50, wanted, 16))
    most = {name: float(np.max(u)) for name, u in used.items() if BY_NAME[name].kind != "life"}
    first = max(most, key=lambda name: most[name])
    return most[first], first
