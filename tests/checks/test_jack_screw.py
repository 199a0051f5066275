"""Jack screw: what it takes off slotted bolts, its own strength, and what is refused."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from scipy.optimize import linprog

from conftest import IDEAL, drive_file
from mountlimit import evaluate, limits
from mountlimit.assess import assess, not_checked
from mountlimit.checks import bolt_slip, jack_screw
from mountlimit.errors import InputError
from mountlimit.formulas import jack
from mountlimit.loads import case_list
from mountlimit.plate_route import with_plates
from mountlimit.resolve import resolve

SLOTS = {
    **IDEAL, "fixings__holes": "slotted", "fixings__preload": "5 kN", "fixings__friction": 0.2,
    "chain__pull": "away", "fixings__jack_screw_off": "0 mm", "mount__route": "sections",
}  # fmt: skip
SCREW = {"fixings__jack_screw": "M8", "fixings__jack_screw_class": "8.8"}
BARE = {k: v for k, v in SLOTS.items() if "jack" not in k}
PLATES = {"mount__route": "plates", "mount__warping_held": None}
X, Y = np.array([-45, 45, -45, 45]) / 1000, np.array([-20, -20, 20, 20]) / 1000


def case_of(group="pull", current=40.0, **changes):
    """Give the first case of a group at a current."""
    drive = resolve(drive_file(**{**SLOTS, **SCREW, **changes}))
    index = next(i for i, c in enumerate(case_list(drive)) if c[1] == group)
    return evaluate.case_at(drive, current, index)


def slips(case):
    """Give the rows of the bolts that slide."""
    return [r for r in bolt_slip.rows(case) if "opens" not in r.station]


def test_only_what_turns_the_mount_is_left_to_friction():
    """Pull along the slots through the middle of the bolts: torque over 4 r is left, r = 49.24 mm.

    Shigley eq. 8-57 with four bolts at one radius: V = T r / (4 r^2); 0.05 kg of motor hang on it too.
    """
    case = case_of()
    left = abs(case.loads.stator_torque) / (4 * math.hypot(0.045, 0.020))
    assert case.loads.stator_torque != 0
    for row in slips(case):
        assert float(row.demand) == pytest.approx(left, abs=0.2)
    case = case_of(fixings__jack_screw_off="10 mm")
    more = case.loads.shaft_load * 0.010 / (4 * math.hypot(0.045, 0.020))
    assert float(slips(case)[0].demand) == pytest.approx(left + more, abs=0.3)


def _greatest_pull(offset):
    """Give the most pull a slotted joint with a screw holds: linear programme over bolt forces.

    Each bolt's friction lies in a 180-gon inside its circle of 630 N; the pull acts along y at
    x = ``offset``, the frictionless screw pushes back along y at x = 0.
    """
    angles = np.arange(180) * math.tau / 180
    n = len(X)
    cost = np.zeros(2 * n + 2)
    cost[-1] = -1.0
    equal = np.zeros((3, 2 * n + 2))
    equal[0, 0 : 2 * n : 2] = equal[1, 1 : 2 * n : 2] = 1.0
    equal[2, 0 : 2 * n : 2], equal[2, 1 : 2 * n : 2] = -Y, X
    equal[1, 2 * n], equal[1, -1], equal[2, -1] = 1.0, -1.0, -offset
    bounded = np.zeros((n * 180, 2 * n + 2))
    for i in range(n):
        bounded[180 * i : 180 * (i + 1), 2 * i] = np.cos(angles)
        bounded[180 * i : 180 * (i + 1), 2 * i + 1] = np.sin(angles)
    top = np.full(n * 180, 630.0 * math.cos(math.pi / 180))
    free = [(None, None)] * (2 * n) + [(0, None), (0, None)]
    found = linprog(cost, bounded, top, equal, np.zeros(3), bounds=free)
    assert found.success
    return -found.fun


@pytest.mark.parametrize("torque_arm", [0.03, 0.08])
def test_never_more_than_the_plastic_limit(torque_arm):
    """The pull at which the check gives is below that of a linear programme, and not by much.

    The torque on the mount is its pull times the sprocket's radius: as a pull beside the middle.
    """
    case = case_of()
    arm = abs(case.loads.stator_torque) / case.loads.shaft_load
    worst = max(float(r.demand) for r in slips(case))
    ours = 630.0 / worst * float(case.loads.shaft_load) * arm / torque_arm
    assert 0.6 * _greatest_pull(torque_arm) < ours <= _greatest_pull(torque_arm) * 1.002


@pytest.mark.parametrize("route", [PLATES, {}])
def test_raises_the_slip_limit_and_no_other_falls(route):
    base = {**BARE, **route}
    found = [
        {x.check.name: x.safe for x in limits.find(drive_file(**base, **more)).limits}
        for more in ({}, SCREW)
    ]
    assert found[1]["bolt_slip"] > 1.2 * found[0]["bolt_slip"]
    for name, safe in found[0].items():
        assert found[1][name] >= safe * (1 - 1e-6), name


@pytest.mark.parametrize(
    "more", [{"chain__pull": "across"}, {"fixings__slots_run": "along"}, {"duty__bump": "50 g"}]
)
def test_a_screw_off_the_pull_takes_nothing(more):
    """Slots across the pull; a knock without pull."""
    group = "bump alone" if "duty__bump" in more else "pull"
    case = case_of(group, motor__mass="5 kg", **more)
    bare = case_of(group, motor__mass="5 kg", **more, **dict.fromkeys(SCREW),
                   fixings__jack_screw_off=None)  # fmt: skip
    for with_screw, without in zip(slips(case), slips(bare), strict=True):
        assert float(with_screw.demand) == pytest.approx(float(without.demand), rel=1e-9)


def test_a_line_far_off_never_makes_it_worse():
    """A screw half a metre beside the bolts would turn the mount: then friction holds all, as without."""
    far = case_of(fixings__jack_screw_off="500 mm")
    assert [float(r.demand) for r in slips(far)] == pytest.approx(
        [float(v) for v in far.response.bolts.shear]
    )


@pytest.mark.parametrize("group", ["pull", "reverse", "bump", "bump alone"])
def test_bolts_screw_and_load_balance(group):
    """What is left on the bolts and what the screw takes add up to the load along the slots."""
    for pull in ("away", "towards", "30 deg"):
        case = case_of(group, motor__mass="6 kg", chain__pull=pull, duty__reverse="50 %")
        total, own = jack_screw.along_and_pull(case)
        load = case.loads.shaft_load * math.sin(case.loads.pull_angle) + case.loads.weight[1]
        assert float(total) == pytest.approx(float(load), rel=1e-9)
        assert float(own) == pytest.approx(
            float(case.loads.shaft_load * math.sin(case.loads.pull_angle))
        )


def test_worse_screws():
    """Smaller, softer, nothing but its tip on a soft edge."""
    good = {**SLOTS, **SCREW, "mount__thickness": "10 mm"}

    def worst(**more):
        case = evaluate.case_at(resolve(drive_file(**{**good, **more})), 40.0, 0)
        return [float(r.utilisation) for r in jack_screw.rows(case)]

    base = worst()
    assert worst(fixings__jack_screw_class="4.6")[0] > base[0]
    smaller = worst(fixings__jack_screw="M6")
    assert smaller[0] > base[0]
    assert smaller[1] > base[1]
    assert worst(fixings__jack_screw_tip="3 mm")[1] > base[1]
    assert worst(mount__thickness="3 mm")[1] > base[1]


def test_proof_load_of_m8():
    """ISO 898-1: M8 class 8.8 has a proof load of 21.2 kN; 6 mm of tip on 235 MPa holds 6.64 kN."""
    case = case_of(
        mount__material="s235", mount__yield_strength="235 MPa", fixings__jack_screw_tip="6 mm"
    )
    proof, edge = jack_screw.rows(case)
    assert float(proof.capacity) == pytest.approx(21200, abs=50)
    assert float(edge.capacity) == pytest.approx(math.pi * 9 * 235, rel=1e-9)
    assert float(proof.demand) == pytest.approx(float(case.loads.shaft_load), rel=1e-3)


def test_with_the_plate_model_behind_it():
    """The bolts' elastic shares less the even one: the screw still takes most of the pull."""
    file = drive_file(**{**BARE, **SCREW, **PLATES})
    drive = resolve(with_plates(file))
    assert drive.plates is not None
    case = evaluate.case_at(drive, 40.0, 0)
    worst = max(float(r.demand) for r in slips(case))
    assert worst < 0.7 * max(float(v) for v in case.response.bolts.shear)


def test_a_screw_that_stops_nothing_is_said():
    """Slots square to the row run along y: a pull across them leaves the screw idle."""
    for pull, idle in (
        ("across", True),
        ("away", False),
        ("30 deg", False),
        (["across", "away"], False),
    ):
        drive = resolve(drive_file(**{**SLOTS, **SCREW, "chain__pull": pull}))
        assert jack_screw.stands_idle(drive) is idle
    said = assess(drive_file(**{**SLOTS, **SCREW, "chain__pull": "across"})).warnings
    assert any("jack screw stops nothing" in w for w in said)


def test_what_is_not_looked_at_is_said():
    assert any("jack screw" in line for line in not_checked(case_of().drive))


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"fixings__holes": "round"}, ["fixings.jack_screw", "slotted holes"]),
        ({"fixings__jack_screw": None, "fixings__jack_screw_off": None}, ["fixings.jack_screw_class", "none is named"]),
        ({"fixings__jack_screw": "M8.5"}, ["fixings.jack_screw"]),
        ({"mount__form": "plate two rows"}, ["fixings.jack_screw", "not a known key"]),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(changes, words):
    with pytest.raises(InputError) as caught:
        resolve(drive_file(**{**SLOTS, **SCREW, **changes}))
    lines = [m for m in caught.value.mistakes if "jack_screw" in m.key]
    assert lines
    text = str(lines[0])
    assert all(word in text for word in words), text


def test_places_are_told_from_the_middle_of_the_bolts():
    """Four bolts 90 by 40 mm, wherever the plane's own origin lies: 49.24 mm, 4 r^2."""
    plane = resolve(drive_file(**{**SLOTS, **SCREW})).mount.plane
    for x, y in ((0.0, 0.0), (0.03, -0.07)):
        moved = tuple((float(a) + x, float(b) + y) for a, b in plane.bolts)
        radii, polar = jack_screw._places(replace(plane, bolts=moved))
        assert [float(r) for r in radii] == pytest.approx([0.049244] * 4, rel=1e-4)
        assert float(polar) == pytest.approx(4 * (0.045**2 + 0.020**2))


def test_a_single_bolt_is_not_turned():
    """One bolt stands in the middle: the screw's line off it moves nothing and divides by nothing."""
    plane = resolve(drive_file(**{**SLOTS, **SCREW})).mount.plane
    (radius,), polar = jack_screw._places(replace(plane, bolts=plane.bolts[:1]))
    held = jack.held_shear(300.0, 400.0, 0.0, 1, 0.01, radius, polar)
    assert float(held) == pytest.approx(500.0)


def test_distances_of_the_bolts_are_named_from_the_first_to_the_last():
    """A reader who measures them counts from 1."""
    drive = resolve(drive_file(**{**SLOTS, **SCREW}))
    radii, _ = jack_screw._places(drive.mount.plane)
    assert [r.key for r in radii] == [f"bolt {i}, to the middle" for i in (1, 2, 3, 4)]
    assert radii == pytest.approx(np.hypot(X, Y))
