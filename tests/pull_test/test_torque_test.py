"""The motor's torque by lever and scale."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner

from conftest import changed, drive_file, toml_text
from mountlimit import limits, torque_test
from mountlimit.cli import main
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

READ = {
    "torque_test__current": "30 A",
    "torque_test__force": "14 N",
    "torque_test__lever": "250 mm",
}


def test_the_reading_takes_the_place_of_the_constant():
    """14 N on 0.25 m is 3.5 N*m: 0.1167 N*m/A at 30 A; with 5 A for friction 0.14 N*m/A at 25 A."""
    assert resolve(drive_file(**READ)).motor.torque_constant == pytest.approx(3.5 / 30)
    idle = drive_file(motor__no_load_current="5 A", **READ)
    assert resolve(idle).motor.torque_constant == pytest.approx(0.14)
    bare = drive_file(motor__torque_constant=None, **READ)
    assert resolve(bare).motor.torque_constant == pytest.approx(3.5 / 30)
    assert resolve(bare).motor.torque_scatter == 1.0


def test_one_and_the_same_constant_gives_the_same_limits_whichever_way_it_is_told():
    lever = {**READ, "torque_test__force": "14.4 N"}  # 0.12 N*m/A, as the file has it
    a, b = (limits.find(drive_file(**x), ["chain_static"]).limits[0] for x in (lever, {}))
    assert a.gives == pytest.approx(b.gives, rel=1e-9)


def test_errors_of_the_reading_are_its_range():
    keys = {r.key: r for r in resolve(drive_file(**READ)).ranges}
    assert keys["torque_test.force"].high == pytest.approx(14.7)
    assert keys["torque_test.lever"].low == pytest.approx(0.247)
    found = limits.find(drive_file(**READ), ["chain_static"])
    effect = next(e for e in found.effects if e.range.key == "torque_test.force")
    assert effect.high["chain_static"] < effect.low["chain_static"]


def test_it_is_compared_with_the_file():
    alike = torque_test.read_back(drive_file(**{**READ, "torque_test__force": "14.5 N"}))
    assert alike.ratio == pytest.approx(14.5 / 14.4)
    from mountlimit.report.torque_text import compared

    assert "agree" in compared(alike)[0]
    strong = torque_test.read_back(drive_file(**{**READ, "torque_test__force": "25 N"}))
    assert "every limit comes sooner" in compared(strong)[0]


@pytest.mark.parametrize(("changes", "words"), [
    ({**READ, "torque_test__lever": None}, "needs current, force and lever"),
    ({**READ, "motor__no_load_current": "31 A"}, "no torque is left"),
    ({**READ, "motor__torque_constant": None, "motor__points": [["40 A", "4.6 N*m"], ["80 A", "9.5 N*m"]]}, "is measured too"),
    ({**READ, "torque_test__force": "0 N"}, "expected 0.5 N to 10 kN"),
    ({**READ, "torque_test__force": "14 kg"}, "is a mass"),
])  # fmt: skip
def test_bad_readings_are_refused_in_words(changes, words):
    with pytest.raises(InputError, match=words) as caught:
        resolve(drive_file(**changes))
    assert len(caught.value.mistakes) == 1


def test_the_card_fits_a_page_warns_and_its_lines_keep_the_reading(tmp_path):
    path = tmp_path / "drive.toml"
    path.write_text(toml_text(changed()))
    card = CliRunner().invoke(main, ["torque-test", str(path)])
    assert card.exit_code == 0, card.output
    assert len(card.stdout.splitlines()) <= 62
    assert max(map(len, card.stdout.splitlines())) <= 80
    for words in ("3 seconds", "Battery isolated", "lever can strike", "Chain off"):
        assert words in card.stdout
    asked = ["torque-test", str(path), "--read", "30 A", "14 N", "--lever", "250 mm", "--json"]
    told = json.loads(CliRunner().invoke(main, asked).stdout)
    path.write_text(toml_text(changed()) + "\n" + told.pop("lines_to_keep") + "\n")
    held = json.loads(CliRunner().invoke(main, ["torque-test", str(path), "--json"]).stdout)
    held.pop("lines_to_keep")
    assert held == told
    short = CliRunner().invoke(main, ["torque-test", str(path), "--read", "30 A", "14 N"])
    assert short.exit_code == 2
    assert "torque_test.lever" in short.stderr
