"""What a pull test says of a drive: how far its mount is from the model, and whether both marks agree."""

from __future__ import annotations

import math
from dataclasses import dataclass

from . import pulled, respond
from .model import Drive

FAR = 2.0  # times more or less than the model: told plainly


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """The factor on the give of mount, joint and frame, and what each mark says alone."""

    factor: float
    marks: tuple[pulled.Mark, ...]

    @property
    def apart(self) -> float:
        """How far mark B's factor is over mark A's, over what their errors explain; 0 with one mark."""
        if len(self.marks) < 2:
            return 0.0
        a, b = self.marks
        return float(b.factor - a.factor) / math.hypot(a.error, b.error)


def read(drive: Drive) -> Reading | None:
    """Give what the drive's pull test says; None without one. Raises ``InputError`` as ``pulled.marks``."""
    marks = respond.pull_marks(drive)
    if not marks:
        return None
    return Reading(factor=float(pulled.factor(marks)), marks=marks)


def notes(drive: Drive) -> tuple[str, ...]:
    """Say in words what is odd about the drive's pull test."""
    found = read(drive)
    return () if found is None else (*far_words(found), *apart_words(found))


def far_words(found: Reading) -> tuple[str, ...]:
    """Say that a mount gives far more or far less than the model."""
    c = found.factor
    if c > FAR:
        return (
            f"Pulled by hand the mount gives {c:.2g} times what the model says. Something gives that the model does not "
            "know: a loose bolt, a thin or bent frame member, a cracked weld, a loose bearing. Look for it and pull again. "
            "Or the reading is wrong: play not taken up, a mark on something that moves, another unit.",
        )
    if c < 1 / FAR:
        return (
            f"Pulled by hand the mount gives only {c:.2g} of what the model says. It is stiffer than the file tells (a "
            "brace, a thicker or wider part, another support), or the reading is wrong: the scale was not square, the mark "
            "moved along, another unit.",
        )
    return ()


def apart_words(found: Reading) -> tuple[str, ...]:
    """Say that the two marks contradict each other beyond their errors."""
    if abs(found.apart) <= 1.0:
        return ()
    a, b = (float(m.factor) for m in found.marks)
    start = (
        f"The two marks of the pull test do not agree: mark A makes the mount {a:.2g} times as soft as the model, "
        f"mark B {b:.2g} times. The mount turns about another place than the model says: "
    )
    if b > a:
        return (start + "it leans more for what it moves (a loose or prying foot, thin metal near the motor). Trust mark B "
                "and look there; the factor used lies between, so give mark B alone to be on the safe side.",)  # fmt: skip
    return (start + "it moves more for what it leans (the joint slides, the frame sways as a whole). The factor used "
            "lies between and is more likely too soft than too stiff for the lean.",)  # fmt: skip
