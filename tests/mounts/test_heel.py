"""Where the foot of an angle begins to bear, and what a round heel does to a leg pulled over it."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest

from conftest import angle_file
from mountlimit import bearing_face, limits, plate_response, plate_route, structure
from mountlimit.errors import InputError
from mountlimit.plate_route import with_plates
from mountlimit.plates import solve
from mountlimit.resolve import resolve

KEY = "mount.heel_bears_from"
T, TO_BOLTS = 0.008, 0.040
FORCE, ARM = 1000.0, 0.030


def angled(**changes):
    """Give an angle of 8 mm, its bolts 40 mm from the leg; pulled towards the frame it leans over its heel.

    The frame's face is wider than its foot.
    """
    usual = {
        "mount__thickness": "8 mm", "mount__heel_to_bolts": "40 mm", "chain__pull": "towards",
        "frame__face_width": "500 mm",
    }  # fmt: skip
    return angle_file(**(usual | changes))


def ranged(**changes):
    return next((r for r in resolve(angled(**changes)).ranges if r.key == KEY), None)


def over_the_heel(drive):
    """Give the plate model's answer to a pull at the sprocket down towards the frame."""
    model = plate_route.as_it_bears(drive)
    side = np.sign(drive.mount.plane.centre[2])  # of the foot; the pull's arm points away from it
    load = np.array([0.0, -FORCE, 0.0, 0.0, 0.0, 0.0])
    return model, side, solve(model).response(load, np.array([0.0, 0.0, -side * ARM]))


@pytest.mark.parametrize("start", [0.0, 12.0, 20.0, 28.0])
def test_bolts_hold_what_the_heels_lever_leaves(start):
    """Statics: about the line where bearing begins, the bolts alone hold the pull; what presses beyond adds to it."""
    drive = resolve(angled(mount__heel_bears_from=f"{start} mm"))
    model, side, response = over_the_heel(drive)
    pivot = max(start / 1000 - T / 2, 0.0)
    corner = model.facets[1].origin[2]
    row = np.array([b.centre[1] for b in model.frame_bolts])  # from the leg's mid-plane
    held = np.sum(response.bolt_tension * (row - pivot))
    asked = FORCE * (ARM + side * corner + pivot)
    assert held > asked
    pressed = response.contact_force
    place = side * (response.contact_place[:, 2] - corner)
    bears = np.abs(pressed) > 1e-6 * np.abs(pressed).max()
    assert place[bears].min() > pivot
    # the narrow cells at the heel carry it: bearing hardly begins farther in
    assert place[bears].min() < pivot + 0.006


def test_a_round_heel_lowers_the_limit_of_a_leg_pulled_over_it():
    """Farther in, less; a square heel keeps what an angle had."""
    safe = [
        next(
            x for x in limits.find(angled(mount__heel_bears_from=f"{s} mm"), ["alignment"]).limits
        ).safe
        for s in (0, 10, 20, 28)
    ]
    assert all(b < a for a, b in pairwise(safe))
    assert safe[-1] < 0.9 * safe[0]


def test_an_assumed_heel_takes_the_end_that_counts():
    """Its ends are those of drives laid out so."""
    found = limits.find(angled(), ["alignment"])
    limit = next(x for x in found.limits if x.check.name == "alignment")
    heel = ranged()
    assert limit.ends[KEY] == "high"
    laid = {"mount__heel_bears_from": f"{heel.high * 1000} mm"}
    same = limits.find(angled(**laid), ["alignment"]).limits[0]
    assert limit.safe == pytest.approx(same.safe, rel=0.02)
    seen = next(e for e in found.effects if e.range.key == KEY)
    assert seen.low["alignment"] > 1.05 * seen.high["alignment"]


def test_its_range():
    """From a square heel to one bent as wide as the bolts leave room; likely bent, an extrusion square."""
    steel, wide = {"mount__material": "s235"}, {"mount__heel_to_bolts": "200 mm"}
    bent = ranged(**steel, **wide)
    assert (bent.low, bent.likely, bent.high) == pytest.approx((0.0, T + 2 * T, T + 4 * T))
    assert ranged(mount__material="6061", **wide).likely == 0.0
    room = T + TO_BOLTS - float(resolve(angled()).fixings.washer_diameter) / 2
    assert ranged(**steel).high == pytest.approx(room)
    told = ranged(**steel, mount__bend_radius="5 mm")
    assert (told.low, told.likely, told.high) == pytest.approx((0.0, T + 0.005, T + 0.005))


def test_what_is_told_is_taken():
    assert ranged(mount__heel_bears_from="11 mm") is None
    assert ranged(mount__foot_thickness="10 mm") is None  # not one plate, bent
    assert float(resolve(angled(mount__foot_thickness="10 mm")).mount.heel) == 0.0
    given = ranged(mount__heel_bears_from={"likely": "10 mm", "low": "8 mm", "high": "14 mm"})
    assert (given.low, given.high) == pytest.approx((0.008, 0.014))


def test_a_square_heel_is_the_whole_foot():
    """The model then is the one the solids were compared with."""
    model = plate_route.model_of(resolve(angled(mount__heel_bears_from="0 mm")))
    assert [(c.region, c.strip) for c in model.contacts] == [(None, False)]


def test_pieces_that_do_not_bear_are_left_out_and_reactions_close():
    file = with_plates(angled(mount__material="s235", mount__heel_to_bolts="60 mm"))
    heel = next(r for r in resolve(file).ranges if r.key == KEY)
    load = structure.unit_load(-np.pi / 2, 0.0)
    found = []
    for value in np.linspace(heel.low, heel.high, 9):
        drive = resolve(file, {KEY: float(value)})
        shares = bearing_face.bearing(drive.plates.family.model, drive)
        assert shares[0] == 1.0
        assert all(0.0 <= s <= 1.0 for s in shares)
        part = plate_response.solve(drive, load)
        assert part.balance < 1e-9
        found.append(plate_response.displacements_of(drive, load)[0].turn[0])
    assert shares[1:] == (0.0,) * 4
    assert np.all(np.diff(np.abs(found)) >= -1e-6 * abs(found[0]))
    assert abs(found[-1]) > 1.02 * abs(found[0])


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"mount__heel_bears_from": "41 mm"}, ["heel_bears_from", "washers"]),
        ({"mount__heel_bears_from": "-1 mm"}, ["heel_bears_from", "0 mm"]),
        ({"mount__heel_bears_fron": "3 mm"}, ["heel_bears_fron", "heel_bears_from"]),
    ],
)
def test_what_cannot_be_is_refused(changes, words):
    with pytest.raises(InputError) as error:
        resolve(angled(**changes))
    assert all(word in str(error.value) for word in words)
