"""Round spacers between two parallel plates: where they are, and what they may not touch."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations

from ..fields import may, need
from ..mounting import Spacer
from ..worked import Value
from ._parts import Parts, Picker

FIELDS = (
    need("mount.spacers", "integer", "number of spacers: 2 or 4", "2", "4", "4"),
    need("mount.spacer_diameter", "length", "outer diameter of a spacer", "3 mm", "200 mm", "16 mm"),
    need("mount.spacers_across", "length", "outermost spacer centres, across (0 for one above the other)", "0 mm", "2 m", "90 mm"),
    may("mount.spacers_along", "length", "lower to upper spacer centres (0 for two side by side)", "0 mm", "2 m", ("0 mm", "0 mm", "0 mm"), "two side by side assumed"),
    may("mount.spacers_above", "length", "middle of the spacers above the shaft axis (below nothing: under it)", "-1 m", "1 m", ("0 mm", "0 mm", "0 mm"), "about the shaft axis assumed"),
    may("mount.spacer_bore", "length", "bore of a spacer when it is a tube; the plates have the same hole", "1 mm", "190 mm", example="6.6 mm"),
    may("mount.spacer_modulus", "stress", "elastic modulus of the spacers; that of the mount's own material when left out", "1 MPa", "400 GPa", example="205 GPa"),
    may("mount.spacer_yield", "stress", "yield strength of the spacers; that of the mount's own material when left out", "1 MPa", "2000 MPa", example="300 MPa"),
    may("mount.body_diameter", "length", "diameter of the motor's body, which the spacers must clear", "10 mm", "1 m", example="70 mm"),
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """What bounds the places of the spacers, m about the shaft axis."""

    half: float  # of the width
    low: float  # lower end of the plates
    frame: float | None  # top of a frame member between the plates
    opening: float | None
    washers: tuple[tuple[float, float], ...]  # of the frame bolts


def spacers(picker: Picker, parts: Parts, gap: Value) -> tuple[Spacer, ...]:
    """Give the spacers; one of the mount's own material keeps its modulus held for hours.

    The plate model is laid out with the spacers' likely modulus, whatever end the plates' stands at.
    """
    diameter = picker.number("mount.spacer_diameter")
    bore = picker.optional("mount.spacer_bore") or Value(0.0, "spacer", "derived", "solid")
    if bore >= 0.95 * diameter:
        picker.mistake("mount.spacer_bore", "leaves no wall", "it must be smaller than the spacer")
    modulus = picker.optional("mount.spacer_modulus") or parts.material.creep_modulus
    limit = picker.optional("mount.spacer_yield") or parts.material.yield_strength
    return tuple(
        Spacer(
            across=x,
            along=y,
            length=gap,
            diameter=diameter,
            bore=bore,
            elastic_modulus=modulus,
            poissons_ratio=parts.material.poissons_ratio,
            yield_strength=limit,
        )
        for x, y in _places(picker)
    )


def _places(picker: Picker) -> list[tuple[float, float]]:
    count, across, along, above = (
        float(picker.number(f"mount.{key}"))
        for key in ("spacers", "spacers_across", "spacers_along", "spacers_above")
    )
    columns = [-across / 2, across / 2] if across else [0.0]
    rows = [above - along / 2, above + along / 2] if along else [above]
    if len(columns) * len(rows) != count:
        wanted = {2.0: "2 need spacers_across or spacers_along above zero, not both",
                  4.0: "4 need spacers_across and spacers_along above zero"}  # fmt: skip
        picker.mistake("mount.spacers", wanted.get(count, "expected 2 or 4"))
    return [(x, y) for y in rows for x in columns]


def refuse(picker: Picker, parts: Parts, found: tuple[Spacer, ...], room: Room) -> None:
    """Record a mistake for everything the spacers run into or leave."""
    for key, words in _wrongs(picker, parts, found, room):
        picker.mistake(key, words)


def _wrongs(
    picker: Picker, parts: Parts, found: tuple[Spacer, ...], room: Room
) -> Iterator[tuple[str, str]]:
    motor, fixings = parts.motor, parts.fixings
    body = picker.optional("mount.body_diameter")
    rounds = [("the motor's bore", float(motor.bore)), ("the motor's body", float(body or 0.0)),
              ("the opening of the second plate", room.opening or 0.0)]  # fmt: skip
    turns = [math.pi * (2 * i + 1) / motor.bolts.count for i in range(motor.bolts.count)]
    ring = [
        (motor.bolt_circle / 2 * math.sin(a), -motor.bolt_circle / 2 * math.cos(a)) for a in turns
    ]
    washers = (("a motor bolt", ring, motor.bolts.thread.washer_diameter),
               ("a frame bolt", room.washers, fixings.washer_diameter))  # fmt: skip
    for part in found:
        x, y, radius = part.across, part.along, float(part.diameter) / 2
        for name, diameter in rounds:
            if diameter and math.hypot(x, y) < radius + diameter / 2:
                yield "mount.spacers_across", f"puts a spacer into {name}, {1000 * diameter:.1f} mm"
        for name, places, washer in washers:
            if any(math.hypot(x - a, y - b) < radius + float(washer) / 2 for a, b in places):
                yield "mount.spacers_across", f"puts a spacer onto the washer of {name}"
        if abs(x) + radius > room.half:
            yield "mount.spacers_across", "puts a spacer over the edge of the plates"
        if y - radius < room.low:
            yield "mount.spacers_above", "puts a spacer below the end of the plates"
        if room.frame is not None and y - radius < room.frame:
            yield "mount.spacers_above", "puts a spacer into the frame between the plates"
    for one, two in combinations(found, 2):
        if math.hypot(one.across - two.across, one.along - two.along) < one.diameter:
            yield "mount.spacer_diameter", "makes the spacers run into one another"
