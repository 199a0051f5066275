"""Clamping force from torque and class: the 90 % rule, soft mounts, the torque to tighten to."""

from __future__ import annotations

import json

import pytest
from click.testing import CliRunner

from conftest import changed, drive_file, toml_text
from mountlimit.cli import main
from mountlimit.resolve import resolve


def kept(drive, key="fixings.preload"):
    """The range of the clamping force."""
    return next(r for r in drive.ranges if r.key == key)


@pytest.mark.parametrize(
    ("bolts", "force", "torque"), [("4 x M8x1", 20.2, 26.1), ("4 x M12x1.25", 48.0, 90.0)]
)
def test_assembly_preload_and_torque(bolts, force, torque):
    """VDI 2230 table for class 8.8, friction 0.12 (as reprinted in a fastener handbook).

    The force is what a torque far too high is cut down to; printed to 0.1 kN.  The table's mean
    diameter under the head is not printed with it: 1 % on the torque.
    """
    drive = resolve(drive_file(fixings__bolts=bolts, fixings__tightening_torque="500 N*m"))
    assert kept(drive).high / 1000 == pytest.approx(force, abs=0.05)
    assert kept(drive).likely == kept(drive).high
    assert float(drive.fixings.assembly_torque) == pytest.approx(torque, rel=0.01)
    assert any("past 90 % of yield" in w for w in drive.warnings)


def test_a_fair_torque_is_not_cut():
    """20 N*m on M8: 12.5 kN with K 0.2, as T / (K d) says; no warning."""
    drive = resolve(drive_file(fixings__tightening_torque="20 N*m"))
    assert kept(drive).likely == pytest.approx(12500, rel=1e-9)
    assert not any("of yield" in w for w in drive.warnings)


def test_a_better_class_takes_more():
    """10.9 over 8.8 as their yield strengths (940 to 640 MPa, ISO 898-1)."""
    found = [
        float(resolve(drive_file(fixings__bolt_class=c)).fixings.assembly_torque)
        for c in ("8.8", "10.9")
    ]
    assert found[1] / found[0] == pytest.approx(940 / 640, rel=1e-3)


def test_a_soft_mount_is_tightened_less():
    """Polyethylene keeps little under a washer, more under a wide one; steel does not care."""

    def torque(**changes):
        return float(resolve(drive_file(**changes)).fixings.assembly_torque)

    small, wide = (torque(mount__material="hdpe", fixings__washer=w) for w in ("standard", "wide"))
    assert small < wide < torque(mount__material="a36")
    assert torque(mount__material="a36") == torque(mount__material="a36", fixings__washer="wide")


def test_the_record_names_the_torque(tmp_path):
    """`check --json` carries it with its unit."""
    file = tmp_path / "drive.toml"
    file.write_text(toml_text(changed()))
    out = json.loads(CliRunner().invoke(main, ["check", str(file), "--json"]).stdout)
    assert out["loads"]["assembly_torque"]["unit"] == "N*m"
    assert out["loads"]["assembly_torque"]["value"] == pytest.approx(24.6, abs=0.05)
