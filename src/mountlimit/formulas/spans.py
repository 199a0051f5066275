"""The shaft that reaches out of its two bearings: what a load outside them does to it."""

from __future__ import annotations

from ..worked import formula


@formula
def overhung_deflection(
    load: float, overhang: float, bearing_span: float, elastic_modulus: float, second_moment: float
) -> float:
    """Deflection of an overhung shaft under its end load.

    w = F * a**2 * (l + a) / (3 * E * I)

    Parameters
    ----------
    load : F [N]
        load
    overhang : a [m]
        distance from the front bearing to the load, outside the bearings
    bearing_span : l [m]
        distance between the bearings
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    w [m]

    Source
    ------
    AISC Manual table 3-23, beam overhanging one support (from memory)

    Examples
    --------
    >>> overhung_deflection(1000.0, 0.03, 0.05, 2.07e11, 1.01788e-9)
    1.139e-04
    """
    return load * overhang**2 * (bearing_span + overhang) / (3 * elastic_modulus * second_moment)


@formula
def overhung_slope(
    load: float, overhang: float, bearing_span: float, elastic_modulus: float, second_moment: float
) -> float:
    """Slope of an overhung shaft under its end load.

    theta = F * a * (2 * l + 3 * a) / (6 * E * I)

    Parameters
    ----------
    load : F [N]
        load
    overhang : a [m]
        distance from the front bearing to the load, outside the bearings
    bearing_span : l [m]
        distance between the bearings
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    theta [rad]

    Source
    ------
    AISC Manual table 3-23, beam overhanging one support (from memory)

    Examples
    --------
    >>> overhung_slope(1000.0, 0.03, 0.05, 2.07e11, 1.01788e-9)
    0.004509
    """
    return (
        load * overhang * (2 * bearing_span + 3 * overhang) / (6 * elastic_modulus * second_moment)
    )


@formula
def overhung_deflection_beside(
    load: float,
    nearer: float,
    farther: float,
    bearing_span: float,
    elastic_modulus: float,
    second_moment: float,
) -> float:
    """Deflection of an overhung shaft at one place under a load at another, both outside the bearings.

    w = F * a**2 * (3 * b - a) / (6 * E * I) + F * a * b * l / (3 * E * I)

    Parameters
    ----------
    load : F [N]
        load, at either of the two places
    nearer : a [m]
        front bearing to the nearer of the two places
    farther : b [m]
        front bearing to the farther of the two places
    bearing_span : l [m]
        distance between the bearings
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    w [m]

    Source
    ------
    cantilever with a load within its length (AISC Manual table 3-23, from memory) on the slope of the beam
    between its supports; the same either way round (Maxwell)
    """
    bent = load * nearer**2 * (3 * farther - nearer) / (6 * elastic_modulus * second_moment)
    return bent + load * nearer * farther * bearing_span / (3 * elastic_modulus * second_moment)


@formula
def overhung_slope_inside(
    load: float,
    place: float,
    farther: float,
    bearing_span: float,
    elastic_modulus: float,
    second_moment: float,
) -> float:
    """Slope of an overhung shaft at a place between its front bearing and a load.

    theta = F * a * (2 * b - a) / (2 * E * I) + F * b * l / (3 * E * I)

    Parameters
    ----------
    load : F [N]
        load outside the bearings
    place : a [m]
        front bearing to the place
    farther : b [m]
        front bearing to the load, beyond the place
    bearing_span : l [m]
        distance between the bearings
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    theta [rad]

    Source
    ------
    cantilever with a load beyond the place (AISC Manual table 3-23, from memory) on the slope of the beam
    between its supports
    """
    bent = load * place * (2 * farther - place) / (2 * elastic_modulus * second_moment)
    return bent + load * farther * bearing_span / (3 * elastic_modulus * second_moment)
