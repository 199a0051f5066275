"""Without contact, or with the same points bearing, the answer to two loads is the sum of the answers."""

from __future__ import annotations

from functools import cache

import numpy as np
from hypothesis import assume, given
from hypothesis import strategies as st
from invariant_kit import depth, drawn, file_of, looked, numbers
from plate_kit import model_of, sprocket_of

from mountlimit import frame_member, joint, structure
from mountlimit.plates import solve
from mountlimit.resolve import resolve
from mountlimit.worked import Value

SAME = 1e-9
TWO_WAYS = ("angle", "channel")  # the frame member's worse way round is chosen load by load
parts_of_a_load = st.tuples(*[st.floats(-1, 1) for _ in range(6)])
SCALE = np.array([2000.0, 2000.0, 2000.0, 40.0, 40.0, 40.0])


@cache
def solved(name: str):
    return solve(model_of(name)), sprocket_of(name)


def answer(name: str, load: np.ndarray) -> dict[str, np.ndarray]:
    solution, at = solved(name)
    found = solution.response(load, at)
    return {
        "move": found.displacement, "turn": found.rotation, "tension": found.bolt_tension,
        "shear": found.bolt_shear, "contact": found.contact_force,
        "ring": found.motor_ring.membrane, "bending": found.motor_ring.bending, "line": found.line.membrane,
    }  # fmt: skip


def off_sum(name: str, one: np.ndarray, two: np.ndarray) -> float:
    a, b, both = (answer(name, load) for load in (one, two, one + two))
    worst = 0.0
    for what, sum_ in both.items():
        if sum_.size:
            size = np.max(np.abs(a[what])) + np.max(np.abs(b[what])) + 1e-30
            worst = max(worst, float(np.max(np.abs(a[what] + b[what] - sum_)) / size))
    return worst


@given(parts_of_a_load, parts_of_a_load, st.sampled_from(["C2", "C1F", "C6"]))
@depth(ordinary=10, deep=40)
def test_plates_without_contact(one, two, name):
    off = off_sum(name, SCALE * one, SCALE * two)
    looked("superposition, plates without contact", off)
    assert off < 1e-7  # a reaction that cancels is a difference of large numbers


@given(parts_of_a_load, parts_of_a_load, st.just("C2C"), st.floats(0.02, 0.3))
@depth(ordinary=10, deep=40)
def test_plates_with_the_same_points_bearing(one, two, name, near):
    """Loads that press the same points on the frame: so does their sum, and everything adds."""
    one, two = SCALE * one, SCALE * (np.array(one) + near * np.array(two))
    bears = [answer(name, load)["contact"] > 0 for load in (one, two)]
    assume(np.array_equal(*bears))
    off = off_sum(name, one, two)
    looked("superposition, same points bearing", off)
    assert off < 1e-7


@given(numbers, parts_of_a_load, parts_of_a_load)
@depth(ordinary=10, deep=40)
def test_beams_joint_and_frame(number, one, two):
    """Section forces, give of the joint, and of the frame member where it lies one way round."""
    drive = resolve(file_of(drawn(number)))
    plane = drive.mount.plane
    one, two = SCALE * one, SCALE * two
    answers = []
    for load in (one, two, one + two):
        force, moment = [tuple(Value(v, "load", "given", "") for v in part) for part in (load[:3], load[3:])]  # fmt: skip
        found: list[float] = []
        if plane.bolts:
            for part in joint.give(drive, plane, force, moment, drive.mount.material.elastic_modulus):  # fmt: skip
                found += [float(v) for v in part]
        if drive.frame.span is not None and drive.frame.member not in TWO_WAYS:
            for part in frame_member.give(drive.frame, plane, force, moment):
                found += [float(v) for v in part]
        for i in range(len(drive.mount.cuts)):
            cut = structure.in_axes_of_cut(drive, i, force, moment)
            found += [float(getattr(cut, s)) for s in cut.__slots__]
        answers.append(np.array(found))
    a, b, both = answers
    off = float(np.max(np.abs(a + b - both) / (np.abs(a) + np.abs(b) + 1e-15), initial=0.0))
    looked("superposition, beams", off)
    assert off < SAME


@given(numbers, st.floats(-3, 3), st.floats(-3, 3), st.floats(10, 2000), st.floats(10, 2000), st.floats(-20, 20), st.floats(-20, 20))  # fmt: skip
@depth(ordinary=10, deep=40)
def test_pulls_add_as_vectors(number, angle, other, pull, more, torque, turn):
    """Movement of every part under two pulls along two chain lines is that under their resultant."""
    from dataclasses import replace

    drive = resolve(file_of(drawn(number)))
    x, y = (pull * f(angle) + more * f(other) for f in (np.cos, np.sin))
    assume(np.hypot(x, y) > 1.0)
    answers = []
    for size, at, stator in (
        (pull, angle, torque), (more, other, turn), (np.hypot(x, y), np.arctan2(y, x), torque + turn),
    ):  # fmt: skip
        load = replace(structure.unit_load(Value(at, "angle", "given", ""), stator), shaft_load=Value(size, "pull", "given", ""))  # fmt: skip
        parts = structure.model_parts(drive, load)
        kept = [p for p in parts if p.name != structure.FRAME or drive.frame.member not in TWO_WAYS]
        answers.append(np.array([[float(v) for v in (*p.move, *p.turn)] for p in kept]))
    a, b, both = answers
    size = np.max(np.abs(a) + np.abs(b), axis=1, keepdims=True, initial=0.0) + 1e-18
    off = float(np.max(np.abs(a + b - both) / size, initial=0.0))
    looked("superposition, pulls as vectors", off)
    assert off < SAME
