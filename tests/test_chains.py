"""Which chain pitch: what the comparison says of speed, power rating and tensile strength."""

from __future__ import annotations

import pytest
from click.testing import CliRunner

from conftest import changed, drive_file, toml_text
from mountlimit import chains
from mountlimit.cli import main
from mountlimit.resolve import resolve


def running(**changes):
    """Give what a drive's own chain does at the motor's speed."""
    return chains.running(resolve(drive_file(**changes)))


def test_no_speed_no_rating():
    assert running() is None


def test_rating_of_a_chain_and_the_pull_it_stands_for():
    """ASME B29.1 appendix, computed: chain 40, 17 teeth, 100 rpm, 0.514 kW.

    At 17 x 12.7 mm x 100/60 s the chain runs 0.3598 m/s, so the rated pull is 1428 N.  The power
    of the motor is that of 28 A of the file, torque by torque constant less the no-load current.
    """
    found = running(motor__speed="100 rpm", chain__driving_teeth=17)
    assert found.power_rating / 1000 == pytest.approx(0.514, abs=0.0005)
    assert found.chain_speed == pytest.approx(0.3598, abs=0.00005)
    assert found.rated_pull == pytest.approx(1428, abs=1.5)
    assert 0 < found.rating_share < 1


def test_more_held_current_uses_more_of_the_rating():
    low, high = (
        running(motor__speed="2500 rpm", current__continuous=f"{a} A").rating_share
        for a in (20, 40)
    )
    assert high > 1.5 * low


def test_rollers_and_bushes_lower_the_rating_at_high_speed():
    """Past the peak of the rating curve more speed is less power."""
    slow, fast = (running(motor__speed=f"{n} rpm").power_rating for n in (2500, 5000))
    assert fast < slow


def test_table_shows_the_rating_where_a_speed_is_given(tmp_path):
    file = tmp_path / "drive.toml"
    file.write_text(toml_text(changed(motor__speed="2500 rpm")), encoding="utf-8")
    text = CliRunner().invoke(main, ["chains", str(file)]).stdout
    assert "of rating: power at 28 A and 2500 rpm" in " ".join(text.split())
    assert "alignment" in text, "the last column is not cut short"
    file.write_text(toml_text(changed()), encoding="utf-8")
    assert "rating" not in CliRunner().invoke(main, ["chains", str(file)]).stdout


def test_speed_of_a_stopped_motor_is_refused(tmp_path):
    file = tmp_path / "drive.toml"
    file.write_text(toml_text(changed(motor__speed="0 rpm")), encoding="utf-8")
    result = CliRunner().invoke(main, ["chains", str(file)])
    assert result.exit_code == 2
    assert "motor.speed" in result.stderr
