"""Figures of a source, each with its tolerance, and a note of what the program gave instead.

Every test of this folder compares through these, so that the catalogue can be written from what
was measured (``catalogue.py``).  A test's first words say where its figures are from:

- *Confirmed*: read in the standard, book or report the file names;
- *Computed*: worked out anew, from the form named or by a second route;
- *Common practice*: done in the trade, no source;
- *From memory*: recalled, or read in what is no standard, book or report (a catalogue, a web page).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

import pytest

NOTES: list[Note] = []
"""What was compared so far; ``catalogue.py`` empties it before each test."""


@dataclass(frozen=True)
class Note:
    """A figure of a source beside the program's."""

    figure: str
    ours: float
    half_digit: float  # of the figure as printed; 0 where it was not printed with few digits

    @property
    def off(self) -> float:
        """Share of the figure by which the program's differs."""
        figure = float(self.figure)
        return (self.ours - figure) / abs(figure) if figure else self.ours

    @property
    def rounding(self) -> bool:
        """Tell whether the difference is no more than the rounding of the printed figure."""
        return abs(self.ours - float(self.figure)) <= self.half_digit * (1 + 1e-9)


class Figure:
    """A number to be met; ``==`` notes the number it is held against."""

    __array_ufunc__ = None
    __array_priority__ = 100
    __hash__ = None  # type: ignore[assignment]

    def __init__(self, text: str, approx: Any, half_digit: float) -> None:
        self.text, self.approx, self.half_digit = text, approx, half_digit

    def __eq__(self, other: object) -> bool:
        NOTES.append(Note(self.text, float(other), self.half_digit))  # type: ignore[arg-type]
        return bool(other == self.approx)

    def __repr__(self) -> str:
        return repr(self.approx)


class Figures:
    """Several numbers to be met at once."""

    __array_ufunc__ = None
    __array_priority__ = 100
    __hash__ = None  # type: ignore[assignment]

    def __init__(self, figures: Sequence[Figure]) -> None:
        self.figures = figures

    def __eq__(self, other: object) -> bool:
        pairs = zip(self.figures, other, strict=True)  # type: ignore[call-overload]
        found = [bool(figure == one) for figure, one in pairs]  # each is noted
        return all(found)

    def __repr__(self) -> str:
        return repr(self.figures)


def _half(text: str, figures: int | None = None) -> float:
    number = Decimal(text)
    last = number.as_tuple().exponent
    assert isinstance(last, int)
    if figures is not None:
        last = number.adjusted() - figures + 1
    return float(0.5 * 10.0**last)


def printed(text: str, figures: int | None = None) -> Figure:
    """Give the figure with a tolerance of half its last printed digit.

    ``figures`` tells how many significant figures count where a whole number was rounded to tens
    or hundreds, such as 11 350 to four figures.
    """
    half = _half(text, figures)
    return Figure(text, pytest.approx(float(text), rel=0.0, abs=half * (1 + 1e-9)), half)


def near(value: Any, rel: float | None = None, abs: float | None = None) -> Any:
    """Give the figure, or figures, with a tolerance stated by the test."""
    if isinstance(value, list | tuple):
        return Figures([near(one, rel, abs) for one in value])
    text = repr(float(value))
    digits = text.partition("e")[0].replace(".", "").strip("-0")
    half = 0.0 if text.endswith(".0") or len(digits) > 8 else _half(text)
    return Figure(text, pytest.approx(float(value), rel=rel, abs=abs), half)


def exactly(value: Any) -> Any:
    """Give a figure that must be met to the last bit."""
    return near(value, rel=0.0, abs=0.0)


def between(low: float, figure: float, high: float) -> bool:
    """Tell whether the figure lies between what the program gives for a printed input half a digit
    down and up; the middle of the two is noted."""
    NOTES.append(Note(repr(float(figure)), (low + high) / 2, abs(high - low) / 2))
    return min(low, high) < figure < max(low, high)


def aside(text: str, figures: int | None = None) -> Any:
    """Give a figure on the way that the test works out itself: checked, but not the program's."""
    return printed(text, figures).approx
