"""Torque of the motor from its current."""

from __future__ import annotations

from ..worked import formula
from ._maths import larger

# Torque per ampere over 60 / (2 pi KV), KV the no-load speed per volt between lines of a
# sinusoidal three-phase motor.  Phase amplitude U: line-to-line amplitude sqrt(3) U = omega / KV.
# Power balance T omega = (3/2) U I with I the phase peak: T / I = (3/2) / (sqrt(3) KV), that is
# sqrt(3)/2 of 1/KV.  One ampere rms has a peak of sqrt(2), hence sqrt(3/2).  A direct-current
# motor, or a controller that reports the equivalent direct current, has 1.  (Energy balance;
# which ampere a controller means is its maker's convention: from memory.)
AMPERE_FACTOR: dict[str, float] = {
    "motor": 1.0,
    "phase peak": 3.0**0.5 / 2.0,
    "phase rms": 1.5**0.5,
}


@formula
def torque_constant_from_speed_constant(speed_constant: float) -> float:
    """Torque constant from the no-load speed per volt.

    K_t = 1 / K_v

    Parameters
    ----------
    speed_constant : K_v [rad/(s*V)]
        no-load speed per volt; between lines for a three-phase motor

    Returns
    -------
    K_t [N*m/A]

    Valid for
    ---------
    motor without saturation, losses in the no-load current

    Source
    ------
    energy balance of a loss-free machine, power in = torque x speed (Chapman, Electric Machinery
    Fundamentals, from memory)

    Examples
    --------
    >>> torque_constant_from_speed_constant(52.88)
    0.01891
    """
    return 1 / speed_constant


@formula
def phase_torque_constant(torque_constant: float, ampere_factor: float) -> float:
    """Torque constant for one ampere of the limited kind.

    K = f * K_t

    Parameters
    ----------
    torque_constant : K_t [N*m/A]
        torque per motor ampere
    ampere_factor : f [-]
        share of the torque constant that one ampere of the limited kind gives

    Returns
    -------
    K [N*m/A]

    Valid for
    ---------
    sinusoidal three-phase motor, current in phase with the back electromotive force

    Source
    ------
    energy balance, see AMPERE_FACTOR; the controllers' conventions are from memory

    Examples
    --------
    >>> phase_torque_constant(0.05026, 0.8660254)
    0.04353
    """
    return ampere_factor * torque_constant


@formula
def linear_torque(torque_constant: float, current: float, no_load_current: float) -> float:
    """Torque of a motor with constant torque constant.

    T = K_t * max(I - I_0, 0)

    Parameters
    ----------
    torque_constant : K_t [N*m/A]
        torque per motor ampere
    current : I [A]
        motor current
    no_load_current : I_0 [A]
        current that covers the motor's own losses

    Returns
    -------
    T [N*m]

    Valid for
    ---------
    no saturation

    Source
    ------
    from memory (machine texts: torque proportional to current less the no-load current)

    Examples
    --------
    >>> float(linear_torque(0.12, 200.0, 3.0))
    23.64
    """
    return torque_constant * larger(current - no_load_current, 0)
