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
    """Turn by the plate model: the section route times how much softer plates are.

    theta = c * theta_s

    Parameters
    ----------
    turn : theta_s [rad]
        turn by the section route
    factor : c [-]
        plate model over section route

    Returns
    -------
    theta [rad]

    Source
    ------
    plate model of six-node triangles with contact, solved for this mount
    """
    return factor * turn


@formula
def softened_move(move: Number, factor: Number) -> Number:
    """Movement by the plate model: the section route times how much softer plates are.

    w = c * w_s

    Parameters
    ----------
    move : w_s [m]
        movement by the section route
    factor : c [-]
        plate model over section route

    Returns
    -------
    w [m]

    Source
    ------
    plate model of six-node triangles with contact, solved for this mount
    """
    return factor * move
