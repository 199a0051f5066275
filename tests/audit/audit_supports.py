"""What holds a meshed plate model: washers, welds, screws, struts, and where frame and butts push.

Washers are springs over their rings on both faces; welds to the frame are springs along both edges of
the plate on the weld line; screws of seams and struts are the model's own springs on the means of
what they hold; the frame and the butt of a seam push only, in cells.
"""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import shapely
from audit_elements import Elements, shapes
from audit_mesh import Solid, covered
from audit_rows import Rows, Springs
from audit_shape import GAP
from shapely.geometry import Polygon

from mountlimit.plates import PlateModel
from mountlimit.plates.model import Bolt, Seam

INWARD = 1e-7  # m, places on a face are looked up this far inside
RADII, TURNS = 6, 24  # points over a washer's ring
SUNK = 2.0  # heads: how deep a screw holds the edge plate along its axis, about
FEWEST = 6  # cells across a region of contact
BUTT = (12, 8)  # cells along and across a butt


class Supports:
    """Builds the springs of a meshed model; the motor's six unknowns come last."""

    def __init__(self, model: PlateModel, solid: Solid, elements: Elements, cells: int) -> None:
        self.model, self.solid, self.elements, self.cells = model, solid, elements, cells
        self.size = 3 * elements.count + 6

    # --- places ------------------------------------------------------------------------------

    def _on_face(self, facet: int, places: np.ndarray, side: float) -> np.ndarray:
        """Give points just under a face: side -1 or 1, or between for the inside."""
        plate = self.model.facets[facet]
        depth = side * (0.5 * plate.thickness - (INWARD if abs(side) == 1 else 0.0))
        return plate.to_space(places) + depth * plate.axes[2]

    def _bare(self, facet: int, places: np.ndarray) -> np.ndarray:
        """Tell which places of a facet have plate, and air on their faces."""
        return shapely.contains_xy(self.solid.bodies[facet].free, *places.T) & ~covered(
            self.solid, facet, places
        )

    def _disc(self, facet: int, centre: object, diameter: float) -> tuple[np.ndarray, np.ndarray]:
        """Give places over a disc that have plate, and their shares of its area."""
        r, w = np.polynomial.legendre.leggauss(RADII)
        radius = 0.25 * diameter * (r + 1.0)
        turn = (np.arange(TURNS) + 0.5) * 2.0 * np.pi / TURNS
        places = np.asarray(centre, float) + (
            radius[:, None, None] * np.c_[np.cos(turn), np.sin(turn)]
        ).reshape(-1, 2)
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
        places = np.asarray(bolt.centre, float) + (
            radius[:, None, None] * np.c_[np.cos(turn), np.sin(turn)]
        ).reshape(-1, 2)
        weight = np.repeat(w * radius, TURNS)
        on = self._bare(bolt.facet, places)
        return places[on], weight[on] / weight[on].sum()

    # --- supports ----------------------------------------------------------------------------

    def washer(self, index: int) -> Springs:
        """Give a frame bolt: uniform springs over the ring, half of each stiffness on each face."""
        bolt, rows, stiffness = self.model.frame_bolts[index], Rows(), []
        places, share = self._ring(bolt)
        axes = self.model.facets[bolt.facet].axes
        for side in (-1.0, 1.0):
            tet, shares = self.elements.locate(self._on_face(bolt.facet, places, side))
            factors, nodes = shapes(shares), self.elements.nodes[tet]
            for k in range(len(places)):
                for way, whole in zip(
                    axes, (bolt.tangential_stiffness,) * 2 + (bolt.normal_stiffness,), strict=True
                ):
                    rows.add(nodes[k], factors[k], way)
                    stiffness.append(0.5 * whole * share[k])
        return Springs(rows.matrix(self.size), np.array(stiffness))

    def weld(self, index: int) -> Springs:
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
            found = [(self.elements.nodes[t[k]], shapes(s[k])) for t, s in faces]
            if not weld.double_sided:  # the mean of both faces
                found = [tuple(np.concatenate(x) for x in zip(*found, strict=True))]
                found = [(found[0][0], 0.5 * found[0][1])]
            for nodes, factors in found:
                for way in np.eye(3):
                    rows.add(nodes, factors, way)
                    stiffness.append(each / len(found))
        return Springs(rows.matrix(self.size), np.array(stiffness))

    def _butt_line(
        self, seam: Seam
    ) -> tuple[np.ndarray, np.ndarray, np.ndarray, np.ndarray, float]:
        """Give a seam's start on the face, ways along, across and out of the face, and its length."""
        edge, face = (self.model.facets[i] for i in seam.facets)
        ends = edge.to_space(np.array([seam.start, seam.end], float))
        middle = edge.to_space(
            np.asarray(Polygon(np.asarray(edge.outline, float)).centroid.coords[0])
        )
        out = face.axes[2] * np.sign((middle - np.asarray(face.origin)) @ face.axes[2])
        start = face.to_space(face.to_plane(ends[0])) + 0.5 * face.thickness * out
        length = float(np.linalg.norm(ends[1] - ends[0]))
        return start, (ends[1] - ends[0]) / length, edge.axes[2], out, length

    def _edge_places(
        self, seam: Seam, low: float, high: float, band: tuple[float, float]
    ) -> tuple[np.ndarray, np.ndarray]:
        """Give points over a piece of a seam's butt: on the edge plate's end, and on the face."""
        start, along, across, out, _ = self._butt_line(seam)
        t = self.model.facets[seam.facets[0]].thickness
        u = low + (high - low) * (np.arange(6) + 0.5) / 6
        v = t * (band[0] + (band[1] - band[0]) * (np.arange(3) + 0.5) / 3 - 0.5)
        places = start + u[:, None, None] * along + v[None, :, None] * across
        places = places.reshape(-1, 3)
        return places + (GAP + INWARD) * out, places - INWARD * out

    def screws(self) -> Springs:
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
                deep = [end + x * SUNK * seam.washer_diameter * out for x in (0.0, 0.25, 0.5, 0.75)]
                deep = np.concatenate(deep)
                root = self.elements.mean_row(deep, np.full(len(deep), 1.0 / len(deep)), in_edge)
                centre = face.to_plane(start + place * along)
                places, share = self._disc(seam.facets[1], centre, seam.washer_diameter)
                near = 1.0 if out @ face.axes[2] > 0 else -1.0
                for way, whole in (
                    (out, seam.axial_stiffness),
                    (along, seam.lateral_stiffness),
                    (across, seam.lateral_stiffness),
                ):
                    row = rows.add(*(root if way is out else edge), way)
                    sides = (-1.0, 1.0) if way is out else (near,)
                    for side in sides:
                        spots = self._on_face(seam.facets[1], places, side)
                        nodes, factors = self.elements.mean_row(spots, share / len(sides), ~in_edge)
                        rows.add(nodes, -factors, way, row)
                    stiffness.append(whole)
        return Springs(rows.matrix(self.size), np.array(stiffness))

    def struts(self) -> Springs:
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

    def frame(self) -> Springs:
        """Give the frame's contact in cells: how far each is pressed in, and its stiffness."""
        rows, stiffness = Rows(), []
        for contact in self.model.contacts:
            plate = self.model.facets[contact.facet]
            outline = Polygon(np.asarray(plate.outline, float))
            region = (
                outline
                if contact.region is None
                else outline.intersection(Polygon(np.asarray(contact.region, float)))
            )
            whole = sum(
                (outline if c.region is None else outline.intersection(Polygon(np.asarray(c.region, float)))).area
                for c in self.model.contacts if c.facet == contact.facet
            )  # fmt: skip
            low = np.array(region.bounds[:2])
            size = np.ptp(np.array(region.bounds).reshape(2, 2), axis=0)
            counts = _cells(self.cells * region.area / whole, size)
            first, second = (_graded(n) for n in counts)
            u, v = np.meshgrid(first[0], second[0], indexing="ij")
            places = low + np.c_[u.ravel(), v.ravel()] * size
            each = np.outer(first[1], second[1]).ravel() * float(np.prod(size))
            cell = (first[2][:, None] * counts[1] + second[2]).ravel()
            on = shapely.contains_xy(region, *places.T) & shapely.contains_xy(
                self.solid.bodies[contact.facet].free, *places.T
            )
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

    def butts(self) -> Springs:
        """Give the butts of seams in cells, pressed together above nothing."""
        rows, stiffness = Rows(), []
        for seam in self.model.seams:
            _, _, _, out, length = self._butt_line(seam)
            t, (count, bands) = self.model.facets[seam.facets[0]].thickness, BUTT
            ends = 0.5 * (
                1.0 - np.cos(np.pi * np.arange(bands + 1) / bands)
            )  # narrow at both faces
            in_edge = self.solid.owner == seam.facets[0]
            face = self.solid.bodies[seam.facets[1]]
            for i in range(count):
                for j in range(bands):
                    end, opposite = self._edge_places(
                        seam,
                        length * i / count,
                        length * (i + 1) / count,
                        (ends[j], ends[j + 1]),
                    )
                    on = shapely.contains_xy(face.free, *face.facet.to_plane(opposite).T)
                    if not on.any():
                        continue
                    share = np.full(int(on.sum()), 1.0 / on.sum())
                    row = rows.add(*self.elements.mean_row(end[on], share, in_edge), -out)
                    nodes, factors = self.elements.mean_row(opposite[on], share, ~in_edge)
                    rows.add(nodes, factors, out, row)
                    stiffness.append(
                        seam.contact_stiffness
                        * length
                        / count
                        * t
                        * (ends[j + 1] - ends[j])
                        * on.mean()
                    )
        return Springs(rows.matrix(self.size), np.array(stiffness))


def _cells(wanted: float, size: np.ndarray) -> np.ndarray:
    """Give the cells along both sides of a region: never few across a narrow strip, where it pries."""
    wanted = max(float(FEWEST**2), wanted)
    across = max(FEWEST, round(math.sqrt(wanted / math.sqrt(size.max() / size.min()))))
    counts = np.full(2, across)
    counts[int(np.argmax(size))] = max(FEWEST, math.ceil(wanted / across))
    return counts


def _graded(cells: int) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Give points from 0 to 1, their shares and cells; cells at both ends are the narrowest."""
    ends = 0.5 * (1.0 - np.cos(np.pi * np.arange(cells + 1) / cells))
    inner = (np.arange(4) + 0.5) / 4
    width = np.diff(ends)
    places = (ends[:-1, None] + width[:, None] * inner).ravel()
    return places, np.repeat(width / 4, 4), np.repeat(np.arange(cells), 4)
