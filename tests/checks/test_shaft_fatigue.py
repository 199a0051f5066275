"""Motor shaft at its front bearing: yield by its two stresses, and fatigue after Goodman."""

from __future__ import annotations

import numpy as np
import pytest

from conftest import drive_file
from mountlimit import crossings, evaluate, limits
from mountlimit.checks import _shaft, motor_shaft
from mountlimit.errors import InputError
from mountlimit.formulas import shaft
from mountlimit.resolve import resolve

CURRENTS = np.geomspace(0.1, 1e5, 300)
SHAFT = {"shaft__notch": "shoulder, sharp", "shaft__ultimate_strength": "540 MPa",
         "shaft__yield_strength": "400 MPa", "shaft__face_to_bearing": "10 mm"}  # fmt: skip


def limit_of(name="shaft_fatigue", level="safe", **changes):
    """Current at which a check is used up at likely values, factor 1."""
    drive = resolve(drive_file(**{**SHAFT, **changes}))
    check = next(c for c in evaluate.applicable(drive) if c.name == name)
    curve = evaluate.curves(drive, CURRENTS, [name])[name]
    return crossings.refine(drive, check, level, CURRENTS, getattr(curve, level), 1.0)


def row_of(rows, group, current=40.0, **changes):
    """The check's last row in the first load case of a group, with that case."""
    drive = resolve(drive_file(**{**SHAFT, **changes}))
    index = next(i for i, c in enumerate(evaluate.loads.case_list(drive)) if c[1] == group)
    case = evaluate.case_at(drive, current, index)
    return rows(case)[-1], case


def amplitude_by_turning(moment, torque, diameter, reverse, in_bending=1.0, in_torsion=1.0):
    """Amplitude and mean of the equivalent stress, found by turning the shaft.

    A point of the surface is followed through one turn under the fixed pull; the torque takes its
    largest and its least value.  Amplitude and mean of every component times its notch factor,
    then von Mises of each.
    """
    inertia = np.pi / 64 * diameter**4
    angle = np.linspace(0, 2 * np.pi, 3601)
    bending = in_bending * moment * (diameter / 2) * np.sin(angle) / inertia
    shear = in_torsion * np.array([torque, -reverse * torque]) * (diameter / 2) / (2 * inertia)
    swing = (np.ptp(bending) / 2, np.ptp(shear) / 2)
    middle = (bending.max() / 2 + bending.min() / 2, shear.mean())
    return tuple(float(np.hypot(s, np.sqrt(3) * t)) for s, t in (swing, middle))


@pytest.mark.parametrize("reverse", [0.0, 0.4, 1.2])
def test_plain_shaft_against_a_turned_point(reverse):
    """Plain shaft: the safety is that of stresses followed round a turn (independent)."""
    row, case = row_of(
        motor_shaft.fatigue_rows, "steady", shaft__notch="plain", duty__reverse=reverse
    )
    moment = case.loads.shaft_load * 0.038
    alternating, mean = amplitude_by_turning(moment, case.loads.torque, 0.012, reverse)
    # Se: machined ka 0.851, kb 0.953 at 12 mm, half of 540 MPa, recomputed by hand.
    assert row.capacity / 1e6 == pytest.approx(219.0, abs=0.5)
    expected = alternating / row.capacity + mean / 540e6
    assert row.utilisation == pytest.approx(expected, rel=1e-6)


def test_notch_factors_of_table_7_1():
    """Sharp shoulder 2.7 / 2.2 and radius 0.24 mm at 540 MPa: a 0.285 mm, Kf 1.78, Kfs 1.70."""
    drive = resolve(drive_file(**SHAFT))
    s = drive.shaft
    assert (s.notch_bending, s.notch_torsion) == (2.7, 2.2)
    in_bending, in_torsion = _shaft.notch_factors(s)
    assert in_bending == pytest.approx(1.777, abs=0.001)
    assert in_torsion == pytest.approx(1.701, abs=0.001)


@pytest.mark.parametrize("reverse", [0.0, 1.0])
def test_sharp_shoulder_against_a_turned_point(reverse):
    """The same with Kf 1.777 on bending and Kfs 1.701 on torsion (recomputed by hand)."""
    row, case = row_of(motor_shaft.fatigue_rows, "steady", duty__reverse=reverse)
    alternating, mean = amplitude_by_turning(
        case.loads.shaft_load * 0.038, case.loads.torque, 0.012, reverse, 1.777, 1.701
    )
    expected = alternating / row.capacity + mean / 540e6
    assert row.utilisation == pytest.approx(expected, rel=0.0005)  # three decimals of the factors


def test_the_blow_of_a_start_does_not_count():
    """Fatigue looks at the steady peak pull: the starting factor changes yield only."""
    one, four = {"duty__starting_factor": 1}, {"duty__starting_factor": 4}
    assert limit_of(**four) == pytest.approx(limit_of(**one), rel=1e-9)
    hard, soft = (limit_of("motor_shaft", "gives", **x) for x in (four, one))
    assert hard < 0.5 * soft


def test_yield_is_that_of_the_two_stresses():
    """The static stress is the larger root of plane stress put into distortion energy."""
    row, case = row_of(motor_shaft.yield_rows, "pull")
    w = np.pi * 0.012**3 / 32
    bent = case.loads.shaft_load * 0.038 / w
    twist = case.loads.torque * case.loads.starting_factor / (2 * w)
    one, two = np.linalg.eigvalsh([[bent, twist], [twist, 0.0]])
    assert row.demand == pytest.approx(np.sqrt(one**2 - one * two + two**2), rel=1e-9)


def test_notches_by_how_sharp_they_are():
    """Plain is best; a shoulder with a radius, a sharp one, a groove follow."""
    order = ("plain", "shoulder, rounded", "shoulder, sharp", "groove")
    found = [limit_of(shaft__notch=n) for n in order]
    assert found == sorted(found, reverse=True)
    assert len(set(found)) == 4


def test_an_unknown_notch_is_a_range_from_plain_to_sharp():
    """No word: low, likely and high are the limits of the three forms."""
    file = drive_file(**{**SHAFT, "shaft__notch": None})
    known = next(r for r in resolve(file).ranges if r.key == "shaft.notch")
    assert (known.low, known.likely, known.high) == (1.0, 1.7, 2.7)
    for value, word in ((1.0, "plain"), (1.7, "shoulder, rounded"), (2.7, "shoulder, sharp")):
        s = resolve(file, {"shaft.notch": value}).shaft
        same = resolve(drive_file(**{**SHAFT, "shaft__notch": word})).shaft
        assert s.notch_bending == same.notch_bending
        assert s.notch_torsion == pytest.approx(same.notch_torsion)
        assert s.notch_radius == pytest.approx(same.notch_radius)
    limit = next(x for x in limits.find(file).limits if x.check.name == "shaft_fatigue")
    assert limit.ends["shaft.notch"] == "high"
    assert limit.gives is None


@pytest.mark.parametrize(
    "worse",
    [
        {"shaft__ultimate_strength": "420 MPa"}, {"shaft__face_overhang": "35 mm"},
        {"shaft__face_to_bearing": "15 mm"}, {"shaft__diameter": "11 mm"},
        {"chain__driving_teeth": 9},
    ],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(worse):
    """A softer or thinner shaft, more overhang, a smaller sprocket."""
    assert limit_of(**worse) < limit_of()


@pytest.mark.parametrize("teeth", [11, 60])
def test_reversing_never_helps(teeth):
    """Goodman alone would say so where bending governs (11 teeth); the start alone still counts."""
    found = [
        limit_of(duty__reverse=r, chain__driving_teeth=teeth, chain__centre_distance="500 mm")
        for r in (0.0, 0.5, 1.0)
    ]
    assert found[0] >= found[1] >= found[2]


def test_reversing_counts_where_torque_governs():
    """A large sprocket close to the bearing: little pull, much torque."""
    twisted = {
        "chain__driving_teeth": 60, "chain__centre_distance": "500 mm",
        "shaft__face_overhang": "5 mm", "shaft__face_to_bearing": "0 mm",
    }  # fmt: skip
    assert limit_of(duty__reverse=1.0, **twisted) < 0.9 * limit_of(**twisted)


def test_thick_shafts_take_the_second_size_factor():
    """At 51 mm the two size factors of Shigley eq. 6-20 meet within half a per cent."""
    limit = [
        float(row_of(motor_shaft.fatigue_rows, "steady", shaft__diameter=d, shaft__bearing=None)[0].capacity)
        for d in ("50.99 mm", "51.01 mm", "100 mm")
    ]  # fmt: skip
    assert limit[1] == pytest.approx(limit[0], rel=0.005)
    assert limit[2] < limit[1]


def test_default_strength_is_never_under_a_given_yield():
    """A shaft of 800 MPa yield is not taken as 500 MPa ultimate."""
    file = drive_file(
        **{**SHAFT, "shaft__ultimate_strength": None, "shaft__yield_strength": "800 MPa"}
    )
    known = next(r for r in resolve(file).ranges if r.key == "shaft.ultimate_strength")
    assert (known.low, known.likely, known.high) == (800e6, 800e6, 900e6)


@pytest.mark.parametrize(
    ("key", "value", "word"),
    [
        ("shaft__notch", "hole", "shoulder, sharp"),
        ("shaft__ultimate_strength", "50 MPa", "150 MPa to 2500 MPa"),
        ("shaft__ultimate_strength", "300 MPa", "below the yield strength"),
    ],
)
def test_bad_inputs_are_refused(key, value, word):
    """An unknown form, a strength out of range, a strength below the yield strength."""
    with pytest.raises(InputError, match=word):
        resolve(drive_file(**{**SHAFT, key: value}))


@pytest.mark.parametrize(
    ("notch", "bending", "torsion"),
    [("shoulder, sharp", 2.7, 2.2), ("shoulder, rounded", 1.7, 1.5), ("keyway", 2.14, 3.0), ("groove", 5.0, 3.0)],
)  # fmt: skip
def test_first_estimates_of_notches(notch, bending, torsion):
    """Shigley's Mechanical Engineering Design 9th ed. table 7-1 (from memory)."""
    assert shaft.CONCENTRATION[notch][:2] == (bending, torsion)
