"""The page is sound HTML, can be read by everyone, and needs nothing beside it."""

from __future__ import annotations

import re
from importlib.resources import files
from itertools import pairwise

import html5lib
import pytest

from sheet.made import SAMPLE, page

STYLE = files("mountlimit.sheet").joinpath("sheet.css").read_text(encoding="utf-8")

FETCHED = re.compile(r"https?:|//\w|@import|<link|<script[^>]+src|<iframe|<img[^>]+src=\"(?!data:)")


@pytest.fixture(scope="module", params=SAMPLE)
def tree(request):
    """The page as a strict parser reads it: a mistake in it fails here."""
    return html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page(request.param))


def test_sound_html(tree):
    assert tree.get("lang") == "en"
    assert tree.find("head/title").text
    assert tree.find("head/meta[@name='viewport']") is not None


def test_ids_are_unique_and_links_arrive(tree):
    ids = [e.get("id") for e in tree.iter() if e.get("id")]
    assert len(ids) == len(set(ids))
    for link in tree.iter("a"):
        assert link.get("href")[0] == "#"
        assert link.get("href")[1:] in ids


def test_headings_skip_no_level(tree):
    levels = [
        int(e.tag[1])
        for e in tree.iter()
        if isinstance(e.tag, str) and re.fullmatch("h[1-6]", e.tag)
    ]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_tables_and_pictures_are_told(tree):
    tables = list(tree.iter("table"))
    assert len(tables) > 3
    for table in tables:
        assert "".join(table.find("caption").itertext()).strip()
        for head in table.iter("th"):
            assert head.get("scope") == "col"
            assert "".join(head.itertext()).strip()
    for element in tree.iter():
        if element.tag == "img":
            assert element.get("alt")
        if element.get("role") == "img":
            assert element.get("aria-label")


@pytest.mark.parametrize("name", SAMPLE)
def test_nothing_is_fetched(name):
    markup = re.sub(r"\bxmlns(:\w+)?=\"[^\"]*\"", "", page(name))
    markup = re.sub(
        r"data:image/png;base64,[\w+/=\s]*", "data:", markup
    )  # holds itself what it shows
    assert not FETCHED.search(markup)
    assert not re.search(r"url\((?!['\"]?#)", markup)
    assert len(page(name).encode()) < 500_000


def luminance(colour: str) -> float:
    """Relative luminance by WCAG 2.1."""
    if len(colour) == 4:
        colour = "#" + "".join(2 * c for c in colour[1:])
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: str, other: str) -> float:
    """Contrast of two colours by WCAG 2.1."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def test_contrast_of_every_text_colour():
    assert contrast("#000", "#ffffff") == pytest.approx(21.0)  # WCAG 2.1: black on white
    texts = set(re.findall(r"(?<![-\w])color: (#[0-9a-f]+)", STYLE))
    grounds = set(re.findall(r"background(?:-color)?: (#[0-9a-f]+)", STYLE))
    assert len(texts) >= 3
    assert grounds
    for text in texts:
        for ground in grounds:
            assert contrast(text, ground) >= 4.5, (text, ground)
