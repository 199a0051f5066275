"""Writes the output of the README's first command into the README: ``python tests/update_readme.py``."""

from __future__ import annotations

import re
from pathlib import Path

from click.testing import CliRunner

from mountlimit.cli import main

README = Path(__file__).parents[1] / "README.md"

if __name__ == "__main__":
    text = README.read_text(encoding="utf-8")
    example = re.search(r"mountlimit check (examples/\S+)", text)[1]
    printed = CliRunner().invoke(main, ["check", example]).stdout
    lines = "\n".join(line.rstrip() for line in printed.splitlines())
    README.write_text(
        re.sub(r"```\n.*?```", lambda _: f"```\n{lines}\n```", text, count=1, flags=re.S),
        encoding="utf-8",
    )
