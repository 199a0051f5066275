"""Whatever a user writes into title, file name or drive file stays text on the page."""

from __future__ import annotations

import dataclasses
import re

import html5lib
import pytest

from conftest import drive_file
from mountlimit.sheet import content, gather, html, markdown
from mountlimit.sheet.blocks import Bullets, Grid, Head, Paragraph, Section
from sheet.made import DATE, dumped, needs_chromium, plain

HOSTILE = {
    "markup": "<script>window.__x=1;alert(1)</script><img src=x onerror='window.__x=1'><b id=s1>",
    "quotes": "\" onmouseover=\"window.__x=1\" ' x='",
    "template": "{{ 7*7 }}{% for a in b %}{# c #}",
    "closers": "]]></style></title></script></table></details>--><!-- </textarea>",
    "long word": "W" * 200,
    "right to left": "\u05e2\u05d2\u05dc\u05d4 \u202e gnilor \u2066 \u0645\u062d\u0631\u0643",
    "wide letters": "\u7535\u52a8\u673a\u5b89\u88c5\u677f" * 20,
    "controls": "a\x00b\x01c\x08d\x1be\x7ff\x85g\ufffeh",
    "marks": "# x\n- y\n1. z | a | `b` [l](javascript:alert(1)) ![i](x) <http://a.b> &lt;script&gt; **c**",
}  # fmt: skip


def made(words: str):
    """A sheet with foreign words in every place where a user's text can stand."""
    found = plain()
    sheet = content.sheet(found, gather.head(found.assessment, DATE))
    head = dataclasses.replace(sheet.head, title=words, file=words + ".toml")
    grid = Grid(caption=words, heads=(words, "b"), rows=((words, words),), right=(False, True))
    told = Section(
        name="told", title="Told", blocks=(Paragraph(text=words), Bullets(items=(words,)), grid)
    )
    return dataclasses.replace(sheet, head=head, sections=(*sheet.sections, told))


def shape(page: str):
    """Elements with the names of their attributes, as a parser sees them."""
    tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    return [(str(e.tag), tuple(sorted(e.keys()))) for e in tree.iter()]


@pytest.mark.parametrize("kind", HOSTILE)
def test_no_element_or_attribute_is_added(kind):
    usual = [(t, tuple(a for a in k if a != "class")) for t, k in shape(html.render(made("plain")))]
    page = html.render(made(HOSTILE[kind]))
    assert [(t, tuple(a for a in k if a != "class")) for t, k in shape(page)] == usual


@pytest.mark.parametrize("kind", ["markup", "template", "marks", "quotes"])
def test_the_words_are_shown_as_written(kind):
    tree = html5lib.parse(html.render(made(HOSTILE[kind])), namespaceHTMLElements=False)
    assert "".join(tree.find(".//h1").itertext()) == HOSTILE[kind]


@pytest.mark.parametrize("kind", HOSTILE)
def test_markdown_passes_no_markup(kind):
    text = markdown.render(made(HOSTILE[kind]))
    assert not re.search(r"(?<!\\)[<>]", text)
    assert not re.search(r"(?<!\\)\]\((?!#)", text)
    usual = markdown.render(made("plain"))
    assert len(text.splitlines()) == len(usual.splitlines())
    assert not re.search(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e]", text)


@pytest.mark.parametrize("kind", HOSTILE)
def test_through_the_drive_file(kind):
    """The title's way from the file: it is read, or refused in one line."""
    words = "".join(c if c >= " " and c not in "\x7f\ufffe" else " " for c in HOSTILE[kind])
    file = drive_file(title=words)
    given = dataclasses.replace(plain().assessment, file=file)
    sheet = content.sheet(dataclasses.replace(plain(), assessment=given), Head(
        title=file.given["title"].value, file="a", input_sha256="", version="", data_version="", date=DATE,
    ))  # fmt: skip
    usual = html.render(content.sheet(plain(), sheet.head))
    assert len(shape(html.render(sheet))) == len(shape(usual))


@needs_chromium
@pytest.mark.parametrize("kind", HOSTILE)
def test_nothing_runs_and_nothing_is_wider_than_a_phone(kind, tmp_path):
    probe = (
        "<script>addEventListener('load',()=>{var d=document.documentElement;"
        "d.dataset.ran=String(window.__x);d.dataset.wide=d.scrollWidth>d.clientWidth})</script></body>"
    )
    page = html.render(made(HOSTILE[kind])).replace("</body>", probe)
    inner = tmp_path / "page.html"
    inner.write_text(page, encoding="utf-8")
    # A headless window is never narrower than 500: the phone is a frame of 360 in it.
    outer = tmp_path / "outer.html"
    outer.write_text(
        "<iframe id=f width=360 height=640 style='border:0' src=page.html></iframe><script>f.onload=()=>{"
        "var d=f.contentDocument.documentElement.dataset;document.body.dataset.told=d.ran+' '+d.wide+' '+f.contentWindow.innerWidth}</script>"
    )
    told = re.search(r'data-told="([^"]*)"', dumped(outer, "--allow-file-access-from-files"))
    assert told
    assert told[1] == "undefined false 360"
