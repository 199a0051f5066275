"""Twin plates: equilibrium of plates and spacers, against one plate, directions, bad input."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from bolted_kit import (
    apart_from_full,
    file_of,
    lean,
    message,
    moved,
    one_case,
    plated,
    safe_limits,
    worst_balance,
)

from mountlimit import plate_response, plate_route, structure
from mountlimit.drivefile import DriveFile
from mountlimit.model import Drive
from mountlimit.mounting import Beyond
from mountlimit.plate_reading import settle
from mountlimit.plates import readings, solve
from mountlimit.resolve import resolve

TWIN = {
    "mount__form": "twin plates", "mount__gap": "140 mm", "mount__spacers": 4,
    "mount__spacer_diameter": "16 mm", "mount__spacers_across": "90 mm",
    "mount__spacers_along": "90 mm", "mount__motor_hangs": "between",
    "mount__frame_lies": "between", "fixings__bolts": "8 x M8",
}  # fmt: skip
SIDE = {"mount__gap": "30 mm", "mount__motor_hangs": "one side", "mount__opening": "75 mm"}


def twin(**changes: Any) -> DriveFile:
    """The base drive on two plates."""
    return file_of(**{**TWIN, **changes})


def wrench_on(drive: Drive, beyond: Beyond, place: Any = (0.0, 0.0, 0.0)) -> np.ndarray:
    """Give what the mount puts on some supports under the first pull, about a place."""
    settled = settle(drive, one_case(drive, "pull"))
    answer = settled.groups[0][0]
    return plate_response._beyond(settled, answer, beyond, np.asarray(place)) @ settled.shares[0][0]


@pytest.mark.parametrize(
    "changes", [{}, {**SIDE, "mount__frame_lies": "behind"}], ids=["between", "side"]
)
def test_loads_and_reactions_close(changes):
    assert worst_balance(twin(mount__weight_acts="across", **changes)) < 1e-9


def test_pulls_to_the_left_and_to_the_right_are_alike():
    drive = plated(twin())
    assert lean(drive, 30) == pytest.approx(lean(drive, 150), rel=0.01)
    assert moved(drive, 30) == pytest.approx(moved(drive, 150), rel=0.01)


@pytest.mark.parametrize("pull", ["across", "towards", "20 deg"])
@pytest.mark.parametrize("changes", [{}, SIDE], ids=["between", "side"])
def test_reduced_model_answers_as_the_full_one(changes, pull):
    """Lean and movement to two parts in a thousand; bolt tension to a hundredth of the largest."""
    turn, move, tension = apart_from_full(plated(twin(chain__pull=pull, **changes)))
    assert max(turn, move) < 2e-3
    assert tension < 1e-2


@pytest.mark.parametrize("material", [None, "s235"])
def test_spacers_and_both_plates_are_in_equilibrium(material):
    """Ends of a spacer balance; the second plate gives on what it gets; the front cuts carry the load."""
    more = {"second__material": material, "second__thickness": "5 mm"} if material else {}
    drive = plated(twin(chain__pull="20 deg", **more))
    full = solve(plate_route.as_it_bears(drive))
    at, load = np.zeros(3), np.array([300.0, 100.0, 0.0, 0.0, 9.0, 5.0])
    response = full.response(load, at)

    def put(beyond: Beyond) -> np.ndarray:
        chosen = readings.Chosen(bolts=beyond.bolts, welds=(), struts=(), spacers=beyond.spacers)
        pushed = readings.push_wrenches(full.contact_points, at) * response.shares[6:]
        pressed = pushed[:, np.isin(full.contact_points.contact, beyond.contacts)].sum(axis=1)
        return readings.wrench_on(full.model, full.supports, chosen, at) @ response.shares - pressed

    for i in range(4):
        assert put(Beyond(spacers=((i, 0), (i, 1)))) == pytest.approx(np.zeros(6), abs=1e-5)
    held = put(Beyond(bolts=(4, 5, 6, 7), contacts=(1,)))
    brought = put(Beyond(spacers=tuple((i, 1) for i in range(4))))
    assert np.abs(held).max() > 10.0
    assert brought + held == pytest.approx(np.zeros(6), abs=1e-5)
    cuts = {cut.name: cut.beyond for cut in drive.mount.cuts}
    both = [cuts[f"front plate at the {side} motor bolts"] for side in ("lower", "upper")]
    assert put(both[0]) + put(both[1]) == pytest.approx(load, abs=1e-5)
    assert both[0].spacers == ((0, 0), (1, 0))
    assert both[1].spacers == ((2, 0), (3, 0))


def test_forces_in_a_cut_are_those_of_the_full_model():
    """The reduced model's share past a cut, to a hundredth of the largest force and moment."""
    drive = plated(twin(chain__pull="20 deg"))
    loads = one_case(drive, "pull")
    full = solve(plate_route.as_it_bears(drive))
    whole = [float(v) for part in structure.wrench(drive, loads, (0, 0, 0)) for v in part]
    shares = full.response(whole, (0, 0, 0)).shares
    beyond = Beyond(spacers=((2, 0), (3, 0)))
    chosen = readings.Chosen(bolts=(), welds=(), struts=(), spacers=beyond.spacers)
    theirs = readings.wrench_on(full.model, full.supports, chosen, np.zeros(3)) @ shares
    ours = wrench_on(drive, beyond)
    for part in (slice(0, 3), slice(3, 6)):
        assert ours[part] == pytest.approx(theirs[part], abs=0.01 * np.abs(theirs[part]).max())


ONE = {"fixings__bolts": "4 x M8"}
SOFT = {"mount__spacer_modulus": "1 MPa", "mount__spacer_diameter": "4 mm", "mount__gap": "3 mm",
        "mount__spacers": 2, "mount__spacers_along": None}  # fmt: skip


@pytest.mark.parametrize("degrees", [0, 90])
def test_two_plates_lean_less_than_one(degrees):
    """Also than one with all the bolts' and plates' stiffness doubled up: the spacers make a frame."""
    one = lean(plated(file_of(**ONE)), degrees)
    assert lean(plated(twin()), degrees) < 0.8 * one
    side = lean(plated(twin(**SIDE)), degrees)
    assert side < 0.9 * one


@pytest.mark.parametrize("degrees", [0, 90])
def test_soft_spacers_leave_one_plate(degrees):
    """Rubbery spacers carry nothing: the front plate stands alone, to one part in fifty."""
    one, two = plated(file_of(**ONE)), plated(twin(**SIDE | SOFT))
    assert lean(two, degrees) == pytest.approx(lean(one, degrees), rel=0.02)


def test_leans_no_less_than_its_plates_stretch():
    """Pulled away from the frame: with rigid spacers and bolts M L / (E A d**2 / 2) would be left.

    Statics of a couple carried by two members a distance d apart; the plates' own bending adds to it.
    """
    drive = plated(twin())
    t, gap, length = 0.008, 0.140, 0.085 - 0.045
    couple = float(drive.shaft.face_overhang) - t / 2
    area = 0.12 * t
    stretch = (
        couple * length / (float(drive.mount.material.elastic_modulus) * area * (gap + t) ** 2 / 2)
    )
    assert stretch < lean(drive, 90)


@pytest.mark.parametrize("degrees", [0, 90])
def test_each_part_that_is_stiffer_gives_less(degrees):
    base = moved(plated(twin()), degrees)
    stiffer = ({"mount__thickness": "12 mm"}, {"second__thickness": "14 mm"},
               {"mount__spacer_diameter": "22 mm"}, {"mount__spacer_modulus": "205 GPa"},
               {"second__material": "s235"})  # fmt: skip
    softer = ({"fixings__joint_stiffness": "100 kN/mm"}, {"mount__material": "hdpe"},
              {"mount__spacer_bore": "12 mm"}, {"second__material": "hdpe"})  # fmt: skip
    for changes in stiffer:
        assert moved(plated(twin(**changes)), degrees) < base, changes
    for changes in softer:
        assert moved(plated(twin(**changes)), degrees) > base, changes


def test_an_opening_makes_it_softer():
    small, large = (plated(twin(**SIDE | {"mount__opening": d})) for d in ("40 mm", "80 mm"))
    assert moved(large, 0) > moved(small, 0)
    assert [c.name for c in large.mount.cuts if c.second][-1] == "second plate at the opening"


def test_sprocket_nearer_the_face_lowers_no_limit():
    """To 1e-4: contact shifts a little of the shear from bolt to bolt as the moment falls."""
    far, near = safe_limits(**TWIN), safe_limits(**TWIN, shaft__face_overhang="24 mm")
    for name, current in far.items():
        assert near[name] >= current * (1 - 1e-4), name


def test_second_plate_has_its_own_strength():
    """The same metal, weaker by name in the second plate alone: yield and fatigue limits fall."""
    same = safe_limits(**TWIN, second__material="6061")
    weak = safe_limits(
        **TWIN, second__material="6061", second__yield_strength="12 MPa",
        second__fatigue_strength="4 MPa",
    )  # fmt: skip
    for check in ("mount_section", "mount_fatigue"):
        assert weak[check] < 0.9 * same[check], check
    assert weak["alignment"] == pytest.approx(same["alignment"], rel=1e-6)


def test_bolts_face_the_frame_they_lie_on():
    """Between the plates: the front plate's back and the second plate's front; else both backs."""
    for where, sides in (("between", [-1, 1]), ("behind", [-1, -1])):
        drive = resolve(twin(mount__frame_lies=where))
        model = plate_route.as_it_bears(drive)
        assert [b.frame_side for b in model.frame_bolts] == [sides[0]] * 4 + [sides[1]] * 4
        for i, bolt in enumerate(model.frame_bolts):
            facet, plane = model.facets[bolt.facet], drive.mount.planes[i // 4]
            place = (
                facet.to_space(bolt.centre) + bolt.frame_side * facet.axes[2] * facet.thickness / 2
            )
            a, b = plane.bolts[i % 4]
            assert place == pytest.approx(
                [float(a), float(plane.centre[1] + b), float(plane.centre[2])]
            )


def test_says_when_the_frame_does_not_fill_the_gap():
    def said(**changes: Any) -> bool:
        return any("between the plates, but" in w for w in resolve(twin(**changes)).warnings)

    assert said(frame__size="40 mm")
    assert not said(frame__size="40 mm", mount__frame_lies="behind")
    assert not said(frame__size="140 mm")
    assert not said(frame__member="rectangular tube", frame__depth="140 mm")


def test_spacers_off_the_motor_may_stand_above_it():
    """Two spacers above the motor: no cut below it counts them, and the model holds together."""
    drive = plated(twin(mount__spacers=2, mount__spacers_along=None, mount__spacers_above="65 mm"))
    cuts = {cut.name: cut.beyond for cut in drive.mount.cuts}
    assert cuts["front plate at the lower motor bolts"].spacers == ()
    assert cuts["front plate at the upper motor bolts"].spacers == ((0, 0), (1, 0))
    assert (
        solve(plate_route.as_it_bears(drive))
        .response([1, 0, 0, 0, 0, 0], (0, 0, 0.03))
        .balance_residual
        < 1e-8
    )


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"mount__gap": "40 mm"}, ["mount.gap", "60.0 mm", "one side"]),
        ({"mount__spacers": 3}, ["mount.spacers", "2 or 4"]),
        ({"mount__spacers": 2}, ["mount.spacers", "not both"]),
        ({"mount__spacers_across": "50 mm", "mount__spacers_along": "50 mm"}, ["spacers_across", "motor bolt"]),
        ({"mount__spacers_across": "110 mm"}, ["spacers_across", "over the edge"]),
        ({"mount__body_diameter": "115 mm"}, ["spacers_across", "motor's body"]),
        ({"mount__spacers_across": "50 mm", "mount__spacers_along": "160 mm"}, ["spacers_above", "frame between"]),
        ({"mount__spacers_along": "10 mm"}, ["spacer_diameter", "one another"]),
        ({"mount__spacer_bore": "16 mm"}, ["mount.spacer_bore", "no wall"]),
        ({"mount__opening": "60 mm"}, ["mount.opening", "one side"]),
        ({**SIDE, "mount__opening": None}, ["mount.opening", "missing"]),
        ({**SIDE, "mount__opening": "118 mm", "mount__spacers": 2, "mount__spacers_along": None, "mount__spacers_above": "70 mm"}, ["mount.opening", "no plate beside it"]),
        ({**SIDE, "mount__body_diameter": "78 mm"}, ["mount.opening", "no larger"]),
        ({"fixings__bolts": "6 x M8"}, ["fixings.bolts", "8, 12 or 16"]),
        ({"second__yield_strength": "200 MPa"}, ["second.yield_strength", "second.material"]),
        ({"mount__spacer_yield": "200"}, ["mount.spacer_yield", "unit"]),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(tmp_path, changes, words):
    changes = {"motor__centre_of_mass": "60 mm", **TWIN, **changes}
    if changes.get("mount__gap") == "30 mm":
        changes["motor__centre_of_mass"] = "20 mm"
    line = message(tmp_path, **changes)
    assert all(word in line for word in words), line
