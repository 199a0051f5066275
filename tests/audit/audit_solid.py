"""A plate model solved in solid elements: factored once, then any load on the motor, contact settled.

The motor carries its bolts' rings on both faces as a rigid body.  No code of the engine is used but
the `PlateModel`.
"""

from __future__ import annotations

import time

import numpy as np
from audit_elements import Elements, law_of, shapes
from audit_mesh import Sizes, build
from audit_rows import solved
from audit_supports import Supports
from scipy import sparse

from mountlimit.plates import PlateModel

CELLS = 80  # of contact over one facet's bearing face, about
GAUSS = np.polynomial.legendre.leggauss(5)


class SolidMount:
    """A meshed plate model, factored once; answers any load on the motor."""

    def __init__(self, model: PlateModel, sizes: Sizes, cells: int = CELLS) -> None:
        """Mesh, assemble and solve for six unit loads and the contact's."""
        began = time.process_time()
        self.model = model
        self.times: dict[str, float] = {}
        self.solid = build(model, sizes)
        self._lap("mesh", began)
        self.elements = self._elements()
        self.size = 3 * self.elements.count + 6
        self.elastic = sparse.block_diag(
            [self.elements.stiffness(), sparse.csr_array((6, 6))], format="csr"
        )
        held = Supports(model, self.solid, self.elements, cells)
        self.bolts = [held.washer(i) for i in range(len(model.frame_bolts))]
        self.welds = [held.weld(i) for i in range(len(model.welds))]
        self.screws, self.struts = held.screws(), held.struts()
        self.frame, self.butts = held.frame(), held.butts()
        self._lap("assembly", began)
        self._solve()
        self._lap("solving", began)

    def _lap(self, name: str, began: float) -> None:
        self.times[name] = round(time.process_time() - began - sum(self.times.values()), 2)

    def _elements(self) -> Elements:
        laws = [
            law_of(f.elastic_modulus, f.poissons_ratio, f.in_plane_shear_modulus, f.axes)
            for f in self.model.facets
        ]
        laws += [
            law_of(
                s.elastic_modulus,
                s.poissons_ratio,
                s.elastic_modulus / (2 + 2 * s.poissons_ratio),
                np.eye(3),
            )
            for s in self.model.spacers
        ]
        return Elements(self.solid, np.array(laws))

    # --- solving -----------------------------------------------------------------------------

    def _motor_nodes(self) -> np.ndarray:
        """Give the nodes on the faces under the motor's washers."""
        found = np.zeros(self.elements.count, bool)
        for bolt in self.model.motor_bolts:
            plate = self.model.facets[bolt.facet]
            high = np.abs((self.elements.points - np.asarray(plate.origin, float)) @ plate.axes[2])
            face = np.abs(high - 0.5 * plate.thickness) < 1e-7
            away = np.linalg.norm(
                plate.to_plane(self.elements.points) - np.asarray(bolt.centre, float), axis=1
            )
            found |= face & (away < 0.5 * bolt.washer_diameter * (1 + 1e-6))
        return np.flatnonzero(found)

    def _tie(self) -> sparse.csr_array:
        """Give the matrix from kept unknowns (the motor's six last) to all."""
        nodes = self._motor_nodes()
        free = np.ones((self.elements.count, 3), bool)
        free[nodes] = False
        own = np.flatnonzero(free.ravel())
        arm = self.elements.points[nodes] - np.asarray(self.model.motor_centre, float)
        block = np.zeros((len(nodes), 3, 6))
        block[:, range(3), range(3)] = 1.0
        for i in range(3):
            block[:, :, 3 + i] = np.cross(np.eye(3)[i], arm)
        row = np.broadcast_to((3 * nodes[:, None] + np.arange(3))[:, :, None], block.shape)
        column = np.broadcast_to(len(own) + np.arange(6), block.shape)
        last = self.size - 6 + np.arange(6)
        entries = (
            np.r_[np.ones(len(own)), block.ravel(), np.ones(6)],
            (
                np.r_[own, row.ravel(), last],
                np.r_[np.arange(len(own)), column.ravel(), len(own) + np.arange(6)],
            ),
        )
        return sparse.csr_array(sparse.coo_array(entries, shape=(self.size, len(own) + 6)))

    def _solve(self) -> None:
        """Solve for six unit loads on the motor and a unit push in every cell."""
        total = self.elastic
        for part in (*self.bolts, *self.welds, self.screws, self.struts, self.butts):
            if len(part.stiffness):
                total = total + part.rows.T @ sparse.diags_array(part.stiffness) @ part.rows
        tie = self._tie()
        matrix = sparse.csr_array(tie.T @ total @ tie)
        self.cell_rows = sparse.csr_array(sparse.vstack([self.frame.rows, self.butts.rows]))
        load = np.zeros((matrix.shape[0], 6 + self.cell_rows.shape[0]))
        load[-6:, :6] = np.eye(6)
        load[:, 6:] = (self.cell_rows @ tie).T.toarray()
        kept = solved(matrix, load)
        self.kept = matrix.shape[0]
        self.columns = np.asarray(tie @ kept)
        self.pressed = np.asarray(self.cell_rows @ self.columns)  # of cells, by column

    def pushes(self, load: np.ndarray) -> np.ndarray:
        """Give the force that each cell adds to what stands in the stiffness, contact settled.

        Frame cells: minus the frame's push, where pressed in. Butts: their spring let go, where open.
        """
        free = self.pressed[:, :6] @ load
        many = len(self.frame.stiffness)
        change = np.r_[self.frame.stiffness, -self.butts.stiffness]
        give = self.pressed[:, 6:]
        on = np.r_[free[:many] > 0.0, free[many:] < 0.0]
        seen: set[bytes] = set()
        for _ in range(200):
            force = np.zeros(len(free))
            index = np.flatnonzero(on)
            if index.size:
                # u = free - give f, f = change u
                lhs = np.diag(1.0 / change[index]) + give[np.ix_(index, index)]
                force[index] = np.linalg.solve(lhs, free[index])
            press = free - give @ force
            wanted = np.r_[press[:many] > 0.0, press[many:] < 0.0]
            if np.array_equal(wanted, on):
                return force
            key = on.tobytes()
            if key in seen:  # going round: change only the worst
                wrong = np.flatnonzero(wanted != on)
                worst = wrong[np.argmax(np.abs(press[wrong] * change[wrong]))]
                on = on.copy()
                on[worst] = ~on[worst]
            else:
                seen.add(key)
                on = wanted
        raise RuntimeError("contact does not settle")

    def response(self, load: np.ndarray) -> np.ndarray:
        """Give the movement of all unknowns under six loads at the motor's centre."""
        return self.columns @ np.r_[load, -self.pushes(load)]

    def motor(self, movement: np.ndarray) -> np.ndarray:
        """Give the motor's movement and turn at its centre."""
        return movement[-6:]

    def bolt_forces(self, movement: np.ndarray) -> np.ndarray:
        """Give each frame bolt's force in its facet's axes, the plate's on it: (bolts, 3)."""
        found = np.zeros((len(self.bolts), 3))
        for i, part in enumerate(self.bolts):
            force = part.stiffness * (part.rows @ movement)
            found[i] = force.reshape(-1, 3).sum(axis=0)
        return found

    def weld_forces(self, movement: np.ndarray) -> np.ndarray:
        """Give the force on each weld in space."""
        found = [(p.stiffness * (p.rows @ movement)).reshape(-1, 3).sum(axis=0) for p in self.welds]
        return np.array(found).reshape(-1, 3)

    def balance(self, load: np.ndarray, movement: np.ndarray) -> float:
        """Give the force left of loads and reactions over the load."""
        total = np.array(load[:3], float)
        for bolt, force in zip(self.model.frame_bolts, self.bolt_forces(movement), strict=True):
            total -= force @ self.model.facets[bolt.facet].axes
        total -= self.weld_forces(movement).sum(axis=0)
        for strut, pull in zip(
            self.model.struts, self.struts.stiffness * (self.struts.rows @ movement), strict=True
        ):
            way = np.asarray(strut.start, float) - np.asarray(strut.end, float)
            total -= pull * way / np.linalg.norm(way)
        press = np.maximum(0.0, self.frame.rows @ movement) * self.frame.stiffness
        sides = self.frame.rows.multiply(press[:, None]).sum(axis=0)
        total -= np.asarray(sides).ravel()[:-6].reshape(-1, 3).sum(axis=0)
        return float(np.max(np.abs(total)) / np.max(np.abs(load[:3])))

    # --- stress ------------------------------------------------------------------------------

    def linear(self, nodal: np.ndarray, facet: int, places: np.ndarray) -> np.ndarray:
        """Give stress at places of a facet, (n, 6): mean over the thickness, then its linear part.

        Both as xx, yy, xy in the facet's axes; the linear part is its value on the face the normal
        points out of. ``nodal`` are the means over the tetrahedra at each node.
        """
        plate = self.model.facets[facet]
        found = np.zeros((len(places), 6))
        for at, weight in zip(*GAUSS, strict=True):
            points = plate.to_space(places) + 0.5 * at * plate.thickness * plate.axes[2]
            tet, shares = self.elements.locate(points)
            s = np.einsum("na,naj->nj", shapes(shares), nodal[self.elements.nodes[tet]])
            tensor = np.stack([s[:, [0, 3, 5]], s[:, [3, 1, 4]], s[:, [5, 4, 2]]], axis=1)
            local = np.einsum("ai,nij,bj->nab", plate.axes, tensor, plate.axes)
            flat = np.stack([local[:, 0, 0], local[:, 1, 1], local[:, 0, 1]], axis=1)
            found[:, :3] += 0.5 * weight * flat
            found[:, 3:] += 1.5 * weight * at * flat
        return found
