"""Sheets for the tests of this folder, each worked out once a run and kept where all workers find it.

The ordinary run looks at two drives; ``all_sheets.py`` runs the same tests on every drive, by the
variable SHEETS, and keeps what came of it in ``all_sheets.json``.
"""

from __future__ import annotations

import contextlib
import json
import os
import pickle
import shutil
import subprocess
from collections.abc import Iterator
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest

from mountlimit.cards import folder
from mountlimit.drivefile import read
from mountlimit.report.record import record as result_record
from mountlimit.sheet import as_data, content, gather, html, markdown
from mountlimit.sheet.blocks import Sheet

try:
    import fcntl
except ImportError:  # no such lock here: at worst two workers work the same sheet out
    fcntl = None  # type: ignore[assignment]

DATE, EPOCH = "2026-01-02", "1767312000"
ORDINARY = ("hay_elevator", "turf_roller")  # in inches; an own outline
SAMPLE = tuple(os.environ["SHEETS"].split()) if os.environ.get("SHEETS") else ORDINARY
WHOLE = bool(os.environ.get("SHEETS"))  # with what to change, which takes longest
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
needs_chromium = pytest.mark.skipif(CHROMIUM is None, reason="chromium is not installed")


def drive_path(name: str) -> Path:
    """The drive file of that name: an example, or a story of ``tests/drives``."""
    found = folder("examples") / f"{name}.toml"
    return found if found.is_file() else Path(__file__).parents[1] / "drives" / f"{name}.toml"


@contextlib.contextmanager
def alone(name: str) -> Iterator[Path]:
    """Hold the shared folder's place of that name, so that no other worker does the same work."""
    place = Path(os.environ["MOUNTLIMIT_SHARED"]) / name
    with open(place.with_suffix(".lock"), "w") as lock:
        if fcntl is not None:
            fcntl.flock(lock, fcntl.LOCK_EX)
        yield place


@cache
def kept(name: str) -> tuple[Sheet, dict[str, Any], str]:
    """A drive's sheet, the result it was made from, and its page."""
    with alone(f"sheet-{name}.pickle") as place:
        if not place.is_file():
            found = gather.gather(read(drive_path(name)), quick=not WHOLE)
            made = content.sheet(found, gather.head(found.assessment, DATE))
            whole = made, result_record(found.assessment), html.render(made)
            part = place.with_suffix(".part")
            part.write_bytes(pickle.dumps(whole))
            part.replace(place)
        return pickle.loads(place.read_bytes())


def sheet(name: str) -> Sheet:
    """The sheet of a drive."""
    return kept(name)[0]


def page(name: str) -> str:
    """A drive's sheet as HTML."""
    return kept(name)[2]


@cache
def text(name: str) -> str:
    """A drive's sheet as Markdown."""
    return markdown.render(sheet(name))


@cache
def data(name: str) -> dict[str, Any]:
    """A drive's sheet as data, as it would be read back."""
    return json.loads(json.dumps(as_data.record(sheet(name), kept(name)[1])))


def dumped(path: Path, *options: str) -> str:
    """The page's tree after chromium has loaded it and run whatever would run."""
    done = subprocess.run(
        [str(CHROMIUM), "--headless", "--no-sandbox", "--disable-gpu", *options, "--dump-dom", path.as_uri()],
        capture_output=True, text=True, timeout=100, check=True,
    )  # fmt: skip
    return done.stdout


class Visible(HTMLParser):
    """Collects what a reader sees: text outside of style, script and head."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []
        self._hidden = 0

    def handle_starttag(self, tag: str, attrs: Any) -> None:
        self._hidden += tag in ("style", "script", "title", "svg")
        self.found += [value for name, value in attrs if tag == "svg" and name == "aria-label"]

    def handle_endtag(self, tag: str) -> None:
        self._hidden -= tag in ("style", "script", "title", "svg")

    def handle_data(self, data: str) -> None:
        if not self._hidden:
            self.found.append(data)


def visible(markup: str) -> str:
    """The visible text of a page; of pictures the scales stand in them alone, the rest in their words."""
    reader = Visible()
    reader.feed(markup)
    return " ".join(reader.found)
