"""The clamped joint: stiffness and load share; prying and slip come from their own files."""

from __future__ import annotations

from ..worked import formula
from ._maths import exp, larger, log, pi
from .prying import (
    prying_bolt_lever,
    prying_critical_thickness,
    prying_edge_lever,
    prying_force,
    prying_net_ratio,
    prying_share,
    prying_tension_allowed,
)
from .slip import (
    CLAMP_CONTACT,
    clamp_axial_force,
    clamp_torque,
    friction_torque,
    full_preload,
    slip_resistance,
    slip_resistance_design,
)

__all__ = [
    "CLAMP_CONTACT",
    "MEMBER_CURVE",
    "bolt_load",
    "bolt_stiffness",
    "clamp_axial_force",
    "clamp_left",
    "clamp_torque",
    "friction_torque",
    "frustum_stiffness",
    "full_preload",
    "joint_load_share",
    "member_stiffness_exponential",
    "prying_bolt_lever",
    "prying_critical_thickness",
    "prying_edge_lever",
    "prying_force",
    "prying_net_ratio",
    "prying_share",
    "prying_tension_allowed",
    "separation_load",
    "slip_resistance",
    "slip_resistance_design",
    "spring_series",
]

# Shape of the clamp's stiffness over grip: Shigley's Mechanical Engineering Design 9th ed.
# table 8-8 (coefficient, exponent).
MEMBER_CURVE: dict[str, tuple[float, float]] = {
    "steel": (0.78715, 0.62873),
    "aluminium": (0.79670, 0.63816),
    "grey cast iron": (0.77871, 0.61616),
}


@formula
def frustum_stiffness(
    elastic_modulus: float, diameter: float, thickness: float, face_diameter: float
) -> float:
    """Stiffness of one clamped cone of 30 degrees.

    k = 0.5774 * pi * E * d / log((1.155 * t + D - d) * (D + d) / ((1.155 * t + D + d) * (D - d)))

    Parameters
    ----------
    elastic_modulus : E [Pa]
        elastic modulus
    diameter : d [m]
        nominal diameter of the bolt
    thickness : t [m]
        thickness of the plate
    face_diameter : D [m]
        diameter of the loaded face

    Returns
    -------
    k [N/m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 8-20

    Examples
    --------
    >>> float(frustum_stiffness(2.07e11, 0.012, 0.02, 0.018))
    4.470e+09
    """
    return (
        0.5774
        * pi
        * elastic_modulus
        * diameter
        / log(
            (1.155 * thickness + face_diameter - diameter)
            * (face_diameter + diameter)
            / ((1.155 * thickness + face_diameter + diameter) * (face_diameter - diameter))
        )
    )


@formula
def member_stiffness_exponential(
    elastic_modulus: float,
    diameter: float,
    grip: float,
    coefficient: float,
    exponent_coefficient: float,
) -> float:
    """Stiffness of the clamped parts of one material.

    k_m = E * d * A * exp(B * d / l)

    Parameters
    ----------
    elastic_modulus : E [Pa]
        elastic modulus
    diameter : d [m]
        nominal diameter of the bolt
    grip : l [m]
        clamped length
    coefficient : A [-]
        coefficient of the material
    exponent_coefficient : B [-]
        exponent of the material

    Returns
    -------
    k_m [N/m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 8-23

    Examples
    --------
    >>> float(member_stiffness_exponential(2.07e11, 0.0127, 0.034163, 0.78715, 0.62873))
    2.614e+09
    """
    return elastic_modulus * diameter * coefficient * exp(exponent_coefficient * diameter / grip)


@formula
def bolt_stiffness(
    elastic_modulus: float,
    shank_area: float,
    shank_length: float,
    thread_area: float,
    thread_length: float,
) -> float:
    """Stiffness of a bolt, shank and thread in series.

    k_b = A_d * A_t * E / (A_d * l_t + A_t * l_d)

    Parameters
    ----------
    elastic_modulus : E [Pa]
        elastic modulus
    shank_area : A_d [m^2]
        area of the plain shank
    shank_length : l_d [m]
        length of the plain shank in the grip
    thread_area : A_t [m^2]
        stress area of the thread
    thread_length : l_t [m]
        length of the thread in the grip

    Returns
    -------
    k_b [N/m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 8-17

    Examples
    --------
    >>> bolt_stiffness(2.07e11, 0.0001267, 0.0127, 9.15e-5, 0.0183)
    6.895e+08
    """
    return (
        shank_area
        * thread_area
        * elastic_modulus
        / (shank_area * thread_length + thread_area * shank_length)
    )


@formula
def spring_series(first: float, second: float) -> float:
    """Stiffness of two springs in series.

    k = k_1 * k_2 / (k_1 + k_2)

    Parameters
    ----------
    first : k_1 [N/m]
        stiffness of the first spring
    second : k_2 [N/m]
        stiffness of the second spring

    Returns
    -------
    k [N/m]

    Source
    ------
    statics

    Examples
    --------
    >>> spring_series(3e8, 6e8)
    2.000e+08
    """
    return first * second / (first + second)


@formula
def joint_load_share(bolt_stiffness: float, member_stiffness: float) -> float:
    """Share of the outer load that the bolt takes.

    C = k_b / (k_b + k_m)

    Parameters
    ----------
    bolt_stiffness : k_b [N/m]
        stiffness of the bolt
    member_stiffness : k_m [N/m]
        stiffness of the clamped parts

    Returns
    -------
    C [-]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 8-7

    Examples
    --------
    >>> joint_load_share(6.5, 13.8)
    0.3202
    """
    return bolt_stiffness / (bolt_stiffness + member_stiffness)


@formula
def bolt_load(preload: float, load_share: float, external_load: float) -> float:
    """Tension of a preloaded bolt under an outer load.

    F_b = F_V + C * P

    Parameters
    ----------
    preload : F_V [N]
        clamping force of the bolt
    load_share : C [-]
        share of the load the bolt takes
    external_load : P [N]
        load that pulls the joint apart, per bolt

    Returns
    -------
    F_b [N]

    Valid for
    ---------
    joint not open

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 8-24

    Examples
    --------
    >>> bolt_load(25000.0, 0.32, 6000.0)
    26920.0
    """
    return preload + load_share * external_load


@formula
def clamp_left(preload: float, load_share: float, external_load: float) -> float:
    """Clamping force left under an outer load.

    F_m = max(F_V - (1 - C) * P, 0)

    Parameters
    ----------
    preload : F_V [N]
        clamping force of the bolt
    load_share : C [-]
        share of the load the bolt takes
    external_load : P [N]
        load that pulls the joint apart, per bolt

    Returns
    -------
    F_m [N]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 8-25

    Examples
    --------
    >>> float(clamp_left(25000.0, 0.32, 6000.0))
    20920.0
    """
    return larger(preload - (1 - load_share) * external_load, 0)


@formula
def separation_load(preload: float, load_share: float) -> float:
    """Outer load per bolt that opens the joint.

    P_0 = F_V / (1 - C)

    Parameters
    ----------
    preload : F_V [N]
        clamping force of the bolt
    load_share : C [-]
        share of the load the bolt takes

    Returns
    -------
    P_0 [N]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 8-9

    Examples
    --------
    >>> separation_load(25000.0, 0.32)
    36764.7
    """
    return preload / (1 - load_share)
