"""What lies round a bolt hole: the lower of two limits, slots, single lap, strength at work."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def ultimate_at_work(ultimate: Number, yield_now: Number, yield_card: Number) -> Number:
    """Ultimate strength of the piece in hand: lowered with its yield strength, never raised.

    f_u = f_c * min(f_y / f_0, 1)

    Parameters
    ----------
    ultimate : f_c [Pa]
        ultimate strength of the card
    yield_now : f_y [Pa]
        yield strength of the piece
    yield_card : f_0 [Pa]
        yield strength of the card

    Returns
    -------
    f_u [Pa]

    Source
    ------
    common practice, no source (a softer piece of one material is softer in both)
    """
    return ultimate * np.minimum(yield_now / yield_card, 1.0)


@formula
def shear_at_work(shear_yield: Number, shear_strength: Number) -> Number:
    """Shear stress that may act: yield in shear, but not more than the shear strength.

    tau = min(tau_y, tau_u)

    Parameters
    ----------
    shear_yield : tau_y [Pa]
        yield in shear
    shear_strength : tau_u [Pa]
        shear strength of the card

    Returns
    -------
    tau [Pa]

    Source
    ------
    both must hold
    """
    return np.minimum(shear_yield, shear_strength)


@formula
def governing_factor(first: Number, second: Number) -> Number:
    """The smaller of two factors, kept above nothing for a hole that runs into an edge.

    k = max(min(a, b), 0.01)

    Parameters
    ----------
    first : a [-]
        by one neighbour
    second : b [-]
        by the other neighbour

    Returns
    -------
    k [-]

    Source
    ------
    EN 1993-1-8 table 3.4 (the smallest counts); the floor only keeps the division defined
    """
    return np.maximum(np.minimum(first, second), 0.01)


@formula
def clear_between(spacing: Number, hole_diameter: Number) -> Number:
    """Distance from the edge of a hole to the edge of the next one.

    l_c = p - d_0

    Parameters
    ----------
    spacing : p [m]
        between the hole centres, along the load
    hole_diameter : d_0 [m]
        diameter of the holes

    Returns
    -------
    l_c [m]

    Source
    ------
    AISC 360-16 section J3.10
    """
    return spacing - hole_diameter


@formula
def slotted_bearing(force: Number) -> Number:
    """Bearing resistance at a slotted hole, load across the slot.

    F_s = 0.6 * F_b

    Parameters
    ----------
    force : F_b [N]
        bearing resistance at a round hole

    Returns
    -------
    F_s [N]

    Source
    ------
    EN 1993-1-8 table 3.4 note 1 (from memory)
    """
    return 0.6 * force


@formula
def single_lap_bearing(
    plate_strength: Number, diameter: Number, thickness: Number, gamma: Number
) -> Number:
    """Most that a bolt may bear in a single lap with one row of bolts.

    F_b = 1.5 * f_u * d * t / g

    Parameters
    ----------
    plate_strength : f_u [Pa]
        ultimate strength of the plate
    diameter : d [m]
        nominal diameter of the bolt
    thickness : t [m]
        thickness of the plate
    gamma : g [-]
        partial factor

    Returns
    -------
    F_b [N]

    Source
    ------
    EN 1993-1-8 clause 3.6.1(10)
    """
    return 1.5 * plate_strength * diameter * thickness / gamma


@formula
def lower_force(first: Number, second: Number) -> Number:
    """The lower of two resistances.

    F = min(A, B)

    Parameters
    ----------
    first : A [N]
        one resistance
    second : B [N]
        the other resistance

    Returns
    -------
    F [N]

    Source
    ------
    the lower governs
    """
    return np.minimum(first, second)


@formula
def part_size(part: Number) -> Number:
    """Size of one part of a bolt's shear, whichever way it points.

    V_a = abs(V)

    Parameters
    ----------
    part : V [N]
        part of the shear

    Returns
    -------
    V_a [N]

    Source
    ------
    EN 1993-1-8 table 3.4 note 3: parts along and across the edge each for themselves (from memory)
    """
    return np.abs(part)


@formula
def share_of_ultimate(ultimate: Number, share: Number) -> Number:
    """Shear stress at which a bolt head punches through a metal plate.

    tau = c * f_u

    Parameters
    ----------
    ultimate : f_u [Pa]
        ultimate strength
    share : c [-]
        share of it that acts in shear

    Returns
    -------
    tau [Pa]

    Source
    ------
    EN 1993-1-8 table 3.4, punching shear resistance 0.6 f_u
    """
    return ultimate * share
