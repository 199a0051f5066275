"""`mountlimit report`: one sheet to look at, print and check."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from ._common import FILE, progress_shown

if TYPE_CHECKING:
    from ..drivefile import DriveFile
    from ..sheet.blocks import Sheet

FORMATS = ("html", "md", "json")


@click.command("report")
@FILE
@click.option(
    "-o",
    "--output",
    type=click.Path(),
    help="Write to this file; FILE's name with .html by default.",
)
@click.option(
    "--format",
    "kind",
    type=click.Choice(FORMATS),
    help="html, md or json; by the output's name when left out.",
)
@click.option(
    "--against",
    metavar="FILE",
    type=click.Path(),
    help="Compare with this second drive file: a page of both.",
)
@click.option("--quick", is_flag=True, help="Leave out what to change, which takes longest.")
@click.option(
    "--figures",
    "folder",
    type=click.Path(file_okay=False),
    help="Also write every figure into this folder, as SVG and PNG.",
)
@click.option(
    "--paper",
    type=click.Choice(("A4", "letter")),
    default="A4",
    show_default=True,
    help="For printing.",
)
@click.option(
    "--date",
    metavar="YYYY-MM-DD",
    help="Date on the sheet; SOURCE_DATE_EPOCH or today when left out.",
)
def report(
    file: str,
    output: str | None,
    kind: str | None,
    against: str | None,
    quick: bool,
    folder: str | None,
    paper: str,
    date: str | None,
) -> None:
    """Write the whole answer as one page: figures, limits, changes, step plan, worked calculations."""
    from ..drivefile import read
    from ..sheet import gather
    from ..writing import must_take, write_whole

    ending = "" if against is None else f"-against-{Path(against).stem}"
    target = Path(output) if output else Path(f"{Path(file).stem}{ending}.{kind or 'html'}")
    kind = kind or _by_name(target)
    stamp = gather.dated(date)
    drive_file, other = read(file), None if against is None else read(against)
    for each in (drive_file, other):
        if each is not None:
            _spare_inputs(each, target)
    must_take(target)
    with progress_shown():
        made = _one(drive_file, quick, stamp) if other is None else _two(drive_file, other, stamp)
    write_whole(target, _written(kind, made, paper))
    click.echo(f"Wrote {target}.")
    if folder is not None:
        with progress_shown():
            paths = made.figures(Path(folder))
        click.echo(f"Wrote {len(paths)} figures into {folder}.")


def _spare_inputs(drive_file: DriveFile, target: Path) -> None:
    """Refuse to write over the drive file, or over the drawing it names."""
    from ..errors import MountlimitError

    own = Path(drive_file.name)
    drawing = drive_file.given.get("mount.drawing")
    inputs = [own] if drawing is None else [own, own.parent / str(drawing.value)]
    if any(p.exists() and target.exists() and target.samefile(p) for p in inputs):
        raise MountlimitError(f"{target}: is an input of this report; choose another name with -o")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Made:
    sheet: Sheet
    data: Callable[[], dict[str, Any]]
    figures: Callable[[Path], list[Path]]


def _one(file: DriveFile, quick: bool, stamp: str) -> _Made:
    from ..report.record import record as result
    from ..sheet import as_data, content, gather

    found = gather.gather(file, quick)
    sheet = content.sheet(found, gather.head(found.assessment, stamp))
    return _Made(
        sheet=sheet, data=lambda: as_data.record(sheet, result(found.assessment)),
        figures=lambda folder: gather.write_figures(found.assessment, folder),
    )  # fmt: skip


def _two(one: DriveFile, two: DriveFile, stamp: str) -> _Made:
    from ..compare import compare
    from ..report.compare_text import record as result
    from ..sheet import against, as_data

    found = against.bare(compare(one, two))
    sheet = against.sheet(found, against.head(found, stamp))
    return _Made(
        sheet=sheet, data=lambda: as_data.record(sheet, result(found), as_data.PAIR_SCHEMA),
        figures=lambda folder: against.write_figures(found, folder),
    )  # fmt: skip


def _by_name(target: Path) -> str:
    kind = {".html": "html", ".htm": "html", ".md": "md", ".json": "json"}.get(
        target.suffix.lower()
    )
    if kind is None:
        raise click.UsageError(f"{target}: say the format with --format: {', '.join(FORMATS)}")
    return kind


def _written(kind: str, made: _Made, paper: str) -> str:
    if kind == "html":
        from ..sheet.html import render

        return render(made.sheet, paper)
    if kind == "md":
        from ..sheet.markdown import render as as_markdown

        return as_markdown(made.sheet)
    import json

    return json.dumps(made.data(), indent=1, ensure_ascii=False) + "\n"


COMMAND = report
