"""Flats on a round shaft: their size, the pressure on them, and torsion of what is left."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def flat_depth(shaft_diameter: Number, across: Number, count: Number) -> Number:
    """Depth of each flat by the size across.

    t = (d - w) / n

    Parameters
    ----------
    shaft_diameter : d [m]
        shaft diameter
    across : w [m]
        over flat and round of a D shaft, over both flats of a double D
    count : n [-]
        number of flats

    Returns
    -------
    t [m]

    Source
    ------
    geometry
    """
    return (shaft_diameter - across) / count


@formula
def flat_width(shaft_diameter: Number, depth: Number) -> Number:
    """Width of a flat.

    b = 2 * sqrt(t * (d - t))

    Parameters
    ----------
    shaft_diameter : d [m]
        shaft diameter
    depth : t [m]
        depth of the flat below the round

    Returns
    -------
    b [m]

    Source
    ------
    geometry: chord of a circle
    """
    return 2 * np.sqrt(depth * (shaft_diameter - depth))


@formula
def flat_pressure(torque: Number, count: Number, width: Number, length: Number) -> Number:
    """Pressure at the edge of a flat.

    p = 12 * T / (n * b**2 * l)

    Parameters
    ----------
    torque : T [N*m]
        torque
    count : n [-]
        number of flats
    width : b [m]
        width of the flat
    length : l [m]
        length of the flat in the hub

    Returns
    -------
    p [Pa]

    Source
    ------
    statics: half of each flat presses, from nothing at its middle rising straight to the edge
    (text books on hubs of this kind do it so, from memory)
    """
    return 12 * torque / (count * width**2 * length)


@formula
def one_flat_torsion(torque: Number, shaft_diameter: Number, depth: Number) -> Number:
    """Largest shear stress of a torque in a round shaft with one flat.

    tau = 8 * T / d**3 * (0.6366 + 1.7598 * (2 * t / d) - 5.4897 * (2 * t / d)**2 + 14.062 * (2 * t / d)**3 - 14.510 * (2 * t / d)**4 + 6.434 * (2 * t / d)**5)

    Parameters
    ----------
    torque : T [N*m]
        torque
    shaft_diameter : d [m]
        shaft diameter
    depth : t [m]
        depth of the flat below the round

    Returns
    -------
    tau [Pa]

    Valid for
    ---------
    flats up to 0.3 of the diameter deep: at most 3 % below finite elements

    Source
    ------
    Roark's Formulas for Stress and Strain table 10.1 (D section)
    """
    x = 2 * depth / shaft_diameter
    shape = 0.6366 + 1.7598 * x - 5.4897 * x**2 + 14.062 * x**3 - 14.510 * x**4 + 6.434 * x**5
    return 8 * torque / shaft_diameter**3 * shape


@formula
def two_flat_torsion(torque: Number, shaft_diameter: Number, depth: Number) -> Number:
    """Largest shear stress of a torque in a round shaft with two opposite flats.

    tau = 8 * T / d**3 * (0.6366 + 2.5303 * (2 * t / d) - 11.157 * (2 * t / d)**2 + 49.568 * (2 * t / d)**3 - 85.886 * (2 * t / d)**4 + 69.849 * (2 * t / d)**5)

    Parameters
    ----------
    torque : T [N*m]
        torque
    shaft_diameter : d [m]
        shaft diameter
    depth : t [m]
        depth of each flat below the round

    Returns
    -------
    tau [Pa]

    Valid for
    ---------
    flats up to 0.3 of the diameter deep: within 2 % of finite elements

    Source
    ------
    Roark's Formulas for Stress and Strain table 10.1 (opposite sides flattened; from memory)
    """
    x = 2 * depth / shaft_diameter
    shape = 0.6366 + 2.5303 * x - 11.157 * x**2 + 49.568 * x**3 - 85.886 * x**4 + 69.849 * x**5
    return 8 * torque / shaft_diameter**3 * shape
