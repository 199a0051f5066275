"""Works out everything a sheet shows, by the same modules as the commands."""

from __future__ import annotations

import datetime
import hashlib
import os
from collections.abc import Iterable
from importlib.resources import files
from pathlib import Path

from .. import __version__, cards, limits, pull_test, sampling, steps, sure, why
from ..assess import Assessment, of_found
from ..drivefile import DriveFile
from ..errors import MountlimitError
from ..limits import Found
from ..report import changes_text, pull_text, steps_text
from ..what_to_change import what_to_change
from ..why import Worked
from .blocks import Block, Head, Paragraph, Picture
from .capture import blocks_of, card_of
from .content import Gathered


def gather(file: DriveFile, quick: bool = False) -> Gathered:
    """Work a drive out for its sheet; ``quick`` leaves out what to change.

    Raises ``InputError`` as ``resolve``.
    """
    found = limits.find(file)
    assessment = of_found(found)
    wanted = found.drive.current.wanted
    changes: tuple[Block, ...] = ()
    if wanted is not None and not quick:
        changes = blocks_of(changes_text.write, what_to_change(file, float(wanted)))
    return Gathered(
        assessment=assessment, sure=sure.of(found, sampling.take(found)), worked=worked(found), pictures=_pictures(assessment),
        changes=changes, steps=blocks_of(steps_text.write, steps.plan(found.file)),
        pull_test=_pull_test(found.file),
    )  # fmt: skip


def _pictures(assessment: Assessment) -> dict[str, Picture | Paragraph]:
    """Draw the figures of the answer; a figure that does not apply says why."""
    from ..figures import sheets

    found: dict[str, Picture | Paragraph] = {}
    for one in sheets(assessment):
        if one.why_not:
            found[one.name] = Paragraph(text=f"{one.title}: none ({one.why_not}).")
        else:
            found[one.name] = Picture(name=one.name, svg=one.svg, alt=one.alt, caption=one.title)
    return found


def write_figures(assessment: Assessment, folder: Path) -> list[Path]:
    """Write every figure into a folder, those of thickness and chains too; make the folder if need be.

    Raises
    ------
    MountlimitError
        when the folder cannot be made or written
    """
    from .. import chains, thickness
    from ..figures import write_all

    current = assessment.drive.current
    asked = float(current.wanted or current.set)
    made(folder)
    return write_all(
        assessment, folder, thickness=thickness.thinnest(assessment.file, asked),
        chains=chains.compare(assessment.file),
    )  # fmt: skip


def made(folder: Path) -> None:
    """Make a folder if need be. Raises ``MountlimitError`` when it cannot be made."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise MountlimitError(f"{folder}: cannot be made: {error.strerror}") from None


def _pull_test(file: DriveFile) -> tuple[Block, ...]:
    """Give the card of a pull test, or why there can be none."""
    try:
        return card_of(pull_text.write, pull_test.card(pull_test.without_test(file)))
    except MountlimitError as error:
        return (Paragraph(text=str(error)),)


def worked(found: Found) -> tuple[Worked, ...]:
    """Work every limit out step by step, in the order of the list."""
    return tuple(
        why.work(found.file, limit.check.name, found=found, limit=limit) for limit in found.limits
    )


def head(assessment: Assessment, date: str | None) -> Head:
    """Give the block on top; the date given, that of SOURCE_DATE_EPOCH, or today."""
    return Head(
        title=assessment.drive.title, file=Path(assessment.file.name).name, input_sha256=assessment.file.sha256,
        version=__version__, data_version=data_version(), date=dated(date),
    )  # fmt: skip


def dated(date: str | None) -> str:
    """Give the date to print. Raises ``MountlimitError`` for one that is none."""
    epoch = os.environ.get("SOURCE_DATE_EPOCH")
    try:
        if date is not None:
            return datetime.date.fromisoformat(date).isoformat()
        if epoch:
            return datetime.datetime.fromtimestamp(int(epoch), datetime.UTC).date().isoformat()
    except (ValueError, OverflowError, OSError):
        name, value = ("--date", date) if date is not None else ("SOURCE_DATE_EPOCH", epoch)
        raise MountlimitError(
            f"{name} = '{value}': expected a date such as 2026-05-31"
            if date is not None
            else f"{name} = '{value}': expected seconds since 1970"
        ) from None
    return datetime.date.today().isoformat()


def data_version() -> str:
    """Give a mark of all data cards: another number somewhere, another mark."""
    whole = hashlib.sha256()
    for name, content in sorted(_card_files()):
        whole.update(name.encode() + b"\0" + content + b"\0")
    return whole.hexdigest()[:10]


def _card_files() -> Iterable[tuple[str, bytes]]:
    for entry in files("mountlimit.data").iterdir():
        if entry.name.endswith(".toml"):
            yield entry.name, entry.read_bytes()
    for path in cards.folder("materials").glob("*.toml"):
        yield f"materials/{path.name}", path.read_bytes()
