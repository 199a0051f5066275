"""Motor on feet: balance, mirror, overturning by hand, directions, a beam, and what is refused."""

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

from mountlimit import evaluate, plate_response, plate_route, structure
from mountlimit.checks import motor_feet
from mountlimit.formulas import feet
from mountlimit.mounts import FORMS
from mountlimit.resolve import resolve

FEET = {
    "motor__bolts": "4 x M8", "motor__bolt_circle": None, "motor__shaft_height": "71 mm",
    "motor__foot_across": "112 mm", "motor__foot_along": "90 mm", "motor__foot_to_face": "30 mm",
}  # fmt: skip
BASE = {
    **FEET, "mount__form": "foot motor", "mount__width": "190 mm", "mount__thickness": "10 mm",
    "mount__free_length": None, "fixings__span_across": "150 mm", "fixings__span_along": "160 mm",
}  # fmt: skip
WHOLE = {"mount__rests": "whole"}
OUTBOARD = {
    "fixings__span_along": "90 mm",
    "fixings__span_across": "160 mm",
}  # frame bolts beside the feet


@pytest.mark.parametrize(
    "more",
    [
        {},
        WHOLE,
        OUTBOARD,
        {**OUTBOARD, **WHOLE},
        {"chain__pull": "away"},
        {"mount__material": "hdpe"},
    ],
)
def test_reactions_close(more):
    assert worst_balance(BASE, **more) < 1e-9


@pytest.mark.parametrize("more", [{}, WHOLE])
def test_mirror(more, monkeypatch):
    """A chain at 30 degrees and one at 150 degrees, torque turned round, lean the same.

    The chosen contact points are not quite symmetric: with 18 in a strip the whole plate is 1.2 %
    out, with 40 it is 0.3 %.
    """
    monkeypatch.setattr(plate_route, "CONTACT_POINTS", 40 / plate_route.SHARED)
    drive = plated(BASE, **more)
    for torque in (0.0, 0.02):
        assert lean(drive, 30, torque) == pytest.approx(lean(drive, 150, -torque), rel=0.01)


@pytest.mark.parametrize("degrees", [0, 90])
def test_what_makes_it_stiffer_and_softer(degrees):
    base = lean(plated(BASE), degrees)
    thick = plated(BASE, mount__thickness="14 mm")
    assert own_lean(thick, degrees) < own_lean(plated(BASE), degrees)
    assert lean(plated(BASE, **WHOLE), -degrees) < lean(plated(BASE), -degrees)
    assert lean(plated(BASE, fixings__joint_stiffness="100 kN/mm"), degrees) > base
    assert lean(plated(BASE, motor__foot_to_face="60 mm"), degrees) > base


def test_sprocket_nearer_the_face_lowers_no_limit():
    far, near = safe_limits(BASE), safe_limits(BASE, shaft__face_overhang="24 mm")
    for name, current in far.items():
        assert near[name] >= current * (1 - 2e-3), name


@pytest.mark.parametrize("more", [{}, WHOLE])
def test_reduced_model_answers_as_the_full_one(more):
    assert apart_from_full(plated(BASE, **more)) < 1e-2


def _pulls(**more):
    """Give the plate model's answer to 1 kN up and to 1 kN across at the sprocket, joints stiff."""
    drive = resolve(file_of(BASE, **more))
    model = FORMS["foot motor"].plates(drive, 1e10, 1e10, 1e13)
    return (full_answer(model, 0.028, 0.0, 1000.0), full_answer(model, 0.028, 1000.0, 0.0))


X, Z = np.array([-56.0, 56, -56, 56]) / 1000, np.array([-45.0, -45, 45, 45]) / 1000


def test_overturning_statics():
    """Forces and moments at the feet together hold the pull: tensions times lever, and their own moments.

    1 kN up, 28 mm before the face: 1000 * (28 + 30 + 45) = 103 N*m about x through the middle of the
    feet.  1 kN across, 71 mm above the plate's top and 5 mm more to its middle: 76 N*m about z.
    """
    up, across = _pulls()
    pull = -up.motor_bolt_force[:, 2]  # the plate's normal points down
    assert pull.sum() == pytest.approx(1000.0)
    own = -up.motor_bolt_moment[:, 0].sum()
    assert (pull * Z).sum() + own == pytest.approx(103.0, rel=1e-6)
    pull = -across.motor_bolt_force[:, 2]
    own = across.motor_bolt_moment[:, 1].sum()
    assert abs(pull.sum()) < 1e-5
    assert (pull * X).sum() + own == pytest.approx(-76.0, rel=1e-6)


def test_tension_by_statics():
    """Rigid feet: 1000 / 4 + 103 / (2 * 0.09) = 822.2 N at a front foot, 250 - 572.2 N behind.

    In the plate model the feet's washers carry part of the moment: less at the bolts, never more.
    """
    assert float(feet.foot_tension(1000.0, 103.0, 0.0, 0.09, 0.112)) == pytest.approx(
        822.2, abs=0.1
    )
    up = -_pulls(mount__thickness="40 mm", **WHOLE)[0].motor_bolt_force[:, 2]
    assert np.all((up[2:] > 0.7 * 822.2) & (up[2:] < 822.2))
    assert np.all((up[:2] < 0) & (up[:2] > -322.2))


def test_shear_by_statics():
    """1 kN across at 28 mm: 250 N each, and 103 N*m about the upright on a diagonal of 143.7 mm.

    103 / (2 * 0.1437) = 358.4 N more; the plate model's worst foot by geometry: parts across and
    along of the turning are 358.4 * 90 / 143.7 and 358.4 * 112 / 143.7.
    """
    assert float(feet.foot_shear(1000.0, 103.0, 0.09, 0.112)) == pytest.approx(608.4, abs=0.1)
    across = _pulls(mount__thickness="40 mm", **WHOLE)[1].motor_bolt_force[:, :2]
    worst = np.hypot(250 + 358.4 * 90 / 143.7, 358.4 * 112 / 143.7)
    assert np.hypot(*across.T).max() == pytest.approx(worst, rel=0.1)
    assert worst < 608.4


def test_checks_of_the_feet_take_the_place_of_those_of_the_face():
    names = {c.name for c in evaluate.applicable(plated(BASE))}
    assert {"foot_bolts", "foot_slip"} <= names
    assert not names & {"motor_bolts", "motor_threads", "motor_face_slip"}
    assert not {c.name for c in evaluate.applicable(plated({}))} & {"foot_bolts", "foot_slip"}


def _worst(check, **more):
    """Give the largest use of a check's rows at 60 A, over all load cases."""
    case = evaluate.case_at(plated(BASE, **more), np.array([60.0]))
    rows = next(c for c in evaluate.applicable(case.drive) if c.name == check).rows(case)
    return max(float(np.max(r.utilisation)) for r in rows)


@pytest.mark.parametrize(
    ("check", "worse"),
    [
        ("foot_slip", {"motor__preload": "4 kN"}),
        ("foot_slip", {"motor__face_friction": 0.1}),
        ("foot_slip", {"motor__shaft_height": "140 mm", "motor__holes": "round"}),
        ("foot_bolts", {"motor__bolts": "4 x M6"}),
        ("foot_bolts", {"motor__foot_to_face": "90 mm"}),
        ("foot_bolts", {"motor__shaft_height": "140 mm"}),
    ],
)
def test_what_makes_the_feet_worse(check, worse):
    same = {"motor__preload": "8 kN", "motor__face_friction": 0.15}
    same |= {"motor__holes": worse["motor__holes"]} if "motor__holes" in worse else {}
    assert _worst(check, **{**same, **worse}) > 1.02 * _worst(check, **same)


def test_slotted_feet_hold_by_friction_alone():
    """Round holes: bolts stop the feet, so only lifting is left."""
    case = evaluate.case_at(plated(BASE, motor__holes="round"), np.array([60.0]))
    stations = [r.station for r in motor_feet.slip_rows(case)]
    assert stations
    assert all(s.endswith("lifts") for s in stations)


def test_slip_resistance_by_hand():
    """EN 1993-1-8 eq. 3.6: k_s n mu F = 0.63 * 1 * 0.2 * 8000 = 1008 N in long slots."""
    drive = plated(BASE, motor__preload="8 kN", motor__face_friction=0.2)
    case = evaluate.case_at(drive, np.array([60.0]))
    slides = [r for r in motor_feet.slip_rows(case) if r.station.endswith("slides")]
    assert len(slides) == 5
    assert all(float(r.capacity) == pytest.approx(1008.0) for r in slides)


def test_base_plate_between_rails_as_a_beam():
    """Two rows of feet on a plate on two rails: each cut carries its own rail's share of 1 kN up.

    Statics: the pull acts 103 mm before the middle of the feet, so the rails, 160 mm apart, carry
    1000 * (0.5 +- 103 / 160); the cut at the front feet, 35 mm from the front row, sees at most the
    moment 1143.75 N * 35 mm (hinged at the bolt row), at the rear 143.75 N * 35 mm.
    """
    drive = plated(
        BASE, fixings__edge="10 mm", fixings__joint_stiffness="10000 kN/mm", frame__member="rigid"
    )
    rear, front = plate_response.sections(drive, structure.unit_load(np.pi / 2))
    assert float(rear.shear_normal) + float(front.shear_normal) == pytest.approx(1.0, rel=1e-6)
    assert float(front.shear_normal) == pytest.approx(1.14375, rel=0.1)


def test_feet_outboard_of_the_rows_have_no_cut():
    """Frame bolts beside the feet: no section of the plate has a load of its own, and that is said."""
    drive = plated(BASE, **OUTBOARD)
    assert drive.mount.cuts == ()
    assert any("fatigue is not checked" in w for w in drive.warnings)
    assert len(plated(BASE).mount.cuts) == 2


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"motor__foot_across": None}, ["motor.foot_across", "missing"]),
        ({"motor__bolt_circle": "79 mm"}, ["motor.bolt_circle", "not a known key"]),
        ({"motor__foot_across": "185 mm"}, ["motor.foot_across", "leaves the base plate"]),
        ({"motor__foot_along": "175 mm"}, ["motor.foot_along", "leaves the base plate"]),
        ({"motor__bolts": "6 x M8"}, ["motor.bolts", "four bolts"]),
        ({"fixings__span_across": "188 mm"}, ["fixings.span_across", "190.0 mm wide"]),
        ({"fixings__span_along": "90 mm", "fixings__span_across": "112 mm"}, ["fixings.span_along", "foot bolt"]),
        ({"mount__rests": "floor"}, ["mount.rests", "rails, whole"]),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(tmp_path, changes, words):
    line = message(tmp_path, BASE, **changes)
    assert all(word in line for word in words), line
