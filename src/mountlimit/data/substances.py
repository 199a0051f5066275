"""Materials: the card type, and its files in ``materials/``.

``_families.toml`` holds the scrap names ("unknown steel"): each stands for the weakest plausible
member of its family and says so.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from typing import Annotated, Any

from ..errors import InputError, Mistake, OutOfRange, UnknownCard
from ..formulas import endurance
from ..worked import Value
from .names import find, twice
from .reading import (
    FAMILIES,
    Card,
    Reader,
    Retention,
    curve,
    flag,
    folder,
    quantity,
    read_toml,
    word,
)

DESIGN_CLASSES = ("metal", "plastic", "printed in layer", "printed across layers", "cast", "wood")
STRENGTH_KINDS = ("minimum", "mean", "catalogue", "typical")
COLDEST = 233.15  # K; below it no card is trusted
HOUR = 3600.0
LONGEST = 1e5 * HOUR  # two decades beyond the usual 1000 h creep test
CREEP_TEST = Value(1000 * HOUR, "creep test", "card", "ISO 899-1: creep modulus after 1000 h")
_SHEAR_MODULUS = quantity("stress", 3e7, 1e11, at="shear_modulus")
FAMILY_FILE = "_families.toml"
STRENGTHS = (
    "yield_strength", "ultimate_strength", "fatigue_strength", "shear_strength", "haz_yield",
    "haz_ultimate",
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Material(Card):
    """A material as it is bought; plastics at 23 C and short time unless a field says otherwise."""

    name: Annotated[str, word()]
    family: Annotated[str, word(*FAMILIES)]
    design_class: Annotated[str, word(*DESIGN_CLASSES)]
    form: Annotated[str, word()] = ""
    isotropic: Annotated[bool, flag()] = True
    brittle: Annotated[bool, flag()] = False
    weldable: Annotated[bool, flag()] = False
    scrap: bool = False
    elastic_modulus: Annotated[Value, quantity("stress", 1e8, 2.5e11)]
    modulus_kind: Annotated[str, word(*STRENGTH_KINDS, at="elastic_modulus.kind")]
    modulus_cov: Annotated[Value, quantity("ratio", 0.005, 0.4, at="elastic_modulus.cov")]
    poissons_ratio: Annotated[Value, quantity("ratio", 0.0, 0.499)]
    yield_strength: Annotated[Value, quantity("stress", 5e6, 2e9)]
    yield_kind: Annotated[str, word(*STRENGTH_KINDS, at="yield_strength.kind")]
    yield_cov: Annotated[Value, quantity("ratio", 0.01, 0.4, at="yield_strength.cov")]
    yield_mean_ratio: Annotated[Value, quantity("ratio", 1.0, 2.0, at="yield_strength.mean_ratio")]
    ultimate_strength: Annotated[Value, quantity("stress", 5e6, 2.5e9)]
    ultimate_kind: Annotated[str, word(*STRENGTH_KINDS, at="ultimate_strength.kind")]
    density: Annotated[Value, quantity("density", 300.0, 9000.0)]
    thermal_expansion: Annotated[Value, quantity("ratio", 3e-6, 3e-4)]  # per kelvin
    max_service_temperature: Annotated[Value, quantity("temperature", 300.0, 700.0)]
    modulus_retention: Annotated[Retention, curve()]
    yield_retention: Annotated[Retention, curve()]
    fatigue_strength: Annotated[Value, quantity("stress", 5e5, 1e9)]
    fatigue_cycles: Annotated[Value, quantity("ratio", 1e5, 1e9, at="fatigue_strength.cycles")]
    compressive_over_tensile: Annotated[Value, quantity("ratio", 0.5, 5.0)]
    own_shear_modulus: Annotated[
        Value | None, quantity("stress", 3e7, 1e11, at="shear_modulus")
    ] = None
    shear_strength: Annotated[Value | None, quantity("stress", 1e6, 1e9)] = None
    haz_yield: Annotated[Value | None, quantity("stress", 1e7, 1e9)] = None
    haz_ultimate: Annotated[Value | None, quantity("stress", 1e7, 1e9)] = None
    design_strain_limit: Annotated[Value | None, quantity("ratio", 0.0005, 0.03)] = None
    creep_modulus_1000h: Annotated[Value | None, quantity("stress", 5e7, 5e10)] = None
    creep_exponent: Annotated[Value | None, quantity("ratio", 0.005, 0.2)] = None
    washer_pressure_limit: Annotated[Value | None, quantity("stress", 1e6, 1e9)] = None

    @property
    def shear_modulus(self) -> Value:
        """Shear modulus, Pa: from E and Poisson's ratio where the material is isotropic."""
        if self.own_shear_modulus is not None:
            return self.own_shear_modulus
        shear = self.elastic_modulus / (2 * (1 + self.poissons_ratio))
        source = "G = E / (2 (1 + nu)), isotropic"
        return Value(shear, f"material:{self.id}.shear_modulus", "card", source)

    @property
    def creep_source(self) -> str:
        """Source of the creep figures; empty for a material that does not creep."""
        return "" if self.creep_modulus_1000h is None else self.creep_modulus_1000h.source

    @property
    def greatest_temperature(self) -> float:
        """Up to where the card's figures are known, K."""
        known = min(self.modulus_retention.temperatures[-1], self.yield_retention.temperatures[-1])
        return min(float(self.max_service_temperature), known)

    def modulus_at(self, temperature: float) -> float:
        """Short-term elastic modulus at a temperature, Pa.

        Raises
        ------
        OutOfRange
            below -40 C, above the material's service temperature or where no figure is known.
        """
        self._known(temperature)
        return float(self.elastic_modulus * self.modulus_retention.at(temperature))

    def yield_at(self, temperature: float) -> float:
        """Yield strength (of the card's kind) at a temperature, Pa. Raises as ``modulus_at``."""
        self._known(temperature)
        return float(self.yield_strength * self.yield_retention.at(temperature))

    def fatigue_at(self, temperature: float) -> float:
        """Fatigue strength, R = -1, at a temperature, Pa: it is taken to fall as the yield strength.

        Raises as ``modulus_at``.
        """
        self._known(temperature)
        return float(self.fatigue_strength * self.yield_retention.at(temperature))

    def creep_modulus(self, duration: float, temperature: float) -> float:
        """Modulus after a load has stood for ``duration`` seconds, at a temperature, Pa.

        That of ``aged_modulus`` times the modulus retention, never above the short-term modulus.

        Raises
        ------
        OutOfRange
            as ``modulus_at``, and beyond 100 000 h.
        """
        short = self.modulus_at(temperature)
        aged = self.aged_modulus(duration) * self.modulus_retention.at(temperature)
        return min(short, float(aged))

    def aged_modulus(self, duration: float) -> float:
        """Modulus at 23 C after a load has stood for ``duration`` seconds, Pa.

        A material without creep figures keeps its modulus.

        Raises
        ------
        OutOfRange
            beyond 100 000 h.
        """
        if self.creep_modulus_1000h is None or self.creep_exponent is None:
            return self.elastic_modulus
        if not 0 <= duration <= LONGEST * (1 + 1e-9):
            raise OutOfRange("duration of the load [s]", float(duration), 0.0, LONGEST)
        if duration == 0:
            return self.elastic_modulus
        return endurance.creep_modulus(
            self.creep_modulus_1000h, self.creep_exponent, duration, CREEP_TEST
        )

    def _known(self, temperature: float) -> None:
        top = self.greatest_temperature
        if not COLDEST - 1e-6 <= temperature <= top + 1e-6:
            raise OutOfRange(f"temperature of {self.name} [K]", float(temperature), COLDEST, top)


def read_material(file: Path) -> Material:
    """Read one material card; its id is the file's name.

    Raises
    ------
    InputError
        with every mistake of the file.
    """
    shown, name = f"materials/{file.name}", file.stem
    whole = read_toml(file, shown)
    reader = Reader(shown, "", f"material:{name}", whole)
    reader.used.add("id")
    if whole.get("id") != name:
        reader.fail("id", whole.get("id"), f"expected '{name}', the name of the file")
    made = reader.build(Material, id=name, source=_leading_source(whole))
    if made is None:
        raise InputError(reader.mistakes)
    _must_agree(reader, made)
    if reader.mistakes:
        raise InputError(reader.mistakes)
    return made


def _leading_source(whole: Mapping[str, Any]) -> str:
    strength = whole.get("yield_strength")
    return str(strength.get("source", "")) if isinstance(strength, Mapping) else ""


def _must_agree(reader: Reader, card: Material) -> None:
    """Check what two figures of one card say together."""
    if card.ultimate_strength < card.yield_strength:
        reader.fail("ultimate_strength", None, "is below the yield strength")
    if (card.haz_yield is None) != (card.haz_ultimate is None):
        reader.fail("haz_yield", None, "needs haz_ultimate beside it, and the other way round")
    if card.weldable and card.haz_yield is None:
        reader.fail("weldable", "true", "needs haz_yield and haz_ultimate")
    if (card.creep_modulus_1000h is None) != (card.creep_exponent is None):
        reader.fail("creep_exponent", None, "needs creep_modulus_1000h beside it")
    if card.isotropic == (card.own_shear_modulus is not None):
        words = "follows from E and nu" if card.isotropic else "is missing (not isotropic)"
        reader.fail("shear_modulus", None, words)
    if card.family == "plastic":
        for name in ("design_strain_limit", "creep_modulus_1000h", "washer_pressure_limit"):
            if getattr(card, name) is None:
                reader.fail(name, None, "is missing (needed for a plastic)")


@cache
def _own(name: str) -> Material | None:
    """Give the card whose id is the file's name, without reading any other file."""
    if not re.fullmatch(r"[^\W_]\w{0,60}", name):
        return None
    file = folder("materials") / f"{name}.toml"
    return read_material(file) if file.is_file() else None


@cache
def _families() -> Mapping[str, Mapping[str, Any]]:
    return read_families(folder("materials") / FAMILY_FILE)


def read_families(file: Path) -> Mapping[str, Mapping[str, Any]]:
    """Read the rows of the family file.

    Raises
    ------
    InputError
        when it is no TOML, or holds anything but tables.
    """
    shown = f"materials/{FAMILY_FILE}"
    rows = read_toml(file, shown)
    loose = [name for name, row in rows.items() if not isinstance(row, dict)]
    wrong = [Mistake(shown, name, "", f"expected a table [{name}]") for name in loose]
    if wrong:
        raise InputError(wrong)
    return rows


@cache
def _scrap(name: str) -> Material | None:
    """Give the member that an unknown piece of a family is taken for."""
    return scrap_from(name, _families()[name]) if name in _families() else None


def scrap_from(name: str, row: Mapping[str, Any]) -> Material:
    """Turn one row of the family file into a card.

    Raises
    ------
    InputError
        when the row lacks something, or stands for a material that is not there.
    """
    reader = Reader(f"materials/{FAMILY_FILE}", name, f"material:{name}", row)
    member = _own(str(row.get("stands_for", "")))
    if member is None:
        reader.fail("stands_for", row.get("stands_for"), "expected the id of a material")
    for key in ("name", "note", "source"):
        if not str(row.get(key, "")).strip():
            reader.fail(key, None, "is missing")
    share = row.get("strength_factor", 1.0)
    if isinstance(share, bool) or not isinstance(share, int | float) or not 0 < share <= 1:
        reader.fail("strength_factor", share, "expected a number above 0, up to 1")
    known = {"stands_for", "name", "note", "source", "aliases", "strength_factor"}
    for key in set(row) - known:
        reader.fail(key, None, "is not a known key")
    if reader.mistakes or member is None:
        raise InputError(reader.mistakes)
    weaker: dict[str, Any] = {}
    if share < 1:
        reason = str(row["source"])
        weaker = {n: _weaker(getattr(member, n), share, reason) for n in STRENGTHS}
    return replace(
        member, id=name, name=str(row["name"]), note=str(row["note"]), scrap=True,
        aliases=_texts(row.get("aliases")), **weaker,
    )  # fmt: skip


def _weaker(strength: Value | None, share: float, source: str) -> Value | None:
    if strength is None:
        return None
    return Value(
        strength * share, strength.key, "card", f"{share:g} of {strength.source}; {source}"
    )


def _files() -> list[Path]:
    return sorted(f for f in folder("materials").glob("*.toml") if not f.name.startswith("_"))


@cache
def _spellings() -> tuple[list[tuple[str, str]], list[Mistake]]:
    """Give every name with the id it stands for, without building cards, and unreadable files."""
    found: list[tuple[str, str]] = []
    mistakes: list[Mistake] = []
    for file in _files():
        try:
            whole = read_toml(file, f"materials/{file.name}")
        except InputError as wrong:
            mistakes += wrong.mistakes
            continue
        found += _names(file.stem, whole)
    for name, row in _families().items():
        found += _names(name, row)
    return found, mistakes


def _names(name: str, table: Mapping[str, Any]) -> list[tuple[str, str]]:
    return [(spelling, name) for spelling in (name, *_texts(table.get("aliases")))]


def _texts(found: Any) -> tuple[str, ...]:
    return tuple(n for n in found if isinstance(n, str)) if isinstance(found, list) else ()


@cache
def _all() -> tuple[Material, ...]:
    read: list[Material] = []
    mistakes: list[Mistake] = []
    for name in [file.stem for file in _files()] + list(_families()):
        try:
            card = _by_id(name)
        except InputError as wrong:
            mistakes += wrong.mistakes
            continue
        read += [card] if card is not None else []
    mistakes += twice("materials", read)
    if mistakes:
        raise InputError(mistakes)
    return tuple(sorted(read, key=lambda card: (FAMILIES.index(card.family), card.scrap, card.id)))


def _by_id(name: str) -> Material | None:
    return _scrap(name) or _own(name)


def materials(family: str | None = None) -> list[Material]:
    """All materials, or those of one family ("plastic", "aluminium", "steel", "iron", "wood").

    Raises
    ------
    InputError
        with every mistake of every card file, and for a name that two cards share.
    """
    return [card for card in _all() if family in (None, card.family)]


def material(name: str) -> Material:
    """Material of an id or alias ("al6061_t6", "6061", "unknown steel").

    Raises
    ------
    UnknownCard
        with the nearest names.
    InputError
        when the card asked for, or one that may have held the name, is broken.
    """
    asked = re.sub(r"[\s-]+", "_", name.strip().lower())
    found = _by_id(asked)
    if found is not None:
        return found
    spellings, mistakes = _spellings()
    try:
        found = _by_id(find("material", name, spellings))
    except UnknownCard:
        if mistakes:
            raise InputError(mistakes) from None
        raise
    assert found is not None  # every spelling belongs to a file or a family row
    return found
