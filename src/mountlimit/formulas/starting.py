"""The jerk of starting: undamped two-inertia drive on its stiffness."""

from __future__ import annotations

from ..worked import formula
from ._maths import pi, smaller, sqrt


@formula
def inertia_share(motor_inertia: float, driven_inertia: float) -> float:
    """Share of the driven inertia.

    mu = J_2 / (J_1 + J_2)

    Parameters
    ----------
    motor_inertia : J_1 [kg*m^2]
        inertia of the rotor
    driven_inertia : J_2 [kg*m^2]
        inertia of the driven side seen at the motor shaft

    Returns
    -------
    mu [-]

    Source
    ------
    undamped oscillator response (Clough & Penzien, Dynamics of Structures, from memory; agrees with
    direct integration)

    Examples
    --------
    >>> inertia_share(0.002, 0.05)
    0.9615
    """
    return driven_inertia / (motor_inertia + driven_inertia)


@formula
def series_inertia(motor_inertia: float, driven_inertia: float) -> float:
    """Inertia that swings on the stiffness of the drive.

    J = J_1 * J_2 / (J_1 + J_2)

    Parameters
    ----------
    motor_inertia : J_1 [kg*m^2]
        inertia of the rotor
    driven_inertia : J_2 [kg*m^2]
        inertia of the driven side seen at the motor shaft

    Returns
    -------
    J [kg*m^2]

    Source
    ------
    undamped oscillator response (Clough & Penzien, Dynamics of Structures, from memory; agrees with
    direct integration)

    Examples
    --------
    >>> series_inertia(0.002, 0.05)
    0.001923
    """
    return motor_inertia * driven_inertia / (motor_inertia + driven_inertia)


@formula
def natural_period(inertia: float, stiffness: float) -> float:
    """Natural period of the drive.

    T_n = 2 * pi * sqrt(J / k)

    Parameters
    ----------
    inertia : J [kg*m^2]
        inertia
    stiffness : k [N*m/rad]
        stiffness of the drive seen at the motor shaft

    Returns
    -------
    T_n [s]

    Source
    ------
    undamped oscillator response (Clough & Penzien, Dynamics of Structures, from memory; agrees with
    direct integration)

    Examples
    --------
    >>> float(natural_period(0.0019, 400.0))
    0.01369
    """
    return 2 * pi * sqrt(inertia / stiffness)


@formula
def step_factor(share: float) -> float:
    """Peak over motor torque for a sudden torque.

    s = 2 * mu

    Parameters
    ----------
    share : mu [-]
        share of the driven inertia

    Returns
    -------
    s [-]

    Source
    ------
    undamped oscillator response (Clough & Penzien, Dynamics of Structures, from memory; agrees with
    direct integration)

    Examples
    --------
    >>> step_factor(0.96)
    1.920
    """
    return 2 * share


@formula
def ramp_ratio(ramp_time: float, period: float) -> float:
    """Ramp time against the natural period.

    x = pi * t_r / T_n

    Parameters
    ----------
    ramp_time : t_r [s]
        length of the torque ramp
    period : T_n [s]
        natural period

    Returns
    -------
    x [-]

    Source
    ------
    undamped oscillator response (Clough & Penzien, Dynamics of Structures, from memory; agrees with
    direct integration)

    Examples
    --------
    >>> ramp_ratio(0.05, 0.0137)
    11.47
    """
    return pi * ramp_time / period


@formula
def ramp_factor(share: float, ramp_ratio: float) -> float:
    """Peak over motor torque for a torque ramp, envelope.

    s = mu * (1 + min(1, 1 / x))

    Parameters
    ----------
    share : mu [-]
        share of the driven inertia
    ramp_ratio : x [-]
        pi times ramp time over natural period

    Returns
    -------
    s [-]

    Source
    ------
    undamped oscillator response (Clough & Penzien, Dynamics of Structures, from memory; agrees with
    direct integration)

    Examples
    --------
    >>> float(ramp_factor(0.96, 11.5))
    1.043
    """
    return share * (1 + smaller(1, 1 / ramp_ratio))


@formula
def backlash_factor(share: float, stiffness: float, free_angle: float, torque: float) -> float:
    """Peak over motor torque after a free angle.

    s = mu * (1 + sqrt(1 + 2 * k * phi / (mu * T)))

    Parameters
    ----------
    share : mu [-]
        share of the driven inertia
    stiffness : k [N*m/rad]
        stiffness of the drive seen at the motor shaft
    free_angle : phi [rad]
        free angle before the chain is tight
    torque : T [N*m]
        torque

    Returns
    -------
    s [-]

    Valid for
    ---------
    the torque acts through the whole free angle

    Source
    ------
    energy balance of the two-inertia drive (agrees with direct integration)

    Examples
    --------
    >>> float(backlash_factor(1.0, 400.0, 0.05, 20.0))
    2.732
    """
    return share * (1 + sqrt(1 + 2 * stiffness * free_angle / (share * torque)))


@formula
def slack_angle(excess_length: float, radius: float) -> float:
    """Free angle of the driving sprocket from chain slack.

    phi = dL / r

    Parameters
    ----------
    excess_length : dL [m]
        free length in the run that tightens
    radius : r [m]
        radius at which the chain pulls

    Returns
    -------
    phi [rad]

    Source
    ------
    geometry

    Examples
    --------
    >>> slack_angle(0.00128, 0.0225)
    0.05689
    """
    return excess_length / radius


@formula
def impact_pull(
    torque: float, radius: float, stiffness: float, inertia: float, angular_speed: float
) -> float:
    """Chain pull when the driven side stops dead.

    F = T / r + sqrt((T / r)**2 + k * J * omega**2 / r**2)

    Parameters
    ----------
    torque : T [N*m]
        torque
    radius : r [m]
        radius at which the chain pulls
    stiffness : k [N*m/rad]
        stiffness of the drive seen at the motor shaft
    inertia : J [kg*m^2]
        inertia
    angular_speed : omega [rad/s]
        speed of the rotor

    Returns
    -------
    F [N]

    Valid for
    ---------
    undamped; motor torque keeps acting

    Source
    ------
    energy balance of the rotor on the stiffness of the chain run

    Examples
    --------
    >>> float(impact_pull(20.0, 0.0225, 253.0, 0.002, 300.0))
    10414.9
    """
    return torque / radius + sqrt(
        (torque / radius) ** 2 + stiffness * inertia * angular_speed**2 / radius**2
    )


@formula
def stopping_torque(pull: float, radius: float) -> float:
    """Torque of the chain on the driving sprocket at a dead stop.

    T_s = F * r

    Parameters
    ----------
    pull : F [N]
        pull of the chain
    radius : r [m]
        radius at which the chain pulls

    Returns
    -------
    T_s [N*m]

    Source
    ------
    statics; the rotor's inertia supplies what the motor does not

    Examples
    --------
    >>> stopping_torque(10414.9, 0.0225)
    234.3
    """
    return pull * radius


@formula
def rotor_inertia(rotor_mass: float, rotor_radius: float) -> float:
    """Inertia of a rotor from its mass and radius.

    J = m * R**2 / 2

    Parameters
    ----------
    rotor_mass : m [kg]
        mass of the rotor
    rotor_radius : R [m]
        outer radius of the rotor

    Returns
    -------
    J [kg*m^2]

    Source
    ------
    solid cylinder (dynamics texts)

    Examples
    --------
    >>> rotor_inertia(2.0, 0.04)
    0.001600
    """
    return rotor_mass * rotor_radius**2 / 2
