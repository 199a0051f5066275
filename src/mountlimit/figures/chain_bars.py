"""Chains side by side: safe current of the whole drive with each, and of the chain alone."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from matplotlib.figure import Figure

from ..chains import Choice
from ..model import Drive
from ..report.words import amperes
from . import style

NAME = "chains"
TITLE = "Chains side by side, about the same sprocket and ratio"
OVER = 3.0  # times the largest of the current asked about and the best drive: bars end there
ROW, TOP, BOTTOM = 0.2, 0.62, 0.95  # inches


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """What the figure shows, currents in A (infinity: not reached)."""

    drive_title: str
    own: str
    current: float
    choices: tuple[Choice, ...]
    right: float


def read(drive: Drive, choices: Sequence[Choice], current: float) -> Shown | str:
    """Take the chains that fit the drive; rare ones are left out but for the drive's own."""
    own = drive.chain.chain.id
    kept = tuple(
        c
        for c in choices
        if not c.why_not and (c.chain.availability != "rare" or c.chain.id == own)
    )
    if not kept:
        return "no chain of the cards fits this drive"
    finite = [c.safe for c in kept if math.isfinite(c.safe)]
    right = OVER * max(current, *finite, 0.0) if finite else OVER * current
    return Shown(drive_title=drive.title, own=own, current=current, choices=kept, right=right)


@style.drawn
def draw(shown: Shown) -> Figure:
    """Draw two bars for each chain."""
    count = len(shown.choices)
    height = TOP + BOTTOM + ROW * count
    figure = style.figure(height, TITLE, shown.drive_title)
    left, wide = 0.17, 0.40
    axes = figure.add_axes((left, BOTTOM / height, wide, ROW * count / height))
    for row, choice in enumerate(shown.choices):
        for value, shift, thick, look in (
            (choice.safe, -0.14, 0.40, {"facecolor": style.PAPER, "edgecolor": style.RED, "hatch": "////"}),
            (choice.chain_safe, 0.24, 0.24, {"facecolor": style.PALE, "edgecolor": style.SOFT}),
        ):  # fmt: skip
            axes.barh(row + shift, min(value, shown.right), height=thick, lw=0.8, **look)  # type: ignore[arg-type]
            if value > shown.right:
                axes.plot([1.015], [row + shift], ">", color=look["edgecolor"], ms=4, clip_on=False, transform=axes.get_yaxis_transform())  # fmt: skip
        figure.text(left + wide + 0.03, (BOTTOM + ROW * (count - row - 0.5)) / height, choice_words(choice), va="center", fontsize=style.SMALL - 1)  # fmt: skip
    names = [
        ("> " if c.chain.id == shown.own else "") + style.clip(c.chain.id, 14)
        for c in shown.choices
    ]
    axes.set_yticks(range(count), names)
    axes.set_ylim(count - 0.5, -0.5)
    axes.set_xlim(0, shown.right)
    axes.tick_params(axis="y", length=0)
    axes.set_xlabel("safe motor current [A]")
    asked = axes.axvline(shown.current, color=style.INK, ls="--", lw=1.5, zorder=0.5)
    handles = [
        axes.patches[0],
        axes.patches[1],
        asked,
        *axes.plot([], [], ">", color=style.INK, ms=4, lw=0),
    ]
    words = [
        "whole drive",
        "chain alone",
        f"asked about {amperes(shown.current)} A",
        f"goes on past {shown.right:.0f} A",
    ]
    figure.legend(
        handles, words, loc="lower left", bbox_to_anchor=(0.05, 0.0), ncols=4, frameon=False
    )
    return figure


def choice_words(c: Choice) -> str:
    """Say what one chain gives."""
    safe = "over" if math.isinf(c.safe) else f"{amperes(c.safe, down=True)} A"
    alone = "over" if math.isinf(c.chain_safe) else f"{amperes(c.chain_safe, down=True)} A"
    return f"{c.driving_teeth}/{c.driven_teeth} teeth, {safe} by {c.safe_check.replace('_', ' ')}; alone {alone}"


def alt(shown: Shown) -> str:
    """Say in words what the figure shows."""
    parts = "; ".join(f"{c.chain.id}: {choice_words(c)}" for c in shown.choices)
    return f"{TITLE}; asked about {amperes(shown.current)} A; the file has {shown.own}. {parts}."
