"""Where stress is read: rings outside washers, section lines, free edges; and the operator to read it.

Stress at an element's corners is averaged over the elements of one zone (same facet, same
thickness) that share the corner, and taken linear between corners.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import shapely
from scipy import sparse
from shapely.geometry import Point

from .mesh import Mesh
from .model import Bolt, BoolArray, FloatArray, IntArray, PlateModel

RING_POINTS = 72


@dataclass(frozen=True, kw_only=True)
class Samples:
    """Places where stress is read, the facet each lies on, and the part (bolt, line) it belongs to.

    ``reading`` takes the nodal means of a zone to the places.
    """

    place: FloatArray
    owner: IntArray
    facet: IntArray
    reading: sparse.csr_array
    count: int


class Reader:
    """Finds elements under places and gives nodal means there."""

    def __init__(self, model: PlateModel, mesh: Mesh) -> None:
        self.model, self.mesh = model, mesh
        corners = mesh.triangles[:, :3]
        key = corners * (2 * len(model.facets)) + mesh.zone[:, None]
        kept, index = np.unique(key, return_inverse=True)
        self.group = index.reshape(-1, 3)
        share = 1.0 / np.bincount(self.group.ravel())
        flat = self.group.ravel()
        entries = (share[flat], (flat, np.arange(len(flat))))
        self.mean = sparse.coo_array(entries, shape=(len(kept), len(flat))).tocsr()
        self.group_node = kept // (2 * len(model.facets))
        self.group_zone = kept % (2 * len(model.facets))
        self._trees: dict[int, tuple[IntArray, FloatArray, shapely.STRtree]] = {}

    def _tree(self, facet: int) -> tuple[IntArray, FloatArray, shapely.STRtree]:
        if facet not in self._trees:
            own = np.flatnonzero(self.mesh.facet == facet)
            plate = self.model.facets[facet]
            corners = plate.to_plane(self.mesh.points[self.mesh.triangles[own, :3]])
            rings = np.concatenate([corners, corners[:, :1]], axis=1)
            self._trees[facet] = (own, corners, shapely.STRtree(shapely.polygons(rings)))
        return self._trees[facet]

    def at(self, facet: int, places: FloatArray) -> tuple[BoolArray, sparse.csr_array]:
        """Give which places lie on the facet's plate, and the rows that read the nodal means."""
        own, corners, tree = self._tree(facet)
        place, element = tree.query(shapely.points(places), predicate="intersects")
        first = np.unique(place, return_index=True)[1]
        place, element = place[first], element[first]
        on = np.zeros(len(places), bool)
        on[place] = True
        share = area_shares(corners[element], places[place])
        group = self.group[own[element]]
        row = np.broadcast_to(np.arange(len(place))[:, None], group.shape)
        entries = (share.ravel(), (row.ravel(), group.ravel()))
        rows = sparse.coo_array(entries, shape=(len(place), self.mean.shape[0])).tocsr()
        return on, rows


def area_shares(corners: FloatArray, places: FloatArray) -> FloatArray:
    """Give the area shares of places in triangles, (n, 3, 2) and (n, 2) to (n, 3)."""
    a = corners[:, 1] - corners[:, 0]
    b = corners[:, 2] - corners[:, 0]
    p = places - corners[:, 0]
    double = a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]
    second = (p[:, 0] * b[:, 1] - p[:, 1] * b[:, 0]) / double
    third = (a[:, 0] * p[:, 1] - a[:, 1] * p[:, 0]) / double
    return np.stack([1.0 - second - third, second, third], axis=1)


def ring_places(bolt: Bolt, away: float) -> FloatArray:
    """Give the 72 places of a ring, ``away`` outside a bolt's washer."""
    angle = np.arange(RING_POINTS) * (2.0 * math.pi / RING_POINTS)
    radius = 0.5 * bolt.washer_diameter + away
    return np.asarray(np.asarray(bolt.centre, float) + radius * np.c_[np.cos(angle), np.sin(angle)])


def rings(reader: Reader, bolts: Sequence[Bolt], away: float) -> Samples:
    """Give samples on rings ``away`` plate thicknesses outside the washers; owner: the bolt."""
    return rings_of_scales(reader, bolts, away, np.ones((1, len(reader.model.facets))))


def rings_of_scales(
    reader: Reader, bolts: Sequence[Bolt], away: float | FloatArray, scales: FloatArray
) -> Samples:
    """Give ring samples for several thickness scales of the facets, shape (scales, facets).

    ``away`` may differ from bolt to bolt. The owner is the number of the scale times the number of
    bolts, plus the bolt.
    """
    model = reader.model
    each = np.broadcast_to(away, len(bolts))
    jobs = []
    for i, bolt in enumerate(bolts):
        distance = each[i] * scales[:, bolt.facet] * model.facets[bolt.facet].thickness
        places = np.concatenate([ring_places(bolt, d) for d in distance])
        owner = np.repeat(np.arange(len(scales)) * len(bolts) + i, RING_POINTS)
        clear = _outside_washers(model, bolt.facet, places)
        jobs.append((owner[clear], bolt.facet, places[clear]))
    return _gather(reader, jobs, len(bolts) * len(scales))


def _outside_washers(model: PlateModel, facet: int, places: FloatArray) -> BoolArray:
    """Tell which places lie under no washer and in no hole of a bolt."""
    clear = np.ones(len(places), bool)
    for bolt in model.bolts:
        if bolt.facet == facet:
            away = np.linalg.norm(places - np.asarray(bolt.centre, float), axis=1)
            clear &= away > 0.5 * bolt.washer_diameter * (1.0 - 1e-9)
    return clear


def lines(reader: Reader) -> Samples:
    """Give samples along the model's section lines."""
    jobs = []
    for i, line in enumerate(reader.model.section_lines):
        share = np.linspace(0.0, 1.0, line.samples)[:, None]
        start, end = np.asarray(line.start, float), np.asarray(line.end, float)
        places = start + share * (end - start)
        jobs.append((np.full(len(places), i), line.facet, places))
    return _gather(reader, jobs, len(reader.model.section_lines))


def _gather(reader: Reader, jobs: list[tuple[IntArray, int, FloatArray]], count: int) -> Samples:
    places, owners, facets, rows = [], [], [], []
    for owner, facet, wanted in jobs:
        on, reading = reader.at(facet, wanted)
        places.append(reader.model.facets[facet].to_space(wanted[on]))
        owners.append(owner[on])
        facets.append(np.full(int(on.sum()), facet))
        rows.append(reading)
    if not rows:
        empty = sparse.csr_array((0, reader.mean.shape[0]))
        none = np.empty(0, np.int64)
        return Samples(place=np.empty((0, 3)), owner=none, facet=none, reading=empty, count=count)
    return Samples(
        place=np.concatenate(places),
        owner=np.concatenate(owners),
        facet=np.concatenate(facets),
        reading=sparse.csr_array(sparse.vstack(rows)),
        count=count,
    )


def free_edges(reader: Reader) -> Samples:
    """Give samples at the corners on free edges, outside every ring and stiff strip.

    The owner is the facet.
    """
    model, mesh = reader.model, reader.mesh
    nodes = np.unique(mesh.free_edges[:, :2])
    facet = reader.group_zone // 2
    keep = np.isin(reader.group_node, nodes) & (reader.group_zone % 2 == 0)
    thick = reader.group_node[reader.group_zone % 2 == 1]
    keep &= ~np.isin(reader.group_node, thick)
    for bolt in model.bolts:
        plate = model.facets[bolt.facet]
        centre = plate.to_space(np.asarray(bolt.centre, float))
        away = np.linalg.norm(mesh.points[reader.group_node] - centre, axis=1)
        near = away < 0.5 * bolt.washer_diameter + plate.thickness * (1.0 - 1e-9)
        keep &= ~((facet == bolt.facet) & near)
    index = np.flatnonzero(keep)
    return Samples(
        place=mesh.points[reader.group_node[index]],
        owner=facet[index],
        facet=facet[index],
        reading=sparse.csr_array(sparse.eye_array(len(reader.group_node), format="csr")[index]),
        count=len(model.facets),
    )


def disturbed(model: PlateModel, mesh: Mesh, bolts: Sequence[Bolt]) -> BoolArray:
    """Tell for each bolt whether its ring meets a stiff strip, a bend or a spacer's end."""
    found = np.zeros(len(bolts), bool)
    for i, bolt in enumerate(bolts):
        plate = model.facets[bolt.facet]
        radius = 0.5 * bolt.washer_diameter + plate.thickness
        own = (mesh.facet == bolt.facet) & ((mesh.factor > 1.0) | (mesh.spacer >= 0))
        if not np.any(own):
            continue
        corners = plate.to_plane(mesh.points[mesh.triangles[own, :3]])
        shapes = shapely.polygons(np.concatenate([corners, corners[:, :1]], axis=1))
        found[i] = bool(
            np.any(shapely.distance(shapes, Point(bolt.centre)) < radius * (1.0 + 1e-6))
        )
    return found
