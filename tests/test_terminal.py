"""What a terminal shows: nothing cut, nothing wider than it, style never the only sign."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from functools import cache

import pytest

from mountlimit.cards import folder

pty = pytest.importorskip("pty")  # not on Windows
FILE = str(folder("examples") / "hay_elevator.toml")
COMMANDS = {
    "check": ("check", FILE),
    "why": ("why", FILE, "chain_static"),
    "materials": ("data", "materials"),
    "chains listed": ("data", "chains"),
    "sure": ("sure", FILE),
}
STYLE = re.compile(r"\x1b\[[0-9;]*m")


@cache
def shown(command: str, columns: int, *settings: tuple[str, str]) -> str:
    """What stands on a terminal of that many columns."""
    import fcntl
    import struct
    import termios

    near, far = pty.openpty()
    fcntl.ioctl(far, termios.TIOCSWINSZ, struct.pack("HHHH", 50, columns, 0, 0))
    variables = {
        k: v for k, v in os.environ.items() if k not in ("NO_COLOR", "COLUMNS", "FORCE_COLOR")
    }
    variables |= {"TERM": "xterm-256color", "COLUMNS": str(columns)} | dict(settings)
    run = subprocess.Popen(
        [sys.executable, "-m", "mountlimit", *COMMANDS[command]], stdout=far, stderr=subprocess.DEVNULL, env=variables
    )  # fmt: skip
    os.close(far)
    found = b""
    while True:
        try:
            part = os.read(near, 65536)
        except OSError:  # the other end is closed
            break
        if not part:
            break
        found += part
    os.close(near)
    assert run.wait() in (0, 1)
    return found.decode().replace("\r\n", "\n")


def words(text: str) -> set[str]:
    """The words of a text, without the marks a list puts after them."""
    return {w.rstrip(":;") for w in STYLE.sub("", text).split()}


@pytest.mark.parametrize("command", COMMANDS)
@pytest.mark.parametrize("columns", [80, 60])
def test_nothing_is_cut_or_too_wide(command, columns):
    text = STYLE.sub("", shown(command, columns))
    assert "\u2026" not in text
    assert max(map(len, text.splitlines())) <= columns
    long = {w for w in words(shown(command, 250)) if len(w) > columns}
    assert not long
    wide = words(shown(command, 250))
    assert words(text) <= wide
    # A table that became a list needs no head over its first column.
    assert wide - words(text) <= {"what,", "limits", "name", "input", "part"}


def test_style_is_only_decoration():
    """Without style the very same text stands there; style is only on a terminal that wants it."""
    styled = shown("check", 80)
    assert STYLE.search(styled)
    for setting in (("NO_COLOR", "1"), ("TERM", "dumb")):
        plain = shown("check", 80, setting)
        assert "\x1b" not in plain
        assert plain == STYLE.sub("", styled)


def test_a_pipe_gets_plain_text():
    done = subprocess.run(
        [sys.executable, "-m", "mountlimit", *COMMANDS["check"]],
        capture_output=True,
        text=True,
        check=False,
    )
    assert "\x1b" not in done.stdout
    assert max(map(len, done.stdout.splitlines())) <= 100
    assert words(done.stdout) == words(shown("check", 250))
