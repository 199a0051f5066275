"""The card of the pull test, and what a reading does, as text and as JSON-ready data."""

from __future__ import annotations

import math
from typing import Any

from rich.console import Console

from .. import units
from ..drivefile import DriveFile
from ..limits import Limit
from ..pull_reading import apart_words, far_words
from ..pull_test import CHECK, HALF, READABLE, After, Card, Pull, Result, Three
from .page import items, para
from .quantities import number, quantity
from .words import gives_cell, safe_cell

CAUTIONS = [
    "Battery isolated and its plug in your pocket, chain off, machine chocked so that it cannot roll or tip.",
    "The scale, a strap or the mount may let go: eye protection, stand beside the line of the pull, nobody in it.",
    "Pull slowly and only to the force below; stop at any crack, slip or jump.",
]
LONGEST = 2.0  # m; of a stick that is still handy
TELLS = {
    "policy.throw_level": "at which skew a chain comes off: no test of the mount tells",
    "chain.skew": "how straight the sprockets stand: measure it with a straightedge",
    "chain.offset": "how far the sprockets are out of one plane: measure it with a straightedge",
    "chain.slack": "slack of the chain: measure it",
    "chain.wear": "wear of the chain: measure it",
    "shaft.bearing_play": "play of the motor's bearings: feel it with a dial gauge",
    "motor.torque_scatter": "torque for each ampere: mountlimit torque-test",
    "pull_test.movement": "the reading at mark A",
    "pull_test.tip_movement": "the reading at mark B",
    "pull_test.force": "the scale",
    "pull_test.model_error": "the model's own ratio of lean to movement",
}  # fmt: skip


def mm(value: float, system: str) -> str:
    """Write a small movement."""
    return units.show(value, "length", system, 2 if abs(value) < 1e-4 else 3)


def _three(x: Three, system: str) -> str:
    return f"{mm(x.likely, system)} ({mm(x.low, system)} to {mm(x.high, system)})"


def _lean(x: Three) -> str:
    low, likely, high = (math.degrees(v) for v in (x.low, x.likely, x.high))
    return f"{likely:.2g} deg ({low:.2g} to {high:.2g})"


def _limit(x: Limit) -> str:
    return f"safe to {safe_cell(x)}, gives at {gives_cell(x)}"


def _light(force: float) -> float:
    return max(5.0, round(force / 50) * 5.0)


def write(card: Card, console: Console) -> None:
    """Print the card, at most one page of 80 columns."""
    s, pull = card.drive.system, card.pull
    force, light = units.show(pull.force, "force", s), units.show(_light(pull.force), "force", s)
    total = units.show(pull.force + _light(pull.force), "force", s)
    stick = units.show(pull.stick, "length", s)
    on = "motor's case" if pull.on_motor else "sprocket's face"
    lines = [
        f"PULL TEST: {card.drive.title}",
        para(f"Pull {force} on the sprocket and see how far it moves: then the limits rest on your mount, not on a model of it."),
        "",
        items(CAUTIONS, "  ! "),
        "",
        items([
            f"Hook a scale with a strap round the shaft at the sprocket, and pull {_way(pull)}, square to the shaft. "
            f"Greatest pull {_allowed(card)}.",
            f"Mark A: the shaft at the sprocket, along the pull. Mark B: the far end of a straight stick held flat on the {on} so "
            f"that it runs along the shaft, past the sprocket, its end {stick} from the middle of the sprocket.",
            "Read both against something that stands on the ground, a post or a far part of the machine: not the mount, nor the "
            "frame member it is bolted to.",
            f"Pull lightly, {light} on the scale: that takes up the play. Set both marks to nothing there.",
            f"Pull on to {total} and read A and B; let go to {light}: both must come back to nothing. Three times; write down the middle one.",
        ]),
        "",
        "                     expected               if it moves    you read",
        f"  Mark A   {_three(card.movement, s):<34} {_double(card.movement, card.shaft[0], s)}  ______",
        f"  Mark B   {_three(card.tip, s):<34} {_double(card.tip, card.shaft[1], s)}  ______",
        para(
            f"The shaft leans {_lean(card.lean)}. Of mark A the shaft's own bending is {mm(card.shaft[0], s)}; it is taken off. "
            "More than the last column: something gives that the model does not know. Look for it before you ride.", "  ",
        ),
        "",
        *_worth(card),
        "",
        "Put it in:",
        f'  mountlimit pull-test FILE --read "{force}" "A" --read-tip "{force}" "B" \\',
        f'    --stick "{stick}"' + ("" if pull.on_motor else " --on shaft"),
        para(f"The force is what moved the marks: {total} less {light}. Leave out the mark you did not read.", "  "),
    ]  # fmt: skip
    for line in lines:
        console.print(line, soft_wrap=True)


def _double(x: Three, shaft: float, system: str) -> str:
    return f"over {mm(2 * (x.likely - shaft) + shaft, system):<9}"


def _way(pull: Pull) -> str:
    words = {
        "across": "across the mount, along its frame",
        "across reversed": "across the mount, along its frame, the other way ('across reversed')",
        "away": "straight away from the frame",
        "towards": "straight towards the frame",
    }
    return words.get(pull.words, f"along the chain's line ({pull.words} from 'across')")


def _allowed(card: Card) -> str:
    s = card.drive.system
    if math.isinf(card.pull_allowed):
        return "as printed"
    allowed = units.show(card.pull_allowed, "force", s, 2)
    if card.pull_allowed < card.pull.force:
        return f"as printed: by estimate the {card.allowed_by} is used up at {allowed}; pull gently, watch it"
    return f"{allowed} ({card.allowed_by})"


def _worth(card: Card) -> list[str]:
    """Say what the reading would do to the alignment limit."""
    s = card.drive.system
    error = mm(card.reading_error, s)
    lines = [
        para(f"What it is worth, if you read what is expected, within {error} and the force within {100 * card.force_error:.2g} %. Alignment limit:"),
        f"  {'':<11}{'safe to':<11}{'gives at':<28}shaft leans under the pull",
        _row("now", card.before, card.lean),
    ]  # fmt: skip
    lines += [_row(a.marks, a.limit, a.lean) for a in card.after]
    lines.append(_row(card.dial.marks, card.dial.limit, card.dial.lean))
    return [*lines, para(verdict(card), "  ")]


def _row(name: str, x: Limit, lean: Three) -> str:
    low, high = (f"{math.degrees(v):.2g}" for v in (lean.low, lean.high))
    return f"  {name:<11}{safe_cell(x):<11}{gives_cell(x):<28}{low} to {high} deg"


def verdict(card: Card) -> str:
    """Say whether the test halves the band, and if not, why."""
    if math.isnan(card.best.share):
        words = f"The chain line gives at no current looked at ({card.before.reach:.0f} A), so there is no band to narrow. The test still finds a loose mount."
    elif card.halves:
        return f"It leaves {100 * card.best.share:.0f} % of the band of gives at (on logarithms, with {card.best.marks})."
    else:
        dial = f"a dial gauge of 0.01 mm would (leaves {100 * card.dial.share:.0f} %)."
        words = (
            "It CANNOT take away half of the band of gives at (on logarithms): "
            + (dial if card.dial.share <= HALF else _because(card))
            + " It shows whether the mount is what the file says; every 'now' rests on that."
        )
    return f"{words} {_readable(card)}".strip()


def _because(card: Card) -> str:
    named = [f"{TELLS.get(k, k)} ({100 * v:.0f} %)" for k, v in card.spoils[:3]]
    return f"most of it hangs on {'; '.join(named)}." if named else "it is narrow already."


def _readable(card: Card) -> str:
    """Say which mark moves too little for its reading error, and what makes it enough."""
    s, error, pull = card.drive.system, card.reading_error, card.pull
    a, b = card.movement.likely - card.shaft[0], card.tip.likely - card.shaft[1]
    if b >= READABLE * error:
        if a >= READABLE * error:
            return ""
        return (
            f"Mark A moves too little for a rule (the mount {mm(a, s)} of it): read mark B alone."
        )
    needed = READABLE * error / b * pull.stick if b > 0 else math.inf
    more = (
        f"take a stick of {units.show(math.ceil(needed * 10) / 10, 'length', s)} or a dial gauge"
        if needed <= LONGEST
        else "take a dial gauge at mark B"
    )
    both = "Both marks move" if a < READABLE * error else "Mark B moves"
    return f"{both} too little for a rule (the mount {mm(b, s)} of B, the rule is off by {mm(error, s)}): {more}."


def record(card: Card) -> dict[str, Any]:
    """Give the card as JSON-ready data in SI."""
    pull = card.pull
    return {
        "schema": "mountlimit-pull-test-1", "force": quantity(pull.force, "N"), "direction": pull.words,
        "angle": quantity(pull.angle, "rad"), "stick": quantity(pull.stick, "m"),
        "stick_on": "motor" if pull.on_motor else "shaft",
        "greatest_pull": {**quantity(card.pull_allowed, "N"), "set_by": card.allowed_by},
        "mark_a": _record_three(card.movement, "m"), "mark_b": _record_three(card.tip, "m"),
        "lean": _record_three(card.lean, "rad"), "own_bending_a": quantity(card.shaft[0], "m"),
        "own_bending_b": quantity(card.shaft[1], "m"), "reading_error": quantity(card.reading_error, "m"),
        "force_error": card.force_error, "before": _record_limit(card.before),
        "after": [_record_after(a) for a in card.after],
        "dial_gauge": _record_after(card.dial), "halves_the_band": card.halves,
        "kept_wide_by": [{"key": k, "share": v} for k, v in card.spoils], "cautions": CAUTIONS,
    }  # fmt: skip


def _record_three(x: Three, unit: str) -> dict[str, Any]:
    return {"low": number(x.low), "likely": number(x.likely), "high": number(x.high), "unit": unit}


def _record_limit(x: Limit) -> dict[str, Any]:
    values = {
        "safe": x.safe,
        "gives": x.gives,
        "gives_low": x.gives_low,
        "gives_high": x.gives_high,
    }
    return {"check": x.check.name, **{k: quantity(v, "A") for k, v in values.items()}}


def _record_after(a: After) -> dict[str, Any]:
    return {"marks": a.marks, **_record_limit(a.limit), "share_of_band_left": number(a.share)}


def write_result(found: Result, lines_to_keep: str, console: Console) -> None:
    """Print what a reading does."""
    c, s = found.reading.factor, found.drive.system
    test = found.drive.pull_test
    assert test is not None
    pull = units.show(float(test.force), "force", s)
    say = [
        para(
            f"By your reading, mount, joint and frame give {c:.2g} times what the model says. "
            + _safe(found)
        ),
        "",
        f"At {pull} the shaft leans   now       {_lean(found.lean[0])}",
        f"                            read      {_lean(found.lean[1])}",
        "",
    ]
    for m in found.reading.marks:
        name = "A" if m.key.endswith(".movement") else "B"
        own = f", of it the shaft {mm(float(m.own_bending), s)}" if m.own_bending else ""
        say.append(
            para(f"read {mm(float(m.reading), s)}{own}; the model has {mm(float(m.model), s)} for the mount: {float(m.factor):.2g} times", f"  Mark {name}: ")
        )  # fmt: skip
    say += ["", "Limits in motor current"]
    for name in _names(found):
        before, after = (_named(f.limits, name) for f in (found.before, found.after))
        say += [
            f"  {after.check.part} ({name})",
            para(_limit(before), "    now     "),
            para(_limit(after), "    read    "),
        ]
    say += [
        "",
        *(
            para(w)
            for w in (*_spread_words(found), *far_words(found.reading), *apart_words(found.reading))
        ),
    ]
    if lines_to_keep:
        say += [
            "",
            para(
                "Nothing was written. To keep it, put these lines in the file (a table that stands there already is not written twice):"
            ),
            "",
            lines_to_keep,
        ]
    for line in say:
        console.print(line, soft_wrap=True)


def _names(found: Result) -> list[str]:
    firsts = (found.after.first_safe, found.before.first_safe)
    return list(dict.fromkeys([CHECK, *(x.check.name for x in firsts)]))


def _named(limits: tuple[Limit, ...], name: str) -> Limit:
    return next(x for x in limits if x.check.name == name and x.current_kind != "continuous")


def _safe(found: Result) -> str:
    now, then = found.before.first_safe, found.after.first_safe
    return f"The drive is safe to {safe_cell(then)} ({then.check.part}); without the test {safe_cell(now)} ({now.check.part})."


def _spread_words(found: Result) -> list[str]:
    now, then = found.lean
    if math.isnan(found.share) or now.high < then.low or then.high < now.low:
        return []  # another mount than the model's: its band is not compared
    if found.share > 1.0 + 1e-6:
        return [
            "This reading is less sure than the model itself (the movement is small against the reading's error): where the two "
            "agree, keep the file without it and read again with a longer stick or a dial gauge."
        ]
    return [
        f"It leaves {100 * found.share:.0f} % of the band of the alignment limit (on logarithms)."
    ]


def lines_of(file: DriveFile, section: str) -> str:
    """Give the lines of one section as they stand in a drive file, to put into it."""
    found = [g for k, g in file.given.items() if k.startswith(f"{section}.")]
    return "\n".join([f"[{section}]", *(f'{g.key.partition(".")[2]} = "{g.text}"' for g in found)])


def record_result(found: Result) -> dict[str, Any]:
    """Give a reading's answer as JSON-ready data in SI."""
    names = _names(found)
    return {
        "schema": "mountlimit-pull-reading-1", "factor": number(found.reading.factor),
        "marks": [
            {"key": m.key, "factor": number(float(m.factor)), "error": number(float(m.error)),
             "reading": quantity(float(m.reading), "m"), "own_bending": quantity(float(m.own_bending), "m"),
             "model": quantity(float(m.model), "m")} for m in found.reading.marks
        ],
        "lean_before": _record_three(found.lean[0], "rad"), "lean_after": _record_three(found.lean[1], "rad"),
        "before": [_record_limit(_named(found.before.limits, n)) for n in names],
        "after": [_record_limit(_named(found.after.limits, n)) for n in names],
        "share_of_band_left": number(found.share),
        "notes": [*far_words(found.reading), *apart_words(found.reading)],
    }  # fmt: skip
