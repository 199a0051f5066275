"""`mountlimit steps`: how to raise the current step by step, and when to stop."""

from __future__ import annotations

import click

from ._common import FILE, FOR, JSON, console, progress_shown, show_json


@click.command("steps")
@FILE
@FOR
@JSON
def steps(file: str, wanted: str | None, as_json: bool) -> None:
    """Plan the first pulls: from a safe start up in steps, what to look at, when to stop.

    The plan never passes the safe current. Exit status: 0 a plan is given, 1 there is none yet,
    2 mistakes.
    """
    from ..drivefile import read
    from ..report import steps_text
    from ..steps import current_asked, plan

    asked = current_asked(wanted)
    with progress_shown():
        found = plan(read(file), asked)
    if as_json:
        show_json(steps_text.record(found))
    else:
        steps_text.write(found, console())
    raise SystemExit(0 if found.steps else 1)


COMMAND = steps
