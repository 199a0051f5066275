"""Every command with outputs that fail; kills at chance moments; a disk of 64 kB. About five minutes.

    python tests/faults/faults_run.py

Writes ``faults_results.json``: what was tried, and what went wrong (nothing should). The small disk is mounted
where the user may do so, and said to be left out elsewhere.
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
WRITES = {"new": "plate.toml", "report": "sheet.html"}
LINES = {
    "full": (2, "mountlimit: the answer cannot be written: No space left on device\n"),
    "no reader": (141, ""),
    "closed": (2, "mountlimit: the output is closed; send it to a file or to /dev/null\n"),
}
KILLS = 120
WRITER = "from pathlib import Path\nfrom mountlimit.writing import write_whole\nwhile True: write_whole(Path('sheet.html'), 'new' * 200_000)"


def outputs(place: Path) -> tuple[int, list[str]]:
    """Run every command with every output that fails."""
    import forked

    wrong, count = [], 0
    for name, more in COMMANDS.items():
        for way, (status, err) in LINES.items():
            case = {"args": [name, *more], "out": way, "cwd": str(place)}
            came = forked.run(case)
            count += 1
            if (came["status"], came["err"]) != (status, err):
                wrong.append(f"{name}, output {way}: {came['status']} {came['err'][-300:]!r}")
        came = forked.run({"args": [name, *more], "err": "closed", "cwd": str(place)})
        count += 1
        if came["status"] not in (0, 1) or (not came["out"].strip()):
            wrong.append(f"{name}, error stream closed: {came['status']} {came['out'][-200:]!r}")
        print(name, flush=True)
    left = [f for f in os.listdir(place) if f.startswith(".")]
    return count, wrong + [f"left: {left}"] * bool(left)


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
    """Run it all and write the result."""
    from conftest import changed, toml_text

    with tempfile.TemporaryDirectory() as made:
        place = Path(made)
        drive = changed(mount__route="sections", frame__member="rigid", motor__speed="2500 rpm")
        (place / DRIVE).write_text(toml_text(drive))
        disk, wrong = small_disk(place)
        killed, more = kills(place)
        wrong += more
        count, more = outputs(place)
        wrong += more
    found: dict[str, Any] = {
        "commands": sorted(COMMANDS), "outputs": count, "kills": killed, "small_disk": disk, "wrong": wrong,
    }  # fmt: skip
    (HERE / "faults_results.json").write_text(json.dumps(found, indent=1) + "\n", "utf-8")
    print(json.dumps(found, indent=1))


if __name__ == "__main__":
    main()
