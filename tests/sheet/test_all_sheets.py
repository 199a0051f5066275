"""The stored run over every drive (``all_sheets.py``): of the files as they are, nothing failed, none too heavy."""

from __future__ import annotations

import json

from sheet import all_sheets


def test_every_drive_has_been_looked_at():
    results = json.loads(all_sheets.RESULTS.read_text("utf-8"))
    assert all_sheets.faults(results) == []


def test_a_fault_is_told():
    """A page too heavy, a file changed since, a failed test: each is said."""
    results = json.loads(all_sheets.RESULTS.read_text("utf-8"))
    first, second, third = list(all_sheets.drives())[:3]
    results[first]["page_bytes"] = all_sheets.HEAVIEST
    results[second]["mark"] = "another"
    results[third]["sheet"]["failed"] = ["one"]
    assert [f.partition(":")[0] for f in all_sheets.faults(results)] == [first, second, third]
