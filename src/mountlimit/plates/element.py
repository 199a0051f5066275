"""The six-node triangle: quadratic membrane and Reissner-Mindlin bending, three-point integration.

Six unknowns at a node, in the axes of space: movement U and rotation Theta. With the facet's
axes (e1, e2, n) and a point at height z over the mid-plane the movement is U + z Theta x n.
Drilling is held by a small penalty on n.Theta - (v,x - u,y) / 2, which no rigid movement strains;
it alone takes six points, as three leave a pattern of turning corners unheld.
Straight edges are assumed, so the map to the unit triangle is linear.
"""

from __future__ import annotations

from dataclasses import dataclass, fields

import numpy as np

from .mesh import Mesh
from .model import FloatArray, IntArray, PlateModel

DRILLING = 1e-3  # drilling penalty over the shear modulus
SHEAR_SHARE = 5.0 / 6.0  # share of the thickness that carries transverse shear
CORNER_SHARE = np.array([[5.0, -1.0, -1.0], [-1.0, 5.0, -1.0], [-1.0, -1.0, 5.0]]) / 3.0
INNER_POINTS = np.array([[2.0, 0.5, 0.5], [0.5, 2.0, 0.5], [0.5, 0.5, 2.0]]) / 3.0

# six-point rule of degree four on a triangle: Dunavant, IJNME 21 (1985) (from memory)
_A, _B = 0.445948490915965, 0.091576213509771
RULE_WEIGHTS = np.repeat([0.223381589678011, 0.109951743655322], 3)
RULE_SHARES = np.array(
    [
        [1 - 2 * _A, _A, _A],
        [_A, 1 - 2 * _A, _A],
        [_A, _A, 1 - 2 * _A],
        [1 - 2 * _B, _B, _B],
        [_B, 1 - 2 * _B, _B],
        [_B, _B, 1 - 2 * _B],
    ]
)


def shape(share: FloatArray) -> FloatArray:
    """Give the six shape functions at places given by their area shares, (..., 3) to (..., 6)."""
    one, two, three = np.moveaxis(np.asarray(share), -1, 0)
    return np.stack(
        [
            one * (2.0 * one - 1.0),
            two * (2.0 * two - 1.0),
            three * (2.0 * three - 1.0),
            4.0 * one * two,
            4.0 * two * three,
            4.0 * three * one,
        ],
        axis=-1,
    )


def shape_slopes(share: FloatArray) -> FloatArray:
    """Give the slopes of the six shape functions along the three area shares, (n, 6, 3)."""
    slopes = np.zeros((len(share), 6, 3))
    for i in range(3):
        slopes[:, i, i] = 4.0 * share[:, i] - 1.0
    for node, (i, j) in enumerate(((0, 1), (1, 2), (2, 0)), start=3):
        slopes[:, node, i] = 4.0 * share[:, j]
        slopes[:, node, j] = 4.0 * share[:, i]
    return slopes


@dataclass(frozen=True, kw_only=True)
class Elements:
    """Everything of the elements that stiffness and stress are made of.

    ``thin`` and ``bent`` give, at the three inner points, what grows with the thickness (membrane
    strains, transverse shear; 5 rows) and the curvatures (3 rows), per unknown of the element's
    six nodes; ``drill`` gives the drilling strain at six points. ``membrane`` and ``bending`` are
    the plate's laws, with its thickness in.
    """

    thin: FloatArray
    bent: FloatArray
    drill: FloatArray
    membrane: FloatArray
    shear: FloatArray
    drilling: FloatArray
    bending: FloatArray
    thickness: FloatArray
    weight: FloatArray

    def part(self, chosen: slice | IntArray) -> Elements:
        """Give some of the elements."""
        return Elements(**{f.name: getattr(self, f.name)[chosen] for f in fields(self)})


def prepare(model: PlateModel, mesh: Mesh) -> Elements:
    """Give strain rows and plate laws of every element of a mesh."""
    axes = np.array([facet.axes for facet in model.facets])[mesh.facet]
    slopes = _share_slopes(mesh, axes)
    thin, bent = _strain_rows(slopes, axes)
    plain, shear_modulus = _plane_law(model)
    thickness = np.array([facet.thickness for facet in model.facets])[mesh.facet] * mesh.factor
    law = plain[mesh.facet]
    modulus = shear_modulus[mesh.facet]
    return Elements(
        thin=thin,
        bent=bent,
        drill=_drilling_rows(slopes, axes),
        membrane=law * thickness[:, None, None],
        shear=SHEAR_SHARE * modulus * thickness,
        drilling=DRILLING * modulus * thickness,
        bending=law * (thickness**3 / 12.0)[:, None, None],
        thickness=thickness,
        weight=mesh.area / 3.0,
    )


def _plane_law(model: PlateModel) -> tuple[FloatArray, FloatArray]:
    """Give each facet's plane-stress law (3 x 3) and its shear modulus."""
    laws, moduli = [], []
    for facet in model.facets:
        plate = facet.elastic_modulus / (1.0 - facet.poissons_ratio**2)
        law = np.zeros((3, 3))
        law[0, 0] = law[1, 1] = plate
        law[0, 1] = law[1, 0] = facet.poissons_ratio * plate
        law[2, 2] = facet.in_plane_shear_modulus
        laws.append(law)
        moduli.append(facet.in_plane_shear_modulus)
    return np.array(laws), np.array(moduli)


def _share_slopes(mesh: Mesh, axes: FloatArray) -> FloatArray:
    """Give the slopes of the three area shares along ``e1`` and ``e2``, (n, 3, 2)."""
    corners = mesh.points[mesh.triangles[:, :3]]
    flat = np.einsum("eci,eki->eck", corners - corners[:, :1], axes[:, :2])
    double = 2.0 * mesh.area
    opposite = np.roll(flat, 1, axis=1) - np.roll(flat, -1, axis=1)  # edge facing each corner
    share_slopes = np.stack([-opposite[:, :, 1], opposite[:, :, 0]], axis=-1)
    return np.asarray(share_slopes / (_turn(flat) * double)[:, None, None])


def _strain_rows(share_slopes: FloatArray, axes: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Give the strain rows at the inner points: (n, 3 points, 5 or 3 rows, 36 unknowns)."""
    slopes = np.einsum("gnl,elk->kegn", shape_slopes(INNER_POINTS), share_slopes)
    dx, dy = slopes[..., None]
    value = np.broadcast_to(shape(INNER_POINTS)[None, :, :, None], dx.shape)
    e1, e2, normal = (axes[:, None, None, i, :] for i in range(3))
    count = len(axes)
    thin = np.zeros((count, 3, 5, 6, 6))
    thin[:, :, 0, :, :3] = dx * e1
    thin[:, :, 1, :, :3] = dy * e2
    thin[:, :, 2, :, :3] = dy * e1 + dx * e2
    thin[:, :, 3, :, :3] = dx * normal
    thin[:, :, 3, :, 3:] = value * e2
    thin[:, :, 4, :, :3] = dy * normal
    thin[:, :, 4, :, 3:] = -value * e1
    bent = np.zeros((count, 3, 3, 6, 6))
    bent[:, :, 0, :, 3:] = dx * e2
    bent[:, :, 1, :, 3:] = -dy * e1
    bent[:, :, 2, :, 3:] = dy * e2 - dx * e1
    return thin.reshape(count, 3, 5, 36), bent.reshape(count, 3, 3, 36)


def _drilling_rows(share_slopes: FloatArray, axes: FloatArray) -> FloatArray:
    """Give the drilling strain at the six points of the rule of degree four, (n, 6, 36)."""
    slopes = np.einsum("gnl,elk->kegn", shape_slopes(RULE_SHARES), share_slopes)
    dx, dy = slopes[..., None]
    value = np.broadcast_to(shape(RULE_SHARES)[None, :, :, None], dx.shape)
    e1, e2, normal = (axes[:, None, None, i, :] for i in range(3))
    rows = np.concatenate([-0.5 * (dx * e2 - dy * e1), value * normal], axis=-1)
    return np.asarray(rows.reshape(len(axes), 6, 36))


def _turn(flat: FloatArray) -> FloatArray:
    """Give +1 where the corners run from e1 to e2, else -1."""
    return np.sign(flat[:, 1, 0] * flat[:, 2, 1] - flat[:, 1, 1] * flat[:, 2, 0])


def stiffness(elements: Elements) -> tuple[FloatArray, FloatArray]:
    """Give element stiffness, (n, 36, 36) each: the part of thickness one, and that of three."""
    count = len(elements.weight)
    law = np.zeros((count, 5, 5))
    law[:, :3, :3] = elements.membrane
    law[:, 3, 3] = law[:, 4, 4] = elements.shear
    weight = elements.weight[:, None, None]
    penalty = (3.0 * elements.weight * elements.drilling)[:, None] * RULE_WEIGHTS
    drilling = elements.drill.transpose(0, 2, 1) @ (penalty[:, :, None] * elements.drill)
    return (
        _sandwich(elements.thin, law * weight) + drilling,
        _sandwich(elements.bent, elements.bending * weight),
    )


def _sandwich(rows: FloatArray, law: FloatArray) -> FloatArray:
    """Give the sum over the points of rows' law rows."""
    count, points, strains, unknowns = rows.shape
    stressed = law[:, None] @ rows
    flat = rows.reshape(count, points * strains, unknowns)
    return np.asarray(flat.transpose(0, 2, 1) @ stressed.reshape(flat.shape))


def resultants(elements: Elements, movement: FloatArray) -> FloatArray:
    """Give surface stress at the corners: (n, 3 corners, 6, columns), membrane then bending part.

    ``movement`` holds the elements' unknowns, (n, 36, columns). The bending part is that of the
    face the normal points out of.
    """
    count = len(elements.weight)
    thickness = elements.thickness[:, None, None]
    membrane = (elements.membrane / thickness)[:, None] @ elements.thin[:, :, :3]
    bending = (elements.bending * (6.0 / thickness**2))[:, None] @ elements.bent
    rows = np.concatenate([membrane, bending], axis=2)
    inner = rows.reshape(count, 18, 36) @ movement
    inner = inner.reshape(count, 3, -1)
    return np.asarray(CORNER_SHARE @ inner).reshape(count, 3, 6, -1)
