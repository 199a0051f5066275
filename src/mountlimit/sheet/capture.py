"""Takes what a report prints on a console as blocks, so that sheet and terminal say the same."""

from __future__ import annotations

import io
from collections.abc import Callable
from typing import Any

from rich.console import Console
from rich.padding import Padding
from rich.table import Table

from .blocks import Block, Bullets, Card, Grid, Paragraph, Subheading

ITEM = "- "
CARD_WIDTH = 80


class Capture:
    """Stands in for a console: keeps text, headings and tables."""

    width = 100

    def __init__(self) -> None:
        self.blocks: list[Block] = []
        self._heading = ""

    def print(self, *things: Any, style: str | None = None, **_: Any) -> None:
        """Keep what would be printed."""
        for thing in things:
            if isinstance(thing, Padding):
                self.print(thing.renderable)
            elif isinstance(thing, Table):
                self._table(thing)
            else:
                self._text(str(thing), style == "bold")

    def _text(self, text: str, bold: bool) -> None:
        words = text.strip("\n")
        if not words.strip():
            return
        if bold:
            self._heading = words.strip().rstrip(":")
            self.blocks.append(Subheading(text=self._heading))
        elif words.lstrip().startswith(ITEM):
            self._item(words.lstrip().removeprefix(ITEM))
        else:
            self.blocks += [
                Paragraph(text=" ".join(part.split())) for part in words.split("\n") if part.strip()
            ]

    def _item(self, words: str) -> None:
        before = self.blocks[-1] if self.blocks else None
        if isinstance(before, Bullets):
            self.blocks[-1] = Bullets(items=(*before.items, words))
        else:
            self.blocks.append(Bullets(items=(words,)))

    def _table(self, table: Table) -> None:
        if not table.show_header:
            for row in zip(*(column.cells for column in table.columns), strict=True):
                self._item(" ".join(" ".join(str(cell) for cell in row).split()))
            return
        columns = [[str(cell) for cell in column.cells] for column in table.columns]
        self.blocks.append(
            Grid(
                caption=self._heading,
                heads=tuple(str(c.header) for c in table.columns),
                rows=tuple(zip(*columns, strict=True)),
                right=tuple(c.justify == "right" for c in table.columns),
            )
        )


def card_of(write: Callable[..., None], *arguments: Any) -> tuple[Block, ...]:
    """Give what a report function prints, its last argument a console, as one card of lines."""
    page = io.StringIO()
    write(
        *arguments, Console(file=page, width=CARD_WIDTH, highlight=False, emoji=False, markup=False)
    )
    return (Card(text=page.getvalue().rstrip()),)


def blocks_of(write: Callable[..., None], *arguments: Any) -> tuple[Block, ...]:
    """Give the blocks of a report function whose last argument is a console."""
    console = Capture()
    write(*arguments, console)
    return tuple(console.blocks)
