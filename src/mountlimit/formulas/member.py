"""A member held against twist at both ends, and bending and twist of sections without symmetry."""

from __future__ import annotations

from typing import Any

from ..worked import formula
from ._maths import tanh

Number = Any


@formula
def span_twist(
    torque: float, span: float, place: float, shear_modulus: float, torsion_constant: float
) -> float:
    """Twist of a member held against twist at both ends, where the torque acts.

    phi = T * L * s * (1 - s) / (G * J)

    Parameters
    ----------
    torque : T [N*m]
        torque at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the torque acts, from one end, over the span
    shear_modulus : G [Pa]
        shear modulus
    torsion_constant : J [m^4]
        Saint-Venant torsion constant

    Returns
    -------
    phi [rad]

    Source
    ------
    statics: the two parts of the span turn alike and share the torque
    """
    return torque * span * place * (1 - place) / (shear_modulus * torsion_constant)


@formula
def span_twist_warping(
    torque: float, span: float, place: float, shear_modulus: float, torsion_constant: float,
    decay: float,
) -> float:  # fmt: skip
    """Twist of an open member where the torque acts: ends held against twist, free to warp.

    phi = T / (G * J) * (L * s * (1 - s) - 1 / (k * (1 / tanh(k * s * L) + 1 / tanh(k * (1 - s) * L))))

    Parameters
    ----------
    torque : T [N*m]
        torque at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the torque acts, from one end, over the span
    shear_modulus : G [Pa]
        shear modulus
    torsion_constant : J [m^4]
        Saint-Venant torsion constant
    decay : k [1/m]
        decay of held warping along the bar

    Returns
    -------
    phi [rad]

    Source
    ------
    Vlasov, Thin-Walled Elastic Beams; AISC Design Guide 9, concentrated torque, ends pinned (from memory)
    """
    one, other = tanh(decay * place * span), tanh(decay * (1 - place) * span)
    held = 1 / (decay * (1 / one + 1 / other))
    return torque / (shear_modulus * torsion_constant) * (span * place * (1 - place) - held)


@formula
def eccentric_torque(
    moment: Number, arm_y: Number, force_z: Number, arm_z: Number, force_y: Number
) -> Number:
    """Torque about the shear centre of a member from the load where the mount is bolted.

    T = M_x + y * F_z - z * F_y

    Parameters
    ----------
    moment : M_x [N*m]
        moment about the member, at the bolts
    arm_y : y [m]
        shear centre to the bolts, away from the frame
    force_z : F_z [N]
        force along the shaft
    arm_z : z [m]
        shear centre to the bolts, along the shaft
    force_y : F_y [N]
        force away from the frame

    Returns
    -------
    T [N*m]

    Source
    ------
    statics, r x F about the shear centre
    """
    return moment + arm_y * force_z - arm_z * force_y


@formula
def eccentric_bending(moment: Number, arm: Number, force: Number) -> Number:
    """Bending moment of a member with that of a pull along it beside its centroid.

    M = M_0 + a * F

    Parameters
    ----------
    moment : M_0 [N*m]
        moment at the bolts
    arm : a [m]
        centroid to the bolts
    force : F [N]
        force along the member

    Returns
    -------
    M [N*m]

    Source
    ------
    statics, r x F about the centroid
    """
    return moment + arm * force


@formula
def at_the_bolts(
    move: Number, turn_1: Number, arm_1: Number, turn_2: Number, arm_2: Number
) -> Number:
    """Movement at the mount's bolts when the member behind them moves and turns.

    d = w + theta_1 * r_1 - theta_2 * r_2

    Parameters
    ----------
    move : w [m]
        movement of the member's axis
    turn_1 : theta_1 [rad]
        first turn
    arm_1 : r_1 [m]
        its arm to the bolts
    turn_2 : theta_2 [rad]
        second turn
    arm_2 : r_2 [m]
        its arm to the bolts

    Returns
    -------
    d [m]

    Source
    ------
    small rigid-body motion, theta x r
    """
    return move + turn_1 * arm_1 - turn_2 * arm_2


@formula
def skewed_force(
    force: Number, other: Number, product: float, second_moment: float, other_second: float
) -> Number:
    """Force that bends a section without symmetry as much as one whose axes are principal.

    Q = (F - F_2 * I_12 / I_2) / (1 - I_12**2 / (I_1 * I_2))

    Parameters
    ----------
    force : F [N]
        force in this direction
    other : F_2 [N]
        force in the other direction
    product : I_12 [m^4]
        product moment of area
    second_moment : I_1 [m^4]
        second moment for bending in this direction
    other_second : I_2 [m^4]
        second moment for bending in the other direction

    Returns
    -------
    Q [N]

    Source
    ------
    unsymmetrical bending, Timoshenko, Strength of Materials (from memory)
    """
    share = 1 - product**2 / (second_moment * other_second)
    return (force - other * product / other_second) / share


@formula
def skewed_moment(
    moment: Number, other: Number, product: float, second_moment: float, other_second: float
) -> Number:
    """Moment that bends a section without symmetry as much as one whose axes are principal.

    Q = (M + M_2 * I_12 / I_2) / (1 - I_12**2 / (I_1 * I_2))

    Parameters
    ----------
    moment : M [N*m]
        moment that bends in this direction, right-handed
    other : M_2 [N*m]
        moment that bends in the other direction, right-handed
    product : I_12 [m^4]
        product moment of area
    second_moment : I_1 [m^4]
        second moment for bending in this direction
    other_second : I_2 [m^4]
        second moment for bending in the other direction

    Returns
    -------
    Q [N*m]

    Source
    ------
    unsymmetrical bending, Timoshenko, Strength of Materials (from memory)
    """
    share = 1 - product**2 / (second_moment * other_second)
    return (moment + other * product / other_second) / share
