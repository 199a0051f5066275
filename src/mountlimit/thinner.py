"""A drive at many thicknesses of its mount: what each carries, and the thickness for a current.

``Sweep`` has one plate model that answers for a whole range of thicknesses.  It holds the places of
mid-planes at the thickness it is laid out for, so what it says of others is only near: it tells
where to look.  ``settled`` then closes in on whole drives, each laid out anew.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from contextlib import suppress
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Any

from . import crossings, limits, plate_route, quick
from .checks import BY_NAME
from .drivefile import DriveFile, Given
from .errors import MountlimitError
from .model import Array
from .quick import EndsOf
from .resolve import resolve

THINNEST = 0.0005
STEPS = 30  # trials of the whole drive, laid out anew, before the answer is called not settled
CLOSE = 2e-3  # the thinner side of this much does not carry, the thicker does
CLOSER = 8  # more thicknesses of the sweep at most, to close in on where to begin
PEAK = 0.8  # of the wanted current: a best of the sweep from there up is looked at more closely
BESIDE = 2  # thicknesses of the sweep on either side of it between which it is looked for
SUMMIT = 10  # trials of the whole drive there at most
GOLDEN = (math.sqrt(5.0) - 1.0) / 2.0
NEAR = 2.0  # a check within this of the least comes near
FAR = 4.0  # one farther from the least than this, on either side of a thickness, is left out there
WHOLE = 4  # of so many thicknesses of a sweep one looks at every check


Trial = tuple[float, float, str]  # thickness, log of safe over wanted, check


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """One thickness: what it carries, which check sets that, and what gives first there."""

    thickness: float
    safe: float
    check: str
    gives: float | None = None  # likely values, no design factor; None where not asked for
    gives_check: str = ""
    near: tuple[str, ...]  # checks that come first, or nearly


@dataclass(frozen=True, slots=True)
class At:
    """A thickness, what sets it there, and what is in doubt about it."""

    thickness: float
    check: str
    doubt: str = ""


def with_thickness(file: DriveFile, thickness: float) -> DriveFile:
    """Edit the drive to another thickness, m."""
    text = f"{thickness * 1000:.6g} mm"
    return file.edited(
        mount__thickness=Given(key="mount.thickness", text=text, kind="length", value=thickness)
    )


class Sweep:
    """The drive at any thickness up to ``top``, one reduced plate model answering for all.

    ``ends`` are the safe-side ends of the drive it came from.
    """

    def __init__(self, file: DriveFile, ends: EndsOf, currents: Array, top: float) -> None:
        self.file, self.ends, self.currents, self.top = file, ends, currents, top
        self.plates: Any = None
        try:
            self._lay_out(math.sqrt(THINNEST * top))
        except MountlimitError:  # that thickness cannot be built; the file's own can
            self._lay_out(float(resolve(file).mount.thickness))

    def _lay_out(self, thickness: float) -> None:
        edited = with_thickness(self.file, thickness)
        self.plates = plate_route.with_plates(edited, (THINNEST, self.top)).plates

    def _crossings(self, used: dict[str, Array]) -> dict[str, float]:
        found = {name: crossings.crossing(self.currents, u) for name, u in used.items()}
        return {name: at for name, at in found.items() if BY_NAME[name].kind != "life"}

    def at(self, thickness: float, gives: bool = False) -> Point:
        """Give what a thickness carries, about, and where asked for what gives there.

        Raises
        ------
        MountlimitError
            where it cannot be built.
        """
        return self._point(thickness, self._found(thickness, gives))

    def points(self, thicknesses: Iterable[float], gives: bool = False) -> list[Point]:
        """Give what each thickness carries, thin to thick; those that cannot be built are left out.

        Every fourth looks at all checks, those between at the ones that come anywhere near the first
        on either side.
        """
        wanted = sorted(set(thicknesses))
        whole: dict[float, list[dict[str, float]]] = {}
        for t in {*wanted[::WHOLE], *wanted[-1:]}:
            with suppress(MountlimitError):  # cannot be built
                whole[t] = self._found(t, gives)
        points = []
        for t in wanted:
            with suppress(MountlimitError):
                found = whole[t] if t in whole else self._found(t, gives, self._beside(t, whole))
                points.append(self._point(t, found))
        return points

    def _beside(
        self, thickness: float, whole: dict[float, list[dict[str, float]]]
    ) -> set[str] | None:
        """Give the checks not far from the first on either side of a thickness; all, at the ends."""
        under = max((t for t in whole if t < thickness), default=None)
        over = min((t for t in whole if t > thickness), default=None)
        if under is None or over is None:
            return None
        parts = [*whole[under], *whole[over]]
        return quick.near_the_first(parts, FAR, float(self.currents[0]))

    def _found(
        self, thickness: float, gives: bool, only: set[str] | None = None
    ) -> list[dict[str, float]]:
        """Give the limits at a thickness, safe and likely (where asked for), of the checks named."""
        edited = replace(with_thickness(self.file, thickness), plates=self.plates)
        likely = resolve(edited)
        used = [quick.utilisations(edited, likely, self.ends, self.currents, only)]
        if gives:
            used.append(quick.likely_utilisations(likely, self.currents, only))
        return [self._crossings(part) for part in used]

    def _point(self, thickness: float, found: list[dict[str, float]]) -> Point:
        firsts = [min(part, key=part.__getitem__) for part in found]
        gives = len(found) > 1
        return Point(
            thickness=thickness, safe=found[0][firsts[0]], check=firsts[0],
            gives=found[1][firsts[1]] if gives else None, gives_check=firsts[1] if gives else "",
            near=tuple(sorted(quick.near_the_first(found, NEAR, float(self.currents[0])))),
        )  # fmt: skip


@dataclass(frozen=True, slots=True)
class Guess:
    """Where to begin: a thickness, its check, and how the safe current grows there."""

    thickness: float
    check: str
    slope: float  # of log current over log thickness
    summit: tuple[float, float] | None = None  # no thickness carries; the best lies between these


def guess(sweep: Sweep, points: list[Point], wanted: float) -> Guess:
    """Give about the first thickness that carries the wanted current, or else comes nearest to it."""
    for under, over in pairwise(points):
        if under.safe < wanted <= over.safe:
            return _closer(sweep, under, over, wanted)
    best = max(range(len(points)), key=lambda i: min(points[i].safe, wanted))
    summit = None
    if 0 < best < len(points) - 1 and PEAK * wanted <= points[best].safe < wanted:
        last = len(points) - 1
        ends = (points[max(best - BESIDE, 0)], points[min(best + BESIDE, last)])
        summit = (ends[0].thickness, ends[1].thickness)
    return Guess(points[best].thickness, points[best].check, 1.0, summit)


def _closer(sweep: Sweep, under: Point, over: Point, wanted: float) -> Guess:
    """Close in on the sweep between a thickness that does not carry and one that does."""
    for _ in range(CLOSER):
        if over.thickness / under.thickness < 1 + CLOSE:
            break
        low, high = (_gap(p.safe, wanted) for p in (under, over))
        share = min(max(-low / (high - low), 0.2), 0.8)
        try:
            at = sweep.at(under.thickness * (over.thickness / under.thickness) ** share)
        except MountlimitError:  # cannot be built
            break
        under, over = (under, at) if at.safe >= wanted else (at, over)
    low, high = (_gap(p.safe, wanted) for p in (under, over))
    width = math.log(over.thickness / under.thickness)
    slope = min(max((high - low) / width, 0.1), 20.0)
    return Guess(over.thickness * math.exp(-high / (high - low) * width), over.check, slope)


def _gap(safe: float, wanted: float) -> float:
    """Give the logarithm of a safe current over the wanted one, within a thousandfold."""
    return math.log(min(max(safe / wanted, 1e-3), 1e3))


def _summit(
    file: DriveFile, wanted: float, low: float, high: float
) -> tuple[Trial | None, Trial | None]:
    """Look between two thicknesses for one that carries, where too thin and too thick both carry less.

    A thick plate starts harder: it swings less. The sweep's own best may be off by some per cent.
    Golden sections, until one carries; gives the thickest below it that does not, and it.
    """
    tried: dict[float, Trial] = {}

    def gap(at: float) -> float:
        at = round(at, 9)  # the same section of a wider stretch
        if at not in tried:
            safe, check = _carried(file, math.exp(at))
            tried[at] = (math.exp(at), _gap(safe, wanted), check)
        return tried[at][1]

    a, b = math.log(low), math.log(high)
    while len(tried) < SUMMIT and max((t[1] for t in tried.values()), default=-1.0) < 0.0:
        one, two = b - GOLDEN * (b - a), a + GOLDEN * (b - a)
        a, b = (a, two) if gap(one) >= gap(two) else (one, b)
    over = max(tried.values(), key=lambda t: t[1])
    if over[1] < 0.0:
        return None, None
    thinner = [t for t in tried.values() if t[0] < over[0]]
    return max(thinner, default=None), over


def settled(file: DriveFile, wanted: float, start: Guess, top: float) -> At | None:
    """Give the thickness at which the first safe current is the wanted one; None where none is met.

    Every trial is the edited drive, its plate model laid out for that very thickness. From the
    start it walks, thicker or thinner, until two trials stand on either side of the wanted
    current, and closes in between them. What cannot be built carries nothing.
    """
    under, over = (None, None) if start.summit is None else _summit(file, wanted, *start.summit)
    at = min(max(start.thickness * (1 + 0.2 * CLOSE), THINNEST), 0.9999 * top)
    if over:
        at = math.sqrt(over[0] * (under[0] if under else max(THINNEST, 0.8 * over[0])))
    sides: list[bool] = []
    for walked in range(STEPS):
        safe, check = _carried(file, at)
        gap = _gap(safe, wanted)
        sides.append(gap >= 0)
        if gap >= 0:
            over = (at, gap, check)
        else:
            under = (at, gap, check)
        if over and under:
            if over[0] / under[0] < 1 + CLOSE:
                return _at_limit(over[0], under[2])
            same = len(sides) > 2 and sides[-1] == sides[-2] == sides[-3]  # it jumps: halve
            at = math.sqrt(under[0] * over[0]) if same else _between(under, over)
        elif over:
            if at <= THINNEST:
                return At(THINNEST, check)
            at = max(THINNEST, at * math.exp(-_stride(gap / start.slope, walked)))
        else:
            if at >= 0.9998 * top:
                return None
            at = min(0.9999 * top, at * math.exp(_stride(-gap / start.slope, walked)))
    if over is None:
        return None
    lowest = under[0] if under else THINNEST
    words = f"not settled: between {lowest * 1000:.3g} and {over[0] * 1000:.3g} mm"
    return At(over[0], over[2], words)


def _carried(file: DriveFile, thickness: float) -> tuple[float, str]:
    """Give the first safe current of the drive laid out anew at a thickness, and its check."""
    try:
        first = limits.find(with_thickness(file, thickness)).first_safe
    except MountlimitError as error:
        return 0.0, f"cannot be built thinner: {str(error).splitlines()[0]}"
    return first.safe, first.check.name


def _at_limit(thickness: float, stops: str) -> At:
    """Give the answer; what stops a thinner one is a check, or that it cannot be built."""
    return At(thickness, stops) if stops in BY_NAME else At(thickness, "what can be built", stops)


def _stride(gap: float, walked: int) -> float:
    """Give how far to walk: a little past where the current would meet the wanted one."""
    return min((1.05 * gap + 0.5 * CLOSE) * 2.0 ** max(0, walked - 1), 0.7)


def _between(under: Trial, over: Trial) -> float:
    """Give the next trial: on the line through both, but a good way inside them, as it may jump."""
    width = math.log(over[0] / under[0])
    share = -under[1] / (over[1] - under[1])
    edge = min(0.5, max(0.15, 0.45 * CLOSE / width))
    if abs(width) < 0.03:  # straight enough here: step just past the line on the far side
        aim = 0.4 * CLOSE / abs(width)
        share += aim if share < 0.5 else -aim
        edge = min(0.5, aim)
    return under[0] * math.exp(width * min(max(share, edge), 1 - edge))
