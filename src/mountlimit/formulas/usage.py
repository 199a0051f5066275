"""Demand over capacity, and sums of angles and lengths."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def utilisation(demand: Number, capacity: Number) -> Number:
    """Utilisation: 1 means used up.

    u = E_d / R_d

    Parameters
    ----------
    demand : E_d [any]
        what is asked
    capacity : R_d [any]
        what it can bear

    Returns
    -------
    u [-]

    Source
    ------
    EN 1990, form E_d / R_d <= 1 (from memory)
    """
    return demand / capacity


@formula
def angle_sum(first: Number, second: Number) -> Number:
    """Two turns added.

    theta = a + b

    Parameters
    ----------
    first : a [rad]
        first turn
    second : b [rad]
        second turn

    Returns
    -------
    theta [rad]

    Source
    ------
    small turns add
    """
    return first + second


@formula
def length_sum(first: Number, second: Number) -> Number:
    """Two movements added.

    d = a + b

    Parameters
    ----------
    first : a [m]
        first movement
    second : b [m]
        second movement

    Returns
    -------
    d [m]

    Source
    ------
    small movements add
    """
    return first + second


@formula
def play_lean(play: Number, bearing_span: Number) -> Number:
    """Lean of the shaft from the play of its bearings.

    theta = 2 * p / l

    Parameters
    ----------
    play : p [m]
        radial play of each bearing
    bearing_span : l [m]
        between the bearings

    Returns
    -------
    theta [rad]

    Source
    ------
    geometry: both bearings taken up on opposite sides
    """
    return 2 * play / bearing_span


@formula
def chain_skew(
    yaw: Number, offset: Number, centre_distance: Number, built_skew: Number,
    built_offset: Number, play: Number,
) -> Number:  # fmt: skip
    """Angle between chain and driving sprocket: under load and as built, all one way.

    eps = abs(psi) + atan(abs(d_z) / C) + eps_0 + atan(d_0 / C) + theta_p

    Parameters
    ----------
    yaw : psi [rad]
        lean of the shaft along the chain line
    offset : d_z [m]
        movement of the sprocket off its plane
    centre_distance : C [m]
        between the sprocket axes
    built_skew : eps_0 [rad]
        as-built angle
    built_offset : d_0 [m]
        as-built offset
    play : theta_p [rad]
        lean from bearing play

    Returns
    -------
    eps [rad]

    Source
    ------
    geometry, worst sign of every part
    """
    c = centre_distance
    return (
        np.abs(yaw)
        + np.arctan(np.abs(offset) / c)
        + built_skew
        + np.arctan(built_offset / c)
        + play
    )


@formula
def plane_offset(offset: Number, built_offset: Number) -> Number:
    """Offset of the sprocket plane under load and as built.

    d = abs(d_z) + d_0

    Parameters
    ----------
    offset : d_z [m]
        movement of the sprocket off its plane
    built_offset : d_0 [m]
        as-built offset

    Returns
    -------
    d [m]

    Source
    ------
    geometry, worst sign
    """
    return np.abs(offset) + built_offset


@formula
def shaft_lean(yaw: Number, built_skew: Number, play: Number) -> Number:
    """Angle between the shafts: under load and as built, all one way.

    eps = abs(psi) + eps_0 + theta_p

    Parameters
    ----------
    yaw : psi [rad]
        lean of the shaft along the chain line
    built_skew : eps_0 [rad]
        as-built angle
    play : theta_p [rad]
        lean from bearing play

    Returns
    -------
    eps [rad]

    Source
    ------
    geometry, worst sign of every part
    """
    return np.abs(yaw) + built_skew + play
