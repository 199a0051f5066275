"""The plate itself: thicker, or of another material."""

from __future__ import annotations

from collections.abc import Iterator

from .. import cards
from ..drivefile import DriveFile
from ..model import Drive
from ._common import TO_SUIT, TORQUE, WORKSHOP, Change, Offer, family, given, mm, speaker

SIZES = 2  # next stock sizes that are tried
BY_FAMILY = {"aluminium": "al6061_t6", "steel": "s235"}
ORDER = ("plastic", "wood", "aluminium", "steel")
OF_THE_OLD = (
    "mount.elastic_modulus", "mount.yield_strength", "mount.fatigue_strength", "mount.temperature",
)  # fmt: skip
SLEEVES = ("mount.sleeve_diameter", "mount.sleeve_flange", "mount.motor_sleeve_diameter")


def thicker(_: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer the next stock thicknesses."""
    say = speaker(drive)
    now = float(drive.mount.thickness)
    stock = cards.stock(family(drive), drive.system).thicknesses
    bigger = [t for t in stock if float(t) > 1.02 * now][:SIZES]
    for size in bigger:
        words = f"mount {say(float(size))} thick instead of {say(now)}"
        yield words, {"mount.thickness": mm(float(size))}


def material(file: DriveFile, drive: Drive) -> Iterator[Offer]:
    """Offer the stiffer families, and a stronger grade of steel."""
    own = drive.mount.material.card
    for group, name in BY_FAMILY.items():
        card = cards.material(name)
        if own.family in ORDER and ORDER.index(group) > ORDER.index(own.family):
            yield _other(file, drive, card)
    strong = cards.material("s355")
    if own.family == "steel" and float(own.yield_strength) < 0.9 * float(strong.yield_strength):
        yield _other(file, drive, strong)


def _other(file: DriveFile, drive: Drive, card: cards.Material) -> Offer:
    keys: dict[str, object] = {"mount.material": card.id, **{k: None for k in OF_THE_OLD if given(file, k) is not None}}  # fmt: skip
    words = f"{card.name} instead of {drive.mount.material.card.name}, as thick as now"
    if given(file, "mount.form") == "sleeved plate":  # sleeves are for soft plates
        keys |= {"mount.form": "plate"}
        words += ", without the sleeves"
    if given(file, "fixings.surface") in ("plastic on steel", "wood on steel", "aluminium on steel"):  # fmt: skip
        keys |= {"fixings.surface": "aluminium on steel" if card.family == "aluminium" else "painted"}  # fmt: skip
    soft = drive.mount.material.card.family in ("plastic", "wood")
    if soft and drive.fixings.bolts.count:
        keys |= {TORQUE: TO_SUIT, "fixings.preload": None}
        words += ", its frame bolts tightened to suit"
    return words, keys


CHANGES = (
    Change(name="thicker plate", cost=WORKSHOP, tools="saw, drill; longer bolts", offers=thicker,
           caution="See that the bolts are long enough for the thicker plate."),
    Change(name="other material", cost=WORKSHOP, tools="saw, drill", offers=material),
)  # fmt: skip
