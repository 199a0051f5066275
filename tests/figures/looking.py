"""What a figure really drew: its texts with their boxes, and the axes with numbers."""

from __future__ import annotations

import re
from contextlib import contextmanager

from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure
from matplotlib.text import Text

from mountlimit.figures import style

TOUCH = 1.0  # pixels by which boxes may lie over one another: the empty edge of a box of text
NUMBER = re.compile(
    r"\d+(?:\.\d+)?(?:e[+-]?\d+)? (?:A|N|kN|mm|m|in|MPa|GPa|psi|ksi|deg|N\*m|lbf\*ft|lbf\*in|lbf|%)(?![\w*])"
)


@contextmanager
def _recorded(kept):
    own = Text.draw

    def draw(self, renderer):
        if self.get_visible() and self.get_text().strip():
            kept.append((self.get_text(), Text.get_window_extent(self, renderer), self))
        return own(self, renderer)

    Text.draw = draw
    try:
        yield
    finally:
        Text.draw = own


def drawn_texts(figure: Figure):
    """Give (text, box in pixels, artist) of every text that is drawn."""
    kept = []
    with style.styled(), _recorded(kept):
        FigureCanvasAgg(figure).draw()
    return kept


def overlaps(figure: Figure) -> list[str]:
    """Name the texts that lie over one another or outside the figure."""
    texts = drawn_texts(figure)
    found = []
    wide, high = figure.bbox.width, figure.bbox.height
    for i, (one, a, _) in enumerate(texts):
        if a.x0 < -TOUCH or a.y0 < -TOUCH or a.x1 > wide + TOUCH or a.y1 > high + TOUCH:
            found.append(f"outside: {one!r} {a.extents.round()} of {wide:.0f} x {high:.0f}")
        for two, b, _ in texts[i + 1 :]:
            over_x = min(a.x1, b.x1) - max(a.x0, b.x0)
            over_y = min(a.y1, b.y1) - max(a.y0, b.y0)
            if over_x > TOUCH and over_y > TOUCH:
                found.append(f"{one!r} over {two!r} by {over_x:.1f} x {over_y:.1f}")
    return found


def without_unit(figure: Figure) -> list[str]:
    """Name the axes that show numbers and have no unit in brackets in their label."""
    artists = [artist for _, _, artist in drawn_texts(figure)]
    found = []
    for axes in figure.axes:
        for axis in (axes.xaxis, axes.yaxis):
            ticks = [t.get_text() for t in axis.get_ticklabels() if t in artists]
            named = type(axis.get_major_locator()).__name__ == "FixedLocator"
            counts = [t for t in ticks if re.fullmatch(r"-?[\d.]+", t)]
            if counts and not re.search(r"\[.+\]", axis.get_label().get_text()):
                if named and axes.get_ylim()[0] > axes.get_ylim()[1]:
                    continue  # rows of a list: chains are called 40 or 219
                found.append(f"{ticks} labelled {axis.get_label().get_text()!r}")
    return found


def numbers(text: str) -> set[str]:
    """Give the numbers with a unit in a text."""
    return set(NUMBER.findall(text.replace("\n", " ")))
