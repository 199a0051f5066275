"""Figures of the report, one file per figure: ``read`` takes numbers from the answer, ``draw`` draws
them, ``alt`` says them in words. matplotlib is loaded when this package is imported, not before.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from types import ModuleType
from typing import Any

from .. import writing
from ..assess import Assessment
from ..chains import Choice
from ..compare import Comparison
from ..thickness import Thinnest
from . import (
    chain_bars,
    lean,
    limit_bars,
    load_path,
    plate,
    section,
    style,
    thicknesses,
    two_drives,
    use_curves,
)
from . import layout as drive_layout
from .style import Picture

OF_THE_ANSWER = (limit_bars, use_curves, load_path, drive_layout, lean, section, plate)
KINDS = ("svg", "png")


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """A figure for a page: SVG text to put inside it, heading, words; or why there is none."""

    name: str
    title: str
    svg: str
    alt: str
    why_not: str = ""


def pictures(
    a: Assessment, thickness: Sequence[Thinnest] = (), chains: Sequence[Choice] = ()
) -> list[Picture | Sheet]:
    """Draw every figure; one that does not apply is a ``Sheet`` that says why.

    Parameters
    ----------
    thickness, chains :
        answers of ``thickness.thinnest`` and ``chains.compare``, for their figures; left out without
    """
    asked = float(a.drive.current.wanted or a.drive.current.set)
    found = [_picture(module, module.read(a)) for module in OF_THE_ANSWER]
    if thickness:
        found.append(_picture(thicknesses, thicknesses.read(a.drive, thickness, asked)))
    if chains:
        found.append(_picture(chain_bars, chain_bars.read(a.drive, chains, asked)))
    return found


def _picture(module: ModuleType, shown: Any) -> Picture | Sheet:
    if isinstance(shown, str):
        return Sheet(name=module.NAME, title=module.TITLE, svg="", alt="", why_not=shown)
    return Picture(
        name=module.NAME, title=module.TITLE, figure=module.draw(shown), alt=module.alt(shown)
    )


def sheets(
    a: Assessment, thickness: Sequence[Thinnest] = (), chains: Sequence[Choice] = ()
) -> list[Sheet]:
    """Give every figure as SVG text that may stand in one page with the others (own names inside)."""
    return [_sheet(found) for found in pictures(a, thickness, chains)]


def _sheet(found: Picture | Sheet) -> Sheet:
    if isinstance(found, Sheet):
        return found
    return Sheet(name=found.name, title=found.title, svg=style.svg(found), alt=found.alt)


def of_two(c: Comparison) -> Picture:
    """Draw two drives' limits side by side."""
    found = _picture(two_drives, two_drives.read(c))
    assert isinstance(found, Picture)
    return found


def sheet_of_two(c: Comparison) -> Sheet:
    """Give the figure of two drives as SVG text."""
    return _sheet(of_two(c))


def write_all(
    a: Assessment, directory: Path, kinds: Sequence[str] = KINDS,
    thickness: Sequence[Thinnest] = (), chains: Sequence[Choice] = (),
) -> list[Path]:  # fmt: skip
    """Write every figure into a folder as SVG and PNG, each file whole; give their paths.

    Raises
    ------
    MountlimitError
        when the folder is missing or cannot be written
    """
    return written(pictures(a, thickness, chains), directory, kinds)


def written(
    pictures: Sequence[Picture | Sheet], directory: Path, kinds: Sequence[str] = KINDS
) -> list[Path]:
    """Write figures into a folder; give their paths. Raises as ``write_all``."""
    made = []
    for found in pictures:
        if isinstance(found, Sheet):
            continue
        for kind in kinds:
            path = directory / f"{found.name}.{kind}"
            if kind == "svg":
                head = '<?xml version="1.0" encoding="utf-8"?>\n'
                writing.write_whole(path, head + style.svg(found))
            else:
                writing.write_whole(path, style.png(found))
            made.append(path)
    return made
