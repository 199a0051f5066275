"""`mountlimit thickness`: how thick the plate must be."""

from __future__ import annotations

import click

from ._common import FILE, FOR, JSON, asked, console, progress_shown, show_json


@click.command("thickness")
@FILE
@FOR
@click.option(
    "--material",
    "materials",
    multiple=True,
    metavar="NAME",
    help="Material to try (again for more); one per family by default.",
)
@JSON
def thickness(file: str, wanted: str | None, materials: tuple[str, ...], as_json: bool) -> None:
    """Say how thick the plate must be for a wanted current, in several materials."""
    from ..drivefile import read
    from ..report import thickness_text
    from ..resolve import resolve
    from ..thickness import thinnest

    drive_file = read(file)
    drive = resolve(drive_file)
    current = asked(wanted, drive)
    with progress_shown():
        answers = thinnest(drive_file, current, materials)
    if as_json:
        show_json(thickness_text.record(answers, current, drive))
    else:
        thickness_text.write(answers, current, drive, console())


COMMAND = thickness
