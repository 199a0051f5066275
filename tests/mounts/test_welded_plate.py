"""Plate welded along its lower edge: statics, cantilever, directions, bad input."""

from __future__ import annotations

import numpy as np
import pytest
from welded_kit import BARE, apart_from_full, file_of, lean, message, plated, turn, worst_balance

from conftest import WELDED
from mountlimit import evaluate, plate_response, plate_route, structure
from mountlimit.checks import mount_fatigue, mount_section
from mountlimit.resolve import resolve


def welded(**changes):
    return file_of(**{**WELDED, **changes})


LONG = {
    "mount__width": "50 mm", "mount__free_length": "300 mm", "motor__bolts": "2 x M4",
    "motor__bolt_circle": "20 mm", "motor__bore": "6 mm", **BARE,
}  # fmt: skip


def test_loads_and_reactions_close():
    assert worst_balance(welded(duty__reverse="50 %", mount__weight_acts="across")) < 1e-9


def test_pulls_to_the_left_and_to_the_right_are_alike():
    drive = plated(welded())
    assert lean(drive, 30) == pytest.approx(lean(drive, 150), rel=0.01)


def test_the_weld_takes_the_whole_load():
    """A newton along x at 28 mm from the face, 85 mm over the weld and 25 mm off the mid-plane."""
    ((force, moment),) = plate_response.solve(plated(welded()), structure.unit_load(0.0)).welds
    assert [float(f) for f in force] == pytest.approx([1.0, 0.0, 0.0], abs=1e-9)
    assert [float(m) for m in moment] == pytest.approx([0.0, 0.025, -0.085], abs=1e-9)


@pytest.mark.parametrize(("modulus", "line"), [(210e9, 2e-3), (195e9, 2e-2)])
def test_reduced_model_answers_as_the_full_one(modulus, line):
    """At the low end of the modulus the weld is relatively stiffer; stress at the line's ends feels it."""
    plates = plate_route.with_plates(welded())
    found = apart_from_full(resolve(plates, {"mount.elastic_modulus": modulus}), 30.0)
    assert found.pop("line stress") < line
    assert max(found.values()) < 1e-3, found


def test_a_long_strip_bends_as_a_cantilever():
    """turn = M L / (E I) of a beam held at the weld, L up to the motor bolts and to the shaft axis."""
    drive = plated(welded(**LONG))
    inertia = 0.05 * 0.006**3 / 12
    arm = float(drive.shaft.face_overhang) - 0.003
    short, whole = (arm * length / (210e9 * inertia) for length in (0.29, 0.3))
    assert 0.97 * short < lean(drive, 90) < 1.01 * whole


def test_a_long_strip_twists_as_a_flat_bar():
    """turn = T L / (G J), J = b t**3 / 3 (1 - 0.63 t / b); held ends take a little off the length."""
    drive = plated(welded(**LONG))
    constant = 0.05 * 0.006**3 / 3 * (1 - 0.63 * 0.006 / 0.05)
    arm = float(drive.shaft.face_overhang) - 0.003
    free = arm * 0.29 / (210e9 / 2.6 * constant)
    assert 0.88 * free < abs(turn(drive, 0)[1]) < 1.0 * free


@pytest.mark.parametrize("degrees", [0, 90])
def test_thicker_and_nearer_is_stiffer_and_one_side_softer(degrees):
    base = lean(plated(welded()), degrees)
    assert lean(plated(welded(mount__thickness="8 mm")), degrees) < 0.8 * base
    assert lean(plated(welded(mount__free_length="120 mm")), degrees) > 1.1 * base
    assert lean(plated(welded(mount__material="6061")), degrees) > 2.5 * base
    assert lean(plated(welded(fixings__weld_sides="one")), degrees) > 1.01 * base


def test_cut_at_the_weld_is_judged_for_fatigue_with_the_weld_toe():
    """Category 63 at two million starts, lower than the fatigue strength of the plate itself."""
    drive = plated(welded(chain__pull="away", duty__starts=2000000))
    case = evaluate.case_at(drive, np.array([60.0]))
    rows = mount_fatigue.rows(case)
    toes = [r for c, r in zip(drive.mount.cuts, rows, strict=True) if c.toe]
    assert [r.station for r in toes] == ["plate at the weld, toe of the weld, 2e+06 starts"]
    assert toes[0].capacity == pytest.approx(63e6)
    assert any("along line" in r.station for r in mount_section.yield_rows(case))


def test_a_welded_mount_has_its_own_design_factor():
    drive = resolve(welded())
    check = next(c for c in evaluate.applicable(drive) if c.name == "mount_section")
    assert evaluate.design_factor(check, drive)[0] == 2.5


def test_one_side_is_warned_of():
    assert any("one side" in w for w in resolve(welded(fixings__weld_sides="one")).warnings)
    assert not any("one side" in w for w in resolve(welded()).warnings)


def test_a_short_weld_is_warned_of():
    """36 mm less two throats of 3.5 mm: below 30 mm."""
    narrow = {"mount__width": "36 mm", "motor__bolt_circle": "25 mm", "motor__bolts": "2 x M4"}
    assert any(
        "29 mm that count" in w for w in resolve(welded(**narrow, motor__bore="6 mm")).warnings
    )
    assert not any("that count" in w for w in resolve(welded()).warnings)


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"mount__free_length": "25 mm"}, ["mount.free_length", "shaft axis"]),
        ({"motor__bolt_circle": "130 mm", "mount__free_length": "150 mm"}, ["motor.bolt_circle"]),
        ({"fixings__bolts": "4 x M8"}, ["fixings.bolts", "not a known key"]),
        ({"fixings__weld_sides": None}, ["fixings.weld_sides", "is missing"]),
        ({"fixings__weld_sides": "three"}, ["fixings.weld_sides", "one of"]),
        ({"mount__material": "hdpe", "shaft__face_overhang": "40 mm"}, ["mount.material", "welded"]),
        ({"mount__width": "40 mm", "motor__bolt_circle": "25 mm", "motor__bolts": "2 x M4",
          "fixings__weld_leg": "28 mm", "motor__bore": "6 mm"}, ["mount.width", "leaves nothing"]),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(changes, words):
    line = message(**{**WELDED, **changes})
    assert all(word in line for word in words), line
