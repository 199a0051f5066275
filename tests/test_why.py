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
from mountlimit.errors import MountlimitError
from mountlimit.resolve import resolve

NAMES = {n: getattr(np, n) for n in ("sqrt", "sin", "cos", "tan", "exp", "log", "tanh", "pi")}
NAMES |= {"atan": np.arctan, "asin": np.arcsin, "abs": abs, "max": max, "min": min}

# Of the examples of a plain plate or angle two are enough; every other form has its own.
PLAIN = ("grain_cleaner", "log_carrier", "sluice_winder", "snow_pusher", "stone_sledge")
EXAMPLES = (p for p in sorted(folder("examples").glob("*.toml")) if p.stem not in PLAIN)
FILES = {p.stem: read(p) for p in EXAMPLES}
FILES["plastic"] = drive_file(
    mount__material="hdpe", mount__thickness="20 mm", shaft__face_overhang="50 mm"
)
FILES["reversing"] = angle_file(
    duty__reverse="50 %", chain__slack="2 %", hub__drive="set screw", hub__set_screw="1 x M6"
)
FILES["saddle on a square cross tube"] = saddle_file(
    frame__member="square tube", mount__tube="with the shaft"
)
FILES["dead stop"] = drive_file(motor__speed="30 rpm", policy__jam=True, chain__link="clip")
MEMBERS = {
    "angle rail": angle_file(chain__pull="away", frame__member="angle", frame__place=0.3),
    "channel rail": drive_file(chain__pull="20 deg", frame__member="channel", frame__ends="hinged"),
    "flat rail": drive_file(chain__pull="away", frame__member="flat bar"),
}
FASTENED = {
    "bolts": "6 x M5", "bolt_circle": "60 mm", "tightening_torque": "5 N*m", "weld_diameter": "40 mm",
    "weld_leg": "4 mm",
}  # fmt: skip
HELD = {
    "double D": drive_file(
        hub__key=None, hub__flats=2, hub__across_flats="10 mm", driven__key="8 x 7 x 30 mm",
        driven__shaft_diameter="25 mm", driven__overhang="35 mm", driven__freewheel_torque="200 N*m",
        driven__notch="keyway", driven__weight="300 N", driven__weight_overhang="50 mm",
        driven__bearing="6205", driven__bearing_span="200 mm", shaft__rear_bearing="6001",
        motor__speed="1500 rpm", duty__spectrum=[["100 %", "10 %"], ["40 %", "50 %", "80 %"]],
        **{f"{part}__{k}": v for part in ("hub", "driven") for k, v in FASTENED.items()},
    ),
    "bush": drive_file(
        hub__key=None, hub__drive="taper bush", hub__screws="2 x M6", driven__shaft_diameter="25 mm",
        driven__overhang="60 mm", driven__bearing_span="300 mm", driven__sprocket_at="between the bearings",
        driven__bearing="UC205", driven__weight="300 N", driven__weight_overhang="50 mm",
        driven__weight_at="between the bearings", motor__speed="1500 rpm",
    ),
    "dead axle": drive_file(
        driven__axle="dead", driven__shaft_diameter="15 mm", driven__overhang="35 mm",
        driven__shaft_ultimate="470 MPa", driven__weight="300 N", driven__weight_overhang="50 mm",
    ),
    "rated": drive_file(hub__key=None, hub__rated_torque="90 N*m"),
    "toothed": drive_file(
        hub__sprocket_material="6082", driven__sprocket_material="pom_c", driven__bolts="6 x M6",
        driven__bolt_circle="150 mm", chain__wear="1 %",
    ),
    "pinned": drive_file(
        hub__key=None, hub__pin="4 mm", hub__outer_diameter="20 mm", driven__pin="6 mm",
        driven__pin_circle="60 mm", driven__bolts="6 x M6", driven__bolt_circle="150 mm",
        driven__sprocket_material="6082",
    ),
}  # fmt: skip
SHORT = (
    "flats",
    "taper_bush",
    "freewheel",
    "rear_bearing",
    "rear_bearing_life",
    "bearing_life",
)  # of the checks of hub and driven side
CASES = [(f, c.name) for f, file in FILES.items() for c in evaluate.applicable(resolve(file))]
CASES += [(name, "alignment") for name in MEMBERS]
PULLED = {"pulled": drive_file(
    pull_test__force="200 N", pull_test__movement="0.3 mm", pull_test__tip_movement="0.5 mm", pull_test__stick="500 mm",
    torque_test__current="30 A", torque_test__force="14 N", torque_test__lever="250 mm", frame__member="flat bar",
)}  # fmt: skip
CASES += [("pulled", "alignment")]
JACK = {"jack screw": drive_file(
    chain__pull="away", fixings__holes="slotted", fixings__jack_screw="M6", fixings__friction=0.15,
)}  # fmt: skip
CASES += [("jack screw", "jack_screw"), ("jack screw", "bolt_slip")]
CASES += [
    (f, c.name)
    for f, file in HELD.items()
    for c in evaluate.applicable(resolve(file))
    if c.name in SHORT or c.name.startswith(("hub_", "driven_", "sprocket_"))
]
FILES |= MEMBERS | HELD | JACK | PULLED


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


@pytest.mark.parametrize(
    "check", ["chain_static", "key", "motor_shaft", "mount_section", "bolt_slip"]
)
def test_worked_for_a_dead_stop(check):
    """Worked at the speed that uses the part up: 1; every number has an origin; the speed is named."""
    work = why.work(FILES["dead stop"], check, dead_stop=True)
    assert work.utilisation == pytest.approx(1.0, rel=1e-6)
    assert work.case.startswith("jam")
    seen, keys = set(), set()
    for step in work.steps:
        for entry in step.entries:
            assert entry.key or entry.step in seen or entry.value == 0, (step.title, entry)
            keys.add(entry.key)
        seen.add(step.index)
    assert {"speed", "duty.rotor_inertia", "chain.stretch_ratio"} <= keys


def test_dead_stop_of_a_stiffness_check_is_refused():
    """A dead stop is a matter of strength and grip."""
    with pytest.raises(MountlimitError, match="strength and grip"):
        why.work(FILES["dead stop"], "alignment", dead_stop=True)


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
