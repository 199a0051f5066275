"""Holes for the frame bolts: EN 1993-1-8 resistance tables, directions, odd materials."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from conftest import angle_file, drive_file
from mountlimit import crossings, evaluate
from mountlimit.checks import BY_NAME, bolt_bearing
from mountlimit.errors import InputError
from mountlimit.resolve import resolve
from mountlimit.worked import Value

CURRENTS = np.geomspace(1.0, 1e6, 300)


def value(number):
    """A number with no key of its own."""
    return Value(number, "test", "given")


def at(drive, bolt):
    """A bolt of the main plane."""
    return bolt_bearing.Place(drive, drive.mount.plane, bolt)


def limit_of(file, check="bolt_bearing"):
    """Current at which the check is used up at likely values, factor 1."""
    drive = resolve(file)
    found = next(c for c in evaluate.applicable(drive) if c.name == check)
    curve = evaluate.curves(drive, CURRENTS, [check])[check]
    return crossings.refine(drive, found, "gives", CURRENTS, curve.gives, 1.0)


def tabled(bolts, hole, end, side, pitch, gauge, thickness):
    """A plate with the bolts, distances (mm) and steel (470 MPa) of the resistance tables."""
    drive = resolve(drive_file(
        mount__width=f"{2 * side + gauge} mm", mount__thickness=f"{thickness} mm",
        motor__bolt_circle="50 mm", fixings__bolts=f"4 x {bolts}", fixings__bolt_class="4.6",
        fixings__span_across=f"{gauge} mm", fixings__span_along=f"{pitch} mm",
        fixings__edge=f"{end} mm", mount__material="s355",
    ))  # fmt: skip
    material = drive.mount.material
    card = replace(material.card, ultimate_strength=value(470e6))
    mount = replace(drive.mount, material=replace(material, card=card))
    fixings = replace(drive.fixings, hole_diameter=value(hole / 1000))
    return replace(drive, mount=mount, fixings=fixings)


@pytest.mark.parametrize(
    ("bolts", "hole", "end", "side", "pitch", "gauge", "thickness", "force"),
    [
        ("M12", 14, 25, 20, 35, 40, 5, 30.3), ("M12", 14, 25, 20, 35, 40, 10, 60.5),
        ("M16", 18, 35, 25, 50, 50, 5, 42.7), ("M16", 18, 35, 25, 50, 50, 8, 68.3),
    ],
)  # fmt: skip
def test_resistance_tables(bolts, hole, end, side, pitch, gauge, thickness, force):
    """EN 1993-1-8 table 3.4, resistance tables for S355 and class 4.6 bolts, gamma_M2 1.25.

    The weaker of outer and inner bolt, pushed towards the end of the plate.  Printed in kN.
    """
    drive = tabled(bolts, hole, end, side, pitch, gauge, thickness)
    found = [
        bolt_bearing.bearing_force(at(drive, bolt), bolt_bearing.ACROSS_ROW, -1.0)
        for bolt in drive.mount.plane.bolts
    ]
    assert min(found) / 1.25 / 1000 == pytest.approx(force, abs=0.05)


def test_the_nearest_of_three_bolts_in_line_is_the_next():
    """Bolts at -30, 5 and 30 mm along the row: 35 mm on from the first, 25 mm between the others."""
    drive = resolve(drive_file())
    row = tuple((value(along), value(0.0)) for along in (-0.03, 0.005, 0.03))
    plane = replace(drive.mount.plane, bolts=row)
    ahead = [bolt_bearing.next_bolt(bolt_bearing.Place(drive, plane, b), 0, 1.0) for b in row]
    behind = [bolt_bearing.next_bolt(bolt_bearing.Place(drive, plane, b), 0, -1.0) for b in row]
    assert ahead == [pytest.approx(0.035), pytest.approx(0.025), None]
    assert behind == [None, pytest.approx(0.035), pytest.approx(0.025)]


@pytest.mark.parametrize("row", [(-0.05, 0.05), (-0.012, 0.012)], ids=["edge near", "bolts near"])
def test_both_sides_of_the_line_of_force_count(row):
    """Two bolts in mirror image: what is left of one is right of the other, so they bear alike."""
    drive = resolve(drive_file())
    bolts = tuple((value(x), value(0.0)) for x in row)
    plane = replace(drive.mount.plane, bolts=bolts)
    left, right = (bolt_bearing.Place(drive, plane, b) for b in bolts)
    force = bolt_bearing.bearing_force(left, 1, -plane.towards_motor)
    assert force == pytest.approx(bolt_bearing.bearing_force(right, 1, -plane.towards_motor))
    wide = (value(-0.03), value(0.03))
    free = replace(plane, bolts=tuple((x, value(0.0)) for x in wide))
    easy = bolt_bearing.bearing_force(
        bolt_bearing.Place(drive, free, free.bolts[0]), 1, -plane.towards_motor
    )
    assert force < easy


def test_a_bolt_alone_in_its_line_is_a_single_lap():
    """EN 1993-1-8 clause 3.6.1(10): one row of bolts in the line of force; a neighbour either way ends it."""
    drive = resolve(drive_file())
    for places, alone in (((0.0,), True), ((-0.03, 0.03), False), ((-0.03, 0.0, 0.03), False)):
        plane = replace(drive.mount.plane, bolts=tuple((value(x), value(0.0)) for x in places))
        for bolt in plane.bolts:
            place = bolt_bearing.Place(drive, plane, bolt)
            assert bolt_bearing._alone(place, 0) == alone
            assert bolt_bearing._alone(place, 1)


def test_a_bolt_alone_bears_no_more_than_a_single_lap():
    """EN 1993-1-8 eq. 3.2 with a partial factor of 1: 1.5 f_u d t, where a far edge alone gave 2.5."""
    drive = resolve(drive_file(mount__width="200 mm", fixings__edge="60 mm"))
    plane = replace(drive.mount.plane, bolts=((value(0.0), value(0.0)),))
    place = bolt_bearing.Place(drive, plane, plane.bolts[0])
    f_u = float(drive.mount.material.card.ultimate_strength)
    expected = 1.5 * f_u * 0.008 * float(plane.thickness)
    assert bolt_bearing.bearing_force(place, 1, -plane.towards_motor) <= expected * (1 + 1e-9)
    assert bolt_bearing.bearing_force(place, 0, 1.0) == pytest.approx(expected)


def test_a_metal_mount_is_torn_or_borne_not_crushed():
    drive = resolve(drive_file())
    check = next(c for c in evaluate.applicable(drive) if c.name == "bolt_bearing")
    stations = [r.station for r in check.rows(evaluate.case_at(drive, 40.0, 0))]
    for words in ("bearing along", "bearing across", "AISC 360"):
        assert [s for s in stations if words in s]
    assert not [s for s in stations if "crushed" in s]


def test_tear_out_of_a_thin_tab():
    """AISC 360-16 eq. J3-6 (from memory): 5 mm bolt, hole 5.5, 8 mm from the end, 3 mm, 290 MPa: 5481 N."""
    drive = resolve(
        drive_file(fixings__bolts="4 x M5", fixings__edge="8 mm", mount__thickness="3 mm")
    )
    material = drive.mount.material
    card = replace(material.card, ultimate_strength=value(290e6))
    drive = replace(
        drive, mount=replace(drive.mount, material=replace(material, card=card)),
        fixings=replace(drive.fixings, hole_diameter=value(0.0055)),
    )  # fmt: skip
    outer = min(drive.mount.plane.bolts, key=lambda b: b[1])
    assert bolt_bearing.torn_force(at(drive, outer), 1, -1.0) == pytest.approx(5481, abs=0.5)
    # Towards the motor no end is near: bearing governs, 10 440 N.
    inner = max(drive.mount.plane.bolts, key=lambda b: b[1])
    assert bolt_bearing.torn_force(at(drive, inner), 1, 1.0) == pytest.approx(10440, abs=0.5)


@pytest.mark.parametrize("make", [drive_file, angle_file])
def test_only_the_end_away_from_the_motor_is_open(make):
    """Each outer bolt meets the end one way, the motor's side the other; both sides are open."""
    for points in ("motor", "sprocket") if make is angle_file else (None,):
        drive = resolve(make(mount__foot_points=points) if points else make())
        way = drive.mount.plane.towards_motor
        assert abs(way) == 1.0
        bolts = sorted(drive.mount.plane.bolts, key=lambda b: float(b[1]) * way)
        assert bolt_bearing.ahead(at(drive, bolts[0]), 1, -way) == (drive.fixings.edge, True)
        assert not bolt_bearing.ahead(at(drive, bolts[0]), 1, way)[1]
        assert not bolt_bearing.ahead(at(drive, bolts[-1]), 1, way)[1]
        assert all(bolt_bearing.to_end(at(drive, b), 0, w)[1] for b in bolts for w in (-1.0, 1.0))


def test_pull_away_tears_the_end_and_pull_towards_does_not():
    """The end distance counts for a pull away from the frame; towards it no end is in the way."""
    ends = ("12 mm", "14 mm")
    away = [
        limit_of(drive_file(chain__pull="away", fixings__edge=e, fixings__span_along="0 mm"))
        for e in ends
    ]
    drive = resolve(drive_file(fixings__edge="12 mm", fixings__span_along="0 mm"))
    bolt = drive.mount.plane.bolts[0]
    assert away[1] > 1.05 * away[0]
    to_end, to_motor = (bolt_bearing.torn_force(at(drive, bolt), 1, w) for w in (-1.0, 1.0))
    assert to_end < to_motor


@pytest.mark.parametrize(
    "worse",
    [
        {"mount__thickness": "6 mm"}, {"fixings__bolts": "4 x M6"}, {"fixings__holes": "slotted"},
        {"mount__yield_strength": "120 MPa"}, {"fixings__edge": "10 mm"}, {"fixings__bolts": "2 x M8", "fixings__span_along": "0 mm"},
    ],
)  # fmt: skip
@pytest.mark.parametrize("pull", ["away", "across"])
def test_what_makes_it_worse_lowers_the_limit(worse, pull):
    """A thinner or softer plate, a smaller or slotted hole, a nearer end, fewer bolts."""
    same = {"chain__pull": pull, "mount__yield_strength": "276 MPa"}
    good, bad = limit_of(drive_file(**same)), limit_of(drive_file(**{**same, **worse}))
    assert bad < good if pull == "away" or "fixings__edge" not in worse else bad <= good


def test_a_soft_mount_is_crushed_or_sheared_at_yield():
    """Polyethylene and plywood: no EN rows, the factor of the mount, half the thickness half the limit."""
    for material in ("hdpe", "birch_ply"):
        file = {"mount__material": material, "motor__mass": "0.05 kg"}
        thick, thin = (drive_file(**file, mount__thickness=t) for t in ("20 mm", "10 mm"))
        drive = resolve(thick)
        check = next(c for c in evaluate.applicable(drive) if c.name == "bolt_bearing")
        stations = [r.station for r in check.rows(evaluate.case_at(drive, 40.0, 0))]
        assert stations
        assert not [s for s in stations if "AISC" in s or "bearing" in s]
        assert sum("crushed" in s for s in stations) == len(drive.mount.plane.bolts)
        assert evaluate.design_factor(check, drive)[0] in (3.0, 4.0)
        loads = [
            max(float(r.utilisation) for r in check.rows(evaluate.case_at(resolve(f), 40.0, 0)))
            for f in (thick, thin)
        ]
        # The arm of the sprocket over the joint's plane does not act in it.
        assert loads[1] == pytest.approx(2 * loads[0], rel=0.02)


def test_rows_agree_for_one_case_and_for_all():
    """Plain numbers and stacked arrays give the same utilisation."""
    drive = resolve(drive_file(duty__reverse="30 %"))
    check = next(c for c in evaluate.applicable(drive) if c.name == "bolt_bearing")
    whole = check.rows(evaluate.case_at(drive, np.array([20.0, 90.0])))
    names = evaluate.case_at(drive, np.array([20.0])).loads.names
    for index in range(len(names)):
        one = check.rows(evaluate.case_at(drive, 90.0, index))
        for a, b in zip(whole, one, strict=True):
            assert a.utilisation[index, 1] == pytest.approx(float(b.utilisation), rel=1e-9)


def test_slots_are_named():
    """The station says that the holes are slotted."""
    drive = resolve(drive_file(fixings__holes="slotted"))
    assert all("slot" in r.station for r in bolt_bearing.rows(evaluate.case_at(drive, 40.0, 0)))


@pytest.mark.parametrize(
    ("bad", "key"),
    [({"fixings__edge": "4 mm"}, "fixings.edge"), ({"fixings__span_along": "8 mm"}, "fixings.span_along")],
)  # fmt: skip
def test_holes_that_run_into_something_are_refused(bad, key):
    """A hole through the end of the plate, or into the next hole."""
    with pytest.raises(InputError) as error:
        resolve(drive_file(**bad))
    assert [m.key for m in error.value.mistakes] == [key]


def test_a_near_end_is_warned_about():
    """Nearer than 1.2 hole diameters (EN 1993-1-8 table 3.3)."""
    near, far = (
        resolve(drive_file(fixings__edge="9 mm")),
        resolve(drive_file(fixings__edge="12 mm")),
    )
    assert any("1.2 hole diameters" in w for w in near.warnings)
    assert not any("1.2 hole diameters" in w for w in far.warnings)


@pytest.mark.parametrize("name", ["bolt_bearing", "pull_through", "mount_section"])
@pytest.mark.parametrize("material", ["pom_c", "gjl200", "birch_ply"])
def test_nothing_softer_or_brittler_gets_the_factor_of_a_wrought_metal(name, material):
    """A mount of plastic, iron or wood keeps more margin than one of steel, in every check of its holes."""
    steel, other = (resolve(drive_file(mount__material=m)) for m in ("s235", material))
    check = BY_NAME[name]
    assert evaluate.design_factor(check, other)[0] > evaluate.design_factor(check, steel)[0]
