"""Solve a plate model once for six unit loads on the motor, then answer any load on it.

Contact is settled anew for every load; everything else is superposed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import ArrayLike
from scipy import sparse
from scipy.sparse.linalg import splu

from ..errors import BalanceError
from . import contact, mesh, readings, validity
from .assemble import System, assemble
from .contact import ContactPoints, ContactSolver
from .error import PlateError
from .model import BoolArray, FloatArray, IntArray, PlateModel
from .readings import Supports
from .sampling import Reader, Samples
from .scales import Scales
from .stress import StressSamples
from .struts import direction
from .ties import rigid_rows
from .washer_give import under_washers

LARGEST_IMBALANCE = 1e-6  # of the load; more is refused
NOT_HELD = 1e-4  # what a unit load may leave unbalanced before the mount counts as loose
COLUMNS = 4  # solved at a time: more make a threaded BLAS stall on a busy machine


@dataclass(frozen=True, kw_only=True)
class PlateResponse:
    """What the mount does under one load.

    ``displacement`` and ``rotation`` are those of the motor's rigid body at the asked point.
    ``bolt_tension`` is how hard each frame bolt pulls its washers towards the frame (below nothing:
    it pushes), prying included; ``bolt_shear`` is the plate's push on it along ``e1`` and ``e2``.
    ``motor_bolt_force`` and ``motor_bolt_moment`` are what the motor puts on the plate at each of
    its bolts, along ``e1``, ``e2`` and the normal. ``weld_force`` and ``weld_moment`` are what the
    plate puts on each weld to the frame, in space, about the weld's middle. ``seam_tension`` and
    ``seam_shear`` are the forces of every fastener of the seams in order, the shear being what the
    edge plate puts on it along the seam and along that plate's normal; ``strut_tension`` pulls the
    mount towards the frame. Contact forces are the frame's, then those in the seams' butts;
    ``contact_seam`` is the seam's number, -1 for the frame. Rings are one
    thickness outside the washers, near rings half a thickness; a ``disturbed`` ring meets a corner
    or a spacer and is not to be trusted.
    """

    displacement: FloatArray
    rotation: FloatArray
    bolt_tension: FloatArray
    bolt_shear: FloatArray
    motor_bolt_force: FloatArray
    motor_bolt_moment: FloatArray
    weld_force: FloatArray
    weld_moment: FloatArray
    contact_force: FloatArray
    contact_place: FloatArray
    contact_seam: IntArray
    seam_tension: FloatArray
    seam_shear: FloatArray
    strut_tension: FloatArray
    frame_ring: StressSamples
    motor_ring: StressSamples
    frame_near_ring: StressSamples
    motor_near_ring: StressSamples
    line: StressSamples
    free_edge: StressSamples
    frame_ring_disturbed: BoolArray
    motor_ring_disturbed: BoolArray
    balance_residual: float
    shares: FloatArray


@dataclass(frozen=True, kw_only=True)
class PlateSolution:
    """Answers of a model to six unit loads at the motor centre and to unit contact forces."""

    model: PlateModel
    system: System
    contact_points: ContactPoints
    movement: FloatArray
    motor: FloatArray
    lift: FloatArray
    supports: Supports
    samples: dict[str, Samples]
    stress: dict[str, FloatArray]
    disturbed: tuple[BoolArray, BoolArray]
    contact_solver: ContactSolver | None

    def response(
        self,
        wrench: ArrayLike,
        point: ArrayLike,
        extra: Sequence[tuple[ArrayLike, ArrayLike]] = (),
    ) -> PlateResponse:
        """Give the response to a wrench (force, moment) on the motor at a point in space.

        Parameters
        ----------
        wrench : [N, N*m]
            force and moment about ``point``, shape (6,)
        point : [m]
            where it acts, and where movement is reported
        extra : pairs of wrench and point
            further loads on the motor at the same time, as its weight

        Raises
        ------
        BalanceError
            when loads and reactions do not close
        """
        loads = [(wrench, point), *extra]
        centre = np.asarray(self.model.motor_centre, float)
        load = sum((moved(w, p, centre) for w, p in loads), np.zeros(6))
        shares = self._shares(load)
        motor = rigid_rows(np.asarray(point, float) - centre) @ (self.motor @ shares)
        stress: dict[str, Any] = {name: self._stress(name, shares) for name in self.samples}
        return PlateResponse(
            displacement=motor[:3],
            rotation=motor[3:],
            **self._forces(shares),
            contact_force=self.contact_points.forces(self.lift, shares),
            contact_place=self.contact_points.place,
            contact_seam=self.contact_points.seam,
            **stress,
            frame_ring_disturbed=self.disturbed[0],
            motor_ring_disturbed=self.disturbed[1],
            balance_residual=self._balance(load, shares),
            shares=shares,
        )

    def nodal_movement(self, response: PlateResponse) -> FloatArray:
        """Give movement and rotation of every node of the mesh, shape (n, 6)."""
        return np.asarray(self.movement @ response.shares).reshape(-1, 6)

    def _shares(self, load: FloatArray) -> FloatArray:
        if self.contact_solver is None:
            return load
        return np.asarray(np.r_[load, self.contact_solver.forces(self.lift[:, :6] @ load)])

    def _forces(self, shares: FloatArray) -> dict[str, Any]:
        """Give what holds the mount and joins its parts."""
        tension, shear = bolt_forces(self.model, self.supports.frame_bolts @ shares)
        force, moment = _in_facets(self.model, self.supports.motor_bolts @ shares)
        welds = self.supports.welds @ shares
        seams = self.supports.seams @ shares
        return {
            "bolt_tension": tension,
            "bolt_shear": shear,
            "motor_bolt_force": force,
            "motor_bolt_moment": moment,
            "weld_force": welds[:, :3],
            "weld_moment": welds[:, 3:],
            "seam_tension": seams[:, 0],
            "seam_shear": seams[:, 1:],
            "strut_tension": self.supports.struts @ shares,
        }

    def _stress(self, name: str, shares: FloatArray) -> StressSamples:
        found = self.stress[name] @ shares
        samples = self.samples[name]
        return StressSamples(
            place=samples.place,
            owner=samples.owner,
            membrane=found[:, :3],
            bending=found[:, 3:],
            count=samples.count,
        )

    def _balance(self, load: FloatArray, shares: FloatArray) -> float:
        """Give what is left of loads and reactions about the motor centre, over the load."""
        centre = np.asarray(self.model.motor_centre, float)
        total = load.copy()
        scale = np.abs(load)
        reach = float(np.max(np.ptp(self.system.mesh.points, axis=0)))
        for place, reaction in _reactions(self.model, self.supports, shares):
            total -= moved(reaction, place, centre)
        for place, push, force in zip(
            self.contact_points.place,
            self.contact_points.push,
            shares[6:],
            strict=True,
        ):
            total += moved(np.r_[force * push, 0.0, 0.0, 0.0], place, centre)
        size = max(float(np.max(scale[:3])), float(np.max(scale[3:])) / reach)
        if size == 0.0:
            return 0.0
        left = max(float(np.max(np.abs(total[:3]))), float(np.max(np.abs(total[3:]))) / reach)
        if not left / size < LARGEST_IMBALANCE:
            raise BalanceError(f"plate model out of balance by {left / size:.1e} of its load")
        return left / size


def moved(wrench: ArrayLike, place: ArrayLike, centre: ArrayLike) -> FloatArray:
    """Give a wrench about another point: M_c = M + (p - c) x F."""
    load = np.asarray(wrench, float)
    arm = np.asarray(place, float) - np.asarray(centre, float)
    return np.asarray(np.r_[load[:3], load[3:] + np.cross(arm, load[:3])])


def bolt_forces(model: PlateModel, wrenches: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Give tension and shear (n, 2) of the frame bolts from the plates' wrenches on them."""
    more = wrenches.shape[2:]
    tension = np.zeros((len(model.frame_bolts), *more))
    shear = np.zeros((len(model.frame_bolts), 2, *more))
    for i, bolt in enumerate(model.frame_bolts):
        local = model.facets[bolt.facet].axes @ wrenches[i, :3]
        tension[i], shear[i] = -bolt.frame_side * local[2], local[:2]
    return tension, shear


def _in_facets(model: PlateModel, wrenches: FloatArray) -> tuple[FloatArray, FloatArray]:
    axes = np.array([model.facets[bolt.facet].axes for bolt in model.motor_bolts])
    turned = np.einsum("bij,bkj->bki", axes, wrenches.reshape(-1, 2, 3))
    return turned[:, 0], turned[:, 1]


def _reactions(
    model: PlateModel, supports: Supports, shares: FloatArray
) -> list[tuple[FloatArray, FloatArray]]:
    """Give place and wrench of what the mount puts on bolts, welds and struts."""
    found = []
    for bolt, part in zip(model.frame_bolts, supports.frame_bolts, strict=True):
        facet = model.facets[bolt.facet]
        found.append((facet.to_space(np.asarray(bolt.centre, float)), part @ shares))
    for weld, part in zip(model.welds, supports.welds, strict=True):
        middle = np.array([weld.start, weld.end], float).mean(axis=0)
        found.append((model.facets[weld.facet].to_space(middle), part @ shares))
    for strut, part in zip(model.struts, supports.struts, strict=True):
        pull = -direction(strut) * float(part @ shares)
        found.append((np.asarray(strut.start, float), np.r_[pull, 0.0, 0.0, 0.0]))
    return found


def solve(model: PlateModel, mesh_size: float | None = None) -> PlateSolution:
    """Mesh and solve a model for six unit loads on the motor and unit contact forces.

    Raises
    ------
    PlateError
        when the model cannot be meshed, or part of it is not held
    """
    validity.check(model)
    system = assemble(model, mesh.build(model, mesh_size))
    points = contact.points(model, system.mesh)
    columns = solve_columns(system.stiffness, loads(system, points))
    movement = np.asarray(system.ties.expand @ columns)
    reader = Reader(model, system.mesh)
    samples = readings.sample_sets(model, reader)
    means = readings.mean_stress(system, reader, movement)
    lifted = readings.lift(points, movement)
    supports = readings.support_terms(model, system, movement).at(Scales())
    solver = ContactSolver.of(lifted[:, 6:], points.stiffness) if len(points.place) else None
    return PlateSolution(
        model=model,
        system=system,
        contact_points=points,
        movement=movement,
        motor=columns[system.ties.motor] + under_washers(model, supports.motor_bolts),
        lift=lifted,
        supports=supports,
        samples=samples,
        stress={name: readings.read_stress(part, means) for name, part in samples.items()},
        disturbed=readings.ring_disturbed(model, system),
        contact_solver=solver,
    )


def loads(system: System, points: ContactPoints) -> FloatArray:
    """Give the load columns in the kept unknowns: six on the motor, then the unit contact forces."""
    count = system.ties.expand.shape[1]
    motor = np.zeros((count, 6))
    motor[system.ties.motor, range(6)] = 1.0
    pushes = system.ties.expand.T @ points.rows.T
    return np.hstack([motor, np.asarray(pushes.toarray())])


def solve_columns(stiffness: sparse.csc_array, load: FloatArray, refine: bool = True) -> FloatArray:
    """Give the movement columns of load columns; ``refine`` betters the first six by one step.

    Raises
    ------
    PlateError
        when part of the mount is not held, or it is so soft that rounding spoils the answer
    """
    try:
        factor = splu(
            sparse.csc_matrix(stiffness),
            permc_spec="MMD_AT_PLUS_A",
            diag_pivot_thresh=0.0,
            options={"SymmetricMode": True},
        )
    except RuntimeError as fault:
        raise PlateError("mount", "part of it is not held") from fault
    blocks = range(0, load.shape[1], COLUMNS)
    found = np.empty_like(load)
    for i in blocks:
        found[:, i : i + COLUMNS] = factor.solve(load[:, i : i + COLUMNS])
    if refine:
        found[:, :6] += factor.solve(load[:, :6] - stiffness @ found[:, :6])
    left = np.max(np.abs(load[:, :6] - stiffness @ found[:, :6]))
    flexibility = np.einsum("ij,ij->j", load[:, :6], found[:, :6])
    if not left < NOT_HELD or np.min(flexibility) <= 0.0:
        raise PlateError("mount", "part of it is not held")
    if refine and left > LARGEST_IMBALANCE:
        raise PlateError(
            "mount",
            f"is too soft for its size to be solved: {left:.0e} of a load is lost in rounding; "
            "make the plate thicker or smaller",
        )
    return np.asarray(found)
