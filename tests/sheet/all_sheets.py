"""Runs the tests of sheets and figures on every drive, and keeps what came of it in a file.

    python tests/sheet/all_sheets.py [NAME ...]

Every example and every story of ``tests/drives`` gets its whole sheet (with what to change), the tests of
``tests/sheet`` and ``tests/figures``; every form's starter the tests of the figures. About a minute each.
It goes on where it stopped; a drive whose file has changed is run again, ``--afresh`` runs all.
"""

from __future__ import annotations

import hashlib
import json
import os
import pickle
import re
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
RESULTS = HERE / "all_sheets.json"
SHEET_TESTS = ("test_page.py", "test_printed_lines.py", "test_same_numbers.py", "test_schema.py")
HEAVIEST = 500_000  # bytes of a page
FIGURE_TESTS = (
    "test_every_drive or test_words or test_any_title or same_every_time or thickness_and_chains"
)


def drives() -> dict[str, Path]:
    """Every drive file by its name."""
    found = [
        *sorted((ROOT / "examples").glob("*.toml")),
        *sorted((ROOT / "tests/drives").glob("*.toml")),
    ]
    return {path.stem: path for path in found}


def mark(path: Path) -> str:
    """What a file's result belongs to."""
    return hashlib.sha256(path.read_bytes()).hexdigest()[:16]


def _pytest(*arguments: str, **variables: str) -> dict[str, object]:
    done = subprocess.run(
        [sys.executable, "-m", "pytest", "-n", "0", "-p", "no:cacheprovider", *arguments],
        cwd=ROOT, env={**os.environ, **variables}, capture_output=True, text=True,
    )  # fmt: skip
    passed = re.search(r"(\d+) passed", done.stdout)
    failed = re.findall(r"^(?:FAILED|ERROR) (\S+)", done.stdout, re.M)
    return {"passed": int(passed[1]) if passed else 0, "failed": failed, "status": done.returncode}


def _sheet(name: str) -> dict[str, object]:
    with tempfile.TemporaryDirectory() as kept:
        tests = _pytest(
            *(f"tests/sheet/{t}" for t in SHEET_TESTS), f"--basetemp={kept}/t", SHEETS=name
        )
        found = list(Path(kept).rglob(f"sheet-{name}.pickle"))
        return {"sheet": tests, **(_weights(found[0]) if found else {})}


def _weights(place: Path) -> dict[str, object]:
    from mountlimit.sheet.blocks import Picture

    sheet, _, page = pickle.loads(place.read_bytes())
    pictures = {
        b.name: len(b.svg.encode())
        for s in sheet.sections
        for b in s.blocks
        if isinstance(b, Picture)
    }
    return {"page_bytes": len(page.encode()), "figure_bytes": pictures}


def _figures(name: str) -> dict[str, object]:
    return {"figures": _pytest("tests/figures/test_figures.py", "-k", FIGURE_TESTS, FIGURES=name)}


def faults(results: dict[str, dict[str, object]]) -> list[str]:
    """Say what is missing, out of date, failed or too heavy; nothing where all is well."""
    from mountlimit.mounts import FORMS

    found = []
    for name, path in drives().items():
        one = results.get(name, {})
        if one.get("mark") != mark(path):
            found.append(f"{name}: not looked at as it is now")
            continue
        found += [f"{name}: {f}" for f in _failed(one, {"sheet": 20, "figures": 6})]
        if not 0 < one.get("page_bytes", 0) < HEAVIEST:
            found.append(f"{name}: page of {one.get('page_bytes')} bytes")
    for form in FORMS:
        name = f"starter of {form.replace(' ', '_')}"
        found += [f"{name}: {f}" for f in _failed(results.get(name, {}), {"figures": 6})]
    return found


def _failed(one: dict[str, dict[str, object]], least: dict[str, int]) -> list[str]:
    found = []
    for part, count in least.items():
        tests = one.get(part, {"passed": 0, "failed": ["not run"], "status": 1})
        if tests["failed"] or tests["status"] or tests["passed"] < count:
            found.append(f"{part}: {tests}")
    return found


def main() -> None:
    """Run what is missing."""
    from mountlimit.mounts import FORMS

    results = json.loads(RESULTS.read_text()) if RESULTS.is_file() else {}
    asked = [a for a in sys.argv[1:] if not a.startswith("-")]
    starters = [form.replace(" ", "_") for form in FORMS]
    for name in asked or [*drives(), *starters]:
        path = drives().get(name)
        key, now = (name, mark(path)) if path else (f"starter of {name}", "")
        if results.get(key, {}).get("mark") == now and "--afresh" not in sys.argv and not asked:
            continue
        results[key] = {"mark": now, **(_sheet(name) if path else {}), **_figures(name)}
        part = RESULTS.with_suffix(".part")
        part.write_text(json.dumps(dict(sorted(results.items())), indent=1) + "\n")
        part.replace(RESULTS)
        print(name, results[key], flush=True)
    print(*(faults(results) or ["all drives are well"]), sep="\n")


if __name__ == "__main__":
    main()
