"""Look up data cards: materials, chains, threads, bolts, bearings, keys, set screws, friction.

Every number of a card is a ``worked.Value`` that names its source.  Files are read when first
asked for and kept.  A material is one file in ``materials/``; the other kinds are tables in
``mountlimit/data``.
"""

from __future__ import annotations

import re
from typing import Any

from .data.names import pick
from .data.reading import Card, declared, folder
from .data.substances import Material, material, materials
from .data.tables import (
    Bearing,
    BoltClass,
    Chain,
    FrictionClass,
    KeySize,
    SetScrew,
    Stock,
    Thread,
    table,
)

__all__ = [
    "Bearing", "BoltClass", "Card", "Chain", "FrictionClass", "KeySize", "Material", "SetScrew",
    "Stock", "Thread", "bearing", "bearings", "bolt_class", "bolt_classes", "chain", "chains",
    "folder", "friction", "frictions", "key_for_shaft", "keys", "kinds_of", "material", "materials",
    "set_screw", "set_screws", "stock", "stocks", "thread", "threads", "tightening_scatter",
    "torque_coefficient",
]  # fmt: skip


def chains() -> list[Chain]:
    """All chains."""
    return list(table("chains", "chain", Chain))


def chain(name: str) -> Chain:
    """Chain of a designation or alias ("40", "#40", "ANSI 40", "08A"). Raises UnknownCard."""
    return pick("chain", name, table("chains", "chain", Chain))


def threads() -> list[Thread]:
    """All threads."""
    return list(table("threads", "thread", Thread))


def thread(name: str) -> Thread:
    """Thread of a designation ("M8", "M8x1", "5/16-18 UNC", "1/4"). Raises UnknownCard."""
    return pick("thread", name, table("threads", "thread", Thread))


def bolt_classes() -> list[BoltClass]:
    """All bolt classes."""
    return list(table("bolt_classes", "bolt_class", BoltClass))


def bolt_class(name: str, diameter: float | None = None) -> BoltClass:
    """Property class ("8.8", "grade 5"); of two size ranges the one that holds ``diameter``.

    Without a diameter the range of the smaller sizes is taken. Raises UnknownCard.
    """
    known = table("bolt_classes", "bolt_class", BoltClass)
    found = pick("bolt class", name, known)
    if diameter is None or found.smallest < diameter <= found.largest:
        return found
    ranges = (c for c in known if c.id.split(" over ")[0] == found.id.split(" over ")[0])
    return next((c for c in ranges if c.smallest < diameter <= c.largest), found)


def bearings(kind: str | None = None) -> list[Bearing]:
    """All bearings, or those of one kind ("deep groove", "insert unit")."""
    return [b for b in table("bearings", "bearing", Bearing) if kind in (None, b.kind)]


def bearing(name: str) -> Bearing:
    """Bearing of a number ("6203", "6203-2RS", "UC204"). Raises UnknownCard."""
    stem = re.sub(r"(?i)^(6[023]0[0-7]).*", r"\1", name.strip())  # seals and clearance do not count
    return pick("bearing", stem, table("bearings", "bearing", Bearing))


def keys() -> list[KeySize]:
    """All parallel keys."""
    return list(table("keys", "key", KeySize))


def key_for_shaft(diameter: float, system: str = "metric") -> KeySize | None:
    """Key that belongs to a shaft diameter, or None where the table holds none."""
    slack = 1e-9
    for size in table("keys", "key", KeySize):
        if size.system == system and size.shaft_over + slack < diameter <= size.shaft_to + slack:
            return size
    return None


def set_screws() -> list[SetScrew]:
    """All set screws."""
    return list(table("set_screws", "set_screw", SetScrew))


def set_screw(size: str) -> SetScrew:
    """Set screw of a size ("M6", "1/4", "#10"). Raises UnknownCard."""
    return pick("set screw", size, table("set_screws", "set_screw", SetScrew))


def friction(name: str) -> FrictionClass:
    """Friction of a clamped joint by its surfaces ("dry steel", "painted"). Raises UnknownCard."""
    return pick("surface", name, table("friction", "surface", FrictionClass))


def torque_coefficient(name: str) -> FrictionClass:
    """Coefficient K of T = K F d by the state of the thread ("zinc"). Raises UnknownCard."""
    known = table("friction", "torque_coefficient", FrictionClass)
    return pick("state of the thread", name, known)


def tightening_scatter(name: str) -> FrictionClass:
    """Divide a nominal preload by this for its least ("torque wrench"). Raises UnknownCard."""
    return pick("way of tightening", name, table("friction", "tightening", FrictionClass))


def frictions(kind: str = "surface") -> list[FrictionClass]:
    """All of one kind: "surface", "torque_coefficient" or "tightening"."""
    return list(table("friction", kind, FrictionClass))


def stock(family: str, system: str = "metric") -> Stock:
    """Thicknesses a family is sold in. Raises UnknownCard."""
    return pick("stock", f"{family} {system}", table("stock", "stock", Stock))


def stocks() -> list[Stock]:
    """Every list of thicknesses plate and sheet are sold in."""
    return list(table("stock", "stock", Stock))


def kinds_of(card: Any) -> dict[str, str]:
    """Give the unit kind of every number of a card type."""
    return {name: wanted.kind for name, (wanted, _) in declared(card).items()}
