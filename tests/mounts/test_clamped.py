"""Ears held on a tube by a saddle or a clamp block: balance, directions, the tube, bad input."""

from __future__ import annotations

import math

import numpy as np
import pytest
from clamp_kit import (
    FORMS,
    apart_from_full,
    file_of,
    lean,
    message,
    parts,
    plated,
    safe,
    worst_balance,
)

from mountlimit import frame_member, structure
from mountlimit.errors import InputError
from mountlimit.resolve import resolve

BOTH = pytest.mark.parametrize("form", FORMS)
TUBES = pytest.mark.parametrize("tube", ["across", "with the shaft"])


@BOTH
def test_loads_and_reactions_close(form):
    """Weld, or bolts and contact, carry the load to 1e-9 of it at every end of the inputs."""
    assert worst_balance(file_of(form, duty__reverse="50 %")) < 1e-9


@BOTH
@TUBES
def test_mirrored_pulls_lean_alike(form, tube):
    """A chain at 150 deg leans mount and tube as one at 30 deg, within a per cent."""
    drive = plated(file_of(form, mount__tube=tube))
    for one, other in zip(parts(drive, 30.0), parts(drive, 150.0), strict=True):
        assert lean(one, 30.0) == pytest.approx(lean(other, 150.0), rel=0.01)


@BOTH
@pytest.mark.parametrize("angle", [0.0, 90.0])
def test_thicker_is_stiffer(form, angle):
    """Mount and joint lean less with every step of thickness."""
    found = [
        lean(parts(plated(file_of(form, mount__thickness=f"{t} mm")), angle)[0], angle)
        for t in (6, 8, 10)
    ]
    assert found[0] > found[1] > found[2]


@BOTH
@TUBES
def test_a_softer_tube_leans_more(form, tube):
    """A longer span and a thinner wall raise what the frame member gives."""
    usual, longer, thinner = (
        parts(plated(file_of(form, mount__tube=tube, **c)), 90.0)[1]
        for c in ({}, {"frame__span": "900 mm"}, {"frame__wall": "2 mm"})
    )
    assert lean(longer, 90.0) > lean(usual, 90.0)
    assert lean(thinner, 90.0) > lean(usual, 90.0)


@BOTH
def test_sprocket_inboard_lowers_no_limit(form):
    """Every safe current is at least what it was with the sprocket farther out."""
    out, near = (safe(form, shaft__face_overhang=f"{e} mm") for e in (36, 28))
    assert all(near[name] >= out[name] * (1 - 1e-6) for name in out)


@BOTH
@TUBES
def test_as_the_full_plate_model(form, tube):
    """The turn of the reduced model is that of the full solve."""
    assert apart_from_full(plated(file_of(form, mount__tube=tube))) < 2e-3


def test_a_narrow_long_ear_bends_as_a_cantilever():
    """Saddle, 90 x 12 mm: 200 mm more of free length turn the end by M L / (E I) under a moment.

    The moment of a pull away from the tube is the same all along the ear, and the weld's give drops
    out of the difference.
    """
    wide, thick, out = 0.09, 0.012, 0.05
    leans = []
    for free in ("300 mm", "500 mm"):
        drive = plated(
            file_of("saddle", mount__width="90 mm", mount__thickness="12 mm", mount__free_length=free,
                    shaft__face_overhang="50 mm", mount__elastic_modulus="70 GPa", mount__softness=1)
        )  # fmt: skip
        leans.append(lean(parts(drive, 90.0)[0], 90.0))
    turn = (out - thick / 2) * 0.2 / (70e9 * wide * thick**3 / 12)
    assert leans[1] - leans[0] == pytest.approx(turn, rel=0.02)


def test_a_cross_tube_twists_about_its_own_axis():
    """Tube along the shaft: the moment of the pull about it twists the middle of the span, T L/(4 G J)."""
    drive = resolve(
        file_of(
            "saddle", mount__tube="with the shaft", mount__stand_off="0 mm", frame__span="0.4 m"
        )
    )
    part = structure.frame_part(drive, structure.unit_load(0.0))
    arm = 0.085 + 0.02  # weld on the tube, 85 mm to the shaft
    polar = math.pi / 32 * (0.04**4 - 0.032**4)
    twist = arm * 0.4 / (4 * 205e9 / 2.6 * polar)
    assert float(part.turn[2]) == pytest.approx(-twist, rel=1e-6)
    # a force along the tube does not stretch it; the one across sags it towards the pull
    assert float(part.move[0]) > 0


def test_a_tube_square_to_the_ear_is_the_same_tube_turned(monkeypatch):
    """Pull and moments turned into the tube's axes give the same movement, turned back."""
    drive = resolve(file_of("saddle", mount__tube="with the shaft"))
    rng = np.random.default_rng(5)
    f, m = rng.normal(size=3), rng.normal(size=3)
    turned = np.array([[0, 0, 1], [0, 1, 0], [-1, 0, 0]])  # the drive's axes to the tube's own
    move, turn = frame_member.give(
        drive.frame, drive.mount.plane, tuple(turned @ f), tuple(turned @ m)
    )
    monkeypatch.setattr(structure, "wrench", lambda *_: (tuple(f), tuple(m)))
    monkeypatch.setattr(structure, "_carry", lambda *given: given[-2:])
    found = structure.frame_part(drive, structure.unit_load(0.0))
    assert np.allclose(np.array(found[0], float), turned.T @ np.array(move, float))
    assert np.allclose(np.array(found[1], float), turned.T @ np.array(turn, float))


def test_where_the_tube_s_axis_lies():
    """Saddle: stand-off and radius below the weld; block: behind the ear or square to it, as given."""
    saddle = resolve(file_of("saddle", mount__stand_off="9 mm", mount__thickness="8 mm"))
    assert np.allclose(
        [float(v) for v in saddle.mount.clamp.axis], (0, -0.085 - 0.009 - 0.02, 0.004)
    )
    changes = {"mount__face_to_tube": "35 mm", "mount__bolts_to_tube": "5 mm"}
    middle = -0.085 - 0.02 - 0.005
    for tube in ("across", "with the shaft"):
        block = resolve(file_of("clamp block", mount__tube=tube, **changes))
        assert np.allclose([float(v) for v in block.mount.clamp.axis], (0, middle, -0.035))


@BOTH
@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"frame__member": "rigid"}, ["frame.member", "round tube, square tube"]),
        ({"frame__member": None}, ["frame.member", "missing"]),
        ({"frame__size": None}, ["frame.size", "missing"]),
        ({"fixings__clamp_bolts": "two"}, ["fixings.clamp_bolts"]),
        ({"frame__member": "square tube", "fixings__seat": "flat"}, ["fixings.seat", "round tube"]),
        ({"mount__free_length": "20 mm"}, ["mount.free_length", "motor bolts"]),
        ({"fixings__contact_angle": "120 deg"}, ["fixings.contact_angle", "90 deg"]),
        ({"mount__tube": "along"}, ["mount.tube", "with the shaft"]),
        ({"mount__route": "sections"}, ["mount.route", "not a known key"]),
    ],
)
def test_bad_input_is_one_line(form, changes, words, tmp_path):
    """Each mistake is one line with the key and what is expected."""
    line = message(tmp_path, form, **changes)
    for word in words:
        assert word in line


@pytest.mark.parametrize(
    ("form", "changes", "words"),
    [
        ("saddle", {"mount__material": "hdpe", "mount__thickness": "15 mm"}, ["mount.material", "welded"]),
        ("saddle", {"mount__weld_length": "200 mm"}, ["mount.weld_length", "longer"]),
        ("saddle", {"fixings__bolts": "4 x M8"}, ["fixings.bolts", "not a known key"]),
        ("clamp block", {"mount__face_to_tube": "10 mm"}, ["mount.face_to_tube", "half the tube"]),
        ("clamp block", {"fixings__span_across": "118 mm"}, ["fixings.span_across", "leaves the mount"]),
    ],
)  # fmt: skip
def test_bad_input_of_one_form(form, changes, words, tmp_path):
    """What only one of the two forms can get wrong."""
    line = message(tmp_path, form, **changes)
    for word in words:
        assert word in line


def test_all_mistakes_at_once():
    """Three mistakes that show together are three lines."""
    with pytest.raises(InputError) as caught:
        resolve(
            file_of("saddle", mount__weld_length="200 mm", mount__free_length="20 mm",
                    frame__wall="25 mm")
        )  # fmt: skip
    keys = [m.key for m in caught.value.mistakes]
    assert {"mount.weld_length", "mount.free_length", "frame.wall"} <= set(keys)
