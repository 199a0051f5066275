"""`mountlimit compare`: two drive files side by side."""

from __future__ import annotations

import click

from ._common import JSON, console, progress_shown, show_json


@click.command("compare")
@click.argument("a", type=click.Path())
@click.argument("b", type=click.Path())
@JSON
def compare(a: str, b: str, as_json: bool) -> None:
    """Lay two drive files side by side: what changed, and what it does to every limit."""
    from ..compare import compare as work
    from ..drivefile import read
    from ..report import compare_text

    one, two = read(a), read(b)
    with progress_shown():
        found = work(one, two)
    if as_json:
        show_json(compare_text.record(found))
    else:
        compare_text.write(found, console())


COMMAND = compare
