"""Hubs that hold by friction: a clamp, a taper bush, or what the maker states."""

from __future__ import annotations

import numpy as np
import pytest
from hub_cases import TORQUE, check_of, file_of, limit_of, rows_of
from scipy.integrate import trapezoid

from mountlimit.errors import InputError
from mountlimit.resolve import resolve

CLAMP = {"hub__key": None, "hub__drive": "clamp", "hub__screws": "2 x M6", "hub__screw_preload": "8 kN",
         "hub__shaft_friction": 0.15}  # fmt: skip
BUSH = {**CLAMP, "hub__drive": "taper bush"}


def by_pressure(pressure_at):
    """Torque of a clamp by integrating the pressure round the shaft: friction 0.15, 16 kN, 12 mm.

    ``pressure_at`` gives its form over the angle from the line of the screws, -pi/2 to pi/2; each
    half of the hub presses with the whole clamping force.
    """
    angle = np.linspace(-np.pi / 2, np.pi / 2, 200001)
    form = pressure_at(angle)
    pressed = trapezoid(form * np.cos(angle), angle)
    return 2 * 0.15 * 16000.0 * trapezoid(form, angle) / pressed * 0.006


def test_clamp_by_integration():
    """Low, likely, high of the wrap: pressed along two lines, as a cosine, evenly."""
    found = next(r for r in resolve(file_of(**CLAMP)).ranges if r.key == "hub.clamp_wrap")
    (row,), _ = rows_of("taper_bush", **CLAMP)
    assert row.demand == pytest.approx(TORQUE)
    assert row.capacity == pytest.approx(by_pressure(np.cos), rel=1e-6)
    even = by_pressure(lambda a: np.ones_like(a))
    assert row.capacity * found.high / found.likely == pytest.approx(even, rel=1e-6)
    line = by_pressure(lambda a: (np.abs(a) < 1e-3).astype(float))
    assert row.capacity * found.low / found.likely == pytest.approx(line, rel=1e-4)


def test_bush_by_equilibrium():
    """The bush as a wedge under its screws, taper 8 degrees: two equations solved for its forces."""
    (row,), _ = rows_of("taper_bush", **BUSH)
    a, mu, drawn = np.radians(4.0), 0.15, 16000.0
    # unknown: force square to the taper, force on the shaft; along the shaft, and square to it
    matrix = [[np.sin(a) + mu * np.cos(a), 0.0], [np.cos(a) - mu * np.sin(a), -1.0]]
    _, on_shaft = np.linalg.solve(matrix, [drawn, 0.0])
    assert row.capacity == pytest.approx(mu * on_shaft * 0.006, rel=1e-9)


def test_the_stated_torque_wins():
    """A rated torque stands in place of the screws."""
    rated = {**BUSH, "hub__rated_torque": "90 N*m"}
    (row,), _ = rows_of("taper_bush", **rated)
    assert (row.capacity, row.station) == (90.0, "taper bush, as rated")
    assert limit_of("taper_bush", **rated) == pytest.approx(750.0, rel=1e-4)


@pytest.mark.parametrize("good", [CLAMP, BUSH])
@pytest.mark.parametrize(
    "worse",
    [{"hub__screws": "1 x M6"}, {"hub__screw_preload": "6 kN"}, {"hub__shaft_friction": 0.1},
     {"shaft__diameter": "10 mm", "shaft__bearing": None}, {"duty__starting_factor": 2}],
)  # fmt: skip
def test_what_makes_it_worse_lowers_the_limit(good, worse):
    """Fewer or looser screws, less friction, a thinner shaft, a jerk."""
    assert limit_of("taper_bush", **{**good, **worse}) < limit_of("taper_bush", **good)


def test_torque_of_the_screws_sets_their_preload():
    """T / (K d): 9 N*m on M6 with K 0.2 is 7.5 kN."""
    drive = resolve(file_of(**{**CLAMP, "hub__screw_preload": None, "hub__screw_tightening_torque": "9 N*m"}))  # fmt: skip
    assert drive.hub.grip.preload == pytest.approx(7500, rel=1e-9)


def test_screws_alone_are_taken_as_a_clamp():
    """Without a word the one that holds less."""
    drive = resolve(file_of(**{**CLAMP, "hub__drive": None}))
    assert (drive.hub.drive, drive.hub.grip.words) == ("clamp", "clamp")


def test_a_bush_nothing_is_told_of_is_not_checked():
    """The word alone gives no check, as before; given beside a key, the screws are said to idle."""
    bare = resolve(file_of(hub__key=None, hub__drive="taper bush"))
    assert check_of("taper_bush", bare) is None
    idle = resolve(file_of(hub__screws="2 x M6"))
    assert any("hub.screws does nothing" in w for w in idle.warnings)


@pytest.mark.parametrize(
    ("bad", "key"),
    [({"hub__screws": None}, "hub.screws"), ({"hub__screw_preload": "8 mm"}, "hub.screw_preload"),
     ({"hub__rated_torque": "0 N*m"}, "hub.rated_torque")],
)  # fmt: skip
def test_bad_inputs_are_refused(bad, key):
    """A clamp without screws, a preload that is a length, no torque at all."""
    with pytest.raises(InputError) as error:
        resolve(file_of(**{**CLAMP, **bad}))
    assert [m.key for m in error.value.mistakes] == [key]
