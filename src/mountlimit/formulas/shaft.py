"""The shaft: static strength, fatigue, key and set screw."""

from __future__ import annotations

from ..worked import formula
from ._maths import pi, power, sqrt

# Stress concentration in bending and torsion: Shigley's Mechanical Engineering Design 9th ed.
# table 7-1 (from memory; an older solutions manual prints 2.2 for the keyseat in bending).
CONCENTRATION: dict[str, tuple[float, float]] = {
    "end-milled keyseat": (2.14, 3.0),
    "sharp shoulder": (2.7, 2.2),
    "rounded shoulder": (1.7, 1.5),
    "retaining ring groove": (5.0, 3.0),
    "plain": (1.0, 1.0),
}


@formula
def equivalent_static_stress(moment: float, torque: float, diameter: float) -> float:
    """Equivalent static stress of a round shaft in bending and torsion.

    sigma_v = 16 / (pi * d**3) * sqrt(4 * M**2 + 3 * T**2)

    Parameters
    ----------
    moment : M [N*m]
        bending moment
    torque : T [N*m]
        torque
    diameter : d [m]
        diameter of the shaft

    Returns
    -------
    sigma_v [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 5-5, distortion energy

    Examples
    --------
    >>> float(equivalent_static_stress(30.0, 25.0, 0.015))
    1.117e+08
    """
    return 16 / (pi * diameter**3) * sqrt(4 * moment**2 + 3 * torque**2)


@formula
def notch_sensitivity(notch_length: float, notch_radius: float) -> float:
    """Notch sensitivity.

    q = 1 / (1 + a / r)

    Parameters
    ----------
    notch_length : a [m]
        length of the material
    notch_radius : r [m]
        radius of the notch

    Returns
    -------
    q [-]

    Source
    ------
    Peterson's Stress Concentration Factors (from memory)

    Examples
    --------
    >>> notch_sensitivity(0.0001, 0.0004)
    0.8000
    """
    return 1 / (1 + notch_length / notch_radius)


@formula
def notch_length(ultimate_strength: float) -> float:
    """Notch length of steel.

    a = 0.0000254 * (2070e6 / R_m)**1.8

    Parameters
    ----------
    ultimate_strength : R_m [Pa]
        ultimate strength

    Returns
    -------
    a [m]

    Source
    ------
    Peterson's Stress Concentration Factors (from memory)

    Examples
    --------
    >>> float(notch_length(4.7e8))
    3.663e-04
    """
    return 2.54e-05 * power(2070000000.0 / ultimate_strength, 1.8)


@formula
def fatigue_notch_factor(notch_sensitivity: float, stress_concentration: float) -> float:
    """Fatigue notch factor.

    K_f = 1 + q * (K_t - 1)

    Parameters
    ----------
    notch_sensitivity : q [-]
        notch sensitivity
    stress_concentration : K_t [-]
        stress concentration factor

    Returns
    -------
    K_f [-]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 6-32

    Examples
    --------
    >>> fatigue_notch_factor(0.75, 2.2)
    1.900
    """
    return 1 + notch_sensitivity * (stress_concentration - 1)


@formula
def de_goodman_safety(
    diameter: float,
    endurance_limit: float,
    ultimate_strength: float,
    bending_notch: float,
    torsion_notch: float,
    alternating_moment: float,
    alternating_torque: float,
    mean_moment: float,
    mean_torque: float,
) -> float:
    """Safety of a shaft against fatigue, distortion energy with the Goodman line.

    n = pi * d**3 / 16 / (sqrt(4 * (K_f * M_a)**2 + 3 * (K_fs * T_a)**2) / S_e + sqrt(4 * (K_f *
    M_m)**2 + 3 * (K_fs * T_m)**2) / R_m)

    Parameters
    ----------
    diameter : d [m]
        diameter of the shaft
    endurance_limit : S_e [Pa]
        endurance limit of the part
    ultimate_strength : R_m [Pa]
        ultimate strength
    bending_notch : K_f [-]
        fatigue notch factor in bending
    torsion_notch : K_fs [-]
        fatigue notch factor in torsion
    alternating_moment : M_a [N*m]
        alternating bending moment
    alternating_torque : T_a [N*m]
        alternating torque
    mean_moment : M_m [N*m]
        mean bending moment
    mean_torque : T_m [N*m]
        mean torque

    Returns
    -------
    n [-]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 7-7

    Examples
    --------
    >>> float(de_goodman_safety(0.0333, 2e8, 5.4e8, 1.0, 1.0, 200.0, 65.0, 400.0, 135.0))
    2.002
    """
    return (
        pi
        * diameter**3
        / 16
        / (
            sqrt(
                4 * (bending_notch * alternating_moment) ** 2
                + 3 * (torsion_notch * alternating_torque) ** 2
            )
            / endurance_limit
            + sqrt(4 * (bending_notch * mean_moment) ** 2 + 3 * (torsion_notch * mean_torque) ** 2)
            / ultimate_strength
        )
    )


@formula
def key_shear(torque: float, shaft_diameter: float, key_width: float, key_length: float) -> float:
    """Shear stress of a key.

    tau = 2 * T / (d * b * l)

    Parameters
    ----------
    torque : T [N*m]
        torque
    shaft_diameter : d [m]
        diameter of the shaft
    key_width : b [m]
        width of the key
    key_length : l [m]
        bearing length of the key

    Returns
    -------
    tau [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 7-7

    Examples
    --------
    >>> key_shear(40.0, 0.02, 0.006, 0.019)
    3.509e+07
    """
    return 2 * torque / (shaft_diameter * key_width * key_length)


@formula
def key_crushing(
    torque: float, shaft_diameter: float, key_height: float, key_length: float
) -> float:
    """Bearing stress on half the height of a key.

    p = 4 * T / (d * h * l)

    Parameters
    ----------
    torque : T [N*m]
        torque
    shaft_diameter : d [m]
        diameter of the shaft
    key_height : h [m]
        height of the key
    key_length : l [m]
        bearing length of the key

    Returns
    -------
    p [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 7-7

    Examples
    --------
    >>> key_crushing(800.0, 0.04, 0.012, 0.0606)
    1.100e+08
    """
    return 4 * torque / (shaft_diameter * key_height * key_length)


@formula
def key_pressure(
    torque: float, shaft_diameter: float, bearing_height: float, key_length: float
) -> float:
    """Pressure of a key on the hub.

    p = 2 * T / (d * h_b * l)

    Parameters
    ----------
    torque : T [N*m]
        torque
    shaft_diameter : d [m]
        diameter of the shaft
    bearing_height : h_b [m]
        height of key in contact with the hub
    key_length : l [m]
        bearing length of the key

    Returns
    -------
    p [Pa]

    Source
    ------
    DIN 6892, simple form (from memory)

    Examples
    --------
    >>> key_pressure(40.0, 0.02, 0.0025, 0.019)
    8.421e+07
    """
    return 2 * torque / (shaft_diameter * bearing_height * key_length)


@formula
def set_screw_torque(holding_force: float, shaft_diameter: float) -> float:
    """Torque held by a set screw.

    T = F * d / 2

    Parameters
    ----------
    holding_force : F [N]
        holding force of the screw at the shaft's surface
    shaft_diameter : d [m]
        diameter of the shaft

    Returns
    -------
    T [N*m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 7-7

    Examples
    --------
    >>> set_screw_torque(4448.2, 0.01905)
    42.37
    """
    return holding_force * shaft_diameter / 2
