"""Both routes side by side: the plate model and the section route on the same drive and load case.

The plate model governs lean and bolt forces; for strength the larger stress of both governs.  Where
they differ by more than is usual the sheet says so.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from . import evaluate, plate_stress, sections
from .case import Case
from .formulas import rigid
from .model import Drive
from .worked import Value

LEAN_APART = 1.3  # factor between the routes beyond which it is said
STRESS_APART = 1.6
SMALL = 1e-9


@dataclass(frozen=True, slots=True, kw_only=True)
class Both:
    """One quantity by both routes, SI; ``sections`` has one number, or those of ends held and free."""

    name: str
    unit: str
    plates: float
    sections: tuple[float, ...]
    governs: str
    apart: float  # factor from which a difference is reported
    reason: str

    @property
    def ratio(self) -> float:
        """Plates over the section route with ends held."""
        return self.plates / self.sections[0] if abs(self.sections[0]) > SMALL else 1.0

    @property
    def disagree(self) -> bool:
        """Whether the plates lie outside the section route's numbers by more than the factor."""
        low, high = min(self.sections), max(self.sections)
        return not low / self.apart <= self.plates <= high * self.apart


def governing_route(drive: Drive) -> str:
    """Name the model that governs stiffness and bolt forces of a drive."""
    return "section route" if drive.plates is None else "plate model"


def compare(drive: Drive, current: float, pick: int) -> tuple[Both, ...]:
    """Give lean, largest stress and largest bolt tension by both routes for one load case.

    Nothing where one of the routes does not hold: no plate model, or a form without beams.
    """
    if drive.plates is None or not drive.mount.segments:
        return ()
    plated = evaluate.case_at(drive, current, pick)
    beams = [evaluate.case_at(_by_beams(drive, held), current, pick) for held in (1.0, 0.0)]
    found = (
        _both("lean of mount and joint", "rad", _lean, plated, beams, "plate model", LEAN_APART,
              "beams hold for parts long against their width, with ends wholly free or held"),
        Both(name="largest stress in the mount", unit="Pa", plates=_ring(plated), sections=(_net(plated),),
             governs="the larger of both", apart=STRESS_APART,
             reason="round the washers the plate model sees what an even section does not"),
    )  # fmt: skip
    if not drive.fixings.bolts.count:
        return found
    return (
        *found,
        _both("largest bolt tension", "N", _tension, plated, beams[:1], "plate model", STRESS_APART,
              "contact outside the bolts pries, or the bolts share otherwise than a stiff foot makes them"),
    )  # fmt: skip


def _by_beams(drive: Drive, held: float) -> Drive:
    value = Value(held, "mount.warping_held", "derived", "cross-check")
    return replace(drive, plates=None, mount=replace(drive.mount, warping_held=value))


def _both(
    name: str, unit: str, of: Callable[[Case], float], plated: Case, beams: list[Case],
    governs: str, apart: float, reason: str,
) -> Both:  # fmt: skip
    return Both(
        name=name, unit=unit, plates=of(plated), sections=tuple(of(b) for b in beams),
        governs=governs, apart=apart, reason=reason,
    )  # fmt: skip


def _lean(case: Case) -> float:
    """Give the lean along the chain line of everything but the frame member and the shaft."""
    left_out = {"frame member", "motor shaft"}
    angle = case.loads.pull_angle
    parts = [p for p in case.response.displacements if p.name not in left_out]
    return abs(sum(float(rigid.lean_along_chain(p.turn[0], p.turn[1], angle)) for p in parts))


def _net(case: Case) -> float:
    return max((float(s) for _, s in sections.stresses(case)), default=0.0)


def _ring(case: Case) -> float:
    found = plate_stress.peaks(case, sections.plane_yielding, ("ring", "line"))
    return max((float(p.stress) for p in found), default=0.0)


def _tension(case: Case) -> float:
    return max((float(t) for t in case.response.bolts.tension), default=0.0)
