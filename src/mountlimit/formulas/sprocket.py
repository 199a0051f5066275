"""The sprocket: pitch circle, tooth form, polygon of teeth."""

from __future__ import annotations

from ..worked import Value, formula
from ._maths import cos, pi, sin, tan

SMALL_PITCH = 0.0127 * 1.0001
NARROW = Value(0.93, "tooth width", "card", "ISO 606, pitch up to 12.7 mm (from memory)")
WIDE = Value(0.95, "tooth width", "card", "Bhandari, Design of Machine Elements, example 14.5")


def width_factor(pitch: float) -> Value:
    """Give the usual width of a tooth over the inner width of the chain, by its pitch in metres."""
    return NARROW if pitch <= SMALL_PITCH else WIDE


@formula
def pitch_diameter(pitch: float, teeth: float) -> float:
    """Pitch diameter of a sprocket.

    D = p / sin(pi / z)

    Parameters
    ----------
    pitch : p [m]
        chain pitch
    teeth : z [-]
        number of teeth

    Returns
    -------
    D [m]

    Source
    ------
    ISO 606 annex A, ASME B29.1

    Examples
    --------
    >>> float(pitch_diameter(0.0254, 17))
    0.1382
    """
    return pitch / sin(pi / teeth)


@formula
def smallest_effective_radius(pitch_diameter: float, teeth: float) -> float:
    """Smallest radius at which the chain pulls on the polygon of teeth.

    r = D / 2 * cos(pi / z)

    Parameters
    ----------
    pitch_diameter : D [m]
        pitch circle diameter of the sprocket
    teeth : z [-]
        number of teeth

    Returns
    -------
    r [m]

    Valid for
    ---------
    stalled start: the pull is largest at this radius

    Source
    ------
    Jiang, Analysis and Design of Machine Elements, eq. 7.10-7.12

    Examples
    --------
    >>> float(smallest_effective_radius(0.04508, 11))
    0.02163
    """
    return pitch_diameter / 2 * cos(pi / teeth)


@formula
def tip_diameter_max(pitch_diameter: float, pitch: float, roller_diameter: float) -> float:
    """Largest tip diameter.

    d_a = D + 1.25 * p - d_1

    Parameters
    ----------
    pitch_diameter : D [m]
        pitch circle diameter of the sprocket
    pitch : p [m]
        chain pitch
    roller_diameter : d_1 [m]
        roller (or bush) diameter

    Returns
    -------
    d_a [m]

    Source
    ------
    ISO 606 (from memory)

    Examples
    --------
    >>> tip_diameter_max(0.1036737, 0.01905, 0.01207)
    0.1154
    """
    return pitch_diameter + 1.25 * pitch - roller_diameter


@formula
def tooth_width(inner_width: float, width_factor: float) -> float:
    """Width of a sprocket tooth.

    b_f = k * b_1

    Parameters
    ----------
    inner_width : b_1 [m]
        width between the inner plates
    width_factor : k [-]
        tooth width as a share of the inner width

    Returns
    -------
    b_f [m]

    Source
    ------
    ISO 606 (from memory); Bhandari, Design of Machine Elements, example 14.5

    Examples
    --------
    >>> tooth_width(0.01168, 0.95)
    0.01110
    """
    return width_factor * inner_width


@formula
def tooth_side_relief(pitch: float, relief_share: float) -> float:
    """Side relief of the tooth tip.

    b_a = k * p

    Parameters
    ----------
    pitch : p [m]
        chain pitch
    relief_share : k [-]
        side relief as a share of the pitch

    Returns
    -------
    b_a [m]

    Source
    ------
    ISO 606, shares 0.10 to 0.15 (from memory)

    Examples
    --------
    >>> tooth_side_relief(0.01905, 0.125)
    0.002381
    """
    return relief_share * pitch


@formula
def speed_variation(teeth: float) -> float:
    """Swing of the chain speed by the polygon of teeth, over its mean.

    dv = pi / z * (1 / sin(pi / z) - 1 / tan(pi / z))

    Parameters
    ----------
    teeth : z [-]
        number of teeth

    Returns
    -------
    dv [-]

    Source
    ------
    Jiang, Analysis and Design of Machine Elements, eq. 7.13

    Examples
    --------
    >>> float(speed_variation(16))
    0.01934
    """
    return pi / teeth * (1 / sin(pi / teeth) - 1 / tan(pi / teeth))
