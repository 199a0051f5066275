"""The page that compares two drives: the comparison's own words and tables, and one picture."""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import groupby
from pathlib import Path

from .. import __version__
from ..assess import CAUTIONS, not_checked
from ..compare import Comparison
from ..limits import Found
from ..report import compare_text
from .blocks import Block, Bullets, Head, Paragraph, Picture, Section, Sheet, Subheading
from .capture import blocks_of
from .gather import data_version, dated, made

NAMES = {"Limits in motor current": "limits", "What was changed in the file": "changed"}


@dataclass(frozen=True, slots=True, kw_only=True)
class PairHead(Head):
    """What stands on top of a page of two drives."""

    against_file: str
    against_sha256: str


def bare(c: Comparison) -> Comparison:
    """Give the comparison with its files' names alone: a page tells no folders of whoever made it."""
    return replace(c, a=_bare(c.a), b=_bare(c.b))


def _bare(found: Found) -> Found:
    return replace(found, file=replace(found.file, name=Path(found.file.name).name))


def head(c: Comparison, date: str | None) -> PairHead:
    """Give the block on top, of a ``bare`` comparison; the date given, that of SOURCE_DATE_EPOCH, or today."""
    one, two = c.a.file.name, c.b.file.name
    return PairHead(
        title=f"{c.a.drive.title or one} against {c.b.drive.title or two}", file=one, against_file=two,
        input_sha256=c.a.file.sha256, against_sha256=c.b.file.sha256, version=__version__,
        data_version=data_version(), date=dated(date),
    )  # fmt: skip


def sheet(c: Comparison, top: PairHead) -> Sheet:
    """Lay the page of a ``bare`` comparison out."""
    opening, *parts = _parts(blocks_of(compare_text.write, c))
    first, *rest = opening[1]
    assert isinstance(first, Paragraph)
    answer = (Paragraph(text=first.text, strong=True), *rest)
    sections = [Section(name="answer", title="The answer", blocks=answer)]
    picture = _picture(c) if parts else None
    for title, blocks in sorted(parts, key=lambda part: NAMES.get(part[0]) != "limits"):
        name = NAMES.get(title, "followed")
        shown = (picture,) if picture and name == "limits" else ()
        sections.append(Section(name=name, title=title, blocks=(*shown, *blocks)))
    sections += [
        Section(name="not-checked", title="Not checked", blocks=(Bullets(items=_not_checked(c)),)),
        Section(name="care", title="Take care", blocks=(Bullets(items=CAUTIONS),)),
    ]
    return Sheet(head=top, sections=tuple(sections))


def _parts(blocks: tuple[Block, ...]) -> list[tuple[str, tuple[Block, ...]]]:
    """Part what is printed at its headings; the first part has none."""
    title, titled = "", []
    for block in blocks:
        if isinstance(block, Subheading):
            title = block.text
        else:
            titled.append((title, block))
    return [(t, tuple(b for _, b in run)) for t, run in groupby(titled, key=lambda pair: pair[0])]


def _not_checked(c: Comparison) -> tuple[str, ...]:
    one, two = (not_checked(x.drive) for x in (c.a, c.b))
    return (
        *(words if words in two else f"A only: {words}" for words in one),
        *(f"B only: {words}" for words in two if words not in one),
    )


def _picture(c: Comparison) -> Picture:
    from ..figures import sheet_of_two

    one = sheet_of_two(c)
    return Picture(name=one.name, svg=one.svg, alt=one.alt, caption=one.title)


def write_figures(c: Comparison, folder: Path) -> list[Path]:
    """Write the picture into a folder; make it if need be. Raises ``MountlimitError``."""
    from ..figures import of_two, written

    made(folder)
    return written([of_two(c)], folder)
