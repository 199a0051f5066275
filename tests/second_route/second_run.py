"""Run every comparison of ``tests/second_route`` deeply, and write cases and largest differences.

    python tests/second_route/second_run.py

Needs the extra ``second``.  Writes ``second_results.json``: what was compared, in how many cases, and the
largest relative difference met; examples whose limits were searched anew; what failed.
"""

from __future__ import annotations

import json
import os
import sys
import time
from pathlib import Path

for _name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")
os.environ["SECOND_ROUTE_DEEP"] = "1"
HERE = Path(__file__).parent
ROOT = HERE.parent.parent
sys.path[:0] = [str(p) for p in (HERE, HERE.parent, HERE.parent / "random_drives", ROOT / "src")]


def main() -> int:
    """Run the ordinary tests, deep, and the examples one after another."""
    import pytest
    import second_kit
    import test_another_root_search as search

    start, failed = time.process_time(), []
    options = ["-n", "0", "-q", "-p", "no:cacheprovider", "--deselect", "test_the_deep_run"]
    if pytest.main([*options, "-k", "not deep_run", str(HERE)]):
        failed.append("tests of the folder")
    for name in search.EXAMPLES:
        try:
            search.compared(name)
        except AssertionError as error:
            failed.append(f"{name}: {str(error).splitlines()[0][:300]}")
        print(name, round(time.process_time() - start), "s", flush=True)
        looked = {
            what: {"cases": int(row["cases"]), "largest": float(f"{row['largest']:.3g}")}
            for what, row in sorted(second_kit.MET.items())
        }
        done = {"looked": looked, "examples": search.EXAMPLES[: search.EXAMPLES.index(name) + 1], "failed": failed}  # fmt: skip
        (HERE / "second_results.json").write_text(json.dumps(done, indent=1) + "\n")
    print(json.dumps(looked, indent=1), failed)
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
