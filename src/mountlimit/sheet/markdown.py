"""The sheet as Markdown."""

from __future__ import annotations

import re
from collections.abc import Iterator

from .against import PairHead
from .blocks import (
    Block,
    Bullets,
    Card,
    Fold,
    Grid,
    Paragraph,
    Picture,
    Sheet,
    StepLine,
    Steps,
    Subheading,
)
from .clean import clean

SPECIAL = re.compile(r"([\\`*_{}\[\]<>#|~])")


def render(sheet: Sheet) -> str:
    """Write the sheet as Markdown; figures are told by their words."""
    head = sheet.head
    against = (
        f" (A) against {_plain(head.against_file)}, sha256 {head.against_sha256} (B)"
        if isinstance(head, PairHead)
        else ""
    )
    lines = [
        f"# {_plain(head.title)}", "",
        f"mountlimit {head.version}, data {head.data_version}, {head.date}; input {_plain(head.file)}, sha256 {head.input_sha256}{against}. "
        "Checked by: ____________________", "",
    ]  # fmt: skip
    for section in sheet.sections:
        lines += [f"## {_plain(section.title)}", ""]
        for block in section.blocks:
            lines += [*_lines(block, 3), ""]
    return re.sub(r"\n{3,}", "\n\n", "\n".join(lines)).rstrip() + "\n"


def _plain(text: str) -> str:
    return SPECIAL.sub(r"\\\1", " ".join(clean(text).split()))


def _lines(block: Block, level: int) -> Iterator[str]:
    match block:
        case Paragraph(text=text, strong=strong):
            yield f"**{_plain(text)}**" if strong else _plain(text)
        case Subheading(text=text):
            yield f"{'#' * level} {_plain(text)}"
        case Bullets(items=items, boxes=boxes):
            for item in items:
                yield f"- {'[ ] ' if boxes else ''}{_plain(item)}"
        case Card(text=text):
            yield from (f"    {line}" for line in text.splitlines())
        case Grid():
            yield from _grid(block)
        case Picture(alt=alt, caption=caption):
            yield f"*Figure: {_plain(caption)}.* {_plain(alt)}"
        case Steps(lines=lines):
            for line in lines:
                yield from _step(line)
        case Fold(title=title, blocks=blocks):
            yield f"{'#' * level} {_plain(title)}"
            for inner in blocks:
                yield ""
                yield from _lines(inner, level + 1)


def _grid(grid: Grid) -> Iterator[str]:
    yield "| " + " | ".join(_plain(h) for h in grid.heads) + " |"
    yield "|" + "|".join("---:" if r else "---" for r in grid.right) + "|"
    for row in grid.rows:
        yield "| " + " | ".join(_plain(cell) for cell in row) + " |"


def _step(line: StepLine) -> Iterator[str]:
    if line.repeated:
        yield f"- step {line.number}, above: {_plain(line.title)}: {_plain(line.result)}"
        return
    yield f"- step {line.number}: {_plain(line.title)}"
    yield f"  - `{line.equation}`"
    for term in line.terms:
        origin = f"step {term.step}" if term.step is not None else _plain(term.origin)
        yield f"  - {_plain(term.letter)} = {_plain(term.shown)} ({origin})"
    yield f"  - {_plain(line.result)}; source: {_plain(line.source)}"
