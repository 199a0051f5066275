"""The motor shaft on its two bearings, or on three: deflection, moments and bearing forces.

A third, outboard bearing beyond the sprocket takes part of the pull (``Loads.outboard``).  It acts
along the chain line only; what a knock on the motor puts on it is left out.
"""

from __future__ import annotations

import numpy as np

from . import units
from .case import Displacement, Loads
from .formulas import layout, outboard, rigid, section, shaft_parts, spans, statics
from .held import RoundShaft
from .model import Drive, Number, Shaft, ShaftPlace

NAME = "motor shaft"


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


def pull_on_mount(drive: Drive, loads: Loads) -> Number:
    """Give the pull that the mount feels along the chain, N: less what an outboard bearing on the frame takes."""
    third = drive.shaft.outboard
    if third is None or third.on_mount:
        return loads.shaft_load
    return rigid.sum_of_two(loads.shaft_load, rigid.reversed_force(loads.outboard))


def moments(drive: Drive, loads: Loads) -> list[tuple[str, Number, RoundShaft]]:
    """Give the bending moments of the pull where they count, N*m, each with its place and the shaft there."""
    s, load = drive.shaft, loads.shaft_load
    found: list[tuple[str, Number, RoundShaft]] = []
    if s.outboard is None:
        found.append(("front bearing", statics.overhung_moment(load, overhang(s)), s))
    else:
        at_front = outboard.front_moment(load, overhang(s), loads.outboard, _to_outboard(s))
        under = outboard.sprocket_moment(loads.outboard, beyond(s))
        found += [("front bearing", at_front, s), ("under the sprocket", under, s)]
    return [*found, *((_named(drive, p), _moment_at(drive, loads, p), p) for p in s.places)]


def _named(drive: Drive, place: ShaftPlace) -> str:
    return f"{units.show(float(place.at), 'length', drive.system)} from the motor's face"


def _moment_at(drive: Drive, loads: Loads, place: ShaftPlace) -> Number:
    """Give the bending moment of the pull at a place between front bearing and end."""
    s, third = drive.shaft, drive.shaft.outboard
    if third is not None and place.at >= s.face_overhang:
        return outboard.sprocket_moment(loads.outboard, layout.difference(third.place, place.at))
    arm = layout.difference(s.face_overhang, place.at)
    if third is None:
        return statics.overhung_moment(loads.shaft_load, arm)
    beyond_it = layout.difference(third.place, place.at)
    return outboard.front_moment(loads.shaft_load, arm, loads.outboard, beyond_it)


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


def _beam(shaft: Shaft) -> tuple[Number, Number, Number]:
    """Give span, elastic modulus and second moment; the thinnest place stands for the whole."""
    return shaft.bearing_span, shaft.elastic_modulus, section.round_second_moment(shaft.thinnest)


def at_sprocket(drive: Drive, loads: Loads) -> Displacement:
    """Give deflection and slope of the shaft at the sprocket, along the chain line."""
    s, a, rest = drive.shaft, overhang(drive.shaft), _beam(drive.shaft)
    sag = spans.overhung_deflection(loads.shaft_load, a, *rest)
    slope = spans.overhung_slope(loads.shaft_load, a, *rest)
    if s.outboard is not None:
        b = _to_outboard(s)
        sag = layout.difference(sag, spans.overhung_deflection_beside(loads.outboard, a, b, *rest))
        back = spans.overhung_slope_inside(loads.outboard, a, b, *rest)
        slope = outboard.less_slope(slope, back)
    angle = loads.pull_angle
    zero = 0.0 * np.cos(angle)
    return Displacement(
        name=NAME,
        move=(shaft_parts.sag_across(sag, angle), shaft_parts.sag_along(sag, angle), zero),
        turn=(
            rigid.reversed_angle(shaft_parts.slope_along(slope, angle)),
            shaft_parts.slope_across(slope, angle),
            zero,
        ),
    )


def sag_at_outboard(drive: Drive, loads: Loads) -> Number:
    """Give how far the shaft bends towards the pull at the outboard bearing, m."""
    s, b, rest = drive.shaft, _to_outboard(drive.shaft), _beam(drive.shaft)
    pulled = spans.overhung_deflection_beside(loads.shaft_load, overhang(s), b, *rest)
    return layout.difference(pulled, spans.overhung_deflection(loads.outboard, b, *rest))
