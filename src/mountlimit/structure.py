"""The section route: what the mount does under the loads, by statics and beam theory.

The plate route (``plate_response``) stands beside this one: both give a ``Response``.  Every elastic part (mount segments, joint,
frame member) is loaded by the whole wrench carried to its end, and its end's movement and turn are
carried to the sprocket; the parts simply add.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np

from . import frame_member, joint, pulled, shaft_line
from .case import BoltForces, Displacement, Loads, Response, SectionForces
from .errors import BalanceError
from .formulas import (
    flexure,
    layout,
    outboard,
    rigid,
    section,
    segment,
    statics,
    usage,
    warping,
)
from .model import Drive, Number, PullTest
from .mounting import AXES, Segment
from .worked import Value

FRAME = "frame member"
CLOSED = 1e-9  # largest unbalanced share of the load that is still rounding
NO_PULL = Value(0.0, "no pull", "derived", "the weight alone")
NO_TORQUE = Value(0.0, "no torque", "derived", "the weight alone")
NO_BOLTS = BoltForces(
    tension=(), net_pull=(), shear=(), shear_first=(), shear_second=(), contacts=()
)
HELD_SPAN = 0.7  # an end counts as held against warping when its bolts span this share of the width


def wrench(
    drive: Drive, loads: Loads, place: tuple[Number, ...]
) -> tuple[tuple[Number, ...], tuple[Number, ...]]:
    """Give force and moment, about ``place``, of everything the motor puts on the mount (SI).

    Strand forces act at the shaft axis in the sprocket plane, an outboard bearing on the frame pushes
    against them; the torque about z is the stator's.
    """
    strands = _along_chain(loads.shaft_load, loads.pull_angle)
    weight = loads.weight
    sprocket = (0.0, 0.0, drive.shaft.face_overhang)
    centre = (0.0, 0.0, layout.opposite(drive.motor.centre_of_mass))
    couple = (0.0, 0.0, loads.stator_torque)
    force = strands
    moment = [_about(axis, sprocket, strands, place) for axis in range(3)]
    third = drive.shaft.outboard
    if third is not None and not third.on_mount:
        back = _along_chain(rigid.reversed_force(loads.outboard), loads.pull_angle)
        at = (0.0, 0.0, third.place)
        force = tuple(_plus(a, b) for a, b in zip(force, back, strict=True))
        moment = [
            outboard.moment_of_two(own, _about(axis, at, back, place))
            for axis, own in enumerate(moment)
        ]
    total = tuple(_plus(a, b) for a, b in zip(force, weight, strict=True))
    return total, tuple(
        _with_weight(axis, moment[axis], centre, weight, place, couple[axis]) for axis in range(3)
    )


def _along_chain(force: Number, angle: Number) -> tuple[Number, ...]:
    return rigid.across_part(force, angle), rigid.along_part(force, angle), 0.0


def _plus(a: Number, b: Number) -> Number:
    return a if np.ndim(b) == 0 and b == 0 else rigid.sum_of_two(a, b)


def _about(axis: int, at: Any, force: Any, place: Any) -> Number:
    """Give the moment about one axis through ``place`` of a force at ``at``."""
    one, two = (i for i in range(3) if i != axis)
    about = (statics.moment_x, statics.moment_y, statics.moment_z)[axis]
    return about(_arm(at[one], place[one]), _arm(at[two], place[two]), force[one], force[two])


def _with_weight(
    axis: int, pulled: Number, centre: Any, weight: Any, place: Any, couple: Number
) -> Number:
    """Add the moment of the motor's weight and the stator's torque to that of the pull."""
    if not any(np.any(weight[i]) for i in range(3) if i != axis):
        if np.ndim(couple) == 0 and couple == 0:
            return pulled
        return rigid.moment_sum(pulled, 0.0, couple)
    return rigid.moment_sum(pulled, _about(axis, centre, weight, place), couple)


def _arm(to: Number, start: Number) -> Number:
    """Give the distance between two places; a place that is plainly zero leaves the other as it is."""
    if np.ndim(start) == 0 and start == 0:
        return to
    return layout.difference(to, start)


def solve(drive: Drive, loads: Loads) -> Response:
    """Give section forces, movement at the sprocket and bolt forces for the loads."""
    plane = drive.mount.plane

    @cache
    def bolts() -> tuple[BoltForces, Number]:
        if not plane.bolts:
            return NO_BOLTS, 0.0
        force, moment = wrench(drive, loads, plane.centre)
        found = joint.bolt_forces(plane, drive.fixings.bolts.number, force, moment)
        left = joint.balance(plane, found, force, moment)
        refuse_unbalanced(left)
        return found, left

    return Response(
        sections=lambda: sections(drive, loads), bolts=lambda: bolts()[0],
        displacements=lambda: (*displacements_of(drive, loads), shaft_line.at_sprocket(drive, loads)),
        balance=lambda: bolts()[1], welds=lambda: _welds(drive, loads),
    )  # fmt: skip


def _welds(drive: Drive, loads: Loads) -> tuple[Any, ...]:
    """Give force and moment on the weld: a single one takes everything."""
    if len(drive.mount.welds) != 1:
        return ()
    return (wrench(drive, loads, drive.mount.plane.centre),)


def refuse_unbalanced(left: Number) -> None:
    """Refuse reactions that do not close.

    Raises
    ------
    BalanceError
        when more than rounding is left of the load.
    """
    worst = float(np.max(left))
    if not worst < CLOSED:
        raise BalanceError(f"reactions and loads differ by {worst:.2e} of the load")


def sections(drive: Drive, loads: Loads) -> tuple[SectionForces, ...]:
    """Give the forces in every cut."""
    return tuple(section_forces(drive, loads, i) for i in range(len(drive.mount.cuts)))


def section_forces(drive: Drive, loads: Loads, index: int) -> SectionForces:
    """Give the forces in one cut, in the cut's own axes."""
    force, moment = wrench(drive, loads, drive.mount.cuts[index].place)
    return in_axes_of_cut(drive, index, force, moment)


def in_axes_of_cut(
    drive: Drive, index: int, force: tuple[Number, ...], moment: tuple[Number, ...]
) -> SectionForces:
    """Give a wrench about a cut's place in the cut's own axes, with the bimoment it brings."""
    cut = drive.mount.cuts[index]
    a, w, n = (AXES.index(x) for x in (cut.axis, cut.across, cut.normal))
    bimoment: Number = 0.0
    if cut.segment is not None:
        bimoment = _bimoment(drive, drive.mount.segments[cut.segment], moment[a])
    return SectionForces(
        normal=force[a], shear_across=force[w], shear_normal=force[n], torque=moment[a],
        moment_across=moment[w], moment_normal=moment[n], bimoment=bimoment,
    )  # fmt: skip


def held_ends(drive: Drive, part: Segment) -> int:
    """Count the ends of a segment whose flatness is held: by bolts of enough span, a bend or a weld."""
    from .mounts._common import pattern

    frame_held = not drive.fixings.bolts.count  # welded
    if drive.fixings.bolts.count:
        columns = pattern(drive.fixings)[1]
        frame_held = (columns[-1] - columns[0]) >= HELD_SPAN * part.width
    half = drive.motor.bolt_circle / 2 * np.sin(np.pi / drive.motor.bolts.count)
    motor_held = 2 * half >= HELD_SPAN * part.width
    at_frame, at_motor = part is drive.mount.segments[0], part is drive.mount.segments[-1]
    return int(frame_held or not at_frame) + int(motor_held or not at_motor)


def _decay(drive: Drive, part: Segment) -> Number:
    material = drive.mount.material
    e, g = material.elastic_modulus, material.shear_modulus
    j = section.rectangle_torsion_constant(part.width, part.thickness)
    cw = section.flat_bar_warping_constant(part.width, part.thickness)
    return warping.warping_decay(g, j, e, cw)


def _bimoment(drive: Drive, part: Segment, torque: Number) -> Number:
    ends = held_ends(drive, part)
    if ends == 0:
        return 0.0
    held = warping.bimoment_held_held if ends == 2 else warping.bimoment_held_free
    return segment.partly_held_bimoment(
        held(torque, _decay(drive, part), part.length), drive.mount.warping_held
    )


def _moduli(drive: Drive, loads: Loads) -> tuple[Number, Number]:
    """Give elastic and shear modulus for each case: the creep values while a load is held."""
    m = drive.mount.material
    if len(loads.groups) == 1:
        held = loads.groups[0] == "hold"
        return (
            (m.creep_modulus, m.creep_shear_modulus)
            if held
            else (m.elastic_modulus, m.shear_modulus)
        )
    held_rows = np.array([[g == "hold"] for g in loads.groups])
    return (
        np.where(held_rows, m.creep_modulus, m.elastic_modulus),
        np.where(held_rows, m.creep_shear_modulus, m.shear_modulus),
    )


def displacements_of(drive: Drive, loads: Loads) -> tuple[Displacement, ...]:
    """Give the movement at the sprocket from each segment, the joint and the frame member.

    The motor's own weight is left out: it hangs there when the sprockets are lined up.
    """
    parts = model_parts(drive, replace(loads, weight=(0.0, 0.0, 0.0)))
    return softened(drive, parts, *pulled.factors(drive, "beams", as_tested))


def as_tested(test: PullTest) -> tuple[Drive, pulled.Parts]:
    """Give the drive as it was pulled, and how beams have it move."""
    return test.tested, lambda drive, loads: model_parts(
        drive, replace(loads, weight=(0.0, 0.0, 0.0))
    )


def model_parts(drive: Drive, loads: Loads) -> tuple[Displacement, ...]:
    """Give the movement of every part as the model has it."""
    e, g = _moduli(drive, loads)
    parts = [_segment(drive, loads, s, e, g) for s in drive.mount.segments]
    plane = drive.mount.plane
    if plane.bolts:
        force, moment = wrench(drive, loads, plane.centre)
        move, turn = joint.give(drive, plane, force, moment, e)
        parts.append(_carry(drive, "bolted joint", plane.centre, move, turn))
    if drive.frame.span is not None:
        parts.append(frame_part(drive, loads))
    return tuple(parts)


def weight_only(loads: Loads) -> Loads:
    """Give the loads with nothing but the motor's weight left."""
    return replace(
        loads, shaft_load=NO_PULL, outboard=0.0, stator_torque=NO_TORQUE, torque=NO_TORQUE
    )


def with_shaft(drive: Drive) -> bool:
    """Tell whether the frame member runs with the shaft: a tube along z that the mount is clamped on.

    Its own x, y, z are then the drive's z, y and the reverse of x.
    """
    clamp = drive.mount.clamp
    return clamp is not None and clamp.along == "z"


def on_the_frame(drive: Drive, loads: Loads) -> tuple[tuple[Number, ...], tuple[Number, ...]]:
    """Give force and moment on the frame member at the main bolt plane, about its own axes (SI)."""
    force, moment = wrench(drive, loads, drive.mount.plane.centre)
    if not with_shaft(drive):
        return force, moment
    return (
        (force[2], force[1], rigid.reversed_force(force[0])),
        (moment[2], moment[1], rigid.reversed_moment(moment[0])),
    )


def frame_part(drive: Drive, loads: Loads) -> Displacement:
    """Give the movement at the sprocket from the frame member, loaded at the main bolt plane."""
    plane = drive.mount.plane
    move, turn = frame_member.give(drive.frame, plane, *on_the_frame(drive, loads))
    if with_shaft(drive):
        move = (layout.opposite(move[2]), move[1], move[0])
        turn = (rigid.reversed_angle(turn[2]), turn[1], turn[0])
    return _carry(drive, FRAME, plane.centre, move, turn)


def softened(
    drive: Drive, parts: Sequence[Displacement], move: Number, turn: Number
) -> tuple[Displacement, ...]:
    """Give the parts with their true give over that of the model; the frame's after a pull test only."""
    return tuple(
        p if p.name == FRAME and drive.pull_test is None
        else replace(
            p,
            move=tuple(rigid.softened_move(w, move) for w in p.move),
            turn=tuple(rigid.softened_turn(t, turn) for t in p.turn),
        )
        for p in parts
    )  # fmt: skip


def _segment(drive: Drive, loads: Loads, part: Segment, e: Number, g: Number) -> Displacement:
    force, moment = wrench(drive, loads, part.end)
    a, w, n = (AXES.index(x) for x in (part.axis, part.across, part.normal))
    sign = 1.0 if part.end[a] - part.start[a] > 0 else -1.0
    length = part.length
    move: list[Number] = [0.0, 0.0, 0.0]
    turn: list[Number] = [0.0, 0.0, 0.0]
    area = section.rectangle_area(part.width, part.thickness)
    bends = ((w, n, part.width, part.thickness), (n, w, part.thickness, part.width))
    for axis, across, breadth, depth in bends:
        handed = sign * _cross(a, across, axis)  # d x F: how the end force turns the end
        second = section.rectangle_second_moment(breadth, depth)
        pull = force[across] if handed > 0 else rigid.reversed_force(force[across])
        turn[axis] = usage.angle_sum(
            flexure.end_slope_moment(moment[axis], length, e, second),
            flexure.end_slope_force(pull, length, e, second),
        )
        bend = usage.length_sum(
            flexure.end_deflection_moment(moment[axis], length, e, second),
            flexure.end_deflection_force(pull, length, e, second),
        )
        shear = segment.shear_movement(force[across], length, g, area)
        move[across] = segment.bent_and_sheared(
            bend, shear, Value(handed, "axes", "derived", "right-handed axes")
        )
    turn[a] = _twist(drive, part, moment[a], e, g)
    return _carry(drive, part.name, part.end, tuple(move), tuple(turn))


def _twist(drive: Drive, part: Segment, torque: Number, e: Number, g: Number) -> Number:
    """Give the twist of a segment: between free ends and ends held as far as their bolts span."""
    j = section.rectangle_torsion_constant(part.width, part.thickness)
    free = flexure.twist_free(torque, part.length, g, j)
    ends = held_ends(drive, part)
    if ends == 0:
        return free
    cw = section.flat_bar_warping_constant(part.width, part.thickness)
    decay = warping.warping_decay(g, j, e, cw)
    held = warping.twist_held_held if ends == 2 else warping.twist_held_free
    return segment.partly_held_twist(
        free, held(torque, part.length, g, j, decay), drive.mount.warping_held
    )


def _cross(i: int, j: int, k: int) -> float:
    """Give the sign of unit vectors i x j along k."""
    return {(0, 1, 2): 1.0, (1, 2, 0): 1.0, (2, 0, 1): 1.0}.get((i, j, k), -1.0)


def _carry(drive: Drive, name: str, place: Any, move: Any, turn: Any) -> Displacement:
    """Carry the movement of a part's end at ``place`` to the sprocket: d = w + theta x r."""
    zero = (0.0, 0.0, drive.shaft.face_overhang)
    arm = tuple(_arm(zero[i], place[i]) for i in range(3))
    at_sprocket = tuple(
        rigid.carried(
            move[i], turn[(i + 1) % 3], arm[(i + 2) % 3], turn[(i + 2) % 3], arm[(i + 1) % 3]
        )
        for i in range(3)
    )
    return Displacement(name=name, move=at_sprocket, turn=tuple(turn))


def unit_load(
    angle: Number, torque: Number = 0.0, group: str = "pull", outboard: Number = 0.0
) -> Loads:
    """Give a shaft load of one newton along a chain angle, with a stator torque (N*m).

    ``outboard`` is the force of an outboard bearing against it, in newtons.
    """
    return Loads(
        names=("unit",), groups=(group,), current=0.0, torque=0.0, stator_torque=torque,
        starting_factor=1.0, effective_pull=1.0, tight_side_tension=1.0, slack_side_tension=0.0,
        steady_tension=1.0, shaft_load=Value(1.0, "unit load", "derived", "one newton"), pull_angle=angle, weight=(0.0, 0.0, 0.0),
        outboard=outboard,
    )  # fmt: skip
