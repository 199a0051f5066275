"""What must hold of seams and struts before meshing; each fault is one plain line."""

from __future__ import annotations

import math

import numpy as np
from shapely.geometry import LineString, Point

from .error import PlateError
from .model import PlateModel, Seam, Strut
from .shapes import TOUCH, butt, outline_polygon

SQUARE = 1e-3  # cosine of the angle above which two plates do not count as at right angles


def check_links(model: PlateModel) -> None:
    """Raise the first fault found.

    Raises
    ------
    PlateError
        when a seam or a strut cannot be
    """
    for i, seam in enumerate(model.seams):
        _seam(model, f"seam {i + 1}", seam)
    for i, strut in enumerate(model.struts):
        _strut(model, f"strut {i + 1}", strut)


def _seam(model: PlateModel, name: str, seam: Seam) -> None:
    known = range(len(model.facets))
    if any(f not in known for f in seam.facets) or seam.facets[0] == seam.facets[1]:
        raise PlateError(name, "needs two different plates")
    for what, value in (
        ("axial stiffness", seam.axial_stiffness),
        ("lateral stiffness", seam.lateral_stiffness),
        ("contact stiffness", seam.contact_stiffness),
        ("washer diameter", seam.washer_diameter),
        ("pitch", 1.0 if seam.pitch is None else seam.pitch),
    ):
        if not 0.0 < value < math.inf:
            raise PlateError(name, f"its {what} {value:g} is not above nothing and finite")
    edge, face = (model.facets[i] for i in seam.facets)
    line = LineString([seam.start, seam.end])
    if line.length < TOUCH or not outline_polygon(edge).boundary.buffer(10 * TOUCH).contains(line):
        raise PlateError(name, f"its line does not lie on a straight edge of {edge.name}")
    if abs(edge.axes[2] @ face.axes[2]) > SQUARE:
        raise PlateError(name, f"{edge.name} is not at right angles to {face.name}")
    _fit(model, name, seam)


def _fit(model: PlateModel, name: str, seam: Seam) -> None:
    """Refuse a seam whose edge does not end at the other plate, or with a fastener off it."""
    edge, face = (model.facets[i] for i in seam.facets)
    where = butt(model, seam)
    if abs(where.along @ where.out) > SQUARE:
        raise PlateError(name, f"its line is not parallel to {face.name}")
    if not -10 * TOUCH < where.height < face.thickness + 10 * TOUCH:
        raise PlateError(
            name,
            f"the edge of {edge.name} lies {1e3 * where.height:.3g} mm from the mid-plane of "
            f"{face.name}; expected 0 (mid-plane) or {5e2 * face.thickness:.3g} mm (its face)",
        )
    if len(seam.places) == 0:
        raise PlateError(name, "has no fastener")
    for k, place in enumerate(seam.places):
        if not TOUCH < place < where.length - TOUCH:
            raise PlateError(
                name,
                f"fastener {k + 1} at {1e3 * place:.4g} mm is not on its line of "
                f"{1e3 * where.length:.4g} mm",
            )


def _strut(model: PlateModel, name: str, strut: Strut) -> None:
    ends = np.array([strut.start, strut.end], float)
    if ends.shape != (2, 3) or not np.all(np.isfinite(ends)):
        raise PlateError(name, "needs a start and an end of three numbers each")
    if np.linalg.norm(ends[1] - ends[0]) < TOUCH:
        raise PlateError(name, "has no length")
    if not 0.0 < strut.stiffness < math.inf:
        raise PlateError(name, f"its stiffness {strut.stiffness:g} is not above nothing and finite")
    if strut.facet is None:
        return
    if strut.facet not in range(len(model.facets)):
        raise PlateError(name, f"there is no plate {strut.facet}")
    if not 0.0 < strut.washer_diameter < math.inf:
        raise PlateError(
            name, f"its washer diameter {strut.washer_diameter:g} is not above nothing and finite"
        )
    facet = model.facets[strut.facet]
    if not outline_polygon(facet).contains(Point(facet.to_plane(ends[0]))):
        raise PlateError(name, f"does not start on {facet.name}")
