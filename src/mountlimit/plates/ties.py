"""Rigid ties: which unknowns are left once the motor, spacer ends and rigid washers are tied."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from scipy import sparse
from scipy.sparse.csgraph import connected_components

from .error import PlateError
from .mesh import Mesh
from .model import BoolArray, FloatArray, IntArray, PlateModel
from .shapes import spacer_centre


@dataclass(frozen=True, kw_only=True)
class Ties:
    """``expand`` gives all nodal unknowns from the kept ones.

    The last kept unknowns are the bodies': six each, the motor's first, then every spacer's two
    ends. ``face_nodes`` are all the motor holds; ``motor_nodes`` and ``rigid_nodes`` list, per bolt, the nodes its annulus holds.
    """

    expand: sparse.csr_array
    bodies: FloatArray
    motor: IntArray
    spacer_ends: IntArray
    face_nodes: IntArray
    motor_nodes: tuple[IntArray, ...]
    rigid_nodes: tuple[IntArray, ...]

    def rigid_elements(self, mesh: Mesh) -> BoolArray:
        """Tell which elements cannot be strained, all their nodes being held by one body."""
        fixed = np.concatenate([np.empty(0, np.int64), *self.rigid_nodes])
        return np.asarray(
            np.isin(mesh.triangles, self.face_nodes).all(axis=1)
            | np.isin(mesh.triangles, fixed).all(axis=1)
        )


def rigid_rows(offset: FloatArray) -> FloatArray:
    """Give a node's six unknowns from a rigid body's six, (..., 3) to (..., 6, 6)."""
    rows = np.zeros((*offset.shape[:-1], 6, 6))
    rows[..., range(6), range(6)] = 1.0
    x, y, z = np.moveaxis(offset, -1, 0)
    rows[..., 0, 4], rows[..., 0, 5] = z, -y
    rows[..., 1, 3], rows[..., 1, 5] = -z, x
    rows[..., 2, 3], rows[..., 2, 4] = y, -x
    return rows


def tie(model: PlateModel, mesh: Mesh) -> Ties:
    """Tie the motor, the spacer ends, rigid washers and welds between facets.

    Raises
    ------
    PlateError
        when a node would be tied to two things
    """
    motor_nodes = tuple(
        np.unique(mesh.triangles[mesh.motor_bolt == i]) for i in range(len(model.motor_bolts))
    )
    rigid_nodes = _rigid_nodes(model, mesh)
    ends = [
        (model.facets[f].to_space(spacer_centre(model, i, f)))
        for i, spacer in enumerate(model.spacers)
        for f in spacer.facets
    ]
    bodies = np.array([np.asarray(model.motor_centre, float), *ends])
    face = np.unique(mesh.triangles[mesh.motor_face >= 0])
    motor = np.unique(np.concatenate([face, *motor_nodes]))
    fixed = np.unique(np.concatenate([np.empty(0, np.int64), *rigid_nodes]))
    discs = [np.unique(mesh.triangles[mesh.spacer == k]) for k in range(len(ends))]
    _check_apart([motor, fixed, *discs])
    _check_joined(model, mesh, motor, discs)
    expand = _expand(mesh, bodies, motor, fixed, discs)
    if len(mesh.ties):
        expand = _weld_rows(model, mesh, np.r_[motor, fixed, *discs]) @ expand
        used = np.diff(expand.tocsc().indptr) > 0  # followers' own unknowns are gone
        expand = sparse.csr_array(expand[:, used])
    kept = expand.shape[1]
    first = kept - 6 * len(bodies)
    return Ties(
        expand=expand,
        bodies=bodies,
        motor=np.arange(first, first + 6),
        spacer_ends=np.arange(first + 6, kept).reshape(-1, 2, 6),
        face_nodes=motor,
        motor_nodes=motor_nodes,
        rigid_nodes=rigid_nodes,
    )


def _rigid_nodes(model: PlateModel, mesh: Mesh) -> tuple[IntArray, ...]:
    """Give the nodes under every frame bolt's washer that is held rigidly, none for the others."""
    return tuple(
        np.unique(mesh.triangles[mesh.frame_bolt == i])
        if math.isinf(bolt.normal_stiffness)
        else np.empty(0, np.int64)
        for i, bolt in enumerate(model.frame_bolts)
    )


def _check_apart(groups: list[IntArray]) -> None:
    nodes = np.concatenate(groups)
    if len(np.unique(nodes)) != len(nodes):
        raise PlateError("mount", "a washer, a spacer end and the motor's face touch each other")


def _check_joined(model: PlateModel, mesh: Mesh, motor: IntArray, discs: list[IntArray]) -> None:
    """Refuse a mount with a plate that no joint, spacer, weld, seam or motor bolt joins to the rest."""
    links = [np.r_[a, b] for a, b in zip(discs[::2], discs[1::2], strict=True)]
    links += [
        np.array([mesh.triangles[mesh.facet == f][0, 0] for f in seam.facets])
        for seam in model.seams
    ]
    chains = [mesh.triangles[:, [i, i + 1]] for i in range(5)]
    chains += [np.c_[np.full(len(group), group[0]), group] for group in (motor, *links)]
    pairs = np.concatenate([*chains, mesh.ties])
    count = len(mesh.points)
    graph = sparse.coo_array(
        (np.ones(len(pairs)), (pairs[:, 0], pairs[:, 1])), shape=(count, count)
    )
    groups, _ = connected_components(graph, directed=False)
    if groups != 1:
        raise PlateError("mount", "a plate is not joined to the rest")


def _expand(
    mesh: Mesh, bodies: FloatArray, motor: IntArray, fixed: IntArray, discs: list[IntArray]
) -> sparse.csr_array:
    """Give the matrix from kept to all unknowns: free ones one to one, tied ones from bodies."""
    count = len(mesh.points)
    free = np.ones((count, 6), bool)
    free[motor] = free[fixed] = False
    for disc in discs:
        free[disc, :3] = False
    own = np.flatnonzero(free.ravel())
    rows, columns, values = [own], [np.arange(len(own))], [np.ones(len(own))]
    for k, (nodes, used) in enumerate([(motor, 6), *((disc, 3) for disc in discs)]):
        block = rigid_rows(mesh.points[nodes] - bodies[k])[:, :used]
        row = 6 * nodes[:, None, None] + np.arange(used)[:, None]
        column = len(own) + 6 * k + np.arange(6)
        keep = block.ravel() != 0.0
        rows.append(np.broadcast_to(row, block.shape).ravel()[keep])
        columns.append(np.broadcast_to(column, block.shape).ravel()[keep])
        values.append(block.ravel()[keep])
    shape = (6 * count, len(own) + 6 * len(bodies))
    entries = (np.concatenate(values), (np.concatenate(rows), np.concatenate(columns)))
    return sparse.coo_array(entries, shape=shape).tocsr()


def _weld_rows(model: PlateModel, mesh: Mesh, taken: IntArray) -> sparse.csr_array:
    """Give the matrix in which a follower of a weld between facets goes with its leader."""
    follower, leader = mesh.ties.T
    if np.isin(follower, taken).any() or np.isin(leader, follower).any():
        raise PlateError("weld", "crosses a washer, the motor's face or another weld")
    single = {
        weld.facet for weld in model.welds if weld.other_facet is not None and not weld.double_sided
    }
    facets = np.full(len(mesh.points), -1)
    facets[mesh.triangles.ravel()] = np.repeat(mesh.facet, 6)
    used = np.where(np.isin(facets[follower], list(single)), 3, 6)
    whole = np.ones((len(mesh.points), 6), bool)
    rows, columns, values = [], [], []
    for f, lead, many in zip(follower, leader, used, strict=True):
        whole[f, :many] = False
        block = rigid_rows(mesh.points[f] - mesh.points[lead])[:many]
        rows.append(np.repeat(6 * f + np.arange(many), 6))
        columns.append(np.tile(6 * lead + np.arange(6), many))
        values.append(block.ravel())
    own = np.flatnonzero(whole.ravel())
    entries = (
        np.concatenate([np.ones(len(own)), *values]),
        (np.concatenate([own, *rows]), np.concatenate([own, *columns])),
    )
    return sparse.coo_array(entries, shape=(6 * len(mesh.points),) * 2).tocsr()
