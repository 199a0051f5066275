"""`mountlimit chains`: every known chain at this torque."""

from __future__ import annotations

import click

from ._common import FILE, JSON, console, progress_shown, show_json


@click.command("chains")
@FILE
@click.option("--all", "everything", is_flag=True, help="Show rare chains too.")
@click.option(
    "--second", is_flag=True, help="Compare the second chain, from jackshaft to driven side."
)
@click.option("--loads", "strains", is_flag=True, help="Show pull, shares of strength and rub too.")
@JSON
def chains(file: str, everything: bool, second: bool, strains: bool, as_json: bool) -> None:
    """Compare every known chain on this drive: which pitch do I need?"""
    from ..chains import banded, compare
    from ..drivefile import read
    from ..report import chains_text
    from ..resolve import resolve

    drive_file = read(file)
    drive = resolve(drive_file)
    current = float(drive.current.wanted or drive.current.set)
    with progress_shown():
        ranked = compare(drive_file, second)
        own = drive_file.given["second_chain.type" if second else "chain.type"].value.id
        shown = [c for c in ranked if chains_text.is_shown(c, own, everything)]
        rest = [c for c in ranked if not chains_text.is_shown(c, own, everything)]
        shown = banded(drive_file, shown, second)
    if as_json:
        show_json(chains_text.record(shown + rest, current, second))
    else:
        chains_text.write(
            shown, current, drive, console(), second=second, everything=everything, strains=strains
        )


COMMAND = chains
