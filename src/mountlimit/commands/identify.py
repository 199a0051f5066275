"""`mountlimit identify`: which chain some readings and a marking belong to."""

from __future__ import annotations

import click

from ._common import JSON, console, show_json


@click.command("identify")
@click.option(
    "--ten-pitches", default="", metavar="LENGTH",
    help="Pin to pin over ten pitches, pulled straight, for example 127mm.",
)  # fmt: skip
@click.option("--inner-width", default="", metavar="LENGTH", help="Between the inner plates.")
@click.option("--roller", default="", metavar="LENGTH", help="Diameter of a roller.")
@click.option("--marking", default="", metavar="TEXT", help="What is stamped on the plates.")
@JSON
def identify(ten_pitches: str, inner_width: str, roller: str, marking: str, as_json: bool) -> None:
    """Which chain is this? Any of the readings will do; no drive file is needed."""
    from ..identify import identify as found_by
    from ..identify import read
    from ..report import identify_text

    found = found_by(*read(ten_pitches, inner_width, roller, marking))
    if as_json:
        show_json(identify_text.record(found))
    else:
        identify_text.write(found, console())


COMMAND = identify
