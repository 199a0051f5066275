"""`mountlimit changes`: the cheapest change that buys the amps."""

from __future__ import annotations

import click

from ._common import FILE, FOR, JSON, asked, console, progress_shown, show_json


@click.command("changes")
@FILE
@FOR
@JSON
def changes(file: str, wanted: str | None, as_json: bool) -> None:
    """Find the cheapest change that buys the amps you want."""
    from ..drivefile import read
    from ..report import changes_text
    from ..resolve import resolve
    from ..what_to_change import what_to_change

    drive_file = read(file)
    current = asked(wanted, resolve(drive_file))
    with progress_shown():
        answer = what_to_change(drive_file, current)
    if as_json:
        show_json(changes_text.record(answer))
    else:
        changes_text.write(answer, console())


COMMAND = changes
