"""Every command with outputs that fail; kills at chance moments; a disk of 64 kB. About two minutes.

    python tests/faults/faults_run.py

Goes on where it stopped (``--afresh``: from the start) and writes ``faults_results.json``: what was tried, what
went wrong (nothing should) and which commands are left. The work of a command is done once and its answer kept
for all outputs. The small disk is mounted where the user may do so, and said to be left out elsewhere.
"""

from __future__ import annotations

import json
import os
import random
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import Any

for _name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")
HERE = Path(__file__).parent.resolve()
SOURCE = HERE.parent.parent / "src"
sys.path[:0] = [str(HERE), str(HERE.parent), str(SOURCE)]
os.environ["PYTHONPATH"] = str(SOURCE)
DRIVE = "drive.toml"
COMMANDS: dict[str, list[str]] = {
    "chains": [DRIVE], "changes": [DRIVE], "check": [DRIVE], "compare": [DRIVE, DRIVE], "data": ["materials"],
    "explain-failure": [DRIVE, "key", "--looks", "sheared"], "identify": ["--ten-pitches", "127mm"],
    "new": ["plate", "-o", "plate.toml", "--force"], "pull-test": [DRIVE],
    "report": [DRIVE, "--quick", "-o", "sheet.html"], "steps": [DRIVE], "sure": [DRIVE, "--samples", "1000"],
    "thickness": [DRIVE, "--material", "6061"], "torque-test": [DRIVE], "why": [DRIVE, "chain_static"],
}  # fmt: skip
WORK = {
    "assess": ["assess"], "chains": ["compare", "banded"], "compare": ["compare"], "failure": ["explain"],
    "pull_test": ["card"], "sheet.gather": ["gather"], "steps": ["plan"], "sure": ["sure"],
    "thickness": ["thinnest"], "torque_test": ["card"], "what_to_change": ["what_to_change"], "why": ["work"],
}  # fmt: skip
CHEAP = ("new", "data", "identify", "torque-test", "why", "check", "steps", "compare", "thickness", "pull-test", "sure",
         "explain-failure", "chains", "changes", "report")  # fmt: skip
LINES = {
    "full": (2, "mountlimit: the answer cannot be written: No space left on device\n"),
    "no reader": (141, ""),
    "closed": (2, "mountlimit: the output is closed; send it to a file or to /dev/null\n"),
}
KILLS = 60
WRITER = "from pathlib import Path\nfrom mountlimit.writing import write_whole\nwhile True: write_whole(Path('sheet.html'), 'new' * 200_000)"


def keep_answers() -> None:
    """Make the work behind the commands give the answer of its first run again."""
    import importlib

    def kept(work: Any) -> Any:
        answers: list[Any] = []

        def again(*args: Any, **more: Any) -> Any:
            if not answers:
                answers.append(work(*args, **more))
            return answers[0]

        return again

    for module, names in WORK.items():
        place = importlib.import_module(f"mountlimit.{module}")
        for name in names:
            setattr(place, name, kept(getattr(place, name)))


def outputs(place: Path, name: str) -> list[str]:
    """Run a command with every output that fails."""
    import forked
    from click.testing import CliRunner

    from mountlimit.cli import main as command_line

    args, wrong = [name, *COMMANDS[name]], []
    os.chdir(place)
    sound = CliRunner().invoke(command_line, args)  # its answer is kept for the children
    if sound.exit_code not in (0, 1) or not sound.stdout.strip():
        wrong.append(f"{name}: {sound.exit_code} {sound.stderr}")
    for way, (status, err) in LINES.items():
        came = forked.run({"args": args, "out": way, "cwd": str(place)})
        if (came["status"], came["err"]) != (status, err):
            wrong.append(f"{name}, output {way}: {came['status']} {came['err'][-300:]!r}")
    came = forked.run({"args": args, "err": "closed", "cwd": str(place)})
    if (came["status"], came["out"]) != (sound.exit_code, sound.stdout):
        wrong.append(f"{name}, error stream closed: {came['status']} {came['out'][-200:]!r}")
    left = [f for f in os.listdir(place) if f.startswith(".")]
    return wrong + [f"left: {left}"] * bool(left)


def kills(place: Path) -> tuple[int, list[str]]:
    """Kill a run that writes without end, at a chance moment; the file must be whole, the next run fine."""
    rng, wrong = random.Random(1), []
    target = place / "sheet.html"
    for number in range(KILLS):
        target.write_text("old" * 200_000)
        run = subprocess.Popen([sys.executable, "-c", WRITER], cwd=place)
        while not list(place.glob(".sheet*")) and run.poll() is None:
            time.sleep(0.001)
        time.sleep(rng.uniform(0, 0.05))
        run.kill()
        run.wait()
        text = target.read_text()
        if text not in ("old" * 200_000, "new" * 200_000):
            wrong.append(f"kill {number}: {len(text)} characters")
        for left in place.glob(".sheet*"):
            os.utime(left, (1e9, 1e9))
    from mountlimit.writing import write_whole

    write_whole(target, "last")
    left = list(place.glob(".sheet*"))
    return KILLS, wrong + [f"left: {[p.name for p in left]}"] * bool(left)


def small_disk(place: Path) -> tuple[str, list[str]]:
    """Write on a disk of 64 kB: what fits is written, what does not leaves the old file whole."""
    import forked

    disk = place / "disk"
    disk.mkdir()
    mount = ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", str(disk)]
    if subprocess.run(mount, capture_output=True, check=False).returncode:
        return "left out: no leave to mount", []
    try:
        wrong = []
        first = forked.run({"args": ["new", "plate"], "cwd": str(disk)})
        (disk / "filler").write_bytes(b"x" * 30_000)
        before = (disk / "plate.toml").read_bytes()
        came = forked.run({"args": ["new", "plate", "--force"], "cwd": str(disk)})
        wanted = (2, "plate.toml: cannot be written: No space left on device\n")
        if first["status"] or (came["status"], came["err"]) != wanted:
            wrong.append(f"small disk: {first} {came}")
        if (disk / "plate.toml").read_bytes() != before or len(os.listdir(disk)) != 2:
            wrong.append(f"small disk: {os.listdir(disk)}")
    finally:
        subprocess.run(["umount", str(disk)], check=True)
    return "64 kB, full", wrong


def main() -> None:
    """Run what is left and write the result."""
    from conftest import changed, toml_text

    target = HERE / "faults_results.json"
    found: dict[str, Any] = {
        "commands": [],
        "left": list(CHEAP),
        "kills": 0,
        "small_disk": "",
        "wrong": [],
    }
    if target.exists() and "--afresh" not in sys.argv:
        found = json.loads(target.read_text("utf-8"))

    def save() -> None:
        target.write_text(json.dumps(found, indent=1) + "\n", "utf-8")

    with tempfile.TemporaryDirectory() as made:
        place = Path(made)
        drive = changed(mount__route="sections", frame__member="rigid", motor__speed="2500 rpm")
        (place / DRIVE).write_text(toml_text(drive))
        keep_answers()
        for name in list(found["left"]):
            found["wrong"] += outputs(place, name)
            found["left"].remove(name)
            found["commands"].append(name)
            save()
            if name == "new" and not found["small_disk"]:
                found["small_disk"], more = small_disk(place)
                found["wrong"] += more
        if not found["kills"]:
            found["kills"], more = kills(place)
            found["wrong"] += more
        os.chdir(HERE)
    save()
    print(json.dumps(found, indent=1))


if __name__ == "__main__":
    main()
