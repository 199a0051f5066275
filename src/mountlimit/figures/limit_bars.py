"""Every limit as a bar in amperes, the smallest on top, with the currents asked about drawn through."""

from __future__ import annotations

import math
from dataclasses import dataclass

from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.patches import Patch

from ..assess import Assessment, Line
from ..report.words import amperes, gives_cell, safe_cell
from . import style

NAME = "limits"
TITLE = "Limits in motor current, smallest first"
REACH = 2.2  # of the currents asked about and the safe one: bars end there with an arrow
BAND = 1.1  # of the first band
ROW, TOP, BOTTOM = 0.235, 0.62, 1.22  # inches
KINDS = {
    "stiffness": (style.BLUE, "\\\\\\\\"), "strength": (style.RED, "////"),
    "grip": (style.GREEN, "xxxx"), "life": (style.PURPLE, "||||"),
}  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """One limit: name, kind, currents in A (infinity: not reached) and the words beside it."""

    name: str
    kind: str
    safe: float
    gives: tuple[float, float, float] | None  # low, likely, high
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the figure shows."""

    drive_title: str
    bars: tuple[Bar, ...]
    lines: tuple[tuple[str, float], ...]  # words, A
    right: float
    reach: float


def read(a: Assessment) -> Shown:
    """Take the limits and lines from an assessment."""
    bars = tuple(_bar(line) for line in sorted(a.lines, key=lambda x: x.limit.safe))
    lines = _lines(a)
    first = a.first_gives.limit.gives_high if a.first_gives else None
    safe = a.first_safe.limit.safe
    asked = [value for words, value in lines if words.startswith(("set", "wanted"))]
    band = first if first and math.isfinite(first) else 0.0
    right = max(REACH * max(*asked, safe if math.isfinite(safe) else 0.0), BAND * band)
    return Shown(drive_title=a.drive.title, bars=bars, lines=lines, right=min(right, a.reach), reach=a.reach)  # fmt: skip


def _bar(line: Line) -> Bar:
    x = line.limit
    mark = "" if x.counts else (" *" if x.current_kind == "continuous" else " ~")
    gives = None
    if x.gives is not None:
        low, high = (x.gives if v is None else v for v in (x.gives_low, x.gives_high))
        gives = (low, x.gives, high)
    words = f"safe to {safe_cell(x)}" + ("" if x.gives is None else f"; gives at {gives_cell(x)}")
    return Bar(
        name=x.check.name.replace("_", " ") + mark,
        kind=x.check.kind,
        safe=x.safe,
        gives=gives,
        words=words,
    )


def _lines(a: Assessment) -> tuple[tuple[str, float], ...]:
    current, uses = a.drive.current, a.uses
    found = (
        ("set", float(current.set)),
        ("wanted", None if current.wanted is None else float(current.wanted)),
        ("continuous", uses.continuous),
        ("wheels spin, worst ground", uses.traction_low),
        ("wheels spin, best ground", uses.traction_high),
    )
    return tuple((words, v) for words, v in found if v is not None and math.isfinite(v))


@style.drawn
def draw(shown: Shown) -> Figure:
    """Draw the bars."""
    height = TOP + BOTTOM + ROW * len(shown.bars)
    figure = style.figure(height, TITLE, shown.drive_title)
    names = style.room_for([bar.name for bar in shown.bars], 1.5)
    left, wide = names / style.WIDTH, (4.45 - names) / style.WIDTH
    axes = figure.add_axes((left, BOTTOM / height, wide, ROW * len(shown.bars) / height))
    for row, bar in enumerate(shown.bars):
        _draw_bar(axes, row, bar, shown.right)
        words = bar.words.replace("; gives", ";\ngives") if len(bar.words) > 52 else bar.words
        size = style.SMALL - (1.7 if "\n" in words else 0.6)
        figure.text(
            left + wide + 0.025, (BOTTOM + ROW * (len(shown.bars) - row - 0.5)) / height, words, va="center",
            fontsize=min(size, style.SMALL - 1), linespacing=1.0,
        )  # fmt: skip
    axes.set_ylim(len(shown.bars) - 0.5, -0.5)
    axes.set_xlim(0, shown.right)
    axes.set_yticks(range(len(shown.bars)), [bar.name for bar in shown.bars])
    axes.tick_params(axis="y", length=0)
    axes.set_xlabel("motor current [A]")
    _draw_lines(figure, axes, shown)
    return figure


def _draw_bar(axes: Axes, row: int, bar: Bar, right: float) -> None:
    colour, hatch = KINDS[bar.kind]
    axes.barh(row, min(bar.safe, right), height=0.62, facecolor=style.PAPER, edgecolor=colour, hatch=hatch, lw=0.9)  # fmt: skip
    if bar.safe > right:
        style.goes_on(axes, row, colour, 5)
    if bar.gives is None:
        return
    low, likely, high = bar.gives
    if low < right:
        axes.plot(
            [low, min(high, right)], [row, row], color=style.INK, lw=1.6, solid_capstyle="butt"
        )
        axes.plot(
            [low, *([high] if high < right else [])],
            [row] * (1 + (high < right)),
            "|",
            color=style.INK,
            ms=6,
        )
        if high >= right:
            style.goes_on(axes, row, style.INK, 5)
    if likely < right:
        axes.plot([likely], [row], "D", color=style.INK, mfc=style.PAPER, ms=4.5, mew=1.1)


def _draw_lines(figure: Figure, axes: Axes, shown: Shown) -> None:
    """Draw the currents asked about, and say below what every sign means."""
    handles: list[Artist] = []
    for i, (words, value) in enumerate(shown.lines):
        drawn = axes.axvline(
            min(value, 2 * shown.right), color=style.COLOURS[(i + 1) % 5] if i else style.INK,
            ls=style.DASHES[i], lw=1.5, zorder=0.5,
        )  # fmt: skip
        drawn.set_label(f"{words} {amperes(value)} A")
        handles.append(drawn)
    kinds = dict.fromkeys(bar.kind for bar in shown.bars)
    handles += [Patch(facecolor=style.PAPER, edgecolor=KINDS[k][0], hatch=KINDS[k][1], label=f"safe to: {k}") for k in kinds]  # fmt: skip
    if any(bar.gives for bar in shown.bars):
        handles += axes.plot([], [], "D-", color=style.INK, mfc=style.PAPER, ms=4.5, label="gives at: low, likely, high")  # fmt: skip
    handles += axes.plot([], [], ">", color=style.INK, ms=5, lw=0, label=f"goes on past {shown.right:.0f} A")  # fmt: skip
    style.legend_of_bars(figure, handles)


def alt(shown: Shown) -> str:
    """Say in words what the figure shows."""
    lines = "; ".join(f"{words} {amperes(value)} A" for words, value in shown.lines)
    bars = ". ".join(f"{bar.name} ({bar.kind}): {bar.words}" for bar in shown.bars)
    return f"{TITLE}. Lines drawn through: {lines}. {bars}. * held for hours, ~ starts: both do not count."
