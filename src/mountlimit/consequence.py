"""What follows when a part gives, on the machine at hand, and how soon to see to it.

Rank 1 can hurt somebody at once, 2 stops the machine, 3 gives notice by noise, play or wear.  The
ranking is common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

from .case import Check, LeadsTo
from .model import Drive

TWO_WHEELS, WHEELS, STANDING, HOLDING = (
    "two wheels in line", "three wheels or more", "stands still", "holds a load",
)  # fmt: skip
UNKNOWN = ""
NOTICE = "noise, play or wear tells of it before it goes"
RANK_WORDS = {1: "can hurt you at once", 2: "stops the machine", 3: "gives notice"}

# (rank, words) by what it leads to and the machine
FOLLOWS: dict[LeadsTo, dict[str, tuple[int, str]]] = {
    "chain off": {
        TWO_WHEELS: (1, "a chain that is off or in two can lock the wheel: you fall"),
        WHEELS: (
            2,
            "no drive, no braking by the motor; a loose chain can lock an axle or lash out",
        ),
        STANDING: (2, "no drive; a loose end of the chain lashes out along its line"),
        HOLDING: (1, "nothing holds the load any more: it runs back"),
        UNKNOWN: (1, "a chain that is off can lock a wheel or let a load run back"),
    },
    "no drive": {
        TWO_WHEELS: (2, "no drive and no braking by the motor"),
        WHEELS: (2, "no drive and no braking by the motor: on a slope only the brakes hold"),
        STANDING: (2, "no drive"),
        HOLDING: (1, "nothing holds the load any more: it runs back"),
        UNKNOWN: (2, "no drive and no braking by the motor"),
    },
    "notice": dict.fromkeys((TWO_WHEELS, WHEELS, STANDING, HOLDING, UNKNOWN), (3, NOTICE)),
}


@dataclass(frozen=True, slots=True)
class Consequence:
    """What follows when a part gives: 1 first of all to see to, 3 last."""

    rank: int
    words: str


def of(check: Check, drive: Drive) -> Consequence:
    """Give what follows when a check's part gives on this drive."""
    return Consequence(*FOLLOWS[check.leads_to][drive.use.machine])
