"""Strokes of a drawing, and the closed loops they make; lengths in m."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from .model import Place

JOIN = 5e-5  # m, ends this near to each other are one place
SAGITTA = 5e-5  # m, farthest a chord lies from its arc
CHORD_ANGLE = math.radians(10.0)  # and the most it turns
LEAST_SAGITTA = 1e-5  # of the radius: bounds the chords of a huge circle


@dataclass(frozen=True, slots=True)
class Arc:
    """A circular arc; ``sweep`` is above nothing when it runs anticlockwise."""

    centre: Place
    radius: float
    start: float
    sweep: float

    def at(self, share: float) -> Place:
        """Give the place a share of the way along."""
        angle = self.start + share * self.sweep
        x, y = self.centre
        return Place(x + self.radius * math.cos(angle), y + self.radius * math.sin(angle))

    def places(self) -> tuple[Place, ...]:
        """Give chords fine enough, ends included; an even number of them."""
        ratio = min(max(SAGITTA / self.radius, LEAST_SAGITTA), 1.0)
        step = min(CHORD_ANGLE, 2.0 * math.acos(1.0 - ratio))
        count = 2 * math.ceil(abs(self.sweep) / step / 2.0 - 1e-9)
        return tuple(self.at(k / count) for k in range(count + 1))


@dataclass(frozen=True, slots=True)
class Stroke:
    """One drawn thing from end to end: a straight line, an arc, or a curve as chords."""

    places: tuple[Place, ...]
    layer: str
    arc: Arc | None = None

    @property
    def straight(self) -> bool:
        """Tell whether it is one straight line."""
        return self.arc is None and len(self.places) == 2

    @property
    def length(self) -> float:
        """Length along the chords."""
        return sum(math.dist(a, b) for a, b in zip(self.places, self.places[1:], strict=False))

    @property
    def closed(self) -> bool:
        """Tell whether it ends where it starts."""
        near = math.dist(self.places[0], self.places[-1]) <= JOIN
        return near and len(self.places) > 2 and self.length > 4.0 * JOIN

    def backwards(self) -> Stroke:
        """Give it from its other end."""
        arc = self.arc and Arc(self.arc.centre, self.arc.radius, self.arc.start + self.arc.sweep, -self.arc.sweep)  # fmt: skip
        return Stroke(self.places[::-1], self.layer, arc)


def arc_stroke(arc: Arc, layer: str) -> Stroke:
    """Give an arc as a stroke."""
    return Stroke(arc.places(), layer, arc)


Loop = tuple[Stroke, ...]


def loop_places(loop: Loop) -> list[Place]:
    """Give the corners of a loop, each once."""
    return [place for stroke in loop for place in stroke.places[:-1]]


@dataclass(frozen=True, slots=True)
class Chained:
    """What some strokes make: closed loops, runs that stay open, and where more than two meet."""

    loops: tuple[Loop, ...]
    open: tuple[Loop, ...]
    branches: tuple[Place, ...]
    doubled: int  # strokes drawn twice, one of each dropped
    widest_join: float  # m, widest gap that was closed


def chain(strokes: Iterable[Stroke]) -> Chained:
    """Join strokes at their ends."""
    whole: list[Stroke] = []
    pieces: list[Stroke] = []
    ends: list[tuple[int, int]] = []
    nodes = _Nodes()
    for stroke in strokes:
        if stroke.closed:
            whole.append(stroke)
            continue
        both = (nodes.at(stroke.places[0]), nodes.at(stroke.places[-1]))
        if both[0] != both[1]:  # a stroke shorter than a join is nothing but the join
            pieces.append(stroke)
            ends.append(both)
    kept, doubled = _without_doubles(pieces, ends)
    meeting: dict[int, list[int]] = defaultdict(list)
    for k in kept:
        for node in ends[k]:
            meeting[node].append(k)
    branches = tuple(nodes.places[n] for n, ks in meeting.items() if len(ks) > 2)
    loops: list[Loop] = [(s,) for s in whole]
    runs: list[Loop] = []
    if not branches:
        _walk(pieces, ends, meeting, kept, loops, runs)
    return Chained(tuple(loops), tuple(runs), branches, doubled, nodes.widest)


class _Nodes:
    """Places that are one because they lie within ``JOIN`` of each other."""

    def __init__(self) -> None:
        self.places: list[Place] = []
        self.widest = 0.0
        self._cells: dict[tuple[int, int], list[int]] = defaultdict(list)

    def at(self, place: Place) -> int:
        column, row = math.floor(place.x / JOIN), math.floor(place.y / JOIN)
        near = [
            (math.dist(self.places[k], place), k)
            for i in (-1, 0, 1)
            for j in (-1, 0, 1)
            for k in self._cells.get((column + i, row + j), ())
        ]
        distance, found = min(near, default=(math.inf, -1))
        if distance <= JOIN:
            self.widest = max(self.widest, distance)
            return found
        self.places.append(place)
        self._cells[column, row].append(len(self.places) - 1)
        return len(self.places) - 1


def _without_doubles(
    pieces: Sequence[Stroke], ends: Sequence[tuple[int, int]]
) -> tuple[list[int], int]:
    """Drop a stroke that lies on another one: same ends and same middle."""
    seen: dict[frozenset[int], list[Place]] = defaultdict(list)
    kept = []
    for k, stroke in enumerate(pieces):
        middles = seen[frozenset(ends[k])]
        middle = _middle(stroke)
        if all(math.dist(middle, other) > 2.0 * JOIN for other in middles):
            middles.append(middle)
            kept.append(k)
    return kept, len(pieces) - len(kept)


def _middle(stroke: Stroke) -> Place:
    if stroke.arc:
        return stroke.arc.at(0.5)
    first, last = stroke.places[(len(stroke.places) - 1) // 2], stroke.places[len(stroke.places) // 2]  # fmt: skip
    return Place((first.x + last.x) / 2.0, (first.y + last.y) / 2.0)


def _walk(
    pieces: Sequence[Stroke], ends: Sequence[tuple[int, int]],
    meeting: dict[int, list[int]], kept: Sequence[int], loops: list[Loop], runs: list[Loop],
) -> None:  # fmt: skip
    """Follow the strokes from end to end: first the open runs from their free ends, then loops."""
    left = set(kept)
    free = [node for node, ks in meeting.items() if len(ks) == 1]
    for start, target in [*((n, runs) for n in free), *((ends[k][0], loops) for k in kept)]:
        run, node = [], start
        while True:
            onward = next((k for k in meeting[node] if k in left), None)
            if onward is None:
                break
            left.discard(onward)
            ahead = ends[onward][0] == node
            run.append(pieces[onward] if ahead else pieces[onward].backwards())
            node = ends[onward][1] if ahead else ends[onward][0]
        if run:
            target.append(tuple(run))
