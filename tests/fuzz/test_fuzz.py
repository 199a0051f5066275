"""Spoilt files: every input that ever found a fault, a few hundred fresh ones, and files that are none."""

from __future__ import annotations

import json
import os
import sys
from pathlib import Path

import judge
import mutate
import pytest

from mountlimit.cards import folder
from mountlimit.data import toml_file
from mountlimit.drivefile import read
from mountlimit.errors import MOST_SHOWN, InputError
from mountlimit.outlines import OutlineError, from_drawing

HERE = Path(__file__).parent
FOUND = sorted((HERE / "found").iterdir())
unix = pytest.mark.skipif(sys.platform == "win32", reason="no such files there")


@pytest.mark.parametrize("file", FOUND, ids=lambda f: f.name[:40])
def test_found(file, tmp_path):
    """What once gave a traceback, a flood of lines or ran away is refused in a few lines, in time."""
    kind, _, name = file.name.partition("_")
    copy = tmp_path / (file.name.partition("__")[2] or file.name)
    copy.write_bytes(file.read_bytes())
    if kind == "card":
        judge.card(copy)
    elif kind == "drawing" and name.endswith(".dxf"):
        judge.drawing(copy)
    else:
        (tmp_path / "turf_roller.dxf").write_bytes(
            (folder("examples") / "turf_roller.dxf").read_bytes()
        )
        judge.reader(copy)


@pytest.mark.parametrize("part", range(4))
def test_fresh_drive_files(part, tmp_path):
    """Files that the long run does not meet: beyond its numbers."""
    seen = set()
    for number in range(1_000_000 + 60 * part, 1_000_060 + 60 * part):
        path = tmp_path / "drive.toml"
        path.write_bytes(mutate.drive(number)[1])
        seen.add(judge.reader(path))
    assert {"refused by the reader", "read"} <= seen
    assert os.listdir(tmp_path) == ["drive.toml"]


def test_fresh_cards_and_drawings(tmp_path):
    for number in range(1_000_000, 1_000_080):
        _, name, raw = mutate.card(number)
        (tmp_path / name).write_bytes(raw)
        judge.card(tmp_path / name)
    for number in range(1_000_000, 1_000_015):
        (tmp_path / "outline.dxf").write_bytes(mutate.drawing(number)[1])
        judge.drawing(tmp_path / "outline.dxf")


@pytest.mark.parametrize("what", ["reader", "check", "card", "drawing"])
def test_long_run(what, tmp_path):
    """The long run met no fault, stayed within the limits, wrote nothing; one of its files again."""
    found = json.loads((HERE / f"fuzz_results_{what}.json").read_text("utf-8"))
    assert found["faults"] == []
    assert found["written"] == []
    assert found["slowest_s"] <= (judge.CHECK_SECONDS if what == "check" else judge.READ_SECONDS)
    assert found["peak_memory_mb"] * 2**20 <= judge.MEMORY
    counted = sum(n for outcomes in found["outcomes"].values() for n in outcomes.values())
    assert counted == found["files"]


def said(path) -> str:
    with pytest.raises(InputError) as caught:
        read(path)
    judge.lines(str(caught.value))
    return str(caught.value)


@unix
@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("/dev/zero", "device or a pipe"),
        ("/dev/null", "device or a pipe"),
        ("/dev/full", "device or a pipe"),
        ("/proc/self/mem", "cannot be read"),
        ("pipe", "device or a pipe"),
        ("folder", "folder"),
        ("loop", "symbolic links"),
        ("to_folder", "folder"),
        ("dangling", "no such file"),
        ("gone.toml", "no such file"),
        ("gone/drive.toml", "no such file"),
        ("huge", "too large"),
        ("n" * 300, "name too long"),
        ("a\0b", "not a file name"),
        ("\x1b[2J", "\\x1b[2J: no such file"),
    ],
)
def test_what_is_no_drive_file(name, words, tmp_path):
    """One line, at once, with bounded memory."""
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "folder").mkdir()
    for link, to in (("loop", "loop"), ("to_folder", "folder"), ("dangling", "nothing")):
        (tmp_path / link).symlink_to(to)
    with (tmp_path / "huge").open("wb") as file:
        file.truncate(20 << 30)  # 20 GB that take no room
    with judge.clock(judge.READ_SECONDS):
        assert words.lower() in said(tmp_path / name if not name.startswith("/") else name).lower()


@pytest.mark.parametrize(
    ("raw", "words"),
    [
        (b".".join([b"a"] * 400_000) + b" = 1", "joined by dots"),
        (b"[" + b" . ".join([b'"a b"'] * 100_000) + b"]", "joined by dots"),
        (b"x = {" + b".".join([b"a"] * 400_000) + b" = 1}", "joined by dots"),
        (b'x = """' + b'\\"""' * 200_000, "not valid TOML"),
        (b"x = [" + b"1," * 300_000 + b"]", "more than 50000 values"),
        (b"x = " + b"[" * 50 + b"]" * 50, "nested"),
        (b"x = " + b"{a=" * 400 + b"1" + b"}" * 400, "nested"),
        (b"x = " + b"9" * 900_000, "too many digits"),
        (b"x = 0x" + b"f" * 900_000, "whole number is too large"),
        (b"x = 9223372036854775808", "whole number is too large"),
        (b"\n".join(b"k%d = 1" % i for i in range(45_000)), "and 4"),
        (b'title = "' + b"x" * 900_000 + b'"', "at most 300 characters"),
        (b'title = "\\u001b[2J"', "control character"),
    ],
)
def test_what_would_run_away(raw, words, tmp_path):
    """Bounded in time: names, depth, values, digits, mistakes and words."""
    path = tmp_path / "drive.toml"
    path.write_bytes(raw)
    with judge.clock(judge.READ_SECONDS):
        text = said(path)
    assert words in text
    assert len(text.splitlines()) <= MOST_SHOWN + 1


@pytest.mark.parametrize(
    ("spline", "words"),
    [
        ({"fit_points": [(i % 100, i // 100) for i in range(3000)]}, "of 3000 points"),
        ({"control": [((-1) ** i * 50, i % 7) for i in range(60)], "degree": 50}, "degree 50"),
        (
            {"control": [((-1) ** i * 50, i % 7) for i in range(9000)], "degree": 3},
            "of 9000 points",
        ),
    ],
)
def test_wild_splines(spline, words, tmp_path):
    """Curves of a drawing that would take minutes to solve or to step."""
    import ezdxf

    drawn = ezdxf.new()
    drawn.layers.add("frame")
    if "control" in spline:
        drawn.modelspace().add_open_spline(
            [(x, y, 0) for x, y in spline["control"]], spline["degree"]
        )
    else:
        drawn.modelspace().add_spline(spline["fit_points"])
    path = tmp_path / "outline.dxf"
    drawn.saveas(path)
    with judge.clock(2 * judge.READ_SECONDS), pytest.raises(OutlineError, match=words):
        from_drawing(path, unit="mm")


def test_dots_that_join_no_name():
    """Dots in texts, comments and numbers are nobody's name."""
    dots = "." * 50
    text = f"""# a{dots}b 1.1.1.1.1.1.1.1.1.1.1.1.1.1.1.1 "
        a = "1.2.3.4.5.6.7.8.9.10.11.12.13.14.15 # '"
        b = '''{dots} "'''
        c = [{"1.5, " * 60}] # '
        d.e.f = 1.0
    """
    found = toml_file.parsed(text.encode())
    assert found["d"] == {"e": {"f": 1.0}}
    assert len(found["c"]) == 60


def test_a_mark_in_front_is_no_fault():
    """Some editors begin a UTF-8 file with a mark."""
    assert toml_file.parsed(b"\xef\xbb\xbfa = 1") == {"a": 1}
