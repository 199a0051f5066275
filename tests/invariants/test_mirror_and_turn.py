"""A mirrored machine has the same limits, and so has a drawing that was turned on its sheet."""

from __future__ import annotations

import math
from random import Random

from hypothesis import example, given
from hypothesis import strategies as st
from invariant_kit import FORMS, answer, depth, difference, drawn, file_of, looked, numbers

from mountlimit.drivefile import DIRECTIONS
from mountlimit.units import parse

BY_BEAMS = 1e-9  # and where the mesh stays the same
BY_PLATES = 0.06  # the mesh is no mirror image of itself; see the deep run for how far it is off
ACROSS = ("mount.strut_start_across", "mount.strut_end_across")
PLACES = ("mount.outline", "mount.frame_holes", "mount.motor_holes", "mount.holes")


def mirrored(keys: dict) -> dict:
    """Give a drive seen in a mirror: x to -x.  Only one way of weight 'across' can be written down."""
    other = dict(keys)
    if "chain.pull" in keys:
        other["chain.pull"] = _each(keys["chain.pull"], _other_way)
    for key in ACROSS:
        if key in keys:
            other[key] = f"{-parse(keys[key], 'length')!r} m"
    if "frame.place" in keys:
        other["frame.place"] = _other_end(keys["frame.place"])
    for key in PLACES:
        if key in keys:
            other[key] = [_moved(text, lambda x, y: (-x, y)) for text in keys[key]]
    return other


def _each(value, change):
    return [change(v) for v in value] if isinstance(value, list) else change(value)


def _other_way(pull: str) -> str:
    angle = math.radians(DIRECTIONS[pull]) if pull in DIRECTIONS else parse(pull, "angle")
    return f"{math.pi - angle!r} rad"


def _other_end(place):
    if isinstance(place, dict):
        ends = {"low": "high", "likely": "likely", "high": "low"}
        return {end: _other_end(place[other]) for end, other in ends.items()}
    return repr(1 - float(parse(str(place), "ratio")))


def _moved(text: str, move) -> str:
    """Move a place, or a hole with its diameter, written in mm."""
    x, y, *rest = (float(v) for v in text.removesuffix(" mm").split(", "))
    return ", ".join(repr(float(v)) for v in (*move(x, y), *rest)) + " mm"


def sideways(keys: dict) -> dict:
    """Give the drive without weight 'across': down along x has no mirror image in the file."""
    return {k: v for k, v in keys.items() if (k, v) != ("mount.weight_acts", "across")}


def seen_in_mirror(keys: dict) -> dict:
    """Give the mirrored drive's answer; an assumed place on the span runs from the other end."""
    return answer(file_of(mirrored(keys)), () if "frame.place" in keys else ("frame.place",))


@given(numbers)
@example(53_375_910)  # hinged ends, place on the span not told
@depth(ordinary=8, deep=40)
def test_mirror_image_by_beams(number):
    keys = sideways(drawn(number))
    off, where = difference(answer(file_of(keys)), seen_in_mirror(keys))
    looked("mirror, beams", off)
    assert off < BY_BEAMS, where


@given(numbers)
@depth(ordinary=1, deep=4)
def test_mirror_image_by_plates(number):
    """By plates the triangles are others, so the answer is the same only as far as the mesh is fine."""
    keys = sideways(drawn(number, FORMS, ""))
    off, where = difference(answer(file_of(keys)), seen_in_mirror(keys))
    looked("mirror, plates", off)
    assert off < BY_PLATES, where


@given(numbers, st.floats(-math.pi, math.pi), st.floats(-500, 500))
@depth(ordinary=1, deep=4)
def test_an_outline_turned_on_its_sheet(number, angle, shift):
    """Points turned and moved, with ``mount.away`` turned along: mount, chain and frame turn together."""
    keys = drawn(number, ("outline",), "")
    chance = Random(number)
    dx, dy = shift, chance.uniform(-500, 500)
    c, s = math.cos(angle), math.sin(angle)

    def move(x, y):
        return c * x - s * y + dx, s * x + c * y + dy

    turned = {k: [_moved(t, move) for t in v] if k in PLACES else v for k, v in keys.items()}
    turned["mount.away"] = f"{math.degrees(angle) + 90!r} deg"
    plain = {**keys, "mount.away": "up"}
    off, where = difference(answer(file_of(plain)), answer(file_of(turned)))
    looked("outline turned on its sheet", off)
    assert off < BY_BEAMS, where


@given(numbers)
@depth(ordinary=1, deep=3)
def test_an_outline_drawn_from_behind(number):
    """The same plate drawn from the motor's side is its own mirror image, and says so."""
    keys = drawn(number, ("outline",), "")
    behind = {
        k: [_moved(t, lambda x, y: (-x, y)) for t in v] if k in PLACES else v
        for k, v in keys.items()
    }
    behind["mount.seen_from"] = "motor"
    off, where = difference(answer(file_of(keys)), answer(file_of(behind)))
    looked("outline drawn from behind", off)
    assert off < BY_BEAMS, where
