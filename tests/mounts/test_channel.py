"""Channel: balance, mirror, directions, solid elements of the same channel, and what is refused."""

from __future__ import annotations

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

from mountlimit.mounts import FORMS
from mountlimit.resolve import resolve

BASE = {"mount__form": "channel", "mount__width": "140 mm", "mount__thickness": "6 mm",
        "mount__flange_height": "40 mm"}  # fmt: skip
SPROCKET = {"mount__flanges_point": "sprocket", "mount__flange_height": "25 mm"}


@pytest.mark.parametrize(
    "more", [{}, SPROCKET, {"mount__material": "hdpe"}, {"chain__pull": "away"}]
)
def test_reactions_close(more):
    assert worst_balance(BASE, **more) < 1e-9


def test_mirror():
    """A chain at 30 degrees and one at 150 degrees, torque turned round, lean the same."""
    drive = plated(BASE)
    for torque in (0.0, 0.02):
        assert lean(drive, 30, torque) == pytest.approx(lean(drive, 150, -torque), rel=0.01)


@pytest.mark.parametrize("degrees", [0, 90])
def test_what_makes_it_stiffer_and_softer(degrees):
    base = lean(plated(BASE), degrees)
    assert lean(plated(BASE, mount__thickness="8 mm"), degrees) < 0.9 * base
    assert lean(plated(BASE, mount__flange_height="60 mm"), degrees) < base
    assert lean(plated(BASE, fixings__joint_stiffness="100 kN/mm"), degrees) > base
    assert lean(plated(BASE, mount__free_length="110 mm"), degrees) > base


@pytest.mark.parametrize("degrees", [0, 90])
def test_flanges_stiffen_a_plate_and_tall_ones_much(degrees):
    """Low flanges add little to the plate of the same size; tall ones take most of its lean away."""
    plate = lean(plated({"mount__width": "140 mm", "mount__thickness": "6 mm"}), degrees)
    low, tall = (lean(plated(BASE, mount__flange_height=f"{h} mm"), degrees) for h in (13, 50))
    assert tall < 0.75 * plate
    assert tall < low < 1.02 * plate


def test_frame_lies_against_the_back():
    """Flanges to the motor: the frame in front of the web; to the sprocket: behind it."""
    for more, side, face in (({}, 1, 6e-3), (SPROCKET, -1, 0.0)):
        drive = resolve(file_of(BASE, **more))
        model = FORMS["channel"].plates(drive, 4e8, 2e8, 1e12)
        assert {b.frame_side for b in model.frame_bolts} == {side}
        assert model.contacts[0].side == side
        assert float(drive.mount.plane.centre[2]) == pytest.approx(face)
        tips = [f.to_space(np.asarray(f.outline))[:, 2] for f in model.facets[1:]]
        reach = -side * float(drive.mount.own["flange height"])
        back = 6e-3 if side > 0 else 0.0
        for z in tips:
            assert max(abs(v - back) for v in z) == pytest.approx(abs(reach))


@pytest.mark.parametrize("more", [{"chain__pull": "away"}, SPROCKET, {}])
def test_sprocket_nearer_the_face_lowers_no_limit(more):
    """But slip of the frame bolts when pulled across, flanges to the motor (see the form): under 1 %."""
    far, near = (safe_limits(BASE, **more, shaft__face_overhang=f"{e} mm") for e in (30, 24))
    for name, current in far.items():
        known = not more and name == "bolt_slip"
        assert near[name] >= current * (1 - (0.01 if known else 2e-3)), name


def test_reduced_model_answers_as_the_full_one():
    assert apart_from_full(plated(BASE)) < 5e-3


# Web 125 x 200 x 5 outside, flanges 42.5 high, E = 70 GPa, nu = 0.33; four frame bolts (washers
# 16 / 9 mm on springs of 4e5 and 2e5 N/mm), four motor bolts (12 / 7) on 100 mm, bore 40; 3 kN at
# z = 60 mm from the mid-plane; turn in rad by 88 000 solid elements (computed, own measurement).
SOLID = ((3000.0, 0.0, 1, 0.005787), (3000.0, 0.0, 2, -0.0004813), (0.0, -3000.0, 0, 0.01093))


@pytest.mark.parametrize(("fx", "fy", "axis", "turn"), SOLID)
def test_solid_elements(fx, fy, axis, turn):
    """The form's own plate model, sizes as the solid one and contact left out: within 4 % of it."""
    file = file_of(
        BASE, mount__thickness="5 mm", mount__width="125 mm", mount__flange_height="42.5 mm",
        mount__free_length="80 mm", mount__elastic_modulus="70 GPa", motor__bolt_circle="100 mm",
        motor__bore="40 mm", fixings__span_across="70 mm", fixings__span_along="40 mm",
        fixings__edge="20 mm",
    )  # fmt: skip
    model = FORMS["channel"].plates(resolve(file), 4e8, 2e8, 1e12)
    top = 0.060  # of the solid channel above the shaft axis
    facets = [
        replace(f, poissons_ratio=0.33, shear_modulus=None,
                outline=[(a, top if b > 0 else b) for a, b in f.outline])
        for f in model.facets
    ]  # fmt: skip
    frame = [replace(b, washer_diameter=0.016, hole_diameter=0.009) for b in model.frame_bolts]
    motor = [replace(b, washer_diameter=0.012, hole_diameter=0.007) for b in model.motor_bolts]
    same = replace(
        model, facets=facets, frame_bolts=frame, motor_bolts=motor, contacts=[], section_lines=[]
    )
    found = full_answer(same, 0.0625, fx, fy)
    assert found.rotation[axis] == pytest.approx(turn, rel=0.04)


def test_says_that_fatigue_is_not_checked():
    assert any("Fatigue of the channel is not checked" in w for w in plated(BASE).warnings)


def test_chain_meets_tall_flanges():
    """Flanges to the sprocket that stand higher than the chain runs are said; lower ones are not."""
    tall = plated(BASE, **{**SPROCKET, "mount__flange_height": "40 mm"}).warnings
    assert any("higher than the chain" in w for w in tall)
    assert not any("higher than the chain" in w for w in plated(BASE, **SPROCKET).warnings)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"mount__flange_height": None}, ["mount.flange_height", "missing"]),
        ({"mount__flange_height": "10 mm"}, ["mount.flange_height", "'10 mm'", "plate"]),
        ({"mount__width": "100 mm", "fixings__span_across": "70 mm"}, ["motor.bolt_circle", "88.0 mm"]),
        ({"fixings__span_across": "120 mm"}, ["fixings.span_across", "between the flanges"]),
        ({"mount__flanges_point": "up"}, ["mount.flanges_point", "motor, sprocket"]),
        ({"mount__free_length": "25 mm"}, ["mount.free_length", "motor bolts"]),
        ({"mount__route": "sections"}, ["mount.route", "not a known key"]),
        ({"mount__thickness": "46 mm", "mount__width": "90 mm"}, ["mount.width", "two flanges"]),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(tmp_path, changes, words):
    line = message(tmp_path, BASE, **changes)
    assert all(word in line for word in words), line
