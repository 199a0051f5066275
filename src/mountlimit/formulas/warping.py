"""Held warping: bimoment, its stress and the twist it leaves."""

from __future__ import annotations

from ..worked import formula
from ._maths import sqrt, tanh


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
