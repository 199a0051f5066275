"""The mutation run's result stands, and its script sees a fault and leaves a harmless edit alive."""

from __future__ import annotations

import ast
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE))

import mutants  # noqa: E402
import sample  # noqa: E402

ROOT = HERE.parents[1] / "src" / "mountlimit"
RESULTS = json.loads((HERE / "results.json").read_text())


@pytest.mark.parametrize("folder", sample.FOLDERS)
def test_nine_of_ten_are_killed(folder):
    found = RESULTS[folder]["all tests"]
    assert found["mutants"] >= 300
    assert found["killed"] >= 0.9 * found["mutants"]
    alive = [s for s in RESULTS["survivors"] if s["file"].startswith(folder)]
    assert found["killed"] + len(alive) == found["mutants"]


def test_every_survivor_has_a_reason():
    assert [s["key"] for s in RESULTS["survivors"] if len(s["reason"]) < 10] == []


def test_the_sample_takes_every_file():
    """Mixed evenly: each file's share within one of even, and where the sample is cut within one more."""
    for folder in sample.FOLDERS:
        drawn = sample.in_order(ROOT, folder, RESULTS["seed"])
        wanted = RESULTS[folder]["all tests"]["mutants"]
        for file in sample.of_folder(ROOT, folder):
            expected = len(file) * wanted / len(drawn)
            count = sum(m.file == file[0].file for m in drawn[:wanted]) if file else 0
            assert abs(count - expected) < 2


def test_edits_of_a_small_module():
    text = (
        '"""Text 3."""\nfrom math import sin\n@held(7)\ndef f(a: "x - 1", b=2):\n    """Text - 1."""\n'
        '    if a < b:\n        return -a\n    return max(sin(a), "no" + b) * 2.0\n'
    )
    count = len(mutants.edits(ast.parse(text)))
    changed = []
    for i in range(count):
        tree = ast.parse(text)
        mutants.edits(tree)[i].apply()
        changed.append(ast.unparse(ast.fix_missing_locations(tree)))
    assert len(set(changed)) == count
    assert all('"""Text - 1."""' in c and "@held(7)" in c and "x - 1" in c for c in changed)
    for words in ("a <= b", "a >= b", "not a < b", "b=3", "return a", "min(sin(a)", "cos(a)",
                  "/ 2.0", "* 2.3", "return 2.0", "pass"):  # fmt: skip
        assert any(words in c for c in changed), words


def key_of(file: str, before: str, after: str) -> str:
    """Find a mutant by what it changes."""
    return next(
        m.key for m in mutants.of_file(ROOT, file) if mutants.words(ROOT, m) == (before, after)
    )


def test_a_fault_is_seen_and_a_harmless_edit_lives(tmp_path):
    """Two joints of a strut taken the wrong way; and a gap of exactly 1e-9 m between two bolts."""
    gap = "(float(b[axis]) - float(own)) * way"
    wrong = key_of("formulas/struts.py", "2 / joint", "2 * joint")
    harmless = key_of("checks/bolt_bearing.py", f"{gap} > 1e-09", f"{gap} >= 1e-09")
    done = subprocess.run(
        [sys.executable, HERE / "mutation_run.py", "one", wrong, harmless, "--work", tmp_path,
         "--tests", "tests/formulas/test_outside_numbers.py",
         "tests/checks/test_bolt_bearing.py::test_the_nearest_of_three_bolts_in_line_is_the_next"],
        capture_output=True, text=True, check=True, cwd=ROOT.parents[1],
        env={**os.environ, "PYTHONPATH": str(ROOT.parent)},
    )  # fmt: skip
    first, second = json.loads(done.stdout[done.stdout.index("[\n {") :])
    assert first["by"].endswith("test_a_strut_between_two_joints_is_three_springs")
    assert second["tests"] > 0
    assert not second["killed"]


def test_interval_of_a_published_share():
    """Newcombe, Statistics in Medicine 17 (1998), method 3: 81 of 263 is 0.2553 to 0.3662 (from memory)."""
    assert sample.interval(81, 263) == pytest.approx((0.2553, 0.3662), abs=5e-5)
