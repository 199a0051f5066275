"""A sprocket joined to its hub on a circle: bolts, or a ring of weld."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def ring_bolt_shear(torque: Number, pull: Number, count: Number, bolt_circle: Number) -> Number:
    """Shear of the worst bolt on a circle: torque and pull in line, as once in every turn.

    V = (2 * T / D + F) / n

    Parameters
    ----------
    torque : T [N*m]
        torque of the sprocket
    pull : F [N]
        pull of the chain that the bolts carry
    count : n [-]
        number of bolts
    bolt_circle : D [m]
        diameter of the circle

    Returns
    -------
    V [N]

    Valid for
    ---------
    equal bolts that share alike

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 8-12 (both shares in line)
    """
    return (2 * torque / bolt_circle + pull) / count


@formula
def ring_weld_stress(
    torque: Number, pull: Number, diameter: Number, throat: Number, sides: Number, share: Number
) -> Number:
    """Shear stress in the throat of a ring of weld: torque and pull in line, as once in every turn.

    tau = (2 * T / D + F) / (pi * D * a * k * c)

    Parameters
    ----------
    torque : T [N*m]
        torque of the sprocket
    pull : F [N]
        pull of the chain that the weld carries
    diameter : D [m]
        diameter of the ring
    throat : a [m]
        throat of the fillet
    sides : k [-]
        number of sides welded
    share : c [-]
        welded part of the circle

    Returns
    -------
    tau [Pa]

    Valid for
    ---------
    throat small against the diameter; stitches shared out evenly round the circle

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table 9-1, J_u = 2 pi r^3, and an even share of
    the pull (EN 1993-1-8 clause 4.9, from memory)
    """
    return (2 * torque / diameter + pull) / (np.pi * diameter * throat * sides * share)
