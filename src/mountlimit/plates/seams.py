"""Seams: fasteners and the pressed butt between an edge and a face, as rows on the nodal unknowns.

A row times the unknowns is the movement of the edge plate away from the face plate in one
direction; it takes the same force to both, opposite, on one line of action, so it loads the mount
with nothing. Across the edge plate's thickness the butt has three places, at both faces and in the
middle, with the shares 1/6, 4/6, 1/6: pressed all over they turn like an even bed, k t**2 / 12 per
area; opened, the outermost takes the lever t / 2.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely
from scipy import sparse

from .element import shape
from .error import PlateError
from .mesh import Mesh
from .model import BoolArray, FloatArray, IntArray, PlateModel
from .sampling import area_shares
from .shapes import TOUCH, Butt, butt, outline_polygon
from .springs import edges_on

# places over the thickness, and their shares (four points of Lobatto's rule)
ACROSS = np.array([-0.5, -0.5 * np.sqrt(0.2), 0.5 * np.sqrt(0.2), 0.5])
ACROSS_SHARE = np.array([1.0, 5.0, 5.0, 1.0]) / 12.0
CELLS = 8  # along a seam, by default: 1 % off in tilt and tension against 48 (measured)
FINEST = 0.005  # m, shortest cell by default
GAUSS = np.array([-1.0, 1.0]) / np.sqrt(3.0)
GAUSS_LINE = (np.array([-np.sqrt(0.6), 0.0, np.sqrt(0.6)]), np.array([5.0, 8.0, 5.0]) / 18.0)


@dataclass(frozen=True, kw_only=True)
class SpringRows:
    """Springs along single directions: ``rows @ unknowns`` is what each is pulled apart by."""

    rows: sparse.csr_array
    stiffness: FloatArray

    @property
    def matrix(self) -> sparse.coo_array:
        """Stiffness on all unknowns."""
        held = sparse.diags_array(self.stiffness) @ self.rows
        return sparse.coo_array(self.rows.T @ held)

    def forces(self, movement: FloatArray) -> FloatArray:
        """Give the pull in each for movement columns."""
        return np.asarray(self.stiffness[:, None] * (self.rows @ movement))


@dataclass(frozen=True, kw_only=True)
class Rows:
    """Rows as they are put together: which row, which node, and its six factors."""

    row: list[IntArray]
    node: list[IntArray]
    factors: list[FloatArray]

    @classmethod
    def none(cls) -> Rows:
        """Give an empty set."""
        return cls(row=[], node=[], factors=[])

    def add(self, row: int | IntArray, nodes: IntArray, share: FloatArray, way: FloatArray) -> None:
        """Add shares of nodes, both (n, k), in directions of six, (6,) or (n, 6)."""
        factors = share[..., None] * np.asarray(way)[..., None, :]
        self.row.append(np.broadcast_to(np.asarray(row)[..., None], nodes.shape).ravel())
        self.node.append(nodes.ravel())
        self.factors.append(factors.reshape(-1, 6))

    def matrix(self, count: int, nodes: int) -> sparse.csr_array:
        """Give them as a matrix on all unknowns of ``nodes`` nodes."""
        if not self.row:
            return sparse.csr_array((count, 6 * nodes))
        row = np.repeat(np.concatenate(self.row), 6)
        column = (6 * np.concatenate(self.node)[:, None] + np.arange(6)).ravel()
        values = np.concatenate(self.factors).ravel()
        entries = (values, (row, column))
        return sparse.coo_array(entries, shape=(count, 6 * nodes)).tocsr()


class Edge:
    """A seam's line on the edge plate's mesh: shape functions of its edges at places along it."""

    def __init__(self, model: PlateModel, mesh: Mesh, seam: int) -> None:
        self.line = butt(model, model.seams[seam])
        ends = self.line.start + np.array([[0.0], [self.line.length]]) * self.line.along
        edges = edges_on(mesh, model.seams[seam].facets[0], ends)
        if len(edges) == 0:
            raise PlateError(f"seam {seam + 1}", "its line holds no plate")
        marks = (mesh.points[edges[:, :2]] - self.line.start) @ self.line.along
        turned = marks[:, 0] > marks[:, 1]
        edges[turned] = edges[turned][:, [1, 0, 2]]
        marks = np.sort(marks, axis=1)
        order = np.argsort(marks[:, 0])
        self.edges, self.marks = edges[order], marks[order]

    def at(self, places: FloatArray) -> tuple[IntArray, FloatArray]:
        """Give the nodes (n, 3) and their shares at places along the line."""
        index = np.searchsorted(self.marks[:, 0], places, side="right") - 1
        index = np.clip(index, 0, len(self.edges) - 1)
        low, high = self.marks[index].T
        xi = (places - low) / (high - low)
        shares = [(1 - xi) * (1 - 2 * xi), xi * (2 * xi - 1), 4 * xi * (1 - xi)]
        return self.edges[index], np.stack(shares, axis=-1)

    def mean(self, centre: float, reach: float) -> tuple[IntArray, FloatArray]:
        """Give nodes and shares of the mean movement over ``reach`` either side of a place."""
        low, high = centre - reach, centre + reach
        inner = self.marks[:, 1]
        marks = np.r_[low, inner[(inner > low + TOUCH) & (inner < high - TOUCH)], high]
        half = 0.5 * np.diff(marks)
        places = 0.5 * (marks[:-1] + marks[1:])[:, None] + half[:, None] * GAUSS_LINE[0]
        weight = (half[:, None] / reach * GAUSS_LINE[1]).ravel()
        nodes, share = self.at(places.ravel())
        return nodes, share * weight[:, None]


def on_face(
    model: PlateModel, mesh: Mesh, facet: int, points: FloatArray
) -> tuple[BoolArray, IntArray, FloatArray]:
    """Give which points lie over a facet's plate, and the nodes (n, 6) and shares of those."""
    plate = model.facets[facet]
    own = np.flatnonzero(mesh.facet == facet)
    corners = plate.to_plane(mesh.points[mesh.triangles[own, :3]])
    tree = shapely.STRtree(shapely.polygons(np.concatenate([corners, corners[:, :1]], axis=1)))
    places = plate.to_plane(points)
    place, element = tree.query(shapely.points(places), predicate="dwithin", distance=10 * TOUCH)
    first = np.unique(place, return_index=True)[1]
    place, element = place[first], element[first]
    on = np.zeros(len(points), bool)
    on[place] = True
    share = shape(area_shares(corners[element], places[place]))
    return on, mesh.triangles[own[element]], share


def disc_mean(mesh: Mesh, link: int, name: str, centre: FloatArray) -> tuple[IntArray, FloatArray]:
    """Give nodes and shares of the mean movement over the disc of a fastener or strut.

    Raises
    ------
    PlateError
        when the disc is not whole
    """
    own = np.flatnonzero(mesh.link == link)
    if len(own) == 0:
        raise PlateError(name, "its washer holds no plate")
    nodes = mesh.triangles[own, 3:]  # a quadratic's mean over a triangle: a third of each middle
    share = np.repeat(mesh.area[own, None] / (3.0 * mesh.area[own].sum()), 3, axis=1)
    away = np.einsum("nk,nki->i", share, mesh.points[nodes]) - centre
    if np.linalg.norm(away) > 10 * TOUCH:
        raise PlateError(name, "a hole cuts into its washer")
    return nodes, share


def _way(direction: FloatArray, arm: FloatArray) -> FloatArray:
    """Give the six factors of a rigid arm's end moving along a direction."""
    turn = np.cross(arm, direction)
    return np.concatenate([np.broadcast_to(direction, turn.shape), turn], axis=-1)


def fasteners(model: PlateModel, mesh: Mesh) -> SpringRows:
    """Give the springs of all seams' fasteners: three each, axial, along the seam, across it.

    Raises
    ------
    PlateError
        when a fastener holds no plate
    """
    rows, stiffness = Rows.none(), []
    number = 0
    for i, seam in enumerate(model.seams):
        edge = Edge(model, mesh, i)
        line = edge.line
        for k, place in enumerate(seam.places):
            nodes, share = edge.mean(
                place, min(0.5 * seam.washer_diameter, place, line.length - place)
            )
            root = line.start + place * line.along - line.height * line.out
            name = f"fastener {k + 1} of seam {i + 1}"
            disc, part = disc_mean(mesh, number, name, root)
            for j, way in enumerate((line.out, line.along, line.across)):
                rows.add(3 * number + j, nodes, share, _way(way, np.zeros(3)))
                rows.add(3 * number + j, disc, part, -_way(way, line.height * line.out))
            stiffness += [seam.axial_stiffness, seam.lateral_stiffness, seam.lateral_stiffness]
            number += 1
    return SpringRows(
        rows=rows.matrix(3 * number, len(mesh.points)), stiffness=np.array(stiffness, float)
    )


@dataclass(frozen=True, kw_only=True)
class ButtPoints:
    """The pressed places of all butts: springs, where they are, and the seam."""

    springs: SpringRows
    place: FloatArray
    seam: IntArray


def butts(model: PlateModel, mesh: Mesh) -> ButtPoints:
    """Give the contact of all seams: cells along the line, three places across the thickness.

    Raises
    ------
    PlateError
        when a butt has no plate opposite
    """
    rows = Rows.none()
    stiffness, place, owner = [np.empty(0)], [np.empty((0, 3))], [np.empty(0, np.int64)]
    count = 0
    for i in range(len(model.seams)):
        kept, points = _butt_rows(model, mesh, i, rows, count)
        if len(kept) == 0:
            raise PlateError(f"seam {i + 1}", "its edge has no plate opposite")
        stiffness.append(kept)
        place.append(points)
        owner.append(np.full(len(kept), i))
        count += len(kept)
    return ButtPoints(
        springs=SpringRows(
            rows=rows.matrix(count, len(mesh.points)), stiffness=np.concatenate(stiffness)
        ),
        place=np.concatenate(place),
        seam=np.concatenate(owner),
    )


def _butt_rows(
    model: PlateModel, mesh: Mesh, index: int, rows: Rows, first: int
) -> tuple[FloatArray, FloatArray]:
    """Add the rows of one seam's butt; give their stiffness and places."""
    seam = model.seams[index]
    edge = Edge(model, mesh, index)
    line = edge.line
    middles, size = _cells(line, seam.pitch)
    low, high = _opposite(model, index, line, middles).T
    along = (middles[:, None] + 0.5 * size[:, None] * GAUSS).repeat(len(ACROSS), axis=0)
    offset = 0.5 * (low + high)[:, None] + (high - low)[:, None] * ACROSS
    arm = offset.reshape(-1, 1, 1) * line.across
    points = line.start + along[..., None] * line.along + arm
    on, face, face_share = on_face(model, mesh, seam.facets[1], points.reshape(-1, 3))
    many = on.reshape(along.shape).sum(axis=1)  # places of each cell that have plate opposite
    number = first + np.cumsum(many > 0) - 1
    cell = np.repeat(np.arange(len(along)), len(GAUSS))[on]
    weight = 1.0 / many[cell][:, None]
    nodes, share = edge.at(along.ravel()[on])
    way = _way(line.out, np.repeat(arm[:, 0], len(GAUSS), axis=0)[on])
    rows.add(number[cell], nodes, weight * share, way)
    rows.add(number[cell], face, weight * face_share, -_way(line.out, np.zeros(3)))
    area = ((size * (high - low))[:, None] * ACROSS_SHARE).ravel() * many / len(GAUSS)
    used = many > 0
    return seam.contact_stiffness * area[used], points.mean(axis=1)[used]


def _opposite(model: PlateModel, index: int, line: Butt, middles: FloatArray) -> FloatArray:
    """Give from where to where across the edge plate's thickness there is plate opposite, (n, 2).

    Where the edge plate stands over the rim of the other, the pressed strip is narrower.
    """
    edge, face = (model.facets[f] for f in model.seams[index].facets)
    outline = outline_polygon(face).buffer(TOUCH)
    reach = 0.5 * edge.thickness * np.array([[-1.0], [1.0]]) * line.across
    found = np.zeros((len(middles), 2))
    for i, middle in enumerate(middles):
        root = line.start + middle * line.along
        ends = face.to_plane(root + reach)
        whole = shapely.LineString(ends).intersection(outline)
        near = [
            p for p in shapely.get_parts(whole) if p.distance(shapely.Point(ends.mean(0))) < TOUCH
        ]
        if near:
            way = (ends[1] - ends[0]) / edge.thickness
            places = (shapely.get_coordinates(near[0]) - ends.mean(axis=0)) @ way
            found[i] = np.clip(
                [places.min(), places.max()], *(0.5 * edge.thickness * np.array([-1, 1]))
            )
    return found


def _cells(line: Butt, pitch: float | None) -> tuple[FloatArray, FloatArray]:
    """Give the middles of the cells along a seam, and their lengths; those at the ends are half."""
    wanted = max(FINEST, line.length / CELLS) if pitch is None else pitch
    count = max(2, round(line.length / wanted))
    marks = np.r_[0.0, np.arange(count) + 0.5, count] * (line.length / count)
    return np.asarray(0.5 * (marks[:-1] + marks[1:]), float), np.diff(marks)
