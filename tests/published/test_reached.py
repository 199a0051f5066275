"""Published cases prove what the commands run: every function they name is reached.

The commands check and why are run over drives that between them ask for everything; chains and
steps over one.  ``test_catalogue.py`` looks whether the cases call what they name.
"""

from __future__ import annotations

from io import StringIO
from typing import Any

import published_cases as cases
import pytest
from called import calls, code
from rich.console import Console

from conftest import angle_file, block_file, drive_file, saddle_file, welded_file
from mountlimit import assess, chains, crossings, evaluate, limits, meshed, open_section, steps, why
from mountlimit.cards import folder
from mountlimit.drivefile import DriveFile, read
from mountlimit.evaluate import applicable
from mountlimit.report import chains_text, record, steps_text, text, worked_text
from mountlimit.resolve import resolve
from mountlimit.worked import FORMULAS

VEHICLE = {
    "use__mass": "100 kg", "use__wheelbase": "1 m", "use__front_to_centre": "0.6 m",
    "use__centre_height": "0.5 m", "use__wheel_diameter": "400 mm",
}  # fmt: skip
D_SHAFT = {
    "hub__key": None, "hub__across_flats": "11 mm", "hub__bolts": "6 x M5", "hub__bolt_circle": "40 mm",
}  # fmt: skip
TOOTHED = {
    "hub__sprocket_material": "6082", "driven__sprocket_material": "6082", "driven__bolts": "6 x M8",
    "driven__bolt_circle": "120 mm",
}  # fmt: skip
PINNED = {
    "hub__key": None, "hub__pin": "3 mm", "hub__outer_diameter": "22 mm", "driven__pin": "6 mm",
    "driven__shear_pin": True, "driven__shaft_diameter": "25 mm", "driven__outer_diameter": "40 mm",
}  # fmt: skip
CLAMP = {"hub__key": None, "hub__drive": "clamp", "hub__screws": "2 x M6"}
BETWEEN = {
    "driven__shaft_diameter": "25 mm", "driven__overhang": "60 mm", "driven__bearing_span": "300 mm",
    "driven__sprocket_at": "between the bearings", "driven__bearing": "6205",
    "driven__weight": "400 N", "driven__weight_overhang": "50 mm",
}  # fmt: skip
DRIVEN = {
    "driven__shaft_diameter": "25 mm", "driven__overhang": "35 mm", "driven__weld_diameter": "50 mm",
    "driven__weld_leg": "4 mm", "driven__freewheel_torque": "200 N*m",
}  # fmt: skip


PULLED = {
    "pull_test__force": "200 N", "pull_test__movement": "0.3 mm", "pull_test__tip_movement": "0.5 mm", "pull_test__stick": "500 mm",
    "torque_test__current": "30 A", "torque_test__force": "14 N", "torque_test__lever": "250 mm",
}  # fmt: skip
FURTHER = (
    "gate_winder", "chaff_blower", "kelp_hauler", "turf_roller", "willow_stripper", "clay_pug", "pulp_stirrer",
)  # fmt: skip
# Joined edge to face in other ways than wood screws into wood.
SCREWED = (
    {},
    {"mount__screw_kind": "dowel"},
    {"second__material": "birch_ply", "second__thickness": "18 mm"},
    {"mount__material": "hdpe", "second__material": "hdpe", "second__thickness": "20 mm"},
    {"mount__material": "6061", "mount__screws": "5 x M5", "mount__screw_length": "20 mm"},
)


def drives() -> list[DriveFile]:
    """Give drives that between them ask for everything the program knows."""
    press = read(folder("examples") / "apple_press.toml")
    return [
        drive_file(
            chain__slack="2 %", chain__link="clip", motor__speed="2500 rpm",
            duty__spectrum=[["100 %", "20 %"], ["40 %", "60 %"]], shaft__rear_bearing="6001", motor__holes="slotted", hub__drive="set screw",
            frame__member="round tube", frame__size="40 mm", frame__place=0.3, hub__set_screw="2 x M6", duty__reverse="40 %", **VEHICLE,
        ),
        angle_file(
            mount__material="hdpe", mount__thickness="20 mm", shaft__face_overhang="50 mm",
            motor__torque_constant=None, motor__speed_constant="79 rpm/V", current__kind="phase peak",
            duty__ramp="0.2 s", fixings__holes="slotted", fixings__tightening_torque="12 N*m",
            hub__key=None, use__wheel_load="400 N", use__wheel_diameter="400 mm", frame__member="angle", frame__size="40 mm",
        ),
        drive_file(**D_SHAFT, **DRIVEN, driven__sprocket_material="pom_c", driven__bolts="6 x M8", driven__bolt_circle="120 mm"),
        drive_file(**{**BETWEEN, "motor__speed": "2500 rpm"}),
        drive_file(frame__member="flat bar", frame__size="40 mm", **{**D_SHAFT, "hub__flats": 2}),
        drive_file(
            motor__torque_constant=None, motor__rated_torque="9 N*m", motor__rated_current="80 A",
            fixings__bolts="2 x M8", fixings__span_along=None, use__driven="front", duty__ramp="0 s",
            shaft__diameter="60 mm", hub__key="18x11x60 mm", shaft__bearing=None, motor__bolt_circle="90 mm",
            motor__bore="50 mm", frame__member="square tube", frame__size="40 mm", **VEHICLE,
        ),
        drive_file(
            mount__material="birch_ply", mount__thickness="20 mm", fixings__bolts="1 x M8",
            fixings__span_across="0 mm", fixings__span_along=None, use__driven="all",
            frame__member="rectangular tube", frame__size="40 mm", frame__depth="60 mm", frame__ends="hinged", **{**CLAMP, "hub__drive": "taper bush"},
            **VEHICLE,
        ),
        angle_file(
            fixings__holes="slotted", fixings__jack_screw="M8", frame__member="channel", frame__size="40 mm", **CLAMP, **BETWEEN, **TOOTHED,
        ),
        drive_file(
            mount__form="twin plates", mount__gap="140 mm", mount__spacers=4, mount__spacer_diameter="16 mm",
            mount__spacers_across="90 mm", mount__spacers_along="90 mm", fixings__bolts="8 x M8",
        ),
        welded_file(mount__material="6061", **PINNED),
        welded_file(fixings__weld_sides="one"),
        drive_file(**PULLED),
        saddle_file(mount__tube="with the shaft"),
        block_file(frame__member="square tube", frame__size="40 mm"),
        drive_file(
            mount__form="foot motor", mount__free_length=None, mount__width="190 mm",
            motor__bolts="4 x M8", motor__bolt_circle=None, motor__shaft_height="71 mm",
            motor__foot_across="112 mm", motor__foot_along="90 mm", motor__foot_to_face="30 mm",
            fixings__span_across="150 mm", fixings__span_along="160 mm",
        ),
        *(read(folder("examples") / f"{name}.toml") for name in FURTHER),
        *(press.edited(**changes) for changes in SCREWED),
        read(folder("examples") / "gate_winder.toml").edited(
            mount__strut_diameter=None, mount__strut_bore=None, mount__strut_width="20 mm",
            mount__strut_thickness="5 mm",
        ),
    ]  # fmt: skip


def check_and_why(found: limits.Found, worked: set[str]) -> None:
    """Do what the two commands do with one drive; checks in ``worked`` are not worked out again.

    The search has been done, at a tenth of the time it takes while calls are gathered; what it runs
    again and again is run once.
    """
    file, console = found.file, Console(file=StringIO())
    evaluate.curves(resolve(file), crossings.grid(found.reach))
    assessment = assess.of_found(found)
    record.record(assessment)
    text.write(assessment, console)
    for check in applicable(found.drive):
        if check.name in worked:
            continue
        worked.add(check.name)
        worked_text.write(why.work(file, check.name, found=found), console)


def other_commands(file: DriveFile) -> None:
    """Do what chains and steps do: what else calls formulas of its own."""
    chains_text.record(chains.compare(file), 60.0)
    told = read(folder("examples") / "orchard_barrow.toml")  # knows the current held for hours
    steps_text.record(steps.plan(told))


@pytest.fixture(scope="module")
def reached() -> set[Any]:
    """Give the code of everything called while check and why run."""
    for solved in (
        meshed.net_section,
        meshed.rectangle,
        open_section._solved,
    ):  # kept answers would hide their solver
        solved.cache_clear()
    worked: set[str] = set()
    with calls() as codes:
        files = drives()
        limits.find(files[0])
    for file in files:
        found = limits.find(file)
        with calls() as more:
            check_and_why(found, worked)
        codes |= more
    return codes


@pytest.mark.parametrize("case", cases.CASES)
def test_functions_of_the_case_are_reached(case: str, reached: set[Any]) -> None:
    for name in cases.CASES[case][2]:
        assert code(name) in reached or name in cases.ELSEWHERE, name


def test_every_formula_is_reached_or_waits(reached: set[Any]) -> None:
    """A formula no command calls is either listed as waiting for its check or taken out."""
    with calls() as others:
        other_commands(drives()[0])
    idle = {name for name in FORMULAS if code(name) not in reached | others}
    assert idle == set(cases.WAITING)
    elsewhere = {
        name for case in cases.CASES.values() for name in case[2] if code(name) not in reached
    }
    assert elsewhere == set(cases.ELSEWHERE)
