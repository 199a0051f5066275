"""What follows from a drive: its loads, how the mount answers, and what a check gives back.

All are frozen; numbers are SI floats, or arrays of shape (load cases, currents).
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import Any, Literal

from .model import Drive, Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Loads:
    """All load cases at a set of currents, stacked: arrays broadcast to (cases, currents).

    For one case at one current every field is a plain number.
    """

    names: tuple[str, ...]
    groups: tuple[str, ...]  # "pull", "reverse", "bump", "hold", "jam" for each case
    current: Number
    torque: Number  # torque of the motor, size; in a jam that of the chain on the sprocket
    stator_torque: Number  # torque on the mount about z, with its sign
    starting_factor: Number
    effective_pull: Number  # steady, without the starting factor
    tight_side_tension: Number  # with the starting factor
    slack_side_tension: Number
    steady_tension: Number  # tight side without the starting factor
    shaft_load: Number  # both strands, with the starting factor
    pull_angle: Number
    weight: tuple[Number, Number, Number]
    outboard: Number = 0.0  # force of the outboard bearing on the shaft, against the pull


@dataclass(frozen=True, slots=True, kw_only=True)
class Give:
    """Movement along the chain per newton of pull, m/N: at the sprocket and at an outboard bearing."""

    sprocket: Number  # an outboard bearing helping, without its gap
    outboard: Number = None  # there, per newton at the sprocket, the bearing away
    back: Number = None  # what one newton of the bearing takes back there


@dataclass(frozen=True, slots=True, kw_only=True)
class Displacement:
    """Movement of one elastic part's far end carried to the sprocket, all about the drive's axes."""

    name: str
    move: tuple[Number, Number, Number]
    turn: tuple[Number, Number, Number]


@dataclass(frozen=True, slots=True, kw_only=True)
class SectionForces:
    """Forces in a cut, acting on the side away from the motor."""

    normal: Number
    shear_across: Number
    shear_normal: Number
    torque: Number
    moment_across: Number  # bends the thickness
    moment_normal: Number  # bends the width
    bimoment: Number


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltForces:
    """Tension and shear of every frame bolt, plane by plane.

    ``net_pull`` is each bolt's share of what pulls its plane off the frame; the rest of its tension
    is met by contact elsewhere in the joint and takes no friction away from the whole.
    """

    tension: tuple[Number, ...]
    net_pull: tuple[Number, ...]
    shear: tuple[Number, ...]
    shear_first: tuple[Number, ...]
    shear_second: tuple[Number, ...]
    contacts: tuple[tuple[Number, Number, Number], ...]  # (push, place along first, along second)


@dataclass(frozen=True, slots=True, kw_only=True)
class Pulled:
    """Tension (pulling apart above nothing) and shear of one fastener."""

    tension: Number
    shear: Number


class Response:
    """What the mount does under the loads; each part is worked out when it is first asked for.

    A part that rests on reactions raises ``BalanceError`` when they do not close against the loads.
    """

    def __init__(self, **parts: Callable[[], Any]) -> None:
        """Take how each part is worked out, by its name; a part left out is empty."""
        self._parts = parts

    def _part(self, name: str) -> Any:
        return self._parts[name]() if name in self._parts else ()

    @cached_property
    def sections(self) -> tuple[SectionForces, ...]:
        """Forces in every cut."""
        return tuple(self._part("sections"))

    @cached_property
    def displacements(self) -> tuple[Displacement, ...]:
        """Movement at the sprocket, part by part."""
        return tuple(self._part("displacements"))

    @cached_property
    def bolts(self) -> BoltForces:
        """Tension and shear of the frame bolts."""
        found: BoltForces = self._part("bolts")
        return found

    @cached_property
    def balance(self) -> Number:
        """Largest unbalanced force over the applied force."""
        return self._part("balance")

    @cached_property
    def plates(self) -> Any:
        """The plate model under these loads (``plate_reading.Settled``), or None."""
        return self._part("plates") or None

    @cached_property
    def motor_bolts(self) -> tuple[Pulled, ...]:
        """Tension and shear at the motor bolts, by the plate model."""
        return tuple(self._part("motor_bolts"))

    @cached_property
    def screws(self) -> tuple[Pulled, ...]:
        """Tension and shear of the seams' fasteners."""
        return tuple(self._part("screws"))

    @cached_property
    def rods(self) -> tuple[Number, ...]:
        """Tension of the struts."""
        return tuple(self._part("rods"))

    @cached_property
    def welds(self) -> tuple[tuple[tuple[Number, ...], tuple[Number, ...]], ...]:
        """Force and moment of the mount on every weld to the frame, in space."""
        return tuple(self._part("welds"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """The one argument of every check."""

    drive: Drive
    loads: Loads
    response: Response


def always(_: Drive) -> bool:
    """Say that a check speaks of every drive."""
    return True


def has_frame_bolts(drive: Drive) -> bool:
    """Say that a check speaks of drives whose mount is bolted to the frame."""
    return drive.fixings.bolts.count > 0


def has_face_bolts(drive: Drive) -> bool:
    """Say that a check speaks of motors bolted on by their face, not by feet."""
    return drive.mount.flat_face


LeadsTo = Literal["chain off", "no drive", "notice"]
Level = Literal["both", "safe", "gives", "continuous"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One demand against one capacity."""

    station: str
    demand: Number
    capacity: Number
    quantity: str  # unit kind of demand and capacity
    utilisation: Number  # demand over capacity, without the design factor
    level: Level = "both"
    many: bool = False  # the station stands for many places; one load case alone names its own


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """A check: what it is called, what gives, when it applies, and how to run it."""

    name: str
    part: str
    kind: Literal["strength", "stiffness", "grip", "life"]
    groups: tuple[str, ...]  # load-case groups it looks at
    leads_to: LeadsTo  # chain off or slack, no drive, or nothing but notice for a while
    sees: str
    rows: Callable[[Case], list[Row]]
    applies: Callable[[Drive], bool] = always
    choose_factor: Callable[[Drive], tuple[float, str]] | None = None

    @property
    def meets_a_jam(self) -> bool:
        """Whether a dead stop can use it up: strength or grip that a pull uses up."""
        return self.kind in ("strength", "grip") and "pull" in self.groups

    def looks_at(self, group: str) -> bool:
        """Tell whether a group of load cases counts for it."""
        return group in self.groups or (group == "jam" and self.meets_a_jam)
