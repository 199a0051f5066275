"""The line work of every facet: all outlines, holes, washers, strips and joints, noded and divided.

Two facets that share a line get the very same points on it; no point is added to a line later.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import shapely
from scipy.spatial import cKDTree
from shapely.geometry import LineString, MultiPolygon, Polygon

from . import extra_points, regions
from . import joints as joints_of
from .joints import Joint
from .model import BoolArray, FloatArray, IntArray, PlateModel
from .shapes import TOUCH, holes_on
from .validity import washers_on

NEAR = 1e-6  # m, a corner this near to a line is put on it, two this near are one
GRID = 1e-9  # m, the grid places are rounded to before they are compared
ASIDE = (
    1e-3  # of the grid: off its halves, where the last digit would decide, and no more than that
)
STRIP_PIECES = 4.0  # length of the pieces along a stiff strip over the strip's width

Zone = tuple[Polygon | MultiPolygon, float]  # area, length of pieces in it


@dataclass(frozen=True, kw_only=True)
class FacetLines:
    """Noded straight pieces of one facet, ready for the mesher."""

    places: FloatArray
    pieces: IntArray
    hole_places: FloatArray
    strips: tuple[Polygon, ...]


@dataclass(frozen=True, kw_only=True)
class Chain:
    """Points along a line on two facets, in order; ``merged`` when they are the same points."""

    facets: tuple[int, int]
    points: tuple[FloatArray, FloatArray]
    merged: bool


def draw(model: PlateModel, mesh_size: float) -> tuple[list[FacetLines], list[Chain], list[Joint]]:
    """Draw every facet's line work and the chains of points facets share.

    Raises
    ------
    PlateError
        when a hole lies on a joint
    """
    found = joints_of.find(model)
    count = len(model.facets)
    strips = [joints_of.strips(model, found, i) for i in range(count)]
    pieces = [
        _split_near(
            _outside_holes(
                model, i, _noded(_lines(model, found, strips[i], i, mesh_size)), mesh_size
            )
        )
        for i in range(count)
    ]
    zones = [_zones(model, i, strips[i], mesh_size) for i in range(count)]
    chains = [_joint_chain(model, joint, pieces, zones, mesh_size) for joint in found]
    chains += _weld_chains(model, pieces, mesh_size)
    drawn = []
    for i in range(count):
        own = [c.points[c.facets.index(i)] for c in chains if i in c.facets]
        own = [model.facets[i].to_plane(points) for points in own]
        lines = _replace_on(pieces[i], own)
        holes = [Polygon(p).representative_point() for _, p in holes_on(model, i, mesh_size)]
        places, pairs = _number(lines, own, zones[i], mesh_size)
        drawn.append(
            FacetLines(
                places=extra_points.add(model, i, places, pairs, mesh_size),
                pieces=pairs,
                hole_places=np.array([[p.x, p.y] for p in holes]).reshape(-1, 2),
                strips=tuple(strips[i]),
            )
        )
    return drawn, chains, found


def _zones(model: PlateModel, facet: int, strips: list[Polygon], mesh_size: float) -> list[Zone]:
    """Give the areas of a facet where pieces are to be shorter: strips and contact with the frame."""
    found: list[Zone] = [
        (strip, max(STRIP_PIECES * _width(strip), 0.5 * mesh_size)) for strip in strips
    ]
    found += [
        (regions.contact_region(model, part), regions.contact_pitch(model, part))
        for part in model.contacts
        if part.facet == facet
    ]
    return found


def _width(strip: Polygon) -> float:
    corners = np.asarray(strip.exterior.coords)
    return float(np.linalg.norm(corners[2] - corners[1]))


def _lines(
    model: PlateModel, joints: list[Joint], strips: list[Polygon], facet: int, mesh_size: float
) -> list[LineString]:
    """Give all lines of a facet, not yet noded."""
    plate = model.facets[facet]
    rings = [np.asarray(plate.outline, float)]
    rings += [points for _, points in holes_on(model, facet, mesh_size)]
    rings += [points for _, points in washers_on(model, facet, mesh_size)]
    rings += [np.asarray(strip.exterior.coords)[:-1] for strip in strips]
    rings += [points for own, points in regions.motor_face(model, mesh_size) if own == facet]
    rings += _contact_edges(model, facet)
    lines = [LineString(np.r_[ring, ring[:1]]) for ring in rings]
    lines += [
        LineString(plate.to_plane(np.array([joint.start, joint.end])))
        for joint in joints
        if facet in joint.facets
    ]
    for weld in model.welds:
        if weld.facet == facet:
            lines.append(LineString([weld.start, weld.end]))
        elif weld.other_facet == facet:
            first = model.facets[weld.facet]
            ends = first.to_space(np.array([weld.start, weld.end], float))
            lines.append(LineString(plate.to_plane(ends)))
    return lines


def _outside_holes(
    model: PlateModel, facet: int, pieces: FloatArray, mesh_size: float
) -> FloatArray:
    """Leave out the pieces that lie in a hole, as a washer's edge over a slot."""
    middles = pieces.mean(axis=1)
    inside = np.zeros(len(pieces), bool)
    for _, points in holes_on(model, facet, mesh_size):
        inside |= shapely.contains_xy(Polygon(points).buffer(-TOUCH), *middles.T)
    return pieces[~inside]


def _contact_edges(model: PlateModel, facet: int) -> list[FloatArray]:
    """Give the outlines of contact regions on a facet, so that their edges fall on nodes."""
    rings = []
    for part in model.contacts:
        if part.facet == facet and part.region is not None:
            region = regions.contact_region(model, part)
            pieces = [p for p in shapely.get_parts(region) if isinstance(p, Polygon)]
            rings += [np.asarray(piece.exterior.coords)[:-1] for piece in pieces]
    return rings


def _noded(lines: list[LineString]) -> FloatArray:
    """Cut lines where they meet; give straight pieces, shape (n, 2 ends, 2)."""
    even = shapely.transform(lines, _rounded)
    union = shapely.node(shapely.union_all(even, grid_size=GRID))
    parts = shapely.get_parts(union)
    points, owner = shapely.get_coordinates(parts, return_index=True)
    same = owner[1:] == owner[:-1]
    return np.stack([points[:-1][same], points[1:][same]], axis=1)


def _split_near(pieces: FloatArray) -> FloatArray:
    """Cut pieces at corners that all but touch them, so that no needle of a triangle is left."""
    ends = np.unique(pieces.reshape(-1, 2), axis=0)
    tree = shapely.STRtree(shapely.linestrings(pieces))
    corner, piece = tree.query(shapely.points(ends), predicate="dwithin", distance=NEAR)
    from_ends = np.linalg.norm(pieces[piece] - ends[corner][:, None], axis=2)
    inner = np.min(from_ends, axis=1) > NEAR
    corner, piece = corner[inner], piece[inner]
    cut: list[FloatArray] = []
    for i in np.unique(piece):
        start, end = pieces[i]
        marks = ends[corner[piece == i]]
        marks = marks[np.argsort((marks - start) @ (end - start))]
        chain = np.vstack([start, marks, end])
        cut.append(np.stack([chain[:-1], chain[1:]], axis=1))
    kept = np.delete(pieces, np.unique(piece), axis=0)
    return np.concatenate([kept, *cut])


def _rounded(places: FloatArray) -> FloatArray:
    """Give places on the grid. Halves of it are common (middles), so rounding must not tip there."""
    return np.asarray(np.round(places / GRID + ASIDE) * GRID + 0.0)


def _on_line(
    places: FloatArray, start: FloatArray, end: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Give the place along a line and the distance from it of each place."""
    along = (end - start) / np.linalg.norm(end - start)
    offset = places - start
    return offset @ along, np.abs(offset @ np.array([-along[1], along[0]]))


def _marks(pieces: FloatArray, start: FloatArray, end: FloatArray) -> FloatArray:
    """Give where the ends of pieces sit along a line."""
    place, off = _on_line(pieces.reshape(-1, 2), start, end)
    length = float(np.linalg.norm(end - start))
    return place[(off < TOUCH) & (place > -TOUCH) & (place < length + TOUCH)]


def _divided(marks: FloatArray, length: float, size: float) -> FloatArray:
    """Give the marks along a line with near-doubles dropped and long gaps divided evenly."""
    marks = np.clip(np.sort(np.r_[0.0, marks, length]), 0.0, length)
    marks = marks[np.r_[True, np.diff(marks) > TOUCH]]
    if length - marks[-1] > 0.0:
        marks[-1] = length
    filled = [marks[:1]]
    for low, high in pairwise(marks):
        count = max(1, math.ceil((high - low) / size - 1e-6))
        filled.append(low + (high - low) * np.arange(1, count + 1) / count)
    return np.concatenate(filled)


def _joint_chain(
    model: PlateModel,
    joint: Joint,
    pieces: list[FloatArray],
    zones: list[list[Zone]],
    mesh_size: float,
) -> Chain:
    """Divide a joint the same way on both its facets."""
    marks = np.concatenate(
        [
            _marks(pieces[i], *model.facets[i].to_plane(np.array([joint.start, joint.end])))
            for i in joint.facets
        ]
    )
    middle = 0.5 * (joint.start + joint.end)
    size = min(
        float(_sizes(model.facets[i].to_plane(middle)[None], zones[i], mesh_size)[0])
        for i in joint.facets
    )
    places = _divided(marks, joint.length, size)
    points = joint.start + places[:, None] * joint.direction
    return Chain(facets=joint.facets, points=(points, points), merged=True)


def _weld_chains(model: PlateModel, pieces: list[FloatArray], mesh_size: float) -> list[Chain]:
    """Divide every weld between two facets the same way on both."""
    chains = []
    for weld in model.welds:
        if weld.other_facet is None:
            continue
        first, second = model.facets[weld.facet], model.facets[weld.other_facet]
        ends = first.to_space(np.array([weld.start, weld.end], float))
        far = second.to_space(second.to_plane(ends))
        length = float(np.linalg.norm(ends[1] - ends[0]))
        marks = _marks(pieces[weld.facet], *first.to_plane(ends))
        other = _marks(pieces[weld.other_facet], *second.to_plane(far))
        scale = length / float(np.linalg.norm(far[1] - far[0]))
        places = _divided(np.r_[marks, scale * other], length, mesh_size) / length
        lines = [a + places[:, None] * (b - a) for a, b in (ends, far)]
        pair = (weld.facet, weld.other_facet)
        chains.append(Chain(facets=pair, points=(lines[0], lines[1]), merged=False))
    return chains


def _replace_on(pieces: FloatArray, chains: list[FloatArray]) -> FloatArray:
    """Replace the pieces that lie on a chain by the chain's own pieces."""
    for chain in chains:
        place, off = _on_line(pieces.reshape(-1, 2), chain[0], chain[-1])
        length = float(np.linalg.norm(chain[-1] - chain[0]))
        on = (off < TOUCH) & (place > -TOUCH) & (place < length + TOUCH)
        pieces = pieces[~on.reshape(-1, 2).all(axis=1)]
        pieces = np.concatenate([pieces, np.stack([chain[:-1], chain[1:]], axis=1)])
    return pieces


def _sizes(places: FloatArray, zones: list[Zone], mesh_size: float) -> FloatArray:
    """Give the largest length of a piece at places: that of the finest zone they lie in."""
    size = np.full(len(places), mesh_size)
    points = shapely.points(places)
    for area, own in zones:
        on = shapely.intersects(area.buffer(TOUCH), points)
        size[on] = np.minimum(size[on], own)
    return size


def _number(
    pieces: FloatArray,
    chains: list[FloatArray],
    zones: list[Zone],
    mesh_size: float,
) -> tuple[FloatArray, IntArray]:
    """Divide long pieces, merge equal ends, and number them."""
    length = np.linalg.norm(pieces[:, 1] - pieces[:, 0], axis=1)
    size = _sizes(pieces.mean(axis=1), zones, mesh_size)
    fixed = np.concatenate(chains) if chains else np.empty((0, 2))
    on_chain = np.zeros(len(pieces), bool)
    for chain in chains:
        on_chain |= np.all(
            [_on_line(pieces[:, k], chain[0], chain[-1])[1] < TOUCH for k in (0, 1)], axis=0
        ) & _within(pieces.mean(axis=1), chain)
    counts = np.where(on_chain, 1, np.maximum(1, np.ceil(length / size - 1e-6))).astype(int)
    owner = np.repeat(np.arange(len(pieces)), counts)
    step = np.arange(len(owner)) - np.repeat(np.cumsum(counts) - counts, counts)
    edge = pieces[owner, 1] - pieces[owner, 0]
    share = (step / counts[owner])[:, None]
    low = pieces[owner, 0] + share * edge
    high = pieces[owner, 0] + ((step + 1) / counts[owner])[:, None] * edge
    return _merged(np.r_[fixed, low, high], len(fixed), len(low))


def _within(middles: FloatArray, chain: FloatArray) -> BoolArray:
    place = _on_line(middles, chain[0], chain[-1])[0]
    return (place > -TOUCH) & (place < np.linalg.norm(chain[-1] - chain[0]) + TOUCH)


def _merged(points: FloatArray, first: int, count: int) -> tuple[FloatArray, IntArray]:
    """Merge places that are the same; give distinct places and the pieces' end numbers.

    Places come out rounded and in order of their coordinates, so that the same drawing gives the
    same mesh however the mount is turned in space.
    """
    number = np.arange(len(points))
    for a, b in sorted(cKDTree(points).query_pairs(NEAR)):
        number[b] = min(number[b], number[a])
    number = number[number]
    kept, index = np.unique(number, return_inverse=True)
    places = _rounded(points[kept])
    order = np.lexsort(places.T)
    rank = np.empty_like(order)
    rank[order] = np.arange(len(order))
    index = rank[index]
    pairs = np.c_[index[first : first + count], index[first + count :]]
    pairs = np.unique(np.sort(pairs, axis=1), axis=0)
    return places[order], pairs[pairs[:, 0] != pairs[:, 1]].astype(np.int64)
