"""What must not change: turning, mirroring, moving the mount, changing the unit of length or force."""

from __future__ import annotations

import dataclasses
from functools import cache

import numpy as np
import pytest
from plate_kit import model_of, sprocket_of

from mountlimit.plates import PlateModel, PlateResponse, solve

LOAD = np.array([1800.0, -2400.0, 150.0, 3.0, -8.0, 5.0])


def _reflected(model: PlateModel, matrix: np.ndarray, shift: np.ndarray) -> PlateModel:
    """Move a model by an orthogonal matrix; where it mirrors, the sides change over."""
    side = round(np.linalg.det(matrix))
    facets = [
        dataclasses.replace(
            facet,
            origin=matrix @ np.asarray(facet.origin, float) + shift,
            e1=matrix @ np.asarray(facet.e1, float),
            e2=matrix @ np.asarray(facet.e2, float),
        )
        for facet in model.facets
    ]
    return dataclasses.replace(
        model,
        facets=facets,
        motor_centre=matrix @ np.asarray(model.motor_centre, float) + shift,
        frame_bolts=[
            dataclasses.replace(bolt, frame_side=side * bolt.frame_side)
            for bolt in model.frame_bolts
        ],
        contacts=[dataclasses.replace(part, side=side * part.side) for part in model.contacts],
    )


def _turned(axis: np.ndarray, angle: float) -> np.ndarray:
    x, y, z = axis / np.linalg.norm(axis)
    cross = np.array([[0, -z, y], [z, 0, -x], [-y, x, 0]])
    return np.eye(3) + np.sin(angle) * cross + (1 - np.cos(angle)) * cross @ cross


MOVES = {
    "turned about a skew axis": _turned(np.array([1.0, 2.0, -0.5]), 1.1),
    "turned by a right angle": _turned(np.array([0.0, 0.0, 1.0]), 0.5 * np.pi),
    "mirrored in x": np.diag([-1.0, 1.0, 1.0]),
    "mirrored in z": np.diag([1.0, 1.0, -1.0]),
}


@cache
def _plain(name: str) -> PlateResponse:
    return solve(model_of(name)).response(LOAD, sprocket_of(name))


@pytest.mark.parametrize("name", ["C2C", "C3", "C6"])
@pytest.mark.parametrize("move", list(MOVES))
def test_turned_and_mirrored_mounts_answer_alike(name: str, move: str) -> None:
    matrix, shift = MOVES[move], np.array([0.3, -0.2, 0.7])
    side = round(np.linalg.det(matrix))
    moved = solve(_reflected(model_of(name), matrix, shift))
    load = np.r_[matrix @ LOAD[:3], side * matrix @ LOAD[3:]]
    found = moved.response(load, matrix @ sprocket_of(name) + shift)
    plain = _plain(name)
    for one, two in (
        (found.displacement, matrix @ plain.displacement),
        (found.rotation, side * matrix @ plain.rotation),
        (found.bolt_tension, plain.bolt_tension),
        (found.bolt_shear, plain.bolt_shear),
        (found.frame_ring.largest(), plain.frame_ring.largest()),
        (found.motor_ring.largest(), plain.motor_ring.largest()),
        (found.line.largest(), plain.line.largest()),
    ):
        assert np.max(np.abs(one - two)) < 1e-6 * np.max(np.abs(two))


def test_without_contact_responses_superpose() -> None:
    solution, at = solve(model_of("C2")), sprocket_of("C2")
    one, two = np.r_[LOAD[:3], 0, 0, 0], np.r_[0, 0, 0, LOAD[3:]]
    a, b, both = (solution.response(load, at) for load in (one, two, one + two))
    assert np.allclose(a.rotation + b.rotation, both.rotation, rtol=1e-9, atol=1e-15)
    components = a.motor_ring.membrane + b.motor_ring.membrane
    assert np.allclose(components, both.motor_ring.membrane, rtol=1e-6, atol=1.0)


def test_stiffer_material_moves_less_and_is_stressed_the_same() -> None:
    """With rigid washers everything is elastic in one modulus: movement goes as 1 / E."""
    model = model_of("C1F")
    double = dataclasses.replace(
        model,
        facets=[
            dataclasses.replace(facet, elastic_modulus=2.0 * facet.elastic_modulus)
            for facet in model.facets
        ],
    )
    at = sprocket_of("C1F")
    soft, stiff = solve(model).response(LOAD, at), solve(double).response(LOAD, at)
    assert np.allclose(stiff.displacement, 0.5 * soft.displacement, rtol=1e-9)
    assert np.allclose(stiff.motor_ring.largest(), soft.motor_ring.largest(), rtol=1e-8)


def test_movement_of_the_motor_is_reciprocal() -> None:
    """Work of one load on the movement by another is the same the other way round (Betti)."""
    solution = solve(model_of("C3"))
    assert np.allclose(solution.motor, solution.motor.T, rtol=1e-6, atol=1e-15)
