"""Plate of the user's own shape: as the plain plate where it is one, its own holes, edges and cuts."""

from __future__ import annotations

import math
from dataclasses import replace
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
from mountlimit.assess import assess
from mountlimit.cards import folder
from mountlimit.checks import bolt_bearing
from mountlimit.drivefile import DriveFile, read
from mountlimit.plates import Cutout, Slot
from mountlimit.resolve import resolve
from mountlimit.worked import Value

CIRCLE = 79.0
TURNS = [math.pi * (2 * i + 1) / 4 for i in range(4)]
MOTOR = [(CIRCLE / 2 * math.sin(a), -CIRCLE / 2 * math.cos(a), 6.6) for a in TURNS]
FRAME = [(-45.0, -125.0, 9.0), (45.0, -125.0, 9.0), (-45.0, -85.0, 9.0), (45.0, -85.0, 9.0)]
TOP, END = CIRCLE / 2 + 18, -138.5
BOX = [(-60, END), (60, END), (60, TOP), (-60, TOP)]
EDGE = {"fixings__edge": "13.5 mm"}
NOT_USED = ("mount__width", "mount__free_length", "fixings__span_across", "fixings__span_along")
BARE = {"motor__mass": "0.05 kg", "frame__member": "rigid"}


def texts(*entries: tuple[float, ...]) -> list[str]:
    """Write places, holes or slots in mm as a drive file has them."""
    found = []
    for entry in entries:
        numbers = [f"{v:.9f}".rstrip("0").rstrip(".") for v in entry]
        found.append(f"{', '.join(numbers[:4])} mm" + (f", {numbers[4]} deg" if entry[4:] else ""))
    return found


def keys(**changes: Any) -> dict[str, Any]:
    """The base drive's plate by its corners and holes, with changes."""
    return {
        "mount__form": "outline", **dict.fromkeys(NOT_USED), **EDGE,
        "mount__outline": texts(*BOX), "mount__frame_holes": texts(*FRAME),
        "mount__motor_holes": texts(*MOTOR), "mount__holes": texts((0, 0, CIRCLE / 2)), **changes,
    }  # fmt: skip


def outlined(**changes: Any) -> DriveFile:
    """Read that drive."""
    return file_of(**keys(**changes))


def test_a_rectangle_is_the_plain_plate():
    """The same plate by the form 'plate' and by its corners: lean, bolts and limits are one."""
    plain, own = plated(file_of(**EDGE)), plated(outlined())
    for degrees in (0, 30, 90, -90):
        assert lean(own, degrees) == pytest.approx(lean(plain, degrees), rel=1e-6)
    loads = one_case(plain, "pull")
    ours, theirs = (plate_response.solve(d, loads).bolts for d in (own, plain))
    assert np.allclose(ours.tension, theirs.tension, rtol=1e-5)
    one, other = safe_limits(**EDGE), safe_limits(**keys())
    for name in ("alignment", "bolt_slip", "bolt_strength", "motor_threads", "chain_static"):
        assert other[name] == pytest.approx(one[name], rel=1e-6), name


def test_cuts_of_a_rectangle_are_those_of_the_plain_plate():
    """Straight cuts at the same places, of the same width, with the same holes."""
    for own, plain in zip(resolve(outlined()).mount.cuts, resolve(file_of(**EDGE)).mount.cuts, strict=True):  # fmt: skip
        assert [float(v) for v in own.place] == pytest.approx([float(v) for v in plain.place])
        assert own.width == pytest.approx(plain.width)
        assert np.allclose(own.holes, plain.holes, rtol=1e-3, atol=1e-9)
        assert own.beyond is None


def test_loads_and_reactions_close():
    assert worst_balance(outlined(duty__reverse="50 %", mount__weight_acts="across")) < 1e-9


@pytest.mark.parametrize("pull", ["across", "away", "20 deg"])
def test_reduced_model_answers_as_the_full_one(pull):
    assert max(apart_from_full(plated(outlined(chain__pull=pull)))) < 2e-3


CRANKED = {
    "mount__outline": texts((-110, END), (-10, END), (-10, -95), (60, -60), (60, TOP), (-60, TOP), (-60, -60), (-110, -95)),
    "mount__frame_holes": texts((-95, -125, 9), (-25, -125, 9), (-95, -105, 9), (-25, -105, 9)),
    "mount__away": "up",
}  # fmt: skip


def test_mirror():
    """A pull at 30 deg is one at 150 deg, also of the mirrored plate when it is not even."""
    even = plated(outlined())
    assert lean(even, 30) == pytest.approx(lean(even, 150), rel=0.01)
    one = plated(outlined(**CRANKED))
    other = plated(outlined(**CRANKED, mount__seen_from="motor"))
    assert lean(one, 30) == pytest.approx(lean(other, 150), rel=0.01)
    assert lean(one, 30) != pytest.approx(lean(one, 150), rel=0.05)


def test_long_strip_bends_as_a_cantilever():
    """A couple F e at the end of a strip of length L turns it by F e L / E I.

    Source: beam theory (Roark's Formulas for Stress and Strain table 8.1, from memory). L lies
    between row to motor bolts and row to shaft axis.
    """
    drive = plated(outlined(
        mount__outline=texts((-25, -315), (25, -315), (25, 20), (-25, 20)),
        mount__frame_holes=texts((-12, -300, 5), (12, -300, 5)), fixings__bolts="2 x M5",
        mount__motor_holes=texts((-10, 0, 4.5), (10, 0, 4.5)), motor__bolts="2 x M4",
        motor__bolt_circle="20 mm", mount__holes=texts((0, 0, 12.5)), mount__away="up",
        fixings__joint_stiffness="10000 kN/mm", fixings__edge="15 mm", **BARE,
    ))  # fmt: skip
    thickness = float(drive.mount.thickness)
    overhang = float(drive.shaft.face_overhang) - thickness / 2
    stiff = float(drive.mount.material.elastic_modulus) * 0.05 * thickness**3 / 12
    found = lean(drive, 90)
    assert 0.95 < found / (overhang * 0.3 / stiff) < 1.03


@pytest.mark.parametrize("degrees", [0, 90])
def test_directions(degrees):
    """Thicker is stiffer; softer joint or material, a window or a narrower neck give more."""
    base = moved(plated(outlined()), degrees)
    assert moved(plated(outlined(mount__thickness="12 mm")), degrees) < base
    assert moved(plated(outlined(fixings__joint_stiffness="100 kN/mm")), degrees) > base
    assert moved(plated(outlined(mount__material="hdpe")), degrees) > 10 * base
    waist = texts(*BOX[:2], (60, -75), (40, -65), (40, -55), (60, -45), *BOX[2:], (-60, -45), (-40, -55), (-40, -65), (-60, -75))  # fmt: skip
    assert moved(plated(outlined(mount__outline=waist)), degrees) > base
    assert moved(plated(outlined(mount__slots=texts((0, -60, 60, 16, 0)))), degrees) > base


def test_sprocket_nearer_the_face_lowers_no_limit():
    far, near = safe_limits(**keys()), safe_limits(**keys(shaft__face_overhang="24 mm"))
    for name, current in far.items():
        assert near[name] >= current * (1 - 1e-6), name


# --- edges


@pytest.mark.parametrize(
    ("bolts", "hole", "end", "side", "pitch", "gauge", "thickness", "force"),
    [
        ("M12", 14, 25, 20, 35, 40, 5, 30.3), ("M12", 14, 25, 20, 35, 40, 10, 60.5),
        ("M16", 18, 35, 25, 50, 50, 5, 42.7), ("M16", 18, 35, 25, 50, 50, 8, 68.3),
    ],
)  # fmt: skip
def test_resistance_tables(bolts, hole, end, side, pitch, gauge, thickness, force):
    """EN 1993-1-8 table 3.4, resistance tables for S355 and class 4.6 bolts, distances off the outline.

    The weaker of outer and inner bolt, pushed towards the end of the plate.  Printed in kN.
    """
    half, low = gauge / 2, -120
    drive = resolve(outlined(
        mount__outline=texts((-half - side, low - end), (half + side, low - end), (half + side, 60), (-half - side, 60)),
        mount__frame_holes=texts(*((x, y, hole) for x in (-half, half) for y in (low, low + pitch))),
        mount__motor_holes=texts(*((50 / CIRCLE * x, 50 / CIRCLE * y, 6.6) for x, y, _ in MOTOR)),
        motor__bolt_circle="50 mm", mount__holes=texts((0, 0, 25)), mount__away="up",
        mount__thickness=f"{thickness} mm", fixings__bolts=f"4 x {bolts}", fixings__bolt_class="4.6",
        fixings__edge=f"{end} mm", mount__material="s355",
    ))  # fmt: skip
    material = drive.mount.material
    card = replace(material.card, ultimate_strength=Value(470e6, "test", "given"))
    drive = replace(drive, mount=replace(drive.mount, material=replace(material, card=card)))
    plane = drive.mount.plane
    found = [
        bolt_bearing.bearing_force(bolt_bearing.Place(drive, plane, bolt), bolt_bearing.ACROSS_ROW, -1.0)
        for bolt in plane.bolts
    ]  # fmt: skip
    assert min(found) / 1.25 / 1000 == pytest.approx(force, abs=0.06)


def test_only_the_bolt_near_a_notch_loses():
    """A notch 12 mm below one bolt lowers what that hole bears downwards, and no other."""
    notch = texts((-60, END), (-55, END), (-55, -137), (-35, -137), (-35, END), *BOX[1:])
    forces = []
    for edge in (texts(*BOX), notch):
        drive = resolve(outlined(mount__outline=edge))
        plane = drive.mount.plane
        forces.append([bolt_bearing.torn_force(bolt_bearing.Place(drive, plane, b), 1, -1.0) for b in plane.bolts])  # fmt: skip
    before, after = forces
    assert after[0] < 0.9 * before[0]
    assert after[1:] == pytest.approx(before[1:])


def test_says_that_a_bolt_is_near_the_edge():
    near = outlined(mount__frame_holes=texts((-50.5, -125, 9), *FRAME[1:]))
    assert any("1.1 hole diameters" in w for w in resolve(near).warnings)
    assert not any("hole diameters" in w for w in resolve(outlined()).warnings)


# --- slots, cut-outs, rows on both sides


def test_slots_of_frame_and_motor():
    """Slots are cut as slots, the motor's bolts sit on their circle, and both joints count as slotted."""
    reach = CIRCLE / 2 / math.sqrt(2)
    slots = [(x * reach, y * reach + 3, 20, 6.6, 90) for x in (-1, 1) for y in (-1, 1)]
    file = outlined(
        mount__frame_holes=texts(*FRAME[2:]), mount__frame_slots=texts(*((x, -125, 25, 9, 90) for x in (-45, 45))),
        mount__motor_holes=None, mount__motor_slots=texts(*slots), mount__shaft="0, 0 mm",
        mount__outline=texts((-60, -150), (60, -150), *BOX[2:]), mount__away="up", mount__holes=texts((0, 0, 30)),
    )  # fmt: skip
    drive = plated(file)
    model = plate_route.as_it_bears(drive)
    assert [b.slot_length for b in model.frame_bolts] == pytest.approx([0, 0, 0.025, 0.025])
    for bolt in model.motor_bolts:
        assert math.hypot(*bolt.centre) == pytest.approx(CIRCLE / 2000)
        assert bolt.slot_offset == pytest.approx(0.003)
    assert drive.fixings.slotted
    assert drive.face.slotted
    assert [a.slotted for a in drive.mount.plane.around] == [False, False, True, True]
    assert worst_balance(file) < 1e-9
    assert {"motor_face_slip"} <= safe_limits(**keys(mount__motor_holes=None, mount__holes=None, mount__motor_slots=texts(*slots), mount__shaft="0, 0 mm")).keys()  # fmt: skip


def test_rows_on_both_sides_share_the_load():
    """Cuts below and above the motor: their forces, carried to one place, add up to the load."""
    drive = plated(outlined(
        mount__outline=texts((-60, -100), (60, -100), (60, 120), (-60, 120)), mount__away="up",
        mount__frame_holes=texts((-45, -85, 9), (45, -85, 9), (-45, 100, 9), (45, 100, 9)),
        chain__pull="20 deg",
    ))  # fmt: skip
    assert [len(p.bolts) for p in drive.mount.planes] == [2, 2]
    loads = one_case(drive, "pull")
    whole, turning = structure.wrench(drive, loads, (0.0, 0.0, 0.0))
    force, moment = np.zeros(3), np.zeros(3)
    for cut, found in zip(drive.mount.cuts, plate_response.sections(drive, loads), strict=True):
        if "motor bolts" in cut.name:
            f = np.array([found.shear_across, found.normal, found.shear_normal], float)
            m = np.array([found.moment_across, found.torque, found.moment_normal], float)
            force += f
            moment += m + np.cross([float(v) for v in cut.place], f)
    size = np.linalg.norm([float(v) for v in whole])
    assert force == pytest.approx([float(v) for v in whole], abs=1e-8 * size)
    assert moment == pytest.approx([float(v) for v in turning], abs=1e-8 * size)


def test_bolts_beside_the_motor_are_planes_of_their_own():
    file = outlined(
        mount__outline=texts((-90, END), (90, END), (90, TOP), (-90, TOP)), mount__away="up",
        mount__frame_holes=texts(*FRAME[:2], (-75, 0, 9), (75, 5, 9)),
    )  # fmt: skip
    drive = plated(file)
    assert [len(p.bolts) for p in drive.mount.planes] == [2, 1, 1]
    assert [p.contacts for p in drive.mount.planes] == [(0,), (1,), (2,)]
    assert len(drive.mount.cuts) == 2
    assert worst_balance(file) < 1e-9
    assert lean(drive, 90) < lean(plated(outlined()), 90)


def test_resting_below_a_height():
    """Every part under the frame's edge bears; the lower that edge, the more the mount gives.

    Pulled away: it tips about that edge. Pulled towards the frame the edge moves its lean by 0.1 %.
    """
    lower, higher = (
        plated(outlined(mount__rests="below", mount__rests_up_to=f"{h} mm")) for h in (80, 65)
    )
    top = max(y for face in higher.mount.rests for _, y in face)
    assert top == pytest.approx(-0.065)
    assert lean(higher, 90) < lean(lower, 90)


def test_the_drawing_of_the_example_arrives_in_the_plate_model():
    """Turf roller: two slots, a window of four corners, a bore; the joint slips first."""
    file = read(folder("examples") / "turf_roller.toml")
    drive = resolve(file)
    (facet,) = plate_route.model_of(drive).facets
    kinds = [type(h) for h in facet.holes]
    assert kinds.count(Cutout) == 1
    assert Slot not in kinds
    assert [b.slot_length for b in plate_route.model_of(drive).frame_bolts] == pytest.approx([0.026, 0.026])  # fmt: skip
    answer = assess(file)
    assert answer.first_safe.limit.check.name == "bolt_slip"


def test_a_washer_over_the_edge_is_taken_as_far_as_it_lies_on_the_plate():
    near = outlined(mount__frame_holes=texts((-53, -125, 9), *FRAME[1:]))
    model = plate_route.model_of(plated(near))
    assert model.frame_bolts[0].washer_diameter == pytest.approx(2 * 0.98 * 0.007, rel=1e-3)
    assert model.frame_bolts[1].washer_diameter == pytest.approx(0.016)


# --- bad input

SMALL = texts(*FRAME[:3], (45, -85, 7))


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"mount__frame_holes": texts(*FRAME[:3])}, ["fixings.bolts", "'4 x M8'", "3 holes and slots"]),
        ({"motor__bolts": "3 x M6"}, ["motor.bolts", "4 holes and slots", "4 x M6"]),
        ({"mount__frame_holes": SMALL}, ["mount.frame_holes", "hole 4 is 7 mm wide", "M8", "9 mm"]),
        ({"motor__bolt_circle": "75 mm"}, ["mount.motor_holes", "circle of 79 mm", 'motor.bolt_circle = "79 mm"']),
        ({"mount__holes": texts((0, 0, 10))}, ["mount.holes", "shaft axis leaves 10 mm", "12 mm"]),
        ({"mount__rests": "below"}, ["mount.rests_up_to", "missing"]),
        ({"mount__rests_up_to": "60 mm"}, ["mount.rests_up_to", "only used with"]),
        ({"mount__rests": "below", "mount__rests_up_to": "90 mm"}, ["leaves out a frame bolt", "85 mm below"]),
        ({"mount__rests": "below", "mount__rests_up_to": "20 mm"}, ["behind the motor's bolts", "27.9 mm"]),
        ({"mount__away": "down"}, ["mount.away", "from the frame to the shaft"]),
        ({"mount__outline": None}, ["mount.outline", "is missing"]),
        ({"mount__drawing": "no.dxf", "mount__outline": None, "mount__frame_holes": None, "mount__motor_holes": None, "mount__holes": None}, ["mount.drawing", "no.dxf"]),
        ({"mount__frame_holes": texts((-58, -125, 9), *FRAME[1:])}, ["mount.frame_holes", "breaks through the edge"]),
        ({"mount__route": "sections"}, ["mount.route", "not a known key"]),
        ({"fixings__span_across": "90 mm"}, ["fixings.span_across", "not a known key"]),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(tmp_path, changes, words):
    line = message(tmp_path, **keys(**changes))
    assert all(word in line for word in words), line


def test_wide_holes_and_no_bore_are_said():
    wide = resolve(outlined(mount__frame_holes=texts(*((x, y, 11) for x, y, _ in FRAME))))
    assert any("11 mm" in w and "more than 2 mm" in w for w in wide.warnings)
    assert any("no hole at the shaft" in w for w in resolve(outlined(mount__holes=None)).warnings)
    assert not resolve(outlined()).warnings
