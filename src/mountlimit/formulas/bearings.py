"""Rolling bearings: static load and rating life."""

from __future__ import annotations

import numpy as np

from ..worked import formula
from ._maths import larger, log, power

# Axial factor of single-row deep-groove ball bearings with normal clearance, radial factor 0.56:
# relative axial load f0 Fa / C0, limit e, axial factor Y.  ISO 281 table 3 (from memory; the
# interpolation reproduces two worked examples of bearing catalogues).
RELATIVE_AXIAL_LOAD = (0.172, 0.345, 0.689, 1.03, 1.38, 2.07, 3.45, 5.17, 6.89)
AXIAL_LIMIT = (0.19, 0.22, 0.26, 0.28, 0.30, 0.34, 0.38, 0.42, 0.44)
AXIAL_FACTOR = (2.30, 1.99, 1.71, 1.55, 1.45, 1.31, 1.15, 1.04, 1.00)

# Life factor by reliability in per cent: ISO 281:2007 table 12 (from memory).
RELIABILITY_FACTOR: dict[int, float] = {
    90: 1.0,
    95: 0.64,
    96: 0.55,
    97: 0.47,
    98: 0.37,
    99: 0.25,
}


def axial_limit(relative_axial_load: float) -> float:
    """Axial over radial load up to which the axial load does not count.

    Parameters
    ----------
    relative_axial_load
        f0 Fa / C0 [-]

    Returns
    -------
    float
        the limit e [-]; the end values outside the table
    """
    return float(np.interp(relative_axial_load, RELATIVE_AXIAL_LOAD, AXIAL_LIMIT))


def load_factors(
    radial_load: float, axial_load: float, relative_axial_load: float
) -> tuple[float, float]:
    """Radial and axial factor of a deep-groove ball bearing.

    Parameters
    ----------
    radial_load, axial_load
        loads on the bearing [N]
    relative_axial_load
        f0 Fa / C0 [-]

    Returns
    -------
    tuple of float
        the factors X and Y [-]
    """
    if axial_load <= axial_limit(relative_axial_load) * radial_load:
        return 1.0, 0.0
    return 0.56, float(np.interp(relative_axial_load, RELATIVE_AXIAL_LOAD, AXIAL_FACTOR))


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
def static_safety(static_rating: float, static_load: float) -> float:
    """Static safety of a bearing.

    s_0 = C_0 / P_0

    Parameters
    ----------
    static_rating : C_0 [N]
        basic static load rating
    static_load : P_0 [N]
        equivalent static load

    Returns
    -------
    s_0 [-]

    Source
    ------
    ISO 76

    Examples
    --------
    >>> static_safety(4750.0, 1600.0)
    2.969
    """
    return static_rating / static_load


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
def rating_life_hours(revolutions: float, shaft_speed: float) -> float:
    """Rating life in hours.

    L_h = L_r / (3600 * n)

    Parameters
    ----------
    revolutions : L_r [rev]
        life in revolutions
    shaft_speed : n [rev/s]
        speed of the shaft

    Returns
    -------
    L_h [h]

    Source
    ------
    ISO 281

    Examples
    --------
    >>> rating_life_hours(1.0476e9, 10.833333)
    26861.5
    """
    return revolutions / (3600 * shaft_speed)


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
    life : L [h]
        life at 90 per cent
    life_factor : a_1 [-]
        factor for another reliability

    Returns
    -------
    L_n [h]

    Source
    ------
    ISO 281

    Examples
    --------
    >>> adjusted_life(26862.0, 0.64)
    17191.7
    """
    return life_factor * life
