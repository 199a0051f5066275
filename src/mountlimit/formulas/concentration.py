"""Stress concentration at holes and bends."""

from __future__ import annotations

from ..worked import formula
from ._maths import log


@formula
def central_hole_tension(hole_diameter: float, width: float) -> float:
    """Stress concentration of a central hole in tension, on the net section.

    K_t = 3 - 3.13 * (d / w) + 3.66 * (d / w)**2 - 1.53 * (d / w)**3

    Parameters
    ----------
    hole_diameter : d [m]
        diameter of the hole
    width : w [m]
        width of the plate

    Returns
    -------
    K_t [-]

    Source
    ------
    Roark's Formulas for Stress and Strain, table 17.1

    Examples
    --------
    >>> central_hole_tension(0.012, 0.05)
    2.438
    """
    return (
        3
        - 3.13 * (hole_diameter / width)
        + 3.66 * (hole_diameter / width) ** 2
        - 1.53 * (hole_diameter / width) ** 3
    )


@formula
def hole_in_bending(hole_diameter: float, thickness: float) -> float:
    """Stress concentration of a hole in a wide plate bent out of its plane.

    K_t = 1.79 + 0.25 / (0.39 + d / t) + 0.81 / (1 + (d / t)**2) - 0.26 / (1 + (d / t)**3)

    Parameters
    ----------
    hole_diameter : d [m]
        diameter of the hole
    thickness : t [m]
        thickness of the plate

    Returns
    -------
    K_t [-]

    Valid for
    ---------
    Poisson's ratio 0.3

    Source
    ------
    Roark's Formulas for Stress and Strain, table 17.1

    Examples
    --------
    >>> hole_in_bending(0.009, 0.006)
    2.112
    """
    return (
        1.79
        + 0.25 / (0.39 + hole_diameter / thickness)
        + 0.81 / (1 + (hole_diameter / thickness) ** 2)
        - 0.26 / (1 + (hole_diameter / thickness) ** 3)
    )


@formula
def curved_bar_inside(mid_radius: float, half_depth: float) -> float:
    """Stress at the inside of a bend over the straight-bar stress, rectangle.

    K_i = c / 3 * ((2 * c / log((R + c) / (R - c))) - (R - c)) / ((R - (2 * c / log((R + c) / (R -
    c)))) * (R - c))

    Parameters
    ----------
    mid_radius : R [m]
        radius of the bend to mid-thickness
    half_depth : c [m]
        half the thickness

    Returns
    -------
    K_i [-]

    Valid for
    ---------
    mid-thickness radius above half the thickness, below about fifty

    Source
    ------
    Winkler-Bach theory (Machinery's Handbook 31st ed., p. 275)

    Examples
    --------
    >>> float(curved_bar_inside(0.009, 0.003))
    1.288
    """
    neutral = 2 * half_depth / log((mid_radius + half_depth) / (mid_radius - half_depth))
    inner = mid_radius - half_depth
    return half_depth / 3 * (neutral - inner) / ((mid_radius - neutral) * inner)
