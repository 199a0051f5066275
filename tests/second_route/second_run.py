"""Run every comparison of ``tests/second_route`` deeply, and write cases and largest differences.

    python tests/second_route/second_run.py [--afresh]

It goes on where it stopped, example by example.  Needs the extra ``second``.  Writes ``second_results.json``: what was compared, in how many cases, and the
largest relative difference met; examples whose limits were searched anew; what failed.
"""

from __future__ import annotations

import json
import os
import sys
from pathlib import Path
from typing import Any

for _name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")
os.environ["SECOND_ROUTE_DEEP"] = "1"
HERE = Path(__file__).parent
ROOT = HERE.parent.parent
sys.path[:0] = [str(p) for p in (HERE, HERE.parent, HERE.parent / "random_drives", ROOT / "src")]


RESULTS = HERE / "second_results.json"


def merged(known: dict[str, Any], met: dict[str, dict[str, float]]) -> None:
    """Put what was met to what is known."""
    for what, row in met.items():
        sum_ = known["looked"].setdefault(what, {"cases": 0, "largest": 0.0})
        sum_["cases"] += int(row["cases"])
        sum_["largest"] = max(sum_["largest"], float(f"{row['largest']:.3g}"))
    met.clear()
    known["looked"] = dict(sorted(known["looked"].items()))
    RESULTS.write_text(json.dumps(known, indent=1) + "\n")


def main() -> int:
    """Run the ordinary tests, deep, and the examples one after another."""
    import pytest
    import second_kit
    import test_another_root_search as search

    if "--afresh" in sys.argv:
        RESULTS.unlink(missing_ok=True)
    empty: dict[str, Any] = {"tests": 0, "examples": [], "failed": [], "looked": {}}
    known = json.loads(RESULTS.read_text()) if RESULTS.exists() else empty
    if not known["tests"]:
        options = ["-n", "0", "-q", "-p", "no:cacheprovider", "-k", "not deep_run and not examples"]
        if pytest.main([*options, str(HERE)]):
            known["failed"].append("tests of the folder")
        known["tests"] = 1
        merged(known, second_kit.MET)
    for name in [n for n in search.EXAMPLES if n not in known["examples"]]:
        try:
            search.compared(name)
        except AssertionError as error:
            known["failed"].append(f"{name}: {str(error).splitlines()[0][:300]}")
        known["examples"].append(name)
        merged(known, second_kit.MET)
        print(name, flush=True)
    print(json.dumps(known, indent=1))
    return 1 if known["failed"] else 0


if __name__ == "__main__":
    sys.exit(main())
