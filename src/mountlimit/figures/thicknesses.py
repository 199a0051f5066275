"""What a mount of every stock thickness carries, one line per material, with the wanted current."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from matplotlib.figure import Figure

from ..model import Drive
from ..report.words import amperes
from ..thickness import Thinnest
from . import style
from .labels import Label, beside
from .measures import Units

NAME = "thickness"
TITLE = "Safe current against thickness of the mount"
OVER = 2.5  # of the wanted current: what is more is cut off
SPARE = 1.2  # over the largest current drawn


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the figure shows: currents in A, thicknesses in m."""

    drive_title: str
    units: Units
    wanted: float
    own: float  # thickness in the file
    answers: tuple[Thinnest, ...]
    top: float  # A


def read(drive: Drive, answers: Sequence[Thinnest], wanted: float) -> Shown | str:
    """Take the curves of ``thickness.thinnest``; words why not where no material has one."""
    kept = tuple(a for a in answers if a.curve)
    if not kept:
        return "no material was worked out over its stock thicknesses"
    return Shown(
        drive_title=drive.title, units=Units(drive.system), wanted=wanted, own=float(drive.mount.thickness),
        answers=kept, top=min(OVER * wanted, SPARE * max(wanted, *(a.best for a in kept))),
    )  # fmt: skip


@style.drawn
def draw(shown: Shown) -> Figure:
    """Draw a line for each material, what is thinnest marked."""
    height, u = 4.1, shown.units
    figure = style.figure(height, TITLE, shown.drive_title)
    axes = figure.add_axes((0.085, 0.185, 0.55, 0.68))
    labels, most = [], 0.0
    for i, answer in enumerate(shown.answers):
        colour = style.COLOURS[i % 5]
        t = np.array([u.of(p.thickness, "length") for p in answer.curve])
        safe = np.minimum([p.safe for p in answer.curve], 1.2 * shown.top)
        axes.plot(t, safe, color=colour, ls=style.DASHES[i % 5], marker=style.MARKERS[i % 10], ms=4, mfc=style.PAPER, lw=1.3)  # fmt: skip
        most = max(most, float(t[-1]))
        labels.append(
            Label(
                text=material_words(answer, shown),
                place=_end(t, safe, shown.top),
                colour=colour,
                dot=False,
            )
        )
        if math.isfinite(answer.thickness):
            axes.plot(
                [u.of(answer.thickness, "length")],
                [shown.wanted],
                "o",
                color=colour,
                ms=7,
                zorder=5,
            )
    axes.axhline(
        shown.wanted, color=style.INK, lw=1.6, ls="--", label=f"wanted {amperes(shown.wanted)} A"
    )
    axes.axvline(
        u.of(shown.own, "length"),
        color=style.SOFT,
        lw=1.2,
        label=f"thickness in the file {u.length(shown.own)}",
    )
    axes.plot([], [], "o", color=style.INK, ms=7, lw=0, label="thinnest that carries it")
    axes.set_xlim(0, most * 1.02)
    axes.set_ylim(0, shown.top)
    axes.grid(visible=True)
    axes.set_xlabel(f"thickness [{u.unit('length')}]")
    axes.set_ylabel("safe motor current [A]")
    figure.legend(loc="lower left", bbox_to_anchor=(0.07, 0.0), ncols=3, frameon=False)
    beside(figure, axes, labels, 0.675, (0.1, 0.9))
    return figure


def _end(t: np.ndarray, safe: np.ndarray, top: float) -> tuple[float, float]:
    """Give where a line leaves the picture: its last point inside."""
    inside = np.flatnonzero(safe <= top)
    at = int(inside[-1]) if inside.size else 0
    return float(t[at]), float(min(safe[at], top))


def material_words(answer: Thinnest, shown: Shown) -> str:
    """Say what one material needs."""
    name = style.clip(answer.material.name, 32)
    if math.isinf(answer.thickness):
        return f"{name}:\nno thickness carries it, at best {amperes(answer.best, down=True)} A"
    return f"{name}:\nfrom {shown.units.length(answer.thickness)}, set by {answer.set_by.replace('_', ' ')}"


def alt(shown: Shown) -> str:
    """Say in words what the figure shows."""
    parts = "; ".join(material_words(a, shown).replace("\n", " ") for a in shown.answers)
    return (
        f"{TITLE}, wanted {amperes(shown.wanted)} A; the file has {shown.units.length(shown.own)}. {parts}. "
        "Lines go through the stock thicknesses."
    )
