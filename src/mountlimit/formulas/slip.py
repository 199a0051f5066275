"""Joints that hold by friction: bolted faces."""

from __future__ import annotations

from ..worked import formula
from ._maths import larger


@formula
def slip_resistance(friction: float, preload: float, tension: float) -> float:
    """Force at which one bolt of a friction joint slips.

    F_s = mu * max(F_V - 0.8 * F_t, 0)

    Parameters
    ----------
    friction : mu [-]
        coefficient of friction
    preload : F_V [N]
        clamping force of the bolt
    tension : F_t [N]
        tension in the bolt

    Returns
    -------
    F_s [N]

    Source
    ------
    EN 1993-1-8 eq. 3.8

    Examples
    --------
    >>> float(slip_resistance(0.2, 15600.0, 3000.0))
    2640.0
    """
    return friction * larger(preload - 0.8 * tension, 0)


@formula
def slip_resistance_design(
    hole_factor: float,
    surfaces: float,
    friction: float,
    preload: float,
    tension: float,
    gamma: float,
) -> float:
    """Design slip resistance of one bolt.

    F_s = k_s * n * mu * max(F_V - 0.8 * F_t, 0) / g

    Parameters
    ----------
    hole_factor : k_s [-]
        factor for oversize and slotted holes
    surfaces : n [-]
        number of friction faces
    friction : mu [-]
        coefficient of friction
    preload : F_V [N]
        clamping force of the bolt
    tension : F_t [N]
        tension in the bolt
    gamma : g [-]
        partial factor

    Returns
    -------
    F_s [N]

    Source
    ------
    EN 1993-1-8 eq. 3.6 and 3.8

    Examples
    --------
    >>> float(slip_resistance_design(1.0, 1, 0.4, 47208.0, 0.0, 1.25))
    15106.6
    """
    return hole_factor * surfaces * friction * larger(preload - 0.8 * tension, 0) / gamma


@formula
def friction_torque(friction: float, count: float, preload: float, radius: float) -> float:
    """Torque held by the friction of a bolted face.

    T = mu * n * F_V * r

    Parameters
    ----------
    friction : mu [-]
        coefficient of friction
    count : n [-]
        number of bolts
    preload : F_V [N]
        clamping force of the bolt
    radius : r [m]
        distance from the centre of the group

    Returns
    -------
    T [N*m]

    Source
    ------
    from memory (friction at the bolt circle)

    Examples
    --------
    >>> friction_torque(0.15, 4, 2500.0, 0.0125)
    18.75
    """
    return friction * count * preload * radius


@formula
def shear_to_hold(
    shear: float, tension: float, friction: float, surfaces: float, hole_factor: float
) -> float:
    """Shear that the full clamp must hold: the bolt's own, and the friction its tension takes away.

    V_h = V + 0.8 * k_s * n * mu * F_t

    Parameters
    ----------
    shear : V [N]
        shear of the bolt
    tension : F_t [N]
        tension in the bolt
    friction : mu [-]
        coefficient of friction
    surfaces : n [-]
        number of friction faces
    hole_factor : k_s [-]
        factor for oversize and slotted holes

    Returns
    -------
    V_h [N]

    Source
    ------
    EN 1993-1-8 eq. 3.8, the part with the tension taken over to the side of the demand

    Examples
    --------
    >>> shear_to_hold(1000.0, 3000.0, 0.2, 1, 1.0)
    1480.0
    """
    return shear + 0.8 * hole_factor * surfaces * friction * tension
