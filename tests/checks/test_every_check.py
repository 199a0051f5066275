"""Every check of the program: it gets worse the right way, refuses nonsense, and was worked by hand.

A new check needs one row in ``ROWS`` and one in ``BY_HAND``; without them a test here fails.
"""

from __future__ import annotations

import ast
import copy
import re
import tomllib
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from click.testing import CliRunner

from conftest import changed, toml_text
from mountlimit import evaluate, safe_side, starter
from mountlimit.checks import BY_NAME, CHECKS
from mountlimit.cli import main
from mountlimit.drivefile import DriveFile, parse
from mountlimit.plate_route import with_plates
from mountlimit.resolve import resolve
from sound import ON_A_TUBE, SOUND, Edit

TESTS = Path(__file__).parents[1]
CURRENTS = np.geomspace(0.1, 1e5, 120)


@dataclass(frozen=True)
class Row:
    """A check: the drive it speaks of, what makes it worse, and an input it refuses."""

    check: str
    base: Edit  # over the sound drive, or over the starter file of ``form``
    worse: tuple[Edit, ...]
    bad: tuple[str, Any]  # key and what stands there
    form: str = ""


RING = {
    "bolts": "4 x M6",
    "bolt_circle": "60 mm",
    "bolt_class": "8.8",
    "preload": "7 kN",
    "friction": 0.15,
}
WELD = {"weld_diameter": "45 mm", "weld_leg": "4 mm", "weld_material": "s235"}


def _of(side: str, keys: Edit) -> Edit:
    return {f"{side}__{key}": value for key, value in keys.items()}


TURNS = {"motor__speed": "1500 rpm"}
PLASTIC = {"mount__material": "pe_hd", "mount__thickness": "20 mm", "mount__temperature": "23 degC"}
ONE_ROW = {"fixings__span_along": "0 mm", "fixings__bolts": "2 x M8"}
SLOTS = {"motor__holes": "slotted", "motor__spigot": "no"}

STAGE = {
    **TURNS, "second_chain__type": "50", "second_chain__driving_teeth": 15,
    "second_chain__driven_teeth": 45, "second_chain__centre_distance": "420 mm",
    "second_chain__joint_pressure": "24 MPa", "jackshaft__diameter": "25 mm",
    "jackshaft__bearing_span": "80 mm", "jackshaft__first_at": "-24 mm", "jackshaft__second_at": "106 mm",
    "jackshaft__angle": "120 deg", "jackshaft__bearing": "6205", "jackshaft__notch": "shoulder, rounded",
    "jackshaft__first_key": "8 x 7 x 25 mm", "jackshaft__second_key": "8 x 7 x 25 mm",
}  # fmt: skip
LASTS = {"duty__bearing_hours": "500 h"}
LONGER = ({"duty__bearing_hours": "4000 h"},)
OUTBOARD = {
    **TURNS,
    **LASTS,
    "outboard__at": "60 mm",
    "outboard__bearing": "6005",
    "outboard__gap": "0.01 mm",
}
REAR = {**TURNS, **LASTS, "shaft__rear_bearing": "6203"}
AXLE = {
    **TURNS, **LASTS, "driven__shaft_diameter": "25 mm", "driven__overhang": "40 mm",
    "driven__bearing_span": "200 mm", "driven__bearing": "6205", "driven__notch": "shoulder, rounded",
    "driven__axle": "turning", "driven__shaft_ultimate": "600 MPa",
}  # fmt: skip

ROWS = (
    Row("alignment", {}, ({"shaft__face_overhang": "45 mm"}, {"chain__slack": "8 %"}), ("chain.skew", "0.1 mm")),
    Row("running_alignment", {}, ({"frame__wall": "1.5 mm"}, {"chain__skew": "0.05 deg"}), ("policy.running_skew", "9 deg")),
    Row("bearing_life", {**TURNS, "duty__bearing_hours": "500 h"}, ({"duty__bearing_hours": "4000 h"},), ("duty.bearing_hours", "0 h")),
    Row("bolt_bearing", ONE_ROW, ({"fixings__edge": "10 mm"}, {"mount__thickness": "8 mm"}), ("fixings.edge", "0 mm")),
    Row("bolt_slip", {}, ({"fixings__preload": "15 kN"}, {"fixings__holes": "slotted"}), ("fixings.friction", 0)),
    Row("bolt_strength", ONE_ROW, ({"fixings__bolt_class": "5.8"}, {"shaft__face_overhang": "45 mm"}), ("fixings.bolt_class", "8.9")),
    Row("chain_fatigue", {}, ({"chain__driving_teeth": 13}, {"chain__type": "41"}), ("chain.driving_teeth", 5)),
    Row("chain_pin_pressure", {**TURNS, "chain__joint_pressure": "24 MPa"}, ({"chain__driving_teeth": 13},), ("chain.joint_pressure", "24 N")),
    Row("chain_power", TURNS, ({"chain__driving_teeth": 12},), ("motor.speed", "-5 rpm")),
    Row("chain_static", {}, ({"duty__starting_factor": 2.5}, {"chain__type": "35"}), ("chain.type", "44")),
    Row("driven_bolt_slip", {**_of("driven", RING), "duty__reverse": 1}, ({"driven__bolt_circle": "45 mm"}, {"chain__driven_teeth": 70}), ("driven.friction", 2)),
    Row("driven_bolts", _of("driven", RING), ({"driven__bolt_class": "4.6"}, {"chain__driven_teeth": 70}), ("driven.bolts", "4 M6")),
    Row("driven_key", {"driven__shaft_diameter": "25 mm", "driven__key": "8 x 7 x 30 mm"}, ({"driven__key": "8 x 7 x 18 mm"},), ("driven.key", "8 x 7")),
    Row("driven_shaft", {"driven__shaft_diameter": "25 mm", "driven__overhang": "40 mm"}, ({"driven__overhang": "70 mm"},), ("driven.overhang", "0 mm")),
    Row("driven_weld", _of("driven", WELD), ({"driven__weld_share": 0.5},), ("driven.weld_leg", "0 mm")),
    Row("flats", {"hub__key": None, "hub__flat_depth": "2 mm", "hub__flat_length": "25 mm"}, ({"hub__flat_length": "12 mm"},), ("hub.flat_depth", "15 mm")),
    Row("foot_bolts", {}, ({"motor__bolts": "4 x M6"},), ("motor.foot_along", "0 mm"), "foot motor"),
    Row("foot_slip", {}, ({"motor__tightening_torque": "10 N*m"},), ("motor.face_friction", 0), "foot motor"),
    Row("frame_weld", {}, ({"fixings__weld_leg": "3.5 mm"},), ("fixings.weld_leg", "0 mm"), "welded plate"),
    Row("freewheel", {"driven__freewheel_torque": "300 N*m"}, ({"driven__freewheel_torque": "200 N*m"},), ("driven.freewheel_torque", "0 N*m")),
    Row("front_bearing", {}, ({"shaft__face_overhang": "45 mm"}, {"shaft__bearing": "6205"}), ("shaft.bearing", "6999")),
    Row("hub_bolt_slip", {**_of("hub", RING), "duty__reverse": 1}, ({"hub__preload": "4 kN"},), ("hub.bolt_circle", "20 mm")),
    Row("hub_bolts", _of("hub", RING), ({"hub__bolts": "3 x M6"},), ("hub.bolts", "4 x M7")),
    Row("hub_weld", _of("hub", WELD), ({"hub__weld_leg": "2.5 mm"},), ("hub.weld_material", "birch_ply")),
    Row("key", {}, ({"hub__key": "8 x 7 x 20 mm"}, {"hub__key_yield": "250 MPa"}), ("hub.key", "8 x 7")),
    Row("motor_bolts", {}, ({"motor__bolts": "3 x M6"}, {"motor__bolt_class": "4.6"}), ("motor.bolt_circle", "0 mm")),
    Row("motor_face_slip", SLOTS, ({"motor__preload": "5 kN"},), ("motor.face_friction", 1.5)),
    Row("motor_shaft", {}, ({"shaft__diameter": "22 mm"}, {"shaft__face_overhang": "45 mm"}), ("shaft.yield_strength", "0 MPa")),
    Row("motor_threads", {}, ({"motor__thread_depth": "6 mm"}, {"motor__thread_strength": "120 MPa"}), ("motor.thread_depth", "0 mm")),
    Row("mount_fatigue", {}, ({"duty__reverse": 0.5}, {"mount__thickness": "9 mm"}), ("mount.fatigue_strength", "0 MPa")),
    Row("mount_section", {}, ({"mount__thickness": "9 mm"}, {"shaft__face_overhang": "45 mm"}), ("mount.yield_strength", "9 GPa")),
    Row("mount_strain", PLASTIC, ({"mount__thickness": "16 mm"}, {"mount__temperature": "40 degC"}), ("mount.temperature", "-80 degC")),
    Row("seam_screws", {}, ({"mount__screw_length": "40 mm"},), ("mount.screw_length", "0 mm"), "built-up angle"),
    Row("set_screw", {"hub__key": None, "hub__set_screw": "1 x M8"}, ({"hub__set_screw": "1 x M6"}, {"duty__reverse": 0.2}), ("hub.set_screw", "1 x M7")),
    Row("shaft_fatigue", {}, ({"shaft__notch": "groove"},), ("shaft.notch", "step")),
    Row("spacer_strength", {"mount__spacer_yield": "300 MPa"}, ({"mount__spacer_diameter": "12 mm"},), ("mount.spacer_yield", "0 MPa"), "twin plates"),
    Row("strut", {"mount__strut_diameter": "6 mm"}, ({"mount__strut_diameter": "5 mm"},), ("mount.strut_diameter", "0 mm"), "plate with strut"),
    Row("taper_bush", {"hub__key": None, "hub__drive": "taper bush", "hub__rated_torque": "150 N*m"}, ({"hub__rated_torque": "100 N*m"},), ("hub.rated_torque", "0 N*m")),
    Row("tube_crush", {**ON_A_TUBE, "mount__tube": "with the shaft", "chain__pull": "towards", "fixings__clamp_preload": "5 kN"},
        ({"frame__wall": "3.6 mm"}, {"fixings__clamp_preload": "6 kN"}), ("frame.wall", "25 mm")),
    Row("tube_grip", {}, ({"fixings__clamp_tightening_torque": "5 N*m"},), ("fixings.clamp_surface", "greasy"), "saddle"),
    Row("driven_bearings", AXLE, ({"driven__overhang": "70 mm"},), ("driven.bearing", "6999")),
    Row("driven_bearing_life", AXLE, LONGER, ("driven.bearing_span", "0 mm")),
    Row("driven_shaft_fatigue", AXLE, ({"driven__notch": "groove"},), ("driven.notch", "step")),
    Row("driven_weld_fatigue", _of("driven", WELD), ({"driven__weld_sides": 1, "driven__weld_leg": "3 mm"},), ("driven.weld_diameter", "0 mm")),
    Row("frame_weld_fatigue", {"duty__starts": 100000}, ({"duty__starts": 1000000},), ("duty.starts", 0), "welded plate"),
    Row("hub_weld_fatigue", _of("hub", WELD), ({"hub__weld_share": 0.6},), ("hub.weld_share", 2)),
    Row("jackshaft", STAGE, ({"jackshaft__first_at": "-40 mm", "jackshaft__second_at": "125 mm"},), ("jackshaft.diameter", "0 mm")),
    Row("jackshaft_bearing_life", {**STAGE, **LASTS}, LONGER, ("jackshaft.bearing_span", "0 mm")),
    Row("jackshaft_bearings", STAGE, ({"jackshaft__bearing": "6005"},), ("jackshaft.bearing", "6999")),
    Row("jackshaft_fatigue", STAGE, ({"jackshaft__notch": "groove"},), ("jackshaft.notch", "step")),
    Row("jackshaft_keys", STAGE, ({"jackshaft__first_key": "8 x 7 x 18 mm"},), ("jackshaft.first_key", "8 x 7")),
    Row("outboard_bearing", OUTBOARD, ({"outboard__bearing": "6005", "shaft__face_overhang": "50 mm"},), ("outboard.at", "2 mm")),
    Row("outboard_bearing_life", OUTBOARD, LONGER, ("outboard.stiffness", "0 kN/mm")),
    Row("pull_through", {}, ({"mount__thickness": "9 mm"},), ("mount.thickness", "0 mm")),
    Row("rear_bearing", REAR, ({"shaft__rear_bearing": "6003"},), ("shaft.rear_bearing", "6999")),
    Row("rear_bearing_life", REAR, LONGER, ("shaft.rear_dynamic_rating", "0 N")),
    Row("second_chain_fatigue", STAGE, ({"second_chain__driving_teeth": 12},), ("second_chain.driving_teeth", 5)),
    Row("second_chain_pin_pressure", STAGE, ({"second_chain__joint_pressure": "15 MPa"},), ("second_chain.joint_pressure", "24 N")),
    Row("second_chain_power", STAGE, ({"second_chain__driving_teeth": 13},), ("second_chain.slack", "40 %")),
    Row("second_chain_static", STAGE, ({"second_chain__link": "clip"},), ("second_chain.type", "44")),
    Row("axial_hold", {"hub__set_screw": "1 x M8"}, ({"hub__set_screw": "1 x M6"}, {"chain__skew": "0.3 deg"}), ("hub.set_screw", "1 M6")),
    Row("band_grip", {}, ({"motor__tightening_torque": "3 N*m"}, {"mount__seat_angle": "30 deg"}), ("mount.seat_angle", "90 deg"), "cradle"),
    Row("band_screw", {}, ({"motor__tightening_torque": "8 N*m"},), ("mount.bands", 0), "cradle"),
    Row("driven_bolt_holes", {**_of("driven", RING), "driven__sprocket_material": "6061"}, ({"driven__tooth_width": "4 mm"},), ("driven.tooth_width", "0 mm")),
    Row("driven_bolt_loosening", _of("driven", RING), ({"driven__bolt_circle": "45 mm"},), ("driven.bolt_circle", "0 mm")),
    Row("driven_pin", {"driven__shaft_diameter": "25 mm", "driven__pin": "8 mm"}, ({"driven__pin": "6 mm"},), ("driven.pin_planes", 0)),
    Row("driven_teeth", {"driven__sprocket_material": "6061", "driven__tooth_share": 0.8}, ({"driven__tooth_width": "4 mm"}, {"driven__sprocket_material": "1050"}), ("driven.tooth_share", 2)),
    Row("frame_member", {}, ({"frame__wall": "2 mm"}, {"frame__span": "600 mm"}, {"frame__yield_strength": "200 MPa"}), ("frame.yield_strength", "0 MPa")),
    Row("hub_bolt_holes", {**_of("hub", RING), "hub__bolt_circle": "36 mm", "hub__bolts": "4 x M4", "chain__driving_teeth": 17, "shaft__diameter": "15 mm", "hub__key": "5 x 5 x 25 mm", "hub__sprocket_material": "6061"},
        ({"hub__tooth_width": "4 mm"},), ("hub.sprocket_material", "6061x")),
    Row("hub_bolt_loosening", _of("hub", RING), ({"hub__preload": "4 kN"},), ("hub.preload", "0 N")),
    Row("hub_pin", {"hub__key": None, "hub__pin": "8 mm"}, ({"hub__pin": "6 mm"},), ("hub.pin", "20 mm")),
    Row("jack_screw", {"fixings__holes": "slotted", "fixings__jack_screw": "M10", "fixings__jack_screw_class": "8.8"}, ({"fixings__jack_screw": "M8"},), ("fixings.jack_screw", "M7x")),
    Row("sprocket_teeth", {"hub__sprocket_material": "6061", "hub__tooth_share": 0.8}, ({"hub__tooth_width": "4 mm"},), ("hub.tooth_width", "30 mm")),
)  # fmt: skip

# check: (file of tests, function that compares it with a number from outside the program)
BY_HAND: dict[str, tuple[str, str]] = {
    "alignment": ("test_drives_hand.py", "test_current_at_the_allowance_is_explained"),
    "running_alignment": ("checks/test_by_hand.py", "test_running_alignment"),
    "bearing_life": ("checks/test_bearing_life.py", "test_catalogue_example_at_its_load"),
    "bolt_bearing": ("checks/test_bolt_bearing.py", "test_resistance_tables"),
    "bolt_slip": ("checks/test_bolt_slip.py", "test_resistance_of_m12"),
    "driven_bearings": ("checks/test_driven_bearings.py", "test_overhung_sprocket"),
    "driven_bearing_life": ("checks/test_driven_bearings.py", "test_hours_of_a_published_problem"),
    "driven_shaft_fatigue": ("checks/test_driven_shaft_fatigue.py", "test_goodman_row_of_a_published_problem"),
    "driven_weld_fatigue": ("checks/test_weld_fatigue.py", "test_a_ring_with_a_shoulder_sees_the_torque_of_every_start"),
    "frame_weld_fatigue": ("checks/test_weld_fatigue.py", "test_bhandari_8_12_across_and_along"),
    "hub_weld_fatigue": ("checks/test_weld_fatigue.py", "test_a_ring_with_a_shoulder_sees_the_torque_of_every_start"),
    "jackshaft": ("checks/test_jackshaft.py", "test_strength_by_hand"),
    "jackshaft_bearing_life": ("checks/test_by_hand.py", "test_life_of_the_jackshaft_bearings"),
    "jackshaft_bearings": ("checks/test_by_hand.py", "test_jackshaft_on_its_bearings"),
    "jackshaft_fatigue": ("checks/test_by_hand.py", "test_turning_jackshaft"),
    "jackshaft_keys": ("checks/test_by_hand.py", "test_keys_of_the_jackshaft"),
    "outboard_bearing": ("checks/test_outboard_bearing.py", "test_against_a_beam_on_springs"),
    "outboard_bearing_life": ("checks/test_outboard_bearing.py", "test_life_at_a_known_force"),
    "pull_through": ("checks/test_pull_through.py", "test_against_the_standard"),
    "rear_bearing": ("checks/test_rear_bearing.py", "test_reaction_of_the_beam_table"),
    "rear_bearing_life": ("checks/test_rear_bearing.py", "test_hours_of_a_published_problem"),
    "second_chain_fatigue": ("checks/test_jackshaft.py", "test_second_stage_is_a_drive_of_its_own"),
    "second_chain_pin_pressure": ("checks/test_jackshaft.py", "test_second_chain_at_its_own_speed"),
    "second_chain_power": ("checks/test_jackshaft.py", "test_second_chain_at_its_own_speed"),
    "second_chain_static": ("checks/test_jackshaft.py", "test_second_stage_is_a_drive_of_its_own"),
    "axial_hold": ("checks/test_axial_hold.py", "test_two_screws_by_hand"),
    "band_grip": ("checks/test_bands.py", "test_turning_by_hand"),
    "band_screw": ("checks/test_bands.py", "test_what_a_tightened_screw_has_left"),
    "driven_bolt_holes": ("checks/test_sprocket_teeth.py", "test_holes_of_a_published_table"),
    "driven_bolt_loosening": ("checks/test_hub_bolts.py", "test_resistance_tables"),
    "driven_pin": ("checks/test_pins.py", "test_published_double_shear"),
    "driven_teeth": ("checks/test_sprocket_teeth.py", "test_stress_of_a_tooth_by_hand"),
    "frame_member": ("checks/test_frame_member_stress.py", "test_every_form_against_the_stresses_of_sectionproperties"),
    "hub_bolt_holes": ("checks/test_sprocket_teeth.py", "test_holes_of_a_published_table"),
    "hub_bolt_loosening": ("checks/test_hub_bolts.py", "test_resistance_tables"),
    "hub_pin": ("checks/test_pins.py", "test_published_double_shear"),
    "jack_screw": ("checks/test_jack_screw.py", "test_proof_load_of_m8"),
    "sprocket_teeth": ("checks/test_sprocket_teeth.py", "test_stress_of_a_tooth_by_hand"),
    "bolt_strength": ("checks/test_by_hand.py", "test_frame_bolts"),
    "chain_fatigue": ("test_drives_hand.py", "test_current_at_the_minimum_dynamic_strength"),
    "chain_pin_pressure": ("checks/test_chain_pin_pressure.py", "test_bhandari_example_14_7_at_its_pull"),
    "chain_power": ("checks/test_chain_power.py", "test_rating_table_of_chain_41"),
    "chain_static": ("checks/test_by_hand.py", "test_chain_of_bhandari_14_1"),
    "driven_bolt_slip": ("checks/test_hub_bolts.py", "test_resistance_tables"),
    "driven_bolts": ("checks/test_hub_bolts.py", "test_resistance_tables"),
    "driven_key": ("checks/test_driven_side.py", "test_key_of_a_published_example"),
    "driven_shaft": ("checks/test_driven_side.py", "test_shaft_of_a_published_problem"),
    "driven_weld": ("checks/test_hub_weld.py", "test_torque_on_a_thin_ring"),
    "flats": ("checks/test_flats.py", "test_hand_worked"),
    "foot_bolts": ("checks/test_by_hand.py", "test_feet"),
    "foot_slip": ("mounts/test_foot_motor.py", "test_slip_resistance_by_hand"),
    "frame_weld": ("checks/test_frame_weld.py", "test_bhandari_8_12_bracket_on_two_lines"),
    "freewheel": ("checks/test_driven_side.py", "test_freewheel"),
    "front_bearing": ("checks/test_by_hand.py", "test_front_bearing"),
    "hub_bolt_slip": ("checks/test_hub_bolts.py", "test_resistance_tables"),
    "hub_bolts": ("checks/test_hub_bolts.py", "test_resistance_tables"),
    "hub_weld": ("checks/test_hub_weld.py", "test_torque_on_a_thin_ring"),
    "key": ("test_drives_hand.py", "test_key"),
    "motor_bolts": ("checks/test_by_hand.py", "test_face_bolts"),
    "motor_face_slip": ("checks/test_motor_face_slip.py", "test_four_screws_hold_eighteen_newton_metres"),
    "motor_shaft": ("checks/test_shaft_fatigue.py", "test_yield_is_that_of_the_two_stresses"),
    "motor_threads": ("checks/test_by_hand.py", "test_tapped_holes"),
    "mount_fatigue": ("checks/test_mount_fatigue.py", "test_against_a_hand_calculation"),
    "mount_section": ("checks/test_mount_section.py", "test_ductile_material_by_the_equivalent_stress"),
    "mount_strain": ("checks/test_by_hand.py", "test_strain_held_for_hours"),
    "seam_screws": ("checks/test_seam_screws.py", "test_rows_are_what_the_screws_hold"),
    "set_screw": ("checks/test_by_hand.py", "test_set_screw"),
    "shaft_fatigue": ("checks/test_shaft_fatigue.py", "test_sharp_shoulder_against_a_turned_point"),
    "spacer_strength": ("checks/test_spacer_strength.py", "test_stresses_are_those_of_the_section_solver"),
    "strut": ("checks/test_strut.py", "test_steel_pipe_of_gere"),
    "taper_bush": ("checks/test_taper_bush.py", "test_clamp_by_integration"),
    "tube_crush": ("checks/test_tube_clamp.py", "test_gusset_plates_on_a_tube"),
    "tube_grip": ("checks/test_tube_clamp.py", "test_round_grip_of_a_whole_drive"),
}  # fmt: skip
NAMED = pytest.mark.parametrize("row", ROWS, ids=lambda r: r.check)


@cache
def _starter(form: str) -> dict[str, Any]:
    return tomllib.loads(starter.text(form, "test.toml"))


def mapping(row: Row, edit: Edit) -> dict[str, Any]:
    """Give the drive of a row with an edit, section by section."""
    if not row.form:
        return changed(**{**SOUND, **row.base, **edit})
    data = copy.deepcopy(_starter(row.form))
    for name, value in {**row.base, **edit}.items():
        section, _, key = name.partition("__")
        data.setdefault(section, {})[key] = value
    return data


def file_of(row: Row, edit: Edit) -> DriveFile:
    """Read the drive of a row with an edit, the plate model behind it where it has one."""
    return with_plates(parse(toml_text(mapping(row, edit)).encode(), "test.toml"))


def safe_limit(file: DriveFile, name: str) -> float:
    """Give the safe current of one check alone, found as the program finds it."""
    drive = resolve(file)
    likely = evaluate.curves(drive, CURRENTS, [name])[name]
    level = "continuous" if likely.safe is None else "safe"
    ends = {
        r.key: safe_side.ends_of(file, r, CURRENTS, only=[name])
        for r in drive.ranges
        if r.low < r.high
    }
    return safe_side.worst(file, drive, likely, level, ends, CURRENTS).safe


def test_every_check_is_here():
    """A check without a row cannot be judged."""
    assert {r.check for r in ROWS} == set(BY_NAME)
    assert set(BY_HAND) == set(BY_NAME)
    assert len(ROWS) == len(CHECKS)


@NAMED
def test_what_makes_it_worse_lowers_its_safe_current(row):
    """Each edit for the worse, strictly; and the drive it starts from has room."""
    base = safe_limit(file_of(row, {}), row.check)
    assert 0 < base < CURRENTS[-1]
    for edit in row.worse:
        assert safe_limit(file_of(row, edit), row.check) < 0.99 * base, edit


@NAMED
def test_nonsense_is_refused_in_one_line(row, tmp_path):
    """The line names file, key and value; the status is 2 and nothing else is said."""
    key, value = row.bad
    path = tmp_path / "drive.toml"
    path.write_text(toml_text(mapping(row, {key.replace(".", "__"): value})))
    result = CliRunner().invoke(main, ["check", str(path)])
    assert result.exit_code == 2, result.output
    lines = result.stderr.strip().splitlines()
    assert len(lines) == 1, result.stderr
    assert all(word in lines[0] for word in (str(path), key, str(value))), lines[0]


@pytest.mark.parametrize("name", sorted(BY_HAND))
def test_every_check_was_worked_by_hand(name):
    """The test named is there and compares numbers, and its file speaks of the check."""
    where, function = BY_HAND[name]
    whole = (TESTS / where).read_text()
    found = [
        n for n in ast.parse(whole).body if isinstance(n, ast.FunctionDef) and n.name == function
    ]
    assert len(found) == 1
    source = ast.get_source_segment(whole, found[0]) or ""
    assert "assert" in source
    assert "approx" in source
    rows = BY_NAME[name].rows
    words = (name, rows.__name__, rows.__module__.rpartition(".")[2])
    assert any(re.search(rf"\b{word}\b", whole) for word in words)
