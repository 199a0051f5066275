"""Ctrl-C in a long command: one line, status 130, the old file whole; progress only on a terminal."""

from __future__ import annotations

import subprocess
import sys

import pytest

from mountlimit.cards import folder

EXAMPLE = str(folder("examples") / "orchard_barrow.toml")
OTHER = str(folder("examples") / "hay_elevator.toml")
LONG = [
    ["sure", EXAMPLE], ["report", EXAMPLE, "-o", "sheet.html"], ["changes", EXAMPLE], ["steps", EXAMPLE],
    ["pull-test", EXAMPLE], ["explain-failure", EXAMPLE, "key", "--looks", "sheared"],
    ["chains", EXAMPLE], ["thickness", EXAMPLE], ["compare", EXAMPLE, OTHER],
]  # fmt: skip

# The work itself presses Ctrl-C at its first step, wherever that is.
CODE = """
import os, signal, sys
from mountlimit import progress
from mountlimit.cli import main
signal.signal(signal.SIGINT, signal.default_int_handler)  # a shell may have set it aside
progress._LISTENER.set(lambda *_: os.kill(os.getpid(), signal.SIGINT))
main(sys.argv[1:])
"""


@pytest.mark.parametrize("command", LONG, ids=lambda c: c[0])
def test_stopped(command, tmp_path):
    """No traceback, no new file, no half one."""
    old = tmp_path / "sheet.html"
    old.write_text("old")
    done = subprocess.run(
        [sys.executable, "-c", CODE, *command], cwd=tmp_path, capture_output=True, text=True, check=False
    )  # fmt: skip
    assert done.returncode == 130, done.stderr
    assert done.stderr.strip() == "Stopped. No file was changed."
    assert old.read_text() == "old"
    assert [p.name for p in tmp_path.iterdir()] == ["sheet.html"]


def test_no_progress_in_a_pipe():
    """Where the error stream is no terminal nothing is drawn on it."""
    done = subprocess.run(
        [sys.executable, "-m", "mountlimit", "sure", EXAMPLE, "--samples", "1000"],
        capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0
    assert done.stderr == ""
