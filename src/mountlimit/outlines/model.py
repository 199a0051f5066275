"""An outline: the corners of a flat plate and everything cut out of it; lengths in m, angles in rad."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple


class Place(NamedTuple):
    """A place on the plate."""

    x: float
    y: float


class RoundHole(NamedTuple):
    """A round hole."""

    x: float
    y: float
    diameter: float

    @property
    def area(self) -> float:
        """Area, m2."""
        return math.pi * self.diameter**2 / 4.0


class SlotHole(NamedTuple):
    """A slot with round ends: ``length`` end to end, ``angle`` from x to its long axis."""

    x: float
    y: float
    length: float
    width: float
    angle: float

    @property
    def area(self) -> float:
        """Area, m2."""
        return (self.length - self.width) * self.width + math.pi * self.width**2 / 4.0

    @property
    def ends(self) -> tuple[Place, Place]:
        """Centres of the two round ends."""
        half = (self.length - self.width) / 2.0
        dx, dy = half * math.cos(self.angle), half * math.sin(self.angle)
        return Place(self.x - dx, self.y - dy), Place(self.x + dx, self.y + dy)


Polygon = tuple[Place, ...]
Cut = RoundHole | SlotHole | Polygon
ROUND = ("frame_holes", "motor_holes", "holes")
SLOTTED = ("frame_slots", "motor_slots", "slots")
WORDS = {
    "frame_holes": "frame hole", "motor_holes": "motor hole", "holes": "hole",
    "frame_slots": "frame slot", "motor_slots": "motor slot", "slots": "slot",
    "cutouts": "cut-out",
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Outline:
    """A plate's outer edge as corners, anticlockwise, and what is cut out of it, by what it is for.

    Arcs of the edge and of ``cutouts`` stand as chords with their ends on the arc; holes and slots
    are exact. ``notes`` is what the reader of a drawing passed over or took for granted.
    """

    corners: Polygon
    frame_holes: tuple[RoundHole, ...] = ()
    motor_holes: tuple[RoundHole, ...] = ()
    holes: tuple[RoundHole, ...] = ()
    frame_slots: tuple[SlotHole, ...] = ()
    motor_slots: tuple[SlotHole, ...] = ()
    slots: tuple[SlotHole, ...] = ()
    cutouts: tuple[Polygon, ...] = ()
    notes: tuple[str, ...] = ()

    @property
    def gross_area(self) -> float:
        """Area inside the outer edge, m2."""
        return polygon_moments(self.corners)[0]

    @property
    def area(self) -> float:
        """Area less everything cut out, m2."""
        return self._moments()[0]

    @property
    def centroid(self) -> Place:
        """Centroid of what is left when everything is cut out."""
        area, first_x, first_y = self._moments()
        return Place(first_x / area, first_y / area)

    @property
    def size(self) -> tuple[float, float]:
        """Extent in x and in y."""
        return extent(self.corners)

    def bolt_places(self, owner: str) -> list[Place]:
        """Middles of the holes and slots of "frame" or "motor"."""
        rounds: tuple[RoundHole, ...] = getattr(self, f"{owner}_holes")
        slots: tuple[SlotHole, ...] = getattr(self, f"{owner}_slots")
        return [Place(h.x, h.y) for h in rounds] + [Place(s.x, s.y) for s in slots]

    def cuts(self) -> Iterator[tuple[str, int, Cut]]:
        """Everything cut out: name of its list, number in it from 1, and the shape."""
        for name in WORDS:
            for number, cut in enumerate(getattr(self, name), 1):
                yield name, number, cut

    def shifted(self, x: float, y: float) -> Outline:
        """Give the outline moved by (x, y)."""
        return self._mapped(lambda p: Place(p[0] + x, p[1] + y), lambda a: a)

    def turned(self, angle: float) -> Outline:
        """Give the outline turned about the origin, anticlockwise."""
        c, s = math.cos(angle), math.sin(angle)
        return self._mapped(
            lambda p: Place(c * p[0] - s * p[1], s * p[0] + c * p[1]), lambda a: a + angle
        )

    def mirrored(self) -> Outline:
        """Give the outline seen from its other face: x changes sign."""
        return self._mapped(lambda p: Place(-p[0], p[1]), lambda a: -a, reverse=True)

    def _moments(self) -> tuple[float, float, float]:
        """Area and its first moments about the axes, less everything cut out."""
        area, first_x, first_y = polygon_moments(self.corners)
        for _, _, cut in self.cuts():
            if isinstance(cut, RoundHole | SlotHole):
                less = (cut.area, cut.area * cut.x, cut.area * cut.y)
            else:
                less = polygon_moments(cut)
            area, first_x, first_y = area - less[0], first_x - less[1], first_y - less[2]
        return area, first_x, first_y

    def _mapped(
        self, move: Callable[[Sequence[float]], Place], turn: Callable[[float], float],
        reverse: bool = False,
    ) -> Outline:  # fmt: skip
        step = -1 if reverse else 1
        changes: dict[str, object] = {
            "corners": tuple(move(p) for p in self.corners)[::step],
            "cutouts": tuple(tuple(move(p) for p in c)[::step] for c in self.cutouts),
        }
        for name in ROUND:
            changes[name] = tuple(RoundHole(*move(h), h.diameter) for h in getattr(self, name))
        for name in SLOTTED:
            changes[name] = tuple(
                SlotHole(*move(s), s.length, s.width, half_turn(turn(s.angle)))
                for s in getattr(self, name)
            )
        return replace(self, **changes)  # type: ignore[arg-type]


def half_turn(angle: float) -> float:
    """Give the angle of a line without direction: above -90 to 90 degrees."""
    turned = math.remainder(angle, math.pi)
    return turned + math.pi if turned <= -math.pi / 2 + 1e-12 else turned


def polygon_moments(corners: Sequence[Sequence[float]]) -> tuple[float, float, float]:
    """Area and first moments (integrals of x and of y) of a polygon; positive if anticlockwise.

    Source
    ------
    Green's theorem along straight edges (the shoelace formula).
    """
    x0, y0 = corners[0][0], corners[0][1]  # near the polygon, so that little is lost in differences
    area = first_x = first_y = 0.0
    for k in range(len(corners)):
        ax, ay = corners[k - 1][0] - x0, corners[k - 1][1] - y0
        bx, by = corners[k][0] - x0, corners[k][1] - y0
        cross = ax * by - bx * ay
        area += cross / 2.0
        first_x += (ax + bx) * cross / 6.0
        first_y += (ay + by) * cross / 6.0
    return area, first_x + area * x0, first_y + area * y0


def extent(corners: Sequence[Sequence[float]]) -> tuple[float, float]:
    """Give the width in x and in y."""
    xs, ys = [p[0] for p in corners], [p[1] for p in corners]
    return max(xs) - min(xs), max(ys) - min(ys)


def anticlockwise(corners: Sequence[Place]) -> Polygon:
    """Give the corners in anticlockwise order, repeated ones (and a closing one) dropped."""
    kept = [p for k, p in enumerate(corners) if math.dist(p, corners[k - 1]) > 1e-7]
    if kept and polygon_moments(kept)[0] < 0.0:
        kept.reverse()
    return tuple(kept)
