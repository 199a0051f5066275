"""Plate engine: every form's starter mount solved once, a hundred thicknesses, ten thousand stiffnesses.

Each figure stands beside the flat plate's of the same run (extra_info: times the plate's).
"""

from __future__ import annotations

import time
from functools import cache

import numpy as np
import pytest

from mountlimit import plate_route, starter
from mountlimit.drivefile import parse
from mountlimit.mounts import FORMS
from mountlimit.plates import Scales, solve, sweep
from mountlimit.resolve import resolve

PULL = np.array([1000.0, 500.0, 0.0, 0.0, 0.0, 20.0])
POINT = np.array([0.0, 0.0, 0.03])


@cache
def model_of(form: str):
    file = parse(starter.text(form, "starter.toml").encode(), "starter.toml")
    return plate_route.model_of(resolve(file))


def once(form: str) -> None:
    """Mesh, solve for six unit loads and contact, read forces and stress for one pull."""
    solve(model_of(form)).response(PULL, POINT)


@cache
def plain() -> float:
    once("plate")
    found = []
    for _ in range(3):
        began = time.perf_counter()
        once("plate")
        found.append(time.perf_counter() - began)
    return min(found)


@pytest.mark.benchmark(group="one mount of each form")
@pytest.mark.parametrize("form", sorted(FORMS))
def test_one_mount(benchmark, form):
    """Whole solve of the starter mount."""
    model_of(form)
    benchmark.pedantic(once, (form,), rounds=3, warmup_rounds=1)
    benchmark.extra_info["over a flat plate"] = round(benchmark.stats.stats.min / plain(), 2)


@pytest.mark.benchmark(group="many answers")
@pytest.mark.parametrize("form", ["plate", "angle"])
def test_a_hundred_thicknesses(benchmark, form):
    """3 to 15 mm by the reduced basis, two loads each with contact."""
    model, loads = model_of(form), [[(PULL, POINT)], [(-PULL, POINT)]]
    benchmark.pedantic(sweep, (model, np.geomspace(0.003, 0.015, 100), loads), rounds=3)
    benchmark.extra_info["over a flat plate solved once"] = round(
        benchmark.stats.stats.min / plain(), 2
    )


@pytest.mark.benchmark(group="many answers")
def test_a_thousand_stiffnesses(benchmark):
    """Another modulus and joint stiffness each time, movement under one load with contact."""
    file = parse(starter.text("plate", "starter.toml").encode(), "starter.toml")
    family = plate_route.with_plates(file).plates.family
    rng = np.random.default_rng(1)
    scales = rng.uniform(0.5, 2.0, (1000, 2))

    def sample() -> None:
        for modulus, joint in scales:
            answer = family.at(Scales(modulus=float(modulus), joint=float(joint)))
            answer.motor @ answer.shares(PULL[None])[0]

    benchmark.pedantic(sample, rounds=3)
    benchmark.extra_info["over a flat plate solved once"] = round(
        benchmark.stats.stats.min / plain(), 2
    )
