"""How thick must the plate be?  The thinnest plate of each material that carries a wanted current.

Each trial edits the drive and runs the one pipeline again.  The thinnest thickness is where the
worst utilisation up to the wanted current, design factors in, first comes down to 1.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from . import cards, limits, plate_route, progress, quick
from .checks import BY_NAME
from .drivefile import DriveFile, Given
from .errors import MountlimitError
from .limits import Found
from .quick import EndsOf

THINNEST = 0.0005
THICKEST = 0.15
TRIALS = 16
STEPS = 24  # trials of the whole drive, laid out anew, before the answer is called not settled
CLOSE = 2e-3  # the thinner side of this much does not carry, the thicker does

DEFAULT_MATERIALS = ("s235", "al6061_t6", "pom_c", "birch_ply")  # one per family
OWN_KEYS = (  # belong to the old material
    "mount.elastic_modulus",
    "mount.yield_strength",
    "mount.fatigue_strength",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Point:
    """One stock thickness: what it carries and which check sets that."""

    thickness: float
    safe: float
    check: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Thinnest:
    """The answer for one material."""

    material: cards.Material
    thickness: float  # infinity when no plate carries the wanted current
    set_by: str  # the check that sets the thickness, or that stops any plate
    best: float  # largest safe current any thickness gives, when none carries the wanted one
    stock_metric: float | None
    stock_inch: float | None
    mass: float | None  # of the mount in the next metric stock size, kg
    then_first: str  # what gives first at that stock size
    then_gives: float | None
    curve: tuple[Point, ...]
    why_not: str = ""


def thinnest(
    file: DriveFile, wanted: float, materials: Iterable[str] = (), curve: bool = True
) -> list[Thinnest]:
    """Answer for each material (ids or names); for the file's own and one per family by default.

    ``curve`` adds what every stock thickness carries.

    Raises
    ------
    InputError
        when the file itself does not resolve.
    UnknownCard
        for an unknown material.
    """
    own = file.given["mount.material"].value
    names = list(materials) or [
        own.id,
        *(m for m in DEFAULT_MATERIALS if cards.material(m).family != own.family),
    ]
    base = limits.find(file)
    tried = [cards.material(name) for name in names]
    answers = []
    for i, material in enumerate(tried):
        progress.step("materials tried", i, len(tried))
        answers.append(_one(file, base, wanted, material, curve))
    progress.step("materials tried", len(tried), len(tried))
    return answers


def with_material(file: DriveFile, material: cards.Material) -> DriveFile:
    """Edit the drive to another material; values the user gave for the old one are dropped."""
    if file.given["mount.material"].value.id == material.id:
        return file
    given = Given(key="mount.material", text=material.id, kind="material", value=material)
    return file.edited(mount__material=given, **{k.replace(".", "__"): None for k in OWN_KEYS})


def with_thickness(file: DriveFile, thickness: float) -> DriveFile:
    """Edit the drive to another thickness, m."""
    text = f"{thickness * 1000:.6g} mm"
    return file.edited(
        mount__thickness=Given(key="mount.thickness", text=text, kind="length", value=thickness)
    )


class _Trials:
    """The drive at any thickness, one reduced plate model answering for a range of them.

    The model holds the places of mid-planes at the thickness it is laid out for, so what it says
    of others is only near; ``_settled`` ends the search on drives laid out anew.
    """

    def __init__(self, file: DriveFile, top: float, own: float) -> None:
        self.file, self.low, self.high = file, THINNEST, top
        self.plates: Any = None
        try:
            self._lay_out(math.sqrt(THINNEST * top))
        except MountlimitError:  # that thickness cannot be built; the file's own can
            self._lay_out(own)

    def _lay_out(self, thickness: float) -> None:
        edited = with_thickness(self.file, thickness)
        self.plates = plate_route.with_plates(edited, (self.low, self.high)).plates

    def at(self, thickness: float) -> DriveFile:
        """Give the drive at a thickness."""
        return replace(with_thickness(self.file, thickness), plates=self.plates)


def _one(
    file: DriveFile, base: Found, wanted: float, material: cards.Material, curve: bool
) -> Thinnest:
    ends = quick.safe_ends(base)
    top = min(THICKEST, 1.98 * float(base.drive.shaft.face_overhang))
    edited = with_material(file, material)
    try:
        trials = _Trials(edited, top, float(base.drive.mount.thickness))
        points = _curve(trials, ends, material, wanted) if curve else ()
        guess = _search(trials, ends, wanted)
        found = _settled(edited, wanted, guess.thickness, top)
        if found is None:
            return _answer(trials, material, math.inf, guess.check, points, top)
        answer = _answer(trials, material, found.thickness, found.check, points, top)
    except MountlimitError as error:
        return _refused(material, str(error).splitlines()[0])
    return replace(answer, why_not=found.doubt or answer.why_not)


@dataclass(frozen=True, slots=True)
class _At:
    """A thickness, what sets it there, and what is in doubt about it."""

    thickness: float
    check: str
    doubt: str = ""


def _search(trials: _Trials, ends: EndsOf, wanted: float) -> _At:
    """Give about the first thickness that carries the wanted current, or else comes nearest to it.

    The safe-side ends are those of the drive as it is and the model is laid out for one thickness,
    so this is only where ``_settled`` begins.
    """
    before: float | None = None
    least, best = math.inf, _At(trials.high, "")
    for t in np.geomspace(trials.low, trials.high, TRIALS):
        try:
            u, name = quick.shortfall(trials.at(float(t)), ends, wanted)
        except MountlimitError:  # cannot be built
            before = None
            continue
        if u <= 1:
            share = 0.0 if before is None else math.log(u) / math.log(u / before)
            return _At(float(t) * (trials.low / trials.high) ** (share / (TRIALS - 1)), name)
        if u < least:
            least, best = u, _At(float(t), name)
        before = u
    return best


def _settled(file: DriveFile, wanted: float, start: float, top: float) -> _At | None:
    """Give the thickness at which the first safe current is the wanted one; None where none is met.

    Every trial is the whole edited drive, its plate model laid out for that very thickness. From
    the start it walks, thicker or thinner, until two trials stand on either side of the wanted
    current, and closes in between them. What cannot be built carries nothing.
    """
    under: tuple[float, float, str] | None = None  # thickness, log of safe over wanted, check
    over: tuple[float, float, str] | None = None
    at = min(max(start, THINNEST), 0.9999 * top)
    for walked in range(STEPS):
        safe, check = _carried(file, at, wanted, under[2] if under else "")
        gap = math.log(min(max(safe / wanted, 1e-3), 1e3))
        if gap >= 0:
            over = (at, gap, check)
        else:
            under = (at, gap, check)
        if over and under:
            if over[0] / under[0] < 1 + CLOSE:
                return _at_limit(over[0], under[2])
            at = _between(under, over)
        elif over:
            if at <= THINNEST:
                return _At(THINNEST, check)
            at = max(THINNEST, at * math.exp(-_stride(gap, walked)))
        else:
            if at >= 0.9998 * top:
                return None
            at = min(0.9999 * top, at * math.exp(_stride(-gap, walked)))
    if over is None:
        return None
    lowest = under[0] if under else THINNEST
    words = f"not settled: between {lowest * 1000:.3g} and {over[0] * 1000:.3g} mm"
    return _At(over[0], over[2], words)


def _at_limit(thickness: float, stops: str) -> _At:
    """Give the answer; what stops a thinner one is a check, or that it cannot be built."""
    return _At(thickness, stops) if stops in BY_NAME else _At(thickness, "what can be built", stops)


def _stride(gap: float, walked: int) -> float:
    """Give how far to walk: a little past where a current growing with thickness would meet it."""
    return min(max(1.1 * gap, 2 * CLOSE) * 2.0 ** max(0, walked - 1), 0.7)


def _between(under: tuple[float, float, str], over: tuple[float, float, str]) -> float:
    """Give the next trial: on the line through both, but a good way inside them, as it may jump."""
    width = math.log(over[0] / under[0])
    share = -under[1] / (over[1] - under[1])
    edge = min(0.5, max(0.15, 0.45 * CLOSE / width))
    if abs(width) < 0.03:  # straight enough here: step just past the line on the far side
        aim = 0.4 * CLOSE / abs(width)
        share += aim if share < 0.5 else -aim
        edge = min(0.5, aim)
    return under[0] * math.exp(width * min(max(share, edge), 1 - edge))


def _carried(file: DriveFile, thickness: float, wanted: float, last: str) -> tuple[float, str]:
    """Give the first safe current of the drive meshed anew at a thickness, and its check.

    The check that stopped the trial before is looked at alone first: where it stops this one too,
    that is enough.
    """
    edited = with_thickness(file, thickness)
    try:
        if last in BY_NAME:
            alone = next((x for x in limits.find(edited, [last]).limits if x.counts), None)
            if alone is not None and alone.safe < wanted:
                return alone.safe, last
        first = limits.find(edited).first_safe
    except MountlimitError as error:
        return 0.0, f"cannot be built thinner: {str(error).splitlines()[0]}"
    return first.safe, first.check.name


def _refused(material: cards.Material, why: str) -> Thinnest:
    return Thinnest(
        material=material, thickness=math.inf, set_by="", best=0.0, stock_metric=None, stock_inch=None,
        mass=None, then_first="", then_gives=None, curve=(), why_not=why,
    )  # fmt: skip


def _curve(
    trials: _Trials, ends: EndsOf, material: cards.Material, wanted: float
) -> tuple[Point, ...]:
    """Give what every metric stock thickness carries."""
    currents = limits.grid(10 * wanted)
    found = []
    for t in cards.stock(material.family, "metric").thicknesses:
        if t < trials.high:
            try:
                safe = quick.safe_currents(trials.at(float(t)), ends, currents)
            except MountlimitError:  # cannot be built
                continue
            found.append(Point(thickness=float(t), safe=safe.current, check=safe.first))
    return tuple(found)


def _answer(
    trials: _Trials, material: cards.Material, found: float, set_by: str,
    curve: tuple[Point, ...], top: float,
) -> Thinnest:  # fmt: skip
    metric, inch = (cards.stock(material.family, s).thicknesses for s in ("metric", "inch"))
    next_metric = next((float(t) for t in metric if found <= t < top), None)
    next_inch = next((float(t) for t in inch if found <= t < top), None)
    mass = gives = None
    first = unbuilt = ""
    if next_metric is not None:
        try:
            at_stock = limits.find(with_thickness(trials.file, next_metric))
        except MountlimitError as error:
            unbuilt = str(error).splitlines()[0]
        else:
            if one := at_stock.first_gives:
                first, gives = one.check.name, one.gives
            mass = next_metric * at_stock.drive.mount.area * float(material.density)
    why = unbuilt and f"the next stock size cannot be built: {unbuilt}"
    if math.isinf(found):
        why = f"no plate up to {top * 1000:.0f} mm carries it: {set_by} stops it whatever the thickness"
    elif next_metric is None:
        why = "no stock size that thick; build it up or look at another change"
    return Thinnest(
        material=material, thickness=found, set_by=set_by,
        best=max((p.safe for p in curve), default=0.0), stock_metric=next_metric, stock_inch=next_inch,
        mass=mass, then_first=first, then_gives=gives, curve=curve, why_not=why,
    )  # fmt: skip
