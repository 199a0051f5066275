"""How the mount answers its loads: by the plate model behind the drive, or by the section route."""

from __future__ import annotations

from . import plate_response, structure
from .case import Loads, Response, SectionForces
from .formulas import give, rigid, usage
from .model import Drive, Number


def solve(drive: Drive, loads: Loads) -> Response:
    """Give forces in the cuts, movement at the sprocket and bolt forces for the loads."""
    if drive.plates is None:
        return structure.solve(drive, loads)
    return plate_response.solve(drive, loads)


def sections(drive: Drive, loads: Loads) -> tuple[SectionForces, ...]:
    """Give the forces in every cut of the mount, in the cut's own axes."""
    if drive.plates is None:
        return structure.sections(drive, loads)
    return plate_response.sections(drive, loads)


def softness(drive: Drive, angle: Number) -> Number:
    """Give the movement of the sprocket along the chain line per newton of shaft load, m/N."""
    unit = structure.unit_load(angle)
    route = structure if drive.plates is None else plate_response
    parts = (*route.displacements_of(drive, unit), structure.shaft(drive, unit))
    along = [rigid.approach(p.move[0], p.move[1], angle) for p in parts]
    total = along[0]
    for part in along[1:]:
        total = usage.length_sum(total, part)
    return give.softness(total, unit.shaft_load)
