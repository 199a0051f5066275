"""`mountlimit why`: the worked calculation of one line of the answer."""

from __future__ import annotations

import click

from ._common import FILE, JSON, console, show_json


@click.command("why")
@FILE
@click.argument("name", metavar="CHECK")
@click.option(
    "--at", "at", metavar="CURRENT", help="Work it out at this motor current, for example 80A."
)
@click.option("--likely", is_flag=True, help="Use likely values instead of the safe-side ends.")
@click.option("--jam", "dead_stop", is_flag=True, help="Work it out for a dead stop at speed.")
@JSON
def why(file: str, name: str, at: str | None, likely: bool, dead_stop: bool, as_json: bool) -> None:
    """Print the worked calculation of one line of the answer."""
    from .. import units
    from ..drivefile import read
    from ..why import work

    current = None if at is None else units.parse(at, "current")
    found = work(read(file), name, current, likely, dead_stop=dead_stop)
    if as_json:
        from ..report.worked_record import record

        show_json(record(found))
    else:
        from ..report.worked_text import write

        write(found, console())


COMMAND = why
