"""How thick must the plate be?  The thinnest plate of each material that carries a wanted current.

Each trial edits the drive and runs the one pipeline again.  The thinnest thickness is where the
worst utilisation up to the wanted current, design factors in, first comes down to 1.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

import numpy as np

from . import cards, crossings, limits, progress, quick
from .drivefile import DriveFile, Given
from .errors import MountlimitError
from .limits import Found, Limit
from .thinner import THINNEST, At, Point, Sweep, guess, settled, with_thickness

THICKEST = 0.15
TRIALS = 16  # thicknesses looked at to begin with
BETWEEN = 6  # of them beside the stock sizes

DEFAULT_MATERIALS = ("s235", "al6061_t6", "pom_c", "birch_ply")  # one per family
OWN_KEYS = (  # belong to the old material
    "mount.elastic_modulus",
    "mount.yield_strength",
    "mount.fatigue_strength",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class AtStock:
    """The mount in the next metric stock size: its mass, kg, and the limits that come first."""

    mass: float
    safe: Limit
    gives: Limit | None  # None when nothing gives below the largest current looked at


@dataclass(frozen=True, slots=True, kw_only=True)
class Thinnest:
    """The answer for one material."""

    material: cards.Material
    thickness: float  # infinity when no plate carries the wanted current
    set_by: str  # the check that sets the thickness, or that stops any plate
    best: float  # largest safe current any thickness gives, when none carries the wanted one
    stock_metric: float | None
    stock_inch: float | None
    at_stock: AtStock | None
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
    tried = to_try(file, materials)
    base = limits.find(file)
    answers = []
    for i, material in enumerate(tried):
        progress.step("materials tried", i, len(tried))
        answers.append(_one(file, base, wanted, material, curve))
    progress.step("materials tried", len(tried), len(tried))
    return answers


def to_try(file: DriveFile, materials: Iterable[str] = ()) -> list[cards.Material]:
    """Give the named materials, else the file's own and one of each other family."""
    own = file.given["mount.material"].value
    others = [m for m in DEFAULT_MATERIALS if cards.material(m).family != own.family]
    return [cards.material(name) for name in list(materials) or [own.id, *others]]


def with_material(file: DriveFile, material: cards.Material) -> DriveFile:
    """Edit the drive to another material; values the user gave for the old one are dropped."""
    if file.given["mount.material"].value.id == material.id:
        return file
    given = Given(key="mount.material", text=material.id, kind="material", value=material)
    return file.edited(mount__material=given, **{k.replace(".", "__"): None for k in OWN_KEYS})


def _one(
    file: DriveFile, base: Found, wanted: float, material: cards.Material, curve: bool
) -> Thinnest:
    top = min(THICKEST, 1.98 * float(base.drive.shaft.face_overhang))
    edited = with_material(file, material)
    sizes = [float(t) for t in cards.stock(material.family, "metric").thicknesses if t < top]
    try:
        sweep = Sweep(edited, quick.safe_ends(base), crossings.grid(10 * wanted), top)
        between = np.geomspace(THINNEST, 0.999 * top, BETWEEN if curve else TRIALS).tolist()
        stock = tuple(sweep.points(sizes, gives=True)) if curve else ()
        points = sorted((*stock, *sweep.points(between)), key=lambda p: p.thickness)
        if not points:
            return _refused(material, "no thickness of it can be built")
        start = guess(sweep, points, wanted)
        found = settled(edited, wanted, start, top)
        best = max(p.safe for p in points)
        if found is None:
            found = At(math.inf, start.check)
        return _answer(sweep, material, found, stock, best)
    except MountlimitError as error:
        return _refused(material, str(error).splitlines()[0])


def _refused(material: cards.Material, why: str) -> Thinnest:
    return Thinnest(
        material=material, thickness=math.inf, set_by="", best=0.0, stock_metric=None,
        stock_inch=None, at_stock=None, curve=(), why_not=why,
    )  # fmt: skip


def _answer(
    sweep: Sweep, material: cards.Material, found: At, curve: tuple[Point, ...], best: float
) -> Thinnest:
    metric, inch = (
        next((float(t) for t in cards.stock(material.family, s).thicknesses if found.thickness <= t < sweep.top), None)
        for s in ("metric", "inch")
    )  # fmt: skip
    at_stock, why = None, found.doubt
    if metric is not None:
        try:
            at_stock = _at_stock(sweep, metric)
        except MountlimitError as error:
            why = f"the next stock size cannot be built: {str(error).splitlines()[0]}"
    elif math.isinf(found.thickness):
        why = f"no plate up to {sweep.top * 1000:.0f} mm carries it: {found.check} stops it whatever the thickness"
    else:
        why = why or "no stock size that thick; build it up or look at another change"
    return Thinnest(
        material=material, thickness=found.thickness, set_by=found.check, best=best,
        stock_metric=metric, stock_inch=inch, at_stock=at_stock, curve=curve, why_not=why,
    )  # fmt: skip


def _at_stock(sweep: Sweep, thickness: float) -> AtStock:
    """Find the limits that come first in a stock size, laid out anew."""
    file = with_thickness(sweep.file, thickness)
    found = limits.find(file, list(sweep.at(thickness, gives=True).near))
    mount = found.drive.mount
    return AtStock(
        mass=thickness * mount.area * float(mount.material.density),
        safe=found.first_safe, gives=found.first_gives,
    )  # fmt: skip
