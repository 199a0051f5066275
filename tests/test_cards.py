"""Data cards: what every card must hold, and how names are found."""

import math
import re
from dataclasses import fields
from itertools import pairwise

import pytest

from mountlimit import cards
from mountlimit.data import tables
from mountlimit.errors import OutOfRange, UnknownCard
from mountlimit.worked import Value

HOUR = 3600.0
C23, C60 = 296.15, 333.15

TABLES = {
    "chain": cards.chains,
    "thread": cards.threads,
    "bolt class": cards.bolt_classes,
    "bearing": cards.bearings,
    "key": cards.keys,
    "set screw": cards.set_screws,
    "surface": lambda: cards.frictions("surface"),
    "torque coefficient": lambda: cards.frictions("torque_coefficient"),
    "tightening": lambda: cards.frictions("tightening"),
    "stock": lambda: list(tables.table("stock", "stock", cards.Stock)),
    "material": cards.materials,
}
EVERY = [pytest.param(card, id=f"{kind}-{card.id}") for kind, f in TABLES.items() for card in f()]
MATERIALS = [pytest.param(m, id=m.id) for m in cards.materials()]
FROM_FILE = [pytest.param(m, id=m.id) for m in cards.materials() if not m.scrap]
PLASTICS = [pytest.param(m, id=m.id) for m in cards.materials("plastic")]


def numbers(card):
    for field in fields(card):
        found = getattr(card, field.name)
        for value in found if isinstance(found, tuple) else (found,):
            if isinstance(value, float):
                yield field.name, value


# every card ---------------------------------------------------------------------------------


@pytest.mark.parametrize("card", EVERY)
def test_every_number_names_card_key_and_source(card):
    seen = 0
    for name, value in numbers(card):
        assert isinstance(value, Value), name
        assert value.origin == "card"
        assert ":" in value.key
        assert len(value.source) > 3, name
        assert math.isfinite(value)
        assert card.source_of(name) == value.source
        seen += 1
    assert seen
    assert card.source


NOT_A_SOURCE = re.compile(r"reprint|\bS\d{1,2}\b|https?:|www\.|\.com|/work|forum|dealer", re.I)


@pytest.mark.parametrize("card", EVERY)
def test_sources_name_a_standard_a_book_or_memory(card):
    for name, value in numbers(card):
        assert not NOT_A_SOURCE.search(value.source), name
        if re.search(r"catalogue|chart|data sheet", value.source):
            assert "memory" in value.source, name


@pytest.mark.parametrize("kind", TABLES)
def test_names_are_unique_within_a_kind(kind):
    owner = {}
    for card in TABLES[kind]():
        for name in (card.id, *card.aliases):
            key = re.sub(r"[\s#_\"'-]", "", name.lower())
            assert owner.setdefault(key, card.id) == card.id, name


LOOK_UP = {
    "chain": cards.chain,
    "thread": cards.thread,
    "bolt class": cards.bolt_class,
    "bearing": cards.bearing,
    "set screw": cards.set_screw,
    "surface": cards.friction,
    "torque coefficient": cards.torque_coefficient,
    "tightening": cards.tightening_scatter,
    "material": cards.material,
}


@pytest.mark.parametrize("kind", LOOK_UP)
def test_every_name_finds_its_own_card(kind):
    for card in TABLES[kind]():
        for name in (card.id, *card.aliases):
            assert LOOK_UP[kind](name) is card, name
            assert LOOK_UP[kind](f"  {name.upper()} ") is card, name


# materials ----------------------------------------------------------------------------------


def test_the_families_are_all_there():
    for family, least in (
        ("plastic", 25),
        ("aluminium", 9),
        ("steel", 11),
        ("iron", 1),
        ("wood", 1),
    ):
        assert len([m for m in cards.materials(family) if not m.scrap]) >= least
    files = [p for p in cards.folder("materials").glob("*.toml") if p.stem != "_families"]
    assert len(FROM_FILE) == len(files) >= 47


@pytest.mark.parametrize("card", MATERIALS)
def test_strength_figures_are_in_order(card):
    assert card.yield_strength <= card.ultimate_strength
    assert card.fatigue_strength < card.ultimate_strength
    assert card.yield_mean_ratio >= 1
    if card.shear_strength is not None and not card.brittle:  # iron and laminates shear late
        assert card.shear_strength <= card.ultimate_strength
    if card.haz_yield is not None:
        assert card.haz_yield <= card.yield_strength
        assert card.haz_yield <= card.haz_ultimate <= card.ultimate_strength


@pytest.mark.parametrize("card", MATERIALS)
def test_kinds_of_strength_are_kept_apart(card):
    assert card.yield_kind in ("minimum", "mean", "catalogue", "typical")
    assert card.ultimate_kind == card.yield_kind  # never a minimum beside a mean
    if card.yield_kind in ("mean", "typical"):
        assert card.yield_mean_ratio == 1, "a typical value is its own mean"
    else:
        assert card.yield_mean_ratio > 1


RANGES = {  # Pa: elastic modulus, least and greatest of the family
    "plastic": (0.5e9, 20e9),
    "aluminium": (68e9, 74e9),
    "steel": (190e9, 212e9),
    "iron": (80e9, 180e9),
    "wood": (6e9, 14e9),
}


@pytest.mark.parametrize("card", MATERIALS)
def test_elastic_figures_are_plausible(card):
    low, high = RANGES[card.family]
    assert low <= card.elastic_modulus <= high
    isotropic = card.elastic_modulus / (2 * (1 + card.poissons_ratio))
    if card.isotropic:
        assert card.shear_modulus == pytest.approx(isotropic, rel=1e-12)
    else:
        assert card.shear_modulus < isotropic


@pytest.mark.parametrize("card", MATERIALS)
def test_warmth_never_strengthens(card):
    for curve in (card.modulus_retention, card.yield_retention):
        assert curve.factors[0] == 1
        assert all(b <= a for a, b in pairwise(curve.factors))
    assert card.modulus_at(C23) == card.elastic_modulus
    assert card.yield_at(C23) == card.yield_strength
    assert card.greatest_temperature <= card.max_service_temperature
    heats = [C23 + (card.greatest_temperature - C23) * i / 40 for i in range(41)]
    assert all(b <= a for a, b in pairwise(map(card.modulus_at, heats)))
    assert all(b <= a for a, b in pairwise(map(card.yield_at, heats)))


def test_retention_is_a_straight_line_between_its_points():
    hdpe = cards.material("hdpe")  # 0.65 at 40 C, 0.40 at 60 C
    assert hdpe.modulus_at(323.15) == pytest.approx(900e6 * (0.65 + 0.40) / 2)
    assert hdpe.yield_at(328.15) == pytest.approx(24e6 * (0.78 * 0.25 + 0.57 * 0.75))
    assert hdpe.modulus_at(263.15) == hdpe.elastic_modulus  # cold is not counted on


@pytest.mark.parametrize("card", MATERIALS)
def test_temperature_out_of_range_is_refused(card):
    for wrong in (card.greatest_temperature + 0.5, 230.0):
        with pytest.raises(OutOfRange, match=re.escape(card.name)):
            card.yield_at(wrong)
        with pytest.raises(OutOfRange):
            card.modulus_at(wrong)
        with pytest.raises(OutOfRange):
            card.creep_modulus(HOUR, wrong)


@pytest.mark.parametrize("card", PLASTICS)
def test_creep_lowers_the_modulus_with_time_and_warmth(card):
    spans = [0.0, 1.0, HOUR, 10 * HOUR, 100 * HOUR, 1000 * HOUR, 1e4 * HOUR]
    moduli = [card.creep_modulus(t, C23) for t in spans]
    assert moduli[0] == card.modulus_at(C23)
    assert all(b <= a for a, b in pairwise(moduli))
    assert moduli[5] == pytest.approx(card.creep_modulus_1000h)
    assert moduli[6] < moduli[5] < card.elastic_modulus
    warm = min(313.15, card.greatest_temperature)
    assert card.creep_modulus(1000 * HOUR, warm) < moduli[5]
    with pytest.raises(OutOfRange, match="duration"):
        card.creep_modulus(2e5 * HOUR, C23)
    assert 0.002 <= card.design_strain_limit <= 0.01
    assert card.washer_pressure_limit is not None


def test_metals_do_not_creep():
    steel = cards.material("s235")
    assert steel.creep_modulus(1e4 * HOUR, C23) == steel.elastic_modulus
    assert steel.creep_source == ""


@pytest.mark.parametrize("card", MATERIALS)
def test_design_class_follows_from_family_and_making(card):
    if "print" in card.id:
        assert card.design_class.startswith("printed")
        assert not card.isotropic
        assert card.brittle == ("across" in card.design_class)
    elif card.family in ("steel", "aluminium", "iron"):
        assert card.design_class in ("metal", "cast")
    else:
        assert card.design_class == card.family
    if card.weldable:
        assert card.haz_yield is not None


SCRAP = {
    "unknown_steel_sheet": "dc01",
    "unknown_steel": "s235",
    "unknown_aluminium_plate": "al1050_h14",
    "unknown_aluminium_section": "al6063_t6",
    "unknown_plastic": "pe_uhmw",
    "unknown_casting": "al_a356_t6",
}


@pytest.mark.parametrize(("name", "member"), SCRAP.items())
def test_an_unknown_piece_is_the_weakest_of_its_family_and_says_so(name, member):
    scrap, known = cards.material(name), cards.material(member)
    assert scrap.scrap
    assert not known.scrap
    assert scrap.note.endswith(".")
    assert "taken" in scrap.note
    assert scrap.name.startswith("unknown")
    share = 0.5 if name == "unknown_casting" else 1.0
    assert scrap.yield_strength == pytest.approx(share * known.yield_strength)
    assert scrap.elastic_modulus == known.elastic_modulus
    peers = [m for m in cards.materials(known.family) if m.design_class == known.design_class]
    if name in ("unknown_steel_sheet", "unknown_aluminium_plate", "unknown_plastic"):
        assert scrap.yield_strength == min(m.yield_strength for m in peers)


# names --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("look_up", "asked", "found"),
    [
        (cards.chain, "#40", "40"),
        (cards.chain, "ansi 40 chain", "40"),
        (cards.chain, "08 a", "40"),
        (cards.chain, "1/2 x 1/8", "081"),
        (cards.chain, "8b", "08B"),
        (cards.thread, "m8 × 1.25", "M8"),
        (cards.thread, "1/4", "1/4-20 UNC"),
        (cards.thread, '5/16"-24', "5/16-24 UNF"),
        (cards.bolt_class, "Grade 5", "SAE 5"),
        (cards.set_screw, "1/4 in", "1/4"),
        (cards.material, "6061-T6", "al6061_t6"),
        (cards.material, "EN AW 6061", "al6061_t6"),
        (cards.material, "Unknown Steel", "unknown_steel"),
        (cards.material, "aluminum", "unknown_aluminium_plate"),
        (cards.material, "printed PLA", "pla_print_z"),
    ],
)
def test_usual_spellings_are_understood(look_up, asked, found):
    assert look_up(asked).id == found


@pytest.mark.parametrize(
    ("look_up", "asked", "kind", "near"),
    [
        (cards.material, "6O61", "material", "6061"),
        (cards.material, "hdep", "material", "hdpe"),
        (cards.material, "plywood", "material", "birch plywood"),
        (cards.chain, "42O", "chain", "420"),
        (cards.thread, "M9", "thread", "M8"),
        (cards.bearing, "6208", "bearing", "6203"),
        (cards.bolt_class, "8.9", "bolt class", "8.8"),
        (cards.friction, "dry stel", "surface", "dry steel"),
        (cards.torque_coefficient, "zink", "state of the thread", "zinc"),
    ],
)
def test_an_unknown_name_offers_the_nearest(look_up, asked, kind, near):
    with pytest.raises(UnknownCard) as caught:
        look_up(asked)
    assert caught.value.kind == kind
    assert caught.value.name == asked
    if look_up is cards.bearing:
        assert any(n.startswith("620") for n in caught.value.nearest)
    else:
        assert near in caught.value.nearest


@pytest.mark.parametrize("asked", ["", " ", "?", "../s235", "_families", "x" * 500, "\x00", "ä"])
@pytest.mark.parametrize("kind", LOOK_UP)
def test_nonsense_is_an_unknown_card_and_nothing_else(kind, asked):
    with pytest.raises(UnknownCard):
        LOOK_UP[kind](asked)
