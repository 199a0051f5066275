"""A plate model solved in solid elements: supports, motor, contact, and what is read off.

Washers are springs over their rings on both faces; the motor carries its rings on both faces as a
rigid body; welds to the frame are springs along both edges of the plate on the weld line; screws of
seams and struts are the model's own springs on the means of what they hold; the frame and the butt of
a seam push only, in cells.  No code of the engine is used but the `PlateModel`.
"""

from __future__ import annotations

import math
import time
from dataclasses import dataclass, field
from functools import cache
from typing import Any

import numpy as np
import shapely
from audit_elements import Elements, shapes
from audit_mesh import Sizes, Solid, build, covered
from audit_shape import GAP
from scipy import sparse
from shapely.geometry import Polygon

from mountlimit.plates import PlateModel
from mountlimit.plates.model import Bolt, Seam

CELLS = 120  # of contact over one facet's bearing face, about
INWARD = 1e-7  # m, places on a face are looked up this far inside
RADII, TURNS = 6, 24  # points over a washer's ring
GAUSS = np.polynomial.legendre.leggauss(5)


@dataclass
class Rows:
    """Sparse rows on all unknowns of nodes and motor, as they are gathered."""

    row: list[np.ndarray] = field(default_factory=list)
    column: list[np.ndarray] = field(default_factory=list)
    value: list[np.ndarray] = field(default_factory=list)
    count: int = 0

    def add(self, nodes: np.ndarray, factors: np.ndarray, way: np.ndarray, row: int | None = None) -> int:
        """Add factors times the movement of nodes along a direction to a row, a new one by default."""
        if row is None:
            row, self.count = self.count, self.count + 1
        self.row.append(np.full(3 * len(nodes), row))
        self.column.append((3 * nodes[:, None] + np.arange(3)).ravel())
        self.value.append((factors[:, None] * way).ravel())
        return row

    def motor(self, first: int, factors: np.ndarray, row: int) -> None:
        """Add the motor's six unknowns to a row."""
        self.row.append(np.full(6, row))
        self.column.append(first + np.arange(6))
        self.value.append(factors)

    def matrix(self, columns: int) -> sparse.csr_array:
        """Give them as a matrix."""
        if not self.row:
            return sparse.csr_array((self.count, columns))
        entries = (np.concatenate(self.value), (np.concatenate(self.row), np.concatenate(self.column)))
        return sparse.csr_array(sparse.coo_array(entries, shape=(self.count, columns)))


@dataclass
class Springs:
    """Springs on rows; ``one_way`` only push: the frame's stand outside the stiffness, butts inside."""

    rows: sparse.csr_array
    stiffness: np.ndarray


class SolidMount:
    """A meshed plate model, factored once; answers any load on the motor."""

    def __init__(self, model: PlateModel, sizes: Sizes = Sizes(), cells: int = CELLS) -> None:
        """Mesh, assemble and solve for six unit loads and the contact's."""
        began = time.perf_counter()
        self.model, self.cells, self.times = model, cells, {}
        self.solid: Solid = build(model, sizes)
        self._lap("mesh", began)
        self.elements = self._elements()
        self.size = 3 * self.elements.count + 6
        self.elastic = sparse.block_diag([self.elements.stiffness(), sparse.csr_array((6, 6))], format="csr")
        self.bolts = [self._washer(i) for i in range(len(model.frame_bolts))]
        self.welds = [self._weld(i) for i in range(len(model.welds))]
        self.screws = self._screws()
        self.struts = self._struts()
        self.frame = self._frame()
        self.butts = self._butts()
        self._lap("assembly", began)
        self._solve()
        self._lap("solving", began)

    def _lap(self, name: str, began: float) -> None:
        self.times[name] = round(time.perf_counter() - began - sum(self.times.values()), 2)

    def _elements(self) -> Elements:
        own = [(f.elastic_modulus, f.poissons_ratio) for f in self.model.facets]
        own += [(s.elastic_modulus, s.poissons_ratio) for s in self.model.spacers]
        table = np.array(own)[self.solid.owner]
        return Elements(self.solid, table[:, 0], table[:, 1])

    # --- places ------------------------------------------------------------------------------

    def _on_face(self, facet: int, places: np.ndarray, side: float) -> np.ndarray:
        """Give points just under a face: side -1 or 1, or between for the inside."""
        plate = self.model.facets[facet]
        depth = side * (0.5 * plate.thickness - (INWARD if abs(side) == 1 else 0.0))
        return plate.to_space(places) + depth * plate.axes[2]

    def _bare(self, facet: int, places: np.ndarray) -> np.ndarray:
        """Tell which places of a facet have plate, and air on their faces."""
        return shapely.contains_xy(self.solid.bodies[facet].free, *places.T) & ~covered(self.solid, facet, places)

    def _disc(self, facet: int, centre: object, diameter: float) -> tuple[np.ndarray, np.ndarray]:
        """Give places over a disc that have plate, and their shares of its area."""
        r, w = np.polynomial.legendre.leggauss(RADII)
        radius = 0.25 * diameter * (r + 1.0)
        turn = (np.arange(TURNS) + 0.5) * 2.0 * np.pi / TURNS
        places = np.asarray(centre, float) + (radius[:, None, None] * np.c_[np.cos(turn), np.sin(turn)]).reshape(-1, 2)
        weight = np.repeat(w * radius, TURNS)
        on = self._bare(facet, places)
        return places[on], weight[on] / weight[on].sum()

    def _ring(self, bolt: Bolt) -> tuple[np.ndarray, np.ndarray]:
        """Give places over a washer's ring; the points stand between hole and rim."""
        r, w = np.polynomial.legendre.leggauss(RADII)
        low, high = 0.5 * bolt.hole_diameter, 0.5 * bolt.washer_diameter
        if bolt.slot_length > bolt.hole_diameter:
            low = 0.0
        radius = low + 0.5 * (high - low) * (r + 1.0)
        turn = (np.arange(TURNS) + 0.5) * 2.0 * np.pi / TURNS
        places = np.asarray(bolt.centre, float) + (radius[:, None, None] * np.c_[np.cos(turn), np.sin(turn)]).reshape(-1, 2)
        weight = np.repeat(w * radius, TURNS)
        on = self._bare(bolt.facet, places)
        return places[on], weight[on] / weight[on].sum()

    # --- supports ----------------------------------------------------------------------------

    def _washer(self, index: int) -> Springs:
        """Give a frame bolt: uniform springs over the ring, half of each stiffness on each face."""
        bolt, rows, stiffness = self.model.frame_bolts[index], Rows(), []
        places, share = self._ring(bolt)
        axes = self.model.facets[bolt.facet].axes
        for side in (-1.0, 1.0):
            tet, shares = self.elements.locate(self._on_face(bolt.facet, places, side))
            factors, nodes = shapes(shares), self.elements.nodes[tet]
            for k in range(len(places)):
                for way, whole in zip(axes, (bolt.tangential_stiffness,) * 2 + (bolt.normal_stiffness,), strict=True):
                    rows.add(nodes[k], factors[k], way)
                    stiffness.append(0.5 * whole * share[k])
        return Springs(rows.matrix(self.size), np.array(stiffness))

    def _weld(self, index: int) -> Springs:
        """Give a weld to the frame: springs along the line on both faces, or on the mean of both."""
        weld, rows, stiffness = self.model.welds[index], Rows(), []
        start, end = np.asarray(weld.start, float), np.asarray(weld.end, float)
        length = float(np.linalg.norm(end - start))
        count = max(12, int(4 * length / self.model.facets[weld.facet].thickness))
        middle = np.asarray(self.solid.bodies[weld.facet].outline.centroid.coords[0])
        into = middle - start - ((middle - start) @ (end - start)) / length**2 * (end - start)
        into *= 10 * INWARD / max(float(np.linalg.norm(into)), INWARD)
        share = (np.arange(count)[:, None] + 0.5) / count
        places = start + share * (end - start) + into
        faces = [self.elements.locate(self._on_face(weld.facet, places, s)) for s in (-1.0, 1.0)]
        each = weld.stiffness * length / count
        for k in range(count):
            for way in np.eye(3):
                found = [(self.elements.nodes[t[k]], shapes(s[k])) for t, s in faces]
                if weld.double_sided:
                    for nodes, factors in found:
                        rows.add(nodes, factors, way)
                        stiffness.append(0.5 * each)
                else:
                    rows.add(np.concatenate([n for n, _ in found]), 0.5 * np.concatenate([f for _, f in found]), way)
                    stiffness.append(each)
        return Springs(rows.matrix(self.size), np.array(stiffness))

    def _butt_line(self, seam: Seam) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray, float]:
        """Give a seam's start on the face, ways along, across and out of the face, and its length."""
        edge, face = (self.model.facets[i] for i in seam.facets)
        ends = edge.to_space(np.array([seam.start, seam.end], float))
        middle = edge.to_space(np.asarray(Polygon(np.asarray(edge.outline, float)).centroid.coords[0]))
        out = face.axes[2] * np.sign((middle - np.asarray(face.origin)) @ face.axes[2])
        start = face.to_space(face.to_plane(ends[0])) + 0.5 * face.thickness * out
        length = float(np.linalg.norm(ends[1] - ends[0]))
        return start, (ends[1] - ends[0]) / length, edge.axes[2], out, length

    def _edge_places(self, seam: Seam, low: float, high: float, band: tuple[float, float]) -> tuple[np.ndarray, np.ndarray]:
        """Give points over a piece of a seam's butt: on the edge plate's end, and on the face."""
        start, along, across, out, _ = self._butt_line(seam)
        t = self.model.facets[seam.facets[0]].thickness
        u = low + (high - low) * (np.arange(6) + 0.5) / 6
        v = t * (band[0] + (band[1] - band[0]) * (np.arange(3) + 0.5) / 3 - 0.5)
        places = start + u[:, None, None] * along + v[None, :, None] * across
        places = places.reshape(-1, 3)
        return places + (GAP + INWARD) * out, places - INWARD * out

    def _screws(self) -> Springs:
        """Give the seams' fasteners: three springs each, axial, along the seam, across it."""
        rows, stiffness = Rows(), []
        for seam in self.model.seams:
            start, along, across, out, length = self._butt_line(seam)
            face = self.model.facets[seam.facets[1]]
            in_edge = self.solid.owner == seam.facets[0]
            for place in seam.places:
                reach = min(0.5 * seam.washer_diameter, place, length - place)
                end, _ = self._edge_places(seam, place - reach, place + reach, (0.0, 1.0))
                edge = self.elements.mean_row(end, np.full(len(end), 1.0 / len(end)), in_edge)
                centre = face.to_plane(start + place * along)
                places, share = self._disc(seam.facets[1], centre, seam.washer_diameter)
                near = 1.0 if out @ face.axes[2] > 0 else -1.0
                for way, whole in ((out, seam.axial_stiffness), (along, seam.lateral_stiffness), (across, seam.lateral_stiffness)):
                    row = rows.add(*edge, way)
                    sides = (-1.0, 1.0) if way is out else (near,)
                    for side in sides:
                        spots = self._on_face(seam.facets[1], places, side)
                        nodes, factors = self.elements.mean_row(spots, share / len(sides), ~in_edge)
                        rows.add(nodes, -factors, way, row)
                    stiffness.append(whole)
        return Springs(rows.matrix(self.size), np.array(stiffness))

    def _struts(self) -> Springs:
        """Give the struts, longer above nothing."""
        rows, stiffness = Rows(), []
        for strut in self.model.struts:
            start = np.asarray(strut.start, float)
            way = start - np.asarray(strut.end, float)
            way /= np.linalg.norm(way)
            row, rows.count = rows.count, rows.count + 1
            if strut.facet is None:
                arm = start - np.asarray(self.model.motor_centre, float)
                rows.motor(self.size - 6, np.r_[way, np.cross(arm, way)], row)
            else:
                self._lug(strut, start, way, rows, row)
            stiffness.append(strut.stiffness)
        return Springs(rows.matrix(self.size), np.array(stiffness))

    def _lug(self, strut: Any, start: np.ndarray, way: np.ndarray, rows: Rows, row: int) -> None:
        """Add what a plate's disc moves a strut's end: its mean, and its turn times the lug."""
        plate = self.model.facets[strut.facet]
        centre = plate.to_plane(start)
        places, share = self._disc(strut.facet, centre, strut.washer_diameter)
        arm = start - plate.to_space(centre)
        turn = plate.axes @ np.cross(arm, way)
        off = places - centre
        for side in (-1.0, 1.0):
            spots = self._on_face(strut.facet, places, side)
            nodes, factors = self.elements.mean_row(spots, 0.5 * share)
            rows.add(nodes, factors, way, row)
            # turn about e1: slope of the normal's movement along e2; about e2: minus that along e1
            for axis, sign in ((1, turn[0]), (0, -turn[1])):
                spread = share * off[:, axis] / np.sum(share * off[:, axis] ** 2)
                nodes, factors = self.elements.mean_row(spots, 0.5 * sign * spread)
                rows.add(nodes, factors, plate.axes[2], row)

    # --- contact -----------------------------------------------------------------------------

    def _frame(self) -> Springs:
        """Give the frame's contact in cells: how far each is pressed in, and its stiffness."""
        rows, stiffness = Rows(), []
        under = [self._ring_shape(b) for b in self.model.motor_bolts]
        for contact in self.model.contacts:
            plate = self.model.facets[contact.facet]
            outline = Polygon(np.asarray(plate.outline, float))
            region = outline if contact.region is None else outline.intersection(Polygon(np.asarray(contact.region, float)))
            whole = sum(
                (outline if c.region is None else outline.intersection(Polygon(np.asarray(c.region, float)))).area
                for c in self.model.contacts if c.facet == contact.facet
            )  # fmt: skip
            pitch = math.sqrt(whole / self.cells)
            low, size = np.array(region.bounds[:2]), np.ptp(np.array(region.bounds).reshape(2, 2), axis=0)
            counts = np.maximum(2, np.round(size / pitch)).astype(int)
            first, second = (_graded(n) for n in counts)
            u, v = np.meshgrid(first[0], second[0], indexing="ij")
            places = low + np.c_[u.ravel(), v.ravel()] * size
            each = np.outer(first[1], second[1]).ravel() * float(np.prod(size))
            cell = (first[2][:, None] * counts[1] + second[2]).ravel()
            on = shapely.contains_xy(region, *places.T) & shapely.contains_xy(self.solid.bodies[contact.facet].free, *places.T)
            for bolt, shape in zip(self.model.motor_bolts, under, strict=True):
                if bolt.facet == contact.facet:
                    on &= ~shapely.contains_xy(shape, *places.T)
            places, cell, each = places[on], cell[on], each[on]
            tet, shares = self.elements.locate(self._on_face(contact.facet, places, contact.side))
            factors, nodes = shapes(shares), self.elements.nodes[tet]
            for number in np.unique(cell):
                own = cell == number
                area = float(each[own].sum())
                share = factors[own] * (each[own] / area)[:, None]
                rows.add(nodes[own].ravel(), share.ravel(), contact.side * plate.axes[2])
                stiffness.append(contact.stiffness * area)
        return Springs(rows.matrix(self.size), np.array(stiffness))

    def _ring_shape(self, bolt: Bolt) -> Polygon:
        return shapely.Point(np.asarray(bolt.centre, float)).buffer(bolt.washer_diameter / 2, 32)

    def _butts(self) -> Springs:
        """Give the butts of seams in cells, pressed together above nothing."""
        rows, stiffness = Rows(), []
        for seam in self.model.seams:
            _, _, _, out, length = self._butt_line(seam)
            t, count, bands = self.model.facets[seam.facets[0]].thickness, 16, 6
            in_edge = self.solid.owner == seam.facets[0]
            face = self.solid.bodies[seam.facets[1]]
            for i in range(count):
                for j in range(bands):
                    end, opposite = self._edge_places(
                        seam, length * i / count, length * (i + 1) / count, (j / bands, (j + 1) / bands)
                    )
                    on = shapely.contains_xy(face.free, *face.facet.to_plane(opposite).T)
                    if not on.any():
                        continue
                    share = np.full(int(on.sum()), 1.0 / on.sum())
                    row = rows.add(*self.elements.mean_row(end[on], share, in_edge), -out)
                    nodes, factors = self.elements.mean_row(opposite[on], share, ~in_edge)
                    rows.add(nodes, factors, out, row)
                    stiffness.append(seam.contact_stiffness * length / count * t / bands * on.mean())
        return Springs(rows.matrix(self.size), np.array(stiffness))

    # --- solving -----------------------------------------------------------------------------

    def _motor_nodes(self) -> np.ndarray:
        """Give the nodes on the faces under the motor's washers."""
        found = np.zeros(self.elements.count, bool)
        for bolt in self.model.motor_bolts:
            plate = self.model.facets[bolt.facet]
            high = np.abs((self.elements.points - np.asarray(plate.origin, float)) @ plate.axes[2])
            face = np.abs(high - 0.5 * plate.thickness) < 1e-7
            away = np.linalg.norm(plate.to_plane(self.elements.points) - np.asarray(bolt.centre, float), axis=1)
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
            (np.r_[own, row.ravel(), last], np.r_[np.arange(len(own)), column.ravel(), len(own) + np.arange(6)]),
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
        return np.array(
            [(p.stiffness * (p.rows @ movement)).reshape(-1, 3 if d else 3).sum(axis=0) for p, d in zip(self.welds, [w.double_sided for w in self.model.welds], strict=True)]
        ).reshape(-1, 3)

    def balance(self, load: np.ndarray, movement: np.ndarray) -> float:
        """Give the force left of loads and reactions over the load."""
        total = np.array(load[:3], float)
        for bolt, force in zip(self.model.frame_bolts, self.bolt_forces(movement), strict=True):
            total -= force @ self.model.facets[bolt.facet].axes
        total -= self.weld_forces(movement).sum(axis=0)
        for strut, pull in zip(self.model.struts, self.struts.stiffness * (self.struts.rows @ movement), strict=True):
            way = np.asarray(strut.start, float) - np.asarray(strut.end, float)
            total -= pull * way / np.linalg.norm(way)
        press = np.maximum(0.0, self.frame.rows @ movement) * self.frame.stiffness
        sides = self.frame.rows.multiply(press[:, None]).sum(axis=0)
        total -= np.asarray(sides).ravel()[:-6].reshape(-1, 3).sum(axis=0)
        return float(np.max(np.abs(total)) / np.max(np.abs(load[:3])))

    # --- stress ------------------------------------------------------------------------------

    def stress(self, movement: np.ndarray, facet: int, places: np.ndarray) -> np.ndarray:
        """Give stress at places of a facet, (n, 6): mean over the thickness, then its linear part.

        Both as xx, yy, xy in the facet's axes; the linear part is its value on the face the normal
        points out of. Nodal means are taken over the tetrahedra of the facet and its corner.
        """
        nodal = self.elements.nodal_stress(movement[:-6].reshape(-1, 3))
        return self.linear(nodal, facet, places)

    def linear(self, nodal: np.ndarray, facet: int, places: np.ndarray) -> np.ndarray:
        """Give the same from nodal means."""
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


def _graded(cells: int) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Give points from 0 to 1, their shares and cells; cells at both ends are the narrowest."""
    ends = 0.5 * (1.0 - np.cos(np.pi * np.arange(cells + 1) / cells))
    inner = (np.arange(4) + 0.5) / 4
    width = np.diff(ends)
    places = (ends[:-1, None] + width[:, None] * inner).ravel()
    return places, np.repeat(width / 4, 4), np.repeat(np.arange(cells), 4)


@cache
def _pardiso() -> Any:
    try:
        import pypardiso
    except ImportError:
        return None
    return pypardiso.PyPardisoSolver(mtype=2)


def solved(matrix: sparse.csr_array, load: np.ndarray) -> np.ndarray:
    """Solve a symmetric positive definite system for many loads, and insist on the residual."""
    fast = _pardiso()
    if fast is None:
        from scipy.sparse.linalg import splu

        options = {"SymmetricMode": True}
        factor = splu(sparse.csc_matrix(matrix), "MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options=options)
        found = factor.solve(load)
    else:
        upper = sparse.csr_matrix(sparse.triu(matrix, format="csr"))
        upper.sort_indices()
        fast.factorize(upper)
        found = np.empty_like(load)
        for low in range(0, load.shape[1], 32):
            found[:, low : low + 32] = fast.solve(upper, np.asfortranarray(load[:, low : low + 32]))
        fast.free_memory(everything=True)
    left = np.max(np.abs(matrix @ found[:, :6] - load[:, :6]))
    if not left < 1e-6:
        raise RuntimeError(f"solver leaves {left:.1e} of the load")
    return found
