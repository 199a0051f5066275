"""The plate model behind the drive: it governs lean and bolt forces, says so, or says why it does not."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from conftest import angle_file, drive_file
from mountlimit import evaluate, limits, plate_response, plate_route, thickness, why
from mountlimit.case import Loads
from mountlimit.checks import BY_NAME
from mountlimit.loads import case_list
from mountlimit.model import Drive
from mountlimit.plates import solve
from mountlimit.resolve import resolve
from mountlimit.structure import wrench

FORMS = pytest.mark.parametrize("make", [drive_file, angle_file], ids=["plate", "angle"])


def plated(file) -> Drive:
    """Resolve a file with its plate model."""
    return resolve(plate_route.with_plates(file))


def one_case(drive: Drive, group: str, current: float = 40.0) -> Loads:
    """Give the loads of the first load case of a group."""
    index = next(i for i, c in enumerate(case_list(drive)) if c[1] == group)
    return evaluate.case_at(drive, current, index).loads


def full_answer(drive: Drive, loads: Loads, weight: bool = True):
    """Solve the full, unreduced plate model under the loads."""
    if not weight:
        loads = replace(loads, weight=(0.0, 0.0, 0.0))
    force, moment = wrench(drive, loads, (0.0, 0.0, 0.0))
    point = np.array([0.0, 0.0, float(drive.shaft.face_overhang)])
    force = np.array([float(x) for x in force])
    moment = np.array([float(x) for x in moment]) - np.cross(point, force)
    return solve(plate_route.as_it_bears(drive)).response(np.r_[force, moment], point)


@FORMS
@pytest.mark.parametrize("pull", ["across", "away", "towards"])
def test_the_pipeline_moves_and_pulls_as_the_full_plate_model(make, pull):
    """Movement of the sprocket and bolt forces of the reduced model are those of the full solve."""
    drive = plated(make(chain__pull=pull, mount__weight_acts="across"))
    loads = one_case(drive, "pull")
    full = full_answer(drive, loads)
    bolts = plate_response.solve(drive, loads).bolts
    largest = np.max(np.abs(full.bolt_tension))
    assert np.allclose(bolts.tension, np.maximum(full.bolt_tension, 0), atol=2e-3 * largest)
    light = replace(loads, weight=(0.0, 0.0, 0.0))
    part = plate_response.displacements_of(drive, light)[0]
    full = full_answer(drive, light)
    assert np.allclose(part.move, full.displacement, atol=2e-3 * np.max(np.abs(full.displacement)))
    assert np.allclose(part.turn, full.rotation, atol=2e-3 * np.max(np.abs(full.rotation)))


@FORMS
@pytest.mark.parametrize("key", ["mount.elastic_modulus", "fixings.joint_stiffness"])
def test_an_uncertain_input_at_its_end_is_answered_as_if_laid_out_there(make, key):
    """The reduced model at another modulus or joint stiffness agrees with the full solve there."""
    file = plate_route.with_plates(make(chain__pull="across"))
    item = next(r for r in resolve(file).ranges if r.key == key)
    for value in (item.low, item.high):
        drive = resolve(file, {key: value})
        loads = one_case(drive, "steady")
        light = replace(loads, weight=(0.0, 0.0, 0.0))
        part = plate_response.displacements_of(drive, light)[0]
        full = full_answer(drive, light)
        assert np.allclose(part.turn, full.rotation, atol=3e-3 * np.max(np.abs(full.rotation)))


@FORMS
def test_arrays_and_single_cases_agree(make):
    """Every load case of the stacked arrays gives what it gives alone."""
    drive = plated(make(duty__reverse="50 %"))
    stacked = evaluate.case_at(drive, np.array([10.0, 300.0]))
    for index in range(len(case_list(drive))):
        for column, current in enumerate((10.0, 300.0)):
            alone = evaluate.case_at(drive, current, index)
            for ours, theirs in zip(
                stacked.response.displacements, alone.response.displacements, strict=True
            ):
                shape = np.shape(stacked.loads.torque)
                turn = [np.broadcast_to(t, shape)[index, column] for t in ours.turn]
                assert np.allclose(turn, [float(t) for t in theirs.turn], rtol=1e-7, atol=1e-15)
            tension = [t[index, column] for t in stacked.response.bolts.tension]
            assert np.allclose(tension, alone.response.bolts.tension, rtol=1e-6, atol=1e-6)


@FORMS
def test_loads_and_reactions_close(make):
    """Bolts and contact together carry the load to 1e-9 of it, at every end of the inputs."""
    file = plate_route.with_plates(make())
    for item in resolve(file).ranges:
        for value in (item.low, item.high):
            case = evaluate.case_at(resolve(file, {item.key: value}), np.array([5.0, 500.0]))
            assert float(np.max(case.response.balance)) < 1e-9


def test_a_file_that_asks_for_beams_gets_them():
    """`route = "sections"` or an own value for held warping keeps the section route."""
    for changes in ({"mount__route": "sections"}, {"mount__warping_held": 1}):
        assert plate_route.with_plates(drive_file(**changes)).plates is None


def test_worked_lines_come_from_the_plate_model():
    """`why alignment` works the lean out of coefficients times loads that the checker can redo."""
    work = why.work(drive_file(), "alignment")
    steps = [s for s in work.steps if s.kind == "mesh" and s.result.unit == "rad"]
    assert steps
    for step in steps:
        entries = {e.symbol.letter: e for e in step.entries}
        assert all(e.origin == "model" for k, e in entries.items() if k.startswith("c_"))
        again = sum(
            entries[f"c_{i}"].value * entries[letter].value
            for i, letter in enumerate(("F_x", "F_y", "F_z", "M_x", "M_y", "M_z"), 1)
            if letter in entries
        )
        assert again == pytest.approx(step.value, rel=1e-9)


def test_short_wide_plate_is_softer_than_beams():
    """Bolts close to the motor: beams are far too stiff along the pull, the plate model mends it."""
    wide = {"mount__width": "300 mm", "mount__free_length": "45 mm", "chain__pull": "away"}
    mended, beams = (
        {x.check.name: x.safe for x in limits.find(f).limits}["alignment"]
        for f in (drive_file(**wide), drive_file(**wide, mount__route="sections"))
    )
    assert mended < beams


def test_prying_appears_in_the_bolts_of_the_pipeline():
    """A plate whose upper bolts would only be pressed without contact: the frame's edge pries them."""
    one_row = {"fixings__bolts": "3 x M8", "fixings__span_along": "0 mm"}
    drive = plated(drive_file(chain__pull="towards", motor__mass="0.1 kg", **one_row))
    loads = one_case(drive, "steady", 100.0)
    force, moment = wrench(drive, loads, (0.0, 0.0, 0.0))
    bonded = solve(replace(plate_route.as_it_bears(drive), contacts=())).response(
        np.array([float(x) for x in (*force, *moment)]), (0.0, 0.0, 0.0)
    )
    pried = plate_response.solve(drive, loads).bolts.tension
    size = math.hypot(float(force[0]), float(force[1]))
    assert np.max(bonded.bolt_tension) < 0.05 * size
    assert sum(pried) > 0.5 * size


def test_a_mount_that_cannot_be_meshed_says_why():
    """Washers that leave the plate: beams are used, the reason is a warning, nothing breaks."""
    file = drive_file(fixings__span_across="109 mm", fixings__washer="wide")
    found = limits.find(file)
    assert found.file.plates is None
    assert any("No plate model" in w for w in found.drive.warnings)
    assert found.drive.mount.warping_held.origin == "assumed"


def test_an_edit_lays_the_plates_out_again():
    """An edit drops the plate model; another thickness is laid out and reduced anew."""
    base = plate_route.with_plates(drive_file())
    edited = thickness.with_thickness(base, 0.016)
    assert edited.plates is None
    thick = plate_route.with_plates(edited)
    assert thick.plates.family.model.facets[0].thickness == pytest.approx(0.016)


@FORMS
def test_a_range_of_thickness_is_exact_where_it_is_laid_out(make):
    """At the thickness it is laid out for, a model of a whole range answers as one of its own."""
    file = make(chain__pull="away")
    for t in (0.004, 0.017):
        edited = thickness.with_thickness(file, t)
        ranged, alone = (
            resolve(plate_route.with_plates(edited, (t / 1.15, t * 1.15))),
            plated(edited),
        )
        loads = one_case(alone, "steady")
        turns = [plate_response.displacements_of(d, loads)[0].turn for d in (ranged, alone)]
        assert np.allclose(turns[0], turns[1], atol=2e-3 * np.max(np.abs(turns[1])))


def test_slots_are_cut_and_give_more():
    """Slots stand in the plate model as slots, twice the hole long unless said; the plate gives more."""
    turns = []
    for holes in ({}, {"fixings__holes": "slotted", "fixings__slot_length": "26 mm"}):
        drive = plated(
            drive_file(
                chain__pull="away", fixings__edge="25 mm", fixings__span_along="60 mm", **holes
            )
        )
        bolt = plate_route.as_it_bears(drive).frame_bolts[0]
        assert bolt.slot_length == pytest.approx(0.026 if holes else 0.0)
        part = plate_response.displacements_of(drive, one_case(drive, "steady"))[0]
        turns.append(abs(float(part.turn[0])))
    assert turns[1] > turns[0]


def test_face_bolts_are_worked_by_statics_and_by_the_plates():
    """The plates put more shear on the bolts nearer the frame: both count."""
    drive = plated(drive_file())
    stations = [r.station for r in BY_NAME["motor_bolts"].rows(evaluate.case_at(drive, 40.0, 0))]
    assert sum("by the plate model" in s for s in stations) == drive.motor.bolts.count
    assert any("by the plate model" not in s for s in stations)
