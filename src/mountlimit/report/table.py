"""Tables and headings in the house form."""

from __future__ import annotations

from rich.console import Console
from rich.table import Table


def new_table() -> Table:
    """Give an empty table in the house form: no frame, bold heads."""
    return Table(box=None, pad_edge=False, header_style="bold", padding=(0, 2, 0, 0))


def heading(console: Console, words: str) -> None:
    """Print a heading over a table or list."""
    console.print(words, style="bold")
