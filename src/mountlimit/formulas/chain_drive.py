"""The chain drive: pull and tensions; sprocket, length and rating come from their own files."""

from __future__ import annotations

from ..worked import formula
from .chain_length import (
    centre_distance_from_length,
    chain_length_in_pitches,
    excess_from_sag,
    span,
    wear_length,
    wrap_angle,
)
from .chain_rating import (
    link_plate_power,
    required_power_rating,
    roller_bush_power,
)
from .sprocket import (
    pitch_diameter,
    smallest_effective_radius,
    speed_variation,
    tip_diameter_max,
    tooth_side_relief,
    tooth_width,
)

__all__ = [
    "centre_distance_from_length",
    "centrifugal_tension",
    "chain_length_in_pitches",
    "chain_speed",
    "effective_pull",
    "excess_from_sag",
    "factor_on_tensile_strength",
    "link_plate_power",
    "pin_pressure",
    "pitch_diameter",
    "pull_from_power",
    "required_power_rating",
    "roller_bush_power",
    "sag_tension",
    "slack_side_tension",
    "smallest_effective_radius",
    "span",
    "speed_variation",
    "tight_side_tension",
    "tip_diameter_max",
    "tooth_side_relief",
    "tooth_width",
    "wear_length",
    "wrap_angle",
]


@formula
def effective_pull(torque: float, effective_radius: float) -> float:
    """Effective pull of the chain.

    F_e = T / r

    Parameters
    ----------
    torque : T [N*m]
        torque
    effective_radius : r [m]
        radius at which the chain pulls

    Returns
    -------
    F_e [N]

    Source
    ------
    statics (Bhandari, Design of Machine Elements, chapter 14)

    Examples
    --------
    >>> effective_pull(10.0, 0.0104)
    961.5
    """
    return torque / effective_radius


@formula
def chain_speed(teeth: float, pitch: float, shaft_speed: float) -> float:
    """Mean speed of the chain.

    v = z * p * n

    Parameters
    ----------
    teeth : z [-]
        number of teeth
    pitch : p [m]
        chain pitch
    shaft_speed : n [rev/s]
        speed of the shaft

    Returns
    -------
    v [m/s]

    Source
    ------
    Bhandari, Design of Machine Elements, chapter 14

    Examples
    --------
    >>> chain_speed(17, 0.01905, 16.6666667)
    5.398
    """
    return teeth * pitch * shaft_speed


@formula
def pull_from_power(power: float, chain_speed: float) -> float:
    """Effective pull from power and chain speed.

    F_e = P / v

    Parameters
    ----------
    power : P [W]
        power
    chain_speed : v [m/s]
        speed of the chain

    Returns
    -------
    F_e [N]

    Source
    ------
    Bhandari, Design of Machine Elements, example 14.1

    Examples
    --------
    >>> pull_from_power(14320.0, 5.3975)
    2653.1
    """
    return power / chain_speed


@formula
def centrifugal_tension(mass_per_length: float, chain_speed: float) -> float:
    """Centrifugal tension of the chain.

    F_c = q * v**2

    Parameters
    ----------
    mass_per_length : q [kg/m]
        mass of the chain per length
    chain_speed : v [m/s]
        speed of the chain

    Returns
    -------
    F_c [N]

    Source
    ------
    Jiang, Analysis and Design of Machine Elements, chapter 7

    Examples
    --------
    >>> centrifugal_tension(0.62, 5.0)
    15.50
    """
    return mass_per_length * chain_speed**2


@formula
def sag_tension(mass_per_length: float, span: float, sag: float) -> float:
    """Tension of the slack run from its own weight.

    F_s = q * 9.80665 * L**2 / (8 * s)

    Parameters
    ----------
    mass_per_length : q [kg/m]
        mass of the chain per length
    span : L [m]
        free length between the sprockets
    sag : s [m]
        mid-span sag of the slack run

    Returns
    -------
    F_s [N]

    Valid for
    ---------
    level run, sag up to about a tenth of the span

    Source
    ------
    shallow parabola (statics texts, from memory)

    Examples
    --------
    >>> sag_tension(0.62, 0.388, 0.00776)
    14.74
    """
    return mass_per_length * 9.80665 * span**2 / (8 * sag)


@formula
def slack_side_tension(centrifugal_tension: float, sag_tension: float) -> float:
    """Tension of the slack side.

    F_2 = F_c + F_s

    Parameters
    ----------
    centrifugal_tension : F_c [N]
        tension from the speed of the chain
    sag_tension : F_s [N]
        tension from the weight of the slack run

    Returns
    -------
    F_2 [N]

    Source
    ------
    Jiang, Analysis and Design of Machine Elements, chapter 7

    Examples
    --------
    >>> slack_side_tension(15.5, 14.7)
    30.20
    """
    return centrifugal_tension + sag_tension


@formula
def tight_side_tension(effective_pull: float, slack_side_tension: float) -> float:
    """Tension of the tight side.

    F_1 = F_e + F_2

    Parameters
    ----------
    effective_pull : F_e [N]
        tight-side less slack-side tension
    slack_side_tension : F_2 [N]
        tension of the returning run

    Returns
    -------
    F_1 [N]

    Source
    ------
    Jiang, Analysis and Design of Machine Elements, chapter 7

    Examples
    --------
    >>> tight_side_tension(961.5, 30.2)
    991.7
    """
    return effective_pull + slack_side_tension


@formula
def pin_pressure(tension: float, bearing_area: float) -> float:
    """Bearing pressure between pin and bush.

    p_b = F / A

    Parameters
    ----------
    tension : F [N]
        tension
    bearing_area : A [m^2]
        projected area of pin and bush

    Returns
    -------
    p_b [Pa]

    Source
    ------
    from memory (machine design texts)

    Examples
    --------
    >>> pin_pressure(1840.0, 6.63e-5)
    2.775e+07
    """
    return tension / bearing_area


@formula
def factor_on_tensile_strength(strength: float, tension: float) -> float:
    """Minimum tensile strength over tension.

    n = F_u / F

    Parameters
    ----------
    strength : F_u [N]
        minimum tensile strength of the chain
    tension : F [N]
        tension

    Returns
    -------
    n [-]

    Source
    ------
    Bhandari, Design of Machine Elements, example 14.1

    Examples
    --------
    >>> factor_on_tensile_strength(31100.0, 2653.08)
    11.72
    """
    return strength / tension
