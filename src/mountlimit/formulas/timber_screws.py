"""Screws and dowels in wood by EN 1995-1-1: stiffness, holding, embedment, both loads together."""

from __future__ import annotations

from ..worked import formula
from ._maths import power, smaller, sqrt


@formula
def mean_density(first: float, second: float) -> float:
    """Density that counts where two kinds of wood are joined.

    rho_m = sqrt(rho_1 * rho_2)

    Parameters
    ----------
    first : rho_1 [kg/m^3]
        mean density of one member
    second : rho_2 [kg/m^3]
        mean density of the other member

    Returns
    -------
    rho_m [kg/m^3]

    Source
    ------
    EN 1995-1-1 eq. 7.1

    Examples
    --------
    >>> float(mean_density(380.0, 680.0))
    508.33
    """
    return sqrt(first * second)


@formula
def slip_modulus(mean_density: float, diameter: float) -> float:
    """Slip modulus of one screw or dowel in a pre-drilled hole, per shear plane.

    K_ser = 1e6 * rho_m**1.5 * d / 23

    Parameters
    ----------
    mean_density : rho_m [kg/m^3]
        mean density of the wood
    diameter : d [m]
        diameter of the screw or dowel

    Returns
    -------
    K_ser [N/m]

    Source
    ------
    EN 1995-1-1 table 7.1 (in N/mm with d in mm: rho_m^1.5 d / 23)

    Examples
    --------
    >>> float(slip_modulus(420.0, 0.006))
    2245418.8
    """
    return 1e6 * power(mean_density, 1.5) * diameter / 23


@formula
def slip_modulus_to_steel(slip_modulus: float) -> float:
    """Slip modulus where one of the two members does not give: steel or concrete.

    K_s = 2 * K_ser

    Parameters
    ----------
    slip_modulus : K_ser [N/m]
        of the wood alone

    Returns
    -------
    K_s [N/m]

    Source
    ------
    EN 1995-1-1 clause 7.1(3)

    Examples
    --------
    >>> slip_modulus_to_steel(2.0e6)
    4000000.0
    """
    return 2 * slip_modulus


@formula
def axial_stiffness(diameter: float, length: float) -> float:
    """Stiffness of a wood screw against being drawn out.

    K_ax = 7.8e5 * (1000 * d)**0.2 * (1000 * l)**0.4

    Parameters
    ----------
    diameter : d [m]
        outer diameter of the thread
    length : l [m]
        length of thread in the wood

    Returns
    -------
    K_ax [N/m]

    Source
    ------
    from memory (Blass, Bejtka & Uibel 2006, self-tapping screws: 780 d^0.2 l^0.4 N/mm)

    Examples
    --------
    >>> float(axial_stiffness(0.006, 0.05))
    5337192.3
    """
    return 7.8e5 * power(1000 * diameter, 0.2) * power(1000 * length, 0.4)


@formula
def characteristic_density(mean_density: float) -> float:
    """Characteristic density of wood from its mean density.

    rho_k = rho_m / 1.2

    Parameters
    ----------
    mean_density : rho_m [kg/m^3]
        mean density

    Returns
    -------
    rho_k [kg/m^3]

    Source
    ------
    EN 338, ratio of the two densities of the softwood classes (C24: 420 and 350)

    Examples
    --------
    >>> characteristic_density(420.0)
    350.0
    """
    return mean_density / 1.2


@formula
def withdrawal_strength(diameter: float, length: float, density: float) -> float:
    """Characteristic strength of a screw thread in wood against withdrawal.

    f_ax = 5.2e5 * (1000 * d)**-0.5 * (1000 * l)**-0.1 * rho_k**0.8

    Parameters
    ----------
    diameter : d [m]
        outer diameter of the thread
    length : l [m]
        length of thread in the wood
    density : rho_k [kg/m^3]
        characteristic density

    Returns
    -------
    f_ax [Pa]

    Valid for
    ---------
    6 to 12 mm, core over outer diameter 0.6 to 0.75

    Source
    ------
    EN 1995-1-1 eq. 8.39

    Examples
    --------
    >>> float(withdrawal_strength(0.008, 0.064, 350.0))
    13155119.2
    """
    return 5.2e5 * power(1000 * diameter, -0.5) * power(1000 * length, -0.1) * power(density, 0.8)


@formula
def withdrawal_along_grain(strength: float, diameter: float, length: float) -> float:
    """Force that draws a screw out of end grain or an edge.

    F_ax = f_ax * d * l * min(d / 0.008, 1) / 1.2

    Parameters
    ----------
    strength : f_ax [Pa]
        withdrawal strength
    diameter : d [m]
        outer diameter of the thread
    length : l [m]
        length of thread in the wood

    Returns
    -------
    F_ax [N]

    Valid for
    ---------
    the grain along the screw, the lowest: across it 1.2 times as much

    Source
    ------
    EN 1995-1-1 eq. 8.38 and 8.40, angle to the grain 0 (below 30 degrees it is extrapolated)

    Examples
    --------
    >>> float(withdrawal_along_grain(1.31551e7, 0.008, 0.064))
    5612.8
    """
    return strength * diameter * length * smaller(diameter / 0.008, 1) / 1.2


@formula
def head_strength(density: float) -> float:
    """Characteristic strength of wood against a head that is pulled through.

    f_head = 70 * rho_k**2

    Parameters
    ----------
    density : rho_k [kg/m^3]
        characteristic density

    Returns
    -------
    f_head [Pa]

    Source
    ------
    EN 1995-1-1 eq. 8.26 (smooth nails; taken for screws without a test)

    Examples
    --------
    >>> head_strength(350.0)
    8575000.0
    """
    return 70 * density**2


@formula
def head_pull_through(strength: float, head_diameter: float) -> float:
    """Force that pulls a head through wood.

    F_h = f_head * d_h**2

    Parameters
    ----------
    strength : f_head [Pa]
        pull-through strength
    head_diameter : d_h [m]
        diameter of the head or its washer

    Returns
    -------
    F_h [N]

    Source
    ------
    EN 1995-1-1 eq. 8.40b

    Examples
    --------
    >>> head_pull_through(8.575e6, 0.01)
    857.5
    """
    return strength * head_diameter**2


@formula
def embedment_strength(diameter: float, density: float) -> float:
    """Characteristic embedment strength of wood under a screw or dowel in a pre-drilled hole.

    f_h = 8.2e4 * (1 - 10 * d) * rho_k

    Parameters
    ----------
    diameter : d [m]
        diameter of the fastener
    density : rho_k [kg/m^3]
        characteristic density

    Returns
    -------
    f_h [Pa]

    Source
    ------
    EN 1995-1-1 eq. 8.16 (in MPa with d in mm: 0.082 (1 - 0.01 d) rho_k)

    Examples
    --------
    >>> embedment_strength(0.005, 350.0)
    27265000.0
    """
    return 8.2e4 * (1 - 10 * diameter) * density


@formula
def yield_moment(strength: float, diameter: float) -> float:
    """Bending moment at which a round fastener yields.

    M_y = 3e-10 * f_u * (1000 * d)**2.6

    Parameters
    ----------
    strength : f_u [Pa]
        tensile strength of the fastener
    diameter : d [m]
        effective diameter; of a screw 1.1 times its core

    Returns
    -------
    M_y [N*m]

    Source
    ------
    EN 1995-1-1 eq. 8.30 (in N*mm with MPa and mm: 0.3 f_u d^2.6)

    Examples
    --------
    >>> float(yield_moment(4e8, 0.008))
    26.74
    """
    return 3e-10 * strength * power(1000 * diameter, 2.6)


@formula
def effective_diameter(core: float) -> float:
    """Diameter of a screw that counts when it bends.

    d_ef = 1.1 * d_1

    Parameters
    ----------
    core : d_1 [m]
        diameter at the bottom of the thread

    Returns
    -------
    d_ef [m]

    Source
    ------
    EN 1995-1-1 clause 8.7.1(3)

    Examples
    --------
    >>> effective_diameter(0.004)
    0.0044
    """
    return 1.1 * core


@formula
def both_added(pull: float, holding: float, shear: float, bearing: float) -> float:
    """Pull and shear together on a smooth fastener: 1 is the limit.

    u = F_ax / R_ax + F_v / R_v

    Parameters
    ----------
    pull : F_ax [N]
        pull along the fastener
    holding : R_ax [N]
        what holds it
    shear : F_v [N]
        force across the fastener
    bearing : R_v [N]
        what it bears across

    Returns
    -------
    u [-]

    Source
    ------
    EN 1995-1-1 eq. 8.27

    Examples
    --------
    >>> both_added(300.0, 1000.0, 800.0, 2000.0)
    0.7
    """
    return pull / holding + shear / bearing


@formula
def both_squared(pull: float, holding: float, shear: float, bearing: float) -> float:
    """Pull and shear together on a screw: 1 is the limit, in the root so that it grows as the load.

    u = sqrt((F_ax / R_ax)**2 + (F_v / R_v)**2)

    Parameters
    ----------
    pull : F_ax [N]
        pull along the screw
    holding : R_ax [N]
        what holds it
    shear : F_v [N]
        force across the screw
    bearing : R_v [N]
        what it bears across

    Returns
    -------
    u [-]

    Source
    ------
    EN 1995-1-1 eq. 8.28 (root taken)

    Examples
    --------
    >>> float(both_squared(300.0, 1000.0, 800.0, 2000.0))
    0.5
    """
    return sqrt((pull / holding) ** 2 + (shear / bearing) ** 2)
