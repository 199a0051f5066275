"""Fillet welds as lines: force per length from force and moment on a group of one or two lines.

The group is one fillet, or two equal ones side by side.  Along: along the lines; across: from one
line to the other, in the face welded to; normal: square to that face.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def direct(force: Number, lines: Number, length: Number) -> Number:
    """Force per length from a force on the group.

    q = abs(F) / (n * l)

    Parameters
    ----------
    force : F [N]
        force on the group
    lines : n [-]
        number of lines
    length : l [m]
        length of each line

    Returns
    -------
    q [N/m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 9-2
    """
    return np.abs(force) / (lines * length)


@formula
def pair_bending(moment: Number, modulus: Number, throat: Number) -> Number:
    """Force per length of two lines bent about the line midway between.

    q = abs(M) * a / Z

    Parameters
    ----------
    moment : M [N*m]
        moment about the lines
    modulus : Z [m^3]
        section modulus of the pair
    throat : a [m]
        throat of the fillet

    Returns
    -------
    q [N/m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 9-4
    """
    return np.abs(moment) * throat / modulus


@formula
def throat_bending(moment: Number, length: Number, throat: Number) -> Number:
    """Force per length at the rim of the throat of a single fillet bent about its own line.

    q = 6 * abs(M) / (l * a)

    Parameters
    ----------
    moment : M [N*m]
        moment about the line
    length : l [m]
        length of each line
    throat : a [m]
        throat of the fillet

    Returns
    -------
    q [N/m]

    Source
    ------
    section modulus l * a**2 / 6 of the throat; EN 1993-1-8 clause 4.12 asks to avoid it
    """
    return 6 * np.abs(moment) / (length * throat)


@formula
def end_bending(moment: Number, lines: Number, length: Number) -> Number:
    """Force per length at the ends of the lines, from a moment that lifts one end.

    q = 6 * abs(M) / (n * l**2)

    Parameters
    ----------
    moment : M [N*m]
        moment about the across axis
    lines : n [-]
        number of lines
    length : l [m]
        length of each line

    Returns
    -------
    q [N/m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table 9-2
    """
    return 6 * np.abs(moment) / (lines * length**2)


@formula
def unit_polar(lines: Number, length: Number, apart: Number) -> Number:
    """Unit polar second moment of one line, or of two side by side.

    J_u = n * (l**3 / 12 + l * d**2 / 4)

    Parameters
    ----------
    lines : n [-]
        number of lines
    length : l [m]
        length of each line
    apart : d [m]
        distance between the lines

    Returns
    -------
    J_u [m^3]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table 9-1
    """
    return lines * (length**3 / 12 + length * apart**2 / 4)


@formula
def torsion_across(torque: Number, length: Number, polar: Number) -> Number:
    """Force per length at the ends of the lines across them, from torsion.

    q = abs(T) * l / (2 * J_u)

    Parameters
    ----------
    torque : T [N*m]
        moment about the normal
    length : l [m]
        length of each line
    polar : J_u [m^3]
        unit polar second moment of the lines

    Returns
    -------
    q [N/m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 9-3
    """
    return np.abs(torque) * length / (2 * polar)


@formula
def torsion_along(torque: Number, apart: Number, polar: Number) -> Number:
    """Force per length along the lines, from torsion.

    q = abs(T) * d / (2 * J_u)

    Parameters
    ----------
    torque : T [N*m]
        moment about the normal
    apart : d [m]
        distance between the lines
    polar : J_u [m^3]
        unit polar second moment of the lines

    Returns
    -------
    q [N/m]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 9-3
    """
    return np.abs(torque) * apart / (2 * polar)


@formula
def together(first: Number, second: Number) -> Number:
    """Forces per length of one direction, added in size.

    q = q_1 + q_2

    Parameters
    ----------
    first : q_1 [N/m]
        first part
    second : q_2 [N/m]
        second part

    Returns
    -------
    q [N/m]

    Source
    ------
    every sign is possible: the safe side
    """
    return first + second


@formula
def resultant(along: Number, across: Number, normal: Number) -> Number:
    """Force per length of a fillet, whatever its direction.

    q = sqrt(q_1**2 + q_2**2 + q_3**2)

    Parameters
    ----------
    along : q_1 [N/m]
        along the line
    across : q_2 [N/m]
        across it
    normal : q_3 [N/m]
        normal to the face

    Returns
    -------
    q [N/m]

    Source
    ------
    EN 1993-1-8 clause 4.5.3.3
    """
    return np.sqrt(along**2 + across**2 + normal**2)
