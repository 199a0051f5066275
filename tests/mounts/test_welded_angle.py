"""Angle with a welded foot: statics of its fillets, prying at the heel, directions, bad input."""

from __future__ import annotations

import numpy as np
import pytest
from welded_kit import ANGLE, BARE, apart_from_full, file_of, lean, message, plated, worst_balance

from mountlimit import plate_response, structure
from mountlimit.resolve import resolve

LINES = pytest.mark.parametrize("lines", ["toe and heel", "both sides", "all round"])


def welded(**changes):
    return file_of(**{**ANGLE, **changes})


def forces(drive, degrees):
    """Force and moment on every fillet for a newton along a chain angle."""
    found = plate_response.solve(drive, structure.unit_load(np.radians(degrees))).welds
    names = [w.name for w in drive.mount.welds]
    return dict(
        zip(names, ([[float(v) for v in part] for part in pair] for pair in found), strict=True)
    )


@LINES
def test_loads_and_reactions_close(lines):
    file = welded(duty__reverse="50 %", mount__weight_acts="across", fixings__weld_lines=lines)
    assert worst_balance(file) < 1e-9


@LINES
def test_pulls_to_the_left_and_to_the_right_are_alike(lines):
    drive = plated(welded(fixings__weld_lines=lines))
    assert lean(drive, 30) == pytest.approx(lean(drive, 150), rel=0.01)


@LINES
def test_reduced_model_answers_as_the_full_one(lines):
    found = apart_from_full(plated(welded(fixings__weld_lines=lines)), 90.0)
    assert max(found.values()) < 5e-3, found


def test_fillets_are_single_and_hinge():
    """No moment about a fillet's own line; each counts two throats less than it is long."""
    drive = plated(welded(fixings__weld_lines="all round"))
    lengths = [float(w.length) for w in drive.mount.welds]
    assert lengths == pytest.approx([0.12 - 2 * 0.003535] * 2 + [0.05 - 2 * 0.003535] * 2)
    for name, (force, moment) in forces(drive, 90).items():
        own = 2 if "side" in name else 0
        assert abs(moment[own]) < 1e-6 * max(map(abs, force))


def test_leg_leaning_over_the_foot_prys_at_the_heel():
    """The heel's weld is pulled by far more than by the load and a lever of the whole foot."""
    drive = plated(welded(**BARE))
    pulled = forces(drive, 90)["weld at the heel"][0][1]
    arm = float(drive.shaft.face_overhang) - 0.003
    assert pulled > 1.5 * (1.0 + arm / 0.05)
    leaning_away = forces(drive, -90)
    assert abs(leaning_away["weld at the heel"][0][1]) < 1.6
    assert leaning_away["weld at the toe"][0][1] == pytest.approx(arm / 0.053, rel=0.25)


def test_contact_points_at_the_heel_stand_close_enough():
    """Against points 0.6 times as far apart: the heel's weld within 6 per cent."""
    drive = plated(welded(**BARE))
    assert apart_from_full(drive, 90.0, contact_pitch=0.6)["weld force"] < 0.06


def test_a_long_leg_bends_as_a_cantilever():
    """turn = M L / (E I) above a foot welded all round, which adds a little of its own."""
    drive = plated(
        welded(
            mount__width="50 mm", mount__free_length="300 mm", motor__bolts="2 x M4",
            motor__bolt_circle="20 mm", motor__bore="6 mm", fixings__weld_lines="all round", **BARE,
        )
    )  # fmt: skip
    arm = float(drive.shaft.face_overhang) - 0.003
    beam = arm * 0.29 / (210e9 * 0.05 * 0.006**3 / 12)
    assert 0.97 * beam < lean(drive, 90) < 1.1 * beam


@pytest.mark.parametrize("degrees", [0, 90, -90])
def test_thicker_is_stiffer_and_softer_gives_more(degrees):
    base = lean(plated(welded()), degrees)
    assert lean(plated(welded(mount__thickness="8 mm")), degrees) < 0.8 * base
    assert lean(plated(welded(mount__free_length="120 mm")), degrees) > 1.05 * base
    assert lean(plated(welded(mount__material="6061")), degrees) > 2.5 * base


def test_welded_all_round_gives_least():
    some = [
        lean(plated(welded(fixings__weld_lines=x)), -90) for x in ("toe and heel", "both sides")
    ]
    assert lean(plated(welded(fixings__weld_lines="all round")), -90) < min(some)


def test_gussets_stiffen_a_welded_angle_too():
    sizes = {
        "mount__width": "140 mm",
        "mount__gusset_height": "45 mm",
        "mount__gusset_depth": "45 mm",
    }
    bare = plated(welded(mount__width="140 mm"))
    both = plated(welded(mount__gussets=2, **sizes))
    for degrees in (0, 90, -90):
        assert lean(both, degrees) < 0.8 * lean(bare, degrees)
    assert [c.name for c in both.mount.cuts] == ["leg at the motor bolts"]


def test_no_beam_is_claimed():
    drive = resolve(welded())
    assert not drive.mount.segments
    assert "mount.warping_held" not in [r.key for r in drive.ranges]


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"mount__foot_depth": None}, ["mount.foot_depth", "is missing"]),
        ({"mount__foot_depth": "12 mm", "fixings__weld_lines": "both sides", "fixings__weld_leg": "7 mm"},
         ["mount.foot_depth", "leaves nothing"]),
        ({"fixings__weld_lines": "heel"}, ["fixings.weld_lines", "one of"]),
        ({"mount__gussets": 2, "mount__gusset_height": "40 mm", "mount__gusset_depth": "60 mm",
          "mount__width": "140 mm"}, ["mount.gusset_depth", "leaves the foot"]),
        ({"mount__route": "sections"}, ["mount.route", "not a known key"]),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(changes, words):
    line = message(**{**ANGLE, **changes})
    assert all(word in line for word in words), line
