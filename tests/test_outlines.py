"""A user's own outline, from points and from DXF drawings written here; all plates are invented."""

from __future__ import annotations

import math
import subprocess
import sys
import types
from itertools import pairwise

import ezdxf
import numpy as np
import pytest
from ezdxf.enums import TextEntityAlignment
from scipy.interpolate import BSpline
from shapely.geometry import Polygon

from conftest import changed, toml_text
from mountlimit import drivefile, outlines
from mountlimit.errors import InputError
from mountlimit.mounts import FORMS, _outline
from mountlimit.outlines import Outline, OutlineError, Place, RoundHole, SlotHole, points
from mountlimit.picking import Picker

MM = 1e-3
CORNERS = [(0, 0), (120, 0), (120, 150), (90, 170), (30, 170), (0, 150)]
FRAME = [(20, 15, 9), (100, 15, 9)]
SHAFT = (60, 105)
MOTOR = [(60 + 35 * math.cos(a), 105 + 35 * math.sin(a), 6.6) for a in (math.pi / 4 + k * math.pi / 2 for k in range(4))]  # fmt: skip
BORE = (60, 105, 30)


def by_points(**changes):
    """The invented plate by points, in metres."""
    drawn = {
        "corners": tuple(Place(x * MM, y * MM) for x, y in CORNERS),
        "frame_holes": tuple(RoundHole(x * MM, y * MM, d * MM) for x, y, d in FRAME),
        "motor_holes": tuple(RoundHole(x * MM, y * MM, d * MM) for x, y, d in MOTOR),
        "holes": (RoundHole(*(v * MM for v in BORE)),),
        **changes,
    }
    return Outline(**drawn)


class Sheet:
    """A drawing of the plate in the making; ``at`` moves what is drawn."""

    def __init__(self, units=4, scale=1.0, at=lambda x, y: (x, y)):
        self.doc = ezdxf.new("R2010", units=units)
        self.doc.units = units
        self.msp = self.doc.modelspace()
        self.scale, self.move = scale, at

    def at(self, x, y):
        x, y = self.move(x, y)
        return x * self.scale, y * self.scale

    def edge(self, corners=CORNERS, close=True, **attribs):
        self.msp.add_lwpolyline([self.at(*c) for c in corners], close=close, dxfattribs=attribs)
        return self

    def lines(self, corners, **attribs):
        for a, b in pairwise(corners):
            self.msp.add_line(self.at(*a), self.at(*b), dxfattribs=attribs)
        return self

    def circles(self, holes, layer):
        for x, y, d in holes:
            self.msp.add_circle(self.at(x, y), d * self.scale / 2, dxfattribs={"layer": layer})
        return self

    def holes(self):
        return self.circles(FRAME, "frame").circles(MOTOR, "motor").circles([BORE], "0")

    def save(self, tmp_path, name="plate.dxf"):
        path = tmp_path / name
        self.doc.saveas(path)
        return path


def complaint(path, **options):
    """The one line a drawing is refused with."""
    with pytest.raises(OutlineError) as caught:
        outlines.from_drawing(path, **options)
    text = str(caught.value)
    assert len(text.splitlines()) == len(caught.value.faults)
    assert all(line.startswith("mount.") for line in text.splitlines())
    assert "Traceback" not in text
    return text


def same(first, second, tolerance=1e-9):
    """The same plate: corners (from any one on), holes, slots and cut-outs."""
    for name in ("frame_holes", "motor_holes", "holes", "frame_slots", "motor_slots", "slots"):
        a, b = getattr(first, name), list(getattr(second, name))
        assert len(a) == len(b), name
        for one in a:
            other = min(b, key=lambda h: math.dist(h, one))
            assert math.dist(one, other) < tolerance, name
            b.remove(other)
    start = min(range(len(second.corners)), key=lambda k: math.dist(second.corners[k], first.corners[0]))  # fmt: skip
    turned = second.corners[start:] + second.corners[:start]
    assert len(turned) == len(first.corners)
    assert max(math.dist(p, q) for p, q in zip(first.corners, turned, strict=True)) < tolerance


# --- the outline itself


def test_area_and_centroid_against_shapely():
    """Net area and centroid agree with shapely, which knows circles as fine polygons."""
    plate = by_points(slots=(SlotHole(0.06, 0.05, 0.03, 0.008, 0.3),))
    shape = Polygon(plate.corners)
    for hole in (*plate.frame_holes, *plate.motor_holes, *plate.holes):
        shape -= Polygon([(hole.x + hole.diameter / 2 * math.cos(a / 500 * math.pi), hole.y + hole.diameter / 2 * math.sin(a / 500 * math.pi)) for a in range(1000)])  # fmt: skip
    from shapely.geometry import LineString

    shape -= LineString(plate.slots[0].ends).buffer(0.004, quad_segs=256)
    assert plate.area == pytest.approx(shape.area, rel=1e-5)
    assert plate.centroid == pytest.approx((shape.centroid.x, shape.centroid.y), rel=1e-5)


def test_moving_keeps_the_area():
    """Shift, turn and mirror keep area, carry the centroid, and keep corners anticlockwise."""
    plate = by_points(slots=(SlotHole(0.06, 0.05, 0.03, 0.008, 0.3),))
    moved = plate.shifted(0.5, -0.2).turned(2.0).mirrored()
    assert moved.area == pytest.approx(plate.area, rel=1e-12)
    assert moved.gross_area > 0
    x, y = plate.centroid[0] + 0.5, plate.centroid[1] - 0.2
    c, s = math.cos(2.0), math.sin(2.0)
    assert moved.centroid == pytest.approx((-(c * x - s * y), s * x + c * y), abs=1e-12)
    assert math.sin(moved.slots[0].angle + 2.3) == pytest.approx(0, abs=1e-12)


def test_placed_about_the_shaft():
    """The shaft is found from the motor's holes; the frame lies at y below nothing."""
    plate = outlines.from_points(by_points())
    left, right = sorted(plate.frame_holes)
    assert (*left, *right) == pytest.approx((-0.04, -0.09, 0.009, 0.04, -0.09, 0.009))
    assert plate.holes[0] == pytest.approx((0, 0, 0.03), abs=1e-12)
    for hole in plate.motor_holes:
        assert math.hypot(hole.x, hole.y) == pytest.approx(0.035)


@pytest.mark.parametrize("angle", [0.0, 0.5, 1.6, 3.0, -2.2])
def test_turned_plate_is_placed_alike(angle):
    """A plate measured in other axes comes out the same."""
    turned = by_points().turned(angle).shifted(0.3, 0.1)
    same(outlines.from_points(by_points()), outlines.from_points(turned))


def test_which_way_is_away_can_be_said():
    """A single frame hole cannot tell; ``away`` can."""
    one = by_points(frame_holes=(RoundHole(0.008, 0.05, 0.006),))
    with pytest.raises(OutlineError, match=r"mount\.away"):
        outlines.from_points(one, shaft=Place(0.06, 0.105))
    plate = outlines.from_points(one, away=0.0)
    assert plate.frame_holes[0][:2] == pytest.approx((0.055, -0.052))


def test_seen_from_the_motor():
    """A plate measured from behind comes out with left and right changed."""
    lopsided = by_points(slots=(SlotHole(0.03, 0.05, 0.02, 0.006, 0.4),))
    seen = outlines.from_points(lopsided)
    same(seen, outlines.from_points(lopsided.mirrored(), seen_from="motor"))
    assert seen.slots[0].x == pytest.approx(-0.03)


@pytest.mark.parametrize(
    ("changes", "options", "words"),
    [
        ({"motor_holes": ()}, {"shaft": Place(0.06, 0.105)}, ["mount.motor_holes", "no hole", "motor"]),
        ({"frame_holes": ()}, {}, ["mount.frame_holes", "no hole", "frame"]),
        ({"corners": (Place(0, 0), Place(0.1, 0))}, {}, ["mount.outline", "three"]),
        ({"corners": (Place(0, 0), Place(0.12, 0.17), Place(0.12, 0), Place(0, 0.17))}, {}, ["crosses", "60, 85 mm"]),
        ({"frame_holes": (RoundHole(0.02, 0.015, 0.009), RoundHole(0.13, 0.015, 0.009))}, {}, ["frame hole 2 at 130, 15 mm", "outside"]),
        ({"frame_holes": (RoundHole(0.02, 0.015, 0.009), RoundHole(0.118, 0.015, 0.009))}, {}, ["frame hole 2", "breaks through", "2.5 mm"]),
        ({"holes": (RoundHole(0.025, 0.015, 0.009),)}, {}, ["frame hole 1", "hole 1 at 25, 15 mm", "overlap"]),
        ({"slots": (SlotHole(0.06, 0.02, 0.09, 0.008, 0.0),)}, {}, ["slot 1", "overlap"]),
        ({"frame_holes": (RoundHole(0.02, 0.025, 0.07), RoundHole(0.1, 0.015, 0.009))}, {}, ["frame hole 1", "70 mm", "unit"]),
        ({}, {"bolt_circle": 0.08}, ["circle of 70 mm", "says 80 mm", "motor.bolt_circle"]),
        ({"motor_slots": (SlotHole(0.06, 0.04, 0.02, 0.006, 0.0),)}, {"shaft": Place(0.06, 0.105)}, ["motor slot 1 at 60, 40 mm", "bolt circle of 70 mm"]),
        ({}, {"shaft": Place(0.062, 0.105)}, ["motor hole", "expected 3"]),
    ],
)  # fmt: skip
def test_points_refused(changes, options, words):
    """Each fault of an outline by points is told in plain words with its place."""
    with pytest.raises(OutlineError) as caught:
        outlines.from_points(by_points(**changes), **options)
    for word in words:
        assert word in str(caught.value)


def test_every_fault_at_once():
    """Two bad holes make two lines."""
    bad = by_points(frame_holes=(RoundHole(-0.02, 0.015, 0.009), RoundHole(0.13, 0.015, 0.009)))
    with pytest.raises(OutlineError) as caught:
        outlines.from_points(bad)
    assert len(caught.value.faults) == 2


def test_motor_slots_on_the_bolt_circle():
    """A slot that the bolt circle crosses holds the motor as well as a round hole does."""
    slots = tuple(SlotHole(h.x, h.y, 0.02, 0.0066, 0.0) for h in by_points().motor_holes)
    plate = outlines.from_points(by_points(motor_holes=(), motor_slots=slots), bolt_circle=0.07)
    assert sum(s.x for s in plate.motor_slots) == pytest.approx(0, abs=1e-12)


# --- texts


@pytest.mark.parametrize(
    ("read", "text", "value"),
    [
        (points.place, "120, 150 mm", (0.12, 0.15)),
        (points.place, "1-1/2, 2 in", (0.0381, 0.0508)),
        (points.place, "1-1/2 in, -20 mm", (0.0381, -0.02)),
        (points.place, '3/4", 2"', (0.01905, 0.0508)),
        (points.hole, "20, 15, 9 mm", (0.02, 0.015, 0.009)),
        (points.hole, "1 in, 15 mm, 9 mm", (0.0254, 0.015, 0.009)),
        (points.slot, "60, 15, 25, 9 mm, 30 deg", (0.06, 0.015, 0.025, 0.009, math.pi / 6)),
        (points.slot, "60, 15, 25, 9 mm, 180 deg", (0.06, 0.015, 0.025, 0.009, 0.0)),
    ],
)  # fmt: skip
def test_entries(read, text, value):
    """Places, holes and slots as a tired person types them."""
    assert read(text) == pytest.approx(value, abs=1e-15)


@pytest.mark.parametrize(
    ("read", "entry", "words"),
    [
        (points.place, "120, 150", ["no unit", '"120, 150 mm"']),
        (points.place, "1-1/2, 2", ["no unit", '"1-1/2, 2 in"']),
        (points.place, [120, 150], ["text", '"120, 150 mm"']),
        (points.place, 120, ["text", "unit"]),
        (points.place, "12,5, 3 mm", ["x, y", "point"]),
        (points.place, "120 mm", ["x, y"]),
        (points.place, "120, 150 kg", ["length"]),
        (points.place, "120, 150 m", ["10 m", "unit"]),
        (points.hole, "20, 15 mm, 9", ["no unit", '"20, 15 mm, 9 mm"']),
        (points.hole, "20, 15, 0 mm", ["diameter"]),
        (points.hole, [20, 15, 9], ['"20, 15, 9 mm"']),
        (points.slot, "60, 15, 25, 9 mm, 30", ["angle", '30 deg"']),
        (points.slot, "60, 15, 25, 9, 30 deg", ["no unit", '"60, 15, 25, 9 mm, 30 deg"']),
        (points.slot, "60, 15, 9, 25 mm, 0 deg", ["end to end"]),
        (points.heading, "north", ["up", "30 deg"]),
    ],
)  # fmt: skip
def test_entries_refused(read, entry, words):
    """Each bad entry says what was expected and what to type."""
    with pytest.raises(outlines.EntryMistake) as caught:
        read(entry)
    for word in words:
        assert word in str(caught.value)


def test_headings():
    """Directions in a drawing."""
    assert points.heading("up") == pytest.approx(math.pi / 2)
    assert points.heading("30 deg") == pytest.approx(math.pi / 6)


# --- drawings


def test_drawing_equals_points(tmp_path):
    """The same plate by points and by drawing."""
    drawn = outlines.from_drawing(Sheet().edge().holes().save(tmp_path))
    same(outlines.from_points(by_points()), drawn)
    assert drawn.notes == ()


@pytest.mark.parametrize("version", ["R12", "R2000", "R2018"])
def test_loose_lines_and_versions(tmp_path, version):
    """Lines in any order and direction, in old and new files, are chained."""
    sheet = Sheet()
    ring = [*CORNERS, CORNERS[0]]
    sheet.lines(ring[4:]).lines(ring[:3]).lines(ring[2:5][::-1]).holes()
    sheet.doc.dxfversion = version
    path = sheet.save(tmp_path)
    same(outlines.from_points(by_points()), outlines.from_drawing(path, unit="mm"))


def test_binary_drawing(tmp_path):
    """A binary DXF is read too."""
    sheet = Sheet().edge().holes()
    path = tmp_path / "b.dxf"
    sheet.doc.saveas(path, fmt="bin")
    same(outlines.from_points(by_points()), outlines.from_drawing(path))


@pytest.mark.parametrize(
    ("units", "scale", "unit"),
    [(1, 1 / 25.4, None), (0, 1 / 25.4, "inch"), (5, 0.1, None), (6, 0.001, "m"), (0, 1.0, "mm")],
)
def test_units(tmp_path, units, scale, unit):
    """Inch, centimetre and metre drawings give the same plate."""
    path = Sheet(units, scale).edge().holes().save(tmp_path)
    same(outlines.from_points(by_points()), outlines.from_drawing(path, unit=unit))


def turned_sheet(angle, mirror=1):
    """A sheet on which everything is turned, perhaps mirrored, and moved."""
    c, s = math.cos(angle), math.sin(angle)
    return Sheet(at=lambda x, y: (c * mirror * x - s * y + 400, s * mirror * x + c * y - 90))


def test_turned_and_mirrored_drawings(tmp_path):
    """A drawing turned on its sheet gives the same plate; seen from behind too."""
    hole = [(25, 60, 12)]
    straight = Sheet().edge().holes().circles(hole, "0").save(tmp_path, "a.dxf")
    turned = turned_sheet(0.7).edge().holes().circles(hole, "0").save(tmp_path, "b.dxf")
    behind = turned_sheet(-2.0, -1).edge().holes().circles(hole, "0").save(tmp_path, "c.dxf")
    plate = outlines.from_drawing(straight)
    same(plate, outlines.from_drawing(turned), 1e-8)
    same(plate, outlines.from_drawing(behind, seen_from="motor"), 1e-8)
    assert pytest.approx(sorted(plate.holes)[0][:2]) == (-0.035, -0.045)


def rounded(sheet, w, h, r, way="lines and arcs"):
    """A rectangle with rounded corners as lines and quarter arcs, or as one polyline, clockwise."""
    add, at = sheet.msp, sheet.at
    if way == "polyline":
        ring = [(0, r), (0, h - r), (r, h), (w - r, h), (w, h - r), (w, r), (w - r, 0), (r, 0)]
        bulge = -math.tan(math.pi / 8)
        add.add_lwpolyline([(*at(*p), bulge if k % 2 else 0) for k, p in enumerate(ring)], format="xyb", close=True)  # fmt: skip
        return sheet
    for a, b in (((r, 0), (w - r, 0)), ((w, r), (w, h - r)), ((w - r, h), (r, h)), ((0, h - r), (0, r))):  # fmt: skip
        add.add_line(at(*a), at(*b))
    for x, y, start in ((r, r, 180), (w - r, r, 270), (w - r, h - r, 0), (r, h - r, 90)):
        add.add_arc(at(x, y), r * sheet.scale, start, start + 90)
    return sheet


@pytest.mark.parametrize("way", ["lines and arcs", "polyline"])
@pytest.mark.parametrize("r", [2.0, 10.0, 30.0])
def test_rounded_corners_area(tmp_path, r, way):
    """Area of a plate with rounded corners against the closed form."""
    path = rounded(Sheet(), 120, 150, r, way).holes().save(tmp_path)
    plate = outlines.from_drawing(path)
    exact = (120 * 150 - (4 - math.pi) * r**2) * 1e-6
    assert plate.gross_area == pytest.approx(exact, rel=1e-3)
    assert plate.gross_area < exact  # corners on the arcs


@pytest.mark.parametrize("r", [2.0, 10.0, 30.0])
def test_chords_are_fine(tmp_path, r):
    """Chords lie within 0.05 mm of their arc and turn no more than 10 degrees."""
    plate = outlines.from_drawing(rounded(Sheet(), 120, 150, r).holes().save(tmp_path))
    corners = [*plate.corners[-1:], *plate.corners, *plate.corners[:1]]
    for a, b, c in zip(corners, corners[1:], corners[2:], strict=False):
        turn = math.remainder(math.atan2(c.y - b.y, c.x - b.x) - math.atan2(b.y - a.y, b.x - a.x), 2 * math.pi)  # fmt: skip
        assert turn < math.radians(10.001)
        assert r * MM * (1 - math.cos(turn / 2)) < 5.1e-5


def slot_pieces(x, y, length, width, angle):
    """Two lines and two half circles of a slot: ends of lines, centres and angles of arcs."""
    c, s, half, r = math.cos(angle), math.sin(angle), (length - width) / 2, width / 2

    def at(u, v):
        return x + c * u - s * v, y + s * u + c * v

    lines = [(at(-half, -r), at(half, -r)), (at(half, r), at(-half, r))]
    turn = math.degrees(angle)
    return lines, [(at(half, 0), turn - 90, turn + 90), (at(-half, 0), turn + 90, turn + 270)]


@pytest.mark.parametrize("angle", [0.0, 30.0, 90.0, 135.0])
@pytest.mark.parametrize("way", ["lines and arcs", "polyline", "chords"])
def test_slots(tmp_path, angle, way):
    """A slot is found with its middle, length, width and angle, however it is drawn."""
    sheet = Sheet().edge().holes()
    x, y, length, width = 60, 45, 28.0, 9.0
    lines, arcs = slot_pieces(x, y, length, width, math.radians(angle))
    if way == "lines and arcs":
        for a, b in lines:
            sheet.msp.add_line(a, b, dxfattribs={"layer": "frame"})
        for centre, start, end in arcs:
            sheet.msp.add_arc(centre, width / 2, start, end, dxfattribs={"layer": "frame"})
    elif way == "polyline":
        (a, b), (c, d) = lines
        sheet.msp.add_lwpolyline([(*a, 0), (*b, 1), (*c, 0), (*d, 1)], format="xyb", close=True, dxfattribs={"layer": "Frame"})  # fmt: skip
    else:
        chords = []
        for centre, start, end in arcs:
            for k in range(17):
                t = math.radians(start + (end - start) * k / 16)
                chords.append((centre[0] + 4.5 * math.cos(t), centre[1] + 4.5 * math.sin(t)))
        sheet.msp.add_lwpolyline(chords, close=True, dxfattribs={"layer": "frame"})
    (slot,) = outlines.from_drawing(sheet.save(tmp_path)).frame_slots
    assert slot[:4] == pytest.approx((0.0, -0.06, 0.028, 0.009), abs=1e-9)
    assert math.sin(slot.angle - math.radians(angle)) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("way", ["two arcs", "bulges", "chords", "ellipse", "spline"])
def test_round_holes_however_drawn(tmp_path, way):
    """A round hole is found whether drawn as arcs, a polyline, chords, an ellipse or a spline."""
    sheet, layer = Sheet().edge().circles(FRAME, "frame").circles(MOTOR, "motor"), {"layer": "0"}
    msp = sheet.msp
    if way == "two arcs":
        msp.add_arc((60, 50), 6, 10, 200, dxfattribs=layer)
        msp.add_arc((60, 50), 6, 200, 370, dxfattribs=layer)
    elif way == "bulges":
        msp.add_lwpolyline([(54, 50, -1), (66, 50, -1)], format="xyb", close=True)
    elif way == "chords":
        msp.add_lwpolyline([(60 + 6 * math.cos(k * math.pi / 16), 50 + 6 * math.sin(k * math.pi / 16)) for k in range(32)], close=True)  # fmt: skip
    elif way == "ellipse":
        msp.add_ellipse((60, 50), (6, 0), ratio=1)
    else:
        from ezdxf.math import BSpline as Rational
        from ezdxf.math import ConstructionEllipse

        curve = Rational.from_ellipse(ConstructionEllipse((60, 50), (6, 0), ratio=1))
        msp.add_spline(dxfattribs=layer).apply_construction_tool(curve)
    (hole,) = outlines.from_drawing(sheet.save(tmp_path)).holes
    assert hole == pytest.approx((0, -0.055, 0.012), abs=1e-6)


def test_other_shapes_are_cut_out(tmp_path):
    """A window, an ellipse and an old-style polyline inside the plate are free cut-outs."""
    sheet = Sheet().edge().holes().edge([(45, 30), (75, 30), (70, 50), (50, 50)])
    sheet.msp.add_ellipse((20, 50), (10, 0), ratio=0.5)
    sheet.msp.add_polyline2d([(100, 40), (110, 40), (110, 60)], close=True)
    plate = outlines.from_drawing(sheet.save(tmp_path))
    assert len(plate.cutouts) == 3
    cut = plate.gross_area - plate.area - sum(h.area for h in (*plate.frame_holes, *plate.motor_holes, *plate.holes))  # fmt: skip
    exact = 25 * 20 + math.pi * 10 * 5 + 10 * 20 / 2
    assert cut == pytest.approx(exact * 1e-6, rel=2e-3)


def test_blocks_are_taken_apart(tmp_path):
    """Blocks, nested, turned, mirrored, in rows, unevenly scaled; layer 0 takes the block's layer."""
    sheet = Sheet().edge().circles([BORE], "0")
    bolt = sheet.doc.blocks.new("bolt")
    bolt.add_circle((0, 0), 3.3)
    sheet.doc.blocks.new("pair").add_blockref("bolt", (0, 35))
    sheet.doc.blocks.get("pair").add_blockref("bolt", (0, -35))
    for angle in (45, 135):
        sheet.msp.add_blockref("pair", SHAFT, dxfattribs={"layer": "motor", "rotation": angle, "xscale": -1})  # fmt: skip
    frame = sheet.doc.blocks.new("frame hole")
    frame.add_circle((0, 0), 1, dxfattribs={"layer": "frame"})
    sheet.msp.add_blockref("frame hole", (20, 15), dxfattribs={
        "xscale": 4.5, "yscale": 4.5, "column_count": 2, "column_spacing": 80,
    })  # fmt: skip
    same(outlines.from_points(by_points()), outlines.from_drawing(sheet.save(tmp_path)))
    oval = Sheet().edge().holes()
    oval.doc.blocks.new("o").add_circle((0, 0), 1)
    oval.msp.add_blockref("o", (60, 50), dxfattribs={"xscale": 9, "yscale": 4})
    (cut,) = outlines.from_drawing(oval.save(tmp_path)).cutouts
    inscribed = 18 * math.sin(math.radians(10)) * 36e-6  # 36 chords, equal steps of the parameter
    assert inscribed * 0.9999 < Polygon(cut).area < math.pi * 36e-6


def test_arcs_from_below(tmp_path):
    """A slot mirrored by its drawing program (axis -z) is the same slot."""
    sheet = Sheet().edge().holes()
    below = {"extrusion": (0, 0, -1), "layer": "frame"}
    for start, end, x in ((90, 270, -69.5), (270, 90, -50.5)):
        sheet.msp.add_arc((x, 45), 4.5, start, end, dxfattribs=below)
    sheet.lines([(50.5, 40.5), (69.5, 40.5)], layer="frame").lines([(50.5, 49.5), (69.5, 49.5)], layer="frame")  # fmt: skip
    (slot,) = outlines.from_drawing(sheet.save(tmp_path)).frame_slots
    assert slot == pytest.approx((0, -0.06, 0.028, 0.009, 0), abs=1e-9)


def test_holes_named_by_place_and_bolt_circle(tmp_path):
    """All on one layer: the frame's holes by place, the motor's by the circle about the shaft."""
    path = Sheet().edge().circles([*FRAME, *MOTOR, BORE], "0").save(tmp_path)
    at = tuple(Place(x * MM + 3e-4, y * MM) for x, y, _ in FRAME)
    plate = outlines.from_drawing(path, frame_at=at, shaft=Place(0.06, 0.105), bolt_circle=0.07)
    same(outlines.from_points(by_points()), plate)
    assert any("bolt circle" in note for note in plate.notes)
    motor_at = tuple(Place(x * MM, y * MM) for x, y, _ in MOTOR)
    same(plate, outlines.from_drawing(path, frame_at=at, motor_at=motor_at))
    assert "frame_at" in complaint(path)
    assert '"20, 15 mm"' in complaint(path, motor_at=motor_at)
    text = complaint(path, frame_at=(Place(0.02, 0.018),), motor_at=motor_at)
    assert "mount.frame_at" in text
    assert "20, 15 mm" in text


def test_layer_names_and_shaft_mark(tmp_path):
    """Layers by the user's names; a point on the shaft's layer is the shaft."""
    sheet = Sheet().edge().circles(FRAME, "rahmen").circles(MOTOR[:2], "MOT")
    sheet.msp.add_point((60, 105), dxfattribs={"layer": "Shaft"})
    path = sheet.save(tmp_path)
    plate = outlines.from_drawing(path, frame_layer="Rahmen", motor_layer="mot")
    assert sorted(plate.frame_holes)[0] == pytest.approx((-0.04, -0.09, 0.009))
    text = complaint(path, frame_layer="ramen")
    assert "rahmen" in text
    assert "mount.frame_layer" in text


def test_round_and_curved_plates(tmp_path):
    """A round plate, and one whose edge is a single closed spline."""
    plate = outlines.from_drawing(Sheet().circles([(60, 85, 200)], "0").holes().save(tmp_path))
    assert plate.gross_area == pytest.approx(math.pi * 0.1**2, rel=1.5e-3)
    corners = [(-60, -90), (180, -90), (180, 260), (-60, 260)] * 2
    sheet, knots = Sheet().holes(), range(11)
    spline = sheet.msp.add_spline(dxfattribs={"degree": 3})
    spline.control_points, spline.knots = corners[:7], knots
    plate = outlines.from_drawing(sheet.save(tmp_path))
    curve = BSpline(knots, np.array(corners[:7]) * MM, 3)  # scipy's, over knots 3 to 7
    fine = Polygon(curve(np.linspace(3, 7, 4000)))
    assert plate.gross_area == pytest.approx(fine.area, rel=1e-3)


def test_what_is_passed_over_is_noted(tmp_path):
    """Texts, centre lines, hidden layers, doubled lines, small gaps and heights are named in notes."""
    sheet = Sheet().lines([*CORNERS, (0.02, 0.01)]).lines(CORNERS[:2]).holes()
    sheet.msp.add_text("PLATE").set_placement((10, 200), align=TextEntityAlignment.LEFT)
    sheet.doc.linetypes.add("CENTER", [2.0, 1.25, -0.25, 0.25, -0.25])
    sheet.lines([(-20, 105), (140, 105)], linetype="CENTER")
    sheet.doc.layers.add("notes").off()
    sheet.edge([(-50, -50), (300, -50), (300, 300), (-50, 300)], layer="notes")
    sheet.lines([(55, 105), (65, 105)])
    sheet.circles([BORE], "0")
    sheet.msp.add_circle((60, 50, 7), 4)
    plate = outlines.from_drawing(sheet.save(tmp_path))
    notes = "; ".join(plate.notes)
    for word in ("TEXT", "center", "notes", "2 lines or shapes drawn twice", "gaps up to 0.02236 mm", "centre marks", "not flat"):  # fmt: skip
        assert word in notes, word
    assert len(plate.holes) == 2
    assert plate.gross_area == pytest.approx(by_points().gross_area, rel=1e-4)


def open_plate(gap):
    return Sheet().lines([*CORNERS, (0, gap)]).holes()


def solid():
    sheet = Sheet()
    sheet.msp.add_solid([(0, 0), (100, 0), (0, 100), (100, 100)])
    return sheet


BAD_SHEETS = {
    "gap": (lambda: open_plate(0.4), {}, ["does not close", "0.4 mm", "0, 0 mm"]),
    "gap, no holes": (lambda: Sheet().lines([*CORNERS, (0, 0.4)]), {}, ["no closed outline", "0.4 mm", "0, 0.4 mm"]),
    "two gaps": (lambda: Sheet().lines(CORNERS[:3]).lines([(120, 150.3), *CORNERS[3:], (0, 0.2)]), {}, ["no closed outline", "0.2 mm"]),
    "one line": (lambda: Sheet().lines([(0, 0), (100, 0)]), {}, ["no closed outline", "100 mm"]),
    "nothing": (Sheet, {}, ["holds no lines"]),
    "a solid only": (solid, {}, ["holds no lines", "1 x SOLID"]),
    "slot with a gap": (lambda: Sheet().edge().holes().lines([(50, 40), (70, 40), (70, 50), (50, 50), (50, 40.3)]), {}, ["does not close", "0.3 mm"]),
    "branch": (lambda: Sheet().lines([*CORNERS, CORNERS[0]]).lines([CORNERS[2], CORNERS[5]]), {}, ["more than two lines meet", "120, 150 mm"]),
    "crossing": (lambda: Sheet().edge([(0, 0), (120, 170), (120, 0), (0, 170)]).holes(), {}, ["crosses", "60, 85 mm"]),
    "two plates": (lambda: Sheet().edge().holes().edge([(200, 0), (300, 0), (300, 80)]), {}, ["two closed outlines"]),
    "border": (lambda: Sheet().edge().holes().edge([(-50, -50), (300, -50), (300, 300), (-50, 300)]), {}, ["around another", "border"]),
    "hole outside": (lambda: Sheet().edge().holes().circles([(140, 20, 9)], "frame"), {}, ["frame hole 3 at 140, 20 mm", "outside"]),
    "hole in the edge": (lambda: Sheet().edge().holes().circles([(117, 60, 9)], "0"), {}, ["breaks through", "1.5 mm"]),
    "holes overlap": (lambda: Sheet().edge().holes().circles([(60, 120.5, 9)], "0"), {}, ["overlap", "60, 120.5 mm"]),
    "countersunk": (lambda: Sheet().edge().holes().circles([(20, 15, 16)], "0"), {}, ["overlap", "20, 15 mm"]),
    "no motor holes": (lambda: Sheet().edge().circles(FRAME, "frame").circles([BORE], "0"), {}, ["motor", "motor_at", '"60, 105 mm"']),
    "off the bolt circle": (lambda: Sheet().edge().holes(), {"bolt_circle": 0.075}, ["circle of 70 mm", "75 mm"]),
    "no unit": (lambda: Sheet(0).edge().holes(), {}, ["mount.drawing_units", '"mm"']),
    "inch read as mm": (lambda: Sheet(0, 1 / 25.4).edge().holes(), {"unit": "mm"}, ["4.724 mm by 6.693 mm", '"inch"', "4.724 in"]),
    "mm read as m": (lambda: Sheet(0).edge().holes(), {"unit": "m"}, ["120 m by 170 m", '"mm"']),
    "header against key": (lambda: Sheet(1, 1 / 25.4).edge().holes(), {"unit": "mm"}, ["header says inch"]),
    "shape on a bolt layer": (lambda: Sheet().edge().holes().edge([(50, 40), (60, 40), (60, 50)], layer="frame"), {}, ["neither a round hole nor a slot"]),
    "motor holes on no circle": (lambda: Sheet().edge().circles(FRAME, "frame").circles([*MOTOR[:3], (60, 50, 6.6)], "motor"), {}, ["mount.shaft", "circle"]),
}  # fmt: skip


@pytest.mark.parametrize("case", list(BAD_SHEETS))
def test_drawings_refused(tmp_path, case):
    """Each bad drawing is refused in one line that says what and where."""
    sheet, options, words = BAD_SHEETS[case]
    text = complaint(sheet().save(tmp_path), **options)
    for word in words:
        assert word in text, text


def test_wrong_header_unit_is_overruled_by_sense(tmp_path):
    """A template's header says inch, the plate would be 3 m: the user's mm is taken, with a note."""
    plate = outlines.from_drawing(Sheet(1).edge().holes().save(tmp_path), unit="mm")
    assert any("inch" in note for note in plate.notes)
    assert plate.size == pytest.approx((0.12, 0.17))


def raw(text):
    return text.encode() if isinstance(text, str) else text


def broken(tmp_path, edit):
    """A sound drawing's bytes, edited."""
    path = Sheet().edge().holes().save(tmp_path)
    path.write_bytes(raw(edit(path.read_bytes())))
    return path


@pytest.mark.parametrize(
    ("edit", "words"),
    [
        (lambda b: b"", ["not a DXF"]),
        (lambda b: bytes(range(256)) * 40, ["not a DXF"]),
        (lambda b: "<svg></svg>", ["not a DXF"]),
        (lambda b: b"AC1027" + b"\0" * 100, ["DWG"]),
        (lambda b: b[: len(b) // 2], ["cut short"]),
        (lambda b: b"AutoCAD Binary DXF\r\n\x1a\x00" + b"\xff\x01" * 99, ["damaged"]),
        (lambda b: b.replace(b"\nLWPOLYLINE\n", b"\nLWPOLYLIN\n"), []),
        (lambda b: b.replace(b" 40\n4.5\n", b" 40\nnan\n"), ["cannot be read"]),
        (lambda b: b.replace(b" 40\n4.5\n", b" 40\nround\n"), []),
        (lambda b: b"  0\nSECTION\n  2\nENTITIES\n  0\nENDSEC\n  0\nEOF\n", []),
        (lambda b: b.replace(b"  0\nENDSEC", b"  0\nLINE\n" * 110_000 + b"  0\nENDSEC"), ["40000"]),
        (lambda b: b + b" " * 21_000_000, ["21 MB", "20 MB"]),
    ],
)  # fmt: skip
def test_damaged_files(tmp_path, edit, words):
    """Whatever the file holds, one line and no traceback."""
    text = complaint(broken(tmp_path, edit))
    for word in words:
        assert word in text, text


def test_random_damage(tmp_path):
    """Bytes changed at random give a plate or one of our errors, never anything else."""
    import random

    sound = Sheet().edge().holes().save(tmp_path).read_bytes()
    start = sound.index(b"ENTITIES")
    chance = random.Random(5)
    path = tmp_path / "r.dxf"
    refused = 0
    for _ in range(25):
        data = bytearray(sound)
        for _ in range(chance.choice((1, 4, 20))):
            data[chance.randrange(start, len(data) - 200)] = chance.choice(b"0123456789.-\nAX ")
        path.write_bytes(data)
        try:
            outlines.from_drawing(path)
        except OutlineError:
            refused += 1
    assert refused > 5


def test_missing_file(tmp_path):
    """A missing drawing is named, with a near one."""
    Sheet().edge().save(tmp_path, "plate.dxf")
    text = complaint(tmp_path / "plat.dxf")
    assert "no such file" in text
    assert "plate.dxf" in text
    assert "folder" in complaint(tmp_path)
    assert "no such file" in complaint(tmp_path / "a\0b.dxf")


def test_too_many_things(tmp_path):
    """Blocks within blocks cannot blow a small file up; nor can a block that holds itself."""
    sheet = Sheet().edge()
    sheet.doc.blocks.new("b0").add_line((0, 0), (1, 0))
    for k in range(1, 8):
        block = sheet.doc.blocks.new(f"b{k}")
        for _ in range(12):
            block.add_blockref(f"b{k - 1}", (0, 0))
    sheet.msp.add_blockref("b7", (0, 0))
    assert "20000" in complaint(sheet.save(tmp_path))
    rows = Sheet().edge()
    rows.doc.blocks.new("empty")
    rows.msp.add_blockref(
        "empty",
        (0, 0),
        dxfattribs={
            "column_count": 30000,
            "row_count": 30000,
            "column_spacing": 1,
            "row_spacing": 1,
        },
    )
    assert "20000" in complaint(rows.save(tmp_path))
    ring = Sheet().edge().holes()  # its block is dropped when the file is repaired
    ring.doc.blocks.new("ring").add_blockref("ring", (0, 0))
    ring.msp.add_blockref("ring", (0, 0))
    assert outlines.from_drawing(ring.save(tmp_path)).frame_holes


# --- in a drive file

OWN = types.SimpleNamespace(FORM="own outline", TITLE="test", FIELDS=_outline.FIELDS)
BY_POINTS = {
    "outline": [f"{x}, {y} mm" for x, y in CORNERS],
    "frame_holes": [f"{x}, {y}, {d} mm" for x, y, d in FRAME],
    "motor_holes": [f"{x!r}, {y!r}, {d} mm" for x, y, d in MOTOR],
    "holes": "60, 105, 30 mm",
}


def own(monkeypatch, tmp_path, **keys):
    """The outline of a drive file in ``tmp_path`` with these keys in its [mount]."""
    monkeypatch.setitem(FORMS, "own outline", OWN)
    changes = {"mount__form": "own outline", "mount__width": None, "mount__free_length": None}
    data = changed(**changes, **{f"mount__{k}": v for k, v in keys.items()})
    file = tmp_path / "drive.toml"
    file.write_text(toml_text(data))
    return _outline.outline_of(Picker(drivefile.read(file), {}), 0.07)


def test_drive_file_by_points_and_by_drawing(monkeypatch, tmp_path):
    """The same plate in a drive file by points in mm, by points in inches, and by drawing."""
    plate = outlines.from_points(by_points())
    same(plate, own(monkeypatch, tmp_path, **BY_POINTS, shaft="60, 105 mm", away="up"))
    inches = {
        "outline": [f"{x / 25.4!r}, {y / 25.4!r} in" for x, y in CORNERS],
        "frame_holes": [f"{x / 25.4!r}, {y / 25.4!r} in, {d} mm" for x, y, d in FRAME],
    }
    same(plate, own(monkeypatch, tmp_path, **{**BY_POINTS, **inches}))
    Sheet(0).edge().holes().save(tmp_path)
    same(plate, own(monkeypatch, tmp_path, drawing="plate.dxf", drawing_units="mm"))


def test_changed_drawing_is_read_again(monkeypatch, tmp_path):
    """A drawing saved anew counts at once."""
    Sheet().edge().holes().save(tmp_path)
    assert len(own(monkeypatch, tmp_path, drawing="plate.dxf").holes) == 1
    Sheet().edge().holes().circles([(60, 50, 12)], "0").save(tmp_path)
    assert len(own(monkeypatch, tmp_path, drawing="plate.dxf").holes) == 2


@pytest.mark.parametrize(
    ("keys", "words"),
    [
        ({**BY_POINTS, "outline": ["0, 0 mm", "120, 0"]}, ["mount.outline = '120, 0'", "no unit", '"120, 0 mm"']),
        ({**BY_POINTS, "outline": [[0, 0], [120, 0]]}, ["mount.outline = [0, 0]", '"0, 0 mm"']),
        ({**BY_POINTS, "outline": "0, 0 mm"}, ["mount.outline", "three"]),
        ({**BY_POINTS, "frame_holes": ["20, 15 mm"]}, ["mount.frame_holes = '20, 15 mm'", "diameter"]),
        ({**BY_POINTS, "frame_holes": []}, ["mount.frame_holes", "at least one"]),
        ({**BY_POINTS, "away": "north"}, ["mount.away", "up"]),
        ({**BY_POINTS, "away": 3}, ["mount.away", "up"]),
        ({**BY_POINTS, "shaft": "60, 107 mm"}, ["mount.motor_holes", "motor hole 1"]),
        ({**BY_POINTS, "drawing": "plate.dxf"}, ["one way"]),
        ({**BY_POINTS, "drawing_units": "mm"}, ["mount.drawing_units", "only used with mount.drawing"]),
        ({"drawing": "plate.dxf", "holes": ["60, 105, 30 mm"]}, ["mount.holes", "from the drawing"]),
        ({"drawing": "plat.dxf"}, ["mount.drawing", "no such file", "plate.dxf"]),
        ({"drawing": "plate.dxf", "drawing_units": "inches"}, ["mount.drawing_units", "inch"]),
        ({"drawing": "plate.dxf", "drawing_units": "inch"}, ["mount.drawing_units = 'inch'", "header says mm"]),
        ({}, ["mount.outline", "missing", "drawing"]),
    ],
)  # fmt: skip
def test_drive_file_refused(monkeypatch, tmp_path, keys, words):
    """Each mistake names the drive file, the key, the entry and what to type."""
    Sheet().edge().holes().save(tmp_path)
    with pytest.raises(InputError) as caught:
        own(monkeypatch, tmp_path, **keys)
    line = str(caught.value).splitlines()[0]
    for word in ("drive.toml", *words):
        assert word in line, line


def test_reading_stays_light():
    """The kinds of a drive file load neither numpy, shapely nor the drawing reader."""
    heavy = "('numpy', 'shapely', 'ezdxf')"
    code = (
        f"import sys, mountlimit.outlines.points; sys.exit(any(m in sys.modules for m in {heavy}))"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
