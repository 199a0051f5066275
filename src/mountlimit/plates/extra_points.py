"""Extra points round washers and free holes, so that triangles are small where stress is read."""

from __future__ import annotations

import math

import numpy as np
import shapely

from .model import FloatArray, Hole, IntArray, Pair, PlateModel
from .shapes import FREE_HOLE_POINTS, free_polygon, points_on_circle

GROWTH = 1.3  # of the distance from one row of points to the next
CLEAR = 0.6  # distance to any line over the distance of neighbours in a row
WASHERS = 24  # with more bolts than that there are no rows round their washers
REACH = 1.2  # rows go this many thicknesses beyond the washer
HOLE_REACH = 0.2  # rows go this many diameters beyond a free hole


def add(
    model: PlateModel, facet: int, places: FloatArray, pieces: IntArray, size: float
) -> FloatArray:
    """Give a facet's places with rows of points round washers and free holes put after them."""
    free = free_polygon(model, facet, size)
    lines = shapely.multilinestrings(shapely.linestrings(places[pieces]))
    kept = np.empty((0, 2))
    for row, gap in _all_rows(model, facet, size):
        points = shapely.points(row)
        fits = shapely.contains(free, points) & (shapely.distance(lines, points) > CLEAR * gap)
        if len(kept):
            apart = np.linalg.norm(row[:, None] - kept[None], axis=2).min(axis=1)
            fits &= apart > CLEAR * gap
        kept = np.r_[kept, row[fits]]
    return np.asarray(np.r_[places, kept])


def _all_rows(model: PlateModel, facet: int, size: float) -> list[tuple[FloatArray, float]]:
    """Give every row of points on a facet and the distance of neighbours in it.

    Forty bolts without rows: a quarter fewer elements, tilt 0.1 % and rings 1 % off (measured).
    """
    plate = model.facets[facet]
    rows = []
    for bolt in model.bolts:
        if bolt.facet == facet and len(model.bolts) <= WASHERS:
            count = points_on_circle(bolt.washer_diameter, size)
            reach = REACH * plate.thickness
            rows += _rows(bolt.centre, bolt.washer_diameter, count, reach, size)
    for hole in plate.holes:
        if isinstance(hole, Hole):
            count = points_on_circle(hole.diameter, size, FREE_HOLE_POINTS)
            reach = HOLE_REACH * hole.diameter
            rows += _rows(hole.centre, hole.diameter, count, reach, size)
    return rows


def _rows(
    centre: Pair, diameter: float, count: int, reach: float, size: float
) -> list[tuple[FloatArray, float]]:
    """Give rows of points outside a circle of ``count`` points, up to ``reach`` from it."""
    radius = 0.5 * diameter
    gap = 2.0 * radius * math.sin(math.pi / count)
    last = radius + reach
    rows = []
    shift = 0.5
    while radius + 0.6 * gap < last and gap < size:
        radius += 0.87 * gap
        gap *= GROWTH
        many = max(8, round(2.0 * math.pi * radius / gap))
        angle = (np.arange(many) + shift) * (2.0 * math.pi / many)
        row = np.asarray(centre, float) + radius * np.c_[np.cos(angle), np.sin(angle)]
        rows.append((row, gap))
        shift = 0.5 - shift
    return rows
