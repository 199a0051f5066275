"""`mountlimit data`: every kind lists, words narrow, sources are said."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner

from mountlimit.cli import main
from mountlimit.commands.data import DATA_KINDS


def run(*arguments):
    result = CliRunner().invoke(main, ["data", *arguments])
    assert result.exit_code == 0, result.output
    return result.stdout


@pytest.mark.parametrize("kind", DATA_KINDS)
def test_every_kind_lists(kind):
    """A table with more than five rows."""
    assert len(run(kind).splitlines()) > 6


@pytest.mark.parametrize("kind", DATA_KINDS)
def test_sources_are_beside_the_numbers(kind):
    """Each number of a sheet carries its source in brackets."""
    lines = [line for line in run(kind, "--sources").splitlines() if line.startswith("  ")]
    assert any("(" in line for line in lines)


def test_words_narrow_and_nothing_found_is_said():
    """All words must match; no match is one line."""
    assert "al6061_t6" in run("materials", "6061")
    assert "s235" not in run("materials", "aluminium")
    assert run("chains", "unobtainium").strip() == "No chains match unobtainium."
    assert "in" in run("bolts", "M8", "--inch")


@pytest.mark.parametrize("kind", DATA_KINDS)
def test_record_holds_what_the_sheet_says(kind):
    """As many cards as with words; every number carries unit and source."""
    found = json.loads(run(kind, "--json"))
    listed = [line for line in run(kind, "--sources").splitlines() if line and line[0] != " "]
    assert {card["id"] for card in found} <= set(listed)
    numbers = [x for card in found for x in card.values() if isinstance(x, dict) and "unit" in x]
    assert len(numbers) >= len(found)
    assert all(x["source"] for x in numbers)


def test_record_is_in_si():
    (chain,) = (c for c in json.loads(run("chains", "ANSI", "--json")) if c["id"] == "40")
    assert chain["pitch"]["value"] == pytest.approx(0.0127, rel=1e-12)
    assert chain["pitch"]["unit"] == "m"
    assert chain["minimum_tensile_strength"]["unit"] == "N"
    assert json.loads(run("chains", "unobtainium", "--json")) == []
