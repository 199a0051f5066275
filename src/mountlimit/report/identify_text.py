"""The answer to "which chain is this", as text and as JSON-ready data."""

from __future__ import annotations

from typing import Any

from rich.console import Console

from .. import lookalikes
from ..identify import LIMIT, Identity, Rival, Telling
from ..lookalikes import Match, Misfit
from .quantities import quantity
from .table import heading, new_table

PAST_USE = 0.06  # lengthened by more, it is another chain
CLOSE = 1.0  # of a tolerance, nearer than which no chain is named before another
SHOWN = 6  # look-alikes in the table
WEAR = "1.5 % is the limit (1 % with a sprocket of 200 teeth)"
HOW = (
    "How to measure, motor off and its supply unplugged: turn the driven side by hand until the run is tight, or hang a "
    "weight on the chain, so that ten pitches lie straight; caliper from the left side of one pin to the left side of the "
    "tenth after it. Roller: across one roller, at its middle. Inner width: between two inner plates, with the caliper's "
    "inside jaws. Keep fingers out of the teeth."
)


def write(found: Identity, console: Console) -> None:
    """Print which chain it is, how far off the readings are, and what would tell it apart."""
    console.print(_first(found) + "\n")
    console.print(_table(found))
    for words in (_wear(found), _doubt(found), found.marking_note):
        if words:
            console.print("\n" + words)
    _rivals(found, console)
    if found.fits:
        console.print(f'\nLine for the drive file, under [chain]:  type = "{found.best.chain.id}"')
    console.print("\n" + HOW)


def _first(found: Identity) -> str:
    name = _name(found.best)
    if not found.fits:
        return f"No chain known here fits. Nearest is {name}, but {_why_not(found.best)}.{_miscounted(found)}{_past_use(found)}"
    worn = (
        ""
        if found.worn is None or found.state == "new"
        else f", {100 * found.worn:.1f} % longer than new"
    )
    if found.by_marking and not found.measured:
        return f"By its marking this is {name}. A stamp alone is no proof: measure it."
    stamp = "" if not found.contradicted else f" It is not the {found.marking} of its marking."
    if not found.rivals:
        return f"This is {name}{worn}.{stamp}"
    if found.by_marking:
        return (
            f"This is {name}{worn}: the readings leave {_count(found)}, and the marking picks it."
        )
    others = [r.match.chain.id for r in found.rivals]
    more = f" or one of {len(others) - 3} more" if len(others) > 3 else ""
    listed = ", ".join(others[:3])
    if found.rivals[0].match.score - found.best.score < CLOSE:
        return f"It could be {name}{worn}, or {listed}{more}: these readings cannot tell them apart.{stamp}"
    return f"Nearest is {name}{worn}, but these readings fit {listed}{more} as well.{stamp}"


def _count(found: Identity) -> str:
    return f"{len(found.rivals) + 1} chains"


def _name(match: Match) -> str:
    card = match.chain
    alias = next((a for a in card.aliases if a[:1].isdigit() and "-" not in a), "")
    return f"{card.id}{f' ({alias})' if alias else ''}, pitch {_mm(card.pitch, 3)} mm"


def _miscounted(found: Identity) -> str:
    if found.counted is None:
        return ""
    chain, count = found.counted
    return f" It would be {count} pitches of {chain.id}: count again."


def _past_use(found: Identity) -> str:
    """Say where it may be a chain far past its life: the body fits, the length is a little too much."""
    best, long = found.best, found.best.lengthened
    if found.counted is not None or long is None or not lookalikes.WORN < long <= PAST_USE:
        return ""
    body = all(d is None or abs(d) <= lookalikes.CALIPER + 1e-9 for d in (best.roller, best.width))
    return (
        f" If it is {best.chain.id} it is worn far past use: replace it and its sprockets."
        if body
        else ""
    )


def _why_not(match: Match) -> str:
    """Name the readings that do not fit, worst first in plain words."""
    said = []
    if (
        match.lengthened is not None
        and not lookalikes.NEW_SHORT <= match.lengthened <= lookalikes.WORN
    ):
        what = "shorter than new" if match.lengthened < 0 else "longer, more than wear makes (3 %)"
        said.append(f"ten pitches are {100 * abs(match.lengthened):.1f} % {what}")
    for words, off in (("rollers", match.roller), ("inner width", match.width)):
        if off is not None and abs(off) > lookalikes.CALIPER + 1e-9:
            said.append(f"{words} {_mm(abs(off))} mm too {'large' if off > 0 else 'small'}")
    return " and ".join(said) or "its readings are off together"


def _table(found: Identity) -> Any:
    readings, card = found.readings, found.best.chain
    table = new_table()
    table.add_column(f"against {card.id}")
    for head in ("measured", "card", "off"):
        table.add_column(head, justify="right")
    rows = (
        ("ten pitches", readings.ten_pitches, 10 * float(card.pitch), found.best.lengthened),
        ("roller diameter", readings.roller_diameter, float(card.roller_diameter), found.best.roller),
        ("inner width", readings.inner_width, float(card.inner_width), found.best.width),
    )  # fmt: skip
    for what, measured, own, off in rows:
        if measured is None or off is None:
            table.add_row(what, "-", f"{_mm(own)} mm", "not measured")
        elif what == "ten pitches":
            table.add_row(what, f"{_mm(measured)} mm", f"{_mm(own)} mm", f"{100 * off:+.2f} %")
        else:
            table.add_row(what, f"{_mm(measured)} mm", f"{_mm(own)} mm", f"{1000 * off:+.2f} mm")
    table.add_row("link plate", "-", f"{_mm(card.plate_thickness)} mm", "")
    return table


def _wear(found: Identity) -> str:
    if found.worn is None or found.state in ("unknown", "new"):
        if not found.fits:
            return ""
        return (
            "Length as that of a new one."
            if found.state == "new"
            else "Wear not known: measure ten pitches."
        )
    grown = f"If it is this chain it has worn by {100 * found.worn:.1f} %"
    if found.state == "replace":
        return f"{grown}. Replace it, and look at the sprockets' teeth: {WEAR}."
    if found.state == "soon":
        return f"{grown}. Have a new one ready, and replace it now if a sprocket has 200 teeth: {WEAR}."
    return f"{grown}. It can run on: {WEAR}."


def _doubt(found: Identity) -> str:
    if not found.contradicted or found.marked is None:
        return ""
    return (
        f"The marking does not agree: '{found.marking}' is {found.marked.chain.id}, but {_why_not(found.marked)}. "
        "The readings were believed. Read the stamp on several outer plates (a chain may be joined of two), and measure again."
    )


def _rivals(found: Identity, console: Console) -> None:
    if not found.rivals:
        return
    heading(console, f"\nLook-alikes, and what tells them from {found.best.chain.id}")
    table = new_table()
    table.add_column("chain", no_wrap=True)
    table.add_column("measure or look at")
    table.add_column(f"{found.best.chain.id} on sprockets cut for it")
    for rival in found.rivals[:SHOWN]:
        table.add_row(rival.match.chain.id, _tell(rival, found), _swap(rival.swapped))
    console.print(table)
    if len(found.rivals) > SHOWN:
        console.print(f"{len(found.rivals) - SHOWN} more (--json): measure what is missing first.")


def _tell(rival: Rival, found: Identity) -> str:
    telling, best, other = rival.telling, found.best.chain, rival.match.chain
    worn = rival.match.lengthened
    is_worn = (
        ""
        if rival.match.fits or worn is None
        else f" (it would be {'worn out' if worn > LIMIT else 'worn'}: {100 * worn:.1f} %)"
    )
    if telling is None:
        kn = (float(c.minimum_tensile_strength) / 1000 for c in (best, other))
        return "no size left that differs: read the stamp (tensile {:.1f} against {:.1f} kN)".format(*kn) + is_worn  # fmt: skip
    return f"{_at(telling, best.id, other.id)}{is_worn}"


def _at(telling: Telling, best: str, rival: str) -> str:
    over, under = (best, rival) if telling.best > telling.rival else (rival, best)
    return f"{telling.what}: over {_mm(telling.between)} mm {over}, under it {under}"


def _swap(misfits: tuple[Misfit, ...]) -> str:
    if not misfits:
        return "goes on them"
    return "; ".join(f"{m.what}: {m.happens}" for m in misfits)


def _mm(length: float, digits: int = 2) -> str:
    return f"{1000 * float(length):.{digits}f}".rstrip("0").rstrip(".")


def record(found: Identity) -> dict[str, Any]:
    """Give the answer as JSON-ready data in SI."""
    readings = found.readings
    return {
        "schema": "mountlimit-identify-1", "fits": found.fits,
        "readings": {
            "ten_pitches": quantity(readings.ten_pitches, "m"), "roller_diameter": quantity(readings.roller_diameter, "m"),
            "inner_width": quantity(readings.inner_width, "m"), "marking": found.marking,
        },
        "best": _match(found.best), "picked_by_marking": found.by_marking,
        "marking": {
            "chain": None if found.marked is None else found.marked.chain.id,
            "contradicted": found.contradicted, "note": found.marking_note,
        },
        "wear": {"lengthened": found.worn, "state": found.state},
        "look_alikes": [_rival_record(r) for r in found.rivals],
        "nearest": [_match(m) | {"why_not": _why_not(m)} for m in ((found.best, *found.nearest) if not found.fits else ())],
        "counted": None if found.counted is None else {"chain": found.counted[0].id, "pitches": found.counted[1]},
        "line": f'type = "{found.best.chain.id}"' if found.fits else None,
    }  # fmt: skip


def _match(m: Match) -> dict[str, Any]:
    card = m.chain
    return {
        "chain": card.id, "fits_new": m.fits, "fits_worn": m.fits_worn, "lengthened": m.lengthened,
        "roller_off": quantity(m.roller, "m"), "width_off": quantity(m.width, "m"), "pitch": quantity(card.pitch, "m"),
        "roller_diameter": quantity(card.roller_diameter, "m"), "inner_width": quantity(card.inner_width, "m"),
        "plate_thickness": quantity(card.plate_thickness, "m"), "source": card.source,
    }  # fmt: skip


def _rival_record(rival: Rival) -> dict[str, Any]:
    t = rival.telling
    return _match(rival.match) | {
        "tell_apart": None if t is None else {
            "measure": t.what, "best": quantity(t.best, "m"), "rival": quantity(t.rival, "m"), "between": quantity(t.between, "m"),
        },
        "mixed_up": [{"what": m.what, "happens": m.happens, "refused": m.refused} for m in rival.swapped],
    }  # fmt: skip
