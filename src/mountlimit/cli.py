"""The command line: gathers the commands and turns errors, broken outputs and Ctrl-C into lines and exit status."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from typing import Any

import click

from . import commands

STOPPED = 130  # exit status after Ctrl-C
READER_GONE = (
    141  # exit status when whoever read the answer has stopped reading, as a shell shows it
)


class _Group(click.Group):
    """Turns the package's own errors into one line each and exit status 2, Ctrl-C into one line."""

    def main(self, *args: Any, **extra: Any) -> Any:
        """Run the command line; where there is no output to write to, say so before any work."""
        if sys.stderr is None:
            sys.stderr = open(os.devnull, "w")  # noqa: SIM115  (stays open to the end)
        if sys.stdout is None:
            _say("mountlimit: the output is closed; send it to a file or to /dev/null")
            raise SystemExit(2)
        try:
            return super().main(*args, **extra)
        except OSError:  # the error stream itself cannot be written
            raise SystemExit(2) from None

    def make_context(self, *args: Any, **extra: Any) -> click.Context:
        """Read the options; the help is printed here."""
        with _output_watched():
            return super().make_context(*args, **extra)

    def invoke(self, ctx: click.Context) -> Any:
        """Run a command; never let a traceback out for bad input."""
        from .errors import BalanceError, MountlimitError
        from .writing import written

        written.clear()
        _quiet_matplotlib()
        try:
            with _output_watched():
                return super().invoke(ctx)
        except BalanceError as error:
            _say(f"mountlimit: internal fault, please report it: {error}")
            raise SystemExit(2) from None
        except MountlimitError as error:
            for line in str(error).splitlines():
                _say(line)
            raise SystemExit(error.exit_status) from None
        except KeyboardInterrupt:
            before = f"Written before that: {', '.join(written)}."
            _say(f"Stopped. {before if written else 'No file was changed.'}")
            raise SystemExit(STOPPED) from None
        except MemoryError:
            _say("mountlimit: this needs more memory than there is")
            raise SystemExit(2) from None


@contextmanager
def _output_watched() -> Iterator[None]:
    """Turn an output that cannot be written into one line, or none where its reader has gone."""
    try:
        yield
    except BrokenPipeError:
        _drop_output()
        raise SystemExit(READER_GONE) from None
    except OSError as error:
        _drop_output()
        what = (
            f"{error.filename}:" if error.filename else "mountlimit: the answer cannot be written:"
        )
        _say(f"{what} {error.strerror or error}")
        raise SystemExit(2) from None


def _drop_output() -> None:
    """Send what still waits to be printed nowhere, so that the end of the program meets no error."""
    with suppress(OSError, ValueError):  # ValueError: an output without a file behind it
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _say(line: str) -> None:
    """Write a line on the error stream, if that can be written."""
    with suppress(OSError):
        click.echo(line, err=True)


def _quiet_matplotlib() -> None:
    """Keep its warnings about its own font list, given while it is imported, from the user."""
    import logging

    logging.getLogger("matplotlib").addHandler(logging.NullHandler())


@click.group(cls=_Group, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="mountlimit")
def main() -> None:
    """How many motor amperes a home-made chain-drive motor mount can take, and what gives first."""


for _command in commands.found():
    main.add_command(_command)
