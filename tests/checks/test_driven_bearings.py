"""Bearings of the driven shaft: force on either, static safety, hours, and the weight told."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hub_cases import CURRENTS, check_of, file_of

from mountlimit import crossings, evaluate
from mountlimit.assess import not_checked
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

POUND, INCH = 4.448222, 0.0254
TOLD = {"driven__shaft_diameter": "25 mm", "driven__overhang": "30 mm", "driven__bearing_span": "50 mm",
        "driven__bearing": "6205", "motor__speed": "1500 rpm", "duty__chain_factor": 1.2,
        "duty__bearing_hours": "1000 h", "duty__bump": "3 g"}  # fmt: skip
BETWEEN = {"driven__sprocket_at": "between the bearings", "driven__bearing_span": "400 mm"}
WEIGHT = {"driven__weight": "400 N", "driven__weight_overhang": "60 mm"}


def rows_in(name, group, load=None, current=50.0, **changes):
    """A check's rows in the first load case of a group, with a shaft load put in."""
    drive = resolve(file_of(**{**TOLD, **changes}))
    index = next(i for i, c in enumerate(evaluate.loads.case_list(drive)) if c[1] == group)
    case = evaluate.case_at(drive, current, index)
    if load is not None:
        case = replace(case, loads=replace(case.loads, shaft_load=load, effective_pull=load))
    return check_of(name, drive).rows(case)


def limit_of(name="driven_bearings", level="gives", **changes):
    """Current at which a check is used up at likely values, factor 1."""
    drive = resolve(file_of(**{**TOLD, **changes}))
    curve = evaluate.curves(drive, CURRENTS, [name])[name]
    return crossings.refine(
        drive, check_of(name, drive), level, CURRENTS, getattr(curve, level), 1.0
    )


def test_overhung_sprocket():
    """1000 N, 30 mm outside bearings 50 mm apart: 1600 and 600 N (AISC table 3-23, from memory)."""
    near, far = rows_in("driven_bearings", "pull", 1000.0)
    assert (near.demand, far.demand) == pytest.approx((1600.0, 600.0), rel=1e-9)


def test_sprocket_between_the_bearings():
    """1330 lbf at 2 in of 11 in: 1088 and 242 lbf (Shigley solutions manual, chapter 7)."""
    near, far = rows_in(
        "driven_bearings", "pull", 1330 * POUND, **{**BETWEEN, "driven__overhang": "2 in", "driven__bearing_span": "11 in"}
    )  # fmt: skip
    assert near.demand / POUND == pytest.approx(1088, rel=1e-3)
    assert far.demand / POUND == pytest.approx(242, rel=3e-3)


def test_hours_of_a_published_problem():
    """1898 N, factor 1.2, 300 rpm, C 18.55 kN: 30 000 h (Shigley solutions manual, 11-1).

    55 teeth to 11: the motor turns at 1500 rpm.
    """
    near, _ = rows_in(
        "driven_bearing_life", "hold", 1898.0 / 1.6, driven__bearing=None, driven__dynamic_rating="18.55 kN"
    )  # fmt: skip
    assert near.capacity / 3600 == pytest.approx(30000, rel=2e-3)


def forces_by_balance(pull, at_pull, weight, at_weight, span):
    """Forces on bearings at 0 and span of two loads one way, from two balances (independent)."""
    balance = np.array([[1.0, 1.0], [0.0, span]])
    load = np.array([pull + weight, pull * at_pull + weight * at_weight])
    return np.linalg.solve(balance, load)


@pytest.mark.parametrize(
    ("where", "x"), [("outside the bearings", -0.06), ("between the bearings", 0.06)]
)
def test_weight_beside_the_same_bearing(where, x):
    """Both over the first bearing and one way: its force is that of the balance; the other's is more."""
    near, far = rows_in(
        "driven_bearings", "pull", 1000.0, driven__bearing_span="200 mm", **WEIGHT, driven__weight_at=where
    )  # fmt: skip
    first, second = forces_by_balance(1000.0, -0.03, 400.0, x, 0.2)
    assert near.demand == pytest.approx(first, rel=1e-9)
    assert far.demand > abs(second)


@pytest.mark.parametrize("group", ["bump", "bump alone"])
def test_a_knock_raises_the_weight_only(group):
    """3 g: three times 400 N x 110 / 50, and the pull as it is."""
    (still, _), (knocked, _) = (
        rows_in("driven_bearings", g, 0.0, **WEIGHT) for g in ("pull", group)
    )
    assert still.demand == pytest.approx(880.0)
    g = 9.80665
    assert knocked.demand == pytest.approx(3 * g / g * 880.0)


def test_stacked_cases_agree_with_each_alone():
    """The search over all load cases sees the same forces, knocks in their own rows only."""
    drive = resolve(file_of(**TOLD, **WEIGHT))
    check = check_of("driven_bearings", drive)
    stacked = check.rows(evaluate.case_at(drive, np.array([20.0, 80.0])))[0].demand
    for i in range(len(evaluate.loads.case_list(drive))):
        alone = check.rows(evaluate.case_at(drive, 80.0, i))[0].demand
        assert stacked[i, 1] == pytest.approx(alone, rel=1e-12)


def test_weight_counts_in_the_hours_without_the_jerk():
    """P = 1.2 x chain + weight; at a third power."""
    (plain, _), (loaded, _) = (
        rows_in("driven_bearing_life", "hold", 1000.0, **w) for w in ({}, WEIGHT)
    )
    ratio = (1.2 * 1600.0 + 880.0) / (1.2 * 1600.0)
    assert plain.capacity / loaded.capacity == pytest.approx(ratio**3, rel=1e-9)


def test_weight_stays_in_every_step_of_the_duty():
    """A step without current still carries the weight: hours as with the weight alone."""
    idle = rows_in(
        "driven_bearing_life", "hold", 1000.0, **WEIGHT, duty__spectrum=[["0 %", "100 %"]]
    )
    weight_only = (14e3 / 880.0) ** 3 * 1e6 / (300 * 60)  # 6205: 14 kN
    assert idle[0].capacity / 3600 == pytest.approx(weight_only, rel=1e-9)


@pytest.mark.parametrize(
    "worse",
    [
        {"driven__overhang": "45 mm"}, {"driven__bearing_span": "40 mm"}, {"driven__bearing": "6004"},
        {"chain__driving_teeth": 9}, {"driven__weight": "600 N"}, {"driven__weight_overhang": "90 mm"},
    ],
)  # fmt: skip
@pytest.mark.parametrize(("name", "level"), [("driven_bearings", "gives"), ("driven_bearing_life", "continuous")])  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(name, level, worse):
    """More overhang, less span, lighter bearings, a smaller sprocket, more weight farther out."""
    base = {**WEIGHT, "driven__bearing": "6206", "driven__shaft_diameter": "25 mm"}
    assert limit_of(name, level, **{**base, **worse}) < limit_of(name, level, **base)


def test_harder_knocks_count_once_they_govern():
    """A heavy weight and no pull to speak of: 5 g takes more than 3 g."""
    heavy = {"driven__weight": "1500 N", "driven__weight_overhang": "20 mm"}
    assert limit_of(**heavy, duty__bump="4 g") < limit_of(**heavy, duty__bump="1 g")


def test_it_applies_only_when_told():
    """No bearing told: no check; no speed: no hours; a bore that does not fit is remarked on."""
    drive = resolve(file_of(**{**TOLD, "driven__bearing": None}))
    assert check_of("driven_bearings", drive) is check_of("driven_bearing_life", drive) is None
    drive = resolve(file_of(**{**TOLD, "motor__speed": None}))
    assert check_of("driven_bearings", drive)
    assert check_of("driven_bearing_life", drive) is None
    wide = resolve(file_of(**{**TOLD, "driven__bearing": "6207"}))
    assert any("35 mm bore" in w for w in wide.warnings)


def test_not_checked_follows_what_is_told():
    """Weight, bearings and fatigue leave the list one by one; side forces stay."""
    shaft = {k: TOLD[k] for k in ("driven__shaft_diameter", "driven__overhang", "driven__bearing_span")}  # fmt: skip
    said = ["\n".join(not_checked(resolve(file_of(**shaft, **more)))) for more in (
        {}, WEIGHT, {"driven__bearing": "6205"}, {"driven__notch": "plain"}, {"driven__static_rating": "5 kN"},
        {**WEIGHT, "driven__bearing": "6205", "driven__notch": "plain"},
    )]  # fmt: skip
    assert "weight on the driven shaft, its bearings and its fatigue" in said[0]
    assert "on the driven shaft: its fatigue; its bearings; side forces" in said[1]
    assert "on the driven shaft: weight; its fatigue; side forces" in said[2]
    assert "on the driven shaft: weight; its bearings; side forces" in said[3]
    assert "life of its bearings" in said[4]
    assert "on the driven shaft: side forces" in said[5]


@pytest.mark.parametrize(
    ("bad", "key"),
    [
        ({"driven__bearing_span": None}, "driven.bearing_span"),
        ({"driven__overhang": None}, "driven.overhang"),
        ({"driven__overhang": None, "driven__bearing": None, "driven__weight_at": "outside the bearings"}, "driven.overhang"),
        ({"driven__bearing": "9205"}, "driven.bearing"),
        ({"driven__dynamic_rating": "14 kN"}, "driven.dynamic_rating"),
        ({"driven__weight": "400 N"}, "driven.weight_overhang"),
        ({"driven__weight_overhang": "60 mm"}, "driven.weight"),
        ({**WEIGHT, "driven__weight_at": "between the bearings"}, "driven.weight_overhang"),
        ({"driven__weight": "400 mm", "driven__weight_overhang": "60 mm"}, "driven.weight"),
        ({"driven__axle": "dead"}, "driven.bearing"),
    ],
)  # fmt: skip
def test_bad_inputs_are_refused(bad, key):
    """What is missing or cannot be: one line each."""
    changes = {k: v for k, v in {**TOLD, **bad}.items() if v is not None}
    with pytest.raises(InputError) as error:
        resolve(file_of(**changes))
    assert [m.key for m in error.value.mistakes] == [key]
