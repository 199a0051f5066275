"""A worked calculation as text: symbols, numbers put in, result, and where each number came from."""

from __future__ import annotations

from rich.console import Console

from .. import units
from ..crosscheck import Both
from ..units import kind_of_unit
from ..why import Worked
from ..worked import Entry, Step
from .words import shown

DIGITS = 6


def number(value: float, unit: str, system: str, digits: int = DIGITS) -> str:
    """Write a value with its unit, in the display units of its kind where there is one."""
    kind = kind_of_unit(unit)
    if kind and kind not in ("ratio", "temperature", "acceleration"):  # "2 g" could be grams
        return units.show(value, kind, system, digits)
    text = f"{value:.{digits}g}"
    return text if unit in ("-", "any") else f"{text} {unit}"


def write(work: Worked, console: Console) -> None:
    """Print a worked calculation."""
    limit, row = work.limit, work.row
    console.print(f"{limit.check.name}: {limit.check.part}, {row.station}", style="bold")
    console.print(
        f"{_at(work)} with every uncertain input at its {work.ends} "
        f"{'end' if work.ends == 'safe-side' else 'value'}; load case: {work.case}."
    )
    if work.ends == "safe-side" and work.ranges:
        ends = ", ".join(
            f"{r.key} {shown(limit.corner[r.key], r.kind, work.drive.system, r.high)}"
            for r in work.ranges
        )
        console.print(f"Those ends: {ends}.")
    _result(work, console)
    console.print(f"\nThe {len(work.steps)} steps, each number with where it comes from:")
    for step in work.steps:
        _step(step, work, console)


def _at(work: Worked) -> str:
    if work.stop_from is None:
        return f"Worked at {work.current:.6g} A"
    speed = units.show(work.stop_from, "rotational_speed", work.drive.system, DIGITS)
    return f"Worked for a dead stop from {speed} with {work.current:.6g} A flowing,"


def both_lines(both: tuple[Both, ...], system: str) -> list[str]:
    """Give a line for each quantity worked out by both routes."""
    found = []
    for b in both:
        texts = [number(v, b.unit, system, 3) for v in sorted(b.sections)]
        beams = " to ".join(dict.fromkeys(texts))
        apart = f"; they differ: {b.reason}" if b.disagree else ""
        found.append(
            f"{b.name}: plate model {number(b.plates, b.unit, system, 3)}, section route {beams}{apart}"
        )
    return found


def _step(step: Step, work: Worked, console: Console) -> None:
    places = {s.index: i for i, s in enumerate(work.steps, 1)}
    system = work.drive.system
    console.print(f"{places[step.index]}. {step.title}")
    console.print(f"     {step.equation}")
    for entry in step.entries:
        unit = (
            entry.symbol.unit if entry.symbol.unit != "any" else units.KINDS[work.row.quantity].si
        )
        shown_value = number(entry.value, unit, system)
        console.print(f"     {entry.symbol.letter} = {shown_value}{_origin(entry, places)}")
    console.print(f"     {step.result.letter} = {number(step.value, step.result.unit, system)}")
    console.print(f"     source: {step.source}")


def _origin(entry: Entry, places: dict[int, int]) -> str:
    if entry.step is not None and entry.step in places:
        return f"   (from step {places[entry.step]})"
    if entry.key:
        text = f"{entry.key}, {entry.origin}"
        return f"   ({text}: {entry.source})" if entry.source else f"   ({text})"
    return f"   ({entry.symbol.name.replace('_', ' ')})"


def _result(work: Worked, console: Console) -> None:
    row, limit = work.row, work.limit
    unit = units.KINDS[row.quantity].si
    system = work.drive.system
    console.print(
        f"Demand {number(float(row.demand), unit, system)}, capacity {number(float(row.capacity), unit, system)}."
    )
    console.print(
        f"Utilisation {float(row.utilisation):.4f} times design factor {limit.factor:g} "
        f"({limit.factor_source}) = {work.utilisation:.4f}; 1 is the limit."
    )
    if work.both:
        console.print(f"Stiffness and bolt forces: {work.route}. Both routes for this case:")
        for line in both_lines(work.both, system):
            console.print(f"  {line}")
    if limit.check.part in ("mount", "chain line"):
        for name, count in work.held_ends:
            console.print(
                f"Twist of the {name} by beams: {count} of 2 ends held against warping "
                "(bolts span 0.7 of the width, or a bend)."
            )
    console.print(f"What you would see: {limit.check.sees}.")
    for note in (limit.why_not,):
        if note:
            console.print(f"Note: {note}.")
