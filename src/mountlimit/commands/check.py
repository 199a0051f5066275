"""`mountlimit check`: what gives first, at how many amperes."""

from __future__ import annotations

import click

from ._common import FILE, JSON, console, show_json


@click.command("check")
@FILE
@click.option(
    "--jam", "dead_stop", is_flag=True, help="Also from which speed a dead stop uses up each part."
)
@JSON
def check(file: str, dead_stop: bool, as_json: bool) -> None:
    """Say what gives first and at how many amperes.

    Exit status: 0 the set current is within the safe limit, 1 it is over it, 2 the file has mistakes.
    """
    from ..assess import assess
    from ..drivefile import read

    answer = assess(read(file), dead_stop)
    if as_json:
        from ..report.record import record

        show_json(record(answer))
    else:
        from ..report.text import write

        write(answer, console())
    raise SystemExit(1 if answer.over else 0)


COMMAND = check
