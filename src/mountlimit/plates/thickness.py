"""Thickness sweeps: one mesh, stiffness as a cubic in thickness, a reduced basis from a few solves.

The places of mid-planes, the width of stiff corner strips and the gap a spacer bridges are held at
those of the middle thickness (geometric mean of the range); thickness itself, ring distance and
the washers' offset to the faces follow.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike
from scipy import sparse

from . import contact, mesh, readings, sampling, validity
from .assemble import System, assemble
from .contact import ContactPoints, ContactSolver
from .error import PlateError
from .model import BoolArray, FloatArray, PlateModel
from .sampling import Reader
from .solution import bolt_forces, loads, moved, solve_columns
from .stress import equivalent
from .ties import rigid_rows

SNAPSHOTS = 6
CONTACT_SNAPSHOTS = 4  # of the unit contact forces, which matter less
CONTACT_POINTS = 40
DROPPED = 1e-13  # shapes with less than this share of the largest square are left out

Load = Sequence[tuple[ArrayLike, ArrayLike]]


@dataclass(frozen=True, kw_only=True)
class SweepResponse:
    """Responses over thickness and load: the first axis is the thickness, the second the load.

    Movement is that of the motor's rigid body at the first point of each load. Rings hold the
    larger equivalent stress of the two faces, per bolt.
    """

    thickness: FloatArray
    displacement: FloatArray
    rotation: FloatArray
    bolt_tension: FloatArray
    bolt_shear: FloatArray
    frame_ring: FloatArray
    motor_ring: FloatArray
    contact_force: FloatArray


@dataclass(frozen=True, kw_only=True)
class Basis:
    """The reduced problem: parts of stiffness, load columns, and the shapes in all unknowns."""

    parts: FloatArray
    load: FloatArray
    movement: FloatArray

    def coordinates(self, scale: float) -> FloatArray:
        """Give the reduced answers to all load columns at one thickness scale."""
        powers = scale ** np.arange(4)
        stiffness = np.tensordot(powers, self.parts, axes=1)
        return np.asarray(np.linalg.solve(stiffness, self.load))


def sweep(
    model: PlateModel,
    thicknesses: ArrayLike,
    loads_on_motor: Sequence[Load],
    facets: Sequence[int] | None = None,
    mesh_size: float | None = None,
    strength_ratio: float = 1.0,
) -> SweepResponse:
    """Give responses for many thicknesses.

    Parameters
    ----------
    thicknesses : t [m]
        of the first facet that varies; all facets that vary keep their ratio to it
    loads_on_motor : loads
        each a sequence of (wrench, point) that act together
    facets : numbers
        of the facets whose thickness varies, all without it
    mesh_size : h [m]
        element size
    strength_ratio : S [-]
        compressive over tensile yield strength, for the rings

    Raises
    ------
    PlateError
        when a thickness is not above nothing, or the model cannot be meshed
    """
    wanted = np.atleast_1d(np.asarray(thicknesses, float))
    if not np.all(wanted > 0.0):
        raise PlateError("thickness", "every one must be above nothing")
    chosen = tuple(range(len(model.facets))) if facets is None else tuple(facets)
    middle = float(np.sqrt(wanted.min() * wanted.max()))
    middling = at_thickness(model, middle, chosen)
    varying = np.isin(np.arange(len(model.facets)), chosen)
    scales = wanted / middle
    validity.check(middling)
    system = assemble(middling, mesh.build(middling, mesh_size), varying)
    points = contact.points(middling, system.mesh, system.ties.held, CONTACT_POINTS)
    basis = reduced_basis(system, loads(system, points), float(scales.min()), float(scales.max()))
    return _respond(
        middling, system, points, basis, (wanted, scales, varying), loads_on_motor, strength_ratio
    )


def at_thickness(model: PlateModel, thickness: float, facets: Sequence[int]) -> PlateModel:
    """Give a model whose facets named have their thickness scaled so that the first has this one."""
    scale = thickness / model.facets[facets[0]].thickness
    changed = [
        dataclasses.replace(facet, thickness=facet.thickness * scale) if i in facets else facet
        for i, facet in enumerate(model.facets)
    ]
    return dataclasses.replace(model, facets=changed)


def snapshot_scales(low: float, high: float, count: int) -> FloatArray:
    """Give Chebyshev points in the logarithm of the thickness scale."""
    angle = (2.0 * np.arange(count) + 1.0) * np.pi / (2.0 * count)
    middle, half = 0.5 * np.log(high * low), 0.5 * np.log(high / low)
    return np.asarray(np.exp(middle + half * np.cos(angle)))


def reduced_basis(system: System, load: FloatArray, low: float, high: float) -> Basis:
    """Solve at a few thicknesses and reduce everything to what those answers span."""
    single = high / low < 1.0 + 1e-9
    scales = np.array([low]) if single else snapshot_scales(low, high, SNAPSHOTS)
    with_contact = np.linspace(0, len(scales) - 1, CONTACT_SNAPSHOTS).round().astype(int)
    found = []
    for i, scale in enumerate(scales):
        columns = load if i in with_contact else load[:, :6]
        total = sum(
            (scale**k * part for k, part in enumerate(system.parts)),
            sparse.csr_array(system.parts[0].shape),
        )
        found.append(solve_columns(sparse.csc_array(total), columns, refine=False))
    shapes = _independent(np.hstack(found))
    parts = [shapes.T @ (part @ shapes) for part in system.parts]
    return Basis(
        parts=np.array([0.5 * (part + part.T) for part in parts]),
        load=shapes.T @ load,
        movement=np.asarray(system.ties.expand @ shapes),
    )


def _independent(columns: FloatArray) -> FloatArray:
    """Give columns, near enough orthonormal, that span the same shapes without the repeats."""
    columns = columns / np.linalg.norm(columns, axis=0)
    values, turns = np.linalg.eigh(columns.T @ columns)
    kept = values > DROPPED * values[-1]
    return np.asarray(columns @ (turns[:, kept] / np.sqrt(values[kept])))


def _respond(
    model: PlateModel,
    system: System,
    points: ContactPoints,
    basis: Basis,
    over: tuple[FloatArray, FloatArray, BoolArray],
    loads_on_motor: Sequence[Load],
    strength_ratio: float,
) -> SweepResponse:
    wanted, scales, varying = over
    centre = np.asarray(model.motor_centre, float)
    load = np.array([sum(moved(w, p, centre) for w, p in each) for each in loads_on_motor])
    at = np.array([np.asarray(each[0][1], float) for each in loads_on_motor])
    rigid = rigid_rows(at - centre)
    lifted = readings.lift(points, basis.movement)
    motor, forces, shapes = [], [], []
    for scale in scales:
        answers = basis.coordinates(float(scale))
        flexibility = basis.load.T @ answers
        shares = _shares(points, lifted @ answers, load)
        motor.append(np.einsum("lij,jl->li", rigid, flexibility[:6] @ shares))
        forces.append(shares[6:].T)
        shapes.append(answers @ shares)
    coordinates = np.array(shapes)
    supports = readings.supports(model, system, basis.movement)
    tension, shear = _bolts(model, supports.frame_bolts, coordinates)
    movement = np.array(motor)
    rings = _rings(model, system, basis, (scales, varying), coordinates, strength_ratio)
    return SweepResponse(
        thickness=wanted,
        displacement=movement[..., :3],
        rotation=movement[..., 3:],
        bolt_tension=tension,
        bolt_shear=shear,
        frame_ring=rings[0],
        motor_ring=rings[1],
        contact_force=np.array(forces),
    )


def _shares(points: ContactPoints, lifted: FloatArray, load: FloatArray) -> FloatArray:
    """Give the shares (columns) of all load columns for each load, contact settled."""
    if len(points.nodes) == 0:
        return load.T
    solver = ContactSolver.of(lifted[:, 6:], points.stiffness)
    contacts = np.array([solver.forces(lifted[:, :6] @ one) for one in load])
    return np.vstack([load.T, contacts.T])


def _bolts(
    model: PlateModel, wrenches: FloatArray, coordinates: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Give tension and shear of every frame bolt, over thickness and load."""
    count, _, many = coordinates.shape
    flat = np.tensordot(wrenches, coordinates, axes=([2], [1]))
    tension, shear = bolt_forces(model, flat.reshape(len(wrenches), 6, count * many))
    return (
        tension.T.reshape(count, many, -1),
        np.moveaxis(shear, -1, 0).reshape(count, many, len(wrenches), 2),
    )


def _rings(
    model: PlateModel,
    system: System,
    basis: Basis,
    over: tuple[FloatArray, BoolArray],
    coordinates: FloatArray,
    strength_ratio: float,
) -> list[FloatArray]:
    """Give the largest equivalent stress on each frame bolt's, then each motor bolt's ring."""
    scales, varying = over
    reader = Reader(model, system.mesh)
    means = readings.mean_stress(system, reader, basis.movement)
    stretch = np.where(varying[None, :], scales[:, None], 1.0)
    bending = np.where(varying[reader.group_zone // 2][None, :], scales[:, None], 1.0)
    found = []
    for bolts in (model.frame_bolts, model.motor_bolts):
        samples = sampling.rings_of_scales(reader, bolts, 1.0, stretch)
        largest = np.full((len(scales) * len(bolts), coordinates.shape[2]), -np.inf)
        order = np.argsort(samples.owner, kind="stable")
        number = samples.owner[order] // max(1, len(bolts))
        bounds = np.searchsorted(number, np.arange(len(scales) + 1))
        for i in range(len(scales)):
            rows = order[bounds[i] : bounds[i + 1]]
            field = means @ coordinates[i]
            field[:, 3:] *= bending[i][:, None, None]
            stress = readings.read_stress(
                dataclasses.replace(samples, reading=samples.reading[rows]), field
            )
            np.maximum.at(largest, samples.owner[rows], _worst(stress, strength_ratio))
        largest[np.isinf(largest)] = np.nan
        found.append(largest.reshape(len(scales), len(bolts), -1).transpose(0, 2, 1))
    return found


def _worst(stress: FloatArray, strength_ratio: float) -> FloatArray:
    """Give the larger equivalent of the two faces, (places, loads), of (places, 6, loads)."""
    parts = np.moveaxis(stress, 1, -1)
    membrane, bending = parts[..., :3], parts[..., 3:]
    return np.maximum(
        equivalent(membrane + bending, strength_ratio),
        equivalent(membrane - bending, strength_ratio),
    )
