"""Where facets meet: the lines two mid-planes share, found from the geometry, and the corner rule."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from shapely.geometry import LineString, Point, Polygon

from .model import Facet, FloatArray, PlateModel
from .shapes import TOUCH, holes_on, outline_polygon
from .validity import hole_clear_of

STRAIGHT = 0.02  # sine of the angle below which two facets count as one plane


@dataclass(frozen=True, kw_only=True)
class Joint:
    """A straight line common to two facets, in space; ``strip`` is its stiff width on each facet."""

    facets: tuple[int, int]
    start: FloatArray
    end: FloatArray
    strip: tuple[float, float]

    @property
    def length(self) -> float:
        """Length of the line."""
        return float(np.linalg.norm(self.end - self.start))

    @property
    def direction(self) -> FloatArray:
        """Unit vector from start to end."""
        return (self.end - self.start) / self.length


def find(model: PlateModel) -> list[Joint]:
    """Find every line that two facets share; two facets of a seam stay apart.

    Raises
    ------
    PlateError
        when a hole lies on such a line
    """
    found = []
    for i in range(len(model.facets)):
        for j in range(i + 1, len(model.facets)):
            found += _between(model, i, j)
    for joint in found:
        for facet in joint.facets:
            plate = model.facets[facet]
            line = LineString(plate.to_plane(np.array([joint.start, joint.end])))
            for name, hole in holes_on(model, facet, 0.1):
                hole_clear_of(plate, name, hole, line)
    return found


def _between(model: PlateModel, i: int, j: int) -> list[Joint]:
    if any({i, j} == set(seam.facets) for seam in model.seams):
        return []
    first, second = model.facets[i], model.facets[j]
    sine = float(np.linalg.norm(np.cross(first.axes[2], second.axes[2])))
    if sine < STRAIGHT:
        lines = _coplanar_lines(first, second)
        strip = (0.0, 0.0)
    else:
        lines = _crossing_lines(first, second)
        strip = corner_strips(model, i, j)
    return [Joint(facets=(i, j), start=a, end=b, strip=strip) for a, b in lines]


def corner_strips(model: PlateModel, i: int, j: int) -> tuple[float, float]:
    """Give the width of the stiff strip on either facet beside their joint.

    w = t / 2 + 0.4 * r with the thickness t of the other facet and the inner fillet radius r.

    Source
    ------
    fitted to a solid model of one filleted angle (own measurement); not tuned further
    """
    for bend in model.bends:
        if set(bend.facets) == {i, j}:
            if not bend.stiff_corner:
                return 0.0, 0.0
            radius = bend.fillet_radius
            break
    else:
        radius = 0.0
    first, second = model.facets[i], model.facets[j]
    return 0.5 * second.thickness + 0.4 * radius, 0.5 * first.thickness + 0.4 * radius


def _crossing_lines(first: Facet, second: Facet) -> list[tuple[FloatArray, FloatArray]]:
    """Give the stretches of the line where two planes cross that lie on both facets."""
    normals = np.array([first.axes[2], second.axes[2]])
    direction = np.cross(normals[0], normals[1])
    direction /= np.linalg.norm(direction)
    offsets = [normals[0] @ np.asarray(first.origin), normals[1] @ np.asarray(second.origin)]
    point = np.linalg.solve(np.vstack([normals, direction]), [*offsets, 0.0])
    stretches = [_stretches(facet, point, direction) for facet in (first, second)]
    lines = []
    for low, high in stretches[0]:
        for low_other, high_other in stretches[1]:
            start, end = max(low, low_other), min(high, high_other)
            if end - start > 10.0 * TOUCH:
                lines.append((point + start * direction, point + end * direction))
    return lines


def _stretches(facet: Facet, point: FloatArray, direction: FloatArray) -> list[tuple[float, float]]:
    """Give the intervals of a line in a facet's plane that lie on the facet, edges included."""
    outline = np.asarray(facet.outline, float)
    base = facet.to_plane(point)
    along = facet.axes[:2] @ direction
    across = np.array([-along[1], along[0]])
    place, off = (outline - base) @ along, (outline - base) @ across
    marks = list(place[np.abs(off) < TOUCH])
    following, off_next = np.roll(place, -1), np.roll(off, -1)
    crossing = (off * off_next < 0.0) & (np.abs(off) >= TOUCH) & (np.abs(off_next) >= TOUCH)
    share = off[crossing] / (off[crossing] - off_next[crossing])
    marks += list(place[crossing] + share * (following[crossing] - place[crossing]))
    marks = sorted(float(mark) for mark in marks)
    grown = outline_polygon(facet).buffer(TOUCH)
    kept: list[tuple[float, float]] = []
    for low, high in pairwise(marks):
        if high - low < TOUCH or not grown.contains(Point(base + 0.5 * (low + high) * along)):
            continue
        if kept and low - kept[-1][1] < TOUCH:
            kept[-1] = (kept[-1][0], high)
        else:
            kept.append((low, high))
    return kept


def _coplanar_lines(first: Facet, second: Facet) -> list[tuple[FloatArray, FloatArray]]:
    """Give the edges two facets of one plane share; facets in parallel planes share none."""
    corners = second.to_space(np.asarray(second.outline, float))
    height = (corners - np.asarray(first.origin, float)) @ first.axes[2]
    if np.max(np.abs(height)) > TOUCH:
        return []
    ring = first.to_plane(corners)
    lines = []
    for a, b in zip(ring, np.roll(ring, -1, axis=0), strict=True):
        length = float(np.linalg.norm(b - a))
        along = (b - a) / length
        outline = np.asarray(first.outline, float)
        for c, d in zip(outline, np.roll(outline, -1, axis=0), strict=True):
            off = (np.array([c, d]) - a) @ np.array([-along[1], along[0]])
            if np.max(np.abs(off)) > TOUCH:
                continue
            place = np.sort((np.array([c, d]) - a) @ along)
            low, high = max(0.0, float(place[0])), min(length, float(place[1]))
            if high - low > 10.0 * TOUCH:
                pair = first.to_space(np.array([a + low * along, a + high * along]))
                lines.append((pair[0], pair[1]))
    return lines


def strips(model: PlateModel, joints: list[Joint], facet: int) -> list[Polygon]:
    """Give the stiff strips on a facet, one on each side of every joint that has plate there."""
    plate = model.facets[facet]
    outline = outline_polygon(plate)
    found = []
    for joint in joints:
        if facet not in joint.facets or max(joint.strip) == 0.0:
            continue
        width = joint.strip[joint.facets.index(facet)]
        start, end = plate.to_plane(np.array([joint.start, joint.end]))
        for side in (-1.0, 1.0):
            strip = _strip(outline, start, end, side * width)
            if strip is not None:
                found.append(strip)
    return found


def _strip(outline: Polygon, start: FloatArray, end: FloatArray, width: float) -> Polygon | None:
    """Give the strip on one side of a line, pulled back from edges that cut it at a slant."""
    along = (end - start) / np.linalg.norm(end - start)
    across = width * np.array([-along[1], along[0]])
    reach = abs(width)
    length = float(np.linalg.norm(end - start))
    probe = LineString([start + across, end + across])
    grown = outline.buffer(TOUCH)
    if not grown.intersects(LineString([start + 0.5 * across, end + 0.5 * across])):
        return None
    if grown.contains(probe):
        low, high = 0.0, length
    else:
        pieces = [piece for piece in _lines(probe.intersection(outline)) if piece.length > reach]
        if not pieces:
            return None
        places = [float((np.array(p) - start) @ along) for g in pieces for p in g.coords]
        low, high = min(places), max(places)
        back = 0.5 * reach
        low = low + back if low > TOUCH else 0.0
        high = high - back if high < length - TOUCH else length
    ends = (start + low * along, start + high * along)
    return Polygon([ends[0], ends[1], ends[1] + across, ends[0] + across])


def _lines(shape: object) -> list[LineString]:
    """Give the line pieces of whatever an intersection returned."""
    if isinstance(shape, LineString):
        return [shape]
    return [part for part in getattr(shape, "geoms", []) if isinstance(part, LineString)]
