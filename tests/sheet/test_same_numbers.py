"""Page, Markdown and data say the same; two runs give the same bytes; targets are kept whole."""

from __future__ import annotations

import re

import pytest
from click.testing import CliRunner

from mountlimit.cards import folder
from mountlimit.cli import main
from sheet.made import SAMPLE, data, gathered, page, text, visible

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
    numbers = NUMBER.findall(shown)
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


@pytest.mark.parametrize("kind", ["html", "json"])
def test_two_runs_are_the_same_bytes(kind, tmp_path):
    one, two = tmp_path / f"one.{kind}", tmp_path / f"two.{kind}"
    assert run("-o", str(one), "--date", "2026-05-31").exit_code == 0
    assert run("-o", str(two), SOURCE_DATE_EPOCH="1780185600").exit_code == 0
    assert one.read_bytes() == two.read_bytes()
    assert b"2026-05-31" in one.read_bytes()


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

    known = gathered(SAMPLE[0])  # the writing is looked at, not the work
    monkeypatch.setattr("mountlimit.sheet.gather.gather", lambda *_: known)
    monkeypatch.setattr("mountlimit.writing.os.fsync", full)
    done = run("-o", str(old), "--date", "2026-05-31")
    assert done.exit_code == 2
    assert done.stderr.strip().endswith("cannot be written: No space left on device")
    assert old.read_text() == "old"
    assert [p.name for p in tmp_path.iterdir()] == ["a.html"]
    missing = run("-o", str(tmp_path / "none" / "a.html"), "--date", "2026-05-31")
    assert missing.exit_code == 2
    assert "cannot be written" in missing.stderr
