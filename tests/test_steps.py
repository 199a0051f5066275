"""The step-up plan: within every safe limit by the pipeline, movement that of the pipeline, no plan where none is safe."""

from __future__ import annotations

import itertools
import json
import math
from functools import cache
from io import StringIO
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner
from rich.console import Console

from conftest import changed, drive_file, some, toml_text
from mountlimit import evaluate, limits, loads, starter, steps
from mountlimit.assess import at_currents
from mountlimit.cli import main
from mountlimit.drivefile import parse, read
from mountlimit.mounts import FORMS
from mountlimit.report import steps_text
from mountlimit.resolve import resolve

FOLDER = Path(__file__).parent.parent / "examples"
EXAMPLES = sorted(p.stem for p in FOLDER.glob("*.toml"))
LOOKED_INTO = ("orchard_barrow", "log_carrier", "turf_lifter", "sand_washer")


@cache
def plan_of(name):
    """Plan an example once."""
    return steps.plan(read(FOLDER / f"{name}.toml"))


def printed(plan):
    """What a plan reads like on a terminal of 100 columns."""
    out = StringIO()
    steps_text.write(plan, Console(file=out, width=100, highlight=False, markup=False))
    return out.getvalue()


def sound(plan):
    """Assert what must hold of any plan."""
    words = printed(plan)
    json.dumps(steps_text.record(plan), allow_nan=False)
    if not plan.steps:
        assert plan.why_not
        assert words.startswith("No step-up plan yet")
        return
    currents = [s.current for s in plan.steps]
    assert all(b > a for a, b in itertools.pairwise(currents))
    assert currents[-1] <= min(plan.safe.safe, plan.asked)
    least = max(steps.LEAST_START, float(plan.drive.motor.no_load_current))
    assert currents[0] <= max(min(float(plan.drive.current.set), 0.6 * plan.safe.safe), least)
    assert all(s.used <= 1 for s in plan.steps)
    assert len(currents) <= 10
    for s in plan.steps:
        for likely, high in zip(_numbers(s.likely), _numbers(s.high), strict=True):
            assert 0 <= likely <= high < 0.1
    assert words.startswith(("Start at", "One current only"))


def _numbers(m):
    return m.along_chain, m.along_shaft, m.lean


@pytest.mark.parametrize("name", some(EXAMPLES))
def test_every_example_has_a_sound_plan(name):
    """Rising currents within safe and wanted; likely under high; text and record without a hitch."""
    sound(plan_of(name))


@pytest.mark.parametrize("form", some(sorted(FORMS)))
def test_every_starter_has_a_sound_plan(form):
    """A fresh starter file of every form is planned too."""
    sound(steps.plan(parse(starter.text(form, "drive.toml").encode(), "drive.toml")))


@pytest.mark.parametrize("name", LOOKED_INTO)
def test_no_limit_is_passed_at_any_step(name):
    """Each counted limit at its own ends, looked at one current at a time."""
    plan = plan_of(name)
    assert plan.steps
    for limit in plan.found.limits:
        if not limit.counts:
            continue
        worst = resolve(plan.found.file, limit.corner)
        for s in plan.steps:
            used = at_currents(worst, limit, [s.current])[0].utilisation
            assert used <= 1 + 1e-9
            assert used <= s.used * (1 + 1e-6)


def by_hand(drive, current):
    """Sum up the parts' movement at the sprocket, one load case at a time."""
    found = []
    for index, (_, group, *_rest) in enumerate(loads.case_list(drive)):
        if group not in ("pull", "reverse"):
            continue
        case = evaluate.case_at(drive, current, index)
        angle, parts = float(case.loads.pull_angle), case.response.displacements
        move = np.sum([[float(v) for v in p.move] for p in parts], axis=0)
        turn = np.sum([[float(v) for v in p.turn] for p in parts], axis=0)
        c, s = math.cos(angle), math.sin(angle)
        found.append((move[0] * c + move[1] * s, abs(move[2]), abs(turn[1] * c - turn[0] * s)))
    return np.max(found, axis=0)


@pytest.mark.parametrize("name", LOOKED_INTO)
def test_movement_is_the_pipelines(name):
    """Likely: as the drive stands; high: the larger of that and the ends of the limit ``alignment``."""
    plan = plan_of(name)
    ends = next(x for x in plan.found.limits if x.check.name == "alignment").corner
    careful = resolve(plan.found.file, ends)
    for s in plan.steps:
        likely = by_hand(plan.drive, s.current)
        high = np.maximum(likely, by_hand(careful, s.current))
        np.testing.assert_allclose(_numbers(s.likely), likely, rtol=1e-6, atol=1e-12)
        np.testing.assert_allclose(_numbers(s.high), high, rtol=1e-6, atol=1e-12)
        assert max(high - likely) > 0


@pytest.mark.parametrize("name", LOOKED_INTO)
def test_rest_keeps_the_mean_heat(name):
    """Mean square of the current over pull and rest is that of the continuous current."""
    plan = plan_of(name)
    held = plan.drive.current.continuous
    for s in plan.steps:
        if held is None:
            assert s.rest is None
        elif s.current <= held:
            assert s.rest == 0
        else:
            mean = s.current**2 * s.pull_time / (s.pull_time + s.rest)
            assert mean == pytest.approx(float(held) ** 2)


@pytest.mark.parametrize("power", [0.3, 1.0, 2.0])
@pytest.mark.parametrize("share", [0.0, 0.3, 0.7])
@pytest.mark.parametrize("set_current", [3.0, 40.0, 900.0])
@pytest.mark.parametrize("safe", [4.7, 51.3, 123.0, 640.0])
def test_no_step_is_too_long(power, share, set_current, safe):
    """A step adds at most a sixth of the capacity and of the last current."""

    def most(currents):
        return share + (1 - share) * (np.asarray(currents) / safe) ** power

    found = steps.currents_of(set_current, 10 * safe, safe, most, 1.0)
    assert found == sorted(set(found))
    assert 0.97 * safe < found[-1] <= safe
    use = most(found)
    assert np.all(np.diff(use) <= steps.LARGEST_RISE + 1e-3)  # the grid's own step
    assert np.all(np.diff(found) <= steps.LARGEST_RISE * found[-1] * (1 + 1e-9))
    assert len(found) <= 12


def test_wanted_under_the_start_is_one_pull():
    """A wanted current below a safe start asks for no steps."""
    assert steps.currents_of(40.0, 10.0, 100.0, lambda c: c / 100, 1.0) == [10.0]


def test_over_the_safe_current_it_stops_there_and_says_so():
    """Orchard barrow wants 90 A; the last step is the last whole ampere that is safe."""
    plan = plan_of("orchard_barrow")
    safe = limits.find(read(FOLDER / "orchard_barrow.toml")).first_safe.safe
    assert plan.cut
    assert plan.steps[-1].current == math.floor(safe) < 90.0
    assert "mountlimit changes" in printed(plan)


def test_no_plan_when_nothing_is_safe():
    """Duck weed rake: the clamp alone dents its tube; what to measure is said, status 1."""
    assert limits.find(read(FOLDER / "duck_weed_rake.toml")).first_safe.safe == 0.0
    result = CliRunner().invoke(main, ["steps", str(FOLDER / "duck_weed_rake.toml")])
    assert result.exit_code == 1
    assert result.stdout.startswith("No step-up plan yet")
    assert "measure those first" in result.stdout
    assert "Start at" not in result.stdout


def test_softer_mount_asks_for_an_hour_and_welds_for_a_lamp():
    """Words between the steps follow the mount."""
    soft = drive_file(mount__material="pom-c", mount__thickness="20 mm", chain__skew="0.02 deg",
                      chain__offset="0.1 mm", current__wanted="3 A")  # fmt: skip
    words = " ".join(steps_text._between(steps.plan(soft)))
    assert "an hour" in words
    assert "N*m" in words
    welded = plan_of("lock_gate")
    words = " ".join(steps_text._between(welded))
    assert "weld" in words
    assert "an hour" not in words
    assert "tighten the frame bolts" not in words


def test_asked_on_the_command_line_wins():
    """``--for`` sets the end of the plan; the record is SI."""
    path = str(FOLDER / "orchard_barrow.toml")
    result = CliRunner().invoke(main, ["steps", path, "--for", "55 A", "--json"])
    assert result.exit_code == 0, result.output
    record = json.loads(result.stdout)
    assert record["steps"][-1]["current"] == {"value": 55.0, "unit": "A"}
    assert record["stops_at_the_safe_limit"] is False


@pytest.mark.parametrize(
    ("changes", "more", "holds"),
    [
        ({}, ["--for", "120"], "A"),
        ({}, ["--for", "-5 A"], "--for"),
        ({}, ["--for", "3 mm"], "current"),
        ({"mount__thickness": "6 kg"}, [], "mount.thickness"),
    ],
)
def test_one_line_for_a_mistake(tmp_path, changes, more, holds):
    """Exit status 2, one line, no traceback."""
    path = tmp_path / "drive.toml"
    path.write_text(toml_text(changed(**changes)), encoding="utf-8")
    result = CliRunner().invoke(main, ["steps", str(path), *more])
    assert result.exit_code == 2
    lines = result.stderr.strip().splitlines()
    assert len(lines) == 1, result.stderr
    assert holds in lines[0]
    assert not result.stdout
