"""How a sprocket is held: round shaft, bearing, key, flats, grip on the shaft, ring of bolts or of weld.

All are frozen; numbers are SI floats, the types of both sides of the chain.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from . import cards
from .worked import Value

Number = Any  # a float, a worked.Value, or an array that broadcasts


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundBar:
    """A round steel shaft where it is bent most: what its strength needs."""

    diameter: Value
    yield_strength: Value


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundShaft(RoundBar):
    """The same with what its fatigue needs: its sharpest change of form near there."""

    ultimate_strength: Value
    notch: str  # in words
    notch_bending: Value  # stress concentration factors there ...
    notch_torsion: Value
    notch_radius: Value  # ... and the radius at the bottom


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltSet:
    """Equal bolts: how many, which thread and class."""

    count: int
    number: Value  # the same count, knowing where it came from
    thread: cards.Thread
    grade: cards.BoltClass


@dataclass(frozen=True, slots=True, kw_only=True)
class Key:
    """A parallel key."""

    width: Number
    height: Number
    length: Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Flats:
    """One or two flats on a round shaft."""

    number: Value
    depth: Number  # of each, below the round
    length: Value  # inside the hub


@dataclass(frozen=True, slots=True, kw_only=True)
class Grip:
    """A taper bush or a clamped hub that holds by friction.

    Without ``rated_torque`` the screws are there, and their friction is worked out.
    """

    words: str  # "taper bush" or "clamp"
    rated_torque: Value | None
    screws: BoltSet | None
    preload: Value | None
    friction: Value | None
    wrap: Value | None  # of a clamp: how far the pressure spreads round the shaft


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltRing:
    """Bolts on a circle between a sprocket and its hub."""

    bolts: BoltSet
    circle: Value
    preload: Value
    friction: Value
    piloted: bool  # a shoulder of the hub takes the chain's pull


@dataclass(frozen=True, slots=True, kw_only=True)
class RingWeld:
    """A ring of fillet weld between a sprocket and its hub."""

    diameter: Value
    throat: Number
    sides: Value
    share: Value  # of the circle that is welded
    ultimate_strength: Value  # beside the weld
    correlation: Value
    family: str  # of the weaker of the two parts
    piloted: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Bearing:
    """A bearing that the file tells of; a rating that nothing tells is None."""

    words: str  # designation, or that it is unknown
    static_rating: Value | None
    dynamic_rating: Value | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ShaftWeight:
    """A steady force on a shaft: a wheel's load, the pull of a drum's rope."""

    force: Value
    overhang: Value  # to the nearest bearing
    between: bool  # it acts between the bearings


@dataclass(frozen=True, slots=True, kw_only=True)
class DrivenShaft(RoundBar):
    """The driven shaft at its bearing, or under a sprocket between two bearings."""

    overhang: Value  # sprocket to the nearest bearing
    between: bool  # the sprocket sits between the bearings
    bearing_span: Number  # None where it is not told
    dead: bool  # an axle that stands still: its bearings sit in the hub, it carries no torque
    weight: ShaftWeight | None
    fatigue: RoundShaft | None  # the same shaft with its notch, where the file tells of it
