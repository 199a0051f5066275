"""Which chain is this: from readings and the marking on the plates to a named chain, or to what to read next.

The readings decide; a marking picks among chains that the readings cannot tell apart, and is
doubted where they speak against it.  Nothing here knows a drive file.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal

from . import cards, lookalikes, units
from .cards import Chain
from .errors import InputError, Mistake, MountlimitError, UnknownCard
from .formulas import chain_length
from .lookalikes import Match, Misfit, Readings

# What a reading may be; outside, something else was measured.
BOUNDS = {
    "--ten-pitches": (0.04, 0.6, "ten pitches, pin to pin"),
    "--inner-width": (0.002, 0.05, "the gap between the inner plates"),
    "--roller": (0.002, 0.05, "the diameter of a roller"),
}
APART = 2 * lookalikes.CALIPER  # m, two sizes that a caliper tells apart
PLATE_APART = 0.0002  # m, of a plate's thickness, read at several places
OTHER_COUNTS = (5, 8, 9, 11, 12, 20)  # pitches that are measured by mistake
LIMIT = float(chain_length.wear_limit(1))  # lengthening at which any chain is replaced
LARGE = 200  # teeth of a large driven sprocket, for the earlier wear limit
BEFORE, AFTER = r"^(RS|#|NO\.?|ANSI)\s*-?", r"[\s-]*(VX\d*|V|X|XO|ZVM|ZVMX|O|UO|SS|NP)$"
STAMPS = "from memory: RS before the number; V, VX, X, O, ZVM for sealed joints, SS stainless, NP nickel-plated after it"


@dataclass(frozen=True, slots=True, kw_only=True)
class Telling:
    """One further reading that tells two chains apart."""

    what: str
    best: float  # m, the size on the chain named
    rival: float  # m

    @property
    def between(self) -> float:
        """Middle of the two sizes, m."""
        return (self.best + self.rival) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Rival:
    """A chain that the readings fit too, what tells it apart and what a mix-up would do."""

    match: Match
    telling: Telling | None
    swapped: tuple[Misfit, ...]  # the named chain on sprockets cut for this one


@dataclass(frozen=True, slots=True, kw_only=True)
class Identity:
    """What the readings and the marking say.

    ``best`` fits (or is merely nearest where ``fits`` is false); ``rivals`` fit the readings as well.
    """

    readings: Readings
    marking: str
    marked: Match | None  # the chain of the marking beside the readings
    marking_note: str
    best: Match
    fits: bool
    rivals: tuple[Rival, ...]
    nearest: tuple[Match, ...]  # where nothing fits: the next ones
    counted: tuple[Chain, int] | None  # where nothing fits: so many pitches of this chain
    by_marking: bool  # the marking, not the readings, picked it

    @property
    def measured(self) -> bool:
        """Whether anything was measured."""
        r = self.readings
        return any(v is not None for v in (r.ten_pitches, r.roller_diameter, r.inner_width))

    @property
    def contradicted(self) -> bool:
        """Whether the readings speak against the marking."""
        return self.marked is not None and self.measured and not self.marked.fits_worn

    @property
    def worn(self) -> float | None:
        """Lengthening where the chain is longer than new allows; None without a length."""
        return self.best.lengthened if self.fits else None

    @property
    def state(self) -> Literal["unknown", "new", "worn", "soon", "replace"]:
        """How worn it is: ``soon`` is over what a large sprocket stands."""
        if self.worn is None:
            return "unknown"
        if self.worn <= lookalikes.NEW_LONG:
            return "new"
        if self.worn >= LIMIT:
            return "replace"
        return "soon" if self.worn >= float(chain_length.wear_limit(LARGE)) else "worn"


def read(ten_pitches: str, inner_width: str, roller: str, marking: str) -> tuple[Readings, str]:
    """Read the texts of the command; empty for what was not measured.

    Raises
    ------
    InputError
        with one mistake for each reading that cannot be, or where nothing is given.
    """
    mistakes: list[Mistake] = []
    marking = marking.strip()
    texts = {"--ten-pitches": ten_pitches, "--inner-width": inner_width, "--roller": roller}
    found = {name: _length(name, text, mistakes) for name, text in texts.items()}
    if not mistakes and not any((*texts.values(), marking)):
        mistakes.append(Mistake(
            "identify", "", "", "nothing to go by; give at least one reading or the marking",
            'for example --ten-pitches "127 mm" --roller "7.9 mm"',
        ))  # fmt: skip
    if mistakes:
        raise InputError(mistakes)
    readings = Readings(
        ten_pitches=found["--ten-pitches"], inner_width=found["--inner-width"],
        roller_diameter=found["--roller"],
    )  # fmt: skip
    return readings, marking


def _length(name: str, text: str, mistakes: list[Mistake]) -> float | None:
    if not text:
        return None
    least, most, what = BOUNDS[name]
    try:
        value = units.parse(text, "length")
    except units.UnitMistake as error:
        hint = f"for example {error.suggestion}"
        mistakes.append(Mistake("identify", name, f"'{text}'", f"{error.problem}; expected {error.expected}", hint))  # fmt: skip
        return None
    except MountlimitError as error:
        mistakes.append(Mistake("identify", name, f"'{text}'", str(error)))
        return None
    if not least <= value <= most:
        hint = "measure over ten pitches, not one" if value < least and "ten" in name else ""
        expected = f"expected {1000 * least:g} to {1000 * most:g} mm: {what}"
        mistakes.append(Mistake("identify", name, f"'{text}'", expected, hint))
        return None
    return value


def stamped(marking: str) -> tuple[Chain, str]:
    """Give the chain a marking stands for, and what was left out of it to find it.

    Raises
    ------
    UnknownCard
        with the nearest names.
    """
    try:
        return cards.chain(marking), ""
    except UnknownCard as unknown:
        bare = re.sub(AFTER, "", re.sub(BEFORE, "", marking.strip().upper())).strip()
        strands = re.fullmatch(r"(.+)-([23])", bare)
        for name in (bare, *([strands[1]] if strands else [])):
            try:
                found = cards.chain(name)
            except UnknownCard:
                continue
            if strands:
                return (
                    found,
                    f"'{marking}' is {strands[2]} strands of {found.id}; only single chains are known here",
                )
            return found, f"'{marking}' read as {found.id} ({STAMPS})"
        raise unknown from None


def identify(readings: Readings, marking: str = "") -> Identity:
    """Name the chain of some readings and a marking.

    Raises
    ------
    UnknownCard
        where an unknown marking is all there is.
    """
    card, note = _marking(readings, marking)
    ranked = sorted(lookalikes.rank(readings), key=_order)
    marked = next((m for m in ranked if card is not None and m.chain.id == card.id), None)
    fitting = [m for m in ranked if m.fits] + [m for m in ranked if m.fits_worn and not m.fits]
    blind = readings == Readings()
    if blind and marked is not None:
        fitting = [m for m in fitting if _same_but_name(m.chain, marked.chain)]
    picked = marked is not None and marked in fitting
    best = marked if picked and marked is not None else (fitting or ranked)[0]
    rivals = tuple(_rival(best, m, readings) for m in fitting if m is not best)
    return Identity(
        readings=readings, marking=marking, marked=marked, marking_note=note, best=best,
        fits=bool(fitting), rivals=rivals, nearest=() if fitting else tuple(ranked[1:3]),
        counted=None if fitting else _counted(readings), by_marking=picked,
    )  # fmt: skip


def _marking(readings: Readings, marking: str) -> tuple[Chain | None, str]:
    """Give the card of a marking; an unknown one beside readings is only noted."""
    if not marking:
        return None, ""
    try:
        return stamped(marking)
    except UnknownCard as unknown:
        if readings == Readings():
            raise
        return None, f"Marking left out: {unknown} (it may be the maker's own name)"


def _order(m: Match) -> tuple[float, int]:
    return (round(m.score, 6), ("everyday", "specialist", "rare").index(m.chain.availability))


def _same_but_name(one: Chain, other: Chain) -> bool:
    return all(abs(float(a - b)) < 1e-9 for a, b in zip(_sizes(one), _sizes(other), strict=True))


def _sizes(card: Chain) -> tuple[float, float, float]:
    return 10 * float(card.pitch), float(card.roller_diameter), float(card.inner_width)


def _rival(best: Match, other: Match, readings: Readings) -> Rival:
    swapped = tuple(lookalikes.on_sprockets(best.chain, other.chain))
    return Rival(match=other, telling=_telling(best.chain, other.chain, readings), swapped=swapped)


def _telling(best: Chain, other: Chain, readings: Readings) -> Telling | None:
    """Give the reading not yet taken that differs most, over what a caliper tells apart."""
    asked: Sequence[tuple[str, float | None, float, Callable[[Chain], float]]] = (
        ("ten pitches", readings.ten_pitches, 0.005 * _sizes(best)[0], lambda c: _sizes(c)[0]),
        ("roller diameter", readings.roller_diameter, APART, lambda c: float(c.roller_diameter)),
        ("inner width", readings.inner_width, APART, lambda c: float(c.inner_width)),
        ("thickness of a link plate", None, PLATE_APART, lambda c: float(c.plate_thickness)),
    )
    found = [
        (abs(size(best) - size(other)) / apart, Telling(what=what, best=size(best), rival=size(other)))
        for what, taken, apart, size in asked
        if taken is None
    ]  # fmt: skip
    most, telling = max(found, key=lambda pair: pair[0])
    return telling if most >= 1 - 1e-9 else None


def _counted(readings: Readings) -> tuple[Chain, int] | None:
    """Give the chain and count of pitches where not ten were measured; the rest must fit."""
    if readings.ten_pitches is None:
        return None
    for count in OTHER_COUNTS:
        again = Readings(
            ten_pitches=10 * readings.ten_pitches / count, inner_width=readings.inner_width,
            roller_diameter=readings.roller_diameter,
        )  # fmt: skip
        fitting = [m for m in lookalikes.rank(again) if m.fits]
        if fitting:
            return min(fitting, key=_order).chain, count
    return None
