"""Thinnest plate: it straddles the wanted current, and what no plate can give is said so."""

from __future__ import annotations

import json
import math
import os

import numpy as np
import pytest
from click.testing import CliRunner

from conftest import angle_file, careful, drive_file
from mountlimit import cards, limits, starter, thickness
from mountlimit.cards import folder
from mountlimit.cli import main
from mountlimit.drivefile import parse, read
from mountlimit.errors import MountlimitError

# The whole set of 50 takes some minutes: MOUNTLIMIT_LONG=1 runs it, the ordinary run begins where one carries and ends there.
DRIVES_OF_EACH_FORM = 50
FIRST, CARRIED = (0, 50) if os.environ.get("MOUNTLIMIT_LONG") else (2, 1)
MATERIALS = ("6061", "s235", "pom-c", "6082", "a36", "304")


def random_drive(make, seed):
    """A drive with sizes spread over the usual ranges; as-built errors measured, as a careful user would."""
    rng = np.random.default_rng(seed)
    circle = float(rng.uniform(50, 110))
    width = circle + float(rng.uniform(25, 80))
    shaft = float(rng.choice([12, 15, 17, 20, 25]))
    key = {12: "4x4x16 mm", 15: "5x5x22 mm", 17: "5x5x25 mm", 20: "6x6x28 mm", 25: "8x7x32 mm"}[
        int(shaft)
    ]
    changes = {
        "mount__material": str(rng.choice(MATERIALS)), "motor__bolt_circle": f"{circle:.1f} mm",
        "mount__width": f"{width:.1f} mm", "fixings__span_across": f"{0.75 * width:.1f} mm",
        "mount__free_length": f"{circle / 2 + rng.uniform(15, 70):.1f} mm",
        "shaft__face_overhang": f"{rng.uniform(25, 60):.1f} mm", "shaft__diameter": f"{shaft:g} mm",
        "shaft__bearing": None, "shaft__static_rating": "12 kN", "hub__key": key,
        "motor__torque_constant": f"{rng.uniform(0.06, 0.2):.3f} N*m/A", "chain__skew": "0.02 deg",
        "chain__offset": "0.1 mm", "shaft__bearing_play": "0.005 mm",
        "chain__pull": str(rng.choice(["across", "away", "towards"])), "fixings__preload": "12 kN",
        "duty__starting_factor": float(rng.choice([1.0, 1.5, 2.0])), "frame__size": "60 mm",
        "frame__wall": "4 mm", "frame__span": "300 mm",
    }  # fmt: skip
    if make is angle_file:
        changes["mount__heel_bears_from"] = "0 mm"
    return make(**changes), float(rng.uniform(15, 120))


def first_safe(file):
    """Smallest safe current of the peak setting."""
    return limits.find(file).first_safe.safe


@pytest.mark.parametrize("make", [drive_file, angle_file], ids=["plate", "angle"])
def test_straddles_the_wanted_current(make):
    """0.5 % thicker carries the wanted current, 0.5 % thinner does not; or the reason is named."""
    carried = refused = 0
    for seed in range(FIRST, DRIVES_OF_EACH_FORM):
        if carried >= CARRIED:
            break
        file, wanted = random_drive(make, seed)
        material = file.given["mount.material"].value.id
        answer = thickness.thinnest(file, wanted, [material], curve=False)[0]
        if math.isfinite(answer.thickness):
            thick = thickness.with_thickness(file, answer.thickness * 1.005)
            assert first_safe(thick) >= wanted, seed
            if answer.thickness > thickness.THINNEST:
                carried += 1
                thin = thickness.with_thickness(file, answer.thickness / 1.005)
                assert first_safe(thin) < wanted, seed
        else:
            refused += 1
            assert answer.set_by, seed
            top = 1.98 * float(limits.find(file).drive.shaft.face_overhang)
            for t in np.geomspace(0.002, min(0.15, top) * 0.99, 4):
                assert first_safe(thickness.with_thickness(file, float(t))) < wanted, seed
    assert carried >= min(CARRIED, DRIVES_OF_EACH_FORM // 4)
    print(f"carried {carried}, refused {refused}")


def test_another_material_is_a_real_edit():
    """At the thickness told for another material, the file with that material carries the current."""
    told = {"chain__skew": "0.02 deg", "chain__offset": "0.1 mm", "fixings__preload": "15 kN"}
    via = thickness.thinnest(drive_file(**told), 35.0, ["s235"], curve=False)[0]
    direct = drive_file(
        **told, mount__material="s235", mount__thickness=f"{via.thickness * 1000:.6f} mm"
    )
    assert first_safe(direct) == pytest.approx(35.0, rel=5e-3)


def test_next_stock_size_is_sold():
    """The stock size is the next one of the family's list, in mm and in inch."""
    file = drive_file(chain__skew="0.02 deg", chain__offset="0.1 mm", fixings__preload="15 kN")
    answer = thickness.thinnest(file, 20.0, ["6061"])[0]
    metric = cards.stock("aluminium", "metric").thicknesses
    assert answer.stock_metric == min(t for t in metric if t >= answer.thickness)
    inch = cards.stock("aluminium", "inch").thicknesses
    assert answer.stock_inch == min(t for t in inch if t >= answer.thickness)
    assert [p.thickness for p in answer.curve] == sorted(p.thickness for p in answer.curve)
    assert answer.at_stock.mass > 0


def test_one_material_of_each_family_is_tried():
    """Without names the file's own material comes first, then one of each other family."""
    tried = thickness.to_try(drive_file())
    assert tried[0].id == "al6061_t6"
    families = [m.family for m in tried]
    assert sorted(families) == ["aluminium", "plastic", "steel", "wood"]
    assert [m.id for m in thickness.to_try(drive_file(), ["304"])] == [cards.material("304").id]


def test_command_names_the_material_and_what_stops_it():
    """The command says what sets each answer, what the stock size carries and how sure that is."""
    path = str(folder("examples") / "orchard_barrow.toml")
    result = CliRunner().invoke(
        main, ["thickness", path, "--for", "30A", "--material", "6061", "--json"]
    )
    assert result.exit_code == 0
    answer = json.loads(result.stdout)["materials"][0]
    assert answer["material"] == "al6061_t6"
    stock = answer["at_stock_metric"]
    assert stock["safe"]["value"] >= 30.0
    assert stock["gives_low"]["value"] < stock["gives"]["value"] < stock["gives_high"]["value"]
    whole = limits.find(thickness.with_thickness(read(path), answer["stock_metric"]))
    assert stock["safe"]["value"] == pytest.approx(whole.first_safe.safe, rel=1e-9)
    assert stock["safe_set_by"] == whole.first_safe.check.name
    assert stock["gives"]["value"] == pytest.approx(whole.first_gives.gives, rel=1e-9)
    near = min(answer["curve"], key=lambda p: abs(p["thickness"] - answer["stock_metric"]))
    assert near["safe"] == pytest.approx(whole.first_safe.safe, rel=0.05)  # the sweep is only near
    wrong = CliRunner().invoke(main, ["thickness", path, "--for", "30"])
    assert wrong.exit_code == 2
    assert "30 A" in wrong.stderr
    wrong = CliRunner().invoke(main, ["thickness", path, "--material", "butter"])
    assert wrong.exit_code == 2
    assert len(wrong.stderr.strip().splitlines()) == 1


def test_a_thickness_that_cannot_be_built_refuses_no_material():
    """Screws sit in the upright's edge: thin ones are refused, the answer stands all the same."""
    file = careful(parse(starter.text("built-up angle", "b.toml").encode(), "b.toml"))
    with pytest.raises(MountlimitError):
        limits.find(thickness.with_thickness(file, 0.003))
    wanted = first_safe(file)
    answer = thickness.thinnest(file, wanted, ["birch_ply"], curve=False)[0]
    assert math.isfinite(answer.thickness), answer.why_not
    assert first_safe(thickness.with_thickness(file, answer.thickness)) >= wanted * 0.9999
    try:
        thinner = first_safe(thickness.with_thickness(file, answer.thickness / 1.005))
    except MountlimitError:
        thinner = 0.0
        assert "cannot be built" in answer.why_not
    assert thinner < wanted
