"""Every worked line, re-worked from nothing but what is printed, gives the printed result."""

from __future__ import annotations

import math
import re

import numpy as np
import pytest

from mountlimit import units
from mountlimit.units import KINDS
from sheet.made import SAMPLE, data

NAMES = {n: getattr(np, n) for n in ("sqrt", "sin", "cos", "tan", "exp", "log", "tanh", "pi")}
NAMES |= {"atan": np.arctan, "asin": np.arcsin, "abs": abs, "max": max, "min": min}
PRINTED = re.compile(r"^(-?)(\d+(?:\.(\d+))?(?:e([-+]?\d+))?)(?: (.+))?$")


def steps(thing):
    """All step lines of a record, from top to bottom."""
    if isinstance(thing, list):
        for one in thing:
            yield from steps(one)
    elif isinstance(thing, dict):
        if thing.get("kind") == "stepline":
            yield thing
        for one in thing.values():
            yield from steps(one)


def si(shown: str) -> tuple[float, float]:
    """Value in SI of a printed number, and half a unit of its last digit (six digits are kept)."""
    found = PRINTED.match(shown)
    assert found, shown
    digits, decimals, power, unit = found[2], len(found[3] or ""), int(found[4] or 0), found[5]
    number = float(found[1] + digits)
    # Trailing zeros are dropped in print: the last digit kept is the sixth, or a later printed one.
    sixth = math.floor(math.log10(abs(number))) - 5 if number else -decimals + power
    last = power - decimals
    if (
        sixth > last == 0 and number % 10**sixth == 0
    ):  # 1356820: rounded to tens, filled up with nought
        last = sixth
    half = 0.5 * 10.0 ** min(sixth, last) if number else 0.5e-7
    if unit in (None, "rev", "rev/s"):  # turns are counted, as n in z * p * n
        return number, half
    for kind in KINDS:
        if kind == "ratio":
            continue
        try:
            value = units.parse(shown, kind)
            up = units.parse(f"{number + max(abs(number), 1.0):.15g} {unit}", kind)
        except units.UnitMistake:
            continue
        return value, half * abs(up - value) / max(abs(number), 1.0)
    return (number / 100, half / 100) if unit == "%" else (number, half)  # SI unit without a kind


@pytest.mark.parametrize("name", SAMPLE)
def test_printed_lines_recompute(name):
    done = 0
    for step in steps(data(name)["sections"]):
        if step["repeated"]:
            continue
        letter, _, shown = step["result"].partition(" = ")
        assert step["equation"].partition("=")[0].strip() == letter
        known = {t["letter"]: si(t["shown"]) for t in step["terms"]}
        values = {k: v for k, (v, _) in known.items()}

        def work(changed, step=step, values=values):
            with np.errstate(all="ignore"):
                scope = NAMES | values | changed
                return float(eval(step["equation"].partition("=")[2], {"__builtins__": {}}, scope))

        result, half = si(shown)
        mine = work({})
        room = half
        for k, (v, h) in known.items():
            moves = [abs(work({k: v + sign * h}) - mine) for sign in (-1, 1)]
            room += max(m for m in moves if math.isfinite(m))
        assert abs(mine - result) <= room * (1 + 1e-3) + 1e-15 * abs(result), (
            step,
            mine,
            result,
            room,
        )
        done += 1
    assert done > 200


@pytest.mark.parametrize("name", SAMPLE)
def test_a_step_pointed_at_stands_further_up(name):
    results, pointed = {}, 0
    for step in steps(data(name)["sections"]):
        for term in step["terms"]:
            if term["step"] is not None:
                assert results[term["step"]].partition(" = ")[2] == term["shown"]
        if step["repeated"]:
            pointed += 1
            assert results[step["number"]] == step["result"]
        else:
            assert step["number"] not in results
            results[step["number"]] = step["result"]
    assert pointed > 20


def test_a_wrong_digit_would_be_seen():
    """The room given to rounding is far smaller than a slip in the fourth digit."""
    value, half = si("12.3456 mm")
    assert half == pytest.approx(0.5e-7)
    assert value == pytest.approx(0.0123456)
