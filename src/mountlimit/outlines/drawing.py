"""Reads a plate from a DXF drawing: which loop is its edge, what the others are, what each hole is for."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from .checking import MOST_CUTS, Wording, bolt_hole_sizes, middle, plausible
from .dxf_file import HEADER_UNITS, KEY, UNITS, fault, header_unit, opened
from .dxf_strokes import Collector, collected
from .error import Fault, OutlineError
from .model import (
    WORDS,
    Outline,
    Place,
    Polygon,
    RoundHole,
    SlotHole,
    anticlockwise,
    extent,
    polygon_moments,
)
from .placing import ON_CIRCLE
from .shapes import recognised
from .strokes import JOIN, Chained, Loop, chain, loop_places

AT = 0.001  # m, how well the place of a hole in the drawing must be given


@dataclass(frozen=True, slots=True, kw_only=True)
class Naming:
    """How the holes of a drawing are told apart: by layer, by place, or by the motor's bolt circle."""

    frame_layer: str = "frame"
    motor_layer: str = "motor"
    shaft_layer: str = "shaft"
    frame_at: tuple[Place, ...] = ()
    motor_at: tuple[Place, ...] = ()
    shaft: Place | None = None
    bolt_circle: float | None = None


@dataclass(frozen=True, slots=True)
class _Shape:
    """A closed loop inside the edge."""

    cut: RoundHole | SlotHole | Polygon
    layer: str


def read_drawing(
    path: Path, unit: str | None, naming: Naming
) -> tuple[Outline, Place | None, Wording]:
    """Read a drawing; give the outline as drawn, the shaft axis if it is marked, and the wording.

    Raises
    ------
    OutlineError
        when the drawing cannot be read, or no plate can be made of it.
    """
    document, notes = opened(path)
    stated = header_unit(document)
    unit = unit or stated
    if not unit:
        raise OutlineError(Fault("mount.drawing_units", "", f"is missing: the header of {path.name} states no unit", 'for example mount.drawing_units = "mm"'))  # fmt: skip
    wording = Wording("inch" if unit in ("inch", "foot") else "metric", dict.fromkeys(("outline", *WORDS), KEY))  # fmt: skip
    drawn = collected(document, path.name, UNITS[unit], naming.shaft_layer)
    chained = chain(drawn.strokes)
    loops = [*drawn.loops, *chained.loops]
    edge, inner, twice = _sorted_loops(path.name, loops, chained, drawn.notes, wording)
    _refuse_open(path.name, edge, chained, wording)
    _refuse_second_plate(edge, inner, wording)
    outline, named = _named(anticlockwise(loop_places(edge)), inner, naming, drawn, wording)
    notes += [*drawn.notes, *named, *_joins(chained, twice, wording), *_unit(outline, unit, stated)]
    shaft = naming.shaft or _marked_shaft(drawn, inner, naming.shaft_layer)
    words = replace(wording, hints=_hints(outline, unit, naming, wording))
    return replace(outline, notes=tuple(notes)), shaft, words


def _sorted_loops(
    name: str, loops: Sequence[Loop], chained: Chained, notes: Sequence[str], wording: Wording
) -> tuple[Loop, list[_Shape], int]:
    """Give the loop around the largest area, the others as shapes, and how many were drawn twice."""
    if chained.branches:
        at = wording.place(*chained.branches[0])
        raise fault(name, f"more than two lines meet at {at}", "keep only the edges of the plate and its holes")  # fmt: skip
    if len(loops) > 2 * MOST_CUTS:  # each perhaps drawn twice
        raise fault(name, f"has {len(loops)} closed shapes; expected at most {MOST_CUTS}", "keep only the plate in the drawing")  # fmt: skip
    places = [anticlockwise(loop_places(loop)) for loop in loops]
    if not any(len(p) > 2 for p in places):
        hint = "; ".join(("the edge of the plate must be one closed line", *notes))
        raise fault(name, _no_edge(chained, wording), hint)
    order = sorted(
        (k for k in range(len(loops)) if len(places[k]) > 2),
        key=lambda k: -math.prod(extent(places[k])),
    )
    shapes: list[_Shape] = []
    kept = [_signature(places[order[0]])]
    for k in sorted(order[1:]):  # holes are numbered as drawn
        mark = _signature(places[k])
        if any(all(abs(a - b) <= 2.0 * JOIN for a, b in zip(mark, m, strict=True)) for m in kept):
            continue
        kept.append(mark)
        shapes.append(_Shape(recognised(loops[k]) or places[k], loops[k][0].layer))
    return loops[order[0]], shapes, len(order) - len(kept)


def _box(places: Polygon) -> tuple[float, float, float, float]:
    """Give left, low, right and high."""
    xs, ys = [p.x for p in places], [p.y for p in places]
    return min(xs), min(ys), max(xs), max(ys)


def _signature(places: Polygon) -> tuple[float, ...]:
    """Give what two drawings of the same shape have in common: extent, and area over extent, m."""
    return *_box(places), polygon_moments(places)[0] / (sum(extent(places)) or 1.0)


def _no_edge(chained: Chained, wording: Wording) -> str:
    if not chained.open:
        return "holds no lines, arcs or curves"
    gap, first, second = _gap(chained.open)
    if gap <= JOIN:
        return "has no closed outline"
    return (
        f"has no closed outline: a gap of {wording.length(gap)} between "
        f"{wording.place(*first)} and {wording.place(*second)}"
    )


def _gap(runs: Sequence[Loop]) -> tuple[float, Place, Place]:
    """Give the smallest gap between free ends that are not the two ends of one straight line."""
    ends = [(k, p) for k, run in enumerate(runs[:200]) for p in (run[0].places[0], run[-1].places[-1])]  # fmt: skip
    pairs = [
        (math.dist(p, q), p, q)
        for i, (k, p) in enumerate(ends)
        for m, q in ends[i + 1 :]
        if k != m or len(runs[k]) > 1 or not runs[k][0].straight
    ]
    lone = (runs[0][0].length, runs[0][0].places[0], runs[0][0].places[-1])
    return min(pairs, default=lone)


def _refuse_open(name: str, edge: Loop, chained: Chained, wording: Wording) -> None:
    """Refuse what does not close; single straight lines well inside the plate are centre marks."""
    left, low, right, high = _box(tuple(loop_places(edge)))
    telling = []
    for run in chained.open:
        a, b, c, d = _box(tuple(p for stroke in run for p in stroke.places))
        inside = left < a and low < b and c < right and d < high
        if not (inside and len(run) == 1 and run[0].straight):
            telling.append(run)
    if telling:
        gap, first, second = _gap(telling)
        raise fault(
            name,
            f"a line does not close: a gap of {wording.length(gap)} between "
            f"{wording.place(*first)} and {wording.place(*second)}",
            "close it, or delete what is not an edge of the plate",
        )


def _refuse_second_plate(edge: Loop, inner: Sequence[_Shape], wording: Wording) -> None:
    """Refuse a second closed outline beside the plate, and a border drawn around it."""
    from shapely.geometry import Point, Polygon

    corners = loop_places(edge)
    plate = Polygon(corners)
    if not plate.is_valid:
        return  # said when the outline is checked
    for shape in inner:
        if isinstance(shape.cut, RoundHole | SlotHole):
            continue
        inside = Polygon(shape.cut).buffer(0)
        if not plate.intersects(inside):
            first, second = wording.place(*middle(tuple(corners))), wording.place(*middle(shape.cut))  # fmt: skip
            raise OutlineError(Fault(KEY, "", f"two closed outlines side by side, about {first} and {second}", "keep one plate in the drawing"))  # fmt: skip
        if any(s is not shape and inside.contains(Point(middle(s.cut))) for s in inner):
            raise OutlineError(Fault(KEY, "", "one closed outline around another", "keep only the plate: no border, no second part"))  # fmt: skip


def _named(
    corners: Polygon, inner: Sequence[_Shape], naming: Naming, drawn: Collector, wording: Wording
) -> tuple[Outline, list[str]]:
    """Sort the shapes by what they are for."""
    cuts: dict[str, list[RoundHole | SlotHole | Polygon]] = {name: [] for name in WORDS}
    free: list[_Shape] = []
    for shape in inner:
        owner = next((o for o in ("frame", "motor") if shape.layer.lower() == getattr(naming, f"{o}_layer").lower()), "")  # fmt: skip
        if owner and not isinstance(shape.cut, RoundHole | SlotHole):
            raise OutlineError(Fault(KEY, "", f"the shape at {wording.place(*middle(shape.cut))} on layer {shape.layer} is neither a round hole nor a slot with round ends"))  # fmt: skip
        if owner:
            cuts[_list(owner, shape.cut)].append(shape.cut)
        else:
            free.append(shape)
    _refuse_missing_layer(naming, drawn)
    for owner, places in (("frame", naming.frame_at), ("motor", naming.motor_at)):
        for place in places:
            shape = _at(place, free, f"mount.{owner}_at", wording)
            free.remove(shape)
            cuts[_list(owner, shape.cut)].append(shape.cut)
    notes = []
    if not (cuts["motor_holes"] or cuts["motor_slots"]) and naming.shaft and naming.bolt_circle:
        found = _on_circle(free, naming.shaft, naming.bolt_circle)
        cuts["motor_holes"] += [s.cut for s in found]
        free = [s for s in free if s not in found]
        if found:
            notes.append(f"{len(found)} holes on the bolt circle about the shaft taken as the motor's")  # fmt: skip
    for shape in free:
        cuts[_list("", shape.cut)].append(shape.cut)
    return Outline(corners=corners, **{n: tuple(c) for n, c in cuts.items()}), notes  # type: ignore[arg-type]


def _list(owner: str, cut: RoundHole | SlotHole | Polygon) -> str:
    """Name of the outline's list that a cut belongs in."""
    if not isinstance(cut, RoundHole | SlotHole):
        return "cutouts"
    kind = "holes" if isinstance(cut, RoundHole) else "slots"
    return f"{owner}_{kind}" if owner else kind


def _refuse_missing_layer(naming: Naming, drawn: Collector) -> None:
    layers = {layer.lower() for layer in drawn.layers}
    for owner in ("frame", "motor"):
        layer = getattr(naming, f"{owner}_layer")
        if layer != owner and layer.lower() not in layers:
            known = ", ".join(sorted(drawn.layers)[:12])
            raise OutlineError(Fault(f"mount.{owner}_layer", layer, "no such layer in the drawing", f"it has: {known}"))  # fmt: skip


def _at(place: Place, free: Sequence[_Shape], key: str, wording: Wording) -> _Shape:
    """Find the hole or slot at a place."""
    holes = [s for s in free if isinstance(s.cut, RoundHole | SlotHole)]
    near = min(holes, key=lambda s: math.dist(middle(s.cut), place), default=None)
    if near is None or math.dist(middle(near.cut), place) > AT:
        hint = f"the nearest is at {wording.place(*middle(near.cut))}" if near else "no hole is left to name"  # fmt: skip
        raise OutlineError(Fault(key, wording.place(*place), "no hole or slot of the drawing has its middle there", hint))  # fmt: skip
    return near


def _on_circle(free: Sequence[_Shape], shaft: Place, bolt_circle: float) -> list[_Shape]:
    return [
        s for s in free
        if isinstance(s.cut, RoundHole)
        and abs(math.dist(middle(s.cut), shaft) - bolt_circle / 2.0) <= ON_CIRCLE
    ]  # fmt: skip


def _marked_shaft(drawn: Collector, inner: Sequence[_Shape], layer: str) -> Place | None:
    """Give the point, or the centre of the circle, on the shaft's layer."""
    circles = [Place(s.cut.x, s.cut.y) for s in inner if isinstance(s.cut, RoundHole) and s.layer.lower() == layer.lower()]  # fmt: skip
    marks = [*drawn.marks, *circles]
    if len(marks) > 1 and max(math.dist(marks[0], m) for m in marks) > JOIN:
        raise OutlineError(Fault(KEY, "", f"more than one mark on the layer {layer}", "keep the one at the shaft axis"))  # fmt: skip
    return marks[0] if marks else None


def _joins(chained: Chained, twice: int, wording: Wording) -> list[str]:
    notes = []
    if chained.widest_join > 1e-6:
        notes.append(f"gaps up to {wording.length(chained.widest_join)} closed")
    if chained.doubled + twice:
        notes.append(f"{chained.doubled + twice} lines or shapes drawn twice taken once")
    if chained.open:
        notes.append(f"{len(chained.open)} single lines inside the plate taken as centre marks")
    return notes


def _unit(outline: Outline, unit: str, stated: str) -> list[str]:
    """Compare the unit given with that of the header; refuse unless only the given one can be."""
    if not stated or stated == unit:
        return []
    ratio = UNITS[stated] / UNITS[unit]
    size, holes = max(outline.size), bolt_hole_sizes(outline)
    if plausible(size, holes) and not plausible(size * ratio, [d * ratio for d in holes]):
        return [f"the drawing's header says {stated}, which cannot be: read as {unit}"]
    raise OutlineError(Fault("mount.drawing_units", unit, f"the drawing's header says {stated}", f'write mount.drawing_units = "{stated}", or set the unit in the drawing'))  # fmt: skip


def _hints(outline: Outline, unit: str, naming: Naming, wording: Wording) -> Mapping[str, str]:
    """Write what would help, should the check find the unit or the holes' names wanting."""
    hints = {"edge": "draw the edge of the plate as one line that meets itself only at its ends"}
    size, holes = max(outline.size), bolt_hole_sizes(outline)
    for other in HEADER_UNITS.values():
        ratio = UNITS[other] / UNITS[unit]
        if other != unit and plausible(size * ratio, [d * ratio for d in holes]):
            words = Wording("inch" if other in ("inch", "foot") else "metric")
            across, along = (words.length(v * ratio) for v in outline.size)
            hints["size"] = f'mount.drawing_units = "{other}" would make it {across} by {along}'
            break
    cuts = [c for name, _, c in outline.cuts() if name in ("holes", "slots")]
    free = [f'"{wording.place(*middle(c))}"' for c in cuts]
    listed = f" = [...] from {', '.join(free[:6])}" if free else ""
    for owner in ("frame", "motor"):
        layer = getattr(naming, f"{owner}_layer")
        hints[owner] = f'draw them on a layer "{layer}", or name their places: mount.{owner}_at{listed}'  # fmt: skip
    return hints
