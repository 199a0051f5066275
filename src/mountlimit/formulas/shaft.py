"""The shaft: static strength, fatigue, key and set screw."""

from __future__ import annotations

from typing import Any

from ..worked import formula
from ._maths import power

Number = Any

# Stress concentration in bending and torsion, and the radius at the bottom over the diameter.
# Factors: Shigley's Mechanical Engineering Design 9th ed. table 7-1 (from memory; an older
# solutions manual prints 2.2 for the keyway in bending), where 0.02 and 0.1 belong to them.  The
# radius of a groove is that of DIN 471, a tenth of the ring's thickness (from memory).
CONCENTRATION: dict[str, tuple[float, float, float]] = {
    "shoulder, sharp": (2.7, 2.2, 0.02),
    "shoulder, rounded": (1.7, 1.5, 0.1),
    "groove": (5.0, 3.0, 0.01),
    "keyway": (2.14, 3.0, 0.02),
    "plain": (1.0, 1.0, 1.0),
}


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
def torsion_notch_length(notch_length: float) -> float:
    """Notch length of steel in torsion.

    a_s = 0.6 * a

    Parameters
    ----------
    notch_length : a [m]
        length of the material in bending

    Returns
    -------
    a_s [m]

    Source
    ------
    Peterson's Stress Concentration Factors (from memory)

    Examples
    --------
    >>> float(torsion_notch_length(3.663e-4))
    2.198e-04
    """
    return 0.6 * notch_length


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
def notched_stress(stress: float, fatigue_notch_factor: float) -> float:
    """Stress at a notch as fatigue feels it.

    s_n = K_f * s

    Parameters
    ----------
    stress : s [Pa]
        stress without the notch
    fatigue_notch_factor : K_f [-]
        fatigue notch factor

    Returns
    -------
    s_n [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 6-30

    Examples
    --------
    >>> notched_stress(1e8, 1.9)
    1.900e+08
    """
    return fatigue_notch_factor * stress


@formula
def alternating_torque(torque: float, reverse: float) -> float:
    """Half the swing of a torque that comes and goes.

    T_a = T * (1 + r) / 2

    Parameters
    ----------
    torque : T [N*m]
        peak torque of a start
    reverse : r [-]
        reversed torque over it

    Returns
    -------
    T_a [N*m]

    Source
    ------
    half of largest less least torque

    Examples
    --------
    >>> alternating_torque(100.0, 0.25)
    62.5
    """
    return torque * (1 + reverse) / 2


@formula
def mean_torque(torque: float, reverse: float) -> float:
    """Middle of a torque that comes and goes.

    T_m = T * (1 - r) / 2

    Parameters
    ----------
    torque : T [N*m]
        peak torque of a start
    reverse : r [-]
        reversed torque over it

    Returns
    -------
    T_m [N*m]

    Source
    ------
    half of largest plus least torque

    Examples
    --------
    >>> mean_torque(100.0, 0.25)
    37.5
    """
    return torque * (1 - reverse) / 2


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


@formula
def side_force(load: Number, skew: Number) -> Number:
    """Force of a skewed chain along the shaft.

    S = 4.3 * eps * F

    Parameters
    ----------
    load : F [N]
        pull of the chain
    skew : eps [rad]
        angle between chain and sprocket

    Returns
    -------
    S [N]

    Source
    ------
    proposal, no published source: lumped simulation of a chain on its teeth, 13, 30 and 45 % of the pull at 2, 4 and 6 degrees (the pull's own component is eps F)
    """
    return 4.3 * skew * load
