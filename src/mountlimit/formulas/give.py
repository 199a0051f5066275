"""How far chain and mount give, felt at the motor shaft, and small helpers of the inputs."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def sag_depth(slack: Number, span: Number) -> Number:
    """Sag of the slack run at mid-span.

    s = c * L

    Parameters
    ----------
    slack : c [-]
        sag over the length of the run
    span : L [m]
        length of the run

    Returns
    -------
    s [m]

    Source
    ------
    definition
    """
    return slack * span


@formula
def chain_stiffness(stretch_ratio: Number, tensile_strength: Number, span: Number) -> Number:
    """Stretching stiffness of the tight run.

    k = c * F_u / L

    Parameters
    ----------
    stretch_ratio : c [-]
        stiffness times length over tensile strength
    tensile_strength : F_u [N]
        minimum tensile strength
    span : L [m]
        length of the run

    Returns
    -------
    k [N/m]

    Source
    ------
    common practice, no source (the ratio is an assumption)
    """
    return stretch_ratio * tensile_strength / span


@formula
def turning_stiffness(
    chain_stiffness: Number, softness: Number, effective_radius: Number
) -> Number:
    """Stiffness of chain and mount in series, felt at the motor shaft.

    k_t = r**2 / (1 / k + w)

    Parameters
    ----------
    chain_stiffness : k [N/m]
        stretching stiffness of the tight run
    softness : w [m/N]
        movement of the sprocket along the chain per newton
    effective_radius : r [m]
        effective radius of the driving sprocket

    Returns
    -------
    k_t [N*m/rad]

    Source
    ------
    springs in series
    """
    return effective_radius**2 / (1 / chain_stiffness + softness)


@formula
def peak_pull(pull: Number, starting_factor: Number) -> Number:
    """Peak of the pull at a start.

    F_p = c * F_e

    Parameters
    ----------
    pull : F_e [N]
        steady effective pull
    starting_factor : c [-]
        starting factor

    Returns
    -------
    F_p [N]

    Source
    ------
    definition of the starting factor
    """
    return starting_factor * pull


@formula
def peak_torque(torque: Number, starting_factor: Number) -> Number:
    """Torque that the peak pull puts on shaft and hub.

    T_p = c * T

    Parameters
    ----------
    torque : T [N*m]
        torque of the motor
    starting_factor : c [-]
        starting factor

    Returns
    -------
    T_p [N*m]

    Source
    ------
    definition of the starting factor; the rotor supplies the difference
    """
    return starting_factor * torque


@formula
def dynamic_strength(tensile_strength: Number) -> Number:
    """Minimum dynamic strength where none is published.

    F_d = 0.172 * F_u

    Parameters
    ----------
    tensile_strength : F_u [N]
        minimum tensile strength

    Returns
    -------
    F_d [N]

    Source
    ------
    lowest ratio in the strength table of ASME B29.1
    """
    return 0.172 * tensile_strength


@formula
def joined_strength(strength: Number, share: Number) -> Number:
    """Strength of a chain at the clip link that closes it.

    F_j = c * F

    Parameters
    ----------
    strength : F [N]
        strength of the chain
    share : c [-]
        strength of the link over that of the chain

    Returns
    -------
    F_j [N]

    Source
    ------
    The Complete Guide to Chain, table 2.1 (fatigue strength of connecting links)
    """
    return share * strength


@formula
def share_of_modulus(modulus: Number, share: Number) -> Number:
    """Modulus after time under load, or another modulus of the same material.

    E_c = c * E

    Parameters
    ----------
    modulus : E [Pa]
        modulus
    share : c [-]
        share

    Returns
    -------
    E_c [Pa]

    Source
    ------
    ratio from the material card
    """
    return share * modulus


@formula
def creep_share(creep_modulus: Number, elastic_modulus: Number) -> Number:
    """Creep modulus over the short-term modulus of the same card, never above 1.

    c = min(1, E_c / E)

    Parameters
    ----------
    creep_modulus : E_c [Pa]
        modulus after the time under load
    elastic_modulus : E [Pa]
        short-term modulus

    Returns
    -------
    c [-]

    Source
    ------
    Crawford, Plastics Engineering 3rd ed., ch. 2 (creep-modulus method)
    """
    return np.minimum(1, creep_modulus / elastic_modulus)


@formula
def softness(movement: Number, load: Number) -> Number:
    """Movement of a point of the shaft along the chain per newton of shaft load.

    w = u / F

    Parameters
    ----------
    movement : u [m]
        movement under the load
    load : F [N]
        load along the chain line

    Returns
    -------
    w [m/N]

    Source
    ------
    definition
    """
    return movement / load
