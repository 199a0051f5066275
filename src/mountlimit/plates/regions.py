"""Which elements lie under which washer, motor face, spacer end or stiff corner strip."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from shapely.geometry import Polygon

from .model import Bolt, FloatArray, IntArray, PlateModel
from .shapes import inscribed_circle, spacer_centre

CORNER_FACTOR = 1.5  # thickness of the strip beside a bend over that of the plate

Disc = tuple[int, FloatArray]  # facet, outline


def washers(bolts: Sequence[Bolt], mesh_size: float) -> list[Disc]:
    """Give the outer outline of every bolt's washer."""
    return [
        (bolt.facet, inscribed_circle(bolt.centre, bolt.washer_diameter, mesh_size))
        for bolt in bolts
    ]


def motor_face(model: PlateModel, mesh_size: float) -> list[Disc]:
    """Give the outline of the motor's face where it is to be rigid."""
    if model.motor_face_diameter is None:
        return []
    facet = model.motor_bolts[0].facet
    centre = model.facets[facet].to_plane(np.asarray(model.motor_centre, float))
    return [(facet, inscribed_circle(centre, model.motor_face_diameter, mesh_size))]


def spacer_ends(model: PlateModel, mesh_size: float) -> list[Disc]:
    """Give the outline of both ends of every spacer, in order."""
    return [
        (facet, inscribed_circle(spacer_centre(model, i, facet), spacer.diameter, mesh_size))
        for i, spacer in enumerate(model.spacers)
        for facet in spacer.facets
    ]


def under(facet: IntArray, centres: FloatArray, discs: list[Disc]) -> IntArray:
    """Give for every element the disc its centre lies under, else -1."""
    found = np.full(len(facet), -1)
    for i, (own, outline) in enumerate(discs):
        members = np.flatnonzero(facet == own)
        inside = shapely.contains_xy(Polygon(outline), *centres[members].T)
        found[members[inside]] = i
    return found


def corner_factor(
    facet: IntArray, centres: FloatArray, strips: Sequence[Sequence[Polygon]]
) -> FloatArray:
    """Give the factor on the thickness of every element: 1.5 in a stiff strip, else 1."""
    factor = np.ones(len(facet))
    for i, own_strips in enumerate(strips):
        own = np.flatnonzero(facet == i)
        for strip in own_strips:
            factor[own[shapely.contains_xy(strip, *centres[own].T)]] = CORNER_FACTOR
    return factor
