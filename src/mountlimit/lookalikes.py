"""Chains that look alike: which one some caliper readings belong to, and what a mix-up would do.

Nothing here knows a drive file: readings and cards go in, matches and misfits come out.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from . import cards
from .formulas import sprocket, teeth

# Of a new chain's length: 0 to +0.15 % by ISO 606 (from memory); a tenth more for the caliper.
NEW_SHORT, NEW_LONG = -0.0025, 0.0025
WORN = 0.03  # The Complete Guide to Chain 2.2.4 and makers' rules: worn out
CALIPER = 0.00015  # m, of a roller or an inner width (common practice, no source)
FIVE = 5  # teeth over which a wrong pitch adds up
SHOWN = 3  # chains named in one line


@dataclass(frozen=True, slots=True, kw_only=True)
class Readings:
    """What was measured on a chain, in metres; None for what was not."""

    ten_pitches: float | None = None
    roller_diameter: float | None = None
    inner_width: float | None = None

    @property
    def pitch(self) -> float | None:
        """Mean pitch over the ten."""
        return None if self.ten_pitches is None else self.ten_pitches / 10


@dataclass(frozen=True, slots=True, kw_only=True)
class Match:
    """One chain beside the readings; differences are reading less card, None where not measured."""

    chain: cards.Chain
    lengthened: float | None  # of the pitch, over it
    roller: float | None  # m
    width: float | None  # m
    score: float  # root of the sum of squares, each over its tolerance; smallest first

    @property
    def fits(self) -> bool:
        """Tell whether a new chain of this card could give the readings."""
        length = self.lengthened is None or NEW_SHORT <= self.lengthened <= NEW_LONG
        return length and self._body

    @property
    def fits_worn(self) -> bool:
        """Tell whether a worn chain of this card could: longer, and its rollers no thicker."""
        length = self.lengthened is None or NEW_SHORT <= self.lengthened <= WORN
        return length and self._body

    @property
    def _body(self) -> bool:
        return all(d is None or abs(d) <= CALIPER + 1e-9 for d in (self.roller, self.width))


@dataclass(frozen=True, slots=True, kw_only=True)
class Misfit:
    """One way a chain does not go on its sprockets: what differs, and what would happen."""

    of: Literal["pitch", "roller", "width"]
    refused: bool  # else a warning: it runs, but loosely or tightly
    what: str
    happens: str


def rank(readings: Readings, among: Iterable[cards.Chain] | None = None) -> list[Match]:
    """Give every chain beside the readings, nearest first; without readings in order of the cards."""
    found = [_match(readings, card) for card in (cards.chains() if among is None else among)]
    return sorted(found, key=lambda m: m.score)


def _match(readings: Readings, card: cards.Chain) -> Match:
    pitch = readings.pitch
    length = None if pitch is None else pitch / card.pitch - 1
    roller = _less(readings.roller_diameter, card.roller_diameter)
    width = _less(readings.inner_width, card.inner_width)
    parts = ((length, NEW_LONG), (roller, CALIPER), (width, CALIPER))
    score = sum((d / tolerance) ** 2 for d, tolerance in parts if d is not None) ** 0.5
    return Match(chain=card, lengthened=length, roller=roller, width=width, score=score)


def _less(reading: float | None, card: float) -> float | None:
    return None if reading is None else float(reading - card)


def seat_diameter(roller: float) -> tuple[float, float]:
    """Give the smallest and the largest seat that ISO 606 allows for a roller, m."""
    return 1.01 * roller, 2 * float(teeth.seat_radius_max(roller))


def tooth_width(card: cards.Chain) -> float:
    """Give the width of the teeth made for a chain, m."""
    return float(sprocket.tooth_width(card.inner_width, sprocket.width_factor(card.pitch)))


def misfits(chain: Readings, sprockets: cards.Chain, worn: bool = False) -> list[Misfit]:
    """Give how a chain of these sizes goes on sprockets cut for another; empty where it fits.

    With ``worn`` a pitch up to 3 % too long counts as wear.
    """
    found = [
        _pitch(chain.pitch, sprockets, worn), _roller(chain.roller_diameter, sprockets),
        _width(chain.inner_width, sprockets),
    ]  # fmt: skip
    return [m for m in found if m is not None]


def on_sprockets(chain: cards.Chain, sprockets: cards.Chain) -> list[Misfit]:
    """Give how the chain of one card goes on sprockets cut for that of another."""
    sizes = Readings(
        ten_pitches=10 * float(chain.pitch), roller_diameter=float(chain.roller_diameter),
        inner_width=float(chain.inner_width),
    )  # fmt: skip
    return misfits(sizes, sprockets)


def _pitch(pitch: float | None, card: cards.Chain, worn: bool) -> Misfit | None:
    if pitch is None:
        return None
    off = pitch / card.pitch - 1
    if NEW_SHORT <= off <= NEW_LONG:
        return None
    after = FIVE * abs(pitch - card.pitch) * 1000
    what = f"pitch {_mm(pitch, 3)} mm, not {_mm(card.pitch, 3)} ({100 * off:+.1f} %)"
    if worn and NEW_LONG < off <= WORN:
        return Misfit(of="pitch", refused=False, what=what,
                      happens=f"that is the length of a chain worn by {100 * off:.1f} %")  # fmt: skip
    return Misfit(of="pitch", refused=True, what=what,
                  happens=f"after five teeth its rollers are {after:.1f} mm out of their seats and climb the teeth")  # fmt: skip


def _roller(roller: float | None, card: cards.Chain) -> Misfit | None:
    if roller is None:
        return None
    own, (least, largest) = float(card.roller_diameter), seat_diameter(float(card.roller_diameter))
    what = f"rollers {_mm(roller)} mm, not {_mm(own)}"
    if roller > largest:
        return Misfit(of="roller", refused=True, what=what, happens="they do not seat and ride high on the teeth")  # fmt: skip
    if roller > max(least, own + CALIPER):
        return Misfit(of="roller", refused=False, what=what, happens="they seat only in wide-cut teeth: try it by hand")  # fmt: skip
    if roller < own - CALIPER:
        return Misfit(of="roller", refused=False, what=what, happens="they lie loosely in the seats and hammer")  # fmt: skip
    return None


def _width(width: float | None, card: cards.Chain) -> Misfit | None:
    if width is None:
        return None
    own, tooth = float(card.inner_width), tooth_width(card)
    what = f"inner width {_mm(width)} mm, not {_mm(own)}"
    if width < tooth:
        return Misfit(of="width", refused=True, what=what,
                      happens=f"it does not go on teeth {_mm(tooth, 1)} mm wide")  # fmt: skip
    if width > 1.15 * own:
        return Misfit(of="width", refused=False, what=what, happens="it has more play sideways on the teeth than it should")  # fmt: skip
    return None


def _mm(length: float, digits: int = 2) -> str:
    return f"{1000 * float(length):.{digits}f}".rstrip("0").rstrip(".")


def named(matches: Iterable[Match]) -> str:
    """Give the names of the first few chains; stronger grades of one already named are left out."""
    names: list[str] = []
    for m in matches:
        name = m.chain.designation
        if len(names) < SHOWN and not any(name.startswith(n) for n in names):
            names.append(name)
    return " or ".join(names)
