"""Writes the catalogue of published cases into DEVELOPERS.md: ``python tests/update_published_table.py``.

The cases are run for it; their list is ``tests/published/published_cases.py``.
"""

from __future__ import annotations

import math
import re
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / "tests" / "published"))

import catalogue  # noqa: E402
from printed import Note  # noqa: E402
from published_cases import CASES, ELSEWHERE, LEFT_OUT, WAITING  # noqa: E402

DEVELOPERS = ROOT / "DEVELOPERS.md"
START, END = "<!-- published cases: start -->", "<!-- published cases: end -->"
MARKS = ("standard", "handbook", "computed", "common practice", "from memory")
HEADS = "| case | what | figures | figure | ours | off | mark | functions |"
SOLVED = ("meshed.", "open_section.")  # a mesh's last digits may change with the libraries


def figure(note: Note) -> str:
    """Give the figure as the source prints it; six digits where it was worked out by a test."""
    return note.figure.removesuffix(".0") if len(note.figure) <= 11 else f"{float(note.figure):.6g}"


def ours(note: Note) -> str:
    """Give the program's figure with two digits more than the source's."""
    digits = len(re.sub(r"e.*|[.-]", "", figure(note)).lstrip("0"))
    return f"{note.ours:.{min(max(digits + 2, 4), 9)}g}"


def off(note: Note) -> str:
    """Give the difference in per cent; r where the printed figure's rounding covers it."""
    if abs(note.off) < 1e-10:
        return "0"
    return f"{100 * note.off:+.2g} %" + (" r" if note.rounding else "")


def place(row: catalogue.Row) -> str:
    """Give the test's name in words."""
    words = row.name.removeprefix("test_").replace("_", " ")
    return re.sub(r"(?<=\d) (?=\d)", ".", words)


def line(row: catalogue.Row) -> str:
    """Give one row: the figure farthest off stands for all of the test."""
    cells = (
        ", ".join(row.ids), place(row), str(len(row.notes)), figure(row.worst), ours(row.worst),
        off(row.worst), row.mark, ", ".join(f"`{name}`" for name in row.functions),
    )  # fmt: skip
    return "| " + " | ".join(cells) + " |"


def summary(rows: tuple[catalogue.Row, ...]) -> list[str]:
    """Give the count by mark."""
    lines = [
        "| mark | tests | figures | within the figure's rounding | within 0.1 % | within 1 % | farthest off |",
        "|---|---|---|---|---|---|---|",
    ]
    for mark in MARKS:
        notes = [note for row in rows if row.mark == mark for note in row.notes]
        tests = sum(row.mark == mark for row in rows)
        near = [sum(note.rounding or abs(note.off) <= x for note in notes) for x in (0, 1e-3, 1e-2)]
        worst = max((n for n in notes if not n.rounding), key=lambda n: abs(n.off), default=None)
        farthest = off(worst) if worst else "-"
        lines.append(
            f"| {mark} | {tests} | {len(notes)} | {' | '.join(map(str, near))} | {farthest} |"
        )
    return lines


def block() -> str:
    """Give the text between the two markers."""
    rows = catalogue.rows()
    lines = [
        f"{len(CASES)} cases of the list of {len(CASES) + len(LEFT_OUT)} go through functions that `check` or `why`",
        "call (`tests/published/test_reached.py` runs them and looks; "
        + ", ".join(f"`{name}`: `{command}` only" for name, command in ELSEWHERE.items())
        + "), and each case",
        "itself calls the functions it names (`test_catalogue.py`). Measured by running the tests; a row shows that figure of the test which is farthest",
        "off. *r*: no more than the rounding of the printed figure. *figure*: as printed, or of a second route.",
        "",
        *summary(rows),
    ]
    for source in catalogue.sources():
        lines += ["", f"**{catalogue.reference(source)}** (`test_{source}.py`)", ""]
        lines += [HEADS, "|---" * 8 + "|"]
        lines += [line(row) for row in rows if row.source == source]
    lines += ["", "Left out of the list:", ""]
    reasons: dict[str, list[str]] = {}
    for case, reason in LEFT_OUT.items():
        reasons.setdefault(reason, []).append(case)
    lines += [f"- {', '.join(cases)}: {reason}." for reason, cases in reasons.items()]
    lines += ["", "### Formulas waiting for their check", ""]
    lines += [f"- `{name}`: {what}" for name, what in WAITING.items()]
    return "\n".join([START, *lines, END])


def updated(text: str) -> str:
    """Give the text of DEVELOPERS.md with the block brought up to date."""
    return re.sub(f"{START}.*?{END}", lambda _: block(), text, count=1, flags=re.S)


def same(there: str, now: str) -> bool:
    """Tell whether two lines say the same, but for the last digits of a figure that was computed.

    Two units of the last digit shown; 2 parts in 1000 where a mesh was solved.
    """
    old, new = there.split(" | "), now.split(" | ")
    if len(old) != 8 or len(new) != 8 or there == now:
        return there == now
    if old[:4] + old[6:] != new[:4] + new[6:]:
        return False
    a, b = float(old[4]), float(new[4])
    mesh = any(f"`{name}" in now for name in SOLVED)
    digits = len(re.sub(r"e.*|[.-]", "", old[4]).lstrip("0"))
    last = 10.0 ** (math.floor(math.log10(abs(a) or 1.0)) - digits + 1)
    return abs(a - b) <= (2e-3 * abs(a) if mesh else 2 * last)


def stale(text: str) -> list[str]:
    """Give the lines of DEVELOPERS.md's block that say otherwise than the cases do now."""
    there = text[text.index(START) : text.index(END) + len(END)].splitlines()
    now = block().splitlines()
    if len(there) != len(now):
        return [f"{len(there)} lines stand there, {len(now)} belong there"]
    return [new for old, new in zip(there, now, strict=True) if not same(old, new)]


if __name__ == "__main__":
    DEVELOPERS.write_text(updated(DEVELOPERS.read_text(encoding="utf-8")), encoding="utf-8")
