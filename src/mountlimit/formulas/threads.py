"""Threads: strength and stripping."""

from __future__ import annotations

from ..worked import formula
from ._maths import pi, sqrt


@formula
def stress_diameter(stress_area: float) -> float:
    """Diameter of the stress area.

    d_0 = sqrt(4 * A_s / pi)

    Parameters
    ----------
    stress_area : A_s [m^2]
        tensile stress area

    Returns
    -------
    d_0 [m]

    Source
    ------
    ISO 898-1 (the stress area is a circle)

    Examples
    --------
    >>> float(stress_diameter(3.66e-5))
    0.006826
    """
    return sqrt(4 * stress_area / pi)


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
