"""When slack lets the chain jump a tooth."""

from __future__ import annotations

from ..worked import formula
from ._maths import larger, pi, power, sin, smaller

# Multiples of the jump length (low, likely, high): proposal, no published source.
JUMP_BAND: tuple[float, float, float] = (0.5, 1.0, 1.7)


@formula
def tooth_height(pitch: float, roller_diameter: float, teeth: float) -> float:
    """Tooth height over the pitch circle, middle of the permitted range.

    h = ((p * (1 - 1.6 / z) - d_1) / 2 + (1.25 * p - d_1) / 2) / 2

    Parameters
    ----------
    pitch : p [m]
        chain pitch
    roller_diameter : d_1 [m]
        roller (or bush) diameter
    teeth : z [-]
        number of teeth

    Returns
    -------
    h [m]

    Source
    ------
    ISO 606 tooth form (from memory); taking the middle: proposal, no published source

    Examples
    --------
    >>> tooth_height(0.0127, 0.00795, 11)
    0.002707
    """
    return (
        (pitch * (1 - 1.6 / teeth) - roller_diameter) / 2 + (1.25 * pitch - roller_diameter) / 2
    ) / 2


@formula
def jump_room(wrap: float, tooth_height: float, roller_diameter: float) -> float:
    """Slack length that gives the rollers room to climb over the teeth.

    R = 0.5 * theta * (h + d_1 / 2)

    Parameters
    ----------
    wrap : theta [rad]
        angle of the driving sprocket covered by chain
    tooth_height : h [m]
        tooth height over the pitch circle
    roller_diameter : d_1 [m]
        roller (or bush) diameter

    Returns
    -------
    R [m]

    Source
    ------
    proposal, no published source

    Examples
    --------
    >>> jump_room(2.64, 0.00271, 0.00795)
    0.008824
    """
    return 0.5 * wrap * (tooth_height + roller_diameter / 2)


@formula
def back_tension_ratio(teeth: float) -> float:
    """Tension after a tooth over the tension before it.

    rho = sin((17 - 64 / z) * pi / 180) / sin((17 - 64 / z + 360 / z) * pi / 180)

    Parameters
    ----------
    teeth : z [-]
        number of teeth

    Returns
    -------
    rho [-]

    Valid for
    ---------
    new standard teeth, no friction, 9 teeth or more

    Source
    ------
    pressure angle 17 - 64/z degrees and tooth-load formula: The Complete Guide to Chain, section
    2.1.2

    Examples
    --------
    >>> float(back_tension_ratio(11))
    0.2796
    """
    return sin((17 - 64 / teeth) * pi / 180) / sin((17 - 64 / teeth + 360 / teeth) * pi / 180)


@formula
def engaged_pitches(wrap: float, teeth: float) -> float:
    """Pitches of chain on the driving sprocket.

    n = theta * z / (2 * pi)

    Parameters
    ----------
    wrap : theta [rad]
        angle of the driving sprocket covered by chain
    teeth : z [-]
        number of teeth

    Returns
    -------
    n [-]

    Source
    ------
    geometry; taking the real number instead of whole teeth: proposal, no published source

    Examples
    --------
    >>> engaged_pitches(2.64, 11)
    4.622
    """
    return wrap * teeth / (2 * pi)


@formula
def back_tension_needed(pull: float, ratio: float, engaged: float) -> float:
    """Tension the slack run must supply so that the chain does not climb.

    B = F * rho**n

    Parameters
    ----------
    pull : F [N]
        tight-side pull
    ratio : rho [-]
        tension after a tooth over tension before it
    engaged : n [-]
        engaged pitches, a real number

    Returns
    -------
    B [N]

    Source
    ------
    The Complete Guide to Chain, section 2.1.2; with the real number of pitches: proposal, no
    published source

    Examples
    --------
    >>> float(back_tension_needed(1738.0, 0.28, 4.63))
    4.791
    """
    return pull * power(ratio, engaged)


@formula
def jump_by_tension(mass_per_length: float, span: float, back_tension: float) -> float:
    """Slack length at which the slack run no longer supplies the back tension.

    S = 8 / 3 * (q * 9.80665 * L**2 / (8 * B))**2 / L

    Parameters
    ----------
    mass_per_length : q [kg/m]
        mass of the chain per length
    span : L [m]
        free length between the sprockets
    back_tension : B [N]
        tension the slack run must supply

    Returns
    -------
    S [m]

    Source
    ------
    proposal, no published source

    Examples
    --------
    >>> jump_by_tension(0.62, 0.388, 4.8)
    0.003905
    """
    return 8 / 3 * (mass_per_length * 9.80665 * span**2 / (8 * back_tension)) ** 2 / span


@formula
def jump_length(room: float, by_tension: float, pitch: float) -> float:
    """Slack length at which the chain jumps a tooth.

    dL_j = min(max(R, S), max(R, 2 * p))

    Parameters
    ----------
    room : R [m]
        slack length at which the rollers have room to climb
    by_tension : S [m]
        slack length at which the back tension is lost
    pitch : p [m]
        chain pitch

    Returns
    -------
    dL_j [m]

    Valid for
    ---------
    slack run below; chain not worn past its limit

    Source
    ------
    proposal, no published source

    Examples
    --------
    >>> float(jump_length(0.00883, 0.0039, 0.0127))
    0.008830
    """
    return smaller(larger(room, by_tension), larger(room, 2 * pitch))


@formula
def early_jump(jump_length: float) -> float:
    """Slack length at which rollers no longer seat, lower edge of the band.

    dL_l = 0.5 * dL_j

    Parameters
    ----------
    jump_length : dL_j [m]
        free length at which the chain jumps a tooth

    Returns
    -------
    dL_l [m]

    Source
    ------
    proposal, no published source

    Examples
    --------
    >>> early_jump(0.00883)
    0.004415
    """
    return 0.5 * jump_length


@formula
def late_jump(jump_length: float) -> float:
    """Slack length at which the chain jumps a tooth, upper edge of the band.

    dL_h = 1.7 * dL_j

    Parameters
    ----------
    jump_length : dL_j [m]
        free length at which the chain jumps a tooth

    Returns
    -------
    dL_h [m]

    Source
    ------
    proposal, no published source

    Examples
    --------
    >>> late_jump(0.00883)
    0.01501
    """
    return 1.7 * jump_length


@formula
def slack_length(approach: float, sag: float, span: float) -> float:
    """Free length in the slack run.

    dL = 2 * u + 8 * s**2 / (3 * L)

    Parameters
    ----------
    approach : u [m]
        movement of the driving shaft towards the driven shaft
    sag : s [m]
        mid-span sag of the slack run
    span : L [m]
        free length between the sprockets

    Returns
    -------
    dL [m]

    Valid for
    ---------
    sag up to about a tenth of the span

    Source
    ------
    shallow parabola; both runs lose the approach and the slack run takes it all (geometry)

    Examples
    --------
    >>> slack_length(0.0042, 0.00776, 0.388)
    0.008814
    """
    return 2 * approach + 8 * sag**2 / (3 * span)
