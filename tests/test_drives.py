"""Ten whole drives: they are read and worked out, and the weak part is one that would be believed."""

from __future__ import annotations

import math
from functools import cache
from pathlib import Path

import pytest

from mountlimit.assess import assess
from mountlimit.drivefile import read

FOLDER = Path(__file__).parent / "drives"

# First safe limit and what gives first: any of these would be believed, nothing else.  A plate
# leans before it breaks, and nobody said how tight the motor's own bolts are; beyond that the drive
# points to its weak part: thin steel bends, a short key is crushed, a saddle turns on its painted tube, a
# block presses in the wall of a thin aluminium tube, a pin meant to shear shears, bolts on a small circle
# slip where regeneration turns the torque round, a thin gearbox shaft sits far outside its bearing, 3 and
# 4 mm of steel do not take a knock of 5 g 2.5 times over, which nobody said the frame is spared.
ANYWHERE = {"alignment", "motor_face_slip"}
PLAUSIBLE = {
    "cargo_trike": ({"mount_section"}, {"tube_grip"}),
    "longtail_bicycle": ({"tube_crush"}, {"tube_crush"}),
    "garden_tractor": ({"driven_shaft"}, {"bolt_slip"}),
    "skid_steer_robot": (set(), {"key", "front_bearing"}),
    "barn_winch": (set(), {"mount_section"}),
    "student_race_car": (set(), {"driven_bolt_slip"}),
    "childs_quad": ({"mount_section"}, {"mount_section", "bolt_slip"}),
    "mortar_mixer": (set(), {"driven_pin"}),
    "dirt_bike": (set(), {"driven_bolt_slip"}),
    "slope_mower": ({"mount_section"}, {"bolt_slip", "mount_section"}),
}


def test_every_file_is_spoken_of():
    """No drive file lies about unused."""
    assert {p.stem for p in FOLDER.glob("*.toml")} == set(PLAUSIBLE)


@cache
def answer_of(name):
    """Work a drive out once."""
    return assess(read(FOLDER / f"{name}.toml"))


@pytest.mark.parametrize("name", PLAUSIBLE)
def test_first_limit_is_of_a_plausible_kind(name):
    """What sets the safe current, and what gives first, fit the drive."""
    safe, gives = PLAUSIBLE[name]
    answer = answer_of(name)
    assert answer.first_safe.limit.check.name in safe | ANYWHERE
    assert answer.first_gives is not None
    assert answer.first_gives.limit.check.name in gives | ANYWHERE


def test_the_trike_s_saddle_turns_before_the_wheel_spins():
    """Both the clamp and the ear give below the current wanted; the tyre does not cap it."""
    answer = answer_of("cargo_trike")
    limits = {line.limit.check.name: line.limit for line in answer.lines}
    wanted = float(answer.drive.current.wanted)
    assert limits["alignment"].safe < limits["tube_grip"].safe < limits["tube_grip"].gives < wanted
    assert answer.uses.traction_low > wanted
    assert limits["tube_crush"].safe > wanted


@pytest.mark.parametrize("name", PLAUSIBLE)
def test_the_chain_is_never_the_first_to_part(name):
    """A sound standard chain outlasts the mount, the joint and the shaft in all of them."""
    limits = {line.limit.check.name: line.limit for line in answer_of(name).lines}
    chain = limits["chain_static"].gives
    assert min(x.gives for x in limits.values() if x.gives) < 0.7 * min(chain, 1e9)


@pytest.mark.parametrize("name", PLAUSIBLE)
def test_safe_never_above_giving(name):
    """Safe to is at or below what the best estimate says gives, and the loads close."""
    answer = answer_of(name)
    assert answer.balance < 1e-9
    for line in answer.lines:
        assert line.limit.gives is None or line.limit.safe <= line.limit.gives
        assert not math.isnan(line.limit.safe)


# Ground on which the wheels spin below the current the owner wants.
@pytest.mark.parametrize(
    ("name", "low", "high"),
    [("garden_tractor", True, True), ("skid_steer_robot", True, True), ("slope_mower", True, True),
     ("childs_quad", True, False), ("student_race_car", False, False)],
)  # fmt: skip
def test_wheels_spin_before_the_wanted_current(name, low, high):
    """Tractor, robot and mower only spin their wheels at the wanted current, the race car never."""
    uses, wanted = answer_of(name).uses, float(answer_of(name).drive.current.wanted)
    assert (uses.traction_low < wanted, uses.traction_high < wanted) == (low, high)


@pytest.mark.parametrize("name", ["barn_winch", "mortar_mixer"])
def test_no_wheels_no_traction(name):
    """Fixed machines have no traction line, and say what it would take."""
    assert answer_of(name).uses.traction_low is None
    assert "wheel_diameter" in answer_of(name).uses.why_not


def limits_of(name):
    """Every limit of a drive by its check."""
    return {line.limit.check.name: line.limit for line in answer_of(name).lines}


def test_the_mixer_s_pin_goes_before_key_shaft_and_plate():
    """A fuse is worth something when its high end lies below what it should save."""
    found = limits_of("mortar_mixer")
    for saved in ("key", "motor_shaft", "mount_section"):
        assert found["driven_pin"].gives < found[saved].gives
    assert found["driven_pin"].gives_high < found["key"].gives_low


def test_the_bicycle_s_weak_stage_is_the_second():
    """The first chain looks fine; jackshaft, freewheel and second chain stand below it."""
    found = limits_of("longtail_bicycle")
    for weaker in ("jackshaft", "freewheel", "second_chain_static"):
        assert found[weaker].safe < 0.5 * found["chain_static"].safe
    assert found["freewheel"].gives < float(answer_of("longtail_bicycle").drive.current.wanted)


def test_tyres_cap_what_is_only_wheelspin():
    """Tractor, robot and dirt bike spin their wheels below the current wanted, on the better ground or the worse."""
    for name, ground in (
        ("garden_tractor", "high"),
        ("skid_steer_robot", "high"),
        ("dirt_bike", "low"),
    ):
        answer = answer_of(name)
        spins = getattr(answer.uses, f"traction_{ground}")
        assert spins < float(answer.drive.current.wanted)


def test_the_plastic_plate_lets_go_of_its_bolts_at_the_current_set_now():
    """The mower's clamp after a week of creep is gone at what it runs at."""
    found = limits_of("slope_mower")
    assert (
        found["bolt_slip"].safe
        < found["bolt_slip"].gives
        < 1.1 * float(answer_of("slope_mower").drive.current.set)
    )
    assert found["alignment"].safe < 1.0
