"""A dead stop: the speed from which stopping dead uses up each part, at the set current.

The driven side stops, the rotor runs on and the chain brings it to rest while the motor keeps
pulling.  That depends on speed, not on current, so it stands apart from the limits in current; the
search is theirs, over speed.  *Safe from* takes each check's safe-side ends and design factor,
*gives from* likely values and factor 1.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from . import evaluate, limits, safe_side
from .case import Check
from .crossings import LOWEST_SHARE, refine
from .evaluate import Curve, Governing
from .limits import Found
from .model import Array, Drive, Range
from .safe_side import Ends, ends_of

SAMPLES = 24
TOP = 10_000 * math.pi / 30  # rad/s; the largest speed looked at where none or a lower one is given
PAST = 1.5  # times the motor's own speed


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop:
    """One part under a dead stop; speeds in rad/s, infinity where not used up below ``reach``."""

    check: Check
    safe: float
    gives: float | None
    gives_low: float | None
    gives_high: float | None
    factor: float
    corner: Mapping[str, float]  # values of the uncertain inputs that the safe speed takes
    at_speed: Governing | None  # at the motor's own speed, safe-side ends; None without one
    used: float | None  # design factor included


@dataclass(frozen=True, slots=True, kw_only=True)
class Stops:
    """A dead stop with the set current flowing: every part of strength and grip, lowest first."""

    current: float
    speed: float | None  # of the motor, where it is given
    inertia: Range | float  # of the rotor: assumed, or as given
    reach: float
    parts: tuple[Stop, ...]
    counts: bool  # whether the dead stop is in the safe current too


class Along:
    """Utilisation of the checks over the speed of a dead stop, one current flowing."""

    def __init__(self, current: float) -> None:
        """Take the current that flows."""
        self.current = current

    def __call__(
        self, drive: Drive, speeds: Array, only: list[str] | None = None
    ) -> dict[str, Curve]:
        """Give the curves over speed (rad/s) at the one current."""
        return evaluate.curves(drive, np.full_like(speeds, self.current), only, stop_from=speeds)


def stops(found: Found, current: float | None = None, only: str = "") -> Stops:
    """Find the speed from which a dead stop uses up each part (or the one named).

    The set current flows, or another that is asked for, in amperes.
    """
    drive = found.drive
    speed = None if drive.motor.speed is None else float(drive.motor.speed)
    reach = max(TOP, PAST * (speed or 0.0))
    current = float(drive.current.set) if current is None else current
    speeds = np.geomspace(LOWEST_SHARE * reach, reach, SAMPLES)
    along = Along(current)
    names = [c.name for c in evaluate.applicable(drive) if c.meets_a_jam and only in ("", c.name)]
    likely = along(drive, speeds, names)
    variants = {
        r.key: ends_of(found.file, r, speeds, along, names) for r in drive.ranges if r.low < r.high
    }
    parts = [_stop(found, curve, variants, speeds, along, speed) for curve in likely.values()]
    return Stops(
        current=current, speed=speed, reach=reach, counts=drive.policy.jam,
        inertia=next((r for r in drive.ranges if r.key == "duty.rotor_inertia"), float(drive.motor.rotor_inertia)),
        parts=tuple(sorted(parts, key=lambda s: s.safe)),
    )  # fmt: skip


def _stop(
    found: Found, curve: Curve, variants: Mapping[str, Ends], speeds: Array, along: Along,
    speed: float | None,
) -> Stop:  # fmt: skip
    drive, check = found.drive, curve.check
    name, reach = check.name, float(speeds[-1])
    factor, _ = evaluate.design_factor(check, drive)
    at = safe_side.worst(found.file, drive, curve, "safe", variants, speeds, along)
    gives = low = high = None
    if curve.gives is not None:
        gives = refine(drive, check, "gives", speeds, curve.gives, 1.0, along)
        low, high = limits.band(gives, limits.spread(name, variants, speeds), reach)
    seen = None
    if speed is not None:
        seen = evaluate.governing(at.drive, check, along.current, "safe", stop_from=speed)
    return Stop(
        check=check, safe=at.safe, gives=gives, gives_low=low, gives_high=high, factor=factor,
        corner=at.corner, at_speed=seen, used=None if seen is None else seen.utilisation * factor,
    )  # fmt: skip
