"""What a plate model's facets are as bodies: outlines with holes, corners filled, edges of seams cut back.

Only the `PlateModel` is read; where facets meet is found anew here, without the engine's code.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry import LineString, Point, Polygon

from mountlimit.plates import Cutout, Facet, Hole, PlateModel, Slot
from mountlimit.plates.model import Bolt

SAME = 1e-6  # m
GAP = 2e-5  # m, left open between the two plates of a seam, so that they are meshed apart


class CannotMesh(Exception):
    """A mount this mesher has no body for; says why."""


@dataclass
class Body:
    """One facet as a body: its outline in its own plane, corners filled, and its holes."""

    facet: Facet
    outline: Polygon
    rounds: list[tuple[np.ndarray, float]]  # round holes: centre, diameter
    slots: list[Slot]
    cutouts: list[Polygon]

    @property
    def free(self) -> Polygon:
        """Give the outline less its holes, circles drawn with many points."""
        holes = [Point(c).buffer(d / 2, 32) for c, d in self.rounds]
        return self.outline.difference(
            shapely.union_all([*holes, *map(slot_shape, self.slots), *self.cutouts])
        )


@dataclass
class Corner:
    """A line two facets share: its ends in space, and whether either goes on beyond it."""

    facets: tuple[int, int]
    ends: np.ndarray
    goes_on: tuple[bool, bool]


def slot_shape(slot: Slot) -> Polygon:
    """Give a slot's outline."""
    half = 0.5 * (slot.length - slot.width)
    way = half * np.array([math.cos(slot.angle), math.sin(slot.angle)])
    centre = np.asarray(slot.centre, float)
    return LineString([centre - way, centre + way]).buffer(slot.width / 2, 32)


def bodies(model: PlateModel) -> list[Body]:
    """Give every facet as a body.

    Raises
    ------
    CannotMesh
        for parts that have no body here
    """
    if any(w.other_facet is not None for w in model.welds) or model.motor_face_diameter is not None:
        raise CannotMesh("a weld between facets or a rigid motor face")
    found = [_body(model, i) for i in range(len(model.facets))]
    for corner in corners(model):
        if any(corner.goes_on):
            continue  # one ends on the other: its body reaches to that one's middle
        for own, other in (corner.facets, corner.facets[::-1]):
            grown = found[own].outline.union(_ear(model, own, other, corner.ends))
            if not isinstance(grown, Polygon):
                raise CannotMesh("a corner that does not join")
            found[own].outline = grown
    for seam in model.seams:
        _cut_back(model, seam.facets, found)
    return found


def _body(model: PlateModel, index: int) -> Body:
    facet = model.facets[index]
    body = Body(facet, Polygon(np.asarray(facet.outline, float)), [], [], [])
    for hole in facet.holes:
        if isinstance(hole, Cutout):
            body.cutouts.append(Polygon(np.asarray(hole.corners, float)))
        elif isinstance(hole, Hole):
            body.rounds.append((np.asarray(hole.centre, float), hole.diameter))
        elif hole.length > hole.width:
            body.slots.append(hole)
        else:
            body.rounds.append((np.asarray(hole.centre, float), hole.width))
    for bolt in model.bolts:
        if bolt.facet == index:
            _bolt_hole(body, bolt)
    for spacer in model.spacers:
        if index in spacer.facets and spacer.inner_diameter > 0.0:
            centre = model.facets[spacer.facets[0]].to_space(np.asarray(spacer.centre, float))
            body.rounds.append((facet.to_plane(centre), spacer.inner_diameter))
    return body


def _bolt_hole(body: Body, bolt: Bolt) -> None:
    centre = np.asarray(bolt.centre, float)
    if bolt.slot_length <= bolt.hole_diameter:
        body.rounds.append((centre, bolt.hole_diameter))
        return
    along = np.array([math.cos(bolt.slot_angle), math.sin(bolt.slot_angle)])
    body.slots.append(
        Slot(
            centre=centre + bolt.slot_offset * along, length=bolt.slot_length,
            width=bolt.hole_diameter, angle=bolt.slot_angle,
        )
    )  # fmt: skip


def corners(model: PlateModel) -> list[Corner]:
    """Find every line on which two facets meet; the facets of a seam do not."""
    found = []
    for i in range(len(model.facets)):
        for j in range(i + 1, len(model.facets)):
            if not any({i, j} == set(seam.facets) for seam in model.seams):
                found += _meeting(model, i, j)
    return found


def _meeting(model: PlateModel, i: int, j: int) -> list[Corner]:
    one, two = model.facets[i], model.facets[j]
    way = np.cross(one.axes[2], two.axes[2])
    if np.linalg.norm(way) < 0.02:
        return []
    way /= np.linalg.norm(way)
    rows = np.array([one.axes[2], two.axes[2], way])
    offsets = [one.axes[2] @ np.asarray(one.origin), two.axes[2] @ np.asarray(two.origin), 0.0]
    base = np.linalg.solve(rows, offsets)
    reach = LineString([(-10.0, 0.0), (10.0, 0.0)])
    for facet in (one, two):
        at, along = facet.to_plane(base), facet.axes[:2] @ way
        frame = np.array([along, [-along[1], along[0]]])
        outline = Polygon((np.asarray(facet.outline, float) - at) @ frame.T).buffer(SAME / 4)
        reach = reach.intersection(outline)
    found = []
    for part in shapely.get_parts(reach):
        if part.length > 10 * SAME:
            ends = base + np.asarray(part.coords)[:, :1] * way
            goes_on = tuple(_both_sides(model.facets[k], ends) for k in (i, j))
            found.append(Corner((i, j), ends, goes_on))
    return found


def _both_sides(facet: Facet, ends: np.ndarray) -> bool:
    """Tell whether a facet has plate on both sides of a line."""
    a, b = facet.to_plane(ends)
    along = (b - a) / np.linalg.norm(b - a)
    across = np.array([-along[1], along[0]])
    outline = Polygon(np.asarray(facet.outline, float))
    return all(
        outline.contains(Point(0.5 * (a + b) + side * 20 * SAME * across)) for side in (-1, 1)
    )


def _ear(model: PlateModel, own: int, other: int, ends: np.ndarray) -> Polygon:
    """Give the strip by which a facet goes past a corner, so that both fill it to its sharp edge."""
    facet, far = model.facets[own], model.facets[other]
    turn = math.acos(min(1.0, abs(float(facet.axes[2] @ far.axes[2]))))
    a, b = facet.to_plane(ends)
    along = (b - a) / np.linalg.norm(b - a)
    across = np.array([-along[1], along[0]])
    outline = Polygon(np.asarray(facet.outline, float))
    if outline.contains(Point(0.5 * (a + b) + 20 * SAME * across)):
        across = -across
    reach = 0.5 * far.thickness * math.tan(turn / 2) * across
    back = -0.5 * SAME * across
    return Polygon([a + back, b + back, b + reach, a + reach])


def _cut_back(model: PlateModel, pair: tuple[int, int], found: list[Body]) -> None:
    """Cut a seam's edge plate back to the face of the other."""
    edge, face = model.facets[pair[0]], model.facets[pair[1]]
    middle = np.asarray(found[pair[0]].outline.centroid.coords[0])
    side = np.sign((edge.to_space(middle) - np.asarray(face.origin)) @ face.axes[2])
    up = side * face.axes[2]
    normal = edge.axes[:2] @ up
    floor = np.asarray(face.origin) + (0.5 * face.thickness + GAP) * up
    level = (floor - np.asarray(edge.origin)) @ up
    along = np.array([-normal[1], normal[0]])
    start = level * normal
    kept = Polygon([start - along, start + along, start + along + normal, start - along + normal])
    found[pair[0]].outline = found[pair[0]].outline.intersection(kept)
