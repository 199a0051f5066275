"""What must hold of an outline before it can be a plate; every fault is found, each one plain line."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from itertools import combinations
from typing import TYPE_CHECKING, Any

from .. import units
from .error import Fault, OutlineError
from .model import WORDS, Cut, Outline, RoundHole, SlotHole, extent

if TYPE_CHECKING:
    from shapely.geometry import Polygon as Shape

SIZES = (0.015, 3.0)  # m, longest side of a plate that mounts a motor
BOLT_HOLES = (0.0015, 0.06)  # m, from M1.4 to above M48
TOUCH = 1e-7  # m, below this two places are the same
MOST_CORNERS = 20_000
MOST_CUTS = 300


@dataclass(frozen=True, slots=True)
class Wording:
    """How messages speak of an outline: the key each part stands under, and the units shown."""

    system: str = "metric"
    keys: Mapping[str, str] = field(default_factory=lambda: {n: f"mount.{n}" for n in ("outline", *WORDS)})  # fmt: skip
    hints: Mapping[str, str] = field(default_factory=dict)  # for "edge", "size", "frame", "motor"

    def length(self, value: float) -> str:
        """Write a length."""
        return units.show(value, "length", self.system, 4)

    def place(self, x: float, y: float) -> str:
        """Write a place as it would be typed: "20, 15 mm"."""
        unit = "in" if self.system == "inch" else "mm"
        digits = 4 if unit == "in" else 3
        numbers = (f"{round(units.convert(v, 'length', unit), digits) + 0.0:g}" for v in (x, y))
        return f"{', '.join(numbers)} {unit}"

    def cut(self, name: str, number: int, cut: Cut) -> str:
        """Name one thing cut out: "frame hole 2 at 20, 15 mm"."""
        return f"{WORDS[name]} {number} at {self.place(*middle(cut))}"


def middle(cut: Cut) -> tuple[float, float]:
    """Centre of a hole or slot; of a cut-out the middle of its extent."""
    if isinstance(cut, RoundHole | SlotHole):
        return cut.x, cut.y
    xs, ys = [p.x for p in cut], [p.y for p in cut]
    return (min(xs) + max(xs)) / 2.0, (min(ys) + max(ys)) / 2.0


def check(outline: Outline, wording: Wording) -> None:
    """Raise with every fault of an outline.

    Raises
    ------
    OutlineError
        when the edge crosses itself, a hole is not wholly inside, holes overlap, nothing holds the
        plate or the motor, or a size cannot be that of a mount.
    """
    faults = list(_edge(outline, wording)) or list(_sizes(outline, wording))
    faults = faults or [*_missing(outline, wording), *_cuts(outline, wording)]
    if faults:
        raise OutlineError(*faults)


def plausible(size: float, bolt_holes: list[float]) -> bool:
    """Tell whether a longest side and the bolt holes can be those of a mount, m."""
    within = all(BOLT_HOLES[0] <= d <= BOLT_HOLES[1] for d in bolt_holes)
    return SIZES[0] <= size <= SIZES[1] and within


def bolt_hole_sizes(outline: Outline) -> list[float]:
    """Diameters of the holes, and widths of the slots, that bolts go through."""
    found = [h.diameter for h in (*outline.frame_holes, *outline.motor_holes)]
    return found + [s.width for s in (*outline.frame_slots, *outline.motor_slots)]


def _edge(outline: Outline, wording: Wording) -> Iterator[Fault]:
    from shapely import is_valid_reason
    from shapely.geometry import Polygon

    key, corners = wording.keys["outline"], outline.corners
    if len(corners) < 3:
        yield Fault(key, "", "needs at least three different corners")
        return
    if len(corners) > MOST_CORNERS:
        yield Fault(key, "", f"has {len(corners)} corners; expected at most {MOST_CORNERS}")
        return
    reason = is_valid_reason(Polygon(corners))
    if reason != "Valid Geometry":
        found = re.search(r"\[(\S+) (\S+)\]", reason)
        at = f" at {wording.place(float(found[1]), float(found[2]))}" if found else ""
        yield Fault(key, "", f"the outline crosses or touches itself{at}",
                    wording.hints.get("edge", "give the corners in order around the plate"))  # fmt: skip


def _sizes(outline: Outline, wording: Wording) -> Iterator[Fault]:
    low, high = (wording.length(v) for v in SIZES)
    if not SIZES[0] <= max(outline.size) <= SIZES[1]:
        across, along = (wording.length(v) for v in outline.size)
        yield Fault(
            wording.keys["outline"], "",
            f"the plate would be {across} by {along}; expected a longest side of {low} to {high}",
            wording.hints.get("size", "check the unit"),
        )  # fmt: skip
        return
    low, high = (wording.length(v) for v in BOLT_HOLES)
    for name, number, cut in outline.cuts():
        if name.startswith(("frame", "motor")) and isinstance(cut, RoundHole | SlotHole):
            size = cut.diameter if isinstance(cut, RoundHole) else cut.width
            if not BOLT_HOLES[0] <= size <= BOLT_HOLES[1]:
                yield Fault(
                    wording.keys[name], "",
                    f"the {wording.cut(name, number, cut)} would be {wording.length(size)} wide; "
                    f"expected a bolt hole of {low} to {high}",
                    wording.hints.get("size", "check the unit"),
                )  # fmt: skip


def _missing(outline: Outline, wording: Wording) -> Iterator[Fault]:
    for what, example in (("motor", "60, 70, 6.6 mm"), ("frame", "20, 15, 9 mm")):
        name = f"{what}_holes"
        if not getattr(outline, name) and not getattr(outline, f"{what}_slots"):
            yield Fault(
                wording.keys[name], "", f"no hole for the bolts of the {what}",
                wording.hints.get(what, f'for example mount.{name} = ["{example}", ...]'),
            )  # fmt: skip


def _cuts(outline: Outline, wording: Wording) -> Iterator[Fault]:
    from shapely.geometry import LinearRing, Polygon

    cuts = list(outline.cuts())
    if len(cuts) > MOST_CUTS:
        yield Fault(wording.keys["outline"], "", f"has {len(cuts)} holes; expected at most {MOST_CUTS}")  # fmt: skip
        return
    plate, edge = Polygon(outline.corners), LinearRing(outline.corners)
    cores = []
    for name, number, cut in cuts:
        core, reach = _core(cut)
        if not core.is_valid:
            yield Fault(wording.keys[name], "", f"the {wording.cut(name, number, cut)} crosses itself")  # fmt: skip
            continue
        cores.append((name, number, cut, core, reach))
        over = reach - edge.distance(core)
        if not plate.contains(core):
            yield Fault(wording.keys[name], "", f"the {wording.cut(name, number, cut)} lies outside the plate or across its edge")  # fmt: skip
        elif over > -TOUCH:
            yield Fault(wording.keys[name], "", f"the {wording.cut(name, number, cut)} breaks through the edge of the plate by {wording.length(max(over, 0.0))}")  # fmt: skip
    yield from _overlaps(cores, wording)


def _core(cut: Cut) -> tuple[Shape, float]:
    """Give the shape whose growth by a reach is the cut: a point, a line or the cut itself."""
    from shapely.geometry import LineString, Point, Polygon

    if isinstance(cut, RoundHole):
        return Point(cut.x, cut.y), cut.diameter / 2.0
    if isinstance(cut, SlotHole):
        return LineString(cut.ends), cut.width / 2.0
    return Polygon(cut), 0.0


def _overlaps(cores: list[tuple[str, int, Cut, Any, float]], wording: Wording) -> Iterator[Fault]:
    spans = [(middle(c), math.hypot(*_extent(c))) for _, _, c, _, _ in cores]
    for i, j in combinations(range(len(cores)), 2):
        (a, far_a), (b, far_b) = spans[i], spans[j]
        if math.dist(a, b) > far_a + far_b:
            continue
        first, second = cores[i], cores[j]
        if first[3].distance(second[3]) - first[4] - second[4] < TOUCH:
            one, other = (wording.cut(*part[:3]) for part in (first, second))
            yield Fault(wording.keys[second[0]], "", f"the {one} and the {other} overlap")


def _extent(cut: Cut) -> tuple[float, float]:
    if isinstance(cut, RoundHole):
        return cut.diameter, cut.diameter
    if isinstance(cut, SlotHole):
        return cut.length, cut.length
    return extent(cut)
