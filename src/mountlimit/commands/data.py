"""`mountlimit data`: the data cards."""

from __future__ import annotations

import click

from ._common import JSON, console, show_json

DATA_KINDS = (
    "materials",
    "chains",
    "bolts",
    "classes",
    "bearings",
    "keys",
    "set-screws",
    "friction",
    "stock",
)


@click.command("data")
@click.argument("kind", type=click.Choice(DATA_KINDS))
@click.argument("words", nargs=-1)
@click.option("--sources", is_flag=True, help="Every number of each card, with its source.")
@click.option("--inch", is_flag=True, help="Show inch units.")
@JSON
def data(kind: str, words: tuple[str, ...], sources: bool, inch: bool, as_json: bool) -> None:
    """List the data cards; words narrow the list (data materials aluminium)."""
    from ..report.data_text import record, write

    if as_json:
        show_json(record(kind, words))
        return
    write(kind, words, sources, "inch" if inch else "metric", console())


COMMAND = data
