"""Reads a place, a hole or a slot written as one text: "20, 15, 9 mm" or "1-1/2, 2 in"."""

from __future__ import annotations

import math
import re

from .. import units
from .error import EntryMistake
from .model import Place, RoundHole, SlotHole, half_turn

FARTHEST = 10.0  # m, a place beyond this is a slip of the pen
SMALLEST_CUT = 0.0005  # m
HEADINGS = {"right": 0.0, "up": 90.0, "left": 180.0, "down": -90.0}

_UNIT = re.compile(r"([A-Za-zµμ]+\.?|[\"″”'′’])\s*$")
_BARE = re.compile(r"[-+−]?[\d./ -]+")


def place(entry: object) -> Place:
    """Read "x, y" with a unit.

    Raises
    ------
    EntryMistake
        when it is not a place.
    """
    x, y = _lengths(entry, ("x", "y"), "20, 15 mm")
    return Place(x, y)


def hole(entry: object) -> RoundHole:
    """Read "x, y, diameter" with a unit.

    Raises
    ------
    EntryMistake
        when it is not a round hole.
    """
    x, y, diameter = _lengths(entry, ("x", "y", "diameter"), "20, 15, 9 mm")
    if not diameter >= SMALLEST_CUT:
        raise EntryMistake(entry, "expected a diameter of 0.5 mm or more")
    return RoundHole(x, y, diameter)


def slot(entry: object) -> SlotHole:
    """Read "x, y, length, width, angle": length end to end, angle from x to the long axis.

    Raises
    ------
    EntryMistake
        when it is not a slot.
    """
    names, example = ("x", "y", "length", "width", "angle"), "60, 15, 25, 9 mm, 0 deg"
    parts = _parts(entry, names, example)
    text = str(entry)
    x, y, length, width = _with_units(text, parts[:4])
    if _BARE.fullmatch(parts[4]):
        raise EntryMistake(text, "the angle has no unit", f'for example "{text.strip()} deg"')
    angle = _read(text, parts[4], "angle")
    if not width >= SMALLEST_CUT:
        raise EntryMistake(text, "expected a width of 0.5 mm or more")
    if not length > width:
        raise EntryMistake(
            text, "expected a length above the width: the length is measured from end to end"
        )
    return SlotHole(x, y, length, width, half_turn(angle))


def heading(text: object) -> float:
    """Read a direction in a drawing, rad from its x axis: up, down, left, right or an angle.

    Raises
    ------
    EntryMistake
        when it is neither.
    """
    word = text.strip().lower() if isinstance(text, str) else ""
    if word in HEADINGS:
        return math.radians(HEADINGS[word])
    try:
        return math.remainder(units.parse(word, "angle"), 2.0 * math.pi)
    except units.UnitMistake:
        raise EntryMistake(
            text, f"expected {', '.join(HEADINGS)} or an angle such as '30 deg'"
        ) from None


def _lengths(entry: object, names: tuple[str, ...], example: str) -> list[float]:
    return _with_units(str(entry), _parts(entry, names, example))


def _parts(entry: object, names: tuple[str, ...], example: str) -> list[str]:
    """Split an entry at its commas into as many parts as there are names."""
    form = f"expected text with {', '.join(names)} and a unit"
    if not isinstance(entry, str):
        raise EntryMistake(entry, form, f'for example "{_offer(entry, names, example)}"')
    if len(entry) > 200:
        raise EntryMistake(entry[:57] + "...", form, f'for example "{example}"')
    parts = [part.strip() for part in re.split("[,;]", entry)]
    if len(parts) != len(names) or not all(parts):
        more = "; decimals take a point" if len(parts) > len(names) else ""
        raise EntryMistake(entry, f"{form}{more}", f'for example "{example}"')
    return parts


def _offer(entry: object, names: tuple[str, ...], example: str) -> str:
    """Write a list of bare numbers as the text it should have been."""
    plain = isinstance(entry, list) and len(entry) == len(names)
    if plain and all(isinstance(v, int | float) for v in entry):  # type: ignore[attr-defined]
        numbers = [f"{v:g}" for v in entry]  # type: ignore[attr-defined]
        if names[-1] == "angle":
            return f"{', '.join(numbers[:-1])} mm, {numbers[-1]} deg"
        return f"{', '.join(numbers)} mm"
    return example


def _with_units(text: str, parts: list[str]) -> list[float]:
    """Read lengths; one without a unit takes that of the next one which has it."""
    unit, values = "", []
    for part in reversed(parts):
        found = _UNIT.search(part)
        if found:
            unit = found[1]
        if not unit:
            raise EntryMistake(text, "has no unit", f'for example "{_suggest(text, parts)}"')
        values.append(_read(text, part if found else f"{part} {unit}", "length"))
    if any(abs(value) > FARTHEST for value in values):
        raise EntryMistake(text, "expected lengths up to 10 m; check the unit")
    return values[::-1]


def _suggest(text: str, parts: list[str]) -> str:
    unit = "in" if "/" in text else "mm"
    kept = [part.strip() for part in text.split(",")]
    kept[len(parts) - 1] += f" {unit}"
    return ", ".join(kept)


def _read(text: str, part: str, kind: str) -> float:
    try:
        return units.parse(part, kind)
    except units.UnitMistake as error:
        raise EntryMistake(
            text, f"'{part}' {error.problem}; expected {error.expected}",
            f"for example {error.suggestion}",
        ) from None  # fmt: skip
