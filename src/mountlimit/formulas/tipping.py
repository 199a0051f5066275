"""A bolt group that tips on an edge and slides: shares per bolt and what the joint gives."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def direct_tension(pull: Number, count: Number) -> Number:
    """Tension of each bolt from a pull straight off the joint (a push is taken by contact).

    T_0 = max(N, 0) / n

    Parameters
    ----------
    pull : N [N]
        force off the joint
    count : n [-]
        number of bolts

    Returns
    -------
    T_0 [N]

    Source
    ------
    statics of equal bolts
    """
    return np.maximum(pull, 0.0) / count


@formula
def bolt_tension(direct: Number, first: Number, second: Number) -> Number:
    """Tension of one bolt: straight pull and tipping both ways.

    T = T_0 + T_1 + T_2

    Parameters
    ----------
    direct : T_0 [N]
        share of the straight pull
    first : T_1 [N]
        from tipping about one edge
    second : T_2 [N]
        from tipping about the other edge

    Returns
    -------
    T [N]

    Source
    ------
    superposition
    """
    return direct + first + second


@formula
def shear_part(direct: Number, turning: Number, handed: Number) -> Number:
    """Part of a bolt's shear along one direction.

    V = V_0 + h * V_t

    Parameters
    ----------
    direct : V_0 [N]
        share of the force along this direction
    turning : V_t [N]
        part from the moment in the joint's plane
    handed : h [-]
        +1 or -1 by the handedness of the joint's axes

    Returns
    -------
    V [N]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. sec. 8-12
    """
    return direct + handed * turning


@formula
def size_of(moment: Number) -> Number:
    """Size of a moment, whichever way it turns.

    M_a = abs(M)

    Parameters
    ----------
    moment : M [N*m]
        moment

    Returns
    -------
    M_a [N*m]

    Source
    ------
    definition
    """
    return np.abs(moment)


@formula
def pulled_only(force: Number) -> Number:
    """Tension of a bolt; where the mount presses on the frame it is none.

    N = max(N_p, 0)

    Parameters
    ----------
    force : N_p [N]
        how hard the mount pulls the bolt away from the frame

    Returns
    -------
    N [N]

    Source
    ------
    definition: a bolt cannot push, the face under it does
    """
    return np.maximum(force, 0)


@formula
def pried(tension: Number, ratio: Number) -> Number:
    """Tension of a frame bolt, corrected for what the plate model may be off by.

    N = c * N_p

    Parameters
    ----------
    tension : N_p [N]
        tension by the plate model
    ratio : c [-]
        true tension over that of the plate model

    Returns
    -------
    N [N]

    Source
    ------
    solid elements on random mounts (computed)

    Examples
    --------
    >>> pried(1000.0, 1.25)
    1250.0
    """
    return ratio * tension


@formula
def bolt_shear(first: Number, second: Number) -> Number:
    """Shear of one bolt from its two parts.

    V = sqrt(V_1**2 + V_2**2)

    Parameters
    ----------
    first : V_1 [N]
        part along the row
    second : V_2 [N]
        part across the row

    Returns
    -------
    V [N]

    Source
    ------
    vector sum
    """
    return np.sqrt(first**2 + second**2)


@formula
def in_plane_stiffness(stiffness: Number, share: Number) -> Number:
    """Stiffness of one bolted point in the joint's plane.

    k_t = c * k

    Parameters
    ----------
    stiffness : k [N/m]
        stiffness normal to the joint
    share : c [-]
        share of it

    Returns
    -------
    k_t [N/m]

    Source
    ------
    common practice, no source
    """
    return share * stiffness


@formula
def slide(force: Number, stiffness: Number, count: Number) -> Number:
    """Movement of the joint under a force.

    w = F / (n * k)

    Parameters
    ----------
    force : F [N]
        force on the joint
    stiffness : k [N/m]
        stiffness of one bolted point that way
    count : n [-]
        number of bolts

    Returns
    -------
    w [m]

    Source
    ------
    springs side by side
    """
    return force / (count * stiffness)


@formula
def tip(moment: Number, stiffness: Number, square_sum: Number) -> Number:
    """Turn of the joint under a moment.

    theta = M / (k * S)

    Parameters
    ----------
    moment : M [N*m]
        moment on the joint
    stiffness : k [N/m]
        stiffness of one bolted point
    square_sum : S [m^2]
        sum of the squares of the levers

    Returns
    -------
    theta [rad]

    Source
    ------
    springs at their levers
    """
    return moment / (stiffness * square_sum)


@formula
def face_bolt_tension(
    moment_x: Number, moment_y: Number, count: Number, bolt_circle: Number
) -> Number:
    """Largest tension of the motor's face bolts from the moment that tilts the motor.

    T = 4 * sqrt(M_x**2 + M_y**2) / (n * D_b)

    Parameters
    ----------
    moment_x : M_x [N*m]
        moment about x at the face
    moment_y : M_y [N*m]
        moment about y at the face
    count : n [-]
        number of face bolts
    bolt_circle : D_b [m]
        diameter of the bolt circle

    Returns
    -------
    T [N]

    Valid for
    ---------
    equal bolts on a circle, tilt about the middle (contact at the rim would lower it)

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. sec. 8-12, elastic group with sum r^2 = n D^2/8
    """
    return 4 * np.sqrt(moment_x**2 + moment_y**2) / (count * bolt_circle)


@formula
def face_bolt_shear(
    force_x: Number, force_y: Number, torque: Number, count: Number, bolt_circle: Number
) -> Number:
    """Largest shear of the motor's face bolts.

    V = sqrt(F_x**2 + F_y**2) / n + 2 * abs(M_z) / (n * D_b)

    Parameters
    ----------
    force_x : F_x [N]
        force across
    force_y : F_y [N]
        force along
    torque : M_z [N*m]
        torque of the stator
    count : n [-]
        number of face bolts
    bolt_circle : D_b [m]
        diameter of the bolt circle

    Returns
    -------
    V [N]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. sec. 8-12 (both shares in line: the worst bolt)
    """
    return np.sqrt(force_x**2 + force_y**2) / count + 2 * np.abs(torque) / (count * bolt_circle)


@formula
def washer_square(washer_diameter: Number) -> Number:
    """Square of the length at which one washer resists turning.

    S = D**2 / 16

    Parameters
    ----------
    washer_diameter : D [m]
        washer diameter

    Returns
    -------
    S [m^2]

    Source
    ------
    second moment of a round face over its area
    """
    return washer_diameter**2 / 16
