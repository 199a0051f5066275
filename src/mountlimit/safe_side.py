"""Which ends of the uncertain inputs use a part up soonest.

Each input's end is picked first by what it does alone, all others likely.  With those ends in place
every other end is tried once more: where a part has several stations or cases another one may govern
by then.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from . import evaluate
from .crossings import CurvesOf, refine
from .drivefile import DriveFile
from .errors import InputError
from .evaluate import Curve
from .model import Array, Drive, Range
from .resolve import resolve

ROUNDING = 1e-12  # of a utilisation
TINY = 1e-300
WORTH = 1e-4  # of the utilisation: an end that raises it by less is left as it is
FLIPS = 20  # ends changed, at most
EASED = 0.8  # of the utilisation: an end that alone eases a part further is not tried again
SLIGHT = 1e-3  # of the utilisation: inputs that do less alone are tried again only after a change
NEVER = 0.5  # used at the last value: so little that other ends are not tried


@dataclass(frozen=True, slots=True)
class Ends:
    """Every check's curve with one uncertain input at its low and at its high end."""

    range: Range
    low: dict[str, Curve]
    high: dict[str, Curve]

    def used(self, name: str, level: str) -> dict[str, Array]:
        """Give one check's use at both ends; nothing where it does not apply at one of them."""
        if name not in self.low or name not in self.high:
            return {}
        return {
            end: np.asarray(getattr(curves[name], level), float)
            for end, curves in (("low", self.low), ("high", self.high))
        }


def ends_of(
    file: DriveFile, item: Range, values: Array, curves: CurvesOf = evaluate.curves,
    only: list[str] | None = None,
) -> Ends:  # fmt: skip
    """Give every check's curve with one uncertain input at its two ends."""
    low, high = (curves(resolve(file, {item.key: v}), values, only) for v in (item.low, item.high))
    return Ends(item, low, high)


def safe_ends(name: str, level: str, curve: Curve, variants: Mapping[str, Ends]) -> dict[str, str]:
    """Pick, for each uncertain input, the end that raises this check's utilisation.

    That is looked for where the part is used up, and for an end that changes nothing there from there
    down: an input that speaks in another load case only, such as a knock, shows at the smaller currents
    at which that case governs.
    """
    base = getattr(curve, level)
    at = _place(base)
    found = {}
    for key, ends in variants.items():
        raised = {
            end: _raised(own[: at + 1] / np.maximum(base[: at + 1], TINY))
            for end, own in ends.used(name, level).items()
        }
        end = max(raised, key=lambda e: raised[e], default=None)
        if end and raised[end] > (-1, 0.0):
            found[key] = end
    return found


def _place(used: Array) -> int:
    """Give the sample near which a part is used up."""
    over = np.flatnonzero(used >= 1.0)
    return int(over[0]) if over.size else len(used) - 1


def _raised(ratio: Array) -> tuple[int, float]:
    """Give the last sample at which an end raises the utilisation, and how much; -1 where it never counts.

    An end that eases the part where it is used up is not taken for what it does below.
    """
    over = np.flatnonzero(ratio > 1 + ROUNDING)
    if over.size == 0 or ratio[-1] < 1 - ROUNDING:
        return -1, 0.0
    return int(over[-1]), float(ratio[over[-1]])


def corner_values(drive: Drive, ends: Mapping[str, str]) -> dict[str, float]:
    """Give the values of the named ends on a drive; inputs it does not have are left out."""
    return {r.key: getattr(r, ends[r.key]) for r in drive.ranges if r.key in ends}


@dataclass(frozen=True, slots=True, kw_only=True)
class Worst:
    """A part at its safe-side ends: their values, the drive with them, its use over the values."""

    ends: Mapping[str, str]
    corner: Mapping[str, float]
    drive: Drive
    used: Array  # design factor included
    safe: float  # first value that uses the part up; infinity when none of those looked at does


def worst(
    file: DriveFile, likely: Drive, curve: Curve, level: str, variants: Mapping[str, Ends],
    values: Array, curves: CurvesOf = evaluate.curves,
) -> Worst:  # fmt: skip
    """Find the safe-side ends of one check and where they use it up, over currents or speeds.

    ``curve`` is the check's at likely values, ``variants`` those with each input at its ends.
    """
    check = curve.check
    factor, _ = evaluate.design_factor(check, likely)

    def used(drive: Drive, at: Array) -> Array:
        found = curves(drive, at, [check.name]).get(check.name)
        return np.zeros(len(at)) if found is None else np.asarray(getattr(found, level)) * factor

    def with_other(corner: Mapping[str, float], at: float) -> float:
        try:
            return float(used(resolve(file, corner), np.array([at]))[0])
        except InputError:  # the two ends do not go together
            return 0.0

    ends = safe_ends(check.name, level, curve, variants)
    others = _other_ends(check.name, level, curve, variants, SLIGHT)
    for flips in range(FLIPS):
        if flips == 1:  # the inputs do not act apart: look at the slight ones too
            others = _other_ends(check.name, level, curve, variants, 0.0)
        taken, corner = ends, corner_values(likely, ends)
        drive = resolve(file, corner)
        over = used(drive, values)
        safe = refine(drive, check, level, values, over, factor, curves)
        at = min(safe, float(values[-1]))
        base = float(over[-1]) if math.isinf(safe) else 1.0
        tried = others if at > 0.0 and base > NEVER else {}
        shares = {
            (key, end): with_other(corner | {key: value}, at)
            for (key, end), value in tried.items()
            if ends.get(key) != end
        }
        most = max(shares, key=lambda k: shares[k], default=None)
        if most is None or shares[most] < base + WORTH:
            break
        ends = {**ends, most[0]: most[1]}
    return Worst(ends=taken, corner=corner, drive=drive, used=over, safe=safe)


def _other_ends(
    name: str, level: str, curve: Curve, variants: Mapping[str, Ends], least: float
) -> dict[tuple[str, str], float]:
    """Give the ends worth trying again: those that ease little alone, of inputs that do over ``least``."""
    base = getattr(curve, level)
    at = _place(base)
    found: dict[tuple[str, str], float] = {}
    for key, ends in variants.items():
        share = {
            end: float(own[at] / max(base[at], TINY)) for end, own in ends.used(name, level).items()
        }
        if any(abs(x - 1.0) > least for x in share.values()):
            found |= {
                (key, end): float(getattr(ends.range, end))
                for end, x in share.items()
                if x >= EASED
            }
    return found
