"""Tables and headings in the house form."""

from __future__ import annotations

from collections.abc import Iterator

from rich.cells import cell_len
from rich.console import Console, ConsoleOptions, RenderResult
from rich.segment import Segment
from rich.table import Column, Table
from rich.text import Text

GAP = 2
ROOMY = 24  # a column of long text needs no more to be read


class Fitted(Table):
    """A table that breaks cells between words only; where that does not fit, a list with the heads beside."""

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> RenderResult:
        """Draw it in the width there is."""
        room = options.max_width - GAP * (len(self.columns) - 1)
        texts = [[str(column.header), *map(str, column.cells)] for column in self.columns]
        widths = [max(map(cell_len, each)) for each in texts]
        if sum(widths) > room:
            least = [
                _least(c, each, w) for c, each, w in zip(self.columns, texts, widths, strict=True)
            ]
            if sum(least) > room:
                yield from self._as_list(console, options)
                return
            for column, width in zip(self.columns, _narrowed(widths, least, room), strict=True):
                column.width = width
        yield from super().__rich_console__(console, options)

    def _as_list(self, console: Console, options: ConsoleOptions) -> RenderResult:
        heads = [str(column.header) for column in self.columns]
        for row in zip(*([str(c) for c in column.cells] for column in self.columns), strict=True):
            told = (f"{h}: {c}" if h else c for h, c in zip(heads[1:], row[1:], strict=True) if c)
            for indent, words in (("", row[0]), ("    ", "; ".join(told))):
                for line in Text(words).wrap(console, options.max_width - len(indent)):
                    yield Segment(f"{indent}{line.plain.rstrip()}\n")


def _least(column: Column, texts: list[str], width: int) -> int:
    """Give the least width of a column: its longest word and some three lines a cell; all where it must not wrap."""
    if column.no_wrap:
        return width
    words = max((cell_len(word) for text in texts for word in text.split()), default=0)
    return max(words, min(width // 3, ROOMY))


def _narrowed(widths: list[int], least: list[int], room: int) -> Iterator[int]:
    """Take from the widest column that can still give, until all fit."""
    found = list(widths)
    while sum(found) > room:
        at = max((i for i in range(len(found)) if found[i] > least[i]), key=lambda i: found[i])
        found[at] -= 1
    yield from found


def new_table() -> Table:
    """Give an empty table in the house form: no frame, bold heads."""
    return Fitted(box=None, pad_edge=False, header_style="bold", padding=(0, GAP, 0, 0))


def heading(console: Console, words: str) -> None:
    """Print a heading over a table or list."""
    console.print(words, style="bold")
