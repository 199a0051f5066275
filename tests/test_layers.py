"""Floors of the package, light start-up, and the folder finder."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from mountlimit import cards

ROOT = Path(__file__).parents[1]
HEAVY = ("numpy", "scipy", "matplotlib", "sectionproperties", "pint", "rich", "shapely", "ezdxf")


def loaded(*command: str) -> set[str]:
    """Names of the heavy packages a fresh interpreter loads for a command."""
    code = (
        "import sys, atexit\n"
        "from mountlimit.cli import main\n"
        f"atexit.register(lambda: sys.stderr.write('LOADED ' + ' '.join(m for m in {HEAVY} if m in sys.modules)))\n"
        f"main({list(command)}, standalone_mode=False)\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert "LOADED" in done.stderr, done.stderr
    return set(done.stderr.rpartition("LOADED")[2].split())


def test_import_floors():
    """The contracts in pyproject.toml hold: floors, formulas know numbers only, no rings."""
    done = subprocess.run(
        [sys.executable, "-c", "from importlinter.cli import lint_imports_command; lint_imports_command()"],
        cwd=ROOT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout[-2000:]
    assert "0 broken" in done.stdout


def test_help_loads_nothing_heavier_than_click():
    """`mountlimit --help` and the help of a command stay light."""
    assert loaded("--help") == set()
    assert loaded("check", "--help") == set()


def test_reading_a_broken_file_stays_light(tmp_path):
    """A file with mistakes is refused before the section solver loads."""
    file = tmp_path / "x.toml"
    file.write_text('title = "x"\n')
    assert not loaded("check", str(file)) & {"sectionproperties", "matplotlib"}
    example = str(cards.folder("examples") / "orchard_barrow.toml")
    assert {"sectionproperties", "matplotlib"} <= loaded("check", example)  # the probe can see them


def test_folders_are_found():
    """Materials and examples are found from the checkout, whatever the working directory."""
    assert (cards.folder("materials") / "al6061_t6.toml").is_file()
    assert list(cards.folder("examples").glob("*.toml"))
    with pytest.raises(
        cards.MountlimitError if hasattr(cards, "MountlimitError") else Exception, match="missing"
    ):
        cards.folder("nothing")
