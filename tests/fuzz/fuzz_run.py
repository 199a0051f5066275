"""Spoilt files by the thousand through the program; goes on where it stopped.

    python tests/fuzz/fuzz_run.py reader --count 100000     read and resolve, in one process (15 to 30 min)
    python tests/fuzz/fuzz_run.py check --count 2000        ``mountlimit check``, in one process (10 to 25 min)
    python tests/fuzz/fuzz_run.py card --count 10000        cards of ``materials/``
    python tests/fuzz/fuzz_run.py drawing --count 5000      DXF drawings
    python tests/fuzz/fuzz_run.py reader --show 254         print one spoilt file

The numbers run from 0 up, so the same command looks at the same files. ``--seconds`` stops earlier; the same
command then goes on. What came of it stands in ``fuzz_results_reader.json`` and so on, and every fault with
its number; the input of a fault is also left in ``found/``, which the ordinary tests run (once it is mended, the line
moves by hand to ``mended``). Limits: see ``judge``.
"""

from __future__ import annotations

import argparse
import json
import os
import resource
import shutil
import sys
import tempfile
import time
from pathlib import Path
from typing import Any

for _name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")  # one thread; set before numpy is loaded
HERE = Path(__file__).parent.resolve()
sys.path[:0] = [str(HERE), str(HERE.parent), str(HERE.parent.parent / "src")]
BATCH = 100
WORTH_A_LOOK = 0.2  # s
ADDRESS_SPACE = 6 << 30  # bytes; a runaway ends as MemoryError, which is a fault


def _empty() -> dict[str, Any]:
    return {
        "files": 0, "processes": 0, "faults": [], "outcomes": {}, "slowest_s": 0.0, "slowest": "",
        "seconds": 0.0, "peak_memory_mb": 0, "memory_mb": {}, "written": [],
        "caches": [], "mended": [],
    }  # fmt: skip


def _tree(folder: Path) -> dict[str, tuple[int, int]]:
    """Give every file under a folder with its time and size."""
    found = {}
    for path in sorted(folder.rglob("*")):
        if path.is_file():
            state = path.stat()
            found[str(path.relative_to(folder))] = (state.st_mtime_ns, state.st_size)
    return found


def _memory() -> int:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024


class _Room:
    """A folder of its own with everything a run may look at: home, working folder, temporary files."""

    def __init__(self) -> None:
        from mountlimit.cards import folder

        memory = Path("/dev/shm")
        self.place = Path(tempfile.mkdtemp(prefix="fuzz-", dir=memory if memory.is_dir() else None))
        for name in ("home", "work", "tmp", "given"):
            (self.place / name).mkdir()
        os.environ |= {"HOME": str(self.place / "home"), "TMPDIR": str(self.place / "tmp")}
        for name in ("XDG_CACHE_HOME", "XDG_CONFIG_HOME", "MPLCONFIGDIR"):
            os.environ.pop(name, None)
        tempfile.tempdir = None
        os.chdir(self.place / "work")
        given = self.place / "given"
        shutil.copy(folder("examples") / "turf_roller.dxf", given)
        (given / "loop.dxf").symlink_to("loop.dxf")
        os.mkfifo(given / "pipe.dxf")
        self.start = _tree(self.place)

    def put(self, name: str, raw: bytes) -> Path:
        """Write one spoilt file, the only one of the run."""
        path = self.place / "given" / name
        path.write_bytes(raw)
        return path

    def written(self) -> list[str]:
        """Name what is there now and was not, or has changed; the given file does not count."""
        now = _tree(self.place)
        own = {n for n in now if n.startswith("given/") and n != "given/turf_roller.dxf"}
        return sorted(n for n in now.keys() - own if now[n] != self.start.get(n))


def _one(what: str, number: int, room: _Room) -> tuple[str, str, bytes, str]:
    """Try one spoilt file; give its kind, file name, bytes and outcome (a fault begins with FAULT)."""
    import judge
    import mutate

    name = "outline.dxf" if what == "drawing" else "drive.toml"
    if what == "card":
        kind, name, raw = mutate.card(number)
    else:
        kind, raw = mutate.drawing(number) if what == "drawing" else mutate.drive(number)
    path = room.put(name, raw)
    try:
        if what == "reader":
            return kind, name, raw, judge.reader(path)
        judged = {"check": judge.checked, "card": judge.card, "drawing": judge.drawing}
        return kind, name, raw, judged[what](path)
    except judge.Fault as fault:
        return kind, name, raw, f"FAULT {fault}"


def _time_of_core(what: str, number: int, room: _Room) -> float:
    """Try it again and give the time of a core; slow to ask for, so only where it may matter."""
    start = time.process_time()
    _one(what, number, room)
    return time.process_time() - start


def _keep(what: str, number: int, name: str, raw: bytes) -> None:
    label = {"card": f"card_{number}__{name}", "drawing": f"drawing_{number}.dxf"}
    (HERE / "found" / label.get(what, f"{what}_{number}.toml")).write_bytes(raw)


def _save(what: str, found: dict[str, Any]) -> None:
    target = HERE / f"fuzz_results_{what}.json"
    part = target.with_suffix(".part")
    part.write_text(json.dumps(found, indent=1, sort_keys=True) + "\n", "utf-8")
    part.replace(target)


def run(what: str, count: int, seconds: float) -> dict[str, Any]:
    """Go on from where the last run stopped, up to ``count`` files or for so many seconds."""
    target = HERE / f"fuzz_results_{what}.json"
    found = _empty() | (json.loads(target.read_text("utf-8")) if target.exists() else {})
    resource.setrlimit(resource.RLIMIT_AS, (ADDRESS_SPACE, ADDRESS_SPACE))
    room, began = _Room(), time.monotonic()
    found["processes"] += 1
    first, used = found["files"], time.process_time()
    for number in range(first, count):
        start = time.perf_counter()
        kind, name, raw, outcome = _one(what, number, room)
        spent = time.perf_counter() - start
        if spent > max(found["slowest_s"], WORTH_A_LOOK) and number > first:
            spent = _time_of_core(what, number, room)
        if outcome.startswith("FAULT"):
            found["faults"].append(f"{number} ({kind}): {outcome.removeprefix('FAULT ')[:300]}")
            _keep(what, number, name, raw)
            outcome = "FAULT"
        tally = found["outcomes"].setdefault(kind, {})
        tally[outcome] = tally.get(outcome, 0) + 1
        if spent > found["slowest_s"] and number > first:  # the first also loads the packages
            found |= {"slowest_s": round(spent, 2), "slowest": f"{number} ({kind})"}
        found["files"] += 1
        if found["files"] % BATCH == 0 or number == count - 1:
            for name in room.written():  # libraries keep lists of fonts in the user's cache folder
                kept = found["caches" if name.startswith("home/.cache/") else "written"]
                kept += [name] if name not in kept else []
            found["peak_memory_mb"] = max(found["peak_memory_mb"], _memory())
            total = time.process_time()
            found["seconds"] = round(found["seconds"] + total - used, 1)
            used = total
            if found["files"] in (BATCH, count // 10, count // 2, count):
                found["memory_mb"][str(found["files"])] = _memory()
            _save(what, found)
            if time.monotonic() - began > seconds:
                break
    shutil.rmtree(room.place)
    return found


def main() -> None:
    """Run from the command line."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawTextHelpFormatter
    )
    parser.add_argument("what", choices=("reader", "check", "card", "drawing"))
    parser.add_argument("--count", type=int, default=1000)
    parser.add_argument("--seconds", type=float, default=1e9)
    parser.add_argument("--afresh", action="store_true", help="forget the earlier result")
    parser.add_argument("--show", type=int)
    asked = parser.parse_args()
    if asked.show is not None:
        import mutate

        made = {"card": mutate.card, "drawing": mutate.drawing}.get(asked.what, mutate.drive)
        sys.stdout.buffer.write(made(asked.show)[-1])
        return
    if asked.afresh:
        (HERE / f"fuzz_results_{asked.what}.json").unlink(missing_ok=True)
    found = run(asked.what, asked.count, asked.seconds)
    print(f"{found['files']} files, {len(found['faults'])} faults, slowest {found['slowest_s']} s, "
          f"{found['peak_memory_mb']} MB, written: {found['written'] or 'nothing'}")  # fmt: skip


if __name__ == "__main__":
    main()
