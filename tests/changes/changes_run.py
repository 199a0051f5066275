"""Looks for the cheapest change on every example and test drive: ``python tests/changes/changes_run.py``.

Goes on where it left off (``--afresh`` starts anew); the answers stand in ``results/``, of which
``test_results.py`` checks a sample against the pipeline.  About 25 s of one core each.
"""

from __future__ import annotations

import json
import sys
import time
from pathlib import Path

from mountlimit import drivefile
from mountlimit.report import changes_text
from mountlimit.resolve import resolve
from mountlimit.what_to_change import what_to_change

ROOT = Path(__file__).parents[2]
RESULTS = Path(__file__).with_name("results")
DRIVES = sorted([*(ROOT / "examples").glob("*.toml"), *(ROOT / "tests" / "drives").glob("*.toml")])


def wanted_of(file: drivefile.DriveFile) -> float:
    """Give the current wanted in the file, or twice the one that is set."""
    current = resolve(file).current
    return float(current.wanted or 2 * current.set)


KEPT = (
    "wanted", "safe", "reached", "cheapest", "fewest", "best", "singles", "tried", "pairs_run", "pairs_possible",
)  # fmt: skip


def main(paths: list[Path], afresh: bool) -> None:
    """Run the drives that have no result yet and write each as it comes."""
    RESULTS.mkdir(exist_ok=True)
    for path in paths:
        target = RESULTS / f"{path.stem}.json"
        if target.exists() and not afresh:
            continue
        file = drivefile.read(path)
        start = time.process_time()
        answer = what_to_change(file, wanted_of(file))
        record = changes_text.record(answer)
        took = round(time.process_time() - start)
        found = {"file": path.relative_to(ROOT).as_posix()} | {k: record[k] for k in KEPT}
        target.write_text(json.dumps(found | {"seconds": took}, indent=1) + "\n")
        end = answer.cheapest or answer.best
        safe = end.safe if end else answer.safe
        print(path.stem, record["reached"], f"{answer.safe:.1f} -> {safe:.1f} for {answer.wanted:g} A", took, "s", flush=True)  # fmt: skip


if __name__ == "__main__":
    given = [ROOT / a for a in sys.argv[1:] if not a.startswith("-")]
    main(given or DRIVES, "--afresh" in sys.argv)
