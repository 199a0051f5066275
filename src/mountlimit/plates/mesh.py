"""Triangles of the whole mount: six nodes each, one and the same along joints, checked against the drawing."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import cytriangle  # type: ignore[import-untyped]
import numpy as np
from scipy.spatial import cKDTree

from . import regions
from .error import PlateError
from .joints import Joint
from .linework import Chain, FacetLines, draw
from .model import FloatArray, IntArray, PlateModel
from .shapes import TOUCH, free_polygon, outline_polygon

LARGEST = 0.015  # m, largest default element size
ALONG_SPAN = 6.0  # elements over the smallest width of a plate
OVER_THICKNESS = 5.0  # element size over plate thickness
MOST = 800  # elements aimed at, at most, by the default size
AREA_SHARE = 0.43  # area of an even triangle over its side squared
MOST_BY_DEFAULT = 5500  # elements at the default size; more is refused: 500 MB
SMALLEST_ANGLE = 25.0  # degrees, asked of the mesher
DIGITS = (
    9  # of places over the plate's size: the last one must not choose among even triangulations
)


@dataclass(frozen=True, kw_only=True)
class Mesh:
    """Nodes in space and six-node triangles: three corners, then the middles of edges 01, 12, 20.

    ``factor`` multiplies the plate's thickness in an element; ``zone`` tells elements apart that
    must not share a nodal mean of stress. ``frame_bolt``, ``motor_bolt``, ``spacer`` and ``link``
    (fasteners of seams, then struts) hold the part whose washer or end an element lies under, else -1.
    """

    points: FloatArray
    triangles: IntArray
    facet: IntArray
    factor: FloatArray
    zone: IntArray
    area: FloatArray
    frame_bolt: IntArray
    motor_bolt: IntArray
    motor_face: IntArray
    spacer: IntArray
    link: IntArray
    free_edges: IntArray
    ties: IntArray
    joints: tuple[Joint, ...]
    size: float


def default_size(model: PlateModel) -> float:
    """Give the element size used when none is asked for.

    h = min(15 mm, a sixth of the smallest width, five thicknesses), larger where that would give
    more than 800 elements.
    """
    sizes = [LARGEST]
    area = 0.0
    for facet in model.facets:
        box = outline_polygon(facet).minimum_rotated_rectangle
        corners = np.asarray(box.exterior.coords)
        sides = np.linalg.norm(np.diff(corners, axis=0), axis=1)
        sizes += [float(np.min(sides)) / ALONG_SPAN, OVER_THICKNESS * facet.thickness]
        area += outline_polygon(facet).area
    return float(max(min(sizes), np.sqrt(area / (AREA_SHARE * MOST))))


def build(model: PlateModel, mesh_size: float | None = None) -> Mesh:
    """Mesh a checked model.

    Raises
    ------
    PlateError
        when the mesher fails, the mesh does not fit the drawing, or it would be too large
    """
    size = default_size(model) if mesh_size is None else mesh_size
    drawn, chains, joints = draw(model, size)
    points, corners, facet, ties = _joined(model, drawn, chains, size)
    if mesh_size is None and len(corners) > MOST_BY_DEFAULT:
        raise PlateError(
            "mount",
            f"its holes and washers ask for {len(corners)} elements, more than {MOST_BY_DEFAULT}; "
            "leave out small holes, or bolts that carry little",
        )
    points, triangles, edges, edge_count = _with_middles(points, corners)
    ties = _with_tied_middles(ties, edges)
    centres = _centres(model, points, corners, facet)
    factor = regions.corner_factor(facet, centres, [lines.strips for lines in drawn])
    area = _areas(points, corners)
    _check_mesh(model, size, facet, area, points, triangles)
    return Mesh(
        points=points,
        triangles=triangles,
        facet=facet,
        factor=factor,
        zone=2 * facet + (factor > 1.0),
        area=area,
        frame_bolt=regions.under(facet, centres, regions.washers(model.frame_bolts, size)),
        motor_bolt=regions.under(facet, centres, regions.washers(model.motor_bolts, size)),
        motor_face=regions.under(facet, centres, regions.motor_face(model, size)),
        spacer=regions.under(facet, centres, regions.spacer_ends(model, size)),
        link=regions.under(facet, centres, regions.link_discs(model, size)),
        free_edges=edges[edge_count == 1],
        ties=ties,
        joints=tuple(joints),
        size=size,
    )


def _joined(
    model: PlateModel, drawn: list[FacetLines], chains: list[Chain], size: float
) -> tuple[FloatArray, IntArray, IntArray, IntArray]:
    """Triangulate all facets and merge the points they share.

    Gives points, triangles' corners, triangles' facets, and tied pairs of points.
    """
    parts = [_triangulated(model, i, lines, size) for i, lines in enumerate(drawn)]
    starts = np.cumsum([0] + [len(places) for places, _ in parts])
    points = np.concatenate(
        [model.facets[i].to_space(places) for i, (places, _) in enumerate(parts)]
    )
    corners = np.concatenate([t + starts[i] for i, (_, t) in enumerate(parts)])
    facet = np.repeat(np.arange(len(parts)), [len(t) for _, t in parts])
    number = _one_number(points, starts, chains, model)
    used, index = np.unique(number, return_inverse=True)
    ties = _tied(points, starts, index, chains, model)
    return points[used], index[corners], facet, ties


def _triangulated(
    model: PlateModel, facet: int, lines: FacetLines, size: float
) -> tuple[FloatArray, IntArray]:
    """Triangulate one facet without adding points to its lines."""
    scale = float(np.max(np.ptp(lines.places, axis=0)))
    request = {
        "vertices": np.round(lines.places / scale, DIGITS).tolist(),
        "segments": lines.pieces.tolist(),
    }
    if len(lines.hole_places):
        request["holes"] = np.round(lines.hole_places / scale, DIGITS).tolist()
    area = AREA_SHARE * (size / scale) ** 2
    result = cytriangle.triangulate(request, f"pq{SMALLEST_ANGLE:.1f}a{area:.9f}YY")
    places = np.asarray(result["vertices"], float) * scale
    corners = np.asarray(result["triangles"], np.int64).reshape(-1, 3)
    if len(corners) == 0:
        raise PlateError(model.facets[facet].name, "could not be meshed")
    places[: len(lines.places)] = lines.places
    used, index = np.unique(corners, return_inverse=True)
    return places[used], index.reshape(-1, 3)


def _one_number(
    points: FloatArray, starts: IntArray, chains: list[Chain], model: PlateModel
) -> IntArray:
    """Give each point the number of the first point it is the same as, along joints only."""
    number = np.arange(len(points))
    for chain in chains:
        if not chain.merged:
            continue
        ends = _chain_points(points, starts, chain, model)
        for a, b in zip(*ends, strict=True):
            low, high = sorted((_root(number, a), _root(number, b)))
            number[high] = low
    return np.array([_root(number, i) for i in range(len(number))])


def _root(number: IntArray, i: int) -> int:
    while number[i] != i:
        i = int(number[i])
    return i


def _chain_points(
    points: FloatArray, starts: IntArray, chain: Chain, model: PlateModel
) -> tuple[IntArray, IntArray]:
    """Find the mesh points of a chain on both its facets; every one must be there."""
    found = []
    for facet, wanted in zip(chain.facets, chain.points, strict=True):
        own = points[starts[facet] : starts[facet + 1]]
        away, index = cKDTree(own).query(wanted)
        if np.max(away) > 10.0 * TOUCH:
            names = " and ".join(model.facets[f].name for f in chain.facets)
            raise PlateError(names, "their common line could not be meshed alike")
        found.append(index + starts[facet])
    return found[0], found[1]


def _tied(
    points: FloatArray,
    starts: IntArray,
    index: IntArray,
    chains: list[Chain],
    model: PlateModel,
) -> IntArray:
    """Give the node pairs (follower, leader) of welds between facets that lie apart."""
    pairs = [
        np.c_[_chain_points(points, starts, chain, model)] for chain in chains if not chain.merged
    ]
    if not pairs:
        return np.empty((0, 2), np.int64)
    return np.asarray(index[np.concatenate(pairs)], np.int64)


def _with_tied_middles(ties: IntArray, edges: IntArray) -> IntArray:
    """Add the middle nodes between neighbours of a tied row, where both rows have that edge."""
    if len(ties) == 0:
        return ties
    number = {(int(a), int(b)): int(middle) for a, b, middle in edges}
    pairs = []
    for one, two in pairwise(ties):
        found = [
            number.get((int(min(a, b)), int(max(a, b)))) for a, b in zip(one, two, strict=True)
        ]
        if None not in found:
            pairs.append(found)
    return np.asarray(np.concatenate([ties, np.array(pairs, np.int64).reshape(-1, 2)]), np.int64)


def _with_middles(
    points: FloatArray, corners: IntArray
) -> tuple[FloatArray, IntArray, IntArray, IntArray]:
    """Add a node in the middle of every edge; also give edges (two ends, middle) and their use."""
    ends = np.concatenate([corners[:, [0, 1]], corners[:, [1, 2]], corners[:, [2, 0]]])
    ends = np.sort(ends, axis=1)
    key = ends[:, 0] * len(points) + ends[:, 1]
    kept, index, count = np.unique(key, return_inverse=True, return_counts=True)
    pairs = np.c_[kept // len(points), kept % len(points)]
    middle = len(points) + index.reshape(3, -1).T
    all_points = np.r_[points, points[pairs].mean(axis=1)]
    edges = np.c_[pairs, len(points) + np.arange(len(pairs))]
    return all_points, np.c_[corners, middle], edges, count


def _centres(
    model: PlateModel, points: FloatArray, corners: IntArray, facet: IntArray
) -> FloatArray:
    """Give the place of every triangle's centre in its own facet's plane."""
    centres = np.empty((len(corners), 2))
    for i, plate in enumerate(model.facets):
        own = facet == i
        centres[own] = plate.to_plane(points[corners[own, :3]].mean(axis=1))
    return centres


def _areas(points: FloatArray, corners: IntArray) -> FloatArray:
    first = points[corners[:, 1]] - points[corners[:, 0]]
    second = points[corners[:, 2]] - points[corners[:, 0]]
    return np.asarray(0.5 * np.linalg.norm(np.cross(first, second), axis=1))


def _check_mesh(
    model: PlateModel,
    size: float,
    facet: IntArray,
    area: FloatArray,
    points: FloatArray,
    triangles: IntArray,
) -> None:
    """Refuse a mesh whose area is not the drawing's, or with nodes that belong to nothing."""
    for i, plate in enumerate(model.facets):
        wanted = free_polygon(model, i, size).area
        if abs(area[facet == i].sum() - wanted) > 1e-6 * wanted:
            raise PlateError(plate.name, "mesh and outline differ in area")
    if np.min(area) <= 0.0 or len(np.unique(triangles)) != len(points):
        raise PlateError("mount", "the mesh has an empty triangle or a loose node")
