"""How thick must the plate be?  The thinnest plate of each material that carries a wanted current.

Each trial edits the drive and runs the one pipeline again.  The thinnest thickness is where the
worst utilisation up to the wanted current, design factors in, first comes down to 1.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from . import cards, limits, plate_route, quick
from .drivefile import DriveFile, Given
from .errors import MountlimitError
from .limits import Found
from .quick import EndsOf
from .resolve import resolve

THINNEST = 0.0005
THICKEST = 0.15
TRIALS = 16
THIN_PLATE = 0.002  # m; below it the ratios of this thickness are kept
SOLVED = 4  # thicknesses at which the plate model is solved
ROUNDS = 3  # of finding the safe-side ends again at the answer
CLOSE = 1e-3

DEFAULT_MATERIALS = ("s235", "al6061_t6", "pom_c", "birch_ply")  # one per family
OWN_KEYS = ("mount.elastic_modulus", "mount.yield_strength")  # belong to the old material


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
    return [_one(file, base, wanted, cards.material(name), curve) for name in names]


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
    """The drive at any thickness, with the plate model's ratios between thicknesses already solved.

    The ratios of plates over beams change slowly with thickness, so trials take them from a few
    solved thicknesses; the answer itself is solved afresh and added until both agree.
    """

    def __init__(self, file: DriveFile, top: float) -> None:
        self.file = plate_route.without_plates(file)
        self.solved: dict[float, tuple[float, float]] = {}
        plated = plate_route.with_plates(self.file)
        if any(k in plated.given for k in plate_route.KEYS) and plated is not self.file:
            for t in np.geomspace(min(THIN_PLATE, top / 2), top, SOLVED):
                self.add(float(t))

    def add(self, thickness: float) -> None:
        """Solve the plate model at one more thickness, when trials use one at all."""
        drive = resolve(with_thickness(self.file, thickness))
        found = plate_route.softness_of(drive)
        self.solved[thickness] = (found.twist, found.bend)

    def at(self, thickness: float) -> DriveFile:
        """Give the drive at a thickness."""
        edited = with_thickness(self.file, thickness)
        if not self.solved:
            return edited
        places = sorted(self.solved)
        ratios = np.log([self.solved[t] for t in places])  # a row for each solved thickness
        at = (np.interp(math.log(thickness), np.log(places), column) for column in ratios.T)
        return plate_route.with_softness(edited, *(math.exp(x) for x in at))


def _one(
    file: DriveFile, base: Found, wanted: float, material: cards.Material, curve: bool
) -> Thinnest:
    ends = quick.safe_ends(base)
    top = min(THICKEST, 1.98 * float(base.drive.shaft.face_overhang))
    try:
        trials = _Trials(with_material(file, material), top)
        found, set_by = _search(trials, ends, wanted, top)
        for _ in range(ROUNDS):
            if not math.isfinite(found):
                break
            again = limits.find(with_thickness(trials.file, found))
            safe = again.first_safe.safe
            if abs(safe / wanted - 1) < CLOSE or (found <= THINNEST and safe >= wanted):
                break
            ends = quick.safe_ends(again)
            if trials.solved:
                trials.add(found)
            found, set_by = _search(trials, ends, wanted, top)
    except MountlimitError as error:
        return _refused(material, str(error).splitlines()[0])
    return _answer(trials, ends, material, found, set_by, wanted, top, curve)


def _search(trials: _Trials, ends: EndsOf, wanted: float, top: float) -> tuple[float, str]:
    """Give the first thickness that carries the wanted current, and the check that sets it."""
    from scipy.optimize import brentq

    grid = np.geomspace(THINNEST, top, TRIALS)
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


def _answer(
    trials: _Trials, ends: EndsOf, material: cards.Material, found: float, set_by: str,
    wanted: float, top: float, with_curve: bool,
) -> Thinnest:  # fmt: skip
    currents = limits.grid(10 * wanted)
    metric, inch = (cards.stock(material.family, s).thicknesses for s in ("metric", "inch"))
    curve = []
    for t in metric if with_curve else ():
        if t < top:
            safe = quick.safe_currents(trials.at(float(t)), ends, currents)
            curve.append(Point(thickness=float(t), safe=safe.current, check=safe.first))
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
        mass=mass, then_first=first, then_gives=gives, curve=tuple(curve), why_not=why,
    )  # fmt: skip
