"""The card of the torque test, and what a reading does, as text and as JSON-ready data."""

from __future__ import annotations

import math
from typing import Any

from rich.console import Console

from .. import units
from ..torque_test import FAR, LEAST_FORCE, Card, Result
from .page import items, para
from .quantities import number, quantity
from .words import gives_cell, safe_cell

CAUTIONS = [
    "The lever can strike with the whole torque: it rests on the scale before any current flows; eyes and hands out of its circle.",
    "A locked motor heats fast, and in one winding only: 3 seconds, then let it cool till you can touch it. Stop at smell or smoke.",
    "Chain off, machine chocked. Battery isolated whenever you touch lever, key or scale. A second person at the isolator.",
    "Set the controller's motor current to the value below BEFORE you give throttle; give it slowly.",
]


def _band(x: tuple[float, float, float], kind: str, system: str) -> str:
    low, likely, high = (units.show(v, kind, system) for v in x)
    return f"{likely} ({low} to {high})"


def write(card: Card, console: Console) -> None:
    """Print the card, at most one page of 80 columns."""
    s, drive = card.drive.system, card.drive
    lever, current = units.show(card.lever, "length", s), f"{card.current:g} A"
    kind = "" if drive.current.kind == "unknown" else f" ({drive.current.kind} ampere)"
    lines = [
        f"TORQUE TEST: {drive.title}",
        para("Hold the motor with a lever on a scale and read what one ampere brings: every limit in amperes rests on it."),
        "",
        items(CAUTIONS, "  ! "),
        "",
        items([
            f"Fix a straight lever to the shaft or sprocket, by the key, not by a set screw alone. Its end lies on a scale "
            f"(or hangs from one) exactly {lever} from the shaft axis, square to the pull of the scale.",
            "Lever level. Set the scale to nothing with the lever resting on it and no current, so that its weight does not count.",
            f"Give {current}{kind} as the controller counts and shows it, the rotor held by the lever. Read scale AND display together.",
            "Again with the rotor a quarter of a turn on, four places in all: torque differs from place to place. Take the mean.",
            "Once the other way round: the two ways should agree; their mean has the friction out.",
        ]),
        "",
        f"  Current {current}: greatest {_safe(card)}",
        f"  Torque expected  {_band(card.torque, 'torque', s)}",
        f"  Scale expected   {_band(card.force, 'force', s)}      you read ______",
        *([para("  That is little for a scale; take a shorter lever (--lever) or more current (--current).")] if card.force[1] < LEAST_FORCE else []),
        "",
        "Put it in:",
        f'  mountlimit torque-test FILE --read "{current}" "scale" --lever "{lever}"',
        para(f"The no-load current ({float(drive.motor.no_load_current):g} A in the file) is taken off the current.", "  "),
    ]  # fmt: skip
    for line in lines:
        console.print(line, soft_wrap=True)


def _safe(card: Card) -> str:
    return (
        "as printed"
        if not math.isfinite(card.safe) or card.safe <= 1.0
        else f"{card.safe:.3g} A ({card.safe_by})"
    )


def record(card: Card) -> dict[str, Any]:
    """Give the card as JSON-ready data in SI."""
    low, likely, high = card.torque
    return {
        "schema": "mountlimit-torque-test-1", "current": quantity(card.current, "A"), "lever": quantity(card.lever, "m"),
        "torque": {"low": low, "likely": likely, "high": high, "unit": "N*m"},
        "force": dict(zip(("low", "likely", "high"), card.force, strict=True)) | {"unit": "N"},
        "safe": {**quantity(card.safe, "A"), "set_by": card.safe_by}, "cautions": CAUTIONS,
    }  # fmt: skip


def write_result(found: Result, lines_to_keep: str, console: Console) -> None:
    """Print what a reading does."""
    s = found.drive.system
    say = [para(_first(found)), "", f"  by the test  {_band(found.constant, 'torque_constant', s)}"]
    if found.told is not None:
        say.append(f"  by the file  {_band(found.told, 'torque_constant', s)}")
    say += ["", "First limits in motor current"]
    for name, limits in (("file", found.before), ("test", found.after)):
        if limits is not None:
            x = limits.first_safe
            say.append(
                para(
                    f"safe to {safe_cell(x)}, gives at {gives_cell(x)} ({x.check.part})",
                    f"  {name}  ",
                )
            )
    say += ["", *(para(w) for w in compared(found))]
    if lines_to_keep:
        say += [
            "",
            para(
                "Nothing was written. To keep it, put these lines in the file (the numbers in [motor] may stay; a table that stands there already is not written twice):"
            ),
            "",
            lines_to_keep,
        ]
    for line in say:
        console.print(line, soft_wrap=True)


def _first(found: Result) -> str:
    x = found.after.first_safe
    idle = float(found.drive.motor.no_load_current)
    less = f", {idle:g} A of it for its own friction" if idle else ""
    return (
        f"The motor gives {units.show(found.constant[1], 'torque_constant', found.drive.system)} by your reading{less}. "
        f"With it the drive is safe to {safe_cell(x)} ({x.check.part})."
    )


def compared(found: Result) -> list[str]:
    """Say how the test stands against the file."""
    if found.told is None:
        return ["The file has no torque constant of its own to compare with."]
    r = found.ratio
    words = f"That is {r:.2f} times the file's number"
    inside = found.told[0] <= found.constant[2] and found.constant[0] <= found.told[2]
    if 1 / FAR < r < FAR or inside:
        return [f"{words}: the two agree within their errors."]
    side = (
        "more torque for each ampere, so every limit comes sooner"
        if r > 1
        else "less torque for each ampere, so every limit comes later"
    )
    return [
        f"{words}: {side}. Look for the reason before you trust either: another kind of ampere (peak, rms, battery) in display "
        "or data sheet, a lever that slipped, a scale not square, friction, a gearbox in the motor, magnets that have lost strength."
    ]


def record_result(found: Result) -> dict[str, Any]:
    """Give a reading's answer as JSON-ready data in SI."""

    def three(x: tuple[float, float, float] | None) -> dict[str, Any] | None:
        return (
            None
            if x is None
            else dict(zip(("low", "likely", "high"), x, strict=True)) | {"unit": "N*m/A"}
        )

    return {
        "schema": "mountlimit-torque-reading-1", "by_test": three(found.constant), "by_file": three(found.told),
        "ratio": number(found.ratio), "notes": compared(found),
        "safe_before": None if found.before is None else quantity(found.before.first_safe.safe, "A"),
        "safe_after": {**quantity(found.after.first_safe.safe, "A"), "check": found.after.first_safe.check.name},
    }  # fmt: skip
