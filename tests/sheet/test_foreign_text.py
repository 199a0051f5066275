"""Whatever a user writes into title, file name or drive file stays text on the page."""

from __future__ import annotations

import dataclasses
import re
from functools import cache

import html5lib
import pytest

from conftest import drive_file
from mountlimit.assess import assess
from mountlimit.sheet import html, inputs, markdown
from mountlimit.sheet.blocks import Bullets, Fold, Grid, Paragraph, Picture, Section
from sheet.made import ORDINARY, dumped, needs_chromium, sheet

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


@cache
def short():
    """A sheet with every kind of block, but of pictures and worked calculations one each."""
    whole = sheet(ORDINARY[0])
    seen: set[type] = set()

    def keep(block):
        if not isinstance(block, Picture | Fold):
            return True
        first = type(block) not in seen
        seen.add(type(block))
        return first

    sections = (
        dataclasses.replace(s, blocks=tuple(b for b in s.blocks if keep(b))) for s in whole.sections
    )
    found = dataclasses.replace(whole, sections=tuple(s for s in sections if s.blocks))
    assert seen == {Picture, Fold}
    return found


def made(words: str):
    """A sheet with foreign words in every place where a user's text can stand."""
    head = dataclasses.replace(short().head, title=words, file=words + ".toml")
    grid = Grid(caption=words, heads=(words, "b"), rows=((words, words),), right=(False, True))
    told = Section(
        name="told", title="Told", blocks=(Paragraph(text=words), Bullets(items=(words,)), grid)
    )
    return dataclasses.replace(short(), head=head, sections=(*short().sections, told))


def shape(page: str):
    """Elements with the names of their attributes, as a parser sees them."""
    tree = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    return [(str(e.tag), tuple(sorted(e.keys()))) for e in tree.iter()]


def unclassed(page: str):
    """The shape but for classes: a long word may stand in another one."""
    return [(t, tuple(a for a in k if a != "class")) for t, k in shape(page)]


@cache
def usual():
    """The shape with plain words."""
    return unclassed(html.render(made("plain")))


@cache
def assessed():
    """A short drive, assessed."""
    return assess(drive_file(title="plain"))


@pytest.mark.parametrize("kind", HOSTILE)
def test_no_element_or_attribute_is_added(kind):
    page = html.render(made(HOSTILE[kind]))
    assert unclassed(page) == usual()


@pytest.mark.parametrize("kind", ["markup", "template", "marks", "quotes"])
def test_the_words_are_shown_as_written(kind):
    tree = html5lib.parse(html.render(made(HOSTILE[kind])), namespaceHTMLElements=False)
    assert "".join(tree.find(".//h1").itertext()) == HOSTILE[kind]


@pytest.mark.parametrize("kind", HOSTILE)
def test_markdown_passes_no_markup(kind):
    text = markdown.render(made(HOSTILE[kind]))
    assert not re.search(r"(?<!\\)[<>]", text)
    assert not re.search(r"(?<!\\)\]\((?!#)", text)
    plain = markdown.render(made("plain"))
    assert len(text.splitlines()) == len(plain.splitlines())
    assert not re.search(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\u202a-\u202e]", text)


@pytest.mark.parametrize("kind", HOSTILE)
def test_through_the_drive_file(kind):
    """The title's way from the file: it is read, or refused in one line."""
    words = "".join(c if c >= " " and c not in "\x7f\ufffe" else " " for c in HOSTILE[kind])
    file = drive_file(title=words)
    pages = []
    for one in (file, assessed().file):
        table = inputs.table(dataclasses.replace(assessed(), file=one), ())
        head = dataclasses.replace(short().head, title=one.given["title"].value)
        section = Section(name="inputs", title="Inputs", blocks=(table,))
        pages.append(html.render(dataclasses.replace(short(), head=head, sections=(section,))))
    assert len(shape(pages[0])) == len(shape(pages[1]))


@needs_chromium
def test_nothing_runs_and_nothing_is_wider_than_a_phone(tmp_path):
    probe = (
        "<script>addEventListener('load',()=>{var d=document.documentElement;"
        "d.dataset.ran=String(window.__x);d.dataset.wide=d.scrollWidth>d.clientWidth})</script></body>"
    )
    for i, words in enumerate(HOSTILE.values()):
        page = html.render(made(words)).replace("</body>", probe)
        (tmp_path / f"page{i}.html").write_text(page, encoding="utf-8")
    # A headless window is never narrower than 500: the phone is a frame of 360 in it.
    outer = tmp_path / "outer.html"
    frames = "".join(
        f"<iframe width=360 height=640 style='border:0' src=page{i}.html></iframe>"
        for i in range(len(HOSTILE))
    )
    outer.write_text(
        frames
        + "<script>onload=()=>{document.body.dataset.told=[...document.querySelectorAll('iframe')].map(f=>{"
        "var d=f.contentDocument.documentElement.dataset;return d.ran+' '+d.wide+' '+f.contentWindow.innerWidth}).join('|')}</script>"
    )
    told = re.search(r'data-told="([^"]*)"', dumped(outer, "--allow-file-access-from-files"))
    assert told
    assert dict(zip(HOSTILE, told[1].split("|"), strict=True)) == dict.fromkeys(
        HOSTILE, "undefined false 360"
    )
