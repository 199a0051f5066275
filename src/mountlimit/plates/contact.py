"""Compression-only contact of plates with the frame: few points, their flexibility, and NNLS.

Each point stands for the plate area nearest to it, a spring of pressure per penetration. The
forces f >= 0 make the stored energy least: f' (C + 1/k) f / 2 - f' p, with C the movement of the
points towards the frame's opposite side by unit forces and p how far the loads alone would push
them into the frame.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import shapely
from scipy import sparse
from scipy.linalg import cholesky, solve_triangular
from scipy.optimize import nnls
from scipy.spatial import cKDTree
from shapely.geometry import Polygon

from .error import PlateError
from .mesh import Mesh
from .model import BoolArray, Contact, FloatArray, IntArray, PlateModel
from .regions import CONTACT_POINTS, contact_pitch, contact_region
from .validity import TOUCH

UNTIE = np.array([1.0e-4, 0.7e-4])  # of the pitch, so that no two places are equally near


@dataclass(frozen=True, kw_only=True)
class ContactPoints:
    """Nodes in contact, the stiffness each stands for, and the push the frame gives there."""

    nodes: IntArray
    stiffness: FloatArray
    push: FloatArray
    contact: IntArray

    def columns(self, count: int) -> sparse.csc_array:
        """Give unit pushes as columns on all nodal unknowns."""
        row = 6 * self.nodes[:, None] + np.arange(3)
        column = np.broadcast_to(np.arange(len(self.nodes))[:, None], row.shape)
        entries = (self.push.ravel(), (row.ravel(), column.ravel()))
        return sparse.coo_array(entries, shape=(6 * count, len(self.nodes))).tocsc()


def points(
    model: PlateModel, mesh: Mesh, held: IntArray, most: int = CONTACT_POINTS
) -> ContactPoints:
    """Choose the contact points of a mesh; nodes in ``held`` are tied to something else.

    ``most`` is how many are aimed at, at most, on one plate.

    Raises
    ------
    PlateError
        when a contact region holds no plate
    """
    nodes, stiffness, push, owner = [], [], [], []
    for i, contact in enumerate(model.contacts):
        chosen, area = _points_of(model, mesh, contact, held, most)
        if len(chosen) == 0:
            raise PlateError(f"contact {i + 1}", "its region holds no plate")
        nodes.append(chosen)
        stiffness.append(contact.stiffness * area)
        normal = model.facets[contact.facet].axes[2]
        push.append(np.broadcast_to(-contact.side * normal, (len(chosen), 3)))
        owner.append(np.full(len(chosen), i))
    if not nodes:
        none = np.empty(0, np.int64)
        return ContactPoints(nodes=none, stiffness=np.empty(0), push=np.empty((0, 3)), contact=none)
    return ContactPoints(
        nodes=np.concatenate(nodes),
        stiffness=np.concatenate(stiffness),
        push=np.concatenate(push),
        contact=np.concatenate(owner),
    )


def _points_of(
    model: PlateModel, mesh: Mesh, contact: Contact, held: IntArray, most: int
) -> tuple[IntArray, FloatArray]:
    """Give the nodes on the region's edge, those nearest to an even grid inside, and their areas."""
    plate = model.facets[contact.facet]
    region = contact_region(model, contact)
    corners = mesh.triangles[mesh.facet == contact.facet, :3]
    area = mesh.area[mesh.facet == contact.facet]
    centre = plate.to_plane(mesh.points[corners].mean(axis=1))
    covered = _contains(region, centre)
    nodes = np.setdiff1d(np.unique(corners[covered]), held)
    if len(nodes) == 0:
        return nodes, np.empty(0)
    places = plate.to_plane(mesh.points[nodes])
    pitch = contact_pitch(model, contact, most)
    chosen = _chosen(region, places, pitch)
    skewed = centre[covered] + UNTIE * pitch
    share = np.asarray(cKDTree(places[chosen]).query(skewed)[1], np.int64)
    total = np.bincount(share, weights=area[covered], minlength=len(chosen)).astype(float)
    return nodes[chosen[total > 0.0]], total[total > 0.0]


def _chosen(region: Polygon, places: FloatArray, pitch: float) -> IntArray:
    """Choose places on the region's edge, thinned to the pitch, and inside near an even grid."""
    on_edge = shapely.distance(region.boundary, shapely.points(places)) < TOUCH
    along = shapely.line_locate_point(region.boundary, shapely.points(places[on_edge]))
    rim = _thinned(np.flatnonzero(on_edge), places, np.asarray(along), 0.75 * pitch)
    low, high = places.min(axis=0), places.max(axis=0)
    counts = np.maximum(1, np.round((high - low) / pitch).astype(int)) + 1
    axes = [np.linspace(low[k], high[k], counts[k])[1:-1] for k in (0, 1)]
    grid = np.stack(np.meshgrid(*axes, indexing="ij"), axis=-1).reshape(-1, 2)
    away, near = (np.asarray(part) for part in cKDTree(places).query(grid + UNTIE * pitch))
    return np.union1d(rim, near[away < 0.75 * pitch]).astype(np.int64)


def _thinned(index: IntArray, places: FloatArray, along: FloatArray, least: float) -> IntArray:
    """Keep corners of the edge, and in order along it the places not too near the last kept."""
    order = index[np.argsort(along, kind="stable")]
    if len(order) < 3:
        return order
    before, after = places[np.roll(order, 1)], places[np.roll(order, -1)]
    one, two = places[order] - before, after - places[order]
    turn = one[:, 0] * two[:, 1] - one[:, 1] * two[:, 0]
    corner = np.abs(turn) > 1e-6 * np.linalg.norm(one, axis=1) * np.linalg.norm(two, axis=1)
    kept: list[int] = []
    for place, must in zip(order, corner, strict=True):
        if must or not kept or np.linalg.norm(places[place] - places[kept[-1]]) > least:
            kept.append(int(place))
    return np.array(kept, np.int64)


def _contains(region: Polygon, places: FloatArray) -> BoolArray:
    return np.asarray(shapely.contains_xy(region.buffer(TOUCH), *places.T))


@dataclass(frozen=True, kw_only=True)
class ContactSolver:
    """Forces at the contact points for given free movements, by non-negative least squares."""

    factor: FloatArray

    @classmethod
    def of(cls, flexibility: FloatArray, stiffness: FloatArray) -> ContactSolver:
        """Prepare from the points' flexibility and their own stiffness."""
        total = 0.5 * (flexibility + flexibility.T) + np.diag(1.0 / stiffness)
        return cls(factor=cholesky(total, lower=True))

    def forces(self, lift: FloatArray) -> FloatArray:
        """Give the forces, none below nothing, that close the gaps ``lift`` would overlap.

        ``lift`` is the points' movement away from the frame by the loads alone.
        """
        if not np.any(lift < 0.0):
            return np.zeros(len(lift))
        target = solve_triangular(self.factor, -lift, lower=True)
        scale = float(np.max(np.abs(target)))
        root = np.max(np.abs(np.diag(self.factor)))
        matrix = self.factor.T / root
        return np.asarray(nnls(matrix, target / scale)[0] * (scale / root))
