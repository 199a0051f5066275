"""Torque as the file gives it, and the knock of a bump."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def scaled_torque(torque: Number, share: Number) -> Number:
    """Share of a torque.

    T_s = c * T

    Parameters
    ----------
    torque : T [N*m]
        torque
    share : c [-]
        share or scatter

    Returns
    -------
    T_s [N*m]

    Source
    ------
    definition
    """
    return share * torque


@formula
def torque_constant_from_rating(rated_torque: Number, rated_current: Number) -> Number:
    """Torque per ampere from one rated pair.

    K = T / I

    Parameters
    ----------
    rated_torque : T [N*m]
        rated torque
    rated_current : I [A]
        rated current

    Returns
    -------
    K [N*m/A]

    Source
    ------
    definition; saturation above the rated point lowers it
    """
    return rated_torque / rated_current


@formula
def knock_force(mass: Number, acceleration: Number) -> Number:
    """Weight of the motor in a bump.

    W = m * max(a, 9.80665)

    Parameters
    ----------
    mass : m [kg]
        mass of the motor
    acceleration : a [m/s^2]
        acceleration of the bump, gravity included

    Returns
    -------
    W [N]

    Source
    ------
    statics, standard gravity of ISO 80000-3
    """
    return mass * np.maximum(acceleration, 9.80665)


@formula
def reversed_torque(torque: Number) -> Number:
    """Torque of the stator the other way round.

    T_s = -T

    Parameters
    ----------
    torque : T [N*m]
        torque of the motor

    Returns
    -------
    T_s [N*m]

    Source
    ------
    which strand is tight is not known: both ways are tried
    """
    return -torque


@formula
def shaft_power(torque: Number, angular_speed: Number) -> Number:
    """Power of a turning shaft.

    P = T * omega

    Parameters
    ----------
    torque : T [N*m]
        torque
    angular_speed : omega [rad/s]
        angular speed

    Returns
    -------
    P [W]

    Source
    ------
    definition
    """
    return torque * angular_speed


@formula
def turns_per_second(angular_speed: Number) -> Number:
    """Turns per second of a shaft.

    n = omega / (2 * pi)

    Parameters
    ----------
    angular_speed : omega [rad/s]
        angular speed

    Returns
    -------
    n [rev/s]

    Source
    ------
    definition
    """
    return angular_speed / (2 * np.pi)


@formula
def driven_torque(torque: Number, driven_teeth: Number, driving_teeth: Number) -> Number:
    """Torque of the driven sprocket, without losses.

    T_2 = T * z_2 / z_1

    Parameters
    ----------
    torque : T [N*m]
        torque of the driving sprocket
    driven_teeth : z_2 [-]
        teeth of the driven sprocket
    driving_teeth : z_1 [-]
        teeth of the driving sprocket

    Returns
    -------
    T_2 [N*m]

    Source
    ------
    balance of work; losses left out: the safe side
    """
    return torque * driven_teeth / driving_teeth


@formula
def driven_speed(speed: Number, driving_teeth: Number, driven_teeth: Number) -> Number:
    """Speed of the driven sprocket.

    omega_2 = omega * z_1 / z_2

    Parameters
    ----------
    speed : omega [rad/s]
        speed of the driving sprocket
    driving_teeth : z_1 [-]
        teeth of the driving sprocket
    driven_teeth : z_2 [-]
        teeth of the driven sprocket

    Returns
    -------
    omega_2 [rad/s]

    Source
    ------
    definition: as many links pass either sprocket

    Examples
    --------
    >>> driven_speed(100.0, 11.0, 55.0)
    20.00
    """
    return speed * driving_teeth / driven_teeth
