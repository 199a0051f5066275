"""Endurance of metals and creep of plastics."""

from __future__ import annotations

from ..worked import formula
from ._maths import power, smaller

# Surface factor a * (Rm in MPa)**b: Shigley's Mechanical Engineering Design 9th ed. table 6-2.
SURFACE: dict[str, tuple[float, float]] = {
    "ground": (1.58, -0.085),
    "machined": (4.51, -0.265),
    "hot-rolled": (57.7, -0.718),
    "as-forged": (272.0, -0.995),
}
# Load factor: bending, axial, torsion alone (same book, eq. 6-26).
LOAD_FACTOR: dict[str, float] = {"bending": 1.0, "axial": 0.85, "torsion": 0.59}


@formula
def surface_factor(ultimate_strength: float, coefficient: float, finish_exponent: float) -> float:
    """Surface factor.

    k_a = a * (R_m / 1000000)**b

    Parameters
    ----------
    ultimate_strength : R_m [Pa]
        ultimate strength
    coefficient : a [-]
        coefficient of the finish
    finish_exponent : b [-]
        exponent of the finish

    Returns
    -------
    k_a [-]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 6-19

    Examples
    --------
    >>> float(surface_factor(1.226e9, 4.51, -0.265))
    0.6851
    """
    return coefficient * power(ultimate_strength / 1000000, finish_exponent)


@formula
def size_factor(diameter: float) -> float:
    """Size factor of a rotating round bar.

    k_b = (d / 0.00762)**(-0.107)

    Parameters
    ----------
    diameter : d [m]
        diameter, or equivalent diameter

    Returns
    -------
    k_b [-]

    Valid for
    ---------
    2.8 to 51 mm

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 6-20

    Examples
    --------
    >>> float(size_factor(0.022))
    0.8928
    """
    return power(diameter / 0.00762, -0.107)


@formula
def size_factor_thick(diameter: float) -> float:
    """Size factor of a thick rotating round bar.

    k_b = 1.51 * (d / 0.001)**(-0.157)

    Parameters
    ----------
    diameter : d [m]
        diameter, or equivalent diameter

    Returns
    -------
    k_b [-]

    Valid for
    ---------
    51 to 254 mm

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 6-20

    Examples
    --------
    >>> float(size_factor_thick(0.1))
    0.7328
    """
    return 1.51 * power(diameter / 0.001, -0.157)


@formula
def endurance_limit(
    ultimate_strength: float, surface_factor: float, size_factor: float, load_factor: float
) -> float:
    """Endurance limit of a steel part.

    S_e = k_a * k_b * k_c * min(0.5 * R_m, 700e6)

    Parameters
    ----------
    ultimate_strength : R_m [Pa]
        ultimate strength
    surface_factor : k_a [-]
        surface factor
    size_factor : k_b [-]
        size factor
    load_factor : k_c [-]
        load factor

    Returns
    -------
    S_e [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 6-8 and 6-18

    Examples
    --------
    >>> float(endurance_limit(1.226e9, 0.685, 0.893, 1.0))
    3.750e+08
    """
    return (
        surface_factor * size_factor * load_factor * smaller(0.5 * ultimate_strength, 700000000.0)
    )


@formula
def goodman_uniaxial(
    alternating: float, mean: float, endurance_limit: float, ultimate_strength: float
) -> float:
    """Safety against fatigue on the Goodman line.

    n = 1 / (s_a / S_e + s_m / R_m)

    Parameters
    ----------
    alternating : s_a [Pa]
        alternating stress
    mean : s_m [Pa]
        mean stress
    endurance_limit : S_e [Pa]
        endurance limit of the part
    ultimate_strength : R_m [Pa]
        ultimate strength

    Returns
    -------
    n [-]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 6-46

    Examples
    --------
    >>> goodman_uniaxial(1.72e8, 1.784e8, 2.76e8, 5.51e8)
    1.056
    """
    return 1 / (alternating / endurance_limit + mean / ultimate_strength)


@formula
def reversed_stress(endurance_limit: float, safety: float) -> float:
    """Fully reversed stress that is as safe as the stresses acting.

    s_e = S_e / n

    Parameters
    ----------
    endurance_limit : S_e [Pa]
        endurance limit of the part
    safety : n [-]
        safety of the stresses acting

    Returns
    -------
    s_e [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 6-46 without mean stress

    Examples
    --------
    >>> reversed_stress(2e8, 1.6)
    1.250e+08
    """
    return endurance_limit / safety


@formula
def creep_modulus(
    reference_modulus: float, creep_exponent: float, duration: float, reference_duration: float
) -> float:
    """Creep modulus after a time under load, from a known one.

    E_c = E_r * (t / t_r)**(-n)

    Parameters
    ----------
    reference_modulus : E_r [Pa]
        creep modulus after the reference duration
    creep_exponent : n [-]
        exponent of the power law
    duration : t [s]
        time under load
    reference_duration : t_r [s]
        duration of the known modulus

    Returns
    -------
    E_c [Pa]

    Valid for
    ---------
    strain up to 0.5 per cent

    Source
    ------
    power law through the creep moduli of ISO 899-1 at 1 h and 1000 h (from memory)

    Examples
    --------
    >>> float(creep_modulus(2.5e9, 0.0947, 3.6e6, 3600.0))
    1.300e+09
    """
    return reference_modulus * power(duration / reference_duration, -creep_exponent)


@formula
def creep_strain(creep_stress: float, creep_modulus: float) -> float:
    """Strain under a stress after a time.

    eps_c = sigma / E_c

    Parameters
    ----------
    creep_stress : sigma [Pa]
        stress
    creep_modulus : E_c [Pa]
        creep modulus

    Returns
    -------
    eps_c [-]

    Source
    ------
    Crawford, Plastics Engineering 3rd ed., chapter 2

    Examples
    --------
    >>> creep_strain(4.8e6, 1.3e9)
    0.003692
    """
    return creep_stress / creep_modulus
