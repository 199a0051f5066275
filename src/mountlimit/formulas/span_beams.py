"""Beams across a span with force and couple at any place: ends held, or hinged.

The place is the share ``s`` of the span from one end. Turns are in the sense of the slope dw/dx, x
running from that end.
"""

from __future__ import annotations

from ..worked import formula


@formula
def held_sag_force(
    force: float, span: float, place: float, elastic_modulus: float, second_moment: float
) -> float:
    """Deflection of a beam with held ends under a force, where it acts.

    w = F * L**3 * (s * (1 - s))**3 / (3 * E * I)

    Parameters
    ----------
    force : F [N]
        force across the beam at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the load is, from one end, over the span
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    w [m]

    Source
    ------
    AISC Manual table 3-23, beam fixed at both ends, load at any point (from memory)
    """
    s = place
    return force * span**3 * (s * (1 - s)) ** 3 / (3 * elastic_modulus * second_moment)


@formula
def held_turn_force(
    force: float, span: float, place: float, elastic_modulus: float, second_moment: float
) -> float:
    """Slope of a beam with held ends under a force, where it acts.

    theta = F * L**2 * (s * (1 - s))**2 * (1 - 2 * s) / (2 * E * I)

    Parameters
    ----------
    force : F [N]
        force across the beam at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the load is, from one end, over the span
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    theta [rad]

    Source
    ------
    AISC Manual table 3-23, beam fixed at both ends, load at any point (from memory); slope of its elastic line
    """
    s = place
    return (
        force * span**2 * (s * (1 - s)) ** 2 * (1 - 2 * s) / (2 * elastic_modulus * second_moment)
    )


@formula
def held_sag_couple(
    couple: float, span: float, place: float, elastic_modulus: float, second_moment: float
) -> float:
    """Deflection of a beam with held ends under a couple, where it acts.

    w = M * L**2 * (s * (1 - s))**2 * (1 - 2 * s) / (2 * E * I)

    Parameters
    ----------
    couple : M [N*m]
        couple at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the load is, from one end, over the span
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    w [m]

    Source
    ------
    reciprocity (Maxwell-Betti) with the turn under a force
    """
    s = place
    return (
        couple * span**2 * (s * (1 - s)) ** 2 * (1 - 2 * s) / (2 * elastic_modulus * second_moment)
    )


@formula
def held_turn_couple(
    couple: float, span: float, place: float, elastic_modulus: float, second_moment: float
) -> float:
    """Slope of a beam with held ends under a couple, where it acts.

    theta = M * L * s * (1 - s) * (1 - 3 * s * (1 - s)) / (E * I)

    Parameters
    ----------
    couple : M [N*m]
        couple at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the load is, from one end, over the span
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    theta [rad]

    Source
    ------
    Roark's Formulas for Stress and Strain, beams with an intermediate couple, both ends fixed (from memory)
    """
    s = place
    return couple * span * s * (1 - s) * (1 - 3 * s * (1 - s)) / (elastic_modulus * second_moment)


@formula
def hinged_sag_force(
    force: float, span: float, place: float, elastic_modulus: float, second_moment: float
) -> float:
    """Deflection of a beam with hinged ends under a force, where it acts.

    w = F * L**3 * (s * (1 - s))**2 / (3 * E * I)

    Parameters
    ----------
    force : F [N]
        force across the beam at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the load is, from one end, over the span
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    w [m]

    Source
    ------
    AISC Manual table 3-23, simple beam, load at any point (from memory)
    """
    s = place
    return force * span**3 * (s * (1 - s)) ** 2 / (3 * elastic_modulus * second_moment)


@formula
def hinged_turn_force(
    force: float, span: float, place: float, elastic_modulus: float, second_moment: float
) -> float:
    """Slope of a beam with hinged ends under a force, where it acts.

    theta = F * L**2 * s * (1 - s) * (1 - 2 * s) / (3 * E * I)

    Parameters
    ----------
    force : F [N]
        force across the beam at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the load is, from one end, over the span
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    theta [rad]

    Source
    ------
    AISC Manual table 3-23, simple beam, load at any point (from memory); slope of its elastic line
    """
    s = place
    return force * span**2 * s * (1 - s) * (1 - 2 * s) / (3 * elastic_modulus * second_moment)


@formula
def hinged_sag_couple(
    couple: float, span: float, place: float, elastic_modulus: float, second_moment: float
) -> float:
    """Deflection of a beam with hinged ends under a couple, where it acts.

    w = M * L**2 * s * (1 - s) * (1 - 2 * s) / (3 * E * I)

    Parameters
    ----------
    couple : M [N*m]
        couple at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the load is, from one end, over the span
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    w [m]

    Source
    ------
    reciprocity (Maxwell-Betti) with the turn under a force
    """
    s = place
    return couple * span**2 * s * (1 - s) * (1 - 2 * s) / (3 * elastic_modulus * second_moment)


@formula
def hinged_turn_couple(
    couple: float, span: float, place: float, elastic_modulus: float, second_moment: float
) -> float:
    """Slope of a beam with hinged ends under a couple, where it acts.

    theta = M * L * (1 - 3 * s * (1 - s)) / (3 * E * I)

    Parameters
    ----------
    couple : M [N*m]
        couple at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the load is, from one end, over the span
    elastic_modulus : E [Pa]
        elastic modulus
    second_moment : I [m^4]
        second moment of area

    Returns
    -------
    theta [rad]

    Source
    ------
    Roark's Formulas for Stress and Strain, beams with an intermediate couple, both ends simply supported (from memory)
    """
    s = place
    return couple * span * (1 - 3 * s * (1 - s)) / (3 * elastic_modulus * second_moment)
