"""The run over every drive (``changes_run.py``): complete, and a sample of it is what the file gives edited."""

from __future__ import annotations

import json
import tomllib
from pathlib import Path

import pytest
from edited import rewritten_by_hand

from mountlimit import limits

ROOT = Path(__file__).parents[2]
RESULTS = {
    p.stem: json.loads(p.read_text()) for p in Path(__file__).with_name("results").glob("*.json")
}
SAMPLE = ("orchard_barrow", "pulp_stirrer", "duck_weed_rake", "lock_gate")


def test_every_drive_was_run():
    """Examples and test drives alike."""
    drives = [*(ROOT / "examples").glob("*.toml"), *(ROOT / "tests" / "drives").glob("*.toml")]
    assert {p.stem for p in drives} == RESULTS.keys()


@pytest.mark.parametrize("name", sorted(RESULTS))
def test_it_reaches_or_says_what_stops_it(name):
    """A set that carries the wanted current, or the best one found with its check."""
    found = RESULTS[name]
    wanted, safe = found["wanted"]["value"], found["safe"]["value"]
    if found["cheapest"]:
        assert found["cheapest"]["safe"]["value"] >= wanted > safe
        assert found["reached"]
    elif safe < wanted:
        assert not found["reached"]
        assert safe < found["best"]["safe"]["value"] < wanted
        assert found["best"]["safe"]["check"]
    for single in found["singles"]:
        assert single["safe"]["value"] > safe


@pytest.mark.parametrize("name", SAMPLE)
def test_the_gain_is_that_of_the_edited_file(name):
    """The keys written into the drive file give the safe current of the record."""
    found = RESULTS[name]
    document = tomllib.loads((ROOT / found["file"]).read_text())
    outcome = found["cheapest"] or found["best"]
    again = limits.find(rewritten_by_hand(document, outcome["keys"], str(ROOT / found["file"])))
    assert again.first_safe.safe == pytest.approx(outcome["safe"]["value"], rel=1e-6)
    assert again.first_safe.check.name == outcome["safe"]["check"]
