"""Broken drive files: one clear line per mistake, exit status 2, never a traceback."""

from __future__ import annotations

import pytest
from click.testing import CliRunner

from conftest import changed, toml_text
from mountlimit.cli import main

# (changes to a sound file, what the one line must hold)
BROKEN = [
    ({"mount__thickness": 6}, ["mount.thickness", "6", "unit"]),
    ({"mount__thickness": "6"}, ["mount.thickness", '"6 mm"']),
    ({"mount__thickness": "6 kg"}, ["mount.thickness", "length"]),
    ({"mount__thickness": "6,5 mm"}, ["mount.thickness", "6.5 mm"]),
    ({"mount__thickness": "0 mm"}, ["mount.thickness", "0.5 mm to 150 mm"]),
    ({"mount__thickness": "-6 mm"}, ["mount.thickness", "0.5 mm to 150 mm"]),
    ({"mount__thickness": "6 mmm"}, ["mount.thickness", "mm"]),
    ({"mount__thickness": "nan mm"}, ["mount.thickness"]),
    ({"mount__thickness": "1e999 mm"}, ["mount.thickness", "finite"]),
    ({"mount__thickness": True}, ["mount.thickness"]),
    ({"mount__thickness": ["6 mm"]}, ["mount.thickness"]),
    ({"mount__thickness": None}, ["mount.thickness", "missing"]),
    ({"mount__thicknes": "6 mm"}, ["mount.thicknes", "not a known key", "thickness"]),
    ({"mount__form": "plat"}, ["mount.form", "plate"]),
    ({"mount__form": "sleeve plate"}, ["mount.form", "sleeved plate"]),
    ({"mount__form": None}, ["mount.form", "missing"]),
    ({"mount__material": "6061-T66"}, ["mount.material", "6061"]),
    ({"mount__material": "unobtainium"}, ["mount.material", "unobtainium"]),
    ({"mount__free_length": "20 mm"}, ["mount.free_length", "motor bolts"]),
    ({"mount__width": "95 mm"}, ["fixings.span_across", "leaves the mount"]),
    ({"mount__temperature": "200 degC", "mount__material": "hdpe"}, ["mount.temperature"]),
    ({"mount__grade": "unknown"}, ["mount.grade", "known, scrap"]),
    ({"chain__type": "44"}, ["chain.type", "44"]),
    ({"chain__driving_teeth": 11.5}, ["chain.driving_teeth", "whole number"]),
    ({"chain__driving_teeth": "11"}, ["chain.driving_teeth", "whole number"]),
    ({"chain__driving_teeth": 3}, ["chain.driving_teeth", "6 to 60"]),
    ({"chain__centre_distance": "50 mm"}, ["chain.centre_distance", "touch"]),
    ({"chain__pull": "sideways"}, ["chain.pull", "across"]),
    ({"chain__pull": []}, ["chain.pull", "at least one"]),
    ({"chain__slack": "40 %"}, ["chain.slack", "0.1 % to 20 %"]),
    ({"motor__torque_constant": "0.12 N*m"}, ["motor.torque_constant"]),
    ({"motor__torque_constant": None}, ["motor.torque_constant", "one way"]),
    ({"motor__speed_constant": "79 rpm/V"}, ["one way"]),
    ({"motor__torque_constant": None, "motor__rated_torque": "4 N*m"}, ["rated_current", "together"]),
    ({"motor__torque_constant": None, "motor__points": [["10 A", "2 N*m"], ["5 A", "3 N*m"]]}, ["motor.points", "rise"]),
    ({"motor__bolts": "four M6"}, ["motor.bolts", "4 x M8"]),
    ({"motor__bolts": "4 x M7"}, ["motor.bolts", "M7"]),
    ({"motor__bolts": "1 x M6"}, ["motor.bolts", "two bolts"]),
    ({"motor__bolt_class": "8.9"}, ["motor.bolt_class", "8.8"]),
    ({"shaft__bearing": "6999"}, ["shaft.bearing"]),
    ({"shaft__face_overhang": "3 mm"}, ["shaft.face_overhang", "inside the plate"]),
    ({"hub__key": "5 x 5"}, ["hub.key", "width x height x length"]),
    ({"hub__drive": "set screw"}, ["hub.set_screw", "missing"]),
    ({"hub__key": None, "hub__drive": "clamp"}, ["hub.screws", "hub.rated_torque"]),
    ({"hub__key": None, "hub__flat_depth": "5 mm"}, ["hub.flat_depth", "12 mm", "3.6 mm deep"]),
    ({"hub__bolts": "6 x M5"}, ["hub.bolt_circle", "missing"]),
    ({"hub__weld_diameter": "25 mm", "hub__weld_leg": "3 mm", "hub__weld_material": "hdpe"}, ["hub.weld_material", "welded"]),
    ({"driven__overhang": "30 mm"}, ["driven.shaft_diameter", "missing"]),
    ({"driven__freewheel": "90 N*m"}, ["driven.freewheel", "freewheel_torque"]),
    ({"driven": "none"}, ["driven"]),
    ({"fixings__bolts": "0 x M8"}, ["fixings.bolts"]),
    ({"fixings__bolts": "3 x M8"}, ["fixings.bolts", "even number"]),
    ({"fixings__span_across": "0 mm", "fixings__span_along": "0 mm"}, ["fixings.span_across"]),
    ({"fixings__span_across": "118 mm"}, ["fixings.span_across", "leaves the mount"]),
    ({"fixings__tightening_torque": "20 lb-ft"}, ["fixings.tightening_torque", "lbf*ft"]),
    ({"fixings__surface": "greasy"}, ["fixings.surface", "oiled"]),
    ({"fixings__friction": {"low": 0.3, "likely": 0.2, "high": 0.4}}, ["fixings.friction", "low <= likely"]),
    ({"frame__wall": "30 mm"}, ["frame.wall", "half"]),
    ({"current__set": "80"}, ["current.set", "80 A"]),
    ({"current__set": "80 V"}, ["current.set", "current"]),
    ({"current__kind": "amps"}, ["current.kind", "phase peak"]),
    ({"policy__factor_chain_static": 0.1}, ["policy.factor_chain_static", "1 to 20"]),
    ({"policy__factor_chain": 3}, ["policy.factor_chain", "not a known key"]),
    ({"mout": {"form": "plate"}}, ["[mout]", "[mount]"]),
    ({"title": None}, ["title", "missing"]),
    ({"title": 5}, ["title", "text"]),
    ({"duty__starting_factor": "two"}, ["duty.starting_factor", "bare number"]),
    ({"chain__link": "clips"}, ["chain.link", "rivet, clip", "'clip'"]),
    ({"chain__joint_pressure": "24"}, ["chain.joint_pressure", "24 MPa"]),
    ({"chain__joint_pressure": "0 MPa"}, ["chain.joint_pressure", "1 MPa to 100 MPa"]),
    ({"policy__jam": True}, ["policy.jam", "needs motor.speed"]),
    ({"policy__jam": "true"}, ["policy.jam", "without quotes"]),
    ({"policy__jam": 1, "motor__speed": "100 rpm"}, ["policy.jam", "true or false"]),
    ({"duty__bump": "3"}, ["duty.bump", "3 g"]),
]  # fmt: skip


def run(tmp_path, text):
    file = tmp_path / "drive.toml"
    file.write_bytes(text if isinstance(text, bytes) else text.encode())
    return CliRunner().invoke(main, ["check", str(file)])


@pytest.mark.parametrize(
    ("changes", "words"), BROKEN, ids=[f"{i}-{next(iter(c))}" for i, (c, _) in enumerate(BROKEN)]
)
def test_one_clear_line(tmp_path, changes, words):
    """One mistake gives one line that names the file, the key and a way out."""
    result = run(tmp_path, toml_text(changed(**changes)))
    lines = result.stderr.strip().splitlines()
    assert result.exit_code == 2, result.output
    assert isinstance(result.exception, SystemExit)
    assert len(lines) == 1, lines
    assert "drive.toml" in lines[0]
    assert all(w.lower() in lines[0].lower() for w in words), lines
    assert "Traceback" not in result.output
    assert result.stdout == ""


def test_all_mistakes_in_one_go(tmp_path):
    """Three mistakes give three lines, in file order."""
    text = toml_text(changed(mount__thickness="6", chain__type="44", motor__mas="3 kg"))
    lines = run(tmp_path, text).stderr.strip().splitlines()
    assert len(lines) == 3
    assert [line.split(": ")[1].split(" =")[0] for line in lines] == [
        "motor.mas",
        "chain.type",
        "mount.thickness",
    ]


@pytest.mark.parametrize(
    ("old", "new", "word"),
    [
        ("thickness =", "thicknes =", "did you mean thickness?"),
        ("torque_constant =", "torqueconst =", "did you mean torque_constant?"),
        ("form =", "frm =", "did you mean form?"),
        ("[motor]", "[moter]", "did you mean [motor]?"),
        ("[mount]", "[mont]", "did you mean [mount]?"),
    ],
)
def test_a_misspelt_name_is_not_missed_as_well(tmp_path, old, new, word):
    """What is misspelt is there: only the spelling is told, and only once."""
    text = toml_text(changed())
    assert old in text
    lines = run(tmp_path, text.replace(old, new, 1)).stderr.strip().splitlines()
    assert len(lines) == 1, lines
    assert word in lines[0]


@pytest.mark.parametrize(
    ("raw", "word"),
    [
        (b"", "missing"),
        (b"\xff\xfe\x00", "UTF-8"),
        (b"[mount\nform = ", "TOML"),
        (b"thickness = 6 mm\n", "quotes"),
        (b'a = "1"\na = "2"\n', "TOML"),
        (b"x = " + b"[" * 20000, "nested"),
        (b"# " + b"x" * 2_000_000, "1 MB"),
    ],
)
def test_broken_bytes(tmp_path, raw, word):
    """Files that are no drive file at all."""
    result = run(tmp_path, raw)
    assert result.exit_code == 2
    assert word in result.stderr
    assert "Traceback" not in result.output


def test_missing_file_and_folder(tmp_path):
    """A wrong name gives the nearest one; a folder is called one."""
    (tmp_path / "barrow.toml").write_text("x")
    wrong = CliRunner().invoke(main, ["check", str(tmp_path / "barow.toml")])
    assert wrong.exit_code == 2
    assert "did you mean barrow.toml" in wrong.stderr
    folder = CliRunner().invoke(main, ["check", str(tmp_path)])
    assert folder.exit_code == 2
    assert "folder" in folder.stderr
