"""Plate bolted along two edges: statics of both halves, beam limits, directions, bad input."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from bolted_kit import (
    apart_from_full,
    file_of,
    lean,
    message,
    moved,
    one_case,
    plated,
    safe_limits,
    worst_balance,
)

from mountlimit import plate_response, structure
from mountlimit.assess import assess
from mountlimit.cards import folder
from mountlimit.drivefile import DriveFile, read

ROWS = {"mount__form": "plate two rows", "fixings__span_along": "170 mm"}
BARE = {"motor__mass": "0.05 kg", "frame__member": "rigid"}


def two_rows(**changes: Any) -> DriveFile:
    """The base drive with rows 85 mm below and above the shaft."""
    return file_of(**{**ROWS, **changes})


def test_loads_and_reactions_close():
    assert worst_balance(two_rows(duty__reverse="50 %", mount__weight_acts="across")) < 1e-9


def test_pulls_to_the_left_and_to_the_right_are_alike():
    drive = plated(two_rows())
    assert lean(drive, 30) == pytest.approx(lean(drive, 150), rel=0.01)
    assert moved(drive, 30) == pytest.approx(moved(drive, 150), rel=0.01)


def test_pulls_up_and_down_are_alike_when_the_rows_are_equally_far():
    drive = plated(two_rows())
    assert lean(drive, 60) == pytest.approx(lean(drive, -60), rel=0.01)


@pytest.mark.parametrize("pull", ["across", "away", "20 deg"])
def test_reduced_model_answers_as_the_full_one(pull):
    assert max(apart_from_full(plated(two_rows(chain__pull=pull)))) < 2e-3


@pytest.mark.parametrize("free", ["85 mm", "60 mm"])
def test_both_halves_together_carry_the_load(free):
    """Cuts below and above the motor: their forces, carried to one place, add up to the load."""
    drive = plated(two_rows(mount__free_length=free, chain__pull="20 deg"))
    loads = one_case(drive, "pull")
    whole, turning = structure.wrench(drive, loads, (0.0, 0.0, 0.0))
    force, moment = np.zeros(3), np.zeros(3)
    for cut, found in zip(drive.mount.cuts, plate_response.sections(drive, loads), strict=True):
        if "motor bolts" in cut.name:
            f = np.array([found.shear_across, found.normal, found.shear_normal], float)
            m = np.array([found.moment_across, found.torque, found.moment_normal], float)
            force += f
            moment += m + np.cross([float(v) for v in cut.place], f)
    size = np.linalg.norm([float(v) for v in whole])
    assert force == pytest.approx([float(v) for v in whole], abs=1e-8 * size)
    assert moment == pytest.approx([float(v) for v in turning], abs=1e-8 * size)


def test_rows_equally_far_share_a_pull_across_by_halves():
    """By symmetry each half takes half of the shaft load and half of its moment about y."""
    drive = plated(two_rows(chain__pull="across", **BARE))
    loads = structure.unit_load(0.0)
    found = plate_response.sections(drive, loads)
    _, moment = structure.wrench(drive, loads, drive.mount.cuts[1].place)
    for part in found:
        assert float(part.shear_across) == pytest.approx(0.5, rel=0.02)
        assert float(part.torque) == pytest.approx(0.5 * float(moment[1]), rel=0.02)


def test_nearer_row_takes_more():
    drive = plated(two_rows(mount__free_length="60 mm", **BARE))
    low, _, _, high = plate_response.sections(drive, structure.unit_load(0.0))
    assert float(low.shear_across) > 1.2 * float(high.shear_across)


def test_long_strip_turns_as_a_beam_between_hinged_and_held_ends():
    """A couple C in the middle turns a bar by C L / 12 E I (hinged) or C L / 16 E I (held).

    Source: Roark's Formulas for Stress and Strain table 8.1, cases 3e and 3d, a = L / 2 (from memory).
    """
    drive = plated(
        two_rows(
            mount__width="50 mm", mount__free_length="300 mm", fixings__span_along="600 mm",
            fixings__span_across="25 mm", motor__bolts="2 x M4", motor__bolt_circle="20 mm",
            motor__bore="6 mm", fixings__joint_stiffness="10000 kN/mm", **BARE,
        )
    )  # fmt: skip
    overhang = float(drive.shaft.face_overhang) - float(drive.mount.thickness) / 2
    modulus = float(drive.mount.material.elastic_modulus)
    stiff = modulus * 0.05 * float(drive.mount.thickness) ** 3 / 12
    hinged, held = (overhang * 0.6 / (n * stiff) for n in (12, 16))
    assert 0.95 * held < lean(drive, 90) < hinged


@pytest.mark.parametrize("degrees", [0, 90])
def test_thicker_is_stiffer_and_softer_joint_gives_more(degrees):
    base = moved(plated(two_rows()), degrees)
    assert moved(plated(two_rows(mount__thickness="12 mm")), degrees) < base
    assert moved(plated(two_rows(fixings__joint_stiffness="100 kN/mm")), degrees) > base
    assert moved(plated(two_rows(mount__material="hdpe")), degrees) > 10 * base


def test_leans_less_than_a_plate_held_on_one_edge():
    one = plated(file_of(fixings__span_along="0 mm", fixings__bolts="2 x M8"))
    two = plated(two_rows())
    assert lean(two, 0) < 0.7 * lean(one, 0)
    assert lean(two, 90) < 0.5 * lean(one, 90)


def test_sprocket_nearer_the_face_lowers_no_limit():
    """To 1e-4: contact shifts a little of the shear from bolt to bolt as the moment falls."""
    far, near = safe_limits(**ROWS), safe_limits(**ROWS, shaft__face_overhang="24 mm")
    for name, current in far.items():
        assert near[name] >= current * (1 - 1e-4), name


def test_three_motor_bolts_leave_a_single_hole_above():
    """Two bolts level below the shaft, one above: the upper cut has one hole at half the circle."""
    drive = plated(two_rows(motor__bolts="3 x M6", motor__bore="30 mm"))
    lower, upper = drive.mount.cuts[1:3]
    assert len(lower.holes) == 2
    assert upper.holes == ((0.0, pytest.approx(0.0066)),)
    assert float(upper.place[1]) == pytest.approx(0.0395)
    assert float(lower.place[1]) == pytest.approx(-0.0395 * math.cos(math.pi / 3))


def test_example_shows_a_shaft_that_leans_more_than_the_plate():
    """Cider mill: over eight ninths of the lean is the motor shaft's."""
    answer = assess(read(folder("examples") / "cider_mill.toml"))
    lean_of = {p.name: abs(float(p.turn[0])) for p in answer.at_set.response.displacements}
    shaft = lean_of.pop("motor shaft")
    assert shaft > 8 * sum(lean_of.values())


def test_says_what_the_frame_member_stands_for():
    assert any("lower one" in w for w in plated(two_rows()).warnings)
    assert not any("lower one" in w for w in plated(two_rows(frame__member="rigid")).warnings)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"fixings__span_along": "100 mm"}, ["fixings.span_along", "upper row", "'100 mm'"]),
        ({"mount__free_length": "30 mm"}, ["mount.free_length", "lower row"]),
        ({"fixings__bolts": "5 x M8"}, ["fixings.bolts", "even number"]),
        ({"fixings__bolts": "2 x M8"}, ["fixings.bolts", "four or more"]),
        ({"fixings__span_across": "118 mm"}, ["fixings.span_across", "leaves the mount"]),
        ({"fixings__span_along": None}, ["fixings.span_along", "missing"]),
        ({"mount__route": "sections"}, ["mount.route", "not a known key"]),
        ({"fixings__span_across": "108 mm", "fixings__washer": "wide"}, ["leaves the plate"]),
    ],
)
def test_bad_input_is_one_line(tmp_path, changes, words):
    line = message(tmp_path, **{**ROWS, **changes})
    assert all(word in line for word in words), line
