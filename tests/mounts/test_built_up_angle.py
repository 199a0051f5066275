"""Built-up angle: two plates held edge to face by screws, the softest thing in the mount."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from click.testing import CliRunner

from conftest import angle_file, changed, drive_file, toml_text
from mountlimit import evaluate, limits, plate_response, plate_route, plate_stress
from mountlimit.cli import main
from mountlimit.loads import case_list
from mountlimit.plates import solve
from mountlimit.resolve import resolve
from mountlimit.sections import plane_yielding
from mountlimit.structure import wrench

FORM = {
    "mount__form": "built-up angle", "mount__material": "birch plywood", "mount__thickness": "24 mm",
    "mount__free_length": "100 mm", "mount__heel_to_bolts": "35 mm", "mount__base_overhang": "20 mm",
    "mount__screws": "6 x 6 mm", "mount__screw_length": "50 mm", "shaft__face_overhang": "45 mm",
    "second__material": "6061", "second__thickness": "8 mm", "frame__member": "rigid",
}  # fmt: skip
PLASTIC = {"mount__material": "hdpe", "second__material": "hdpe", "second__thickness": "20 mm"}
METAL = {
    "mount__material": "6061", "mount__thickness": "12 mm", "mount__screws": "6 x M5",
    "mount__screw_length": "24 mm", "second__material": None, "second__thickness": None,
}  # fmt: skip


def built(**changes):
    """Read the built-up angle with changes."""
    return drive_file(**{**FORM, **changes})


@cache
def _limits(changes):
    return {x.check.name: x for x in limits.find(built(**dict(changes))).limits}


def limits_of(**changes):
    return _limits(tuple(sorted(changes.items())))


def drive_of(file, overrides=None):
    return resolve(plate_route.with_plates(file), overrides)


def one_case(drive, group, current=40.0):
    index = next(i for i, c in enumerate(case_list(drive)) if c[1] == group)
    return evaluate.case_at(drive, current, index)


def lean(file, angle=0.0):
    """Lean of mount and joint along the pull, rad, at 40 A without the motor's weight."""
    drive = drive_of(file)
    loads = replace(one_case(drive, "steady").loads, weight=(0.0, 0.0, 0.0))
    turn = plate_response.displacements_of(drive, loads)[0].turn
    return abs(float(turn[1]) * np.cos(angle) - float(turn[0]) * np.sin(angle))


@pytest.mark.parametrize("changes", [{}, PLASTIC, METAL], ids=["wood", "plastic", "metal"])
def test_loads_and_reactions_close(changes):
    """Bolts and contact together carry the load to 1e-9 of it in every load case."""
    drive = drive_of(built(**changes, duty__reverse="50 %"))
    case = evaluate.case_at(drive, np.array([5.0, 60.0, 500.0]))
    assert float(np.max(case.response.balance)) < 1e-9


@pytest.mark.parametrize(
    "check",
    [
        "seam_screws",
        "alignment",
    ],
)
def test_mirrored_pull_leans_alike(check):
    """A chain at 30 degrees and one at 150: the mount is its own mirror image."""
    one, other = limits_of(chain__pull="30 deg"), limits_of(chain__pull="150 deg")
    assert one[check].safe == pytest.approx(other[check].safe, rel=0.01)


def test_the_reduced_model_is_the_full_plate_model():
    """Movement and screw forces of the pipeline are those of the engine's full solve."""
    file = built(chain__pull="60 deg")
    give = next(r for r in resolve(file).ranges if r.key == "mount.screw_stiffness")
    for stiffness in (give.low, give.likely, give.high):
        drive = drive_of(file, {"mount.screw_stiffness": stiffness})
        loads = replace(one_case(drive, "pull").loads, weight=(0.0, 0.0, 0.0))
        force, moment = wrench(drive, loads, (0.0, 0.0, 0.0))
        full = solve(plate_route.as_it_bears(drive)).response(
            np.array([float(x) for x in (*force, *moment)]), (0.0, 0.0, 0.0)
        )
        response = plate_response.solve(drive, loads)
        turn = [float(t / drive.mount.softness) for t in response.displacements[0].turn]
        assert np.allclose(turn, full.rotation, atol=3e-3 * np.max(np.abs(full.rotation)))
        pulls = np.maximum(full.seam_tension, 0.0)
        found = [float(s.tension) for s in response.screws]
        assert np.allclose(found, pulls, atol=5e-3 * np.max(pulls))


def test_pull_of_the_screws_and_push_of_the_butt_balance_the_upright():
    """Closed form: screws alone hold what lifts the upright, so pull away they carry all of it and
    the butt's push comes on top; gaping, it presses by its rim, half a thickness from the screws."""
    drive = drive_of(built(chain__pull="away", motor__mass="0.05 kg"))
    case = one_case(drive, "pull")
    lift = float(case.loads.shaft_load)
    pull = sum(float(s.tension) for s in case.response.screws)
    force, moment = wrench(drive, case.loads, (0.0, -0.1, 0.012))
    lever = float(abs(moment[0])) / (pull - lift)
    assert pull > lift
    assert float(abs(force[1])) == pytest.approx(lift, rel=0.02)
    assert lever == pytest.approx(0.012, rel=2e-3)  # from the screws to the pressed rim


def test_shear_of_the_screws_is_the_pull_across():
    """A pull across is borne by the screws only: their shears sum up to it at least."""
    drive = drive_of(built(chain__pull="across", motor__mass="0.05 kg"))
    case = one_case(drive, "pull")
    sheared = sum(float(s.shear) for s in case.response.screws)
    assert sheared > 0.999 * float(case.loads.shaft_load)


@pytest.mark.parametrize(
    "softer",
    [
        {"mount__screws": "4 x 6 mm", "mount__screw_span": "75 mm"},
        {"mount__screw_span": "70 mm"},
        {"mount__thickness": "18 mm"},
        {"second__thickness": "5 mm"},
        {"mount__screws": "6 x 4 mm"},
        {"fixings__joint_stiffness": "100 kN/mm"},
        {"mount__screw_stiffness": "500 N/mm"},
    ],
    ids=[
        "fewer",
        "closer",
        "thinner edge",
        "thinner base",
        "thinner screws",
        "frame",
        "softer screws",
    ],
)
def test_a_softer_seam_leans_more_and_lowers_the_limit(softer):
    """Across and away: fewer screws, a shorter row, a thinner edge, a softer joint give more."""
    base = {"chain__pull": "45 deg", "fixings__joint_stiffness": "400 kN/mm"}
    angle = np.pi / 4
    assert lean(built(**{**base, **softer}), angle) > 1.002 * lean(built(**base), angle)
    assert lined_up(**{**base, **softer}) < lined_up(**base)


@cache
def lined_up(**changes):
    return limits.find(built(**changes), ["alignment"]).limits[0].safe


def test_a_thicker_upright_leans_less():
    leans = [lean(built(mount__thickness=t)) for t in ("20 mm", "24 mm", "30 mm", "36 mm")]
    assert leans == sorted(leans, reverse=True)


ANGLE = {
    "mount__width": "140 mm", "mount__free_length": "100 mm", "shaft__face_overhang": "45 mm",
    "mount__thickness": "12 mm", "frame__member": "rigid", "chain__pull": "45 deg",
}  # fmt: skip
ROW = {**METAL, **ANGLE, "mount__screw_head": "10 mm"}


def test_a_dense_stiff_row_comes_near_the_plain_angle_from_the_soft_side():
    """In metal: the more and stiffer the screws, the nearer to an angle that is one piece."""
    whole = lean(angle_file(**ANGLE, mount__heel_to_bolts="35 mm"), np.pi / 4)
    leans = [
        lean(built(**{**ROW, "mount__screws": screws, "mount__screw_stiffness": k}), np.pi / 4)
        / whole
        for screws, k in (("4 x M5", "5 kN/mm"), ("6 x M5", "50 kN/mm"), ("12 x M5", "1000 kN/mm"))
    ]
    assert leans[0] > 5 > leans[1] > leans[2]
    assert 1.0 < leans[2] < 2.0


def test_what_the_dense_row_still_lacks_is_the_give_of_the_butt(monkeypatch):
    """With a hundred times stiffer faces the same row leans as the angle, within a tenth.

    The bearing face in three times as many cells as usual: in the usual ones the row leans 15 % more.
    """
    monkeypatch.setattr(plate_route, "CONTACT_POINTS", 100)
    one = plate_route.as_it_bears(resolve(angle_file(**ANGLE, mount__heel_to_bolts="35 mm")))
    row = {**ROW, "mount__screws": "12 x M5", "mount__screw_stiffness": "1000 kN/mm"}
    two = plate_route.as_it_bears(resolve(built(**row)))
    stiff = two.seams[0].contact_stiffness * 100
    two = replace(two, seams=[replace(two.seams[0], contact_stiffness=stiff)])
    for pull in ((300.0, 0.0), (0.0, 300.0), (0.0, -300.0)):
        turns = [
            np.linalg.norm(
                solve(m).response([*pull, 0.0, 0.0, 0.0, 0.0], (0.0, 0.0, 0.045)).rotation[:2]
            )
            for m in (one, two)
        ]
        assert turns[1] == pytest.approx(turns[0], rel=0.1)


def test_sprocket_inboard_lowers_no_limit():
    """A shorter overhang can only help."""
    near, far = limits_of(shaft__face_overhang="35 mm"), limits_of(shaft__face_overhang="45 mm")
    for name in ("alignment", "seam_screws", "mount_section"):
        assert near[name].safe >= 0.999 * far[name].safe


def test_the_base_plate_is_what_the_bolts_clamp():
    """Clamp and friction follow the base plate's material, the motor's bolts the upright's."""
    metal, wood = resolve(built()), resolve(built(second__material="birch plywood"))
    assert wood.fixings.preload < metal.fixings.preload
    assert wood.face.preload == metal.face.preload


def test_stiffness_in_wood_is_that_of_the_standard():
    """EN 1995-1-1 table 7.1 by hand: 680 kg/m3, 6 mm, wood to wood 4.63 kN/mm; steel twice that."""
    wood = resolve(built(second__material="birch plywood", second__thickness="18 mm")).mount.screws
    steel = resolve(built(second__material="S235")).mount.screws
    assert wood.lateral_stiffness == pytest.approx(4.626e6, rel=1e-3)
    assert steel.lateral_stiffness == pytest.approx(9.251e6, rel=1e-3)


@pytest.mark.parametrize(
    ("changes", "key", "words"),
    [
        ({"mount__screws": "six"}, "mount.screws", "number of screws"),
        ({"mount__screws": "6 x 14 mm"}, "mount.screws", "half of the edge"),
        ({"mount__screw_length": "75 mm"}, "mount.screw_length", "motor bolts"),
        ({"mount__screw_span": "118 mm"}, "mount.screw_span", "leaves the mount"),
        ({"mount__screw_span": "40 mm"}, "mount.screws", "run into one another"),
        ({"mount__screw_kind": "machine screw"}, "mount.screws", "6 x M5"),
        ({"mount__screw_head": "30 mm", "mount__screws": "2 x 6 mm", "mount__base_overhang": "0 mm",
          "mount__screw_span": "40 mm"}, "mount.screw_head", "base_overhang"),
        ({"mount__screw_kind": "dowel", "mount__screw_head": "12 mm"}, "mount.screw_head", "no head"),
        ({"mount__width": "80 mm", "fixings__span_across": "60 mm"}, "motor.bolt_circle", "wide"),
    ],
)  # fmt: skip
def test_bad_inputs_are_one_line(tmp_path, changes, key, words):
    """What cannot be is told in one line with its key, exit status 2."""
    file = tmp_path / "drive.toml"
    file.write_text(toml_text(changed(**{**FORM, **changes})))
    result = CliRunner().invoke(main, ["check", str(file)])
    lines = [x for x in result.stderr.splitlines() if f" {key}" in x]
    assert result.exit_code == 2
    assert len(lines) == 1, result.stderr
    assert words in lines[0]
    assert "Traceback" not in result.output


def test_beams_are_refused_for_this_form(tmp_path):
    file = tmp_path / "drive.toml"
    file.write_text(toml_text(changed(**FORM, mount__route="sections")))
    result = CliRunner().invoke(main, ["check", str(file)])
    assert result.exit_code == 2
    assert "mount.route" in result.stderr


def _largest_round_bolts(changes):
    """Largest stress round washers and along lines over both plates, one for every load case."""
    drive = drive_of(built(**{**METAL, "mount__heel_to_bolts": "60 mm", **changes}))
    case = evaluate.case_at(drive, np.array([40.0]))
    return np.max(
        [
            p.stress
            for second in range(len(drive.mount.substances))
            for p in plate_stress.peaks(case, plane_yielding, ("ring", "line"), bool(second))
        ],
        axis=0,
    )


def test_a_base_plate_of_the_same_material_is_looked_at_as_well():
    """Found by solid elements: without [second] the base plate's stress was not looked at."""
    alike = {"second__material": "6061", "second__thickness": "12 mm"}
    assert _largest_round_bolts({}) == pytest.approx(_largest_round_bolts(alike), rel=1e-6)
