"""The sheet as one HTML file that needs nothing beside it: no network, no script to read it."""

from __future__ import annotations

import re
from html import escape
from importlib.resources import files
from itertools import groupby
from typing import Any

from .blocks import Picture, Sheet
from .clean import clean, long_words

PAPER = {"A4": "A4", "letter": "Letter"}
_ID = re.compile(r'(\bid="|url\(#|href="#)')
_ROLE = re.compile(r' (role|aria-label|aria-labelledby)="[^"]*"')
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
    environment.filters["groupby_runs"] = lambda lines: [
        list(run) for _, run in groupby(lines, key=lambda line: line.repeated)
    ]
    page = environment.from_string(folder.joinpath("sheet.html.j2").read_text(encoding="utf-8"))
    return page.render(
        sheet=sheet, style=Markup(style.replace("size: A4", f"size: {PAPER[paper]}")),
        inline=lambda picture: Markup(inline_svg(picture)),
    )  # fmt: skip


def _fit(thing: Any) -> Any:
    """Clean plain text on its way onto the page; markup of the program's own stays."""
    return clean(thing) if type(thing) is str else thing


def inline_svg(picture: Picture) -> str:
    """Give a picture's SVG without its file head, its names made its own on a page with others."""
    body = clean(_HEAD.sub("", picture.svg, count=1).strip())
    opening = _ROLE.sub("", body[: body.index(">")])
    told = f'{opening} role="img" aria-label="{escape(picture.alt)}"'
    body = told + body[body.index(">") :]
    return _ID.sub(lambda m: f"{m[1]}{picture.name}-", body)
