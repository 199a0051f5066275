"""Washers and welds as springs on both faces, and spacers as short beams."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from scipy import sparse

from .element import RULE_SHARES, RULE_WEIGHTS, shape
from .error import PlateError
from .mesh import Mesh
from .model import FloatArray, FrameBolt, IntArray, LineWeld, PlateModel, Spacer
from .shapes import TOUCH
from .ties import rigid_rows

LINE_PLACES = np.array([-math.sqrt(0.6), 0.0, math.sqrt(0.6)])
LINE_WEIGHTS = np.array([5.0, 8.0, 5.0]) / 18.0


@dataclass(frozen=True, kw_only=True)
class Spring:
    """One support's stiffness on all unknowns: its part free of thickness, and its part of t**2."""

    plain: sparse.coo_array
    offset: sparse.coo_array

    @property
    def whole(self) -> sparse.csr_array:
        """Both parts together."""
        return sparse.csr_array(self.plain.tocsr() + self.offset.tocsr())


def mass_like(area: FloatArray) -> FloatArray:
    """Give the integral of shape function times shape function over triangles, (n, 6, 6)."""
    values = shape(RULE_SHARES)
    one = np.einsum("g,gi,gj->ij", RULE_WEIGHTS, values, values)
    return np.asarray(area[:, None, None] * one)


def _on_nodes(
    count: int, nodes: IntArray, share: FloatArray, movement: FloatArray, turning: FloatArray
) -> Spring:
    """Spread node-pair shares (n, k, k) over unknowns, with a 3 x 3 law for either kind."""
    parts = []
    for law, first in ((movement, 0), (turning, 3)):
        block = share[:, :, None, :, None] * law[:, None, :]
        index = 6 * nodes[:, :, None] + np.arange(first, first + 3)
        row = np.broadcast_to(index[:, :, :, None, None], block.shape)
        column = np.broadcast_to(index[:, None, None, :, :], block.shape)
        entries = (block.ravel(), (row.ravel(), column.ravel()))
        parts.append(sparse.coo_array(entries, shape=(6 * count, 6 * count)))
    return Spring(plain=parts[0], offset=parts[1])


def _laws(
    axes: FloatArray, thickness: float, normal: float, tangential: float
) -> tuple[FloatArray, FloatArray]:
    """Give the laws of springs of half stiffness on each face, at plus and minus t / 2.

    k_theta = k_t * t**2 / 4 about each in-plane axis
    """
    e1, e2, up = axes
    in_plane = np.outer(e1, e1) + np.outer(e2, e2)
    movement = normal * np.outer(up, up) + tangential * in_plane
    return movement, tangential * 0.25 * thickness**2 * in_plane


def washer(model: PlateModel, mesh: Mesh, bolt: int) -> Spring:
    """Give the springs of one frame bolt, uniform over its annulus.

    Raises
    ------
    PlateError
        when the mesh has no annulus there
    """
    part: FrameBolt = model.frame_bolts[bolt]
    own = np.flatnonzero(mesh.frame_bolt == bolt)
    if len(own) == 0:
        raise PlateError(f"frame bolt {bolt + 1}", "its washer holds no plate")
    facet = model.facets[part.facet]
    area = mesh.area[own]
    movement, turning = _laws(
        facet.axes,
        facet.thickness,
        part.normal_stiffness / area.sum(),
        part.tangential_stiffness / area.sum(),
    )
    return _on_nodes(len(mesh.points), mesh.triangles[own], mass_like(area), movement, turning)


def weld(model: PlateModel, mesh: Mesh, index: int) -> Spring:
    """Give the springs of one weld to the frame, along the element edges on its line.

    Raises
    ------
    PlateError
        when no element edge lies on the line
    """
    part: LineWeld = model.welds[index]
    facet = model.facets[part.facet]
    edges = edges_on(mesh, part.facet, facet.to_space(np.array([part.start, part.end], float)))
    if len(edges) == 0:
        raise PlateError(f"weld {index + 1}", "its line holds no plate")
    length = np.linalg.norm(mesh.points[edges[:, 1]] - mesh.points[edges[:, 0]], axis=1)
    one, two = 0.5 * (1.0 - LINE_PLACES), 0.5 * (1.0 + LINE_PLACES)
    values = np.stack([one * (2 * one - 1), two * (2 * two - 1), 4 * one * two], axis=-1)
    share = np.einsum("g,gi,gj->ij", LINE_WEIGHTS, values, values) * length[:, None, None]
    movement = part.stiffness * np.eye(3)
    turning = np.zeros((3, 3))
    if part.double_sided:
        turning = _laws(facet.axes, facet.thickness, part.stiffness, part.stiffness)[1]
    return _on_nodes(len(mesh.points), edges, share, movement, turning)


def edges_on(mesh: Mesh, facet: int, ends: FloatArray) -> IntArray:
    """Give the edges (two ends, middle) of a facet's elements that lie on a line in space."""
    corners = mesh.triangles[mesh.facet == facet]
    edges = np.concatenate([corners[:, [0, 1, 3]], corners[:, [1, 2, 4]], corners[:, [2, 0, 5]]])
    length = float(np.linalg.norm(ends[1] - ends[0]))
    along = (ends[1] - ends[0]) / length
    offset = mesh.points - ends[0]
    place = offset @ along
    away = np.linalg.norm(offset - place[:, None] * along, axis=1)
    on = (away < 10 * TOUCH) & (place > -10 * TOUCH) & (place < length + 10 * TOUCH)
    edges = edges[on[edges].all(axis=1)]
    return np.asarray(edges[np.unique(edges[:, 2], return_index=True)[1]])


def spacer_stiffness(model: PlateModel, index: int, bodies: FloatArray) -> FloatArray:
    """Give the 12 x 12 stiffness of a spacer on its two end bodies, which lie on the mid-planes.

    A Timoshenko beam from face to face; its ends are carried rigidly to the mid-planes.
    """
    part = model.spacers[index]
    first, second = (model.facets[f] for f in part.facets)
    along = bodies[1] - bodies[0]
    distance = float(np.linalg.norm(along))
    axis = along / distance
    length = distance - 0.5 * (first.thickness + second.thickness)
    side = np.cross(axis, np.eye(3)[np.argmin(np.abs(axis))])
    side /= np.linalg.norm(side)
    turn = np.kron(np.eye(4), np.array([axis, side, np.cross(axis, side)]))
    beam = turn.T @ _beam(part, length) @ turn
    carry = np.zeros((12, 12))
    carry[:6, :6] = rigid_rows(0.5 * first.thickness * axis)
    carry[6:, 6:] = rigid_rows(-0.5 * second.thickness * axis)
    return np.asarray(carry.T @ beam @ carry)


def _beam(part: Spacer, length: float) -> FloatArray:
    """Give a round Timoshenko beam's stiffness in its own axes, the first along it.

    k_s = 6 (1 + nu) (1 + m**2)**2 / ((7 + 6 nu) (1 + m**2)**2 + (20 + 12 nu) m**2), m = d_i / d

    Source
    ------
    shear share of a hollow circle: Cowper, Journal of Applied Mechanics 33 (1966) (from memory)
    """
    nu, outer, inner = part.poissons_ratio, part.diameter, part.inner_diameter
    area = math.pi / 4.0 * (outer**2 - inner**2)
    second_moment = math.pi / 64.0 * (outer**4 - inner**4)
    modulus = part.elastic_modulus
    shear_modulus = modulus / (2.0 * (1.0 + nu))
    m2 = (inner / outer) ** 2
    grown = (1.0 + m2) ** 2
    share = 6.0 * (1.0 + nu) * grown / ((7.0 + 6.0 * nu) * grown + (20.0 + 12.0 * nu) * m2)
    soft = 12.0 * modulus * second_moment / (share * shear_modulus * area * length**2)
    k = np.zeros((12, 12))
    for i, value in (
        (0, modulus * area / length),
        (3, 2.0 * shear_modulus * second_moment / length),
    ):
        k[np.ix_([i, i + 6], [i, i + 6])] = value * np.array([[1.0, -1.0], [-1.0, 1.0]])
    bend = modulus * second_moment / (length**3 * (1.0 + soft))
    for move, turn, sign in ((1, 5, 1.0), (2, 4, -1.0)):
        part_one = sign * 6.0 * length
        same, far = (4.0 + soft) * length**2, (2.0 - soft) * length**2
        block = np.array(
            [
                [12.0, part_one, -12.0, part_one],
                [part_one, same, -part_one, far],
                [-12.0, -part_one, 12.0, -part_one],
                [part_one, far, -part_one, same],
            ]
        )
        index = [move, turn, move + 6, turn + 6]
        k[np.ix_(index, index)] = bend * block
    return k
