"""Outlines of the things drawn on a facet: circles, slots, washers, the free region."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
import shapely
from shapely.geometry import Polygon

from .model import Bolt, Cutout, Facet, FloatArray, Hole, Pair, PlateModel, Seam, Slot

TOUCH = 1e-7  # m, below this two places are the same
CIRCLE_POINTS = 12  # least number of points on a circle
FREE_HOLE_POINTS = 24  # the same on a hole whose edge stress is read


def points_on_circle(diameter: float, mesh_size: float, least: int = CIRCLE_POINTS) -> int:
    """Give how many points a circle is drawn with: a multiple of four, at least twelve."""
    wanted = max(least, math.ceil(math.pi * diameter / mesh_size))
    return 4 * math.ceil(wanted / 4)


def inscribed_circle(
    centre: Pair, diameter: float, mesh_size: float, least: int = CIRCLE_POINTS
) -> FloatArray:
    """Give a polygon with its corners on the circle."""
    count = points_on_circle(diameter, mesh_size, least)
    angle = np.arange(count) * (2.0 * math.pi / count)
    return np.asarray(
        np.asarray(centre, float) + 0.5 * diameter * np.c_[np.cos(angle), np.sin(angle)]
    )


def equal_area_circle(
    centre: Pair, diameter: float, mesh_size: float, least: int = CIRCLE_POINTS
) -> FloatArray:
    """Give a polygon of the area of the circle."""
    count = points_on_circle(diameter, mesh_size, least)
    share = 2.0 * math.pi / count
    middle = np.asarray(centre, float)
    unit = inscribed_circle((0.0, 0.0), diameter, math.inf, count)
    return np.asarray(middle + unit * math.sqrt(share / math.sin(share)))


def slot_polygon(slot: Slot, mesh_size: float) -> FloatArray:
    """Give the outline of a slot, its round ends drawn with equal area."""
    round_end = equal_area_circle((0.0, 0.0), slot.width, mesh_size)
    quarter = len(round_end) // 4
    turned = np.roll(round_end, quarter, axis=0)  # starts at -90 degrees
    shift = np.array([0.5 * (slot.length - slot.width), 0.0])
    half = 2 * quarter + 1
    right = turned[:half] + shift
    left = np.roll(turned, -2 * quarter, axis=0)[:half] - shift
    cosine, sine = math.cos(slot.angle), math.sin(slot.angle)
    turn = np.array([[cosine, sine], [-sine, cosine]])
    return np.asarray(np.r_[right, left] @ turn + np.asarray(slot.centre, float))


def hole_polygon(hole: Hole | Slot | Cutout, mesh_size: float) -> FloatArray:
    """Give the outline of a free hole."""
    if isinstance(hole, Cutout):
        return np.asarray(hole.corners, float)
    if isinstance(hole, Slot) and hole.length > hole.width:
        return slot_polygon(hole, mesh_size)
    diameter = hole.width if isinstance(hole, Slot) else hole.diameter
    return equal_area_circle(hole.centre, diameter, mesh_size, FREE_HOLE_POINTS)


def bolt_hole(bolt: Bolt) -> Hole | Slot:
    """Give the hole a bolt sits in."""
    if bolt.slot_length > bolt.hole_diameter:
        along = np.array([math.cos(bolt.slot_angle), math.sin(bolt.slot_angle)])
        return Slot(
            centre=np.asarray(bolt.centre, float) + bolt.slot_offset * along,
            length=bolt.slot_length,
            width=bolt.hole_diameter,
            angle=bolt.slot_angle,
        )
    return Hole(centre=bolt.centre, diameter=bolt.hole_diameter)


def bolt_hole_polygon(bolt: Bolt, mesh_size: float) -> FloatArray:
    """Give the outline of a bolt's hole: inscribed if round, so that the annulus keeps its shape."""
    hole = bolt_hole(bolt)
    if isinstance(hole, Slot):
        return slot_polygon(hole, mesh_size)
    return inscribed_circle(hole.centre, hole.diameter, mesh_size)


def holes_on(model: PlateModel, facet: int, mesh_size: float) -> list[tuple[str, FloatArray]]:
    """Give every hole of a facet, with the name a message calls it by."""
    plate = model.facets[facet]
    found = [(f"hole {i + 1}", hole_polygon(hole, mesh_size)) for i, hole in enumerate(plate.holes)]
    found += [
        (name, bolt_hole_polygon(bolt, mesh_size))
        for name, bolt in model.named_bolts
        if bolt.facet == facet
    ]
    for i, spacer in enumerate(model.spacers):
        if spacer.inner_diameter > 0.0 and facet in spacer.facets:
            centre = spacer_centre(model, i, facet)
            found.append(
                (f"spacer {i + 1}", inscribed_circle(centre, spacer.inner_diameter, mesh_size))
            )
    return found


def spacer_centre(model: PlateModel, spacer: int, facet: int) -> FloatArray:
    """Give a spacer's centre on either of its facets, carried along the normal of the first."""
    part = model.spacers[spacer]
    centre = np.asarray(part.centre, float)
    if facet == part.facets[0]:
        return centre
    first, second = (model.facets[i] for i in part.facets)
    return second.to_plane(first.to_space(centre))


def outline_polygon(facet: Facet) -> Polygon:
    """Give the outline as a polygon without holes."""
    return Polygon(np.asarray(facet.outline, float))


def free_polygon(model: PlateModel, facet: int, mesh_size: float) -> Polygon:
    """Give the plate that is there: outline less every hole."""
    holes = [Polygon(points) for _, points in holes_on(model, facet, mesh_size)]
    return outline_polygon(model.facets[facet]).difference(shapely.union_all(holes))


@dataclass(frozen=True, kw_only=True)
class Butt:
    """Where a seam is, in space: its line, and unit vectors along it, across and out of the face.

    ``across`` is the edge facet's normal; ``out`` points from the face facet into the edge facet.
    ``height`` is the line's distance from the face facet's mid-plane.
    """

    start: FloatArray
    along: FloatArray
    across: FloatArray
    out: FloatArray
    length: float
    height: float


def butt(model: PlateModel, seam: Seam) -> Butt:
    """Give where a seam is."""
    edge, face = (model.facets[i] for i in seam.facets)
    ends = edge.to_space(np.array([seam.start, seam.end], float))
    length = float(np.linalg.norm(ends[1] - ends[0]))
    middle = outline_polygon(edge).centroid
    inward = edge.to_space(np.array([middle.x, middle.y])) - ends[0]
    out = face.axes[2] * (1.0 if inward @ face.axes[2] > 0.0 else -1.0)
    return Butt(
        start=ends[0],
        along=(ends[1] - ends[0]) / length,
        across=edge.axes[2],
        out=out,
        length=length,
        height=float((ends[0] - np.asarray(face.origin, float)) @ out),
    )


@dataclass(frozen=True, kw_only=True)
class LinkEnd:
    """The disc a fastener of a seam or a strut holds on a facet."""

    name: str
    facet: int
    centre: FloatArray
    diameter: float


def link_ends(model: PlateModel) -> list[LinkEnd]:
    """Give the discs of all fasteners of seams, then of the struts that hold a facet."""
    found = []
    for i, seam in enumerate(model.seams):
        line = butt(model, seam)
        for k, place in enumerate(seam.places):
            found.append(
                LinkEnd(
                    name=f"fastener {k + 1} of seam {i + 1}",
                    facet=seam.facets[1],
                    centre=model.facets[seam.facets[1]].to_plane(line.start + place * line.along),
                    diameter=seam.washer_diameter,
                )
            )
    for i, strut in enumerate(model.struts):
        if strut.facet is not None:
            found.append(
                LinkEnd(
                    name=f"strut {i + 1}",
                    facet=strut.facet,
                    centre=model.facets[strut.facet].to_plane(np.asarray(strut.start, float)),
                    diameter=strut.washer_diameter,
                )
            )
    return found
