"""The result record: stable keys, SI values with units, and loads that agree with statics."""

from __future__ import annotations

import json

import numpy as np
import pytest
from click.testing import CliRunner

from conftest import angle_file, drive_file
from mountlimit.assess import assess
from mountlimit.cards import folder
from mountlimit.cli import main
from mountlimit.report.record import SCHEMA, record

KEYS = {
    "schema", "title", "input_sha256", "version", "safe_current", "gives_current", "set_current",
    "wanted_current", "limits", "loads", "alignment", "lines", "assumed", "warnings", "not_checked",
    "balance",
}  # fmt: skip


@pytest.fixture(scope="module")
def found():
    """The record of an example, through the command."""
    path = str(folder("examples") / "orchard_barrow.toml")
    result = CliRunner().invoke(main, ["check", path, "--json"])
    return json.loads(result.stdout)


def test_promised_keys(found):
    """Every promised key is there; values are plain numbers with a unit."""
    assert set(found) >= KEYS
    assert found["schema"] == SCHEMA
    assert found["safe_current"]["unit"] == "A"
    for limit in found["limits"]:
        assert set(limit) >= {
            "check",
            "part",
            "kind",
            "case",
            "station",
            "safe",
            "gives",
            "at_set",
            "sees",
            "source",
        }
        if limit["at_set"]:
            assert limit["at_set"]["utilisation"] == pytest.approx(
                limit["at_set"]["demand"] / limit["at_set"]["capacity"] * limit["at_set"]["factor"],
                rel=1e-9,
            )
    for entry in found["assumed"]:
        assert entry["low"] <= entry["likely"] <= entry["high"]
        assert entry["source"]


def test_safe_current_is_the_smallest_that_counts(found):
    """Life and continuous limits do not form the safe current."""
    counted = [
        x
        for x in found["limits"]
        if x["counts_for_safe_current"] and x["safe"]["value"] is not None
    ]
    first = min(counted, key=lambda x: x["safe"]["value"])
    assert found["safe_current"]["value"] == first["safe"]["value"]
    assert found["safe_current"]["check"] == first["check"]
    assert not any(x["counts_for_safe_current"] for x in found["limits"] if x["kind"] == "life")


@pytest.mark.parametrize(
    "file", [drive_file(), angle_file(chain__pull=["away", "across"], duty__reverse="30 %")]
)
def test_wrenches_agree_between_face_and_fixings(file):
    """The load at the fixings is the load at the motor face carried there: M_b = M_a + (a - b) x F."""
    for case in record(assess(file))["load_cases"]:
        a, b = case["at_motor_face"], case["at_fixings"]
        arm = np.subtract(a["place"]["value"], b["place"]["value"])
        force = np.array(a["force"]["value"])
        assert b["force"]["value"] == pytest.approx(force)
        assert b["moment"]["value"] == pytest.approx(
            np.add(a["moment"]["value"], np.cross(arm, force)), abs=1e-9
        )
        assert case["balance"] < 1e-9


def test_bearing_reactions_carry_the_pull(found):
    """Front less rear reaction is the shaft load."""
    loads = found["loads"]
    pull = loads["tight_side_tension"]["value"] + loads["slack_side_tension"]["value"]
    assert loads["bearing_front"]["value"] - loads["bearing_rear"]["value"] == pytest.approx(pull)


def test_speed_adds_centrifugal_tension_but_no_shaft_load():
    """Two drives that differ in the speed under load differ in chain tension alone."""
    still, fast = (assess(drive_file(motor__speed=s)).at_set.loads for s in (None, "3000 rpm"))
    # chain 40: 0.62 kg/m at 11 x 12.7 mm x 50 per second = 6.985 m/s gives 30.25 N
    assert float(fast.tight_side_tension - still.tight_side_tension) == pytest.approx(
        30.25, abs=0.01
    )
    assert float(fast.shaft_load) == pytest.approx(float(still.shaft_load), rel=1e-12)
