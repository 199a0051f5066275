"""Worked calculations: every line re-computes, and every number says where it came from."""

from __future__ import annotations

import math

import numpy as np
import pytest
from click.testing import CliRunner

from conftest import angle_file, drive_file, saddle_file
from mountlimit import evaluate, limits, why
from mountlimit.cards import folder
from mountlimit.cli import main
from mountlimit.drivefile import read
from mountlimit.resolve import resolve

NAMES = {n: getattr(np, n) for n in ("sqrt", "sin", "cos", "tan", "exp", "log", "tanh", "pi")}
NAMES |= {"atan": np.arctan, "asin": np.arcsin, "abs": abs, "max": max, "min": min}

FILES = {p.stem: read(p) for p in sorted(folder("examples").glob("*.toml"))}
FILES["plastic"] = drive_file(
    mount__material="hdpe", mount__thickness="20 mm", shaft__face_overhang="50 mm"
)
FILES["reversing"] = angle_file(
    duty__reverse="50 %", chain__slack="2 %", hub__drive="set screw", hub__set_screw="1 x M6"
)
FILES["saddle on a square cross tube"] = saddle_file(
    frame__member="square tube", mount__tube="with the shaft"
)
MEMBERS = {
    "angle rail": angle_file(chain__pull="away", frame__member="angle", frame__place=0.3),
    "channel rail": drive_file(chain__pull="20 deg", frame__member="channel", frame__ends="hinged"),
    "flat rail": drive_file(chain__pull="away", frame__member="flat bar"),
}
CASES = [(f, c.name) for f, file in FILES.items() for c in evaluate.applicable(resolve(file))]
CASES += [(name, "alignment") for name in MEMBERS]
FILES |= MEMBERS


@pytest.fixture(scope="module")
def worked():
    """Each worked calculation, done once."""
    done, found = {}, {}

    def get(name, check):
        if name not in found:
            found[name] = limits.find(FILES[name])
        if (name, check) not in done:
            done[name, check] = why.work(FILES[name], check, found=found[name])
        return done[name, check]

    return get


@pytest.mark.parametrize(("name", "check"), CASES)
def test_every_line_recomputes(worked, name, check):
    """The printed equation, evaluated with the printed numbers, gives the printed result."""
    steps = worked(name, check).steps
    assert steps
    for step in steps:
        values = {e.symbol.letter: e.value for e in step.entries}
        result = eval(step.equation.partition("=")[2], {"__builtins__": {}}, NAMES | values)
        assert result == pytest.approx(step.value, rel=1e-9, abs=1e-15), step.title


@pytest.mark.parametrize(("name", "check"), CASES)
def test_every_number_has_an_origin(worked, name, check):
    """A number is an input, a card's value, the result of an earlier step, or plainly zero."""
    seen = set()
    for step in worked(name, check).steps:
        assert step.source
        for entry in step.entries:
            assert entry.key or entry.step in seen or entry.value == 0, (step.title, entry)
            if entry.origin == "card":
                assert entry.source
        seen.add(step.index)


@pytest.mark.parametrize(("name", "check"), CASES)
def test_worked_line_is_the_line_of_the_list(worked, name, check):
    """Worked at the safe limit, the recorded utilisation times the design factor is 1."""
    work = worked(name, check)
    limit = work.limit
    if math.isfinite(limit.safe) and limit.safe > 0:
        assert work.current == limit.safe
        assert work.utilisation == pytest.approx(1.0, rel=1e-6)


def test_printed_for_a_reader():
    """The text names the key of an input, the step a number comes from and the source."""
    path = folder("examples") / "orchard_barrow.toml"
    result = CliRunner().invoke(main, ["why", str(path), "chain_static"])
    assert result.exit_code == 0
    for words in (
        "motor.torque_constant, given",
        "(from step",
        "source:",
        "F_1 = F_e + F_2",
        "ASME B29.1",
    ):
        assert words in result.stdout


def test_unknown_check_is_one_line():
    """A misspelt check gives the nearest one."""
    path = folder("examples") / "orchard_barrow.toml"
    result = CliRunner().invoke(main, ["why", str(path), "chain_statics"])
    assert result.exit_code == 2
    assert "did you mean chain_static" in result.stderr
    result = CliRunner().invoke(main, ["why", str(path), "chain_static", "--at", "80"])
    assert result.exit_code == 2
    assert "80 A" in result.stderr
