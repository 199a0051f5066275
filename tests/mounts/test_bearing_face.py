"""A mount bears on its frame no farther than the member's face goes."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest

from conftest import WELDED, angle_file, drive_file
from mountlimit import bearing_face, cards, joint, limits, plate_response, plate_route, structure
from mountlimit.drivefile import DriveFile, parse
from mountlimit.errors import InputError
from mountlimit.mounting import BoltPlane
from mountlimit.plate_route import with_plates
from mountlimit.plates import solve
from mountlimit.resolve import resolve

KEY = "frame.face_width"
FORCE, ARM = 1000.0, 0.030
SQUARE = {
    "mount__heel_bears_from": "0 mm",
    "mount__heel_to_bolts": "40 mm",
    "chain__pull": "towards",
}


def angled(**changes: str) -> DriveFile:
    """Give an angle with a square heel, pulled towards its frame, over the heel."""
    return angle_file(**(SQUARE | changes))


def of_a_plate(**changes: str) -> DriveFile:
    return drive_file(**({"frame__face_width": "500 mm"} | changes))


def plane_of(file: DriveFile) -> BoltPlane:
    return next(p for p in resolve(file).mount.planes if p.bolts)


def place_of(drive, response) -> np.ndarray:
    """Give where a solved model bears, across the member's face, from the middle of the bolts."""
    plane = next(p for p in drive.mount.planes if p.bolts)
    axis = "xyz".index(plane.second)
    pressed = np.abs(response.contact_force)
    bears = pressed > 1e-6 * pressed.max()
    return response.contact_place[bears, axis] - float(plane.centre[axis])


@pytest.mark.parametrize("width", [60.0, 70.0, 90.0])
def test_bolts_hold_what_the_lever_to_the_edge_of_the_face_leaves(width):
    """Statics: about the edge of the face the bolts alone hold a leg pulled over its heel."""
    drive = resolve(angled(frame__face_width=f"{width} mm"))
    model = plate_route.as_it_bears(drive)
    side = np.sign(drive.mount.plane.centre[2])
    load = np.array([0.0, -FORCE, 0.0, 0.0, 0.0, 0.0])
    response = solve(model).response(load, np.array([0.0, 0.0, -side * ARM]))
    middle = float(drive.mount.plane.centre[2])
    pivot = middle - side * width / 2000
    row = np.array([middle + float(z) for _, z in drive.mount.plane.bolts])
    held = np.sum(response.bolt_tension * side * (row - pivot))
    assert held > FORCE * (ARM + side * pivot)
    place = side * place_of(drive, response)
    assert place.min() > -width / 2000
    assert place.min() < -width / 2000 + 0.006  # the narrow cells at the edge carry it


@pytest.mark.parametrize("form", [angled, drive_file])
def test_a_narrower_face_never_gives_less_along_the_pull(form):
    """Of two sets of supports the larger is the stiffer, whatever the way of the pull."""
    file = with_plates(form(fixings__span_along="0 mm", fixings__bolts="2 x M8"))
    own = next(r for r in resolve(file).ranges if r.key == KEY)
    for way in (0.0, np.pi / 2, np.pi, -np.pi / 2, 0.7):
        load, gives = structure.unit_load(way, 0.02), []
        for width in np.linspace(own.low, own.high, 5):
            moved = plate_response.displacements_of(resolve(file, {KEY: float(width)}), load)[
                0
            ].move
            gives.append(float(moved[0] * np.cos(way) + moved[1] * np.sin(way)))
        assert np.all(np.diff(gives) <= 1e-6 * gives[0]), way
        assert gives[0] > gives[-1] or way != -np.pi / 2


def test_a_square_heel_beside_a_narrow_tube_throws_its_chain_sooner():
    safe = [
        limits.find(angled(frame__face_width=f"{w} mm"), ["alignment"]).limits[0].safe
        for w in (60, 75, 95, 200)
    ]
    assert all(a < b for a, b in pairwise(safe))
    assert safe[0] < 0.85 * safe[-1]


def test_the_tube_told_is_the_face_it_bears_on():
    told, pad = angled(frame__size="60 mm"), angled(frame__size="60 mm", frame__face_width="60 mm")
    assert plane_of(told).face_half == pytest.approx(0.030)
    ours = [limits.find(f, ["alignment", "bolt_strength"]).limits for f in (told, pad)]
    assert [x.safe for x in ours[0]] == pytest.approx([x.safe for x in ours[1]], rel=1e-9)


def test_a_face_wider_than_the_mount_changes_nothing():
    """The model then is the one the solids were compared with."""
    rigid = plate_route.model_of(resolve(of_a_plate(frame__member="rigid", frame__face_width=None)))
    wide = plate_route.model_of(resolve(of_a_plate(frame__member="rigid")))
    assert repr(rigid) == repr(wide)


def test_bolts_by_statics_pull_harder_on_a_narrow_face():
    """The section route tips about the nearer of the mount's end and the face's edge."""
    force, moment = (0.0, 0.0, 10.0), (100.0, 0.0, 0.0)
    pulls = []
    for width in ("57 mm", "62 mm", "500 mm"):
        plane = plane_of(of_a_plate(frame__face_width=width))
        bolts = joint.bolt_forces(plane, len(plane.bolts), force, moment)
        assert joint.balance(plane, bolts, force, moment) < 1e-12
        pulls.append(max(float(t) for t in bolts.tension))
    assert all(a > b for a, b in pairwise(pulls))


def test_an_assumed_face_takes_the_end_that_counts():
    """From the least the rows of bolts leave to all of the mount; its ends are drives laid out so."""
    file = angled(fixings__span_along="0 mm", fixings__bolts="2 x M8")
    own = next(r for r in resolve(file).ranges if r.key == KEY)
    assert own.low == pytest.approx(0.030)
    assert own.likely == pytest.approx(0.040)
    assert own.high > 0.08  # to the back of the leg, on both sides
    limit = limits.find(file, ["alignment"]).limits[0]
    assert limit.ends[KEY] == "low"
    laid = angled(fixings__span_along="0 mm", fixings__bolts="2 x M8", frame__face_width="30 mm")
    same = limits.find(laid, ["alignment"]).limits[0]
    assert limit.safe == pytest.approx(same.safe, rel=0.02)


def test_pieces_bear_as_far_as_a_drive_lets_them():
    file = with_plates(angled(mount__heel_to_bolts="60 mm", frame__member="square tube"))
    own = next(r for r in resolve(file).ranges if r.key == KEY)
    load, found = structure.unit_load(-np.pi / 2, 0.0), []
    for width in np.linspace(own.low, own.high, 7):
        drive = resolve(file, {KEY: float(width)})
        shares = bearing_face.bearing(drive.plates.family.model, drive)
        assert shares[0] == 1.0
        assert all(0.0 <= s <= 1.0 for s in shares)
        assert plate_response.solve(drive, load).balance < 1e-9
        found.append(abs(plate_response.displacements_of(drive, load)[0].turn[0]))
    assert shares == (1.0,) * len(shares)
    assert np.all(np.diff(found) <= 1e-6 * found[0])
    assert found[-1] < 0.98 * found[0]


def test_what_cannot_be_told_of_a_face():
    with pytest.raises(InputError, match="not a known key"):
        resolve(drive_file(**WELDED, frame__face_width="80 mm"))
    folder = cards.folder("examples")
    text = (folder / "turf_roller.toml").read_text()
    beside = text.replace("[frame]", '[frame]\nface_width = "80 mm"')  # it says where it rests
    with pytest.raises(InputError, match="not bolted to the face of a member"):
        resolve(parse(beside.encode(), str(folder / "beside.toml")))


def test_what_is_said():
    narrow = resolve(of_a_plate(frame__face_width=None, frame__size="30 mm")).warnings
    assert any("30 mm wide, too narrow" in w for w in narrow)
    free = resolve(angled(frame__size="60 mm")).warnings
    assert any("past the face of the frame member" in w and "pad" in w for w in free)
    on_pad = resolve(angled(frame__size="60 mm", frame__face_width="200 mm")).warnings
    assert not any(KEY in w for w in on_pad)
    on_round = {"frame__face_width": None, "frame__member": "round tube", "frame__size": "60 mm"}
    assert any(
        "touches a round tube on a line" in w for w in resolve(of_a_plate(**on_round)).warnings
    )
