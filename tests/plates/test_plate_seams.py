"""Seams: a row of fasteners against a pressed butt, by statics, by symmetry and against one plate."""

from __future__ import annotations

import dataclasses
from functools import cache
from typing import Any

import numpy as np
import pytest
from seam_kit import (
    AXIAL,
    BED,
    LATERAL,
    LENGTH,
    PLACES,
    THICK,
    TOP,
    base,
    frame_bolts,
    seam,
    seam_model,
    upright,
)

from mountlimit.plates import (
    Contact,
    Hole,
    PlateError,
    PlateModel,
    PlateResponse,
    PlateSolution,
    Spacer,
    solve,
    sweep,
)
from mountlimit.plates.contact import ContactSolver

AT = np.array([0.0, 0.0, TOP])
STIFF = 100.0  # times the modulus of wood: plates all but rigid beside the fasteners
ROWS = np.array(PLACES)
COARSE = 0.03  # m, element size where only two ways of solving are compared
LOADS = (
    np.array([300.0, -200.0, 400.0, 20.0, 10.0, 5.0]),
    np.array([-500.0, 150.0, -300.0, -8.0, 4.0, -15.0]),
)


@cache
def _soft() -> PlateSolution:
    return solve(seam_model())


@cache
def _rigid() -> PlateSolution:
    return solve(seam_model(STIFF, seams=[seam(contact_stiffness=100.0 * BED)]))


def _wrench(force: np.ndarray, place: np.ndarray) -> np.ndarray:
    """Give force and moment about the motor's centre of forces at places, summed."""
    return np.r_[force.sum(axis=0), np.cross(place - AT, force).sum(axis=0)]


def _on_upright(response: PlateResponse) -> np.ndarray:
    """Give the wrench of seam and butt on the upright plate; it stands in x and z, out is z."""
    places = np.stack([ROWS - 0.5 * LENGTH, 0 * ROWS, 0 * ROWS + 0.5 * THICK], axis=1)
    pull = response.seam_tension
    along, across = response.seam_shear.T
    fasteners = -np.stack([along, -across, pull], axis=1)  # its normal is -y
    push = response.contact_force[:, None] * np.array([0.0, 0.0, 1.0])
    return _wrench(fasteners, places) + _wrench(push, response.contact_place)


@pytest.mark.parametrize("load", LOADS)
def test_the_forces_on_each_plate_close(load: np.ndarray) -> None:
    response = _soft().response(load, AT)
    left = _on_upright(response) + load
    assert np.max(np.abs(left)) < 1e-9 * np.max(np.abs(load))
    on_frame = np.r_[response.bolt_shear.sum(axis=0), response.bolt_tension.sum()]
    assert on_frame == pytest.approx(load[:3], abs=1e-8 * np.max(np.abs(load)))  # frame on -z
    assert response.balance_residual < 1e-8


@pytest.mark.parametrize("way", [1.0, -1.0])
def test_a_moment_that_opens_the_seam_is_a_couple_of_half_the_thickness(way: float) -> None:
    """T = M / (n t / 2) and theta = M / (n k (t / 2)^2): statics of a block turning on its edge."""
    moment, lever, count = 100.0 * way, 0.5 * THICK, len(PLACES)
    response = _rigid().response([0, 0, 0, moment, 0, 0], AT)
    assert response.seam_tension == pytest.approx(100.0 / (count * lever), rel=0.002)
    turn = moment / (count * AXIAL * lever**2)
    assert response.rotation[0] == pytest.approx(turn, rel=0.01)
    pressed = response.contact_place[response.contact_force > 1.0]
    assert pressed[:, 1] == pytest.approx(-way * lever)  # the one edge only


def test_pulled_along_the_plate_it_turns_on_the_end_of_the_seam() -> None:
    """T_i = M d_i / sum d^2, d from the end: the elementary bolt-row rule with a rigid bed."""
    fine = seam(contact_stiffness=100.0 * BED, pitch=LENGTH / 48)
    response = solve(seam_model(STIFF, seams=[fine])).response([1000.0, 0, 0, 0, 0, 0], AT)
    from_end = LENGTH - ROWS
    moment = 1000.0 * (TOP - 0.5 * THICK)
    wanted = moment * from_end / np.sum(from_end**2)
    assert response.seam_tension == pytest.approx(wanted, abs=0.03 * wanted[0])
    assert np.sum(response.seam_shear[:, 0]) == pytest.approx(1000.0, rel=1e-6)
    assert response.seam_shear[:, 0] == pytest.approx(250.0, rel=0.02)


def test_a_torque_about_the_upright_axis_is_shared_by_distance() -> None:
    """S_i = T x_i / sum x^2 for equal springs in a row between rigid plates."""
    response = _rigid().response([0, 0, 0, 0, 0, 50.0], AT)
    x = ROWS - 0.5 * LENGTH
    wanted = -50.0 * x / np.sum(x**2)  # along -y, the upright plate's normal
    assert response.seam_shear[:, 1] == pytest.approx(wanted, rel=0.01)
    assert response.rotation[2] == pytest.approx(50.0 / (LATERAL * np.sum(x**2)), rel=0.02)


def test_pulled_off_the_fasteners_take_all_pushed_on_the_butt_takes_its_share() -> None:
    response = _rigid().response([0, 0, 1000.0, 0, 0, 0], AT)
    assert response.seam_tension == pytest.approx(250.0, rel=0.02)
    assert np.max(np.abs(response.contact_force)) < 1e-3
    pushed = solve(seam_model(STIFF)).response([0, 0, -1000.0, 0, 0, 0], AT)
    bed = BED * LENGTH * THICK  # two springs side by side
    fasteners = len(PLACES) * AXIAL
    assert np.sum(pushed.contact_force) == pytest.approx(1000 * bed / (bed + fasteners), rel=1e-4)
    assert np.sum(pushed.seam_tension) == pytest.approx(
        -1000 * fasteners / (bed + fasteners), rel=0.02
    )


def test_a_pressed_bed_turns_by_a_twelfth() -> None:
    """Pressed all over: theta = M / (L k t^3 / 12); springs on the middle line add nothing."""
    push = [0, 0, -1e5, 0, 0, 0]
    solution = solve(seam_model(STIFF, seams=[seam(contact_stiffness=0.1 * BED)]))
    plain = solution.response(push, AT).rotation[0]
    turned = solution.response([0, 0, -1e5, 20.0, 0, 0], AT).rotation[0]
    bed = LENGTH * 0.1 * BED * THICK**3 / 12.0
    assert turned - plain == pytest.approx(20.0 / bed, rel=0.01)


@pytest.mark.parametrize("load", LOADS)
def test_the_butt_never_pulls_and_presses_only_where_it_is_shut(load: np.ndarray) -> None:
    solution = _soft()
    response = solution.response(load, AT)
    force, points = response.contact_force, solution.contact_points
    opening = points.rows @ solution.nodal_movement(response).ravel()
    largest = np.max(force)
    assert np.min(force) > -1e-8 * largest
    wanted = np.maximum(0.0, -opening) * np.abs(points.stiffness)
    assert force == pytest.approx(wanted, abs=1e-6 * largest)
    assert np.any(wanted == 0.0)


def test_stiffer_fasteners_and_a_thicker_edge_tilt_less() -> None:
    load = [0, 1000.0, 0, 0, 0, 0]
    plain = _soft().response(load, AT)
    stiff = solve(seam_model(seams=[seam(axial_stiffness=2 * AXIAL)])).response(load, AT)
    assert 0.5 < stiff.rotation[0] / plain.rotation[0] < 0.6
    facets = [upright(thickness=1.5 * THICK), base()]
    thick = solve(seam_model(facets=facets)).response(load, AT)
    assert thick.rotation[0] / plain.rotation[0] == pytest.approx(1 / 1.5**2, rel=0.1)
    assert thick.seam_tension == pytest.approx(plain.seam_tension / 1.5, rel=0.01)


def test_what_the_seam_does_scales_with_the_load_but_not_with_its_sign() -> None:
    once, twice = (_soft().response(f * LOADS[0], AT) for f in (1.0, 2.0))
    assert twice.seam_tension == pytest.approx(2.0 * once.seam_tension, rel=1e-7)
    back = _soft().response(-LOADS[0], AT)
    assert np.sum(back.seam_tension) != pytest.approx(-np.sum(once.seam_tension), rel=0.5)


def test_few_cells_along_the_butt_are_enough() -> None:
    fine = solve(seam_model(seams=[seam(pitch=LENGTH / 48)]))
    for load in (*LOADS, np.array([1000.0, 0, 0, 0, 0, 0])):
        a, b = _soft().response(load, AT), fine.response(load, AT)
        assert a.rotation == pytest.approx(b.rotation, abs=0.01 * np.max(np.abs(b.rotation)))
        assert a.seam_tension == pytest.approx(b.seam_tension, abs=0.015 * np.max(b.seam_tension))


def test_the_plates_of_a_seam_share_no_joint_wherever_the_edge_is_drawn() -> None:
    for low in (0.0, 0.5 * THICK):
        assert len(solve(seam_model(low=low)).system.mesh.joints) == 0
    assert len(solve(seam_model(low=0.0, seams=[])).system.mesh.joints) == 1


def test_a_dense_row_of_stiff_fasteners_comes_near_a_bent_plate_from_the_soft_side() -> None:
    """Within 11 % in tilt of one bent plate (with the corner rule), as measured here."""
    loads = ([0, 1000.0, 0, 0, 0, 0], [1000.0, 0, 0, 0, 0, 0], [0, 0, 0, 0, 0, 50.0])
    bent = solve(seam_model(low=0.0, seams=[]))
    wanted = [bent.response(load, AT).rotation for load in loads]
    ratios = []
    for count in (4, 8, 15):
        row = seam(
            places=[LENGTH * (i + 0.5) / count for i in range(count)], axial_stiffness=1e9,
            lateral_stiffness=1e9, contact_stiffness=1e14, washer_diameter=0.008,
        )  # fmt: skip
        solution = solve(seam_model(seams=[row]))
        found = [solution.response(load, AT).rotation for load in loads]
        ratios.append(
            [f[axis] / w[axis] for f, w, axis in zip(found, wanted, (0, 1, 2), strict=True)]
        )
    assert np.all(np.diff(ratios, axis=0) < 0.0)
    assert np.all(np.array(ratios) > 1.0)
    assert np.all(np.array(ratios[-1]) < 1.11)


def test_an_edge_over_the_rim_presses_only_where_there_is_plate() -> None:
    """The base ends 7 mm beyond the seam: the couple's lever on that side is 7 mm, not 9."""
    outline = np.array([[-0.1, -0.15], [0.1, -0.15], [0.1, 0.007], [-0.1, 0.007]])
    low = base(outline=outline, elastic_modulus=1e12)
    bolts = [
        dataclasses.replace(bolt, centre=(x, y))
        for bolt, (x, y) in zip(
            frame_bolts(),
            [(-0.08, -0.13), (-0.08, -0.03), (0.08, -0.13), (0.08, -0.03)],
            strict=True,
        )
    ]
    model = seam_model(
        STIFF,
        facets=[upright(elastic_modulus=1e12), low],
        frame_bolts=bolts,
        seams=[seam(contact_stiffness=100.0 * BED)],
    )
    solution = solve(model)
    outward = solution.response([0, 0, 0, -10.0, 0, 0], AT)
    inward = solution.response([0, 0, 0, 10.0, 0, 0], AT)
    assert np.sum(outward.seam_tension) == pytest.approx(10.0 / 0.007, rel=0.002)
    assert np.sum(inward.seam_tension) == pytest.approx(10.0 / 0.009, rel=0.002)


def test_the_frame_and_the_butt_press_together() -> None:
    """Both kinds of contact at once: each plate still closes, nothing pulls, the base pries."""
    contact = [Contact(facet=1, side=-1, stiffness=2e12)]
    solution = solve(seam_model(contacts=contact))
    response = solution.response(LOADS[0], AT)
    force, points = response.contact_force, solution.contact_points
    opening = points.rows @ solution.nodal_movement(response).ravel()
    wanted = np.maximum(0.0, -opening) * np.abs(points.stiffness)
    assert force == pytest.approx(wanted, abs=1e-6 * np.max(force))
    on_frame = response.contact_seam < 0
    assert np.sum(on_frame) > 0
    assert np.max(force[on_frame]) > 1.0
    pull = np.sum(response.bolt_tension) - np.sum(force[on_frame])
    assert pull == pytest.approx(LOADS[0][2], rel=1e-6)
    assert response.balance_residual < 1e-8


def test_nothing_holds_a_plate_whose_butt_opens_freely() -> None:
    """One point that is all spring: pulled, it is let go and nothing is left to hold it."""
    solver = ContactSolver.of(np.array([[1e-9]]), np.array([-1e9]))
    with pytest.raises(PlateError, match="pulls its plates apart"):
        solver.forces(np.array([1e-3]))
    assert solver.forces(np.array([-1e-3])) == pytest.approx([0.0])


def _turned(model: PlateModel, matrix: np.ndarray, shift: np.ndarray) -> PlateModel:
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
            dataclasses.replace(b, frame_side=side * b.frame_side) for b in model.frame_bolts
        ],
    )


_C, _S = np.cos(0.7), np.sin(0.7)
TURN = np.array([[_C, -_S, 0], [_S, _C, 0], [0, 0, 1]]) @ np.array(
    [[1, 0, 0], [0, _C, -_S], [0, _S, _C]]
)


@pytest.mark.parametrize(
    "matrix", [TURN, np.diag([1.0, -1.0, 1.0]), np.diag([-1.0, 1.0, 1.0]) @ TURN]
)
def test_a_turned_or_mirrored_seam_answers_alike(matrix: np.ndarray) -> None:
    shift = np.array([0.2, -0.3, 0.5])
    side = round(np.linalg.det(matrix))
    load = LOADS[0]
    plain = _soft().response(load, AT)
    found = solve(_turned(seam_model(), matrix, shift)).response(
        np.r_[matrix @ load[:3], side * matrix @ load[3:]], matrix @ AT + shift
    )
    for one, two in (
        (found.displacement, matrix @ plain.displacement),
        (found.rotation, side * matrix @ plain.rotation),
        (found.seam_tension, plain.seam_tension),
        (found.seam_shear, plain.seam_shear * np.array([1.0, side])),
        (found.contact_force, plain.contact_force if side > 0 else _swapped(plain.contact_force)),
        (found.frame_ring.largest(), plain.frame_ring.largest()),
    ):
        assert np.max(np.abs(one - two)) < 1e-6 * np.max(np.abs(two))


def _swapped(force: np.ndarray) -> np.ndarray:
    """Give forces with the two faces of the edge plate changed over."""
    return force.reshape(-1, 4)[:, ::-1].ravel()


def test_a_sweep_meets_the_single_solution() -> None:
    """At the middle thickness exactly the same model; the base alone varies here."""
    model = seam_model(low=0.0)
    loads = [[(LOADS[0], AT)], [(LOADS[1], AT)]]
    solved = solve(model, COARSE)
    swept = sweep(model, [0.012, THICK, 0.027], loads, [1], COARSE)
    for i, load in enumerate(LOADS):
        single = solved.response(load, AT)
        assert swept.rotation[1, i] == pytest.approx(
            single.rotation, abs=0.002 * np.max(np.abs(single.rotation))
        )
    tilt = np.linalg.norm(swept.rotation, axis=2)
    assert np.all(np.diff(tilt, axis=0) < 0.0)


def _with(**changes: Any) -> PlateModel:
    return seam_model(seams=[seam(**changes)])


FAULTS = [
    (_with(facets=(0, 0)), "seam 1: needs two different plates"),
    (_with(facets=(0, 2)), "seam 1: needs two different plates"),
    (_with(axial_stiffness=0.0), "seam 1: its axial stiffness 0 is not above nothing and finite"),
    (_with(lateral_stiffness=np.inf), "seam 1: its lateral stiffness inf is not above nothing and finite"),
    (_with(contact_stiffness=-1.0), "seam 1: its contact stiffness -1 is not above nothing and finite"),
    (_with(washer_diameter=0.0), "seam 1: its washer diameter 0 is not above nothing and finite"),
    (_with(pitch=0.0), "seam 1: its pitch 0 is not above nothing and finite"),
    (_with(places=()), "seam 1: has no fastener"),
    (_with(places=(0.02, 0.17)), "seam 1: fastener 2 at 170 mm is not on its line of 160 mm"),
    (_with(start=(-0.08, 0.02), end=(0.08, 0.02)), "seam 1: its line does not lie on a straight edge of upright"),
    (seam_model(low=0.03), "seam 1: the edge of upright lies 30 mm from the mid-plane of base; "
     "expected 0 (mid-plane) or 9 mm (its face)"),
    (seam_model(facets=[upright(e2=(0.0, 0.6, 0.8)), base()]), "seam 1: upright is not at right angles to base"),
    (_with(start=(-0.08, 0.009), end=(-0.08, 0.17)), "seam 1: its line is not parallel to base"),
    (_with(places=(0.02, 0.028)), "base: the washer of fastener 1 of seam 1 and the washer of "
     "fastener 2 of seam 1 overlap"),
    (seam_model(facets=[upright(), base(outline=np.array(
        [[-0.1, -0.08], [0.1, -0.08], [0.1, 0.004], [-0.1, 0.004]]))],
        frame_bolts=frame_bolts()[::2]), "base: the washer of fastener 1 of seam 1 leaves the plate"),
    (seam_model(facets=[upright(), base(holes=[Hole(centre=(-0.057, 0.003), diameter=0.004)])]),
     "fastener 1 of seam 1: a hole cuts into its washer"),
    (seam_model(seams=[seam(places=(0.08,))]), "mount: part of it is not held"),
    (seam_model(low=0.009, seams=[]), "mount: a plate is not joined to the rest"),
]  # fmt: skip


@pytest.mark.parametrize(("model", "message"), FAULTS, ids=[text for _, text in FAULTS])
def test_faults_are_named_in_one_line(model: PlateModel, message: str) -> None:
    with pytest.raises(PlateError) as caught:
        solve(model)
    assert str(caught.value) == message


def test_a_spacer_beside_a_seam_keeps_its_place() -> None:
    """Bodies of spacers come last in the unknowns; a seam must not shift them."""
    back = upright(name="back", origin=(0.0, 0.05, 0.0), outline=upright(0.06).outline)
    posts = [
        Spacer(
            facets=(0, 2), centre=(x, z), diameter=0.012, elastic_modulus=2e11, poissons_ratio=0.3
        )
        for x in (-0.06, 0.06)
        for z in (0.08, 0.155)
    ]
    model = seam_model(facets=[upright(), base(), back], spacers=posts)
    response = solve(model).response(LOADS[0], AT)
    assert np.max(np.abs(_on_upright(response) + LOADS[0])) < 1e-8 * np.max(LOADS[0])
