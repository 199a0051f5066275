"""`mountlimit pull-test`: a card to print, and what the reading does."""

from __future__ import annotations

import click

from ._common import FILE, JSON, console, progress_shown, show_json


@click.command("pull-test")
@FILE
@click.option(
    "--read",
    "read_a",
    nargs=2,
    metavar="FORCE MOVEMENT",
    help='Reading of mark A, for example --read "200 N" "1.4 mm".',
)
@click.option(
    "--read-tip",
    "read_b",
    nargs=2,
    metavar="FORCE MOVEMENT",
    help="Reading of mark B, at the end of the stick.",
)
@click.option(
    "--stick", metavar="LENGTH", help="Length of the stick; 500 mm unless the file says otherwise."
)
@click.option(
    "--on", "stick_on", type=click.Choice(["motor", "shaft"]), help="What the stick lies on."
)
@click.option("--force", metavar="FORCE", help="Pull you want to use; chosen for you by default.")
@click.option(
    "--along", "direction", metavar="WORDS", help="Where you pull, in the words of chain.pull."
)
@JSON
def pull_test(
    file: str, read_a: tuple[str, str] | None, read_b: tuple[str, str] | None, stick: str | None,
    stick_on: str | None, force: str | None, direction: str | None, as_json: bool,
) -> None:  # fmt: skip
    """Measure how much the mount gives: print what to pull and read, or put a reading in.

    Without --read it prints a card. With it the limits are worked out anew; no file is changed.
    """
    from .. import pull_test as work
    from .. import units
    from ..drivefile import read
    from ..report import pull_text

    drive_file = read(file)
    told = {"stick": stick, "stick_on": stick_on, "direction": direction}
    held = "pull_test.force" in drive_file.given and not force
    if not (read_a or read_b or held):
        with progress_shown():
            size = None if force is None else units.parse(force, "force")
            found = work.card(work.with_keys(drive_file, told), size)
        return show_json(pull_text.record(found)) if as_json else pull_text.write(found, console())
    edited = (
        drive_file if not (read_a or read_b) else work.with_texts(drive_file, read_a, read_b, told)
    )
    with progress_shown():
        result = work.read_back(edited)
    lines = "" if edited is drive_file else pull_text.lines_of(edited, "pull_test")
    if as_json:
        return show_json({**pull_text.record_result(result), "lines_to_keep": lines})
    return pull_text.write_result(result, lines, console())


COMMAND = pull_test
