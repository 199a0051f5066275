"""Equivalent and principal stresses."""

from __future__ import annotations

from ..worked import formula
from ._maths import sqrt


@formula
def von_mises(normal: float, shear: float) -> float:
    """Equivalent stress of one normal and one shear stress.

    sigma_v = sqrt(s**2 + 3 * t**2)

    Parameters
    ----------
    normal : s [Pa]
        normal stress
    shear : t [Pa]
        shear stress

    Returns
    -------
    sigma_v [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 5-15

    Examples
    --------
    >>> float(von_mises(1e8, 7.5e7))
    1.639e+08
    """
    return sqrt(normal**2 + 3 * shear**2)


@formula
def pressure_sensitive(normal: float, shear: float, strength_ratio: float) -> float:
    """Equivalent stress of a plastic, one normal and one shear stress, tension scale.

    sigma_e = ((S - 1) * s + sqrt(((S - 1) * s)**2 + 12 * S * (s**2 / 3 + t**2))) / (2 * S)

    Parameters
    ----------
    normal : s [Pa]
        normal stress
    shear : t [Pa]
        shear stress
    strength_ratio : S [-]
        compressive over tensile yield strength

    Returns
    -------
    sigma_e [Pa]

    Valid for
    ---------
    ratio 1 gives von Mises

    Source
    ------
    parabolic form of Raghava, Caddell & Yeh, Journal of Materials Science 8 (1973) (from memory)

    Examples
    --------
    >>> float(pressure_sensitive(1e7, 5e6, 1.2))
    1.294e+07
    """
    return (
        (strength_ratio - 1) * normal
        + sqrt(
            ((strength_ratio - 1) * normal) ** 2 + 12 * strength_ratio * (normal**2 / 3 + shear**2)
        )
    ) / (2 * strength_ratio)


@formula
def shear_yield(yield_strength: float) -> float:
    """Shear yield strength of a ductile metal.

    tau_y = R_e / sqrt(3)

    Parameters
    ----------
    yield_strength : R_e [Pa]
        yield or 0.2 % proof strength

    Returns
    -------
    tau_y [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 5-5 (distortion energy)

    Examples
    --------
    >>> float(shear_yield(2.35e8))
    1.357e+08
    """
    return yield_strength / sqrt(3)


@formula
def principal_max(stress_x: float, stress_y: float, shear_xy: float) -> float:
    """Larger principal stress of plane stress.

    sigma_1 = (s_x + s_y) / 2 + sqrt(((s_x - s_y) / 2)**2 + t_xy**2)

    Parameters
    ----------
    stress_x : s_x [Pa]
        normal stress along x
    stress_y : s_y [Pa]
        normal stress along y
    shear_xy : t_xy [Pa]
        shear stress in the plane

    Returns
    -------
    sigma_1 [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 3-13

    Examples
    --------
    >>> float(principal_max(1e8, 0.0, -7.5e7))
    1.401e+08
    """
    return (stress_x + stress_y) / 2 + sqrt(((stress_x - stress_y) / 2) ** 2 + shear_xy**2)


@formula
def crushing_first(principal: float, strength_ratio: float) -> float:
    """Largest principal stress of a material that crushes before it tears, tension scale.

    sigma_t = s / S

    Parameters
    ----------
    principal : s [Pa]
        largest principal stress, tension and compression alike in size
    strength_ratio : S [-]
        compressive over tensile strength

    Returns
    -------
    sigma_t [Pa]

    Valid for
    ---------
    ratio below 1 (wood along the grain)

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 5-8 (maximum normal stress)

    Examples
    --------
    >>> crushing_first(1e7, 0.7)
    14285714.3
    """
    return principal / strength_ratio


@formula
def plane_von_mises(stress_x: float, stress_y: float, shear_xy: float) -> float:
    """Equivalent stress of plane stress, by distortion energy.

    sigma_v = sqrt(s_x**2 - s_x * s_y + s_y**2 + 3 * t_xy**2)

    Parameters
    ----------
    stress_x : s_x [Pa]
        normal stress along x
    stress_y : s_y [Pa]
        normal stress along y
    shear_xy : t_xy [Pa]
        shear stress in the plane

    Returns
    -------
    sigma_v [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 5-15
    """
    return sqrt(stress_x**2 - stress_x * stress_y + stress_y**2 + 3 * shear_xy**2)


@formula
def plane_pressure_sensitive(
    stress_x: float, stress_y: float, shear_xy: float, strength_ratio: float
) -> float:
    """Equivalent stress of plane stress in a plastic, tension scale.

    sigma_e = ((S - 1) * (s_x + s_y) + sqrt(((S - 1) * (s_x + s_y))**2 + 4 * S * (s_x**2 - s_x * s_y + s_y**2 + 3 * t_xy**2))) / (2 * S)

    Parameters
    ----------
    stress_x : s_x [Pa]
        normal stress along x
    stress_y : s_y [Pa]
        normal stress along y
    shear_xy : t_xy [Pa]
        shear stress in the plane
    strength_ratio : S [-]
        compressive over tensile yield strength

    Returns
    -------
    sigma_e [Pa]

    Source
    ------
    parabolic form of Raghava, Caddell & Yeh, Journal of Materials Science 8 (1973) (from memory)
    """
    pressure = (strength_ratio - 1) * (stress_x + stress_y)
    square = stress_x**2 - stress_x * stress_y + stress_y**2 + 3 * shear_xy**2
    return (pressure + sqrt(pressure**2 + 4 * strength_ratio * square)) / (2 * strength_ratio)


@formula
def principal_size(stress_x: float, stress_y: float, shear_xy: float) -> float:
    """Larger of the principal stresses of plane stress in size, tension or compression.

    sigma = abs((s_x + s_y) / 2) + sqrt(((s_x - s_y) / 2)**2 + t_xy**2)

    Parameters
    ----------
    stress_x : s_x [Pa]
        normal stress along x
    stress_y : s_y [Pa]
        normal stress along y
    shear_xy : t_xy [Pa]
        shear stress in the plane

    Returns
    -------
    sigma [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 3-13
    """
    return abs((stress_x + stress_y) / 2) + sqrt(((stress_x - stress_y) / 2) ** 2 + shear_xy**2)
