"""`mountlimit sure`: how sure the answer is, and what to measure next."""

from __future__ import annotations

import click

from ._common import FILE, JSON, console, progress_shown, show_json


@click.command("sure")
@FILE
@click.option("--samples", type=click.IntRange(1000, 1_000_000), default=10_000, show_default=True,
              help="How many possible truths to draw.")  # fmt: skip
@click.option(
    "--seed",
    type=click.IntRange(0),
    default=20_000,
    show_default=True,
    help="Same seed, same samples.",
)
@click.option(
    "--part",
    metavar="CHECK",
    default="",
    help="Of one part (a name from check) instead of what gives first.",
)
@JSON
def sure(file: str, samples: int, seed: int, part: str, as_json: bool) -> None:
    """Say how sure the answer is, what is first how often, and what to measure next.

    Trials in the file ([[trial]]: a current that was run, and what was seen) count.
    """
    from .. import sure as work
    from ..drivefile import read
    from ..report import sure_text

    with progress_shown():
        answer = work.sure(read(file), samples, seed, part)
    if as_json:
        show_json(sure_text.record(answer))
    else:
        sure_text.write(answer, console())


COMMAND = sure
