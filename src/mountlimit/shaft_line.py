"""The motor shaft on its two bearings, or on three: deflection, moments and bearing forces.

A third, outboard bearing beyond the sprocket takes part of the pull (``Loads.outboard``).  It acts
along the chain line only; what a knock on the motor puts on it is left out.
"""

from __future__ import annotations

import numpy as np

from .case import Displacement, Loads
from .formulas import layout, outboard, rigid, section, spans, statics
from .model import Drive, Number, Shaft


def overhang(shaft: Shaft) -> Number:
    """Give the distance from the front bearing to the sprocket, m."""
    return layout.bearing_overhang(shaft.face_overhang, shaft.face_to_bearing)


def _to_outboard(shaft: Shaft) -> Number:
    assert shaft.outboard is not None
    return layout.bearing_overhang(shaft.outboard.place, shaft.face_to_bearing)


def beyond(shaft: Shaft) -> Number:
    """Give the distance from the sprocket to the outboard bearing, m."""
    assert shaft.outboard is not None
    return layout.difference(shaft.outboard.place, shaft.face_overhang)


def moments(drive: Drive, loads: Loads) -> list[tuple[str, Number]]:
    """Give the bending moments of the pull where they are largest, N*m, each with its place."""
    s, load = drive.shaft, loads.shaft_load
    if s.outboard is None:
        return [("front bearing", statics.overhung_moment(load, overhang(s)))]
    at_front = outboard.front_moment(load, overhang(s), loads.outboard, _to_outboard(s))
    return [
        ("front bearing", at_front),
        ("under the sprocket", outboard.sprocket_moment(loads.outboard, beyond(s))),
    ]


def front_reaction(drive: Drive, loads: Loads) -> Number:
    """Give the force on the motor's front bearing, N, as a size."""
    s = drive.shaft
    if s.outboard is None:
        return statics.front_bearing_reaction(loads.shaft_load, overhang(s), s.bearing_span)
    return outboard.front_reaction(
        loads.shaft_load, overhang(s), loads.outboard, _to_outboard(s), s.bearing_span
    )


def rear_reaction(drive: Drive, loads: Loads) -> Number:
    """Give the force on the motor's rear bearing, N, as a size."""
    s = drive.shaft
    if s.outboard is None:
        return statics.rear_bearing_reaction(loads.shaft_load, overhang(s), s.bearing_span)
    return outboard.rear_reaction(
        loads.shaft_load, overhang(s), loads.outboard, _to_outboard(s), s.bearing_span
    )


def at_sprocket(drive: Drive, loads: Loads) -> Displacement:
    """Give deflection and slope of the shaft at the sprocket, along the chain line."""
    s, a = drive.shaft, overhang(drive.shaft)
    rest = (s.bearing_span, s.elastic_modulus, section.round_second_moment(s.diameter))
    sag = spans.overhung_deflection(loads.shaft_load, a, *rest)
    slope = spans.overhung_slope(loads.shaft_load, a, *rest)
    if s.outboard is not None:
        b = _to_outboard(s)
        sag = layout.difference(sag, spans.overhung_deflection_beside(loads.outboard, a, b, *rest))
        back = spans.overhung_slope_inside(loads.outboard, a, b, *rest)
        slope = outboard.less_slope(slope, back)
    zero = 0.0 * np.cos(loads.pull_angle)
    along, across = (rigid.along_part, rigid.across_part)
    return Displacement(
        name="motor shaft",
        move=(across(sag, loads.pull_angle), along(sag, loads.pull_angle), zero),
        turn=(
            rigid.reversed_angle(along(slope, loads.pull_angle)),
            across(slope, loads.pull_angle),
            zero,
        ),
    )


def sag_at_outboard(drive: Drive, loads: Loads) -> Number:
    """Give how far the shaft bends towards the pull at the outboard bearing, m."""
    s, b = drive.shaft, _to_outboard(drive.shaft)
    rest = (s.bearing_span, s.elastic_modulus, section.round_second_moment(s.diameter))
    pulled = spans.overhung_deflection_beside(loads.shaft_load, overhang(s), b, *rest)
    return layout.difference(pulled, spans.overhung_deflection(loads.outboard, b, *rest))
