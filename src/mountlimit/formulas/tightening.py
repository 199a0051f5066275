"""Tightening of bolts: torque, preload and what is left of it."""

from __future__ import annotations

from ..worked import formula
from ._maths import cos, larger, pi, power, sqrt

# Nut factor by condition of the bolt: Shigley's Mechanical Engineering Design 9th ed. table 8-15.
TORQUE_COEFFICIENT: dict[str, float] = {
    "black": 0.30,
    "zinc": 0.20,
    "lubricated": 0.18,
    "cadmium": 0.16,
    "anti-seize": 0.12,
    "antifriction nut": 0.09,
    "unknown": 0.20,
}


@formula
def preload_from_torque(torque: float, torque_coefficient: float, diameter: float) -> float:
    """Preload from tightening torque and nut factor.

    F_V = T / (K * d)

    Parameters
    ----------
    torque : T [N*m]
        torque
    torque_coefficient : K [-]
        nut factor
    diameter : d [m]
        nominal diameter of the bolt

    Returns
    -------
    F_V [N]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 8-27

    Examples
    --------
    >>> preload_from_torque(25.0, 0.2, 0.008)
    15625.0
    """
    return torque / (torque_coefficient * diameter)


@formula
def torque_from_preload(preload: float, torque_coefficient: float, diameter: float) -> float:
    """Tightening torque from preload and nut factor.

    T = K * F_V * d

    Parameters
    ----------
    preload : F_V [N]
        clamping force of the bolt
    torque_coefficient : K [-]
        nut factor
    diameter : d [m]
        nominal diameter of the bolt

    Returns
    -------
    T [N*m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 8-27

    Examples
    --------
    >>> torque_from_preload(15600.0, 0.2, 0.008)
    24.96
    """
    return torque_coefficient * preload * diameter


@formula
def tightening_torque(
    preload: float,
    pitch: float,
    thread_pitch_diameter: float,
    thread_friction: float,
    head_diameter: float,
    head_friction: float,
) -> float:
    """Tightening torque from preload and friction.

    T = F_V * (0.16 * P + 0.58 * d_2 * mu_t + D_h / 2 * mu_h)

    Parameters
    ----------
    preload : F_V [N]
        clamping force of the bolt
    pitch : P [m]
        thread pitch
    thread_pitch_diameter : d_2 [m]
        pitch diameter of the thread
    thread_friction : mu_t [-]
        friction in the thread
    head_diameter : D_h [m]
        mean diameter of the ring under the head
    head_friction : mu_h [-]
        friction under the head

    Returns
    -------
    T [N*m]

    Valid for
    ---------
    60-degree thread

    Source
    ------
    VDI 2230 part 1 (from memory)

    Examples
    --------
    >>> tightening_torque(18600.0, 0.00125, 0.007188, 0.12, 0.0105, 0.12)
    24.74
    """
    return preload * (
        0.16 * pitch
        + 0.58 * thread_pitch_diameter * thread_friction
        + head_diameter / 2 * head_friction
    )


@formula
def preload_from_friction(
    torque: float,
    pitch: float,
    thread_pitch_diameter: float,
    thread_friction: float,
    head_diameter: float,
    head_friction: float,
) -> float:
    """Preload from tightening torque and friction.

    F_V = T / (0.16 * P + 0.58 * d_2 * mu_t + D_h / 2 * mu_h)

    Parameters
    ----------
    torque : T [N*m]
        torque
    pitch : P [m]
        thread pitch
    thread_pitch_diameter : d_2 [m]
        pitch diameter of the thread
    thread_friction : mu_t [-]
        friction in the thread
    head_diameter : D_h [m]
        mean diameter of the ring under the head
    head_friction : mu_h [-]
        friction under the head

    Returns
    -------
    F_V [N]

    Valid for
    ---------
    60-degree thread

    Source
    ------
    VDI 2230 part 1 (from memory)

    Examples
    --------
    >>> preload_from_friction(25.0, 0.00125, 0.007188, 0.12, 0.0105, 0.12)
    18793.0
    """
    return torque / (
        0.16 * pitch
        + 0.58 * thread_pitch_diameter * thread_friction
        + head_diameter / 2 * head_friction
    )


@formula
def assembly_preload(
    yield_strength: float,
    share: float,
    stress_diameter: float,
    thread_pitch_diameter: float,
    pitch: float,
    thread_friction: float,
) -> float:
    """Greatest assembly preload.

    F_M = pi / 4 * d_0**2 * u * R_e / sqrt(1 + 3 * (1.5 * d_2 / d_0 * (P / (pi * d_2) + 1.155 *
    mu_t))**2)

    Parameters
    ----------
    yield_strength : R_e [Pa]
        yield or 0.2 % proof strength
    share : u [-]
        share of the yield strength to be used
    stress_diameter : d_0 [m]
        diameter of the stress area
    thread_pitch_diameter : d_2 [m]
        pitch diameter of the thread
    pitch : P [m]
        thread pitch
    thread_friction : mu_t [-]
        friction in the thread

    Returns
    -------
    F_M [N]

    Valid for
    ---------
    60-degree thread; the shank is not thinner than the thread

    Source
    ------
    VDI 2230 part 1 (from memory)

    Examples
    --------
    >>> float(assembly_preload(6.4e8, 0.9, 0.0068273, 0.0071881, 0.00125, 0.12))
    18627.6
    """
    return (
        pi
        / 4
        * stress_diameter**2
        * share
        * yield_strength
        / sqrt(
            1
            + 3
            * (
                1.5
                * thread_pitch_diameter
                / stress_diameter
                * (pitch / (pi * thread_pitch_diameter) + 1.155 * thread_friction)
            )
            ** 2
        )
    )


@formula
def power_screw_torque(
    preload: float,
    thread_pitch_diameter: float,
    lead: float,
    thread_friction: float,
    half_angle: float,
    head_friction: float,
    head_diameter: float,
) -> float:
    """Tightening torque by the screw equation with collar friction.

    T = F_V * d_2 / 2 * (l + pi * mu_t * d_2 / cos(alpha)) / (pi * d_2 - mu_t * l / cos(alpha)) +
    F_V * mu_h * D_h / 2

    Parameters
    ----------
    preload : F_V [N]
        clamping force of the bolt
    thread_pitch_diameter : d_2 [m]
        pitch diameter of the thread
    lead : l [m]
        travel per turn
    thread_friction : mu_t [-]
        friction in the thread
    half_angle : alpha [rad]
        half angle of the thread
    head_friction : mu_h [-]
        friction under the head
    head_diameter : D_h [m]
        mean diameter of the ring under the head

    Returns
    -------
    T [N*m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 8-8

    Examples
    --------
    >>> float(power_screw_torque(111206.0, 0.01802, 0.0015875, 0.15, 0.5235988, 0.15, 0.0238125))
    401.2
    """
    return (
        preload
        * thread_pitch_diameter
        / 2
        * (lead + pi * thread_friction * thread_pitch_diameter / cos(half_angle))
        / (pi * thread_pitch_diameter - thread_friction * lead / cos(half_angle))
        + preload * head_friction * head_diameter / 2
    )


@formula
def lowest_preload(preload: float, scatter: float) -> float:
    """Least preload of a nominal one.

    F_min = F_V / alpha_a

    Parameters
    ----------
    preload : F_V [N]
        clamping force of the bolt
    scatter : alpha_a [-]
        tightening factor: largest over least preload

    Returns
    -------
    F_min [N]

    Source
    ------
    VDI 2230 part 1 (from memory)

    Examples
    --------
    >>> lowest_preload(15600.0, 1.6)
    9750.0
    """
    return preload / scatter


@formula
def preload_after_embedding(
    preload: float, embedding: float, bolt_stiffness: float, member_stiffness: float
) -> float:
    """Preload after the faces have settled.

    F_r = max(F_V - f_z / (1 / k_b + 1 / k_m), 0)

    Parameters
    ----------
    preload : F_V [N]
        clamping force of the bolt
    embedding : f_z [m]
        settling of the clamped faces
    bolt_stiffness : k_b [N/m]
        stiffness of the bolt
    member_stiffness : k_m [N/m]
        stiffness of the clamped parts

    Returns
    -------
    F_r [N]

    Source
    ------
    VDI 2230 part 1 (from memory)

    Examples
    --------
    >>> float(preload_after_embedding(18600.0, 1.1e-5, 3.5e8, 1.2e9))
    15619.4
    """
    return larger(preload - embedding / (1 / bolt_stiffness + 1 / member_stiffness), 0)


@formula
def preload_after_creep(preload: float, hours: float, exponent: float) -> float:
    """Preload left once the clamped plastic has crept.

    F_r = F_V * t**(-n)

    Parameters
    ----------
    preload : F_V [N]
        clamping force of the bolt
    hours : t [h]
        time under load
    exponent : n [-]
        exponent of the power law

    Returns
    -------
    F_r [N]

    Valid for
    ---------
    the bolt hardly stretches, one hour or more

    Source
    ------
    power law of the creep modulus (Crawford, Plastics Engineering 3rd ed., chapter 2); its use for
    preload: from memory

    Examples
    --------
    >>> float(preload_after_creep(2800.0, 1000.0, 0.09))
    1503.7
    """
    return preload * power(hours, -exponent)
