"""Gussets of an angle: triangles welded between leg and foot, flush with its side edges.

Two stand at both side edges; a single one at the edge that ``chain.pull = "across"`` points to.  In
the middle the motor or the chain is in the way.  No beam holds then: the plate model judges what no
plain section is left for, along lines one thickness off the faces that are welded together.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from ..fields import Field, may
from ..model import Drive
from ..mounting import Cut, Gussets, Mount
from ..worked import Value
from . import _common
from ._angle import Corner
from ._parts import Parts, Picker

if TYPE_CHECKING:
    from ..plates import Facet, SectionLine

FIELDS = (
    Field(
        key="mount.gussets", kind="integer", least="0", most="2", example="2",
        meaning="triangles welded between leg and foot: 2 at both side edges, 1 at the edge 'across' points to",
    ),
    may("mount.gusset_height", "length", "gusset, up the leg from the top of the foot", "3 mm", "1 m", example="45 mm"),
    may("mount.gusset_depth", "length", "gusset, along the foot from the leg", "3 mm", "1 m", example="30 mm"),
    may("mount.gusset_thickness", "length", "thickness of the gussets when it differs", "0.5 mm", "100 mm"),
)  # fmt: skip
THICKNESS = "mount.gusset_thickness"
LEAST = 0.0005  # m, thinnest gusset
SIZES = ("mount.gusset_height", "mount.gusset_depth")
PAST_BOLTS = "The gussets reach past a row of bolts: strength there is judged by the plate model, fatigue is not."
BEAMS_ONLY = ("mount.bend_radius", "mount.warping_held")
STEEPEST = 4.0  # one leg of the triangle over the other: sharper has no proper tip

Circle = tuple[float, float, float]  # place on the plate and radius
Place = tuple[float, float]


def pick(
    picker: Picker, parts: Parts, thickness: Value, width: Value, room: Room
) -> Gussets | None:
    """Give the gussets of the file, or None; what cannot be is recorded as mistakes."""
    count = int(picker.optional("mount.gussets") or 0)
    given = [key for key in (*SIZES, THICKNESS) if picker.optional(key) is not None]
    if count == 0:
        for key in given:
            picker.mistake(key, "says something only with gussets", "add mount.gussets = 2")
        return None
    for key in SIZES:
        if key not in given:
            picker.mistake(key, "is missing: with gussets their size is needed")
    for key in BEAMS_ONLY:
        if picker.optional(key) is not None:
            picker.warnings.append(f"{key} has no part in an angle with gussets.")
    start = Value(float(thickness), "gusset", "derived")
    height, depth = (picker.optional(key) or start for key in SIZES)
    if all(key in given for key in SIZES):
        _refuse_sizes(picker, height, depth, room)
    return Gussets(
        count=count, height=height, depth=depth,
        thickness=_thickness(picker, parts, thickness, width, room, (float(height), float(depth))),
    )  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """What the gussets of an angle have room in, m: lengths of leg and foot, shaft axis over the foot.

    ``bolts`` are the frame bolts as (x, distance from the leg).
    """

    leg: float
    foot: float
    axis: float
    to_motor: bool
    bolts: Sequence[Place] = ()


def _refuse_sizes(picker: Picker, height: Value, depth: Value, room: Room) -> None:
    for key, size, most, what in (
        (SIZES[0], height, room.leg, "leg above the foot"), (SIZES[1], depth, room.foot, "foot"),
    ):  # fmt: skip
        if size > most * (1 + 1e-9):
            picker.mistake(key, f"leaves the {what}, {most * 1000:.1f} mm")
    steep = max(height, depth) / min(height, depth)
    if steep > STEEPEST:
        picker.mistake(
            SIZES[0], f"is {steep:.1f} to 1 against the gusset's depth; up to {STEEPEST:g} to 1 is known"
        )  # fmt: skip


def _thickness(
    picker: Picker, parts: Parts, thickness: Value, width: Value, room: Room, size: Place
) -> Value:
    """Give the gussets' thickness: as given, or that of the mount as far as there is room for it."""
    motor, half = parts.motor, float(width) / 2
    circle = float(motor.bolt_circle) / 2
    washer = float(motor.bolts.thread.washer_diameter) / 2
    turns = [math.pi * (2 * i + 1) / motor.bolts.count for i in range(motor.bolts.count)]
    on_leg = [(circle * math.sin(a), room.axis - circle * math.cos(a), washer) for a in turns]
    on_leg += [(0.0, room.axis, circle + washer)] if room.to_motor else []
    what = "the motor, which covers its bolts at the least" if room.to_motor else "a motor bolt"
    radius = float(parts.fixings.washer_diameter) / 2
    beside_leg = _beside(half, size[0], on_leg)
    beside_foot = _beside(half, size[1], [(x, y, radius) for x, y in room.bolts])
    given = picker.optional(THICKNESS)
    least = LEAST if given is None else float(given)
    if min(beside_leg, half / 2) < least:
        picker.mistake(
            SIZES[0], f"runs into {what}", "make the gussets lower or thinner, or the angle wider"
        )
    if beside_foot < least:
        picker.mistake(
            "fixings.span_across", "puts a washer of the frame bolts under a gusset",
            "move the bolts in, or widen the angle",
        )  # fmt: skip
    body = (
        "motor's body, wider than its bolt circle," if room.to_motor else "chain with its sprocket"
    )
    picker.warnings.append(f"See that the {body} clears the gussets.")
    if given is not None:
        return given
    most = max(min(beside_leg, beside_foot, half / 2), LEAST)
    if thickness <= most:
        return thickness
    picker.warnings.append(
        f"Gussets taken as {most * 1000:.1f} mm thick: there is no room for more."
    )
    return Value(most, THICKNESS, "derived", "what there is room for")


def _beside(half: float, length: float, spots: Sequence[Circle]) -> float:
    """Give the room from the side edge to the nearest circle that a gusset of some length passes."""
    found = [half]
    for x, y, radius in spots:
        beyond = max(0.0, y - length)
        if beyond < radius:
            found.append(half - abs(x) - math.sqrt(radius**2 - beyond**2))
    return min(found)


def places(count: int, width: float, thickness: float) -> tuple[float, ...]:
    """Give where along x the mid-planes of the gussets stand."""
    side = width / 2 - thickness / 2
    return (side,) if count == 1 else (-side, side)


def above(picker: Picker, parts: Parts, found: Gussets, cut: Cut, long: float) -> tuple[Cut, ...]:
    """Keep the cut at the motor bolts, ``long`` above the foot, where the gussets end below it."""
    if found.height <= long - parts.motor.bolts.thread.clearance_hole / 2:
        return (cut,)
    picker.warnings.append(PAST_BOLTS)
    return ()


def area(found: Gussets | None, thickness: float) -> float:
    """Give the area of the gussets, as plate of the mount's thickness."""
    if found is None:
        return 0.0
    return float(found.count * found.height * found.depth / 2 * found.thickness / thickness)


def facets(drive: Drive, corner: Corner) -> list[Facet]:
    """Give a triangle for each gusset, between the mid-planes of leg and foot."""
    found = drive.mount.gussets
    if found is None:
        return []
    depth, height = _legs(drive.mount, corner)
    return [
        _common.facet_of(
            drive, f"gusset {i}", [(0.0, 0.0), (depth, 0.0), (0.0, height)],
            (x, corner.y, corner.z), (0.0, 1.0, 0.0), float(found.thickness), False,
            e1=(0.0, 0.0, corner.side),
        )
        for i, x in enumerate(_places_of(drive.mount), 1)
    ]  # fmt: skip


def _places_of(mount: Mount) -> tuple[float, ...]:
    found = mount.gussets
    assert found is not None
    return places(found.count, float(mount.width), float(found.thickness))


def _legs(mount: Mount, corner: Corner) -> tuple[float, float]:
    """Give the triangle's legs along foot and leg, from the corner of their mid-planes."""
    found = mount.gussets
    assert found is not None
    return (
        float(found.depth) + float(mount.thickness) / 2,
        float(found.height) + corner.foot_thickness / 2,
    )


def lines(
    drive: Drive, corner: Corner, foot_length: float, on_leg: Sequence[Circle], on_foot: Sequence[Circle]
) -> list[SectionLine]:  # fmt: skip
    """Give the lines along which stress is read: one thickness off every weld of the gussets and heel.

    ``on_leg`` and ``on_foot`` are circles to stay out of: there the rings round the bolts speak.
    """
    mount = drive.mount
    found = mount.gussets
    if found is None:
        return []
    t, foot, own = float(mount.thickness), corner.foot_thickness, float(found.thickness)
    depth, height = _legs(mount, corner)
    half = float(mount.width) / 2
    leg_low, leg_off = corner.y + foot / 2 + t, own / 2 + t
    foot_low, foot_off = t / 2 + foot, own / 2 + foot
    ends = [(-half, half)]
    made: list[SectionLine] = []
    made += _across(0, ends, leg_low, on_leg, t)
    made += _across(1, ends, foot_low, on_foot, foot)
    tip, toe = corner.y + height + t, depth + foot
    if tip < _common.top_of(drive):
        made += _across(0, ends, tip, on_leg, t)
    if toe < foot_length:
        made += _across(1, ends, toe, on_foot, foot)
    for i, x in enumerate(_places_of(mount)):
        inwards = -math.copysign(1.0, x)
        at = x + inwards * leg_off
        made += pieces(0, (at, leg_low), (at, corner.y + height), on_leg, t)
        at = x + inwards * foot_off
        made += pieces(1, (at, foot_low), (at, depth), on_foot, foot)
        off_foot, off_leg = foot / 2 + own, t / 2 + own
        made += pieces(
            2 + i, (off_leg, off_foot), (depth * (1 - off_foot / height), off_foot), (), own
        )
        made += pieces(
            2 + i, (off_leg, off_foot), (off_leg, height * (1 - off_leg / depth)), (), own
        )
    return made


def _across(
    facet: int, ends: Sequence[Place], at: float, spots: Sequence[Circle], least: float
) -> list[SectionLine]:
    return [
        line for low, high in ends for line in pieces(facet, (low, at), (high, at), spots, least)
    ]


def pieces(
    facet: int, start: Place, end: Place, spots: Sequence[Circle], least: float
) -> list[SectionLine]:
    """Give what is left of a line outside circles; pieces shorter than ``least`` are left out."""
    from ..plates import SectionLine

    a, b = np.array(start, float), np.array(end, float)
    length = float((b - a) @ (b - a)) ** 0.5
    if length < least:
        return []
    along = (b - a) / length
    free = [(0.0, length)]
    for x, y, radius in spots:
        place = float((np.array([x, y]) - a) @ along)
        off = float(np.linalg.norm(a + place * along - [x, y]))
        if off < radius:
            reach = math.sqrt(radius**2 - off**2)
            cut = (place - reach, place + reach)
            free = [
                (max(low, s), min(high, e))
                for low, high in free
                for s, e in ((-math.inf, cut[0]), (cut[1], math.inf))
                if min(high, e) > max(low, s)
            ]
    return [
        SectionLine(
            facet=facet, start=_pair(a + low * along), end=_pair(a + high * along), samples=31
        )
        for low, high in free
        if high - low >= least
    ]


def _pair(place: np.ndarray) -> Place:
    return (float(place[0]), float(place[1]))


def motor_circles(drive: Drive, reach: float) -> list[Circle]:
    """Give the circles ``reach`` outside the washers of the motor bolts, and its bore."""
    bolts = _common.motor_bolts_on(drive, 0)
    found = [(*map(float, b.centre), b.washer_diameter / 2 + reach) for b in bolts]
    bore = float(drive.motor.bore) / 2 + reach
    return [*((c[0], c[1], c[2]) for c in found), (0.0, 0.0, bore)]
