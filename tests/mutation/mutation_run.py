"""Mutation run over ``formulas/`` and ``checks/``: is a small fault in them seen by the tests?

    PYTHONPATH=src python tests/mutation/mutation_run.py map       which tests reach which lines
    PYTHONPATH=src python tests/mutation/mutation_run.py run       the mutants, as far as not yet done
    PYTHONPATH=src python tests/mutation/mutation_run.py write     results.json from what was done
    PYTHONPATH=src python tests/mutation/mutation_run.py one FILE#NUMBER     one mutant, in words

One process collects all tests once.  For each mutant it forks; the child puts the mutated code into
the function itself (``__code__``), so that every module that imported it sees it, and runs the tests
that reach the line, cheapest first, until one fails.  A mutant outside functions loads the package
and its tests afresh in the child.  Tests that hold the code against its own data sheet come last.
Map and progress lie in the temporary folder (``--work``); interrupted runs go on where they stopped.
"""

from __future__ import annotations

import argparse
import json
import os
import pickle
import sys
import tempfile
import time
from pathlib import Path
from typing import Any

for _name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")

import pytest  # noqa: E402

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE))

import sample  # noqa: E402
import trial  # noqa: E402

TREE = HERE.parents[1]
ROOT = TREE / "src" / "mountlimit"
TESTS = (
    "tests/formulas", "tests/published", "src/mountlimit/formulas", "tests/checks",
    "tests/test_drives_hand.py", "tests/test_upkeep.py", "tests/test_frame_member.py",
    "tests/test_jam.py", "tests/test_drives_clamped_hand.py", "tests/test_consequence.py",
    "tests/test_failure_modes.py", "tests/pull_test", "tests/test_examples.py",
    "tests/test_why.py",
)  # fmt: skip
MAP_LIMIT = 15  # s of processor time a file of tests may take while the map is made
SEED = 8


class Runner:
    """A pytest plugin that, instead of running the tests, does one of the jobs on them."""

    def __init__(self, options: argparse.Namespace) -> None:
        self.options = options
        self.work = Path(options.work)
        self.work.mkdir(parents=True, exist_ok=True)
        self.answer: list[Any] = []

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Take the collected tests and do the job."""
        items = {i.nodeid: i for i in session.items}
        print(f"{len(items)} tests collected", flush=True)
        bench = trial.Bench(ROOT, TREE, items, self.work)
        if self.options.job == "map" or self.options.tests:
            make_map(bench, self.work / "map")
        if self.options.job != "map":
            bench.load_map(read_map(self.work / "map"), self.options.budget)
            bench.every = bool(self.options.keys and self.options.tests) and len(items) < 30
            self.run(bench)
        return True

    def run(self, bench: trial.Bench) -> None:
        """Try the mutants that were asked for and are not done yet."""
        done = sample.read(self.work / "progress.jsonl")
        wanted = sample.chosen(ROOT, SEED, self.options.formulas, self.options.checks)
        if self.options.keys:
            wanted = [m for m in sample.everything(ROOT) if m.key in self.options.keys]
        else:
            weak = {k for k, r in done.items() if not r["killed"] or trial.stage(r["by"]) == 2}
            again = weak if self.options.again else set()
            wanted = [m for m in wanted if m.key not in done or m.key in again]
        for i, mutant in enumerate(wanted):
            record = bench.attempt(mutant)
            self.answer.append(record)
            if self.options.job == "run":
                with (self.work / "progress.jsonl").open("a") as out:
                    out.write(json.dumps(record) + "\n")
            told = "killed " + record["by"] if record["killed"] else "SURVIVED"
            print(f"{i + 1}/{len(wanted)} {mutant.key} {mutant.kind} line {mutant.line} "
                  f"{record['seconds']:.2f} s {told}", flush=True)  # fmt: skip


def make_map(bench: trial.Bench, folder: Path) -> None:
    """Run each file of tests once, in a child of its own, and keep what each test reaches."""
    folder.mkdir(exist_ok=True)
    files: dict[str, list[str]] = {}
    for name in bench.items:
        files.setdefault(name.split("::")[0], []).append(name)
    for file in files:  # as collected
        target = folder / (file.replace("/", "_") + ".pickle")
        if not target.exists():
            began = time.time()
            bench.reach_of(files[file], target, MAP_LIMIT)
            print(f"{file}: {time.time() - began:.1f} s", flush=True)


def read_map(folder: Path) -> dict[str, tuple[float, frozenset[tuple[str, int]]]]:
    """Read what each test costs (s) and which lines it reaches; failing tests are left out."""
    found: dict[str, tuple[float, frozenset[tuple[str, int]]]] = {}
    for path in sorted(folder.glob("*.pickle")):
        with path.open("rb") as file:
            while True:
                try:
                    name, passed, cost, lines = pickle.load(file)
                except (EOFError, pickle.UnpicklingError):
                    break
                if passed:
                    found[name] = cost, lines
    return found


def collect(options: argparse.Namespace) -> Runner:
    """Let pytest collect the tests and hand them to the runner."""
    runner = Runner(options)
    os.chdir(TREE)
    os.environ["HYPOTHESIS_DATABASE_FILE"] = str(runner.work / "hypothesis")
    tests = options.tests or [t for t in TESTS if (TREE / t).exists()]
    if options.job != "map" and not options.tests:
        wanted = "checks/" if options.job == "run" and not options.formulas else ""
        reach = read_map(runner.work / "map").items()
        near = (n for n, (_, lines) in reach if any(f.startswith(wanted) for f, _ in lines))
        tests = sorted({name.split("::")[0] for name in near})
    code = pytest.main(["-n", "0", "-p", "no:cacheprovider", "-s", "-q", *tests], plugins=[runner])
    if code not in (0, pytest.ExitCode.NO_TESTS_COLLECTED):
        raise SystemExit(f"pytest stopped with {code}")
    return runner


def arguments(words: list[str] | None = None) -> argparse.Namespace:
    """Read the command line."""
    parser = argparse.ArgumentParser(description="mutation run")
    parser.add_argument("job", choices=("map", "run", "write", "one"))
    parser.add_argument("keys", nargs="*", help="FILE#NUMBER of single mutants")
    parser.add_argument("--work", default=str(Path(tempfile.gettempdir()) / "mutation"))
    parser.add_argument("--formulas", type=int, default=350, help="sample of formulas")
    parser.add_argument("--checks", type=int, default=350, help="sample of checks")
    parser.add_argument("--budget", type=float, default=3, help="s of tests for a mutant")
    parser.add_argument(
        "--again",
        action="store_true",
        help="once more: survivors, and what only the code's own equation kills",
    )
    parser.add_argument("--tests", nargs="*", help="collect these only")
    return parser.parse_args(words)


def main() -> None:
    """Do the job named on the command line."""
    options = arguments()
    if options.job == "write":
        sample.write(Path(options.work) / "progress.jsonl", HERE, ROOT, SEED, options)
        return
    answer = collect(options).answer
    if options.job == "one":
        print(json.dumps(answer, indent=1))


if __name__ == "__main__":
    main()
