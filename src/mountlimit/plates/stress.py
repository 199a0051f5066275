"""Surface stress from membrane and bending parts, superposed as components before any equivalent."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from .model import FloatArray, IntArray


def equivalent(stress: FloatArray, strength_ratio: float = 1.0) -> FloatArray:
    """Give the equivalent of plane stress (x, y, xy along the last axis), on the tension scale.

    sigma_e = ((S - 1) * (s_x + s_y) + sqrt(((S - 1) * (s_x + s_y))**2 + 4 * S * (s_x**2 -
    s_x * s_y + s_y**2 + 3 * t_xy**2))) / (2 * S)

    Parameters
    ----------
    stress : s_x, s_y, t_xy [Pa]
        components, last axis
    strength_ratio : S [-]
        compressive over tensile yield strength; 1 gives von Mises

    Returns
    -------
    sigma_e [Pa]

    Source
    ------
    parabolic form of Raghava, Caddell & Yeh, Journal of Materials Science 8 (1973) (from memory)
    """
    x, y, xy = np.moveaxis(np.asarray(stress, float), -1, 0)
    square = x**2 - x * y + y**2 + 3.0 * xy**2
    if strength_ratio == 1.0:
        return np.asarray(np.sqrt(square))
    pressure = (strength_ratio - 1.0) * (x + y)
    root = np.sqrt(pressure**2 + 4.0 * strength_ratio * square)
    return np.asarray((pressure + root) / (2.0 * strength_ratio))


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
