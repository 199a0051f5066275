"""What made a part look like this, as text and as JSON-ready data."""

from __future__ import annotations

import math
from typing import Any

from rich.console import Console

from .. import units
from ..failure import Alone, Cause, Failure
from ..failure_signs import NEXT, SAYS, TO_YIELD
from .jam_text import speed_words
from .quantities import number, quantity
from .table import heading, new_table
from .words import amperes, shown, upto

DOES = {
    "bent": "bends it", "snapped": "breaks it", "sheared": "shears it", "stripped": "strips it",
    "slipped": "makes it slip", "thrown": "throws the chain", "worn": "wears it before its time",
    "cracked": "cracks it", "crushed": "crushes it",
}  # fmt: skip
INPUTS = 5  # assumed inputs listed for one check
MISSING = (
    "Nothing this drive is known to do comes near. Look for what is not in the file: a crash or a drop, something that "
    "stopped it dead, a crack or notch that was there before, or a wrong number in the file."
)
LASTING = (
    "By these numbers it should have lasted. Look for what is not in the file: a notch, rust or heat at the crack's "
    "beginning, shaking, a chain far tighter than told, or a wrong number in the file."
)
BATTERY = "The current set is a battery limit: the motor's own current may be far higher, and with it all of this. "


def write(found: Failure, console: Console) -> None:
    """Print the conclusion, then every check behind it, what the look says and what to look at."""
    first = found.causes[0]
    console.print(f"{_reached(found, first)} {_conclusion(found, first)}{_tired(found)}\n")
    console.print(_table(found))
    for cause in found.causes:
        _inputs(cause, found, console)
    says, source = SAYS[found.look]
    heading(console, f"\nWhat '{found.look}' says")
    console.print(f"{says} ({source}).")
    if found.look == "snapped" and any(c.check.name in TO_YIELD for c in found.causes):
        console.print(
            "Checks of shaft, mount and frame count to where it stays bent; to snap a sound one takes more."
        )
    current = found.drive.current
    battery = BATTERY if current.kind == "battery" and current.motor_limit is None else ""
    console.print(
        f"\n{battery}Likely values, no design factor: what happened, not what is safe. Jerk: starting factor, peak pull over "
        f"steady pull at a start; this drive has {found.jerk_now:.1f} at {found.current:g} A. Dead stop: the driven side "
        f"held fast, the rotor running on. {_life_words(found)}"
    )
    console.print(
        f"\nLook next: {NEXT[found.look]} Then: mountlimit why {found.file} {first.check.name} --at {found.current:g}A"
        f"{' --likely' if first.level == 'gives' else ''}"
    )
    console.print(
        "Do not run the drive on the broken or bent part, nor straighten it and run on: motor off, supply unplugged."
    )


def _tired(found: Failure) -> str:
    """Say which line counts where the break itself shows that the part tired."""
    tired = [c.check.name for c in found.causes if c.check.kind == "life"]
    if found.look != "snapped" or not tired or found.causes[0].check.kind == "life":
        return ""
    return f" With rings (beach marks) on the break it tired: then the row {tired[0]} counts (--looks cracked)."


def _life_words(found: Failure) -> str:
    if all(c.level == "gives" for c in found.causes):
        return ""
    return "Checks of life count pulls without their jerk: their current is the one that may go on as long as is asked for."


def _reached(found: Failure, cause: Cause) -> str:
    """Say how much of the part the set current uses."""
    what = "one pull" if cause.level == "gives" else "going on like this"
    return (
        f"At the {found.current:g} A set, {what} uses {percent(cause.used)} of what {DOES[found.look]} "
        f"({cause.check.part}, check {cause.check.name})."
    )


def _conclusion(found: Failure, cause: Cause) -> str:
    likeliest = cause.explanations[0]
    would = _would(found, cause)
    if not likeliest.within:
        return f"{_outside(found, cause)} {would}".strip()
    if likeliest.kind == "as it stands":
        return "The drive does that as it stands: its own pull is enough to explain it."
    if likeliest.kind == "input":
        return f"Most probable: {_one_input(cause.alone[0], found.drive.system)}. {would}".strip()
    if likeliest.kind == "dead stop":
        return f"Most probable: a dead stop, which the motor's own speed is enough for. {would}".strip()
    if likeliest.kind == "jerk":
        return f"Most probable: a hard start, loose chain or reversing. {would}".strip()
    return f"Most probable: several assumed inputs on their bad side together ({percent(cause.used_worst)} used). {would}".strip()


def _outside(found: Failure, cause: Cause) -> str:
    """Say what to think where nothing the drive is known to do is enough."""
    speed = _stop_speed(cause)
    if cause.level != "gives":
        return LASTING
    if found.drive.motor.speed is None and speed is not None:
        return (
            f"Its own pull does not come near. Most probable: a dead stop, if the motor turned "
            f"{speed_words(speed, found.drive.system)} or more (motor.speed is not told); if it did not, a crash, a drop, "
            "a crack that was there before, or a wrong number in the file."
        )
    return MISSING


def _would(found: Failure, cause: Cause) -> str:
    ways = []
    if cause.used < 1 and math.isfinite(cause.current):
        ways.append(
            f"{amperes(cause.current)} A at once"
            if cause.level == "gives"
            else f"{amperes(cause.current)} A held or repeated"
        )
    if cause.used < 1 and cause.jerk is not None and math.isfinite(cause.jerk):
        ways.append(f"a jerk of {cause.jerk:.1f} times the steady pull")
    if speed := _stop_speed(cause):
        ways.append(f"a dead stop from {speed_words(speed, found.drive.system)}")
    return f"What would do it: {', or '.join(ways)}." if ways else ""


def _stop_speed(cause: Cause) -> float | None:
    speed = None if cause.stop is None else cause.stop.gives
    return None if speed is None or math.isinf(speed) else speed


def _table(found: Failure) -> Any:
    table = new_table()
    table.add_column("check")
    for head in (f"used at {found.current:g} A", "current that does it", "jerk", "dead stop from"):
        table.add_column(head, justify="right")
    for cause in found.causes:
        table.add_row(
            cause.check.name, f"{percent(cause.used)} (up to {percent(cause.used_worst)})", _amperes(cause, found.reach),
            _jerk(cause), _stop(cause, found),
        )  # fmt: skip
    return table


def _amperes(cause: Cause, reach: float) -> str:
    low = upto(cause.current_low, reach)
    if math.isinf(cause.current):
        return f"over {reach:.0f} A" + (f" (could be {low})" if cause.current_low <= reach else "")
    return f"{amperes(cause.current)} A ({low} to {upto(cause.current_high, reach)})"


def _jerk(cause: Cause) -> str:
    if cause.jerk is None:
        return "does not count"
    if cause.jerk <= 1:
        return "none needed"
    return "over 10" if math.isinf(cause.jerk) else f"{cause.jerk:.1f}"


def _stop(cause: Cause, found: Failure) -> str:
    if cause.stop is None:
        return "does not count"
    if cause.stop.gives == 0:
        return "no speed needed"
    speed = _stop_speed(cause)
    return "none looked at" if speed is None else speed_words(speed, found.drive.system)


def _inputs(cause: Cause, found: Failure, console: Console) -> None:
    """List the inputs that alone would have made the set current enough."""
    if cause.used >= 1:
        return
    name = cause.check.name
    if not cause.alone:
        together = "not even all together" if cause.used_worst < 1 else "but all together do"
        console.print(
            f"\n{name}: no assumed input alone makes {found.current:g} A enough, {together}."
        )
        return
    console.print(f"\n{name}: {found.current:g} A would be enough")
    for alone in cause.alone[:INPUTS]:
        console.print(f"  if {_one_input(alone, found.drive.system)}")
    if len(cause.alone) > INPUTS:
        console.print(f"  and {len(cause.alone) - INPUTS} more (--json)")


def _one_input(alone: Alone, system: str) -> str:
    r = alone.range
    value, likely = (
        shown(v, r.kind, system, max(abs(r.low), abs(r.high))) for v in (alone.value, r.likely)
    )
    origin = "given as a range" if r.origin == "given" else "assumed"
    if value == likely:  # a step right beside the likely value
        return f"{r.key} was a little {'over' if alone.value > r.likely else 'under'} {likely} ({origin})"
    return f"{r.key} was {value} instead of {likely} ({origin})"


def percent(share: float) -> str:
    """Write a share of use."""
    return "under 1 %" if share < 0.01 else f"{100 * share:.0f} %"


def record(found: Failure) -> dict[str, Any]:
    """Give the answer as JSON-ready data in SI."""
    says, source = SAYS[found.look]
    return {
        "schema": "mountlimit-explain-failure-1", "part": found.part, "look": found.look,
        "says": says, "says_source": source, "look_next": NEXT[found.look],
        "current": quantity(found.current, "A"), "starting_factor_now": found.jerk_now,
        "motor_speed": quantity(None if found.drive.motor.speed is None else float(found.drive.motor.speed), "rad/s"),
        "within_what_the_drive_does": found.causes[0].explanations[0].within,
        "conclusion": f"{_reached(found, found.causes[0])} {_conclusion(found, found.causes[0])}",
        "causes": [_cause(c) for c in found.causes],
    }  # fmt: skip


def _cause(c: Cause) -> dict[str, Any]:
    stop = c.stop
    return {
        "check": c.check.name, "part": c.check.part, "kind": c.check.kind, "level": c.level,
        "used_at_set": number(c.used), "used_at_bad_ends": number(c.used_worst),
        "gives": {"low": number(c.current_low), "likely": number(c.current), "high": number(c.current_high), "unit": "A"},
        "starting_factor": number(c.jerk), "starting_factor_counts": c.jerk is not None,
        "dead_stop": None if stop is None else {
            "low": number(stop.gives_low), "likely": number(stop.gives), "high": number(stop.gives_high), "unit": "rad/s",
        },
        "inputs_alone": [
            {"key": a.range.key, "value": a.value, "likely": a.range.likely, "share_of_way": a.share, "unit": _unit(a)}
            for a in c.alone
        ],
        "explanations": [{"kind": e.kind, "times": number(e.times), "within": e.within} for e in c.explanations],
    }  # fmt: skip


def _unit(alone: Alone) -> str:
    kind = units.KINDS.get(alone.range.kind)
    return "" if kind is None else kind.si
