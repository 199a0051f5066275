"""Full disks, closed pipes, Ctrl-C, kills, two writers: the old file or the new one whole, one line, the right status."""

from __future__ import annotations

import errno
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from conftest import changed, toml_text
from mountlimit import commands, writing
from mountlimit.cards import folder
from mountlimit.cli import main
from mountlimit.errors import MountlimitError

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="needs fork, signals and /dev/full")
HERE = Path(__file__).parent
PLATE = ["new", "plate", "-o", "plate.toml", "--force"]
IDENTIFY = ["identify", "--ten-pitches", "127mm", "--json"]
QUICK = [["--help"], ["check", "--help"], ["data", "chains"], IDENTIFY]
FULL = "mountlimit: the answer cannot be written: No space left on device\n"
CLOSED = "mountlimit: the output is closed; send it to a file or to /dev/null\n"


def tried(cases):
    """Run cases in children of one process."""
    done = subprocess.run(
        [sys.executable, str(HERE / "forked.py")], input=json.dumps(cases), capture_output=True, text=True, check=True
    )  # fmt: skip
    return json.loads(done.stdout)


@pytest.fixture(scope="module")
def place(tmp_path_factory):
    made = tmp_path_factory.mktemp("faults")
    (made / "drive.toml").write_text(
        toml_text(changed(mount__route="sections", frame__member="rigid"))
    )
    return made


def test_outputs_that_fail(place):
    """Full, closed, or read by nobody any more: one line or none, never a traceback."""
    ways = ("full", "closed", "no reader")
    cases = [{"args": args, "out": way, "cwd": str(place)} for args in QUICK for way in ways]
    wanted = {"full": (2, FULL), "closed": (2, CLOSED), "no reader": (141, "")}
    for case, came in zip(cases, tried(cases), strict=True):
        assert (came["status"], came["err"]) == wanted[case["out"]], case


def test_error_stream_that_fails(place):
    """The exit status says it all where the message cannot be written."""
    ways = ("full", "closed", "no reader")
    wrong = [["new", "nothing"], ["check", "--nothing"], ["data", "nothing"]]
    cases = [{"args": args, "err": way, "cwd": str(place)} for args in wrong for way in ways]
    cases += [{"args": ["data", "keys"], "err": way, "cwd": str(place)} for way in ways]
    assert [came["status"] for came in tried(cases)] == [2] * 9 + [0] * 3


def test_disk_full_while_a_file_is_written(place):
    """The system itself refuses to let the file grow: the old one stays, nothing is left beside it."""
    old = place / "plate.toml"
    old.write_text("old")
    came, fine = tried(
        [{"args": PLATE, "cwd": str(place), "fsize": 4000}, {"args": PLATE, "cwd": str(place)}]
    )
    assert (came["status"], came["out"]) == (2, "")
    assert came["err"] == "plate.toml: cannot be written: File too large\n"
    assert fine["status"] == 0
    assert "[mount]" in old.read_text()
    assert sorted(os.listdir(place)) == ["drive.toml", "plate.toml"]


def test_read_only_folder_and_file(tmp_path):
    """An ordinary user, a folder without leave to write, and a file without it."""
    # outside of the test's own folder, which is closed to other users
    shut = Path(os.path.realpath(f"/tmp/mountlimit-{os.getpid()}"))
    shut.mkdir(mode=0o755)
    try:
        (shut / "plate.toml").write_text("old")
        os.chmod(shut / "plate.toml", 0o444)
        os.chmod(shut, 0o555)
        case = {"args": ["new", "plate", "--force"], "cwd": str(shut), "user": True}
        (came,) = tried([case])
        os.chmod(shut, 0o777)
        (second,) = tried([case])
        assert (came["status"], second["status"]) == (2, 2)
        assert came["err"] == f"plate.toml: cannot be written: the folder {shut} is read-only\n"
        assert second["err"] == "plate.toml: cannot be written: it is read-only\n"
        assert (shut / "plate.toml").read_text() == "old"
        assert os.listdir(shut) == ["plate.toml"]
    finally:
        os.chmod(shut, 0o755)
        (shut / "plate.toml").unlink()
        shut.rmdir()


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("gone/sheet.html", "there is no folder"),
        ("drive.toml/sheet.html", "there is no folder"),
        ("sheet", "it is a folder"),
        ("/proc/sheet.html", "No such file"),
        ("/dev/null", "device or a pipe"),
        ("/dev/full", "device or a pipe"),
        ("loop.html", "cannot be written"),
        ("n" * 300 + ".html", "name too long"),
        ("drive.toml", "is an input of this report"),
        ("link.html", "is an input of this report"),
        ("same.html", "is an input of this report"),
    ],
)
def test_reports_that_cannot_be_written(name, words, tmp_path, monkeypatch):
    """Told before the long work: one line, status 2; the drive file stays as it is."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("mountlimit.sheet.gather.gather", lambda *_: pytest.fail("worked first"))
    text = toml_text(changed())
    Path("drive.toml").write_text(text)
    Path("sheet").mkdir()
    Path("loop.html").symlink_to("loop.html")
    Path("link.html").symlink_to("drive.toml")
    os.link("drive.toml", "same.html")
    done = CliRunner().invoke(main, ["report", "drive.toml", "--format", "html", "-o", name])
    assert done.exit_code == 2
    assert len(done.stderr.splitlines()) == 1
    assert words.lower() in done.stderr.lower()
    assert Path("drive.toml").read_text() == text
    assert Path("/dev/null").is_char_device()


def test_a_drawing_is_an_input_too(tmp_path, monkeypatch):
    for name in ("turf_roller.toml", "turf_roller.dxf"):
        (tmp_path / name).write_bytes((folder("examples") / name).read_bytes())
    monkeypatch.chdir(tmp_path)
    done = CliRunner().invoke(
        main, ["report", "turf_roller.toml", "--format", "html", "-o", "turf_roller.dxf"]
    )
    assert (done.exit_code, done.stderr.count("\n")) == (2, 1)
    assert "is an input" in done.stderr


FILES = {
    "check": [],
    "why": ["chain_static"],
    "explain-failure": ["key", "--looks", "sheared"],
    "compare": ["drive.toml"],
}


@pytest.mark.parametrize("command", sorted(c.name for c in commands.found()))
def test_ctrl_c(command, tmp_path, monkeypatch):
    """In every command that reads a drive file, while it works; ``test_stop`` sends the real signal."""
    if command in ("data", "identify", "new"):
        pytest.skip("done at once")
    monkeypatch.chdir(tmp_path)
    Path("drive.toml").write_text(toml_text(changed()))

    def stop(*_):
        raise KeyboardInterrupt

    monkeypatch.setattr("mountlimit.drivefile.read", stop)
    done = CliRunner().invoke(main, [command, "drive.toml", *FILES.get(command, [])])
    assert (done.exit_code, done.stderr) == (130, "Stopped. No file was changed.\n")
    assert os.listdir() == ["drive.toml"]


def test_ctrl_c_while_a_file_is_written(tmp_path, monkeypatch):
    """Nothing is left beside the old file."""
    monkeypatch.chdir(tmp_path)
    Path("plate.toml").write_text("old")

    def stop(*_):
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", stop)
    done = CliRunner().invoke(main, PLATE)
    assert (done.exit_code, done.stderr) == (130, "Stopped. No file was changed.\n")
    assert os.listdir() == ["plate.toml"]
    assert Path("plate.toml").read_text() == "old"


def test_ctrl_c_after_a_file_was_written(tmp_path, monkeypatch):
    """Then it is not said that no file was changed."""
    monkeypatch.chdir(tmp_path)

    def stop(name, *_):
        writing.write_whole(Path("plate.toml"), "new")
        raise KeyboardInterrupt

    monkeypatch.setattr("mountlimit.starter.write", stop)
    done = CliRunner().invoke(main, PLATE)
    assert (done.exit_code, done.stderr) == (130, "Stopped. Written before that: plate.toml.\n")


def test_no_space_left(tmp_path, monkeypatch):
    """The message of the system, and nothing left."""

    def full(*_):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(
        MountlimitError, match=r"sheet\.html: cannot be written: No space left on device$"
    ):
        writing.write_whole(tmp_path / "sheet.html", "new")
    assert os.listdir(tmp_path) == []


KILLED = """
import os, signal, sys
from pathlib import Path
from mountlimit import writing
os.{call} = lambda *_: os.kill(os.getpid(), signal.SIGKILL)
writing.write_whole(Path("sheet.html"), "new" * 100000)
"""


def code(text, cwd):
    return subprocess.Popen([sys.executable, "-c", text], cwd=cwd)


@pytest.mark.parametrize("call", ["fsync", "replace"])
def test_killed_while_it_writes(call, tmp_path):
    """Old file whole; what is left beside it harms no later run, and one later than 10 s clears it away."""
    target = tmp_path / "sheet.html"
    target.write_text("old")
    assert code(KILLED.replace("{call}", call), tmp_path).wait() == -9
    (left,) = (p for p in tmp_path.iterdir() if p != target)
    assert left.name.startswith(".sheet.html.")
    assert target.read_text() == "old"
    writing.write_whole(target, "second")
    assert left.exists()  # may be another run's, a moment ago
    os.utime(left, (1e9, 1e9))
    writing.write_whole(target, "third")
    assert os.listdir(tmp_path) == ["sheet.html"]
    assert target.read_text() == "third"


def test_a_slow_run_is_not_cleared_away(tmp_path):
    """A temporary file that another run holds stays, however old."""
    import fcntl

    held = tmp_path / ".sheet.html.abc.part"
    with held.open("w") as file:
        fcntl.flock(file, fcntl.LOCK_EX)
        os.utime(held, (1e9, 1e9))
        writing.write_whole(tmp_path / "sheet.html", "new")
        assert held.exists()


WRITER = """
import sys
from pathlib import Path
from mountlimit.writing import write_whole
for _ in range(60):
    write_whole(Path("sheet.html"), "{letter}" * 300_000)
"""


def test_two_writers(tmp_path):
    """Whoever reads meanwhile finds one of them whole; nothing is left."""
    target = tmp_path / "sheet.html"
    target.write_text("a" * 300_000)
    runs = [code(WRITER.replace("{letter}", letter), tmp_path) for letter in "ab"]
    seen = set()
    while any(run.poll() is None for run in runs):
        text = target.read_text()
        assert len(text) == 300_000
        assert len(set(text)) == 1
        seen.add(text[0])
    assert [run.returncode for run in runs] == [0, 0]
    assert os.listdir(tmp_path) == ["sheet.html"]


def test_link_permissions_and_long_names(tmp_path):
    """A link stays a link, a private file stays private, and a name may be as long as the system takes."""
    real, link = tmp_path / "real.html", tmp_path / "link.html"
    real.write_text("old")
    real.chmod(0o600)
    link.symlink_to(real)
    writing.write_whole(link, "new")
    assert link.is_symlink()
    assert real.read_text() == "new"
    assert real.stat().st_mode & 0o777 == 0o600
    writing.write_whole(tmp_path / ("n" * 250 + ".html"), "new")


def test_homeless(tmp_path):
    """No home, no cache and no folder for temporary files: an answer all the same, nothing else is said."""
    for name in ("turf_roller.toml", "turf_roller.dxf"):
        (tmp_path / name).write_bytes((folder("examples") / name).read_bytes())
    shut = dict.fromkeys(("HOME", "TMPDIR", "XDG_CACHE_HOME", "XDG_CONFIG_HOME"), "/proc")
    (came,) = tried([{"args": ["check", "turf_roller.toml"], "cwd": str(tmp_path), "env": shut}])
    assert came["out"].startswith("Safe to")
    assert came["err"] == ""
    assert came["status"] in (0, 1)
    assert sorted(os.listdir(tmp_path)) == ["turf_roller.dxf", "turf_roller.toml"]


def test_long_run():
    """The script's result: commands with outputs that fail, kills at chance moments, a small disk."""
    found = json.loads((HERE / "faults_results.json").read_text("utf-8"))
    assert {*found["commands"], *found["left"]} == {c.name for c in commands.found()}
    assert len(found["commands"]) > 5
    assert found["wrong"] == []
