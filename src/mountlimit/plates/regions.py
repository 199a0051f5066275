"""Which part of a facet lies under a washer, the motor, a spacer, a corner strip or on the frame."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely
from shapely.geometry import MultiPolygon, Polygon

from .model import Bolt, Contact, FloatArray, IntArray, PlateModel
from .shapes import inscribed_circle, link_ends, outline_polygon, spacer_centre

CORNER_FACTOR = 1.5  # thickness of the strip beside a bend over that of the plate

GRID = 1e-9  # m, edges that lie on each other by more digits than this are one and the same
FINEST_PITCH = 0.010  # m, of contact cells
CONTACT_POINTS = 70  # aimed at, at most, on one plate

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


def link_discs(model: PlateModel, mesh_size: float) -> list[Disc]:
    """Give the outline of the disc of every fastener of a seam and strut, in order."""
    return [
        (end.facet, inscribed_circle(end.centre, end.diameter, mesh_size))
        for end in link_ends(model)
    ]


def contact_region(model: PlateModel, contact: Contact) -> Polygon | MultiPolygon:
    """Give the part of a facet's outline a contact covers."""
    outline = outline_polygon(model.facets[contact.facet])
    if contact.region is None:
        return outline
    region = Polygon(np.asarray(contact.region, float))
    return shapely.intersection(*shapely.set_precision([outline, region], GRID))


def contact_pitch(model: PlateModel, contact: Contact, most: int = CONTACT_POINTS) -> float:
    """Give the size of contact cells: the one given, else such that ``most`` fill the region."""
    if contact.pitch is not None:
        return contact.pitch
    return max(FINEST_PITCH, float(np.sqrt(contact_region(model, contact).area / most)))


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
