"""Motor in a cradle: does it turn or slide under its bands, or climb the side of its seat?

Bands pull the motor down; both the cradle and the bands press on it evenly over their arcs, and
friction on the sum of that pressure holds the stator's torque and a push along the shaft.  No rope
friction: the tension of a band stays as it was tightened.  With a pull across, the pressure moves to
one side of the seat; even pressure over half its arc, about wherever the pull points, is always there
until the motor climbs, so that much is counted.  The pull across, and the turn of the motor about the
upright (a force one way at the front band and the other way at the rear), are held by the seat's sides.
A motor that turns as well climbs sooner, by as much as friction pushes it up.
"""

from __future__ import annotations

from ..case import Case, Check, Row
from ..formulas import bands as formulas
from ..formulas import clamps, layout, tipping, torque, usage
from ..model import Drive, Number
from ..mounting import Bands
from ..structure import wrench
from ..worked import Value


def in_cradle(drive: Drive) -> bool:
    """Say that a check speaks of motors held in a cradle by bands."""
    return drive.mount.bands is not None


def middle(drive: Drive) -> Number:
    """Give where the middle of the rows is along the shaft."""
    feet = drive.motor.feet
    assert feet is not None  # ``in_cradle``
    return layout.opposite(layout.total(feet.to_face, layout.half(feet.along)))


def rows(case: Case) -> list[Row]:
    """Compare turning and sliding with all the friction, and each outer row's push with its seat."""
    drive = case.drive
    bands = drive.mount.bands
    assert bands is not None
    force, moment = wrench(drive, case.loads, (0.0, 0.0, middle(drive)))
    tension = formulas.band_tension(drive.face.preload, bands.kept)
    pressed = clamps.clamp_force(bands.number, formulas.end_pulls(bands.wrap), tension)
    friction = drive.face.friction
    return [
        _turns(bands, friction, pressed, force, moment),
        *_climbs(bands, pressed, force, moment),
    ]


def _turns(
    bands: Bands,
    friction: Value,
    pressed: Number,
    force: tuple[Number, ...],
    moment: tuple[Number, ...],
) -> Row:
    """Compare the friction asked at the motor's surface with that of the summed pressure."""
    seat = clamps.contact_spread(layout.half(bands.seat_angle))
    spread = formulas.mean_spread(clamps.contact_spread(layout.half(bands.wrap)), seat)
    slip = clamps.surface_slip(tipping.size_of(moment[2]), bands.diameter, force[2])
    asked = clamps.slip_and_pull(slip, friction, seat, tipping.pulled_only(force[1]))
    hold = clamps.friction_hold(friction, clamps.pressure_sum(pressed, spread))
    return Row(station="motor turns and slides in its cradle", demand=asked, capacity=hold,
               quantity="force", utilisation=usage.utilisation(asked, hold))  # fmt: skip


def _climbs(
    bands: Bands, pressed: Number, force: tuple[Number, ...], moment: tuple[Number, ...]
) -> list[Row]:
    """Compare the push across at the first and the last row with what presses the motor down there.

    A single band is two rows, each pressed by half of it.
    """
    count, squares = bands.rows, bands.square_sum
    seat = formulas.counted_seat(bands.seat_angle)
    hold = formulas.climb_held(pressed, count, seat)
    tips = torque.reversed_torque(moment[0])  # a lift in front of the middle turns about -x
    found = []
    for words, place in (("front", bands.place), ("rear", layout.opposite(bands.place))):
        side = formulas.row_force(force[0], moment[1], count, place, squares)
        lift = formulas.row_force(force[1], tips, count, place, squares)
        asked = formulas.climb_asked(side, lift, moment[2], bands.diameter, pressed, count, seat)
        found.append(
            Row(station=f"motor climbs the side of its seat, {words}", demand=asked, capacity=hold,
                quantity="force", utilisation=usage.utilisation(asked, hold))
        )  # fmt: skip
    return found


CHECKS = (
    Check(
        name="band_grip", part="bands round the motor", kind="grip",
        groups=("pull", "reverse", "bump", "bump alone"),
        leads_to="chain off", sees="the motor has turned or crept in its cradle: the cable is pulled, the lining rubbed, the chain goes slack",
        applies=in_cradle, rows=rows,
    ),
)  # fmt: skip
