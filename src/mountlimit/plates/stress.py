"""Surface stress from membrane and bending parts, superposed as components before any equivalent."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from ..formulas import equivalent as formulas
from .model import FloatArray, IntArray


def equivalent(stress: FloatArray, strength_ratio: float = 1.0) -> FloatArray:
    """Give the equivalent of plane stress, on the tension scale, as ``formulas.equivalent`` has it.

    Parameters
    ----------
    stress : s_x, s_y, t_xy [Pa]
        components, last axis
    strength_ratio : S [-]
        compressive over tensile yield strength; 1 gives von Mises

    Returns
    -------
    sigma_e [Pa]
    """
    x, y, xy = np.moveaxis(np.asarray(stress, float), -1, 0)
    if strength_ratio == 1.0:
        return np.asarray(formulas.plane_von_mises(x, y, xy))
    return np.asarray(formulas.plane_pressure_sensitive(x, y, xy, strength_ratio))


@dataclass(frozen=True, kw_only=True)
class StressSamples:
    """Stress at sampled places, in the axes of the facet: membrane and bending parts kept apart.

    The bending part is that of the face the facet's normal points out of; the other face has its
    opposite. ``owner`` is the bolt, line or facet a place belongs to, ``count`` how many there are.
    """

    place: FloatArray
    owner: IntArray
    membrane: FloatArray
    bending: FloatArray
    count: int

    def equivalent(self, strength_ratio: float = 1.0) -> FloatArray:
        """Give the larger equivalent stress of the two faces at every place."""
        return np.maximum(
            equivalent(self.membrane + self.bending, strength_ratio),
            equivalent(self.membrane - self.bending, strength_ratio),
        )

    def largest(self, strength_ratio: float = 1.0) -> FloatArray:
        """Give the largest equivalent stress of every owner; nan where it has no place."""
        found = np.full(self.count, -np.inf)
        np.maximum.at(found, self.owner, self.equivalent(strength_ratio))
        return np.where(np.isinf(found), np.nan, found)
