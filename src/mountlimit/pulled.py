"""A pull by hand read back: one factor on the give of mount, joint and frame member.

The route's own movement of the drive as it was pulled is put against the reading.  Whatever the other
stiffness inputs are, the mark then moves as it was read; they only change how movement and lean
share it, and what the stator's torque does.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from . import loads as load_part
from . import shaft_line
from .case import Displacement, Loads
from .errors import InputError, Mistake
from .formulas import pull_test as formulas
from .formulas import rigid, usage
from .model import Drive, Number, PullTest
from .units import show
from .worked import Value, is_recording

Parts = Callable[[Drive, Loads], Sequence[Displacement]]  # mount, joint and frame by a route
NO_SHAFT = Value(0.0, "pull_test.stick_on", "given", "the stick lies on the motor")
HARDLY = 0.3  # of what the sprocket moves; a stick's end that moves less tells nothing


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """What one mark says."""

    key: str
    reading: Number
    own_bending: Number  # of the shaft
    model: Number  # movement of the mark by the model, shaft left out
    factor: Number
    error: Number  # of the factor, as it serves the lean


def loads_of(drive: Drive, force: Number, angle: Number) -> Loads:
    """Give the loads of a pull by hand (N) at the sprocket, the motor hanging as it does."""
    zero = 0.0
    return Loads(
        names=("pull by hand",), groups=("pull",), current=zero, torque=zero, stator_torque=zero,
        starting_factor=1.0, effective_pull=force, tight_side_tension=force, slack_side_tension=zero,
        steady_tension=force, shaft_load=force, pull_angle=angle,
        weight=load_part.weight(drive, 1.0, bumped=False),
    )  # fmt: skip


def along(parts: Sequence[Displacement], angle: Number) -> tuple[Number, Number]:
    """Give movement (m) and lean (rad) of the sprocket along the pull, summed over parts."""
    move = lean = None
    for part in parts:
        u = rigid.approach(part.move[0], part.move[1], angle)
        t = rigid.lean_along_chain(part.turn[0], part.turn[1], angle)
        move = u if move is None else usage.length_sum(move, u)
        lean = t if lean is None else usage.angle_sum(lean, t)
    return move, lean


def marks(test: PullTest, drive: Drive, parts_of: Parts) -> tuple[Mark, ...]:
    """Give what each mark that was read says of the drive as it was pulled."""
    load = loads_of(drive, test.force, test.angle)
    move, lean = along(parts_of(drive, load), test.angle)
    sag, slope = along([shaft_line.at_sprocket(drive, load)], test.angle)
    found = []
    if test.movement is not None:
        found.append(_mark(test, "pull_test.movement", test.movement, sag, move, move))
    if test.tip_movement is not None:
        turned = formulas.lean_by_ratio(lean, test.ratio_error)
        end = formulas.at_stick_end(move, turned, test.stick)
        if end < HARDLY * move:
            raise _refused(test, "pull_test.tip_movement",
                           "by the model the stick's end hardly moves along this pull", "read mark A")  # fmt: skip
        own = NO_SHAFT if test.on_motor else formulas.at_stick_end(sag, slope, test.stick)
        found.append(_mark(test, "pull_test.tip_movement", test.tip_movement, own, end, move))
    return tuple(found)


def _mark(
    test: PullTest, key: str, reading: Value, own: Number, model: Number, move: Number
) -> Mark:
    if test.likely and float(reading) <= float(own):
        bends = show(float(own), "length", "metric")
        raise _refused(
            test, key,
            f"the motor's shaft alone bends {bends} there under this pull, so nothing is left for the mount",
            "see that the scale did not slip and the mark stands on neither mount nor frame member; or pull harder",
        )  # fmt: skip
    factor = formulas.flexibility_factor(reading, own, model)
    share = formulas.share_of_movement(move, model)
    error = formulas.mark_error(test.reading_error, factor, model, test.ratio_spread, share)
    return Mark(
        key=key, reading=reading, own_bending=own, model=model, factor=factor, error=error
    )  # fmt: skip


def _refused(test: PullTest, key: str, words: str, hint: str) -> InputError:
    text = f"'{test.file.given[key].text}'"
    return InputError([Mistake(test.file.name, key, text, words, hint)])


def factor(found: Sequence[Mark]) -> Number:
    """Give the one factor of the marks read."""
    if len(found) == 1:
        return found[0].factor
    a, b = found
    return formulas.both_marks(a.factor, a.error, b.factor, b.error)


def factors(
    drive: Drive, route: str, parts_of: Callable[[PullTest], tuple[Drive, Parts]]
) -> tuple[Number, Number]:
    """Give what movement and lean of mount and joint are multiplied by; of the frame too after a test.

    ``parts_of`` gives the drive as it was pulled, fit for the route, and the route's own movement of it.
    """
    test = drive.pull_test
    if test is None:
        return drive.mount.softness, drive.mount.softness
    if route in test.known and not is_recording():
        return test.known[route]
    c = factor(marks(test, *parts_of(test)))
    found = c, formulas.lean_factor(c, test.ratio_error)
    if not is_recording():
        test.known[route] = found
    return found
