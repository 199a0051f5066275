"""A stretch of mount as a beam: turn and movement of its far end, and its parts of the response."""

from __future__ import annotations

from typing import Any

from ..worked import formula

Number = Any


@formula
def shear_movement(force: Number, length: Number, shear_modulus: Number, area: Number) -> Number:
    """Movement of the end of a short beam by shear.

    w_s = 1.2 * F * L / (G * A)

    Parameters
    ----------
    force : F [N]
        transverse force
    length : L [m]
        length of the beam
    shear_modulus : G [Pa]
        shear modulus
    area : A [m^2]
        area of the rectangular section

    Returns
    -------
    w_s [m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table 4-1 (1.2 for a rectangle)
    """
    return 1.2 * force * length / (shear_modulus * area)


@formula
def partly_held_twist(free: Number, held: Number, share: Number) -> Number:
    """Twist of a length whose ends are partly kept from warping.

    phi = (1 - c) * phi_f + c * phi_h

    Parameters
    ----------
    free : phi_f [rad]
        twist with both ends free to warp
    held : phi_h [rad]
        twist with the ends held as far as their bolts span
    share : c [-]
        0 free, 1 held

    Returns
    -------
    phi [rad]

    Source
    ------
    interpolation between two bounds
    """
    return (1 - share) * free + share * held


@formula
def partly_held_bimoment(held: Number, share: Number) -> Number:
    """Bimoment where the ends are partly kept from warping.

    B = c * B_h

    Parameters
    ----------
    held : B_h [N*m^2]
        bimoment with the end held
    share : c [-]
        0 free, 1 held

    Returns
    -------
    B [N*m^2]

    Source
    ------
    interpolation between two bounds
    """
    return share * held


@formula
def bent_and_sheared(bend: Number, shear: Number, handed: Number) -> Number:
    """Movement of the end of a segment by bending and by shear.

    w = h * w_b + w_s

    Parameters
    ----------
    bend : w_b [m]
        movement by bending, seen in the sense of the moment
    shear : w_s [m]
        movement by shear
    handed : h [-]
        +1 or -1: which way that sense moves the end

    Returns
    -------
    w [m]

    Source
    ------
    superposition
    """
    return handed * bend + shear
