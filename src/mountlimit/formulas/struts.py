"""A strut: a straight two-force member, how it gives, when it yields or buckles."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula
from ._maths import pi

Number = Any


@formula
def tube_area(diameter: Number, bore: Number) -> Number:
    """Cross-section of a round tube; a rod has no bore.

    A = pi * (D**2 - d**2) / 4

    Parameters
    ----------
    diameter : D [m]
        outer diameter
    bore : d [m]
        inner diameter

    Returns
    -------
    A [m^2]

    Source
    ------
    geometry

    Examples
    --------
    >>> tube_area(0.04, 0.036)
    2.388e-04
    """
    return pi * (diameter**2 - bore**2) / 4


@formula
def tube_second_moment(diameter: Number, bore: Number) -> Number:
    """Second moment of area of a round tube; a rod has no bore.

    I = pi * (D**4 - d**4) / 64

    Parameters
    ----------
    diameter : D [m]
        outer diameter
    bore : d [m]
        inner diameter

    Returns
    -------
    I [m^4]

    Source
    ------
    geometry

    Examples
    --------
    >>> tube_second_moment(0.04, 0.036)
    4.322e-08
    """
    return pi * (diameter**4 - bore**4) / 64


@formula
def bar_area(width: Number, thickness: Number) -> Number:
    """Cross-section of a flat bar.

    A = b * t

    Parameters
    ----------
    width : b [m]
        width
    thickness : t [m]
        thickness

    Returns
    -------
    A [m^2]

    Source
    ------
    geometry

    Examples
    --------
    >>> bar_area(0.02, 0.005)
    0.0001
    """
    return width * thickness


@formula
def bar_second_moment(width: Number, thickness: Number) -> Number:
    """Least second moment of area of a flat bar.

    I = max(b, t) * min(b, t)**3 / 12

    Parameters
    ----------
    width : b [m]
        width
    thickness : t [m]
        thickness

    Returns
    -------
    I [m^4]

    Source
    ------
    geometry

    Examples
    --------
    >>> float(bar_second_moment(0.02, 0.005))
    2.083e-10
    """
    return np.maximum(width, thickness) * np.minimum(width, thickness) ** 3 / 12


@formula
def strut_length(across: Number, height: Number, behind: Number) -> Number:
    """Length of a strut from the differences of its ends.

    L = sqrt(x**2 + y**2 + z**2)

    Parameters
    ----------
    across : x [m]
        difference across the mount
    height : y [m]
        difference in height
    behind : z [m]
        difference along the shaft

    Returns
    -------
    L [m]

    Source
    ------
    geometry

    Examples
    --------
    >>> float(strut_length(0.03, 0.04, 0.12))
    0.13
    """
    return np.sqrt(across**2 + height**2 + behind**2)


@formula
def strut_stiffness(elastic_modulus: Number, area: Number, length: Number, joint: Number) -> Number:
    """Stiffness of a strut along its axis, with a joint at each end.

    k = 1 / (L / (E * A) + 2 / k_e)

    Parameters
    ----------
    elastic_modulus : E [Pa]
        elastic modulus
    area : A [m^2]
        cross-section
    length : L [m]
        length
    joint : k_e [N/m]
        stiffness of one end joint

    Returns
    -------
    k [N/m]

    Source
    ------
    statics: springs one after another

    Examples
    --------
    >>> strut_stiffness(2.0e11, 1.0e-4, 0.2, 2.0e8)
    50000000.0
    """
    return 1 / (length / (elastic_modulus * area) + 2 / joint)


@formula
def pressed_only(force: Number) -> Number:
    """Push in a strut; pulled, there is none.

    P = max(-N, 0)

    Parameters
    ----------
    force : N [N]
        tension

    Returns
    -------
    P [N]

    Source
    ------
    definition

    Examples
    --------
    >>> float(pressed_only(-300.0))
    300.0
    """
    return np.maximum(-force, 0)


@formula
def yield_force(yield_strength: Number, area: Number) -> Number:
    """Force at which a bar yields.

    F_y = S_y * A

    Parameters
    ----------
    yield_strength : S_y [Pa]
        yield strength
    area : A [m^2]
        cross-section

    Returns
    -------
    F_y [N]

    Source
    ------
    definition

    Examples
    --------
    >>> yield_force(2.35e8, 1.0e-4)
    23500.0
    """
    return yield_strength * area


@formula
def euler_force(elastic_modulus: Number, second_moment: Number, length: Number) -> Number:
    """Elastic buckling force of a strut that turns freely at both ends.

    P_e = pi**2 * E * I / L**2

    Parameters
    ----------
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        least second moment of area
    length : L [m]
        length between the ends

    Returns
    -------
    P_e [N]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 4-42 (end condition 1)

    Examples
    --------
    >>> float(euler_force(2.1e11, 4.322e-8, 1.2))
    62207.3
    """
    return pi**2 * elastic_modulus * second_moment / length**2


@formula
def buckling_force(yield_force: Number, euler_force: Number) -> Number:
    """Force at which a centrally pressed strut buckles: by Euler, or by Johnson when it is stocky.

    P = P_e if P_e <= F_y / 2 else F_y * (1 - F_y / (4 * P_e))

    Parameters
    ----------
    yield_force : F_y [N]
        yield strength times cross-section
    euler_force : P_e [N]
        elastic buckling force

    Returns
    -------
    P [N]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 4-44 and 4-48: the two touch at half of yield

    Examples
    --------
    >>> float(buckling_force(10000.0, 4000.0)), float(buckling_force(10000.0, 10000.0))
    (4000.0, 7500.0)
    """
    johnson = yield_force * (1 - yield_force / (4 * euler_force))
    return np.where(euler_force <= yield_force / 2, euler_force, johnson)[()]
