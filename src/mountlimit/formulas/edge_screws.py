"""Screws in the edge of a plate that is no wood: how they give and what pulls them out."""

from __future__ import annotations

from ..worked import formula
from ._maths import log, pi, power


@formula
def pin_slip_stiffness(plate_modulus: float, screw_modulus: float, core: float) -> float:
    """Stiffness across a pin that beds in two like plates, each an elastic foundation.

    K = E / (4 * (16 * E / (pi * E_s * d_1**4))**0.25)

    Parameters
    ----------
    plate_modulus : E [Pa]
        elastic modulus of the softer plate; the foundation of a pin is about E per length
    screw_modulus : E_s [Pa]
        elastic modulus of the pin
    core : d_1 [m]
        diameter of the pin that bends

    Returns
    -------
    K [N/m]

    Valid for
    ---------
    a pin longer in each plate than about three of its diameters, without play in the holes

    Source
    ------
    Hetenyi, Beams on Elastic Foundation (from memory): end force on a long beam, both sides

    Examples
    --------
    >>> float(pin_slip_stiffness(9e8, 2.05e11, 0.004))
    2327436.4
    """
    ratio = 16 * plate_modulus / (pi * screw_modulus * core**4)
    return plate_modulus / (4 * power(ratio, 0.25))


@formula
def thread_stiffness(
    shear_modulus: float, length: float, thickness: float, diameter: float
) -> float:
    """Stiffness of the material round a thread against being drawn along it.

    K = 2 * pi * G * l / log(t / d)

    Parameters
    ----------
    shear_modulus : G [Pa]
        shear modulus of the plate
    length : l [m]
        length of thread in the edge
    thickness : t [m]
        thickness of the plate
    diameter : d [m]
        diameter of the thread

    Returns
    -------
    K [N/m]

    Source
    ------
    from memory (sleeve of elastic material in shear along its axis, out to the plate's faces)

    Examples
    --------
    >>> float(thread_stiffness(3.2e8, 0.03, 0.02, 0.005))
    43510657.4
    """
    return 2 * pi * shear_modulus * length / log(thickness / diameter)


@formula
def shank_stiffness(screw_modulus: float, core: float, under_head: float, length: float) -> float:
    """Stiffness of a screw's own shank, from its head to the middle of its thread.

    K = pi * E_s * d_1**2 / (4 * (t_2 + l / 2))

    Parameters
    ----------
    screw_modulus : E_s [Pa]
        elastic modulus of the screw
    core : d_1 [m]
        diameter at the bottom of the thread
    under_head : t_2 [m]
        thickness of the plate under the head
    length : l [m]
        length of thread in the edge

    Returns
    -------
    K [N/m]

    Source
    ------
    statics, as a bolt of VDI 2230 that stretches over half its engaged thread (from memory)

    Examples
    --------
    >>> shank_stiffness(2.05e11, 0.004, 0.015, 0.03)
    85870199.2
    """
    return pi * screw_modulus * core**2 / (4 * (under_head + length / 2))


@formula
def thread_pull_out(shear_strength: float, diameter: float, length: float) -> float:
    """Force that shears a coarse thread out of a plastic.

    F = 0.8 * pi * tau * d * l

    Parameters
    ----------
    shear_strength : tau [Pa]
        shear stress that may act
    diameter : d [m]
        outer diameter of the thread
    length : l [m]
        length of thread in the edge

    Returns
    -------
    F [N]

    Source
    ------
    from memory (plastics makers' design guides: a cylinder at the pitch diameter, 0.8 d)

    Examples
    --------
    >>> thread_pull_out(1.2e7, 0.005, 0.03)
    4523.9
    """
    return 0.8 * pi * shear_strength * diameter * length


@formula
def dowel_friction(pressure: float, diameter: float, length: float) -> float:
    """Force that draws a dry pressed-in dowel out.

    F = pi * q * d * l

    Parameters
    ----------
    pressure : q [Pa]
        friction stress on its surface
    diameter : d [m]
        diameter of the dowel
    length : l [m]
        length in the edge

    Returns
    -------
    F [N]

    Source
    ------
    surface of a cylinder

    Examples
    --------
    >>> dowel_friction(2e5, 0.008, 0.03)
    150.8
    """
    return pi * pressure * diameter * length


@formula
def punched(shear_strength: float, head_diameter: float, thickness: float) -> float:
    """Force that punches a head through a plate.

    F = pi * tau * d_h * t

    Parameters
    ----------
    shear_strength : tau [Pa]
        shear stress that may act
    head_diameter : d_h [m]
        diameter of the head or its washer
    thickness : t [m]
        thickness of the plate

    Returns
    -------
    F [N]

    Source
    ------
    EN 1993-1-8 table 3.4, punching, with tau for 0.6 f_u

    Examples
    --------
    >>> punched(1.2e7, 0.01, 0.015)
    5654.9
    """
    return pi * shear_strength * head_diameter * thickness


@formula
def core_area(core: float) -> float:
    """Cross-section of a round core.

    A = pi * d_1**2 / 4

    Parameters
    ----------
    core : d_1 [m]
        diameter at the bottom of the thread

    Returns
    -------
    A [m^2]

    Source
    ------
    geometry

    Examples
    --------
    >>> core_area(0.004)
    1.2566e-05
    """
    return pi * core**2 / 4
