"""Alignment of chain and driving sprocket under load: running, peak, and thrown."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np

from ..case import Case, Check, Level, Row
from ..formulas import alignment, chain_length, give, rigid, sprocket, tooth_jump, usage
from ..model import Number
from ..worked import Value

RUNNING_SKEW = Value(0.0017453292519943296, "policy.running_skew", "assumed",
                     "chain makers' rule above 0.5 m/s, 0.1 deg (from memory)")  # fmt: skip
RUNNING_OFFSET = Value(0.001, "policy.running_offset", "assumed",
                       "chain makers' rule above 0.5 m/s, 1 mm per metre (from memory)")  # fmt: skip
NOT_STIFF = Value(1.0, "stiffness of the chain", "assumed", "counts on the latest edge only")


RUBS = "plates rub on the teeth"


def lean(case: Case) -> tuple[Number, Number, Number]:
    """Give yaw (rad), offset off the plane (m) and approach (m) of the sprocket, summed over all parts."""
    angle = case.loads.pull_angle
    yaw = offset = near = None
    for part in case.response.displacements:
        turn = rigid.lean_along_chain(part.turn[0], part.turn[1], angle)
        u = rigid.approach(part.move[0], part.move[1], angle)
        yaw = turn if yaw is None else usage.angle_sum(yaw, turn)
        offset = part.move[2] if offset is None else usage.length_sum(offset, part.move[2])
        near = u if near is None else usage.length_sum(near, u)
    return yaw, offset, near


def skew(case: Case) -> tuple[Number, Number, Number]:
    """Give skew (rad), offset (m) and approach (m), as-built errors and bearing play included."""
    yaw, offset, near = lean(case)
    chain, shaft = case.drive.chain, case.drive.shaft
    play = usage.play_lean(shaft.bearing_play, shaft.bearing_span)
    eps = usage.chain_skew(yaw, offset, chain.centre_distance, chain.skew, chain.offset, play)
    return eps, usage.plane_offset(offset, chain.offset), near


def rub(case: Case) -> Number:
    """Give the skew at which the plates first rub on the teeth of this chain."""
    card = case.drive.chain.chain
    width = sprocket.tooth_width(card.inner_width, sprocket.width_factor(card.pitch))
    return alignment.rub_angle(alignment.side_clearance(card.inner_width, width), card.pitch)


def _parallel(case: Case) -> Number:
    """Give the angle between the shafts; the makers' rules limit it beside the offset."""
    chain, shaft = case.drive.chain, case.drive.shaft
    play = usage.play_lean(shaft.bearing_play, shaft.bearing_span)
    return usage.shaft_lean(lean(case)[0], chain.skew, play)


def _row(station: str, demand: Number, capacity: Number, quantity: str, level: Any) -> Row:
    return Row(
        station=station, demand=demand, capacity=capacity, quantity=quantity,
        utilisation=usage.utilisation(demand, capacity), level=level,
    )  # fmt: skip


def running_rows(case: Case) -> list[Row]:
    """Compare angle and offset held for hours with the running allowance (chain life)."""
    policy = case.drive.policy
    angle = policy.running_skew or RUNNING_SKEW
    share = policy.running_offset or RUNNING_OFFSET
    allowed = alignment.offset_allowed(share, case.drive.chain.centre_distance)
    return [
        _row("angle between the shafts", _parallel(case), angle, "angle", "continuous"),
        _row("offset", skew(case)[1], allowed, "length", "continuous"),
    ]


def peak_rows(case: Case) -> list[Row]:
    """Compare angle, first rub and offset at peak pull with their allowances, and with throwing."""
    policy = case.drive.policy
    rows: list[Row] = []
    eps, offset, near = skew(case)
    slack, jump = _slack(case, near), _jump(case)
    if np.ndim(case.loads.torque) or case.loads.groups[0] != "steady":
        allowed = alignment.offset_allowed(policy.peak_offset, case.drive.chain.centre_distance)
        peak = [
            _row("angle between the shafts", _parallel(case), policy.peak_skew, "angle", "safe"),
            _row(RUBS, eps, rub(case), "angle", "safe"),
            _row("offset", offset, allowed, "length", "safe"),
        ]
        rows += _only(case, ("pull", "reverse"), peak)
    return rows + _early_rows(case, eps, slack, jump) + _throw_rows(case, eps, slack, jump)


def _early_rows(case: Case, eps: Number, slack: Number, jump: Number) -> list[Row]:
    """Compare skew and slack, each by itself, with the early edge of the throw criterion.

    For the safe current: a slack or worn chain jumps while still in line, and a wide allowance of the
    user's own must not reach past where a chain may walk off.
    """
    found = [
        _row("first tip of a tooth under a plate", eps, _walk_off(case, 0), "angle", "safe"),
        _row("rollers leave their seats by slack", slack, tooth_jump.early_jump(jump), "length", "safe"),
    ]  # fmt: skip
    return _only(case, ("pull", "reverse"), found)


def _throw_rows(case: Case, eps: Number, slack: Number, jump: Number) -> list[Row]:
    """Compare with the throw criterion: walk-off by skew, tooth jump by slack; low edge by their sum.

    Skew counts at the steady peak pull (a chain must run in to walk off) except on the low edge.
    It is the best estimate of giving; where the user sets the edge himself the safe current minds it too.
    """
    edge, told = int(case.drive.policy.throw_level), case.drive.policy.throw_level.origin == "given"
    level: Level = "both" if told else "gives"
    walk = _walk_off(case, edge)
    if edge == 0:
        total = alignment.low_sum(eps, walk, slack, jump)
        row = Row(station="skew and slack together", demand=total, capacity=1.0, quantity="ratio",
                  utilisation=total, level=level)  # fmt: skip
        return _only(case, ("pull", "reverse"), [row])
    room = jump if edge == 1 else tooth_jump.late_jump(jump)
    walked = Row(station="walks off by skew", demand=eps, capacity=walk, quantity="angle",
                 utilisation=usage.utilisation(eps, walk), level=level)  # fmt: skip
    jumped = Row(station="jumps teeth by slack", demand=slack, capacity=room, quantity="length",
                 utilisation=usage.utilisation(slack, room), level=level)  # fmt: skip
    return _only(case, ("steady",), [walked]) + _only(case, ("pull", "reverse"), [jumped])


def _slack(case: Case, near: Number) -> Number:
    """Give the free length in the slack run: sag, what the mount gives, and wear."""
    chain = case.drive.chain
    give_and_sag = tooth_jump.slack_length(_approach_only(near), _sag(case), _run(case))
    links = chain_length.chain_length_in_pitches(
        chain.centre_distance, chain.chain.pitch, chain.driving_teeth, chain.driven_teeth
    )
    return usage.length_sum(
        give_and_sag, chain_length.wear_length(chain.wear, links, chain.chain.pitch)
    )


def _only(case: Case, groups: tuple[str, ...], rows: list[Row]) -> list[Row]:
    """Blank a row for load cases it does not speak of."""
    if len(case.loads.groups) == 1:
        return rows if case.loads.groups[0] in groups else []
    keep = np.array([[g in groups] for g in case.loads.groups])
    return [replace(r, utilisation=np.where(keep, r.utilisation, 0.0)) for r in rows]


def _approach_only(near: Number) -> Number:
    return np.maximum(near, 0.0) if np.ndim(near) else (near if near > 0 else 0.0)


def _geometry(case: Case) -> tuple[Number, Number]:
    chain, card = case.drive.chain, case.drive.chain.chain
    return (
        sprocket.pitch_diameter(card.pitch, chain.driving_teeth),
        sprocket.pitch_diameter(card.pitch, chain.driven_teeth),
    )


def _run(case: Case) -> Number:
    one, two = _geometry(case)
    return chain_length.span(case.drive.chain.centre_distance, two, one)


def _sag(case: Case) -> Number:
    return give.sag_depth(case.drive.chain.slack, _run(case))


def _walk_off(case: Case, edge: int) -> Number:
    chain, card = case.drive.chain, case.drive.chain.chain
    relief = sprocket.tooth_side_relief(card.pitch, chain.tooth_relief)
    rounding = alignment.edge_rounding(card.plate_thickness)
    stiff: Number = NOT_STIFF
    if edge == 2:
        stiff = alignment.stiffness_factor(chain.driving_teeth)
    pitches, share = (
        Value(band[edge], "policy.throw_level", "assumed", alignment.PROPOSAL)
        for band in (alignment.WALK_PITCHES, alignment.RIDE_SHARE)
    )
    return alignment.walk_off_angle(
        relief, rounding, pitches, card.pitch, share,
        card.inner_width, stiff,
    )  # fmt: skip


def _jump(case: Case) -> Number:
    chain, card = case.drive.chain, case.drive.chain.chain
    one, two = _geometry(case)
    wrap = chain_length.wrap_angle(chain.centre_distance, two, one)
    height = tooth_jump.tooth_height(card.pitch, card.roller_diameter, chain.driving_teeth)
    room = tooth_jump.jump_room(wrap, height, card.roller_diameter)
    ratio = tooth_jump.back_tension_ratio(chain.driving_teeth)
    engaged = tooth_jump.engaged_pitches(wrap, chain.driving_teeth)
    pull = case.loads.tight_side_tension
    back = tooth_jump.back_tension_needed(pull, ratio, engaged)
    by_tension = tooth_jump.jump_by_tension(card.mass_per_length, _run(case), back)
    return tooth_jump.jump_length(room, by_tension, card.pitch)


CHECKS = (
    Check(
        name="alignment", part="chain line", kind="stiffness", groups=("pull", "reverse", "steady"),
        leads_to="chain off", sees="it lines up when parked; at full pull the chain runs to one side, climbs the teeth and comes off",
        rows=peak_rows,
    ),
    Check(
        name="running_alignment", part="chain line", kind="life", groups=("hold",),
        leads_to="notice", sees="shiny inner plates and fast wear of chain and sprocket",
        rows=running_rows,
    ),
)  # fmt: skip
