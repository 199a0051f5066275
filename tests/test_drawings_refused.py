"""DXF drawings that are no plate: one clear line, never a traceback; all are invented."""

from __future__ import annotations

import random

import pytest

from mountlimit import outlines
from mountlimit.outlines import OutlineError
from own_plates import BORE, CORNERS, FRAME, MOTOR, Sheet, complaint


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
