"""A motor on four feet: the worst foot bolt by statics, feet and base rigid."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def foot_tension(
    lift: Number, moment_x: Number, moment_z: Number, along: Number, across: Number
) -> Number:
    """Tension of the worst of four foot bolts; the motor tips about the middle of its feet.

    T = max(F_y, 0) / 4 + abs(M_x) / (2 * b) + abs(M_z) / (2 * a)

    Parameters
    ----------
    lift : F_y [N]
        force off the base plate
    moment_x : M_x [N*m]
        moment about the line across the feet, through their middle
    moment_z : M_z [N*m]
        moment about the line along the shaft, through their middle
    along : b [m]
        distance of the foot bolts along the shaft
    across : a [m]
        distance of the foot bolts across it

    Returns
    -------
    T [N]

    Valid for
    ---------
    rigid feet on a rigid base

    Source
    ------
    statics of four equal bolts
    """
    return (
        np.maximum(lift, 0) / 4 + np.abs(moment_x) / (2 * along) + np.abs(moment_z) / (2 * across)
    )


@formula
def foot_shear(force_x: Number, moment_y: Number, along: Number, across: Number) -> Number:
    """Shear of the worst of four foot bolts: the straight share and that of turning, in line.

    V = abs(F_x) / 4 + abs(M_y) / (2 * sqrt(a**2 + b**2))

    Parameters
    ----------
    force_x : F_x [N]
        force across the shaft, in the plane of the feet
    moment_y : M_y [N*m]
        moment about the upright through the middle of the feet
    along : b [m]
        distance of the foot bolts along the shaft
    across : a [m]
        distance of the foot bolts across it

    Returns
    -------
    V [N]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. sec. 8-12 (both shares in line: the worst bolt)
    """
    return np.abs(force_x) / 4 + np.abs(moment_y) / (2 * np.sqrt(across**2 + along**2))
