"""What counts of a key, and of several set screws."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def useful_key_length(key_length: Number, shaft_diameter: Number) -> Number:
    """Length of key that carries.

    l = min(l_k, 1.5 * d)

    Parameters
    ----------
    key_length : l_k [m]
        length of the key
    shaft_diameter : d [m]
        shaft diameter

    Returns
    -------
    l [m]

    Source
    ------
    common practice, no source (the load sits at the first part of a long key)
    """
    return np.minimum(key_length, 1.5 * shaft_diameter)


@formula
def screws_together(holding_torque: Number, pair: Number) -> Number:
    """Torque that all set screws hold together.

    T = c * T_1

    Parameters
    ----------
    holding_torque : T_1 [N*m]
        torque one screw holds
    pair : c [-]
        1 for one screw, less than 2 for two

    Returns
    -------
    T [N*m]

    Source
    ------
    common practice, no source (two screws hold less than twice one)
    """
    return pair * holding_torque
