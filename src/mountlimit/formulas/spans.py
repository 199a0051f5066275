"""Beams on two supports: the overhung shaft and the frame member."""

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
def fixed_beam_midspan_deflection(
    load: float, span: float, elastic_modulus: float, second_moment: float
) -> float:
    """Mid-span deflection of a beam fixed at both ends under a mid-span force.

    w = F * L**3 / (192 * E * I)

    Parameters
    ----------
    load : F [N]
        load
    span : L [m]
        free length between the sprockets
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    w [m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table A-9 case 14

    Examples
    --------
    >>> fixed_beam_midspan_deflection(1000.0, 0.5, 2e11, 1e-8)
    3.255e-04
    """
    return load * span**3 / (192 * elastic_modulus * second_moment)


@formula
def fixed_beam_midspan_rotation(
    moment: float, span: float, elastic_modulus: float, second_moment: float
) -> float:
    """Mid-span rotation of a beam fixed at both ends under a mid-span moment.

    theta = M * L / (16 * E * I)

    Parameters
    ----------
    moment : M [N*m]
        bending moment at the section
    span : L [m]
        free length between the sprockets
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    theta [rad]

    Source
    ------
    Roark's Formulas for Stress and Strain, beam tables (from memory)

    Examples
    --------
    >>> fixed_beam_midspan_rotation(50.0, 0.5, 2e11, 1e-8)
    7.813e-04
    """
    return moment * span / (16 * elastic_modulus * second_moment)


@formula
def held_tube_twist(
    torque: float, span: float, shear_modulus: float, torsion_constant: float
) -> float:
    """Mid-span twist of a tube held against twist at both ends under a mid-span torque.

    phi = T * L / (4 * G * J)

    Parameters
    ----------
    torque : T [N*m]
        torque
    span : L [m]
        free length between the sprockets
    shear_modulus : G [Pa]
        shear modulus
    torsion_constant : J [m^4]
        Saint-Venant torsion constant

    Returns
    -------
    phi [rad]

    Source
    ------
    statics: half the torque in each half of the span

    Examples
    --------
    >>> held_tube_twist(50.0, 0.5, 7.9e10, 2e-8)
    0.003956
    """
    return torque * span / (4 * shear_modulus * torsion_constant)
