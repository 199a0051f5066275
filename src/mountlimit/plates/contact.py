"""Compression-only contact of plates with the frame: few points, their flexibility, and NNLS.

Each point is a cell of the plate, by the mean of its movement: a spring of pressure per penetration. The
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
from shapely.geometry import Polygon

from .error import PlateError
from .mesh import Mesh
from .model import BoolArray, Contact, FloatArray, IntArray, PlateModel
from .regions import CONTACT_POINTS, contact_pitch, contact_region
from .seams import butts
from .shapes import TOUCH

UNTIE = np.array([1.0e-4, 0.7e-4])  # of the pitch, so that no place lies on the edge of a cell
FEWEST = 4  # cells across a bearing face
ALONG_STRIP = 6  # cells along a strip, at most
JITTER = (1e-11, 1e-10, 1e-9, 1e-8, 1e-7)  # shares of a spring's flexibility tried in turn
LOOSE = 1e-3  # pull left in a butt over that of two-way springs, above which nothing holds it


@dataclass(frozen=True, kw_only=True)
class ContactPoints:
    """Points of contact: the frame's first, then those of the seams' butts.

    ``place`` is the middle of each cell (a butt's: where it is); ``rows`` gives the
    opening from the unknowns, and its transpose the forces of a unit push. ``push`` is what the
    mount gets by it from outside: nothing at a butt. ``stiffness`` is what each stands for, below
    nothing where it stands in the system's stiffness two-way (butts). ``contact`` is the number of
    the frame contact, ``seam`` that of the seam, each else -1.
    """

    place: FloatArray
    stiffness: FloatArray
    push: FloatArray
    rows: sparse.csr_array
    contact: IntArray
    seam: IntArray

    def forces(self, lift: FloatArray, shares: FloatArray) -> FloatArray:
        """Give the contact forces from the opening columns and the shares of all columns."""
        pushes = shares[len(shares) - len(self.place) :]
        return np.asarray(pushes + np.minimum(self.stiffness, 0.0) * (lift @ shares))


def points(model: PlateModel, mesh: Mesh, most: int = CONTACT_POINTS) -> ContactPoints:
    """Lay the contact faces of a mesh out in cells; each is a point where its plate bears on average.

    ``most`` is how many are aimed at, at most, on one plate.

    Raises
    ------
    PlateError
        when a contact region holds no plate
    """
    butt = butts(model, mesh)
    own = len(butt.place)
    stiffness, push, owner = [np.empty(0)], [np.empty((0, 3))], [np.empty(0, np.int64)]
    means = [sparse.csr_array((0, len(mesh.points)))]
    for i, contact in enumerate(model.contacts):
        mean, area = _cells(model, mesh, contact, most)
        if len(area) == 0:
            raise PlateError(f"contact {i + 1}", "its region holds no plate")
        means.append(mean)
        stiffness.append(contact.stiffness * area)
        normal = model.facets[contact.facet].axes[2]
        push.append(np.broadcast_to(-contact.side * normal, (len(area), 3)))
        owner.append(np.full(len(area), i))
    on_frame, pushed = sparse.csr_array(sparse.vstack(means)), np.concatenate(push)
    rows = _frame_rows(on_frame, pushed)
    return ContactPoints(
        place=np.r_[on_frame @ mesh.points, butt.place],
        stiffness=np.r_[np.concatenate(stiffness), -butt.springs.stiffness],
        push=np.r_[pushed, np.zeros((own, 3))],
        rows=sparse.csr_array(sparse.vstack([rows, butt.springs.rows])),
        contact=np.concatenate([*owner, np.full(own, -1)]),
        seam=np.r_[np.full(len(pushed), -1), butt.seam],
    )


def _frame_rows(mean: sparse.csr_array, push: FloatArray) -> sparse.csr_array:
    """Give the rows of cells' mean movement along their push."""
    entries = sparse.coo_array(mean)
    row, node = entries.coords
    column = 6 * node[:, None] + np.arange(3)
    values = entries.data[:, None] * push[row]
    rows = np.broadcast_to(row[:, None], column.shape)
    shape = (mean.shape[0], 6 * mean.shape[1])
    return sparse.coo_array((values.ravel(), (rows.ravel(), column.ravel())), shape=shape).tocsr()


def _cells(
    model: PlateModel, mesh: Mesh, contact: Contact, most: int
) -> tuple[sparse.csr_array, FloatArray]:
    """Give a region's cells: the mean over the nodes of each, (cells, nodes), and their areas.

    An even pressure on a six-node triangle pushes the middles of its edges with a third each.  A
    pressure that is largest at an edge, where the plate pries, has its lever by the outermost cells:
    they are the narrowest.
    """
    plate = model.facets[contact.facet]
    region = contact_region(model, contact)
    own = mesh.facet == contact.facet
    centre = plate.to_plane(mesh.points[mesh.triangles[own, :3]].mean(axis=1))
    covered = _contains(region, centre)
    middles = mesh.triangles[own, 3:][covered]
    thirds = np.repeat(mesh.area[own][covered] / 3.0, 3)
    count = len(mesh.points)
    area = np.bincount(middles.ravel(), weights=thirds, minlength=count)
    nodes = np.flatnonzero(area)
    if len(nodes) == 0:
        return sparse.csr_array((0, count)), np.empty(0)
    pitch = contact_pitch(model, contact, most)
    low, high = np.array(region.bounds).reshape(2, 2)
    places = plate.to_plane(mesh.points[nodes]) + UNTIE * pitch
    cell = np.zeros(len(nodes), np.int64)
    for k in (0, 1):
        many = max(FEWEST, round((high[k] - low[k]) / pitch))
        if contact.strip:
            many = 1 if k else min(many, ALONG_STRIP)
        edges = _graded(low[k], high[k], many)
        cell = cell * len(edges) + np.searchsorted(edges[1:-1], places[:, k])
    _, cell = np.unique(cell, return_inverse=True)
    total = np.asarray(np.bincount(cell, weights=area[nodes]), float)
    mean = sparse.coo_array((area[nodes] / total[cell], (cell, nodes)), shape=(len(total), count))
    return mean.tocsr(), total


def _graded(low: float, high: float, cells: int) -> FloatArray:
    """Give the edges of cells along one way, the narrowest at both ends."""
    share = 0.5 * (1.0 - np.cos(np.pi * np.arange(cells + 1) / cells))
    return np.asarray(low + (high - low) * share)


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
