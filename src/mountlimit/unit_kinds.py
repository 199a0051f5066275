"""The kinds of quantity: the SI unit of each, and the units it is shown in."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Kind:
    """A kind of quantity: its SI unit, and the units it is shown in.

    ``example`` is a valid text of this kind; ``steps`` are display units that replace ``metric``
    or ``inch`` from an SI magnitude on, rising.
    """

    name: str
    si: str
    metric: str
    inch: str
    example: str
    metric_steps: tuple[tuple[float, str], ...] = ()
    inch_steps: tuple[tuple[float, str], ...] = ()

    @property
    def label(self) -> str:
        """Name with its article: "an angle"."""
        words = self.name.replace("_", " ")
        return f"{'an' if words[0] in 'aeiou' else 'a'} {words}"


KINDS: dict[str, Kind] = {
    kind.name: kind
    for kind in (
        Kind("length", "m", "mm", "in", "6 mm", ((0, "mm"), (10, "m"))),
        Kind("area", "m^2", "mm^2", "in^2", "80 mm^2"),
        Kind("section_modulus", "m^3", "mm^3", "in^3", "500 mm^3", ((0, "mm^3"), (1e-3, "cm^3"))),
        Kind("second_moment", "m^4", "mm^4", "in^4", "4000 mm^4", ((0, "mm^4"), (1e-6, "cm^4"))),
        Kind("mass", "kg", "kg", "lb", "5.5 kg", ((0, "g"), (0.1, "kg"))),
        Kind("force", "N", "N", "lbf", "800 N", ((0, "N"), (1e4, "kN"))),
        Kind("torque", "N*m", "N*m", "lbf*ft", "12 N*m", (),
             ((0, "lbf*in"), (1.355, "lbf*ft"))),
        Kind("energy", "J", "J", "lbf*ft", "20 J"),
        Kind("stress", "Pa", "MPa", "psi", "120 MPa", ((0, "MPa"), (1e10, "GPa")),
             ((0, "psi"), (68947572, "ksi"))),
        Kind("mass_per_length", "kg/m", "kg/m", "lb/ft", "0.6 kg/m"),
        Kind("density", "kg/m^3", "kg/m^3", "lb/in^3", "2700 kg/m^3"),
        Kind("inertia", "kg*m^2", "kg*m^2", "lb*in^2", "0.002 kg*m^2",
             ((0, "kg*cm^2"), (0.1, "kg*m^2"))),
        Kind("angle", "rad", "deg", "deg", "0.5 deg"),
        Kind("current", "A", "A", "A", "80 A"),
        Kind("voltage", "V", "V", "V", "48 V"),
        Kind("power", "W", "W", "hp", "1500 W", ((0, "W"), (1e4, "kW"))),
        Kind("time", "s", "s", "s", "0.2 s",
             ((0, "ms"), (0.1, "s"), (120, "min"), (7200, "h")),
             ((0, "ms"), (0.1, "s"), (120, "min"), (7200, "h"))),
        Kind("speed", "m/s", "m/s", "ft/s", "3 m/s"),
        Kind("rotational_speed", "rad/s", "rpm", "rpm", "3000 rpm"),
        Kind("torque_constant", "N*m/A", "N*m/A", "N*m/A", "0.12 N*m/A"),
        Kind("speed_constant", "rad/s/V", "rpm/V", "rpm/V", "79 rpm/V"),
        Kind("temperature", "K", "degC", "degF", "60 degC"),
        Kind("ratio", "-", "", "", "5 %"),
        Kind("stiffness", "N/m", "N/mm", "lbf/in", "400 kN/mm", ((0, "N/mm"), (1e7, "kN/mm"))),
        Kind("rotational_stiffness", "N*m/rad", "N*m/rad", "lbf*in/rad", "900 N*m/rad"),
        Kind("acceleration", "m/s^2", "g", "g", "3 g"),
        Kind("frequency", "Hz", "Hz", "Hz", "50 Hz"),
    )
}  # fmt: skip

_SI_TEXTS = {
    **{kind.si: name for name, kind in KINDS.items()},
    "rad/(s*V)": "speed_constant", "1/s": "frequency", "1": "ratio",
}  # fmt: skip


def kind_of_unit(unit: str) -> str:
    """Name of the kind that an SI unit text stands for.

    Parameters
    ----------
    unit : text
        SI unit as written in a data sheet, such as "N*m", "m^3" or "-".

    Returns
    -------
    text
        a key of ``KINDS``; empty when no kind has that unit.

    Examples
    --------
    >>> kind_of_unit("N*m"), kind_of_unit("N*m^2")
    ('torque', '')
    """
    return _SI_TEXTS.get(unit.strip().replace("**", "^").replace(" ", ""), "")
