"""`mountlimit explain-failure`: which current, jerk, dead stop or wrong input broke a part."""

from __future__ import annotations

import click

from ._common import FILE, JSON, console, progress_shown, show_json


@click.command("explain-failure")
@FILE
@click.argument("part", metavar="PART")
@click.option(
    "--looks", default="", metavar="HOW",
    help="bent, snapped, sheared, stripped, slipped, thrown, worn, cracked (beach marks) or crushed.",
)  # fmt: skip
@JSON
def explain_failure(file: str, part: str, looks: str, as_json: bool) -> None:
    """What broke or bent this part: a pull, a jerk, a dead stop, time, or a wrong input?

    PART in plain words ("motor shaft", "frame bolts", "key", "weld") or a check's name.
    """
    from ..drivefile import read
    from ..failure import explain
    from ..report import failure_text

    with progress_shown():
        found = explain(read(file), part, looks)
    if as_json:
        show_json(failure_text.record(found))
    else:
        failure_text.write(found, console())


COMMAND = explain_failure
