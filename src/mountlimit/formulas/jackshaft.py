"""A shaft on two bearings under two pulls: the jackshaft between two chains."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def moment_at(station: Number, load: Number, place: Number, bearing_span: Number) -> Number:
    """Bending moment of a shaft on two bearings under one pull, wherever it sits.

    M = F * (max(x - a, 0) - (1 - a / l) * max(x, 0) - a / l * max(x - l, 0))

    Parameters
    ----------
    station : x [m]
        first bearing to where the moment is wanted, as a
    load : F [N]
        pull on the shaft
    place : a [m]
        first bearing to the pull, towards the second bearing; negative outside the first
    bearing_span : l [m]
        between the two bearings

    Returns
    -------
    M [N*m]

    Source
    ------
    statics of the beam on two supports (Hibbeler, Statics, ch. 7, from memory)
    """
    share = place / bearing_span
    return load * (
        np.maximum(station - place, 0)
        - (1 - share) * np.maximum(station, 0)
        - share * np.maximum(station - bearing_span, 0)
    )


@formula
def moments_together(first: Number, second: Number, angle: Number) -> Number:
    """Size of two moments at an angle.

    M = sqrt((M_1 + M_2 * cos(beta))**2 + (M_2 * sin(beta))**2)

    Parameters
    ----------
    first : M_1 [N*m]
        moment of the one pull
    second : M_2 [N*m]
        moment of the other pull
    angle : beta [rad]
        between the directions of the two pulls

    Returns
    -------
    M [N*m]

    Source
    ------
    vector sum
    """
    return np.sqrt((first + second * np.cos(angle)) ** 2 + (second * np.sin(angle)) ** 2)


@formula
def forces_together(first: Number, second: Number, angle: Number) -> Number:
    """Size of two forces at an angle.

    R = sqrt((R_1 + R_2 * cos(beta))**2 + (R_2 * sin(beta))**2)

    Parameters
    ----------
    first : R_1 [N]
        force of the one pull
    second : R_2 [N]
        force of the other pull
    angle : beta [rad]
        between the directions of the two pulls

    Returns
    -------
    R [N]

    Source
    ------
    vector sum
    """
    return np.sqrt((first + second * np.cos(angle)) ** 2 + (second * np.sin(angle)) ** 2)
