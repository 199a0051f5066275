"""What the spellings of ``units.txt`` mean: SI factor, dimensions, and near misses.

A unit is looked up in the vocabulary first and measured by pint afterwards, so pint never sees
text that a user typed.
"""

from __future__ import annotations

from functools import cache, lru_cache
from typing import Any

from .unit_kinds import KINDS
from .unit_text import Powers, Unreadable, powers_of, product

# Spellings that mean something else where one kind is asked for.
_BY_KIND = {"temperature": {"C": "degC", "F": "degF"}, "acceleration": {"g": "gn"}}
_WEIGHTS = {"lb": "lbf", "lbs": "lbf", "pounds": "lbf", "kg": "kgf", "Kg": "kgf", "oz": "ozf"}
_ONE_WORD = {
    "ftlb": "lbf*ft", "ftlbs": "lbf*ft", "lbft": "lbf*ft", "lbsft": "lbf*ft", "ftlbf": "lbf*ft",
    "lbfft": "lbf*ft", "inlb": "lbf*in", "inlbs": "lbf*in", "lbin": "lbf*in", "inlbf": "lbf*in",
    "lbfin": "lbf*in", "ozin": "ozf*in", "inoz": "ozf*in", "kgcm": "kgf*cm", "kgm": "kgf*m",
    "KV": "rpm/V", "kV": "rpm/V", "Kv": "rpm/V", "kv": "rpm/V", "sqin": "in^2", "sqmm": "mm^2",
    "kph": "km/h", "kmh": "km/h", "cc": "cm^3", "Newton": "N", "c": "degC", "f": "degF",
}  # fmt: skip
_OFFSET = ("degree_celsius", "degree_fahrenheit")


@cache
def _lines() -> tuple[str, ...]:
    """Give the lines of the vocabulary file."""
    from importlib.resources import files

    text = files("mountlimit").joinpath("units.txt").read_text(encoding="utf-8")
    return tuple(text.splitlines())


@cache
def spellings() -> dict[str, str]:
    """Every accepted spelling of a unit with the unit's full name."""
    known: dict[str, str] = {}
    for line in _lines():
        if "=" in line and not line.startswith("#"):
            name, _, *others = (part.strip() for part in line.split("="))
            if "_" not in name:
                known[name] = name
            known.update({other: name for other in others if other != "_"})
    return known


@cache
def _registry() -> Any:
    """Build the unit registry; importing pint waits until the first quantity is read."""
    import pint

    registry: Any = pint.UnitRegistry(None)
    registry.load_definitions(_lines())
    return registry


def _unit_names(powers: Powers, kind: str) -> Powers:
    """Replace spellings by full names; an unknown one is refused with near spellings."""
    known = spellings()
    here = _BY_KIND.get(kind, {}) if len(powers) == 1 else {}
    names = []
    for spelling, power in powers:
        name = known.get(here.get(spelling, spelling))
        if name is None:
            near = [product(powers).replace(spelling, other) for other in _near(spelling)]
            near.append(KINDS[kind].metric)
            raise Unreadable(f"has an unknown unit {spelling[:20]!r}", *near)
        names.append((name, power))
    return tuple(names)


def _near(spelling: str) -> list[str]:
    """Give known spellings that an unknown one may stand for, best first."""
    from difflib import get_close_matches

    known = spellings()
    same = [other for other in known if other.casefold() == spelling.casefold()]
    close = get_close_matches(spelling[:20], known, n=4) if len(spelling) > 2 else []
    word = _ONE_WORD.get(spelling) or _ONE_WORD.get(spelling.casefold())
    return [*([word] if word else []), *same, *close]


@lru_cache(maxsize=1024)
def _measure(names: Powers) -> tuple[float, Any]:
    """Give the SI value of one of a unit product, and its dimensions."""
    registry = _registry()
    unit = registry.parse_units("*".join(f"{n}**{p}" for n, p in names))
    return float(registry.get_root_units(unit)[0]), unit.dimensionality


@lru_cache(maxsize=64)
def _dimensions(kind: str) -> Any:
    si = KINDS[kind].si
    return _measure(_unit_names(powers_of(si) if si != "-" else (("%", 1),), kind))[1]


def scale(powers: Powers, kind: str) -> tuple[float, str]:
    """Check a unit product against a kind; give its SI factor, or the name of an offset unit.

    Raises
    ------
    Unreadable
        when a unit is unknown or of another kind.
    """
    names = _unit_names(powers, kind)
    if any(name in _OFFSET for name, _ in names) and (len(names) > 1 or names[0][1] != 1):
        raise Unreadable("multiplies a temperature with a zero point of its own")
    factor, dimensions = _measure(names)
    energy = any(name in ("joule", "watt", "kilowatt", "horsepower") for name, _ in names)
    if dimensions != _dimensions(kind) or (kind == "torque" and energy):
        raise _wrong_kind(powers, dimensions, energy)
    return factor, names[0][0] if names[0][0] in _OFFSET else ""


def _wrong_kind(powers: Powers, dimensions: Any, energy: bool) -> Unreadable:
    """Say what the unit is instead, and offer weight for mass or the other way round."""
    back = {force: mass for mass, force in reversed(_WEIGHTS.items())}
    tries = []
    for swap, word in ((_WEIGHTS, "mass"), (back, "force")):
        swapped = [swap.get(n, n) for n, _ in powers]
        pairs = sorted(zip(swapped, (p for _, p in powers), strict=True), key=_force_first)
        if swapped != [n for n, _ in powers]:
            tries.append((product(tuple(pairs)), word))
    found = next((k for k in KINDS if _dimensions(k) == dimensions), "")
    if found == "torque" and energy:
        found = "energy"
    if found:
        problem = f"is {KINDS[found].label}"
    elif tries:
        which = next(n for n, _ in powers if n in _WEIGHTS or n in back)
        problem = f"takes {which!r} as a {tries[0][1]}"
    else:
        problem = f"has the unit {product(powers)[:30]!r}"
    return Unreadable(problem, *(text for text, _ in tries))


def _force_first(pair: tuple[str, int]) -> bool:
    return pair[0] not in ("lbf", "kgf", "ozf")


def to_kelvin(value: float, offset_unit: str) -> float:
    """Kelvin from degrees on a scale with a zero point of its own."""
    return float(_registry().Quantity(value, offset_unit).to("kelvin").magnitude)


def from_kelvin(value: float, offset_unit: str) -> float:
    """Degrees on a scale with a zero point of its own, from kelvin."""
    return float(_registry().Quantity(value, "kelvin").to(offset_unit).magnitude)
