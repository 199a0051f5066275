"""The command line; the only file that prints or exits."""

from __future__ import annotations

import sys
from typing import Any

import click


class _Group(click.Group):
    """Turns the package's own errors into one line each and exit status 2."""

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


FILE = click.argument("file", type=click.Path())
JSON = click.option(
    "--json", "as_json", is_flag=True, help="Print the result record (SI units) instead."
)


@click.group(cls=_Group, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(package_name="mountlimit")
def main() -> None:
    """How many motor amperes a home-made chain-drive motor mount can take, and what gives first."""


def _console() -> Any:
    from rich.console import Console

    width = None if sys.stdout.isatty() else 100
    return Console(highlight=False, width=width, emoji=False, markup=False)


@main.command()
@FILE
@click.option(
    "--jam", "dead_stop", is_flag=True, help="Also from which speed a dead stop uses up each part."
)
@JSON
def check(file: str, dead_stop: bool, as_json: bool) -> None:
    """Say what gives first and at how many amperes.

    Exit status: 0 the set current is within the safe limit, 1 it is over it, 2 the file has mistakes.
    """
    from .assess import assess
    from .drivefile import read

    answer = assess(read(file), dead_stop)
    if as_json:
        from .report.record import record

        _json(record(answer))
    else:
        from .report.text import write

        write(answer, _console())
    raise SystemExit(1 if answer.over else 0)


@main.command()
@FILE
@click.argument("name", metavar="CHECK")
@click.option(
    "--at", "at", metavar="CURRENT", help="Work it out at this motor current, for example 80A."
)
@click.option("--likely", is_flag=True, help="Use likely values instead of the safe-side ends.")
@click.option("--jam", "dead_stop", is_flag=True, help="Work it out for a dead stop at speed.")
@JSON
def why(file: str, name: str, at: str | None, likely: bool, dead_stop: bool, as_json: bool) -> None:
    """Print the worked calculation of one line of the answer."""
    from . import units
    from .drivefile import read
    from .why import work

    current = None if at is None else units.parse(at, "current")
    found = work(read(file), name, current, likely, dead_stop=dead_stop)
    if as_json:
        from .report.worked_record import record

        _json(record(found))
    else:
        from .report.worked_text import write

        write(found, _console())


@main.command()
@click.argument("form", metavar="FORM")
@click.option("-o", "--output", type=click.Path(), help="Write to this file instead of FORM.toml.")
@click.option("--force", is_flag=True, help="Overwrite a file that is there already.")
def new(form: str, output: str | None, force: bool) -> None:
    """Write a commented drive file for a mount form (plate, angle) that you can check at once."""
    from .starter import write

    click.echo(
        f"Wrote {write(form, output, force)}. Next: mountlimit check {output or form + '.toml'}"
    )


@main.command()
@FILE
@click.option(
    "--for",
    "wanted",
    metavar="CURRENT",
    help="Motor current to carry, for example 200A; the file's wanted current by default.",
)
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
    from .drivefile import read
    from .report import thickness_text
    from .resolve import resolve
    from .thickness import thinnest

    drive_file = read(file)
    drive = resolve(drive_file)
    current = _asked(wanted, drive)
    answers = thinnest(drive_file, current, materials)
    if as_json:
        _json(thickness_text.record(answers, current))
    else:
        thickness_text.write(answers, current, drive, _console())


@main.command()
@FILE
@click.option("--all", "everything", is_flag=True, help="Show rare chains too.")
@JSON
def chains(file: str, everything: bool, as_json: bool) -> None:
    """Compare every known chain at this torque: which pitch do I need?"""
    from .chains import compare
    from .drivefile import read
    from .report import chains_text
    from .resolve import resolve

    drive_file = read(file)
    drive = resolve(drive_file)
    current = float(drive.current.wanted or drive.current.set)
    choices = compare(drive_file)
    if as_json:
        _json(chains_text.record(choices, current))
    else:
        chains_text.write(choices, current, drive, everything, _console())


DATA_KINDS = (
    "materials",
    "chains",
    "bolts",
    "classes",
    "bearings",
    "keys",
    "set-screws",
    "friction",
    "stock",
)


@main.command()
@click.argument("kind", type=click.Choice(DATA_KINDS))
@click.argument("words", nargs=-1)
@click.option("--sources", is_flag=True, help="Every number of each card, with its source.")
@click.option("--inch", is_flag=True, help="Show inch units.")
def data(kind: str, words: tuple[str, ...], sources: bool, inch: bool) -> None:
    """List the data cards; words narrow the list (data materials aluminium)."""
    from .report.data_text import write

    write(kind, words, sources, "inch" if inch else "metric", _console())


def _asked(wanted: str | None, drive: Any) -> float:
    """Give the current asked for on the command line, or the file's wanted or set one."""
    from . import units

    if wanted is not None:
        return units.parse(wanted, "current")
    return float(drive.current.wanted or drive.current.set)


def _json(found: Any) -> None:
    import json

    click.echo(json.dumps(found, indent=2, ensure_ascii=False))
