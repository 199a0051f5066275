"""Which pitch: every chain is a real edit of the drive, and the list is sorted for the question."""

from __future__ import annotations

import json
import math
from pathlib import Path

import pytest
from click.testing import CliRunner

from conftest import changed, drive_file, told, toml_text
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


def test_command_and_record(tmp_path):
    """The table marks the file's own chain; the record holds every chain in SI."""
    path = str(tmp_path / "drive.toml")
    Path(path).write_text(toml_text(changed(**told(drive_file()))))
    result = CliRunner().invoke(main, ["chains", path])
    assert result.exit_code == 0
    assert "> 40" in result.stdout
    found = json.loads(CliRunner().invoke(main, ["chains", path, "--json"]).stdout)
    assert len(found["chains"]) == len(cards.chains())
    own = next(c for c in found["chains"] if c["chain"] == "40")
    # 13 901 N minimum tensile strength over the pull (ASME B29.1)
    assert own["pull"]["value"] / 13901 == pytest.approx(own["tensile_share"], rel=1e-3)
    assert math.isfinite(own["drive_safe"]["value"])


SECOND = {
    "second_chain__type": "40", "second_chain__driving_teeth": 13, "second_chain__driven_teeth": 45,
    "second_chain__centre_distance": "420 mm", "jackshaft__diameter": "25 mm",
    "jackshaft__bearing_span": "80 mm", "jackshaft__first_at": "-24 mm",
    "jackshaft__second_at": "106 mm", "jackshaft__bearing": "6205",
}  # fmt: skip


def same_as_by_hand(entry, file, own):
    """Compare an entry's bands with all limits of a file written by hand."""
    found = limits.find(file)
    first, giving = found.first_safe, found.first_gives
    assert entry.whole.safe == pytest.approx(first.safe, rel=1e-6)
    assert entry.whole.safe_check == first.check.name
    assert entry.whole.gives_check == giving.check.name
    for name in ("gives", "gives_low", "gives_high"):
        assert getattr(entry.whole, name) == pytest.approx(getattr(giving, name), rel=1e-6)
    alone = [x for x in found.limits if x.check.name in own and x.current_kind == "peak setting"]
    assert entry.own.safe == pytest.approx(min(x.safe for x in alone), rel=1e-6)
    gives = min((x for x in alone if x.gives is not None), key=lambda x: x.gives)
    for name in ("gives", "gives_low", "gives_high"):
        assert getattr(entry.own, name) == pytest.approx(getattr(gives, name), rel=1e-6)


@pytest.mark.parametrize("name", ["50", "35", "25"])
def test_a_band_is_that_of_a_file_written_by_hand(choices, name):
    """Bands of drive and chain are those of ``limits.find`` on the file with that chain and teeth."""
    given = {"chain__skew": "0.02 deg", "chain__offset": "0.1 mm", "motor__speed": "2500 rpm"}
    entry = next(c for c in choices if c.chain.id == name)
    entry = chains.banded(drive_file(**given), [entry])[0]
    by_hand = drive_file(
        **given, chain__type=name, chain__driving_teeth=entry.driving_teeth,
        chain__driven_teeth=entry.driven_teeth,
    )  # fmt: skip
    same_as_by_hand(entry, by_hand, ("chain_static", "chain_fatigue"))


def test_the_second_chain_is_compared_as_written_by_hand():
    """With ``second`` the edit is of the second chain, and the first one stays."""
    file = drive_file(**SECOND)
    entry = next(c for c in chains.compare(file, second=True) if c.chain.id == "35")
    entry = chains.banded(file, [entry], second=True)[0]
    told = SECOND | {
        "second_chain__type": "35", "second_chain__driving_teeth": entry.driving_teeth,
        "second_chain__driven_teeth": entry.driven_teeth,
    }  # fmt: skip
    same_as_by_hand(entry, drive_file(**told), ("second_chain_static", "second_chain_fatigue"))


def test_without_a_second_chain_second_is_a_mistake():
    """One line, exit status 2."""
    path = str(folder("examples") / "orchard_barrow.toml")
    result = CliRunner().invoke(main, ["chains", path, "--second"])
    assert result.exit_code == 2
    assert "second_chain.type is missing" in " ".join(result.output.split()).replace(": is", " is")


def test_what_comes_with_a_chain(choices):
    """The file's own chain changes nothing; a chain of the same pitch and roller keeps the sprockets."""
    by_name = {c.chain.id: c.changes for c in choices}
    own = by_name["40"]
    assert (own.driving_radius, own.driven_radius, own.tooth_width_more) == (0, 0, 0)
    assert not own.new_sprockets
    assert by_name["428"].new_sprockets  # rollers of 8.51 mm on teeth for 7.95 mm
    assert not by_name["40H"].new_sprockets
    # ASME B29.1: teeth for chain 40 are 0.284 in wide
    assert own.tooth_width == pytest.approx(0.284 * 0.0254, abs=1e-4)
