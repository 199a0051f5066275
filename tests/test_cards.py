"""Data cards: what every card must hold, how names are found, and what a broken card says."""

import math
import re
import shutil
from dataclasses import fields
from itertools import pairwise
from pathlib import Path

import pytest

from mountlimit import cards
from mountlimit.data import reading, substances, tables
from mountlimit.errors import InputError, MountlimitError, OutOfRange, UnknownCard
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
CHAINS = [pytest.param(c, id=c.id) for c in cards.chains()]
THREADS = [pytest.param(t, id=t.id) for t in cards.threads()]


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
    for family, least in (("plastic", 25), ("aluminium", 9), ("steel", 11), ("iron", 1), ("wood", 1)):
        assert len([m for m in cards.materials(family) if not m.scrap]) >= least
    assert len(FROM_FILE) == 47


@pytest.mark.parametrize("card", MATERIALS)
def test_strength_figures_are_in_order(card):
    assert card.yield_strength <= card.ultimate_strength
    assert card.fatigue_strength < card.ultimate_strength
    assert card.yield_mean_ratio >= 1
    if card.shear_strength is not None:
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


def test_one_material_file_is_read_for_its_id(monkeypatch):
    read = []
    real = substances.read_toml
    monkeypatch.setattr(substances, "read_toml", lambda p, s: read.append(p.name) or real(p, s))
    for cached in (substances._own, substances._scrap, substances._families):
        cached.cache_clear()
    assert cards.material("gjl200").id == "gjl200"
    assert sorted(read) == ["_families.toml", "gjl200.toml"]
    cards.material("gjl200")
    assert len(read) == 2
    for cached in (substances._own, substances._scrap, substances._all):
        cached.cache_clear()


# tables -------------------------------------------------------------------------------------


@pytest.mark.parametrize("chain", CHAINS)
def test_chain_dimensions_hang_together(chain):
    assert chain.roller_diameter < 0.75 * chain.pitch
    assert 0.25 * chain.pitch < chain.inner_width < 0.75 * chain.pitch
    assert 0.4 * chain.roller_diameter < chain.pin_diameter < 0.75 * chain.roller_diameter
    assert chain.plate_height <= chain.pitch
    wide = chain.inner_width + 2 * chain.plate_thickness
    assert chain.bearing_area == pytest.approx(chain.pin_diameter * wide, rel=0.005)
    # breaking stress over the two plates left beside the pin, a coarse sieve for slipped digits
    section = 2 * chain.plate_thickness * (chain.plate_height - chain.pin_diameter)
    assert 150e6 < chain.minimum_tensile_strength / section < 1500e6
    if chain.minimum_dynamic_strength is not None:
        share = chain.minimum_dynamic_strength / chain.minimum_tensile_strength
        assert 0.17 < share < 0.21
    assert (chain.tensile_kind == "from memory") == (
        "memory" in chain.minimum_tensile_strength.source
        and "catalogue" not in chain.minimum_tensile_strength.source.split(",")[0]
    )


def test_enough_chains_of_every_series():
    known = {c.id for c in cards.chains()}
    wanted = """25 25H 35 40 41 50 60 60H 80 80H 05B 06B 08B 10B 12B 081 415 415H 420 428 428H 520
        520H 525 525H 530 530H 219 219H T8F""".split()
    assert set(wanted) <= known


@pytest.mark.parametrize("thread", THREADS)
def test_thread_dimensions_follow_the_standard_profile(thread):
    """ISO 724 / ASME B1.1: d2 = d - 0.649519 P, d3 = d - 1.226869 P; half the last digit kept."""
    half_digit = 0.5e-6
    assert abs(thread.diameter - 0.649519 * thread.pitch - thread.pitch_diameter) <= 2 * half_digit
    assert abs(thread.diameter - 1.226869 * thread.pitch - thread.minor_diameter) <= 2 * half_digit
    if thread.system == "metric":  # ISO 898-1
        area = math.pi / 4 * ((thread.pitch_diameter + thread.minor_diameter) / 2) ** 2
    else:  # ASME B1.1
        area = 0.7854 * (thread.diameter - 0.9743 * thread.pitch) ** 2
    assert abs(area - thread.stress_area) < 0.06e-6
    assert thread.diameter < thread.clearance_hole < 1.2 * thread.diameter
    assert thread.clearance_hole < thread.head_diameter < thread.hex_width
    assert thread.hex_width < thread.washer_diameter <= thread.wide_washer_diameter


def test_bolt_classes_are_in_order_and_8_8_knows_its_two_sizes():
    for grade in cards.bolt_classes():
        assert grade.proof_stress < grade.yield_strength < grade.ultimate_strength
        assert grade.smallest < grade.largest
        assert grade.shear_factor in (0.5, 0.6)
    assert cards.bolt_class("8.8").ultimate_strength == 800e6
    assert cards.bolt_class("8.8", 0.016).ultimate_strength == 800e6
    assert cards.bolt_class("8.8", 0.020).ultimate_strength == 830e6
    assert cards.bolt_class("10.9", 0.5).ultimate_strength == 1040e6
    unmarked = cards.bolt_class("unmarked")
    metric = [c for c in cards.bolt_classes() if c.system == "metric" and c.id[0] != "A"]
    assert unmarked.ultimate_strength == min(c.ultimate_strength for c in metric)


def test_bearings_by_kind_and_with_suffixes():
    assert cards.bearing("6203-2RS C3") is cards.bearing("6203")
    assert {b.kind for b in cards.bearings("deep groove")} == {"deep groove"}
    assert len(cards.bearings()) == len(cards.bearings("deep groove")) + len(
        cards.bearings("insert unit")
    )
    for b in cards.bearings():
        assert b.bore < b.outside_diameter
        assert b.static_load_rating < b.dynamic_load_rating
        assert (b.set_screw_torque is None) == (b.kind == "deep groove")
    for series in ("60", "62", "63"):
        rows = sorted((b for b in cards.bearings() if b.series == series), key=lambda b: b.bore)
        assert len(rows) == 8
        assert all(b.dynamic_load_rating > a.dynamic_load_rating for a, b in pairwise(rows))


@pytest.mark.parametrize("system", ["metric", "inch"])
def test_keys_follow_each_other_without_gap_or_overlap(system):
    sizes = [k for k in cards.keys() if k.system == system]
    for small, big in pairwise(sizes):
        assert small.shaft_to == big.shaft_over
        assert small.width < big.width
        at = cards.key_for_shaft(float(small.shaft_to), system)
        assert at is small
        assert cards.key_for_shaft(small.shaft_to + 1e-5, system) is big
    for key in sizes:
        assert key.height <= key.width
        assert key.height <= key.shaft_depth + key.hub_depth < 1.15 * key.height
    assert cards.key_for_shaft(float(sizes[0].shaft_over), system) is None
    assert cards.key_for_shaft(0.2, system) is None


def test_ranges_run_low_likely_high():
    for kind in ("surface", "torque_coefficient", "tightening"):
        for row in cards.frictions(kind):
            assert row.low < row.likely < row.high
    for screw in cards.set_screws():
        assert screw.holding_low < screw.holding < screw.holding_high
    for system in ("metric", "inch"):
        rows = sorted((s for s in cards.set_screws() if s.system == system), key=lambda s: s.diameter)
        assert all(b.holding > a.holding for a, b in pairwise(rows))
        assert all(b.seating_torque > a.seating_torque for a, b in pairwise(rows))


@pytest.mark.parametrize("family", ["steel", "aluminium", "plastic", "wood", "iron"])
@pytest.mark.parametrize("system", ["metric", "inch"])
def test_stock_rises(family, system):
    found = cards.stock(family, system)
    assert found.family == family
    assert len(found.thicknesses) >= 5
    assert all(b > a for a, b in pairwise(found.thicknesses))


# names --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("look_up", "asked", "found"),
    [
        (cards.chain, "#40", "40"),
        (cards.chain, "ansi 40 chain", "40"),
        (cards.chain, "08 a", "40"),
        (cards.chain, "1/2 x 1/8", "081"),
        (cards.chain, "8b", "08B"),
        (cards.thread, "m8 × 1.25", "M8"),  # noqa: RUF001
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


# files --------------------------------------------------------------------------------------


def test_folder_finds_the_materials_of_this_installation():
    assert (cards.folder("materials") / "s235.toml").is_file()


def test_folder_prefers_the_package_then_the_checkout_then_says_so(tmp_path, monkeypatch):
    package = tmp_path / "src" / "mountlimit"
    (package / "data").mkdir(parents=True)
    monkeypatch.setattr(reading, "__file__", str(package / "data" / "reading.py"))
    with pytest.raises(MountlimitError, match="materials"):
        reading.folder("materials")
    (tmp_path / "materials").mkdir()
    assert reading.folder("materials") == tmp_path / "materials"
    (package / "materials").mkdir()
    assert reading.folder("materials") == package / "materials"


GOOD = (Path(reading.__file__).parents[3] / "materials" / "pom_c.toml").read_text("utf-8") if (
    Path(reading.__file__).parents[3] / "materials" / "pom_c.toml"
).is_file() else (cards.folder("materials") / "pom_c.toml").read_text("utf-8")

BROKEN = [  # old text, new text, what the message must hold
    ('"2.7 GPa"', '"2.7"', ["elastic_modulus.value", "'2.7'", "stress"]),
    ('"2.7 GPa"', '"2.7 kg"', ["elastic_modulus.value", "'2.7 kg'"]),
    ('"2.7 GPa"', '"2700 GPa"', ["elastic_modulus.value", "expected 100 MPa to 250 GPa"]),
    ('"2.7 GPa"', "2.7", ["elastic_modulus.value", "2.7"]),
    ('"2.7 GPa"', "true", ["elastic_modulus.value", "true"]),
    ('id = "pom_c"', 'id = "pom"', ["id = 'pom'", "expected 'pom_c'"]),
    ('family = "plastic"', 'family = "plastik"', ["family", "'plastik'", "plastic, aluminium"]),
    ('family = "plastic"', "", ["family", "is missing"]),
    ("isotropic = true", 'isotropic = "yes"', ["isotropic", "'yes'", "true or false"]),
    ("isotropic = true", "isotropic = false", ["shear_modulus", "not isotropic"]),
    ("weldable = false", "weldable = true", ["weldable", "haz_yield"]),
    ("weldable = false", "weldible = false", ["weldible", "is not a known key", "weldable"]),
    ("cov = 0.06", "covv = 0.06", ["yield_strength.cov", "is missing"]),
    ("mean_ratio = 1.0", "mean_ratio = 0.9", ["yield_strength.mean_ratio", "0.9", "1 to 2"]),
    ('kind = "typical"', 'kind = "average"', ["kind", "'average'", "minimum, mean"]),
    ('value = "65 MPa"', 'value = "55 MPa"', ["ultimate_strength", "below the yield"]),
    ("factors = [1.0, 0.82", "factors = [1.0, 1.2", ["modulus_retention"]),
    ("factors = [1.0, 0.82", "factors = [0.9, 0.82", ["modulus_retention", "from 1 on"]),
    ("factors = [1.0, 0.82, 0.62, 0.45]", "factors = [1.0, 0.82]", ["as many factors"]),
    ('"40 degC", "60 degC"', '"60 degC", "40 degC"', ["rising temperatures"]),
    ("[creep_exponent]\nvalue = 0.0947", "[creep_exponent]", ["creep_exponent.value"]),
    ('[density]\nvalue = "1410 kg/m^3"\nsource = "from memory"',
     '[density]\nvalue = "1410 kg/m^3"\nsource = " "', ["density", "has no source"]),
    ('[density]\nvalue = "1410 kg/m^3"\nsource = "from memory"',
     'density = "1410 kg/m^3"', ["is not valid TOML|density"]),
    ("[density]", "[density", ["is not valid TOML"]),
    ('aliases = ["pom"', 'aliases = [7, "pom"', ["aliases", "list of texts"]),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "words"), BROKEN)
def test_a_broken_material_card_names_file_key_and_fault(tmp_path, old, new, words):
    assert old in GOOD
    file = tmp_path / "pom_c.toml"
    file.write_text(GOOD.replace(old, new, 1), "utf-8")
    if words == ["is not valid TOML|density"]:  # a bare number's source is the card's own
        with pytest.raises(InputError):
            substances.read_material(file)
        return
    with pytest.raises(InputError) as caught:
        substances.read_material(file)
    text = str(caught.value)
    assert all(line.startswith("materials/pom_c.toml") for line in text.splitlines())
    for expected in words:
        assert expected in text


def test_all_mistakes_of_a_card_come_at_once(tmp_path):
    file = tmp_path / "pom_c.toml"
    file.write_text(GOOD.replace("GPa", "kg").replace("MPa", "s"), "utf-8")
    with pytest.raises(InputError) as caught:
        substances.read_material(file)
    assert len(caught.value.mistakes) >= 6


@pytest.mark.parametrize("raw", [b"\xff\xfe", b"", b"id = 3", b"[yield_strength]\nvalue = 1"])
def test_an_unreadable_card_is_an_input_error(tmp_path, raw):
    file = tmp_path / "x.toml"
    file.write_bytes(raw)
    with pytest.raises(InputError, match=r"materials/x\.toml"):
        substances.read_material(file)
    with pytest.raises(InputError, match="cannot be read"):
        substances.read_material(tmp_path / "none.toml")


def test_own_cards_can_be_added_and_a_broken_one_does_not_hide_the_others(tmp_path, monkeypatch):
    mine = tmp_path / "materials"
    shutil.copytree(cards.folder("materials"), mine)
    own = GOOD.replace('"pom_c"', '"my_plate"', 1).replace('aliases = ["pom"', 'aliases = ["mine"')
    (mine / "my_plate.toml").write_text(own.replace('"pom-c copolymer"', '"own"').replace(
        '"acetal", ', ""), "utf-8")  # fmt: skip
    monkeypatch.setattr(substances, "folder", lambda _: mine)
    _forget()
    try:
        assert cards.material("mine").id == "my_plate"
        (mine / "my_plate.toml").write_text(own.replace("GPa", "kg"), "utf-8")
        (mine / "bad.toml").write_text("[", "utf-8")
        _forget()
        assert cards.material("6061").id == "al6061_t6"
        with pytest.raises(InputError, match=r"materials/my_plate\.toml"):
            cards.material("my_plate")
        with pytest.raises(InputError, match=r"materials/bad\.toml"):
            cards.material("no such plate")
        with pytest.raises(InputError) as caught:
            cards.materials()
        assert {m.file for m in caught.value.mistakes} >= {
            "materials/bad.toml", "materials/my_plate.toml",
        }  # fmt: skip
    finally:
        monkeypatch.undo()
        _forget()


def _forget():
    for name in ("_own", "_scrap", "_families", "_spellings", "_all"):
        getattr(substances, name).cache_clear()


ROW = {
    "id": "6x6", "system": "metric", "shaft_over": "17 mm", "shaft_to": "22 mm", "width": "6 mm",
    "height": "6 mm", "shaft_depth": "3.5 mm", "hub_depth": "2.8 mm", "source": "DIN 6885-1",
}  # fmt: skip


def test_a_good_row_gives_a_card_with_its_own_source_where_it_has_one():
    row = ROW | {"sources": {"hub_depth": "measured"}}
    (key,) = tables.cards_from("data/keys.toml", "key", cards.KeySize, [row])
    assert key.width == 0.006
    assert key.designation == "6x6"
    assert key.source_of("width") == "DIN 6885-1"
    assert key.source_of("hub_depth") == "measured"
    assert key.width.key == "key:6x6.width"


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"width": "6"}, "data/keys.toml: key 6x6: width = '6'"),
        ({"width": "6 m"}, "expected 1 mm to 30 mm"),
        ({"width": None}, "key 6x6: width: is missing"),
        ({"system": "imperial"}, "expected one of: metric, inch"),
        ({"source": ""}, "source: is missing"),
        ({"widht": "6 mm"}, "did you mean width?"),
        ({"sources": {"widht": "x"}}, "sources.widht: is not a known key"),
        ({"id": ""}, "id: is missing"),
    ],
)
def test_a_broken_row_says_where(change, words):
    row = {k: v for k, v in (ROW | change).items() if v is not None}
    with pytest.raises(InputError) as caught:
        tables.cards_from("data/keys.toml", "key", cards.KeySize, [row])
    assert words in str(caught.value)
    assert len(str(caught.value).splitlines()) == len(caught.value.mistakes)


def test_a_name_used_twice_is_a_mistake():
    rows = [ROW, ROW | {"id": "7x7", "aliases": ["6 X 6"]}]
    with pytest.raises(InputError, match="is also a name of 6x6"):
        tables.cards_from("data/keys.toml", "key", cards.KeySize, rows)


@pytest.mark.parametrize(
    ("row", "words"),
    [
        ({"stands_for": "s999"}, "stands_for = 's999'"),
        ({"stands_for": "s235", "name": "x", "note": "y"}, "source: is missing"),
        ({"stands_for": "s235", "strength_factor": 2}, "strength_factor = 2"),
        ({"stands_for": "s235", "colour": "red"}, "colour: is not a known key"),
    ],
)
def test_a_broken_family_row_says_where(row, words):
    with pytest.raises(InputError) as caught:
        substances.scrap_from("unknown_thing", row)
    assert f"materials/_families.toml: unknown_thing: {words}" in str(caught.value)
