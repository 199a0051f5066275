"""What the changes share: the types, sizes as text, the torque that suits a bolt."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from ..drivefile import DriveFile, rewritten
from ..held import BoltSet
from ..model import Drive
from ..resolve import resolve
from ..resolve.preload import Kept, assembly_torque

# What a change costs, cheapest first.
FREE, HAND, PARTS, WORKSHOP = range(4)
COSTS = ("free", "hand tools", "some parts", "workshop")
COST_WORDS = (
    "nothing: a setting",
    "under an hour with hand tools",
    "parts for little money",
    "a workshop, or a bigger part",
)

TORQUE = "fixings.tightening_torque"
TO_SUIT = "to suit"  # in its place: what suits the bolts and the mount when all changes are made
Keys = Mapping[str, Any]  # key -> value as it stands in TOML; None takes the key out
Offer = tuple[str, Keys]


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One kind of change; ``offers`` gives the words and the keys of every size tried."""

    name: str
    cost: int  # index into COSTS
    tools: str
    offers: Callable[[DriveFile, Drive], Iterator[Offer]]  # nothing where it does not apply
    caution: str = ""

    def edits(self, file: DriveFile, drive: Drive) -> list[Edit]:
        """Give what could be done to this drive."""
        return [Edit(change=self, words=w, keys=dict(k)) for w, k in self.offers(file, drive)]


@dataclass(frozen=True, kw_only=True)
class Edit:
    """One change at one size: what to do, and the keys that say it."""

    change: Change
    words: str
    keys: Keys

    def meets(self, other: Edit) -> bool:
        """Tell whether the two cannot go together: the same kind of change, or keys at odds."""
        shared = self.keys.keys() & other.keys.keys()
        return self.change.name == other.change.name or any(
            self.keys[k] != other.keys[k] for k in shared
        )

    @property
    def suits(self) -> bool:
        """Whether the frame bolts are tightened to suit what they and the mount then are."""
        return self.keys.get(TORQUE) == TO_SUIT


def made(file: DriveFile, edits: Iterable[Edit]) -> tuple[DriveFile, dict[str, Any]]:
    """Make changes together: the edited file, and its keys as they stand in TOML.

    Raises
    ------
    InputError
        where the reader refuses them.
    """
    keys: dict[str, Any] = {}
    for edit in edits:
        keys |= edit.keys
    if keys.get(TORQUE) == TO_SUIT:
        del keys[TORQUE]
        torque = resolve(rewritten(file, keys)).fixings.assembly_torque
        keys[TORQUE] = newton_metres(float(torque))
    keys = {k: v for k, v in keys.items() if v is not None or k in file.given}
    edited = rewritten(file, keys)
    gone = {k: None for k in file.given if k not in edited.given}
    return edited, keys | gone


def speaker(drive: Drive) -> Callable[[float], str]:
    """Give what writes a length in the units of the drive's answer."""
    from .. import units

    return lambda metres: units.show(float(metres), "length", drive.system)


def mm(metres: float) -> str:
    """Write a length as a file holds it."""
    return f"{1000 * float(metres):.4g} mm"


def floor_mm(metres: float) -> float:
    """Round a length down to whole millimetres."""
    return math.floor(1000 * float(metres) + 1e-6) / 1000


def newton_metres(torque: float) -> str:
    """Write a tightening torque, rounded down to two digits."""
    size = 10.0 ** (math.floor(math.log10(torque)) - 1)
    return f"{math.floor(torque / size + 1e-9) * size:.4g} N*m"


def torque_for(bolts: BoltSet, kept: Kept | None = None) -> str:
    """Give the torque that suits bolts: 90 % of yield, or what lies under the heads keeps."""
    return newton_metres(float(assembly_torque(bolts, kept, bolts.thread.clearance_hole)))


def given(file: DriveFile, key: str) -> Any:
    """Give the value of a key, or None where it is not in the file."""
    found = file.given.get(key)
    return None if found is None else found.value


def knows(file: DriveFile, key: str) -> bool:
    """Tell whether the form of the file has a key."""
    from ..drivefile import fields_for

    return key in fields_for(str(given(file, "mount.form")))


def has_frame_bolts(drive: Drive) -> bool:
    """Tell whether the mount is bolted to the frame."""
    return bool(drive.fixings.bolts.count)


def family(drive: Drive) -> str:
    """Give the family of the mount's material."""
    return str(drive.mount.material.card.family)


METAL = ("steel", "aluminium", "iron")
