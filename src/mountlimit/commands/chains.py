"""`mountlimit chains`: every known chain at this torque."""

from __future__ import annotations

import click

from ._common import FILE, JSON, console, show_json


@click.command("chains")
@FILE
@click.option("--all", "everything", is_flag=True, help="Show rare chains too.")
@JSON
def chains(file: str, everything: bool, as_json: bool) -> None:
    """Compare every known chain at this torque: which pitch do I need?"""
    from ..chains import compare
    from ..drivefile import read
    from ..report import chains_text
    from ..resolve import resolve

    drive_file = read(file)
    drive = resolve(drive_file)
    current = float(drive.current.wanted or drive.current.set)
    choices = compare(drive_file)
    if as_json:
        show_json(chains_text.record(choices, current))
    else:
        chains_text.write(choices, current, drive, everything, console())


COMMAND = chains
