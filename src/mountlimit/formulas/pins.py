"""A pin through hub and shaft, or between two flanges: shear of the pin, crushing of its holes."""

from __future__ import annotations

from ..worked import formula
from ._maths import pi


@formula
def pin_shear(torque: float, pin_diameter: float, circle: float, planes: float) -> float:
    """Mean shear stress of a pin that carries a torque.

    tau = 8 * T / (n * pi * d**2 * D)

    Parameters
    ----------
    torque : T [N*m]
        torque
    pin_diameter : d [m]
        diameter of the pin
    circle : D [m]
        diameter of the circle the sheared sections stand on: the shaft's for a cross pin
    planes : n [-]
        sheared sections: 2 for a cross pin, 1 for a pin between two flanges

    Returns
    -------
    tau [Pa]

    Source
    ------
    direct shear, Shigley's Mechanical Engineering Design 9th ed. section 7-7; Roloff/Matek,
    Maschinenelemente ch. 9 (from memory)

    Examples
    --------
    >>> pin_shear(100.0, 0.005, 0.02, 2)
    2.546e+08
    """
    return 8 * torque / (planes * pi * pin_diameter**2 * circle)


@formula
def shaft_crushing(torque: float, pin_diameter: float, shaft_diameter: float) -> float:
    """Largest pressure of a cross pin on its hole in the shaft.

    p_s = 6 * T / (d * D**2)

    Parameters
    ----------
    torque : T [N*m]
        torque
    pin_diameter : d [m]
        diameter of the pin
    shaft_diameter : D [m]
        diameter of the shaft

    Returns
    -------
    p_s [Pa]

    Valid for
    ---------
    pressure that grows with the distance from the shaft's middle, as in bending

    Source
    ------
    Roloff/Matek, Maschinenelemente ch. 9, cross pin (from memory)

    Examples
    --------
    >>> shaft_crushing(100.0, 0.005, 0.02)
    3.000e+08
    """
    return 6 * torque / (pin_diameter * shaft_diameter**2)


@formula
def hub_crushing(
    torque: float, pin_diameter: float, shaft_diameter: float, hub_diameter: float
) -> float:
    """Pressure of a cross pin on its holes in the hub.

    p_h = 4 * T / (d * (D_h**2 - D**2))

    Parameters
    ----------
    torque : T [N*m]
        torque
    pin_diameter : d [m]
        diameter of the pin
    shaft_diameter : D [m]
        diameter of the shaft
    hub_diameter : D_h [m]
        outer diameter of the hub

    Returns
    -------
    p_h [Pa]

    Valid for
    ---------
    pressure even over both walls of the hub

    Source
    ------
    Roloff/Matek, Maschinenelemente ch. 9, cross pin (from memory)

    Examples
    --------
    >>> hub_crushing(100.0, 0.005, 0.02, 0.035)
    9.697e+07
    """
    return 4 * torque / (pin_diameter * (hub_diameter**2 - shaft_diameter**2))
