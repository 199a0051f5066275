"""`mountlimit new`: a commented drive file for a mount form."""

from __future__ import annotations

import click


@click.command("new")
@click.argument("form", metavar="FORM")
@click.option("-o", "--output", type=click.Path(), help="Write to this file instead of FORM.toml.")
@click.option("--force", is_flag=True, help="Overwrite a file that is there already.")
def new(form: str, output: str | None, force: bool) -> None:
    """Write a commented drive file for a mount form (plate, angle) that you can check at once."""
    from ..starter import write

    click.echo(
        f"Wrote {write(form, output, force)}. Next: mountlimit check {output or form + '.toml'}"
    )


COMMAND = new
