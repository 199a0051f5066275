"""Labels beside a picture: pushed apart so that none lies over another, each with a line to its place."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from matplotlib.axes import Axes
from matplotlib.figure import Figure
from matplotlib.lines import Line2D

from . import style


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """A text and the place it speaks of, in the numbers of its axes."""

    text: str
    place: tuple[float, float]
    colour: str = style.INK
    dot: bool = True


def spread(
    wanted: Sequence[float], heights: Sequence[float], low: float, high: float
) -> list[float]:
    """Give the middles of labels, as near to where they are wanted as fits without overlap.

    Labels pushed together share their shift evenly (pool of adjacent violators). Where all of them
    together do not fit, they start at ``high`` and run out below ``low``.

    Examples
    --------
    >>> spread([1.0, 1.0, 5.0], [1.0, 1.0, 1.0], 0.0, 10.0)
    [0.5, 1.5, 5.0]
    """
    order = sorted(range(len(wanted)), key=lambda i: wanted[i])
    blocks: list[tuple[float, float, list[int]]] = []  # low edge, height, members
    for i in order:
        block = (wanted[i] - heights[i] / 2, heights[i], [i])
        block = (min(max(block[0], low), high - block[1]), *block[1:])
        while blocks and blocks[-1][0] + blocks[-1][1] > block[0] + 1e-12:
            block = _joined(blocks.pop(), block, wanted, heights, low, high)
        blocks.append(block)
    middles = [0.0] * len(wanted)
    for edge, _, members in blocks:
        for i in members:
            middles[i] = edge + heights[i] / 2
            edge += heights[i]
    return middles


def _joined(
    one: tuple[float, float, list[int]], two: tuple[float, float, list[int]],
    wanted: Sequence[float], heights: Sequence[float], low: float, high: float,
) -> tuple[float, float, list[int]]:  # fmt: skip
    members, height = one[2] + two[2], one[1] + two[1]
    offset, total = 0.0, 0.0
    for i in members:
        total += wanted[i] - heights[i] / 2 - offset
        offset += heights[i]
    edge = min(max(total / len(members), low), high - height)
    return edge, height, members


def beside(
    figure: Figure, axes: Axes, labels: Sequence[Label], x: float, band: tuple[float, float],
    side: str = "right", size: float = style.SMALL,
) -> None:  # fmt: skip
    """Write labels in a column beside the axes, each with a thin line to its place.

    Parameters
    ----------
    x : over the figure's width
        where the texts begin ("right") or end ("left")
    band : over the figure's height
        lowest and highest edge of the column
    """
    axes.apply_aspect()
    height = float(figure.get_figheight())
    to_figure = axes.transData + figure.transFigure.inverted()
    places = [tuple(to_figure.transform(label.place)) for label in labels]
    line = size * style.LINE / style.POINT / height
    heights = [line * (label.text.count("\n") + 1) + 0.25 * line for label in labels]
    middles = spread([p[1] for p in places], heights, *band)
    away = -0.008 if side == "right" else 0.008
    for label, place, middle in zip(labels, places, middles, strict=True):
        figure.text(
            x, middle, label.text, fontsize=size, color=label.colour, va="center",
            ha="left" if side == "right" else "right", linespacing=1.15,
        )  # fmt: skip
        bend = x + 3 * away
        figure.add_artist(
            Line2D([place[0], bend, x + away / 2], [place[1], middle, middle], color=label.colour, lw=0.5,
                   marker="o" if label.dot else "", markevery=[0], markersize=2.2)
        )  # fmt: skip
