"""How the mount answers its loads: by the plate model behind the drive, or by the section route."""

from __future__ import annotations

from . import plate_response, pulled, shaft_line, structure
from .case import Give, Loads, Response, SectionForces
from .formulas import give as formulas
from .formulas import outboard, rigid, usage
from .model import Drive, Number
from .worked import Value

NO_GAP = Value(0.0, "no gap", "derived", "the bearing carries")


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


def pull_marks(drive: Drive) -> tuple[pulled.Mark, ...]:
    """Give what each mark of the drive's pull test says; nothing without a test."""
    if drive.pull_test is None:
        return ()
    route = structure if drive.plates is None else plate_response
    return pulled.marks(drive.pull_test, *route.as_tested(drive.pull_test))


def give(drive: Drive, angle: Number, held: bool = False) -> Give:
    """Give the movement along the chain line per newton of pull, m/N.

    The one-sided contact of the mount is settled for the pull alone and for the pull with the
    outboard bearing against it; torque and weight are left out.  ``held`` takes the creep modulus.
    """
    group = "hold" if held else "pull"
    third = drive.shaft.outboard
    alone = structure.unit_load(angle, group=group)
    near, far = _moved(drive, alone)
    soft = formulas.softness(near, alone.shaft_load)
    if third is None:
        return Give(sprocket=soft)
    free = formulas.softness(far, alone.shaft_load)
    one = Value(1.0, "unit load", "derived", "one newton of the outboard bearing")
    against = structure.unit_load(angle, group=group, outboard=one)
    pressed = formulas.softness(_moved(drive, against)[1], against.shaft_load)
    back = outboard.taken_back(free, pressed, soft)
    taken = outboard.reaction(alone.shaft_load, free, back, NO_GAP, third.stiffness)
    helped = outboard.helped_softness(soft, taken, alone.shaft_load, free)
    return Give(sprocket=helped, outboard=free, back=back)


def _moved(drive: Drive, unit: Loads) -> tuple[Number, Number]:
    """Give the movement along the chain at the sprocket, and at the outboard bearing, m."""
    route = structure if drive.plates is None else plate_response
    mount, angle = route.displacements_of(drive, unit), unit.pull_angle
    shaft = shaft_line.at_sprocket(drive, unit)
    near = _sum([rigid.approach(p.move[0], p.move[1], angle) for p in (*mount, shaft)])
    third = drive.shaft.outboard
    if third is None:
        return near, None
    sag = shaft_line.sag_at_outboard(drive, unit)
    if third.on_mount:
        return near, sag
    beyond = shaft_line.beyond(drive.shaft)
    parts = [
        outboard.movement_beyond(
            rigid.approach(p.move[0], p.move[1], angle),
            rigid.lean_along_chain(p.turn[0], p.turn[1], angle), beyond,
        ) for p in mount
    ]  # fmt: skip
    return near, _sum([*parts, sag])


def _sum(parts: list[Number]) -> Number:
    total = parts[0]
    for part in parts[1:]:
        total = usage.length_sum(total, part)
    return total
