"""Which pitch: every chain is a real edit of the drive, and the list is sorted for the question."""

from __future__ import annotations

import json
import math

import pytest
from click.testing import CliRunner

from conftest import drive_file
from mountlimit import cards, chains, limits
from mountlimit.cards import folder
from mountlimit.cli import main


@pytest.fixture(scope="module")
def choices():
    """The base drive, every chain."""
    return chains.compare(
        drive_file(chain__skew="0.02 deg", chain__offset="0.1 mm", motor__speed="2500 rpm")
    )


def test_every_chain_is_there(choices):
    """At least 25 designations, each once, with the ratio and about the same sprocket."""
    assert len(choices) == len(cards.chains()) >= 25
    assert len({c.chain.id for c in choices}) == len(choices)
    for c in choices:
        assert c.driven_teeth / c.driving_teeth == pytest.approx(54 / 11, rel=0.06)
        assert c.links % 2 == 0


def test_sorted_by_the_safe_current_of_the_drive(choices):
    """The best chain for the whole drive stands first."""
    values = [min(c.safe, 1e9) for c in choices]
    assert values == sorted(values, reverse=True)


@pytest.mark.parametrize("name", ["50", "35", "428"])
def test_an_entry_is_what_the_edited_file_gives(choices, name):
    """A chain's safe current is that of the file with chain and teeth changed."""
    entry = next(c for c in choices if c.chain.id == name)
    file = drive_file(
        chain__skew="0.02 deg", chain__offset="0.1 mm", motor__speed="2500 rpm", chain__type=name,
        chain__driving_teeth=entry.driving_teeth, chain__driven_teeth=entry.driven_teeth,
    )  # fmt: skip
    found = [x for x in limits.find(file).limits if x.counts]
    assert entry.safe == pytest.approx(min(x.safe for x in found), rel=0.01)


def test_a_heavier_chain_of_the_same_pitch_is_used_less(choices):
    """Chain 40 over chain 41: same pitch, twice the strength, twice the factor."""
    by_name = {c.chain.id: c for c in choices}
    assert by_name["40"].tensile_factor > 1.8 * by_name["41"].tensile_factor
    assert by_name["40"].dynamic_share < by_name["41"].dynamic_share


def test_command_and_record():
    """The table marks the file's own chain; the record holds every chain in SI."""
    path = str(folder("examples") / "orchard_barrow.toml")
    result = CliRunner().invoke(main, ["chains", path])
    assert result.exit_code == 0
    assert "> 40" in result.stdout
    found = json.loads(CliRunner().invoke(main, ["chains", path, "--json"]).stdout)
    assert len(found["chains"]) == len(cards.chains())
    own = next(c for c in found["chains"] if c["chain"] == "40")
    # 13 901 N minimum tensile strength over the pull (ASME B29.1)
    assert own["pull"]["value"] / 13901 == pytest.approx(own["tensile_share"], rel=1e-3)
    assert math.isfinite(own["drive_safe"]["value"])
