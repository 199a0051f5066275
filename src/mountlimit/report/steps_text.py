"""The step-up plan, as text and as JSON-ready data."""

from __future__ import annotations

import math
from typing import Any

from rich.console import Console
from rich.table import Table

from .. import units
from ..assess import CAUTIONS
from ..limits import Limit
from ..model import Drive
from ..steps import Movement, Plan, Step
from .quantities import number, quantity
from .table import heading, new_table
from .text import write_list
from .words import PLAIN, amperes

SCHEMA = "mountlimit-steps-1"
READABLE = (
    0.3e-3  # m: a witness of felt-tip or plasticine shows no less; common practice, no source
)
CLEAR = (
    "Nobody stands in line with the chain, nobody reaches in; the battery is off while you look."
)
STOP = (
    "the movement is over the column 'stop over'",
    "anything stays moved after the pull: the witness does not go back, sag or straightedge differ",
    "a paint mark across a bolt, a washer or an edge of the mount is broken: something slid",
    "there is a noise, a smell or a knock you did not have before",
)


def write(plan: Plan, console: Console) -> None:
    """Print the plan."""
    console.print(_first(plan))
    if not plan.steps:
        console.print("\nNo plan until that is mended: a step up would only find the damage.")
        return
    _danger(plan, console)
    write_list(console, "\nOnce, before the first pull", _before(plan.drive))
    heading(console, "\nThe steps")
    console.print(_table(plan))
    for line in _under_the_table(plan):
        console.print(line)
    heading(console, "\nAfter each step look at (nearest limit first)")
    console.print(_looks(plan))
    write_list(console, "Stop and go no further when", STOP)
    write_list(console, "Between the steps", _between(plan))


def _ampere(value: float) -> str:
    return f"{value:.4g} A"


def _name(limit: Limit) -> str:
    return PLAIN.get(limit.check.name, limit.check.part)


def _first(plan: Plan) -> str:
    safe, current = plan.safe, plan.drive.current
    if not plan.steps:
        return f"No step-up plan yet. {_name(safe)[0].upper()}{_name(safe)[1:]}: {plan.why_not}."
    first, last = plan.steps[0].current, plan.steps[-1].current
    count = len(plan.steps)
    words = [f"Start at {_ampere(first)} and go up in {count} pulls to {_ampere(last)}."]
    if count == 1:
        words = [f"One current only: {_ampere(last)}, at or under a safe start."]
    if plan.cut:
        words.append(
            f"That is the safe limit ({_name(safe)}); the {_ampere(plan.asked)} you want is over it, so the plan "
            f"stops there. What would raise it: mountlimit changes {plan.found.file.name}."
        )
    elif math.isfinite(safe.safe):
        words.append(f"The safe limit is {amperes(safe.safe, down=True)} A ({_name(safe)}).")
    if current.kind == "battery" and current.motor_limit is None:
        words.append(
            f"These are motor amperes. Your {float(current.set):g} A is a battery limit and does not hold them: "
            "set a limit of the motor current first."
        )
    elif float(current.set) > first:
        words.append(f"You have {float(current.set):g} A set: turn it down first.")
    return " ".join(words)


def _danger(plan: Plan, console: Console) -> None:
    heading(console, "\nWhat can hurt at once")
    console.print(f"  - {CLEAR}")
    for words in dict.fromkeys(x.consequence.words for x in plan.at_once):
        parts = [x.limit.check.part for x in plan.at_once if x.consequence.words == words]
        console.print(f"  - {', '.join(dict.fromkeys(parts))}: {words}.")
    for item in CAUTIONS[:2]:
        console.print(f"  - {item}")
    if plan.drive.use.machine == "":
        console.print("  - Tell what it moves (use.machine): what a failure does depends on it.")


def _before(drive: Drive) -> tuple[str, ...]:
    holds = (
        "a line of paint across every bolt head, washer and edge of the mount on to what it sits on"
    )
    if drive.mount.welds:
        holds = "every weld brushed clean, so that a crack or a line of rust shows"
        if drive.mount.flat_face:
            holds += "; a line of paint across the motor bolts on to the mount"
    return (
        "A run without load first. The pulls are starts from rest against the usual load, "
        "straight and with room ahead; read from the controller that the motor current was reached.",
        f"Marks: {holds}; and a line across each hub on to its shaft.",
        "Write down the sag at the middle of the slack run in mm, and the offset of the sprockets in mm against a "
        "straightedge.",
        "Along the chain: a lump of plasticine on the frame, just touching the bare teeth on the side of the "
        "driven sprocket. How deep the teeth cut in is how far it came.",
        "Along the shaft: a felt-tip fixed to the frame, just touching the sprocket's face; the gap or the mark left "
        "tells. Lean: the same at two places of the motor, or a telephone on a stand, filming. No fingers.",
        "Rock the shaft by hand, battery off: what its bearings play comes on top of the figures below.",
    )


def _table(plan: Plan) -> Table:
    system = plan.drive.system
    length = units.show(1e-3, "length", system).rsplit(" ", 1)[-1]
    table = new_table()
    table.add_column("current", justify="right", no_wrap=True)
    table.add_column("used", justify="right", no_wrap=True)
    for name in (f"along chain, {length}", f"along shaft, {length}", "lean, deg"):
        table.add_column(name, justify="right")
        table.add_column("stop over", justify="right")
    table.add_column("pull", justify="right", no_wrap=True)
    table.add_column("rest at least", justify="right")
    for s in plan.steps:
        places = 3 if length == "in" else 2
        cells = []
        for likely, high in (
            (s.likely.along_chain, s.high.along_chain),
            (s.likely.along_shaft, s.high.along_shaft),
        ):
            cells += [f"{units.convert(v, 'length', length):.{places}f}" for v in (likely, high)]
        cells += [f"{math.degrees(v):.2f}" for v in (s.likely.lean, s.high.lean)]
        table.add_row(_ampere(s.current), f"{100 * s.used:.0f} %", *cells, *_times(s))
    return table


def _times(step: Step) -> tuple[str, str]:
    pull = f"{step.pull_time:.0f} s"
    if step.rest is None:
        return pull, "-"
    return (pull, "none") if step.rest == 0 else (pull, f"{math.ceil(step.rest)} s")


def _under_the_table(plan: Plan) -> list[str]:
    held = plan.drive.current.continuous
    found = [
        "used: share of the nearest safe limit. along chain: sprocket towards the driven one; along shaft, lean: "
        "either way. Likely, and the high end of what is not known; both at a pull from rest.",
    ]
    high = plan.steps[-1].high
    if min(high.along_chain, high.along_shaft) < READABLE:
        found.append(
            f"Felt-tip and plasticine show nothing under about {units.show(READABLE, 'length', plan.drive.system)}: where 'stop over' "
            "is less, any mark you plainly see is too much."
        )
    if held is None:
        found.append(
            "rest: current.continuous is not given; pulls of a few seconds, and go on only when motor and "
            "controller are cool to the hand (battery off)."
        )
    else:
        found.append(
            f"rest: so that the mean heat is that of the {float(held):g} A held (pull time x ((I / {float(held):g} A)^2 - 1); derived, "
            "the pull of 3 s is common practice, no source). Feel motor and controller, battery off."
        )
    tires = list(dict.fromkeys(x.check.part for s in plan.steps for x in s.tires))
    if tires:
        found.append(
            f"The last pulls are over what may be repeated without end for: {', '.join(tires)} (see check)."
        )
    return found


def _looks(plan: Plan) -> Table:
    table = new_table()
    for name in ("part", "from", "used at the end", "a sign that it is giving"):
        table.add_column(name, justify="right" if name.startswith("used") else "left")
    first: dict[str, tuple[Limit, float]] = {}
    last: dict[str, float] = {}
    for s in plan.steps:
        for x in s.looks:
            first.setdefault(x.limit.check.name, (x.limit, s.current))
            last[x.limit.check.name] = x.used
    for name, (limit, current) in sorted(first.items(), key=lambda p: -last[p[0]]):
        table.add_row(
            limit.check.part, _ampere(current), f"{100 * last[name]:.0f} %", limit.check.sees
        )
    return table


def _between(plan: Plan) -> tuple[str, ...]:
    drive = plan.drive
    found = [
        "Wait until all is still, battery off; then read witness, sag and straightedge, and look at the marks.",
    ]
    if drive.fixings.bolts.count:
        torque = units.show_both(float(drive.fixings.assembly_torque), "torque", drive.system)
        found.append(
            f"After the first and the second step tighten the frame bolts again to {torque}; after that only "
            "if a mark is broken. Then paint the marks anew."
        )
    if drive.mount.clamp or drive.mount.bands:
        what = "clamp" if drive.mount.clamp else "bands"
        found.append(f"After the first and the second step tighten the {what} again as before.")
    if drive.mount.screws:
        found.append("Look along the screwed seam: no gap, no screw that turns by hand.")
    if drive.mount.welds:
        found.append("Look along the toes of every weld with a lamp, at its ends first.")
    if is_soft(drive):
        found.append(
            "The mount is of plastic or wood: it softens with heat and creeps. Feel it beside the motor; after "
            "the last step wait an hour, then read sag and straightedge and try the bolts again."
        )
    return tuple(found)


def is_soft(drive: Drive) -> bool:
    """Tell whether a part of the mount is of plastic or wood."""
    return any(s.card.family in ("plastic", "wood") for s in drive.mount.substances)


def _movement(m: Movement) -> dict[str, Any]:
    return {
        "along_chain": quantity(m.along_chain, "m"), "along_shaft": quantity(m.along_shaft, "m"),
        "lean": quantity(m.lean, "rad"),
    }  # fmt: skip


def _step(step: Step) -> dict[str, Any]:
    return {
        "current": quantity(step.current, "A"), "used": step.used,
        "look_at": [
            {"check": x.limit.check.name, "part": x.limit.check.part, "used": x.used, "sees": x.limit.check.sees,
             "consequence": {"rank": x.consequence.rank, "words": x.consequence.words}}
            for x in step.looks
        ],
        "likely": _movement(step.likely), "stop_over": _movement(step.high),
        "pull_time": quantity(step.pull_time, "s"), "rest": quantity(step.rest, "s"),
        "beyond_endless_life_of": [x.check.name for x in step.tires],
    }  # fmt: skip


def record(plan: Plan) -> dict[str, Any]:
    """Give the plan as plain JSON-ready data."""
    safe = plan.safe
    return {
        "schema": SCHEMA, "title": plan.drive.title, "input_sha256": plan.found.file.sha256,
        "asked": quantity(plan.asked, "A"),
        "safe_current": {"value": number(safe.safe), "unit": "A", "check": safe.check.name},
        "stops_at_the_safe_limit": plan.cut,
        "why_no_plan": plan.why_not,
        "can_hurt_at_once": [
            {"check": x.limit.check.name, "part": x.limit.check.part, "words": x.consequence.words}
            for x in plan.at_once
        ],
        "steps": [_step(s) for s in plan.steps],
        "before": list(_before(plan.drive)) if plan.steps else [],
        "stop_when": list(STOP) if plan.steps else [],
        "between": list(_between(plan)) if plan.steps else [],
        "cautions": [CLEAR, *CAUTIONS],
    }  # fmt: skip
