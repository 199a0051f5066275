"""The jack screw that bears on the mount beside slotted frame bolts."""

from __future__ import annotations

from .. import cards
from ..model import JackScrew
from ..picking import Picker
from .motor import unmarked

KEY = "fixings.jack_screw"
PARTS = (f"{KEY}_class", f"{KEY}_tip", f"{KEY}_off")
# Tip over thread diameter: flat points of ISO 4026, M3 to M16 (from memory); a bolt's own end is larger.
TIP = (0.6, 0.67, 0.8)


def jack_screw(picker: Picker, slotted: bool) -> JackScrew | None:
    """Give the jack screw, None where none is named; with round holes it is a mistake."""
    thread: cards.Thread | None = picker.card(KEY) if picker.knows(KEY) else None
    if thread is None:
        for key in PARTS:
            if key in picker.given:
                picker.mistake(key, "belongs to a jack screw, and none is named", f"give {KEY}")
        return None
    if not slotted:
        picker.mistake(KEY, "is for slotted holes; in round ones the bolts themselves stop the mount",
                       'leave it out, or set fixings.holes = "slotted"')  # fmt: skip
    named = picker.card(PARTS[0])
    otherwise = unmarked(thread)
    if named is None:
        picker.words[PARTS[0]] = otherwise
    low, likely, high = (share * thread.diameter for share in TIP)
    return JackScrew(
        thread=thread, grade=cards.bolt_class(named.id if named else otherwise, float(thread.diameter)),
        tip_diameter=picker.between(
            PARTS[1], low, likely, high, "flat points of ISO 4026, 0.6 to 0.8 of the thread (from memory)"
        ),
        off=picker.number(PARTS[2]),
    )  # fmt: skip
