"""Writes tests/benchmarks/results.json into the README as a table: `python tests/update_benchmark_table.py`."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[1]
README, RESULTS = ROOT / "README.md", ROOT / "tests" / "benchmarks" / "results.json"
START, END = "<!-- benchmarks: start -->", "<!-- benchmarks: end -->"
GROWN = {
    "samples": "samples of `sure`",
    "triangles": "triangles of the mesh, one plate",
    "plates": "plates of a folded strip, all meshed alike",
}


def rows(record: dict[str, Any]) -> list[tuple[str, str]]:
    """Give what is measured, and the figure in words."""
    whole, solid = record["cpu seconds"], record["solid"]
    bare, check = whole["interpreter"], whole["check"]
    ratio = solid["seconds"]["solid"] / solid["seconds"]["plates"]
    found = [
        ("start-up (`--help`)", f"{whole['help'] / bare:.1f} times starting Python itself"),
        ("`check`", f"{check / bare:.0f} times starting Python ({check:.1f} s here)"),
        ("`thickness`, three materials", f"{whole['thickness'] / check:.1f} times one `check`"),
        (
            "a sweep of 40 thicknesses in three materials",
            f"{whole['120 thicknesses'] / check:.1f} times one `check`",
        ),
        ("`sure`, 10 000 samples", f"{whole['sure'] / check:.1f} times one `check`"),
        ("`report`", f"{whole['report'] / check:.1f} times one `check`"),
        (
            "one mount by the plate model",
            f"1/{ratio:.0f} of the same mount in solid elements of like error "
            f"({solid['tetrahedra']} tetrahedra, solver {solid['solver'].split()[0]})",
        ),
    ]
    for name, words in GROWN.items():
        steps = record["growth"][name]
        counts = [int(float(n)) for n in steps["seconds"]]
        span = f"{counts[0]:,} to {counts[-1]:,}".replace(",", " ")
        found.append((f"growth with {words}", f"power {steps['exponent']:.2f} ({span})"))
    return found


def block() -> str:
    """Give the text between the two markers."""
    record = json.loads(RESULTS.read_text(encoding="utf-8"))
    lines = ["| what | CPU time |", "|---|---|"]
    lines += [f"| {what} | {figure} |" for what, figure in rows(record)]
    taken = ", ".join(f"{name} {n}" for name, n in record["rounds"].items())
    lines += ["", f"Least of so many rounds: {taken}; the others two or three."]
    return "\n".join([START, *lines, END])


def updated(text: str) -> str:
    """Give the README with the block brought up to date."""
    return re.sub(f"{START}.*?{END}", lambda _: block(), text, count=1, flags=re.S)


def write() -> None:
    README.write_text(updated(README.read_text(encoding="utf-8")), encoding="utf-8")


if __name__ == "__main__":
    write()
