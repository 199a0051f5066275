"""Frame member: by hand, by sectionproperties' own stresses, by Vlasov's equation along the span."""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest

from conftest import IDEAL, drive_file, saddle_file
from mountlimit import assess, evaluate, frame_member, limits, member_stress, structure
from mountlimit.errors import InputError
from mountlimit.model import Frame
from mountlimit.mounting import BoltPlane
from mountlimit.resolve import resolve

PLANE = BoltPlane(
    thickness=0.008, towards_motor=1.0, centre=(0.0, 0.0, 0.0), first="x", second="y", normal="z",
    bolts=((0.0, 0.0),), half_first=0.05, edge_second=0.02,
)  # fmt: skip
FORMS = {
    "square tube": {"size": 0.04, "wall": 0.002},
    "rectangular tube": {"size": 0.04, "depth": 0.06, "wall": 0.003},
    "round tube": {"size": 0.042, "wall": 0.003},
    "flat bar": {"size": 0.06, "wall": 0.01},
    "angle": {"size": 0.04, "depth": 0.06, "wall": 0.005},
    "channel": {"size": 0.06, "depth": 0.03, "wall": 0.004, "open_side": "side"},
}
OPEN = ("flat bar", "angle", "channel")


def rail(name, **changes):
    """Give a 600 mm steel member held at both ends with the mount in its middle."""
    sizes = {"span": 0.6, "place": 0.5, "elastic_modulus": 210e9, "yield_strength": 235e6}
    return Frame(member=name, **{**sizes, **FORMS[name], **changes})


def at_stations(frame, force=(0.0, 0.0, 0.0), moment=(0.0, 0.0, 0.0)):
    """Give the stress in MPa by station."""
    found = member_stress.stresses(frame, PLANE, force, moment)
    return {s.station: float(s.stress) / 1e6 for s in found}


def outline(frame):
    """Give the section in mm, its face along x at y = 0, and its inner corners."""
    from shapely import Point, Polygon

    b, t = frame.size * 1e3, frame.wall * 1e3
    d = (frame.depth or frame.size) * 1e3
    if frame.member == "round tube":
        return Point(0, -b / 2).buffer(b / 2, 32) - Point(0, -b / 2).buffer(b / 2 - t, 32), []
    if frame.member == "flat bar":
        return Polygon([(0, 0), (b, 0), (b, -t), (0, -t)]), []
    if frame.member == "angle":
        inner = [(b - t, -t)]
        return Polygon([(0, 0), (b, 0), (b, -d), (b - t, -d), inner[0], (0, -t)]), inner
    if frame.member == "channel":  # the mount on a flange
        inner = [(d - t, t - b), (d - t, -t)]
        return Polygon([(0, 0), (d, 0), (d, -b), (0, -b), (0, t - b), *inner, (0, -t)]), inner
    inner = [(t, -t), (b - t, -t), (b - t, t - d), (t, t - d)]
    return Polygon([(0, 0), (b, 0), (b, -d), (0, -d)]) - Polygon(inner), inner


@pytest.mark.parametrize("name", FORMS)
def test_every_form_against_the_stresses_of_sectionproperties(name):
    """The worst von Mises stress of all signs of pull, bending both ways and plain twist.

    Twist is looked at beyond three walls from the inner corners: their sharp notch is left out on purpose.
    """
    from sectionproperties.analysis import Section
    from sectionproperties.pre import Geometry

    frame = rail(name)
    shape, inner = outline(frame)
    element = (frame.wall * 1e3) ** 2 / (12 if name in OPEN else 2)
    solved = Section(Geometry(shape).create_mesh(mesh_sizes=[element]))
    solved.calculate_geometric_properties()
    solved.calculate_warping_properties()
    nodes = np.asarray(solved.mesh["vertices"], float)
    far = np.full(len(nodes), True)
    for corner in inner:
        far &= np.hypot(*(nodes - corner).T) > 3 * frame.wall * 1e3
    section = frame_member.shapes(frame, PLANE)[0]
    for twisted, along, through in (
        (100, 0, 0),
        (0, 100, 0),
        (0, 0, 100),
        (40, 100, 60),
        (80, 20, 50),
    ):
        worst = 0.0
        for n, x, y in itertools.product((-1, 1), repeat=3):
            fields = solved.calculate_stress(
                n=n * 1e3, mxx=x * through * 1e3, myy=y * along * 1e3, mzz=twisted * 1e3
            ).get_stress()[0]
            stress = np.asarray(fields["sig_vm"])
            worst = max(worst, float(np.max(stress[far] if twisted else stress)))
        # Upright: the face runs along y, so myy bends along y (about z), mxx along z (about y).
        inside = member_stress.Inside(
            shape=section, pull=1e3, applied=0.0, torque=0.0, beside=(0, 0), at_end=None
        )
        ours = member_stress._worst(
            frame, inside, (float(through), float(along)),
            member_stress.twist(frame, section, float(twisted)),
        ) / 1e6  # fmt: skip
        assert 0.99 * worst < ours < 1.2 * worst, (twisted, along, through)
        if twisted == 0:
            assert ours == pytest.approx(worst, rel=0.01)


def along_the_span(k, span, place, held):
    """Solve phi'' - phi''''/k^2 = 0 on both parts under a unit torque; G J is 1.

    Gives plain torque and bimoment at many places, ends held against twist, and against warping too
    where ``held``.
    """

    def row(x, order):
        c, s = np.cosh(k * x), np.sinh(k * x)
        return [[1, x, c, s], [0, 1, k * s, k * c], [0, 0, k * k * c, k * k * s],
                [0, 0, k**3 * s, k**3 * c]][order]  # fmt: skip

    nothing, a, e = [0.0] * 4, place * span, 1 if held else 2
    lines = [
        row(0, 0) + nothing,
        row(0, e) + nothing,
        nothing + row(span, 0),
        nothing + row(span, e),
    ]
    lines += [row(a, d) + [-v for v in row(a, d)] for d in (0, 1, 2)]
    whole = [p - q / k**2 for p, q in zip(row(a, 1), row(a, 3), strict=True)]
    lines.append(whole + [-v for v in whole])
    solved = np.linalg.solve(np.array(lines, float), [0.0] * 7 + [1.0])
    places = [(x, 0) for x in np.linspace(0, a, 300)] + [(x, 4) for x in np.linspace(a, span, 300)]
    plain = [float(np.dot(row(x, 1), solved[i : i + 4])) for x, i in places]
    bimoment = [float(-np.dot(row(x, 2), solved[i : i + 4])) / k**2 for x, i in places]
    return np.abs(plain), np.abs(bimoment)


@pytest.mark.parametrize("place", [0.5, 0.3, 0.2])
@pytest.mark.parametrize("size", [0.06, 0.12])
@pytest.mark.parametrize("held", [False, True])
def test_twisted_channel_against_the_equation_of_held_warping(place, size, held):
    """No place along the span is worse than the stations, and one of them is reached."""
    frame = rail("channel", place=place, size=size, depth=size / 2, span=0.5)
    section = frame_member.shapes(frame, PLANE)[0]
    k = float(frame_member.decay(frame, section))
    plain, bimoment = along_the_span(k, frame.span, place, held)
    warps = max(abs(float(c.warping)) for c in section.corners)
    sigma = 100 * bimoment * warps / section.warping_constant
    tau = 100 * plain * frame.wall / section.torsion_constant
    exact = np.sqrt(sigma**2 + 3 * tau**2) / 1e6
    found = at_stations(frame, moment=(100.0, 0.0, 0.0))
    beside, held_end = member_stress.BESIDE, member_stress.HELD_WARPING
    assert exact.max() < 1.0001 * max(found.values())
    if held:
        assert max(exact[0], exact[-1]) == pytest.approx(found[held_end], rel=1e-4)
    else:
        assert max(exact[299], exact[300]) == pytest.approx(found[beside], rel=1e-4)
        del found[held_end]
        assert max(found.values()) == pytest.approx(exact.max(), rel=1e-4)


def test_all_torque_as_plain_twist_would_not_be_safe():
    """Held warping beside the mount is more than the whole torque as plain twist, in all open members."""
    for name in OPEN:
        frame = rail(name)
        beside = at_stations(frame, moment=(100.0, 0.0, 0.0))[member_stress.BESIDE]
        plain = member_stress.twist(frame, frame_member.shapes(frame, PLANE)[0], 50.0)
        assert beside > 1.05 * math.sqrt(3) * float(plain) / 1e6, name


def test_warping_of_the_corners_of_a_channel():
    """Thin channel: h / 2 (b - e) at the tips, h e / 2 at the web; the wall's two faces about it."""
    frame = rail("channel", size=0.2, depth=0.08, wall=0.002, open_side="away")
    (section,) = frame_member.shapes(frame, PLANE)
    h, b = 0.198, 0.079
    e = 3 * b * b / (6 * b + h)
    warps = sorted(abs(float(c.warping)) for c in section.corners)
    assert np.mean(warps[4:]) == pytest.approx(h / 2 * (b - e), rel=0.01)
    assert np.mean(warps[:4]) == pytest.approx(h / 2 * e, rel=0.02)


def test_held_end_governs_off_the_middle_under_a_force():
    """F a b^2 / L^2 at the nearer end, 2 F a^2 b^2 / L^3 beside the mount: 1.67 times at 0.3."""
    found = at_stations(rail("square tube", place=0.3), force=(0.0, 0.0, 1000.0))
    assert found["at a held end"] == pytest.approx(found["beside the mount"] / 0.6)
    modulus = (0.04**4 - 0.036**4) / 12 / 0.02
    by_hand = 1000.0 * 0.18 * 0.42**2 / 0.6**2 / modulus / 1e6
    assert found["at a held end"] == pytest.approx(by_hand)


SIZES = {
    "frame__size": "40 mm",
    "frame__wall": "2 mm",
    "frame__span": "400 mm",
    "frame__place": 0.5,
}


def case_of(load, **changes):
    drive = resolve(drive_file(**{**IDEAL, "frame__member": "square tube", **SIZES, **changes}))
    return evaluate.Case(drive=drive, loads=load, response=structure.solve(drive, load))


def rows_by_station(case):
    (check,) = [c for c in evaluate.applicable(case.drive) if c.name == "frame_member"]
    return {r.station: r for r in check.rows(case)}


def test_hand_worked_pull_away_from_the_frame():
    """1 N away, 28 mm in front of the plate's back and 20 mm more to the tube's axis.

    Twist 0.048 N*m, half to each end; F L / 8 of bending; EN 10219-2: W_t = I_t / (t + K / t) with
    square corners.
    """
    rows = rows_by_station(case_of(structure.unit_load(math.pi / 2)))
    second = (0.04**4 - 0.036**4) / 12
    mid = 0.038
    k_factor = 2 * mid**2 * 0.002 / (4 * mid)
    modulus = (2 * k_factor * mid**2) / (0.002 + k_factor / 0.002)
    sigma, tau = 0.4 / 8 * 0.02 / second, 0.048 / 2 / modulus
    asked = float(rows["frame member beside the mount"].demand)
    assert asked == pytest.approx(math.sqrt(sigma**2 + 3 * tau**2), rel=1e-9)
    assert float(rows["frame member at a held end"].demand) == pytest.approx(asked)
    hinged = rows_by_station(case_of(structure.unit_load(math.pi / 2), frame__ends="hinged"))
    assert float(hinged["frame member beside the mount"].demand) == pytest.approx(
        math.sqrt((2 * sigma) ** 2 + 3 * tau**2), rel=1e-9
    )


@pytest.mark.parametrize("angle", [0.0, 0.7, math.pi / 2])
@pytest.mark.parametrize("tube", ["across", "with the shaft"])
def test_load_on_the_member_balances_the_unit_load(angle, tube):
    """Force and moment at the member, in its own axes, against r x F of one newton at the sprocket."""
    drive = resolve(saddle_file(mount__tube=tube, motor__mass="0.05 kg"))
    force, moment = structure.on_the_frame(drive, structure.unit_load(angle, 0.5))
    pull = np.array([math.cos(angle), math.sin(angle), 0.0])
    arm = np.array([0.0, 0.0, float(drive.shaft.face_overhang)]) - np.array(
        [float(v) for v in drive.mount.plane.centre]
    )
    turned = np.cross(arm, pull) + np.array([0.0, 0.0, 0.5])
    # Of a tube along z: own x, y, z are the drive's z, y and the reverse of x.
    own = np.eye(3) if tube == "across" else np.array([[0, 0, 1], [0, 1, 0], [-1, 0, 0]])
    assert [float(f) for f in force] == pytest.approx(own @ pull, abs=1e-12)
    assert [float(m) for m in moment] == pytest.approx(own @ turned, abs=1e-12)


@pytest.mark.parametrize("name", FORMS)
def test_arrays_give_what_numbers_give(name):
    frame = rail(name, place=0.35)
    loads = np.array([[300.0, 40, 10, 5, 9, -20], [0, -500.0, 0, 20, 0, 3]]).T
    many = member_stress.stresses(frame, PLANE, tuple(loads[:3]), tuple(loads[3:]))
    for i, load in enumerate(loads.T):
        one = at_stations(frame, tuple(load[:3]), tuple(load[3:]))
        each = {s.station: float(np.broadcast_to(s.stress, (2,))[i]) / 1e6 for s in many}
        assert each == pytest.approx(one)


def safe(**changes):
    base = {"frame__yield_strength": "235 MPa", "chain__pull": "away", "mount__route": "sections"}
    file = drive_file(**{**SIZES, "frame__member": "square tube", **base, **changes})
    return limits.find(file, ["frame_member"]).limits[0].safe


@pytest.mark.parametrize(
    "worse",
    [
        {"frame__span": "700 mm"},
        {"frame__wall": "1.5 mm"},
        {"frame__yield_strength": "160 MPa"},
        {"shaft__face_overhang": "45 mm"},
        {"frame__ends": "hinged"},
        {"frame__member": "flat bar", "frame__wall": "6 mm"},
        {"frame__yield_strength": None, "frame__elastic_modulus": "70 GPa"},
    ],
)  # fmt: skip
def test_a_weaker_member_gives_sooner(worse):
    assert 0 < safe(**worse) < safe()


@pytest.mark.parametrize("name", FORMS)
def test_every_form_has_its_line(name):
    """Every member gives a finite stress in a whole drive, worked out at the limit."""
    wall = "10 mm" if name == "flat bar" else "3 mm"
    sizes = {"frame__member": name, "frame__size": "40 mm", "frame__wall": wall}
    sizes |= {"duty__bump": "2 g"}  # 5 g use up a 40 mm angle alone
    sizes |= {"frame__depth": "30 mm"} if "depth" in FORMS[name] else {}
    assert 0 < safe(**sizes) < math.inf


def test_a_rigid_frame_or_a_soft_member_of_unknown_strength_is_not_asked():
    for changes, words in (
        ({"frame__member": "rigid"}, "you call the frame rigid"),
        ({"frame__elastic_modulus": "10 GPa"}, "yield strength is not given"),
    ):
        drive = resolve(drive_file(**changes))
        assert "frame_member" not in [c.name for c in evaluate.applicable(drive)]
        assert any(words in line for line in assess.not_checked(drive))
    told = resolve(drive_file(frame__elastic_modulus="10 GPa", frame__yield_strength="20 MPa"))
    assert "frame_member" in [c.name for c in evaluate.applicable(told)]
    assert any("holes in the frame member" in line for line in assess.not_checked(told))


@pytest.mark.parametrize("strength", ["2 MPa", "235 mm", "-3 MPa"])
def test_bad_yield_strength_is_refused(strength):
    with pytest.raises(InputError, match=r"frame\.yield_strength"):
        resolve(drive_file(frame__yield_strength=strength))
