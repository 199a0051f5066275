"""Bending moments of a beam across a span where its load acts, and the larger part of a torque.

The place is the share ``s`` of the span from one end; ``s`` and ``1 - s`` give the same.
"""

from __future__ import annotations

from ..worked import formula
from ._maths import larger


@formula
def held_moment_force(force: float, span: float, place: float) -> float:
    """Bending moment under a force on a beam with held ends.

    m = 2 * F * L * (s * (1 - s))**2

    Parameters
    ----------
    force : F [N]
        force across the beam at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the load is, from one end, over the span

    Returns
    -------
    m [N*m]

    Source
    ------
    AISC Manual table 3-23, beam fixed at both ends, load at any point (from memory)
    """
    s = place
    return 2 * force * span * (s * (1 - s)) ** 2


@formula
def held_moment_couple(couple: float, place: float) -> float:
    """Larger bending moment beside a couple on a beam with held ends.

    m = M * max((1 - s) * (1 - 3 * s + 6 * s**2), s * (4 - 9 * s + 6 * s**2))

    Parameters
    ----------
    couple : M [N*m]
        couple at the place
    place : s [-]
        where the load is, from one end, over the span

    Returns
    -------
    m [N*m]

    Source
    ------
    slope and deflection of the two parts at the couple, both ends fixed
    """
    s = place
    return couple * larger((1 - s) * (1 - 3 * s + 6 * s**2), s * (4 - 9 * s + 6 * s**2))


@formula
def hinged_moment_force(force: float, span: float, place: float) -> float:
    """Bending moment under a force on a beam with hinged ends.

    m = F * L * s * (1 - s)

    Parameters
    ----------
    force : F [N]
        force across the beam at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the load is, from one end, over the span

    Returns
    -------
    m [N*m]

    Source
    ------
    AISC Manual table 3-23, simple beam, load at any point (from memory)
    """
    s = place
    return force * span * s * (1 - s)


@formula
def hinged_moment_couple(couple: float, place: float) -> float:
    """Larger bending moment beside a couple on a beam with hinged ends.

    m = M * max(s, 1 - s)

    Parameters
    ----------
    couple : M [N*m]
        couple at the place
    place : s [-]
        where the load is, from one end, over the span

    Returns
    -------
    m [N*m]

    Source
    ------
    statics: end reactions M / L
    """
    s = place
    return couple * larger(s, 1 - s)


@formula
def larger_torque(torque: float, place: float) -> float:
    """Larger part of a torque on a member held against twist at both ends.

    m = T * max(s, 1 - s)

    Parameters
    ----------
    torque : T [N*m]
        torque at the place
    place : s [-]
        where the load is, from one end, over the span

    Returns
    -------
    m [N*m]

    Source
    ------
    statics: the parts share the torque as their stiffness, one over their length
    """
    s = place
    return torque * larger(s, 1 - s)


@formula
def held_end_force(force: float, span: float, place: float) -> float:
    """Larger bending moment at the held ends of a beam under a force.

    m = F * L * s * (1 - s) * max(s, 1 - s)

    Parameters
    ----------
    force : F [N]
        force across the beam at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the load is, from one end, over the span

    Returns
    -------
    m [N*m]

    Source
    ------
    AISC Manual table 3-23, beam fixed at both ends, load at any point (from memory)
    """
    s = place
    return force * span * s * (1 - s) * larger(s, 1 - s)


@formula
def held_end_couple(couple: float, place: float) -> float:
    """Larger bending moment at the held ends of a beam under a couple, in size.

    m = M * max((1 - s) * abs(1 - 3 * s), s * abs(2 - 3 * s))

    Parameters
    ----------
    couple : M [N*m]
        couple at the place
    place : s [-]
        where the load is, from one end, over the span

    Returns
    -------
    m [N*m]

    Source
    ------
    slope and deflection of the two parts at the couple, both ends fixed
    """
    s = place
    return couple * larger((1 - s) * abs(1 - 3 * s), s * abs(2 - 3 * s))


@formula
def moments_in_size(first: float, second: float) -> float:
    """Bending moments of a force and of a couple, added in size.

    m = abs(m_1) + abs(m_2)

    Parameters
    ----------
    first : m_1 [N*m]
        of the force
    second : m_2 [N*m]
        of the couple

    Returns
    -------
    m [N*m]

    Source
    ------
    every sign is possible: the safe side
    """
    return abs(first) + abs(second)
