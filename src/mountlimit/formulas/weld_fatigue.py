"""Fillet welds that are loaded again and again: stress ranges in the throat and at the toe.

The residual stress beside a weld is as high as the yield strength, so only the range counts, not
the mean.  Curves of EN 1993-1-9 figures 7.1 and 7.2; they begin at ten thousand cycles.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def across_throat(across: Number, normal: Number, throat: Number) -> Number:
    """Stress across the throat of a fillet, whichever way its plane is turned about the root.

    sigma = sqrt(q_2**2 + q_3**2) / a

    Parameters
    ----------
    across : q_2 [N/m]
        force per length across the line, in the face welded to
    normal : q_3 [N/m]
        force per length normal to the face
    throat : a [m]
        throat of the fillet

    Returns
    -------
    sigma [Pa]

    Source
    ------
    EN 1993-1-9 clause 5(6): sigma_wf of the stresses normal to the throat and across it (from memory)
    """
    return np.sqrt(across**2 + normal**2) / throat


@formula
def along_throat(along: Number, throat: Number) -> Number:
    """Shear stress along the throat of a fillet.

    tau = q_1 / a

    Parameters
    ----------
    along : q_1 [N/m]
        force per length along the line
    throat : a [m]
        throat of the fillet

    Returns
    -------
    tau [Pa]

    Source
    ------
    EN 1993-1-9 clause 5(6): tau_wf (from memory)
    """
    return along / throat


@formula
def start_range(stress: Number, reverse: Number) -> Number:
    """Stress range of a start, from the reversed share of a stress to its peak.

    d_s = s * (1 + r)

    Parameters
    ----------
    stress : s [Pa]
        stress that the pull brings
    reverse : r [-]
        reversed share; 0 for starts from rest

    Returns
    -------
    d_s [Pa]

    Source
    ------
    stress range: largest less smallest

    Examples
    --------
    >>> start_range(20e6, 0.5)
    3.000e+07
    """
    return stress * (1 + reverse)


@formula
def turning_range(stress: Number, reverse: Number) -> Number:
    """Stress range of a turn, where a pull that stands still goes once round the part.

    d_s = 2 * s * max(1, r)

    Parameters
    ----------
    stress : s [Pa]
        stress where the pull lies square to the weld, or along it
    reverse : r [-]
        reversed share, which only counts above 1

    Returns
    -------
    d_s [Pa]

    Source
    ------
    rotating load: from one side to the other in every turn

    Examples
    --------
    >>> float(turning_range(4e6, 0.5))
    8.000e+06
    """
    return 2 * stress * np.maximum(1, reverse)


@formula
def range_allowed(category: Number, cycles: Number) -> Number:
    """Stress range allowed by a detail category of direct stress, for a number of cycles.

    d_R = d_C * max((2000000 / max(N, 10000))**(1 / 3),
        0.4**(1 / 3) * max(5000000 / max(N, 10000), 0.05)**0.2)

    Parameters
    ----------
    category : d_C [Pa]
        detail category: range allowed for two million cycles
    cycles : N [-]
        number of cycles

    Returns
    -------
    d_R [Pa]

    Source
    ------
    EN 1993-1-9 figure 7.1: slope 3 to 5 million cycles, 5 to the cut-off at a hundred million

    Examples
    --------
    >>> float(range_allowed(100e6, 5e6))
    7.368e+07
    """
    counted = np.maximum(cycles, 10000)
    steep = (2000000 / counted) ** (1 / 3)
    flat = 0.4 ** (1 / 3) * np.maximum(5000000 / counted, 0.05) ** 0.2
    return category * np.maximum(steep, flat)


@formula
def shear_range_allowed(category: Number, cycles: Number) -> Number:
    """Stress range allowed by a detail category of shear stress, for a number of cycles.

    d_R = d_C * max(2000000 / max(N, 10000), 0.02)**0.2

    Parameters
    ----------
    category : d_C [Pa]
        detail category: range allowed for two million cycles
    cycles : N [-]
        number of cycles

    Returns
    -------
    d_R [Pa]

    Source
    ------
    EN 1993-1-9 figure 7.2: slope 5 to the cut-off at a hundred million cycles

    Examples
    --------
    >>> float(shear_range_allowed(100e6, 1e8))
    4.573e+07
    """
    return category * np.maximum(2000000 / np.maximum(cycles, 10000), 0.02) ** 0.2


@formula
def equal_range(across: Number, along: Number, allowed: Number, shear_allowed: Number) -> Number:
    """Stress range across the throat that does as much as both ranges together.

    d_e = (d_s**3 + (d_t * d_R / d_Q)**3)**(1 / 3)

    Parameters
    ----------
    across : d_s [Pa]
        stress range across the throat
    along : d_t [Pa]
        stress range along the throat
    allowed : d_R [Pa]
        range allowed across the throat
    shear_allowed : d_Q [Pa]
        range allowed along the throat

    Returns
    -------
    d_e [Pa]

    Source
    ------
    EN 1993-1-9 clause 8(3) has the fifth power on the shear: with the third the result goes in step
    with the load, and is up to 6 per cent on the safe side, never under

    Examples
    --------
    >>> float(equal_range(30e6, 40e6, 36e6, 80e6))
    3.202e+07
    """
    return (across**3 + (along * allowed / shear_allowed) ** 3) ** (1 / 3)
