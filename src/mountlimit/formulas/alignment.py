"""When the chain leaves its sprocket: the criterion for skew and slack.

No published criterion was found; the forms are derived from geometry and their few coefficients
were set with a lumped simulation of a chain drive that has not been compared with a test.
"""

from __future__ import annotations

from ..worked import formula
from ._maths import atan, larger, smaller
from .tooth_jump import (
    JUMP_BAND,
    back_tension_needed,
    back_tension_ratio,
    engaged_pitches,
    jump_by_tension,
    jump_length,
    jump_room,
    late_jump,
    slack_length,
    tooth_height,
)

__all__ = [
    "JUMP_BAND",
    "PROPOSAL",
    "RIDE_SHARE",
    "SLACK_ENTRY_LOW",
    "WALK_PITCHES",
    "back_tension_needed",
    "back_tension_ratio",
    "edge_rounding",
    "engaged_pitches",
    "jump_by_tension",
    "jump_length",
    "jump_room",
    "late_jump",
    "low_sum",
    "offset_allowed",
    "rub_angle",
    "side_clearance",
    "slack_length",
    "stiffness_factor",
    "tooth_height",
    "walk_off_angle",
]

PROPOSAL = "proposal, no published source"

# Pitches before the tangent point, share of the inner width still to cross (low, likely, high).
WALK_PITCHES: tuple[float, float, float] = (1.65, 1.65, 1.0)
RIDE_SHARE: tuple[float, float, float] = (0.0, 0.08, 0.12)
# Low value of the slack entry from this many teeth on is multiplied by the second number.
SLACK_ENTRY_LOW: tuple[int, float] = (30, 0.8)


@formula
def side_clearance(inner_width: float, tooth_width: float) -> float:
    """Side clearance between the inner plates and the tooth.

    c = b_1 - b_f

    Parameters
    ----------
    inner_width : b_1 [m]
        width between the inner plates
    tooth_width : b_f [m]
        width of the sprocket tooth

    Returns
    -------
    c [m]

    Source
    ------
    definition

    Examples
    --------
    >>> side_clearance(0.00785, 0.0073)
    5.500e-04
    """
    return inner_width - tooth_width


@formula
def rub_angle(clearance: float, pitch: float) -> float:
    """Skew at which the plates first rub on the teeth.

    eps = atan(c / (4 * p))

    Parameters
    ----------
    clearance : c [m]
        side clearance between the inner plates and the tooth
    pitch : p [m]
        chain pitch

    Returns
    -------
    eps [rad]

    Source
    ------
    proposal, no published source

    Examples
    --------
    >>> float(rub_angle(0.00055, 0.0127))
    0.01083
    """
    return atan(clearance / (4 * pitch))


@formula
def edge_rounding(plate_thickness: float) -> float:
    """Rounding of the edge of a punched plate.

    r = 0.1 * t

    Parameters
    ----------
    plate_thickness : t [m]
        thickness of the inner plate

    Returns
    -------
    r [m]

    Source
    ------
    proposal, no published source

    Examples
    --------
    >>> edge_rounding(0.0015)
    1.500e-04
    """
    return 0.1 * plate_thickness


@formula
def stiffness_factor(teeth: float) -> float:
    """Factor on the highest walk-off angle for a new, stiff chain.

    k = 1 + 0.2 * min(max((15 - z) / 3, 0), 1)

    Parameters
    ----------
    teeth : z [-]
        number of teeth

    Returns
    -------
    k [-]

    Source
    ------
    proposal, no published source

    Examples
    --------
    >>> float(stiffness_factor(13))
    1.133
    """
    return 1 + 0.2 * smaller(larger((15 - teeth) / 3, 0), 1)


@formula
def walk_off_angle(
    relief: float,
    edge_rounding: float,
    lam: float,
    pitch: float,
    ride_share: float,
    inner_width: float,
    stiff_factor: float,
) -> float:
    """Skew at which the chain walks off the teeth.

    eps = k * atan((b_a + r) / (m * p) + w * b_1 / p)

    Parameters
    ----------
    relief : b_a [m]
        side relief of the tooth tip
    edge_rounding : r [m]
        rounding of the plate edge
    lam : m [-]
        pitches before the tangent point at which a tip meets a plate
    pitch : p [m]
        chain pitch
    ride_share : w [-]
        share of the inner width the plate still has to cross
    inner_width : b_1 [m]
        width between the inner plates
    stiff_factor : k [-]
        factor for a new, laterally stiff chain

    Returns
    -------
    eps [rad]

    Valid for
    ---------
    sound teeth and links, centres over 20 pitches, under 5 m/s

    Source
    ------
    proposal, no published source

    Examples
    --------
    >>> float(walk_off_angle(0.001651, 0.00015, 1.65, 0.0127, 0.08, 0.00785, 1.0))
    0.1346
    """
    return stiff_factor * atan(
        (relief + edge_rounding) / (lam * pitch) + ride_share * inner_width / pitch
    )


@formula
def offset_allowed(allowance: float, centre_distance: float) -> float:
    """Offset allowed over the centre distance.

    y_a = k * a

    Parameters
    ----------
    allowance : k [-]
        allowed offset per length
    centre_distance : a [m]
        distance between the sprocket axes

    Returns
    -------
    y_a [m]

    Source
    ------
    chain makers' rules, 1 to 2 mm per metre (from memory; The Complete Guide to Chain, section
    7.1.2)

    Examples
    --------
    >>> offset_allowed(0.002, 0.4)
    8.000e-04
    """
    return allowance * centre_distance


@formula
def low_sum(skew: float, skew_low: float, slack_length: float, jump_length: float) -> float:
    """Skew and slack together, lowest bound: 1 is the limit.

    s = eps / eps_l + dL / (0.5 * dL_j)

    Parameters
    ----------
    skew : eps [rad]
        skew of the chain at the sprocket
    skew_low : eps_l [rad]
        lowest skew at which the chain walks off
    slack_length : dL [m]
        free length in the slack run
    jump_length : dL_j [m]
        free length at which the chain jumps a tooth

    Returns
    -------
    s [-]

    Source
    ------
    proposal, no published source

    Examples
    --------
    >>> low_sum(0.02, 0.0855, 0.002, 0.00883)
    0.6869
    """
    return skew / skew_low + slack_length / (0.5 * jump_length)
