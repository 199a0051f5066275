"""Prying of a bolted plate."""

from __future__ import annotations

from ..worked import formula
from ._maths import larger, smaller, sqrt


@formula
def prying_bolt_lever(gauge_distance: float, diameter: float) -> float:
    """Lever of prying on the stem side.

    b_p = b - d / 2

    Parameters
    ----------
    gauge_distance : b [m]
        from the bolt centre to the face of the stem
    diameter : d [m]
        nominal diameter of the bolt

    Returns
    -------
    b_p [m]

    Source
    ------
    AISC Steel Construction Manual, prying procedure (9th ed. allowable stress, pp. 4-89 to 4-95)

    Examples
    --------
    >>> prying_bolt_lever(0.0333, 0.0254)
    0.02060
    """
    return gauge_distance - diameter / 2


@formula
def prying_edge_lever(edge: float, gauge_distance: float, diameter: float) -> float:
    """Lever of prying on the edge side.

    a_p = min(a, 1.25 * b) + d / 2

    Parameters
    ----------
    edge : a [m]
        from the bolt centre to the edge
    gauge_distance : b [m]
        from the bolt centre to the face of the stem
    diameter : d [m]
        nominal diameter of the bolt

    Returns
    -------
    a_p [m]

    Source
    ------
    AISC Steel Construction Manual, prying procedure (9th ed. allowable stress, pp. 4-89 to 4-95)

    Examples
    --------
    >>> float(prying_edge_lever(0.0493, 0.0333, 0.0254))
    0.05432
    """
    return smaller(edge, 1.25 * gauge_distance) + diameter / 2


@formula
def prying_net_ratio(hole_diameter: float, tributary_width: float) -> float:
    """Net over gross width of the plate at the bolts.

    delta = 1 - d_0 / p

    Parameters
    ----------
    hole_diameter : d_0 [m]
        diameter of the hole
    tributary_width : p [m]
        width of plate per bolt

    Returns
    -------
    delta [-]

    Source
    ------
    AISC Steel Construction Manual, prying procedure (9th ed. allowable stress, pp. 4-89 to 4-95)

    Examples
    --------
    >>> prying_net_ratio(0.009, 0.05)
    0.8200
    """
    return 1 - hole_diameter / tributary_width


@formula
def prying_critical_thickness(
    moment_factor: float,
    bolt_capacity: float,
    bolt_lever: float,
    tributary_width: float,
    strength: float,
) -> float:
    """Plate thickness from which there is no prying.

    t_c = sqrt(k * B * b_p / (p * f))

    Parameters
    ----------
    moment_factor : k [-]
        8 for allowable stress on yield, 4 for the plastic moment on strength
    bolt_capacity : B [N]
        tension the bolt can bear
    bolt_lever : b_p [m]
        from the edge of the bolt to the stem
    tributary_width : p [m]
        width of plate per bolt
    strength : f [Pa]
        strength or allowable stress

    Returns
    -------
    t_c [m]

    Source
    ------
    AISC Steel Construction Manual, prying procedure (9th ed. allowable stress, pp. 4-89 to 4-95);
    factor 4 with the ultimate strength in part 9 of later editions

    Examples
    --------
    >>> float(prying_critical_thickness(4, 21200.0, 0.02, 0.05, 3.6e8))
    0.009707
    """
    return sqrt(moment_factor * bolt_capacity * bolt_lever / (tributary_width * strength))


@formula
def prying_share(
    tension: float,
    bolt_capacity: float,
    critical_thickness: float,
    thickness: float,
    net_ratio: float,
) -> float:
    """Share of the plate's moment at the bolt line.

    alpha = min(max(((F_t / B) * (t_c / t)**2 - 1) / delta, 0), 1)

    Parameters
    ----------
    tension : F_t [N]
        tension in the bolt
    bolt_capacity : B [N]
        tension the bolt can bear
    critical_thickness : t_c [m]
        thickness from which there is no prying
    thickness : t [m]
        thickness of the plate
    net_ratio : delta [-]
        net over gross width at the bolts

    Returns
    -------
    alpha [-]

    Source
    ------
    AISC Steel Construction Manual, prying procedure (9th ed. allowable stress, pp. 4-89 to 4-95)

    Examples
    --------
    >>> float(prying_share(10000.0, 21200.0, 0.009708, 0.006, 0.82))
    0.2864
    """
    return smaller(
        larger(
            (tension / bolt_capacity * (critical_thickness / thickness) ** 2 - 1) / net_ratio, 0
        ),
        1,
    )


@formula
def prying_force(
    bolt_capacity: float,
    net_ratio: float,
    prying_share: float,
    lever_ratio: float,
    thickness: float,
    critical_thickness: float,
) -> float:
    """Prying force on one bolt.

    Q = B * delta * alpha * rho * (t / t_c)**2

    Parameters
    ----------
    bolt_capacity : B [N]
        tension the bolt can bear
    net_ratio : delta [-]
        net over gross width at the bolts
    prying_share : alpha [-]
        share of the plate's moment at the bolt line
    lever_ratio : rho [-]
        bolt lever over edge lever
    thickness : t [m]
        thickness of the plate
    critical_thickness : t_c [m]
        thickness from which there is no prying

    Returns
    -------
    Q [N]

    Source
    ------
    AISC Steel Construction Manual, prying procedure (9th ed. allowable stress, pp. 4-89 to 4-95)

    Examples
    --------
    >>> prying_force(21200.0, 0.82, 0.2, 0.8, 0.006, 0.009708)
    1062.5
    """
    return (
        bolt_capacity
        * net_ratio
        * prying_share
        * lever_ratio
        * (thickness / critical_thickness) ** 2
    )


@formula
def prying_tension_allowed(
    bolt_capacity: float,
    thickness: float,
    critical_thickness: float,
    net_ratio: float,
    lever_ratio: float,
) -> float:
    """Tension one bolt may take from outside, prying counted.

    T_a = B * (t / t_c)**2 * (1 + min(max(((t_c / t)**2 - 1) / (delta * (1 + rho)), 0), 1) * delta)

    Parameters
    ----------
    bolt_capacity : B [N]
        tension the bolt can bear
    thickness : t [m]
        thickness of the plate
    critical_thickness : t_c [m]
        thickness from which there is no prying
    net_ratio : delta [-]
        net over gross width at the bolts
    lever_ratio : rho [-]
        bolt lever over edge lever

    Returns
    -------
    T_a [N]

    Valid for
    ---------
    plate thinner than the critical thickness

    Source
    ------
    AISC Steel Construction Manual, prying procedure (9th ed. allowable stress, pp. 4-89 to 4-95)

    Examples
    --------
    >>> float(prying_tension_allowed(21200.0, 0.006, 0.009708, 0.82, 0.8))
    14738.4
    """
    return (
        bolt_capacity
        * (thickness / critical_thickness) ** 2
        * (
            1
            + smaller(
                larger(
                    ((critical_thickness / thickness) ** 2 - 1) / (net_ratio * (1 + lever_ratio)), 0
                ),
                1,
            )
            * net_ratio
        )
    )
