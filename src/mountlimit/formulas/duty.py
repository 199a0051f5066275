"""A duty that changes: load and speed step by step, and the steady load that wears as much."""

from __future__ import annotations

from ..worked import formula
from ._maths import power


@formula
def step_current(current: float, share: float) -> float:
    """Motor current of one step of the duty.

    I_i = c_i * I

    Parameters
    ----------
    current : I [A]
        motor current looked at
    share : c_i [-]
        share of it in this step

    Returns
    -------
    I_i [A]

    Source
    ------
    definition

    Examples
    --------
    >>> step_current(80.0, 0.5)
    40.00
    """
    return share * current


@formula
def step_reaction(reaction: float, load: float, pull: float, step_pull: float) -> float:
    """Force on a bearing in one step of the duty; the sag of the chain stays.

    R_i = R * (F - F_e + F_i) / F

    Parameters
    ----------
    reaction : R [N]
        force on the bearing at the full current
    load : F [N]
        load of both strands on the shaft at the full current
    pull : F_e [N]
        pull of the chain at the full current, part of F
    step_pull : F_i [N]
        pull of the chain in this step

    Returns
    -------
    R_i [N]

    Source
    ------
    statics: the force on a bearing goes with the load on its shaft

    Examples
    --------
    >>> step_reaction(1600.0, 1000.0, 900.0, 400.0)
    800.0
    """
    return reaction * (load - pull + step_pull) / load


@formula
def step_speed(shaft_speed: float, time_share: float, speed_share: float) -> float:
    """What one step of the duty gives to the mean speed.

    n_i = q_i * s_i * omega

    Parameters
    ----------
    shaft_speed : omega [rad/s]
        speed of the shaft
    time_share : q_i [-]
        share of the time
    speed_share : s_i [-]
        share of the speed

    Returns
    -------
    n_i [rad/s]

    Source
    ------
    bearing makers' catalogues, mean speed of a stepped duty: the sum of q_i n_i

    Examples
    --------
    >>> step_speed(300.0, 0.2, 0.5)
    30.00
    """
    return time_share * speed_share * shaft_speed


@formula
def speed_sum(first: float, second: float) -> float:
    """Mean speed of the steps so far.

    n = n_a + n_b

    Parameters
    ----------
    first : n_a [rad/s]
        part of the steps before
    second : n_b [rad/s]
        part of this step

    Returns
    -------
    n [rad/s]

    Source
    ------
    bearing makers' catalogues, mean speed of a stepped duty: the sum of q_i n_i

    Examples
    --------
    >>> speed_sum(30.0, 12.0)
    42.00
    """
    return first + second


@formula
def equivalent_load(
    first_load: float, first_speed: float, second_load: float, second_speed: float, life_exponent: float
) -> float:  # fmt: skip
    """Steady load that wears a bearing as much as the steps so far.

    P = ((n_a * P_a**p + n_b * P_b**p) / (n_a + n_b))**(1 / p)

    Parameters
    ----------
    first_load : P_a [N]
        load of the steps before
    first_speed : n_a [rad/s]
        their part of the mean speed
    second_load : P_b [N]
        load of this step
    second_speed : n_b [rad/s]
        its part of the mean speed
    life_exponent : p [-]
        3 for ball, 10/3 for roller bearings

    Returns
    -------
    P [N]

    Source
    ------
    Palmgren's and Miner's sum with the life of ISO 281, step after step; Mott, Machine Elements in
    Mechanical Design 4th ed. eq. 14-11

    Examples
    --------
    >>> float(equivalent_load(2000.0, 10.0, 1000.0, 10.0, 3.0))
    1651.0
    """
    worn = first_speed * power(first_load, life_exponent) + second_speed * power(second_load, life_exponent)  # fmt: skip
    return power(worn / (first_speed + second_speed), 1 / life_exponent)


@formula
def rest_after_pull(pull_time: float, current: float, continuous: float) -> float:
    """Rest after a short pull that keeps the winding as warm as the continuous current does.

    t_r = t_p * ((I / I_c)**2 - 1)

    Parameters
    ----------
    pull_time : t_p [s]
        how long the pull lasts, short against the time the motor takes to warm up
    current : I [A]
        motor current of the pull
    continuous : I_c [A]
        motor current that may be held for hours

    Returns
    -------
    t_r [s]

    Source
    ------
    derived: heat of a winding grows with the square of its current, evened out over pull and rest

    Examples
    --------
    >>> rest_after_pull(3.0, 80.0, 40.0)
    9.000
    """
    return pull_time * ((current / continuous) ** 2 - 1)
