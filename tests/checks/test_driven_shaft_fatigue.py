"""Driven shaft under pull and weight: strength, fatigue of a turning shaft and of a dead axle."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hub_cases import CURRENTS, check_of, file_of

from mountlimit import crossings, evaluate
from mountlimit.checks import _shaft
from mountlimit.errors import InputError
from mountlimit.held import RoundShaft
from mountlimit.resolve import resolve

TOLD = {"driven__shaft_diameter": "25 mm", "driven__overhang": "35 mm", "driven__notch": "shoulder, sharp",
        "driven__shaft_ultimate": "540 MPa", "driven__shaft_yield": "400 MPa", "duty__bump": "3 g"}  # fmt: skip
DEAD = {**TOLD, "driven__axle": "dead"}
THICK = {**DEAD, "driven__shaft_diameter": "70 mm", "driven__overhang": "150 mm"}
WEIGHT = {"driven__weight": "400 N", "driven__weight_overhang": "60 mm"}
KPSI, POUND_INCH, INCH = 6.894757e6, 0.1129848, 0.0254


def row_in(name, group, **changes):
    """A check's last row in the first load case of a group at 50 A, with that case."""
    drive = resolve(file_of(**{**TOLD, **changes}))
    index = next(i for i, c in enumerate(evaluate.loads.case_list(drive)) if c[1] == group)
    case = evaluate.case_at(drive, 50.0, index)
    return check_of(name, drive).rows(case)[-1], case


def limit_of(name="driven_shaft_fatigue", level="safe", **changes):
    """Current at which a check is used up at likely values, factor 1."""
    drive = resolve(file_of(**{**TOLD, **changes}))
    curve = evaluate.curves(drive, CURRENTS, [name])[name]
    return crossings.refine(
        drive, check_of(name, drive), level, CURRENTS, getattr(curve, level), 1.0
    )


def test_goodman_row_of_a_published_problem(monkeypatch):
    """Shigley solutions manual 7-1(d): 1.073 in for a safety of 2 (DE-Goodman).

    Se 30 and Sut 100 kpsi are given there; the stresses are 16 / (pi d^3) times the printed sums
    2920 and 2391 lbf in of the alternating and the mean loads.
    """
    bar = RoundShaft(diameter=1.073 * INCH, yield_strength=80 * KPSI, ultimate_strength=100 * KPSI,
                     notch="", notch_bending=1.0, notch_torsion=1.0, notch_radius=1.0)  # fmt: skip
    swing, mean = (16 * m * POUND_INCH / (np.pi * (1.073 * INCH) ** 3) for m in (2920.0, 2391.0))
    monkeypatch.setattr(_shaft, "endurance_limit", lambda _: 30 * KPSI)
    assert 1 / _shaft.goodman_row("", swing, mean, bar).utilisation == pytest.approx(2.0, rel=2e-3)


def turned(bending, standing, torque, diameter, reverse, in_bending, in_torsion):
    """Amplitude and mean of the stress at a point of the surface, followed in steps (independent).

    ``bending`` (moments over time), ``standing`` and torque swing; von Mises of each part.
    """
    modulus = np.pi / 32 * diameter**3
    stress = in_bending * (np.asarray(bending) + standing) / modulus
    shear = in_torsion * np.array([torque, -reverse * torque]) / (2 * modulus)
    return tuple(
        float(np.hypot(part(stress), np.sqrt(3) * part(shear)))
        for part in (lambda v: np.ptp(v) / 2, lambda v: (v.max() + v.min()) / 2)
    )


@pytest.mark.parametrize("reverse", [0.0, 0.5])
def test_turning_shaft_against_a_turned_point(reverse):
    """Pull at 35 mm and 400 N at 60 mm turn over; the driven torque swings with the starts.

    25 mm, 540 MPa: radius 0.5 mm, a 0.285 mm, Kf 2.083, Kfs 1.894; Se = 0.851 x 0.881 x 270 MPa.
    """
    row, case = row_in("driven_shaft_fatigue", "steady", **WEIGHT, duty__reverse=reverse)
    size = case.loads.shaft_load * 0.035 + 400 * 0.06
    bending = size * np.sin(np.linspace(0, 2 * np.pi, 3601))
    torque = case.loads.torque * 55 / 11
    swing, mean = turned(bending, 0.0, torque, 0.025, reverse, 2.083, 1.894)
    assert row.capacity / 1e6 == pytest.approx(202.4, abs=0.5)
    assert row.utilisation == pytest.approx(swing / row.capacity + mean / 540e6, rel=1e-3)


def test_dead_axle_against_a_start():
    """The pull comes and goes, the weight stands, no torque."""
    row, case = row_in("driven_shaft_fatigue", "steady", **WEIGHT, **DEAD)
    pull = case.loads.shaft_load * 0.035
    swing, mean = turned([0.0, pull], 400 * 0.06, 0.0, 0.025, 0.0, 2.083, 1.0)
    assert row.utilisation == pytest.approx(swing / row.capacity + mean / 540e6, rel=1e-3)
    assert "dead axle" in row.station


def test_dead_axle_without_weight():
    """Half the pull's stress swings, half stands."""
    row, case = row_in("driven_shaft_fatigue", "steady", **DEAD)
    swing, mean = turned([0.0, case.loads.shaft_load * 0.035], 0.0, 0.0, 0.025, 0.0, 2.083, 1.0)
    assert swing == pytest.approx(mean)
    assert row.utilisation == pytest.approx(swing / row.capacity + mean / 540e6, rel=1e-3)


def test_strength_of_a_dead_axle():
    """Line-shaft problem: 9955.63 N at 150 mm bends with 1493.35 N*m; the torque is not in it."""
    _, case = row_in("driven_shaft", "pull", **THICK)
    case = replace(case, loads=replace(case.loads, shaft_load=9955.63))
    (row,) = check_of("driven_shaft", case.drive).rows(case)
    assert row.demand * np.pi * 0.07**3 / 32 == pytest.approx(1493.35, rel=1e-4)


def test_weight_adds_to_the_bending():
    """Line-shaft problem: belts of 8355.63 N and a pulley of 1600 N at 150 mm, together 1493.35 N*m."""
    heavy = {"driven__weight": "1600 N", "driven__weight_overhang": "150 mm"}
    _, case = row_in("driven_shaft", "pull", **THICK, **heavy)
    case = replace(case, loads=replace(case.loads, shaft_load=8355.63))
    (row,) = check_of("driven_shaft", case.drive).rows(case)
    assert row.demand * np.pi * 0.07**3 / 32 == pytest.approx(1493.35, rel=1e-4)


@pytest.mark.parametrize("group", ["pull", "bump", "bump alone"])
def test_a_knock_raises_the_weight_only(group):
    """3 g in the cases of a bump; between its bearings 400 N at 60 of 300 mm bend with 19.2 N*m."""
    told = {"driven__bearing_span": "300 mm", "driven__weight_at": "between the bearings"}
    _, case = row_in("driven_shaft", group, **WEIGHT, **told)
    case = replace(case, loads=replace(case.loads, shaft_load=0.0, torque=0.0))
    (row,) = check_of("driven_shaft", case.drive).rows(case)
    by_hand = 400 * 0.06 * 0.24 / 0.3 * (1 if group == "pull" else 3)
    assert row.demand * np.pi * 0.025**3 / 32 == pytest.approx(by_hand, rel=1e-9)


def test_knocks_take_part_in_the_limit():
    """A heavy wheel far out: harder knocks lower the limit of the strength, never raise it."""
    heavy = {"driven__weight": "600 N", "driven__weight_overhang": "150 mm"}
    soft, hard = (limit_of("driven_shaft", "gives", **heavy, duty__bump=b) for b in ("1 g", "5 g"))
    assert hard < soft


@pytest.mark.parametrize(
    "worse",
    [
        {"driven__overhang": "50 mm"}, {"driven__shaft_diameter": "20 mm"},
        {"driven__shaft_ultimate": "450 MPa"}, {"driven__notch": "groove"},
        {"chain__driving_teeth": 9}, {"driven__weight": "600 N"}, {"driven__weight_overhang": "80 mm"},
    ],
)  # fmt: skip
@pytest.mark.parametrize("axle", ["turning", "dead"])
def test_what_makes_it_worse_lowers_the_limit(axle, worse):
    """More overhang or weight, less shaft or steel, a sharper notch, a smaller driving sprocket."""
    base = {**WEIGHT, "driven__axle": axle}
    assert limit_of(**{**base, **worse}) < limit_of(**base)


def test_a_dead_axle_lasts_longer():
    """Half the swing and no torque."""
    assert limit_of(**DEAD) > limit_of()
    assert limit_of("driven_shaft", "gives", **DEAD) > limit_of("driven_shaft", "gives")


def test_it_applies_only_when_told():
    """Without notch and ultimate strength nothing is asked; either alone is enough."""
    plain = {k: v for k, v in TOLD.items() if k not in ("driven__notch", "driven__shaft_ultimate")}
    drive = resolve(file_of(**plain))
    assert check_of("driven_shaft_fatigue", drive) is None
    assert not [r.key for r in drive.ranges if r.key in ("driven.notch", "driven.shaft_ultimate")]
    for more in ({"driven__notch": "plain"}, {"driven__shaft_ultimate": "540 MPa"}):
        assert check_of("driven_shaft_fatigue", resolve(file_of(**plain, **more)))
    known = resolve(file_of(**plain, driven__notch="plain")).ranges
    steel = next(r for r in known if r.key == "driven.shaft_ultimate")
    assert (steel.low, steel.likely, steel.high) == (400e6, 450e6, 600e6)  # not under the yield


@pytest.mark.parametrize(
    ("bad", "key"),
    [
        ({"driven__overhang": None}, "driven.overhang"),
        ({"driven__shaft_ultimate": "350 MPa"}, "driven.shaft_ultimate"),
        ({"driven__notch": "hole"}, "driven.notch"),
        ({"driven__axle": "live"}, "driven.axle"),
        ({"driven__axle": "dead", "driven__key": "8 x 7 x 30 mm"}, "driven.key"),
    ],
)  # fmt: skip
def test_bad_inputs_are_refused(bad, key):
    """A notch without its shaft, less ultimate than yield, unknown words, a key on a dead axle."""
    changes = {k: v for k, v in {**TOLD, **bad}.items() if v is not None}
    with pytest.raises(InputError) as error:
        resolve(file_of(**changes))
    assert [m.key for m in error.value.mistakes] == [key]
