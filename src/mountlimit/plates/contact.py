"""Compression-only contact of plates with the frame: few points, their flexibility, and NNLS.

Each point stands for the plate area nearest to it, a spring of pressure per penetration. The
forces f >= 0 make the stored energy least: f' (C + 1/k) f / 2 - f' p, with C the movement of the
points towards the frame's opposite side by unit forces and p how far the loads alone would push
them into the frame.

A plate joined by one seam turns freely about it until the butt is pressed, so there the butt
stands in the stiffness as two-way springs, and the unknown is the force c >= 0 that lets a spring
go which would pull: where it is open c = k l, with the opening l, and the force c - k l is nothing.
With any frame points' springs put in the same way the two kinds make one problem of least energy.
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
from .seams import butts
from .shapes import TOUCH

UNTIE = np.array([1.0e-4, 0.7e-4])  # of the pitch, so that no two places are equally near
JITTER = (1e-11, 1e-10, 1e-9, 1e-8, 1e-7)  # shares of a spring's flexibility tried in turn
LOOSE = 1e-3  # pull left in a butt over that of two-way springs, above which nothing holds it


@dataclass(frozen=True, kw_only=True)
class ContactPoints:
    """Points of contact: the frame's first, then those of the seams' butts.

    ``nodes`` are the nodes there (a butt's: one near), ``place`` where they are; ``rows`` gives the
    opening from the unknowns, and its transpose the forces of a unit push. ``push`` is what the
    mount gets by it from outside: nothing at a butt. ``stiffness`` is what each stands for, below
    nothing where it stands in the system's stiffness two-way (butts). ``contact`` is the number of
    the frame contact, ``seam`` that of the seam, each else -1.
    """

    nodes: IntArray
    place: FloatArray
    stiffness: FloatArray
    push: FloatArray
    rows: sparse.csr_array
    contact: IntArray
    seam: IntArray

    def forces(self, lift: FloatArray, shares: FloatArray) -> FloatArray:
        """Give the contact forces from the opening columns and the shares of all columns."""
        pushes = shares[len(shares) - len(self.nodes) :]
        return np.asarray(pushes + np.minimum(self.stiffness, 0.0) * (lift @ shares))


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
    butt = butts(model, mesh)
    own = len(butt.node)
    none = np.empty(0, np.int64)
    nodes, stiffness, push, owner = [none], [np.empty(0)], [np.empty((0, 3))], [none]
    for i, contact in enumerate(model.contacts):
        chosen, area = _points_of(model, mesh, contact, held, most)
        if len(chosen) == 0:
            raise PlateError(f"contact {i + 1}", "its region holds no plate")
        nodes.append(chosen)
        stiffness.append(contact.stiffness * area)
        normal = model.facets[contact.facet].axes[2]
        push.append(np.broadcast_to(-contact.side * normal, (len(chosen), 3)))
        owner.append(np.full(len(chosen), i))
    on_frame, pushed = np.concatenate(nodes), np.concatenate(push)
    rows = _frame_rows(on_frame, pushed, len(mesh.points))
    return ContactPoints(
        nodes=np.r_[on_frame, butt.node],
        place=np.r_[mesh.points[on_frame], butt.place],
        stiffness=np.r_[np.concatenate(stiffness), -butt.springs.stiffness],
        push=np.r_[pushed, np.zeros((own, 3))],
        rows=sparse.csr_array(sparse.vstack([rows, butt.springs.rows])),
        contact=np.concatenate([*owner, np.full(own, -1)]),
        seam=np.r_[np.full(len(on_frame), -1), butt.seam],
    )


def _frame_rows(nodes: IntArray, push: FloatArray, count: int) -> sparse.csr_array:
    """Give the rows of nodes moving along their push."""
    column = 6 * nodes[:, None] + np.arange(3)
    row = np.broadcast_to(np.arange(len(nodes))[:, None], column.shape)
    entries = (push.ravel(), (row.ravel(), column.ravel()))
    return sparse.coo_array(entries, shape=(len(nodes), 6 * count)).tocsr()


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
    along = np.asarray(shapely.line_locate_point(region.boundary, shapely.points(places[on_edge])))
    along = np.where(along > region.length - TOUCH, 0.0, along)  # the first corner is also the last
    rim = _thinned(np.flatnonzero(on_edge), places, along, 0.75 * pitch)
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
    """Shares of the contact columns for given free openings, by non-negative least squares.

    ``released`` is there when some points stand in the stiffness two-way.
    """

    factor: FloatArray
    released: Released | None = None

    @classmethod
    def of(cls, flexibility: FloatArray, stiffness: FloatArray) -> ContactSolver:
        """Prepare from the points' flexibility and stiffness (below nothing: two-way already)."""
        even = 0.5 * (flexibility + flexibility.T)
        if np.any(stiffness < 0.0):
            released = Released.of(even, stiffness)
            return cls(factor=released.factor(), released=released)
        return cls(factor=cholesky(even + np.diag(1.0 / stiffness), lower=True))

    def forces(self, lift: FloatArray) -> FloatArray:
        """Give the shares of the contact columns at openings ``lift`` by the loads alone.

        They are the frame's pushes, none below nothing, and the butts' releases.

        Raises
        ------
        PlateError
            when the load pulls a seam's plates apart and nothing else holds them
        """
        if self.released is None:
            return self._least(-lift)
        return self.released.shares(lift, self._least(self.released.carry @ lift))

    def _least(self, target: FloatArray) -> FloatArray:
        """Give the x >= 0 of least x' L L' x / 2 - x' target, L being the factor."""
        if not np.any(target > 0.0):
            return np.zeros(len(target))
        turned = solve_triangular(self.factor, target, lower=True)
        scale = float(np.max(np.abs(turned)))
        root = np.max(np.abs(np.diag(self.factor)))
        matrix = self.factor.T / root
        return np.asarray(nnls(matrix, turned / scale)[0] * (scale / root))


@dataclass(frozen=True, kw_only=True)
class Released:
    """Contact with every spring put in two-way, and the forces that let go those that would pull.

    l = carry (l_0 + C c) and f = c - k l, with c, f >= 0 and one of them nothing; ``frame`` marks
    the springs that are not in the stiffness, whose share of the columns is f itself.
    """

    carry: FloatArray
    flexibility: FloatArray
    stiffness: FloatArray
    frame: BoolArray

    @classmethod
    def of(cls, flexibility: FloatArray, stiffness: FloatArray) -> Released:
        """Put the frame's springs in: carry = (I + C k_frame)^-1."""
        frame = stiffness > 0.0
        pressed = np.eye(len(frame)) + flexibility * np.where(frame, stiffness, 0.0)
        carry = np.asarray(np.linalg.inv(pressed), float)
        return cls(carry=carry, flexibility=flexibility, stiffness=np.abs(stiffness), frame=frame)

    def factor(self) -> FloatArray:
        """Give the Cholesky factor of 1 / k - carry C.

        An open butt that lets its plate turn makes that singular but for rounding, so the least
        share of 1 / k that makes it sound is added to it.
        """
        root = np.sqrt(self.stiffness)
        share = root[:, None] * (self.carry @ self.flexibility) * root
        left = np.eye(len(root)) - 0.5 * (share + share.T)
        for added in JITTER:
            try:
                lower = cholesky(left + added * np.eye(len(root)), lower=True)
            except np.linalg.LinAlgError:
                continue
            return np.asarray(lower / root[:, None])
        raise PlateError("seam", "its butt is too stiff beside its plates to be solved")

    def shares(self, lift: FloatArray, release: FloatArray) -> FloatArray:
        """Give the columns' shares from the releases; ``lift`` is the opening by loads alone."""
        opening = self.carry @ (lift + self.flexibility @ release)
        force = release - self.stiffness * opening
        two_way = np.max(self.stiffness * np.abs(self.carry @ lift))
        if np.min(force) < -LOOSE * two_way:
            raise PlateError("seam", "the load pulls its plates apart and nothing else holds them")
        return np.where(self.frame, np.maximum(force, 0.0), release)
