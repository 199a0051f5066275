"""Worked calculations as blocks: every step once on the sheet, with a number of its own."""

from __future__ import annotations

from collections.abc import Container

from .. import units
from ..consequence import Consequence
from ..report.words import gives_cell, safe_cell
from ..report.worked_text import number
from ..why import Worked
from ..worked import Entry, Step
from .blocks import Block, Fold, Paragraph, StepLine, Steps, Term

DIGITS = 6


class Book:
    """The steps that stand on the sheet so far; a step with the same numbers stands there once.

    The sources of the inputs in ``told`` stand in the table of inputs.
    """

    def __init__(self, told: Container[str]) -> None:
        self._known: dict[tuple[object, ...], int] = {}
        self._told = told

    def fold(self, work: Worked, follows: Consequence) -> Fold:
        """Give one check folded: plain words, the line with its numbers, the full derivation."""
        limit, row = work.limit, work.row
        blocks: list[Block] = [
            Paragraph(text=f"What you would see: {limit.check.sees}. What follows: {follows.words}."),
            Paragraph(text=self._in_one_line(work), strong=True),
            Paragraph(text=f"Where: {row.station}; load case: {work.case}; worked at {work.current:.6g} A, uncertain inputs at their {work.ends} ends."),
        ]  # fmt: skip
        if limit.why_not:
            blocks.append(Paragraph(text=f"Note: {limit.why_not}."))
        blocks.append(Steps(lines=self._lines(work)))
        title = f"{limit.check.part}, {limit.check.kind} ({limit.check.name}): safe to {safe_cell(limit)}, gives at {gives_cell(limit)}"
        return Fold(
            name=f"why-{limit.check.name}-{limit.current_kind.split()[0]}",
            title=title,
            blocks=tuple(blocks),
        )

    def _in_one_line(self, work: Worked) -> str:
        row, limit, system = work.row, work.limit, work.drive.system
        unit = units.KINDS[row.quantity].si
        demand, capacity = (number(float(v), unit, system) for v in (row.demand, row.capacity))
        return (
            f"Demand {demand} against {capacity}: {float(row.utilisation):.6g} used, times the design factor "
            f"{limit.factor:g} ({limit.factor_source}) = {work.utilisation:.6g}; 1 is the limit."
        )

    def _lines(self, work: Worked) -> tuple[StepLine, ...]:
        places: dict[int, int] = {}
        found = []
        for step in work.steps:
            key = _identity(step, places)
            repeated = key in self._known
            places[step.index] = self._known.setdefault(key, len(self._known) + 1)
            found.append(self._line(step, places, work, repeated))
        return tuple(found)

    def _line(self, step: Step, places: dict[int, int], work: Worked, repeated: bool) -> StepLine:
        system = work.drive.system
        told: set[str] = set()
        terms = () if repeated else tuple(self._term(e, places, work, told) for e in step.entries)
        return StepLine(
            number=places[step.index], title=step.title, equation="" if repeated else step.equation, terms=terms,
            result=f"{step.result.letter} = {number(step.value, step.result.unit, system, DIGITS)}",
            source="" if repeated else step.source, repeated=repeated,
        )  # fmt: skip

    def _term(self, entry: Entry, places: dict[int, int], work: Worked, told: set[str]) -> Term:
        """Give a number put in; a source that stands in this step already (``told``) is not said again."""
        unit = (
            entry.symbol.unit if entry.symbol.unit != "any" else units.KINDS[work.row.quantity].si
        )
        shown = number(entry.value, unit, work.drive.system, DIGITS)
        if entry.step is not None and entry.step in places:
            return Term(letter=entry.symbol.letter, shown=shown, origin="", step=places[entry.step])
        origin = entry.symbol.name.replace("_", " ")
        if entry.key:
            source = (
                entry.source if entry.key not in self._told and entry.source not in told else ""
            )
            told.add(source)
            origin = f"{entry.key}, {entry.origin}" + (f": {source}" if source else "")
        return Term(letter=entry.symbol.letter, shown=shown, origin=origin)


def _identity(step: Step, places: dict[int, int]) -> tuple[object, ...]:
    entries = tuple(
        (e.symbol, e.value, e.key, e.origin, e.source, places.get(e.step) if e.step is not None else None)
        for e in step.entries
    )  # fmt: skip
    return step.title, step.equation, entries, step.result, step.value
