"""Two stages in one file: what the second chain, the jackshaft and the driven side see."""

from __future__ import annotations

import math

import pytest
from hub_cases import check_of, file_of, limit_of, rows_of

from conftest import drive_file
from mountlimit import evaluate, traction
from mountlimit.assess import assess, not_checked
from mountlimit.errors import InputError
from mountlimit.formulas import jackshaft as formulas
from mountlimit.formulas import statics
from mountlimit.resolve import resolve
from mountlimit.stages import second

STAGE = {
    "second_chain__type": "50", "second_chain__driving_teeth": 12, "second_chain__driven_teeth": 36,
    "second_chain__centre_distance": "500 mm", "jackshaft__diameter": "25 mm",
    "jackshaft__bearing_span": "100 mm", "jackshaft__first_at": "-30 mm",
    "jackshaft__second_at": "140 mm", "jackshaft__bearing": "6005",
}  # fmt: skip
KEYS = {"jackshaft__first_key": "8 x 7 x 25 mm", "jackshaft__second_key": "8 x 7 x 30 mm"}
# The same second chain on a motor of five times the torque (55 teeth to 11): one stage.
ONE_STAGE = {
    "chain__type": "50", "chain__driving_teeth": 12, "chain__driven_teeth": 36,
    "chain__centre_distance": "500 mm", "motor__torque_constant": "0.6 N*m/A", "hub__key": None,
}  # fmt: skip
SPEED = {"motor__speed": "3000 rpm"}
SLOWER = {"motor__speed": "600 rpm"}


@pytest.mark.parametrize(
    ("two", "one", "told"),
    [
        ("second_chain_static", "chain_static", {}),
        ("second_chain_fatigue", "chain_fatigue", {}),
        ("driven_shaft", "driven_shaft", {"driven__shaft_diameter": "30 mm", "driven__overhang": "40 mm"}),
        ("driven_key", "driven_key", {"driven__shaft_diameter": "30 mm", "driven__key": "8 x 7 x 30 mm"}),
        ("driven_bolts", "driven_bolts", {"driven__bolts": "6 x M6", "driven__bolt_circle": "70 mm"}),
        ("driven_weld", "driven_weld", {"driven__weld_diameter": "60 mm", "driven__weld_leg": "4 mm"}),
        ("freewheel", "freewheel", {"driven__freewheel_torque": "200 N*m"}),
        ("driven_teeth", "driven_teeth", {"driven__sprocket_material": "6061"}),
        ("driven_pin", "driven_pin", {"driven__shaft_diameter": "30 mm", "driven__pin": "8 mm"}),
        ("driven_bearings", "driven_bearings", {
            "driven__shaft_diameter": "30 mm", "driven__overhang": "40 mm", "driven__bearing_span": "200 mm",
            "driven__bearing": "6206",
        }),
        ("driven_bolt_holes", "driven_bolt_holes", {
            "driven__bolts": "6 x M6", "driven__bolt_circle": "70 mm", "driven__sprocket_material": "6061",
        }),
    ],
)  # fmt: skip
def test_second_stage_is_a_drive_of_its_own(two, one, told):
    """Behind 5 to 1 the second chain and what follows stand where a motor of five times the torque puts them."""
    find = level_limit if one == "chain_fatigue" else limit_of
    assert find(two, **STAGE, **told) == pytest.approx(find(one, **ONE_STAGE, **told), rel=1e-9)


def level_limit(name, **changes):
    """Current at which a check without a gives-at is used up, by its curve."""
    drive = resolve(file_of(**changes))
    at_100 = evaluate.curves(drive, [100.0], [name])[name].safe[0]
    return 100.0 / at_100


@pytest.mark.parametrize("kind", ["pin_pressure", "power"])
def test_second_chain_at_its_own_speed(kind):
    """The jackshaft turns at a fifth of the motor's speed, and the second chain with it."""
    drives = [resolve(file_of(**STAGE, **SPEED)), resolve(file_of(**ONE_STAGE, **SLOWER))]
    names = [f"second_chain_{kind}", f"chain_{kind}"]
    used = [
        evaluate.curves(d, [30.0], [n])[n].continuous[0] for d, n in zip(drives, names, strict=True)
    ]
    assert used[0] == pytest.approx(used[1], rel=1e-9)


def test_wheels_spin_behind_both_stages():
    """Traction sees both ratios: a third gear of the same size gives the same current."""
    wheel = {"use__wheel_load": "500 N", "use__wheel_diameter": "400 mm"}
    two = traction.lines(resolve(file_of(**STAGE, **wheel)))
    one = traction.lines(resolve(file_of(**wheel, use__gear_after_chain=3)))
    assert two.traction_low == pytest.approx(one.traction_low, rel=1e-9)


def test_moment_and_supports_against_the_handbook():
    """Overhang: F a at the bearing, F (l + a) / l on it; between: F a b / l (AISC table 3-23, from memory)."""
    assert formulas.moment_at(0.0, 1000.0, -0.03, 0.1) == pytest.approx(30.0)
    assert statics.near_reaction(1000.0, -0.03, 0.1) == pytest.approx(1300.0)
    assert statics.far_reaction(1000.0, -0.03, 0.1) == pytest.approx(-300.0)
    assert formulas.moment_at(0.1, 1000.0, 0.14, 0.1) == pytest.approx(40.0)
    assert abs(formulas.moment_at(0.025, 800.0, 0.025, 0.1)) == pytest.approx(
        800 * 0.025 * 0.075 / 0.1
    )


def test_pulley_shaft_of_a_published_problem():
    """Gear shaft: 1330 lbf, 2 in from one bearing and 9 in from the other: 2178 lbf in (Shigley manual, chapter 7)."""
    assert abs(formulas.moment_at(2.0, 1330.0, 2.0, 11.0)) == pytest.approx(2178.0, rel=3e-3)


def test_two_pulls_square_to_each_other():
    """Three, four, five."""
    assert formulas.moments_together(3.0, 4.0, math.pi / 2) == pytest.approx(5.0)
    assert formulas.forces_together(3.0, 4.0, 0.0) == pytest.approx(7.0)
    assert formulas.forces_together(3.0, 4.0, math.pi) == pytest.approx(1.0)


def test_strength_by_hand():
    """Sprockets outside, one each: at either bearing the other pull does not count."""
    rows, case = rows_of("jackshaft", **STAGE, jackshaft__angle="90 deg")
    pulls = float(case.loads.shaft_load), float(second(case).loads.shaft_load)
    modulus, twist = math.pi * 0.025**3 / 32, math.pi * 0.025**3 / 16
    torque = 12.0 * 55 / 11
    for row, pull, arm in zip(rows, pulls, (0.03, 0.04), strict=True):
        stress = math.hypot(pull * arm / modulus, math.sqrt(3) * torque / twist)
        assert row.demand == pytest.approx(stress, rel=1e-9)


def test_every_place_and_angle_is_looked_at():
    """Between the bearings the sprockets count, outside them the bearings; three angles when none is told."""
    rows, _ = rows_of("jackshaft", **STAGE)
    assert {r.station.partition(",")[0] for r in rows} == {"first bearing", "second bearing"}
    assert len(rows) == 6
    inside = {**STAGE, "jackshaft__first_at": "30 mm", "jackshaft__second_at": "60 mm"}
    rows, _ = rows_of("jackshaft", **inside)
    assert {r.station.partition(",")[0] for r in rows} == {
        "first chain's sprocket",
        "second chain's sprocket",
    }


def test_an_unknown_angle_is_never_better_than_a_told_one():
    """All three are tried, the worst counts."""
    unknown = limit_of("jackshaft_bearings", **STAGE)
    told = [
        limit_of("jackshaft_bearings", **STAGE, jackshaft__angle=f"{a} deg") for a in (0, 90, 180)
    ]
    assert unknown == pytest.approx(min(told), rel=1e-9)


@pytest.mark.parametrize(
    ("name", "worse"),
    [
        ("jackshaft", {"jackshaft__diameter": "20 mm"}),
        ("jackshaft", {"jackshaft__second_at": "160 mm"}),
        ("jackshaft", {"chain__driven_teeth": 70}),
        ("jackshaft_bearings", {"jackshaft__bearing_span": "60 mm"}),
        ("jackshaft_bearings", {"second_chain__driving_teeth": 9}),
        ("jackshaft_keys", {"jackshaft__second_key": "8 x 7 x 15 mm"}),
        ("jackshaft_keys", {"jackshaft__key_yield": "200 MPa"}),
        ("second_chain_static", {"second_chain__type": "40"}),
        ("second_chain_static", {"second_chain__driving_teeth": 9}),
    ],
)
def test_direction(name, worse):
    """What makes it worse lowers the limit."""
    good = {**STAGE, **KEYS}
    assert limit_of(name, **{**good, **worse}) < limit_of(name, **good)


@pytest.mark.parametrize("name", ["jackshaft_fatigue", "jackshaft_bearing_life"])
def test_direction_of_life(name):
    """A thicker shaft and a bearing of more capacity live longer."""
    thick = {"jackshaft__diameter": "30 mm", "jackshaft__bearing": "6206"}
    one, other = (resolve(file_of(**{**STAGE, **c, **SPEED})) for c in ({}, thick))
    level = "safe" if name == "jackshaft_fatigue" else "continuous"
    used = [getattr(evaluate.curves(d, [30.0], [name])[name], level)[0] for d in (one, other)]
    assert used[1] < used[0]


def test_without_a_jackshaft_nothing_of_it_is_there():
    """A drive of one stage has no line of a second."""
    drive = resolve(drive_file())
    assert check_of("jackshaft", drive) is None
    assert check_of("second_chain_static", drive) is None
    assert not any("second chain" in words for words in not_checked(drive))


def test_whole_job():
    """One file, both stages: each has its own lines, and what is not looked at is said."""
    found = assess(drive_file(**STAGE, **KEYS, **SPEED))
    names = {line.limit.check.name for line in found.lines}
    assert {
        "jackshaft", "jackshaft_fatigue", "jackshaft_bearings", "jackshaft_bearing_life", "jackshaft_keys",
        "second_chain_static", "second_chain_fatigue", "second_chain_pin_pressure", "second_chain_power",
    } <= names  # fmt: skip
    assert found.second_upkeep is not None
    assert found.second_upkeep.links % 2 == 0
    assert any("second chain" in words for words in not_checked(found.drive))


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"jackshaft__diameter": None}, "jackshaft.diameter: is missing"),
        ({"second_chain__driven_teeth": None}, "second_chain.driven_teeth: is missing"),
        ({"second_chain__centre_distance": "60 mm"}, "second_chain.centre_distance = '60 mm'"),
        ({"jackshaft__first_key": "8 x 30 x 20 mm"}, "jackshaft.first_key"),
        ({"jackshaft__second_at": "-30 mm"}, "jackshaft.second_at = '-30 mm'"),
        ({"jackshaft__bearing": "9999"}, "jackshaft.bearing"),
    ],
)
def test_bad_input(changes, words):
    """One clear line each."""
    with pytest.raises(InputError) as caught:
        resolve(drive_file(**{**STAGE, **changes}))
    assert words in str(caught.value)


def test_keys_and_rating_are_judged_only_where_told():
    """No key, no check of keys; no speed, no rated power."""
    for name, more in (("jackshaft_keys", KEYS), ("second_chain_power", SPEED)):
        assert check_of(name, resolve(file_of(**STAGE))) is None
        assert check_of(name, resolve(file_of(**STAGE, **more))) is not None
