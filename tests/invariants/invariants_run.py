"""Look deep for drives whose answer changes where it must not; goes on where it stopped.

    python tests/invariants/invariants_run.py --seconds 280
    python tests/invariants/invariants_run.py --only test_mirror_image_by_plates --afresh

Every property of ``tests/invariants`` is run with many examples that a seed settles, one property after
another, each as one chunk; the next start goes on with the property that has had the fewest chunks.  What
was looked at (cases and largest deviation, by what is compared) and what broke a property stand in
``invariants_results.json``.
"""

from __future__ import annotations

import argparse
import importlib
import json
import os
import sys
import time
import traceback
from pathlib import Path
from typing import Any

for _name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")
HERE = Path(__file__).parent
ROOT = HERE.parent.parent
TESTS = HERE.parent
sys.path[:0] = [
    str(p) for p in (HERE, TESTS, TESTS / "random_drives", TESTS / "plates", ROOT / "src")
]
RESULTS = HERE / "invariants_results.json"


def properties(chunk: int) -> dict[str, Any]:
    """Give every property, seeded for a chunk: the tests that hypothesis feeds."""
    os.environ["INVARIANTS_DEEP"] = str(chunk)
    for name in [m for m in sys.modules if m.startswith("test_") or m == "invariant_kit"]:
        del sys.modules[name]
    found = {}
    for path in sorted(HERE.glob("test_*.py")):
        module = importlib.import_module(path.stem)
        found |= {
            name: test for name, test in vars(module).items()
            if name.startswith("test_") and hasattr(test, "hypothesis")
        }  # fmt: skip
    return found


def one(name: str, chunk: int) -> dict[str, Any]:
    """Run one chunk of one property; give what it looked at, and what broke it."""
    test = properties(chunk)[name]
    start, broke = time.process_time(), ""
    try:
        test()
    except Exception:  # whatever breaks it is what is looked for
        broke = "\n".join(traceback.format_exc().splitlines()[-12:])
    from invariant_kit import TALLY

    return {"looked": dict(TALLY), "broke": broke, "seconds": time.process_time() - start}


def merged(known: dict[str, Any], name: str, part: dict[str, Any]) -> dict[str, Any]:
    """Put a chunk to what is known."""
    row = known["properties"].setdefault(name, {"chunks": 0, "seconds": 0.0, "broke": []})
    row["chunks"] += 1
    row["seconds"] = round(row["seconds"] + part["seconds"], 1)
    row["broke"] += [part["broke"]] if part["broke"] else []
    for what, seen in part["looked"].items():
        sum_ = known["looked"].setdefault(what, {"cases": 0, "largest": 0.0})
        sum_["cases"] += int(seen["cases"])
        sum_["largest"] = max(sum_["largest"], float(f"{seen['largest']:.3g}"))
    known["looked"] = dict(sorted(known["looked"].items()))
    return known


def main() -> int:
    """Read the command line."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--seconds", type=float, default=280.0)
    parser.add_argument("--chunks", type=int, default=1, help="of every property")
    parser.add_argument("--only", default="")
    parser.add_argument("--afresh", action="store_true", help="forget what was run before")
    given = parser.parse_args()
    if given.afresh:
        RESULTS.unlink(missing_ok=True)
    empty: dict[str, Any] = {"properties": {}, "looked": {}}
    known = json.loads(RESULTS.read_text()) if RESULTS.exists() else empty
    end = time.monotonic() + given.seconds
    names = [n for n in properties(0) if given.only in ("", n)]
    while time.monotonic() < end:
        done = {n: known["properties"].get(n, {"chunks": 0})["chunks"] for n in names}
        name = min(names, key=lambda n: done[n])
        if done[name] >= given.chunks:
            break
        known = merged(known, name, one(name, 1 + done[name]))
        RESULTS.write_text(json.dumps(known, indent=1) + "\n")
        print(name, known["properties"][name], flush=True)
    print(json.dumps(known["looked"], indent=1))
    return 1 if any(row["broke"] for row in known["properties"].values()) else 0


if __name__ == "__main__":
    sys.exit(main())
