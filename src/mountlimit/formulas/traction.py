"""The force the tyres can put down."""

from __future__ import annotations

from ..worked import formula


@formula
def traction_force_rear_drive(
    mass: float,
    front_axle_to_mass_centre: float,
    mass_centre_height: float,
    wheelbase: float,
    friction: float,
) -> float:
    """Greatest force of driven rear wheels with the weight that moves back.

    F = mu * m * 9.80665 * l_f / (b - mu * h)

    Parameters
    ----------
    mass : m [kg]
        mass of the vehicle with its driver
    front_axle_to_mass_centre : l_f [m]
        from the front axle back to the centre of mass
    mass_centre_height : h [m]
        height of the centre of mass
    wheelbase : b [m]
        between the axles
    friction : mu [-]
        friction of tyre and ground

    Returns
    -------
    F [N]

    Valid for
    ---------
    level ground, front wheels still on the ground: mu * h under b - l_f

    Source
    ------
    Gillespie, Fundamentals of Vehicle Dynamics, chapter 2 (from memory)

    Examples
    --------
    >>> traction_force_rear_drive(1800.0, 1.3, 0.7, 2.6, 0.7)
    7612.9
    """
    return (
        friction
        * mass
        * 9.80665
        * front_axle_to_mass_centre
        / (wheelbase - friction * mass_centre_height)
    )


@formula
def traction_force_front_drive(
    mass: float,
    front_axle_to_mass_centre: float,
    mass_centre_height: float,
    wheelbase: float,
    friction: float,
) -> float:
    """Greatest force of driven front wheels with the weight that moves back.

    F = mu * m * 9.80665 * (b - l_f) / (b + mu * h)

    Parameters
    ----------
    mass : m [kg]
        mass of the vehicle with its driver
    front_axle_to_mass_centre : l_f [m]
        from the front axle back to the centre of mass
    mass_centre_height : h [m]
        height of the centre of mass
    wheelbase : b [m]
        between the axles
    friction : mu [-]
        friction of tyre and ground

    Returns
    -------
    F [N]

    Valid for
    ---------
    level ground

    Source
    ------
    Gillespie, Fundamentals of Vehicle Dynamics, chapter 2 (from memory)

    Examples
    --------
    >>> traction_force_front_drive(1800.0, 1.3, 0.7, 2.6, 0.7)
    5198.5
    """
    return (
        friction
        * mass
        * 9.80665
        * (wheelbase - front_axle_to_mass_centre)
        / (wheelbase + friction * mass_centre_height)
    )


@formula
def traction_force_all(mass: float, friction: float) -> float:
    """Greatest force with all wheels driven.

    F = mu * m * 9.80665

    Parameters
    ----------
    mass : m [kg]
        mass of the vehicle with its driver
    friction : mu [-]
        friction of tyre and ground

    Returns
    -------
    F [N]

    Valid for
    ---------
    level ground

    Source
    ------
    Gillespie, Fundamentals of Vehicle Dynamics, chapter 2 (from memory)

    Examples
    --------
    >>> traction_force_all(1800.0, 0.7)
    12356.4
    """
    return friction * mass * 9.80665


@formula
def lift_force(
    mass: float, front_axle_to_mass_centre: float, mass_centre_height: float, wheelbase: float
) -> float:
    """Force at the ground that lifts the front wheels.

    F = m * 9.80665 * (b - l_f) / h

    Parameters
    ----------
    mass : m [kg]
        mass of the vehicle with its driver
    front_axle_to_mass_centre : l_f [m]
        from the front axle back to the centre of mass
    mass_centre_height : h [m]
        height of the centre of mass
    wheelbase : b [m]
        between the axles

    Returns
    -------
    F [N]

    Source
    ------
    statics of the vehicle

    Examples
    --------
    >>> lift_force(120.0, 0.6, 0.7, 1.0)
    672.5
    """
    return mass * 9.80665 * (wheelbase - front_axle_to_mass_centre) / mass_centre_height


@formula
def traction_torque(force: float, wheel_radius: float, gear_ratio: float) -> float:
    """Motor torque of a force at the ground.

    T = F * R / i

    Parameters
    ----------
    force : F [N]
        force at the ground
    wheel_radius : R [m]
        radius of the wheel
    gear_ratio : i [-]
        driven teeth over driving teeth

    Returns
    -------
    T [N*m]

    Valid for
    ---------
    losses left out: the wheels need more motor torque to spin

    Source
    ------
    statics, no losses

    Examples
    --------
    >>> traction_torque(600.0, 0.15, 6.0)
    15.00
    """
    return force * wheel_radius / gear_ratio


@formula
def friction_force(load: float, friction: float) -> float:
    """Pull at the ground at which wheels of a known load spin.

    F = mu * W

    Parameters
    ----------
    load : W [N]
        weight on the driven wheels
    friction : mu [-]
        friction of tyre and ground

    Returns
    -------
    F [N]

    Source
    ------
    Coulomb friction

    Examples
    --------
    >>> friction_force(700.0, 0.6)
    420.0
    """
    return friction * load
