"""The grammar of a quantity written as text: numbers, fractions, sums and unit products.

Nothing here knows what a unit means; see ``units``.  Grammar, after ``tidy``:

    quantity = [sign] term { ["+"] term }
    term     = number [unit]
    number   = decimal | whole ("-" or space) fraction | fraction
    unit     = power { ("*" | "." | "-" | space | "/") power }
    power    = name ["^" digit] | name digit
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

Powers = tuple[tuple[str, int], ...]

MOST_CHARACTERS = 200
MOST_NUMBER_CHARACTERS = 30
MOST_POWERS = 12  # keeps every factor within the range of a float

_CHARACTERS = str.maketrans(
    {
        **dict.fromkeys("\u2212\u2010\u2011\u2013", "-"),
        **dict.fromkeys("\u00b7\u22c5\u2219\u00d7", "*"),
        **dict.fromkeys("\u00a0\u2009\u202f\u2007\t", " "),
        **dict.fromkeys("\u00b5\u03bc", "u"),
        **dict.fromkeys("\u2033\u201d\u201c", '"'),
        **dict.fromkeys("\u2032\u2019\u2018", "'"),
        "\u2044": "/",
        "\u00ba": "\u00b0",
        "\u207b": "^-",
        "½": " 1/2",
        "¼": " 1/4",
        "¾": " 3/4",
        "⅛": " 1/8",
        "⅜": " 3/8",
        "⅝": " 5/8",
        "⅞": " 7/8",
        "¹": "^1",
        "²": "^2",
        "³": "^3",
        "⁴": "^4",
        "⁵": "^5",
        "⁶": "^6",
    }
)

_REWRITES = tuple(
    (re.compile(pattern), into)
    for pattern, into in (
        (r"\^-\^", "^-"),
        (r"\*\*", "^"),
        (r"''", '"'),
        (r'(?<=[0-9.]) ?"', " in "),
        (r"(?<=[0-9.]) ?'", " ft "),
        (r"(?:\u00b0|(?<![A-Za-z])[dD]eg\.?) ?([CFK])(?![A-Za-z])", r" deg\1"),
        (r"(?<![A-Za-z])degK(?![A-Za-z])", "K"),
        (r"\u00b0", " deg "),
        (r"(?<=[A-Za-z])\.(?![A-Za-z])", ""),
        (r"(?<=[A-Za-z0-9]) per (?=[A-Za-z])", "/"),
        (r" {2,}", " "),
        (r" ?([*/^]) ?", r"\1"),
    )
)
_GROUP_BELOW = re.compile(r"/\(([A-Za-z0-9*^]{1,40})\)")

_DECIMAL = re.compile(r"(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?")
_FRACTION = re.compile(r"(?:([0-9]+)(?: |-))?([0-9]+)/([0-9]+)(?![0-9.])")
_POWER = r"(?:[A-Za-z]+|%)(?:\^-?[0-9]|[0-9])?"
_UNIT = re.compile(rf"{_POWER}(?:(?:[*/.]|-| ){_POWER})*")
_PART = re.compile(r"([*/. -]?)([A-Za-z]+|%)(?:\^?(-?[0-9]))?")
_COMMA = re.compile(r"[0-9],[0-9]")
_THOUSANDS = re.compile(r"[0-9]{1,3}(,[0-9]{3})+(?![0-9,])")
_THOUSANDS_BY_SPACE = re.compile(r"(?<![0-9./])[0-9]{1,3}( [0-9]{3})+(?![0-9/])")
_NOT_FINITE = re.compile(r"[+-]?(nan|inf|infinity|infinite)\b", re.IGNORECASE)


class Unreadable(Exception):
    """What is wrong with a text, and spellings worth trying, best first."""

    def __init__(self, problem: str, *tries: str, keep: int = 1) -> None:
        self.problem, self.tries, self.keep = problem, tries, keep
        super().__init__(problem)


@dataclass(frozen=True, slots=True)
class Term:
    """One number with its unit; ``powers`` holds (name, exponent) in the order written."""

    number: str
    value: float
    unit: str
    powers: Powers


def tidy(text: str) -> str:
    """Bring every accepted spelling of signs, marks, spaces and superscripts to one form."""
    tidied = text.translate(_CHARACTERS)
    for pattern, into in _REWRITES:
        tidied = pattern.sub(into, tidied)
    return _GROUP_BELOW.sub(lambda group: "/" + group[1].replace("*", "/"), tidied).strip()


def terms_of(tidied: str) -> tuple[Term, ...]:
    """Split a tidied text into signed terms.

    Raises
    ------
    Unreadable
        when the text is not a quantity by the grammar above.
    """
    _refuse_commas(tidied)
    if _NOT_FINITE.match(tidied):
        raise Unreadable("must be a finite number")
    terms: list[Term] = []
    at, sign = 0, 1.0
    if tidied[:1] in ("+", "-"):
        at, sign = 1, -1.0 if tidied[0] == "-" else 1.0
    while at < len(tidied):
        term, at = _term(tidied, at, sign)
        terms.append(term)
        at = _past_spaces(tidied, at)
        if tidied[at : at + 1] == "+":
            at, sign = at + 1, 1.0
            if at == len(tidied):
                raise Unreadable("ends in '+'", tidied[:-1].strip())
        elif tidied[at : at + 1] == "-":
            raise Unreadable("has a '-' between its parts",
                             tidied[:at].strip() + " " + tidied[at + 1 :].strip())  # fmt: skip
    if not terms:
        raise Unreadable("is empty" if not tidied else "has no number")
    return tuple(terms)


def _refuse_commas(tidied: str) -> None:
    """Refuse a comma between digits, and offer what it may stand for."""
    if not _COMMA.search(tidied):
        return
    decimal = tidied.replace(",", ".")
    if _THOUSANDS.match(tidied):
        raise Unreadable("has a comma in the number", tidied.replace(",", ""), decimal, keep=2)
    raise Unreadable("has a decimal comma", decimal)


def _past_spaces(tidied: str, at: int) -> int:
    while tidied[at : at + 1] == " ":
        at += 1
    return at


def _term(tidied: str, at: int, sign: float) -> tuple[Term, int]:
    """Read one number and its unit; give the term and where it ends."""
    at = _past_spaces(tidied, at)
    number, value, end = _number(tidied, at)
    start = end + 1 if tidied[end : end + 1] in ("-", " ", "*") else end
    unit = _UNIT.match(tidied, start)
    if unit is None:
        _refuse_rest(tidied, end)
        return Term(number, sign * value, "", ()), end
    return Term(number, sign * value, unit[0], powers_of(unit[0])), unit.end()


def _refuse_rest(tidied: str, at: int) -> None:
    """Refuse what follows a number without a unit, unless it is a sum."""
    rest = tidied[at:].strip()
    spaced = _THOUSANDS_BY_SPACE.match(tidied)
    if spaced and rest:
        raise Unreadable("has a space inside the number",
                         spaced[0].replace(" ", "") + tidied[spaced.end() :])  # fmt: skip
    if rest and rest[0] not in "+-0123456789.":
        raise Unreadable(f"cannot be read from {rest[:12]!r} on")


def _number(tidied: str, at: int) -> tuple[str, float, int]:
    """Read a fraction, a mixed number or a decimal; give its text, value and end."""
    fraction = _FRACTION.match(tidied, at)
    found = fraction or _DECIMAL.match(tidied, at)
    if found is None:
        rest = tidied[at:]
        raise Unreadable("has no number" if at == 0 else f"cannot be read from {rest[:12]!r} on",
                         *(f"{back} {front}" for front, back in _swapped(rest)))  # fmt: skip
    text = found[0]
    if len(text) > MOST_NUMBER_CHARACTERS:
        raise Unreadable(f"has a number of more than {MOST_NUMBER_CHARACTERS} characters")
    if fraction:
        whole, over, under = (int(digits or 0) for digits in fraction.groups())
        if under == 0:
            raise Unreadable("divides by zero")
        return text, whole + over / under, fraction.end()
    value = float(text)
    if not math.isfinite(value):
        raise Unreadable("must be a finite number")
    if value == 0.0 and re.search("[1-9]", re.split("[eE]", text)[0]):
        raise Unreadable("is too small a number")
    return text, value, found.end()


def _swapped(rest: str) -> list[tuple[str, str]]:
    """Split a unit written before its number ("mm 6"), to offer it the other way round."""
    parts = re.fullmatch(r"([A-Za-z]{1,4})[ =]?([0-9][0-9./]*)", rest)
    return [(parts[1], parts[2])] if parts else []


def powers_of(unit: str) -> Powers:
    """Give the names and exponents of a unit product; names after "/" count below the line.

    Raises
    ------
    Unreadable
        when a product follows a slash, which can be read two ways, or exponents are absurd.
    """
    powers: list[tuple[str, int]] = []
    below = False
    for joint, name, exponent in _PART.findall(unit):
        if joint == "/":
            below = True
        elif below:
            raise Unreadable(f"has a product after '/' ({unit})")
        power = int(exponent or 1)
        powers.append((name, -power if below else power))
    if not all(power for _, power in powers):
        raise Unreadable("has an exponent of zero")
    if sum(abs(power) for _, power in powers) > MOST_POWERS:
        raise Unreadable("multiplies too many units")
    return tuple(powers)


def product(powers: Powers) -> str:
    """Write a unit product back, above the line first: "lbf*ft", "kg/m^3"."""
    above = "*".join(n if p == 1 else f"{n}^{p}" for n, p in powers if p > 0)
    below = "".join(f"/{n}" if p == -1 else f"/{n}^{-p}" for n, p in powers if p < 0)
    return (above or "1") + below
