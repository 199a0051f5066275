"""Lengths of the chain: straight run, wrap, pitches, sag and excess."""

from __future__ import annotations

from ..worked import formula
from ._maths import asin, pi, smaller, sqrt


@formula
def span(
    centre_distance: float, driven_pitch_diameter: float, driving_pitch_diameter: float
) -> float:
    """Length of the straight run between the sprockets.

    L = sqrt(a**2 - ((D_2 - D_1) / 2)**2)

    Parameters
    ----------
    centre_distance : a [m]
        distance between the sprocket axes
    driven_pitch_diameter : D_2 [m]
        pitch diameter of the driven sprocket
    driving_pitch_diameter : D_1 [m]
        pitch diameter of the driving sprocket

    Returns
    -------
    L [m]

    Source
    ------
    geometry of the common tangent

    Examples
    --------
    >>> float(span(0.4, 0.24266, 0.04508))
    0.3876
    """
    return sqrt(centre_distance**2 - ((driven_pitch_diameter - driving_pitch_diameter) / 2) ** 2)


@formula
def wrap_angle(
    centre_distance: float, driven_pitch_diameter: float, driving_pitch_diameter: float
) -> float:
    """Angle of the driving sprocket covered by chain.

    theta = pi - 2 * asin((D_2 - D_1) / (2 * a))

    Parameters
    ----------
    centre_distance : a [m]
        distance between the sprocket axes
    driven_pitch_diameter : D_2 [m]
        pitch diameter of the driven sprocket
    driving_pitch_diameter : D_1 [m]
        pitch diameter of the driving sprocket

    Returns
    -------
    theta [rad]

    Source
    ------
    Mott, Machine Elements in Mechanical Design 4th ed., chapter 7

    Examples
    --------
    >>> float(wrap_angle(0.4, 0.24266, 0.04508))
    2.642
    """
    return pi - 2 * asin((driven_pitch_diameter - driving_pitch_diameter) / (2 * centre_distance))


@formula
def chain_length_in_pitches(
    centre_distance: float, pitch: float, driving_teeth: float, driven_teeth: float
) -> float:
    """Chain length in pitches.

    X = 2 * a / p + (z_1 + z_2) / 2 + ((z_2 - z_1) / (2 * pi))**2 * p / a

    Parameters
    ----------
    centre_distance : a [m]
        distance between the sprocket axes
    pitch : p [m]
        chain pitch
    driving_teeth : z_1 [-]
        teeth of the driving sprocket
    driven_teeth : z_2 [-]
        teeth of the driven sprocket

    Returns
    -------
    X [-]

    Valid for
    ---------
    centre distance at least about 20 pitches

    Source
    ------
    Bhandari, Design of Machine Elements, chapter 14; Mott, Machine Elements in Mechanical Design
    4th ed., chapter 7

    Examples
    --------
    >>> chain_length_in_pitches(0.5, 0.0127, 21, 63)
    121.9
    """
    return (
        2 * centre_distance / pitch
        + (driving_teeth + driven_teeth) / 2
        + ((driven_teeth - driving_teeth) / (2 * pi)) ** 2 * pitch / centre_distance
    )


@formula
def centre_distance_from_length(
    length_in_pitches: float, pitch: float, driving_teeth: float, driven_teeth: float
) -> float:
    """Centre distance for a whole number of pitches.

    a = p / 4 * (X - (z_1 + z_2) / 2 + sqrt((X - (z_1 + z_2) / 2)**2 - 8 * ((z_2 - z_1) / (2 *
    pi))**2))

    Parameters
    ----------
    length_in_pitches : X [-]
        chain length in pitches
    pitch : p [m]
        chain pitch
    driving_teeth : z_1 [-]
        teeth of the driving sprocket
    driven_teeth : z_2 [-]
        teeth of the driven sprocket

    Returns
    -------
    a [m]

    Source
    ------
    Bhandari, Design of Machine Elements, chapter 14; Mott, Machine Elements in Mechanical Design
    4th ed., chapter 7

    Examples
    --------
    >>> float(centre_distance_from_length(122, 0.0127, 21, 63))
    0.5008
    """
    return (
        pitch
        / 4
        * (
            length_in_pitches
            - (driving_teeth + driven_teeth) / 2
            + sqrt(
                (length_in_pitches - (driving_teeth + driven_teeth) / 2) ** 2
                - 8 * ((driven_teeth - driving_teeth) / (2 * pi)) ** 2
            )
        )
    )


@formula
def excess_from_sag(span: float, sag: float) -> float:
    """Excess length of a run from its sag.

    dL = 8 * s**2 / (3 * L)

    Parameters
    ----------
    span : L [m]
        free length between the sprockets
    sag : s [m]
        mid-span sag of the slack run

    Returns
    -------
    dL [m]

    Valid for
    ---------
    sag up to about a tenth of the span

    Source
    ------
    shallow parabola (statics texts, from memory)

    Examples
    --------
    >>> excess_from_sag(0.3, 0.012)
    0.001280
    """
    return 8 * sag**2 / (3 * span)


@formula
def wear_length(elongation: float, length_in_pitches: float, pitch: float) -> float:
    """Length added to the chain by wear.

    dL = w * X * p

    Parameters
    ----------
    elongation : w [-]
        wear elongation as a share of the length
    length_in_pitches : X [-]
        chain length in pitches
    pitch : p [m]
        chain pitch

    Returns
    -------
    dL [m]

    Source
    ------
    definition of wear elongation

    Examples
    --------
    >>> wear_length(0.015, 122, 0.0127)
    0.02324
    """
    return elongation * length_in_pitches * pitch


@formula
def wear_limit(teeth: float) -> float:
    """Wear elongation at which a chain is replaced.

    w = min(0.015, 2 / z)

    Parameters
    ----------
    teeth : z [-]
        number of teeth of the larger sprocket

    Returns
    -------
    w [-]

    Source
    ------
    The Complete Guide to Chain p. 14 (1.5 % for vibration and lost strength); chain makers' rule of
    200 / z per cent for large sprockets (from memory)

    Examples
    --------
    >>> float(wear_limit(200))
    0.01000
    """
    return smaller(0.015, 2 / teeth)
