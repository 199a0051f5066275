"""Everything read off a set of movement columns: forces at bolts and welds, lift, stress at samples."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields

import numpy as np
from scipy import sparse

from . import sampling
from .assemble import System
from .contact import ContactPoints
from .element import resultants
from .model import BoolArray, FloatArray, IntArray, Pair, PlateModel
from .sampling import Reader, Samples
from .scales import Growth, Scales, Term
from .shapes import spacer_centre
from .springs import spacer_stiffness
from .struts import direction
from .ties import rigid_rows

COLUMNS = 16  # of movement turned into stress together: bounds the memory taken


@dataclass(frozen=True, kw_only=True)
class Supports:
    """Forces of the plates on bolts and welds, and of the motor on the plates, per column.

    Each is a wrench in space (force, then moment about the part's centre): (parts, 6, columns).
    ``seams`` holds three forces of every seam's fastener, (fasteners, 3, columns): its tension, and
    what the edge plate puts on it along the seam and along that plate's normal. ``struts`` holds
    their tension, (struts, columns). ``spacers`` holds what the two plates put on a spacer's ends,
    about the mid-planes, (spacers, 2, 6, columns).
    """

    frame_bolts: FloatArray
    welds: FloatArray
    motor_bolts: FloatArray
    seams: FloatArray
    struts: FloatArray
    spacers: FloatArray

    def combined(self, columns: FloatArray) -> Supports:
        """Give the wrenches for combinations of the columns, (columns, combinations)."""
        return Supports(**{f.name: getattr(self, f.name) @ columns for f in fields(Supports)})

    def plus(self, other: Supports) -> Supports:
        """Give the wrenches of both together."""
        return Supports(
            **{f.name: getattr(self, f.name) + getattr(other, f.name) for f in fields(Supports)}
        )


@dataclass(frozen=True, kw_only=True)
class Chosen:
    """Supports by number: frame bolts, welds to the frame, struts; and spacers with the end."""

    bolts: Sequence[int]
    welds: Sequence[int]
    struts: Sequence[int]
    spacers: Sequence[tuple[int, int]] = ()

    @classmethod
    def all(cls, model: PlateModel) -> Chosen:
        """Choose every support; spacers are inside the mount."""
        return cls(
            bolts=range(len(model.frame_bolts)),
            welds=range(len(model.welds)),
            struts=range(len(model.struts)),
        )


def wrench_on(
    model: PlateModel, supports: Supports, chosen: Chosen, place: FloatArray
) -> FloatArray:
    """Give what the mount puts on some supports, about a place: (6, columns)."""
    total = np.zeros((6, supports.frame_bolts.shape[2]))
    for i in chosen.bolts:
        bolt = model.frame_bolts[i]
        centre = model.facets[bolt.facet].to_space(np.asarray(bolt.centre, float))
        total += _carried(supports.frame_bolts[i], centre - place)
    for i in chosen.welds:
        weld = model.welds[i]
        middle = np.array([weld.start, weld.end], float).mean(axis=0)
        centre = model.facets[weld.facet].to_space(middle)
        total += _carried(supports.welds[i], centre - place)
    for i in chosen.struts:
        strut = model.struts[i]
        pull = np.outer(-direction(strut), supports.struts[i])
        start = np.asarray(strut.start, float)
        total += _carried(np.vstack([pull, 0.0 * pull]), start - place)
    for i, end in chosen.spacers:
        facet = model.spacers[i].facets[end]
        centre = model.facets[facet].to_space(spacer_centre(model, i, facet))
        total += _carried(supports.spacers[i, end], centre - place)
    return total


def _carried(wrench: FloatArray, arm: FloatArray) -> FloatArray:
    """Carry wrenches (6, columns) by an arm: M = M + arm x F."""
    return np.vstack([wrench[:3], wrench[3:] + np.cross(arm, wrench[:3], axis=0)])


def push_wrenches(points: ContactPoints, place: FloatArray) -> FloatArray:
    """Give the frame's unit pushes on the mount as wrenches about a place: (6, points)."""
    return np.vstack([points.push.T, np.cross(points.place - place, points.push).T])


@dataclass(frozen=True, kw_only=True)
class SupportTerms:
    """The wrenches at supports and motor bolts per movement column, part by part as they grow."""

    terms: dict[tuple[int, Growth], Supports]
    empty: Supports

    def at(self, scales: Scales) -> Supports:
        """Give the wrenches at the scales."""
        total = Supports(**{f.name: getattr(self.empty, f.name).copy() for f in fields(Supports)})
        for (power, grows), part in self.terms.items():
            factor = scales.factor(power, grows)
            for f in fields(Supports):
                getattr(total, f.name)[:] += factor * getattr(part, f.name)
        return total


def support_terms(model: PlateModel, system: System, movement: FloatArray) -> SupportTerms:
    """Read the wrenches off movement columns; ``movement`` has all nodal unknowns."""
    reading = _SupportReading(model, system, movement)
    for i in range(len(model.frame_bolts)):
        reading.frame_bolt(i)
    for i in range(len(model.welds)):
        reading.weld(i)
    for i, bolt in enumerate(model.motor_bolts):
        for term in system.plates:
            nodes = system.ties.motor_nodes[i]
            reading.add("motor_bolts", i, term, nodes, reading.centre(bolt.facet, bolt.centre))
    reading.part(0, "seam").seams[:] = system.fasteners.forces(movement).reshape(
        -1, 3, movement.shape[1]
    )
    reading.part(0, "strut").struts[:] = system.struts.forces(movement)
    for i in range(len(model.spacers)):
        reading.part(0, "nothing").spacers[i] = reading.spacer(i)
    return SupportTerms(terms=reading.terms, empty=reading.empty())


class _SupportReading:
    """Gathers the wrenches while they are read."""

    def __init__(self, model: PlateModel, system: System, movement: FloatArray) -> None:
        self.model, self.system, self.movement = model, system, movement
        self.terms: dict[tuple[int, Growth], Supports] = {}

    def empty(self) -> Supports:
        model, columns = self.model, self.movement.shape[1]
        return Supports(
            frame_bolts=np.zeros((len(model.frame_bolts), 6, columns)),
            welds=np.zeros((len(model.welds), 6, columns)),
            motor_bolts=np.zeros((len(model.motor_bolts), 6, columns)),
            seams=np.zeros((len(self.system.fasteners.stiffness) // 3, 3, columns)),
            struts=np.zeros((len(model.struts), columns)),
            spacers=np.zeros((len(model.spacers), 2, 6, columns)),
        )

    def part(self, power: int, grows: Growth) -> Supports:
        return self.terms.setdefault((power, grows), self.empty())

    def centre(self, facet: int, place: Pair) -> FloatArray:
        return self.model.facets[facet].to_space(np.asarray(place, float))

    def add(
        self, name: str, i: int, term: Term, nodes: IntArray, centre: FloatArray, sign: float = 1.0
    ) -> None:
        part = self.part(term.power, term.grows)
        points = self.system.mesh.points
        getattr(part, name)[i] += sign * _wrench(term.matrix, nodes, points, centre, self.movement)

    def frame_bolt(self, i: int) -> None:
        system, bolt = self.system, self.model.frame_bolts[i]
        centre, spring = self.centre(bolt.facet, bolt.centre), system.bolts[i]
        if spring is None:
            for term in system.plates:
                self.add("frame_bolts", i, term, system.ties.rigid_nodes[i], centre, -1.0)
            return
        nodes = np.unique(system.mesh.triangles[system.mesh.frame_bolt == i])
        for term in system.spring_terms(spring, bolt.facet, "joint"):
            self.add("frame_bolts", i, term, nodes, centre)

    def weld(self, i: int) -> None:
        weld, spring = self.model.welds[i], self.system.welds[i]
        if spring is None:
            return
        middle = np.array([weld.start, weld.end], float).mean(axis=0)
        centre = self.centre(weld.facet, middle)
        nodes = np.unique(spring.plain.tocoo().coords[0] // 6).astype(np.int64)
        for term in self.system.spring_terms(spring, weld.facet, "nothing"):
            self.add("welds", i, term, nodes, centre)

    def spacer(self, i: int) -> FloatArray:
        """Give what the plates put on a spacer's ends: its stiffness times the ends' movement."""
        mesh, bodies = self.system.mesh, self.system.ties.bodies[1 + 2 * i : 3 + 2 * i]
        moved = []
        for k, body in enumerate(bodies):
            nodes = np.unique(mesh.triangles[mesh.spacer == 2 * i + k])
            rows = rigid_rows(mesh.points[nodes] - body)[:, :3].reshape(-1, 6)
            own = self.movement[(6 * nodes[:, None] + np.arange(3)).ravel()]
            moved.append(np.linalg.lstsq(rows, own, rcond=None)[0])
        forces = spacer_stiffness(self.model, i, bodies) @ np.concatenate(moved)
        return np.asarray(forces).reshape(2, 6, -1)


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


def mean_stress(
    system: System, reader: Reader, movement: FloatArray, used: BoolArray | None = None
) -> FloatArray:
    """Give nodal means of stress per zone, (means, 6, columns): membrane, then bending part.

    ``used`` marks the means that are wanted; the others stay nothing.
    """
    triangles, elements, mean = system.mesh.triangles, system.elements, reader.mean
    if used is not None:
        wanted = np.flatnonzero(used[reader.group].any(axis=1))
        triangles, elements = triangles[wanted], elements.part(wanted)
        mean = mean[:, (3 * wanted[:, None] + np.arange(3)).ravel()]
    unknowns = (6 * triangles[:, :, None] + np.arange(6)).reshape(-1, 36)
    means = np.empty((reader.mean.shape[0], 6, movement.shape[1]))
    for low in range(0, movement.shape[1], COLUMNS):
        part = slice(low, low + COLUMNS)
        corners = resultants(elements, movement[:, part][unknowns])
        means[:, :, part] = np.asarray(mean @ corners.reshape(3 * len(corners), -1)).reshape(
            len(means), 6, -1
        )
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
