"""A jack screw beside slotted bolts: what it takes of the pull, and what it leaves to friction."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def jack_share(along: Number, pull: Number) -> Number:
    """Part of the force along the slots that the jack screw holds: no more than the pull, and only its way.

    F_j = max(min(H, P), 0) + min(max(H, P), 0)

    Parameters
    ----------
    along : H [N]
        force of the mount on all its frame bolts along the slots
    pull : P [N]
        part of the chain's pull along the slots

    Returns
    -------
    F_j [N]

    Valid for
    ---------
    a screw that stands on the side the chain pulls to; it cannot hold back

    Source
    ------
    statics of a stop that bears one way; what weight and knocks put on top is left to friction (safe side)

    Examples
    --------
    >>> float(jack_share(900.0, 1000.0))
    900.0
    """
    return np.maximum(np.minimum(along, pull), 0.0) + np.minimum(np.maximum(along, pull), 0.0)


@formula
def jack_force(along: Number, pull: Number) -> Number:
    """Force that the jack screw itself must stand, friction of the bolts left out.

    F_s = max(abs(H), abs(P))

    Parameters
    ----------
    along : H [N]
        force of the mount on all its frame bolts along the slots
    pull : P [N]
        part of the chain's pull along the slots

    Returns
    -------
    F_s [N]

    Source
    ------
    statics; the larger of the two, whichever way they act (safe side)

    Examples
    --------
    >>> float(jack_force(1200.0, 1000.0))
    1200.0
    """
    return np.maximum(np.abs(along), np.abs(pull))


@formula
def held_shear(
    along: Number, across: Number, jack: Number, count: float, off: float, radius: float,
    polar_sum: float,
) -> Number:  # fmt: skip
    """Shear that friction must hold at one bolt beside a jack screw.

    V = sqrt((V_s - F_j / n)**2 + V_c**2) + abs(F_j) * d * r / S

    Parameters
    ----------
    along : V_s [N]
        shear of the bolt along the slots, without the screw
    across : V_c [N]
        shear of the bolt across the slots
    jack : F_j [N]
        force the screw holds
    count : n [-]
        number of bolts
    off : d [m]
        how far the screw's line passes from the middle of the bolts
    radius : r [m]
        bolt to the middle of the bolts
    polar_sum : S [m^2]
        sum of the squared distances of all bolts from it

    Returns
    -------
    V [N]

    Source
    ------
    statics: the screw's force takes equal shares off the bolts when its line goes through their
    middle; a line beside it turns the mount, Shigley's Mechanical Engineering Design 9th ed. eq. 8-57

    Examples
    --------
    >>> float(held_shear(600.0, 300.0, 1600.0, 4, 0.01, 0.05, 0.01))
    440.55
    """
    straight = np.sqrt((along - jack / count) ** 2 + across**2)
    return straight + np.abs(jack) * off * radius / polar_sum


@formula
def tip_area(tip_diameter: Number, thickness: Number) -> Number:
    """Area with which a screw's flat tip bears on the edge of a plate.

    A = pi / 4 * d_p * min(d_p, t)

    Parameters
    ----------
    tip_diameter : d_p [m]
        diameter of the tip
    thickness : t [m]
        thickness of the plate

    Returns
    -------
    A [m^2]

    Source
    ------
    geometry; on a plate thinner than the tip the ellipse inside the part that bears (safe side)

    Examples
    --------
    >>> float(tip_area(0.0055, 0.008))
    2.376e-05
    """
    return np.pi / 4 * tip_diameter * np.minimum(tip_diameter, thickness)


@formula
def crushing_force(yield_strength: float, ratio: float, area: float) -> float:
    """Force at which the edge of a plate yields under a screw's tip.

    F = f_y * k * A

    Parameters
    ----------
    yield_strength : f_y [Pa]
        yield strength of the plate
    ratio : k [-]
        its compressive strength over its tensile one
    area : A [m^2]
        area pressed

    Returns
    -------
    F [N]

    Source
    ------
    definition; the metal round the tip, which holds it together, is left out (safe side)

    Examples
    --------
    >>> crushing_force(2.35e8, 1.0, 2.4e-5)
    5640.0
    """
    return yield_strength * ratio * area
