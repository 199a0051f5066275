"""The search: the set it finds carries the current when written into the file, and needs all its parts."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner
from edited import rewritten_by_hand

from conftest import changed, drive_file, toml_text
from mountlimit import limits, what_to_change
from mountlimit.changes import made
from mountlimit.cli import main

DRIVE = {
    "mount__route": "sections",
    "frame__member": "rigid",
    "fixings__tightening_torque": "15 N*m",
}


@pytest.fixture(scope="module")
def answer():
    """A drive by beams, for speed, that needs more than one change."""
    return what_to_change.what_to_change(drive_file(**DRIVE), 150.0)


def test_the_set_carries_it_when_written_into_the_file(answer):
    """Safe current and check of every outcome are those of the file edited by hand."""
    assert answer.safe < 150
    assert answer.cheapest is not None
    for outcome in {
        id(o): o for o in (answer.cheapest, answer.fewest, *answer.singles[:2])
    }.values():
        by_hand = limits.find(rewritten_by_hand(changed(**DRIVE), outcome.keys, "test.toml"))
        assert by_hand.first_safe.safe == pytest.approx(outcome.safe, rel=1e-9)
        assert by_hand.first_safe.check.name == outcome.found.first_safe.check.name
    assert answer.cheapest.safe >= 150
    assert answer.fewest.safe >= 150
    assert len(answer.fewest.edits) <= len(answer.cheapest.edits)
    assert answer.cheapest.cost <= answer.fewest.cost


def test_no_change_of_the_set_can_be_spared(answer):
    """Leave any one out and the wanted current is no longer carried."""
    edits = answer.cheapest.edits
    for edit in edits if len(edits) > 1 else ():
        rest = tuple(e for e in edits if e is not edit)
        found = limits.find(made(drive_file(**DRIVE), rest)[0])
        assert found.first_safe.safe < 150 * 1.01, edit.words


def test_singles_are_ranked_and_gain(answer):
    """Most current first, each above the drive as it stands."""
    safes = [o.safe for o in answer.singles]
    assert safes == sorted(safes, reverse=True)
    assert all(s > answer.safe for s in safes)


def test_out_of_reach_is_said_with_numbers(monkeypatch):
    """No set carries 3000 A: the best one, its current, and the check that stops it.

    A short search, for time: two single changes shown, two pairs run, sets of two.
    """
    for name, value in (("SHOWN", 2), ("PAIRS", 2), ("LARGEST", 2), ("ROUNDS", 1), ("AFRESH", 0)):
        monkeypatch.setattr(what_to_change, name, value)
    answer = what_to_change.what_to_change(drive_file(**DRIVE, current__set="400 A"), 3000.0)
    assert answer.cheapest is None
    assert answer.fewest is None
    assert answer.best is not None
    assert answer.safe < answer.best.safe < 3000
    assert answer.best.found.first_safe.check.name


def test_enough_already():
    """A drive that carries it needs no change, and says so."""
    file = drive_file(**DRIVE)
    answer = what_to_change.what_to_change(file, 5.0)
    assert answer.safe > 5
    assert answer.cheapest is None
    assert not answer.singles


def test_the_command(tmp_path, monkeypatch, answer):
    """Text and record say the same; exit status 0; wrong amps are one line and status 2."""
    path = tmp_path / "drive.toml"
    path.write_text(toml_text(changed(**DRIVE)))
    monkeypatch.setattr(what_to_change, "what_to_change", lambda *_: answer)
    shown = CliRunner().invoke(main, ["changes", str(path), "--for", "150A"])
    assert shown.exit_code == 0
    text = " ".join(shown.stdout.split())
    assert "carr" in shown.stdout.splitlines()[0]
    assert "set the limit to" in text
    assert "Isolate the battery" in text
    assert max(len(line) for line in shown.stdout.splitlines()) <= 100
    got = CliRunner().invoke(main, ["changes", str(path), "--for", "150A", "--json"])
    record = json.loads(got.stdout)
    assert record["reached"]
    assert record["cheapest"]["safe"]["value"] == pytest.approx(answer.cheapest.safe)
    assert record["cheapest"]["keys"] == dict(answer.cheapest.keys)
    wrong = CliRunner().invoke(main, ["changes", str(path), "--for", "150 mm"])
    assert wrong.exit_code == 2


def test_wheels_that_spin_are_said_and_raise_nothing():
    """The traction line stands beside the answer; no limit moves with it."""
    from mountlimit.report.changes_text import spins
    from mountlimit.traction import lines

    uses = {"use__wheel_diameter": "400 mm", "use__wheel_load": "300 N"}
    with_use, without = (limits.find(drive_file(**DRIVE, **u)) for u in (uses, {}))
    assert with_use.first_safe.safe == pytest.approx(without.first_safe.safe, rel=1e-9)
    high = lines(with_use.drive).traction_high
    assert high is not None
    assert "spin" in spins(lines(with_use.drive), high * 1.1)
    assert spins(lines(with_use.drive), high * 0.9) == ""
