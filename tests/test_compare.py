"""Two drives side by side: the same file changes nothing, swapping mirrors, one edit shows one key."""

from __future__ import annotations

import json
from functools import cache
from io import StringIO
from pathlib import Path

import pytest
from click.testing import CliRunner
from rich.console import Console

from conftest import changed, drive_file, saddle_file, some, toml_text, welded_file
from mountlimit import limits, starter
from mountlimit.cli import main
from mountlimit.compare import compare, side_by_side
from mountlimit.drivefile import parse, read
from mountlimit.mounts import FORMS
from mountlimit.report import compare_text

FOLDER = Path(__file__).parent.parent / "examples"


@cache
def plate():
    """The limits of the plate that the others are laid beside, found once."""
    return limits.find(drive_file())


def printed(found):
    """What a comparison reads like on a terminal of 100 columns."""
    out = StringIO()
    compare_text.write(found, Console(file=out, width=100, highlight=False, markup=False))
    return out.getvalue()


@pytest.mark.parametrize("name", ["orchard_barrow", "pulp_stirrer", "willow_stripper"])
def test_a_file_with_itself(name):
    """Nothing changed, and no limit differs."""
    file = read(FOLDER / f"{name}.toml")
    found = compare(file, file)
    assert not found.changes
    assert not found.became_known
    assert not found.became_assumed
    assert all(compare_text.difference(p) in (0.0, None) for p in found.pairs)
    assert printed(found).startswith("Nothing changed")


@pytest.mark.parametrize("other", [welded_file, saddle_file], ids=["welded", "saddle"])
def test_swapped_is_mirrored(other):
    """B against A says the same the other way round, also for two forms."""
    found = limits.find(other())
    one, two = side_by_side(plate(), found), side_by_side(found, plate())
    ahead_keys = {c.key: (c.a, c.b) for c in one.changes}
    assert ahead_keys == {c.key: (c.b, c.a) for c in two.changes}
    assert set(one.became_known) == set(two.became_assumed)
    ahead = {(p.name, p.current_kind): compare_text.difference(p) for p in one.pairs}
    back = {(p.name, p.current_kind): compare_text.difference(p) for p in two.pairs}
    assert ahead.keys() == back.keys()
    for key, change in ahead.items():
        assert (change is None) == (back[key] is None)
        assert change is None or change == -back[key]
    assert any(p.a is None for p in one.pairs)
    assert any(p.b is None for p in one.pairs)
    assert "only in A" in printed(one)
    assert "only in B" in printed(one)


@pytest.mark.parametrize(
    ("key", "text"),
    [("mount.thickness", "10 mm"), ("shaft.bearing_span", "115 mm"), ("chain.pull", "away"),
     ("current.wanted", "70 A"), ("hub.key", "4 x 4 x 20 mm"), ("mount.material", "s235")],
)  # fmt: skip
def test_one_edit_shows_one_key(key, text):
    """Exactly the edited key stands among what was written."""
    found = side_by_side(plate(), limits.find(drive_file(**{key.replace(".", "__"): text})))
    assert [c.key for c in found.written] == [key]
    assert found.written[0].b.text == text
    assert text in printed(found)
    assert all(c.key != key for c in found.followed)


def test_written_otherwise_is_the_same():
    """Another unit, or another name of the same card, is no change."""
    found = compare(
        drive_file(mount__thickness="8 mm", mount__material="6061"),
        drive_file(mount__thickness="0.8 cm", mount__material="al6061_t6"),
    )
    assert not found.changes


def test_material_brings_its_card_values_along():
    """What the card gives is listed apart from what was written."""
    found = side_by_side(plate(), limits.find(drive_file(mount__material="s235")))
    assert {"mount.elastic_modulus", "mount.yield_strength"} <= {c.key for c in found.followed}


def test_what_became_known():
    """An assumed input that is told leaves one assumption less."""
    found = side_by_side(plate(), limits.find(drive_file(shaft__bearing_span="115 mm")))
    assert found.became_known == ("shaft.bearing_span",)
    assert not found.became_assumed
    assert found.assumed[0] == found.assumed[1] + 1
    assert "Assumed in A, told in B: shaft.bearing_span." in printed(found)


def test_limits_are_those_of_each_file():
    """Both sides are what the search gives for the file alone; the first line names both."""
    one, two = drive_file(), drive_file(mount__thickness="12 mm", shaft__bearing_span="115 mm")
    found = compare(one, two)
    for side, file in ((found.a, one), (found.b, two)):
        alone = limits.find(file)
        assert side.first_safe.safe == pytest.approx(alone.first_safe.safe, rel=1e-9)
        assert {x.check.name: x.safe for x in side.limits} == pytest.approx(
            {x.check.name: x.safe for x in alone.limits}
        )
    first = printed(found).splitlines()[0]
    assert first.startswith(
        f"B is safe to {compare_text._safe(found.b)} instead of {compare_text._safe(found.a)}"
    )


def test_another_check_sets_it():
    """Whose limit it was and whose it is are both named."""
    found = compare(read(FOLDER / "orchard_barrow.toml"), read(FOLDER / "log_carrier.toml"))
    words = " ".join(printed(found).split())
    assert (
        f"the {found.a.first_safe.check.part} no longer sets it, the {found.b.first_safe.check.part} does"
        in words
    )


@pytest.mark.parametrize("form", some(sorted(FORMS)))
def test_every_form_beside_a_plate(form):
    """The starter of every form compares with a plate, in text and as a record."""
    file = parse(starter.text(form, "drive.toml").encode(), "drive.toml")
    found = side_by_side(plate(), limits.find(file))
    json.dumps(compare_text.record(found), allow_nan=False)
    assert printed(found).startswith("B is ")


@pytest.mark.parametrize("side", [0, 1])
@pytest.mark.parametrize(
    ("changes", "holds"),
    [(None, "no such file"), ({"mount__thickness": "6 kg"}, "mount.thickness"), ({"chain__typ": "40"}, "chain.typ = ")],
    ids=["missing", "unit", "key"],
)  # fmt: skip
def test_one_line_for_a_mistake(tmp_path, side, changes, holds):
    """Exit status 2, one line that names the file, no traceback."""
    good, bad = tmp_path / "good.toml", tmp_path / "bad.toml"
    good.write_text(toml_text(changed()), encoding="utf-8")
    if changes is not None:
        bad.write_text(toml_text(changed(**changes)), encoding="utf-8")
    pair = [str(good), str(bad)] if side else [str(bad), str(good)]
    result = CliRunner().invoke(main, ["compare", *pair])
    assert result.exit_code == 2
    lines = result.stderr.strip().splitlines()
    assert len(lines) == 1, result.stderr
    assert holds in lines[0]
    assert "bad.toml" in lines[0]
    assert not result.stdout
