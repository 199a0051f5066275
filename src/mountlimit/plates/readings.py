"""Everything read off a set of movement columns: forces at bolts and welds, lift, stress at samples."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy import sparse

from . import sampling
from .assemble import System
from .contact import ContactPoints
from .element import resultants
from .model import BoolArray, FloatArray, IntArray, PlateModel
from .sampling import Reader, Samples
from .ties import rigid_rows

COLUMNS = 16  # of movement turned into stress together: bounds the memory taken


@dataclass(frozen=True, kw_only=True)
class Supports:
    """Forces of the plates on bolts and welds, and of the motor on the plates, per column.

    Each is a wrench in space (force, then moment about the part's centre): (parts, 6, columns).
    ``seams`` holds three forces of every seam's fastener, (fasteners, 3, columns): its tension, and
    what the edge plate puts on it along the seam and along that plate's normal. ``struts`` holds
    their tension, (struts, columns).
    """

    frame_bolts: FloatArray
    welds: FloatArray
    motor_bolts: FloatArray
    seams: FloatArray
    struts: FloatArray


def supports(model: PlateModel, system: System, movement: FloatArray) -> Supports:
    """Read the wrenches at supports and motor bolts; ``movement`` has all nodal unknowns."""
    columns = movement.shape[1]
    mesh, ties = system.mesh, system.ties
    frame = np.zeros((len(model.frame_bolts), 6, columns))
    for i, bolt in enumerate(model.frame_bolts):
        centre = model.facets[bolt.facet].to_space(np.asarray(bolt.centre, float))
        spring = system.bolts[i]
        if spring is None:
            nodes = ties.rigid_nodes[i]
            frame[i] = -_wrench(system.plate, nodes, mesh.points, centre, movement)
        else:
            nodes = np.unique(mesh.triangles[mesh.frame_bolt == i])
            frame[i] = _wrench(spring.whole, nodes, mesh.points, centre, movement)
    welds = np.zeros((len(model.welds), 6, columns))
    for i, weld in enumerate(model.welds):
        spring = system.welds[i]
        if spring is not None:
            ends = np.array([weld.start, weld.end], float)
            centre = model.facets[weld.facet].to_space(ends.mean(axis=0))
            nodes = np.unique(spring.plain.tocoo().coords[0] // 6)
            welds[i] = _wrench(spring.whole, nodes, mesh.points, centre, movement)
    motor = np.zeros((len(model.motor_bolts), 6, columns))
    for i, motor_bolt in enumerate(model.motor_bolts):
        facet = model.facets[motor_bolt.facet]
        centre = facet.to_space(np.asarray(motor_bolt.centre, float))
        motor[i] = _wrench(system.plate, ties.motor_nodes[i], mesh.points, centre, movement)
    return Supports(
        frame_bolts=frame,
        welds=welds,
        motor_bolts=motor,
        seams=system.fasteners.forces(movement).reshape(-1, 3, columns),
        struts=system.struts.forces(movement),
    )


def _wrench(
    matrix: sparse.csr_array,
    nodes: IntArray,
    points: FloatArray,
    centre: FloatArray,
    movement: FloatArray,
) -> FloatArray:
    """Give the wrench about a centre of the nodal forces ``matrix @ movement`` at some nodes."""
    unknowns = (6 * nodes[:, None] + np.arange(6)).ravel()
    forces = (matrix[unknowns] @ movement).reshape(len(nodes), 6, -1)
    return np.asarray(np.einsum("nij,nic->jc", rigid_rows(points[nodes] - centre), forces))


def lift(contact: ContactPoints, movement: FloatArray) -> FloatArray:
    """Give the movement away from what is touched at the contact points, per column."""
    return np.asarray(contact.rows @ movement)


def mean_stress(system: System, reader: Reader, movement: FloatArray) -> FloatArray:
    """Give nodal means of stress per zone, (means, 6, columns): membrane, then bending part."""
    unknowns = (6 * system.mesh.triangles[:, :, None] + np.arange(6)).reshape(-1, 36)
    means = np.empty((reader.mean.shape[0], 6, movement.shape[1]))
    for low in range(0, movement.shape[1], COLUMNS):
        part = slice(low, low + COLUMNS)
        corners = resultants(system.elements, movement[:, part][unknowns])
        flat = reader.mean @ corners.reshape(3 * len(corners), -1)
        means[:, :, part] = np.asarray(flat).reshape(len(means), 6, -1)
    return means


def sample_sets(model: PlateModel, reader: Reader) -> dict[str, Samples]:
    """Choose the places where stress is read."""
    frame, motor = model.frame_bolts, model.motor_bolts
    return {
        "frame_ring": sampling.rings(reader, frame, 1.0),
        "motor_ring": sampling.rings(reader, motor, 1.0),
        "frame_near_ring": sampling.rings(reader, frame, 0.5),
        "motor_near_ring": sampling.rings(reader, motor, 0.5),
        "line": sampling.lines(reader),
        "free_edge": sampling.free_edges(reader),
    }


def read_stress(samples: Samples, means: FloatArray) -> FloatArray:
    """Give stress at samples, (places, 6, columns), from the nodal means."""
    flat = samples.reading @ means.reshape(len(means), -1)
    return np.asarray(flat).reshape(-1, *means.shape[1:])


def ring_disturbed(model: PlateModel, system: System) -> tuple[BoolArray, BoolArray]:
    """Tell which frame-bolt and motor-bolt rings meet a corner strip or a spacer."""
    return (
        sampling.disturbed(model, system.mesh, model.frame_bolts),
        sampling.disturbed(model, system.mesh, model.motor_bolts),
    )
