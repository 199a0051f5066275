"""Limits of two drives side by side: a bar for A over a bar for B, row by row, the smallest on top."""

from __future__ import annotations

import math
from dataclasses import dataclass

from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Patch

from ..compare import Comparison, Pair
from ..limits import Found, Limit
from ..report.words import amperes, gives_cell, safe_cell
from . import style

NAME = "two_drives"
TITLE = "Limits of A and B in motor current, smallest first"
REACH = 2.2  # of the currents set and the safe ones: bars end there with an arrow
ROW, TOP, BOTTOM, BAR = 0.33, 0.62, 1.05, 0.34  # inches; height of a bar over its row
LOOKS = {"A": (style.PAPER, style.BLUE, "////"), "B": ("#c8c8c8", style.INK, "")}


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """One drive's limit: currents in A (infinity: not reached), and in words."""

    safe: float
    gives: float | None
    words: str
    gives_words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One limit in both drives; ``None`` where a drive does not have it."""

    name: str
    a: Bar | None
    b: Bar | None

    @property
    def bars(self) -> tuple[tuple[str, Bar | None], ...]:
        """Both with their letters."""
        return ("A", self.a), ("B", self.b)


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the figure shows."""

    titles: tuple[str, str]
    rows: tuple[Row, ...]
    lines: tuple[tuple[str, float], ...]  # words, A
    right: float


def read(c: Comparison) -> Shown:
    """Take the limits from a comparison."""
    rows = tuple(_row(pair) for pair in sorted(c.pairs, key=_least))
    lines = _lines(c)
    safe = [x.first_safe.safe for x in (c.a, c.b) if math.isfinite(x.first_safe.safe)]
    right = min(REACH * max(*(v for _, v in lines), *safe), max(c.a.reach, c.b.reach))
    return Shown(titles=(_title(c.a), _title(c.b)), rows=rows, lines=lines, right=right)


def _title(found: Found) -> str:
    return found.drive.title or found.file.name


def _least(pair: Pair) -> float:
    return min(x.safe for x in (pair.a, pair.b) if x is not None)


def _row(pair: Pair) -> Row:
    x = pair.either
    mark = "" if x.counts else (" *" if x.current_kind == "continuous" else " ~")
    return Row(name=x.check.name.replace("_", " ") + mark, a=_bar(pair.a), b=_bar(pair.b))


def _bar(limit: Limit | None) -> Bar | None:
    if limit is None:
        return None
    gives = "" if limit.gives is None else gives_cell(limit).split(" (")[0]
    return Bar(safe=limit.safe, gives=limit.gives, words=safe_cell(limit), gives_words=gives)


def _lines(c: Comparison) -> tuple[tuple[str, float], ...]:
    """Give the currents set and wanted; one line where A and B ask for the same."""
    found = []
    for name in ("set", "wanted"):
        one, two = (getattr(x.drive.current, name) for x in (c.a, c.b))
        if one is not None and two is not None and math.isclose(one, two):
            found.append((f"{name} in both", float(one)))
            continue
        found += [
            (f"{name} in {k}", float(v)) for k, v in (("A", one), ("B", two)) if v is not None
        ]
    return tuple(found)


@style.drawn
def draw(shown: Shown) -> Figure:
    """Draw the bars."""
    height = TOP + BOTTOM + ROW * len(shown.rows)
    titles = "; ".join(f"{k}: {style.clip(t, 38)}" for k, t in zip("AB", shown.titles, strict=True))
    figure = style.figure(height, TITLE, titles)
    names = style.room_for([row.name for row in shown.rows], 1.5)
    left, wide = names / style.WIDTH, (4.8 - names) / style.WIDTH
    axes = figure.add_axes((left, BOTTOM / height, wide, ROW * len(shown.rows) / height))
    for i, row in enumerate(shown.rows):
        for letter, bar, place in zip("AB", (row.a, row.b), (i - 0.2, i + 0.2), strict=True):
            _draw_bar(axes, letter, bar, place, shown.right)
            middle = (BOTTOM + ROW * (len(shown.rows) - place - 0.5)) / height
            figure.text(
                left + wide + 0.025, middle, _words(letter, bar), va="center", fontsize=style.SMALL - 1.2
            )  # fmt: skip
    axes.set_ylim(len(shown.rows) - 0.5, -0.5)
    axes.set_xlim(0, shown.right)
    axes.set_yticks(range(len(shown.rows)), [row.name for row in shown.rows])
    axes.tick_params(axis="y", length=0)
    axes.set_xlabel("motor current [A]")
    for i in range(1, len(shown.rows)):
        axes.axhline(i - 0.5, color=style.PALE, lw=0.5, zorder=0.2)
    _draw_lines(figure, axes, shown)
    return figure


def _words(letter: str, bar: Bar | None) -> str:
    if bar is None:
        return f"{letter}: does not apply"
    gives = f"; gives at {bar.gives_words}" if bar.gives_words else ""
    return f"{letter}: safe to {bar.words}{gives}"


def _draw_bar(axes: Axes, letter: str, bar: Bar | None, place: float, right: float) -> None:
    if bar is None:
        return
    face, edge, hatch = LOOKS[letter]
    axes.barh(
        place, min(bar.safe, right), height=BAR, facecolor=face, edgecolor=edge, hatch=hatch, lw=0.8
    )
    if bar.safe > right:
        style.goes_on(axes, place, edge, 3.5)
    if bar.gives is not None and bar.gives < right:
        axes.plot([bar.gives], [place], "D", color=style.INK, mfc=style.PAPER, ms=3.2, mew=0.9)


def _draw_lines(figure: Figure, axes: Axes, shown: Shown) -> None:
    """Draw the currents set and wanted, and say below what every sign means."""
    handles: list[Artist] = []
    for i, (words, value) in enumerate(shown.lines):
        colour = style.INK if words.startswith("set") else style.RED
        drawn = axes.axvline(value, color=colour, ls=style.DASHES[i], lw=1.3, zorder=0.5)
        drawn.set_label(f"{words} {amperes(value)} A")
        handles.append(drawn)
    for letter, (face, edge, hatch) in LOOKS.items():
        handles.append(
            Patch(facecolor=face, edgecolor=edge, hatch=hatch, label=f"{letter}: safe to")
        )
    handles += axes.plot([], [], "D", color=style.INK, mfc=style.PAPER, ms=3.5, label="gives at, likely")  # fmt: skip
    handles += axes.plot([], [], ">", color=style.INK, ms=4, lw=0, label=f"goes on past {shown.right:.0f} A")  # fmt: skip
    style.legend_of_bars(figure, handles)


def alt(shown: Shown) -> str:
    """Say in words what the figure shows."""
    lines = "; ".join(f"{words} {amperes(value)} A" for words, value in shown.lines)
    rows = ". ".join(
        f"{row.name}: {', '.join(_words(letter, bar) for letter, bar in row.bars)}"
        for row in shown.rows
    )
    return f"{TITLE}. Lines drawn through: {lines}. {rows}. * held for hours, ~ starts: both do not count."
