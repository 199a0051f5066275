"""Stress at a point of a section."""

from __future__ import annotations

from ..worked import formula
from ._maths import pi, sqrt
from .equivalent import (
    max_shear,
    pressure_sensitive,
    pressure_sensitive_plane,
    principal_max,
    principal_min,
    shear_yield,
    von_mises,
    von_mises_plane,
)
from .warping import bimoment_held_free, bimoment_held_held, bimoment_stress

__all__ = [
    "axial_stress",
    "bending_stress",
    "bimoment_held_free",
    "bimoment_held_held",
    "bimoment_stress",
    "bredt_stress",
    "direct_shear_stress",
    "max_shear",
    "pressure_sensitive",
    "pressure_sensitive_plane",
    "principal_max",
    "principal_min",
    "rectangle_shear_stress",
    "round_bending_stress",
    "round_torsion_stress",
    "shear_resultant",
    "shear_yield",
    "torsion_stress",
    "von_mises",
    "von_mises_plane",
]


@formula
def axial_stress(force: float, area: float) -> float:
    """Stress of a normal force.

    sigma = F / A

    Parameters
    ----------
    force : F [N]
        force
    area : A [m^2]
        area

    Returns
    -------
    sigma [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 3-9

    Examples
    --------
    >>> axial_stress(4000.0, 0.0001767)
    2.264e+07
    """
    return force / area


@formula
def bending_stress(moment: float, section_modulus: float) -> float:
    """Bending stress at the outer fibre.

    sigma = M / Z

    Parameters
    ----------
    moment : M [N*m]
        bending moment at the section
    section_modulus : Z [m^3]
        elastic section modulus

    Returns
    -------
    sigma [Pa]

    Valid for
    ---------
    linear elastic, plane sections stay plane

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. eq. 3-26

    Examples
    --------
    >>> bending_stress(30.0, 1e-6)
    3.000e+07
    """
    return moment / section_modulus


@formula
def torsion_stress(torque: float, torsion_modulus: float) -> float:
    """Largest shear stress of a torque.

    tau = T / W_t

    Parameters
    ----------
    torque : T [N*m]
        torque
    torsion_modulus : W_t [m^3]
        torque over largest shear stress

    Returns
    -------
    tau [Pa]

    Valid for
    ---------
    free warping

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 3-12

    Examples
    --------
    >>> torsion_stress(10.0, 5e-7)
    2.000e+07
    """
    return torque / torsion_modulus


@formula
def direct_shear_stress(force: float, area: float) -> float:
    """Mean shear stress of a force in the section.

    tau = F / A

    Parameters
    ----------
    force : F [N]
        force
    area : A [m^2]
        area

    Returns
    -------
    tau [Pa]

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. section 3-9

    Examples
    --------
    >>> direct_shear_stress(1000.0, 0.00036)
    2777777.8
    """
    return force / area


@formula
def rectangle_shear_stress(force: float, area: float) -> float:
    """Largest shear stress of a force in a rectangle.

    tau = 1.5 * F / A

    Parameters
    ----------
    force : F [N]
        force
    area : A [m^2]
        area

    Returns
    -------
    tau [Pa]

    Valid for
    ---------
    narrow rectangle, force along the longer side

    Source
    ------
    Shigley's Mechanical Engineering Design 9th ed. table 3-2

    Examples
    --------
    >>> rectangle_shear_stress(1000.0, 0.00036)
    4166666.7
    """
    return 1.5 * force / area


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
