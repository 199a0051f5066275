"""Stress that comes and goes with every start."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def alternating_stress(swing: Number, reverse: Number) -> Number:
    """Half the range of a stress that the pull brings, from its reversed share to its peak.

    s_a = s * (1 + r) / 2

    Parameters
    ----------
    swing : s [Pa]
        stress that the peak pull brings
    reverse : r [-]
        reversed share; 0 for starts from rest

    Returns
    -------
    s_a [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 6-36

    Examples
    --------
    >>> alternating_stress(100e6, 0.5)
    7.500e+07
    """
    return swing * (1 + reverse) / 2


@formula
def mean_stress(swing: Number, reverse: Number, standing: Number) -> Number:
    """Mean of a stress that comes and goes, on one that stands; as tensions, added in size.

    s_m = s_0 + s * abs(1 - r) / 2

    Parameters
    ----------
    swing : s [Pa]
        stress that the peak pull brings
    reverse : r [-]
        reversed share; 0 for starts from rest
    standing : s_0 [Pa]
        stress that is there without the pull

    Returns
    -------
    s_m [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 6-36; one side of the mount sees the tension

    Examples
    --------
    >>> float(mean_stress(100e6, 0.5, 5e6))
    3.000e+07
    """
    return standing + swing * np.abs(1 - reverse) / 2
