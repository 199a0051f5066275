"""The README's table of costs is that of the last measured run, and the run was a whole one."""

from __future__ import annotations

import json

import update_benchmark_table as table

RECORD = json.loads(table.RESULTS.read_text(encoding="utf-8"))


def test_table_is_that_of_the_results() -> None:
    text = table.README.read_text(encoding="utf-8")
    assert table.START in text
    assert table.updated(text) == text


def test_costs_stay_bearable() -> None:
    """Help at once; a search or a page for the price of some checks; near-linear growth."""
    whole = RECORD["cpu seconds"]
    assert whole["help"] < 10 * whole["interpreter"]
    assert whole["thickness"] < 10 * whole["check"]
    assert whole["sure"] < 5 * whole["check"]
    assert whole["report"] < 15 * whole["check"]
    assert RECORD["solid"]["seconds"]["solid"] > 20 * RECORD["solid"]["seconds"]["plates"]
    for name, most in (("samples", 1.2), ("triangles", 1.6), ("plates", 1.3)):
        growth = RECORD["growth"][name]
        assert len(growth["seconds"]) >= 3
        assert growth["exponent"] < most
