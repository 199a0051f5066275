"""What counts of a key or a flat, of several set screws; hubs that grip the shaft by friction."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def useful_key_length(key_length: Number, shaft_diameter: Number) -> Number:
    """Length of a key or a flat that carries.

    l = min(l_k, 1.5 * d)

    Parameters
    ----------
    key_length : l_k [m]
        length of the key or flat
    shaft_diameter : d [m]
        shaft diameter

    Returns
    -------
    l [m]

    Source
    ------
    common practice, no source (the load sits at the first part of a long key)
    """
    return np.minimum(key_length, 1.5 * shaft_diameter)


@formula
def screws_together(holding_torque: Number, pair: Number) -> Number:
    """Torque that all set screws hold together.

    T = c * T_1

    Parameters
    ----------
    holding_torque : T_1 [N*m]
        torque one screw holds
    pair : c [-]
        1 for one screw, less than 2 for two

    Returns
    -------
    T [N*m]

    Source
    ------
    common practice, no source (two screws hold less than twice one)
    """
    return pair * holding_torque


@formula
def clamp_torque(
    wrap: Number, friction: Number, count: Number, preload: Number, shaft_diameter: Number
) -> Number:
    """Torque that a split hub holds, clamped on its shaft by screws.

    T = c * mu * n * F_V * d

    Parameters
    ----------
    wrap : c [-]
        how far the pressure spreads round the shaft: 1 along two lines, pi/2 evenly
    friction : mu [-]
        coefficient of friction
    count : n [-]
        screws that press on this shaft
    preload : F_V [N]
        clamping force of each screw
    shaft_diameter : d [m]
        shaft diameter

    Returns
    -------
    T [N*m]

    Valid for
    ---------
    a hub soft enough at its slit to pass the clamping force on

    Source
    ------
    statics; evenly: Khurmi & Gupta, Machine Design, clamp coupling (from memory)
    """
    return wrap * friction * count * preload * shaft_diameter


@formula
def taper_bush_torque(
    friction: Number, count: Number, preload: Number, half_angle: Number, shaft_diameter: Number
) -> Number:
    """Torque that a split taper bush holds on its shaft by friction alone.

    T = mu * n * F_V * d / (2 * tan(a + atan(mu)))

    Parameters
    ----------
    friction : mu [-]
        coefficient of friction, on the taper and on the shaft
    count : n [-]
        screws that draw the bush in
    preload : F_V [N]
        force of each screw along the shaft
    half_angle : a [rad]
        half the angle of the taper
    shaft_diameter : d [m]
        shaft diameter

    Returns
    -------
    T [N*m]

    Valid for
    ---------
    a bush slit right through, closed on the shaft without force

    Source
    ------
    wedge with friction on the taper (statics); the bore slips before the wider taper
    """
    return (
        friction * count * preload * shaft_diameter / (2 * np.tan(half_angle + np.arctan(friction)))
    )


@formula
def screws_along(hold: Number, pair: Number) -> Number:
    """Axial hold of all set screws together.

    F_h = c * F_s

    Parameters
    ----------
    hold : F_s [N]
        axial hold of one set screw
    pair : c [-]
        hold of all over that of one

    Returns
    -------
    F_h [N]

    Source
    ------
    common practice, no source (two screws hold less than twice one)
    """
    return pair * hold
