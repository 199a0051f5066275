"""Which mutants are drawn, and the result file: rate with its 95 % interval, survivors with reason."""

from __future__ import annotations

import json
import math
import random
from collections import Counter
from pathlib import Path
from typing import Any

import mutants
from trial import stage

FOLDERS = ("formulas", "checks")
Records = list[dict[str, Any]]


def of_folder(root: Path, folder: str) -> list[list[mutants.Mutant]]:
    """List the mutants of a folder, file by file."""
    files = sorted(p.name for p in (root / folder).glob("*.py"))
    return [mutants.of_file(root, f"{folder}/{name}") for name in files]


def everything(root: Path) -> list[mutants.Mutant]:
    """List all mutants."""
    return [m for folder in FOLDERS for file in of_folder(root, folder) for m in file]


def in_order(root: Path, folder: str, seed: int) -> list[mutants.Mutant]:
    """Shuffle each file's mutants and mix the files evenly: every beginning is a stratified sample."""
    placed = []
    for file in of_folder(root, folder):
        draw = random.Random(f"{seed} {file[0].file}" if file else "")
        draw.shuffle(file)
        shift = draw.random()
        file = [m for m in file if m.kind != "strict"]
        placed += [((i + shift) / len(file), m.key, m) for i, m in enumerate(file)]
    return [m for _, _, m in sorted(placed, key=lambda p: p[:2])]


def chosen(root: Path, seed: int, formulas: int, checks: int) -> list[mutants.Mutant]:
    """Draw the sample of both folders, the two in turn."""
    first = in_order(root, "formulas", seed)[:formulas]
    second = in_order(root, "checks", seed)[:checks]
    both = [((i + 0.5) / len(part), m) for part in (first, second) for i, m in enumerate(part)]
    return [m for _, m in sorted(both, key=lambda p: p[0])]


def read(path: Path) -> dict[str, dict[str, Any]]:
    """Read what was done so far; a later record of the same mutant counts."""
    if not path.exists():
        return {}
    records = (json.loads(line) for line in path.read_text().splitlines())
    return {r["key"]: r for r in records if not r["by"].startswith("broken")}


def interval(killed: int, total: int) -> tuple[float, float]:
    """Give the 95 % interval of a share (Wilson, 1927)."""
    z = 1.959964
    share, spread = killed / total, z * z / total
    middle = (share + spread / 2) / (1 + spread)
    half = z * math.sqrt(share * (1 - share) / total + spread / total / 4) / (1 + spread)
    return middle - half, middle + half


def rate(records: Records, killed: int) -> dict[str, Any]:
    """Give number, killed, rate and interval."""
    low, high = interval(killed, len(records))
    return {"mutants": len(records), "killed": killed, "rate": round(killed / len(records), 4),
            "low": round(low, 4), "high": round(high, 4)}  # fmt: skip


def rates(records: Records) -> dict[str, Any]:
    """Give the rates of one folder: all tests, without the data-sheet tests, without either."""
    killed = [r for r in records if r["killed"]]
    hard = [r for r in records if r["kind"] != "keyword"]
    return {
        "all tests": rate(records, len(killed)),
        "without test_sheets": rate(records, sum(stage(r["by"]) < 2 for r in killed)),
        "without test_sheets and docstring examples":
            rate(records, sum(stage(r["by"]) < 1 for r in killed)),
        "all tests, keyword arguments left out": rate(hard, sum(r["killed"] for r in hard)),
    }  # fmt: skip


def summary(root: Path, done: Records, seed: int, reasons: dict[str, str]) -> dict[str, Any]:
    """Put the result together; a reason belongs to what was changed, not to a line number."""
    out: dict[str, Any] = {"seed": seed}
    for folder in FOLDERS:
        records = [r for r in done if r["file"].startswith(folder)]
        all_of = [m for file in of_folder(root, folder) for m in file]
        out[folder] = {"possible": len(all_of), **rates(records)}
        out[folder]["kinds"] = {
            kind: [sum(r["killed"] for r in records if r["kind"] == kind), count]
            for kind, count in sorted(Counter(r["kind"] for r in records).items())
        }
    seconds = sorted(r["seconds"] for r in done)
    out["seconds"] = {"mean": round(sum(seconds) / len(seconds), 2),
                      "median": seconds[len(seconds) // 2], "total": round(sum(seconds))}  # fmt: skip
    by_key = {m.key: m for m in everything(root)}
    out["survivors"] = []
    for r in (r for r in done if not r["killed"]):
        was, now = mutants.words(root, by_key[r["key"]])
        told = {"key": r["key"], "file": r["file"], "in": r["in"], "was": was, "now": now}
        out["survivors"].append(told | {"reason": reasons.get(name_of(told), "")})
    return out


def name_of(record: dict[str, Any]) -> str:
    """Name a survivor by what it changes."""
    return f"{record['file']} {record['in']}: {record['was']} -> {record['now']}"


def write(progress: Path, here: Path, root: Path, seed: int, options: Any) -> None:
    """Write results.json from the progress so far."""
    done = read(progress)
    wanted = chosen(root, seed, options.formulas, options.checks)
    records = [done[m.key] for m in wanted if m.key in done]
    path = here / "reasons.json"
    reasons = json.loads(path.read_text()) if path.exists() else {}
    out = summary(root, records, seed, reasons)
    (here / "results.json").write_text(json.dumps(out, indent=1) + "\n")
    for folder in FOLDERS:
        print(
            folder,
            json.dumps(out[folder]["all tests"]),
            json.dumps(out[folder]["without test_sheets"]),
        )
    for r in out["survivors"]:
        print("survivor:", name_of(r), "|", r["reason"] or "NO REASON")
