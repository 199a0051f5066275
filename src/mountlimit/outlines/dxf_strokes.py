"""Turns the things drawn in a DXF model space into strokes and closed loops, in metres."""

from __future__ import annotations

import math
import warnings
from collections import Counter
from collections.abc import Iterable, Iterator
from itertools import pairwise
from typing import Any

from .dxf_file import MOST_ENTITIES, fault, too_many
from .error import OutlineError
from .model import Place
from .strokes import JOIN, LEAST_SAGITTA, SAGITTA, Arc, Loop, Stroke, arc_stroke

DEEPEST_BLOCK = 12
SPAN_CHORDS = 8  # least chords between two knots of a spline
DEEPEST_HALVING = 8
MOST_PLACES = 50_000
MOST_FIT_POINTS = 1000  # solving for them grows with the square in memory
MOST_CONTROL_POINTS = 2000  # 16 000 places at least
HIGHEST_DEGREE = 10
FLAT = 1e-5  # m


class Collector:
    """Everything of a model space that can be part of a plate."""

    def __init__(self, document: Any, name: str, scale: float, shaft_layer: str) -> None:
        self.name, self.scale, self.shaft_layer = name, scale, shaft_layer
        self.strokes: list[Stroke] = []
        self.loops: list[Loop] = []
        self.marks: list[Place] = []  # points on the shaft's layer
        self.layers: set[str] = set()
        self.passed_over: Counter[str] = Counter()
        self._heights: list[float] = []
        self._seen = self._places = 0
        self._document = document
        for entity, layer in self._exploded(document.modelspace(), "", 0):
            if self._is_drawn(entity, layer):
                self.layers.add(layer)
                self._take(entity, layer)

    @property
    def notes(self) -> list[str]:
        """What was passed over, and whether the drawing is flat."""
        found = []
        if self.passed_over:
            parts = ", ".join(f"{n} x {kind}" for kind, n in sorted(self.passed_over.items()))
            found.append(f"passed over in the drawing: {parts}")
        if self._heights and max(self._heights) - min(self._heights) > FLAT:
            found.append("the drawing is not flat: seen along z, heights left out")
        return found

    def _exploded(
        self, entities: Iterable[Any], layer: str, depth: int
    ) -> Iterator[tuple[Any, str]]:
        """Give every thing drawn with its layer, blocks taken apart; layer 0 takes its block's."""
        for entity in entities:
            self._seen += 1
            if self._seen > MOST_ENTITIES:
                raise too_many(self.name, f"more than {MOST_ENTITIES}")
            own = str(entity.dxf.get("layer", "0"))
            own = layer if own == "0" and layer else own
            if entity.dxftype() != "INSERT":
                yield entity, own
            elif depth >= DEEPEST_BLOCK:
                self.passed_over["block nested too deeply"] += 1
            elif entity.mcount > 1:
                yield from self._exploded(entity.multi_insert(), own, depth + 1)
            else:
                yield from self._exploded(entity.virtual_entities(), own, depth + 1)

    def _is_drawn(self, entity: Any, layer: str) -> bool:
        """Tell whether a thing is a visible edge: layer on, and a continuous line."""
        layers = self._document.layers
        record = layers.get(layer) if layer in layers else None
        if record is not None and (record.is_off() or record.is_frozen()):
            self.passed_over[f"{entity.dxftype()} on hidden layer {layer}"] += 1
            return False
        line = str(entity.dxf.get("linetype", "BYLAYER")).lower()
        if line == "bylayer" and record is not None:
            line = str(record.dxf.get("linetype", "")).lower()
        if line in self._document.linetypes and _dashed(self._document.linetypes.get(line)):
            self.passed_over[f"{entity.dxftype()} in line type {line}"] += 1
            return False
        return True

    def _take(self, entity: Any, layer: str) -> None:
        kind = entity.dxftype()
        if kind == "LINE":
            self._add([Stroke(self._flat([entity.dxf.start, entity.dxf.end]), layer)])
        elif kind in ("ARC", "CIRCLE"):
            self._add([self._round(entity, layer)])
        elif kind == "LWPOLYLINE" or (kind == "POLYLINE" and (entity.is_2d_polyline or entity.is_3d_polyline)):  # fmt: skip
            self._add(self._parts(entity, layer), bool(entity.is_closed))
        elif kind in ("SPLINE", "ELLIPSE"):
            self._add([self._curve(entity, layer)])
        elif kind == "POINT":
            if layer.lower() == self.shaft_layer.lower():
                self.marks += self._flat([entity.dxf.location])
        else:
            self.passed_over[kind] += 1

    def _add(self, strokes: list[Stroke], closed: bool = False) -> None:
        self._count(sum(len(s.places) - 1 for s in strokes))
        if closed and strokes:
            self.loops.append(tuple(strokes))
        else:
            self.strokes += strokes

    def _count(self, places: int) -> None:
        self._places += places
        if self._places > MOST_PLACES:
            raise fault(self.name, f"has more than {MOST_PLACES} corners; expected a simple plate",
                        "keep only the plate in the drawing")  # fmt: skip

    def _flat(self, points: Iterable[Any]) -> tuple[Place, ...]:
        """Give places in metres seen along z."""
        places = []
        for point in points:
            x, y, z = (float(v) * self.scale for v in (point.x, point.y, point.z))
            if not all(math.isfinite(v) and abs(v) < 1e9 for v in (x, y, z)):
                raise ValueError("no number")
            self._heights.append(z)
            places.append(Place(x, y))
        return tuple(places)

    def _parts(self, entity: Any, layer: str) -> list[Stroke]:
        parts: list[Stroke] = []
        if len(entity) > MOST_PLACES:
            self._count(len(entity))
        for part in entity.virtual_entities():
            if part.dxftype() == "LINE":
                parts.append(Stroke(self._flat([part.dxf.start, part.dxf.end]), layer))
            else:
                parts.append(self._round(part, layer))
        return _head_to_tail([p for p in parts if p.length > 1e-9])

    def _round(self, entity: Any, layer: str) -> Stroke:
        """Read an arc or circle; one drawn from below runs the other way, a tilted one is a curve."""
        axis = entity.dxf.extrusion
        if abs(axis.x) > 1e-9 * abs(axis.z) or abs(axis.y) > 1e-9 * abs(axis.z):
            from ezdxf.entities import Ellipse

            return self._curve(Ellipse.from_arc(entity), layer)
        (centre,) = self._flat([entity.ocs().to_wcs(entity.dxf.center)])
        radius = float(entity.dxf.radius) * self.scale
        if not JOIN < radius < 1e9:
            raise ValueError("no radius")
        start, sweep = 0.0, 2.0 * math.pi
        if entity.dxftype() == "ARC":
            start = math.radians(entity.dxf.start_angle)
            turned = math.remainder(math.radians(entity.dxf.end_angle) - start, 2.0 * math.pi)
            sweep = turned if turned > 1e-9 else turned + 2.0 * math.pi
        if axis.z < 0.0:
            start, sweep = math.pi - start, -sweep
        return arc_stroke(Arc(centre, radius, start, sweep), layer)

    def _curve(self, entity: Any, layer: str) -> Stroke:
        if entity.dxftype() == "ELLIPSE":
            chord = self._chord(entity.dxf.major_axis.magnitude)
            points = entity.flattening(chord, 36)
        else:
            self._refuse_wild(entity)
            curve = entity.construction_tool()
            size = max(curve.control_points[0].distance(p) for p in curve.control_points)
            points = _spline_points(curve, self._chord(size))
        places = self._flat(points)
        if len(places) < 2:
            raise ValueError("no curve")
        return Stroke(places, layer)

    def _refuse_wild(self, spline: Any) -> None:
        """Refuse a spline whose solving or stepping would take minutes."""
        for points, most in (
            (spline.fit_points, MOST_FIT_POINTS),
            (spline.control_points, MOST_CONTROL_POINTS),
        ):
            if len(points) > most:
                raise fault(self.name, f"has a spline of {len(points)} points; expected at most {most}",
                            "draw it as lines and arcs")  # fmt: skip
        if spline.dxf.degree > HIGHEST_DEGREE:
            raise fault(self.name, f"has a spline of degree {spline.dxf.degree}; expected at most {HIGHEST_DEGREE}",
                        "draw it as lines and arcs")  # fmt: skip

    def _chord(self, size: float) -> float:
        """Farthest a chord may lie from a curve of this size, in units of the drawing."""
        return max(SAGITTA / self.scale, LEAST_SAGITTA * size)


def _spline_points(curve: Any, chord: float) -> list[Any]:
    """Flatten a spline over the span where it is defined, from knot ``degree`` to knot ``count``.

    The reader's own flattening starts at the first knot, which is outside that span for a spline
    that closes on itself without doubled knots.
    """
    knots = sorted({*curve.knots()[curve.degree : curve.count + 1]})
    points = list(curve.points(knots[:1]))
    for start, end in pairwise(knots):
        steps = [start + (end - start) * k / SPAN_CHORDS for k in range(SPAN_CHORDS + 1)]
        for a, b in pairwise(steps):
            points += _halved(curve, a, b, points[-1], chord, DEEPEST_HALVING)
        if len(points) > MOST_PLACES:  # refused as soon as it is counted
            break
    return points


def _halved(curve: Any, a: float, b: float, first: Any, chord: float, depth: int) -> list[Any]:
    """Give points after ``first`` up to parameter b, the step halved until chords are fine."""
    middle, last = curve.points([(a + b) / 2.0, b])
    if depth == 0 or middle.distance(first.lerp(last)) <= chord:
        return [last]
    left = _halved(curve, a, (a + b) / 2.0, first, chord, depth - 1)
    return left + _halved(curve, (a + b) / 2.0, b, left[-1], chord, depth - 1)


def _dashed(line_type: Any) -> bool:
    """Tell whether a line type has gaps: centre lines, hidden edges."""
    return bool(line_type.simplified_line_pattern())


def _head_to_tail(parts: list[Stroke]) -> list[Stroke]:
    """Turn the parts of a polyline so that each starts where the one before it ends."""
    for k in range(len(parts) - 1):
        ends, start = parts[k].places, parts[k + 1].places
        if k == 0 and min(math.dist(ends[0], p) for p in (start[0], start[-1])) < min(
            math.dist(ends[-1], p) for p in (start[0], start[-1])
        ):
            parts[0] = parts[0].backwards()
            ends = parts[0].places
        if math.dist(ends[-1], start[-1]) < math.dist(ends[-1], start[0]):
            parts[k + 1] = parts[k + 1].backwards()
    return parts


def collected(document: Any, name: str, scale: float, shaft_layer: str) -> Collector:
    """Read every thing drawn.

    Raises
    ------
    OutlineError
        when there is too much, or something cannot be read.
    """
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # of divisions in a damaged drawing: said below
            return Collector(document, name, scale, shaft_layer)
    except OutlineError:
        raise
    except Exception:  # damaged things can raise anything in the drawing's reader
        raise fault(name, "holds something that cannot be read: a place or size that is no number",
                    "delete what is not the plate and export it again") from None  # fmt: skip
