"""Checks against numbers worked out without the program: printed ones, statics, closed forms."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest
from hub_cases import file_of, rows_of

from conftest import IDEAL, drive_file
from mountlimit import evaluate, limits, respond
from mountlimit.case import BoltForces, Response
from mountlimit.checks import BY_NAME, alignment, motor_feet
from mountlimit.loads import case_list
from mountlimit.plate_route import with_plates
from mountlimit.resolve import resolve
from mountlimit.stages import second
from sound import SOUND

LBF = 4.4482216  # N
NOTHING = {"weight": (0.0, 0.0, 0.0), "stator_torque": 0.0}
# EN 1993-1-8 table 3.4 as tabled with gamma 1.25, class 8.8 (N): tension, shear with thread in the plane.
M6, M8, M12 = (11.6e3, 7.72e3), (21.1e3, 14.1e3), (48.6e3, 32.4e3)
GAMMA = 1.25


def one_case(file, group, **loads):
    """The first load case of a group at 40 A, some of its loads replaced."""
    drive = resolve(file)
    index = next(i for i, c in enumerate(case_list(drive)) if c[1] == group)
    case = evaluate.case_at(drive, 40.0, index)
    case = replace(case, loads=replace(case.loads, **loads))
    return replace(case, response=respond.solve(drive, case.loads))


def test_chain_of_bhandari_14_1():
    """12A chain, 14.32 kW at 17 teeth and 1000 rpm: pull 2653.08 N, factor 11.72 on its 31.1 kN."""
    (row,), _ = rows_of("chain_static", {"tight_side_tension": 2653.08}, chain__type="60")
    assert 1 / row.utilisation == pytest.approx(11.7222, rel=0.01)  # ASME: 31.3 kN


def test_front_bearing():
    """Moments about the rear bearing: 1 kN, 38 mm before a bearing 110 mm from the other."""
    (row,), _ = rows_of(
        "front_bearing", {"shaft_load": 1000.0}, shaft__face_to_bearing="10 mm",
        shaft__bearing_span="110 mm", shaft__bearing="6203",
    )  # fmt: skip
    front, rear = np.linalg.solve([[1, 1], [0, 0.110]], [1000.0, -1000.0 * 0.038])
    assert (front, rear) == (pytest.approx(1345.45, abs=0.01), pytest.approx(-345.45, abs=0.01))
    assert row.demand == pytest.approx(front, rel=1e-9)
    assert row.capacity == pytest.approx(4750.0)  # makers' catalogues: C0 of a 6203


def test_set_screw():
    """A 1/4 in cup point holds 1000 lbf (Shigley table 7-4, from memory): 26.7 N*m on a 12 mm shaft."""
    file = file_of(hub__key=None, hub__drive="set screw", hub__set_screw="1 x 1/4")
    hold = next(r for r in resolve(file).ranges if r.key == "hub.set_screw_hold")
    strong = evaluate.case_at(resolve(file, {hold.key: hold.high}), 100.0, 0)
    rows = [r for r in BY_NAME["set_screw"].rows(strong) if r.station == "screw point"]
    assert [r.capacity for r in rows] == [pytest.approx(1000 * LBF * 0.006, rel=1e-6)] * 2
    assert [r.demand for r in rows] == [pytest.approx(12.0), pytest.approx(12.0)]


@pytest.mark.parametrize(("start", "torque"), [(1.5, 4.0), (4.0, 4.0), (10.0, 10.0)])
def test_set_screw_at_a_hard_start(start, torque):
    """The factor of 4 on the steady torque covers a start up to four times it, and no harder one."""
    edit = {**SOUND, "hub__key": None, "hub__set_screw": "1 x 1/4", "duty__starting_factor": start}
    found = limits.find(drive_file(**edit))
    line = next(x for x in found.limits if x.check.name == "set_screw")
    assert line.safe == pytest.approx(400 * LBF * 0.0125 / (torque * 0.12), rel=1e-6)
    assert line.safe <= line.gives


def test_frame_bolts():
    """M12 8.8 by the tables: 48.6 kN in tension, 32.4 kN in shear, and half of either together."""
    file = drive_file(mount__route="sections", fixings__bolts="4 x M12")
    case = one_case(file, "pull")
    tension = (M12[0], 0.0, 1.4 * M12[0] / 2, 0.0)
    shear = (0.0, M12[1], M12[1] / 2, 0.0)
    none = (0.0,) * 4
    taken = BoltForces(
        tension=tension,
        net_pull=none,
        shear=shear,
        shear_first=shear,
        shear_second=none,
        contacts=(),
    )
    rows = BY_NAME["bolt_strength"].rows(replace(case, response=Response(bolts=lambda: taken)))
    used = [GAMMA * float(r.utilisation) for r in rows]  # tension, both together; bolt by bolt
    assert used[0] == pytest.approx(1.0, rel=2e-3)
    assert used[3] == pytest.approx(1.0, rel=2e-3)
    assert used[5] == pytest.approx(1.0, rel=2e-3)
    assert used[6:] == [0.0, 0.0]


def worst_face_bolt(count, circle, tilt, force, torque):
    """Tension and shear of the worst bolt, a rigid face on equal springs, turned every way."""
    pull = push = 0.0
    for start in np.linspace(0, 2 * np.pi, 721):
        angle = start + 2 * np.pi / count * np.arange(count)
        x, y = circle / 2 * np.cos(angle), circle / 2 * np.sin(angle)
        share = np.linalg.lstsq(np.array([np.ones(count), x, y]), [0.0, 0.0, tilt], rcond=None)[0]
        pull = max(pull, share.max())
        slides = np.array([force / count - torque * y / (count * (circle / 2) ** 2),
                           torque * x / (count * (circle / 2) ** 2)])  # fmt: skip
        push = max(push, np.hypot(*slides).max())
    return pull, push


FACE = {"motor__bolts": "4 x M6", "motor__bolt_circle": "79 mm", "motor__bolt_class": "8.8"}


def test_face_bolts():
    """1 kN, 28 mm before the face, and 12 N*m: a rigid face on four springs, M6 8.8 by the tables."""
    file = drive_file(mount__route="sections", **FACE)
    case = one_case(file, "pull", shaft_load=1000.0, stator_torque=12.0, weight=(0.0, 0.0, 0.0))
    (row,) = BY_NAME["motor_bolts"].rows(case)
    pull, push = worst_face_bolt(4, 0.079, 28.0, 1000.0, 12.0)
    by_table = push / (GAMMA * M6[1]) + pull / (1.4 * GAMMA * M6[0])
    assert row.utilisation == pytest.approx(by_table, rel=3e-3)


def test_tapped_holes():
    """M8, 8 mm deep: 7/8 of a pitch shears at each turn (ISO 68-1), at 1/sqrt(3) of 240 MPa."""
    file = drive_file(
        mount__route="sections", motor__bolts="4 x M8", motor__bolt_circle="79 mm",
        motor__thread_depth="8 mm", motor__thread_strength="240 MPa",
    )  # fmt: skip
    case = one_case(file, "pull", shaft_load=1000.0, **NOTHING)
    (row,) = BY_NAME["motor_threads"].rows(case)
    assert row.demand == pytest.approx(worst_face_bolt(4, 0.079, 28.0, 0.0, 0.0)[0], rel=1e-4)
    assert row.capacity == pytest.approx(np.pi * 8 * 8 * 7 / 8 * 240 / np.sqrt(3), rel=2e-3)


FEET = {
    "motor__bolts": "4 x M8", "motor__bolt_circle": None, "motor__shaft_height": "71 mm",
    "motor__foot_across": "112 mm", "motor__foot_along": "90 mm", "motor__foot_to_face": "30 mm",
    "mount__form": "foot motor", "mount__width": "190 mm", "mount__thickness": "10 mm",
    "mount__free_length": None, "fixings__span_across": "150 mm", "fixings__span_along": "160 mm",
}  # fmt: skip


def test_feet():
    """foot_bolts: 1 kN up, 28 mm before the face: 250 N and 103 N*m over two bolts 90 mm on: 822.2 N."""
    file = with_plates(drive_file(**FEET, chain__pull="away"))
    case = one_case(file, "pull", shaft_load=1000.0, **NOTHING)
    tension, shear = motor_feet.by_statics(case)
    assert (tension, shear) == (pytest.approx(822.2, abs=0.1), pytest.approx(0.0, abs=1e-9))
    row = motor_feet.bolt_rows(case)[-1]
    assert row.utilisation == pytest.approx(822.2 / (1.4 * GAMMA * M8[0]), rel=3e-3)


STIFF = {**IDEAL, "mount__route": "sections", "chain__pull": "away", "mount__material": "s235",
         "mount__thickness": "8 mm", "shaft__bearing_span": "110 mm", "shaft__face_to_bearing": "10 mm"}  # fmt: skip


def test_running_alignment():
    """A strip bent by a couple, and an overhung shaft on two bearings (both by the beam tables)."""
    case = one_case(drive_file(**STIFF), "hold", shaft_load=1000.0, **NOTHING)
    angle = alignment.running_rows(case)[0]
    reach = 0.0395 * math.cos(math.pi / 4)  # nearest face bolts of four on a circle of 79 mm
    strip = 1000 * (0.028 - 0.004) * (0.085 - reach) / (210e9 * 0.120 * 0.008**3 / 12)
    bent = 205e9 * math.pi * 0.012**4 / 64
    shaft = 1000 * 0.038 * (0.110 / 3 + 0.038 / 2) / bent
    assert angle.demand == pytest.approx(strip + shaft, rel=0.02)  # the joint gives a little
    assert angle.capacity == pytest.approx(math.radians(0.1))


def test_strain_held_for_hours():
    """mount_strain: the pull and its couple in the section past two holes, over the creep modulus."""
    file = drive_file(**{**SOUND, "mount__material": "pe_hd", "mount__thickness": "20 mm"})
    case = one_case(file, "hold", shaft_load=200.0, **NOTHING)
    row = next(
        r for r in BY_NAME["mount_strain"].rows(case) if r.station == "plate at the frame bolts"
    )
    net, lever = 0.130 - 2 * 0.011, 0.028 - 0.010
    stress = 200 / (net * 0.020) + 200 * lever / (net * 0.020**2 / 6)
    modulus = float(case.drive.mount.material.creep_modulus)
    assert (
        100e6 < modulus < 500e6
    )  # HDPE after 100 h (Crawford, Plastics Engineering: 0.2 to 0.4 GPa)
    assert row.demand == pytest.approx(stress / modulus, rel=0.02)


STAGE = {
    "second_chain__type": "50", "second_chain__driving_teeth": 12, "second_chain__driven_teeth": 36,
    "second_chain__centre_distance": "500 mm", "jackshaft__diameter": "25 mm",
    "jackshaft__bearing_span": "80 mm", "jackshaft__first_at": "-24 mm", "jackshaft__second_at": "106 mm",
    "jackshaft__angle": "90 deg", "jackshaft__bearing": "6205", "jackshaft__notch": "plain",
    "jackshaft__ultimate_strength": "600 MPa", "jackshaft__first_key": "8 x 7 x 25 mm",
    "jackshaft__second_key": "8 x 7 x 25 mm", "motor__speed": "3000 rpm", "duty__chain_factor": 1,
}  # fmt: skip
SECOND_TORQUE = 60.0  # N*m: 12 of the motor through 11 to 55 teeth


def supports(first, second):
    """Forces of two pulls square to each other on two bearings, by moments about either."""
    carried = np.linalg.inv([[1.0, 1.0], [0.0, 0.080]])
    each = [carried @ [pull, pull * at] for pull, at in ((first, -0.024), (second, 0.106))]
    return np.hypot(*each)


def pulls_of(case):
    """Shaft load of either chain; the second at the smallest radius of its polygon, and its sag."""
    return float(case.loads.shaft_load), float(second(case).loads.shaft_load)


def test_second_pull_by_hand():
    """60 N*m over the radius of the middle of a side of twelve, 15.875 mm long, and the hanging chain.

    About 1.02 kg/m over 0.49 m with a sag of 3 %: w L / (8 * 0.03) in either run.
    """
    _, case = rows_of("jackshaft_bearings", **STAGE)
    radius = 0.015875 / 2 / math.tan(math.pi / 12)
    hanging = 1.02 * 9.81 * 0.49 / (8 * 0.03)
    assert pulls_of(case)[1] == pytest.approx(SECOND_TORQUE / radius + 2 * hanging, rel=0.003)


def test_jackshaft_on_its_bearings():
    """Both bearings, the larger of which counts, against the C0 of a 6205."""
    rows, case = rows_of("jackshaft_bearings", **STAGE)
    assert [float(r.demand) for r in rows] == pytest.approx(supports(*pulls_of(case)), rel=1e-9)
    assert rows[0].capacity == pytest.approx(7850.0, rel=0.01)


def test_life_of_the_jackshaft_bearings():
    """ISO 281: (C / P)**3 million turns at a fifth of 3000 a minute, C of a 6205 14 kN."""
    rows, case = rows_of("jackshaft_bearing_life", **STAGE)
    for row, force in zip(rows, supports(*pulls_of(case)), strict=True):
        hours = (14000 / force) ** 3 * 1e6 / (600 * 60)
        assert float(row.capacity) / 3600 == pytest.approx(hours, rel=0.01)


def test_keys_of_the_jackshaft():
    """8 x 7 x 25 mm on 25 mm: 2 T / (d w l) in shear, 4 T / (d h l) in pressure."""
    rows, _ = rows_of("jackshaft_keys", **STAGE)
    shear, pressed = (
        c * SECOND_TORQUE / (0.025 * size * 0.025) for c, size in ((2, 0.008), (4, 0.007))
    )
    assert sorted(float(r.demand) for r in rows) == pytest.approx(sorted([shear, pressed] * 2))


def test_turning_jackshaft():
    """jackshaft_fatigue: Shigley eq. 6-8, 6-19, 6-20 and 7-7, no notch; the torque comes and goes."""
    rows, case = rows_of("jackshaft_fatigue", **STAGE)
    limit = 0.5 * 600 * 4.51 * 600**-0.265 * 1.24 * 25**-0.107
    twist = SECOND_TORQUE / 2 / (math.pi * 25**3 / 16) * 1000
    for pull, lever, row in zip(pulls_of(case), (24, 26), rows, strict=True):
        swing = math.hypot(pull * lever / (math.pi * 25**3 / 32), math.sqrt(3) * twist)
        used = swing / limit + math.sqrt(3) * twist / 600
        assert float(row.utilisation) == pytest.approx(used, rel=0.01)
