"""Second-order tetrahedra on a plate model: scikit-fem's integrals, washers, motor tie, contact.

The same idealisation as the plate engine's, in solid elements: frame washers as springs over their
annuli on both faces, motor annuli on both faces carried rigidly by the motor, contact with the
frame as springs per area on one face that only push. No code of the engine is used.
"""

from __future__ import annotations

import math
import time
from dataclasses import dataclass

import numpy as np
import shapely
from direct_solver import direct
from scipy import sparse
from scipy.spatial import cKDTree
from shapely.geometry import Polygon
from solid_mesh import SAME, SolidMesh, polygon

from mountlimit.plates import Contact, PlateModel
from mountlimit.plates.model import Bolt

MOST_ROUNDS = 40
SETTLED = 1e-4  # wrongly pulling or missing contact force, over the load, that ends the search


@dataclass
class Patch:
    """Boundary triangles with their integral of shape function times shape function."""

    basis: object
    area: float
    mass: sparse.csr_array


@dataclass
class Answer:
    """Movement of all points (n, 3), of the motor about its centre (6,), bolt and contact forces.

    ``touching`` holds for each contact the places looked at and whether they touch.
    """

    movement: np.ndarray
    motor: np.ndarray
    bolt_forces: np.ndarray
    contact_force: np.ndarray
    rounds: int
    touching: list[tuple[np.ndarray, np.ndarray]]


class SolidModel:
    """Stiffness and supports of a mesh, and the solution for one load at a time."""

    def __init__(self, model: PlateModel, mesh: SolidMesh) -> None:
        from skfem import Basis, ElementTetP2, MeshTet

        began = time.perf_counter()
        self.model, self.mesh = model, mesh
        self.fem = MeshTet(mesh.points.T.copy(), mesh.tets.T.copy().astype(np.int32))
        self.element = ElementTetP2()
        self.basis = Basis(self.fem, self.element, intorder=2)
        self.points = self.basis.doflocs.T
        self.count = len(self.points)
        self.tree_facets = self.fem.boundary_facets()
        self.facet_middle = self.fem.p.T[self.fem.facets[:, self.tree_facets].T].mean(axis=1)
        self.elastic = self._elastic()
        self.washers = [self._patch(self._annulus(b, False)) for b in model.frame_bolts]
        self.contacts = [self._patch(self._resting(c)) for c in model.contacts]
        self.tie, self.kept = self._tied()
        self.fixed = self._reduced(self.elastic + self._bolt_springs())
        mesh.times["assembly"] = time.perf_counter() - began

    # --- stiffness ---------------------------------------------------------------------------

    def _elastic(self) -> sparse.csr_array:
        """Give the stiffness, unknowns ordered point by point: from nine integrals of slopes."""
        from skfem import BilinearForm

        facets = self.model.facets
        nu = np.array([f.poissons_ratio for f in facets])
        shear = np.array([f.elastic_modulus for f in facets]) / (2.0 * (1.0 + nu))
        lame = 2.0 * shear * nu / (1.0 - 2.0 * nu)
        fields = {
            "shear": np.tile(shear[self.mesh.plate][:, None], (1, self.basis.X.shape[-1])),
            "lame": np.tile(lame[self.mesh.plate][:, None], (1, self.basis.X.shape[-1])),
        }

        def slopes(i: int, j: int, law: str) -> sparse.csr_array:
            form = BilinearForm(lambda u, v, w: w[law] * u.grad[j] * v.grad[i])
            return form.assemble(self.basis, **fields)

        shears = [[slopes(i, j, "shear") for j in range(3)] for i in range(3)]
        same = shears[0][0] + shears[1][1] + shears[2][2]
        total = sparse.csr_array((3 * self.count, 3 * self.count))
        for i in range(3):
            for j in range(3):
                block = slopes(i, j, "lame") + shears[j][i]
                if i == j:
                    block = block + same
                place = np.zeros((3, 3))
                place[i, j] = 1.0
                total = total + sparse.kron(block, place, format="csr")
        return sparse.csr_array(total)

    def _bolt_springs(self) -> sparse.csr_array:
        total = sparse.csr_array((3 * self.count, 3 * self.count))
        for i, bolt in enumerate(self.model.frame_bolts):
            if not math.isinf(bolt.normal_stiffness):
                total = total + self._spring(i)
        return total

    def _spring(self, bolt: int) -> sparse.csr_array:
        """Give one bolt's springs: each stiffness uniform over the annuli of both faces together."""
        part, patch = self.model.frame_bolts[bolt], self.washers[bolt]
        up = self.model.facets[part.facet].axes[2]
        normal = np.outer(up, up)
        law = part.normal_stiffness * normal + part.tangential_stiffness * (np.eye(3) - normal)
        return sparse.csr_array(sparse.kron(patch.mass, law / patch.area, format="csr"))

    # --- what lies where ---------------------------------------------------------------------

    def _on_face(self, plate: int, side: int | None) -> np.ndarray:
        """Give which boundary triangles lie on a plate's face; side None: on either."""
        facet = self.model.facets[plate]
        height = (self.facet_middle - np.asarray(facet.origin, float)) @ facet.axes[2]
        level = np.abs(height) if side is None else side * height
        return np.abs(level - 0.5 * facet.thickness) < SAME

    def _annulus(self, bolt: Bolt, motor: bool) -> np.ndarray:
        facet = self.model.facets[bolt.facet]
        outer, hole = (
            Polygon(polygon(bolt, outer, motor, self.mesh.sizes.circle)) for outer in (True, False)
        )
        ring = outer.difference(hole)
        face = np.flatnonzero(self._on_face(bolt.facet, None))
        inside = shapely.contains_xy(ring, *facet.to_plane(self.facet_middle[face]).T)
        return self.tree_facets[face[inside]]

    def _resting(self, contact: Contact) -> np.ndarray:
        """Give the triangles that rest on the frame: all the face, or its part over the region."""
        facet = self.model.facets[contact.facet]
        face = np.flatnonzero(self._on_face(contact.facet, contact.side))
        if contact.region is not None:
            area = Polygon(np.asarray(contact.region, float))
            face = face[shapely.contains_xy(area, *facet.to_plane(self.facet_middle[face]).T)]
        motor = [self._annulus(b, True) for b in self.model.motor_bolts]
        return np.setdiff1d(self.tree_facets[face], np.concatenate(motor))

    def _patch(self, facets: np.ndarray) -> Patch:
        from skfem import BilinearForm, FacetBasis

        basis = FacetBasis(self.fem, self.element, facets=facets, intorder=4)
        mass = BilinearForm(lambda u, v, w: u * v).assemble(basis)
        return Patch(basis=basis, area=float(basis.dx.sum()), mass=mass)

    def _nodes(self, facets: np.ndarray) -> np.ndarray:
        return np.unique(self.basis.get_dofs(facets).all())

    # --- ties --------------------------------------------------------------------------------

    def _tied(self) -> tuple[sparse.csr_array, int]:
        """Give the matrix from kept unknowns to all; the last six kept are the motor's."""
        motor = self._nodes(
            np.concatenate([self._annulus(b, True) for b in self.model.motor_bolts])
        )
        rigid = [
            self._nodes(self._annulus(b, False))
            for b in self.model.frame_bolts
            if math.isinf(b.normal_stiffness)
        ]
        free = np.ones((self.count, 3), bool)
        free[motor] = False
        for nodes in rigid:
            free[nodes] = False
        own = np.flatnonzero(free.ravel())
        arm = self.points[motor] - np.asarray(self.model.motor_centre, float)
        block = np.zeros((len(motor), 3, 6))
        block[:, range(3), range(3)] = 1.0
        for i in range(3):  # movement by a turn about axis i: axis x arm
            block[:, :, 3 + i] = np.cross(np.eye(3)[i], arm)
        row = np.broadcast_to((3 * motor[:, None] + np.arange(3))[:, :, None], block.shape)
        column = np.broadcast_to(len(own) + np.arange(6), block.shape)
        entries = (
            np.r_[np.ones(len(own)), block.ravel()],
            (np.r_[own, row.ravel()], np.r_[np.arange(len(own)), column.ravel()]),
        )
        kept = len(own) + 6
        return sparse.coo_array(entries, shape=(3 * self.count, kept)).tocsr(), kept

    def _reduced(self, matrix: sparse.csr_array) -> sparse.csr_array:
        return sparse.csr_array(self.tie.T @ matrix @ self.tie)

    # --- solving -----------------------------------------------------------------------------

    def solve(self, wrench: np.ndarray, point: np.ndarray, start: Answer | None = None) -> Answer:
        """Solve for a wrench on the motor at a point; contact by a search for what touches.

        The search begins with what touched in ``start``, an answer on another mesh, else with all.
        Every round is a Newton step, so the error left is far below the last change.
        """
        load = np.zeros(self.kept)
        load[-6:] = carried(wrench, np.asarray(point) - np.asarray(self.model.motor_centre, float))
        touching = self._first_guess(start)
        for rounds in range(1, MOST_ROUNDS + 1):
            matrix = self.fixed
            for i, mask in enumerate(touching):
                if np.any(mask):
                    matrix = matrix + self._reduced(self._contact_springs(i, mask))
            kept = solved(matrix, load)
            movement = (self.tie @ kept).reshape(-1, 3)
            wrong = 0.0
            for i, mask in enumerate(touching):
                pressing = self.pressing(i, movement)
                area = self.contacts[i].basis.dx
                off = np.abs(pressing) * ((pressing > 0.0) != mask)
                wrong += self.model.contacts[i].stiffness * float(np.sum(off * area))
                touching[i] = pressing > 0.0
            if wrong <= SETTLED * np.max(np.abs(wrench[:3])):
                return self._answer(movement, kept[-6:], rounds)
        raise RuntimeError("contact does not settle")

    def _places(self, index: int) -> np.ndarray:
        """Give the integration points of a contact, (triangles, points, 3)."""
        return np.moveaxis(np.asarray(self.contacts[index].basis.global_coordinates()), 0, -1)

    def _first_guess(self, start: Answer | None) -> list[np.ndarray]:
        if start is None:
            return [np.ones(c.basis.dx.shape, bool) for c in self.contacts]
        return [
            mask.ravel()[cKDTree(places.reshape(-1, 3)).query(self._places(i))[1]]
            for i, (places, mask) in enumerate(start.touching)
        ]

    def _contact_springs(self, index: int, mask: np.ndarray) -> sparse.csr_array:
        from skfem import BilinearForm

        part = self.model.contacts[index]
        up = self.model.facets[part.facet].axes[2]
        form = BilinearForm(lambda u, v, w: w["mask"] * u * v)
        mass = form.assemble(self.contacts[index].basis, mask=part.stiffness * mask)
        return sparse.csr_array(sparse.kron(mass, np.outer(up, up), format="csr"))

    def pressing(self, index: int, movement: np.ndarray) -> np.ndarray:
        """Give how far a contact's places move into the frame (below nothing: away from it)."""
        part = self.model.contacts[index]
        along = movement @ (part.side * self.model.facets[part.facet].axes[2])
        return np.asarray(self.contacts[index].basis.interpolate(along))

    def _answer(self, movement: np.ndarray, motor: np.ndarray, rounds: int) -> Answer:
        bolts = np.zeros((len(self.model.frame_bolts), 3))
        for i, bolt in enumerate(self.model.frame_bolts):
            if math.isinf(bolt.normal_stiffness):
                nodes = self._nodes(self._annulus(bolt, False))
                rows = (3 * nodes[:, None] + np.arange(3)).ravel()
                force = -(self.elastic[rows] @ movement.ravel())
            else:
                force = self._spring(i) @ movement.ravel()
            bolts[i] = force.reshape(-1, 3).sum(axis=0)
        contact = np.zeros((len(self.contacts), 3))
        for i, part in enumerate(self.model.contacts):
            pressure = part.stiffness * np.maximum(0.0, self.pressing(i, movement))
            total = float(np.sum(pressure * self.contacts[i].basis.dx))
            contact[i] = total * part.side * self.model.facets[part.facet].axes[2]
        touching = [
            (self._places(i), self.pressing(i, movement) > 0.0) for i in range(len(self.contacts))
        ]
        return Answer(movement, motor, bolts, contact, rounds, touching)


def carried(wrench: np.ndarray, arm: np.ndarray) -> np.ndarray:
    """Give a wrench, moved by minus ``arm``: M + arm x F."""
    load = np.asarray(wrench, float)
    return np.r_[load[:3], load[3:] + np.cross(arm, load[:3])]


def solved(matrix: sparse.csr_array, load: np.ndarray) -> np.ndarray:
    """Solve a symmetric positive definite system, and insist on the residual."""
    found = direct(matrix, load[:, None])[:, 0]
    left = np.max(np.abs(matrix @ found - load)) / np.max(np.abs(load))
    if not left < 1e-6:
        raise RuntimeError(f"solver leaves {left:.1e} of the load")
    return found
