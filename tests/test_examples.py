"""The example files: each runs from the command line, and shows the thing its first lines promise."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest
from click.testing import CliRunner

from conftest import some
from mountlimit.assess import assess
from mountlimit.cli import main
from mountlimit.drivefile import read
from mountlimit.mounts import FORMS

FOLDER = Path(__file__).parent.parent / "examples"
FILES = sorted(FOLDER.glob("*.toml"))


@dataclass(frozen=True, kw_only=True)
class First:
    """What sets the safe current, what gives first, and whether the set current is over (exit 1)."""

    safe: str
    gives: str
    exit_status: int


FIRST = {
    "apple_press": First(safe="alignment", gives="motor_shaft", exit_status=0),
    "cider_mill": First(safe="bolt_slip", gives="motor_shaft", exit_status=0),
    "duck_weed_rake": First(safe="tube_crush", gives="motor_shaft", exit_status=1),
    "gate_winder": First(safe="alignment", gives="motor_shaft", exit_status=0),
    "chaff_blower": First(safe="mount_section", gives="front_bearing", exit_status=0),
    "grain_cleaner": First(safe="alignment", gives="motor_shaft", exit_status=0),
    "hay_elevator": First(safe="alignment", gives="motor_shaft", exit_status=1),
    "lock_gate": First(safe="alignment", gives="frame_weld", exit_status=0),
    "kelp_hauler": First(safe="alignment", gives="motor_shaft", exit_status=0),
    "log_carrier": First(safe="set_screw", gives="set_screw", exit_status=0),
    "bean_sheller": First(safe="alignment", gives="mount_section", exit_status=1),
    "nut_shaker": First(safe="tube_grip", gives="tube_grip", exit_status=0),
    "orchard_barrow": First(safe="alignment", gives="motor_shaft", exit_status=0),
    "peat_saw": First(safe="alignment", gives="motor_shaft", exit_status=1),
    "pulp_stirrer": First(safe="band_grip", gives="band_grip", exit_status=0),
    "reed_boat": First(safe="alignment", gives="bolt_slip", exit_status=1),
    "rope_tow": First(safe="bolt_slip", gives="bolt_slip", exit_status=0),
    "sand_washer": First(safe="foot_slip", gives="foot_slip", exit_status=0),
    "sluice_winder": First(safe="mount_section", gives="mount_section", exit_status=1),
    "snow_pusher": First(safe="mount_section", gives="front_bearing", exit_status=0),
    "stone_sledge": First(safe="bolt_slip", gives="bolt_slip", exit_status=1),
    "tide_gate": First(safe="bolt_slip", gives="motor_shaft", exit_status=0),
    "gravel_roller": First(safe="bolt_slip", gives="front_bearing", exit_status=0),
    "turf_roller": First(safe="bolt_slip", gives="bolt_slip", exit_status=1),
    "willow_stripper": First(safe="driven_key", gives="jackshaft_bearings", exit_status=0),
    "clay_pug": First(safe="bolt_slip", gives="key", exit_status=0),
    "turf_lifter": First(safe="freewheel", gives="freewheel", exit_status=1),
}


@cache
def answer_of(name):
    """Work an example out once."""
    return assess(read(FOLDER / f"{name}.toml"))


def test_every_example_stands_in_the_table():
    """No example is left unlooked at, and there are eight or more."""
    assert {p.stem for p in FILES} == set(FIRST)
    assert len(FIRST) >= 8


@pytest.mark.parametrize("name", some(list(FIRST)))
def test_runs_from_the_command_line(name):
    """``mountlimit check`` answers on its output, with nothing on the error stream."""
    result = CliRunner().invoke(main, ["check", str(FOLDER / f"{name}.toml")])
    assert result.exit_code == FIRST[name].exit_status, result.output
    assert result.stdout.startswith(("Safe to", "Not safe"))
    assert not result.stderr


@pytest.mark.parametrize("name", some(list(FIRST), 1))
def test_what_comes_first(name):
    """The safe current and the first thing to give are set by what the table says."""
    answer, first = answer_of(name), FIRST[name]
    assert answer.first_safe.limit.check.name == first.safe
    assert answer.first_gives is not None
    assert answer.first_gives.limit.check.name == first.gives
    assert answer.over == bool(first.exit_status)


@pytest.mark.parametrize("path", FILES, ids=lambda p: p.stem)
def test_says_that_its_numbers_are_invented(path):
    """The first line says so, the second what there is to see."""
    lines = path.read_text(encoding="utf-8").splitlines()
    assert lines[0].startswith("# Invented demo data, no real machine")
    head = " ".join(line for line in lines[:3] if line.startswith("#"))
    assert "What to see:" in head


def _line(name, check):
    return next(x for x in answer_of(name).lines if x.limit.check.name == check)


def test_twisting_plate_is_most_of_what_leans():
    """Orchard barrow: plate and shaft lean most; what gives lies far above the safe current."""
    answer = answer_of("orchard_barrow")
    assert answer.first_gives.limit.gives > 3 * answer.first_safe.limit.safe


def test_shaft_leans_more_than_the_plate():
    """Grain cleaner: over nine tenths of the lean is the motor shaft's."""
    lean = {
        p.name: abs(float(p.turn[0]))
        for p in answer_of("grain_cleaner").at_set.response.displacements
    }
    assert lean.pop("motor shaft") > 9 * sum(lean.values())


def test_frame_gives_on_the_elevator_but_not_on_the_sledge():
    """Hay elevator: a frame member leans too; stone sledge: a rigid frame has no part in it."""
    names = {
        name: {p.name for p in answer_of(name).at_set.response.displacements}
        for name in ("hay_elevator", "stone_sledge")
    }
    assert "frame member" in names["hay_elevator"] - names["stone_sledge"]


def test_plastic_creeps_past_its_strain_at_the_continuous_current():
    """Reed boat: the strain held for hours is used up below the continuous current."""
    strain = _line("reed_boat", "mount_strain").limit
    assert strain.current_kind == "continuous"
    assert 0 < strain.safe < float(answer_of("reed_boat").drive.current.continuous)


def test_wheels_spin_below_every_safe_limit():
    """Snow pusher: even on the best ground the wheels spin before any limit of the peak setting."""
    answer = answer_of("snow_pusher")
    assert answer.uses.traction_low < answer.uses.traction_high < answer.first_safe.limit.safe
    assert answer.uses.traction_high < float(answer.drive.current.wanted)


def test_yield_comes_before_misalignment():
    """Sluice winder: the soft stub bends for good before the chain strays."""
    mount, line = _line("sluice_winder", "mount_section"), _line("sluice_winder", "alignment")
    assert mount.limit.safe < line.limit.safe


def test_torque_grows_with_the_teeth():
    """Turf lifter: the freewheel is passed far below anything on the motor's side."""
    safe = {x.limit.check.name: x.limit.safe for x in answer_of("turf_lifter").lines}
    assert safe["freewheel"] < 0.5 * min(safe["taper_bush"], safe["hub_bolts"], safe["motor_shaft"])


def test_motor_climbs_out_of_its_seat():
    """Pulp stirrer: the seat's side is climbed before friction lets the motor turn; more tension helps."""
    assert _line("pulp_stirrer", "band_grip").station.startswith(
        "motor climbs the side of its seat"
    )
    tight = read(FOLDER / "pulp_stirrer.toml").edited(motor__tightening_torque="5 N*m")
    assert (
        assess(tight).first_safe.limit.safe > 1.5 * answer_of("pulp_stirrer").first_safe.limit.safe
    )


def test_stiff_screws_would_line_the_apple_press_up():
    """Apple press: with screws that do not give, four tenths more current at least."""
    stiff = read(FOLDER / "apple_press.toml").edited(mount__screw_stiffness="1000 kN/mm")
    assert (
        assess(stiff).first_safe.limit.safe > 1.4 * answer_of("apple_press").first_safe.limit.safe
    )


def test_strut_leaves_the_lean_to_the_shaft():
    """Gate winder: over nine tenths of the lean is the motor shaft's."""
    lean = {
        p.name: abs(float(p.turn[0]))
        for p in answer_of("gate_winder").at_set.response.displacements
    }
    assert lean.pop("motor shaft") > 9 * sum(lean.values())


def test_the_examples_cover_forms_families_and_units():
    """Both forms, three families of material, metric and inch."""
    drives = [answer_of(name).drive for name in FIRST]
    assert {d.mount.form for d in drives} == set(FORMS)
    assert len({d.mount.material.card.family for d in drives}) >= 3
    assert {d.system for d in drives} == {"metric", "inch"}
