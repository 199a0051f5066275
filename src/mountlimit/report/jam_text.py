"""A dead stop as a short table, and as JSON-ready data: speeds, not currents."""

from __future__ import annotations

import math
from typing import Any

from rich.console import Console

from .. import units
from ..jam import Stop, Stops
from ..model import Range
from .quantities import number, quantity
from .table import heading, new_table
from .words import shown

SHOWN = 5  # parts in the table; --json has all
RPM = "rotational_speed"


def write(stops: Stops | None, system: str, console: Console) -> None:
    """Print what a dead stop uses up, the parts with the lowest speeds."""
    if stops is None:
        console.print(
            "What a dead stop at speed would use up: give motor.speed, or ask with --jam."
        )
        return
    parts = [s for s in stops.parts if not math.isinf(s.safe)]
    heading(console, f"\nA dead stop of the driven side with {stops.current:g} A flowing")
    if not parts:
        console.print(f"Uses up no part below {speed_words(stops.reach, system)}.")
        return
    table = new_table()
    table.add_column("what it uses up")
    table.add_column("safe to", justify="right", no_wrap=True)
    table.add_column("gives at (band)", justify="right", no_wrap=True)
    if stops.speed is not None:
        table.add_column(f"used at {speed_words(stops.speed, system)}", justify="right")
    table.add_column("name for why --jam", no_wrap=True)
    for stop in parts[:SHOWN]:
        table.add_row(*_row(stop, stops, system))
    console.print(table)
    console.print(_words(stops, len(parts), system))


def _words(stops: Stops, count: int, system: str) -> str:
    """Say what the table rests on, and whether it counts."""
    counts = (
        "It counts in the safe current (policy.jam)."
        if stops.counts
        else "It depends on speed, so it does not count in the safe current; policy.jam = true makes it count."
    )
    more = f" {count - SHOWN} more parts stand higher up (--json)." if count > SHOWN else ""
    return (
        f"The chain brings the rotor to rest while the motor pulls on, without damping; what gives way "
        f"in the machine (tyre, belt, crop) softens it. Rotor inertia {_inertia(stops, system)}. "
        f"{counts}{more}"
    )


def _inertia(stops: Stops, system: str) -> str:
    if not isinstance(stops.inertia, Range):
        return f"{units.show(stops.inertia, 'inertia', system)} as given"
    r = stops.inertia
    low, likely, high = (shown(v, "inertia", system) for v in (r.low, r.likely, r.high))
    origin = "given as a range" if r.origin == "given" else "estimated from the motor's mass"
    return f"{likely} ({low} to {high}, {origin})"


def _row(stop: Stop, stops: Stops, system: str) -> list[str]:
    cells = [
        f"{stop.check.part}, {stop.check.kind}",
        _safe(stop, system),
        _gives(stop, stops, system),
    ]
    if stops.speed is not None:
        used = stop.used or 0.0
        cells.append(f"{'!' if used > 1 else ''}{100 * used:.0f} %")
    return [*cells, stop.check.name]


def _safe(stop: Stop, system: str) -> str:
    """Write the safe speed, rounded down; nought means that twice the steady pull is too much already."""
    return "no speed" if stop.safe == 0 else speed_words(stop.safe, system, down=True)


def _gives(stop: Stop, stops: Stops, system: str) -> str:
    if stop.gives is None:
        return "-"
    low = _below(stop.gives_low, stops.reach, system)
    if math.isinf(stop.gives):
        return f"above {speed_words(stops.reach, system)}" + (f" (could be {low})" if low else "")
    high = (
        _below(stop.gives_high, stops.reach, system) or f"over {speed_words(stops.reach, system)}"
    )
    return f"{speed_words(stop.gives, system)} ({low} to {high})"


def _below(speed: float | None, reach: float, system: str) -> str:
    return "" if speed is None or speed > reach else speed_words(speed, system)


def speed_words(speed: float, system: str, down: bool = False) -> str:
    """Write a speed with two digits."""
    if speed <= 0 or math.isinf(speed):
        return units.show(speed, RPM, system)
    turns = speed * 30 / math.pi
    size = 10.0 ** (math.floor(math.log10(turns)) - 1)
    rounded = (math.floor(turns / size + 1e-9) if down else round(turns / size)) * size
    return units.show(rounded * math.pi / 30, RPM, system)


def record(stops: Stops) -> dict[str, Any]:
    """Give the dead stop as JSON-ready data in SI."""
    inertia = stops.inertia
    low, likely, high = (
        (inertia.low, inertia.likely, inertia.high)
        if isinstance(inertia, Range)
        else (inertia,) * 3
    )
    return {
        "current": quantity(stops.current, "A"), "speed": quantity(stops.speed, "rad/s"),
        "rotor_inertia": {"low": low, "likely": likely, "high": high, "unit": "kg*m^2"},
        "not_reached_below": quantity(stops.reach, "rad/s"), "counts_for_safe_current": stops.counts,
        "parts": [_part(s) for s in stops.parts],
    }  # fmt: skip


def _part(stop: Stop) -> dict[str, Any]:
    seen = stop.at_speed
    return {
        "check": stop.check.name, "part": stop.check.part, "kind": stop.check.kind,
        "safe": quantity(stop.safe, "rad/s"),
        "gives": None if stop.gives is None else {
            "low": number(stop.gives_low), "likely": number(stop.gives),
            "high": number(stop.gives_high), "unit": "rad/s",
        },
        "design_factor": stop.factor,
        "at_speed": None if seen is None else {
            "case": seen.case, "station": seen.row.station, "demand": float(seen.row.demand),
            "capacity": float(seen.row.capacity), "unit": units.KINDS[seen.row.quantity].si,
            "utilisation": stop.used,
        },
        "safe_side_ends": dict(stop.corner),
    }  # fmt: skip
