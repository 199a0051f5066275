"""Page, Markdown and data say the same; two runs give the same bytes; targets are kept whole."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from types import SimpleNamespace

import pytest
from click.testing import CliRunner

from conftest import drive_file
from mountlimit.cards import folder
from mountlimit.cli import main
from mountlimit.sheet import gather
from sheet.made import (
    DATE,
    EPOCH,
    ORDINARY,
    SAMPLE,
    WHOLE,
    data,
    drive_path,
    page,
    sheet,
    text,
    visible,
)

NUMBER = re.compile(r"\d+(?:\.\d+)?(?:[eE][-+]?\d+)?")
FILE = str(folder("examples") / "hay_elevator.toml")


def strings(thing) -> str:
    """All texts and numbers of a record."""
    if isinstance(thing, dict):
        return " ".join(strings(one) for one in thing.values())
    if isinstance(thing, list):
        return " ".join(strings(one) for one in thing)
    return str(thing)


@pytest.mark.parametrize("name", SAMPLE)
@pytest.mark.parametrize("kind", ["page", "markdown"])
def test_every_number_is_in_the_data(name, kind):
    shown = visible(page(name)) if kind == "page" else text(name)
    blocks = {k: v for k, v in data(name).items() if k not in ("result", "schema")}
    numbers = NUMBER.findall(shown.replace("sha256", ""))  # a word, not a number
    assert len(numbers) > 1000
    missing = set(numbers) - set(NUMBER.findall(strings(blocks)))
    assert not missing


@pytest.mark.parametrize("name", SAMPLE)
def test_every_number_of_the_blocks_is_shown(name):
    """And the other way round, so that no renderer drops one."""
    sections = strings(data(name)["sections"])
    for shown in (visible(page(name)), text(name)):
        assert not set(NUMBER.findall(sections)) - set(NUMBER.findall(shown))


def run(*arguments: str, **variables: str):
    return CliRunner().invoke(main, ["report", FILE, "--quick", *arguments], env=variables)


@pytest.mark.skipif(WHOLE, reason="part of the ordinary run")
def test_another_process_writes_the_same_bytes(tmp_path):
    """Figures and all: with another seed of hashing, and the date from SOURCE_DATE_EPOCH."""
    name = ORDINARY[1]
    code = (
        "import sys\nfrom mountlimit.cli import main\nfrom mountlimit.sheet import gather\n"
        "own, kept = gather.gather, []\n"
        "def once(*given):\n    kept or kept.append(own(*given))\n    return kept[0]\n"
        "gather.gather = once\n"
        "for kind in ('html', 'json'):\n"
        "    main(['report', sys.argv[1], '--quick', '-o', f'{sys.argv[-1]}/one.{kind}'], standalone_mode=False)\n"
    )
    subprocess.run(
        [sys.executable, "-c", code, str(drive_path(name)), str(tmp_path)], check=True, capture_output=True,
        env={**os.environ, "PYTHONHASHSEED": "7", "SOURCE_DATE_EPOCH": EPOCH},
    )  # fmt: skip
    assert (tmp_path / "one.html").read_bytes() == page(name).encode()
    whole = json.dumps(data(name), indent=1, ensure_ascii=False) + "\n"
    assert (tmp_path / "one.json").read_bytes() == whole.encode()
    assert page(name).count("<svg") >= 6
    assert DATE in page(name)


def test_changes_are_left_out_only_when_asked(monkeypatch):
    """Without --quick what to change is worked out for the wanted current; with it, not."""
    asked = []
    for name in ("what_to_change", "_pictures", "_pull_test"):
        monkeypatch.setattr(gather, name, lambda *given, _n=name: asked.append((_n, given)) or ())
    monkeypatch.setattr(gather, "blocks_of", lambda *_: ("changes",))
    for module, name in ((gather.sampling, "take"), (gather.sure, "of"), (gather.steps, "plan")):
        monkeypatch.setattr(module, name, lambda *_: None)
    monkeypatch.setattr(gather, "worked", lambda *_: ())
    assert gather.gather(drive_file(), quick=True).changes == ()
    assert "what_to_change" not in [n for n, _ in asked]
    assert gather.gather(drive_file(), quick=False).changes == ("changes",)
    assert [given[1] for n, given in asked if n == "what_to_change"] == [90.0]


@pytest.mark.parametrize(
    ("arguments", "variables"),
    [(("--date", "31.5.2026"), {}), ((), {"SOURCE_DATE_EPOCH": "soon"}), ((), {"SOURCE_DATE_EPOCH": "9" * 30})],
)  # fmt: skip
def test_a_wrong_date_is_one_line(arguments, variables, tmp_path):
    done = run("-o", str(tmp_path / "a.html"), *arguments, **variables)
    assert done.exit_code == 2
    assert len(done.stderr.strip().splitlines()) == 1
    assert "expected" in done.stderr
    assert not list(tmp_path.iterdir())


def test_a_target_that_cannot_be_written_keeps_the_old_file(tmp_path, monkeypatch):
    old = tmp_path / "a.html"
    old.write_text("old")

    def full(*_):
        raise OSError(28, "No space left on device")

    known = sheet(SAMPLE[0])  # the writing is looked at, not the work
    monkeypatch.setattr(gather, "gather", lambda *_: SimpleNamespace(assessment=None))
    monkeypatch.setattr(gather, "head", lambda *_: None)
    monkeypatch.setattr("mountlimit.sheet.content.sheet", lambda *_: known)
    monkeypatch.setattr("mountlimit.writing.os.fsync", full)
    done = run("-o", str(old), "--date", "2026-05-31")
    assert done.exit_code == 2
    assert done.stderr.strip().endswith("cannot be written: No space left on device")
    assert old.read_text() == "old"
    assert [p.name for p in tmp_path.iterdir()] == ["a.html"]
    missing = run("-o", str(tmp_path / "none" / "a.html"), "--date", "2026-05-31")
    assert missing.exit_code == 2
    assert "cannot be written" in missing.stderr
