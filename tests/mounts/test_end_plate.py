"""End plate on a tube: balance, mirror, tubes against closed forms, forces on the welds, what is refused."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from form_kit import (
    apart_from_full,
    file_of,
    full_answer,
    lean,
    message,
    plated,
    safe_limits,
    worst_balance,
)

from mountlimit import evaluate, plate_response, structure
from mountlimit.mounts import FORMS, end_plate
from mountlimit.plates import solve
from mountlimit.resolve import resolve

FREE = 0.095
BASE = {
    "mount__form": "end plate", "mount__material": "s235", "mount__free_length": "95 mm",
    "mount__tube_size": "50 mm", "mount__tube_wall": "3 mm", "mount__tube_length": "80 mm",
    "fixings__bolts": None, "fixings__bolt_class": None, "fixings__span_across": None,
    "fixings__span_along": None, "fixings__weld_leg": "4 mm", "fixings__weld_quality": 1,
}  # fmt: skip
ROUND = {"mount__tube": "round"}
FLAT = {"mount__tube": "rectangular", "mount__tube_depth": "30 mm"}
FORWARD = {"mount__tube_runs": "sprocket", "mount__tube_length": "110 mm"}


@pytest.mark.parametrize(
    "more", [{}, ROUND, FLAT, FORWARD, {"chain__pull": "away"}, {"mount__material": "6061"}]
)
def test_reactions_close(more):
    assert worst_balance(BASE, **more) < 1e-9


@pytest.mark.parametrize("more", [{}, ROUND])
def test_mirror(more):
    """A chain at 30 degrees and one at 150 degrees, torque turned round, lean the same."""
    drive = plated(BASE, **more)
    for torque in (0.0, 0.02):
        assert lean(drive, 30, torque) == pytest.approx(lean(drive, 150, -torque), rel=0.01)


@pytest.mark.parametrize("degrees", [0, 90])
def test_what_makes_it_stiffer_and_softer(degrees):
    base = lean(plated(BASE), degrees)
    assert lean(plated(BASE, mount__thickness="12 mm"), degrees) < 0.9 * base
    assert lean(plated(BASE, mount__tube_wall="5 mm"), degrees) < base
    assert lean(plated(BASE, mount__tube_length="200 mm"), degrees) > 1.01 * base
    assert lean(plated(BASE, mount__free_length="130 mm"), degrees) > base
    assert lean(plated(BASE, mount__material="6061"), degrees) == pytest.approx(2.9 * base, rel=0.1)


def test_frame_member_gives_more_when_thinner():
    """The member at the tube's far end: its own part grows as its wall gets thinner."""
    leans = [
        abs(float(evaluate.case_at(plated(BASE, frame__wall=f"{w} mm"), 30.0, 0).response.displacements[1].turn[1]))
        for w in (3, 1.5)
    ]  # fmt: skip
    assert leans[1] > 1.5 * leans[0] > 0


def test_sprocket_nearer_the_face_lowers_no_limit():
    far, near = safe_limits(BASE), safe_limits(BASE, shaft__face_overhang="24 mm")
    for name, current in far.items():
        assert near[name] >= current * (1 - 2e-3), name


@pytest.mark.parametrize("more", [{}, ROUND])
def test_reduced_model_answers_as_the_full_one(more):
    assert apart_from_full(plated(BASE, **more)) < 5e-3


def _section(tube, size, depth, wall):
    """Give second moments about x and y and the torsion constant, by solids' closed forms."""
    if tube == "round":
        second = math.pi / 64 * (size**4 - (size - 2 * wall) ** 4)
        return second, second, 2 * second
    inside = (size - 2 * wall, depth - 2 * wall)
    second_x = (size * depth**3 - inside[0] * inside[1] ** 3) / 12
    second_y = (depth * size**3 - inside[1] * inside[0] ** 3) / 12
    b, h = size - wall, depth - wall
    return second_x, second_y, 2 * wall * (b * h) ** 2 / (b + h)  # Bredt


@pytest.mark.parametrize(
    ("more", "size", "depth"), [({}, 0.05, 0.05), (ROUND, 0.05, 0.05), (FLAT, 0.05, 0.03)]
)
def test_long_tube_bends_and_twists_as_a_beam(more, size, depth):
    """0.2 m more of tube turn it by M L / (E I) about x and y and by T L / (G J) about z more.

    Bending within 2 %, twist within 3 % (a polygon of twelve walls is 2.3 % too soft in twist).
    """
    turns, wall = [], 0.003
    for length in ("300 mm", "500 mm"):
        drive = resolve(file_of(BASE, **more, mount__tube_length=length))
        solution = solve(FORMS["end plate"].plates(drive, 1.0, 1.0, 1.0))
        couples = np.c_[np.zeros((3, 3)), 100.0 * np.eye(3)]
        turns.append([solution.response(c, np.zeros(3)).rotation[i] for i, c in enumerate(couples)])
    second_x, second_y, torsion = _section(more.get("mount__tube", "square"), size, depth, wall)
    e, g = float(drive.mount.material.elastic_modulus), float(drive.mount.material.shear_modulus)
    for turn, stiff, rel in zip(
        np.subtract(turns[1], turns[0]), (e * second_x, e * second_y, g * torsion), (0.02, 0.02, 0.03),
        strict=True,
    ):  # fmt: skip
        assert turn == pytest.approx(100.0 * 0.2 / stiff, rel=rel)


@pytest.mark.parametrize("more", [{}, ROUND])
def test_twist_goes_into_the_welds_as_shear_flow(more):
    """A couple about z twists the tube alone: T / (2 A) times its length along every weld (Bredt).

    Every wall carries its share of the couple.  At a corner the weld of one wall takes a little of the
    next one's flow across itself: 6 % of a square tube's couple, within 2 % none of a round one's.
    """
    drive = plated(BASE, **more, mount__tube_length="150 mm")
    load = replace(structure.unit_load(0.0, 100.0), shaft_load=0.0)
    tube = end_plate.walls(more.get("mount__tube", "square"), 0.05, 0.05, 0.003)
    area = sum(w.width * math.hypot(*w.place) / 2 for w in tube)
    taken = plate_response.solve(drive, load).welds
    for part, weld, (force, moment) in zip(tube, drive.mount.welds, taken, strict=True):
        along = "xyz".index(weld.along)
        flow, arm = 100.0 / (2 * area) * part.width, math.hypot(*part.place)
        size = abs(float(force[along]))
        assert size * arm + abs(float(moment[2])) == pytest.approx(100.0 / len(tube), rel=0.01)
        assert size == pytest.approx(flow, rel=0.02 if more else 0.07), weld.name
        assert math.hypot(float(force[1 - along]), float(force[2])) < 0.03 * flow
        assert abs(float(moment[along])) < 1e-6  # one fillet: a hinge along its line


@pytest.mark.parametrize("more", [{}, ROUND, FORWARD])
def test_welds_carry_the_whole_load(more):
    """Forces on all welds add up to the pull at the sprocket and the motor's weight."""
    drive = plated(BASE, **more)
    model = drive.plates.family.model
    found = full_answer(model, 0.028, 600.0, 800.0)
    assert found.weld_force.sum(axis=0) == pytest.approx([600.0, 800.0, 0.0], abs=1e-5)
    assert len(drive.mount.welds) == len(model.welds) == len(found.weld_force)
    assert float(drive.mount.welds[0].throat) == pytest.approx(0.707 * 0.004)


def test_polygon_has_the_round_tube_s_second_moment():
    """Twelve flat walls: second moment of the mid-line circle exactly, perimeter within 1 %."""
    tube = end_plate.walls("round", 0.05, 0.05, 0.003)
    second = sum(w.width * 0.003 * (w.place[1] ** 2 + (w.width * w.way[1]) ** 2 / 12) for w in tube)
    assert second == pytest.approx(math.pi * 0.0235**3 * 0.003, rel=1e-9)
    assert sum(w.width for w in tube) == pytest.approx(2 * math.pi * 0.0235, rel=0.01)


def test_no_frame_bolts_no_checks_of_them():
    drive = plated(BASE)
    assert drive.fixings.bolts.count == 0
    names = {c.name for c in evaluate.applicable(drive)}
    assert not names & {"bolt_slip", "bolt_strength", "bolt_bearing"}


def test_aluminium_is_soft_beside_its_weld():
    """The yield strength falls as that of the softened zone does, all over the mount."""
    drive = plated(BASE, mount__material="6061", mount__yield_strength="276 MPa")
    card = drive.mount.material.card
    softer = 276e6 * card.haz_yield / card.yield_strength
    assert float(drive.mount.material.yield_strength) == pytest.approx(softer)
    assert softer < 0.7 * 276e6


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"mount__tube_wall": None}, ["mount.tube_wall", "missing"]),
        ({"mount__tube_wall": "22 mm"}, ["mount.tube_wall", "'22 mm'", "no tube"]),
        ({"mount__free_length": "60 mm"}, ["mount.free_length", "into the motor", "mm"]),
        ({**FORWARD, "mount__free_length": "76 mm", "chain__driving_teeth": 24}, ["mount.free_length", "sprocket"]),
        ({"mount__width": "52 mm", "motor__bolt_circle": "30 mm"}, ["mount.width", "58.0 mm"]),
        ({"mount__tube": "rectangular"}, ["mount.tube_depth", "two outer sizes"]),
        ({"mount__tube_depth": "30 mm"}, ["mount.tube_depth", "square"]),
        ({"mount__material": "pom-c"}, ["mount.material", "cannot be welded"]),
        ({"fixings__bolts": "4 x M8"}, ["fixings.bolts", "not a known key"]),
        ({"mount__tube": "oval"}, ["mount.tube", "square, rectangular, round"]),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(tmp_path, changes, words):
    line = message(tmp_path, BASE, **changes)
    assert all(word in line for word in words), line
