"""What an outline leaves round its holes: distances to edges, material in a straight cut, bearing faces.

The outline stands about the shaft: shaft axis at the origin, y away from the frame. Lengths in m.
Shapes are shapely polygons with circles of 192 chords, their corners on the circle.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache
from typing import Any, NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray
from shapely.geometry import LineString, Point, Polygon, box

from .model import Outline, Place, RoundHole, SlotHole

QUARTER = 48  # chords in a quarter of a circle
RAYS = 41  # across a hole, one through its middle
FAR = 10.0  # m, beyond any plate
SLIVER = 0.003  # m, a bearing face that would end this near to the plate's end goes to the end
LEAST = 1e-8  # m2, smaller pieces of a bearing face are nothing
SMOOTH = 0.0002  # m, how far a corner may be from the line that replaces it in the plate model

FloatArray = NDArray[np.float64]
BoltCut = RoundHole | SlotHole
Corners = tuple[Place, ...]


class Ahead(NamedTuple):
    """Distance from a bolt to what lies one way from it, and whether that is an open end.

    Of another frame bolt's hole the distance is that of two equal holes, centre to centre, with the
    same material between them.
    """

    distance: float
    open_end: bool


class Crossing(NamedTuple):
    """A straight cut across the plate: middle, width from edge to edge, and (place, width) of gaps."""

    middle: float
    width: float
    gaps: tuple[tuple[float, float], ...]


def frame_cuts(outline: Outline) -> tuple[BoltCut, ...]:
    """Give the holes, then the slots, for the frame bolts."""
    return (*outline.frame_holes, *outline.frame_slots)


def motor_cuts(outline: Outline) -> tuple[BoltCut, ...]:
    """Give the holes, then the slots, for the motor's face bolts."""
    return (*outline.motor_holes, *outline.motor_slots)


def width_of(cut: BoltCut) -> float:
    """Give the diameter of a hole, or the width of a slot, m."""
    return cut.diameter if isinstance(cut, RoundHole) else cut.width


def bolt_place(cut: BoltCut, circle: float | None = None) -> Place:
    """Give where the bolt sits: the middle, or in a slot where it meets the bolt circle."""
    if isinstance(cut, RoundHole) or circle is None:
        return Place(cut.x, cut.y)
    along = (math.cos(cut.angle), math.sin(cut.angle))
    square = cut.x * along[0] + cut.y * along[1]
    inside = square**2 - cut.x**2 - cut.y**2 + (circle / 2.0) ** 2
    half = (cut.length - cut.width) / 2.0
    root = math.sqrt(max(inside, 0.0))
    shift = min((-square - root, -square + root), key=abs)
    shift = min(max(shift, -half), half)
    return Place(cut.x + shift * along[0], cut.y + shift * along[1])


def _shape(cut: object) -> Polygon:
    if isinstance(cut, RoundHole):
        return Point(cut.x, cut.y).buffer(cut.diameter / 2.0, quad_segs=QUARTER)
    if isinstance(cut, SlotHole):
        return LineString(cut.ends).buffer(cut.width / 2.0, quad_segs=QUARTER)
    return Polygon(cut)


@lru_cache(maxsize=16)
def _shapes(outline: Outline) -> tuple[Polygon, tuple[tuple[object, bool, Polygon], ...]]:
    """Give the plate without its holes, and every hole: itself, whether a frame bolt's, its shape."""
    cuts = tuple((cut, name.startswith("frame"), _shape(cut)) for name, _, cut in outline.cuts())
    return Polygon(outline.corners), cuts


@lru_cache(maxsize=16)
def _material(outline: Outline) -> shapely.Geometry:
    plate, cuts = _shapes(outline)
    return plate.difference(shapely.union_all([shape for _, _, shape in cuts]))


@lru_cache(maxsize=256)
def ahead(outline: Outline, cut: BoltCut, axis: int, way: int) -> Ahead:
    """Give what lies one way from a frame bolt: the shortest way on from any place of its hole.

    ``axis`` is 0 for x and 1 for y, ``way`` +1 or -1. In a slot the bolt may sit anywhere, so the
    distance is that from the end of the slot's middle line.
    """
    plate, cuts = _shapes(outline)
    own = _shape(cut)
    edges = shapely.union_all([plate.exterior, *(s for c, f, s in cuts if not f)])
    bolts = shapely.union_all([s for c, f, s in cuts if f and c != cut])
    low, high = own.bounds[1 - axis], own.bounds[3 - axis]
    places = np.linspace(low, high, RAYS + 2)[1:-1]
    far = way * FAR
    whole = _rays(places, axis, np.full(RAYS, -far), far)
    sides = shapely.bounds(shapely.intersection(whole, own))
    starts = sides[:, axis + 2] if way > 0 else sides[:, axis]
    rays = _rays(places, axis, starts, far)
    to_edge, to_bolt = (
        float(np.nanmin(shapely.distance(shapely.get_point(rays, 0), shapely.intersection(rays, s)), initial=FAR))
        for s in (edges, bolts)
    )  # fmt: skip
    half = width_of(cut) / 2.0
    return Ahead(to_edge + half, True) if to_edge <= to_bolt else Ahead(to_bolt + 2 * half, False)


def _rays(places: FloatArray, axis: int, starts: FloatArray, end: float) -> Any:
    """Give straight lines along an axis, one at each place across it."""
    ends = np.stack([starts, np.full(len(places), end)], axis=1)
    across = np.repeat(places[:, None], 2, axis=1)
    pair = (ends, across) if axis == 0 else (across, ends)
    return shapely.linestrings(np.stack(pair, axis=-1))


def free_radius(outline: Outline, own: BoltCut, place: Place) -> float:
    """Give how far it is from a bolt to the plate's edge or the next hole, whichever is nearer, m."""
    plate, cuts = _shapes(outline)
    point = Point(place)
    return float(
        min(
            plate.exterior.distance(point),
            *(shape.distance(point) for cut, _, shape in cuts if cut != own),
            FAR,
        )
    )


def clear_at_shaft(outline: Outline) -> float:
    """Give the radius about the shaft axis that is free of material; nought where there is none, m."""
    return float(_material(outline).distance(Point(0.0, 0.0)))


@lru_cache(maxsize=64)
def crossing(outline: Outline, y: float) -> Crossing | None:
    """Give the straight cut along x at a height; none where it leaves the plate in several pieces."""
    plate, _ = _shapes(outline)
    line = LineString([(-FAR, y), (FAR, y)])
    parts = [p for p in shapely.get_parts(plate.intersection(line)) if p.length > 0.0]
    if len(parts) != 1:
        return None
    left, _, right, _ = parts[0].bounds
    middle = (left + right) / 2.0
    empty = parts[0].difference(_material(outline))
    gaps = [p.bounds for p in shapely.get_parts(empty) if p.length > 1e-7]
    return Crossing(
        middle, right - left, tuple(((a + b) / 2.0 - middle, b - a) for a, _, b, _ in sorted(gaps))
    )


@lru_cache(maxsize=64)
def strip(
    outline: Outline, bolts: tuple[Place, ...], edge: float, beside: bool
) -> tuple[Corners, ...]:
    """Give the bearing faces of a row of bolts: as wide as the plate, to ``edge`` beyond the bolts.

    ``beside`` keeps to a square round the bolts. Pieces of the plate that hold no bolt do not bear.
    """
    plate, _ = _shapes(outline)
    xs, ys = [p.x for p in bolts], [p.y for p in bolts]
    left, right = (min(xs) - edge, max(xs) + edge) if beside else (-FAR, FAR)
    region = _faces(plate, (left, min(ys) - edge, right, max(ys) + edge))
    return tuple(
        _corners(piece) for piece in region if any(piece.covers(Point(bolt)) for bolt in bolts)
    )


@lru_cache(maxsize=64)
def below(outline: Outline, top: float) -> tuple[Corners, ...]:
    """Give the bearing faces of a plate that lies on the frame wherever it is below a height."""
    plate, _ = _shapes(outline)
    return tuple(_corners(piece) for piece in _faces(plate, (-FAR, -FAR, FAR, top)))


def _faces(plate: Polygon, sides: tuple[float, float, float, float]) -> list[Polygon]:
    """Give the pieces of a plate in an upright rectangle, its sides put on the plate's end nearby."""
    ends = plate.bounds
    put = [end if abs(side - end) < SLIVER else side for side, end in zip(sides, ends, strict=True)]
    common = shapely.get_parts(smooth_polygon(plate).intersection(box(*put)))
    return [p for p in common if isinstance(p, Polygon) and p.area > LEAST]


def _corners(piece: Polygon) -> Corners:
    return tuple(Place(x, y) for x, y in piece.exterior.coords[:-1])


def smooth_polygon(plate: Polygon) -> Polygon:
    """Give a polygon with corners that are hardly any left out, for the plate model's mesh."""
    return plate.simplify(SMOOTH)


def smooth(corners: Sequence[Place]) -> Corners:
    """Give the corners of a polygon with those that are hardly any left out."""
    return _corners(smooth_polygon(Polygon(corners)))
