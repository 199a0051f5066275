"""Writes the table of published cases into DEVELOPERS.md: ``python tests/update_published_table.py``."""

from __future__ import annotations

import re
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / "tests" / "published"))

from published_cases import CASES, LEFT_OUT, WAITING  # noqa: E402

DEVELOPERS = ROOT / "DEVELOPERS.md"
START, END = "<!-- published cases: start -->", "<!-- published cases: end -->"


def block() -> str:
    """Give the text between the two markers."""
    lines = [
        f"{len(CASES)} cases of the list of {len(CASES) + len(LEFT_OUT)} go through functions the commands call;",
        "`tests/published/test_reached.py` runs the commands and looks.",
        "",
        "| case | source | mark | functions |",
        "|---|---|---|---|",
    ]
    for case, (source, mark, functions) in CASES.items():
        lines.append(f"| {case} | {source} | {mark} | {', '.join(f'`{f}`' for f in functions)} |")
    lines += ["", "Left out:", ""]
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


if __name__ == "__main__":
    DEVELOPERS.write_text(updated(DEVELOPERS.read_text(encoding="utf-8")), encoding="utf-8")
