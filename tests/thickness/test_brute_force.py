"""The run beside brute force (``thickness_run.py``): every form, nothing that misses or broke."""

from __future__ import annotations

import json
from collections import Counter
from pathlib import Path

from mountlimit.mounts import FORMS

RESULTS = json.loads(Path(__file__).with_name("results.json").read_text())
COUNTED = ("same", "none carries", "misses", "broke")
EACH = 20


def test_every_form_is_there_and_none_misses():
    counted = [r for r in RESULTS.values() if r["state"] in COUNTED]
    forms = Counter(r["form"] for r in counted)
    assert set(forms) == set(FORMS)
    assert min(forms.values()) >= EACH
    assert {r["state"] for r in counted} == {"same", "none carries"}


def test_what_is_called_the_same_stands_on_both_sides():
    """Half a per cent thicker carries the wanted current, half a per cent thinner does not."""
    for number, r in RESULTS.items():
        if r["state"] == "same":
            assert r["safe_above"] >= r["wanted"], number
            assert r["safe_below"] < r["wanted"] or r["tool"] <= 0.0005 * 1.001, number
