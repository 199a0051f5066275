"""matplotlib and the figures load only when figures are asked for; files are written whole."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import pytest

import mountlimit
from mountlimit import writing
from mountlimit.errors import MountlimitError

SOURCE = Path(mountlimit.__file__).parent


def test_nothing_else_imports_matplotlib():
    """Only files of the figures name matplotlib; none of them takes pyplot's global state."""
    named = [
        p
        for p in SOURCE.rglob("*.py")
        if re.search(r"^\s*(import|from) matplotlib", p.read_text(), re.M)
    ]
    assert named
    assert {p.parent.name for p in named} == {"figures"}
    assert not [p for p in named if "pyplot" in p.read_text()]


def test_answering_does_not_load_the_figures():
    """A fresh interpreter with every command loaded, and the whole job's modules, has no figures."""
    code = (
        "import sys\nfrom mountlimit import assess, chains, cli, thickness\n"
        "cli.main(['check', '--help'], standalone_mode=False)\n"
        "print([m for m in sys.modules if m.startswith('mountlimit.figures') or m == 'matplotlib'])\n"
    )
    done = subprocess.run([sys.executable, "-c", code], check=True, capture_output=True, text=True)
    assert done.stdout.splitlines()[-1] == "[]"


def test_bytes_are_written_whole(tmp_path):
    """Bytes go to the file as they are; a missing folder is one clear line."""
    writing.write_whole(tmp_path / "a.png", b"\x89PNG\r\n\x00")
    assert (tmp_path / "a.png").read_bytes() == b"\x89PNG\r\n\x00"
    with pytest.raises(MountlimitError, match="cannot be written"):
        writing.write_whole(tmp_path / "no" / "a.png", b"")
