"""Random angles with gussets, slots and contact: they mesh, balance and never pull on the frame."""

from __future__ import annotations

import numpy as np
import pytest

from mountlimit.plates import (
    Bend,
    Contact,
    Facet,
    FrameBolt,
    Hole,
    MotorBolt,
    PlateModel,
    solve,
)

LOAD = np.array([500.0, -800.0, 100.0, 3.0, 4.0, 5.0])


def _mount(random: np.random.Generator) -> PlateModel:
    half, tall, deep = random.uniform(0.06, 0.1), random.uniform(0.16, 0.24), 0.08
    thickness, lean = random.uniform(0.003, 0.012), random.uniform(-0.5, 0.5)
    circle, turn = random.uniform(0.05, 0.08), random.uniform(0.0, 1.5)
    centre = np.array([random.uniform(-0.01, 0.01), tall - 0.06])
    cut = random.uniform(0.005, 0.02)
    material = {"elastic_modulus": 7e10, "poissons_ratio": 0.33}
    face = Facet(
        name="face", thickness=thickness, origin=(0, 0, 0), e1=(1, 0, 0), e2=(0, 1, 0),
        outline=[[-half, 0], [half, 0], [half, tall - cut], [half - cut, tall], [-half, tall]],
        holes=[Hole(centre=centre, diameter=0.6 * circle)], **material,
    )  # fmt: skip
    foot = Facet(
        name="foot", thickness=1.2 * thickness, origin=(0, 0, 0), e1=(1, 0, 0),
        e2=(0, np.sin(lean), -np.cos(lean)), outline=[[-half, 0], [half, 0], [half, deep],
        [-half, deep]], **material,
    )  # fmt: skip
    reach = 0.9 * deep
    gusset = Facet(
        name="gusset", thickness=0.8 * thickness, origin=(random.uniform(-0.01, 0.01), 0, 0),
        e1=(0, 0, -1), e2=(0, 1, 0), **material,
        outline=[[0, 0], [reach * np.cos(lean), reach * np.sin(lean)], [0, 0.04]],
    )  # fmt: skip
    bolts = [
        FrameBolt(
            facet=1, centre=(side * half * random.uniform(0.5, 0.7), random.uniform(0.03, 0.06)),
            hole_diameter=0.0085, washer_diameter=0.017, normal_stiffness=4e8,
            tangential_stiffness=2e8, slot_length=random.choice([0.0, 0.02]), slot_angle=turn,
        )
        for side in (-1, 1)
    ]  # fmt: skip
    motor = [
        MotorBolt(
            facet=0, hole_diameter=0.006, washer_diameter=0.012,
            centre=centre + circle / 2 * np.array([np.cos(angle), np.sin(angle)]),
        )
        for angle in turn + np.pi / 2 * np.arange(4)
    ]  # fmt: skip
    edge = random.uniform(0.5, 1.1) * deep
    return PlateModel(
        facets=[face, foot, gusset], frame_bolts=bolts, motor_bolts=motor,
        motor_centre=(*centre, 0.0), bends=[Bend(facets=(0, 1), fillet_radius=thickness)],
        contacts=[Contact(facet=1, side=-1, stiffness=2e12, pitch=0.014, region=[
            [-half, 0], [half, 0], [half, edge], [-half, edge]])],
    )  # fmt: skip


@pytest.mark.parametrize("number", range(12))
def test_random_mounts_mesh_and_balance(number: int) -> None:
    model = _mount(np.random.default_rng(number))
    solution = solve(model, 0.018)
    response = solution.response(LOAD, np.asarray(model.motor_centre) + np.array([0, 0, 0.05]))
    assert response.balance_residual < 1e-9
    assert np.all(response.contact_force >= 0.0)
    assert np.all(np.isfinite(response.motor_ring.largest()))
    flexibility = solution.motor[:, :6]
    assert np.all(np.linalg.eigvalsh(0.5 * (flexibility + flexibility.T)) > 0.0)
