"""Driven key, shaft and freewheel, the torque that reaches them, and what is said to be unchecked."""

from __future__ import annotations

import pytest
from hub_cases import DRIVEN_TORQUE, check_of, file_of, limit_of, rows_of

from mountlimit.assess import not_checked
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

SHAFT = {"driven__shaft_diameter": "25 mm", "driven__overhang": "35 mm"}
BETWEEN = {**SHAFT, "driven__bearing_span": "400 mm", "driven__sprocket_at": "between the bearings"}
KEY = {"driven__shaft_diameter": "25 mm", "driven__key": "8 x 7 x 30 mm"}
POUND_INCH = 0.1129848


def test_torque_against_pull_times_radius():
    """Work: the pull on the driven pitch circle, 55 teeth of half an inch, is never more by 5 %."""
    (row,), case = rows_of("freewheel", driven__freewheel_torque="60 N*m")
    by_pull = float(case.loads.effective_pull) * 0.2225 / 2  # pitch diameter 222.5 mm
    assert row.demand == pytest.approx(DRIVEN_TORQUE)
    assert row.demand == pytest.approx(by_pull, rel=0.05)


def test_freewheel():
    """60 N*m at 100 A: a freewheel of 90 N*m gives at 150 A; a jerk of 2 halves it."""
    told = {"driven__freewheel_torque": "90 N*m"}
    assert limit_of("freewheel", **told) == pytest.approx(150.0, rel=1e-4)
    assert limit_of("freewheel", **told, duty__starting_factor=2) == pytest.approx(75.0, rel=1e-4)


def test_freewheel_does_not_see_reversing():
    """It turns free the other way."""
    told = {"driven__freewheel_torque": "90 N*m"}
    same = limit_of("freewheel", **told, duty__reverse="150 %")
    assert same == pytest.approx(150.0, rel=1e-4)
    assert limit_of("driven_key", **KEY, duty__reverse="150 %") < limit_of("driven_key", **KEY)


def test_key_of_a_published_example():
    """Shigley's example 7-6 (from memory): 4200 lbf in, 1 7/16 in shaft, 3/8 in key 1.34 in long.

    Crushing stands at 65 kpsi / 2.8.
    """
    motor_torque = 4200 * POUND_INCH * 11 / 55
    (_, crush), _ = rows_of(
        "driven_key", {"torque": motor_torque}, driven__shaft_diameter="1-7/16 in",
        driven__key="0.375 x 0.375 x 1.34 in", driven__key_yield="65 ksi",
    )  # fmt: skip
    assert crush.capacity / crush.demand == pytest.approx(2.8, rel=0.005)


def test_shaft_of_a_published_problem():
    """Line-shaft problem: 9955.63 N at 150 mm and 1790.49 N*m stand for a moment of 2152.7 N*m."""
    loads = {"torque": 1790.493 * 11 / 55, "shaft_load": 9955.63}
    (row,), _ = rows_of("driven_shaft", loads, driven__shaft_diameter="70 mm", driven__overhang="150 mm")  # fmt: skip
    modulus = 3.14159265 * 0.07**3 / 32
    assert row.demand * modulus == pytest.approx(2152.7, rel=1e-3)


def test_shaft_between_bearings():
    """1330 lbf, 2 in from one bearing and 9 from the other: 2178 lbf in (Shigley manual, chapter 7)."""
    (row,), _ = rows_of(
        "driven_shaft", {"torque": 0.0, "shaft_load": 1330 * 4.448222}, driven__shaft_diameter="2 in",
        driven__overhang="2 in", driven__bearing_span="11 in", driven__sprocket_at="between the bearings",
    )  # fmt: skip
    modulus = 3.14159265 * 0.0508**3 / 32
    assert row.demand * modulus == pytest.approx(2178 * POUND_INCH, rel=3e-3)


@pytest.mark.parametrize(
    ("name", "good", "worse"),
    [
        ("driven_shaft", SHAFT, {"driven__overhang": "50 mm"}),
        ("driven_shaft", SHAFT, {"driven__shaft_diameter": "20 mm"}),
        ("driven_shaft", SHAFT, {"driven__shaft_yield": "200 MPa"}),
        ("driven_shaft", SHAFT, {"chain__driving_teeth": 9}),
        ("driven_shaft", BETWEEN, {"driven__overhang": "150 mm"}),
        ("driven_key", KEY, {"driven__key": "8 x 7 x 20 mm"}),
        ("driven_key", KEY, {"driven__key": "6 x 6 x 30 mm"}),
        ("driven_key", KEY, {"driven__shaft_diameter": "22 mm"}),
        ("driven_key", KEY, {"driven__key_yield": "150 MPa"}),
        ("freewheel", {"driven__freewheel_torque": "90 N*m"}, {"driven__freewheel_torque": "80 N*m"}),
    ],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(name, good, worse):
    """More overhang, less of shaft, key or steel, a smaller driving sprocket."""
    assert limit_of(name, **{**good, **worse}) < limit_of(name, **good)


def test_a_bearing_on_the_other_side_helps():
    """Between two bearings the same distance bends less than overhung."""
    assert limit_of("driven_shaft", **BETWEEN) > limit_of("driven_shaft", **SHAFT)


@pytest.mark.parametrize(
    ("bad", "key"),
    [
        ({"driven__overhang": "35 mm"}, "driven.shaft_diameter"),
        ({"driven__key": "8 x 7 x 30 mm"}, "driven.shaft_diameter"),
        ({**BETWEEN, "driven__bearing_span": None}, "driven.bearing_span"),
        ({**BETWEEN, "driven__bearing_span": "30 mm"}, "driven.overhang"),
        ({**SHAFT, "driven__sprocket_at": "middle"}, "driven.sprocket_at"),
        ({"driven__freewheel_torque": "90 N"}, "driven.freewheel_torque"),
        ({**KEY, "driven__shaft_diameter": "6 mm"}, "driven.key"),
    ],
)  # fmt: skip
def test_bad_inputs_are_refused(bad, key):
    """A part that is missing, a sprocket outside its bearings, an unknown word, a wrong unit."""
    with pytest.raises(InputError) as error:
        resolve(file_of(**{k: v for k, v in bad.items() if v is not None}))
    assert [m.key for m in error.value.mistakes] == [key]


def test_an_empty_driven_section_changes_nothing():
    """Absent and empty are the same: nothing of the driven side is checked."""
    drive = resolve(file_of())
    names = ("driven_bolts", "driven_bolt_slip", "driven_weld", "driven_key", "driven_shaft", "freewheel")  # fmt: skip
    assert not [n for n in names if check_of(n, drive)]


def test_not_checked_follows_what_is_told():
    """Each part leaves the list once it is told."""
    none = "\n".join(not_checked(resolve(file_of())))
    for words in ("driven sprocket is fastened", "the driven shaft", "freewheel", "wall over the keyway", "motor.speed"):  # fmt: skip
        assert words in none
    told = {**SHAFT, **KEY, "driven__freewheel_torque": "90 N*m", "motor__speed": "2500 rpm",
            "hub__key": None, "hub__set_screw": "1 x M6"}  # fmt: skip
    rest = "\n".join(not_checked(resolve(file_of(**told))))
    for words in ("driven side:", "freewheel", "wall over the keyway", "motor.speed"):  # fmt: skip
        assert words not in rest
    for word in ("flats", "splines"):
        assert f"the {word} of the motor shaft" in "\n".join(not_checked(resolve(file_of(hub__key=None, hub__drive=word))))  # fmt: skip
    assert "grip of the taper bush" in "\n".join(not_checked(resolve(file_of(hub__key=None, hub__drive="taper bush"))))  # fmt: skip


def test_thin_hub_over_its_keyway_is_warned_about():
    """12 mm shaft, 4 mm key: 16 mm outside leaves nothing, 18 mm is thin, 20 mm is usual."""
    with pytest.raises(InputError, match="no wall over the keyway"):
        resolve(file_of(hub__outer_diameter="16 mm"))
    thin, usual = (resolve(file_of(hub__outer_diameter=d)) for d in ("18 mm", "20 mm"))
    assert any("wall over the keyway is 1.0 mm" in w for w in thin.warnings)
    assert not any("keyway" in w for w in usual.warnings)
