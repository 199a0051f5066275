"""Angle with gussets: facets share lines, stiffness rises, lines are read, bad input."""

from __future__ import annotations

import numpy as np
import pytest
from welded_kit import GUSSETS, apart_from_full, file_of, lean, message, plated, worst_balance

from mountlimit import evaluate, plate_route
from mountlimit.assess import assess
from mountlimit.cards import folder
from mountlimit.checks import mount_section
from mountlimit.drivefile import read
from mountlimit.errors import InputError
from mountlimit.plates.joints import find
from mountlimit.resolve import resolve

NONE = {
    "mount__gussets": None, "mount__gusset_height": None, "mount__gusset_depth": None,
}  # fmt: skip


def gusseted(**changes):
    return file_of(**{**GUSSETS, **changes})


def test_loads_and_reactions_close():
    assert worst_balance(gusseted(duty__reverse="50 %", mount__weight_acts="across")) < 1e-9


def test_pulls_to_the_left_and_to_the_right_are_alike():
    drive = plated(gusseted())
    assert lean(drive, 30) == pytest.approx(lean(drive, 150), rel=0.01)


def test_reduced_model_answers_as_the_full_one():
    """Stress along the section lines too: the reduced model must read every element under them."""
    found = apart_from_full(plated(gusseted()), 90.0)
    assert set(found) == {"turn", "line stress"}
    assert max(found.values()) < 5e-3, found


@pytest.mark.parametrize("points", ["motor", "sprocket"])
def test_gussets_are_welded_to_leg_and_foot(points):
    """They share lines as long as they are high and deep, half a plate more to the mid-planes."""
    model = plate_route.as_it_bears(resolve(gusseted(mount__foot_points=points)))
    found = sorted((joint.facets, round(joint.length, 9)) for joint in find(model))
    assert found == [
        ((0, 1), 0.14), ((0, 2), 0.0475), ((0, 3), 0.0475), ((1, 2), 0.0625), ((1, 3), 0.0625),
    ]  # fmt: skip
    assert [f.origin[0] for f in model.facets[2:]] == pytest.approx([-0.0675, 0.0675])


def test_the_foot_and_its_gussets_point_the_same_way():
    for points, sign in (("motor", -1), ("sprocket", 1)):
        model = plate_route.as_it_bears(resolve(gusseted(mount__foot_points=points)))
        for facet in model.facets[1:]:
            corners = facet.to_space(np.asarray(facet.outline, float))[:, 2]
            assert sign * (corners.mean() - 0.0025) > 0.01


@pytest.mark.parametrize("degrees", [0, 90, -90])
def test_each_gusset_makes_it_stiffer(degrees):
    """On a face as wide as the foot; on a narrow one the lean under a pull across passes through nothing."""
    wide = {"frame__face_width": "500 mm"}
    none = lean(plated(gusseted(**wide, **NONE)), degrees)
    one = lean(plated(gusseted(**wide, mount__gussets=1)), degrees)
    two = lean(plated(gusseted(**wide)), degrees)
    assert two < one < none
    assert two < 0.7 * none


def test_higher_and_thicker_gussets_are_stiffer():
    base = lean(plated(gusseted()), 90)
    assert lean(plated(gusseted(mount__gusset_height="30 mm")), 90) > base
    assert lean(plated(gusseted(mount__gusset_thickness="3 mm")), 90) > base
    assert lean(plated(gusseted(mount__thickness="4 mm")), 90) > base


def test_cuts_stay_where_a_plain_section_is_left():
    deep = resolve(gusseted())
    assert [c.name for c in deep.mount.cuts] == ["leg at the motor bolts"]
    assert any("fatigue is not" in w for w in deep.warnings)
    short = resolve(gusseted(mount__gusset_depth="25 mm"))
    assert [c.name for c in short.mount.cuts] == [
        "foot at the frame bolts",
        "leg at the motor bolts",
    ]
    assert not any("fatigue is not" in w for w in short.warnings)
    assert all(c.segment is None for c in (*deep.mount.cuts, *short.mount.cuts))
    assert not deep.mount.segments


def test_lines_stay_one_thickness_off_and_clear_of_washers():
    drive = resolve(gusseted())
    model = plate_route.as_it_bears(drive)
    for line in model.section_lines:
        ends = np.linspace(line.start, line.end, 50)
        for bolt in (b for b in model.bolts if b.facet == line.facet):
            away = np.linalg.norm(ends - np.asarray(bolt.centre), axis=1)
            assert away.min() > bolt.washer_diameter / 2 + 0.0049
        if line.facet >= 2:
            assert np.asarray([line.start, line.end]).min() > 0.0074
    assert {line.facet for line in model.section_lines} == {0, 1, 2, 3}
    rows = mount_section.yield_rows(evaluate.case_at(plated(gusseted()), np.array([60.0])))
    assert any("along line" in r.station for r in rows)


def test_a_gusset_is_taken_as_welded():
    drive = resolve(gusseted())
    check = next(c for c in evaluate.applicable(drive) if c.name == "mount_section")
    assert evaluate.design_factor(check, drive)[0] == 2.5
    aluminium = gusseted(mount__material="6061", mount__yield_strength="240 MPa")
    assert float(resolve(aluminium).mount.material.yield_strength) == pytest.approx(115e6)


def test_without_gussets_beams_hold_as_before():
    drive = resolve(gusseted(**NONE))
    assert len(drive.mount.segments) == 2
    assert len(drive.mount.cuts) == 4
    assert drive.mount.gussets is None
    nought = resolve(gusseted(**{**NONE, "mount__gussets": 0}))
    assert nought.mount == drive.mount


def test_beams_are_refused_by_name():
    with pytest.raises(InputError, match="no beam holds"):
        plate_route.with_plates(gusseted(mount__route="sections"))


def test_default_thickness_leaves_room_for_washers():
    drive = resolve(gusseted(mount__width="120 mm", mount__thickness="8 mm"))
    found = float(drive.mount.gussets.thickness)
    assert found == pytest.approx(0.060 - 0.045 - float(drive.fixings.washer_diameter) / 2)
    assert any("no room for more" in w for w in drive.warnings)


def test_example_shows_what_gussets_do():
    """Gravel roller: the joint slides first; without its gussets the chain strays at a lower current."""
    file = read(folder("examples") / "gravel_roller.toml")
    keys = dict.fromkeys(NONE)
    whole, plain = assess(file), assess(file.edited(**keys))
    found = [
        next(x.limit.safe for x in a.lines if x.limit.check.name == "alignment")
        for a in (whole, plain)
    ]
    assert whole.first_safe.limit.check.name == "bolt_slip"
    assert found[0] > 1.2 * found[1]


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"mount__gusset_height": None}, ["mount.gusset_height", "is missing"]),
        ({"mount__gussets": None, "mount__gusset_depth": None}, ["mount.gusset_height", "only with gussets"]),
        ({"mount__gussets": 3}, ["mount.gussets", "0 to 2"]),
        ({"mount__gusset_depth": "10 mm"}, ["mount.gusset_height", "to 1"]),
        ({"mount__gusset_depth": "110 mm"}, ["mount.gusset_depth", "leaves the foot"]),
        ({"mount__width": "100 mm", "mount__gusset_height": "80 mm", "fixings__span_across": "60 mm",
          "mount__gusset_thickness": "6 mm"}, ["mount.gusset_height", "motor"]),
        ({"fixings__span_across": "120 mm", "mount__gusset_thickness": "8 mm"},
         ["fixings.span_across", "under a gusset"]),
        ({"mount__material": "7075"}, ["mount.material", "welded"]),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(changes, words):
    line = message(**{**GUSSETS, **changes})
    assert all(word in line for word in words), line
