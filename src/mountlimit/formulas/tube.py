"""Properties of round and rectangular tubes."""

from __future__ import annotations

from ..worked import formula
from ._maths import pi


@formula
def round_tube_second_moment(outer_diameter: float, wall: float) -> float:
    """Second moment of area of a round tube.

    I = pi * (D**4 - (D - 2 * t)**4) / 64

    Parameters
    ----------
    outer_diameter : D [m]
        outer diameter
    wall : t [m]
        wall thickness

    Returns
    -------
    I [m^4]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table A-18 (from memory)

    Examples
    --------
    >>> round_tube_second_moment(0.0254, 0.002)
    1.014e-08
    """
    return pi * (outer_diameter**4 - (outer_diameter - 2 * wall) ** 4) / 64


@formula
def round_tube_torsion_constant(outer_diameter: float, wall: float) -> float:
    """Torsion constant of a round tube.

    J = pi * (D**4 - (D - 2 * t)**4) / 32

    Parameters
    ----------
    outer_diameter : D [m]
        outer diameter
    wall : t [m]
        wall thickness

    Returns
    -------
    J [m^4]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table A-18 (from memory)

    Examples
    --------
    >>> round_tube_torsion_constant(0.0254, 0.002)
    2.027e-08
    """
    return pi * (outer_diameter**4 - (outer_diameter - 2 * wall) ** 4) / 32


@formula
def box_second_moment(width: float, height: float, wall: float) -> float:
    """Second moment of area of a rectangular tube with sharp corners.

    I = (b * h**3 - (b - 2 * t) * (h - 2 * t)**3) / 12

    Parameters
    ----------
    width : b [m]
        width of the section
    height : h [m]
        height of the section, across the bending axis
    wall : t [m]
        wall thickness

    Returns
    -------
    I [m^4]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table A-18 (from memory)

    Examples
    --------
    >>> box_second_moment(0.05, 0.1, 0.005)
    1.737e-06
    """
    return (width * height**3 - (width - 2 * wall) * (height - 2 * wall) ** 3) / 12


@formula
def box_torsion_constant(width: float, height: float, wall: float) -> float:
    """Torsion constant of a rectangular tube with a thin wall.

    J = 2 * t * (b - t)**2 * (h - t)**2 / ((b - t) + (h - t))

    Parameters
    ----------
    width : b [m]
        width of the section
    height : h [m]
        height of the section, across the bending axis
    wall : t [m]
        wall thickness

    Returns
    -------
    J [m^4]

    Valid for
    ---------
    wall below about a tenth of the sides; low by some per cent above

    Source
    ------
    Bredt's second formula (Hartsuijker & Welleman, Engineering Mechanics volume 2, chapter 6)

    Examples
    --------
    >>> box_torsion_constant(0.05, 0.1, 0.005)
    1.305e-06
    """
    return 2 * wall * (width - wall) ** 2 * (height - wall) ** 2 / (width - wall + (height - wall))


@formula
def box_area(width: float, height: float, wall: float) -> float:
    """Area of the section of a rectangular tube with sharp corners.

    A = 2 * t * (b + h - 2 * t)

    Parameters
    ----------
    width : b [m]
        outer width
    height : h [m]
        outer height
    wall : t [m]
        wall thickness

    Returns
    -------
    A [m^2]

    Source
    ------
    geometry
    """
    return 2 * wall * (width + height - 2 * wall)


@formula
def round_tube_area(outer_diameter: float, wall: float) -> float:
    """Area of the section of a round tube.

    A = pi * t * (D - t)

    Parameters
    ----------
    outer_diameter : D [m]
        outer diameter
    wall : t [m]
        wall thickness

    Returns
    -------
    A [m^2]

    Source
    ------
    geometry
    """
    return pi * wall * (outer_diameter - wall)


@formula
def box_enclosed_area(width: float, height: float, wall: float) -> float:
    """Area enclosed by the centre line of the wall of a rectangular tube.

    A_m = (b - t) * (h - t)

    Parameters
    ----------
    width : b [m]
        outer width
    height : h [m]
        outer height
    wall : t [m]
        wall thickness

    Returns
    -------
    A_m [m^2]

    Source
    ------
    geometry
    """
    return (width - wall) * (height - wall)
