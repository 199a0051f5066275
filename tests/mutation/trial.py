"""One mutant in a forked child: the mutated code put in, the tests that reach it run until one fails."""

from __future__ import annotations

import ast
import gc
import importlib.machinery
import json
import os
import pickle
import resource
import signal
import sys
import time
from collections import Counter
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

import mutants
import pytest
from _pytest.runner import runtestprotocol

SHEETS = "tests/formulas/test_sheets.py"
KEPT = {
    "units",
    "unit_meaning",
    "unit_kinds",
    "unit_text",
    "writing",
    "progress",
    "errors",
    "worked",
}
APPLIES = "test_a_check_that_applies"
FEW = 15  # tests for a mutant outside functions: they are loaded anew, which takes longer than they
SPARE = 12.0  # s of processor time beyond what the tests take, then a child counts as hanging
Line = tuple[str, int]


def stage(name: str) -> int:
    """Sort tests: against something outside, the example in a docstring, the code's own equation."""
    return 2 if name.startswith(SHEETS) else 1 if name.startswith("src/") else 0


class Bench:
    """All tests, all functions that can be changed, and which test reaches which line."""

    def __init__(self, root: Path, tree: Path, items: dict[str, pytest.Item], work: Path) -> None:
        self.root, self.tree, self.items, self.work = root, tree, items, work
        self.functions: dict[tuple[str, mutants.Owner], list[FunctionType]] = {}
        for thing in gc.get_objects():
            if isinstance(thing, FunctionType) and thing.__code__.co_filename.startswith(str(root)):
                code = thing.__code__
                owner = str(Path(code.co_filename).relative_to(root)), (
                    code.co_qualname, code.co_firstlineno,
                )  # fmt: skip
                self.functions.setdefault(owner, []).append(thing)
        self.at: dict[Line, list[str]] = {}
        self.cost: dict[str, float] = {}
        self.marked: dict[str, CodeType] = {}
        self.budget = 8.0
        self.every = False  # whether all tests collected are for every mutant outside functions
        _warm()
        gc.freeze()

    # --- the map

    def reach_of(self, names: list[str], target: Path, limit: float) -> None:
        """Run tests in a child and write what each reaches and costs, one pickle after another."""
        if not self.marked:
            files = {f for f, _ in self.functions if f.startswith(("formulas/", "checks/"))}
            self.marked = {f: mutants.with_reach(self.root, f) for f in sorted(files)}
        child = os.fork()
        if not child:
            _quiet()
            _stop_after(limit)
            try:
                with target.open("wb") as out:
                    self._watch(names, out)
            finally:
                os._exit(0)
        os.waitpid(child, 0)

    def _watch(self, names: list[str], out: Any) -> None:
        import builtins

        reached: set[Line] = set()
        builtins.__reach__ = reached.add  # type: ignore[attr-defined]
        for file, code in self.marked.items():
            self._put(file, code)
        items = [self.items[n] for n in names]
        for item, following in zip(items, [*items[1:], None], strict=True):
            reached.clear()
            began = time.process_time()
            passed = not any(r.failed for r in runtestprotocol(item, log=False, nextitem=following))
            cost = time.process_time() - began
            pickle.dump((item.nodeid, passed, cost, frozenset(reached)), out)
            out.flush()

    def load_map(self, reach: dict[str, tuple[float, frozenset[Line]]], budget: float) -> None:
        """Take the map: for each line the tests that reach it, cheapest first."""
        self.budget = budget
        dearest: dict[
            str, float
        ] = {}  # tests of one file with one id share what is kept between them
        for name, (cost, _) in reach.items():
            dearest[_shared(name)] = max(cost, dearest.get(_shared(name), 0.0))
        for name in sorted(reach, key=lambda n: (stage(n), dearest[_shared(n)])):
            if name in self.items:
                self.cost[name] = dearest[_shared(name)]
                for line in reach[name][1]:
                    self.at.setdefault(line, []).append(name)

    def tests_for(self, mutant: mutants.Mutant) -> list[str]:
        """Choose the tests of a mutant: those at its lines, or in its file when outside functions."""
        lines = range(mutant.line, mutant.last_line + 1)
        names = {n for line in lines for n in self.at.get((mutant.file, line), ())}
        if not names and mutant.owner:
            names = set(self.at.get((mutant.file, self._first(mutant)), ()))
        if mutant.owner is None and self.every:
            return list(self.cost)
        if mutant.owner is None:
            names = self._using(mutant) or self._most_of(mutant.file)
        chosen, spent, last = [], 0.0, -1
        for name in sorted(names, key=lambda n: (stage(n), self.cost[n])):
            spent = spent if stage(name) == last else 0.0
            last = stage(name)
            if spent + self.cost[name] <= self.budget:
                chosen.append(name)
                spent += self.cost[name] + 0.003
        if mutant.owner is not None:
            return chosen
        return [*[n for n in chosen if APPLIES in n][:3], *chosen[:FEW]]

    def _using(self, mutant: mutants.Mutant) -> set[str]:
        """Give the tests that reach a line with the name that a line outside functions assigns."""
        tree = ast.parse((self.root / mutant.file).read_text())
        named = {
            target.id
            for node in tree.body
            if isinstance(node, ast.Assign | ast.AnnAssign)
            and node.lineno <= mutant.line <= (node.end_lineno or 0)
            for target in ast.walk(node)
            if isinstance(target, ast.Name) and isinstance(target.ctx, ast.Store)
        }
        lines = {n.lineno for n in ast.walk(tree) if isinstance(n, ast.Name) and n.id in named}
        found = {name for line in lines for name in self.at.get((mutant.file, line), ())}
        files = {n.split("::")[0] for n in self.cost} if "CHECKS" not in named else set()
        texts = {f: (self.tree / f).read_text() for f in files}
        return found | {
            n for n in self.cost for x in named if f".{x}" in texts.get(n.split("::")[0], "")
        }

    def _most_of(self, file: str) -> set[str]:
        """Give the tests that reach at least half of what the best reaches of a file, and those of ``applies``."""
        lines = Counter(n for (f, _), at in self.at.items() if f == file for n in at)
        most = max(lines.values(), default=0)
        return {n for n, count in lines.items() if 2 * count >= most or APPLIES in n}

    def _first(self, mutant: mutants.Mutant) -> int:
        lines = sorted(x for f, x in self.at if f == mutant.file and x <= mutant.line)
        return lines[-1] if lines else 0

    # --- one mutant

    def attempt(self, mutant: mutants.Mutant) -> dict[str, Any]:
        """Try a mutant; give what killed it (a test, "import" or "time"), or nothing."""
        names = self.tests_for(mutant)
        began = time.time()
        read, write = os.pipe()
        child = os.fork()
        if not child:
            os.close(read)
            _quiet()
            _stop_after(2 * sum(self.cost[n] for n in names) + SPARE)
            try:
                os.write(write, json.dumps(self._tried(mutant, names)).encode())
            except BaseException as error:
                os.write(write, json.dumps(f"broken: {error!r}").encode())
            finally:
                os._exit(0)
        os.close(write)
        with os.fdopen(read) as pipe:
            said = pipe.read()
        _, _, used = os.wait4(child, 0)
        by = json.loads(said) if said else "time"
        before, after = mutants.words(self.root, mutant)
        return {
            "key": mutant.key, "file": mutant.file, "line": mutant.line, "kind": mutant.kind,
            "in": mutant.owner[0] if mutant.owner else "module", "was": before[:160],
            "now": after[:160], "killed": by is not None, "by": by or "", "tests": len(names),
            "seconds": round(used.ru_utime + used.ru_stime, 3), "wall": round(time.time() - began, 2),
        }  # fmt: skip

    def _tried(self, mutant: mutants.Mutant, names: list[str]) -> str | None:
        code = mutants.compiled(self.root, mutant)
        if mutant.owner is None or not self._put(mutant.file, code, mutant.owner):
            return self._loaded_afresh(mutant, code, names)
        items = [self.items[n] for n in names]
        for item, following in zip(items, [*items[1:], None], strict=False):
            if any(r.failed for r in runtestprotocol(item, log=False, nextitem=following)):
                return item.nodeid
        return None

    def _put(self, file: str, code: CodeType, only: mutants.Owner | None = None) -> bool:
        """Put code into the functions of a file; tell whether ``only`` could be put in."""
        known = False
        for owner, codes in mutants.functions_in(code).items():
            functions = self.functions.get((file, owner), [])
            if only not in (None, owner) or not functions or len(codes) > 1:
                continue
            for function in functions:
                function.__code__ = codes[0]
            known = True
        return known

    def _loaded_afresh(
        self, mutant: mutants.Mutant, code: CodeType, names: list[str]
    ) -> str | None:
        if not names:
            return None
        module = "mountlimit." + mutant.file.removesuffix(".py").replace("/", ".")
        try:  # most of these cannot even be loaded, which is quickly seen
            exec(code, {"__name__": module, "__package__": module.rpartition(".")[0]})
        except Exception:
            return "import"
        target, tests = str(self.root / mutant.file), str(self.tree / "tests")
        for name, module in list(sys.modules.items()):
            place = getattr(module, "__file__", None) or ""
            ours = name.startswith("mountlimit.") and name.split(".")[1] not in KEPT
            if ours or (place.startswith(tests) and not place.startswith(tests + "/mutation")):
                del sys.modules[name]
                if name.count(".") == 1 and ours:
                    vars(sys.modules["mountlimit"]).pop(name.split(".")[1], None)
        usual = importlib.machinery.SourceFileLoader.get_code

        def get_code(self: Any, fullname: str) -> Any:
            return code if self.get_filename(fullname) == target else usual(self, fullname)

        importlib.machinery.SourceFileLoader.get_code = get_code  # type: ignore[method-assign]
        watch = _First()
        ended = pytest.main(
            ["-n", "0", "-x", "-q", "-s", "-p", "no:cacheprovider", *names], plugins=[watch]
        )
        if watch.failed or ended == 0 or ended == pytest.ExitCode.NO_TESTS_COLLECTED:
            return watch.failed
        return "import"


class _First:
    """Keeps the first test that failed."""

    failed: str | None = None

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        """Look at one report."""
        if report.failed and not self.failed:
            self.failed = report.nodeid


def _warm() -> None:
    """Look at one drive by plates and in an open frame member, so that no child loads libraries anew."""
    import conftest
    from mountlimit import evaluate, plate_route, resolve

    files = (
        plate_route.with_plates(conftest.drive_file()),
        conftest.drive_file(mount__route="sections", frame__member="channel"),
    )
    for file in files:
        evaluate.curves(resolve.resolve(file), [50.0])


def _shared(name: str) -> str:
    file, _, rest = name.partition("::")
    return file + rest[rest.index("[") :] if "[" in rest else name


def _quiet() -> None:
    nothing = os.open(os.devnull, os.O_WRONLY)
    os.dup2(nothing, 1)
    os.dup2(nothing, 2)


def _stop_after(seconds: float) -> None:
    used = int(resource.getrusage(resource.RUSAGE_SELF).ru_utime)
    resource.setrlimit(resource.RLIMIT_CPU, (used + int(seconds) + 1, used + int(seconds) + 3))
    signal.signal(signal.SIGXCPU, signal.SIG_DFL)
