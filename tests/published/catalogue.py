"""The published cases, run: figure of the source, figure of the program, and how far off.

Every test of this folder is called with every set of its parameters; what it compared was noted by
``printed.py``.  Nothing here is typed in but the list of cases.
"""

from __future__ import annotations

import importlib
import inspect
import itertools
import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import printed
import published_cases as cases
from called import calls, code, function

from mountlimit.worked import FORMULAS

HERE = Path(__file__).parent
NOT_CASES = {"test_reached", "test_catalogue"}
FIRST_WORDS = {
    "Confirmed": None,  # the kind of the source
    "Computed": "computed",
    "Common practice": "common practice",
    "From memory": "from memory",
}
ID = re.compile(r"\b[A-Z0-9]{3}-\d\d\b")


@dataclass(frozen=True)
class Row:
    """One test: what it compares and what came out."""

    source: str  # file without "test_"
    name: str
    ids: tuple[str, ...]
    mark: str
    notes: tuple[printed.Note, ...]
    called: frozenset[str]

    @property
    def worst(self) -> printed.Note:
        """The figure farthest off, those beyond the rounding of the printed figure first."""
        return max(self.notes, key=lambda note: (not note.rounding, abs(note.off)))

    @property
    def functions(self) -> tuple[str, ...]:
        """What is checked: as listed with the case, else all that the test calls."""
        listed = [name for case in self.ids for name in cases.CASES[case][2] if name in self.called]
        return tuple(dict.fromkeys(listed)) or tuple(sorted(self.called))


def sources() -> list[str]:
    """Give the files of cases: standards, then handbooks, then the others, each by name."""
    stems = {path.stem for path in HERE.glob("test_*.py")} - NOT_CASES
    kinds = ("standard", "handbook", None)
    return sorted(
        (stem.removeprefix("test_") for stem in stems),
        key=lambda source: (kinds.index(cases.KINDS.get(source)), source),
    )


def reference(source: str) -> str:
    """Give the full reference: the first paragraph of the file's docstring."""
    doc = inspect.getdoc(importlib.import_module(f"test_{source}")) or ""
    return " ".join(doc.split("\n\n")[0].split())


def mark_of(source: str, doc: str) -> str:
    """Give the mark told by the first words of a test's docstring."""
    for words, mark in FIRST_WORDS.items():
        if doc.startswith(words):
            return mark or cases.KINDS[source]
    raise AssertionError(f"{source}: a test begins with none of {', '.join(FIRST_WORDS)}: {doc}")


def parameters(test: Callable[..., None]) -> Iterator[dict[str, Any]]:
    """Give every set of parameters of a test."""
    sets = []
    for mark in getattr(test, "pytestmark", []):
        names, values = mark.args
        if isinstance(names, str) and "," not in names:
            sets.append([{names: value} for value in values])
        else:
            words = names.replace(" ", "").split(",") if isinstance(names, str) else names
            sets.append([dict(zip(words, value, strict=True)) for value in values])
    for chosen in itertools.product(*sets):
        yield {name: value for one in chosen for name, value in one.items()}


def row(source: str, name: str, test: Callable[..., None]) -> Row:
    """Run one test and give its row."""
    doc = inspect.getdoc(test) or ""
    printed.NOTES.clear()
    for listed in (name for case in cases.CASES.values() for name in case[2]):
        if hasattr(found := function(listed), "cache_clear"):
            found.cache_clear()  # a kept answer would hide the call
    with calls(from_here=True) as codes:
        for given in parameters(test):
            test(**given)
    known = FORMULAS.keys() | {f for case in cases.CASES.values() for f in case[2]}
    return Row(
        source, name, tuple(x for x in ID.findall(doc) if x in cases.CASES), mark_of(source, doc),
        tuple(printed.NOTES), frozenset(f for f in known if code(f) in codes),
    )  # fmt: skip


@cache
def rows() -> tuple[Row, ...]:
    """Run every test of the folder but those about the folder itself."""
    found = []
    for source in sources():
        module = importlib.import_module(f"test_{source}")
        for name, test in vars(module).items():
            if name.startswith("test_"):
                found.append(row(source, name, test))
    printed.NOTES.clear()
    return tuple(found)
