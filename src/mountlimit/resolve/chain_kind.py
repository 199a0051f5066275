"""Mixed-up chains: sprockets cut for another one, caliper readings of another one."""

from __future__ import annotations

from .. import cards, lookalikes
from ..lookalikes import Match, Misfit, Readings
from ..picking import Picker

KEYS = {
    "pitch": "chain.ten_pitches", "roller": "chain.roller_diameter", "width": "chain.inner_width",
}  # fmt: skip


def compare(picker: Picker, card: cards.Chain) -> None:
    """Refuse, or warn of, a chain that is not the one of ``chain.type``."""
    _sprockets(picker, card)
    told = {k: picker.optional(v) for k, v in KEYS.items()}
    if any(v is not None for v in told.values()):
        readings = Readings(
            ten_pitches=told["pitch"], roller_diameter=told["roller"], inner_width=told["width"]
        )
        _readings(picker, card, readings)


def _sprockets(picker: Picker, card: cards.Chain) -> None:
    """Look at the chain on sprockets that were cut for another."""
    key = "chain.sprockets"
    cut: cards.Chain | None = picker.card(key)
    found = [] if cut is None else lookalikes.on_sprockets(card, cut)
    if cut is None or not found:
        return
    words = f"chain {card.designation} on sprockets cut for {cut.designation}: {_joined(found)}"
    if any(m.refused for m in found):
        picker.mistake(key, words, "sprockets must be cut for the chain in chain.type")
    else:
        picker.warnings.append(f"{key}: {words}.")


def _joined(found: list[Misfit]) -> str:
    ordered = sorted(found, key=lambda m: not m.refused)
    return "; ".join(f"{m.what}: {m.happens}" for m in ordered)


def _readings(picker: Picker, card: cards.Chain, readings: Readings) -> None:
    """Look at the measured sizes beside those of the card."""
    ranked = lookalikes.rank(readings)
    own = next(m for m in ranked if m.chain.id == card.id)
    if own.fits:
        return
    new = [m for m in ranked if m.fits]
    if own.fits_worn and not new:
        _worn(picker, own)
        return
    found = lookalikes.misfits(readings, card, worn=not new)
    mixed = [m for m in found if m.refused]
    words = f"is not that of a new chain {card.designation}"
    words += f": {_joined(found)}" if found else ""
    if mixed:
        picker.mistake(KEYS[mixed[0].of], words, _others(own, ranked, new))
    else:
        key = KEYS[found[0].of] if found else next(k for k in KEYS.values() if k in picker.given)
        picker.warnings.append(
            f"{key} = '{picker.given[key].text}' {words} ({_others(own, ranked, new)})."
        )


def _others(own: Match, ranked: list[Match], new: list[Match]) -> str:
    """Say which chains the readings could be of."""
    if own.fits_worn and new:
        return f"so measures a new {lookalikes.named(new)}, or a {own.chain.designation} that is worn out"
    if new:
        return f"so measures {lookalikes.named(new)}"
    worn = [m for m in ranked if m.fits_worn]
    if worn:
        return f"so measures a worn {lookalikes.named(worn)}"
    return f"no chain of the data fits these readings; nearest: {lookalikes.named(ranked[:1])}"


def _worn(picker: Picker, own: Match) -> None:
    """Say how far the chain is worn, and how to give it."""
    share = 100 * float(own.lengthened or 0.0)
    given = picker.optional("chain.wear")
    if given is not None and 100 * float(given) >= share - 0.25:
        return
    picker.warnings.append(
        f"The chain is {share:.1f} % longer than new over ten pitches: it is worn. Unless the centres were set "
        f'with it as it is now, give chain.wear = "{share:.1f} %".'
    )
