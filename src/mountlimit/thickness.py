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
from .drivefile import DriveFile, Given
from .errors import MountlimitError
from .limits import Found
from .quick import EndsOf

THINNEST = 0.0005
THICKEST = 0.15
TRIALS = 16
NARROW = 1.15  # range of the plate model about the thickness it is laid out for anew
ROUNDS = 3  # of laying the plate model out, and finding the safe-side ends, again at the answer
CLOSE = 1e-3
SAME = 2e-3  # nearer to the thickness it is laid out for, the plate model is not laid out again

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

    The model holds the places of mid-planes at the thickness it is laid out for, so the answer is
    approached by laying it out anew there, for a narrow range.
    """

    def __init__(self, file: DriveFile, top: float) -> None:
        self.file, self.top = file, top
        self.plates: Any = None
        self.around(math.sqrt(THINNEST * top), THINNEST, top)

    def around(self, thickness: float, low: float, high: float) -> None:
        """Lay the plate model out at a thickness, to answer from ``low`` to ``high``."""
        self.low, self.high = low, high
        edited = with_thickness(self.file, thickness)
        self.plates = plate_route.with_plates(edited, (low, high)).plates

    def at(self, thickness: float) -> DriveFile:
        """Give the drive at a thickness."""
        return replace(with_thickness(self.file, thickness), plates=self.plates)


def _one(
    file: DriveFile, base: Found, wanted: float, material: cards.Material, curve: bool
) -> Thinnest:
    ends = quick.safe_ends(base)
    top = min(THICKEST, 1.98 * float(base.drive.shaft.face_overhang))
    try:
        trials = _Trials(with_material(file, material), top)
        points = _curve(trials, ends, material, wanted) if curve else ()
        found, set_by = _search(trials, ends, wanted)
        for _ in range(ROUNDS):
            if not math.isfinite(found):
                break
            laid_out = found
            trials.around(found, max(THINNEST, found / NARROW), min(top, found * NARROW))
            again = limits.find(trials.at(found))
            safe = again.first_safe.safe
            if abs(safe / wanted - 1) < CLOSE or (found <= THINNEST and safe >= wanted):
                break
            ends = quick.safe_ends(again)
            found, set_by = _search(trials, ends, wanted)
            if abs(found / laid_out - 1) < SAME:
                break
    except MountlimitError as error:
        return _refused(material, str(error).splitlines()[0])
    return _answer(trials, material, found, set_by, points, top)


def _search(trials: _Trials, ends: EndsOf, wanted: float) -> tuple[float, str]:
    """Give the first thickness that carries the wanted current, and the check that sets it."""
    from scipy.optimize import brentq

    grid = np.geomspace(trials.low, trials.high, TRIALS)
    before = 0.0
    least, by = math.inf, ""
    for t in grid:
        u, name = quick.shortfall(trials.at(float(t)), ends, wanted)
        if u <= 1:
            if before == 0.0:
                return float(t), name
            root = brentq(
                lambda x: quick.shortfall(trials.at(math.exp(x)), ends, wanted)[0] - 1,
                math.log(before), math.log(float(t)), xtol=1e-6,
            )  # fmt: skip
            thick = math.exp(root) * (1 + 2e-6)
            return thick, quick.shortfall(trials.at(thick), ends, wanted)[1]
        if u < least:
            least, by = u, name
        before = float(t)
    return math.inf, by


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
        if t < trials.top:
            safe = quick.safe_currents(trials.at(float(t)), ends, currents)
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
    first = ""
    if next_metric is not None:
        at_stock = limits.find(with_thickness(trials.file, next_metric))
        if one := at_stock.first_gives:
            first, gives = one.check.name, one.gives
        mass = next_metric * at_stock.drive.mount.area * float(material.density)
    why = ""
    if math.isinf(found):
        why = f"no plate up to {top * 1000:.0f} mm carries it: {set_by} stops it whatever the thickness"
    elif next_metric is None:
        why = "no stock size that thick; build it up or look at another change"
    return Thinnest(
        material=material, thickness=found, set_by=set_by,
        best=max((p.safe for p in curve), default=0.0), stock_metric=next_metric, stock_inch=next_inch,
        mass=mass, then_first=first, then_gives=gives, curve=curve, why_not=why,
    )  # fmt: skip
