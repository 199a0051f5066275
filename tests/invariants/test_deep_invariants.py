"""The deep run stands beside: every property was looked at with many drives, and none broke."""

from __future__ import annotations

import json

import invariants_run


def test_every_property_was_run_deep():
    known = json.loads(invariants_run.RESULTS.read_text())
    names = set()
    for path in invariants_run.HERE.glob("test_*.py"):
        lines = path.read_text().splitlines()
        names |= {
            lines[i + 1].split("def ")[1].split("(")[0]
            for i, line in enumerate(lines)
            if line.startswith("@depth") and lines[i + 1].startswith("def ")
        }
    assert names <= set(known["properties"])
    for name, row in known["properties"].items():
        assert row["chunks"] >= 1, name
        assert row["broke"] == [], name
    assert sum(row["cases"] for row in known["looked"].values()) > 1000
