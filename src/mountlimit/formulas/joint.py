"""Stiffness of the clamped joint."""

from __future__ import annotations

from ..worked import formula
from ._maths import log, pi


@formula
def frustum_stiffness(
    elastic_modulus: float, diameter: float, thickness: float, face_diameter: float
) -> float:
    """Stiffness of one clamped cone of 30 degrees.

    k = 0.5774 * pi * E * d / log((1.155 * t + D - d) * (D + d) / ((1.155 * t + D + d) * (D - d)))

    Parameters
    ----------
    elastic_modulus : E [Pa]
        elastic modulus
    diameter : d [m]
        nominal diameter of the bolt
    thickness : t [m]
        thickness of the plate
    face_diameter : D [m]
        diameter of the loaded face

    Returns
    -------
    k [N/m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 8-20

    Examples
    --------
    >>> float(frustum_stiffness(2.07e11, 0.012, 0.02, 0.018))
    4.470e+09
    """
    return (
        0.5774
        * pi
        * elastic_modulus
        * diameter
        / log(
            (1.155 * thickness + face_diameter - diameter)
            * (face_diameter + diameter)
            / ((1.155 * thickness + face_diameter + diameter) * (face_diameter - diameter))
        )
    )


@formula
def spring_series(first: float, second: float) -> float:
    """Stiffness of two springs in series.

    k = k_1 * k_2 / (k_1 + k_2)

    Parameters
    ----------
    first : k_1 [N/m]
        stiffness of the first spring
    second : k_2 [N/m]
        stiffness of the second spring

    Returns
    -------
    k [N/m]

    Source
    ------
    statics

    Examples
    --------
    >>> spring_series(3e8, 6e8)
    2.000e+08
    """
    return first * second / (first + second)
