"""What a sheet is made of: plain blocks that know nothing of how they are written down."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Paragraph:
    """A stretch of plain text; ``strong`` for the answer itself."""

    text: str
    strong: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Subheading:
    """A heading inside a section."""

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Bullets:
    """A list of short items; ``boxes`` for items to tick by hand."""

    items: tuple[str, ...]
    boxes: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """Lines that keep their places, such as a card to fill in by hand."""

    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """A table: heads, rows of text, and which columns hold numbers."""

    caption: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    right: tuple[bool, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A figure as SVG, with what it shows in words."""

    name: str
    svg: str
    alt: str
    caption: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Term:
    """A number put into a step, and where it came from."""

    letter: str
    shown: str
    origin: str
    step: int | None = None  # number of the step on this sheet that gave it


@dataclass(frozen=True, slots=True, kw_only=True)
class StepLine:
    """A step of a worked calculation; a step that stands further up already is only pointed at."""

    number: int
    title: str
    equation: str
    terms: tuple[Term, ...]
    result: str
    source: str
    repeated: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Steps:
    """The steps of one worked calculation, in order."""

    lines: tuple[StepLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Fold:
    """Blocks under a title that can be folded away."""

    name: str
    title: str
    blocks: tuple[Block, ...]


Block = Paragraph | Subheading | Bullets | Card | Grid | Picture | Steps | Fold


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """A part of the sheet; ``own_page`` starts a page of its own in print."""

    name: str
    title: str
    blocks: tuple[Block, ...]
    own_page: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """What stands on top: whose drive, from what, by what, when."""

    title: str
    file: str
    input_sha256: str
    version: str
    data_version: str
    date: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """The whole page."""

    head: Head
    sections: tuple[Section, ...]
