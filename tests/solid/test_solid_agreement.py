"""The plate engine against solid elements on mounts neither was made for, contact included.

Limits are those of tests/plates/test_plate_solid_cases.py; for bolt tension 15 % of the largest
bolt force, set before the first comparison. The figures are kept in solid_results.json, made by
run.py; one small solid model is solved anew here so that it stays alive.
"""

from __future__ import annotations

from functools import cache
from typing import Any

import numpy as np
import pytest
import solid_results
from plate_kit import CASES, model_of
from solid_mounts import LOADS, MOUNTS, sprocket

from mountlimit.plates import PlateResponse, PlateSolution, solve

TILT, LINE, FRAME_RING, MOTOR_RING = 0.08, 0.13, (-0.12, 0.08), (-0.05, 0.18)
TENSION = 0.15  # of the largest bolt force
STORED: dict[str, Any] = solid_results.load()["mounts"]
COMPARED = ("frame_ring", "motor_ring", "lines")
SOLID = (0.015, 0.005, 0.03)  # of the solid itself: tilt left to edge nothing, its line, stress
SOLID_BLOCK = (0.02, 0.01, 0.05)  # elements of 2 mm on 3.5 mm annuli: no finer within 3 GB
PULLS = [(name, pull) for name, pulls in LOADS.items() for pull in pulls]
THICK = (
    "20 mm thick, 30 mm clear between washers, annuli 3.5 mm wide: local give at the washers is "
    "outside plate theory (8 mm thick the same mount is 3 % off; of aluminium instead of plastic, 10 %)"
)
NEAR = (
    "the peak is where the frame bolt's ring passes half a thickness from a motor washer; the field "
    "is steep there and the solid's own value moves by 4 % with its mesh"
)
HEEL = (
    "heel bears 1.7 mm behind the face's mid-plane, where the plate model has no contact (with "
    "contact cut off there the solid's own ring rises by 12 %)"
)
CELLS = "prying about the heel, whose edge plates have on their mid-plane, contact in few cells"
MISSES = {  # engine over solid, less one: known, not excused; a mend must turn these into passes
    ("line", "block", "across"): f"+17 %: {THICK}",
    ("frame", "block", "along"): f"+20 %: {NEAR}",
    ("frame", "block", "across"): f"+12 %: {NEAR}",
    ("motor", "block", "along"): f"-7 %: {THICK}",
    ("motor", "block", "across"): f"-5.02 %: {THICK}",
    ("frame", "angle", "opening"): f"+8.4 %: {HEEL}",
    ("line", "angle", "opening"): f"+14 % on the weaker line: {CELLS}",
    ("line", "angle", "across"): f"+19 % on the weaker line: {CELLS}",
}


def _pulls(figure: str) -> list[Any]:
    """Give all mounts and pulls, those whose figure is known to miss its limit marked so."""
    return [
        pytest.param(*pull, marks=pytest.mark.xfail(reason=MISSES[figure, *pull]))
        if (figure, *pull) in MISSES
        else pull
        for pull in PULLS
    ]


@cache
def _solution(name: str) -> PlateSolution:
    return solve(MOUNTS[name]())


@cache
def _pair(name: str, pull: str) -> tuple[PlateResponse, dict[str, np.ndarray]]:
    solution = _solution(name)
    load = np.r_[LOADS[name][pull], 0.0, 0.0, 0.0]
    response = solution.response(load, sprocket(solution.model))
    return response, solid_results.drawn(STORED[name]["meshes"], pull)


@pytest.mark.parametrize("name", ["C1", *MOUNTS])
def test_the_stored_results_are_of_these_models_and_converged(name: str) -> None:
    model = model_of("C1") if name == "C1" else MOUNTS[name]()
    assert STORED[name]["mark"] == solid_results.mark_of(model)
    pulls = ("chain_x", "chain_y") if name == "C1" else LOADS[name]
    for pull in pulls:
        solid = solid_results.drawn(STORED[name]["meshes"], pull)
        left, linearity, stress = SOLID_BLOCK if name == "block" else SOLID
        assert abs(solid["left"]) < left
        assert abs(solid["linearity"]) < linearity
        if name != "C1":
            assert abs(solid["bulk"]) < 0.01
            compared = [solid_results.AS_FINEST.index(n) for n in COMPARED]
            assert np.max(np.abs(solid["bulk_stress"][compared])) < stress
        for mesh in STORED[name]["meshes"]:
            assert mesh["loads"][pull]["force_left"] < 1e-3


@pytest.mark.parametrize("pull", ["chain_x", "chain_y"])
def test_the_solid_model_repeats_an_earlier_solid_model(pull: str) -> None:
    """C1 of tests/plates/solid_cases.json: another mesher, another program, the same mount."""
    solid = solid_results.drawn(STORED["C1"]["meshes"], pull)
    earlier = next(a for a in CASES["C1"]["answers"] if a["load"] == pull)
    main = int(np.argmax(np.abs(earlier["rot"])))
    assert solid["rotation"][main] == pytest.approx(earlier["rot"][main], rel=0.005)
    assert np.max(solid["frame_ring"]) / 1e6 == pytest.approx(
        earlier["stress"]["sup_r1t_max"], rel=0.03
    )
    assert np.max(solid["motor_ring"]) / 1e6 == pytest.approx(
        earlier["stress"]["mot_r1t_max"], rel=0.03
    )
    assert solid["lines"][0] / 1e6 == pytest.approx(earlier["stress"]["line0_max"], rel=0.02)


@pytest.mark.parametrize(("name", "pull"), _pulls("tilt"))
def test_tilt(name: str, pull: str) -> None:
    response, solid = _pair(name, pull)
    main = int(np.argmax(np.abs(solid["rotation"])))
    assert response.rotation[main] == pytest.approx(solid["rotation"][main], rel=TILT)


@pytest.mark.parametrize(("name", "pull"), _pulls("line"))
def test_stress_on_section_lines(name: str, pull: str) -> None:
    response, solid = _pair(name, pull)
    assert response.line.largest() == pytest.approx(solid["lines"], rel=LINE)


def _ring_within(name: str, pull: str, side: str, limits: tuple[float, float]) -> bool:
    """Compare the largest stress on the rings the engine does not call disturbed."""
    response, solid = _pair(name, pull)
    trusted = ~getattr(response, f"{side}_ring_disturbed")
    assert np.any(trusted)
    found = np.max(getattr(response, f"{side}_ring").largest()[trusted])
    return limits[0] <= found / np.max(solid[f"{side}_ring"][trusted]) - 1.0 <= limits[1]


@pytest.mark.parametrize(("name", "pull"), _pulls("frame"))
def test_stress_on_frame_rings(name: str, pull: str) -> None:
    assert _ring_within(name, pull, "frame", FRAME_RING)


@pytest.mark.parametrize(("name", "pull"), _pulls("motor"))
def test_stress_on_motor_rings(name: str, pull: str) -> None:
    assert _ring_within(name, pull, "motor", MOTOR_RING)


@pytest.mark.parametrize(("name", "pull"), _pulls("tension"))
def test_bolt_tension(name: str, pull: str) -> None:
    response, solid = _pair(name, pull)
    largest = np.max(np.abs(solid["bolt_tension"]))
    assert response.bolt_tension == pytest.approx(solid["bolt_tension"], abs=TENSION * largest)


def test_a_coarse_solid_model_still_runs_and_agrees() -> None:
    """One layer of few tetrahedra: within 15 % of the plates, contact found, forces in balance."""
    pytest.importorskip("skfem", reason="extra `solid` is not installed")
    from solid_mesh import Sizes, build
    from solid_model import SolidModel

    model = MOUNTS["angle"]()
    solid = SolidModel(model, build(model, Sizes(0.02, 1, 0.01, circle=0.34)))
    force = np.array(LOADS["angle"]["opening"])
    answer = solid.solve(np.r_[force, 0.0, 0.0, 0.0], sprocket(model))
    left = force - answer.bolt_forces.sum(axis=0) - answer.contact_force.sum(axis=0)
    assert np.max(np.abs(left)) < 1e-3 * np.max(force)
    load = np.r_[force, 0.0, 0.0, 0.0]
    response = _solution("angle").response(load, sprocket(model))
    assert answer.motor[3] == pytest.approx(response.rotation[0], rel=0.15)
    assert 1 < answer.rounds < 20
