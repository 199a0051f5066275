"""Joints that hold by friction: bolted faces and clamps."""

from __future__ import annotations

from ..worked import formula
from ._maths import larger

# Contact of a clamp round a tube or shaft: two lines, or even pressure in a well-fitted bore.
CLAMP_CONTACT: dict[str, float] = {"two lines": 1.0, "even pressure": 1.5707963267948966}


@formula
def full_preload(ultimate_strength: float, stress_area: float) -> float:
    """Preload of a fully tightened structural bolt.

    F_p = 0.7 * R_m * A_s

    Parameters
    ----------
    ultimate_strength : R_m [Pa]
        ultimate strength
    stress_area : A_s [m^2]
        tensile stress area

    Returns
    -------
    F_p [N]

    Source
    ------
    EN 1993-1-8 clause 3.9.1

    Examples
    --------
    >>> full_preload(8e8, 8.43e-5)
    47208.0
    """
    return 0.7 * ultimate_strength * stress_area


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
def clamp_torque(contact_factor: float, friction: float, clamp_force: float, bore: float) -> float:
    """Torque held by a clamp round a tube or shaft.

    T = c * mu * N * d

    Parameters
    ----------
    contact_factor : c [-]
        1 for two lines of contact, pi/2 for even pressure
    friction : mu [-]
        coefficient of friction
    clamp_force : N [N]
        sum of the bolt forces that close the clamp
    bore : d [m]
        diameter of the tube or shaft

    Returns
    -------
    T [N*m]

    Source
    ------
    from memory (Khurmi & Gupta, Machine Design, clamp coupling)

    Examples
    --------
    >>> clamp_torque(1.0, 0.15, 20000.0, 0.03)
    90.00
    """
    return contact_factor * friction * clamp_force * bore


@formula
def clamp_axial_force(contact_factor: float, friction: float, clamp_force: float) -> float:
    """Force along the tube held by a clamp.

    F = 2 * c * mu * N

    Parameters
    ----------
    contact_factor : c [-]
        1 for two lines of contact, pi/2 for even pressure
    friction : mu [-]
        coefficient of friction
    clamp_force : N [N]
        sum of the bolt forces that close the clamp

    Returns
    -------
    F [N]

    Source
    ------
    from memory (two contact faces)

    Examples
    --------
    >>> clamp_axial_force(1.0, 0.15, 20000.0)
    6000.0
    """
    return 2 * contact_factor * friction * clamp_force
