"""Struts: two-force members from the motor or a plate to the frame, as rows on the unknowns."""

from __future__ import annotations

import numpy as np

from .mesh import Mesh
from .model import FloatArray, PlateModel, Strut
from .seams import Rows, SpringRows, disc_mean
from .ties import Ties


def direction(strut: Strut) -> FloatArray:
    """Give the unit vector from a strut's start to its end on the frame."""
    way = np.asarray(strut.end, float) - np.asarray(strut.start, float)
    return np.asarray(way / np.linalg.norm(way))


def struts(model: PlateModel, mesh: Mesh, ties: Ties) -> SpringRows:
    """Give the springs of all struts, longer above nothing.

    Raises
    ------
    PlateError
        when a strut's washer holds no plate
    """
    rows = Rows.none()
    link = sum(len(seam.places) for seam in model.seams)
    for i, strut in enumerate(model.struts):
        start, way = np.asarray(strut.start, float), -direction(strut)
        if strut.facet is None:
            node = ties.face_nodes[:1]  # goes with the motor as one body
            arm = start - mesh.points[node[0]]
            rows.add(i, node, np.ones(1), np.r_[way, np.cross(arm, way)])
            continue
        facet = model.facets[strut.facet]
        root = facet.to_space(facet.to_plane(start))
        nodes, share = disc_mean(mesh, link, f"strut {i + 1}", root)
        rows.add(i, nodes, share, np.r_[way, np.cross(start - root, way)])
        link += 1
    stiffness = np.array([strut.stiffness for strut in model.struts], float)
    return SpringRows(rows=rows.matrix(len(model.struts), len(mesh.points)), stiffness=stiffness)
