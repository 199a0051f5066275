"""The answer in plain words: what gives first, at how many amperes, and what to look at."""

from __future__ import annotations

import math

from .. import units
from ..assess import Assessment, Line
from ..limits import Limit

FAR_OVER = 10.0

# What a part is called in a sentence, and what limits it.
PLAIN = {
    "alignment": "alignment of the chain: the mount gives until the chain runs off its line",
    "bolt_slip": "frame joint: the mount slides",
    "tube_grip": "clamp on the tube: the mount turns or slides",
    "tube_crush": "clamped tube: the clamp dents it",
    "mount_section": "mount itself: it bends for good",
}


def amperes(value: float | None, down: bool = False) -> str:
    """Write a current with the digits it deserves; a safe one is rounded down."""
    if value is None or math.isinf(value):
        return "-"
    if value < 0.1:
        return "0"
    size = 10.0 ** (math.floor(math.log10(value)) - 1)
    if value >= 100 and down:
        size /= 10
    step = value / size
    number = (math.floor(step + 1e-9) if down else round(step)) * size
    return f"{number:.0f}" if number >= 10 else f"{number:.1f}"


def upto(value: float | None, reach: float) -> str:
    """Write one end of a band; nothing is claimed beyond the currents looked at."""
    return f"over {reach:.0f}" if value is None or value > reach else amperes(value)


def shown(value: float, kind: str, system: str, most: float | None = None) -> str:
    """Write an input in its display unit; shares as per cent where even ``most`` is under 0.1."""
    if kind == "ratio" and 0 < abs(value if most is None else most) < 0.1:
        return f"{100 * value:g} %"
    return units.show(value, kind, system) if kind in units.KINDS else f"{value:g}"


def name_of(line: Line) -> str:
    """Give a part's name for a sentence."""
    return PLAIN.get(line.limit.check.name, line.limit.check.part)


def peak_lines(a: Assessment) -> list[Line]:
    """Give the lines that count for the peak setting."""
    return [x for x in a.lines if x.limit.counts]


def passed_at(a: Assessment, current: float) -> list[Line]:
    """Give the safe limits that a current passes."""
    return [x for x in peak_lines(a) if x.limit.safe < current]


def first_words(a: Assessment) -> str:
    """Say the answer in a few sentences."""
    parts = [_battery(a), _safe(a), _gives(a), _set(a), _wanted(a), _wheels(a)]
    return " ".join(p for p in parts if p)


def _battery(a: Assessment) -> str:
    current = a.drive.current
    if current.kind != "battery" or current.motor_limit is not None:
        return ""
    return (
        f"Your {float(current.set):g} A is a battery limit: it does not hold the motor current. "
        "The amperes below are motor amperes."
    )


def _safe(a: Assessment) -> str:
    safe = a.first_safe.limit
    if math.isinf(safe.safe):
        return f"No safe limit below {a.reach:.0f} A."
    if safe.safe < 0.1:
        return f"Not safe at any current as it stands ({name_of(a.first_safe)}): {safe.why_not or 'used up at once'}."
    return f"Safe to {amperes(safe.safe, down=True)} A ({name_of(a.first_safe)})."


def _gives(a: Assessment) -> str:
    if a.first_gives is None:
        return f"Nothing is likely to give below {a.reach:.0f} A."
    g = a.first_gives.limit
    if g.gives is not None and g.gives < 0.1:
        return f"What gives first: the {g.check.part}, before any current. You would see: {g.check.sees}.{_then(a.first_gives)}"
    return (
        f"What gives first: the {a.first_gives.limit.check.part}, at about {amperes(g.gives)} A "
        f"({upto(g.gives_low, g.reach)} to {upto(g.gives_high, g.reach)} A). You would see: {g.check.sees}.{_then(a.first_gives)}"
    )


def _then(line: Line) -> str:
    """Say what follows, where it does not give notice first."""
    found = line.consequence
    return "" if found.rank == 3 else f" Then: {found.words}."


def _set(a: Assessment) -> str:
    current, safe = float(a.drive.current.set), a.first_safe.limit.safe
    if a.drive.current.kind == "battery" and a.drive.current.motor_limit is None:
        return ""
    if not a.over:
        return f"You have {current:g} A set, within the safe limit."
    if safe < 0.1 or current / safe > FAR_OVER:
        return f"You have {current:g} A set, far over the safe limit."
    return f"You have {current:g} A set, {current / safe:.1f} times the safe limit."


def _wanted(a: Assessment) -> str:
    if a.drive.current.wanted is None:
        return ""
    wanted = float(a.drive.current.wanted)
    passed = passed_at(a, wanted)
    if not passed:
        return f"At the {wanted:g} A you want every safe limit holds."
    names = ", ".join(dict.fromkeys(x.limit.check.part for x in passed[:3]))
    more = f" and {len(passed) - 3} more" if len(passed) > 3 else ""
    return f"The {wanted:g} A you want passes the safe limit of: {names}{more}."


def _wheels(a: Assessment) -> str:
    high = a.uses.traction_high
    if high is None:
        return ""
    wanted = float(a.drive.current.wanted or a.drive.current.set)
    if high >= wanted:
        return ""
    return f"The wheels spin from {amperes(high)} A even on good ground: more only spins them."


def gives_cell(x: Limit) -> str:
    """Write the gives-at column of one limit."""
    if x.gives is None:
        return "-"
    low = "" if x.gives_low is None or x.gives_low > x.reach else amperes(x.gives_low)
    if math.isinf(x.gives):
        return f"above {x.reach:.0f} A" + (f" (could be {low})" if low else "")
    return f"{amperes(x.gives)} A ({low} to {upto(x.gives_high, x.reach)})"


def safe_cell(x: Limit) -> str:
    """Write the safe-to column of one limit."""
    return f"over {x.reach:.0f} A" if math.isinf(x.safe) else f"{amperes(x.safe, down=True)} A"
