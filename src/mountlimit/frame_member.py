"""The give of the frame member at the mount: a beam along x, held against twist at both ends.

The mount lies on the middle of the member's face, so its loads are carried to the centroid and the
shear centre, and the movement back.  Stretching along x is left out.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from . import open_section
from .formulas import (
    flexure,
    layout,
    member,
    rigid,
    section,
    span_beams,
    tube,
    usage,
    warping,
)
from .model import Frame, Number
from .mounting import BoltPlane
from .worked import Value

NU = Value(0.3, "frame.poissons_ratio", "assumed", "steel, from memory")
MIDDLE = 0.5
Pair = tuple[Number, Number]
Triple = tuple[Number, Number, Number]
Moved = tuple[Triple, Triple]


@dataclass(frozen=True, slots=True, kw_only=True)
class Corner:
    """A corner of a section, about the centroid; of those alike in size one stands for all."""

    y: Number
    z: Number
    warping: Number | None = None  # under unit twist, about the shear centre


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """A member's section in the mount's axes y and z; arms run to the bolts, None where they are nil."""

    area: Number
    bends_y: Number  # integral of y squared: second moment for bending along y
    bends_z: Number
    product: Number | None = None
    torsion_constant: Number
    warping_constant: Number | None = None
    from_centroid: Pair | None = None
    from_shear_centre: Pair | None = None
    corners: tuple[Corner, ...] = ()  # none of a round tube


def give(frame: Frame, plane: BoltPlane, force: Any, moment: Any) -> Moved:
    """Give movement (m) and turn (rad) at the mount's bolts under force (N) and moment (N*m) there.

    Numbers or arrays alike.  Where the member may be fixed either way round, the way that leans the
    shaft more along the pull is taken.
    """
    first, *others = (_moved(frame, shape, force, moment) for shape in shapes(frame, plane))
    for other in others:
        first = _softer(first, other, force)
    return first


def _softer(one: Moved, other: Moved, force: Any) -> Moved:
    """Give the one of two movements that leans the shaft more along the pull, case by case."""
    softer = _lean(other[1], force) > _lean(one[1], force)
    if np.ndim(softer) == 0:
        return other if softer else one
    move, turn = (
        tuple(np.where(softer, b, a) for a, b in zip(one[k], other[k], strict=True)) for k in (0, 1)
    )
    return move, turn


def _lean(turn: Triple, force: Any) -> Number:
    """Give lean of the shaft along the pull, times the pull, to compare two ways round."""
    return np.abs(turn[1] * force[0] - turn[0] * force[1])


def _moved(frame: Frame, shape: Shape, force: Any, moment: Any) -> Moved:
    move, turn = (0.0, *force[1:]), tuple(moment)
    if shape.from_centroid is not None and shape.from_shear_centre is not None:
        turn = own_moments(shape.from_centroid, shape.from_shear_centre, force, moment)
    across = (move[1], move[2], turn[1], turn[2])
    sag_y, sag_z, turn_y, turn_z = _bent(frame, shape, *across)
    twist = _twist(frame, shape, turn[0])
    if shape.from_centroid is None or shape.from_shear_centre is None:
        return (0.0, sag_y, sag_z), (twist, turn_y, turn_z)
    (cy, cz), (sy, sz) = shape.from_centroid, shape.from_shear_centre
    carried = (
        member.at_the_bolts(0.0, turn_y, cz, turn_z, cy),
        member.at_the_bolts(sag_y, 0.0, 0.0, twist, sz),
        member.at_the_bolts(sag_z, twist, sy, 0.0, 0.0),
    )
    return carried, (twist, turn_y, turn_z)


def own_moments(centroid: Pair, shear_centre: Pair, force: Any, moment: Any) -> Triple:
    """Give torque about the shear centre and bending moments about the centroid."""
    return (
        member.eccentric_torque(moment[0], shear_centre[0], force[2], shear_centre[1], force[1]),
        member.eccentric_bending(moment[1], centroid[1], force[0]),
        member.eccentric_bending(moment[2], layout.opposite(centroid[0]), force[0]),
    )


def _bent(
    frame: Frame, shape: Shape, force_y: Number, force_z: Number, moment_y: Number, moment_z: Number
) -> tuple[Number, Number, Number, Number]:
    """Give sag along y and z, turn about y and z."""
    if shape.product is not None:
        product, one, two = shape.product, shape.bends_y, shape.bends_z
        force_y, force_z = (
            member.skewed_force(force_y, force_z, product, one, two),
            member.skewed_force(force_z, force_y, product, two, one),
        )
        moment_y, moment_z = (
            member.skewed_moment(moment_y, moment_z, product, two, one),
            member.skewed_moment(moment_z, moment_y, product, one, two),
        )
    sag_y, turn_z = _beam(frame, shape.bends_y, force_y, moment_z, 1)
    sag_z, turn_y = _beam(frame, shape.bends_z, force_z, moment_y, -1)
    return sag_y, sag_z, turn_y, turn_z


def _beam(
    frame: Frame, second: Number, force: Number, couple: Number, sense: int
) -> tuple[Number, Number]:
    """Give sag and turn in one plane; ``sense`` is the sign of a right-handed turn on the slope."""
    held = frame.ends == "held"
    rest = (frame.span, frame.place, frame.elastic_modulus, second)
    sag = (span_beams.held_sag_force if held else span_beams.hinged_sag_force)(force, *rest)
    turn = (span_beams.held_turn_couple if held else span_beams.hinged_turn_couple)(couple, *rest)
    if float(frame.place) == MIDDLE:  # there a force does not turn, a couple does not lift
        return sag, turn
    tilted = (span_beams.held_turn_force if held else span_beams.hinged_turn_force)(force, *rest)
    lifted = (span_beams.held_sag_couple if held else span_beams.hinged_sag_couple)(couple, *rest)
    if sense > 0:
        return usage.length_sum(sag, lifted), usage.angle_sum(turn, tilted)
    return layout.difference(sag, lifted), usage.angle_sum(turn, rigid.reversed_angle(tilted))


def _twist(frame: Frame, shape: Shape, torque: Number) -> Number:
    """Give the twist where the mount sits; the ends of an open section are free to warp."""
    g = flexure.shear_modulus(frame.elastic_modulus, NU)
    rest = (frame.span, frame.place, g, shape.torsion_constant)
    if shape.warping_constant is None:
        return member.span_twist(torque, *rest)
    return member.span_twist_warping(torque, *rest, decay(frame, shape))


def decay(frame: Frame, shape: Shape) -> Number:
    """Give the decay of held warping along an open section, 1/m."""
    assert shape.warping_constant is not None
    g, e = flexure.shear_modulus(frame.elastic_modulus, NU), frame.elastic_modulus
    return warping.warping_decay(g, shape.torsion_constant, e, shape.warping_constant)


def shapes(frame: Frame, plane: BoltPlane) -> tuple[Shape, ...]:
    """Give the member's section, every way round that it may be fixed."""
    upright = plane.normal == "z"  # the mount lies on a face whose width runs along y
    if frame.member == "round tube":
        return (_round(frame, upright),)
    if frame.member in ("square tube", "rectangular tube"):
        return (_box(frame, upright),)
    if frame.member == "flat bar":
        return (_flat(frame, upright),)
    sizes = (float(frame.size), float(frame.depth), float(frame.wall))
    if frame.member == "angle":
        solved = open_section.angle(*sizes)
        return tuple(_open(frame, solved, upright, way) for way in (-1, 1))
    found: tuple[Shape, ...] = ()
    if frame.open_side != "away":
        solved = open_section.channel_on_side(*sizes)
        found = tuple(_open(frame, solved, upright, way) for way in (-1, 1))
    if frame.open_side != "side":
        found += (_open(frame, open_section.channel_open_away(*sizes), upright, 1),)
    return found


def _round(frame: Frame, upright: bool) -> Shape:
    second = tube.round_tube_second_moment(frame.size, frame.wall)
    arm = _out(layout.half(frame.size), upright)
    return Shape(
        area=tube.round_tube_area(frame.size, frame.wall),
        bends_y=second, bends_z=second, from_centroid=arm, from_shear_centre=arm,
        torsion_constant=tube.round_tube_torsion_constant(frame.size, frame.wall),
    )  # fmt: skip


def _out(half: Number, upright: bool) -> Pair:
    """Give the arm from the axis of a member of equal halves out to the mount's face."""
    return (0.0, half) if upright else (half, 0.0)


def _box(frame: Frame, upright: bool) -> Shape:
    size, wall = frame.size, frame.wall
    depth = size if frame.depth is None else frame.depth
    along = tube.box_second_moment(depth, size, wall)
    through = along if frame.depth is None else tube.box_second_moment(size, depth, wall)
    across, behind = layout.half(size), layout.half(depth)
    arm = _out(behind, upright)
    return Shape(
        area=tube.box_area(size, depth, wall),
        bends_y=along if upright else through, bends_z=through if upright else along,
        torsion_constant=tube.box_torsion_constant(size, depth, wall),
        from_centroid=arm, from_shear_centre=arm,
        corners=(Corner(y=across if upright else behind, z=behind if upright else across),),
    )  # fmt: skip


def _flat(frame: Frame, upright: bool) -> Shape:
    """Give a flat bar; the mount lies on its wide face."""
    size, wall = frame.size, frame.wall
    along = section.rectangle_second_moment(wall, size)
    through = section.rectangle_second_moment(size, wall)
    across, behind = layout.half(size), layout.half(wall)
    arm, warps = _out(behind, upright), section.flat_bar_corner_warping(size, wall)
    places = (across, behind) if upright else (behind, across)
    return Shape(
        area=section.rectangle_area(size, wall),
        bends_y=along if upright else through, bends_z=through if upright else along,
        torsion_constant=section.rectangle_torsion_constant(size, wall),
        warping_constant=section.flat_bar_warping_constant(size, wall),
        from_centroid=arm, from_shear_centre=arm,
        corners=(Corner(y=places[0], z=places[1], warping=warps),),
    )  # fmt: skip


def _open(frame: Frame, solved: open_section.Solved, upright: bool, way: int) -> Shape:
    """Give a solved section in the mount's axes; ``way`` -1 mirrors it along its face."""
    mm = f"{frame.size * 1000:.4g} x {frame.depth * 1000:.4g} x {frame.wall * 1000:.4g} mm"
    source = (
        f"sectionproperties, {solved.elements} elements, {frame.member} {mm} with sharp corners"
    )

    def known(number: float) -> Value:
        return Value(number, "solved section", "derived", source)

    def arm(place: tuple[float, float]) -> Pair:
        along, out = known(-way * place[0]), known(-place[1])
        return (along, out) if upright else (out, along)

    def corner(place: tuple[float, float, float]) -> Corner:
        along, out = (
            known(way * (place[0] - solved.centroid[0])),
            known(place[1] - solved.centroid[1]),
        )
        y, z = (along, out) if upright else (out, along)
        return Corner(y=y, z=z, warping=known(place[2]))

    along, through = known(solved.second_p), known(solved.second_n)
    skewed = frame.member == "angle"
    return Shape(
        area=known(solved.area),
        bends_y=along if upright else through, bends_z=through if upright else along,
        product=known(way * solved.product) if skewed else None,
        torsion_constant=known(solved.torsion_constant),
        warping_constant=known(solved.warping_constant),
        from_centroid=arm(solved.centroid), from_shear_centre=arm(solved.shear_centre),
        corners=tuple(corner(c) for c in solved.corners),
    )  # fmt: skip
