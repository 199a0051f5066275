"""One layout of a mount at any thickness, modulus and joint stiffness: meshed once, reduced once.

The places of mid-planes, the width of stiff corner strips and the gap a spacer bridges are held at
those of the model as laid out; thickness itself, ring distance and the washers' offset to the faces
follow the scales.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from . import contact, mesh, readings, sampling, validity
from .answer import Answer, Reading, solver_of
from .assemble import assemble
from .contact import ContactPoints
from .error import PlateError
from .mesh import Mesh
from .model import FloatArray, PlateModel
from .reduced import Reduced, reduce
from .sampling import Reader, Samples
from .scales import Scales, Varying, stretch
from .solution import loads
from .washer_give import under_washers


@dataclass(frozen=True, kw_only=True)
class Family:
    """The reduced mount and what reads forces and stress off it."""

    model: PlateModel
    mesh: Mesh
    varying: Varying
    points: ContactPoints
    reduced: Reduced
    supports: readings.SupportTerms
    lift: FloatArray
    reader: Reader
    means: FloatArray
    near: FloatArray  # ring distance of every bolt over the thickness
    lines: Samples
    edges: Samples
    rings: dict[float, Samples] = field(default_factory=dict)

    def at(
        self, scales: Scales, pressing: float = 1.0, bearing: tuple[float, ...] | None = None
    ) -> Answer:
        """Give the answers at the scales; ``pressing`` multiplies the stiffness of the contact.

        ``bearing`` gives for each contact of the model the share of it that bears (default: all of it).
        """
        answers = self.reduced.coordinates(scales)
        supports = self._closed(self.supports.at(scales), answers)
        flexibility = self.reduced.load.T @ answers
        lift = self.lift @ answers
        own = self.points.stiffness
        stiffness = np.where(own > 0.0, pressing * own, own)  # butts stand in the stiffness already
        if bearing is not None:
            shares = np.append(bearing, 1.0)  # the last is for butts, whose number is -1
            stiffness = stiffness * shares[self.points.contact]
        return Answer(
            motor=flexibility[:6]
            + under_washers(self.model, supports.motor_bolts, self.varying, scales),
            lift=lift,
            stiffness=stiffness,
            supports=supports,
            read=lambda kind: self._reading(kind, scales, answers),
            solver=solver_of(lift, stiffness),
        )

    def _closed(self, per_shape: readings.Supports, answers: FloatArray) -> readings.Supports:
        """Give the supports' forces, with the rounding that loads and reactions differ by put right.

        It is put right as a rigid movement of the mount on its supports would.
        """
        place = np.asarray(self.model.motor_centre, float)
        everything = readings.Chosen.all(self.model)
        found = per_shape.combined(answers)
        rigid = per_shape.combined(np.asarray(np.eye(len(answers), 6), float))
        loads = np.hstack([np.eye(6), readings.push_wrenches(self.points, place)])
        left = loads - readings.wrench_on(self.model, found, everything, place)
        moved = np.linalg.solve(readings.wrench_on(self.model, rigid, everything, place), left)
        return found.plus(rigid.combined(np.asarray(moved, float)))

    def lay_rings(self, thicknesses: Sequence[float]) -> None:
        """Find the rings of all bolts at some thickness scales, quicker together than one by one."""
        scales = np.array([stretch(self.varying.thickness, t) for t in thicknesses])
        bolts = self.model.bolts
        found = sampling.rings_of_scales(self.reader, bolts, self.near, scales)
        number = found.owner // len(bolts)
        for i, thickness in enumerate(thicknesses):
            own = np.flatnonzero(number == i)
            self.rings[thickness] = Samples(
                place=found.place[own],
                owner=found.owner[own] - i * len(bolts),
                facet=found.facet[own],
                reading=found.reading[own],
                count=len(bolts),
            )

    def _rings(self, thickness: float) -> Samples:
        """Give the rings of all bolts at a thickness scale; the owner is the bolt."""
        if thickness not in self.rings:
            self.lay_rings([thickness])
        return self.rings[thickness]

    def _reading(self, kind: str, scales: Scales, answers: FloatArray) -> Reading:
        if kind == "ring":
            samples = self._rings(scales.thickness)
        else:
            samples = {"line": self.lines, "edge": self.edges}[kind]
        own = readings.read_stress(samples, self.means) @ answers
        varying = self.varying
        moduli = stretch(varying.modulus, scales.modulus) * stretch(varying.second, scales.second)
        own *= moduli[samples.facet][:, None, None]
        own[:, 3:] *= stretch(varying.thickness, scales.thickness)[samples.facet][:, None, None]
        return Reading(samples=samples, rows=own)


def family(
    model: PlateModel,
    varying: Varying,
    snapshots: Sequence[Scales],
    mesh_size: float | None = None,
    contact_snapshots: int = 4,
) -> Family:
    """Mesh, solve at the snapshots and reduce.

    Parameters
    ----------
    varying : marks
        facets that follow the thickness and the modulus scale
    snapshots : scales
        where the model is solved in full; between them the answers are put together
    mesh_size : h [m]
        element size
    contact_snapshots : n
        at how many of the snapshots the unit contact forces are solved as well

    Raises
    ------
    PlateError
        when the model cannot be meshed, part of it is not held, or it is too thick to read stress
    """
    validity.check(model)
    system = assemble(model, mesh.build(model, mesh_size), varying)
    points = contact.points(model, system.mesh)
    picked = set(
        np.linspace(0, len(snapshots) - 1, min(contact_snapshots, len(snapshots)))
        .round()
        .astype(int)
    )
    chosen = [i in picked for i in range(len(snapshots))]
    basis, movement = reduce(system, loads(system, points), snapshots, chosen)
    reader = Reader(model, system.mesh)
    near = np.where(np.concatenate(readings.ring_disturbed(model, system)), 0.5, 1.0)
    edges, lines = sampling.free_edges(reader), sampling.lines(reader)
    rings, used = {}, None
    if not np.any(varying.thickness):
        rings[1.0] = sampling.rings_of_scales(
            reader, model.bolts, near, np.ones((1, len(model.facets)))
        )
        read = (rings[1.0], edges, lines)
        used = np.any([np.asarray(s.reading.sum(axis=0)).ravel() != 0 for s in read], axis=0)
        if not np.any(used):
            raise PlateError(
                "mount", "is too thick for a plate: nothing of it lies a thickness away from its washers"
            )  # fmt: skip
    return Family(
        model=model,
        mesh=system.mesh,
        varying=varying,
        points=points,
        reduced=basis,
        supports=readings.support_terms(model, system, movement),
        lift=readings.lift(points, movement),
        reader=reader,
        means=readings.mean_stress(system, reader, movement, used),
        near=near,
        lines=lines,
        edges=edges,
        rings=rings,
    )
