"""Struts to the frame: forces by statics, movement by their own stiffness, and what is refused."""

from __future__ import annotations

import dataclasses
from typing import Any

import numpy as np
import pytest
from plate_kit import model_of, rectangle, sprocket_of

from mountlimit.plates import Facet, LineWeld, MotorBolt, PlateError, PlateModel, Strut, solve

HEIGHT = 0.18  # of the motor over the hinge line
CENTRE = np.array([0.0, HEIGHT, 0.0])
STIFFNESS = 3.0e6


def hinged(strut: Strut, **changes: Any) -> PlateModel:
    """Give an upright strip held by a one-sided weld along its foot, as a hinge, and one strut."""
    facet = Facet(
        name="strip", outline=rectangle(0.08, 0.22) - np.array([0.04, 0.0]), origin=(0, 0, 0),
        e1=(1, 0, 0), e2=(0, 1, 0), thickness=0.008, elastic_modulus=7e10, poissons_ratio=0.3,
    )  # fmt: skip
    parts: dict[str, Any] = {
        "facets": [facet],
        "motor_bolts": [
            MotorBolt(facet=0, centre=(x, HEIGHT), hole_diameter=0.006, washer_diameter=0.014)
            for x in (-0.02, 0.02)
        ],
        "motor_centre": CENTRE,
        "welds": [LineWeld(facet=0, start=(-0.04, 0), end=(0.04, 0), double_sided=False)],
        "struts": [strut],
    }
    return PlateModel(**{**parts, **changes})


FROM_MOTOR = Strut(start=(0.0, 0.2, 0.05), end=(0.0, 0.0, 0.25), stiffness=STIFFNESS)
FROM_PLATE = Strut(
    start=(0.0, 0.1, 0.004), end=(0.0, 0.0, 0.2), stiffness=STIFFNESS, facet=0, washer_diameter=0.02
)


@pytest.mark.parametrize("strut", [FROM_MOTOR, FROM_PLATE], ids=["motor", "plate"])
@pytest.mark.parametrize("force", [(0.0, 0.0, 400.0), (0.0, -300.0, -200.0)])
def test_a_strut_holds_a_hinged_plate_by_statics(strut: Strut, force: Any) -> None:
    """N = -M_load / M_unit about the hinge line, the moment of a unit pull towards the frame."""
    at = np.array([0.0, HEIGHT, 0.06])
    response = solve(hinged(strut)).response([*force, 0, 0, 0], at)
    start, way = np.asarray(strut.start), np.asarray(strut.end) - np.asarray(strut.start)
    unit = np.cross(start, way / np.linalg.norm(way))[0]
    wanted = -np.cross(at, force)[0] / unit
    assert response.strut_tension == pytest.approx([wanted], rel=2e-3)
    pull = response.strut_tension[0] * way / np.linalg.norm(way)
    assert np.asarray(force) + pull == pytest.approx(response.weld_force[0], abs=1e-5)
    assert response.balance_residual < 1e-8


def _hexapod(count: int = 6) -> PlateModel:
    """Give a plate in the air, its motor on struts to six places of a ring."""
    angle = np.deg2rad([0.0, 20.0, 120.0, 140.0, 240.0, 260.0])
    ring = np.stack([0.3 * np.cos(angle), 0.3 * np.sin(angle), 0 * angle - 0.25], axis=1)
    angle = np.deg2rad([-50.0, 70.0, 70.0, 190.0, 190.0, 310.0])
    top = np.stack([0.1 * np.cos(angle), 0.1 * np.sin(angle), 0 * angle], axis=1) + CENTRE
    legs = [
        Strut(start=a, end=b + CENTRE, stiffness=STIFFNESS * (1 + i))
        for i, (a, b) in enumerate(zip(top, ring, strict=True))
    ]
    return hinged(legs[0], welds=(), struts=legs[:count])


def test_six_struts_alone_carry_any_load_by_statics_and_move_by_their_stiffness() -> None:
    """A N = -P and u = A^-T diag(1/k) A^-1 P for a body on six legs."""
    model = _hexapod()
    load = np.array([300.0, -200.0, -500.0, 30.0, 20.0, -10.0])
    response = solve(model).response(load, CENTRE)
    starts = np.array([strut.start for strut in model.struts])
    ways = np.array([strut.end for strut in model.struts]) - starts
    ways /= np.linalg.norm(ways, axis=1)[:, None]
    pulls = np.r_[ways.T, np.cross(starts - CENTRE, ways).T]
    tension = np.linalg.solve(pulls, -load)
    assert response.strut_tension == pytest.approx(tension, rel=1e-7)
    longer = tension / np.array([strut.stiffness for strut in model.struts])
    moved = np.linalg.solve(pulls.T, -longer)
    assert np.r_[response.displacement, response.rotation] == pytest.approx(moved, rel=1e-6)
    assert response.balance_residual < 1e-9


def test_five_struts_alone_leave_the_mount_loose() -> None:
    with pytest.raises(PlateError, match="mount: part of it is not held"):
        solve(_hexapod(5))


def test_a_strut_acts_both_ways_and_superposes() -> None:
    solution = solve(hinged(FROM_MOTOR))
    one = np.array([0.0, 50.0, 300.0, 5.0, 0.0, 0.0])
    two = np.array([120.0, 0.0, -100.0, 0.0, 4.0, 9.0])
    a, b, both, back = (
        solution.response(load, CENTRE).strut_tension for load in (one, two, one + two, -one)
    )
    assert a + b == pytest.approx(both, rel=1e-9)
    assert back == pytest.approx(-a, rel=1e-9)


def test_a_strut_helps_a_bolted_mount_the_stiffer_the_more() -> None:
    load, at = [0.0, -3000.0, 0.0, 0.0, 0.0, 0.0], sprocket_of("C2")
    tilts = [abs(solve(model_of("C2")).response(load, at).rotation[0])]
    end = at + np.array([0.0, 0.2, 0.0])
    for stiffness in (1e5, 1e6, 1e7):
        strut = Strut(start=at, end=end, stiffness=stiffness)
        response = solve(model_of("C2", struts=[strut])).response(load, at)
        assert response.strut_tension[0] > 0.0
        assert response.balance_residual < 1e-8
        tilts.append(abs(response.rotation[0]))
    assert np.all(np.diff(tilts) < 0.0)


def test_a_strut_on_a_plate_turns_with_it() -> None:
    """Turned in space about x and moved: the same tension to 1e-6."""
    cosine, sine = np.cos(0.8), np.sin(0.8)
    turn = np.array([[1, 0, 0], [0, cosine, -sine], [0, sine, cosine]])
    shift = np.array([0.1, 0.4, -0.2])
    plain = hinged(FROM_PLATE)
    moved = dataclasses.replace(
        plain,
        facets=[dataclasses.replace(plain.facets[0], origin=shift, e1=turn[:, 0], e2=turn[:, 1])],
        motor_centre=turn @ CENTRE + shift,
        struts=[
            dataclasses.replace(
                FROM_PLATE,
                start=turn @ np.asarray(FROM_PLATE.start) + shift,
                end=turn @ np.asarray(FROM_PLATE.end) + shift,
            )
        ],
    )
    force = np.array([50.0, -100.0, 300.0])
    one = solve(plain).response(np.r_[force, 0, 0, 0], CENTRE)
    two = solve(moved).response(np.r_[turn @ force, 0, 0, 0], turn @ CENTRE + shift)
    assert two.strut_tension == pytest.approx(one.strut_tension, rel=1e-6)
    assert two.rotation == pytest.approx(turn @ one.rotation, rel=1e-6, abs=1e-9)


def _with(strut: Strut = FROM_MOTOR, **changes: Any) -> PlateModel:
    return hinged(dataclasses.replace(strut, **changes))


FAULTS = [
    (_with(stiffness=0.0), "strut 1: its stiffness 0 is not above nothing and finite"),
    (_with(stiffness=np.inf), "strut 1: its stiffness inf is not above nothing and finite"),
    (_with(end=(0.0, 0.2, 0.05)), "strut 1: has no length"),
    (_with(end=(0.0, np.nan, 0.05)), "strut 1: needs a start and an end of three numbers each"),
    (_with(FROM_PLATE, facet=4), "strut 1: there is no plate 4"),
    (_with(FROM_PLATE, washer_diameter=0.0),
     "strut 1: its washer diameter 0 is not above nothing and finite"),
    (_with(FROM_PLATE, start=(0.05, 0.1, 0.0)), "strut 1: does not start on strip"),
    (_with(FROM_PLATE, start=(0.035, 0.1, 0.0)), "strip: the washer of strut 1 leaves the plate"),
    (_with(FROM_PLATE, start=(0.02, 0.175, 0.0)),
     "strip: the washer of motor bolt 2 and the washer of strut 1 overlap"),
    (hinged(FROM_MOTOR, welds=(), struts=()), "mount: nothing holds it to the frame"),
]  # fmt: skip


@pytest.mark.parametrize(("model", "message"), FAULTS, ids=[text for _, text in FAULTS])
def test_faults_are_named_in_one_line(model: PlateModel, message: str) -> None:
    with pytest.raises(PlateError) as caught:
        solve(model)
    assert str(caught.value) == message
