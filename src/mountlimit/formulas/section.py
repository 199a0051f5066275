"""Properties of plain cross-sections."""

from __future__ import annotations

from ..worked import formula
from ._maths import exp, larger, pi, smaller, tanh
from .tube import (
    box_second_moment,
    box_torsion_constant,
    round_tube_second_moment,
    round_tube_torsion_constant,
)

__all__ = [
    "box_second_moment",
    "box_torsion_constant",
    "flat_bar_corner_warping",
    "flat_bar_warping_constant",
    "rectangle_area",
    "rectangle_second_moment",
    "rectangle_torsion_constant",
    "rectangle_torsion_modulus",
    "round_second_moment",
    "round_tube_second_moment",
    "round_tube_torsion_constant",
]


@formula
def rectangle_area(width: float, height: float) -> float:
    """Area of a rectangle.

    A = b * h

    Parameters
    ----------
    width : b [m]
        width of the section
    height : h [m]
        height of the section, across the bending axis

    Returns
    -------
    A [m^2]

    Source
    ------
    geometry

    Examples
    --------
    >>> rectangle_area(0.06, 0.006)
    3.600e-04
    """
    return width * height


@formula
def rectangle_second_moment(width: float, height: float) -> float:
    """Second moment of area of a rectangle.

    I = b * h**3 / 12

    Parameters
    ----------
    width : b [m]
        width of the section
    height : h [m]
        height of the section, across the bending axis

    Returns
    -------
    I [m^4]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table A-18 (from memory)

    Examples
    --------
    >>> rectangle_second_moment(0.06, 0.006)
    1.080e-09
    """
    return width * height**3 / 12


@formula
def rectangle_torsion_constant(width: float, thickness: float) -> float:
    """Torsion constant of a solid rectangle.

    J = max(b, t) * min(b, t)**3 / 3 - 64 / pi**5 * min(b, t)**4 * (1.00452376279514 - (1 - tanh(pi
    / 2 * max(b, t) / min(b, t))) - (1 - tanh(3 * pi / 2 * max(b, t) / min(b, t))) / 3**5)

    Parameters
    ----------
    width : b [m]
        width of the section
    thickness : t [m]
        thickness

    Returns
    -------
    J [m^4]

    Notes
    -----
    The exact series over odd n, rearranged with the sum of 1/n^5 (1.00452...) so that two terms
    leave out less than 1e-9.

    Source
    ------
    Timoshenko & Goodier, Theory of Elasticity, article 109 (from memory)

    Examples
    --------
    >>> float(rectangle_torsion_constant(0.02, 0.01))
    4.574e-09
    """
    longer, shorter = larger(width, thickness), smaller(width, thickness)
    x = pi / 2 * longer / shorter
    tail = sum((1 - tanh(n * x)) / n**5 for n in (1, 3))
    return longer * shorter**3 / 3 - 64 / pi**5 * shorter**4 * (1.00452376279514 - tail)


@formula
def rectangle_torsion_modulus(width: float, thickness: float) -> float:
    """Torsion modulus of a solid rectangle: torque over the largest shear stress.

    W_t = (max(b, t) * min(b, t)**3 / 3 - 64 / pi**5 * min(b, t)**4 * (1.00452376279514 - (1 -
    tanh(pi / 2 * max(b, t) / min(b, t))) - (1 - tanh(3 * pi / 2 * max(b, t) / min(b, t))) / 3**5))
    / (min(b, t) * (1 - 16 / pi**2 * (exp(-pi / 2 * max(b, t) / min(b, t)) / (1 + exp(-pi * max(b,
    t) / min(b, t))) + exp(-3 * pi / 2 * max(b, t) / min(b, t)) / (1 + exp(-3 * pi * max(b, t) /
    min(b, t))) / 3**2 + exp(-5 * pi / 2 * max(b, t) / min(b, t)) / (1 + exp(-5 * pi * max(b, t) /
    min(b, t))) / 5**2 + exp(-7 * pi / 2 * max(b, t) / min(b, t)) / (1 + exp(-7 * pi * max(b, t) /
    min(b, t))) / 7**2)))

    Parameters
    ----------
    width : b [m]
        width of the section
    thickness : t [m]
        thickness

    Returns
    -------
    W_t [m^3]

    Notes
    -----
    The exact series over odd n; the terms left out are below 5e-8.

    Valid for
    ---------
    the largest stress is at the middle of the longer side

    Source
    ------
    Timoshenko & Goodier, Theory of Elasticity, article 109 (from memory)

    Examples
    --------
    >>> float(rectangle_torsion_modulus(0.02, 0.01))
    4.918e-07
    """
    longer, shorter = larger(width, thickness), smaller(width, thickness)
    x = pi / 2 * longer / shorter
    tail = sum((1 - tanh(n * x)) / n**5 for n in (1, 3))
    constant = longer * shorter**3 / 3 - 64 / pi**5 * shorter**4 * (1.00452376279514 - tail)
    terms = (exp(-n * x) / (1 + exp(-2 * n * x)) / n**2 for n in (1, 3, 5, 7))
    return constant / (shorter * (1 - 16 / pi**2 * sum(terms)))


@formula
def flat_bar_warping_constant(width: float, thickness: float) -> float:
    """Warping constant of a flat bar.

    C_w = b**3 * t**3 / 144

    Parameters
    ----------
    width : b [m]
        width of the section
    thickness : t [m]
        thickness

    Returns
    -------
    C_w [m^6]

    Valid for
    ---------
    width at least about four thicknesses

    Source
    ------
    Vlasov, Thin-Walled Elastic Beams, secondary warping of a thin strip (from memory)

    Examples
    --------
    >>> flat_bar_warping_constant(0.06, 0.006)
    3.240e-13
    """
    return width**3 * thickness**3 / 144


@formula
def flat_bar_corner_warping(width: float, thickness: float) -> float:
    """Warping of a flat bar's corner under unit twist.

    omega = b * t / 4

    Parameters
    ----------
    width : b [m]
        width of the section
    thickness : t [m]
        thickness

    Returns
    -------
    omega [m^2]

    Valid for
    ---------
    width at least about four thicknesses

    Source
    ------
    Vlasov, Thin-Walled Elastic Beams, secondary warping of a thin strip (from memory)
    """
    return width * thickness / 4


@formula
def round_second_moment(diameter: float) -> float:
    """Second moment of area of a round bar.

    I = pi * d**4 / 64

    Parameters
    ----------
    diameter : d [m]
        diameter

    Returns
    -------
    I [m^4]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table A-18 (from memory)

    Examples
    --------
    >>> round_second_moment(0.012)
    1.018e-09
    """
    return pi * diameter**4 / 64
