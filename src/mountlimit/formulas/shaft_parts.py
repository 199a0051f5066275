"""The motor shaft's movement along the chain line in parts across and along the mount."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..worked import formula

Number = Any


@formula
def sag_across(sag: Number, angle: Number) -> Number:
    """Part of the shaft's deflection across the mount.

    w_x = w * cos(alpha)

    Parameters
    ----------
    sag : w [m]
        deflection along the chain line
    angle : alpha [rad]
        chain line measured from 'across'

    Returns
    -------
    w_x [m]

    Source
    ------
    geometry
    """
    return sag * np.cos(angle)


@formula
def sag_along(sag: Number, angle: Number) -> Number:
    """Part of the shaft's deflection along the mount, away from the frame.

    w_y = w * sin(alpha)

    Parameters
    ----------
    sag : w [m]
        deflection along the chain line
    angle : alpha [rad]
        chain line measured from 'across'

    Returns
    -------
    w_y [m]

    Source
    ------
    geometry
    """
    return sag * np.sin(angle)


@formula
def slope_across(slope: Number, angle: Number) -> Number:
    """Part of the shaft's slope across the mount.

    theta_x = theta * cos(alpha)

    Parameters
    ----------
    slope : theta [rad]
        slope along the chain line
    angle : alpha [rad]
        chain line measured from 'across'

    Returns
    -------
    theta_x [rad]

    Source
    ------
    geometry
    """
    return slope * np.cos(angle)


@formula
def slope_along(slope: Number, angle: Number) -> Number:
    """Part of the shaft's slope along the mount, away from the frame.

    theta_y = theta * sin(alpha)

    Parameters
    ----------
    slope : theta [rad]
        slope along the chain line
    angle : alpha [rad]
        chain line measured from 'across'

    Returns
    -------
    theta_y [rad]

    Source
    ------
    geometry
    """
    return slope * np.sin(angle)
