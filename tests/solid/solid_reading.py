"""What is read off a solid answer: sprocket, bolt forces, stress on rings and section lines."""

from __future__ import annotations

import numpy as np
import shapely
from solid_mesh import outline_beyond_corner
from solid_model import Answer, SolidModel

from mountlimit.plates.model import Bolt

RING_POINTS = 72
CORNERS = np.array(  # the ten points of a tetrahedron as shares of its corners
    [[1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 1, 0], [0, 0, 0, 1],
     [.5, .5, 0, 0], [0, .5, .5, 0], [.5, 0, .5, 0], [.5, 0, 0, .5], [0, .5, 0, .5], [0, 0, .5, .5]]
)  # fmt: skip


class Reading:
    """Nodal means of stress of one answer, and von Mises at places on the plates' faces."""

    def __init__(self, solid: SolidModel, answer: Answer) -> None:
        self.solid = solid
        self.stress = nodal_stress(solid, answer.movement)
        self._faces: dict[tuple[int, int], tuple[shapely.STRtree, np.ndarray, np.ndarray]] = {}

    def _face(self, plate: int, side: int) -> tuple[shapely.STRtree, np.ndarray, np.ndarray]:
        if (plate, side) not in self._faces:
            solid = self.solid
            own = solid.tree_facets[solid._on_face(plate, side)]
            corners = solid.fem.facets[:, own].T
            places = solid.model.facets[plate].to_plane(solid.fem.p.T[corners])
            edges = solid.fem.f2e[:, own].T  # edges 01, 12, 02 of every triangle
            middle = solid.basis.edge_dofs[0][edges]
            shapes = shapely.polygons(np.concatenate([places, places[:, :1]], axis=1))
            nodes = np.hstack([solid.basis.nodal_dofs[0][corners], middle])
            self._faces[plate, side] = (shapely.STRtree(shapes), places, nodes)
        return self._faces[plate, side]

    def von_mises(self, plate: int, places: np.ndarray) -> np.ndarray:
        """Give the larger von Mises stress of the two faces at places; nan off the plate."""
        found = np.full(len(places), np.nan)
        for side in (-1, 1):
            tree, corners, nodes = self._face(plate, side)
            at, triangle = tree.query(shapely.points(places), predicate="intersects")
            at, first = np.unique(at, return_index=True)
            triangle = triangle[first]
            values = shape(area_shares(corners[triangle], places[at]), self.solid, nodes[triangle])
            stress = np.einsum("pi,pij->pj", values, self.stress[nodes[triangle]])
            found[at] = np.fmax(found[at], von_mises(stress))
        return found

    def ring(self, bolt: Bolt, away: float) -> float:
        """Give the largest stress on the ring ``away`` thicknesses outside a washer."""
        model = self.solid.model
        angle = 2.0 * np.pi * np.arange(RING_POINTS) / RING_POINTS
        radius = 0.5 * bolt.washer_diameter + away * model.facets[bolt.facet].thickness
        places = np.asarray(bolt.centre, float) + radius * np.c_[np.cos(angle), np.sin(angle)]
        body = outline_beyond_corner(model, bolt.facet, self.solid.mesh.corner)
        clear = shapely.contains_xy(body, *places.T)
        for other in model.bolts:
            if other.facet == bolt.facet:
                reach = np.linalg.norm(places - np.asarray(other.centre, float), axis=1)
                clear &= reach > 0.5 * other.washer_diameter
        return float(np.nanmax(self.von_mises(bolt.facet, places[clear])))

    def line(self, index: int) -> float:
        """Give the largest stress on a section line."""
        line = self.solid.model.section_lines[index]
        share = np.linspace(0.0, 1.0, line.samples)[:, None]
        start, end = np.asarray(line.start, float), np.asarray(line.end, float)
        return float(np.nanmax(self.von_mises(line.facet, start + share * (end - start))))


def area_shares(corners: np.ndarray, places: np.ndarray) -> np.ndarray:
    """Give the three area shares of places in triangles."""
    a, b, p = (q - corners[:, 0] for q in (corners[:, 1], corners[:, 2], places))
    double = a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]
    two = (p[:, 0] * b[:, 1] - p[:, 1] * b[:, 0]) / double
    three = (a[:, 0] * p[:, 1] - a[:, 1] * p[:, 0]) / double
    return np.stack([1.0 - two - three, two, three], axis=1)


def shape(shares: np.ndarray, solid: SolidModel, nodes: np.ndarray) -> np.ndarray:
    """Give the six quadratic shape functions, each middle node matched to its edge by place."""
    points = solid.points[nodes]
    corner = shares * (2.0 * shares - 1.0)
    middle = np.zeros_like(shares)
    for i, j in ((0, 1), (1, 2), (0, 2)):
        wanted = 0.5 * (points[:, i] + points[:, j])
        away = np.linalg.norm(points[:, 3:] - wanted[:, None], axis=2)
        middle[np.arange(len(nodes)), np.argmin(away, axis=1)] = 4.0 * shares[:, i] * shares[:, j]
    return np.hstack([corner, middle])


def von_mises(s: np.ndarray) -> np.ndarray:
    """Give von Mises of (xx, yy, zz, xy, yz, zx)."""
    x, y, z, xy, yz, zx = np.moveaxis(s, -1, 0)
    square = 0.5 * ((x - y) ** 2 + (y - z) ** 2 + (z - x) ** 2) + 3.0 * (xy**2 + yz**2 + zx**2)
    return np.sqrt(square)


def nodal_stress(solid: SolidModel, movement: np.ndarray) -> np.ndarray:
    """Give the mean over tetrahedra of the stress at each of their ten points, (points, 6)."""
    basis = solid.basis
    nodes = basis.element_dofs.T
    corners = solid.fem.p.T[solid.fem.t.T]
    place = np.einsum("ka,nad->nkd", CORNERS, corners)
    order = match(place[:1], solid.points[nodes[:1]])  # scikit-fem's own order of the edges
    inverse = np.linalg.inv(corners[:, 1:] - corners[:, :1])  # slopes of shares 1..3
    slopes = np.concatenate([-inverse.sum(axis=2)[:, :, None], inverse], axis=2)  # (n, 3, 4)
    total = np.zeros((solid.count, 6))
    many = np.bincount(nodes.ravel(), minlength=solid.count)
    facets = solid.model.facets
    for k in range(10):
        local = _share_slopes(CORNERS[k])  # (10, 4)
        grad = np.einsum("nda,ia->nid", slopes, local)
        moved = movement[nodes[:, order]]  # in the order of CORNERS
        strain = np.einsum("nid,nic->ncd", grad, moved)
        for i, facet in enumerate(facets):
            own = solid.mesh.plate == i
            np.add.at(total, nodes[own, order[k]], _hooke(strain[own], facet))
    return total / many[:, None]


def match(places: np.ndarray, points: np.ndarray) -> np.ndarray:
    """Give which of the points each of ten places is."""
    away = np.linalg.norm(places[0][:, None] - points[0][None], axis=2)
    assert away.min(axis=1).max() < 1e-9
    return np.argmin(away, axis=1)


def _share_slopes(share: np.ndarray) -> np.ndarray:
    """Give slopes of the ten shape functions with respect to the four shares, at a place."""
    pairs = [np.flatnonzero(row == 0.5) for row in CORNERS[4:]]
    found = np.zeros((10, 4))
    found[range(4), range(4)] = 4.0 * share - 1.0
    for k, (i, j) in enumerate(pairs):
        found[4 + k, i], found[4 + k, j] = 4.0 * share[j], 4.0 * share[i]
    return found


def _hooke(slopes: np.ndarray, facet: object) -> np.ndarray:
    nu, modulus = facet.poissons_ratio, facet.elastic_modulus
    shear = modulus / (2.0 * (1.0 + nu))
    lame = 2.0 * shear * nu / (1.0 - 2.0 * nu)
    strain = 0.5 * (slopes + slopes.transpose(0, 2, 1))
    spread = lame * np.trace(strain, axis1=1, axis2=2)
    s = 2.0 * shear * strain + spread[:, None, None] * np.eye(3)
    return np.stack(
        [s[:, 0, 0], s[:, 1, 1], s[:, 2, 2], s[:, 0, 1], s[:, 1, 2], s[:, 2, 0]], axis=1
    )


def read(solid: SolidModel, answer: Answer, point: np.ndarray) -> dict[str, object]:
    """Give all figures of an answer, in SI units, movement at ``point``."""
    model = solid.model
    arm = np.asarray(point, float) - np.asarray(model.motor_centre, float)
    reading = Reading(solid, answer)
    tension, shear = [], []
    for bolt, force in zip(model.frame_bolts, answer.bolt_forces, strict=True):
        local = model.facets[bolt.facet].axes @ force
        tension.append(float(-bolt.frame_side * local[2]))
        shear.append([float(v) for v in local[:2]])
    return {
        "rotation": answer.motor[3:].tolist(),
        "displacement": (answer.motor[:3] + np.cross(answer.motor[3:], arm)).tolist(),
        "bolt_tension": tension,
        "bolt_shear": shear,
        "contact_force": answer.contact_force.tolist(),
        "frame_ring": [reading.ring(b, 1.0) for b in model.frame_bolts],
        "frame_near_ring": [reading.ring(b, 0.5) for b in model.frame_bolts],
        "motor_ring": [reading.ring(b, 1.0) for b in model.motor_bolts],
        "lines": [reading.line(i) for i in range(len(model.section_lines))],
        "rounds": answer.rounds,
    }
