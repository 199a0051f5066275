"""Starter files: they check as they are, and every optional line in them is a valid one."""

from __future__ import annotations

import re

import pytest
from click.testing import CliRunner

from conftest import some
from mountlimit.cli import main
from mountlimit.drivefile import fields_for, parse
from mountlimit.mounts import FORMS
from mountlimit.starter import text


@pytest.mark.parametrize("form", some(list(FORMS), 1))
def test_checks_as_it_is(form, tmp_path, monkeypatch):
    """A fresh starter file is within its safe limit at the set current."""
    monkeypatch.chdir(tmp_path)
    assert CliRunner().invoke(main, ["new", form]).exit_code == 0
    result = CliRunner().invoke(main, ["check", f"{form}.toml"])
    assert result.exit_code == 0, result.output
    assert result.stdout.startswith("Safe to")


@pytest.mark.parametrize("form", FORMS)
def test_every_optional_line_can_be_read(form):
    """Each commented key, taken alone into the file, is read without a mistake about its value."""
    whole = text(form, "x.toml")
    keys = 0
    for line in re.findall(r"^# (\w+ = .+)$", whole, re.M):
        parse(whole.replace(f"# {line}", line).encode(), "x.toml")
        keys += 1
    shown = [k for k in fields_for(form) if "factor_" not in k]
    present = len(re.findall(r"^\w+ = .+$", whole, re.M))
    assert keys + present == len(shown)


def test_never_overwrites_without_force(tmp_path, monkeypatch):
    """An existing file stays as it is; --force replaces it whole."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "plate.toml").write_text("mine")
    result = CliRunner().invoke(main, ["new", "plate"])
    assert result.exit_code == 2
    assert "is there already" in result.stderr
    assert (tmp_path / "plate.toml").read_text() == "mine"
    assert CliRunner().invoke(main, ["new", "plate", "--force"]).exit_code == 0
    assert "[mount]" in (tmp_path / "plate.toml").read_text()
    assert [p.name for p in tmp_path.iterdir()] == ["plate.toml"]


@pytest.mark.parametrize(("form", "word"), [("plat", "plate"), ("cardboard", "there are")])
def test_unknown_forms(form, word):
    """A wrong name gets the nearest where there is one, and always the list."""
    result = CliRunner().invoke(main, ["new", form])
    assert result.exit_code == 2
    assert word in result.stderr
    assert all(name in result.stderr for name in FORMS)
    assert len(result.stderr.strip().splitlines()) == 1


def test_name_with_a_space_can_be_typed(tmp_path, monkeypatch):
    """The next command printed quotes a name with a space, and only such a name."""
    monkeypatch.chdir(tmp_path)
    spaced = CliRunner().invoke(main, ["new", "plate", "-o", "my plate.toml"])
    assert spaced.stdout.strip().endswith('Next: mountlimit check "my plate.toml"')
    plain = CliRunner().invoke(main, ["new", "plate"])
    assert plain.stdout.strip().endswith("Next: mountlimit check plate.toml")
