"""Stress at the end of a round spacer or pillar, solid or bored."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula
from ._maths import pi

Number = Any


@formula
def bending_moment(first: Number, second: Number) -> Number:
    """Bending moment of a round bar from its two parts.

    M = sqrt(M_1**2 + M_2**2)

    Parameters
    ----------
    first : M_1 [N*m]
        part about one axis across the bar
    second : M_2 [N*m]
        part about the other

    Returns
    -------
    M [N*m]

    Source
    ------
    vector sum
    """
    return np.sqrt(first**2 + second**2)


@formula
def normal_stress(force: Number, moment: Number, diameter: Number, bore: Number) -> Number:
    """Largest normal stress of a round bar, solid or bored, under force and bending.

    sigma = 4 * abs(N) / (pi * (D**2 - d**2)) + 32 * M * D / (pi * (D**4 - d**4))

    Parameters
    ----------
    force : N [N]
        along the bar, either way
    moment : M [N*m]
        bending moment, its size
    diameter : D [m]
        outer diameter
    bore : d [m]
        bore, nothing when solid

    Returns
    -------
    sigma [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 3-10 and table A-18 (from memory)

    Examples
    --------
    >>> normal_stress(0.0, 30.0, 0.012, 0.0)
    1.768e+08
    """
    force_part = 4 * abs(force) / (pi * (diameter**2 - bore**2))
    return force_part + 32 * moment * diameter / (pi * (diameter**4 - bore**4))


@formula
def shear_stress(force: Number, torque: Number, diameter: Number, bore: Number) -> Number:
    """Largest shear stress of a round bar, solid or bored, under shear and twist.

    tau = 12 * V / (pi * (D**2 - d**2)) + 16 * abs(T) * D / (pi * (D**4 - d**4))

    Three times the mean shear bounds that beside a small bore; a thin tube has twice, a solid bar one
    and a half, so this is the safe side.

    Parameters
    ----------
    force : V [N]
        across the bar, its size
    torque : T [N*m]
        about the bar, either way
    diameter : D [m]
        outer diameter
    bore : d [m]
        bore, nothing when solid

    Returns
    -------
    tau [Pa]

    Source
    ------
    twist: Shigley's Mechanical Engineering Design 9th ed. section 3-12 (from memory); shear: a hole in
    a field of shear along the bar doubles it (Timoshenko & Goodier, Theory of Elasticity, from memory)

    Examples
    --------
    >>> shear_stress(0.0, 25.0, 0.015, 0.0)
    3.773e+07
    """
    force_part = 12 * force / (pi * (diameter**2 - bore**2))
    return force_part + 16 * abs(torque) * diameter / (pi * (diameter**4 - bore**4))
