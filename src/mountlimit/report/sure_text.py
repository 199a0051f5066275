"""How sure the answer is, as text and as JSON-ready data."""

from __future__ import annotations

import math
from typing import Any

from rich.console import Console

from ..sampling import MODEL_ERROR
from ..spreads import STEPS, TOGETHER
from ..sure import Band, Measure, Sure
from .quantities import number, quantity
from .table import heading, new_table
from .text import MODEL_KEYS
from .words import amperes, shown, upto

SHOWN = 8
WORTH = 0.97  # of the band left: what narrows it less is not shown
RARE = 0.005
ROUGH = 0.05  # error of the stand-in that is told in front


def write(a: Sure, console: Console) -> None:
    """Print the bands, what is first how often, and what to measure next."""
    for line in _first_words(a):
        console.print(line)
    rough = [p.check.part for p in a.parts if p.error > ROUGH and p.first > RARE]
    if rough:
        console.print(
            f"Rough for: {', '.join(rough)}. Its limit hangs on its inputs in a way the fit follows badly "
            f"({100 * max(p.error for p in a.parts if p.first > RARE):.0f} % off); the band is wider for it."
        )
    for flag in a.verdict.flags:
        console.print(f"Trial: {flag}")
    heading(console, "\nWhat gives first, and where each part gives (5, 50 and 95 of 100 cases)")
    console.print(_parts(a))
    _measure_next(a, console)
    heading(console, "\nHow this was worked out")
    for line in _how(a):
        console.print(f"  - {line}")


def _between(band: Band, reach: float, word: str = "to") -> str:
    return f"{upto(band.low, reach)} {word} {upto(band.high, reach)} A"


def _what(a: Sure) -> str:
    if not a.part:
        return "the first part"
    return "the " + next(p.check.part for p in a.parts if p.check.name == a.part)


def _first_words(a: Sure) -> list[str]:
    reach, drive = a.found.reach, a.found.drive
    lines = [
        f"{_what(a)[0].upper() + _what(a)[1:]} gives between {_between(a.gives, reach, 'and')} in 90 of 100 cases "
        f"like yours, half of them below {upto(a.gives.middle, reach)} A. A band of the estimate, not a guarantee."
    ]
    if a.verdict.used:
        seen = "; ".join(str(t) for t in a.verdict.used)
        lines.append(f"With your trials ({seen}); without them it was {_between(a.before, reach)}.")
    lines.append(
        f"At the {float(drive.current.set):g} A you have set it gives {_cases(a.under_set)}"
        + ("." if a.under_wanted is None or drive.current.wanted is None else f", at the {float(drive.current.wanted):g} A you want {_cases(a.under_wanted)}.")
    )  # fmt: skip
    stated = a.found.first_safe.safe
    if math.isfinite(stated):
        lines.append(
            f"Safe to {amperes(stated, down=True)} A stands, whatever this says: with all guesses at their bad end. "
            f"The safe current of a case (its guesses known, design factors in) is {_between(a.safe, reach)}, "
            f"and under the stated one {_cases(a.under_stated)}."
        )
    return lines


def _cases(share: float) -> str:
    if share <= 0:
        return "in none of the cases looked at"
    if share < RARE:
        return "in less than 5 of 1000 cases"
    if share > 1 - RARE:
        return "in nearly all cases"
    return f"in about {100 * share:.0f} of 100 cases"


def _parts(a: Sure) -> Any:
    table = new_table()
    for name in ("part", "5", "50", "95", "is the first", "name"):
        table.add_column(
            name, justify="left" if name in ("part", "name") else "right", no_wrap=name != "part"
        )
    for part in a.parts:
        if part.first < RARE and math.isinf(part.gives.low):
            continue
        b = part.gives
        share = "hardly ever" if part.first < RARE else f"{100 * part.first:.0f} of 100"
        table.add_row(
            part.check.part,
            *(f"{upto(v, a.found.reach)} A" for v in (b.low, b.middle, b.high)),
            share,
            part.check.name,
        )
    return table


def _measure_next(a: Sure, console: Console) -> None:
    worth = [m for m in a.measures if m.left < WORTH][:SHOWN]
    heading(console, f"\nMeasure this next: what it would do to the band of {_what(a)}")
    if not worth:
        console.print(
            "No single input narrows it by more than 3 of 100: what is left is the model itself."
        )
        return
    table = new_table()
    for name in (
        "input",
        "low",
        "likely",
        "high",
        "band shrinks by",
        "if it is low",
        "if it is high",
    ):
        table.add_column(
            name, justify="left" if name == "input" else "right", no_wrap=name == "input"
        )
    for m in worth:
        r = m.range
        table.add_row(
            r.key + _mark(m), *(shown(v, r.kind, a.found.drive.system, r.high) for v in (r.low, r.likely, r.high)),
            f"{100 * (1 - m.left):.0f} %", _between(m.at_low, a.found.reach), _between(m.at_high, a.found.reach),
        )  # fmt: skip
    console.print(table)
    if any(_mark(m) for m in worth):
        console.print("* belongs to the model: no caliper shows it; mountlimit pull-test may.")


def _mark(m: Measure) -> str:
    return " *" if m.range.key in MODEL_KEYS else ""


def _how(a: Sure) -> list[str]:
    keys = {m.range.key for m in a.measures}
    pairs = [f"{x} with {y} ({share:g})" for x, y, share in TOGETHER if {x, y} <= keys]
    worst = max((p.error for p in a.parts), default=0.0)
    end = ", ".join(
        f"{s.samples}: {upto(s.gives.low, a.found.reach)} to {upto(s.gives.high, a.found.reach)}"
        for s in a.settled
    )
    steps = [k for k in STEPS if k in keys]
    return [
        "Each uncertain input is drawn between its low and high end, most often near its likely value (triangular; "
        "on the logarithm where high is over twice low). The spreads are common practice, no source.",
        f"Drawn together: {', '.join(pairs)}; all others by themselves." if pairs else "All are drawn by themselves.",
        *(f"{k} takes its steps {', '.join(f'{v:g} ({100 * c:.0f} %)' for v, c in STEPS[k])}." for k in steps),
        f"Each part's limit is also off by the model's own error of {100 * MODEL_ERROR:.0f} % (one standard deviation), "
        "as the model compares with finer ones; the safe current has its design factor for that.",
        f"{a.samples} samples, seed {a.seed}, by polynomials fitted to {a.runs} runs of the whole calculation; each run left "
        f"out in turn is met within {100 * worst:.1f} % (root mean square, worst part), which is in the band too.",
        f"Has it settled? Ends of the band by number of samples: {end} A.",
        *([f"{a.refused} draws could not be built and were left out."] if a.refused else []),
        *([f"{a.effective:.0f} samples' worth agree with your trials."] if a.verdict.used else []),
        "Trials and measurements move this band only; no trial raises the safe current.",
    ]  # fmt: skip


def _band(band: Band) -> dict[str, Any]:
    return {
        "low": number(band.low),
        "middle": number(band.middle),
        "high": number(band.high),
        "unit": "A",
    }


def record(a: Sure) -> dict[str, Any]:
    """Give the answer as JSON-ready data in SI; null where nothing gives below ``reach``."""
    return {
        "schema": "mountlimit-sure-1", "title": a.found.drive.title, "input_sha256": a.found.file.sha256,
        "part": a.part or "first", "band_shares": [0.05, 0.5, 0.95], "reach": quantity(a.found.reach, "A"),
        "gives": _band(a.gives), "gives_sampling_error": {"low": number(a.gives_error[0]), "high": number(a.gives_error[1]), "unit": "A"},
        "gives_without_trials": _band(a.before), "safe": _band(a.safe),
        "stated_safe": quantity(a.found.first_safe.safe, "A"), "chance_safe_is_under_stated": a.under_stated,
        "chance_gives_at_set": a.under_set, "chance_gives_at_wanted": a.under_wanted,
        "parts": [
            {"check": p.check.name, "part": p.check.part, "gives": _band(p.gives), "chance_first": p.first,
             "stand_in_error": p.error, "stand_in_worst": p.worst} for p in a.parts
        ],
        "measure_next": [
            {"key": m.range.key, "low": m.range.low, "likely": m.range.likely, "high": m.range.high, "kind": m.range.kind,
             "band_left": m.left, "gives_if_low": _band(m.at_low), "gives_if_high": _band(m.at_high)} for m in a.measures
        ],
        "trials": {
            "used": [str(t) for t in a.verdict.used], "chances": list(a.verdict.chances),
            "left_out": [{"trial": str(t), "why": why} for t, why in a.verdict.left_out],
            "flags": list(a.verdict.flags), "effective_samples": a.effective,
        },
        "samples": a.samples, "seed": a.seed, "runs": a.runs, "refused": a.refused, "model_error": MODEL_ERROR,
        "settled": [{"samples": s.samples, "gives": _band(s.gives)} for s in a.settled],
    }  # fmt: skip
