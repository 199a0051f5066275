"""Run many random drives and keep what was found; goes on where it stopped.

    python tests/random_drives/long_run.py --route sections --drives 10000 --processes 2
    python tests/random_drives/long_run.py --route plates --drives 200 --processes 2

``--drives`` counts drives that hold together; refused ones are counted beside them.  The numbers
run from 0 up, so the same command looks at the same drives.  ``--seconds`` stops earlier; the same
command then goes on.  The result stands in ``results_sections.json`` and ``results_plates.json``; a violation
is a line of it that begins with route and number, and ``--show NUMBER`` prints that drive's file.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
import time
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

for _name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")  # one thread a process; set before numpy is loaded
HERE = Path(__file__).parent
sys.path[:0] = [str(HERE), str(HERE.parent), str(HERE.parent.parent / "src")]
CHUNK = {"sections": 10, "plates": 4}


@dataclass
class Tally:
    """What came of some drives."""

    valid: int = 0
    refused: int = 0
    seconds: float = 0.0
    violations: list[str] = field(default_factory=list)
    forms: Counter[str] = field(default_factory=Counter)
    first: Counter[str] = field(default_factory=Counter)
    checks: set[str] = field(default_factory=set)

    def add(self, other: Tally) -> None:
        """Take another tally in."""
        self.valid += other.valid
        self.refused += other.refused
        self.seconds += other.seconds
        self.violations += other.violations
        self.forms += other.forms
        self.first += other.first
        self.checks |= other.checks

    def as_json(self) -> dict[str, Any]:
        """Give what is written."""
        return {
            "drives": self.valid, "refused": self.refused,
            "seconds_per_drive": round(self.seconds / max(self.valid, 1), 3),
            "violations": sorted(self.violations), "forms": dict(sorted(self.forms.items())),
            "first_limit": dict(sorted(self.first.items())), "checks_met": sorted(self.checks),
        }  # fmt: skip


def forms_of(route: str) -> tuple[str, ...]:
    """Give the forms that a route is run for: beams, or every one."""
    from draw import BEAMS
    from layouts import LAYOUTS

    return BEAMS if route == "sections" else tuple(LAYOUTS)


def text_of(number: int, route: str) -> str:
    """Give the file of one drive as it is run."""
    import draw

    return draw.text(number, forms_of(route), "sections" if route == "sections" else "")


def one(number: int, route: str) -> Tally:
    """Work one drive out and look at it; whatever goes wrong is a violation."""
    from looks import wrongs

    from mountlimit import limits
    from mountlimit.drivefile import parse
    from mountlimit.errors import InputError

    found, tally = None, Tally()
    start = time.process_time()
    try:
        found = limits.find(parse(text_of(number, route).encode(), f"random {number}"))
        lines = wrongs(found)
    except InputError as error:
        lines = _unclear(error)
        tally.refused = 1
    except Exception as error:
        lines = [f"{type(error).__name__}: {error}"]
    tally.violations = [f"{route} {number}: {line}" for line in lines]
    if found is not None:
        tally.valid = 1
        tally.forms[found.drive.mount.form] += 1
        tally.first[found.first_safe.check.name] += 1
        tally.checks = {x.check.name for x in found.limits}
    tally.seconds = time.process_time() - start
    return tally


def _unclear(error: Any) -> list[str]:
    """Give the refusals that do not name the file, the key and what was expected, in one line."""
    texts = [str(mistake) for mistake in error.mistakes] or ["refused without a word"]
    return [
        f"unclear refusal {text!r}"
        for text, mistake in zip(texts, [*error.mistakes, None], strict=False)
        if mistake is None or not (mistake.key and mistake.expected) or "\n" in text
    ]


def some(first: int, count: int, route: str) -> Tally:
    """Work some drives out, one after another."""
    tally = Tally()
    for number in range(first, first + count):
        tally.add(one(number, route))
    return tally


def results(route: str) -> Path:
    """Give the file that a route's result stands in."""
    return HERE / f"results_{route}.json"


def _known(route: str) -> dict[str, Any]:
    return json.loads(results(route).read_text()) if results(route).exists() else {}


def _write(route: str, tally: Tally, upto: int) -> None:
    from mountlimit.checks import BY_NAME

    whole = {
        "route": route,
        "numbers": [0, upto],
        "known_checks": sorted(BY_NAME),
        **tally.as_json(),
    }
    results(route).write_text(json.dumps(whole, indent=1) + "\n")


def _resumed(known: dict[str, Any]) -> Tally:
    if not known:
        return Tally()
    return Tally(
        valid=known["drives"], refused=known["refused"],
        seconds=known["seconds_per_drive"] * known["drives"], violations=known["violations"],
        forms=Counter(known["forms"]), first=Counter(known["first_limit"]), checks=set(known.get("checks_met", known.get("checks", ()))),
    )  # fmt: skip


def run(route: str, drives: int, processes: int, seconds: float) -> Tally:
    """Run until so many drives that hold together are done, or the time is up."""
    known = _known(route)
    tally, upto = _resumed(known), known.get("numbers", [0, 0])[1]
    end, chunk = time.monotonic() + seconds, CHUNK[route]
    with ProcessPoolExecutor(processes) as pool:
        while tally.valid < drives and time.monotonic() < end:
            firsts = [upto + chunk * i for i in range(processes)]
            for part in pool.map(some, firsts, [chunk] * processes, [route] * processes):
                tally.add(part)
            upto += chunk * processes
            _write(route, tally, upto)
            print(f"{route}: {tally.valid} drives, {tally.refused} refused, {len(tally.violations)} violations", flush=True)  # fmt: skip
    return tally


def main() -> int:
    """Read the command line."""
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--route", choices=sorted(CHUNK), default="sections")
    parser.add_argument("--drives", type=int, default=300)
    parser.add_argument("--processes", type=int, default=1)
    parser.add_argument("--seconds", type=float, default=float("inf"))
    parser.add_argument("--afresh", action="store_true", help="forget what was run before")
    parser.add_argument("--show", type=int, help="print one drive's file and stop")
    given = parser.parse_args()
    if given.show is not None:
        print(text_of(given.show, given.route))
        return 0
    if given.afresh:
        results(given.route).unlink(missing_ok=True)
    tally = run(given.route, given.drives, given.processes, given.seconds)
    print("\n".join(tally.violations[:40]))
    print(json.dumps(tally.as_json(), indent=1)[:2000])
    return 1 if tally.violations else 0


if __name__ == "__main__":
    sys.exit(main())
