"""The README's commands and its printed output are those of the program."""

from __future__ import annotations

import re
from pathlib import Path

from click.testing import CliRunner

from mountlimit.cli import main

ROOT = Path(__file__).parents[1]
TEXT = (ROOT / "README.md").read_text(encoding="utf-8")


def test_two_commands_of_one_line():
    """One command runs the main job, one passes the tests, each from a fresh environment."""
    commands = re.findall(r"^    (python3 -m venv .+)$", TEXT, re.M)
    assert len(commands) == 2
    assert "mountlimit check examples/" in commands[0]
    assert "pytest" in commands[1]


def test_printed_output_is_real(monkeypatch):
    """The block below the commands is what the first command prints, to the letter."""
    monkeypatch.chdir(ROOT)
    example = re.search(r"mountlimit check (examples/\S+)", TEXT)[1]
    result = CliRunner().invoke(main, ["check", example])
    assert result.exit_code == 0, "the first command of the README ends with exit status 0"
    block = re.search(r"```\n(.*?)```", TEXT, re.S)[1]
    lines = [line.rstrip() for line in result.stdout.splitlines()]
    assert [line.rstrip() for line in block.splitlines()] == lines


def test_every_command_is_named():
    """The table of commands is complete."""
    for name in main.commands:
        assert f"`mountlimit {name}" in TEXT, name
