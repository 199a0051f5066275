"""Sheets for the tests of this folder, each worked out once a run."""

from __future__ import annotations

import json
import shutil
import subprocess
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import pytest

from conftest import drive_file
from mountlimit.cards import folder
from mountlimit.drivefile import read
from mountlimit.report.record import record as result_record
from mountlimit.sheet import as_data, content, gather, html, markdown
from mountlimit.sheet.blocks import Sheet
from mountlimit.sheet.content import Gathered

DATE = "2026-01-02"
SAMPLE = ("apple_press", "hay_elevator", "turf_roller")  # the hay elevator is in inches
WHOLE = "hay_elevator"
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
needs_chromium = pytest.mark.skipif(CHROMIUM is None, reason="chromium is not installed")


@cache
def gathered(name: str) -> Gathered:
    """Everything of an example's sheet; what to change on one of them only, for time."""
    return gather.gather(read(folder("examples") / f"{name}.toml"), quick=name != WHOLE)


@cache
def sheet(name: str) -> Sheet:
    """The sheet of an example."""
    found = gathered(name)
    return content.sheet(found, gather.head(found.assessment, DATE))


@cache
def page(name: str) -> str:
    """An example's sheet as HTML."""
    return html.render(sheet(name))


@cache
def text(name: str) -> str:
    """An example's sheet as Markdown."""
    return markdown.render(sheet(name))


@cache
def data(name: str) -> dict[str, Any]:
    """An example's sheet as data, as it would be read back."""
    made = as_data.record(sheet(name), result_record(gathered(name).assessment))
    return json.loads(json.dumps(made))


@cache
def plain() -> Gathered:
    """A short drive with a plain title."""
    return gather.gather(drive_file(title="plain"), quick=True)


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
