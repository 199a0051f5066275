"""Plates read from DXF drawings written here: the same plate however it is drawn; all are invented."""

from __future__ import annotations

import math

import numpy as np
import pytest
from ezdxf.enums import TextEntityAlignment
from scipy.interpolate import BSpline
from shapely.geometry import Polygon

from mountlimit import outlines
from mountlimit.outlines import Place
from own_plates import BORE, CORNERS, FRAME, MM, MOTOR, SHAFT, Sheet, by_points, complaint, same

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
