"""Gussets of an angle: triangles welded between leg and foot, flush with its side edges.

Two stand at both side edges; a single one at the edge that ``chain.pull = "across"`` points to.  In
the middle the motor or the chain is in the way.  No beam holds then: the plate model judges what no
plain section is left for, along lines one thickness off the faces that are welded together.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

import numpy as np

from ..fields import Field, may
from ..model import Cut, Drive, Gussets, Mount
from ..worked import Value
from . import _common
from ._angle import Corner
from ._common import Parts, Picker

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
SIZES = ("mount.gusset_height", "mount.gusset_depth")
PAST_BOLTS = "The gussets reach past a row of bolts: strength there is judged by the plate model, fatigue is not."
BEAMS_ONLY = ("mount.bend_radius", "mount.warping_held")
STEEPEST = 4.0  # one leg of the triangle over the other: sharper has no proper tip

Circle = tuple[float, float, float]  # place on the plate and radius
Place = tuple[float, float]


def pick(picker: Picker, thickness: Value, width: Value, leg: float, foot: float) -> Gussets | None:
    """Give the gussets of the file, or None.

    Parameters
    ----------
    leg, foot : [m]
        length of the leg above the foot, and of the foot beyond the leg
    """
    count = int(picker.optional("mount.gussets") or 0)
    given = [key for key in (*SIZES, "mount.gusset_thickness") if picker.optional(key) is not None]
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
    height, depth = (
        picker.optional(key) or Value(float(thickness), key, "derived") for key in SIZES
    )
    own = picker.optional("mount.gusset_thickness") or thickness
    found = Gussets(count=count, height=height, depth=depth, thickness=own)
    if all(key in given for key in SIZES):
        _refuse_sizes(picker, found, float(width), leg, foot)
    return found


def _refuse_sizes(picker: Picker, found: Gussets, width: float, leg: float, foot: float) -> None:
    for key, size, most, what in zip(
        SIZES, (found.height, found.depth), (leg, foot), ("leg above the foot", "foot"), strict=True
    ):
        if size > most * (1 + 1e-9):
            picker.mistake(key, f"leaves the {what}, {most * 1000:.1f} mm")
    steep = max(found.height, found.depth) / min(found.height, found.depth)
    if steep > STEEPEST:
        picker.mistake(
            SIZES[0], f"is {steep:.1f} times off the gusset's depth; a triangle up to {STEEPEST:g} to 1 is known"
        )  # fmt: skip
    if 4 * found.thickness > width:
        picker.mistake(
            "mount.gusset_thickness", f"is too much for an angle {width * 1000:.1f} mm wide"
        )


def places(count: int, width: float, thickness: float) -> tuple[float, ...]:
    """Give where along x the mid-planes of the gussets stand."""
    side = width / 2 - thickness / 2
    return (side,) if count == 1 else (-side, side)


def refuse_blocked(
    picker: Picker, parts: Parts, found: Gussets, width: Value, free: float, to_motor: bool
) -> None:
    """Record mistakes where a gusset runs into the motor, the sprocket's side or the frame bolts.

    ``free`` is from the foot's top to the shaft axis.
    """
    motor = parts.motor
    washer = float(motor.bolts.thread.washer_diameter)
    circle = float(motor.bolt_circle) / 2
    x = places(1, float(width), float(found.thickness))[0]
    top = min(0.0, float(found.height) - free)
    if to_motor and math.hypot(x, top) < circle + washer / 2 + float(found.thickness) / 2:
        picker.mistake(
            SIZES[0], "reaches the motor, which covers its bolts and their washers at the least",
            f"{1000 * _room(free, x, circle + washer / 2 + float(found.thickness) / 2):.0f} mm at most there",
        )  # fmt: skip
        return
    if to_motor:
        picker.warnings.append(
            "See that the motor's body, wider than its bolt circle, clears the gussets."
        )
    else:
        picker.warnings.append("See that chain and sprocket clear the gussets.")
    turns = [math.pi * (2 * i + 1) / motor.bolts.count for i in range(motor.bolts.count)]
    spots = [(circle * math.sin(a), free - circle * math.cos(a), washer / 2) for a in turns]
    line = ((x, 0.0), (x, float(found.height)))
    if not _clear(line, spots, float(found.thickness) / 2):
        picker.mistake(SIZES[0], "runs under a washer of the motor bolts", "make the gussets lower")


def _room(free: float, x: float, radius: float) -> float:
    """Give how high a gusset may reach below a motor of some radius."""
    return free - math.sqrt(max(radius**2 - x**2, 0.0))


def refuse_bolts(
    picker: Picker, parts: Parts, found: Gussets, width: Value, bolts: Sequence[Place]
) -> None:
    """Record a mistake where a gusset stands on a washer; bolts as (x, distance from the leg)."""
    x = places(1, float(width), float(found.thickness))[0]
    radius = float(parts.fixings.washer_diameter) / 2
    spots = [(bx, by, radius) for bx, by in bolts]
    if not _clear(((x, 0.0), (x, float(found.depth))), spots, float(found.thickness) / 2):
        picker.mistake(
            "fixings.span_across", "puts a washer of the frame bolts under a gusset",
            "move the bolts in, or widen the angle",
        )  # fmt: skip


def _clear(line: tuple[Place, Place], spots: Sequence[Circle], away: float) -> bool:
    """Tell whether a line passes every circle by ``away`` or more."""
    a, b = (np.array(p) for p in line)
    length = float(np.linalg.norm(b - a))
    for x, y, radius in spots:
        share = min(max(float((np.array([x, y]) - a) @ (b - a)) / length**2, 0.0), 1.0)
        if float(np.linalg.norm(a + share * (b - a) - [x, y])) < radius + away:
            return False
    return True


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
