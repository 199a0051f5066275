"""Plastic or wooden plate with steel sleeves: the clamp stays, the plate hangs on the washers' rims."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from bolted_kit import (
    apart_from_full,
    file_of,
    lean,
    message,
    moved,
    plated,
    safe_limits,
    worst_balance,
)
from scipy.integrate import quad

from mountlimit import plate_route
from mountlimit.cards import folder
from mountlimit.checks import bolt_bearing
from mountlimit.drivefile import DriveFile, read
from mountlimit.limits import find
from mountlimit.resolve import resolve

PLASTIC = {
    "mount__material": "hdpe", "mount__thickness": "20 mm", "fixings__washer": "wide",
    "fixings__edge": "18 mm", "fixings__tightening_torque": "20 N*m", "shaft__face_overhang": "40 mm",
    "duty__bump": "2 g",
}  # fmt: skip
SLEEVES = {**PLASTIC, "mount__form": "sleeved plate", "mount__sleeve_diameter": "12 mm"}


def sleeved(**changes: Any) -> DriveFile:
    """The base drive on 20 mm polyethylene with sleeves of 12 mm, with changes."""
    return file_of(**{**SLEEVES, **changes})


def test_clamp_is_that_of_steel_on_steel():
    """Torque over K d, untouched by the plastic; in the bare plate what the washer may press on it."""
    steel = resolve(file_of(**{**PLASTIC, "mount__material": "s235"}))
    with_sleeves, bare = resolve(sleeved()), resolve(file_of(**PLASTIC))
    assert float(with_sleeves.fixings.preload) == pytest.approx(float(steel.fixings.preload))
    assert float(bare.fixings.preload) < 0.3 * float(steel.fixings.preload)
    assert float(with_sleeves.fixings.friction) == float(steel.fixings.friction)


def test_thin_sleeve_yields_before_the_bolt():
    """A wall of 0.5 mm: pi/4 (10^2 - 9^2) mm2 at 235, 300 and 400 MPa bound the clamp."""
    drive = resolve(sleeved(mount__sleeve_diameter="10 mm"))
    item = next(r for r in drive.ranges if r.key == "fixings.preload")
    area = np.pi / 4 * (10**2 - 9**2) * 1e-6
    assert (item.low, item.likely, item.high) == pytest.approx([area * s for s in (235e6, 300e6, 400e6)])  # fmt: skip
    assert "sleeve" in item.source


def test_slip_limit_rises_and_alignment_hardly_falls():
    """Against the same plate without sleeves: four times the slip limit, alignment within 3 %."""
    bare, own = safe_limits(**PLASTIC), safe_limits(**SLEEVES)
    assert own["bolt_slip"] > 4 * bare["bolt_slip"]
    assert 0.97 * bare["alignment"] < own["alignment"] <= bare["alignment"]
    one, other = plated(file_of(**PLASTIC)), plated(sleeved())
    for degrees in (0, 60, 90, -90):
        assert 1.0 < lean(other, degrees) / lean(one, degrees) < 1.02


def test_small_flange_holds_the_plate_softer_than_a_wide_washer():
    wide, flange = plated(sleeved()), plated(sleeved(mount__sleeve_flange="16 mm"))
    assert 1.02 < lean(flange, 0) / lean(wide, 0) < 1.2


@pytest.mark.parametrize("flange", [None, "18 mm"])
def test_spring_under_the_rim_is_a_cone_with_the_sleeve_cut_out(flange):
    """1/k = integral of dz / (E A) through a cone of 30 degrees with a bore as wide as the sleeve."""
    drive = resolve(sleeved(mount__sleeve_flange=flange))
    face, sleeve = (
        0.018 if flange else float(drive.fixings.bolts.thread.wide_washer_diameter),
        0.012,
    )
    modulus = float(drive.mount.material.elastic_modulus)

    def per_depth(z: float) -> float:
        outer = face + 2 * z * np.tan(np.radians(30))
        return 4 / (np.pi * modulus * (outer**2 - sleeve**2))

    cone = 1 / quad(per_depth, 0, 0.020)[0]
    given = float(drive.fixings.joint_stiffness)
    assert plate_route.stiffnesses(drive).normal == pytest.approx(
        1 / (1 / cone + 1 / given), rel=1e-3
    )


def test_sleeve_crushes_the_plate_on_its_own_diameter():
    """Yield strength on 12 mm times 20 mm, one and a half times what the bolt's 8 mm bears."""
    forces = []
    for file in (sleeved(), file_of(**PLASTIC)):
        drive = resolve(file)
        plane = drive.mount.plane
        forces.append(float(bolt_bearing.crushing_force(bolt_bearing.Place(drive, plane, plane.bolts[0]))))  # fmt: skip
    strength = float(resolve(sleeved()).mount.material.yield_strength)
    assert forces[0] == pytest.approx(0.012 * 0.020 * strength)
    assert forces[0] == pytest.approx(1.5 * forces[1])


def test_holes_in_plate_and_cuts_are_those_of_the_sleeves():
    drive = resolve(sleeved(mount__motor_sleeve_diameter="9 mm"))
    model = plate_route.as_it_bears(drive)
    assert [b.hole_diameter for b in model.frame_bolts] == pytest.approx([0.012] * 4)
    assert [b.hole_diameter for b in model.motor_bolts] == pytest.approx([0.009] * 4)
    at_frame, at_motor = drive.mount.cuts
    assert [d for _, d in at_frame.holes] == pytest.approx([0.012] * 2)
    assert [d for _, d in at_motor.holes] == pytest.approx([0.009] * 2)


def test_sleeves_at_the_motor_keep_its_clamp():
    """The plastic under the face bolts' small washers keeps a fifth of the clamp or less."""
    bare, own = resolve(sleeved()), resolve(sleeved(mount__motor_sleeve_diameter="9 mm"))
    assert float(own.face.preload) > 5 * float(bare.face.preload)


def test_loads_and_reactions_close():
    assert worst_balance(sleeved(duty__reverse="50 %", mount__weight_acts="across")) < 1e-9


@pytest.mark.parametrize("pull", ["across", "away", "20 deg"])
def test_reduced_model_answers_as_the_full_one(pull):
    assert max(apart_from_full(plated(sleeved(chain__pull=pull, mount__softness=1)))) < 3e-3


def test_mirror():
    drive = plated(sleeved())
    assert lean(drive, 30) == pytest.approx(lean(drive, 150), rel=0.01)


@pytest.mark.parametrize("degrees", [0, 90])
def test_directions(degrees):
    base = moved(plated(sleeved()), degrees)
    assert moved(plated(sleeved(mount__thickness="25 mm")), degrees) < base
    assert moved(plated(sleeved(fixings__joint_stiffness="20 kN/mm")), degrees) > base
    assert moved(plated(sleeved(mount__material="pom")), degrees) < base


def test_sprocket_nearer_the_face_lowers_no_limit():
    near = safe_limits(**{**SLEEVES, "shaft__face_overhang": "32 mm"})
    for name, current in safe_limits(**SLEEVES).items():
        assert near[name] >= current * (1 - 1e-6), name


def test_example_slips_first_without_its_sleeves():
    """Kelp hauler: alignment governs; as a bare plate the same joint slips first, far lower."""
    file = read(folder("examples") / "kelp_hauler.toml")
    bare = file.edited(
        mount__form="plate", mount__sleeve_diameter=None, mount__motor_sleeve_diameter=None
    )
    with_, without = (
        {x.check.name: x.safe for x in find(f).limits if x.current_kind != "continuous"}
        for f in (file, bare)
    )
    assert with_["alignment"] < with_["bolt_slip"]
    assert without["bolt_slip"] < without["alignment"]
    assert with_["bolt_slip"] > 10 * without["bolt_slip"]


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"mount__material": "6061"}, ["mount.material", "aluminium keeps its clamp", "form 'plate'"]),
        ({"mount__sleeve_diameter": "8.5 mm"}, ["mount.sleeve_diameter", "no wall round M8", "9.0 mm"]),
        ({"fixings__washer": "standard", "mount__sleeve_diameter": "15 mm"}, ["mount.sleeve_diameter", "washer (16.0 mm)", "reach 1 mm or more", "wide washers"]),
        ({"mount__sleeve_flange": "13 mm"}, ["mount.sleeve_flange", "the flange (13.0 mm)"]),
        ({"mount__motor_sleeve_diameter": "12 mm"}, ["mount.motor_sleeve_diameter", "motor bolts' washer"]),
        ({"mount__motor_sleeve_diameter": "9 mm", "motor__holes": "slotted"}, ["motor.holes", "round hole"]),
        ({"mount__sleeve_diameter": None}, ["mount.sleeve_diameter", "is missing"]),
        ({"fixings__holes": "slotted"}, ["fixings.holes", "not a known key"]),
    ],
)  # fmt: skip
def test_bad_input_is_one_line(tmp_path, changes, words):
    line = message(tmp_path, **{**SLEEVES, **changes})
    assert all(word in line for word in words), line
