"""Stress at a point of a section."""

from __future__ import annotations

from ..worked import formula
from ._maths import pi, sqrt
from .equivalent import (
    pressure_sensitive,
    principal_max,
    shear_yield,
    von_mises,
)
from .warping import bimoment_held_free, bimoment_held_held

__all__ = [
    "bimoment_held_free",
    "bimoment_held_held",
    "bredt_stress",
    "local_stress",
    "pressure_sensitive",
    "principal_max",
    "round_bending_stress",
    "round_torsion_stress",
    "shear_resultant",
    "shear_yield",
    "von_mises",
]


@formula
def round_bending_stress(moment: float, diameter: float) -> float:
    """Bending stress of a round bar.

    sigma = 32 * M / (pi * d**3)

    Parameters
    ----------
    moment : M [N*m]
        bending moment at the section
    diameter : d [m]
        diameter

    Returns
    -------
    sigma [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 3-10

    Examples
    --------
    >>> round_bending_stress(30.0, 0.012)
    1.768e+08
    """
    return 32 * moment / (pi * diameter**3)


@formula
def round_torsion_stress(torque: float, diameter: float) -> float:
    """Torsional shear stress of a round bar.

    tau = 16 * T / (pi * d**3)

    Parameters
    ----------
    torque : T [N*m]
        torque
    diameter : d [m]
        diameter

    Returns
    -------
    tau [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 3-12

    Examples
    --------
    >>> round_torsion_stress(25.0, 0.015)
    3.773e+07
    """
    return 16 * torque / (pi * diameter**3)


@formula
def bredt_stress(torque: float, enclosed_area: float, wall: float) -> float:
    """Shear stress of a torque in the wall of a thin tube.

    tau = T / (2 * A_m * t)

    Parameters
    ----------
    torque : T [N*m]
        torque
    enclosed_area : A_m [m^2]
        area enclosed by the wall's centre line
    wall : t [m]
        wall thickness

    Returns
    -------
    tau [Pa]

    Valid for
    ---------
    thin wall, away from corners

    Source
    ------
    Bredt's first formula (Hartsuijker & Welleman, Engineering Mechanics volume 2, chapter 6)

    Examples
    --------
    >>> bredt_stress(1000.0, 0.004275, 0.005)
    2.339e+07
    """
    return torque / (2 * enclosed_area * wall)


@formula
def local_stress(stress: float, ratio: float) -> float:
    """Stress round a bolt, corrected for what plates leave out.

    sigma = c * sigma_p

    Parameters
    ----------
    stress : sigma_p [Pa]
        stress by the plate model
    ratio : c [-]
        true stress over that of the plate model

    Returns
    -------
    sigma [Pa]

    Valid for
    ---------
    short or thick plates

    Source
    ------
    solid elements on random mounts (computed)

    Examples
    --------
    >>> local_stress(1.0e8, 1.1)
    1.1e+08
    """
    return stress * ratio


@formula
def shear_resultant(first: float, second: float) -> float:
    """Shear stress of its two components.

    tau = sqrt(tau_1**2 + tau_2**2)

    Parameters
    ----------
    first : tau_1 [Pa]
        component along the width
    second : tau_2 [Pa]
        component through the thickness

    Returns
    -------
    tau [Pa]

    Source
    ------
    vector sum

    Examples
    --------
    >>> float(shear_resultant(3.0, 4.0))
    5.0
    """
    return sqrt(first**2 + second**2)
