"""The six-node triangle against closed forms and against what any sound element must do."""

from __future__ import annotations

import math

import numpy as np
import pytest
from plate_kit import BarePlate, model_of, rectangle

from mountlimit.plates import Hole
from mountlimit.plates.assemble import NodeBlocks
from mountlimit.plates.element import (
    RULE_SHARES,
    RULE_WEIGHTS,
    prepare,
    resultants,
    shape,
    stiffness,
)
from mountlimit.plates.mesh import build
from mountlimit.plates.sampling import Reader
from mountlimit.plates.ties import rigid_rows

SLANTED = [[0.0, 0.0], [0.11, 0.02], [0.13, 0.09], [0.02, 0.1]]


def _unknowns(plate: BarePlate, movement: np.ndarray) -> np.ndarray:
    return movement[plate.mesh.triangles].reshape(-1, 36, 1)


def test_rigid_movements_strain_nothing() -> None:
    plate = BarePlate(SLANTED, 0.006, 0.03)
    rows = rigid_rows(plate.mesh.points).reshape(-1, 6)
    force = plate.matrix @ rows
    assert np.max(np.abs(force)) < 1e-10 * np.max(np.abs(plate.matrix.data))


def test_rigid_movements_of_two_joined_plates_strain_nothing() -> None:
    """A bent mount, loose: strips of the corner and the small stiffness against drilling included."""
    model = model_of("C2")
    mesh = build(model, 0.015)
    thin, bent = stiffness(prepare(model, mesh))
    matrix = NodeBlocks(mesh).gather(thin + bent)
    rows = rigid_rows(mesh.points).reshape(-1, 6)
    assert np.max(np.abs(matrix @ rows)) < 1e-10 * np.max(np.abs(matrix.data))


def test_one_element_has_no_movement_without_strain_but_the_six_rigid_ones() -> None:
    plate = BarePlate([[0.0, 0.0], [0.03, 0.004], [0.011, 0.025]], 0.006, 1.0)
    assert len(plate.mesh.area) == 1
    scale = np.tile(np.r_[np.ones(3), np.full(3, 50.0)], 6)
    values = np.linalg.eigvalsh(plate.element_stiffness[0] * np.outer(scale, scale))
    assert np.sum(values < 1e-9 * values[-1]) == 6


def test_a_field_of_constant_membrane_strain_is_exact() -> None:
    plate = BarePlate(SLANTED, 0.006, 0.03)
    x, y = plate.x, plate.y
    exact = np.zeros((plate.count, 6))
    exact[:, 0] = 1e-3 * x + 3e-4 * y
    exact[:, 1] = 7e-4 * x - 5e-4 * y
    exact[:, 5] = 0.5 * (7e-4 - 3e-4)
    found, stress = _patch(plate, exact)
    assert np.allclose(found, exact, atol=1e-12)
    modulus, nu = 1e9, 0.3
    strain = np.array([1e-3, -5e-4, 1e-3])
    law = modulus / (1 - nu**2) * np.array([[1, nu, 0], [nu, 1, 0], [0, 0, (1 - nu) / 2]])
    assert np.allclose(stress[:, :, :3, 0], law @ strain, rtol=1e-9)
    assert np.allclose(stress[:, :, 3:], 0.0, atol=1e-3)


def test_a_field_of_constant_curvature_is_exact_and_without_shear() -> None:
    thickness = 0.006
    plate = BarePlate(SLANTED, thickness, 0.03)
    x, y = plate.x, plate.y
    k_x, k_y, k_xy = 0.8, -0.5, 0.6  # second slopes of the movement, 1/m
    exact = np.zeros((plate.count, 6))
    exact[:, 2] = 0.5 * k_x * x**2 + 0.5 * k_y * y**2 + k_xy * x * y
    exact[:, 3] = k_y * y + k_xy * x
    exact[:, 4] = -(k_x * x + k_xy * y)
    found, stress = _patch(plate, exact)
    assert np.allclose(found, exact, atol=1e-11)
    modulus, nu = 1e9, 0.3
    strain = -0.5 * thickness * np.array([k_x, k_y, 2 * k_xy])
    law = modulus / (1 - nu**2) * np.array([[1, nu, 0], [nu, 1, 0], [0, 0, (1 - nu) / 2]])
    assert np.allclose(stress[:, :, 3:, 0], law @ strain, rtol=1e-8)


def _patch(plate: BarePlate, exact: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    edge = np.zeros(plate.count, bool)
    edge[plate.mesh.free_edges] = True
    assert np.sum(~edge) > 5
    held = np.repeat(edge[:, None], 6, axis=1)
    found, _ = plate.solve(held, exact)
    return found, resultants(plate.elements, _unknowns(plate, found))


def _torsion_constant(width: float, thickness: float) -> float:
    """Exact series; Timoshenko & Goodier, Theory of Elasticity, art. 109 (from memory)."""
    total = sum(math.tanh(n * math.pi * width / (2 * thickness)) / n**5 for n in range(1, 40, 2))
    return width * thickness**3 / 3 * (1 - 192 / math.pi**5 * thickness / width * total)


def test_the_torsion_series_gives_the_printed_table() -> None:
    """Factors 0.249 and 0.281 and 0.312 at b/t 2.5, 4, 10 (Shigley 9th ed., art. 3-12)."""
    for ratio, printed in ((2.5, 0.249), (4.0, 0.281), (10.0, 0.312)):
        assert _torsion_constant(ratio, 1.0) / ratio == pytest.approx(printed, abs=5e-4)


@pytest.mark.parametrize("ratio", [2.5, 4.0, 10.0])
def test_torsion_of_a_rectangle_within_three_tenths_of_a_percent(ratio: float) -> None:
    width, length, nu, modulus = 0.02, 0.05, 0.3, 1e9
    thickness = width / ratio
    plate = BarePlate(rectangle(length, width), thickness, 0.002, modulus, nu)
    y = plate.y - 0.5 * width
    rate = 0.1  # rad/m
    ends = np.isclose(plate.x, 0.0) | np.isclose(plate.x, length)
    held = plate.flat(0, 1, 5)
    held[ends, 2] = held[ends, 3] = True
    middle = np.argmin(np.hypot(plate.x - 0.5 * length, y))
    held[middle, 4] = True
    given = np.zeros((plate.count, 6))
    given[:, 2] = rate * plate.x * y
    given[:, 3] = rate * plate.x
    _, reaction = plate.solve(held, given)
    far = np.isclose(plate.x, length)
    torque = np.sum(reaction[far, 2] * y[far] + reaction[far, 3])
    shear_modulus = modulus / (2 * (1 + nu))
    exact = shear_modulus * _torsion_constant(width, thickness) * rate
    assert torque == pytest.approx(exact, rel=0.003)


@pytest.mark.parametrize(
    ("edges", "coefficient"), [("clamped", 0.00126532), ("simply supported", 0.00406235)]
)
def test_square_plates_under_uniform_load_within_one_percent(
    edges: str, coefficient: float
) -> None:
    """Centre movement over q a^4 / D; Timoshenko & Woinowsky-Krieger (from memory), a/t = 100."""
    side, thickness, modulus, nu = 1.0, 0.01, 1e9, 0.3
    plate = BarePlate(rectangle(side, side), thickness, side / 20, modulus, nu)
    on_x = np.isclose(plate.x, 0.0) | np.isclose(plate.x, side)
    on_y = np.isclose(plate.y, 0.0) | np.isclose(plate.y, side)
    held = plate.flat(0, 1, 5)
    held[on_x | on_y, 2] = True
    held[on_x, 3] = held[on_y, 4] = True
    if edges == "clamped":
        held[on_x | on_y, 3:5] = True
    found, _ = plate.solve(held, load=plate.uniform_load(1.0))
    rigidity = modulus * thickness**3 / (12 * (1 - nu**2))
    centre = np.max(found[:, 2])
    assert centre == pytest.approx(coefficient * side**4 / rigidity, rel=0.01)


def _sine_plate_energy(size: float) -> float:
    """Strain energy of a simply supported thick square under a sine load, over the exact one.

    Exact for plates that shear: W = q/(D k^2) (1 + D k / S), k = 2 (pi/a)^2, S = 5/6 G t.
    """
    side, thickness, modulus, nu = 1.0, 0.1, 1e9, 0.3
    plate = BarePlate(rectangle(side, side), thickness, size, modulus, nu)
    points = plate.mesh.points[plate.mesh.triangles]
    values = shape(RULE_SHARES)
    place = np.einsum("gi,eik->egk", values, points)
    pressure = np.sin(np.pi * place[..., 0] / side) * np.sin(np.pi * place[..., 1] / side)
    nodal = np.einsum("e,g,eg,gi->ei", plate.mesh.area, RULE_WEIGHTS, pressure, values)
    load = np.zeros((plate.count, 6))
    np.add.at(load[:, 2], plate.mesh.triangles, nodal)
    on_x = np.isclose(plate.x, 0.0) | np.isclose(plate.x, side)
    on_y = np.isclose(plate.y, 0.0) | np.isclose(plate.y, side)
    held = plate.flat(0, 1, 5)
    held[on_x | on_y, 2] = True
    held[on_x, 3] = held[on_y, 4] = True
    found, _ = plate.solve(held, load=load)
    rigidity = modulus * thickness**3 / (12 * (1 - nu**2))
    shear = 5 / 6 * modulus / (2 * (1 + nu)) * thickness
    wave = 2 * (np.pi / side) ** 2
    height = 1.0 / (rigidity * wave**2) * (1 + rigidity * wave / shear)
    return float(np.sum(load * found) / (height * 0.25 * side**2))


def test_bending_converges_with_at_least_third_order() -> None:
    sizes = (1 / 5, 1 / 10, 1 / 20)
    errors = [abs(_sine_plate_energy(size) - 1.0) for size in sizes]
    order = math.log(errors[0] / errors[2]) / math.log(4.0)
    assert order > 3.0
    assert errors[2] < 1e-4


def _beam_in_its_plane(size: float) -> float:
    """Strain energy of a deep beam moved at its edges as the exact field says, over the exact one.

    Stress x y and y**2: Timoshenko & Goodier, Theory of Elasticity, art. 21 (from memory).
    """
    length, depth, thickness, modulus, nu = 0.1, 0.04, 0.005, 1e9, 0.3
    plate = BarePlate(rectangle(length, depth), thickness, size, modulus, nu)
    x, y, half = plate.x, plate.y - 0.5 * depth, 0.5 * depth
    shear_modulus = modulus / (2 * (1 + nu))
    rate = 1e6  # force over second moment, N/m4
    exact = np.zeros((plate.count, 6))
    bend, share = rate / modulus, rate / (2 * shear_modulus)
    exact[:, 0] = -bend * (x**2 * y / 2 + nu * y**3 / 6) + share * y**3 / 3 - share * half**2 * y
    exact[:, 1] = bend * (nu * x * y**2 / 2 + x**3 / 6)
    slope = bend * (nu * y**2 / 2 + x**2 / 2)
    across = -bend * (x**2 / 2 + nu * y**2 / 2) + share * (y**2 - half**2)
    exact[:, 5] = 0.5 * (slope - across)
    edge = np.zeros(plate.count, bool)
    edge[plate.mesh.free_edges] = True
    held = plate.flat(2, 3, 4)
    held[edge] = True
    found, _ = plate.solve(held, exact)
    energy = 0.5 * found.ravel() @ (plate.matrix @ found.ravel())
    normal = length**3 / 3 * depth**3 / 12 / (2 * modulus)
    sheared = length * (half**5 * 16 / 15) / 4 / (2 * shear_modulus)
    return float(energy / (rate**2 * thickness * (normal + sheared)))


def test_stretching_converges_with_at_least_third_order() -> None:
    sizes = (0.02, 0.01, 0.005)
    errors = [abs(_beam_in_its_plane(size) - 1.0) for size in sizes]
    order = math.log(errors[0] / errors[2]) / math.log(4.0)
    assert order > 3.0
    assert errors[2] < 1e-4


def test_cantilever_strip_in_and_out_of_plane() -> None:
    """Without Poisson's ratio a strip is a beam: v = P l^3 / (3 E I) + P l / (5/6 G A)."""
    length, width, thickness, modulus = 0.1, 0.02, 0.002, 1e9
    plate = BarePlate(rectangle(length, width), thickness, 0.005, modulus, 0.0)
    root, tip = np.isclose(plate.x, 0.0), np.isclose(plate.x, length)
    held = np.repeat(root[:, None], 6, axis=1)
    held[:, 1] = False
    held[np.argmin(np.hypot(plate.x, plate.y - 0.5 * width)), 1] = True
    for direction, depth, breadth in ((2, thickness, width), (1, width, thickness)):
        load = plate.edge_load(tip, direction, 1.0 / width)
        found, reaction = plate.solve(held, load=load)
        moved = np.sum(load * found)
        second_moment = breadth * depth**3 / 12
        beam = length**3 / (3 * modulus * second_moment)
        beam += length / (5 / 6 * modulus / 2 * width * thickness)
        assert moved == pytest.approx(beam, rel=0.004)
        assert np.sum(reaction[root, direction]) == pytest.approx(-1.0, rel=1e-6)


def test_hole_in_tension_peaks_as_published() -> None:
    """d/W = 0.1: gross factor (2 + (1 - d/W)^3) / (1 - d/W) = 3.03.

    Heywood's fit, in Peterson's Stress Concentration Factors (from memory).
    """
    width, tall, diameter, thickness = 1.0, 1.6, 0.1, 0.01
    hole = Hole(centre=(0.5 * width, 0.5 * tall), diameter=diameter)
    plate = BarePlate(rectangle(width, tall), thickness, 0.1, 1e9, 0.3, (hole,))
    top, bottom = np.isclose(plate.y, tall), np.isclose(plate.y, 0.0)
    load = plate.edge_load(top, 1, thickness) + plate.edge_load(bottom, 1, -thickness)
    held = plate.flat(2, 3, 4)
    held[np.argmin(np.hypot(plate.x, plate.y)), :2] = True
    held[np.argmin(np.hypot(plate.x - width, plate.y)), 1] = True
    found, _ = plate.solve(held, load=load)
    reader = Reader(plate.model, plate.mesh)
    corners = resultants(plate.elements, _unknowns(plate, found)).reshape(-1, 6)
    places = plate.mesh.points[reader.group_node, :2]
    for side in (-1.0, 1.0):
        edge = np.array([0.5 * (width + side * diameter), 0.5 * tall])
        at = np.argmin(np.hypot(*(places - edge).T))
        assert (reader.mean @ corners)[at, 1] == pytest.approx(3.03, rel=0.03)
