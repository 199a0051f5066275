"""What an outline leaves round its holes: distances, straight cuts, bearing faces, by plain geometry."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from shapely.geometry import Polygon

from mountlimit.outlines import Outline, Place, RoundHole, SlotHole, room

MM = 1e-3
LEFT, RIGHT, DOWN, UP = (0, -1), (0, 1), (1, -1), (1, 1)


def corners(*places):
    return tuple(Place(x * MM, y * MM) for x, y in places)


def hole(x, y, d):
    return RoundHole(x * MM, y * MM, d * MM)


FRAME = (hole(-30, -90, 9), hole(30, -90, 9))
PLATE = Outline(
    corners=corners((-50, -105), (50, -105), (50, 45), (-50, 45)),
    frame_holes=FRAME, motor_holes=(hole(-25, -25, 6), hole(25, -25, 6)), holes=(hole(0, 0, 30),),
)  # fmt: skip


def gap(outline, cut, way):
    found = room.ahead(outline, cut, *way)
    return found.distance / MM, found.open_end


def test_gaps_in_a_rectangle():
    """To the sides and the end as measured; to the next bolt centre to centre."""
    assert gap(PLATE, FRAME[0], LEFT) == (pytest.approx(20, abs=0.05), True)
    assert gap(PLATE, FRAME[0], DOWN) == (pytest.approx(15, abs=0.05), True)
    assert gap(PLATE, FRAME[0], RIGHT) == (pytest.approx(60, abs=0.05), False)
    # pushed up it meets the motor's hole when the middles are 7.5 mm apart, 5 mm of it across
    wanted = 65 - math.sqrt(7.5**2 - 5**2) + 4.5
    assert gap(PLATE, FRAME[0], UP) == (pytest.approx(wanted, rel=1e-3), True)


def test_gap_to_a_slanted_edge_is_how_far_the_hole_can_be_pushed():
    """An edge at 45 degrees, D from the middle: pushed along an axis it is met after sqrt(2) (D - r)."""
    cut = hole(10, -70, 9)
    edge = corners((-50, -105), (20, -105), (70, -55), (50, 45), (-50, 45))
    slanted = replace(PLATE, corners=edge, frame_holes=(cut,))
    distance = (125 - 80) / math.sqrt(2)  # to the line x - y = 125
    wanted = 4.5 + math.sqrt(2) * (distance - 4.5)
    assert gap(slanted, cut, RIGHT) == (pytest.approx(wanted, rel=1e-3), True)
    assert gap(slanted, cut, DOWN) == (pytest.approx(35, abs=0.05), True)


def test_gap_of_a_slot_is_taken_from_its_end():
    """The bolt may sit anywhere in its slot; another hole or cut-out is an open end."""
    slot = SlotHole(0.0, -0.07, 0.03, 0.009, 0.0)
    plate = replace(PLATE, frame_holes=(), frame_slots=(slot,))
    assert gap(plate, slot, RIGHT) == (pytest.approx(50 - 10.5, abs=0.05), True)
    assert gap(plate, slot, UP) == (pytest.approx(70 - 15, abs=0.3), True)
    window = replace(plate, cutouts=(corners((-5, -60), (5, -60), (5, -50), (-5, -50)),))
    assert gap(window, slot, UP) == (pytest.approx(10, abs=0.05), True)


def test_straight_cut_through_holes_and_bore():
    """At 25 mm the motor's holes in full; at 10 mm the bore with its chord 2 sqrt(15^2 - 10^2)."""
    low = room.crossing(PLATE, -25 * MM)
    assert (low.middle, low.width) == (pytest.approx(0), pytest.approx(0.1))
    assert [g for pair in low.gaps for g in pair] == pytest.approx([-0.025, 0.006, 0.025, 0.006])
    ((place, chord),) = room.crossing(PLATE, -10 * MM).gaps
    assert place == pytest.approx(0, abs=1e-9)
    assert chord == pytest.approx(2e-3 * math.sqrt(15**2 - 10**2), rel=1e-3)


def test_a_forked_plate_has_no_single_cut():
    fork = corners((-50, -105), (-20, -105), (-20, -60), (20, -60), (20, -105), (50, -105), (50, 45), (-50, 45))  # fmt: skip
    forked = replace(PLATE, corners=fork)
    assert room.crossing(forked, -90 * MM) is None
    assert room.crossing(forked, -50 * MM).width == pytest.approx(0.1)
    faces = room.strip(forked, (Place(-0.03, -0.09), Place(0.03, -0.09)), 0.015, False)
    assert sorted(Polygon(f).area for f in faces) == pytest.approx([30 * 30e-6] * 2)


def test_clear_at_the_shaft():
    """A bore about the axis, one beside it, none, and a plate that ends before the axis."""
    assert room.clear_at_shaft(PLATE) == pytest.approx(0.015, rel=2e-3)
    assert room.clear_at_shaft(replace(PLATE, holes=(hole(3, 4, 30),))) == pytest.approx(0.010, rel=3e-3)  # fmt: skip
    assert room.clear_at_shaft(replace(PLATE, holes=())) == 0
    short = replace(
        PLATE, holes=(), corners=corners((-50, -105), (50, -105), (50, -18), (-50, -18))
    )
    assert room.clear_at_shaft(short) == pytest.approx(0.018)


def test_bolt_sits_where_its_slot_meets_the_circle():
    slot = SlotHole(0.0, -0.033, 0.02, 0.006, math.pi / 2)
    assert room.bolt_place(slot, 0.07) == (pytest.approx(0, abs=1e-12), pytest.approx(-0.035))
    assert room.bolt_place(slot) == (0.0, -0.033)
    across = SlotHole(0.028, -0.02, 0.02, 0.006, 0.0)
    place = room.bolt_place(across, 0.07)
    assert math.hypot(*place) == pytest.approx(0.035)
    assert place.y == pytest.approx(-0.02)


def test_bearing_faces_end_with_the_plate():
    """A strip that would end 1.5 mm before the plate goes to its end; below a height all bears."""
    (face,) = room.strip(PLATE, (Place(-0.03, -0.09), Place(0.03, -0.09)), 0.0135, False)
    assert Polygon(face).bounds == pytest.approx((-0.05, -0.105, 0.05, -0.0765))
    (face,) = room.below(PLATE, -0.07)
    assert Polygon(face).bounds == pytest.approx((-0.05, -0.105, 0.05, -0.07))
    (face,) = room.strip(PLATE, (Place(0.03, 0.0),), 0.012, True)
    assert Polygon(face).bounds == pytest.approx((0.018, -0.012, 0.042, 0.012))


def test_free_radius():
    assert room.free_radius(PLATE, FRAME[0], Place(-0.03, -0.09)) == pytest.approx(0.015)
    near = replace(PLATE, holes=(*PLATE.holes, hole(-30, -74, 10)))
    assert room.free_radius(near, FRAME[0], Place(-0.03, -0.09)) == pytest.approx(0.011, rel=1e-3)
