"""Drives draw every figure; words, boxes, units and numbers hold.

The ordinary run draws two examples and one form's starter; ``tests/sheet/all_sheets.py`` runs these
tests on every example and every form's starter, by the variable FIGURES, and keeps what came of it.
"""

from __future__ import annotations

import os
import re
import subprocess
import sys
import xml.etree.ElementTree as ET
from dataclasses import replace
from functools import cache
from pathlib import Path

import looking
import pytest

from mountlimit import assess, cards, chains, drivefile, figures, starter, thickness
from mountlimit.figures import Sheet, lean, limit_bars, style
from mountlimit.mounts import FORMS

NAMED = os.environ.get("FIGURES", "").split()
DRAWN = tuple(NAMED or ("orchard_barrow", "hay_elevator", "twin_plates"))
ALL = bool(NAMED)  # every title on every figure, and the PNGs a second time
TITLES = {
    "long": "An elevator for hay with a name that goes on " * 8,
    "right to left": "מנוע על לוחית אלומיניום עם שרשרת ארוכה מאוד " * 3,
    "wide": "果園の手押し車、アルミ板に取り付けたモーターとチェーン駆動の長い名前" * 3,
    "signs": 'A <b>&"bold"</b> $x^2$ \x07\u202eturned\nround {}%',
}


@cache
def assessed(name: str) -> assess.Assessment:
    """Assess an example, a story of ``tests/drives`` or a form's starter (``twin_plates``)."""
    for folder in (cards.folder("examples"), Path(__file__).parents[1] / "drives"):
        if (folder / f"{name}.toml").is_file():
            return assess.assess(drivefile.read(folder / f"{name}.toml"))
    name = name.replace("_", " ")
    assert name in FORMS
    return assess.assess(drivefile.parse(starter.text(name, "x.toml").encode(), "x.toml"))


@cache
def drawn(name: str) -> list[style.Picture | Sheet]:
    """Draw every figure of an answer."""
    return figures.pictures(assessed(name))


@cache
def answers() -> tuple[list[thickness.Thinnest], list[chains.Choice]]:
    """Answer thickness (two materials with ALL) and chains for one example."""
    a = assessed("orchard_barrow")
    materials = ["al6061_t6", "s235"] if ALL else ["al6061_t6"]
    return thickness.thinnest(a.file, 60.0, materials), chains.compare(a.file)


def looked_at(found):
    return [p for p in found if not isinstance(p, Sheet)]


@pytest.mark.parametrize("name", DRAWN)
def test_every_drive_draws_every_figure(name):
    """All seven are drawn without a warning (warnings are errors) or say why not; nothing overlaps."""
    found = drawn(name)
    assert len(found) == 7
    for picture in found:
        if isinstance(picture, Sheet):
            assert picture.why_not
            assert picture.name == "section"
            assert not assessed(name).drive.mount.cuts
            continue
        assert looking.overlaps(picture.figure) == [], (name, picture.name)
        assert looking.without_unit(picture.figure) == [], (name, picture.name)
        assert style.png(picture).startswith(b"\x89PNG")


@pytest.mark.parametrize("name", DRAWN)
def test_words_hold_the_numbers_shown(name):
    """Every number with a unit that is drawn is in the text alternative, but for a scale bar's."""
    for picture in looked_at(drawn(name)):
        texts = looking.drawn_texts(picture.figure)
        bars = {t for t, _, _ in texts if picture.name == "layout" and looking.NUMBER.fullmatch(t)}
        past = {n for t, _, _ in texts if t.startswith("goes on past") for n in looking.numbers(t)}
        shown = set().union(*(looking.numbers(t) for t, _, _ in texts)) - bars - past
        if picture.name in ("limits", "use", "lean", "load_path"):
            assert len(shown) > 5, picture.name
        assert shown - looking.numbers(picture.alt) - {"100 %"} == set(), picture.name


@pytest.mark.parametrize("kind", TITLES)
def test_any_title_is_clipped_and_escaped(kind):
    """Long, right-to-left, wide and awkward titles stay on their line and in well-formed SVG."""
    a = assessed(DRAWN[0])
    titled = replace(a, drive=replace(a.drive, title=TITLES[kind]))
    # All of them write the title by the same function: the script takes them all.
    modules = figures.OF_THE_ANSWER if ALL else (limit_bars, lean)
    for module in modules:
        shown = module.read(titled)
        if isinstance(shown, str):  # says why this drive has no such figure
            continue
        picture = style.Picture(
            name=module.NAME, title=module.TITLE, figure=module.draw(shown), alt="x"
        )
        assert looking.overlaps(picture.figure) == [], picture.name
        svg = style.svg(picture)
        texts = "".join(ET.fromstring(svg).itertext())
        assert "\u202e" not in svg
        assert "\x07" not in svg
        assert "<b>" not in svg
        if kind == "signs":
            assert '<b>&"bold"</b> $x^2$ turned round' in texts


def test_clipping_counts_wide_letters_twice():
    """A clipped title ends in an ellipsis and keeps to its columns."""
    assert style.clip("果園の車", 6) == "果園…"
    assert style.clip("short", 6) == "short"


@pytest.mark.skipif(not ALL, reason="by the script; pages with their figures in tests/sheet")
def test_same_every_time(tmp_path):
    """Two runs in two processes, with other seeds of hashing, give the same bytes."""
    code = (
        "import sys\nfrom pathlib import Path\n"
        "from mountlimit import assess, cards, drivefile, figures\n"
        "a = assess.assess(drivefile.read(cards.folder('examples') / 'orchard_barrow.toml'))\n"
        "figures.write_all(a, Path(sys.argv[1]))\n"
    )
    made = []
    for seed in ("1", "2"):
        folder = tmp_path / seed
        folder.mkdir()
        done = subprocess.run(
            [sys.executable, "-c", code, str(folder)], check=True, capture_output=True, text=True,
            env={**os.environ, "PYTHONHASHSEED": seed},
        )  # fmt: skip
        assert done.stderr == ""
        made.append({p.name: p.read_bytes() for p in folder.iterdir()})
    assert made[0] == made[1]
    assert len(made[0]) == 14


def test_sheets_stand_in_one_page():
    """Names inside the SVGs do not meet, text is text, words are inside, and the set is small."""
    thick, compared = answers()
    found = figures.sheets(assessed("orchard_barrow"), thick, compared)
    assert [s.name for s in found] == ["limits", "use", "load_path", "layout", "lean", "section", "plate", "thickness", "chains"]  # fmt: skip
    ids = [n for s in found for n in re.findall(r'\bid="([^"]+)"', s.svg)]
    assert len(ids) == len(set(ids))
    for sheet in found:
        root = ET.fromstring(sheet.svg)
        assert sheet.svg.startswith("<svg")
        assert root[0].text == sheet.title
        assert root[1].text == sheet.alt
        inside = set(re.findall(r'(?:url\(|href=")#([^")]+)', sheet.svg))
        assert inside <= set(ids)
        assert "20" not in re.findall(r"<dc:date>(\d\d)", sheet.svg)
    assert sum(len(s.svg.encode()) for s in found) < 300_000


def test_thickness_and_chains():
    """Their figures have no overlap, units on the axes, and the numbers in words."""
    thick, compared = answers()
    for picture in figures.pictures(assessed("orchard_barrow"), thick, compared)[7:]:
        assert looking.overlaps(picture.figure) == [], picture.name
        assert looking.without_unit(picture.figure) == [], picture.name
    carries = [t for t in thick if t.thickness < 1.0]
    assert carries
    alt = figures.pictures(assessed("orchard_barrow"), thick)[7].alt
    for t in carries:
        assert f"{1000 * t.thickness:.3g} mm" in alt or f"{1000 * t.thickness:.2f}" in alt


def test_section_route_says_there_is_no_plate_model():
    """A file that keeps the beams draws all but the plate model, and says why not."""
    source = (cards.folder("examples") / "orchard_barrow.toml").read_text(encoding="utf-8")
    changed = source.replace("[mount]", '[mount]\nroute = "sections"')
    a = assess.assess(drivefile.parse(changed.encode(), "x.toml"))
    left = {p.name: p.why_not for p in figures.pictures(a) if isinstance(p, Sheet)}
    assert list(left) == ["plate"]
    assert "section route" in left["plate"]
