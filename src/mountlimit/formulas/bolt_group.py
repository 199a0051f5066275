"""Bolt groups: the share of each bolt and what a bolt can bear."""

from __future__ import annotations

from ..worked import formula


@formula
def direct_shear(load: float, count: float) -> float:
    """Direct shear of one bolt of a group.

    F_1 = F / n

    Parameters
    ----------
    load : F [N]
        load
    count : n [-]
        number of bolts

    Returns
    -------
    F_1 [N]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 8-12

    Examples
    --------
    >>> direct_shear(16000.0, 4)
    4000.0
    """
    return load / count


@formula
def torsional_shear(moment: float, radius: float, polar_sum: float) -> float:
    """Torsional shear of one bolt of a group.

    F_2 = M * r / S

    Parameters
    ----------
    moment : M [N*m]
        moment on the group
    radius : r [m]
        distance from the centre of the group
    polar_sum : S [m^2]
        sum of the squared distances of all bolts

    Returns
    -------
    F_2 [N]

    Valid for
    ---------
    equal bolts

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 8-57

    Examples
    --------
    >>> torsional_shear(6800.0, 0.09605, 0.0369)
    17700.3
    """
    return moment * radius / polar_sum


@formula
def moment_tension(moment: float, lever: float, lever_square_sum: float) -> float:
    """Tension of one bolt from a tilting moment.

    F_t = M * y / S

    Parameters
    ----------
    moment : M [N*m]
        moment on the group
    lever : y [m]
        distance from the tilting edge
    lever_square_sum : S [m^2]
        sum of the squared distances from the tilting edge

    Returns
    -------
    F_t [N]

    Valid for
    ---------
    stiff bracket that tilts about its edge

    Source
    ------
    Bhandari, Design of Machine Elements, example 7.5

    Examples
    --------
    >>> moment_tension(2500.0, 0.15, 0.04625)
    8108.1
    """
    return moment * lever / lever_square_sum


@formula
def tension_resistance(ultimate_strength: float, stress_area: float, gamma: float) -> float:
    """Tension resistance of a bolt.

    R_t = 0.9 * R_m * A_s / g

    Parameters
    ----------
    ultimate_strength : R_m [Pa]
        ultimate strength
    stress_area : A_s [m^2]
        tensile stress area
    gamma : g [-]
        partial factor

    Returns
    -------
    R_t [N]

    Source
    ------
    EN 1993-1-8 table 3.4

    Examples
    --------
    >>> tension_resistance(8e8, 8.43e-5, 1.25)
    48556.8
    """
    return 0.9 * ultimate_strength * stress_area / gamma


@formula
def shear_resistance(
    shear_factor: float, ultimate_strength: float, area: float, gamma: float
) -> float:
    """Shear resistance of a bolt.

    R_v = a_v * R_m * A / g

    Parameters
    ----------
    shear_factor : a_v [-]
        shear factor: 0.6 or 0.5 by class
    ultimate_strength : R_m [Pa]
        ultimate strength
    area : A [m^2]
        area
    gamma : g [-]
        partial factor

    Returns
    -------
    R_v [N]

    Source
    ------
    EN 1993-1-8 table 3.4

    Examples
    --------
    >>> shear_resistance(0.6, 8e8, 0.000157, 1.25)
    60288.0
    """
    return shear_factor * ultimate_strength * area / gamma


@formula
def shear_tension_interaction(
    shear: float, shear_resistance: float, tension: float, tension_resistance: float
) -> float:
    """Shear and tension together: 1 is the limit.

    u = F_v / R_v + F_t / (1.4 * R_t)

    Parameters
    ----------
    shear : F_v [N]
        shear force on the bolt
    shear_resistance : R_v [N]
        shear resistance of the bolt
    tension : F_t [N]
        tension in the bolt
    tension_resistance : R_t [N]
        tension resistance of the bolt

    Returns
    -------
    u [-]

    Valid for
    ---------
    the tension alone must also be within its resistance

    Source
    ------
    EN 1993-1-8 table 3.4

    Examples
    --------
    >>> shear_tension_interaction(20000.0, 60288.0, 30000.0, 90432.0)
    0.5687
    """
    return shear / shear_resistance + tension / (1.4 * tension_resistance)
