"""Slots, spacers, welds, joints of one plane, rigid washers and the rigid motor face."""

from __future__ import annotations

import dataclasses
import math
from typing import Any

import numpy as np
import pytest
from plate_kit import model_of, rectangle, sprocket_of

from mountlimit.plates import (
    Contact,
    Cutout,
    Facet,
    FrameBolt,
    Hole,
    LineWeld,
    MotorBolt,
    PlateError,
    PlateModel,
    Slot,
    Spacer,
    solve,
)
from mountlimit.plates.mesh import build
from mountlimit.plates.shapes import bolt_hole_polygon, equal_area_circle
from mountlimit.plates.springs import spacer_stiffness
from mountlimit.plates.ties import rigid_rows

MODULUS = 70e9
MOMENT = np.array([0.0, 0.0, 0.0, 50.0, 0.0, 0.0])
DOWN = np.array([0.0, -1000.0, 0.0, 0.0, 0.0, 0.0])


def strip(low: float, high: float, **changes: Any) -> Facet:
    """Give an upright plate 60 mm wide and 6 mm thick, without Poisson's ratio."""
    parts: dict[str, Any] = {
        "name": "strip",
        "outline": rectangle(0.06, high - low) + np.array([-0.03, low]),
        "origin": (0.0, 0.0, 0.0),
        "e1": (1.0, 0.0, 0.0),
        "e2": (0.0, 1.0, 0.0),
        "thickness": 0.006,
        "elastic_modulus": MODULUS,
        "poissons_ratio": 0.0,
    }
    return Facet(**{**parts, **changes})


def motor_pair(height: float, facet: int = 0) -> list[MotorBolt]:
    """Give two motor bolts side by side."""
    return [
        MotorBolt(facet=facet, centre=(x, height), hole_diameter=0.006, washer_diameter=0.012)
        for x in (-0.018, 0.018)
    ]


def welded(length: float, **changes: Any) -> PlateModel:
    """Give a strip welded to the frame along its lower edge, the motor near its upper one."""
    parts: dict[str, Any] = {
        "facets": [strip(0.0, length)],
        "motor_bolts": motor_pair(length - 0.02),
        "motor_centre": (0.0, length - 0.02, 0.0),
        "welds": [LineWeld(facet=0, start=(-0.03, 0.0), end=(0.03, 0.0))],
    }
    return PlateModel(**{**parts, **changes})


def test_a_longer_welded_strip_turns_more_by_beam_theory() -> None:
    """theta = M * dl / (E I), b h^3 / 12, between two lengths, ends taken out."""
    tilts = []
    for length in (0.2, 0.3):
        response = solve(welded(length)).response(MOMENT, (0.0, length - 0.02, 0.0))
        tilts.append(response.rotation[0])
    second_moment = 0.06 * 0.006**3 / 12
    assert tilts[1] - tilts[0] == pytest.approx(50.0 * 0.1 / (MODULUS * second_moment), rel=0.003)


def test_a_weld_takes_the_whole_load() -> None:
    response = solve(welded(0.2)).response(DOWN, (0.0, 0.18, 0.06))
    assert response.weld_force[0] == pytest.approx([0.0, -1000.0, 0.0], abs=1e-6)
    assert response.weld_moment[0] == pytest.approx([60.0, 0.0, 0.0], abs=1e-6)
    assert response.balance_residual < 1e-9


def test_a_weld_on_one_side_does_not_hold_the_turn_about_its_line() -> None:
    single = LineWeld(facet=0, start=(-0.03, 0.0), end=(0.03, 0.0), double_sided=False)
    prop = FrameBolt(
        facet=0, centre=(0.0, 0.09), hole_diameter=0.008, washer_diameter=0.016,
        normal_stiffness=4e8, tangential_stiffness=2e8,
    )  # fmt: skip
    at = (0.0, 0.18, 0.06)
    one = solve(welded(0.2, welds=[single], frame_bolts=[prop])).response(DOWN, at)
    both = solve(welded(0.2, frame_bolts=[prop])).response(DOWN, at)
    # only what the bending at the line itself puts there is left
    assert abs(one.weld_moment[0, 0]) < 0.01 * abs(both.weld_moment[0, 0])
    assert one.rotation[0] > both.rotation[0]


def test_a_plate_that_can_turn_about_its_only_weld_is_refused() -> None:
    single = LineWeld(facet=0, start=(-0.03, 0.0), end=(0.03, 0.0), double_sided=False)
    with pytest.raises(PlateError, match="mount: part of it is not held"):
        solve(welded(0.2, welds=[single]))


def two_strips(gap: float, **changes: Any) -> PlateModel:
    """Give the welded strip cut at half its length, the upper half set back by ``gap``."""
    parts: dict[str, Any] = {
        "facets": [strip(0.0, 0.1), strip(0.1, 0.2, origin=(0.0, 0.0, gap), name="upper")],
        "motor_bolts": motor_pair(0.18, 1),
        "motor_centre": (0.0, 0.18, gap),
    }
    return welded(0.2, **{**parts, **changes})


def test_two_plates_of_one_plane_that_share_an_edge_are_one_plate() -> None:
    whole = solve(welded(0.2)).response(DOWN, (0.0, 0.18, 0.06))
    halves = solve(two_strips(0.0)).response(DOWN, (0.0, 0.18, 0.06))
    assert halves.rotation[0] == pytest.approx(whole.rotation[0], rel=0.002)


def test_plates_welded_along_a_line_across_a_gap_move_as_one_plate_under_a_moment() -> None:
    seam = LineWeld(facet=0, start=(-0.03, 0.1), end=(0.03, 0.1), other_facet=1)
    foot = LineWeld(facet=0, start=(-0.03, 0.0), end=(0.03, 0.0))
    halves = solve(two_strips(0.008, welds=[foot, seam]))
    at = (0.0, 0.18, 0.0)
    whole = solve(welded(0.2)).response(MOMENT, at)
    response = halves.response(MOMENT, at)
    assert response.rotation[0] == pytest.approx(whole.rotation[0], rel=0.002)
    assert response.balance_residual < 1e-9


@pytest.mark.parametrize("inner", [0.0, 0.008])
def test_a_spacer_is_a_cantilever_with_shear(inner: float) -> None:
    """v = P l^3 / (3 E I) + P l / (k G A), k by Cowper (from memory), from face to face."""
    spacer = Spacer(
        facets=(0, 1), centre=(0.0, 0.1), diameter=0.014, inner_diameter=inner,
        elastic_modulus=MODULUS, poissons_ratio=0.3,
    )  # fmt: skip
    back = strip(0.0, 0.2, origin=(0.0, 0.0, -0.04))
    model = welded(0.2, facets=[strip(0.0, 0.2), back], spacers=[spacer])
    bodies = np.array([[0.0, 0.1, 0.0], [0.0, 0.1, -0.04]])
    stiffness = spacer_stiffness(model, 0, bodies)
    length = 0.04 - 0.006
    area = math.pi / 4 * (0.014**2 - inner**2)
    second_moment = math.pi / 64 * (0.014**4 - inner**4)
    share = 6 * 1.3 / (7 + 6 * 0.3)
    if inner:
        m2 = (inner / 0.014) ** 2
        share = 6 * 1.3 * (1 + m2) ** 2 / (8.8 * (1 + m2) ** 2 + 23.6 * m2)
    shear_modulus = MODULUS / 2.6
    face = rigid_rows(np.array([0.0, 0.0, 0.003]))  # of the far body, seen from its mid-plane
    tip = face @ np.linalg.solve(stiffness[6:, 6:], face.T @ np.eye(6))
    wanted = length**3 / (3 * MODULUS * second_moment) + length / (share * shear_modulus * area)
    assert tip[0, 0] == pytest.approx(wanted, rel=1e-9)
    assert tip[1, 1] == pytest.approx(wanted, rel=1e-9)
    assert tip[2, 2] == pytest.approx(length / (MODULUS * area), rel=1e-9)
    assert tip[5, 5] == pytest.approx(length / (2 * shear_modulus * second_moment), rel=1e-9)
    rows = np.vstack([rigid_rows(body) for body in bodies])
    assert np.max(np.abs(stiffness @ rows)) < 1e-9 * np.max(np.abs(stiffness))


@pytest.mark.parametrize(
    ("load", "axis", "change"),
    [
        pytest.param(
            np.array([3000.0, 0, 0, 0, 0, 0]), 1, -0.12,
            marks=pytest.mark.xfail(
                reason="-16.1 %: the loose plate now gives under its washers, which the measurement left out",
                strict=True,
            ),
        ),
        (3.0 * DOWN, 0, -0.17),
    ],
    ids=["across", "down"],
)  # fmt: skip
def test_a_rigid_motor_face_stiffens_a_flat_plate(load, axis, change) -> None:
    """Face disc of radius 56 mm: tilt -12 % pulled across, -17 % pulled down.

    Own measurement with the washers' springs on one face only, hence within four points.
    """
    foot = rectangle(0.12, 0.04) - np.array([0.06, 0.0])
    contact = [Contact(facet=0, side=-1, stiffness=2e12, region=foot)]
    loose = solve(model_of("C1", contacts=contact))
    rigid = solve(model_of("C1", contacts=contact, motor_face_diameter=0.112))
    at = sprocket_of("C1")
    ratio = rigid.response(load, at).rotation[axis] / loose.response(load, at).rotation[axis]
    assert ratio - 1.0 == pytest.approx(change, abs=0.04)


def test_a_slot_has_its_area_and_a_round_slot_is_a_hole() -> None:
    facet = strip(0.0, 0.2, holes=[Slot(centre=(0.0, 0.1), length=0.04, width=0.01, angle=0.5)])
    mesh = build(PlateModel(facets=[facet], motor_bolts=(), motor_centre=(0, 0, 0)), 0.01)
    slot = 0.03 * 0.01 + math.pi / 4 * 0.01**2
    assert 0.06 * 0.2 - np.sum(mesh.area) == pytest.approx(slot, rel=0.02)
    model = model_of("C2")
    bolts = [dataclasses.replace(bolt, slot_length=0.009) for bolt in model.frame_bolts]
    same = solve(dataclasses.replace(model, frame_bolts=bolts))
    at = sprocket_of("C2")
    plain = solve(model).response(DOWN, at)
    assert np.allclose(same.response(DOWN, at).rotation, plain.rotation, rtol=1e-9)


def test_slotted_frame_bolts_give_more_than_round_ones() -> None:
    model = model_of("C2")
    bolts = [
        dataclasses.replace(bolt, slot_length=0.022, slot_angle=0.5 * math.pi)
        for bolt in model.frame_bolts
    ]
    at = sprocket_of("C2")
    slotted = solve(dataclasses.replace(model, frame_bolts=bolts)).response(DOWN, at)
    plain = solve(model).response(DOWN, at)
    assert 1.0 < slotted.rotation[0] / plain.rotation[0] < 1.2
    assert slotted.balance_residual < 1e-9


def test_forces_at_the_motor_bolts_add_up_to_the_load() -> None:
    model = model_of("C1")
    load = np.array([700.0, -900.0, 200.0, 4.0, 5.0, -6.0])
    response = solve(model).response(load, model.motor_centre)
    total = np.sum(response.motor_bolt_force, axis=0)  # facet axes are those of space here
    assert total == pytest.approx(load[:3], rel=1e-6)
    arms = np.array([[*bolt.centre, 0.0] for bolt in model.motor_bolts])
    arms = arms - np.asarray(model.motor_centre)
    moments = response.motor_bolt_moment + np.cross(arms, response.motor_bolt_force)
    assert np.sum(moments, axis=0) == pytest.approx(load[3:], rel=1e-5)


def test_a_cut_out_is_really_cut_and_a_round_one_is_a_hole() -> None:
    """An L-shaped cut-out takes its area away; a cut-out drawn as a circle answers as the hole."""
    model = model_of("C1")
    plate = model.facets[0]
    corners = np.array([(-20, 48), (20, 48), (20, 54), (-12, 54), (-12, 64), (-20, 64)]) / 1000
    area = (40 * 6 + 8 * 10) / 1e6
    whole, cut = (
        build(dataclasses.replace(model, facets=[dataclasses.replace(plate, holes=[*plate.holes, *more])]), 0.01)
        for more in ((), (Cutout(corners=corners),))
    )  # fmt: skip
    assert np.sum(whole.area) - np.sum(cut.area) == pytest.approx(area, rel=1e-9)
    hole = Hole(centre=(0.0, 0.055), diameter=0.02)
    turns = []
    for one in (hole, Cutout(corners=equal_area_circle(hole.centre, hole.diameter, 0.01, 24))):
        facet = dataclasses.replace(plate, holes=[*plate.holes, one])
        answer = solve(dataclasses.replace(model, facets=[facet]), 0.01)
        turns.append(answer.response(np.array([1.0, 0, 0, 0, 0, 0]), sprocket_of("C1")).rotation)
    assert turns[1] == pytest.approx(turns[0], rel=5e-3, abs=1e-3 * np.max(np.abs(turns[0])))


def test_a_bolt_beside_the_middle_of_its_slot() -> None:
    """The slot lies where it is, the bolt at its own place: area, and a washer's edge in the slot."""
    model = model_of("C1")
    bolt = dataclasses.replace(model.frame_bolts[0], slot_length=0.022, slot_angle=math.pi / 2)
    meshes = [
        build(dataclasses.replace(model, frame_bolts=[dataclasses.replace(bolt, slot_offset=o), *model.frame_bolts[1:]]), 0.01)
        for o in (0.0, 0.004)
    ]  # fmt: skip
    assert np.sum(meshes[0].area) == pytest.approx(np.sum(meshes[1].area), rel=1e-9)
    tops = [
        np.max(bolt_hole_polygon(dataclasses.replace(bolt, slot_offset=o), 0.01)[:, 1])
        for o in (0.0, 0.004)
    ]
    assert tops[1] - tops[0] == pytest.approx(0.004, abs=1e-9)
