"""An invented plate by points and as a DXF drawing, shared by the tests of outlines."""

from __future__ import annotations

import math
from itertools import pairwise

import ezdxf
import pytest

from mountlimit import outlines
from mountlimit.outlines import Outline, OutlineError, Place, RoundHole

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
