"""A broken part looked back from: what is found, put into the file by hand, uses the part up."""

from __future__ import annotations

import json
import math
from pathlib import Path

import numpy as np
import pytest
from click.testing import CliRunner

from conftest import drive_file, some, toml_text
from mountlimit import evaluate, limits
from mountlimit.checks import BY_NAME
from mountlimit.cli import main
from mountlimit.drivefile import DriveFile, read
from mountlimit.errors import InputError
from mountlimit.failure import Cause, explain, look_named, parts_named, without_stop
from mountlimit.failure_signs import CALLED, LOOKS, MADE_BY, NEXT, SAYS
from mountlimit.plate_route import with_plates
from mountlimit.report import failure_text
from mountlimit.resolve import resolve

EXAMPLES = sorted((Path(__file__).parent.parent / "examples").glob("*.toml"))
BY_BEAMS = {"mount__route": "sections"}


def used(file: DriveFile, name: str, current: float, **edits) -> float:
    """Utilisation of a check, likely values, after edits made by hand in the file."""
    drive = resolve(with_plates(file.edited(**edits)))
    found = evaluate.curves(drive, np.array([current]), [name])[name].gives
    assert found is not None
    return float(found[0])


@pytest.fixture(scope="module")
def strong_pull():
    """A drive at a current that leaves some parts to be used up by a jerk."""
    return drive_file(**BY_BEAMS, current__set="150 A")


@pytest.fixture(scope="module")
def limits_of_it(strong_pull):
    """Its limits, found once."""
    return limits.find(strong_pull)


def causes(file, found) -> list[Cause]:
    """Every strength and grip check of a drive, by its own name."""
    result = []
    for check in evaluate.applicable(found.drive):
        if check.meets_a_jam:
            look = MADE_BY[check.name].split()[0]
            result += [c for c in explain(file, check.name, look, found).causes if c.check is check]
    return result


def test_jerk_put_into_the_file_uses_the_part_up(strong_pull, limits_of_it):
    """The starting factor found makes the utilisation 1."""
    tried = 0
    for c in causes(strong_pull, limits_of_it):
        if c.jerk is not None and 1 < c.jerk < math.inf:
            tried += 1
            at = used(strong_pull, c.check.name, 150.0, duty__starting_factor=c.jerk)
            assert at == pytest.approx(1.0, abs=1e-3), c.check.name
        elif c.jerk == math.inf:
            assert used(strong_pull, c.check.name, 150.0, duty__starting_factor=10.0) < 1
        elif c.jerk == 1.0:
            assert used(strong_pull, c.check.name, 150.0, duty__starting_factor=1.0) >= 1
    assert tried >= 3


def test_dead_stop_put_into_the_file_uses_the_part_up(limits_of_it):
    """The speed found, as motor.speed with policy.jam, makes the utilisation 1 at a small current."""
    file = drive_file(**BY_BEAMS, current__set="15 A")
    found, tried = limits.find(file), 0
    for c in causes(file, found):
        speed = c.stop.gives if c.stop else None
        if speed and math.isfinite(speed) and c.used < 0.9:
            tried += 1
            rpm = f"{speed * 30 / math.pi!r} rpm"
            at = used(file, c.check.name, 15.0, motor__speed=rpm, policy__jam=True)
            assert at == pytest.approx(1.0, abs=1e-3), c.check.name
    assert tried >= 3


def test_input_alone_put_over_uses_the_part_up(strong_pull, limits_of_it):
    """Each value said to be enough is just enough, and lies within the input's range."""
    tried = 0
    for c in causes(strong_pull, limits_of_it):
        for a in c.alone:
            tried += 1
            nearer = max(a.share - 1e-4, 0.0) / a.share
            before = a.range.likely + nearer * (a.value - a.range.likely)
            at = [
                evaluate.curves(
                    resolve(limits_of_it.file, {a.range.key: v}), np.array([150.0]), [c.check.name]
                )
                for v in (before, a.value)
            ]
            less, enough = (float(curves[c.check.name].gives[0]) for curves in at)
            assert less < 1 <= enough + 1e-3
            assert a.range.low <= a.value <= a.range.high
    assert tried >= 1


def test_current_is_that_of_check(strong_pull, limits_of_it):
    """The current that does it is the one ``check`` prints as gives at."""
    for c in causes(strong_pull, limits_of_it):
        x = next(x for x in limits_of_it.limits if x.check is c.check and x.gives is not None)
        assert c.current == x.gives
        assert (c.used >= 1) == (used(strong_pull, c.check.name, 150.0) >= 1)


def test_life_counts_no_jerk(strong_pull, limits_of_it):
    """A tired shaft: no jerk, no dead stop; the current found uses it up without a design factor."""
    (c,) = (
        x for x in explain(strong_pull, "shaft", "cracked with beach marks", limits_of_it).causes
    )
    assert c.check.name == "shaft_fatigue"
    assert c.jerk is None
    assert c.stop is None
    drive = limits_of_it.drive
    curve = evaluate.curves(drive, np.array([c.current]), ["shaft_fatigue"])["shaft_fatigue"]
    assert float(curve.safe[0]) == pytest.approx(1.0, abs=1e-6)
    assert c.current_low < c.current < c.current_high


def test_as_it_stands():
    """Far over what the frame joint holds, the drive's own pull is the answer."""
    file = drive_file(**BY_BEAMS, current__set="2000 A")
    first = explain(file, "frame joint", "slipped").causes[0]
    assert first.used > 1
    assert first.explanations[0].kind == "as it stands"


def test_dead_stop_of_a_fast_motor_is_most_probable():
    """At a small current, only the stop of a motor that turns fast enough lies within what it does."""
    slow = explain(
        drive_file(**BY_BEAMS, current__set="3 A", motor__speed="1 rpm"), "motor shaft", "bent"
    )
    fast = explain(
        drive_file(**BY_BEAMS, current__set="3 A", motor__speed="50000 rpm"), "motor shaft", "bent"
    )
    assert not slow.causes[0].explanations[0].within
    assert fast.causes[0].explanations[0].kind == "dead stop"


def test_policy_jam_does_not_hide_the_pull():
    """A dead stop that counts in the file is a cause of its own, not the drive's own pull."""
    file = drive_file(**BY_BEAMS, current__set="3 A", motor__speed="50000 rpm", policy__jam=True)
    assert explain(file, "motor shaft", "bent").causes[0].used < 1
    assert "policy.jam" not in without_stop(file).given


def test_table_is_whole():
    """Every check has its looks, every look its words; nothing is named that is not there."""
    assert set(MADE_BY) == set(BY_NAME)
    assert (
        {w for looks in MADE_BY.values() for w in looks.split()}
        == set(LOOKS)
        == set(SAYS)
        == set(NEXT)
    )
    assert {n for names in CALLED.values() for n in names} <= set(BY_NAME)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda p: p.stem)
def test_every_part_of_every_example_is_found_by_its_words(path):
    """Each part's own words and each check's name lead to that check."""
    drive = resolve(read(path))
    for check in evaluate.applicable(drive):
        assert check in parts_named(drive, check.name.replace("_", " "))
        assert parts_named(drive, check.part)


@pytest.mark.parametrize("number", some(list(range(len(EXAMPLES)))))
def test_every_example_answers(number):
    """One part of each example, another from one to the next, with every look made by it."""
    file = read(EXAMPLES[number])
    checks = evaluate.applicable(resolve(file))
    check = checks[(7 * number) % len(checks)]
    look = MADE_BY[check.name].split()[-1]
    shown = CliRunner().invoke(
        main, ["explain-failure", str(EXAMPLES[number]), check.name, "--looks", look]
    )
    assert shown.exit_code == 0, shown.output
    assert "At the " in shown.output.splitlines()[0]


def test_every_part_and_look_of_one_drive(limits_of_it, strong_pull):
    """Every applicable part with every look gives an answer or one line."""
    answered = 0
    for part in {c.part for c in evaluate.applicable(limits_of_it.drive)}:
        for look in LOOKS:
            made = any(
                look in MADE_BY[c.name].split() for c in parts_named(limits_of_it.drive, part)
            )
            if not made:
                with pytest.raises(InputError, match="known for it"):
                    explain(strong_pull, part, look, limits_of_it)
                continue
            found = explain(strong_pull, part, look, limits_of_it)
            answered += 1
            assert json.loads(json.dumps(failure_text.record(found), allow_nan=False))
    assert answered >= 15


@pytest.mark.parametrize(
    ("part", "look", "said"),
    [
        ("motor shft", "bent", "did you mean motor shaft"), ("key", "snaped", "did you mean snapped"),
        ("key", "thrown", "known for it: crushed, sheared"), ("jackshaft", "bent", "no such part"),
        ("gearbox", "bent", "parts of this drive"), ("motor shaft", "", "expected one of: bent"), ("", "bent", "PART"),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(tmp_path, part, look, said):
    """One line with a suggestion, status 2."""
    from conftest import BASE

    path = tmp_path / "drive.toml"
    path.write_text(toml_text(BASE))
    shown = CliRunner().invoke(main, ["explain-failure", str(path), part, "--looks", look])
    lines = shown.output.strip().splitlines()
    assert shown.exit_code == 2, shown.output
    assert len(lines) == 1
    assert said in lines[0]


def test_words_for_looks():
    """Plain words lead to the nine looks."""
    said = {
        "Beach marks": "cracked",
        "came off": "thrown",
        "broken in two": "snapped",
        "wallowed": "crushed",
    }
    assert {w: look_named(w) for w in said} == said
