"""The power rating of roller chain."""

from __future__ import annotations

from ..worked import formula
from ._maths import power


@formula
def link_plate_power(
    teeth: float, shaft_speed: float, pitch: float, rating_constant: float
) -> float:
    """Power rating by fatigue of the link plates, one strand.

    P = 745.7 * K * z**1.08 * (60 * n)**0.9 * (p / 0.0254)**(3 - 0.07 * p / 0.0254)

    Parameters
    ----------
    teeth : z [-]
        number of teeth
    shaft_speed : n [rev/s]
        speed of the shaft
    pitch : p [m]
        chain pitch
    rating_constant : K [-]
        constant of the chain number in the rating equation

    Returns
    -------
    P [W]

    Valid for
    ---------
    15 000 h, 100 pitches, service factor 1, single strand

    Source
    ------
    ASME B29.1 appendix, American Chain Association rating equation

    Examples
    --------
    >>> float(link_plate_power(17, 1.6666667, 0.0127, 0.004))
    514.0
    """
    return (
        745.7
        * rating_constant
        * power(teeth, 1.08)
        * power(60 * shaft_speed, 0.9)
        * power(pitch / 0.0254, 3 - 0.07 * pitch / 0.0254)
    )


@formula
def roller_bush_power(
    teeth: float, shaft_speed: float, pitch: float, rating_constant: float
) -> float:
    """Power rating by impact of rollers and bushes, one strand.

    P = 745.7 * 1000 * K * z**1.5 * (p / 0.0254)**0.8 / (60 * n)**1.5

    Parameters
    ----------
    teeth : z [-]
        number of teeth
    shaft_speed : n [rev/s]
        speed of the shaft
    pitch : p [m]
        chain pitch
    rating_constant : K [-]
        constant of the chain number in the rating equation

    Returns
    -------
    P [W]

    Valid for
    ---------
    15 000 h, 100 pitches, service factor 1, single strand

    Source
    ------
    ASME B29.1 appendix, American Chain Association rating equation

    Examples
    --------
    >>> float(roller_bush_power(11, 50.0, 0.009525, 29.0))
    2190.8
    """
    return (
        745.7
        * 1000
        * rating_constant
        * power(teeth, 1.5)
        * power(pitch / 0.0254, 0.8)
        / power(60 * shaft_speed, 1.5)
    )


@formula
def required_power_rating(
    power: float, service_factor: float, tooth_factor: float, strand_factor: float
) -> float:
    """Power rating a strand of 17 teeth must have.

    P_r = P * f_s / (f_z * f_n)

    Parameters
    ----------
    power : P [W]
        power
    service_factor : f_s [-]
        factor for the kind of load
    tooth_factor : f_z [-]
        rating at these teeth over the rating at 17 teeth
    strand_factor : f_n [-]
        factor for several strands

    Returns
    -------
    P_r [W]

    Source
    ------
    Bhandari, Design of Machine Elements, examples 14.2 and 14.3

    Examples
    --------
    >>> required_power_rating(5000.0, 1.3, 1.26, 1.0)
    5158.7
    """
    return power * service_factor / (tooth_factor * strand_factor)
