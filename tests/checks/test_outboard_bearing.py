"""A third bearing on the motor shaft: its share of the pull, and what is left for the rest."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hub_cases import check_of, file_of, limit_of

from conftest import drive_file
from mountlimit import evaluate, respond, shaft_line
from mountlimit.assess import assess, not_checked
from mountlimit.case import Case
from mountlimit.checks.alignment import lean
from mountlimit.errors import InputError
from mountlimit.plate_route import with_plates
from mountlimit.resolve import resolve

# Front bearing 12 mm behind the face, sprocket 38 mm before it, outboard bearing 88 mm before it.
STIFF = {
    "shaft__diameter": "14 mm", "shaft__face_to_bearing": "12 mm", "shaft__bearing_span": "100 mm",
    "shaft__face_overhang": "38 mm", "outboard__at": "88 mm", "outboard__held_by": "mount",
    "outboard__gap": "0 mm", "outboard__stiffness": "1000 kN/mm",
}  # fmt: skip
FRAME = {"outboard__at": "60 mm", "outboard__bearing": "6001"}


def case_of(changes, current=100.0, plates=False):
    """The first pull case of a drive."""
    if plates:
        return evaluate.case_at(resolve(with_plates(drive_file(**changes))), current, 0)
    return evaluate.case_at(resolve(file_of(**changes)), current, 0)


def test_two_equal_spans():
    """Load in the middle of one of two equal spans: 13/32, 22/32 and -3/32 (AISC Manual table 3-22, from memory)."""
    case = case_of(STIFF)
    load = float(case.loads.shaft_load)
    assert case.loads.outboard / load == pytest.approx(13 / 32, rel=2e-3)
    assert shaft_line.front_reaction(case.drive, case.loads) / load == pytest.approx(
        22 / 32, rel=2e-3
    )
    assert shaft_line.rear_reaction(case.drive, case.loads) / load == pytest.approx(
        3 / 32, rel=1e-2
    )
    moments = {where: m for where, m, _ in shaft_line.moments(case.drive, case.loads)}
    span = 0.1
    assert moments["under the sprocket"] / (load * span) == pytest.approx(13 / 64, rel=2e-3)
    assert moments["front bearing"] / (load * span) == pytest.approx(3 / 32, rel=1e-2)


def beam(places, springs, load_at, load, stiffness):
    """Solve a beam on springs by two-node elements; gives movement and slope at every place."""
    n = len(places)
    k = np.zeros((2 * n, 2 * n))
    for i in range(n - 1):
        x = places[i + 1] - places[i]
        own = stiffness / x**3 * np.array(
            [[12, 6 * x, -12, 6 * x], [6 * x, 4 * x * x, -6 * x, 2 * x * x],
             [-12, -6 * x, 12, -6 * x], [6 * x, 2 * x * x, -6 * x, 4 * x * x]]
        )  # fmt: skip
        at = slice(2 * i, 2 * i + 4)
        k[at, at] += own
    for i, spring in springs.items():
        k[2 * i, 2 * i] += spring
    right = np.zeros(2 * n)
    right[2 * load_at] = load
    return np.linalg.solve(k, right)


@pytest.mark.parametrize("stiffness", [1.0, 10.0, 100.0])
def test_against_a_beam_on_springs(stiffness):
    """Share, deflection and slope of the shaft alone, against beam elements on springs."""
    changes = {**STIFF, "outboard__stiffness": f"{stiffness} kN/mm", "outboard__at": "75 mm"}
    case = case_of(changes)
    s = case.drive.shaft
    second = np.pi * float(s.diameter) ** 4 / 64
    found = beam(
        [0.0, 0.1, 0.15, 0.187], {0: 1e13, 1: 1e13, 3: stiffness * 1e6}, 2,
        float(case.loads.shaft_load), float(s.elastic_modulus) * second,
    )  # fmt: skip
    assert case.loads.outboard == pytest.approx(found[6] * stiffness * 1e6, rel=1e-4)
    shaft = shaft_line.at_sprocket(case.drive, case.loads)
    assert shaft.move[0] == pytest.approx(found[4], rel=1e-4)
    assert shaft.turn[1] == pytest.approx(found[5], rel=1e-4)


@pytest.mark.parametrize("plates", [False, True])
@pytest.mark.parametrize("pull", ["across", "towards", "away", "30 deg"])
def test_the_shaft_moves_as_far_as_the_bearing_gives(plates, pull):
    """With torque and contact as they are, the movement at the bearing is its force over its stiffness.

    The share is settled for the pull alone: what is left is under 5 % of the movement without it.
    """
    case = case_of({**FRAME, "chain__pull": pull, "outboard__stiffness": "20 kN/mm"}, plates=plates)
    third, loads = case.drive.shaft.outboard, case.loads
    given = float(loads.outboard) / float(third.stiffness) + float(third.gap)
    free = moved_there(case.drive, replace(loads, outboard=0.0))
    assert abs(moved_there(case.drive, loads) - given) < 0.05 * free


def moved_there(drive, loads):
    """Movement of the shaft at the outboard bearing along the pull, mount and shaft together."""
    angle, beyond = float(loads.pull_angle), float(shaft_line.beyond(drive.shaft))
    total = float(shaft_line.sag_at_outboard(drive, loads))
    for part in respond.solve(drive, loads).displacements[:-1]:
        near = float(part.move[0]) * np.cos(angle) + float(part.move[1]) * np.sin(angle)
        lean = float(part.turn[1]) * np.cos(angle) - float(part.turn[0]) * np.sin(angle)
        total += near + lean * beyond
    return total


def test_loads_close_with_it():
    """What the outboard bearing takes does not reach the mount: reactions close, pull less its share."""
    for plates in (False, True):
        case = case_of(FRAME, plates=plates)
        assert case.response.balance < 1e-9
        shear = sum(float(v) for v in case.response.bolts.shear_first)
        assert abs(shear) == pytest.approx(
            float(case.loads.shaft_load - case.loads.outboard), rel=1e-6
        )


def test_on_the_mount_it_relieves_the_shaft_only():
    """An arm of the mount leaves the bolts the whole pull, and still stiffens the shaft."""
    bare, arm = case_of({}), case_of({**FRAME, "outboard__held_by": "mount"})
    assert float(arm.response.bolts.tension[0]) == pytest.approx(
        float(bare.response.bolts.tension[0])
    )
    assert abs(lean(arm)[0]) < abs(lean(bare)[0])


def test_the_gap_comes_first():
    """Up to the gap the bearing carries nothing, beyond it the force grows in step with the rest."""
    wide = {**FRAME, "outboard__gap": "0.3 mm"}
    assert case_of(wide, 10.0).loads.outboard < 1e-2
    tight = case_of({**FRAME, "outboard__gap": "0 mm"}, 200.0).loads
    loose = case_of(wide, 200.0).loads
    assert 0 < loose.outboard < tight.outboard


@pytest.mark.parametrize(
    ("name", "better", "worse"),
    [
        ("alignment", FRAME, {}),
        ("motor_shaft", FRAME, {}),
        ("front_bearing", FRAME, {}),
        ("bolt_slip", FRAME, {}),
        ("alignment", {**FRAME, "outboard__gap": "0 mm"}, {**FRAME, "outboard__gap": "0.2 mm"}),
        ("front_bearing", {**FRAME, "outboard__stiffness": "20 kN/mm"}, {**FRAME, "outboard__stiffness": "1 kN/mm"}),
        ("outboard_bearing", {**FRAME, "outboard__stiffness": "1 kN/mm"}, {**FRAME, "outboard__stiffness": "20 kN/mm"}),
        ("outboard_bearing", FRAME, {**FRAME, "outboard__bearing": "6000"}),
    ],
)  # fmt: skip
def test_direction(name, better, worse):
    """What carries the shaft better raises the limits of the rest; a stiffer third bearing takes more itself."""
    assert limit_of(name, **worse) < limit_of(name, **better)


def test_life_at_a_known_force():
    """C/P = 10 and 1000 turns a minute: 1e9 turns, 16 667 h (ISO 281); the chain's jerk is set to one."""
    changes = {
        **FRAME,
        "motor__speed": "1000 rpm",
        "duty__chain_factor": 1,
        "outboard__dynamic_rating": None,
    }
    case = case_of(changes, 20.0)
    rating = float(case.drive.shaft.outboard.dynamic_rating)
    loads = replace(case.loads, outboard=rating / 10)
    (row,) = check_of("outboard_bearing_life", case.drive).rows(
        Case(drive=case.drive, loads=loads, response=case.response)
    )
    assert row.capacity == pytest.approx(16_667 * 3600, rel=1e-4)


def test_what_stays_unchecked_is_said():
    """What holds the bearing is not looked at."""
    assert any("outboard" in words for words in not_checked(resolve(drive_file(**FRAME))))
    assert not any("outboard" in words for words in not_checked(resolve(drive_file())))


def test_whole_job():
    """The pipeline runs with it: two more lines, the reactions in the record, nothing divided by nothing."""
    found = assess(drive_file(**FRAME, motor__speed="2000 rpm"))
    names = {line.limit.check.name for line in found.lines}
    assert {"outboard_bearing", "outboard_bearing_life"} <= names
    assert found.balance < 1e-9


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"outboard__at": "20 mm"}, "outboard.at = '20 mm'"),
        ({"outboard__stiffness": "5 kN/mm"}, "outboard.at: is missing"),
        ({**FRAME, "outboard__stiffness": "-5 kN/mm"}, "outboard.stiffness"),
        ({**FRAME, "outboard__held_by": "floor"}, "outboard.held_by"),
    ],
)
def test_bad_input(changes, words):
    """One clear line each."""
    with pytest.raises(InputError) as caught:
        resolve(drive_file(**changes))
    assert words in str(caught.value)
