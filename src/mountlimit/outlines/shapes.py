"""Tells what a closed loop of a drawing is: a round hole, a slot with round ends, or neither."""

from __future__ import annotations

import math
from collections.abc import Sequence

from .model import Place, RoundHole, SlotHole, half_turn, polygon_moments
from .strokes import Arc, Loop, Stroke, arc_stroke, loop_places

SAME = 2e-5  # m, radii and centres this near are the same
SAME_ANGLE = 0.02  # rad
FEWEST_CHORDS = 12  # fewer make a polygon, not a circle
FROM_CHORDS = 0.01  # of the radius, how far the corners of a circle of chords may be off


def recognised(loop: Loop) -> RoundHole | SlotHole | None:
    """Give the hole or slot a loop stands for, or nothing."""
    strokes = _merged(loop)
    if len(strokes) == 1 and strokes[0].arc and abs(strokes[0].arc.sweep) > 2.0 * math.pi - SAME_ANGLE:  # fmt: skip
        arc = strokes[0].arc
        return RoundHole(arc.centre.x, arc.centre.y, 2.0 * arc.radius)
    if len(strokes) == 4 and (slot := _slot(strokes)):
        return slot
    places = loop_places(loop)
    if len(places) < FEWEST_CHORDS or any(s.arc for s in loop):
        return None
    return _round_of_chords(places) or _slot_of_chords(places)


def _merged(loop: Loop) -> list[Stroke]:
    """Join neighbours that go on along the same line or the same circle."""
    strokes: list[Stroke] = []
    for stroke in loop:
        joined = _joined(strokes[-1], stroke) if strokes else None
        if joined:
            strokes[-1] = joined
        else:
            strokes.append(stroke)
    while len(strokes) > 1 and (joined := _joined(strokes[-1], strokes[0])):
        strokes = [joined, *strokes[1:-1]]
    return strokes


def _joined(first: Stroke, second: Stroke) -> Stroke | None:
    a, b = first.arc, second.arc
    if a and b:
        same = math.dist(a.centre, b.centre) <= SAME and abs(a.radius - b.radius) <= SAME
        sweep = a.sweep + b.sweep
        if same and a.sweep * b.sweep > 0.0 and abs(sweep) < 2.0 * math.pi + SAME_ANGLE:
            return arc_stroke(Arc(a.centre, a.radius, a.start, sweep), first.layer)
    if first.straight and second.straight:
        (p, q), (_, r) = first.places, second.places
        off = (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)
        on = (q.x - p.x) * (r.x - q.x) + (q.y - p.y) * (r.y - q.y)
        if on > 0.0 and abs(off) <= SAME * math.dist(p, r):
            return Stroke((p, r), first.layer)
    return None


def _slot(strokes: Sequence[Stroke]) -> SlotHole | None:
    """Read two half circles joined by two parallel lines."""
    arcs = [s.arc for s in strokes if s.arc]
    lines = [s for s in strokes if s.straight]
    if len(arcs) != 2 or len(lines) != 2 or bool(strokes[0].arc) == bool(strokes[1].arc):
        return None
    a, b = arcs
    apart = math.dist(a.centre, b.centre)
    halves = all(abs(abs(arc.sweep) - math.pi) <= SAME_ANGLE for arc in arcs)
    flanks = all(abs(line.length - apart) <= 5.0 * SAME for line in lines)
    outward = all(arc.sweep * polygon_moments(loop_places(tuple(strokes)))[0] > 0.0 for arc in arcs)
    if not (halves and flanks and outward) or abs(a.radius - b.radius) > SAME:
        return None
    width = a.radius + b.radius
    return _slot_between(a.centre, b.centre, width)


def _slot_between(first: Place, second: Place, width: float) -> SlotHole:
    angle = half_turn(math.atan2(second.y - first.y, second.x - first.x))
    x, y = (first.x + second.x) / 2.0, (first.y + second.y) / 2.0
    return SlotHole(x, y, math.dist(first, second) + width, width, angle)


def _round_of_chords(places: Sequence[Place]) -> RoundHole | None:
    """Read a circle drawn as chords, its corners on the circle."""
    area, first_x, first_y = polygon_moments(places)
    x, y = first_x / area, first_y / area
    radii = [math.dist((x, y), p) for p in places]
    radius = sum(radii) / len(radii)
    longest = max(math.dist(places[k - 1], places[k]) for k in range(len(places)))
    if longest > 0.6 * radius or max(radii) - min(radii) > FROM_CHORDS * radius:
        return None
    return RoundHole(x, y, 2.0 * radius)


def _slot_of_chords(places: Sequence[Place]) -> SlotHole | None:
    """Read a slot whose round ends are drawn as chords."""
    from shapely.geometry import LineString, Point, Polygon

    corners = list(Polygon(places).minimum_rotated_rectangle.exterior.coords)
    sides = [(math.dist(corners[k], corners[k + 1]), corners[k], corners[k + 1]) for k in (0, 1)]
    (width, _, _), (length, start, end) = sorted(sides)
    if length < 1.05 * width:
        return None
    x, y = (corners[0][0] + corners[2][0]) / 2.0, (corners[0][1] + corners[2][1]) / 2.0
    angle = half_turn(math.atan2(end[1] - start[1], end[0] - start[0]))
    slot = SlotHole(x, y, length, width, angle)
    core = LineString(slot.ends)
    on_edge = all(abs(core.distance(Point(p)) - width / 2.0) <= FROM_CHORDS * width for p in places)
    full = abs(abs(polygon_moments(places)[0]) - slot.area) <= 0.03 * slot.area
    return slot if on_edge and full else None
