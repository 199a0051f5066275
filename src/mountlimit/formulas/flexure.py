"""Deflection, slope and twist of beams."""

from __future__ import annotations

from ..worked import formula
from .spans import overhung_deflection, overhung_slope
from .warping import twist_held_free, twist_held_held, warping_decay

__all__ = [
    "end_deflection_force",
    "end_deflection_moment",
    "end_slope_force",
    "end_slope_moment",
    "overhung_deflection",
    "overhung_slope",
    "shear_modulus",
    "twist_free",
    "twist_held_free",
    "twist_held_held",
    "warping_decay",
]


@formula
def end_deflection_force(
    load: float, length: float, elastic_modulus: float, second_moment: float
) -> float:
    """End deflection of a cantilever under an end force.

    w = F * L**3 / (3 * E * I)

    Parameters
    ----------
    load : F [N]
        load
    length : L [m]
        length
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    w [m]

    Valid for
    ---------
    slender beam, small slopes

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table A-9 case 1

    Examples
    --------
    >>> end_deflection_force(8.0, 0.05, 2.85e9, 2.0833333e-10)
    5.614e-04
    """
    return load * length**3 / (3 * elastic_modulus * second_moment)


@formula
def end_slope_force(
    load: float, length: float, elastic_modulus: float, second_moment: float
) -> float:
    """End slope of a cantilever under an end force.

    theta = F * L**2 / (2 * E * I)

    Parameters
    ----------
    load : F [N]
        load
    length : L [m]
        length
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    theta [rad]

    Valid for
    ---------
    slender beam, small slopes

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table A-9 case 1

    Examples
    --------
    >>> end_slope_force(8.0, 0.05, 2.85e9, 2.0833333e-10)
    0.01684
    """
    return load * length**2 / (2 * elastic_modulus * second_moment)


@formula
def end_deflection_moment(
    moment: float, length: float, elastic_modulus: float, second_moment: float
) -> float:
    """End deflection of a cantilever under an end moment.

    w = M * L**2 / (2 * E * I)

    Parameters
    ----------
    moment : M [N*m]
        bending moment at the section
    length : L [m]
        length
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    w [m]

    Valid for
    ---------
    slender beam, small slopes

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table A-9 case 4

    Examples
    --------
    >>> end_deflection_moment(0.4, 0.05, 2.85e9, 2.0833333e-10)
    8.421e-04
    """
    return moment * length**2 / (2 * elastic_modulus * second_moment)


@formula
def end_slope_moment(
    moment: float, length: float, elastic_modulus: float, second_moment: float
) -> float:
    """End slope of a cantilever under an end moment.

    theta = M * L / (E * I)

    Parameters
    ----------
    moment : M [N*m]
        bending moment at the section
    length : L [m]
        length
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    theta [rad]

    Valid for
    ---------
    slender beam, small slopes

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table A-9 case 4

    Examples
    --------
    >>> end_slope_moment(0.4, 0.05, 2.85e9, 2.0833333e-10)
    0.03368
    """
    return moment * length / (elastic_modulus * second_moment)


@formula
def shear_modulus(elastic_modulus: float, poissons_ratio: float) -> float:
    """Shear modulus of an isotropic material.

    G = E / (2 * (1 + nu))

    Parameters
    ----------
    elastic_modulus : E [Pa]
        elastic modulus
    poissons_ratio : nu [-]
        Poisson's ratio

    Returns
    -------
    G [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 3-21

    Examples
    --------
    >>> shear_modulus(2.07e11, 0.292)
    8.011e+10
    """
    return elastic_modulus / (2 * (1 + poissons_ratio))


@formula
def twist_free(
    torque: float, length: float, shear_modulus: float, torsion_constant: float
) -> float:
    """Twist of a bar free to warp.

    phi = T * L / (G * J)

    Parameters
    ----------
    torque : T [N*m]
        torque
    length : L [m]
        length
    shear_modulus : G [Pa]
        shear modulus
    torsion_constant : J [m^4]
        Saint-Venant torsion constant

    Returns
    -------
    phi [rad]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 3-12

    Examples
    --------
    >>> twist_free(1000.0, 1.0, 7.875e10, 1.13333e-7)
    0.1120
    """
    return torque * length / (shear_modulus * torsion_constant)
