"""The sheet as one HTML file that needs nothing beside it: no network, no script to read it."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from html import escape
from importlib.resources import files
from itertools import groupby
from typing import Any

from .blocks import Block, Fold, Grid, Picture, Sheet, StepLine
from .clean import clean, long_words

LONG = 24  # letters of a source from which on it stands in full once only
PAPER = {"A4": "A4", "letter": "Letter"}
_ROLE = re.compile(r' (role|aria-label|aria-labelledby)="[^"]*"')
_DESC = re.compile(r"<desc>.*?</desc>", re.DOTALL)  # the words stand in the label
_HEAD = re.compile(r"^.*?(?=<svg\b)", re.DOTALL)


def render(sheet: Sheet, paper: str = "A4") -> str:
    """Write the sheet as HTML; every text is escaped, pictures stand inline."""
    from jinja2 import Environment, StrictUndefined
    from markupsafe import Markup

    folder = files("mountlimit.sheet")
    style = folder.joinpath("sheet.css").read_text(encoding="utf-8")
    environment = Environment(
        autoescape=True, undefined=StrictUndefined, keep_trailing_newline=True, finalize=_fit
    )
    environment.filters["long_words"] = long_words
    environment.filters["again"] = again
    environment.filters["groupby_runs"] = lambda lines: [
        list(run) for _, run in groupby(lines, key=lambda line: line.repeated)
    ]
    environment.globals["source"] = _sources()
    names = {heads: f"t{i}" for i, heads in enumerate(_heads(sheet))}
    style += _head_rules(names)
    page = environment.from_string(folder.joinpath("sheet.html.j2").read_text(encoding="utf-8"))
    return page.render(
        sheet=sheet, names=names, style=Markup(style.replace("size: A4", f"size: {PAPER[paper]}")),
        inline=lambda picture: Markup(inline_svg(picture)),
    )  # fmt: skip


def _sources() -> Callable[[StepLine], str]:
    """Give what tells a step's source: a long one in full once on the page, then by that step."""
    told: dict[str, int] = {}

    def source(step: StepLine) -> str:
        first = told.setdefault(step.source, step.number)
        as_there = f"source as step {first}"
        return as_there if first != step.number and len(step.source) > LONG else step.source

    return source


def _heads(sheet: Sheet) -> list[tuple[str, ...]]:
    """Give the heads of the tables, each set once."""

    def of(blocks: Iterable[Block]) -> Iterator[tuple[str, ...]]:
        for block in blocks:
            if isinstance(block, Grid):
                yield tuple(block.heads)
            elif isinstance(block, Fold):
                yield from of(block.blocks)

    return list(dict.fromkeys(heads for s in sheet.sections for heads in of(s.blocks)))


def _head_rules(names: Mapping[tuple[str, ...], str]) -> str:
    """Write the rules that put each column's head before its cells where a table is a list."""
    rules = [
        f'.{name} td:nth-child({i}):not(:empty)::before {{ content: "{_in_css(head)}: "; }}'
        for heads, name in names.items()
        for i, head in enumerate(heads, 1)
        if head
    ]
    return "@media (max-width: 40rem) {\n" + "\n".join(rules) + "\n}\n"


def _in_css(text: str) -> str:
    """Write a text as the inside of a quoted string of a style sheet within a page."""
    return "".join(c if c.isalnum() or c in " .,()-" else f"\\{ord(c):06x}" for c in clean(text))


def _fit(thing: Any) -> Any:
    """Clean plain text on its way onto the page; markup of the program's own stays."""
    return clean(thing) if type(thing) is str else thing


def inline_svg(picture: Picture) -> str:
    """Give a picture's SVG without its file head; its names are its own already (``figures.style.svg``)."""
    body = clean(_DESC.sub("", _HEAD.sub("", picture.svg, count=1), count=1).strip())
    opening = _ROLE.sub("", body[: body.index(">")])
    told = f'{opening} role="img" aria-label="{escape(picture.alt)}"'
    return told + body[body.index(">") :]


def again(lines: Sequence[StepLine]) -> list[tuple[int, int]]:
    """Give the steps pointed at as runs of numbers that follow one another: first and last."""
    found: list[tuple[int, int]] = []
    for number in sorted({line.number for line in lines}):
        if found and number == found[-1][1] + 1:
            found[-1] = (found[-1][0], number)
        else:
            found.append((number, number))
    return found
