"""A user's own outline by points: geometry, faults, entries, and the drive file; all plates are invented."""

from __future__ import annotations

import math
import subprocess
import sys
import types

import pytest
from shapely.geometry import LineString, Polygon

from conftest import changed, toml_text
from mountlimit import drivefile, outlines
from mountlimit.errors import InputError
from mountlimit.mounts import FORMS, _outline
from mountlimit.outlines import OutlineError, Place, RoundHole, SlotHole, points
from mountlimit.picking import Picker
from own_plates import CORNERS, FRAME, MOTOR, Sheet, by_points, same

# --- the outline itself


def test_area_and_centroid_against_shapely():
    """Net area and centroid agree with shapely, which knows circles as fine polygons."""
    plate = by_points(slots=(SlotHole(0.06, 0.05, 0.03, 0.008, 0.3),))
    shape = Polygon(plate.corners)
    for hole in (*plate.frame_holes, *plate.motor_holes, *plate.holes):
        shape -= Polygon([(hole.x + hole.diameter / 2 * math.cos(a / 500 * math.pi), hole.y + hole.diameter / 2 * math.sin(a / 500 * math.pi)) for a in range(1000)])  # fmt: skip
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
