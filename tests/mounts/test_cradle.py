"""Motor in a cradle: balance, mirror, directions, the feet it stands on, and what is refused."""

from __future__ import annotations

import numpy as np
import pytest
from form_kit import (
    apart_from_full,
    file_of,
    full_answer,
    lean,
    message,
    own_lean,
    plated,
    safe_limits,
    worst_balance,
)

from mountlimit import evaluate, plate_route
from mountlimit.mounts import FORMS
from mountlimit.resolve import resolve

BASE = {
    "mount__form": "cradle", "motor__bolts": "4 x M8", "motor__bolt_circle": None,
    "motor__diameter": "105 mm", "motor__shaft_height": "71 mm", "mount__bands": 2,
    "motor__band_across": "112 mm", "motor__band_along": "90 mm", "motor__band_to_face": "30 mm",
    "mount__width": "190 mm", "mount__thickness": "10 mm", "mount__free_length": None,
    "fixings__span_across": "150 mm", "fixings__span_along": "160 mm",
}  # fmt: skip
WHOLE = {"mount__rests": "whole"}
SINGLE = {"mount__bands": 1, "motor__bolts": "2 x M8", "motor__band_along": None,
          "motor__band_to_face": "60 mm", "mount__cradle_length": "100 mm"}  # fmt: skip
THREE = {"mount__bands": 3, "motor__bolts": "6 x M8"}
FOOT = {
    "mount__form": "foot motor", "mount__bands": None, "motor__diameter": None,
    "motor__band_across": None, "motor__band_along": None, "motor__band_to_face": None,
    "motor__foot_across": "112 mm", "motor__foot_along": "90 mm", "motor__foot_to_face": "30 mm",
}  # fmt: skip


@pytest.mark.parametrize(
    "more", [{}, WHOLE, SINGLE, THREE, {"chain__pull": "away"}, {"mount__material": "birch_ply"}]
)
def test_reactions_close(more):
    assert worst_balance(BASE, **more) < 1e-9


@pytest.mark.parametrize("more", [{}, WHOLE, THREE])
def test_mirror(more, monkeypatch):
    """A chain at 30 degrees and one at 150 degrees, torque turned round, lean the same."""
    monkeypatch.setattr(plate_route, "CONTACT_POINTS", 40 / plate_route.SHARED)
    drive = plated(BASE, **more)
    for torque in (0.0, 0.02):
        assert lean(drive, 30, torque) == pytest.approx(lean(drive, 150, -torque), rel=0.01)


@pytest.mark.parametrize("degrees", [0, 90])
def test_what_makes_it_stiffer_and_softer(degrees):
    base = lean(plated(BASE), degrees)
    thick = plated(BASE, mount__thickness="14 mm")
    assert own_lean(thick, degrees) < own_lean(plated(BASE), degrees)
    assert lean(plated(BASE, fixings__joint_stiffness="100 kN/mm"), degrees) > base
    assert lean(plated(BASE, motor__band_to_face="60 mm"), degrees) > base
    assert lean(plated(BASE, mount__lining="rubber"), degrees) == pytest.approx(1.6 * base, rel=0.1)


def test_sprocket_nearer_the_face_lowers_no_limit():
    far, near = safe_limits(BASE), safe_limits(BASE, shaft__face_overhang="24 mm")
    for name, current in far.items():
        assert near[name] >= current * (1 - 2e-3), name


@pytest.mark.parametrize("more", [{}, SINGLE, THREE])
def test_reduced_model_answers_as_the_full_one(more):
    assert apart_from_full(plated(BASE, **more)) < 1e-2


def test_two_bands_stand_as_four_feet():
    """Bands with their screws where a foot motor has its feet: the same plate, the same lean."""
    for degrees in (0, 90, 210):
        assert lean(plated(BASE), degrees) == pytest.approx(
            lean(plated({**BASE, **FOOT}), degrees), rel=1e-9
        )


def test_three_bands_stand_stiffer():
    assert lean(plated(BASE, **THREE), 90) < lean(plated(BASE), 90)


@pytest.mark.parametrize(("more", "ends"), [({}, 4), (SINGLE, 4), (THREE, 6)])
def test_overturning_statics(more, ends):
    """1 kN up at the sprocket: the ends of the bands hold it, moments about their middle and all."""
    drive = resolve(file_of(BASE, **more))
    model = FORMS["cradle"].plates(drive, 1e10, 1e10, 1e13)
    assert len(model.motor_bolts) == ends
    up = full_answer(model, 0.028, 0.0, 1000.0)
    pull = -up.motor_bolt_force[:, 2]  # the plate's normal points down
    assert pull.sum() == pytest.approx(1000.0)
    z = np.array([b.centre[1] for b in model.motor_bolts])
    middle = float(drive.mount.plane.centre[2])
    own = -up.motor_bolt_moment[:, 0].sum()
    assert (pull * z).sum() + own == pytest.approx(1000 * (0.028 - middle), rel=1e-6)


def test_checks_of_the_bands_take_the_place_of_face_and_feet():
    names = {c.name for c in evaluate.applicable(plated(BASE))}
    assert {"band_grip", "band_screw"} <= names
    assert not names & {
        "motor_bolts",
        "motor_threads",
        "motor_face_slip",
        "foot_bolts",
        "foot_slip",
    }


def test_a_rubber_lining_is_looser_and_softer():
    """Assumed ranges: friction, softness and what stays of the tension."""
    bare, lined = (
        {r.key: r for r in plated(BASE, **m).ranges} for m in ({}, {"mount__lining": "rubber"})
    )
    assert lined["mount.band_kept"].high < bare["mount.band_kept"].likely
    assert lined["mount.softness"].high > 3 * bare["mount.softness"].high
    assert lined["motor.face_friction"].high > bare["motor.face_friction"].high
    assert safe_limits(BASE, mount__lining="rubber")["band_grip"] < safe_limits(BASE)["band_grip"]


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"motor__diameter": None}, ["motor.diameter", "missing"]),
        ({"motor__bolt_circle": "79 mm"}, ["motor.bolt_circle", "not a known key"]),
        ({"motor__shaft_height": "50 mm"}, ["motor.shaft_height", "half the motor's diameter (52.5 mm)"]),
        ({"motor__band_across": "90 mm"}, ["motor.band_across", "motor's diameter (105.0 mm)"]),
        ({"motor__bolts": "3 x M8"}, ["motor.bolts", "mount.bands = 2"]),
        ({"motor__band_along": None}, ["motor.band_along", "missing", "two bands"]),
        ({**SINGLE, "mount__cradle_length": None}, ["mount.cradle_length", "missing"]),
        ({**SINGLE, "mount__cradle_length": "140 mm"}, ["mount.cradle_length", "past the motor's mounting face"]),
        ({"mount__bands": 5}, ["mount.bands", "1 to 4"]),
        ({"mount__seat_angle": "85 deg", "mount__band_wrap": "195 deg"}, ["mount.band_wrap", "once round"]),
        ({"motor__band_across": "185 mm"}, ["motor.band_across", "leaves the base plate"]),
        ({"fixings__span_along": "90 mm", "fixings__span_across": "112 mm"}, ["fixings.span_along", "band screw"]),
        ({"mount__lining": "felt"}, ["mount.lining", "none, rubber"]),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(tmp_path, changes, words):
    line = message(tmp_path, BASE, **changes)
    assert all(word in line for word in words), line
