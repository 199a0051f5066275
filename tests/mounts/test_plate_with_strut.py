"""Plate with strut: the plate form with one more hold, at the motor's rear or at its own top."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from click.testing import CliRunner

from conftest import changed, drive_file, toml_text
from mountlimit import evaluate, limits, plate_response, plate_route
from mountlimit.cli import main
from mountlimit.loads import case_list
from mountlimit.plates import solve
from mountlimit.resolve import resolve
from mountlimit.structure import wrench

REAR = {
    "mount__form": "plate with strut", "second__material": "S235", "mount__strut_diameter": "12 mm",
    "mount__strut_start_height": "0 mm", "mount__strut_start_behind": "110 mm",
    "mount__strut_end_height": "-100 mm", "mount__strut_end_behind": "180 mm",
    "shaft__face_overhang": "40 mm", "frame__member": "rigid",
}  # fmt: skip
TOP = {
    **REAR, "mount__strut_from": "plate", "mount__strut_start_height": "48 mm",
    "mount__strut_start_behind": "0 mm", "mount__strut_end_height": "-60 mm",
}  # fmt: skip
PLAIN = {"shaft__face_overhang": "40 mm", "frame__member": "rigid"}
SOFT = {"mount__strut_joint_stiffness": "1 N/mm", "mount__strut_diameter": "2 mm"}
BOTH = pytest.mark.parametrize("form", [REAR, TOP], ids=["from the motor", "from the plate"])


def drive_of(file, overrides=None):
    return resolve(plate_route.with_plates(file), overrides)


@cache
def _limits(changes):
    return {x.check.name: x for x in limits.find(drive_file(**dict(changes))).limits}


def limits_of(**changes):
    return _limits(tuple(sorted(changes.items())))


def one_case(drive, group, current=40.0):
    index = next(i for i, c in enumerate(case_list(drive)) if c[1] == group)
    return evaluate.case_at(drive, current, index)


def turn_of(file):
    """Give the turn of the sprocket at 40 A by mount and joint, without the motor's weight, rad."""
    drive = drive_of(file)
    loads = replace(one_case(drive, "steady").loads, weight=(0.0, 0.0, 0.0))
    return np.array([float(t) for t in plate_response.displacements_of(drive, loads)[0].turn])


@BOTH
def test_loads_and_reactions_close(form):
    """Bolts, contact and strut carry the load to 1e-9 of it, in every load case and at both ends."""
    file = plate_route.with_plates(drive_file(**form, duty__reverse="50 %"))
    for ends in ({}, {"mount.strut_joint_stiffness": 2e6}, {"mount.strut_joint_stiffness": 5e7}):
        case = evaluate.case_at(resolve(file, ends), np.array([5.0, 60.0, 500.0]))
        assert float(np.max(case.response.balance)) < 1e-9


@BOTH
@pytest.mark.parametrize("pull", ["away", "towards"])
def test_the_strut_lowers_the_lean_of_the_plain_plate(form, pull):
    """A pull square to the frame leans the plain plate more, and the more the softer the strut."""
    leans = [
        abs(turn_of(drive_file(**{**form, "chain__pull": pull, **more}))[0])
        for more in ({}, {"mount__strut_joint_stiffness": "1 kN/mm"})
    ]
    plain = abs(turn_of(drive_file(**PLAIN, chain__pull=pull))[0])
    assert leans[0] < leans[1] < plain
    assert leans[0] < 0.8 * plain


@BOTH
@pytest.mark.parametrize("pull", ["across", "away"])
def test_a_strut_without_stiffness_leaves_the_plain_plate(form, pull):
    soft = turn_of(drive_file(**{**form, **SOFT, "chain__pull": pull}))
    plain = turn_of(drive_file(**PLAIN, chain__pull=pull))
    assert np.allclose(soft, plain, atol=0.01 * np.max(np.abs(plain)))


@BOTH
def test_mirrored_pull_leans_alike(form):
    one, other = (limits_of(**form, chain__pull=p) for p in ("30 deg", "150 deg"))
    assert one["alignment"].safe == pytest.approx(other["alignment"].safe, rel=0.01)


@BOTH
@pytest.mark.parametrize(
    "ends", [{}, {"mount.strut_joint_stiffness": 2e6}, {"second.elastic_modulus": 1.5e11}]
)
def test_the_reduced_model_is_the_full_plate_model(form, ends):
    """Movement, tension of the strut and of the bolts are those of the engine's full solve."""
    drive = drive_of(drive_file(**form, chain__pull="60 deg"), ends)
    loads = one_case(drive, "pull").loads
    force, moment = wrench(drive, loads, (0.0, 0.0, 0.0))
    full = solve(plate_route.as_it_bears(drive)).response(
        np.array([float(x) for x in (*force, *moment)]), (0.0, 0.0, 0.0)
    )
    response = plate_response.solve(drive, loads)
    assert float(response.rods[0]) == pytest.approx(float(full.strut_tension[0]), rel=5e-3)
    largest = np.max(np.abs(full.bolt_tension))
    assert np.allclose(
        response.bolts.tension, np.maximum(full.bolt_tension, 0), atol=3e-3 * largest
    )


def test_the_strut_takes_its_part_by_the_force_method():
    """Closed form: a cantilever from the bolt row to the motor bolts, rigid beyond, with a strut.

    The plate alone moves the strut's start along the strut; the strut's tension takes that back."""
    long = {**REAR, "mount__width": "110 mm", "fixings__span_across": "85 mm", "chain__pull": "away",
            "fixings__joint_stiffness": "10000 kN/mm", "mount__free_length": "250 mm",
            "mount__strut_joint_stiffness": "5 kN/mm", "mount__strut_end_height": "-100 mm"}  # fmt: skip
    drive = drive_of(drive_file(**long))
    case, rod = one_case(drive, "steady", 30.0), drive.mount.rods[0]
    reach = 0.0395 / np.sqrt(2)
    tip = np.array([0.0, -reach, 0.004])
    stiff = float(drive.mount.material.elastic_modulus) * 0.11 * 0.008**3 / 12
    span = 0.25 - reach
    give = np.array([[span**3 / 3, span**2 / 2], [span**2 / 2, span]]) / stiff  # shear, moment
    start, end = (np.array([float(v) for v in p]) for p in (rod.start, rod.end))
    along = (end - start) / np.linalg.norm(end - start)
    unit = np.array([along[2], np.cross(start - tip, along)[0]])
    force, moment = wrench(drive, case.loads, tuple(tip))
    loads = np.array([float(force[2]), float(moment[0])])
    tension = -(unit @ give @ loads) / (unit @ give @ unit + 1 / float(rod.stiffness))
    assert float(case.response.rods[0]) == pytest.approx(tension, rel=0.05)


def test_cuts_see_what_the_strut_leaves():
    """Stiff strut: the plate's cut at the frame bolts carries less bending than in the plain plate."""
    held = one_case(drive_of(drive_file(**REAR, chain__pull="away")), "pull")
    plain = one_case(drive_of(drive_file(**PLAIN, chain__pull="away")), "pull")
    bent = [abs(float(c.response.sections[0].moment_across)) for c in (held, plain)]
    assert bent[0] < 0.8 * bent[1]


FORCES = ("normal", "shear_across", "shear_normal")
MOMENTS = ("torque", "moment_across", "moment_normal")


def test_a_soft_strut_leaves_the_cuts_of_the_plain_plate():
    """Forces beyond a cut, summed up from the reactions, are those of statics where nothing shares."""
    soft = drive_file(**{**REAR, **SOFT, "chain__pull": "60 deg"})
    held, plain = (
        one_case(drive_of(f), "pull") for f in (soft, drive_file(**PLAIN, chain__pull="60 deg"))
    )
    for ours, theirs in zip(held.response.sections, plain.response.sections, strict=True):
        for names in (FORCES, MOMENTS):
            one, two = ([float(getattr(x, n)) for n in names] for x in (ours, theirs))
            assert np.allclose(one, two, atol=0.01 * np.max(np.abs(two)))


def test_face_bolts_feel_the_strut():
    """A strut straight back from the motor that takes its nod takes load off the face bolts; with
    none of its stiffness they carry what statics gives."""
    tension = {
        name: max(float(b.tension) for b in one_case(drive_of(drive_file(**{**REAR, **more, "chain__pull": "away"})), "pull").response.motor_bolts)
        for name, more in (("stiff", {}), ("none", SOFT))
    }  # fmt: skip
    assert tension["stiff"] < tension["none"]
    stations = [r.station for r in next(
        c for c in evaluate.applicable(resolve(drive_file(**REAR))) if c.name == "motor_bolts"
    ).rows(one_case(drive_of(drive_file(**REAR)), "pull"))]  # fmt: skip
    assert all("beside the strut" in s for s in stations)


@BOTH
@pytest.mark.parametrize(
    "softer",
    [{"mount__thickness": "6 mm"}, {"mount__strut_joint_stiffness": "1 kN/mm"},
     {"fixings__joint_stiffness": "50 kN/mm"}, {"mount__free_length": "100 mm"}],
    ids=["thinner", "softer strut joints", "softer frame joint", "longer"],
)  # fmt: skip
def test_softer_parts_lower_the_alignment_limit(form, softer):
    base = {**form, "chain__pull": "away", "fixings__joint_stiffness": "400 kN/mm"}
    one, other = (limits.find(drive_file(**c), ["alignment"]) for c in ({**base, **softer}, base))
    assert one.limits[0].safe < other.limits[0].safe


@BOTH
def test_sprocket_inboard_lowers_no_limit(form):
    near, far = (limits_of(**{**form, "shaft__face_overhang": f"{x} mm"}) for x in (32, 40))
    for name in ("alignment", "mount_section", "strut"):
        assert near[name].safe >= 0.998 * far[name].safe


def test_a_flat_strut_and_a_tube():
    """Sizes by hand: 20 x 5 mm is 100 mm2 and 208 mm4; 12 x 9 mm tube 49.5 mm2 and 696 mm4."""
    flat = {**REAR, "mount__strut_diameter": None, "mount__strut_width": "20 mm",
            "mount__strut_thickness": "5 mm"}  # fmt: skip
    bar = resolve(drive_file(**flat)).mount.rods[0]
    tube = resolve(drive_file(**REAR, mount__strut_bore="9 mm")).mount.rods[0]
    assert (float(bar.area), float(bar.second_moment)) == pytest.approx(
        (100e-6, 208.3e-12), rel=1e-3
    )
    assert (float(tube.area), float(tube.second_moment)) == pytest.approx(
        (49.48e-6, 695.8e-12), rel=1e-3
    )
    assert float(bar.length) == pytest.approx(np.hypot(0.1, 0.07))


@pytest.mark.parametrize(
    ("changes", "key", "words"),
    [
        ({"mount__strut_start_behind": None}, "mount.strut_start_behind", "is missing"),
        ({"mount__strut_diameter": None}, "mount.strut_diameter", "one way"),
        ({"mount__strut_width": "20 mm"}, "mount.strut_diameter", "one way"),
        ({"mount__strut_bore": "12 mm"}, "mount.strut_bore", "no wall"),
        ({"mount__strut_end_height": "0 mm", "mount__strut_end_behind": "110 mm"}, "mount.strut_end_behind", "no length"),
        ({"mount__strut_from": "plate", "mount__strut_start_height": "90 mm"}, "mount.strut_start_height", "not on the plate"),
        ({"mount__strut_from": "plate", "mount__strut_start_height": "10 mm"}, "mount.strut_start_height", "bore"),
        ({"mount__strut_from": "plate", "mount__strut_start_height": "28 mm",
          "mount__strut_start_across": "28 mm"}, "mount", "overlap"),
        ({"second__material": None}, "second.material", "is missing"),
        ({"second__thickness": "5 mm"}, "second.thickness", "not a known key"),
    ],
)  # fmt: skip
def test_bad_inputs_are_one_line(tmp_path, changes, key, words):
    file = tmp_path / "drive.toml"
    file.write_text(toml_text(changed(**{**REAR, **changes})))
    result = CliRunner().invoke(main, ["check", str(file)])
    lines = [x for x in result.stderr.splitlines() if f" {key}" in x]
    assert result.exit_code == 2, result.output
    assert len(lines) == 1, result.stderr
    assert words in lines[0]
    assert "Traceback" not in result.output
