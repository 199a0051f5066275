"""A sweep of thicknesses: those between look at the checks near the first only, and say the same."""

from __future__ import annotations

import numpy as np
import pytest

from mountlimit import crossings, limits, quick, thinner
from mountlimit.cards import folder
from mountlimit.drivefile import read
from mountlimit.thinner import THINNEST, Sweep


@pytest.mark.parametrize("name", ["hay_elevator", "orchard_barrow"])
def test_the_same_as_every_check_at_every_thickness(name):
    file = read(str(folder("examples") / f"{name}.toml"))
    base = limits.find(file)
    top = 1.98 * float(base.drive.shaft.face_overhang)
    sweep = Sweep(file, quick.safe_ends(base), crossings.grid(300.0), top)
    thicknesses = np.geomspace(THINNEST, 0.999 * top, 14).tolist()
    points = sweep.points(thicknesses, gives=True)
    assert len(points) == len(thicknesses)
    assert len({p.check for p in points}) > 1  # another check comes first on the way
    for point in points:
        whole = sweep.at(point.thickness, gives=True)
        assert (point.check, point.gives_check) == (whole.check, whole.gives_check)
        assert point.safe == pytest.approx(whole.safe, rel=1e-9)
        assert point.gives == pytest.approx(whole.gives, rel=1e-9)


@pytest.mark.parametrize("jump", [0.0008, 0.00484, 0.00493, 0.013, 0.0399])
@pytest.mark.parametrize("below", [0.0, 0.3, 60.0])
def test_a_jump_is_closed_in_on(monkeypatch, jump, below):
    """Where the safe current jumps past the wanted one at a thickness, that thickness is met."""
    monkeypatch.setattr(
        thinner,
        "_carried",
        lambda file, t: (72.0 + t, "key") if t >= jump else (below, "chain_static"),
    )
    found = thinner.settled(None, 61.8, thinner.Guess(0.005, "key", 1.0), 0.04)
    assert found.doubt == ""
    assert found.check == "chain_static"
    assert jump <= found.thickness < jump * (1 + thinner.CLOSE) * (1 + 1e-12)


@pytest.mark.parametrize("sharp", [0.05, 0.3, 1.0])
@pytest.mark.parametrize("best_of_sweep", [0.0019, 0.0022, 0.0026])
def test_a_summit_is_looked_for(monkeypatch, sharp, best_of_sweep):
    """Too thin leans, too thick starts harder: the little stretch that carries is found beside the sweep's best."""
    summit, wanted, tried = 0.0023, 40.0, []

    def carried(file, t):
        tried.append(t)
        if t < summit:
            return 1.01 * wanted * (t / summit), "alignment"
        return 1.01 * wanted * (summit / t) ** sharp, "key"

    monkeypatch.setattr(thinner, "_carried", carried)
    place = [0.0005 * 1.13**k for k in range(-2, 3)]
    points = [point(best_of_sweep / 0.0005 * t, 0.97 * wanted - abs(k)) for k, t in zip(range(-2, 3), place, strict=True)]  # fmt: skip
    start = thinner.guess(None, points, wanted)
    assert start.summit == (points[0].thickness, points[-1].thickness)
    found = thinner.settled(None, wanted, start, 0.04)
    assert found.check == "alignment"
    assert found.doubt == ""
    assert found.thickness == pytest.approx(summit / 1.01, rel=2 * thinner.CLOSE)
    assert len(tried) < 20


def test_a_summit_too_low_is_none(monkeypatch):
    """What does not carry anywhere is still said not to; a best at the thick end has no summit."""
    monkeypatch.setattr(thinner, "_carried", lambda file, t: (39.0 - abs(t - 0.002), "key"))
    points = [point(t, 38.0 - abs(t - 0.002)) for t in (0.001, 0.002, 0.004)]
    start = thinner.guess(None, points, 40.0)
    assert start.summit is not None
    assert thinner.settled(None, 40.0, start, 0.04) is None
    assert thinner.guess(None, points[:2], 40.0).summit is None


def point(thickness, safe):
    return thinner.Point(thickness=thickness, safe=safe, check="key", near=("key",))
