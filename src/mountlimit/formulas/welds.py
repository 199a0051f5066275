"""Fillet welds."""

from __future__ import annotations

from ..worked import formula
from ._maths import sqrt

# Correlation factor by steel grade: EN 1993-1-8 table 4.1.
CORRELATION: dict[str, float] = {"S235": 0.8, "S275": 0.85, "S355": 0.9}


@formula
def fillet_strength(ultimate_strength: float, correlation: float, gamma: float) -> float:
    """Design shear strength of a fillet weld.

    f_vw = R_m / (sqrt(3) * beta_w * g)

    Parameters
    ----------
    ultimate_strength : R_m [Pa]
        ultimate strength
    correlation : beta_w [-]
        correlation factor of the steel
    gamma : g [-]
        partial factor

    Returns
    -------
    f_vw [Pa]

    Source
    ------
    EN 1993-1-8 clause 4.5.3.3, table 4.1

    Examples
    --------
    >>> float(fillet_strength(3.6e8, 0.8, 1.25))
    2.078e+08
    """
    return ultimate_strength / (sqrt(3) * correlation * gamma)


@formula
def fillet_force_per_length(weld_strength: float, throat: float) -> float:
    """Design force of a fillet weld per length.

    F_w = f_vw * a

    Parameters
    ----------
    weld_strength : f_vw [Pa]
        design shear strength of the weld
    throat : a [m]
        throat of the fillet

    Returns
    -------
    F_w [N/m]

    Source
    ------
    EN 1993-1-8 clause 4.5.3.3

    Examples
    --------
    >>> fillet_force_per_length(2.078e8, 0.003)
    623400.0
    """
    return weld_strength * throat


@formula
def fillet_throat(leg: float) -> float:
    """Throat of an equal-leg fillet.

    a = 0.707 * z

    Parameters
    ----------
    leg : z [m]
        leg of the fillet

    Returns
    -------
    a [m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 9-2

    Examples
    --------
    >>> fillet_throat(0.005)
    0.003535
    """
    return 0.707 * leg


@formula
def weld_pair_modulus(weld_length: float, separation: float, throat: float) -> float:
    """Section modulus of two equal line welds, bent about the line midway between.

    Z = l * w * a

    Parameters
    ----------
    weld_length : l [m]
        length of each weld
    separation : w [m]
        distance between the two welds
    throat : a [m]
        throat of the fillet

    Returns
    -------
    Z [m^3]

    Valid for
    ---------
    throat small against the distance

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table 9-2

    Examples
    --------
    >>> weld_pair_modulus(0.05, 0.1, 0.002)
    1.000e-05
    """
    return weld_length * separation * throat


@formula
def sound_throat(throat: float, quality: float) -> float:
    """Throat of a fillet as far as it is sound.

    a_s = k * a

    Parameters
    ----------
    throat : a [m]
        throat of the fillet as measured
    quality : k [-]
        share of it that is sound

    Returns
    -------
    a_s [m]

    Source
    ------
    common practice, no source (home-made welds are taken at about half)
    """
    return quality * throat


@formula
def effective_length(length: float, throat: float) -> float:
    """Length of a fillet that counts: a throat less at either end.

    l_e = l - 2 * a

    Parameters
    ----------
    length : l [m]
        length of the fillet
    throat : a [m]
        throat of the fillet

    Returns
    -------
    l_e [m]

    Source
    ------
    EN 1993-1-8 clause 4.5.1(1)
    """
    return length - 2 * throat


@formula
def heat_affected_strength(strength: float, softened: float, parent: float) -> float:
    """Strength beside a weld: lowered as its card says.

    R_w = R * R_h / R_c

    Parameters
    ----------
    strength : R [Pa]
        strength of the piece at work
    softened : R_h [Pa]
        strength of the card in the heat-affected zone
    parent : R_c [Pa]
        strength of the card away from the weld

    Returns
    -------
    R_w [Pa]

    Source
    ------
    EN 1999-1-1 clause 6.1.6 (factors rho_haz)
    """
    return strength * softened / parent
