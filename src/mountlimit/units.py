"""The only door between text with units and the SI floats used inside.

``parse`` reads a text of a known kind, ``show`` writes one; the unit vocabulary is ``units.txt``.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from decimal import Decimal
from functools import lru_cache

from .errors import MountlimitError
from .unit_kinds import KINDS, Kind, kind_of_unit
from .unit_meaning import from_kelvin, scale, spellings, to_kelvin
from .unit_text import MOST_CHARACTERS, Powers, Term, Unreadable, terms_of, tidy

__all__ = [
    "KINDS", "Kind", "UnitMistake", "convert", "kind_of_unit", "parse", "parse_value", "show",
    "show_both", "system_of",
]  # fmt: skip

_INCH_LENGTHS = ("inch", "foot", "thou")
_METRIC_LENGTHS = ("metre", "kilometre", "centimetre", "millimetre", "micrometre")


class UnitMistake(MountlimitError):
    """A text that is not a quantity of the kind asked for.

    ``problem`` says what is wrong, ``expected`` names the kind, ``suggestion`` is quoted text
    that would be read.
    """

    def __init__(self, text: str, kind: str, problem: str, expected: str, suggestion: str) -> None:
        self.text, self.kind, self.problem = text, kind, problem
        self.expected, self.suggestion = expected, suggestion
        shown = text if len(text) <= 60 else text[:57] + "..."
        super().__init__(f"{shown!r} {problem}; expected {expected}, for example {suggestion}")


def _read(text: str, kind: Kind) -> float:
    """Read a text as SI; ``Unreadable`` says what is wrong with it."""
    if len(text) > MOST_CHARACTERS:
        raise Unreadable(f"has more than {MOST_CHARACTERS} characters")
    terms = terms_of(tidy(text))
    if len(terms) > 1 and kind.name in ("temperature", "ratio"):
        raise Unreadable("has more than one number")
    value = math.fsum(_si(term, terms, kind) for term in terms)
    if not math.isfinite(value):
        raise Unreadable("must be a finite number")
    if kind.name == "temperature" and value < 0:
        raise Unreadable("is below absolute zero")
    return value


def _si(term: Term, terms: tuple[Term, ...], kind: Kind) -> float:
    """Give the SI value of one term; a mistake in its unit becomes one of the whole text."""
    try:
        if not term.powers:
            return _bare(term, terms, kind)
        factor, offset = scale(term.powers, kind.name)
    except Unreadable as wrong:
        tries = (_rewritten(terms, term, unit) for unit in wrong.tries)
        raise Unreadable(wrong.problem, *tries) from None
    if offset:
        return to_kelvin(term.value, offset)
    return term.value * factor


def _rewritten(terms: tuple[Term, ...], changed: Term, unit: str) -> str:
    """Write the terms back with another unit on one of them; signs keep their meaning."""
    text = "-" if terms[0].value < 0 else ""
    for at, term in enumerate(terms):
        if at:
            text += " + " if (term.value < 0) != (terms[0].value < 0) else " "
        text += f"{term.number} {unit if term is changed else term.unit}".rstrip()
    return text


def _bare(term: Term, terms: tuple[Term, ...], kind: Kind) -> float:
    """Give a bare number where the kind is a ratio, and refuse it elsewhere."""
    if kind.name == "ratio":
        return term.value
    inch = "/" in term.number or "ft" in {other.unit for other in terms}
    unit = kind.inch if inch else kind.metric
    if len(terms) == 1:
        raise Unreadable("has no unit", unit)
    raise Unreadable(f"has no unit after {term.number!r}", unit)


def parse(text: str, kind: str) -> float:
    """SI value of a text such as "6 mm", "1-3/8 in", "5 ft 3 in" or "20 lbf*ft".

    Parameters
    ----------
    text : text
        number and unit; sums ("1 in + 2 mm") are allowed, bare numbers only for ratios.
    kind : text
        a key of ``KINDS``.

    Returns
    -------
    float
        the SI value; kelvin for a temperature.

    Raises
    ------
    UnitMistake
        when the text is not a quantity of that kind.

    Source
    ------
    NIST SP 811 (2008) appendix B for the unit definitions.

    Examples
    --------
    >>> parse("1-3/8 in", "length")
    0.034925
    """
    known = KINDS[kind]
    try:
        return _read(text, known)
    except Unreadable as wrong:
        raise _mistake(text, known, wrong) from None


def _mistake(text: str, kind: Kind, wrong: Unreadable) -> UnitMistake:
    """Build the mistake, with only such suggestions as can be read."""
    good: list[str] = []
    for offer in wrong.tries:
        try:
            _read(offer, kind)
        except Unreadable:
            continue
        if offer not in good:
            good.append(offer)
    chosen = good[: wrong.keep] or [kind.example]
    quoted = " or ".join(f'"{offer}"' for offer in chosen)
    return UnitMistake(text, kind.name, wrong.problem, kind.label, quoted)


def parse_value(value: object, kind: str) -> float:
    """SI value of whatever stands in a file: text with a unit, or a plain number for a ratio.

    Parameters
    ----------
    value : object
        text, or int or float where the kind is "ratio".
    kind : text
        a key of ``KINDS``.

    Returns
    -------
    float
        the SI value.

    Raises
    ------
    UnitMistake
        for any other type, for true and false, nan and infinity, and bare numbers with a unit due.
    """
    known = KINDS[kind]
    if isinstance(value, str):
        return parse(value, kind)
    if isinstance(value, bool):
        raise _mistake(str(value).lower(), known, Unreadable("is not a quantity"))
    if not isinstance(value, int | float):
        raise _mistake(type(value).__name__, known, Unreadable("is not text with a unit"))
    if isinstance(value, int) and value.bit_length() > 100:
        raise _mistake("integer", known, Unreadable("is too large a number"))
    if not math.isfinite(value):
        raise _mistake(str(value), known, Unreadable("must be a finite number"))
    if kind == "ratio":
        return float(value)
    return parse(str(value), kind)


def convert(value: float, kind: str, unit: str) -> float:
    """Number of ``unit`` in an SI value.

    Parameters
    ----------
    value : float
        SI value.
    kind : text
        a key of ``KINDS``.
    unit : text
        unit text; empty or "-" for a bare ratio.

    Returns
    -------
    float
        the value counted in that unit.

    Raises
    ------
    UnitMistake
        when the unit is unknown or of another kind.
    """
    known = KINDS[kind]
    if kind == "ratio" and unit in ("", "-"):
        return float(value)
    try:
        factor, offset = scale(_unit_of(unit), kind)
    except Unreadable as wrong:
        raise _mistake(unit, known, Unreadable(wrong.problem)) from None
    if offset:
        return from_kelvin(value, offset)
    return value / factor


@lru_cache(maxsize=256)
def _unit_of(unit: str) -> Powers:
    """Give the powers of a unit written without a number."""
    if len(unit) > MOST_CHARACTERS:
        raise Unreadable(f"has more than {MOST_CHARACTERS} characters")
    terms = terms_of(tidy("1 " + unit))
    if len(terms) != 1 or terms[0].number != "1" or not terms[0].powers:
        raise Unreadable("is not a unit")
    return terms[0].powers


def show(value: float, kind: str, system: str = "metric", digits: int = 3) -> str:
    """Text of an SI value in the display unit of its kind.

    Parameters
    ----------
    value : float
        SI value.
    kind : text
        a key of ``KINDS``.
    system : text
        "metric" or "inch".
    digits : int
        significant digits; trailing zeros after the point are dropped.

    Returns
    -------
    text
        such as "6.35 mm".

    Examples
    --------
    >>> show(0.00635, "length"), show(0.00635, "length", "inch"), show(31300.0, "force")
    ('6.35 mm', '0.25 in', '31.3 kN')
    """
    known = KINDS[kind]
    steps = known.inch_steps if system == "inch" else known.metric_steps
    unit = known.inch if system == "inch" else known.metric
    size = abs(float(f"{value:.{digits - 1}e}"))
    if size > 0:
        unit = next((name for least, name in reversed(steps) if size >= least), unit)
    return f"{_digits(convert(value, kind, unit), digits)} {unit}".rstrip()


def _digits(number: float, digits: int) -> str:
    """Write a number to significant digits without exponent in ordinary ranges."""
    if not math.isfinite(number):
        return str(number)
    rounded = f"{number:.{digits - 1}e}"
    if float(rounded) == 0.0:
        return "0"
    if not 1e-7 <= abs(float(rounded)) < 1e12:
        return format(float(rounded), f".{digits}g")
    plain = format(Decimal(rounded), "f")
    return plain.rstrip("0").rstrip(".") if "." in plain else plain


def show_both(value: float, kind: str, system: str = "metric", digits: int = 3) -> str:
    """Text in the chosen system; SI beside it for "inch", and for a torque always the other one.

    Parameters
    ----------
    value : float
        SI value.
    kind : text
        a key of ``KINDS``.
    system : text
        "metric" or "inch".
    digits : int
        significant digits.

    Returns
    -------
    text
        such as "0.25 in (6.35 mm)".
    """
    first = show(value, kind, system, digits)
    other = "metric" if system == "inch" else "inch"
    if system != "inch" and kind != "torque":
        return first
    beside = show(value, kind, other, digits)
    return first if beside == first else f"{first} ({beside})"


def system_of(texts: Iterable[str]) -> str:
    """Whether most lengths among some texts are inch or metric ones.

    Parameters
    ----------
    texts : texts
        quantities as written; what is not a length or cannot be read does not count.

    Returns
    -------
    text
        "inch" if inches, feet and thou outnumber the metric lengths, else "metric".

    Examples
    --------
    >>> system_of(["1/4 in", "3 in", "6 mm", "20 lbf*ft"])
    'inch'
    """
    known = spellings()
    balance = 0
    for text in texts:
        try:
            terms = terms_of(tidy(text[:MOST_CHARACTERS]))
        except Unreadable:
            continue
        for term in terms:
            name = known.get(term.powers[0][0], "") if len(term.powers) == 1 else ""
            if term.powers[:1] and term.powers[0][1] == 1:
                balance += (name in _INCH_LENGTHS) - (name in _METRIC_LENGTHS)
    return "inch" if balance > 0 else "metric"
