"""A third bearing on the motor shaft, beyond the sprocket: its share of the pull and what is left."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def reaction(load: Number, free: Number, back: Number, gap: Number, stiffness: Number) -> Number:
    """Force of the outboard bearing on the shaft, against the pull.

    R = max(F * c_f - g, 1e-9) / (c_b + 1 / k)

    Parameters
    ----------
    load : F [N]
        pull of the chain at the sprocket
    free : c_f [m/N]
        movement at the outboard bearing per newton at the sprocket, the bearing away
    back : c_b [m/N]
        movement there that one newton at the bearing takes back
    gap : g [m]
        movement before the bearing carries: its play and how far it is out of line
    stiffness : k [N/m]
        stiffness of the bearing with what holds it

    Returns
    -------
    R [N]

    Source
    ------
    force method, a nanometre in place of nothing (a life stays a number): the shaft moves there as far as the bearing gives (Hibbeler, Structural Analysis, ch. 10, from memory)
    """
    return np.maximum(load * free - gap, 1e-9) / (back + 1 / stiffness)


@formula
def taken_back(free: Number, held: Number, sprocket: Number) -> Number:
    """Movement at the outboard bearing that one newton of it takes back.

    c_b = max(c_f - c_1, c_f**2 / c_s)

    Parameters
    ----------
    free : c_f [m/N]
        movement at the bearing per newton at the sprocket, the bearing away
    held : c_1 [m/N]
        the same with one newton of the bearing against the pull
    sprocket : c_s [m/N]
        movement of the sprocket per newton there, the bearing away

    Returns
    -------
    c_b [m/N]

    Source
    ------
    definition; never less than keeps the give of both points positive together (a member may lean either way round)
    """
    return np.maximum(free - held, free**2 / sprocket)


@formula
def helped_softness(sprocket: Number, reaction: Number, load: Number, free: Number) -> Number:
    """Movement of the sprocket per newton of pull, an outboard bearing helping.

    w = c_s - R / F * c_f

    Parameters
    ----------
    sprocket : c_s [m/N]
        movement of the sprocket per newton there, the bearing away
    reaction : R [N]
        force of the outboard bearing, against the pull
    load : F [N]
        pull of the chain at the sprocket
    free : c_f [m/N]
        movement at the bearing per newton at the sprocket, the bearing away

    Returns
    -------
    w [m/N]

    Source
    ------
    superposition; what the bearing moves at the sprocket is what the sprocket moves at the bearing (Maxwell)
    """
    return sprocket - reaction / load * free


@formula
def movement_beyond(movement: Number, lean: Number, beyond: Number) -> Number:
    """Movement along the chain of a point of the shaft beyond the sprocket, carried rigidly.

    u_b = u + psi * d

    Parameters
    ----------
    movement : u [m]
        movement of the sprocket along the chain
    lean : psi [rad]
        lean of the shaft along the chain
    beyond : d [m]
        sprocket to the outboard bearing

    Returns
    -------
    u_b [m]

    Source
    ------
    kinematics of a rigid body, small turns
    """
    return movement + lean * beyond


@formula
def front_moment(load: Number, overhang: Number, reaction: Number, outboard: Number) -> Number:
    """Bending moment of the motor shaft at its front bearing, an outboard bearing helping.

    M = abs(F * a - R * b)

    Parameters
    ----------
    load : F [N]
        pull of the chain at the sprocket
    overhang : a [m]
        front bearing to the sprocket
    reaction : R [N]
        force of the outboard bearing, against the pull
    outboard : b [m]
        front bearing to the outboard bearing

    Returns
    -------
    M [N*m]

    Source
    ------
    statics of the beam over its supports
    """
    return np.abs(load * overhang - reaction * outboard)


@formula
def sprocket_moment(reaction: Number, beyond: Number) -> Number:
    """Bending moment of the motor shaft under the sprocket, an outboard bearing beyond it.

    M = R * d

    Parameters
    ----------
    reaction : R [N]
        force of the outboard bearing, against the pull
    beyond : d [m]
        sprocket to the outboard bearing

    Returns
    -------
    M [N*m]

    Source
    ------
    statics of the beam over its supports
    """
    return reaction * beyond


@formula
def front_reaction(
    load: Number, overhang: Number, reaction: Number, outboard: Number, bearing_span: Number
) -> Number:
    """Force on the front bearing of the motor, an outboard bearing helping.

    R_f = abs(F * (l + a) - R * (l + b)) / l

    Parameters
    ----------
    load : F [N]
        pull of the chain at the sprocket
    overhang : a [m]
        front bearing to the sprocket
    reaction : R [N]
        force of the outboard bearing, against the pull
    outboard : b [m]
        front bearing to the outboard bearing
    bearing_span : l [m]
        between the two bearings of the motor

    Returns
    -------
    R_f [N]

    Source
    ------
    statics of the beam over its supports
    """
    return (
        np.abs(load * (bearing_span + overhang) - reaction * (bearing_span + outboard))
        / bearing_span
    )


@formula
def rear_reaction(
    load: Number, overhang: Number, reaction: Number, outboard: Number, bearing_span: Number
) -> Number:
    """Force on the rear bearing of the motor, an outboard bearing helping.

    R_r = abs(F * a - R * b) / l

    Parameters
    ----------
    load : F [N]
        pull of the chain at the sprocket
    overhang : a [m]
        front bearing to the sprocket
    reaction : R [N]
        force of the outboard bearing, against the pull
    outboard : b [m]
        front bearing to the outboard bearing
    bearing_span : l [m]
        between the two bearings of the motor

    Returns
    -------
    R_r [N]

    Source
    ------
    statics of the beam over its supports
    """
    return np.abs(load * overhang - reaction * outboard) / bearing_span


@formula
def less_slope(slope: Number, back: Number) -> Number:
    """Slope of the shaft at the sprocket, an outboard bearing helping.

    theta_s = theta - theta_b

    Parameters
    ----------
    slope : theta [rad]
        slope under the pull alone
    back : theta_b [rad]
        slope that the outboard bearing takes back

    Returns
    -------
    theta_s [rad]

    Source
    ------
    superposition
    """
    return slope - back


@formula
def moment_of_two(first: Number, second: Number) -> Number:
    """Moment of two forces.

    M = a + b

    Parameters
    ----------
    first : a [N*m]
        moment of the one force
    second : b [N*m]
        moment of the other force

    Returns
    -------
    M [N*m]

    Source
    ------
    statics
    """
    return first + second
