"""Moments and forces of pull and weight on the driven shaft.

Which way the weight points, and whether it hangs over the same bearing as the sprocket, is not
asked for: moments, and forces on a bearing, are added in size, at one place.  That is
never less than the largest moment along the shaft.  Side forces of wheels are not in it.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from ..case import Case
from ..formulas import rigid, statics
from ..held import DrivenShaft, ShaftWeight
from ..model import Number
from . import _torque


def pull_moment(shaft: DrivenShaft, pull: Number) -> Number:
    """Give the largest bending moment of the chain's pull, N*m."""
    return _moment(shaft, pull, shaft.overhang, shaft.between)


def weight_moment(shaft: DrivenShaft, force: Number) -> Number:
    """Give the largest bending moment of the weight, N*m; None without one."""
    if shaft.weight is None:
        return None
    return _moment(shaft, force, shaft.weight.overhang, shaft.weight.between)


def moment(case: Case, shaft: DrivenShaft) -> Number:
    """Give the bending moment of pull and weight, N*m; in a bump with the knock on the weight."""
    pulled = pull_moment(shaft, _torque.driven_pull(case))
    if shaft.weight is None:
        return pulled
    return statics.added_moments(pulled, weight_moment(shaft, weight_force(case, shaft.weight)))


def weight_force(case: Case, weight: ShaftWeight) -> Number:
    """Give the weight in every load case, N: at rest, or in a bump."""
    knocked = statics.knocked_weight(weight.force, case.drive.duty.bump)
    bumped = ["bump" in group for group in case.loads.groups]
    if len(bumped) == 1:
        return knocked if bumped[0] else weight.force
    return np.where(np.array(bumped)[:, None], float(knocked), float(weight.force))


def _moment(shaft: DrivenShaft, force: Number, place: Number, between: bool) -> Number:
    if not between:
        return statics.overhung_moment(force, place)
    far = statics.far_reaction(force, place, shaft.bearing_span)
    return statics.moment_between(far, place, shaft.bearing_span)


def reactions(case: Case, shaft: DrivenShaft) -> tuple[tuple[str, Number], tuple[str, Number]]:
    """Give the chain's force on the bearing beside the sprocket and on the other, with words, N."""
    pull, place, span = _torque.driven_pull(case), shaft.overhang, shaft.bearing_span
    near: Callable[..., Number]
    far: Callable[..., Number]
    if shaft.between:
        near, far = statics.near_reaction, statics.far_reaction
    else:
        near, far = statics.front_bearing_reaction, statics.rear_bearing_reaction
    return ("bearing beside the sprocket", near(pull, place, span)), ("other bearing", far(pull, place, span))  # fmt: skip


def carried(case: Case, shaft: DrivenShaft) -> Number:
    """Give the weight's force on the bearing nearest to it, N; None without one.

    Either bearing may be that one, so both are taken to carry it.
    """
    if shaft.weight is None:
        return None
    near = statics.near_reaction if shaft.weight.between else statics.front_bearing_reaction
    return near(weight_force(case, shaft.weight), shaft.weight.overhang, shaft.bearing_span)


def with_weight(case: Case, shaft: DrivenShaft, reaction: Number) -> Number:
    """Give the force on a bearing of chain and weight added in size, N."""
    weight = carried(case, shaft)
    return reaction if weight is None else rigid.sum_of_two(reaction, weight)
