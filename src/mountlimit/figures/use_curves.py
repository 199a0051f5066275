"""How much of every limit is used up over the current, design factor in, each line named at its end."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from matplotlib.figure import Figure
from matplotlib.ticker import NullFormatter

from .. import evaluate
from ..assess import Assessment
from ..model import Array
from ..report.words import amperes
from ..resolve import resolve
from . import style
from .labels import Label, beside

NAME = "use"
TITLE = "How much of each safe limit is used, against motor current"
POINTS = 45
LEAST = 1.0  # per cent: what is used less is not drawn
MOST = 400.0
TICKS = (1, 2, 5, 10, 20, 50, 100, 200, 400)


@dataclass(frozen=True, slots=True, kw_only=True)
class Curve:
    """One limit: per cent used at the currents of the figure, and its safe current."""

    name: str
    used: Array
    safe: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the figure shows."""

    drive_title: str
    currents: Array
    curves: tuple[Curve, ...]  # most used at the right end first
    below: tuple[str, ...]  # limits used less than ``LEAST`` everywhere
    set_current: float
    wanted: float | None


def read(a: Assessment) -> Shown:
    """Run the pipeline over the currents, each limit at its own safe-side ends."""
    current = a.drive.current
    wanted = None if current.wanted is None else float(current.wanted)
    safe = a.first_safe.limit.safe
    right = 1.25 * max(float(current.set), wanted or 0.0, safe if math.isfinite(safe) else 0.0)
    currents = np.linspace(right / POINTS, right, POINTS)
    found, below = [], []
    for limit in (line.limit for line in a.lines if line.limit.counts):
        name = limit.check.name
        curve = evaluate.curves(resolve(a.file, limit.corner), currents, [name])[name]
        used = 100 * limit.factor * np.asarray(curve.safe, float)
        words = name.replace("_", " ")
        if used.max() < LEAST:
            below.append(words)
        else:
            found.append(Curve(name=words, used=used, safe=limit.safe))
    return Shown(
        drive_title=a.drive.title, currents=currents, below=tuple(below),
        curves=tuple(sorted(found, key=lambda c: -c.used[-1])), set_current=float(current.set), wanted=wanted,
    )  # fmt: skip


@style.drawn
def draw(shown: Shown) -> Figure:
    """Draw the curves."""
    height = max(4.2, 1.15 + 0.17 * len(shown.curves))
    figure = style.figure(height, TITLE, shown.drive_title)
    bottom, top = 0.72 / height, 1 - 0.55 / height
    axes = figure.add_axes((0.085, bottom, 0.62, top - bottom))
    labels = []
    for i, curve in enumerate(shown.curves):
        colour, dash = style.COLOURS[i % 5], style.DASHES[(i + i // 5) % 5]
        used = np.where(curve.used > 0, np.minimum(curve.used, MOST), np.nan)
        axes.plot(
            shown.currents, used, color=colour, ls=dash, lw=1.3,
            marker=style.MARKERS[i % len(style.MARKERS)], ms=3.8, mfc=style.PAPER, markevery=(2 + 2 * i % 8, 11),
        )  # fmt: skip
        end = float(curve.used[-1])
        place = (float(shown.currents[-1]), min(max(end, LEAST), MOST))
        labels.append(Label(text=_used(curve), place=place, colour=colour, dot=False))
    axes.set_yscale("log")
    axes.set_ylim(LEAST, MOST * 1.08)
    axes.set_yticks(TICKS, [str(t) for t in TICKS])
    axes.yaxis.set_minor_formatter(NullFormatter())
    axes.set_xlim(0, float(shown.currents[-1]))
    axes.grid(visible=True)
    axes.axhline(100, color=style.INK, lw=2.2)
    axes.set_xlabel("motor current [A]")
    axes.set_ylabel("used of the safe limit, design factor in [%]")
    axes.axvline(
        shown.set_current, color=style.INK, lw=1.4, label=f"set {amperes(shown.set_current)} A"
    )
    if shown.wanted is not None:
        axes.axvline(
            shown.wanted,
            color=style.INK,
            lw=1.4,
            ls="--",
            label=f"wanted {amperes(shown.wanted)} A",
        )
    axes.plot([], [], color=style.INK, lw=2.2, label="100 %: safe limit reached")
    figure.legend(loc="lower left", bbox_to_anchor=(0.07, 0.0), ncols=3, frameon=False)
    beside(figure, axes, labels, 0.745, (0.04, top + 0.01))
    return figure


def _used(curve: Curve) -> str:
    """Name a limit and how far it is used at the right end."""
    end = float(curve.used[-1])
    return f"{curve.name}, {end:.0f} %" if end < MOST else f"{curve.name}, over {MOST:.0f} %"


def alt(shown: Shown) -> str:
    """Say in words what the figure shows."""
    end = float(shown.currents[-1])
    parts = [
        f"{_used(c).replace(',', '')} at {end:.0f} A"
        + (f", 100 % at {amperes(c.safe, down=True)} A" if math.isfinite(c.safe) else "")
        for c in shown.curves
    ]
    asked = f"Set {amperes(shown.set_current)} A" + (
        "" if shown.wanted is None else f", wanted {amperes(shown.wanted)} A"
    )
    rest = f" Below {LEAST:.0f} % all the way: {', '.join(shown.below)}." if shown.below else ""
    return f"{TITLE}. {asked}. {'; '.join(parts)}.{rest}"
