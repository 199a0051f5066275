"""Lines of a page to print and take to the machine: 80 columns of plain text."""

from __future__ import annotations

import textwrap

WIDTH = 78


def para(text: str, first: str = "", rest: str | None = None) -> str:
    """Give a paragraph, broken into lines; ``first`` stands in front of the first line."""
    follow = " " * len(first) if rest is None else rest
    return textwrap.fill(text, WIDTH, initial_indent=first, subsequent_indent=follow)


def items(lines: list[str], mark: str = "[ ] ") -> str:
    """Give a list to tick off."""
    return "\n".join(para(line, mark) for line in lines)
