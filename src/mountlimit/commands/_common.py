"""What the commands share: arguments, the console, how a record is shown, progress of long work."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import click

FILE = click.argument("file", type=click.Path())
JSON = click.option(
    "--json", "as_json", is_flag=True, help="Print the result record (SI units) instead."
)
FOR = click.option(
    "--for", "wanted", metavar="CURRENT",
    help="Motor current to carry, for example 200A; the file's wanted current by default.",
)  # fmt: skip


def console() -> Any:
    """Give the console that answers are printed on; 100 wide and plain where it is no terminal.

    Plain too where NO_COLOR is set or TERM is "dumb"; the width is the terminal's all the same.
    """
    import shutil

    from rich.console import Console

    class Output(Console):
        """Leaves a pipe whose reader has gone to the command line, which knows the exit status."""

        def on_broken_pipe(self) -> None:
            raise

    terminal = sys.stdout.isatty()
    plain = bool(os.environ.get("NO_COLOR")) or os.environ.get("TERM") in ("dumb", "unknown")
    return Output(
        highlight=False, emoji=False, markup=False, force_terminal=terminal and not plain,
        width=shutil.get_terminal_size().columns if terminal else 100,
    )  # fmt: skip


def show_json(found: Any) -> None:
    """Print a result record."""
    import json

    click.echo(json.dumps(found, indent=2, ensure_ascii=False))


def asked(wanted: str | None, drive: Any) -> float:
    """Give the current asked for on the command line, or the file's wanted or set one."""
    from .. import units

    if wanted is not None:
        return units.parse(wanted, "current")
    return float(drive.current.wanted or drive.current.set)


@contextmanager
def progress_shown() -> Iterator[None]:
    """Show on the error stream how far the work inside has come; nothing where it is no terminal."""
    if not sys.stderr.isatty():
        yield
        return
    from rich.console import Console
    from rich.progress import Progress

    from ..progress import listening

    with Progress(console=Console(stderr=True, highlight=False), transient=True) as bar:
        tasks: dict[str, Any] = {}

        def listener(words: str, done: int, total: int) -> None:
            if words not in tasks:
                tasks[words] = bar.add_task(words, total=total)
            bar.update(tasks[words], completed=done, total=total)

        with listening(listener):
            yield
