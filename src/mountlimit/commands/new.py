"""`mountlimit new`: a commented drive file for a mount form."""

from __future__ import annotations

import click


@click.command("new")
@click.argument("form", metavar="FORM")
@click.option("-o", "--output", type=click.Path(), help="Write to this file instead of FORM.toml.")
@click.option("--force", is_flag=True, help="Overwrite a file that is there already.")
def new(form: str, output: str | None, force: bool) -> None:
    """Write a commented drive file for a mount form that you can check at once.

    For example: plate, angle. A form that is not known lists them all.
    """
    from ..starter import write

    name = write(form, output, force)
    quoted = f'"{name}"' if " " in name else name
    click.echo(f"Wrote {name}. Next: mountlimit check {quoted}")


COMMAND = new
