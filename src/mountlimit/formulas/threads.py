"""Threads: geometry, strength, stripping; tightening comes from its own file."""

from __future__ import annotations

from ..worked import formula
from ._maths import pi
from .tightening import (
    TORQUE_COEFFICIENT,
    assembly_preload,
    lowest_preload,
    power_screw_torque,
    preload_after_creep,
    preload_after_embedding,
    preload_from_friction,
    preload_from_torque,
    tightening_torque,
    torque_from_preload,
)

__all__ = [
    "TORQUE_COEFFICIENT",
    "assembly_preload",
    "lowest_preload",
    "nut_minor_diameter",
    "power_screw_torque",
    "preload_after_creep",
    "preload_after_embedding",
    "preload_from_friction",
    "preload_from_torque",
    "proof_load",
    "stress_area",
    "strip_area_external",
    "strip_area_internal",
    "strip_force",
    "thread_pitch_diameter",
    "thread_root_diameter",
    "tightening_torque",
    "torque_from_preload",
    "ultimate_load",
]


@formula
def stress_area(diameter: float, pitch: float) -> float:
    """Tensile stress area of a thread.

    A_s = pi / 4 * (d - 0.938194 * P)**2

    Parameters
    ----------
    diameter : d [m]
        nominal diameter of the bolt
    pitch : P [m]
        thread pitch

    Returns
    -------
    A_s [m^2]

    Source
    ------
    ISO 898-1

    Examples
    --------
    >>> stress_area(0.008, 0.00125)
    3.661e-05
    """
    return pi / 4 * (diameter - 0.938194 * pitch) ** 2


@formula
def thread_pitch_diameter(diameter: float, pitch: float) -> float:
    """Pitch diameter of a thread.

    d_2 = d - 0.649519 * P

    Parameters
    ----------
    diameter : d [m]
        nominal diameter of the bolt
    pitch : P [m]
        thread pitch

    Returns
    -------
    d_2 [m]

    Source
    ------
    ISO 724 basic profile

    Examples
    --------
    >>> thread_pitch_diameter(0.008, 0.00125)
    0.007188
    """
    return diameter - 0.649519 * pitch


@formula
def thread_root_diameter(diameter: float, pitch: float) -> float:
    """Root diameter of a bolt thread.

    d_3 = d - 1.226869 * P

    Parameters
    ----------
    diameter : d [m]
        nominal diameter of the bolt
    pitch : P [m]
        thread pitch

    Returns
    -------
    d_3 [m]

    Source
    ------
    ISO 898-1

    Examples
    --------
    >>> thread_root_diameter(0.008, 0.00125)
    0.006466
    """
    return diameter - 1.226869 * pitch


@formula
def nut_minor_diameter(diameter: float, pitch: float) -> float:
    """Minor diameter of a tapped thread.

    D_1 = d - 1.082532 * P

    Parameters
    ----------
    diameter : d [m]
        nominal diameter of the bolt
    pitch : P [m]
        thread pitch

    Returns
    -------
    D_1 [m]

    Source
    ------
    ISO 724 basic profile

    Examples
    --------
    >>> nut_minor_diameter(0.008, 0.00125)
    0.006647
    """
    return diameter - 1.082532 * pitch


@formula
def proof_load(proof_stress: float, stress_area: float) -> float:
    """Proof load of a bolt.

    F_p = S_p * A_s

    Parameters
    ----------
    proof_stress : S_p [Pa]
        proof stress of the class
    stress_area : A_s [m^2]
        tensile stress area

    Returns
    -------
    F_p [N]

    Source
    ------
    ISO 898-1

    Examples
    --------
    >>> proof_load(5.8e8, 3.66e-5)
    21228.0
    """
    return proof_stress * stress_area


@formula
def ultimate_load(ultimate_strength: float, stress_area: float) -> float:
    """Ultimate tensile load of a bolt.

    F_u = R_m * A_s

    Parameters
    ----------
    ultimate_strength : R_m [Pa]
        ultimate strength
    stress_area : A_s [m^2]
        tensile stress area

    Returns
    -------
    F_u [N]

    Source
    ------
    ISO 898-1

    Examples
    --------
    >>> ultimate_load(8e8, 3.66e-5)
    29280.0
    """
    return ultimate_strength * stress_area


@formula
def strip_area_internal(
    engagement: float, pitch: float, diameter: float, nut_pitch_diameter: float
) -> float:
    """Sheared area of a tapped thread.

    A = pi * L_e / P * d * (P / 2 + 0.57735 * (d - D_2))

    Parameters
    ----------
    engagement : L_e [m]
        engaged thread length
    pitch : P [m]
        thread pitch
    diameter : d [m]
        nominal diameter of the bolt
    nut_pitch_diameter : D_2 [m]
        pitch diameter of the tapped thread

    Returns
    -------
    A [m^2]

    Source
    ------
    FED-STD-H28, screw-thread standards (from memory)

    Examples
    --------
    >>> strip_area_internal(0.008, 0.00125, 0.008, 0.0071881)
    1.759e-04
    """
    return (
        pi * engagement / pitch * diameter * (pitch / 2 + 0.57735 * (diameter - nut_pitch_diameter))
    )


@formula
def strip_area_external(
    engagement: float, pitch: float, nut_minor_diameter: float, thread_pitch_diameter: float
) -> float:
    """Sheared area of a bolt thread.

    A = pi * L_e / P * D_1 * (P / 2 + 0.57735 * (d_2 - D_1))

    Parameters
    ----------
    engagement : L_e [m]
        engaged thread length
    pitch : P [m]
        thread pitch
    nut_minor_diameter : D_1 [m]
        minor diameter of the tapped thread
    thread_pitch_diameter : d_2 [m]
        pitch diameter of the thread

    Returns
    -------
    A [m^2]

    Source
    ------
    FED-STD-H28, screw-thread standards (from memory)

    Examples
    --------
    >>> strip_area_external(0.008, 0.00125, 0.0066468, 0.0071881)
    1.253e-04
    """
    return (
        pi
        * engagement
        / pitch
        * nut_minor_diameter
        * (pitch / 2 + 0.57735 * (thread_pitch_diameter - nut_minor_diameter))
    )


@formula
def strip_force(shear_strength: float, strip_area: float) -> float:
    """Force that strips a thread.

    F = tau * A

    Parameters
    ----------
    shear_strength : tau [Pa]
        shear strength or allowable shear stress
    strip_area : A [m^2]
        area of the threads that shear off

    Returns
    -------
    F [N]

    Source
    ------
    FED-STD-H28, screw-thread standards (from memory)

    Examples
    --------
    >>> strip_force(1.56e8, 0.000176)
    27456.0
    """
    return shear_strength * strip_area
