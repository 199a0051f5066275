"""Forces moved to another point, and small movements carried to the sprocket."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def across_part(force: Number, angle: Number) -> Number:
    """Part of the shaft load across the mount.

    F_x = F * cos(alpha)

    Parameters
    ----------
    force : F [N]
        shaft load along the chain line
    angle : alpha [rad]
        chain line measured from 'across'

    Returns
    -------
    F_x [N]

    Source
    ------
    statics
    """
    return force * np.cos(angle)


@formula
def along_part(force: Number, angle: Number) -> Number:
    """Part of the shaft load along the mount, away from the frame.

    F_y = F * sin(alpha)

    Parameters
    ----------
    force : F [N]
        shaft load along the chain line
    angle : alpha [rad]
        chain line measured from 'across'

    Returns
    -------
    F_y [N]

    Source
    ------
    statics
    """
    return force * np.sin(angle)


@formula
def sum_of_two(first: Number, second: Number) -> Number:
    """Sum of two force components.

    S = a + b

    Parameters
    ----------
    first : a [N]
        first part
    second : b [N]
        second part

    Returns
    -------
    S [N]

    Source
    ------
    statics
    """
    return first + second


@formula
def moment_sum(strands: Number, weight: Number, couple: Number) -> Number:
    """Moment about one axis of the strands, the weight and a couple.

    M = a + b + c

    Parameters
    ----------
    strands : a [N*m]
        moment of the strand forces
    weight : b [N*m]
        moment of the weight
    couple : c [N*m]
        couple about the axis

    Returns
    -------
    M [N*m]

    Source
    ------
    statics
    """
    return strands + weight + couple


@formula
def carried(move: Number, turn_1: Number, arm_1: Number, turn_2: Number, arm_2: Number) -> Number:
    """Movement of the sprocket when a part carrying it moves and turns.

    d = w + theta_1 * r_1 - theta_2 * r_2

    Parameters
    ----------
    move : w [m]
        movement of the part's far end
    turn_1 : theta_1 [rad]
        first turn
    arm_1 : r_1 [m]
        its arm to the sprocket
    turn_2 : theta_2 [rad]
        second turn
    arm_2 : r_2 [m]
        its arm to the sprocket

    Returns
    -------
    d [m]

    Source
    ------
    small rigid-body motion, theta x r
    """
    return move + turn_1 * arm_1 - turn_2 * arm_2


@formula
def lean_along_chain(turn_x: Number, turn_y: Number, angle: Number) -> Number:
    """Yaw: lean of the shaft along the chain line, the skew the chain sees.

    psi = theta_y * cos(alpha) - theta_x * sin(alpha)

    Parameters
    ----------
    turn_x : theta_x [rad]
        turn about x
    turn_y : theta_y [rad]
        turn about y
    angle : alpha [rad]
        chain line measured from 'across'

    Returns
    -------
    psi [rad]

    Source
    ------
    geometry of a small turn
    """
    return turn_y * np.cos(angle) - turn_x * np.sin(angle)


@formula
def lean_about_chain(turn_x: Number, turn_y: Number, angle: Number) -> Number:
    """Roll: lean of the shaft about the chain line.

    rho = -theta_y * sin(alpha) - theta_x * cos(alpha)

    Parameters
    ----------
    turn_x : theta_x [rad]
        turn about x
    turn_y : theta_y [rad]
        turn about y
    angle : alpha [rad]
        chain line measured from 'across'

    Returns
    -------
    rho [rad]

    Source
    ------
    geometry of a small turn
    """
    return -turn_y * np.sin(angle) - turn_x * np.cos(angle)


@formula
def approach(move_x: Number, move_y: Number, angle: Number) -> Number:
    """Movement of the sprocket towards the driven sprocket.

    u = d_x * cos(alpha) + d_y * sin(alpha)

    Parameters
    ----------
    move_x : d_x [m]
        movement across
    move_y : d_y [m]
        movement along
    angle : alpha [rad]
        chain line measured from 'across'

    Returns
    -------
    u [m]

    Source
    ------
    geometry
    """
    return move_x * np.cos(angle) + move_y * np.sin(angle)


@formula
def reversed_force(force: Number) -> Number:
    """A force seen in the sense that turns the end.

    R = -F

    Parameters
    ----------
    force : F [N]
        force

    Returns
    -------
    R [N]

    Source
    ------
    sign of d x F
    """
    return -force


@formula
def reversed_moment(moment: Number) -> Number:
    """A moment about the same axis turned round.

    R = -M

    Parameters
    ----------
    moment : M [N*m]
        moment

    Returns
    -------
    R [N*m]

    Source
    ------
    sign of a moment about an axis
    """
    return -moment


@formula
def reversed_angle(angle: Number) -> Number:
    """A turn the other way round.

    b = -a

    Parameters
    ----------
    angle : a [rad]
        turn

    Returns
    -------
    b [rad]

    Source
    ------
    sign of a turn about x
    """
    return -angle


@formula
def softened_turn(turn: Number, factor: Number) -> Number:
    """Turn of mount and joint: that of the model times its true give over the model's.

    theta = c * theta_m

    Parameters
    ----------
    turn : theta_m [rad]
        turn by the model
    factor : c [-]
        true give over that of the model

    Returns
    -------
    theta [rad]

    Source
    ------
    definition of the ratio
    """
    return factor * turn


@formula
def softened_move(move: Number, factor: Number) -> Number:
    """Movement of mount and joint: that of the model times its true give over the model's.

    w = c * w_m

    Parameters
    ----------
    move : w_m [m]
        movement by the model
    factor : c [-]
        true give over that of the model

    Returns
    -------
    w [m]

    Source
    ------
    definition of the ratio
    """
    return factor * move


@formula
def moved_by_pull(together: Number, weight_alone: Number) -> Number:
    """Movement that the pull brings: under pull and weight, less under the weight alone.

    w = w_all - w_w

    Parameters
    ----------
    together : w_all [m]
        movement under pull and weight
    weight_alone : w_w [m]
        movement under the weight, which is there when the sprockets are lined up

    Returns
    -------
    w [m]

    Source
    ------
    definition; contact with the frame makes it differ from the movement under the pull alone
    """
    return together - weight_alone


@formula
def turned_by_pull(together: Number, weight_alone: Number) -> Number:
    """Turn that the pull brings: under pull and weight, less under the weight alone.

    theta = theta_all - theta_w

    Parameters
    ----------
    together : theta_all [rad]
        turn under pull and weight
    weight_alone : theta_w [rad]
        turn under the weight, which is there when the sprockets are lined up

    Returns
    -------
    theta [rad]

    Source
    ------
    definition; contact with the frame makes it differ from the turn under the pull alone
    """
    return together - weight_alone
