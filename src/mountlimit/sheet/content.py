"""What stands on the sheet, in which order."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ..assess import CAUTIONS, Assessment, not_checked
from ..limits import Limit
from ..report import sure_text, text
from ..report.words import first_words
from ..report.worked_text import both_lines
from ..sure import Sure
from ..why import Worked
from . import inputs
from .blocks import Block, Bullets, Head, Paragraph, Picture, Section, Sheet
from .capture import blocks_of
from .worked_lines import Book

SEEN = ("load_path", "layout")
MOVED = ("lean", "plate", "section")


@dataclass(frozen=True, slots=True, kw_only=True)
class Gathered:
    """Everything a sheet is made from; each was worked out by the command of the same name."""

    assessment: Assessment
    sure: Sure
    worked: tuple[Worked, ...]
    pictures: Mapping[str, Picture | Paragraph]
    changes: tuple[Block, ...] = ()
    steps: tuple[Block, ...] = ()
    pull_test: tuple[Block, ...] = ()


def sheet(found: Gathered, head: Head) -> Sheet:
    """Lay the sheet out."""
    a = found.assessment
    given = inputs.table(a, found.worked)
    sections = [
        Section(name="answer", title="The answer", blocks=(Paragraph(text=first_words(a), strong=True),)),
        _shown("first", "Where the force goes", found, SEEN),
        Section(
            name="limits", title="Limits in amperes",
            blocks=(*_pictures(found, ("limits",)), *blocks_of(text.write_limits, a), *blocks_of(text.write_at_currents, a),
                    *blocks_of(text.write_wanted, a), *_pictures(found, ("use",))),
        ),
        _shown("moved", "How the mount moves and what it bears", found, MOVED),
        Section(name="changes", title="What to change", blocks=found.changes),
        Section(name="steps", title="Raising the current, step by step", blocks=found.steps, own_page=True),
        Section(name="pull-test", title="Pull test", blocks=found.pull_test, own_page=True),
        Section(name="sure", title="How sure", blocks=blocks_of(sure_text.write, found.sure)),
        Section(name="inputs", title="Inputs", blocks=(given, *blocks_of(text.write_assumed, a))),
        Section(name="upkeep", title="The chain", blocks=blocks_of(text.write_upkeep, a)),
        _worked(found, {row[0] for row in given.rows}),
        _cross_checks(a),
        Section(name="not-checked", title="Not checked", blocks=(Bullets(items=not_checked(a.drive)),)),
        Section(name="care", title="Take care", blocks=(Bullets(items=CAUTIONS),)),
    ]  # fmt: skip
    return Sheet(head=head, sections=tuple(s for s in sections if s.blocks))


def _pictures(found: Gathered, names: Sequence[str]) -> tuple[Block, ...]:
    return tuple(found.pictures[name] for name in names if name in found.pictures)


def _shown(name: str, title: str, found: Gathered, names: Sequence[str]) -> Section:
    return Section(name=name, title=title, blocks=_pictures(found, names))


def _worked(found: Gathered, told: set[str]) -> Section:
    book, a = Book(told), found.assessment
    follows = {_named(line.limit): line.consequence for line in a.lines}
    folds = [book.fold(w, follows[_named(w.limit)]) for w in found.worked]
    words = (
        "Each line of the list as it was worked out. A step that rests on the same numbers as one further up is pointed at. "
        "Numbers stand in the units of the file; the equations hold in any units that agree, such as N, mm and MPa."
    )
    return Section(
        name="worked", title="Worked calculations", blocks=(Paragraph(text=words), *folds)
    )


def _named(limit: Limit) -> tuple[str, str]:
    """Give what tells a limit from the others of a drive."""
    return limit.check.name, limit.current_kind


def _cross_checks(a: Assessment) -> Section:
    lines = [
        f"Loads and reactions close: {a.balance:.1e} of the load is left over (fault above 1e-6).",
        f"Stiffness and bolt forces by the {a.route}.", *both_lines(a.both, a.drive.system),
    ]  # fmt: skip
    return Section(
        name="cross-checks", title="Cross-checks",
        blocks=(Bullets(items=tuple(lines)), *blocks_of(text.write_notes, a)),
    )  # fmt: skip
