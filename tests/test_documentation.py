"""Commands written in README.md and DEVELOPERS.md are commands: they run, or are taken with all their words.

The docstring examples of ``src`` run as tests of their own (``--doctest-modules``), the README's first
command and what it prints in ``test_readme.py``, its second and the linters in ``.ci/run``.
"""

from __future__ import annotations

import re
import shlex
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from click.testing import CliRunner

from mountlimit.cli import main

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
CI = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
EXAMPLE, OTHER = (
    str(ROOT / "examples" / f"{name}.toml") for name in ("orchard_barrow", "apple_press")
)
STANDS_FOR = {
    "FILE": [EXAMPLE],
    "A": [EXAMPLE],
    "B": [OTHER],
    "CHECK": ["key"],
    "KIND": ["chains"],
    "WORDS": ["40"],
}
# More than a second each; their own tests run them.
LONG = {"changes", "sure", "report", "thickness", "chains", "check", "compare", "pull-test"}
NO_JSON = ("new ", "report ")  # a file to fill in; a page, which has a .json of its own
ROWS = re.findall(r"^\| `mountlimit ([^`]+)` \|", README, re.M)
INLINE = sorted(set(re.findall(r"`python (tests/[^`]+)`", DEVELOPERS)))
LIST = [
    part.split("#")[0].strip()
    for line in re.findall(r"^    (\S.*)$", DEVELOPERS.split("## How data flows")[0], re.M)
    for part in line.split("&&")
]


def words_of(row: str) -> list[str]:
    """Give the words of a command with files and names in the places of the capitals."""
    found = []
    for word in shlex.split(row):
        found += STANDS_FOR.get(word, [word])
    return found


@pytest.mark.parametrize("row", ROWS)
def test_command_of_the_table(row: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    name, *words = words_of(row)
    if name in LONG:
        main.commands[name].make_context(name, words)  # refuses a wrong option, file or number
        return
    done = CliRunner().invoke(main, [name, *words])
    assert done.exit_code in (0, 1), done.output


@pytest.mark.parametrize(
    "option", ["--jam", "--second", "--loads", "--sources", "--read", "--json"]
)
def test_option_named_in_the_readme(option: str) -> None:
    """Each is an option of the command whose row names it; `--json` of all that give an answer."""
    answers = [row.split()[0] for row in ROWS if not row.startswith(NO_JSON)]
    named = answers if option == "--json" else [
        re.match(r"\| `mountlimit (\S+)", line)[1] for line in README.splitlines()
        if line.startswith("| `mountlimit") and f"`{option}" in line
    ]  # fmt: skip
    assert named
    for name in named:
        assert option in {o for p in main.commands[name].params for o in p.opts}, name


def test_list_of_commands() -> None:
    """Every line of the list is done by a test or by `.ci/run`, from extras that bring its program."""
    brought = " ".join(
        word
        for extra in ("test", "dev")
        for word in PROJECT["project"]["optional-dependencies"][extra]
    )
    elsewhere = CI.replace('"', "").replace("$work/env/", ".venv/")
    for command in LIST:
        program = Path(command.split()[0]).name
        if program in ("ruff", "mypy"):
            assert program in brought
            assert command in elsewhere, command
        elif program == "lint-imports":
            assert "import-linter" in brought
        elif program == "pip":
            assert command.removeprefix(".venv/bin/pip install -q ") == "-e '.[test,dev]'"
        else:
            assert program in ("python", "python3", "run", "versions", "packages"), command
    assert (ROOT / ".ci" / "run").stat().st_mode & 0o100


def test_benchmarks_are_found_by_the_command_given() -> None:
    command = next(c for c in LIST if "benchmarks" in c)
    done = subprocess.run(
        [sys.executable, *shlex.split(command)[1:], "--collect-only", "-p", "no:cacheprovider"],
        cwd=ROOT, capture_output=True, text=True,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout
    assert "test_speed.py" in done.stdout


@pytest.mark.parametrize("command", INLINE)
def test_script_named_in_the_text(command: str) -> None:
    path, *words = shlex.split(command)
    script = (ROOT / path).read_text(encoding="utf-8")
    for word in words:
        if word.startswith("--"):
            assert f'"{word}"' in script, word
