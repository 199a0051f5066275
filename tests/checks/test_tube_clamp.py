"""Grip of a clamp on its tube, and what the tube's wall bears: against sums over the surface,
rigid bodies on springs and a ring with plastic hinges, all worked out here by other means."""

from __future__ import annotations

import math

import numpy as np
import pytest

from conftest import block_file, saddle_file
from mountlimit import evaluate, limits
from mountlimit.checks import tube_grip
from mountlimit.formulas import clamps
from mountlimit.loads import case_list
from mountlimit.plate_route import with_plates
from mountlimit.resolve import resolve


def rows(check, file, group="pull", current=40.0):
    """Give a check's rows by station in the first load case of a group."""
    drive = resolve(with_plates(file))
    index = next(i for i, c in enumerate(case_list(drive)) if c[1] == group)
    return {r.station: r for r in check.rows(evaluate.case_at(drive, current, index))}


def likely(file, check, currents):
    """Give utilisation without factor at likely values over currents."""
    curve = evaluate.curves(resolve(with_plates(file)), np.asarray(currents, float), [check])[check]
    return curve.gives


def safe(file):
    """Give the safe current of both checks."""
    found = {x.check.name: x.safe for x in limits.find(file).limits}
    return found["tube_grip"], found["tube_crush"]


def surface(pressure, radius, ways=20000):
    """Sum pressure over one half of a tube: (resultant, sum of its size), per length."""
    angles = (np.arange(ways) + 0.5) / ways * np.pi - np.pi / 2
    p = pressure(angles) * radius * np.pi / ways
    return float(np.sum(p * np.cos(angles))), float(np.sum(p))


@pytest.mark.parametrize("degrees", [1.0, 20.0, 60.0, 90.0])
def test_spread_of_even_pressure(degrees):
    """Sum of the pressure over its resultant, summed over a half tube cell by cell."""
    force, total = surface(lambda a: 1.0 * (np.abs(a) <= math.radians(degrees)), 0.02)
    assert clamps.contact_spread(math.radians(degrees)) == pytest.approx(total / force, rel=1e-3)


def test_cosine_pressure_is_that_of_67_degrees():
    """Two halves that fit press as a cosine: 4/pi, which an even arc of 67 deg gives as well."""
    force, total = surface(np.cos, 0.02)
    assert total / force == pytest.approx(4 / math.pi, rel=1e-6)
    assert clamps.contact_spread(math.radians(67.3)) == pytest.approx(total / force, rel=2e-3)


def test_turning_and_sliding_share_the_friction():
    """Every cell of the surface slips the same way: torque and thrust summed give the limit back."""
    mu, radius, pressure, turned = 0.12, 0.016, 33e3, math.radians(35.0)
    cells = np.full(1000, mu * pressure / 1000)
    torque = float(np.sum(cells * math.cos(turned)) * radius)
    thrust = float(np.sum(cells * math.sin(turned)))
    asked = clamps.surface_slip(torque, 2 * radius, thrust)
    assert asked == pytest.approx(clamps.friction_hold(mu, pressure), rel=1e-9)


def test_lifting_moment_of_two_strips_on_springs():
    """A stiff clamp on two rows of pressed springs, tilted until the first one lets go."""
    force, length, stiff = 15e3, 0.06, 2e7
    places = (np.arange(4000) + 0.5) / 4000 * length - length / 2
    spring = stiff * length / 4000
    squeezed = force / (stiff * length)
    tilt = squeezed / (length / 2)
    upper = spring * (squeezed - tilt * places)
    lower = spring * (squeezed + tilt * places)
    assert min(upper.min(), lower.min()) >= 0
    moment = float(np.sum(lower * places) - np.sum(upper * places))
    assert clamps.lifting_moment(force, length) == pytest.approx(moment, rel=1e-3)


def ring_moment(angle, ways=6000):
    """Give the plastic moment that a ring of unit radius needs under unit forces spread over arcs.

    Statics of a quarter ring, cell by cell; the moment at the load is free, so that the least plastic
    moment is half the range of the rest (lower-bound theorem of limit analysis).
    """
    cells = (np.arange(ways) + 0.5) / ways * angle
    pressure = np.full(ways, 1.0)
    pressure *= 0.5 / np.sum(pressure * np.cos(cells))
    fx, fy = -pressure * np.sin(cells), -pressure * np.cos(cells)
    thrust = -np.sum(fx)  # closes the quarter sideways at the top
    found = []
    for at in np.linspace(0.0, np.pi / 2, 181):
        on = cells <= at
        x, y = np.sin(cells[on]) - math.sin(at), np.cos(cells[on]) - math.cos(at)
        found.append(np.sum(x * fy[on] - y * fx[on]) - thrust * (1 - math.cos(at)))
    return (max(found) - min(found)) / 2


@pytest.mark.parametrize("degrees", [2.0, 30.0, 45.0, 60.0, 75.0])
def test_arc_relieves_the_wall_as_a_ring_with_hinges(degrees):
    """Resistance over that of a line load: the same as of a ring that collapses by four hinges."""
    wall = {"yield_strength": 235e6, "wall": 0.002, "tube_diameter": 0.032, "length": 0.06}
    narrow = clamps.round_wall_resistance(contact_angle=1e-9, **wall)
    wide = clamps.round_wall_resistance(contact_angle=math.radians(degrees), **wall)
    assert wide / narrow == pytest.approx(0.25 / ring_moment(math.radians(degrees)), rel=2e-3)


@pytest.mark.parametrize("grip", [1.0, 2.0, 4.0])
def test_line_load_lies_between_short_and_long_ring(grip):
    """A cut-off ring of the grip's length bears less, one three diameters longer bears more.

    Ring between two lines: W = 4 M_p / R, M_p = f_y t^2 / 4 for each length (limit analysis).
    """
    strength, wall, size = 235e6, 0.002, 0.032
    found = clamps.round_wall_resistance(strength, wall, size, 1e-9, grip * size)
    short, longer = (
        4 * strength * wall**2 / 4 * length / (size / 2)
        for length in (grip * size, (grip + 3) * size)
    )
    assert short < found < longer


def test_gusset_plates_on_a_tube():
    """From memory: plate along the tube, EN 1993-1-8 table 7.3: eta nought gives 5 f_y t^2, 4 twice that."""
    found = [
        clamps.round_wall_resistance(355e6, 0.005, 0.1143, 1e-9, e * 0.1143)
        for e in (0.0, 4.0, 8.0)
    ]
    assert found[0] == pytest.approx(44.375e3, rel=1e-6)
    assert found[1] == found[2] == pytest.approx(88.75e3, rel=1e-6)


@pytest.mark.parametrize(
    ("slenderness", "share"), [(0.2, 1.0), (0.5, 0.843), (1.0, 0.540), (1.5, 0.315), (2.0, 0.196)]
)
def test_buckling_curve_c(slenderness, share):
    """EN 1993-1-1 clause 6.3.1.2, curve c, as tabled (from memory)."""
    assert clamps.buckling_reduction(slenderness) == pytest.approx(share, abs=0.0006)


def test_round_grip_of_a_whole_drive():
    """Tube along the pull: force along it and moment about it by hand, from the loads alone."""
    file = saddle_file(chain__pull="20 deg", motor__mass="0.05 kg", fixings__contact_angle="67.3 deg",
                       fixings__clamp_friction=0.12, mount__stand_off="5 mm", chain__slack="20 %")  # fmt: skip
    drive = resolve(with_plates(file))
    index = next(i for i, c in enumerate(case_list(drive)) if c[1] == "pull")
    case = evaluate.case_at(drive, 40.0, index)
    load = float(case.loads.shaft_load)
    along, out = load * math.cos(math.radians(20)), load * math.sin(math.radians(20))
    turn = out * (0.028 - 0.004)  # from the middle of the ear to the sprocket
    lost = 0.12 * 4 / math.pi * out
    asked = math.hypot(turn / 0.02, along) + lost
    hold = 0.12 * 2 * 4 / math.pi * 4 * 6000
    row = rows(tube_grip, file)["clamp turns and slides on the tube"]
    assert float(row.demand) == pytest.approx(asked, rel=5e-3)  # the motor's 50 g are left out
    assert float(row.capacity) == pytest.approx(hold, rel=2e-3)


def test_cross_tube_is_turned_by_the_pull_and_the_torque():
    """Tube along the shaft: the pull's lever to its axis, and the reaction of the motor's torque."""
    file = saddle_file(mount__tube="with the shaft", motor__mass="0.05 kg", mount__stand_off="5 mm",
                       chain__slack="20 %", fixings__contact_angle="1 deg")  # fmt: skip
    drive = resolve(with_plates(file))
    demands = []
    for index, entry in enumerate(case_list(drive)):
        if entry[1] == "pull":
            case = evaluate.case_at(drive, 40.0, index)
            row = tube_grip.rows(case)[0]
            demands.append(float(row.demand) * 0.02)
    load, torque = float(case.loads.shaft_load), float(case.loads.torque)
    lever = 0.085 + 0.005 + 0.02
    assert max(demands) == pytest.approx(load * lever + torque, rel=0.02)
    assert min(demands) == pytest.approx(load * lever - torque, rel=0.05)


def test_square_tube_is_held_by_its_shape():
    """A square tube does not turn: a moment that spins a round one only makes the block rock."""
    changes = {
        "chain__pull": "away",
        "shaft__face_overhang": "60 mm",
        "fixings__clamp_preload": "2 kN",
    }
    round_tube = likely(block_file(**changes), "tube_grip", [200.0])[0]
    square = likely(block_file(frame__member="square tube", **changes), "tube_grip", [200.0])[0]
    assert square < round_tube
    found = rows(tube_grip, block_file(frame__member="square tube", **changes))
    assert set(found) == {"clamp rocks on the edges of the tube", "clamp slides along the tube",
                          "clamp lifts at one end of its grip"}  # fmt: skip
    # two forces of 8 kN at the middles of side walls 36 mm apart
    assert float(found["clamp rocks on the edges of the tube"].capacity) == pytest.approx(288.0)


def test_each_input_moves_the_limits_its_own_way():
    """Tighter holds more and presses more; paint, rubber, a thin tube and a flat seat hold or bear less."""
    grip, crush = (lambda **c: likely(saddle_file(**c), "tube_grip", [100.0])[0],
                   lambda **c: likely(saddle_file(**c), "tube_crush", [100.0])[0])  # fmt: skip
    tight = {"fixings__clamp_preload": "9 kN"}
    assert grip(**tight) < grip()
    assert crush(**tight) > crush()
    assert grip(fixings__clamp_surface="dry steel") < grip()
    assert grip(fixings__seat="flat") > grip()
    assert crush(fixings__seat="flat") > crush()
    assert crush(frame__wall="3 mm") > crush()
    assert crush(mount__grip_length="90 mm") < crush()
    assert (
        crush(frame__elastic_modulus="70 GPa") > crush()
    )  # taken as aluminium, which yields earlier
    turned = {"mount__tube": "with the shaft"}
    assert grip(frame__size="60 mm", **turned) < grip(**turned)
    square = {"frame__member": "square tube"}
    assert crush(frame__wall="2 mm", **square) > crush(**square)


def test_rubber_lining_is_less_sure():
    """The safe side of a rubber lining holds less than paint does."""
    paint, rubber = (
        safe(saddle_file(fixings__clamp_surface=s))[0] for s in ("painted", "rubber lining")
    )
    assert rubber < paint


def test_tighten_more_has_another_end():
    """From loose to tight the grip's safe current rises, until the wall of the tube is pressed in."""
    found = [
        safe(saddle_file(fixings__clamp_preload=f"{p} kN", frame__wall="3 mm")) for p in (2, 4, 12)
    ]
    assert found[0][0] < found[1][0] < found[2][0]
    assert math.isinf(found[0][1])
    assert found[2][1] == 0


def test_preload_by_torque_is_uncertain():
    """A torque in place of a tension gives a range by the scatter of K, as for the frame bolts."""
    drive = resolve(
        saddle_file(fixings__clamp_preload=None, fixings__clamp_tightening_torque="8 N*m")
    )
    item = next(r for r in drive.ranges if r.key == "fixings.clamp_preload")
    assert item.likely == pytest.approx(8 / (0.2 * 0.008), rel=1e-9)
    assert item.low < 0.7 * item.likely < item.likely < item.high


def test_a_tube_of_unknown_strength_is_not_judged():
    """An own soft modulus has no usual strength: said as not checked, never taken from steel."""
    soft = resolve(saddle_file(frame__elastic_modulus="20 GPa"))
    assert soft.frame.yield_strength is None
    assert "tube_crush" not in {c.name for c in evaluate.applicable(soft)}
    told = resolve(saddle_file(frame__elastic_modulus="20 GPa", frame__yield_strength="80 MPa"))
    assert "tube_crush" in {c.name for c in evaluate.applicable(told)}
