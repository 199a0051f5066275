"""What physics demands of the limits: ratios of moduli, thickness, teeth; relief never hidden."""

from __future__ import annotations

import numpy as np
import pytest

from conftest import IDEAL, angle_file, careful, changed, drive_file, toml_text
from mountlimit import crossings, evaluate, limits
from mountlimit.checks.alignment import peak_rows
from mountlimit.drivefile import parse
from mountlimit.resolve import resolve

CURRENTS = np.geomspace(0.1, 1e5, 400)


def limit_of(file, name, level="gives"):
    """The current at which one check is used up, likely values, factor 1."""
    drive = resolve(file)
    check = next(c for c in evaluate.applicable(drive) if c.name == name)
    curve = evaluate.curves(drive, CURRENTS, [name])[name]
    return crossings.refine(drive, check, level, CURRENTS, getattr(curve, level), 1.0)


def twist_limit(file):
    """The current at which the angle between the shafts alone is used up, whatever the slack does."""
    case = evaluate.case_at(resolve(file), CURRENTS)
    (row,) = (r for r in peak_rows(case) if r.station == "angle between the shafts")
    return crossings.crossing(CURRENTS, np.max(row.utilisation, axis=0))


STIFF_SHAFT = {"shaft__diameter": "120 mm", "shaft__bearing": None, "shaft__static_rating": "100 kN",
               "hub__key": "30 x 20 x 100 mm"}  # fmt: skip


def test_stiffness_limits_stand_as_the_moduli():
    """Everything else rigid: twist-limited currents of three materials are as their moduli (equal nu)."""
    found = {}
    for modulus in ("70 GPa", "210 GPa", "2.8 GPa"):
        file = drive_file(**IDEAL, **STIFF_SHAFT, mount__elastic_modulus=modulus)
        found[modulus] = twist_limit(file)
    assert found["210 GPa"] / found["70 GPa"] == pytest.approx(3.0, rel=0.03)
    assert found["70 GPa"] / found["2.8 GPa"] == pytest.approx(25.0, rel=0.03)


@pytest.mark.parametrize("make", [drive_file, angle_file])
@pytest.mark.parametrize("held", [0, 1])
def test_twice_the_thickness(make, held):
    """Twist-limited current grows 7 to 13 times, yield-limited 3.5 to 5 times."""
    ideal = {**IDEAL, **STIFF_SHAFT, "mount__warping_held": held, "shaft__face_overhang": "60 mm",
             "mount__free_length": "110 mm"}  # fmt: skip
    thin, thick = (make(**ideal, mount__thickness=t) for t in ("5 mm", "10 mm"))
    twist = twist_limit(thick) / twist_limit(thin)
    strength = limit_of(thick, "mount_section") / limit_of(thin, "mount_section")
    assert 7 < twist < 13
    assert 3.5 < strength < 5


def test_twice_the_teeth_halve_the_pull():
    """Chain pull goes as one over the teeth (a little more by the polygon)."""
    few, many = (drive_file(chain__driving_teeth=z) for z in (11, 22))
    ratio = limit_of(many, "chain_static") / limit_of(few, "chain_static")
    assert ratio == pytest.approx(2.0, rel=0.07)


@pytest.mark.parametrize("make", [drive_file, angle_file])
@pytest.mark.parametrize("pull", ["across", "away", "towards"])
def test_sprocket_inboard_never_lowers_a_limit(make, pull):
    """Moving the sprocket towards the motor's face relieves or leaves every limit."""
    out, near = (
        {
            x.check.name: x
            for x in limits.find(careful(make(chain__pull=pull, shaft__face_overhang=e))).limits
        }
        for e in ("40 mm", "25 mm")
    )
    for name, limit in out.items():
        assert near[name].safe >= limit.safe * (1 - 1e-9), name


@pytest.mark.parametrize("share", ["0 %", "20 %", "60 %"])
def test_less_regeneration_never_lowers_a_limit(share):
    """A larger reversed share lowers or leaves every limit."""
    more = {x.check.name: x for x in limits.find(drive_file(duty__reverse="100 %")).limits}
    less = {x.check.name: x for x in limits.find(drive_file(duty__reverse=share)).limits}
    for name, limit in more.items():
        assert less[name].safe >= limit.safe * (1 - 1e-9), name


def test_millimetre_and_inch_files_agree():
    """The same part written in inches gives the same limits."""
    metric = drive_file(
        mount__thickness="6.35 mm", mount__width="127 mm", shaft__face_overhang="31.75 mm"
    )
    inch = drive_file(
        mount__thickness="1/4 in", mount__width="5 in", shaft__face_overhang="1-1/4 in"
    )
    one, two = limits.find(metric).limits, limits.find(inch).limits
    assert [x.check.name for x in one] == [x.check.name for x in two]
    for a, b in zip(one, two, strict=True):
        for x, y in ((a.safe, b.safe), (a.gives, b.gives), (a.gives_low, b.gives_low)):
            if x is not None and np.isfinite(x):
                assert x == pytest.approx(y, rel=1e-9)


def test_limits_straddle_one():
    """Just below each safe limit its check holds, just above it does not."""
    found = limits.find(drive_file())
    file = found.file
    for limit in found.limits:
        if not np.isfinite(limit.safe) or limit.safe == 0 or limit.current_kind == "continuous":
            continue
        drive = resolve(file, limit.corner)
        low, high = (
            float(
                evaluate.curves(drive, np.array([limit.safe * k]), [limit.check.name])[
                    limit.check.name
                ].safe[0]
            )
            for k in (0.999, 1.001)
        )
        assert low * limit.factor < 1 < high * limit.factor, limit.check.name


def test_safe_never_above_gives():
    """The safe limit lies below the likely giving current of the same check."""
    for file in (drive_file(), angle_file(), drive_file(mount__material="hdpe", mount__thickness="20 mm",
                                                        shaft__face_overhang="45 mm")):  # fmt: skip
        for limit in limits.find(file).limits:
            if limit.gives is not None:
                assert limit.safe <= limit.gives, limit.check.name
                assert limit.gives_low <= limit.gives <= limit.gives_high


def test_balance_closes():
    """Joint reactions balance the loads in every case, direction and sign."""
    file = angle_file(chain__pull=["across", "away", "towards", "35 deg"], duty__reverse="50 %")
    assert limits.find(file).balance < 1e-9


@pytest.mark.parametrize(("route", "share"), [("sections", 1e-9), ("plates", 5e-3)])
def test_mirror_image(route, share):
    """A mirrored chain direction gives the same limits: the mount is symmetric.

    The plate model's mesh is not: 0.3 % in the bolts' tension, 0.1 % in lean.
    """
    one, two = (
        {
            x.check.name: x.safe
            for x in limits.find(drive_file(chain__pull=a, mount__route=route)).limits
        }
        for a in ("30 deg", "150 deg")
    )
    for name, safe in one.items():
        assert two[name] == pytest.approx(safe, rel=share), name


def test_unknown_direction_is_the_worst_of_all():
    """Without a direction every direction is tried, and no limit is above that of a known one."""
    data = changed()
    del data["chain"]["pull"]
    unknown = {
        x.check.name: x.safe for x in limits.find(parse(toml_text(data).encode(), "t")).limits
    }
    for pull in ("across", "away", "towards"):
        for limit in limits.find(drive_file(chain__pull=pull)).limits:
            assert unknown[limit.check.name] <= limit.safe * (1 + 1e-9)
