"""Mounts at the limits of size: an answer in bounded memory and time, or one clear line."""

from __future__ import annotations

import dataclasses
import json
import os
import subprocess
import sys
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from limit_cases import CASES, LOAD, grid, mount, plate
from plate_kit import model_of, rectangle

from mountlimit.plates import (
    FrameBolt,
    Hole,
    PlateError,
    PlateModel,
    Scales,
    Varying,
    family,
    solve,
)

MEGABYTES = 500.0  # of the whole process
SECONDS = 20.0  # of one core; 1.0 to 2.7 s measured


@cache
def _figures(name: str, finer: float = 1.0) -> dict[str, Any]:
    script = Path(__file__).parent / "limit_cases.py"
    done = subprocess.run(
        [sys.executable, str(script), name, str(finer)],
        capture_output=True,
        text=True,
        check=True,
        env={**os.environ, "OMP_NUM_THREADS": "1", "OPENBLAS_NUM_THREADS": "1"},
    )
    return dict(json.loads(done.stdout))


@pytest.mark.parametrize("name", list(CASES))
def test_memory_and_time_stay_in_bounds(name: str) -> None:
    found = _figures(name)
    assert found["megabytes"] < MEGABYTES
    assert found["seconds"] < SECONDS
    assert found["balance"] < 1e-6
    assert np.all(np.isfinite(found["rotation"]))


@pytest.mark.parametrize(
    ("name", "within"), [("3 m long", 0.01), ("sheet of 0.5 mm", 0.02), ("40 bolts", 0.01)]
)
def test_the_default_mesh_is_fine_enough(name: str, within: float) -> None:
    coarse, fine = _figures(name), _figures(name, 0.5)
    assert fine["elements"] > 1.3 * coarse["elements"]
    largest = np.max(np.abs(fine["rotation"]))
    assert coarse["rotation"] == pytest.approx(fine["rotation"], abs=within * largest)


def test_a_long_plate_bends_like_a_cantilever() -> None:
    """theta = F l^2 / (2 E I) + M l / (E I), from the bolts' upper row; plate and contact make less."""
    model = CASES["3 m long"]
    response = solve(model).response([0, 0, 100.0, 0, 0, 0], (0.0, 2.8, 0.0))
    free, second_moment = 2.8 - 0.16, 0.2 * 0.01**3 / 12
    beam = 100.0 * free**2 / (2 * 2e11 * second_moment)
    assert response.rotation[0] == pytest.approx(beam, rel=0.05)


STRAIGHT = [(-0.04, 0.02), (0.04, 0.02)]


def _bent(face: Any, place: tuple[float, float], washer: float) -> PlateModel:
    """Give an angle, its foot bolted at two places, the right one at ``place``."""
    foot = plate(0.12, 0.06, 0.008, name="foot", e2=(0.0, 0.0, -1.0))
    bolts = [
        FrameBolt(
            facet=1, centre=centre, hole_diameter=0.008, washer_diameter=washer,
            normal_stiffness=4e8, tangential_stiffness=2e8,
        )
        for centre in ((-0.04, 0.03), place)
    ]  # fmt: skip
    return mount(face, (), 0.15, facets=[face, foot], frame_bolts=bolts)


LOW = rectangle(0.12, 0.22) - np.array([0.06, 0.02])
REFUSED = [
    (mount(plate(0.05, 0.2, 0.008), [(0.0, 0.02)], 0.15),
     "plate: the hole of motor bolt 1 leaves the plate"),
    (mount(plate(0.12, 0.2, 0.008), STRAIGHT, 0.15, motor_face_diameter=0.3),
     "plate: the motor is larger than the plate"),
    (_bent(plate(0.12, 0.2, 0.008, outline=LOW, holes=[Hole(centre=(0.0, 0.0), diameter=0.01)]),
           (0.04, 0.03), 0.016),
     "plate: the hole of hole 1 lies on a bend or weld line"),
    (_bent(plate(0.12, 0.2, 0.008), (0.04, 0.003), 0.016),
     "foot: the hole of frame bolt 2 leaves the plate"),
    (mount(plate(2.0, 0.8, 0.008), grid(1.8, 0.44, 40, 10), 0.7),
     "more than 5500; leave out small holes, or bolts that carry little"),
    (mount(plate(3.0, 3.0, 0.0002), grid(2.8, 0.16, 2, 2), 2.8),
     "mount: is too soft for its size to be solved"),
]  # fmt: skip


@pytest.mark.parametrize(("model", "message"), REFUSED, ids=[text for _, text in REFUSED])
def test_what_cannot_be_is_one_line(model: PlateModel, message: str) -> None:
    with pytest.raises(PlateError) as caught:
        solve(model)
    assert message in str(caught.value)
    assert "\n" not in str(caught.value)


def test_a_washer_up_to_the_bend_is_solved() -> None:
    """Its hole is clear of the bend, its washer touches the stiff strip."""
    response = solve(_bent(plate(0.12, 0.2, 0.008), (0.04, 0.0085), 0.016)).response(
        LOAD, (0.0, 0.15, 0.05)
    )
    assert response.balance_residual < 1e-8
    assert bool(response.frame_ring_disturbed[1])


def test_many_bolts_share_a_pull_evenly_where_the_plate_is_stiff() -> None:
    """Forty bolts of a thick plate pulled square to it at their middle: each a fortieth."""
    thick = dataclasses.replace(CASES["40 bolts"].facets[0], elastic_modulus=2e13, thickness=0.05)
    model = dataclasses.replace(CASES["40 bolts"], facets=[thick], contacts=())
    response = solve(model).response([0, 0, 4000.0, 0, 0, 0], (0.0, 0.08, 0.0))
    assert response.bolt_tension == pytest.approx(100.0, rel=0.05)


def test_a_block_that_is_no_plate_is_refused_in_words() -> None:
    """So thick that every ring lies off it, no line and no free hole: there is nowhere to read its stress."""
    thin = model_of("C1")
    bare = dataclasses.replace(
        thin, section_lines=(), facets=[dataclasses.replace(f, holes=()) for f in thin.facets]
    )
    thick = dataclasses.replace(
        bare, facets=[dataclasses.replace(f, thickness=0.25) for f in bare.facets]
    )
    assert family(bare, Varying.none(1), [Scales()]).rings
    with pytest.raises(PlateError, match="too thick"):
        family(thick, Varying.none(1), [Scales()])
