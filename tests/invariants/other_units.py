"""Write a drive's values in other units: factors of NIST SP 811, appendix B, kept apart from the program's."""

from __future__ import annotations

import math
import re
from random import Random
from typing import Any

from mountlimit import units
from mountlimit.drivefile import DIRECTIONS, fields_for

INCH, POUND, GRAVITY = 0.0254, 0.45359237, 9.80665
LBF = POUND * GRAVITY
UNITS: dict[str, dict[str, float]] = {
    "length": {"in": INCH, "ft": 12 * INCH, "thou": INCH / 1000, "cm": 0.01, "m": 1.0},
    "mass": {"lb": POUND, "oz": POUND / 16, "g": 0.001, "kg": 1.0},
    "force": {"lbf": LBF, "kgf": GRAVITY, "kN": 1000.0, "ozf": LBF / 16},
    "torque": {"lbf*ft": LBF * 12 * INCH, "lbf*in": LBF * INCH, "kgf*m": GRAVITY, "Ncm": 0.01},
    "stress": {"psi": LBF / INCH**2, "ksi": 1000 * LBF / INCH**2, "kgf/mm^2": GRAVITY * 1e6, "bar": 1e5},
    "inertia": {"lb*in^2": POUND * INCH**2, "kg*mm^2": 1e-6, "g*cm^2": 1e-7},
    "angle": {"rad": 1.0, "mrad": 0.001, "arcmin": math.pi / 180 / 60},
    "current": {"mA": 0.001, "amps": 1.0},
    "time": {"ms": 0.001, "min": 60.0, "h": 3600.0},
    "rotational_speed": {"rad/s": 1.0, "rev/s": 2 * math.pi, "deg/s": math.pi / 180},
    "torque_constant": {"lbf*in/A": LBF * INCH, "kgf*m/A": GRAVITY, "Ncm/A": 0.01},
    "speed_constant": {"rad/s/V": 1.0, "rev/s/V": 2 * math.pi},
    "ratio": {"%": 0.01, "": 1.0},
    "stiffness": {"lbf/in": LBF / INCH, "kgf/mm": GRAVITY * 1000, "N/m": 1.0},
    "acceleration": {"m/s^2": 1.0, "ft/s^2": 12 * INCH},
}  # fmt: skip
KELVIN = {"degF": (5 / 9, 273.15 - 32 * 5 / 9), "degC": (1.0, 273.15), "K": (1.0, 0.0)}


def written(value: float, kind: str, chance: Random) -> str:
    """Write an SI value in a unit drawn at random, every digit of it."""
    if kind == "temperature":
        unit, (size, zero) = chance.choice(list(KELVIN.items()))
        return f"{(value - zero) / size!r} {unit}"
    unit, size = chance.choice(list(UNITS[kind].items()))
    return f"{value / size!r} {unit}".strip()


def in_other_units(keys: dict[str, Any], chance: Random) -> dict[str, Any]:
    """Give a drive's flat keys with every quantity in another unit."""
    known = fields_for(keys["mount.form"])
    return {
        key: _rewritten(value, known[key].kind, chance) if key in known else value
        for key, value in keys.items()
    }


def _rewritten(value: Any, kind: str, chance: Random) -> Any:
    if isinstance(value, dict):
        return {end: _rewritten(v, kind, chance) for end, v in value.items()}
    if kind in units.KINDS:
        return written(units.parse_value(value, kind), kind, chance)
    if kind in LISTS:
        return LISTS[kind](value, chance)
    if isinstance(value, list):
        return [_rewritten(v, kind, chance) for v in value]
    if kind == "direction" and value not in DIRECTIONS:
        return written(units.parse(value, "angle"), "angle", chance)
    return value


def _lengths(value: str, chance: Random) -> str:
    """Give "5 x 5 x 22 mm" or "20, 15, 9 mm" in inches, or in metres."""
    text, unit = re.fullmatch(r"(.*?)\s*(mm|in)", value).groups()  # type: ignore[union-attr]
    split = " x " if " x " in text else ", "
    other, size = chance.choice(list(UNITS["length"].items()))
    each = (units.parse(f"{part.strip()} {unit}", "length") / size for part in text.split(split))
    return split.join(repr(v) for v in each) + f" {other}"


def _every(value: Any, chance: Random) -> Any:
    return [_lengths(v, chance) for v in value]


def _screws(value: str, chance: Random) -> str:
    count, size = value.split(" x ")
    return value if size.startswith("M") else f"{count} x {units.parse(size, 'length') / INCH!r} in"


def _points(value: Any, chance: Random) -> Any:
    return [
        [
            written(units.parse(a, "current"), "current", chance),
            written(units.parse(t, "torque"), "torque", chance),
        ]
        for a, t in value
    ]


def _places(value: Any, chance: Random) -> Any:
    return [
        [form, *(written(units.parse(v, "length"), "length", chance) for v in rest)]
        for form, *rest in value
    ]


LISTS = {
    "key size": _lengths,
    "place": _every,
    "hole": _every,
    "screws": _screws,
    "points": _points,
    "shaft places": _places,
}
