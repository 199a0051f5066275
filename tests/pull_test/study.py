"""Does a reading find the hidden give of a mount, and what does it do to the alignment limit?

    python tests/pull_test/study.py --drives 100 --seconds 280

Random drives of every form (``tests/random_drives``), each with a hidden true mount (``truth.py``), pulled with
errors of 0.25 mm and 5 % drawn evenly.  Goes on where it stopped; the result stands in ``results.json``.
"""

from __future__ import annotations

import argparse
import json
import math
import os
import random
import sys
import time
from pathlib import Path
from typing import Any

for _name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")
HERE = Path(__file__).parent
TESTS = HERE.parent
sys.path[:0] = [str(HERE), str(TESTS / "random_drives"), str(TESTS), str(TESTS.parent / "src")]
RESULTS = HERE / "results.json"
READING_ERROR, FORCE_ERROR = 0.25e-3, 0.05
FIRST = 1000  # number of the first drive; those from 0 on served to set pull_test.model_error
LEAST = 1e-5  # m; a reading that the file's reader takes


def bands(file: Any, pull: Any) -> dict[str, tuple[float, float, float]]:
    """Give low, likely and high of movement and lean of mount, joint and frame, by the program."""
    from mountlimit import limits, pulled, respond, shaft_line
    from mountlimit.plate_route import with_plates
    from mountlimit.resolve import resolve

    file = with_plates(file)

    def moved(drive: Any) -> tuple[float, float]:
        load = pulled.loads_of(drive, pull.force, pull.angle)
        parts = [p for p in respond.solve(drive, load).displacements if p.name != shaft_line.NAME]
        u, lean = pulled.along(parts, pull.angle)
        return float(u), float(lean)

    drive = resolve(file)
    likely = moved(drive)
    ends = [[moved(resolve(file, {r.key: v})) for v in (r.low, r.high)]
            for r in drive.ranges if r.low < r.high]  # fmt: skip
    found = {}
    for i, name in enumerate(("move", "lean")):
        sign = math.copysign(1.0, likely[i])
        pair = limits.band(sign * likely[i], [(sign * a[i], sign * b[i]) for a, b in ends], 1e9)
        low, high = sorted(sign * p for p in pair)
        found[name] = (low, likely[i], high)
    return found


def one(number: int, with_card: bool = True) -> dict[str, Any] | None:
    """Work one drive out; None where the file itself is refused."""
    import draw
    from truth import truth_of

    from mountlimit import pull_test
    from mountlimit.errors import InputError
    from mountlimit.plate_route import with_plates
    from mountlimit.resolve import resolve

    try:
        file = with_plates(draw.read(number))
        drive = resolve(file)
    except InputError:
        return None
    if file.plates is None:
        return None
    chance = random.Random(f"hidden {number}")
    words, angle = drive.chain.pulls[0]
    stick = chance.choice((0.5, 1.0))
    size = pull_test.MOST
    true = truth_of(file, size, float(angle), chance)
    pull = pull_test.Pull(force=size, words=words, angle=float(angle), stick=stick)
    scale = size * (1 + chance.uniform(-FORCE_ERROR, FORCE_ERROR))
    a, b = (chance.uniform(-READING_ERROR, READING_ERROR) for _ in range(2))
    readings = {
        "A": (true.move + true.sag + a, None),
        "B": (None, true.move + true.lean * stick + b),
    }
    readings["AB"] = (readings["A"][0], readings["B"][1])
    plain = bands(file, pull)
    found: dict[str, Any] = {
        "number": number, "form": drive.mount.form, "stick": stick,
        "truth": {"move": true.move, "lean": true.lean}, "without": plain, "marks": {},
        "ratio": (true.lean / true.move) / (plain["lean"][1] / plain["move"][1]),
    }  # fmt: skip
    read_at = pull_test.Pull(force=scale, words=words, angle=float(angle), stick=stick)
    for name, marks in readings.items():
        if any(m is not None and m < LEAST for m in marks):
            found["marks"][name] = {"refused": "no movement to read"}
            continue
        try:
            told = pull_test.with_reading(file, read_at, *marks)
            found["marks"][name] = _hit(bands(told, pull), true)
        except InputError as error:
            found["marks"][name] = {"refused": error.mistakes[0].expected}
    if with_card:
        found["card"] = _card(file)
    return found


def _hit(got: dict[str, Any], true: Any) -> dict[str, Any]:
    inside = {k: got[k][0] <= getattr(true, k) <= got[k][2] for k in ("move", "lean")}
    return {**got, "inside": inside}


def _card(file: Any) -> dict[str, Any]:
    """Say what the card says of the band: share left, and whether it claims half."""
    from mountlimit import pull_test
    from mountlimit.report.pull_text import verdict

    card = pull_test.card(file)
    shares = {
        a.marks: None if math.isnan(a.share) else round(a.share, 4)
        for a in (*card.after, card.dial)
    }
    return {"force": card.pull.force, "share": None if math.isnan(card.best.share) else card.best.share,
            "by": card.best.marks, "halves": card.halves, "says_it_cannot": "CANNOT" in verdict(card), "shares": shares}  # fmt: skip


def summary(rows: list[dict[str, Any]]) -> dict[str, Any]:
    """Count what the rows say."""
    found: dict[str, Any] = {"drives": len(rows)}
    for mark in ("A", "B", "AB"):
        read = [r["marks"][mark] for r in rows if "inside" in r["marks"][mark]]
        found[mark] = {
            "read": len(read), "refused": len(rows) - len(read),
            "lean_inside": sum(r["inside"]["lean"] for r in read),
            "move_inside": sum(r["inside"]["move"] for r in read),
        }  # fmt: skip
    found["without_lean_inside"] = sum(
        r["without"]["lean"][0] <= r["truth"]["lean"] <= r["without"]["lean"][2] for r in rows
    )
    cards = [r["card"] for r in rows if r.get("card")]
    found["cards"] = {
        "printed": len(cards), "halves": sum(c["halves"] for c in cards),
        "says_it_cannot": sum(c["says_it_cannot"] for c in cards),
        "no_band": sum(c["share"] is None for c in cards),
    }  # fmt: skip
    return found


def main() -> None:
    """Run, or go on."""
    asked = argparse.ArgumentParser()
    asked.add_argument("--drives", type=int, default=100)
    asked.add_argument("--seconds", type=float, default=280)
    asked.add_argument("--afresh", action="store_true")
    asked.add_argument("--no-card", action="store_true")
    args = asked.parse_args()
    rows: list[dict[str, Any]] = []
    number, refused = FIRST, 0
    if RESULTS.exists() and not args.afresh:
        old = json.loads(RESULTS.read_text())
        rows, number, refused = old["rows"], old["next"], old["refused_files"]
    start = time.time()
    while len(rows) < args.drives and time.time() - start < args.seconds:
        row = one(number, not args.no_card)
        number += 1
        if row is None:
            refused += 1
        else:
            rows.append(_rounded(row))
    whole = {"summary": summary(rows), "next": number, "refused_files": refused, "rows": rows}
    RESULTS.write_text(
        json.dumps(whole, indent=None, separators=(",", ":")).replace('{"number"', '\n{"number"')
        + "\n"
    )
    print(json.dumps(whole["summary"], indent=1))


def _rounded(value: Any) -> Any:
    if isinstance(value, dict):
        return {k: _rounded(v) for k, v in value.items()}
    if isinstance(value, list | tuple):
        return [_rounded(v) for v in value]
    return float(f"{value:.5g}") if isinstance(value, float) else value


if __name__ == "__main__":
    main()
