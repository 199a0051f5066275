"""Teeth and bolt holes of the sprockets: published tooth sizes, a plane-stress model, direction."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hub_cases import DRIVEN_TORQUE, check_of, file_of, limit_of, rows_of

from mountlimit import evaluate
from mountlimit.assess import not_checked
from mountlimit.errors import InputError
from mountlimit.formulas import sprocket, teeth
from mountlimit.resolve import resolve

SIDES = [("hub", "sprocket_teeth"), ("driven", "driven_teeth")]
SOFT = {"hub": {"hub__sprocket_material": "6082"}, "driven": {"driven__sprocket_material": "6082"}}
BOLTED = {
    "driven__sprocket_material": "6082", "driven__bolts": "6 x M12", "driven__bolt_circle": "160 mm",
    "driven__bolt_class": "8.8", "driven__preload": "40 kN", "driven__pilot": "yes",
}  # fmt: skip


def test_root_of_a_published_sprocket():
    """Bhandari, example 14.5: 12B on 17 teeth, pitch circle 103.674 mm, middle seats: 91.3248 mm."""
    middle = (0.505 * 0.01207 + teeth.seat_radius_max(0.01207)) / 2
    assert teeth.root_diameter(0.103673741, middle) * 1000 == pytest.approx(91.3248, abs=5e-5)


@pytest.mark.parametrize(("teeth_count", "share"), [(9, 0.78), (11, 0.72), (15, 0.63), (21, 0.53)])
def test_load_never_under_the_pull_it_takes_off_the_chain(teeth_count, share):
    """The tooth's push is more than the tension it takes out (Complete Guide 2.1.2: 78 to 53 %)."""
    push = teeth.tooth_share(teeth.pressure_angle_least(teeth_count), teeth_count)
    assert share < push < 1.0


def test_three_forces_on_a_roller_close():
    """Chain either side and tooth: the push along its own direction leaves no force over."""
    z, angle = 13, teeth.pressure_angle_least(13)
    push, turn = teeth.tooth_share(angle, z), 2 * math.pi / z
    after = math.sin(angle) / math.sin(angle + turn)
    chain = np.array([1.0, 0.0]) - after * np.array([math.cos(turn), math.sin(turn)])
    tooth = push * np.array([-math.cos(angle), math.sin(angle)])
    assert np.allclose(chain + tooth, 0.0, atol=1e-12)


@pytest.mark.parametrize(("side", "name"), SIDES)
def test_stress_of_a_tooth_by_hand(side, name):
    """Chain 40, a tooth that takes 1000 N, 7 mm wide: seat 4.152, root 5.509, arm 1.305 mm (11 teeth).

    Bending 36.86 MPa and shear 25.93 MPa at the root, worked on a pocket calculator.
    """
    told = {
        **SOFT[side],
        f"{side}__tooth_width": "7 mm",
        f"{side}__tooth_share": 1,
        "chain__wear": "0 %",
    }
    same = {**told, "chain__driven_teeth": 11, "chain__driving_teeth": 11}
    rows, _ = rows_of(name, {"tight_side_tension": 1000.0}, **same)
    root, shear, press = (r.demand / 1e6 for r in rows)
    assert root == pytest.approx(math.hypot(36.86, math.sqrt(3) * 25.93), rel=2e-3)
    assert shear == pytest.approx(1000 / (7 * 4.396), rel=1e-3)
    assert press == pytest.approx(1000 / (7 * 7.95), rel=1e-6)


@pytest.mark.parametrize(
    ("pitch", "roller", "count", "wear"),
    [(0.0127, 0.00795, 11, 0.0), (0.00635, 0.0033, 17, 0.0), (0.0127, 0.00851, 54, 0.01)],
)
def test_never_weaker_than_a_plane_stress_model(pitch, roller, count, wear):
    """Limit load of the same tooth in elements: the check asks for as much strength, or to half more."""
    pytest.importorskip("skfem")
    from tooth_model import Solved, Tooth

    from mountlimit.formulas import equivalent, sprocket

    seat, push = teeth.seat_radius_max(roller), teeth.pressure_angle_least(count)
    rise = teeth.roller_rise(sprocket.pitch_diameter(pitch, count), wear)
    leaves = math.radians(90 - 180 / count - (120 - 90 / count) / 2)  # narrowest seat of ISO 606
    model = Tooth(
        seat=seat / pitch, roller=roller / pitch, push=push, rise=rise / pitch, across=14, along=14,
        flank=max(min(leaves, push), 0.05), height=0.8 * (0.625 - roller / pitch / 2),
    )  # fmt: skip
    needed = Solved(model).limit(20) / pitch
    root = teeth.root_width(pitch, seat)
    bent = teeth.root_bending(1.0, teeth.bending_arm(seat, roller, push, rise), 1.0, root)
    both = equivalent.von_mises(bent, teeth.mean_shear(1.0, 1.0, root))
    sheared = teeth.mean_shear(1.0, 1.0, teeth.neck_width(pitch, seat, rise, push)) * math.sqrt(3)
    assert 1.0 <= max(both, sheared) / needed <= 1.5


@pytest.mark.parametrize(("side", "name"), SIDES)
@pytest.mark.parametrize(
    "worse", [{"tooth_width": "4 mm"}, {"tooth_share": 1}, {"sprocket_material": "pom_c"}]
)
def test_what_makes_it_worse_lowers_the_limit(side, name, worse):
    """Narrower teeth, one tooth alone, a softer material."""
    changes = {f"{side}__{k}": v for k, v in worse.items()}
    assert limit_of(name, **{**SOFT[side], **changes}) < limit_of(name, **SOFT[side])


def test_fewer_teeth_and_wear_lower_the_limit():
    """A smaller driving sprocket pulls more; a longer chain rides up and bends the teeth."""
    good = limit_of("sprocket_teeth", **SOFT["hub"])
    assert limit_of("sprocket_teeth", **SOFT["hub"], chain__driving_teeth=9) < good
    assert limit_of("sprocket_teeth", **SOFT["hub"], chain__wear="2 %") < good


def test_holes_of_a_published_table():
    """EN 1993-1-8 table 3.4, S355, M12 in 14 mm holes, k1 2.5 and a_b 1 but single lap: 1.5 f_u d t."""
    told = {**BOLTED, "driven__sprocket_material": "s355", "driven__tooth_width": "6 mm"}
    (row,), _ = rows_of("driven_bolt_holes", **told)  # hub_bolt_holes runs the same rows
    assert row.demand == pytest.approx(DRIVEN_TORQUE / (6 * 0.08), rel=1e-9)
    strength = float(resolve(file_of(**told)).driven.sprocket.material.ultimate_strength)
    assert row.capacity == pytest.approx(1.5 * strength * 0.012 * 0.006, rel=1e-9)


@pytest.mark.parametrize(
    "worse",
    [{"driven__tooth_width": "4 mm"}, {"driven__sprocket_material": "pom_c"}, {"driven__pilot": "no"},
     {"driven__bolt_circle": "60 mm"}, {"driven__bolts": "3 x M12"}],
)  # fmt: skip
def test_what_loads_the_holes_more_lowers_the_limit(worse):
    """Thin or soft plate, the pull on the bolts too, a smaller circle, fewer bolts."""
    assert limit_of("driven_bolt_holes", **{**BOLTED, **worse}) < limit_of(
        "driven_bolt_holes", **BOLTED
    )


def test_holes_near_the_teeth_bear_less():
    """55 teeth of half an inch: root 214 mm; circle 193 mm leaves 10.5 mm, under 1.2 hole diameters."""
    (near,), _ = rows_of("driven_bolt_holes", **{**BOLTED, "driven__bolt_circle": "193 mm"})
    (far,), _ = rows_of("driven_bolt_holes", **BOLTED)
    assert near.capacity < 0.5 * far.capacity


@pytest.mark.parametrize(
    ("bad", "key"),
    [
        ({**SOFT["hub"], "hub__tooth_width": "9 mm"}, "hub.tooth_width"),
        ({**SOFT["hub"], "hub__bolts": "6 x M5", "hub__bolt_circle": "36 mm"}, "hub.bolt_circle"),
        ({"hub__sprocket_material": "cheese"}, "hub.sprocket_material"),
        ({**SOFT["driven"], "driven__tooth_share": 1.2}, "driven.tooth_share"),
    ],
)  # fmt: skip
def test_bad_inputs_are_refused(bad, key):
    """Teeth wider than the chain, holes in the teeth, no such material, more than the whole pull."""
    with pytest.raises(InputError) as error:
        resolve(file_of(**bad))
    assert [m.key for m in error.value.mistakes] == [key]


def test_teeth_are_checked_only_where_the_material_is_told():
    """Each side leaves the list of what is not checked; a width without a material is said to idle."""
    none = resolve(file_of(hub__tooth_width="7 mm"))
    assert not [n for _, n in SIDES if check_of(n, none)]
    assert any("hub.tooth_width does nothing" in w for w in none.warnings)
    assert "teeth of the driving and the driven sprocket" in "\n".join(not_checked(none))
    one = "\n".join(not_checked(resolve(file_of(**SOFT["hub"]))))
    assert "teeth of the driven sprocket" in one
    assert "hub.sprocket_material" not in one
    both = resolve(file_of(**SOFT["hub"], **SOFT["driven"]))
    assert "teeth of the" not in "\n".join(not_checked(both))


def test_cast_and_plastic_sprockets_take_the_factor_of_their_material():
    """Cast iron 4, plastic 3, wrought metal 2."""
    for material, factor in (("gjl200", 4.0), ("pom_c", 3.0), ("6082", 2.0)):
        drive = resolve(file_of(hub__sprocket_material=material))
        check = check_of("sprocket_teeth", drive)
        assert evaluate.design_factor(check, drive)[0] == factor


def test_usual_width_of_a_tooth():
    """ISO 606: 0.93 of the inner width up to a pitch of 12.7 mm, 0.95 above (from memory)."""
    assert [float(sprocket.width_factor(p)) for p in (0.00635, 0.0127)] == [0.93, 0.93]
    assert [float(sprocket.width_factor(p)) for p in (0.015875, 0.0254)] == [0.95, 0.95]


@pytest.mark.parametrize("side", ["hub", "driven"])
def test_holes_in_a_plastic_sprocket_are_less_sure(side):
    """The factor of a plastic mount, not the one of a wrought metal."""
    ring = {"bolts": "4 x M5", "bolt_circle": "30 mm", "bolt_class": "8.8", "preload": "2 kN"}
    told = {f"{side}__{k}": v for k, v in ring.items()} | {"chain__driving_teeth": 25}
    factors = []
    for material in ("6082", "pom"):
        drive = resolve(file_of(**told, **{f"{side}__sprocket_material": material}))
        factors.append(evaluate.design_factor(check_of(f"{side}_bolt_holes", drive), drive)[0])
    assert factors[1] > factors[0]
