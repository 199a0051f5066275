"""Card files: where they are found, what is read when, and what a broken one says."""

import shutil

import pytest

from mountlimit import cards
from mountlimit.data import reading, substances, tables
from mountlimit.errors import InputError, MountlimitError


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


GOOD = (cards.folder("materials") / "pom_c.toml").read_text("utf-8")

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
    ('0.45]\nsource = "from memory', '0.45]\nsource = 3 # ', ["modulus_retention", "a source"]),
    ("[density]", "[density", ["is not valid TOML"]),
    ('aliases = ["pom"', 'aliases = [7, "pom"', ["aliases", "list of texts"]),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "words"), BROKEN)
def test_a_broken_material_card_names_file_key_and_fault(tmp_path, old, new, words):
    assert old in GOOD
    file = tmp_path / "pom_c.toml"
    file.write_text(GOOD.replace(old, new, 1), "utf-8")
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
