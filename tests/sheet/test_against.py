"""The page of two drives: as the single sheet in head, escaping, data, schema and bytes."""

from __future__ import annotations

import copy
import dataclasses
import json
import os
import pickle
import re
import subprocess
import sys
from importlib.resources import files

import html5lib
import jsonschema
import looking
import pytest
from click.testing import CliRunner

from mountlimit import compare
from mountlimit.cards import folder
from mountlimit.cli import main
from mountlimit.drivefile import read
from mountlimit.figures import style, two_drives
from mountlimit.report import compare_text
from mountlimit.sheet import against, as_data, html, markdown
from mountlimit.sheet.blocks import Picture
from sheet.made import DATE, EPOCH, visible
from sheet.test_foreign_text import HOSTILE, shape
from sheet.test_page import FETCHED
from sheet.test_same_numbers import NUMBER, strings

FILES = tuple(str(folder("examples") / f"{n}.toml") for n in ("hay_elevator", "turf_roller"))
SCHEMA, SINGLE = (
    json.loads(files("mountlimit.sheet").joinpath(name).read_text(encoding="utf-8"))
    for name in ("compare_sheet.schema.json", "sheet.schema.json")
)
CHECK = jsonschema.Draft202012Validator(SCHEMA)


@pytest.fixture(scope="module")
def found():
    """Two examples of two forms and two sets of units, compared."""
    return against.bare(compare.compare(read(FILES[0]), read(FILES[1])))


@pytest.fixture(scope="module")
def sheet(found):
    return against.sheet(found, against.head(found, DATE))


@pytest.fixture(scope="module")
def page(sheet):
    return html.render(sheet)


@pytest.fixture(scope="module")
def data(found, sheet):
    made = as_data.record(sheet, compare_text.record(found), as_data.PAIR_SCHEMA)
    return json.loads(json.dumps(made, allow_nan=False))


def test_sound_html_with_both_files_on_top(page, found):
    tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    ids = [e.get("id") for e in tree.iter() if e.get("id")]
    assert len(ids) == len(set(ids))
    assert [e.get("role") for e in tree.iter() if e.get("aria-label")] == ["img"]
    top = " ".join("".join(tree.find("body/header").itertext()).split())
    for one in (found.a, found.b):
        assert one.file.sha256 in top
        assert one.drive.title in top
    assert DATE in top
    assert str(folder("examples")) not in page
    assert not FETCHED.search(re.sub(r"\bxmlns(:\w+)?=\"[^\"]*\"", "", page))
    assert len(page.encode()) < 200_000


def test_the_answer_is_the_commands(page, found):
    """First line, and every cell of every limit, as `mountlimit compare` says them."""
    tree = html5lib.parse(page, namespaceHTMLElements=False)
    answer = tree.find(".//section[@id='answer']/p")
    assert "".join(answer.itertext()) == compare_text._first(found)
    rows = tree.findall(".//section[@id='limits']//tbody/tr")
    assert len(rows) == len(found.pairs)
    assert tree.find(".//section[@id='limits']/figure") is not None


def test_every_number_is_in_the_data_and_shown(page, sheet, data):
    blocks = {k: v for k, v in data.items() if k not in ("result", "schema")}
    known = set(NUMBER.findall(strings(blocks)))
    for shown in (visible(page), markdown.render(sheet)):
        numbers = NUMBER.findall(shown.replace("sha256", ""))
        assert len(numbers) > 150
        assert set(numbers) <= known
        assert set(NUMBER.findall(strings(data["sections"]))) <= set(numbers)


def test_as_the_schema_says(data):
    jsonschema.Draft202012Validator.check_schema(SCHEMA)
    assert [f"{m.json_path}: {m.message[:200]}" for m in CHECK.iter_errors(data)] == []
    for name in ("paragraph", "bullets", "grid", "picture", "section", "amperes"):
        assert SCHEMA["$defs"][name] == SINGLE["$defs"][name]


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("schema",), "mountlimit-sheet-1"), (("head", "against_sha256"), "abc"),
        (("result", "a", "safe_current", "unit"), "mA"), (("result", "limits", 0, "a", "safe"), 59.0),
        (("result", "limits"), []), (("sections", 0, "blocks", 0, "kind"), "paragraf"),
    ],
)  # fmt: skip
def test_a_wrong_record_fails(data, path, value):
    wrong = copy.deepcopy(data)
    at = wrong
    for key in path[:-1]:
        at = at[key]
    at[path[-1]] = value
    assert not CHECK.is_valid(wrong)


def _renamed(found, words):
    drive = dataclasses.replace(found.a.drive, title=words)
    file = dataclasses.replace(found.a.file, name=words + ".toml")
    return dataclasses.replace(found, a=dataclasses.replace(found.a, drive=drive, file=file))


@pytest.mark.parametrize("kind", HOSTILE)
def test_foreign_words_stay_text(found, sheet, kind):
    """In title and file name: no element more, nothing over another in the picture."""
    other = _renamed(found, HOSTILE[kind])
    drawn = two_drives.read(other)
    figure = two_drives.draw(drawn)
    assert looking.overlaps(figure) == []
    assert looking.without_unit(figure) == []
    head = against.head(other, DATE)
    usual, new = (
        dataclasses.replace(sheet, head=h, sections=(sheet.sections[0],))
        for h in (sheet.head, head)
    )
    assert shape(html.render(new)) == shape(html.render(usual))
    assert not re.search(r"(?<!\\)[<>]", markdown.render(new))


def test_the_picture_says_in_words_what_it_shows(found):
    shown = two_drives.read(found)
    picture = style.Picture(
        name="x", title="x", figure=two_drives.draw(shown), alt=two_drives.alt(shown)
    )
    drawn = set().union(*(looking.numbers(t) for t, _, _ in looking.drawn_texts(picture.figure)))
    past = looking.numbers(f"goes on past {shown.right:.0f} A")
    assert len(drawn) > 10
    assert drawn - past <= looking.numbers(picture.alt)
    least = [min(bar.safe for _, bar in row.bars if bar) for row in shown.rows]
    assert least == sorted(least)
    sides = {(p.name, p.current_kind): (p.a, p.b) for p in found.pairs}
    assert len(shown.rows) == len(sides)


def test_the_same_file_twice(found):
    """No picture and no tables, and it says so."""
    same = compare.side_by_side(found.a, found.a)
    made = against.sheet(same, against.head(same, DATE))
    assert [s.name for s in made.sections] == ["answer", "not-checked", "care"]
    assert "Nothing changed" in made.sections[0].blocks[0].text


def test_what_only_one_leaves_out_is_said_so(sheet, found):
    from mountlimit.assess import not_checked

    told = next(s for s in sheet.sections if s.name == "not-checked").blocks[0].items
    one, two = (set(not_checked(x.drive)) for x in (found.a, found.b))
    assert {t.removeprefix("A only: ") for t in told if not t.startswith("B only: ")} == one
    assert {t for t in told if t.startswith("B only: ")} == {f"B only: {w}" for w in two - one}


def test_another_process_writes_the_same_bytes(page, data, found, sheet, tmp_path):
    """With another seed of hashing; all three formats, and the picture on its own."""
    code = (
        "import sys\nfrom mountlimit import compare\nfrom mountlimit.cli import main\n"
        "own, kept = compare.compare, []\n"
        "def once(*given):\n    kept or kept.append(own(*given))\n    return kept[0]\n"
        "compare.compare = once\n"
        "for kind in ('html', 'md', 'json'):\n"
        "    main(['report', sys.argv[1], '--against', sys.argv[2], '-o', f'{sys.argv[-1]}/one.{kind}', '--figures', f'{sys.argv[-1]}/f'], standalone_mode=False)\n"
    )
    subprocess.run(
        [sys.executable, "-c", code, *FILES, str(tmp_path)], check=True, capture_output=True,
        env={**os.environ, "PYTHONHASHSEED": "7", "SOURCE_DATE_EPOCH": EPOCH},
    )  # fmt: skip
    assert (tmp_path / "one.html").read_bytes() == page.encode()
    assert (tmp_path / "one.md").read_bytes() == markdown.render(sheet).encode()
    whole = json.dumps(data, indent=1, ensure_ascii=False) + "\n"
    assert (tmp_path / "one.json").read_bytes() == whole.encode()
    assert sorted(p.name for p in (tmp_path / "f").iterdir()) == [
        "two_drives.png",
        "two_drives.svg",
    ]
    assert pickle.loads(pickle.dumps(sheet)) == sheet
    assert [b.name for s in sheet.sections for b in s.blocks if isinstance(b, Picture)] == ["two_drives"]  # fmt: skip


def test_a_missing_second_file_is_one_line(tmp_path):
    missing = str(tmp_path / "none.toml")
    done = CliRunner().invoke(
        main, ["report", FILES[0], "--against", missing, "-o", str(tmp_path / "a.html")]
    )
    assert done.exit_code == 2
    assert len(done.stderr.strip().splitlines()) == 1
    assert missing in done.stderr
    assert not list(tmp_path.iterdir())
