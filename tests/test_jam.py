"""A dead stop: its pull, the speed that uses each part up, and its place in the safe current."""

from __future__ import annotations

import json
import math

import numpy as np
import pytest
from click.testing import CliRunner
from scipy.integrate import solve_ivp

from conftest import angle_file, drive_file
from mountlimit import evaluate, jam, limits
from mountlimit.assess import assess
from mountlimit.cards import folder
from mountlimit.checks import alignment
from mountlimit.cli import main
from mountlimit.report.record import record
from mountlimit.resolve import resolve

RPM = math.pi / 30
KNOWN = {"duty__rotor_inertia": "12 kg*cm2", "chain__stretch_ratio": "80"}


@pytest.fixture(scope="module")
def found():
    """The base drive with a rotor of known inertia, and what a dead stop uses up."""
    of = limits.find(drive_file(**KNOWN))
    return of, jam.stops(of)


def speeds(**changes):
    """Speed that uses each part up at likely values, factor 1."""
    stops = jam.stops(limits.find(drive_file(**{**KNOWN, **changes})))
    return {s.check.name: s.gives for s in stops.parts}


@pytest.mark.parametrize("rpm", [0.0, 60.0, 600.0])
def test_pull_by_integration(rpm):
    """The rotor runs into chain and mount in series, the motor pulls on: pull by direct integration.

    Chain 40 (3125 lbf, ASME B29.1), 80 times strength over length; the mount's give is read from
    the movement of the sprocket under the steady pull.
    """
    drive = resolve(drive_file(**KNOWN))
    case = evaluate.case_at(drive, 40.0, 0, stop_from=rpm * RPM)
    assert case.loads.groups == ("jam",)
    d1, d2 = (0.0127 / np.sin(np.pi / z) for z in (11, 54))
    radius, run = d1 / 2 * np.cos(np.pi / 11), np.sqrt(0.360**2 - ((d2 - d1) / 2) ** 2)
    pulls = [i for i, c in enumerate(evaluate.loads.case_list(drive)) if c[1] == "pull"]
    plain = [evaluate.case_at(drive, 40.0, i) for i in pulls]
    soft = np.mean([float(alignment.lean(c)[2]) / float(c.loads.shaft_load) for c in plain])
    stiffness = radius**2 / (run / (80.0 * 13900.6) + soft)

    def right(_t, y):
        return [y[1], (0.12 * 40.0 - stiffness * y[0]) / 12e-4]

    end = 1.1 * np.pi * np.sqrt(12e-4 / stiffness)
    answer = solve_ivp(
        right, (0.0, end), [0.0, rpm * RPM], rtol=1e-9, atol=1e-12, max_step=end / 500
    )
    pull = stiffness * answer.y[0].max() / radius
    assert float(case.loads.effective_pull) == pytest.approx(pull, rel=0.02)
    assert float(case.loads.torque) == pytest.approx(pull * radius, rel=0.02)


def test_the_search_finds_the_first_crossing(found):
    """At the safe speed, safe-side ends and design factor: 1; never above 1 below it."""
    of, stops = found
    for stop in stops.parts:
        if math.isinf(stop.safe) or stop.safe == 0:
            continue
        worst = resolve(of.file, stop.corner)
        below = np.linspace(0.0, 1.0, 9) * stop.safe
        seen = evaluate.governing_at(worst, stop.check, [40.0] * 9, "safe", below)
        used = [s.utilisation * stop.factor for s in seen]
        assert used[-1] == pytest.approx(1.0, rel=1e-6)
        assert max(used[:-1]) < 1.0
        assert stop.gives is None or stop.gives > stop.safe


def test_only_strength_and_grip(found):
    """No life, no alignment; every part of strength and grip that a pull uses up is there."""
    _, stops = found
    names = {s.check.name for s in stops.parts}
    assert {s.check.kind for s in stops.parts} <= {"strength", "grip"}
    assert {
        "chain_static",
        "key",
        "motor_shaft",
        "front_bearing",
        "bolt_slip",
        "mount_section",
    } <= names


@pytest.mark.parametrize(
    "worse",
    [
        {"duty__rotor_inertia": "24 kg*cm2"}, {"chain__stretch_ratio": "160"}, {"current__set": "55 A"},
        {"chain__driving_teeth": 9}, {"mount__softness": 0.3},
    ],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_speed(worse):
    """A heavier rotor, a stiffer chain or mount, more current, a smaller sprocket."""
    plain, changed = speeds(), speeds(**worse)
    for name in ("chain_static", "motor_shaft", "front_bearing"):
        assert changed[name] < plain[name], name


def test_doubling_the_inertia_takes_a_root_of_two():
    """With hardly any current the energy alone counts: speed times root of inertia is the same."""
    small = {"current__set": "0.1 A"}
    one, four = speeds(**small), speeds(**small, duty__rotor_inertia="48 kg*cm2")
    for name in ("chain_static", "key"):
        assert one[name] / four[name] == pytest.approx(2.0, rel=2e-3)


def test_in_the_safe_current_only_when_asked():
    """Just under the safe speed of a part the set current is safe for it, just over it is not."""
    plain = limits.find(drive_file(**KNOWN))
    usual = {x.check.name: x.safe for x in plain.limits}
    first = next(s for s in jam.stops(plain).parts if usual[s.check.name] > 1.2 * 40.0)
    assert 0 < first.safe < math.inf

    def counted(share, asked):
        rpm = first.safe * share / RPM
        extra = {"policy__jam": True} if asked else {}
        file = drive_file(**KNOWN, motor__speed=f"{rpm:.9g} rpm", **extra)
        return next(x for x in limits.find(file).limits if x.check.name == first.check.name)

    assert counted(0.98, asked=True).safe > 40.0 > counted(1.02, asked=True).safe
    assert counted(1.02, asked=False).safe == pytest.approx(usual[first.check.name], rel=1e-6)


def test_used_up_before_any_current_names_the_dead_stop():
    """At 3000 rpm the stop alone is too much: 0 A, and the reason says so."""
    answer = assess(drive_file(**KNOWN, motor__speed="3000 rpm", policy__jam=True))
    line = next(x for x in answer.lines if x.limit.check.name == "motor_shaft")
    assert line.limit.safe == 0.0
    assert "dead stop from motor.speed" in line.limit.why_not
    assert line.case.startswith("jam")
    assert answer.balance < 1e-9


def test_record_and_print():
    """The record holds every part in rad/s; the table the lowest few; nothing else changes."""
    path = str(folder("examples") / "orchard_barrow.toml")
    runner = CliRunner()
    text = runner.invoke(main, ["check", path, "--jam"]).stdout
    assert "A dead stop of the driven side" in text
    assert "estimated from the motor's mass" in text
    stops = json.loads(runner.invoke(main, ["check", path, "--json", "--jam"]).stdout)["lines"][
        "jam"
    ]
    assert stops["counts_for_safe_current"] is False
    assert len(stops["parts"]) >= 8
    assert all(p["safe"]["unit"] == "rad/s" for p in stops["parts"])
    lowest = [p["safe"]["value"] for p in stops["parts"] if p["safe"]["value"] is not None]
    assert lowest == sorted(lowest)


def test_load_case_of_the_record():
    """With policy.jam the record's load cases hold the dead stop; without, none."""
    asked = record(assess(angle_file(motor__speed="100 rpm", policy__jam=True)))
    plain = record(assess(angle_file(motor__speed="100 rpm")))
    assert [c["case"] for c in asked["load_cases"] if c["case"].startswith("jam")]
    assert not [c["case"] for c in plain["load_cases"] if c["case"].startswith("jam")]
    at_speed = {p["check"]: p["at_speed"] for p in plain["lines"]["jam"]["parts"]}
    assert at_speed["key"]["utilisation"] > 0
