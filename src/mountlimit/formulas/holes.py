"""Plates at bolt holes: bearing and tear-out."""

from __future__ import annotations

from ..worked import formula
from ._maths import smaller


@formula
def bearing_k1_edge(edge_distance: float, hole_diameter: float) -> float:
    """Factor across the load at an edge bolt.

    k_1 = min(2.8 * e_2 / d_0 - 1.7, 2.5)

    Parameters
    ----------
    edge_distance : e_2 [m]
        from the hole centre to the edge, across the load
    hole_diameter : d_0 [m]
        diameter of the hole

    Returns
    -------
    k_1 [-]

    Source
    ------
    EN 1993-1-8 table 3.4

    Examples
    --------
    >>> float(bearing_k1_edge(0.02, 0.014))
    2.300
    """
    return smaller(2.8 * edge_distance / hole_diameter - 1.7, 2.5)


@formula
def bearing_k1_inner(bolt_gauge: float, hole_diameter: float) -> float:
    """Factor across the load between bolts.

    k_1 = min(1.4 * p_2 / d_0 - 1.7, 2.5)

    Parameters
    ----------
    bolt_gauge : p_2 [m]
        between hole centres across the load
    hole_diameter : d_0 [m]
        diameter of the hole

    Returns
    -------
    k_1 [-]

    Source
    ------
    EN 1993-1-8 table 3.4

    Examples
    --------
    >>> float(bearing_k1_inner(0.04, 0.014))
    2.300
    """
    return smaller(1.4 * bolt_gauge / hole_diameter - 1.7, 2.5)


@formula
def bearing_alpha_end(
    end_distance: float, hole_diameter: float, bolt_strength: float, plate_strength: float
) -> float:
    """Factor along the load at an end bolt.

    a_b = min(min(e_1 / (3 * d_0), f_ub / f_u), 1)

    Parameters
    ----------
    end_distance : e_1 [m]
        from the hole centre to the end, along the load
    hole_diameter : d_0 [m]
        diameter of the hole
    bolt_strength : f_ub [Pa]
        ultimate strength of the bolt
    plate_strength : f_u [Pa]
        ultimate strength of the plate

    Returns
    -------
    a_b [-]

    Source
    ------
    EN 1993-1-8 table 3.4

    Examples
    --------
    >>> float(bearing_alpha_end(0.025, 0.014, 4e8, 4.7e8))
    0.5952
    """
    return smaller(smaller(end_distance / (3 * hole_diameter), bolt_strength / plate_strength), 1)


@formula
def bearing_alpha_inner(
    bolt_pitch: float, hole_diameter: float, bolt_strength: float, plate_strength: float
) -> float:
    """Factor along the load between bolts.

    a_b = min(min(p_1 / (3 * d_0) - 0.25, f_ub / f_u), 1)

    Parameters
    ----------
    bolt_pitch : p_1 [m]
        between hole centres along the load
    hole_diameter : d_0 [m]
        diameter of the hole
    bolt_strength : f_ub [Pa]
        ultimate strength of the bolt
    plate_strength : f_u [Pa]
        ultimate strength of the plate

    Returns
    -------
    a_b [-]

    Source
    ------
    EN 1993-1-8 table 3.4

    Examples
    --------
    >>> float(bearing_alpha_inner(0.035, 0.014, 4e8, 4.7e8))
    0.5833
    """
    return smaller(
        smaller(bolt_pitch / (3 * hole_diameter) - 0.25, bolt_strength / plate_strength), 1
    )


@formula
def bearing_resistance(
    k1: float,
    alpha_b: float,
    plate_strength: float,
    diameter: float,
    thickness: float,
    gamma: float,
) -> float:
    """Bearing resistance of a plate at a bolt.

    F_b = k_1 * a_b * f_u * d * t / g

    Parameters
    ----------
    k1 : k_1 [-]
        factor across the load
    alpha_b : a_b [-]
        factor along the load
    plate_strength : f_u [Pa]
        ultimate strength of the plate
    diameter : d [m]
        nominal diameter of the bolt
    thickness : t [m]
        thickness of the plate
    gamma : g [-]
        partial factor

    Returns
    -------
    F_b [N]

    Source
    ------
    EN 1993-1-8 table 3.4

    Examples
    --------
    >>> bearing_resistance(2.3, 0.583, 4.7e8, 0.012, 0.005, 1.25)
    30250.7
    """
    return k1 * alpha_b * plate_strength * diameter * thickness / gamma


@formula
def clear_distance(end_distance: float, hole_diameter: float) -> float:
    """Distance from the edge of a hole to the end.

    l_c = e_1 - d_0 / 2

    Parameters
    ----------
    end_distance : e_1 [m]
        from the hole centre to the end, along the load
    hole_diameter : d_0 [m]
        diameter of the hole

    Returns
    -------
    l_c [m]

    Source
    ------
    AISC 360-16 section J3.10

    Examples
    --------
    >>> clear_distance(0.008, 0.0055)
    0.005250
    """
    return end_distance - hole_diameter / 2


@formula
def tear_out(clear_distance: float, thickness: float, plate_strength: float) -> float:
    """Tear-out strength of a plate at the end.

    R = 1.2 * l_c * t * f_u

    Parameters
    ----------
    clear_distance : l_c [m]
        from the edge of the hole to the end
    thickness : t [m]
        thickness of the plate
    plate_strength : f_u [Pa]
        ultimate strength of the plate

    Returns
    -------
    R [N]

    Source
    ------
    AISC 360-16 eq. J3-6 (from memory)

    Examples
    --------
    >>> tear_out(0.00525, 0.003, 2.9e8)
    5481.0
    """
    return 1.2 * clear_distance * thickness * plate_strength


@formula
def bearing_strength(diameter: float, thickness: float, plate_strength: float) -> float:
    """Bearing strength of a plate at a bolt.

    R = 2.4 * d * t * f_u

    Parameters
    ----------
    diameter : d [m]
        nominal diameter of the bolt
    thickness : t [m]
        thickness of the plate
    plate_strength : f_u [Pa]
        ultimate strength of the plate

    Returns
    -------
    R [N]

    Source
    ------
    AISC 360-16 eq. J3-6 (from memory)

    Examples
    --------
    >>> bearing_strength(0.005, 0.003, 2.9e8)
    10440.0
    """
    return 2.4 * diameter * thickness * plate_strength


@formula
def tear_out_shear(clear_distance: float, thickness: float, shear_strength: float) -> float:
    """Force that shears a plug out of the end of a plate.

    F = 2 * l_c * t * tau

    Parameters
    ----------
    clear_distance : l_c [m]
        from the edge of the hole to the end
    thickness : t [m]
        thickness of the plate
    shear_strength : tau [Pa]
        shear strength or allowable shear stress

    Returns
    -------
    F [N]

    Source
    ------
    from memory (two shear planes)

    Examples
    --------
    >>> tear_out_shear(0.016, 0.01, 1.2e7)
    3840.0
    """
    return 2 * clear_distance * thickness * shear_strength


@formula
def bearing_force(diameter: float, thickness: float, bearing_strength: float) -> float:
    """Bearing force at an allowable bearing stress.

    F = d * t * s_b

    Parameters
    ----------
    diameter : d [m]
        nominal diameter of the bolt
    thickness : t [m]
        thickness of the plate
    bearing_strength : s_b [Pa]
        allowable bearing stress

    Returns
    -------
    F [N]

    Source
    ------
    from memory (projected area)

    Examples
    --------
    >>> bearing_force(0.008, 0.01, 1e7)
    800.0
    """
    return diameter * thickness * bearing_strength
