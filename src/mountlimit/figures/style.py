"""One look for every figure: sizes, fonts, colours with a second sign beside them, and text made safe."""

from __future__ import annotations

import base64
import io
import re
import unicodedata
import warnings
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from functools import wraps
from typing import Any, ParamSpec
from xml.sax.saxutils import escape

import matplotlib
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.figure import Figure

WIDTH = 7.2  # inches: the text width of a sheet of A4
SMALL, NORMAL, LARGE = 7.5, 8.5, 10.5  # points
LINE = 1.3  # height of a line of text over its size
POINT = 72.0  # points per inch
DPI = 150
RASTER = 72  # per inch, of the shaded plates inside an SVG

INK, SOFT, PALE, PAPER = "#1a1a1a", "#5a5a5a", "#e4e4e4", "#ffffff"
BLUE, RED, GREEN, PURPLE = "#00558c", "#a83c00", "#00664a", "#7a2d6b"
COLOURS = (BLUE, RED, GREEN, PURPLE, INK)
DASHES: tuple[Any, ...] = ("-", (0, (6, 2)), (0, (2, 1.5)), (0, (7, 2, 1.5, 2)), (0, (1, 1)))
MARKERS = ("o", "s", "^", "D", "v", "P", "X", "<", ">", "*")
STRESS_MAP = "Greys"  # light to dark: reads the same without colour

RC: dict[str, Any] = {
    "font.family": "DejaVu Sans", "font.size": NORMAL, "text.parse_math": False, "text.color": INK,
    "axes.edgecolor": SOFT, "axes.labelcolor": INK, "axes.titlesize": NORMAL, "axes.labelsize": NORMAL,
    "axes.unicode_minus": False, "xtick.labelsize": SMALL, "ytick.labelsize": SMALL, "xtick.color": INK,
    "ytick.color": INK, "svg.fonttype": "none", "hatch.linewidth": 0.5, "path.simplify": True,
    "axes.spines.top": False, "axes.spines.right": False, "legend.fontsize": SMALL, "figure.dpi": DPI,
    "grid.color": PALE, "grid.linewidth": 0.6, "figure.facecolor": PAPER,
}  # fmt: skip
FALLBACK = "'DejaVu Sans', Verdana, sans-serif"  # Verdana is as wide
ATTRIBUTE = re.compile(r'(?<=\s)(d|x|y|transform|width|height)="([^"]*)"')
DECIMALS = re.compile(r"-?\d+\.\d{2,}")
LOOK = re.compile(r' style="([^"]*)"')
IMAGE = re.compile(r"data:image/png;base64,([\w+/=\s]*)")
SHADES = 64
P = ParamSpec("P")


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A drawn figure: its name (of a file), its heading, and what it shows in words and numbers."""

    name: str
    title: str
    figure: Figure
    alt: str


@contextmanager
def styled() -> Iterator[None]:
    """Draw in this look; letters that no font has are shown as a box without a warning."""
    with matplotlib.rc_context(), warnings.catch_warnings():
        matplotlib.rcdefaults()
        settings: Any = matplotlib.rcParams  # its keys are a list of names, ours a mapping
        settings.update(RC)
        warnings.filterwarnings("ignore", message="Glyph .* missing from")
        warnings.filterwarnings("ignore", message="Matplotlib currently does not support")
        yield


def drawn(draw: Callable[P, Figure]) -> Callable[P, Figure]:
    """Make a drawing function draw in this look."""

    @wraps(draw)
    def inside(*args: P.args, **kwargs: P.kwargs) -> Figure:
        with styled():
            return draw(*args, **kwargs)

    return inside


def figure(height: float, heading: str, drive_title: str) -> Figure:
    """Give an empty figure with its heading and the drive's name, clipped to the width."""
    made = Figure(figsize=(WIDTH, height))
    top = 1.0 - 0.06 / height
    made.text(0.012, top, clip(heading, 78), fontsize=LARGE, weight="bold", va="top")
    made.text(
        0.012, top - 0.21 / height, clip(drive_title, 84), fontsize=SMALL, color=SOFT, va="top"
    )
    return made


def clip(text: str, columns: int) -> str:
    """Give one line of at most so many columns; wide letters take two, control letters are left out.

    Examples
    --------
    >>> clip("a\\tb\\u202ec", 10), clip("abcdef", 4)
    ('a bc', 'abc…')
    """
    kept = "".join(c for c in " ".join(text.split()) if unicodedata.category(c)[0] != "C")
    used, found = 0, ""
    for letter in kept:
        used += 2 if unicodedata.east_asian_width(letter) in "WF" else 1
        if used > columns:
            while found and _columns(found) > columns - 1:
                found = found[:-1]
            return found + "…"
        found += letter
    return found


def room_for(names: Sequence[str], least: float) -> float:
    """Give how much room names at an axis need, inches; at least ``least``."""
    return max(least, 0.15 + 0.62 * SMALL / POINT * max(map(len, names)))


def goes_on(axes: Axes, row: float, colour: str, size: float) -> None:
    """Set an arrow at the right edge: a bar goes on past what is drawn."""
    edge = axes.get_yaxis_transform()
    axes.plot([1.012], [row], ">", color=colour, ms=size, clip_on=False, transform=edge)


def legend_of_bars(figure: Figure, handles: Sequence[Artist]) -> None:
    """Say below a figure of bars what every sign means."""
    figure.legend(handles=handles, loc="lower left", bbox_to_anchor=(0.01, 0.0), ncols=3, frameon=False,
                  fontsize=SMALL - 0.5, handlelength=2.4, columnspacing=1.6)  # fmt: skip


def _columns(text: str) -> int:
    return sum(2 if unicodedata.east_asian_width(c) in "WF" else 1 for c in text)


def svg(picture: Picture) -> str:
    """Give a figure as SVG to stand inside a page: text as text, own names, the same every time."""
    held = io.StringIO()
    with styled():
        matplotlib.rcParams["svg.hashsalt"] = picture.name
        picture.figure.savefig(
            held, format="svg", dpi=RASTER, metadata={"Date": None, "Creator": None}
        )
    text = held.getvalue()
    text = text[text.index("<svg") :].replace("'DejaVu Sans'", FALLBACK)
    text = re.sub(r"<metadata>.*?</metadata>", "", text, flags=re.DOTALL)
    used = set(re.findall(r"(?:url\(|href=\")#([^\")]+)", text))
    names = {name: f"{picture.name}-n{i}" for i, name in enumerate(sorted(used))}
    text = re.sub(r' id="([^"]*)"', lambda m: f' id="{names[m[1]]}"' if m[1] in used else "", text)
    text = re.sub(r"(url\(|href=\")#([^\")]+)", lambda m: f"{m[1]}#{names[m[2]]}", text)
    text = text.replace('xlink:href="#', 'href="#')
    text = re.sub(r"<!--.*?-->|(?<=>)\n\s*(?=<)", "", text, flags=re.DOTALL)
    text = ATTRIBUTE.sub(
        lambda m: f'{m[1]}="{_short(m[2], 2 if m[1] == "transform" else 1)}"', text
    )
    text = re.sub(r' transform="rotate\(-?0 [^"]*"|<g ?/>', "", text)
    text = re.sub(r"<g>((?:<text\b[^>]*>[^<]*</text>)*)</g>", r"\1", text)
    text = re.sub(r' d="([^"]*)"', lambda m: f' d="{_joined(m[1])}"', text)
    head, rest = IMAGE.sub(_fewer_shades, text).split(">", 1)
    rules, rest = _classes(picture.name, rest)
    said = f"<title>{escape(picture.title)}</title><desc>{escape(picture.alt)}</desc>"
    return f'{head} role="img">{said}{rules}{rest}'


def _classes(name: str, text: str) -> tuple[str, str]:
    """Say each look that is drawn more than once in one rule, by classes of the figure's own."""
    looks = [look for look, times in Counter(LOOK.findall(text)).items() if times > 1]
    names = {look: f"{name}-{i}" for i, look in enumerate(looks)}
    rules = "".join(f".{names[look]}{{{_close(look)}}}" for look in looks)
    text = LOOK.sub(
        lambda m: f' class="{names[m[1]]}"' if m[1] in names else f' style="{_close(m[1])}"', text
    )
    return (f"<style>{rules}</style>" if rules else ""), text


def _close(look: str) -> str:
    return re.sub(r"([:;]) ", r"\1", look)


def _fewer_shades(found: re.Match[str]) -> str:
    """Write an inner picture with a palette: its greys need no more."""
    from PIL import Image

    held = io.BytesIO()
    whole = Image.open(io.BytesIO(base64.b64decode(found[1])))
    few = whole.convert("RGBA").quantize(
        SHADES, Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE
    )
    few.save(held, format="png", optimize=True)
    return f"data:image/png;base64,{base64.b64encode(held.getvalue()).decode()}"


def _short(numbers: str, digits: int) -> str:
    """Write the numbers of a drawing attribute to so many decimals of a point (0.1 is 0.035 mm)."""
    found = DECIMALS.sub(lambda m: f"{float(m[0]):.{digits}f}".rstrip("0").rstrip("."), numbers)
    return " ".join(found.split())


def _joined(path: str) -> str:
    """Write a path without the spaces round its letters."""
    return re.sub(r" ?([A-Za-z]) ?", r"\1", path)


def png(picture: Picture) -> bytes:
    """Give a figure as PNG."""
    held = io.BytesIO()
    with styled():
        picture.figure.savefig(held, format="png", dpi=DPI, metadata={"Software": None})
    return held.getvalue()
