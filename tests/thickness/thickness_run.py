"""The thinnest thickness beside brute force, on random drives of every form; goes on where it stopped.

    python tests/thickness/thickness_run.py --each 5 --seconds 240 --processes 2

A drive is taken where its first safe current is reached, within the currents that are sampled.  The wanted current is 0.4 to 2 times it.
Brute force edits the whole file and lets ``limits.find`` mesh it anew at every thickness; the error
is the distance from the tool's thickness to where that safe current is the wanted one, looked for
near the tool's answer first.  ``results.json`` keeps every drive; ``--show NUMBER`` works one again.
"""

from __future__ import annotations

import argparse
import json
import math
import os
import sys
import time
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path
from typing import Any

for _name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ.setdefault(_name, "1")
HERE = Path(__file__).parent
sys.path[:0] = [
    str(HERE.parent / "random_drives"),
    str(HERE.parent),
    str(HERE.parent.parent / "src"),
]
RESULTS = HERE / "results.json"
FIRST_NUMBER = 700_000
OF_A_FORM = 1000  # numbers kept for each form
NEAR = 1.03  # bracket tried about the tool's answer
CLOSE = 5e-3


def one(number: int, form: str) -> dict[str, Any]:
    """Work one drive both ways; ``state`` is "same", "misses", "none carries" or why it is left out."""
    import draw
    from chance import Chance

    from mountlimit import crossings, limits, thickness
    from mountlimit.errors import MountlimitError

    began = time.perf_counter()
    try:
        file = draw.read(number, forms=(form,))
        found = limits.find(file)
    except MountlimitError:
        return {"state": "refused"}
    safe = found.first_safe.safe
    if not crossings.LOWEST_SHARE * found.reach < safe < math.inf:  # below it nothing is sampled
        return {"state": "nothing reached"}
    wanted = safe * 0.4 * 5.0 ** Chance(number + 1).between(0.0, 1.0)
    own = file.given["mount.material"].value.id
    answer = thickness.thinnest(file, wanted, [own], curve=False)[0]
    row = {
        "wanted": wanted, "tool": _finite(answer.thickness), "set_by": answer.set_by,
        "why_not": answer.why_not, "tool_seconds": round(time.perf_counter() - began, 2),
        **_beside(file, wanted, answer.thickness, top_of(file)),
    }  # fmt: skip
    return row | {"seconds": round(time.perf_counter() - began, 2)}


def top_of(file: Any) -> float:
    """Give the thickest that is looked at, as the tool does."""
    from mountlimit import thickness
    from mountlimit.resolve import resolve

    return min(thickness.THICKEST, 1.98 * float(resolve(file).shaft.face_overhang))


def safe_at(file: Any, thick: float) -> float:
    """Give the first safe current of the file edited to a thickness; 0 where it is refused."""
    from mountlimit import limits, thickness
    from mountlimit.errors import MountlimitError

    try:
        return limits.find(thickness.with_thickness(file, thick)).first_safe.safe
    except MountlimitError:
        return 0.0


def _beside(file: Any, wanted: float, tool: float, top: float) -> dict[str, Any]:
    if not math.isfinite(tool):
        thicknesses = [0.001 * (0.98 * top / 0.001) ** (i / 9) for i in range(10)]
        carries = [t for t in thicknesses if safe_at(file, t) >= wanted]
        return {"state": "misses", "carries": carries[0]} if carries else {"state": "none carries"}
    above, below = safe_at(file, tool * (1 + CLOSE)), safe_at(file, tool / (1 + CLOSE))
    found = {"safe_above": above, "safe_below": below}
    if above >= wanted and (below < wanted or tool <= 0.0005 * 1.001):
        return {"state": "same", **found}
    return {"state": "misses", **found, "brute": _bisected(file, wanted, tool, top)}


def _bisected(file: Any, wanted: float, tool: float, top: float) -> float | None:
    """Give the thickness of the wanted current nearest the tool's answer; None where none is found."""
    for width in (NEAR, 1.15, 1.6):
        low, high = max(0.0005, tool / width), min(top * 0.999, tool * width)
        if safe_at(file, low) < wanted <= safe_at(file, high):
            while high / low > 1.001:
                middle = math.sqrt(low * high)
                low, high = (low, middle) if safe_at(file, middle) >= wanted else (middle, high)
            return math.sqrt(low * high)
    return None


def _finite(value: float) -> float | None:
    return value if math.isfinite(value) else None


def safely(number: int, form: str) -> dict[str, Any]:
    """Work one drive; an exception is kept as what it is."""
    try:
        return one(number, form)
    except Exception as error:
        return {"state": "broke", "error": repr(error)[:300]}


def main() -> None:
    """Run until every form has its drives or the time is over."""
    from layouts import LAYOUTS

    asked = argparse.ArgumentParser()
    asked.add_argument("--each", type=int, default=5)
    asked.add_argument("--seconds", type=float, default=240)
    asked.add_argument("--processes", type=int, default=2)
    asked.add_argument("--show", type=int)
    given = asked.parse_args()
    forms = sorted(LAYOUTS)
    if given.show is not None:
        form = forms[(given.show - FIRST_NUMBER) // OF_A_FORM]
        print(form, json.dumps(safely(given.show, form), indent=1))
        return
    done = json.loads(RESULTS.read_text()) if RESULTS.exists() else {}
    end = time.monotonic() + given.seconds
    with ProcessPoolExecutor(given.processes) as pool:
        while time.monotonic() < end and (jobs := _next(done, forms, given.each, given.processes)):
            for (number, form), found in zip(
                jobs, pool.map(safely, *zip(*jobs, strict=True)), strict=True
            ):
                done[str(number)] = {"form": form, **found}
                RESULTS.write_text(json.dumps(dict(sorted(done.items())), indent=1) + "\n")
    _say(done, forms)


def _next(done: dict[str, Any], forms: list[str], each: int, count: int) -> list[tuple[int, str]]:
    """Give the next drives: the forms that have fewest first."""
    have = {f: sum(r["form"] == f and _counts(r) for r in done.values()) for f in forms}
    jobs = []
    for form in sorted((f for f in forms if have[f] < each), key=lambda f: have[f])[: 2 * count]:
        first = FIRST_NUMBER + OF_A_FORM * forms.index(form)
        number = next((n for n in range(first, first + OF_A_FORM) if str(n) not in done), None)
        if number is not None:
            jobs.append((number, form))
    return jobs


def _counts(result: dict[str, Any]) -> bool:
    return result["state"] in ("same", "misses", "none carries", "broke")


def _say(done: dict[str, Any], forms: list[str]) -> None:
    for form in forms:
        states = [r["state"] for r in done.values() if r["form"] == form]
        print(f"{form:18}", {s: states.count(s) for s in sorted(set(states))})
    for number, r in done.items():
        if r["state"] in ("misses", "broke"):
            print(number, {k: v for k, v in r.items() if k not in ("seconds", "tool_seconds")})


if __name__ == "__main__":
    main()
