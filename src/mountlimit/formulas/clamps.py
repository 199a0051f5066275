"""A mount clamped on a tube: what friction holds, and what the tube's wall bears."""

from __future__ import annotations

from ..worked import formula
from ._maths import larger, pi, sin, smaller, sqrt, tan


@formula
def clamp_force(count: float, pulls: float, preload: float) -> float:
    """Force that presses the two halves of a clamp on the tube.

    F = n * k * F_V

    Parameters
    ----------
    count : n [-]
        bolts, U-bolts or bands
    pulls : k [-]
        legs or strands that each pulls with
    preload : F_V [N]
        tension of each leg, strand or bolt

    Returns
    -------
    F [N]

    Source
    ------
    statics

    Examples
    --------
    >>> clamp_force(2, 2, 4000.0)
    16000.0
    """
    return count * pulls * preload


@formula
def contact_spread(contact_angle: float) -> float:
    """Sum of the pressure on one half of a round clamp over the force that presses it on.

    c = alpha / sin(alpha)

    Parameters
    ----------
    contact_angle : alpha [rad]
        half the arc that is pressed, evenly; 67 deg stand for the 4/pi of a cosine pressure

    Returns
    -------
    c [-]

    Valid for
    ---------
    angles up to a right angle; 1 for contact along a line, pi/2 for even pressure all round

    Source
    ------
    even pressure summed over the arc, as for a block brake with a pivoted shoe (from memory)

    Examples
    --------
    >>> float(contact_spread(1.0))
    1.188
    """
    return contact_angle / sin(contact_angle)


@formula
def pressure_sum(clamp: float, spread: float) -> float:
    """Sum of all pressure of the two halves of a clamp on its tube.

    N = 2 * c * F

    Parameters
    ----------
    clamp : F [N]
        force that presses the halves on
    spread : c [-]
        sum of the pressure over the force, of one half

    Returns
    -------
    N [N]

    Source
    ------
    statics: both halves press with the same force

    Examples
    --------
    >>> pressure_sum(16000.0, 1.25)
    40000.0
    """
    return 2 * spread * clamp


@formula
def friction_hold(friction: float, pressure: float) -> float:
    """Friction force that the pressure of a clamp can hold.

    R = mu * N

    Parameters
    ----------
    friction : mu [-]
        coefficient of friction
    pressure : N [N]
        sum of all pressure on the tube

    Returns
    -------
    R [N]

    Source
    ------
    Coulomb's law of friction

    Examples
    --------
    >>> friction_hold(0.12, 40000.0)
    4800.0
    """
    return friction * pressure


@formula
def surface_slip(moment: float, tube_diameter: float, axial: float) -> float:
    """Friction force asked at the tube's surface by turning and sliding together.

    S = sqrt((2 * M / d)**2 + F_a**2)

    Parameters
    ----------
    moment : M [N*m]
        moment about the tube's axis
    tube_diameter : d [m]
        outer diameter of the tube
    axial : F_a [N]
        force along the tube

    Returns
    -------
    S [N]

    Source
    ------
    statics: the two parts stand at right angles at every point of the surface

    Examples
    --------
    >>> float(surface_slip(48.0, 0.032, 4000.0))
    5000.0
    """
    return sqrt((2 * moment / tube_diameter) ** 2 + axial**2)


@formula
def slip_and_pull(slip: float, friction: float, spread: float, pull_off: float) -> float:
    """Friction force asked of the full clamp: the slip, and the friction that a pull off the tube takes away.

    S_h = S + mu * c * F_o

    Parameters
    ----------
    slip : S [N]
        friction force asked by turning and sliding
    friction : mu [-]
        coefficient of friction
    spread : c [-]
        sum of the pressure over the force, of one half
    pull_off : F_o [N]
        force that pulls the mount off the tube

    Returns
    -------
    S_h [N]

    Source
    ------
    statics: the half on the mount's side loses the whole pull, the other keeps the clamp

    Examples
    --------
    >>> slip_and_pull(5000.0, 0.12, 1.0, 1000.0)
    5120.0
    """
    return slip + friction * spread * pull_off


@formula
def rocking_moment(clamp: float, tube_size: float, wall: float) -> float:
    """Moment at which a clamp on a square tube bears on two opposite edges only.

    M_r = F * (b - t)

    Parameters
    ----------
    clamp : F [N]
        force that presses the halves on
    tube_size : b [m]
        outer width of the tube
    wall : t [m]
        wall thickness

    Returns
    -------
    M_r [N*m]

    Source
    ------
    statics: both forces at the middle of a side wall, (b - t)/2 off the tube's axis

    Examples
    --------
    >>> rocking_moment(16000.0, 0.04, 0.002)
    608.0
    """
    return clamp * (tube_size - wall)


@formula
def rocking_asked(moment: float, pull_off: float, tube_size: float, wall: float) -> float:
    """Moment that the full clamp on a square tube must hold: its own, and what a pull off takes away.

    M_h = M + F_o * (b - t) / 2

    Parameters
    ----------
    moment : M [N*m]
        moment about the tube's axis
    pull_off : F_o [N]
        force that pulls the mount off the tube
    tube_size : b [m]
        outer width of the tube
    wall : t [m]
        wall thickness

    Returns
    -------
    M_h [N*m]

    Source
    ------
    statics: the half on the mount's side loses the whole pull, the other keeps the clamp

    Examples
    --------
    >>> rocking_asked(100.0, 1000.0, 0.04, 0.002)
    119.0
    """
    return moment + pull_off * (tube_size - wall) / 2


@formula
def lifting_moment(clamp: float, length: float) -> float:
    """Moment across the tube at which a clamp lifts off at one end of its grip.

    M_l = F * L / 3

    Parameters
    ----------
    clamp : F [N]
        force that presses the halves on
    length : L [m]
        length of the grip along the tube

    Returns
    -------
    M_l [N*m]

    Source
    ------
    statics: both halves as stiff strips, even pressure F/L each, its slope fills one end to nothing

    Examples
    --------
    >>> lifting_moment(15000.0, 0.04)
    200.0
    """
    return clamp * length / 3


@formula
def lifting_asked(moment: float, pull_off: float, length: float) -> float:
    """Moment across the tube that the full clamp must hold: its own, and what a pull off takes away.

    M_h = M + F_o * L / 3

    Parameters
    ----------
    moment : M [N*m]
        moment across the tube
    pull_off : F_o [N]
        force that pulls the mount off the tube
    length : L [m]
        length of the grip along the tube

    Returns
    -------
    M_h [N*m]

    Source
    ------
    statics: the half on the mount's side lifts first, and has lost the whole pull

    Examples
    --------
    >>> lifting_asked(100.0, 1500.0, 0.04)
    120.0
    """
    return moment + pull_off * length / 3


@formula
def pressed_force(clamp: float, pressing: float) -> float:
    """Force on the tube under the half on the mount's side.

    F_c = F + max(F_p, 0)

    Parameters
    ----------
    clamp : F [N]
        force that presses the halves on
    pressing : F_p [N]
        force that presses the mount on the tube

    Returns
    -------
    F_c [N]

    Source
    ------
    statics: the bolts of a stiff clamp keep their tension

    Examples
    --------
    >>> float(pressed_force(16000.0, 500.0))
    16500.0
    """
    return clamp + larger(pressing, 0)


@formula
def round_wall_resistance(
    yield_strength: float, wall: float, tube_diameter: float, contact_angle: float, length: float
) -> float:
    """Force on opposite sides at which the wall of a round tube is pressed in.

    N = 5 * f_y * t**2 * (1 + 0.25 * min(L / d, 4)) / max(1 - tan(alpha / 2), 0.19)

    Parameters
    ----------
    yield_strength : f_y [Pa]
        yield strength of the tube
    wall : t [m]
        wall thickness
    tube_diameter : d [m]
        outer diameter
    contact_angle : alpha [rad]
        half the arc that is pressed, evenly
    length : L [m]
        length pressed along the tube

    Returns
    -------
    N [N]

    Valid for
    ---------
    diameter 10 to 40 wall thicknesses on both sides pressed; no stress along the tube

    Source
    ------
    EN 1993-1-8 table 7.3, chord face failure by a plate along the tube, partial factor 1; the arc by
    four plastic hinges of a ring, M_p = W * d / 8 * (1 - tan(alpha / 2)), but no more than table 7.4
    gives for a member as wide as the tube, 1/0.19 (from memory)

    Examples
    --------
    >>> float(round_wall_resistance(2.35e8, 0.002, 0.032, 1e-9, 0.064))
    7050.0
    """
    along = 1 + 0.25 * smaller(length / tube_diameter, 4)
    return 5 * yield_strength * wall**2 * along / larger(1 - tan(contact_angle / 2), 0.19)


@formula
def side_wall_slenderness(
    tube_size: float, wall: float, elastic_modulus: float, yield_strength: float
) -> float:
    """Slenderness of the side wall of a square tube pressed from both sides.

    lam = 3.46 * max(b / t - 2, 0) * sqrt(f_y / E) / pi

    Parameters
    ----------
    tube_size : b [m]
        outer width of the tube
    wall : t [m]
        wall thickness
    elastic_modulus : E [Pa]
        elastic modulus of the tube
    yield_strength : f_y [Pa]
        yield strength of the tube

    Returns
    -------
    lam [-]

    Source
    ------
    EN 1993-1-8 table 7.11, side wall of X joints at right angles (from memory)

    Examples
    --------
    >>> float(side_wall_slenderness(0.04, 0.002, 2.1e11, 2.35e8))
    0.6632
    """
    return 3.46 * larger(tube_size / wall - 2, 0) * sqrt(yield_strength / elastic_modulus) / pi


@formula
def buckling_reduction(slenderness: float) -> float:
    """Share of yield that a wall of given slenderness bears before it buckles.

    chi = min(1 / (0.5 * (1 + 0.49 * (lam - 0.2) + lam**2) + sqrt(max((0.5 * (1 + 0.49 * (lam - 0.2) + lam**2))**2 - lam**2, 0))), 1)

    Parameters
    ----------
    slenderness : lam [-]
        slenderness

    Returns
    -------
    chi [-]

    Source
    ------
    EN 1993-1-1 clause 6.3.1.2, curve c (cold-formed hollow sections)

    Examples
    --------
    >>> float(buckling_reduction(1.0))
    0.5399
    """
    phi = 0.5 * (1 + 0.49 * (slenderness - 0.2) + slenderness**2)
    return smaller(1 / (phi + sqrt(larger(phi**2 - slenderness**2, 0))), 1)


@formula
def side_wall_resistance(
    reduction: float, yield_strength: float, wall: float, length: float
) -> float:
    """Force on opposite faces at which the side walls of a square tube give way.

    N = 0.8 * chi * f_y * t * (2 * L + 10 * t)

    Parameters
    ----------
    reduction : chi [-]
        share of yield before the walls buckle
    yield_strength : f_y [Pa]
        yield strength of the tube
    wall : t [m]
        wall thickness
    length : L [m]
        length pressed along the tube

    Returns
    -------
    N [N]

    Valid for
    ---------
    the whole width of the face pressed

    Source
    ------
    EN 1993-1-8 table 7.11, X joints as wide as the chord, partial factor 1 (from memory)

    Examples
    --------
    >>> side_wall_resistance(0.75, 2.35e8, 0.002, 0.05)
    33840.0
    """
    return 0.8 * reduction * yield_strength * wall * (2 * length + 10 * wall)
