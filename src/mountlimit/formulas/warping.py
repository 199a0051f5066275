"""Held warping: bimoment, its stress and the twist it leaves."""

from __future__ import annotations

from ..worked import formula
from ._maths import exp, sqrt, tanh


@formula
def bimoment_held_held(torque: float, decay: float, length: float) -> float:
    """Bimoment at the ends of a bar in torsion with warping held at both ends.

    B = T / k * tanh(k * L / 2)

    Parameters
    ----------
    torque : T [N*m]
        torque
    decay : k [1/m]
        decay of held warping along the bar
    length : L [m]
        length

    Returns
    -------
    B [N*m^2]

    Source
    ------
    Vlasov, Thin-Walled Elastic Beams (from memory)

    Examples
    --------
    >>> float(bimoment_held_held(10.0, 20.0, 0.05))
    0.2311
    """
    return torque / decay * tanh(decay * length / 2)


@formula
def bimoment_held_free(torque: float, decay: float, length: float) -> float:
    """Bimoment at the held end of a bar in torsion, warping free at the other.

    B = T / k * tanh(k * L)

    Parameters
    ----------
    torque : T [N*m]
        torque
    decay : k [1/m]
        decay of held warping along the bar
    length : L [m]
        length

    Returns
    -------
    B [N*m^2]

    Source
    ------
    Vlasov, Thin-Walled Elastic Beams (from memory)

    Examples
    --------
    >>> float(bimoment_held_free(1000.0, 1.839, 1.0))
    517.0
    """
    return torque / decay * tanh(decay * length)


@formula
def warping_decay(
    shear_modulus: float, torsion_constant: float, elastic_modulus: float, warping_constant: float
) -> float:
    """Decay of held warping along a bar.

    k = sqrt(G * J / (E * C_w))

    Parameters
    ----------
    shear_modulus : G [Pa]
        shear modulus
    torsion_constant : J [m^4]
        Saint-Venant torsion constant
    elastic_modulus : E [Pa]
        elastic modulus
    warping_constant : C_w [m^6]
        warping constant

    Returns
    -------
    k [1/m]

    Source
    ------
    Vlasov, Thin-Walled Elastic Beams (from memory)

    Examples
    --------
    >>> float(warping_decay(7.875e10, 1.13333e-7, 2.1e11, 1.256727e-8))
    1.839
    """
    return sqrt(shear_modulus * torsion_constant / (elastic_modulus * warping_constant))


@formula
def twist_held_held(
    torque: float, length: float, shear_modulus: float, torsion_constant: float, decay: float
) -> float:
    """Twist of a bar with warping held at both ends.

    phi = T / (G * J) * (L - 2 / k * tanh(k * L / 2))

    Parameters
    ----------
    torque : T [N*m]
        torque
    length : L [m]
        length
    shear_modulus : G [Pa]
        shear modulus
    torsion_constant : J [m^4]
        Saint-Venant torsion constant
    decay : k [1/m]
        decay of held warping along the bar

    Returns
    -------
    phi [rad]

    Source
    ------
    Vlasov, Thin-Walled Elastic Beams (from memory)

    Examples
    --------
    >>> float(twist_held_held(10.0, 0.05, 7.875e10, 4e-9, 20.0))
    1.203e-04
    """
    return (
        torque
        / (shear_modulus * torsion_constant)
        * (length - 2 / decay * tanh(decay * length / 2))
    )


@formula
def twist_held_free(
    torque: float, length: float, shear_modulus: float, torsion_constant: float, decay: float
) -> float:
    """Twist of a bar with warping held at one end.

    phi = T / (G * J) * (L - tanh(k * L) / k)

    Parameters
    ----------
    torque : T [N*m]
        torque
    length : L [m]
        length
    shear_modulus : G [Pa]
        shear modulus
    torsion_constant : J [m^4]
        Saint-Venant torsion constant
    decay : k [1/m]
        decay of held warping along the bar

    Returns
    -------
    phi [rad]

    Source
    ------
    Vlasov, Thin-Walled Elastic Beams (from memory)

    Examples
    --------
    >>> float(twist_held_free(1000.0, 1.0, 7.875e10, 1.13333e-7, 1.839))
    0.05412
    """
    return torque / (shear_modulus * torsion_constant) * (length - tanh(decay * length) / decay)


@formula
def span_bimoment(torque: float, span: float, place: float, decay: float) -> float:
    """Bimoment where a torque acts on an open member: ends held against twist, free to warp.

    B = T / (k * (1 / tanh(k * s * L) + 1 / tanh(k * (1 - s) * L)))

    Parameters
    ----------
    torque : T [N*m]
        torque at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the torque acts, from one end, over the span
    decay : k [1/m]
        decay of held warping along the bar

    Returns
    -------
    B [N*m^2]

    Source
    ------
    Vlasov, Thin-Walled Elastic Beams; AISC Design Guide 9, concentrated torque, ends pinned (from memory)
    """
    one, other = tanh(decay * place * span), tanh(decay * (1 - place) * span)
    return torque / (decay * (1 / one + 1 / other))


@formula
def plain_torque_left(torque: float, span: float, place: float, decay: float) -> float:
    """Torque that plain twist carries beside the place where a torque acts on an open member.

    m = T * abs(1 - s - tanh(k * (1 - s) * L) / (tanh(k * s * L) + tanh(k * (1 - s) * L)))

    Parameters
    ----------
    torque : T [N*m]
        torque at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the torque acts, from one end, over the span
    decay : k [1/m]
        decay of held warping along the bar

    Returns
    -------
    m [N*m]

    Notes
    -----
    The section goes on warping through the place, so it is the same on both sides.

    Source
    ------
    Vlasov, Thin-Walled Elastic Beams; AISC Design Guide 9, concentrated torque, ends pinned (from memory)
    """
    one, other = tanh(decay * place * span), tanh(decay * (1 - place) * span)
    return torque * abs(1 - place - other / (one + other))


@formula
def warping_stress(bimoment: float, warping: float, warping_constant: float) -> float:
    """Stress along a bar where its warping is held.

    sigma = B * omega / C_w

    Parameters
    ----------
    bimoment : B [N*m^2]
        bimoment
    warping : omega [m^2]
        warping of the point under unit twist, about the shear centre
    warping_constant : C_w [m^6]
        warping constant

    Returns
    -------
    sigma [Pa]

    Source
    ------
    Vlasov, Thin-Walled Elastic Beams (from memory)
    """
    return bimoment * warping / warping_constant


@formula
def warping_at_end(torque: float, span: float, place: float, decay: float) -> float:
    """Plain torque at an end of an open member that is free to warp.

    m = T * (1 - s - (exp(-k * s * L) - exp(-k * (2 - s) * L)) / (1 - exp(-2 * k * L)))

    Parameters
    ----------
    torque : T [N*m]
        torque at the place
    span : L [m]
        between the two ends
    place : s [-]
        where the torque acts, from this end, over the span
    decay : k [1/m]
        decay of held warping along the bar

    Returns
    -------
    m [N*m]

    Notes
    -----
    Over G J it is how much the end warps; the second term is sinh(k (1 - s) L) / sinh(k L).

    Source
    ------
    Vlasov, Thin-Walled Elastic Beams; AISC Design Guide 9, concentrated torque, ends pinned (from memory)
    """
    one, two = exp(-decay * place * span), exp(-decay * (2 - place) * span)
    return torque * (1 - place - (one - two) / (1 - exp(-2 * decay * span)))


@formula
def held_end_bimoment(this_end: float, other_end: float, span: float, decay: float) -> float:
    """Bimoment at an end of an open member where both ends are held against warping.

    B = ((k / tanh(k * L) - 1 / L) * m_1 + (2 * k * exp(-k * L) / (1 - exp(-2 * k * L)) - 1 / L) *
    m_2) / ((k / tanh(k * L) - 1 / L)**2 - (2 * k * exp(-k * L) / (1 - exp(-2 * k * L)) - 1 / L)**2)

    Parameters
    ----------
    this_end : m_1 [N*m]
        plain torque at this end if both were free to warp
    other_end : m_2 [N*m]
        the same at the other end
    span : L [m]
        between the two ends
    decay : k [1/m]
        decay of held warping along the bar

    Returns
    -------
    B [N*m^2]

    Source
    ------
    Vlasov, Thin-Walled Elastic Beams (from memory): bimoments that take the ends' warping away
    """
    own = decay / tanh(decay * span) - 1 / span
    far = 2 * decay * exp(-decay * span) / (1 - exp(-2 * decay * span)) - 1 / span
    return (own * this_end + far * other_end) / (own**2 - far**2)


@formula
def from_other_end(place: float) -> float:
    """Place along a span, counted from the other end.

    s_2 = 1 - s

    Parameters
    ----------
    place : s [-]
        from one end, over the span

    Returns
    -------
    s_2 [-]

    Source
    ------
    geometry
    """
    return 1 - place
