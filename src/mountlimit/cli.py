"""The command line: gathers the commands and turns the package's errors into lines and exit status."""

from __future__ import annotations

from typing import Any

import click

from . import commands

STOPPED = 130  # exit status after Ctrl-C


class _Group(click.Group):
    """Turns the package's own errors into one line each and exit status 2, Ctrl-C into one line."""

    def invoke(self, ctx: click.Context) -> Any:
        """Run a command; never let a traceback out for bad input."""
        from .errors import BalanceError, MountlimitError

        try:
            return super().invoke(ctx)
        except BalanceError as error:
            click.echo(f"mountlimit: internal fault, please report it: {error}", err=True)
            raise SystemExit(2) from None
        except MountlimitError as error:
            for line in str(error).splitlines():
                click.echo(line, err=True)
            raise SystemExit(error.exit_status) from None
        except KeyboardInterrupt:
            click.echo("Stopped. No file was changed.", err=True)
            raise SystemExit(STOPPED) from None


@click.group(cls=_Group, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="mountlimit")
def main() -> None:
    """How many motor amperes a home-made chain-drive motor mount can take, and what gives first."""


for _command in commands.found():
    main.add_command(_command)
