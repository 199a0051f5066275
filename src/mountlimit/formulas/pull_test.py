"""A pull by hand on the sprocket, read back: how much the mount gives against its model."""

from __future__ import annotations

from typing import Any

from ..worked import formula
from ._maths import larger, sqrt

Number = Any


@formula
def at_stick_end(movement: Number, lean: Number, stick: Number) -> Number:
    """Movement of the end of a stick that stands on the sprocket along the shaft.

    u_B = u + psi * L

    Parameters
    ----------
    movement : u [m]
        movement of the sprocket along the pull
    lean : psi [rad]
        lean of the shaft along the pull
    stick : L [m]
        length of the stick

    Returns
    -------
    u_B [m]

    Source
    ------
    geometry of a small turn
    """
    return movement + lean * stick


@formula
def lean_by_ratio(lean: Number, ratio_error: Number) -> Number:
    """Lean of the model with the ratio of lean to movement that is looked at.

    psi = e * psi_m

    Parameters
    ----------
    lean : psi_m [rad]
        lean by the model
    ratio_error : e [-]
        true ratio of lean to movement over that of the model

    Returns
    -------
    psi [rad]

    Source
    ------
    definition of the ratio
    """
    return ratio_error * lean


@formula
def flexibility_factor(reading: Number, own_bending: Number, model: Number) -> Number:
    """Give of mount, joint and frame by the pull over that of the model.

    c = max((m - s) / u, 0.05)

    Parameters
    ----------
    reading : m [m]
        movement read at the mark
    own_bending : s [m]
        part of it that is the shaft's own bending
    model : u [m]
        movement of the mark by the model, shaft left out

    Returns
    -------
    c [-]

    Valid for
    ---------
    a reading with play taken up first; one that leaves less than 0.05 tells no more than "stiff"

    Source
    ------
    definition of the ratio
    """
    return larger((reading - own_bending) / model, 0.05)


@formula
def lean_factor(factor: Number, ratio_error: Number) -> Number:
    """Lean of mount, joint and frame over that of the model.

    c_t = c * e

    Parameters
    ----------
    factor : c [-]
        their give by the pull over that of the model
    ratio_error : e [-]
        true ratio of lean to movement over that of the model

    Returns
    -------
    c_t [-]

    Source
    ------
    definition of the ratio
    """
    return factor * ratio_error


@formula
def share_of_movement(movement: Number, at_mark: Number) -> Number:
    """Share of what a mark moves that is no lean.

    q = u / u_m

    Parameters
    ----------
    movement : u [m]
        movement of the sprocket by the model
    at_mark : u_m [m]
        movement of the mark by the model

    Returns
    -------
    q [-]

    Source
    ------
    definition
    """
    return movement / at_mark


@formula
def mark_error(
    reading_error: Number, factor: Number, model: Number, ratio_spread: Number, share: Number
) -> Number:
    """Error of the factor that one mark gives the lean: of the reading, and of the model's ratio.

    d = sqrt((a / u)**2 + (b * q * c)**2)

    Parameters
    ----------
    reading_error : a [m]
        error of the reading
    factor : c [-]
        factor by this mark
    model : u [m]
        movement of the mark by the model, shaft left out
    ratio_spread : b [-]
        half the range of the ratio of lean to movement
    share : q [-]
        share of what the mark moves that is no lean

    Returns
    -------
    d [-]

    Source
    ------
    independent errors, root of the sum of squares
    """
    return sqrt((reading_error / model) ** 2 + (ratio_spread * share * factor) ** 2)


@formula
def both_marks(first: Number, first_error: Number, second: Number, second_error: Number) -> Number:
    """One factor from two marks, each weighted by its error.

    c = (c_A / d_A**2 + c_B / d_B**2) / (1 / d_A**2 + 1 / d_B**2)

    Parameters
    ----------
    first : c_A [-]
        factor by mark A
    first_error : d_A [-]
        its error
    second : c_B [-]
        factor by mark B
    second_error : d_B [-]
        its error

    Returns
    -------
    c [-]

    Source
    ------
    weighted mean of independent readings (least squares)
    """
    w_a, w_b = 1 / first_error**2, 1 / second_error**2
    return (first * w_a + second * w_b) / (w_a + w_b)


@formula
def lever_torque(force: Number, lever: Number) -> Number:
    """Torque that a scale reads at the end of a lever.

    T = F * r

    Parameters
    ----------
    force : F [N]
        force on the scale, square to the lever
    lever : r [m]
        from the shaft axis to the scale

    Returns
    -------
    T [N*m]

    Source
    ------
    statics
    """
    return force * lever


@formula
def torque_constant_from_lever(torque: Number, current: Number, no_load_current: Number) -> Number:
    """Torque constant from a torque measured with the rotor held.

    K_t = T / (I - I_0)

    Parameters
    ----------
    torque : T [N*m]
        torque at the shaft
    current : I [A]
        current that flowed, as the controller counts it
    no_load_current : I_0 [A]
        current that covers the motor's own losses

    Returns
    -------
    K_t [N*m/A]

    Source
    ------
    torque proportional to current less the no-load current (machine texts, from memory)
    """
    return torque / (current - no_load_current)
