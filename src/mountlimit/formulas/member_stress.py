"""Stress in a frame member: bending of a section without symmetry, twist of tubes and of open sections."""

from __future__ import annotations

from typing import Any

from ..worked import formula
from ._maths import sqrt

Number = Any


@formula
def bending_stress(moment: Number, distance: Number, second_moment: Number) -> Number:
    """Bending stress at a distance from the centroid.

    sigma = M * c / I

    Parameters
    ----------
    moment : M [N*m]
        bending moment
    distance : c [m]
        from the centroid, in the direction of bending
    second_moment : I [m^4]
        second moment for bending in that direction

    Returns
    -------
    sigma [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 3-10
    """
    return moment * distance / second_moment


@formula
def skewed_stress(
    moment: Number, distance: Number, other_distance: Number, second_moment: Number,
    other_second: Number, product: Number,
) -> Number:  # fmt: skip
    """Stress of one bending moment at a point of a section whose axes are not principal.

    sigma = M * (I_2 * c - I_12 * c_2) / (I_1 * I_2 - I_12**2)

    Parameters
    ----------
    moment : M [N*m]
        moment that bends in the first direction
    distance : c [m]
        from the centroid to the point, in that direction
    other_distance : c_2 [m]
        from the centroid to the point, in the other direction
    second_moment : I_1 [m^4]
        second moment for bending in the first direction
    other_second : I_2 [m^4]
        second moment for bending in the other direction
    product : I_12 [m^4]
        product moment of area

    Returns
    -------
    sigma [Pa]

    Source
    ------
    Pilkey, Analysis and Design of Elastic Beams, section 1.3 (general bending formula)
    """
    share = other_second * distance - product * other_distance
    return moment * share / (second_moment * other_second - product**2)


@formula
def round_tube_bending(
    first: Number, second: Number, diameter: Number, second_moment: Number
) -> Number:
    """Largest bending stress of a round tube under two moments.

    sigma = sqrt(M_1**2 + M_2**2) * D / (2 * I)

    Parameters
    ----------
    first : M_1 [N*m]
        bending moment about one axis
    second : M_2 [N*m]
        bending moment about the other
    diameter : D [m]
        outer diameter
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    sigma [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 3-28
    """
    return sqrt(first**2 + second**2) * diameter / (2 * second_moment)


@formula
def in_size(first: Number, second: Number) -> Number:
    """Normal stresses at one point, added in size.

    sigma = abs(sigma_1) + abs(sigma_2)

    Parameters
    ----------
    first : sigma_1 [Pa]
        first stress
    second : sigma_2 [Pa]
        second stress

    Returns
    -------
    sigma [Pa]

    Source
    ------
    every sign is possible: the safe side
    """
    return abs(first) + abs(second)


@formula
def round_tube_twist(torque: Number, diameter: Number, torsion_constant: Number) -> Number:
    """Largest shear stress of a torque on a round tube.

    tau = T * D / (2 * J)

    Parameters
    ----------
    torque : T [N*m]
        torque
    diameter : D [m]
        outer diameter
    torsion_constant : J [m^4]
        torsion constant

    Returns
    -------
    tau [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 3-37
    """
    return torque * diameter / (2 * torsion_constant)


@formula
def direct_stress(force: Number, area: Number) -> Number:
    """Stress of a pull along a member.

    sigma = F / A

    Parameters
    ----------
    force : F [N]
        force along the member
    area : A [m^2]
        area of its section

    Returns
    -------
    sigma [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 3-9
    """
    return force / area


@formula
def closed_wall_stress(
    mean: Number, torque: Number, wall: Number, torsion_constant: Number
) -> Number:
    """Shear stress of a torque at the surface of a tube's wall, from that in its middle.

    tau = tau_m + T * t / J

    Parameters
    ----------
    mean : tau_m [Pa]
        shear stress in the middle of the wall, by Bredt's formula
    torque : T [N*m]
        torque
    wall : t [m]
        wall thickness
    torsion_constant : J [m^4]
        torsion constant

    Returns
    -------
    tau [Pa]

    Source
    ------
    EN 10210-2 and EN 10219-2, torsional modulus of hollow sections, square corners (from memory)
    """
    return mean + torque * wall / torsion_constant


@formula
def open_twist_stress(torque: Number, wall: Number, torsion_constant: Number) -> Number:
    """Shear stress of plain twist in the wall of an open section.

    tau = T * t / J

    Parameters
    ----------
    torque : T [N*m]
        torque that plain twist carries
    wall : t [m]
        wall thickness
    torsion_constant : J [m^4]
        Saint-Venant torsion constant

    Returns
    -------
    tau [Pa]

    Valid for
    ---------
    away from the inner corners, which yield first and even out in a ductile metal

    Source
    ------
    Timoshenko & Goodier, Theory of Elasticity, article 109 (from memory)
    """
    return torque * wall / torsion_constant


@formula
def solid_twist_stress(torque: Number, torsion_modulus: Number) -> Number:
    """Largest shear stress of plain twist in a solid bar.

    tau = T / W_t

    Parameters
    ----------
    torque : T [N*m]
        torque that plain twist carries
    torsion_modulus : W_t [m^3]
        torsion modulus

    Returns
    -------
    tau [Pa]

    Source
    ------
    definition of the torsion modulus
    """
    return torque / torsion_modulus
