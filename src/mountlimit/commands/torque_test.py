"""`mountlimit torque-test`: the motor's torque by lever and scale."""

from __future__ import annotations

import click

from ._common import FILE, JSON, console, show_json


@click.command("torque-test")
@FILE
@click.option(
    "--read",
    "reading",
    nargs=2,
    metavar="CURRENT FORCE",
    help='What was read, for example --read "30 A" "14 N".',
)
@click.option("--lever", metavar="LENGTH", help="Length of the lever; the card takes 250 mm.")
@click.option(
    "--current", metavar="CURRENT", help="Current you want to test with; chosen for you by default."
)
@JSON
def torque_test(
    file: str,
    reading: tuple[str, str] | None,
    lever: str | None,
    current: str | None,
    as_json: bool,
) -> None:
    """Measure the torque of one ampere: print what to do, or put a reading in.

    Without --read it prints a card. With it the limits are worked out anew; no file is changed.
    """
    from .. import torque_test as work
    from .. import units
    from ..drivefile import read
    from ..report import torque_text
    from ..report.pull_text import lines_of

    drive_file = read(file)
    held = "torque_test.force" in drive_file.given and not current
    if not (reading or held):
        asked = None if current is None else units.parse(current, "current")
        arm = None if lever is None else units.parse(lever, "length")
        card = work.card(work.without_test(drive_file), asked, arm)
        return (
            show_json(torque_text.record(card)) if as_json else torque_text.write(card, console())
        )
    edited = drive_file
    if reading:
        edited = work.with_texts(
            drive_file, {"current": reading[0], "force": reading[1], "lever": lever}
        )
    found = work.read_back(edited)
    lines = "" if edited is drive_file else lines_of(edited, "torque_test")
    if as_json:
        return show_json({**torque_text.record_result(found), "lines_to_keep": lines})
    return torque_text.write_result(found, lines, console())


COMMAND = torque_test
