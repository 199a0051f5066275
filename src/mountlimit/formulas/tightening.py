"""Tightening of bolts: torque, preload and its scatter."""

from __future__ import annotations

from ..worked import formula
from ._maths import pi, sqrt


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
def mean_head_diameter(face_diameter: float, hole_diameter: float) -> float:
    """Mean diameter of the ring under a bolt head.

    D_m = (D + d_0) / 2

    Parameters
    ----------
    face_diameter : D [m]
        outside of the ring
    hole_diameter : d_0 [m]
        diameter of the hole

    Returns
    -------
    D_m [m]

    Source
    ------
    VDI 2230 part 1 (from memory)

    Examples
    --------
    >>> mean_head_diameter(0.0116, 0.009)
    0.0103
    """
    return (face_diameter + hole_diameter) / 2
