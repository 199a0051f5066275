"""The overhung shaft on its two bearings."""

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
