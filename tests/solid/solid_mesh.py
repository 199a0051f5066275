"""Tetrahedra of a mount: each plate triangulated, pushed through its thickness in layers, split.

Takes the very `PlateModel` the plate engine takes: one flat plate, or two of one width that meet
at right angles along an edge of both (square inner corner). Circles are drawn once with fixed
points; the tetrahedra at the edges of rigid washers, where the stress peaks, are divided further.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np
import shapely
from cytriangle import triangulate
from scipy.spatial import cKDTree
from shapely.geometry import LineString, Polygon

from mountlimit.plates import Facet, PlateModel
from mountlimit.plates.model import Bolt

SAME = 1e-8  # m
MOTOR_POINTS, FRAME_POINTS, HOLE_POINTS = 36, 28, 20
GROWTH = 1.7


@dataclass(frozen=True)
class Sizes:
    """How a mesh is made: size far from bolts, layers per thickness, edge length at rigid washers.

    ``circle`` multiplies how many points washers and holes are drawn with.
    """

    bulk: float
    layers: int
    edge: float
    circle: float = 1.0


@dataclass
class Corner:
    """Where two plates meet: the line of their mid-planes, and the plates' order."""

    start: np.ndarray
    end: np.ndarray
    plates: tuple[int, int]


@dataclass
class SolidMesh:
    """Points (n, 3), tetrahedra (m, 4), the plate each belongs to, and the corner if there is one."""

    points: np.ndarray
    tets: np.ndarray
    plate: np.ndarray
    sizes: Sizes
    corner: Corner | None = None
    times: dict[str, float] = field(default_factory=dict)


def polygon(bolt: Bolt, outer: bool, motor: bool, share: float = 1.0) -> np.ndarray:
    """Give the outline of a bolt's washer or hole, corners on the circle."""
    diameter = bolt.washer_diameter if outer else bolt.hole_diameter
    count = (MOTOR_POINTS if motor else FRAME_POINTS) if outer else HOLE_POINTS
    return _circle(bolt.centre, diameter, round(share * count))


def _circle(centre: object, diameter: float, count: int) -> np.ndarray:
    angle = (np.arange(count) + 0.5) * 2.0 * np.pi / count
    return np.asarray(centre, float) + 0.5 * diameter * np.c_[np.cos(angle), np.sin(angle)]


def build(model: PlateModel, sizes: Sizes) -> SolidMesh:
    """Mesh a model; `ValueError` for forms this check does not know."""
    if model.spacers or model.welds or model.motor_face_diameter is not None:
        raise ValueError("solid check: no spacers, welds or rigid motor faces")
    if any(bolt.slot_length > bolt.hole_diameter for bolt in model.bolts):
        raise ValueError("solid check: no slots")
    corner = find_corner(model)
    groups = [_plate_prisms(model, i, corner, sizes) for i in range(len(model.facets))]
    if corner is not None:
        groups.append(_corner_prisms(model, corner, sizes))
    points, prisms = _joined(groups)
    points, tets = _finer(model, points, _split(prisms), sizes)
    turned = _volumes(points, tets) < 0.0
    tets[turned] = tets[turned][:, [0, 1, 3, 2]]
    plate = _owner(model, points[tets].mean(axis=1))
    found = SolidMesh(points=points, tets=tets, plate=plate, sizes=sizes, corner=corner)
    _check(model, found)
    return found


def find_corner(model: PlateModel) -> Corner | None:
    """Find the edge two plates at right angles share."""
    if len(model.facets) == 1:
        return None
    if len(model.facets) != 2:
        raise ValueError("solid check: one or two plates")
    first, second = model.facets
    if abs(first.axes[2] @ second.axes[2]) > 1e-9:
        raise ValueError("solid check: two plates must meet at right angles")
    rings = [f.to_space(np.asarray(f.outline, float)) for f in (first, second)]
    edges = [np.stack([ring, np.roll(ring, -1, axis=0)], axis=1) for ring in rings]
    for a in edges[0]:
        for b in (*edges[1], *edges[1][:, ::-1]):
            if np.allclose(a, b, atol=SAME):
                return Corner(start=a[0], end=a[1], plates=(0, 1))
    raise ValueError("solid check: the plates must share a whole edge")


def inward(facet: Facet, corner: Corner) -> np.ndarray:
    """Give the direction in a plate's plane from the corner line into the plate."""
    along = (corner.end - corner.start) / np.linalg.norm(corner.end - corner.start)
    across = np.cross(facet.axes[2], along)
    centre = facet.to_space(np.asarray(facet.outline, float)).mean(axis=0)
    return across * np.sign((centre - corner.start) @ across)


def outline_beyond_corner(model: PlateModel, plate: int, corner: Corner | None) -> Polygon:
    """Give the part of a plate that is not in the corner block."""
    facet = model.facets[plate]
    whole = Polygon(np.asarray(facet.outline, float))
    if corner is None:
        return whole
    other = model.facets[1 - plate]
    ends = facet.to_plane(np.array([corner.start, corner.end]))
    into = facet.axes[:2] @ inward(facet, corner) * 0.5 * other.thickness
    strip = Polygon([ends[0], ends[1], ends[1] + into, ends[0] + into])
    return whole.difference(strip.buffer(0.0))


def _divisions(corner: Corner, sizes: Sizes) -> int:
    return int(np.ceil(np.linalg.norm(corner.end - corner.start) / sizes.bulk))


def _offsets(facet: Facet, sizes: Sizes) -> np.ndarray:
    return np.linspace(-0.5, 0.5, sizes.layers + 1) * facet.thickness


def _plate_prisms(
    model: PlateModel, plate: int, corner: Corner | None, sizes: Sizes
) -> tuple[np.ndarray, np.ndarray]:
    places, triangles = _flat(model, plate, corner, sizes)
    facet = model.facets[plate]
    flat = facet.to_space(places)
    return _extruded(flat, triangles, _offsets(facet, sizes)[:, None] * facet.axes[2])


def _extruded(
    flat: np.ndarray, triangles: np.ndarray, shifts: np.ndarray
) -> tuple[np.ndarray, np.ndarray]:
    points = (flat[None] + shifts[:, None]).reshape(-1, 3)
    steps = np.arange(len(shifts) - 1)[:, None, None] * len(flat)
    low = (triangles[None] + steps).reshape(-1, 3)
    return points, np.hstack([low, low + len(flat)])


def _corner_prisms(
    model: PlateModel, corner: Corner, sizes: Sizes
) -> tuple[np.ndarray, np.ndarray]:
    """Give the block both plates share, its cross-section the two plates' layers."""
    first, second = (model.facets[i] for i in corner.plates)
    one, two = _offsets(first, sizes), _offsets(second, sizes)
    u, v = np.meshgrid(one, two, indexing="ij")
    flat = corner.start + u.ravel()[:, None] * first.axes[2] + v.ravel()[:, None] * second.axes[2]
    index = np.arange(len(flat)).reshape(len(one), len(two))
    a, b, c, d = (
        index[i:j, k:m].ravel()
        for i, j, k, m in ((0, -1, 0, -1), (1, None, 0, -1), (1, None, 1, None), (0, -1, 1, None))
    )
    triangles = np.concatenate([np.c_[a, b, c], np.c_[a, c, d]])
    share = np.linspace(0.0, 1.0, _divisions(corner, sizes) + 1)[:, None]
    return _extruded(flat, triangles, share * (corner.end - corner.start))


def _flat(
    model: PlateModel, plate: int, corner: Corner | None, sizes: Sizes
) -> tuple[np.ndarray, np.ndarray]:
    """Triangulate one plate: outline, holes, washers and contact edges as lines, graded points."""
    facet = model.facets[plate]
    body = outline_beyond_corner(model, plate, corner)
    bolts = [
        (b, i >= len(model.frame_bolts)) for i, b in enumerate(model.bolts) if b.facet == plate
    ]
    holes = [polygon(bolt, False, motor, sizes.circle) for bolt, motor in bolts]
    holes += [_circle(h.centre, h.diameter, 32) for h in facet.holes]
    rings = holes + [polygon(bolt, True, motor, sizes.circle) for bolt, motor in bolts]
    lines = [LineString(np.r_[r, r[:1]]) for r in rings] + [LineString(body.exterior.coords)]
    lines += [
        LineString(body.intersection(Polygon(part.region)).exterior.coords)
        for part in model.contacts
        if part.facet == plate and part.region is not None
    ]
    places, pairs = _noded(lines, sizes.bulk)
    free = body.difference(shapely.union_all([Polygon(h) for h in holes]))
    extra = _graded_points(facet, bolts, free, lines, sizes)
    middles = [Polygon(h).representative_point() for h in holes]
    scale = float(np.max(np.abs(places)))
    request = {
        "vertices": (np.r_[places, extra] / scale).tolist(),
        "segments": pairs.tolist(),
        "holes": [[p.x / scale, p.y / scale] for p in middles],
    }
    area = 0.5 * (sizes.bulk / scale) ** 2
    done = triangulate(request, f"pq27a{area:.9f}YY")
    found = np.asarray(done["vertices"], float) * scale
    corners = np.asarray(done["triangles"], np.int64)
    used, index = np.unique(corners, return_inverse=True)
    return found[used], index.reshape(-1, 3)


def _noded(lines: list[LineString], size: float) -> tuple[np.ndarray, np.ndarray]:
    """Cut lines where they meet and divide what is longer than the size; give points and pairs."""
    united = shapely.node(shapely.union_all(shapely.set_precision(lines, 1e-10)))
    parts = shapely.get_parts(shapely.node(united))
    points, owner = shapely.get_coordinates(parts, return_index=True)
    same = owner[1:] == owner[:-1]
    ends, others = [], []
    for a, b in zip(points[:-1][same], points[1:][same], strict=True):
        count = max(1, int(np.ceil(np.linalg.norm(b - a) / size - 1e-9)))
        chain = a + np.linspace(0.0, 1.0, count + 1)[:, None] * (b - a)
        ends.append(chain[:-1])
        others.append(chain[1:])
    both = np.concatenate([*ends, *others])
    places, index = np.unique(np.round(both, 9), axis=0, return_inverse=True)
    pairs = np.unique(np.sort(index.reshape(2, -1).T, axis=1), axis=0)
    return places, pairs


def _graded_points(
    facet: Facet,
    bolts: list[tuple[Bolt, bool]],
    free: Polygon,
    lines: list[LineString],
    sizes: Sizes,
) -> np.ndarray:
    """Give rows of points round the washers, their distance growing, to a third of the bulk size."""
    drawn = shapely.union_all(lines)
    kept = np.empty((0, 2))
    for bolt, motor in bolts:
        radius = 0.5 * bolt.washer_diameter
        edge = polygon(bolt, True, motor, sizes.circle)
        pitch = float(np.linalg.norm(edge[1] - edge[0])) / GROWTH
        reach = radius + facet.thickness + 0.3 * sizes.bulk
        while radius < reach:
            pitch = min(pitch * GROWTH, sizes.bulk / 3)
            radius += 0.85 * pitch
            row = _circle(bolt.centre, 2.0 * radius, max(8, int(2.0 * np.pi * radius / pitch)))
            row = row[shapely.contains_xy(free, *row.T)]
            row = row[shapely.distance(drawn, shapely.points(row)) > 0.6 * pitch]
            if len(kept) and len(row):
                row = row[cKDTree(kept).query(row)[0] > 0.7 * pitch]
            kept = np.r_[kept, row]
    return kept


def _joined(
    groups: list[tuple[np.ndarray, np.ndarray]],
) -> tuple[np.ndarray, np.ndarray]:
    """Merge points that are the same."""
    starts = np.cumsum([0] + [len(points) for points, _ in groups])
    points = np.concatenate([p for p, _ in groups])
    tree = cKDTree(points)
    first = np.array([min(near) for near in tree.query_ball_point(points, 10 * SAME)])
    used, index = np.unique(first, return_inverse=True)
    prisms = [prism + start for (_, prism), start in zip(groups, starts[:-1], strict=True)]
    return points[used], index[np.concatenate(prisms)]


# a prism's corners turned so that the one at the given position comes first, sides kept
TURNS = np.array(
    [[0, 1, 2, 3, 4, 5], [1, 2, 0, 4, 5, 3], [2, 0, 1, 5, 3, 4],
     [3, 5, 4, 0, 2, 1], [4, 3, 5, 1, 0, 2], [5, 4, 3, 2, 1, 0]]
)  # fmt: skip


def _split(prisms: np.ndarray) -> np.ndarray:
    """Split prisms into three tetrahedra each; a side's diagonal starts at its lowest number.

    So that two prisms cut their common side alike (Dompierre and others, 1999; from memory).
    """
    turn = TURNS[np.argmin(prisms, axis=1)]
    p = np.take_along_axis(prisms, turn, axis=1)
    one = np.minimum(p[:, 1], p[:, 5]) < np.minimum(p[:, 2], p[:, 4])
    cut = [np.array([[0, 1, 2, 5], [0, 1, 5, 4], [0, 4, 5, 3]]),
           np.array([[0, 1, 2, 4], [0, 4, 2, 5], [0, 4, 5, 3]])]  # fmt: skip
    return np.where(one[:, None, None], p[:, cut[0]], p[:, cut[1]]).reshape(-1, 4)


def _volumes(points: np.ndarray, tets: np.ndarray) -> np.ndarray:
    a, b, c = (points[tets[:, i]] - points[tets[:, 0]] for i in (1, 2, 3))
    return np.einsum("ij,ij->i", a, np.cross(b, c)) / 6.0


def on_edge(model: PlateModel, points: np.ndarray, share: float) -> np.ndarray:
    """Tell which points lie on the edge of a washer held rigidly, on either face."""
    found = np.zeros(len(points), bool)
    for i, bolt in enumerate(model.bolts):
        motor = i >= len(model.frame_bolts)
        if not motor and not math.isinf(bolt.normal_stiffness):
            continue
        facet = model.facets[bolt.facet]
        height = (points - np.asarray(facet.origin, float)) @ facet.axes[2]
        face = np.flatnonzero(np.abs(np.abs(height) - 0.5 * facet.thickness) < SAME)
        ring = Polygon(polygon(bolt, True, motor, share)).exterior
        away = shapely.distance(ring, shapely.points(facet.to_plane(points[face])))
        found[face[away < SAME]] = True
    return found


def _finer(
    model: PlateModel, points: np.ndarray, tets: np.ndarray, sizes: Sizes
) -> tuple[np.ndarray, np.ndarray]:
    """Divide tetrahedra at rigid washers' edges until no side is longer than 1.7 times the edge."""
    from skfem import MeshTet

    pairs = np.array([[0, 1], [0, 2], [0, 3], [1, 2], [1, 3], [2, 3]])
    mesh = MeshTet(points.T.copy(), tets.T.copy().astype(np.int32))
    for _ in range(40):
        p, t = mesh.p.T, mesh.t.T
        near = on_edge(model, p, sizes.circle)[t].any(axis=1)
        ends = p[t[near][:, pairs]]
        long = np.linalg.norm(ends[:, :, 0] - ends[:, :, 1], axis=2).max(axis=1) > 1.7 * sizes.edge
        if not np.any(long):
            break
        mesh = mesh.refined(np.flatnonzero(near)[long])
    return mesh.p.T, mesh.t.T.astype(np.int64)


def _owner(model: PlateModel, centres: np.ndarray) -> np.ndarray:
    """Give the plate a place belongs to: the nearest mid-plane; the corner block goes to the first."""
    away = [
        np.abs((centres - np.asarray(f.origin, float)) @ f.axes[2]) - 0.5 * f.thickness
        for f in model.facets
    ]
    inside = np.array(away) < SAME
    return np.argmax(inside, axis=0)


def edge_size(model: PlateModel, mesh: SolidMesh) -> float:
    """Give the mean over the tetrahedra at rigid washers' edges of their longest side."""
    pairs = np.array([[0, 1], [0, 2], [0, 3], [1, 2], [1, 3], [2, 3]])
    near = on_edge(model, mesh.points, mesh.sizes.circle)[mesh.tets].any(axis=1)
    ends = mesh.points[mesh.tets[near][:, pairs]]
    return float(np.linalg.norm(ends[:, :, 0] - ends[:, :, 1], axis=2).max(axis=1).mean())


def _check(model: PlateModel, mesh: SolidMesh) -> None:
    """Refuse a mesh whose volume is not the drawing's or that is not one closed body."""
    wanted = 0.0
    for i, facet in enumerate(model.facets):
        body = outline_beyond_corner(model, i, mesh.corner)
        own = [k for k, b in enumerate(model.bolts) if b.facet == i]
        frame, share = len(model.frame_bolts), mesh.sizes.circle
        holes = [polygon(model.bolts[k], False, k >= frame, share) for k in own]
        holes += [_circle(h.centre, h.diameter, 32) for h in facet.holes]
        wanted += (
            facet.thickness * body.difference(shapely.union_all([Polygon(h) for h in holes])).area
        )
    if mesh.corner is not None:
        length = np.linalg.norm(mesh.corner.end - mesh.corner.start)
        wanted += length * np.prod([f.thickness for f in model.facets])
    volumes = _volumes(mesh.points, mesh.tets)
    if abs(np.abs(volumes).sum() / wanted - 1.0) > 1e-6 or np.abs(volumes).min() <= 0.0:
        raise ValueError("solid check: mesh and drawing differ in volume")
