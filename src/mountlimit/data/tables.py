"""The card types whose rows stand together in one file of ``data``, and how a file is read."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, fields
from functools import cache
from pathlib import Path
from typing import Annotated, Any, TypeVar, cast

from ..errors import InputError, Mistake
from ..worked import Value
from .names import twice
from .reading import FAMILIES, SYSTEMS, Card, Reader, quantities, quantity, read_toml, word

C = TypeVar("C", bound=Card)


@dataclass(frozen=True, slots=True, kw_only=True)
class Chain(Card):
    """A roller (or bush) chain, single strand."""

    designation: str
    series: Annotated[str, word("ANSI", "ISO B", "cycle", "motorcycle", "works")]
    availability: Annotated[str, word("everyday", "specialist", "rare")]
    market: Annotated[
        str,
        word(
            "everywhere",
            "industrial suppliers",
            "bicycle trade",
            "motorcycle trade",
            "small scooters",
            "small racing vehicles",
            "rare",
        ),
    ]  # who usually stocks it: common practice, no source
    pitch: Annotated[Value, quantity("length", 0.004, 0.06)]
    inner_width: Annotated[Value, quantity("length", 0.002, 0.05)]
    roller_diameter: Annotated[Value, quantity("length", 0.002, 0.05)]
    pin_diameter: Annotated[Value, quantity("length", 0.001, 0.03)]
    plate_thickness: Annotated[Value, quantity("length", 0.0004, 0.01)]
    plate_height: Annotated[Value, quantity("length", 0.004, 0.06)]
    bearing_area: Annotated[Value, quantity("area", 5e-6, 1e-3)]
    mass_per_length: Annotated[Value, quantity("mass_per_length", 0.05, 10.0)]
    minimum_tensile_strength: Annotated[Value, quantity("force", 2e3, 2e5)]
    tensile_kind: Annotated[str, word("standard minimum", "catalogue minimum", "from memory")]
    minimum_dynamic_strength: Annotated[Value | None, quantity("force", 3e2, 4e4)] = None
    link_plate_constant: Annotated[Value | None, quantity("ratio", 0.001, 0.01)] = None
    roller_bush_constant: Annotated[Value | None, quantity("ratio", 1.0, 50.0)] = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Thread(Card):
    """A screw thread with the hole, head and washers that go with it."""

    designation: str
    system: Annotated[str, word(*SYSTEMS)]
    series: Annotated[str, word("coarse", "fine")]
    diameter: Annotated[Value, quantity("length", 0.002, 0.03)]
    pitch: Annotated[Value, quantity("length", 0.0003, 0.004)]
    pitch_diameter: Annotated[Value, quantity("length", 0.002, 0.03)]
    minor_diameter: Annotated[Value, quantity("length", 0.002, 0.03)]
    stress_area: Annotated[Value, quantity("area", 3e-6, 4e-4)]
    clearance_hole: Annotated[Value, quantity("length", 0.002, 0.03)]
    hex_width: Annotated[Value, quantity("length", 0.004, 0.05)]
    head_diameter: Annotated[Value, quantity("length", 0.003, 0.05)]
    nut_height: Annotated[Value, quantity("length", 0.002, 0.03)]
    washer_diameter: Annotated[Value, quantity("length", 0.005, 0.08)]
    washer_thickness: Annotated[Value, quantity("length", 0.0003, 0.006)]
    wide_washer_diameter: Annotated[Value, quantity("length", 0.005, 0.12)]
    wide_washer_thickness: Annotated[Value, quantity("length", 0.0003, 0.008)]


@dataclass(frozen=True, slots=True, kw_only=True)
class BoltClass(Card):
    """A property class: least stresses in the thread."""

    designation: str
    system: Annotated[str, word(*SYSTEMS)]
    smallest: Annotated[Value, quantity("length", 0.0, 0.05)]  # holds for diameters over this ...
    largest: Annotated[Value, quantity("length", 0.0, 0.05)]  # ... up to and including this
    proof_stress: Annotated[Value, quantity("stress", 1e8, 1.5e9)]
    yield_strength: Annotated[Value, quantity("stress", 1e8, 1.5e9)]
    ultimate_strength: Annotated[Value, quantity("stress", 2e8, 1.6e9)]
    shear_factor: Annotated[Value, quantity("ratio", 0.4, 0.65)]  # shear strength over ultimate


@dataclass(frozen=True, slots=True, kw_only=True)
class Bearing(Card):
    """A deep-groove ball bearing, or the insert of a housed unit (ratings of the inner bearing)."""

    designation: str
    kind: Annotated[str, word("deep groove", "insert unit")]
    series: Annotated[str, word()]
    bore: Annotated[Value, quantity("length", 0.005, 0.06)]
    outside_diameter: Annotated[Value, quantity("length", 0.01, 0.15)]
    width: Annotated[Value, quantity("length", 0.003, 0.08)]
    dynamic_load_rating: Annotated[Value, quantity("force", 1e3, 1e5)]
    static_load_rating: Annotated[Value, quantity("force", 5e2, 1e5)]
    axial_factor: Annotated[Value, quantity("ratio", 9.0, 17.0)]  # f0 of ISO 281
    limiting_speed: Annotated[Value | None, quantity("rotational_speed", 100.0, 5000.0)] = None
    sealed_speed: Annotated[Value | None, quantity("rotational_speed", 100.0, 5000.0)] = None
    mass: Annotated[Value | None, quantity("mass", 0.005, 5.0)] = None
    set_screw_torque: Annotated[Value | None, quantity("torque", 1.0, 50.0)] = None


@dataclass(frozen=True, slots=True, kw_only=True)
class KeySize(Card):
    """A parallel key for shafts over one diameter up to and including another."""

    designation: str
    system: Annotated[str, word(*SYSTEMS)]
    shaft_over: Annotated[Value, quantity("length", 0.004, 0.1)]
    shaft_to: Annotated[Value, quantity("length", 0.004, 0.1)]
    width: Annotated[Value, quantity("length", 0.001, 0.03)]
    height: Annotated[Value, quantity("length", 0.001, 0.03)]
    shaft_depth: Annotated[Value, quantity("length", 0.0005, 0.02)]
    hub_depth: Annotated[Value, quantity("length", 0.0005, 0.02)]


@dataclass(frozen=True, slots=True, kw_only=True)
class SetScrew(Card):
    """A cup-point set screw on a plain shaft: seating torque and axial hold, without any factor."""

    designation: str
    system: Annotated[str, word(*SYSTEMS)]
    diameter: Annotated[Value, quantity("length", 0.002, 0.02)]
    seating_torque: Annotated[Value, quantity("torque", 0.3, 150.0)]
    holding_low: Annotated[Value, quantity("force", 100.0, 2e4)]
    holding: Annotated[Value, quantity("force", 100.0, 2e4)]
    holding_high: Annotated[Value, quantity("force", 100.0, 2e4)]


@dataclass(frozen=True, slots=True, kw_only=True)
class FrictionClass(Card):
    """A figure of friction or tightening with its range."""

    name: Annotated[str, word()]
    low: Annotated[Value, quantity("ratio", 0.02, 5.0)]
    likely: Annotated[Value, quantity("ratio", 0.02, 5.0)]
    high: Annotated[Value, quantity("ratio", 0.02, 5.0)]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock(Card):
    """The thicknesses plate and sheet are usually sold in."""

    family: Annotated[str, word(*FAMILIES)]
    system: Annotated[str, word(*SYSTEMS)]
    thicknesses: Annotated[tuple[Value, ...], quantities("length", 0.0003, 0.1)]


def table(file: str, kind: str, card: type[C]) -> tuple[C, ...]:
    """Give the cards of one table of ``data``, read once; raises InputError with every mistake."""
    return _kept(file, kind, cast(Any, card))


@cache
def _kept(file: str, kind: str, card: Any) -> tuple[Any, ...]:
    shown = f"data/{file}.toml"
    rows = read_toml(Path(__file__).parent / f"{file}.toml", shown).get(kind)
    if not isinstance(rows, list) or not all(isinstance(row, dict) for row in rows):
        raise InputError([Mistake(shown, kind, "", f"expected [[{kind}]] tables")])
    return tuple(cards_from(shown, kind, card, rows))


def cards_from(
    shown: str, kind: str, card: type[C], rows: Iterable[dict[str, Any]]
) -> tuple[C, ...]:
    """Turn rows into cards.

    Raises
    ------
    InputError
        with every mistake of every row, and for an id or alias that two rows share.
    """
    found: list[C] = []
    mistakes: list[Mistake] = []
    for row in rows:
        name = str(row.get("id", ""))
        reader = Reader(shown, f"{kind} {name}".rstrip(), f"{kind}:{name}", row)
        reader.used.add("id")
        known: dict[str, Any] = {"id": name, "source": str(row.get("source", "")).strip()}
        if "designation" in {f.name for f in fields(card)}:
            known["designation"] = name
        if not name:
            reader.fail("id", None, "is missing")
        if not known["source"]:
            reader.fail("source", None, "is missing")
        made = reader.build(card, **known)
        mistakes += reader.mistakes
        found += [made] if made is not None else []
    mistakes += twice(shown, found)
    if mistakes:
        raise InputError(mistakes)
    return tuple(found)
