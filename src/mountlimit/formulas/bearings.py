"""Rolling bearings: static load and rating life."""

from __future__ import annotations

from ..worked import formula
from ._maths import larger, log, pi, power


@formula
def equivalent_static_load(radial_load: float, axial_load: float) -> float:
    """Equivalent static load of a deep-groove ball bearing.

    P_0 = max(0.6 * F_r + 0.5 * F_a, F_r)

    Parameters
    ----------
    radial_load : F_r [N]
        radial load on the bearing
    axial_load : F_a [N]
        axial load on the bearing

    Returns
    -------
    P_0 [N]

    Source
    ------
    ISO 76

    Examples
    --------
    >>> float(equivalent_static_load(1000.0, 2000.0))
    1600.0
    """
    return larger(0.6 * radial_load + 0.5 * axial_load, radial_load)


@formula
def jerked_load(load: float, chain_factor: float) -> float:
    """Load on a bearing with the jerk of a chain.

    F_b = f_b * F

    Parameters
    ----------
    load : F [N]
        load from the steady chain pull
    chain_factor : f_b [-]
        chain factor

    Returns
    -------
    F_b [N]

    Source
    ------
    bearing makers' catalogues (from memory); the application factor of Shigley's Mechanical
    Engineering Design 9th ed. table 11-5

    Examples
    --------
    >>> jerked_load(1898.0, 1.2)
    2277.6
    """
    return chain_factor * load


@formula
def equivalent_dynamic_load(
    radial_load: float, axial_load: float, radial_factor: float, axial_factor: float
) -> float:
    """Equivalent dynamic load of a bearing.

    P = X * F_r + Y * F_a

    Parameters
    ----------
    radial_load : F_r [N]
        radial load on the bearing
    axial_load : F_a [N]
        axial load on the bearing
    radial_factor : X [-]
        radial factor
    axial_factor : Y [-]
        axial factor

    Returns
    -------
    P [N]

    Source
    ------
    ISO 281

    Examples
    --------
    >>> equivalent_dynamic_load(3200.0, 1800.0, 0.56, 1.43)
    4366.0
    """
    return radial_factor * radial_load + axial_factor * axial_load


@formula
def rating_life_revs(dynamic_rating: float, dynamic_load: float, life_exponent: float) -> float:
    """Rating life in revolutions.

    L_r = 1000000 * (C / P)**p

    Parameters
    ----------
    dynamic_rating : C [N]
        basic dynamic load rating
    dynamic_load : P [N]
        equivalent dynamic load
    life_exponent : p [-]
        3 for ball, 10/3 for roller bearings

    Returns
    -------
    L_r [rev]

    Source
    ------
    ISO 281

    Examples
    --------
    >>> float(rating_life_revs(32500.0, 3200.0, 3.0))
    1.048e+09
    """
    return 1000000 * power(dynamic_rating / dynamic_load, life_exponent)


@formula
def rating_life(revolutions: float, shaft_speed: float) -> float:
    """Rating life in time.

    L_h = 2 * pi * L_r / omega

    Parameters
    ----------
    revolutions : L_r [rev]
        life in revolutions
    shaft_speed : omega [rad/s]
        speed of the shaft

    Returns
    -------
    L_h [s]

    Source
    ------
    ISO 281

    Examples
    --------
    >>> rating_life(5.4e8, 31.4159265) / 3600
    30000.0
    """
    return 2 * pi * revolutions / shaft_speed


@formula
def reliability_factor(reliability: float) -> float:
    """Life factor for another reliability.

    a_1 = 0.95 * (log(1 / S) / log(1 / 0.9))**(2 / 3) + 0.05

    Parameters
    ----------
    reliability : S [-]
        share of bearings that live longer

    Returns
    -------
    a_1 [-]

    Valid for
    ---------
    reliability 90 to 99 per cent

    Source
    ------
    three-parameter Weibull form of ISO 281:2007 table 12 (from memory)

    Examples
    --------
    >>> float(reliability_factor(0.95))
    0.6379
    """
    return 0.95 * power(log(1 / reliability) / log(1 / 0.9), 2 / 3) + 0.05


@formula
def adjusted_life(life: float, life_factor: float) -> float:
    """Life for another reliability.

    L_n = a_1 * L

    Parameters
    ----------
    life : L [s]
        life at 90 per cent
    life_factor : a_1 [-]
        factor for another reliability

    Returns
    -------
    L_n [s]

    Source
    ------
    ISO 281

    Examples
    --------
    >>> adjusted_life(9.67e7, 0.64)
    6.189e+07
    """
    return life_factor * life
