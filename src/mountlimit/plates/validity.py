"""What must hold of a plate model before it is meshed; each fault is one plain line."""

from __future__ import annotations

import math

import numpy as np
from shapely.geometry import LineString, Point, Polygon

from .error import PlateError
from .link_checks import check_links
from .model import Facet, FloatArray, PlateModel
from .shapes import (
    TOUCH,
    holes_on,
    inscribed_circle,
    link_ends,
    outline_polygon,
    spacer_centre,
)

FINE = 1e-3  # m, size circles are drawn with for these checks only


def check(model: PlateModel) -> None:
    """Raise the first fault found.

    Raises
    ------
    PlateError
        when an outline, hole, washer, spacer, weld, seam, strut or contact cannot be
    """
    if not model.facets:
        raise PlateError("mount", "has no plate")
    if not model.motor_bolts:
        raise PlateError("motor", "has no bolt")
    for facet in model.facets:
        _facet(facet)
    _indices(model)
    check_links(model)
    for i in range(len(model.facets)):
        _holes(model, i)
        _washers(model, i)
    _motor_face(model)
    _supports(model)


def _facet(facet: Facet) -> None:
    outline = np.asarray(facet.outline, float)
    if outline.ndim != 2 or outline.shape[1] != 2 or len(outline) < 3:
        raise PlateError(facet.name, "outline needs at least three corners")
    if not np.all(np.isfinite(outline)):
        raise PlateError(facet.name, "outline has a corner that is no number")
    shape = Polygon(outline)
    if not shape.is_valid:
        raise PlateError(facet.name, "outline crosses itself")
    if shape.area < TOUCH:
        raise PlateError(facet.name, "outline has no area")
    axes = facet.axes[:2]
    if not np.allclose(axes @ axes.T, np.eye(2), atol=1e-9):
        raise PlateError(facet.name, "e1 and e2 are not unit vectors at right angles")
    if not facet.thickness > 0.0:
        raise PlateError(facet.name, f"thickness {facet.thickness:g} m is not above nothing")
    if not facet.elastic_modulus > 0.0 or not -1.0 < facet.poissons_ratio < 0.5:
        raise PlateError(facet.name, "elastic modulus or Poisson's ratio is not possible")


def _indices(model: PlateModel) -> None:
    known = range(len(model.facets))
    named = [(name, bolt.facet) for name, bolt in model.named_bolts]
    named += [(f"weld {i + 1}", part.facet) for i, part in enumerate(model.welds)]
    named += [(f"contact {i + 1}", part.facet) for i, part in enumerate(model.contacts)]
    named += [(f"section line {i + 1}", part.facet) for i, part in enumerate(model.section_lines)]
    for name, facet in named:
        if facet not in known:
            raise PlateError(name, f"there is no plate {facet}")
    for i, spacer in enumerate(model.spacers):
        if any(f not in known for f in spacer.facets) or spacer.facets[0] == spacer.facets[1]:
            raise PlateError(f"spacer {i + 1}", "needs two different plates")
        _parallel(model, i)


def _parallel(model: PlateModel, spacer: int) -> None:
    first, second = (model.facets[f] for f in model.spacers[spacer].facets)
    if abs(first.axes[2] @ second.axes[2]) < 1.0 - 1e-6:
        raise PlateError(f"spacer {spacer + 1}", "its two plates are not parallel")
    gap = abs((np.asarray(second.origin) - np.asarray(first.origin)) @ first.axes[2])
    if gap <= 0.5 * (first.thickness + second.thickness):
        raise PlateError(f"spacer {spacer + 1}", "its two plates leave it no room")


def _holes(model: PlateModel, facet: int) -> None:
    plate = model.facets[facet]
    outline = outline_polygon(plate)
    seen: list[tuple[str, Polygon]] = []
    for name, points in holes_on(model, facet, FINE):
        shape = Polygon(points)
        if not shape.is_valid:
            raise PlateError(plate.name, f"the edge of {name} crosses itself")
        if not outline.contains(shape):
            raise PlateError(plate.name, f"the hole of {name} leaves the plate")
        for other, taken in seen:
            if shape.intersects(taken):
                raise PlateError(plate.name, f"the holes of {other} and {name} overlap")
        seen.append((name, shape))


def _washers(model: PlateModel, facet: int) -> None:
    plate = model.facets[facet]
    outline = outline_polygon(plate).buffer(TOUCH)
    seen: list[tuple[str, Polygon]] = []
    for name, points in washers_on(model, facet, FINE):
        shape = Polygon(points)
        if not outline.contains(shape):
            raise PlateError(plate.name, f"the {name} leaves the plate")
        for other, taken in seen:
            if shape.intersection(taken).area > TOUCH**2:
                raise PlateError(plate.name, f"the {other} and the {name} overlap")
        seen.append((name, shape))


def washers_on(model: PlateModel, facet: int, mesh_size: float) -> list[tuple[str, FloatArray]]:
    """Give the outer outline of every washer, spacer and strut end on a facet, with its name."""
    found = []
    for name, bolt in model.named_bolts:
        if bolt.facet != facet:
            continue
        if not bolt.washer_diameter > bolt.hole_diameter:
            raise PlateError(name, "its washer is not larger than its hole")
        circle = inscribed_circle(bolt.centre, bolt.washer_diameter, mesh_size)
        found.append((f"washer of {name}", circle))
    for i, spacer in enumerate(model.spacers):
        if facet in spacer.facets:
            if not spacer.diameter > spacer.inner_diameter >= 0.0:
                raise PlateError(f"spacer {i + 1}", "its bore is not smaller than itself")
            centre = spacer_centre(model, i, facet)
            circle = inscribed_circle(centre, spacer.diameter, mesh_size)
            found.append((f"end of spacer {i + 1}", circle))
    for end in link_ends(model):
        if end.facet == facet:
            circle = inscribed_circle(end.centre, end.diameter, mesh_size)
            found.append((f"washer of {end.name}", circle))
    return found


def _motor_face(model: PlateModel) -> None:
    if model.motor_face_diameter is None:
        return
    plate = model.facets[model.motor_bolts[0].facet]
    centre = plate.to_plane(np.asarray(model.motor_centre, float))
    disc = Polygon(inscribed_circle(centre, model.motor_face_diameter, FINE))
    if not outline_polygon(plate).buffer(TOUCH).contains(disc):
        raise PlateError(plate.name, "the motor is larger than the plate")
    for i, bolt in enumerate(model.motor_bolts):
        washer = Polygon(inscribed_circle(bolt.centre, bolt.washer_diameter, FINE))
        if bolt.facet != model.motor_bolts[0].facet or not disc.buffer(TOUCH).contains(washer):
            raise PlateError(f"motor bolt {i + 1}", "lies outside the motor's face")


def _supports(model: PlateModel) -> None:
    to_frame = [weld for weld in model.welds if weld.other_facet is None]
    if not model.frame_bolts and not to_frame and not model.struts:
        raise PlateError("mount", "nothing holds it to the frame")
    for i, bolt in enumerate(model.frame_bolts):
        stiffness = (bolt.normal_stiffness, bolt.tangential_stiffness)
        if not all(value > 0.0 for value in stiffness):
            raise PlateError(f"frame bolt {i + 1}", "its stiffness is not above nothing")
        if math.isinf(stiffness[0]) != math.isinf(stiffness[1]):
            raise PlateError(f"frame bolt {i + 1}", "is rigid in one direction only")
        if bolt.frame_side not in (-1, 1):
            raise PlateError(f"frame bolt {i + 1}", "its frame side must be +1 or -1")
    for i, contact in enumerate(model.contacts):
        if contact.side not in (-1, 1) or not contact.stiffness > 0.0:
            raise PlateError(f"contact {i + 1}", "needs a side of +1 or -1 and a stiffness")
        if contact.region is not None:
            region = Polygon(np.asarray(contact.region, float))
            outline = outline_polygon(model.facets[contact.facet])
            if not region.is_valid or region.intersection(outline).area < TOUCH:
                raise PlateError(f"contact {i + 1}", "its region holds no plate")
    for i, weld in enumerate(model.welds):
        plate = model.facets[weld.facet]
        line = LineString([weld.start, weld.end])
        if line.length < TOUCH or not outline_polygon(plate).buffer(TOUCH).contains(line):
            raise PlateError(f"weld {i + 1}", f"its line does not lie on {plate.name}")
    for i, cut in enumerate(model.section_lines):
        plate = model.facets[cut.facet]
        if not outline_polygon(plate).intersects(LineString([cut.start, cut.end])):
            raise PlateError(f"section line {i + 1}", f"does not cross {plate.name}")


def hole_clear_of(plate: Facet, name: str, hole: FloatArray, line: LineString) -> None:
    """Raise when a hole lies on a bend or weld line.

    Raises
    ------
    PlateError
        when it does
    """
    if Polygon(hole).intersects(line):
        raise PlateError(plate.name, f"the hole of {name} lies on a bend or weld line")


def inside(polygon: Polygon, place: FloatArray) -> bool:
    """Tell whether a place lies in a polygon or on its edge."""
    return bool(polygon.buffer(TOUCH).contains(Point(place)))
