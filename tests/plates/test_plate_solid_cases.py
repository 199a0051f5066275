"""Seven mounts against second-order solid elements with the same washers, motor tie and contact.

Limits are those the comparison of plates with solids gave over nineteen cases: tilt 8 %, section
lines 13 %, frame-bolt ring -12 to +8 %, motor-bolt ring -5 to +18 %. C2 (and its twin with contact,
C2C) was in view when the corner rule was chosen; nothing here is tuned to the rest.
"""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from plate_kit import CASES, MEGA, MILLI, model_of, sprocket_of

from mountlimit.plates import PlateResponse, PlateSolution, solve

ANSWERS = [(name, i) for name, case in CASES.items() for i in range(len(case["answers"]))]
IDS = [f"{name}-{CASES[name]['answers'][i]['load']}" for name, i in ANSWERS]
TILT, LINE, FRAME_RING, MOTOR_RING = 0.08, 0.13, (-0.12, 0.08), (-0.05, 0.18)
MOVEMENT = 0.06


# Known, on the safe side, not excused: prying about the heel's edge, which plates have on their
# mid-plane. Contact in 1288 cells gives stress +17 and +18 %, tilt +4.5 %: it is not the cells.
OVER = {
    ("tilt", "C2C-chain_y"): "+7.5 % of the movement",
    ("line", "C2C-chain_y"): "+26 % on the weaker of two lines",
    ("ring", "C2C-chain_y"): "+20 % round the frame bolts",
}


def _answers(figure: str) -> list:
    """Give all mounts and loads, those whose figure is known to lie over its limit marked so."""
    return [
        pytest.param(*one, id=name, marks=pytest.mark.xfail(reason=OVER[figure, name], strict=True))
        if (figure, name) in OVER
        else pytest.param(*one, id=name)
        for one, name in zip(ANSWERS, IDS, strict=True)
    ]


@cache
def _solution(name: str) -> PlateSolution:
    return solve(model_of(name))


def _answer(name: str, index: int) -> tuple[dict, PlateResponse]:
    answer = CASES[name]["answers"][index]
    load = np.asarray(answer["wrench_at_sprocket"], float)
    load[3:] *= MILLI
    return answer, _solution(name).response(load, sprocket_of(name))


def _within(found: float, wanted: float, limits: tuple[float, float]) -> bool:
    return limits[0] <= found / wanted - 1.0 <= limits[1]


@pytest.mark.parametrize(("name", "index"), _answers("tilt"))
def test_tilt_and_movement_of_the_sprocket(name: str, index: int) -> None:
    answer, response = _answer(name, index)
    main = int(np.argmax(np.abs(answer["rot"])))
    assert response.rotation[main] == pytest.approx(answer["rot"][main], rel=TILT)
    moved = np.asarray(answer["disp"]) * MILLI
    main = int(np.argmax(np.abs(moved)))
    assert response.displacement[main] == pytest.approx(moved[main], rel=MOVEMENT)


@pytest.mark.parametrize(("name", "index"), _answers("line"))
def test_stress_on_section_lines(name: str, index: int) -> None:
    answer, response = _answer(name, index)
    largest = response.line.largest() / MEGA
    wanted = [answer["stress"][f"line{k}_max"] for k in range(len(largest))]
    assert largest == pytest.approx(wanted, rel=LINE)


@pytest.mark.parametrize(("name", "index"), _answers("ring"))
def test_stress_on_rings(name: str, index: int) -> None:
    answer, response = _answer(name, index)
    stress = answer["stress"]
    if "sup_r1t_max" in stress:
        frame, wanted = response.frame_ring, stress["sup_r1t_max"]
    else:
        assert np.all(response.frame_ring_disturbed)
        frame, wanted = response.frame_near_ring, stress["sup_r0.5t_max"]
    assert _within(np.max(frame.largest()) / MEGA, wanted, FRAME_RING)
    motor = np.max(response.motor_ring.largest()) / MEGA
    assert _within(motor, stress["mot_r1t_max"], MOTOR_RING)


@pytest.mark.parametrize(("name", "index"), ANSWERS, ids=IDS)
def test_loads_and_reactions_close(name: str, index: int) -> None:
    _, response = _answer(name, index)
    assert response.balance_residual < 1e-9


def test_stress_at_the_edge_of_the_motor_bore_of_c1() -> None:
    """Solid 42 MPa against 41 of an earlier plate mesh; own measurement, pulled down."""
    _, response = _answer("C1", 1)
    centre = np.array([0.0, 0.14])
    away = np.linalg.norm(response.free_edge.place[:, :2] - centre, axis=1)
    bore = away < 0.0205
    assert np.sum(bore) >= 24
    assert np.max(response.free_edge.equivalent()[bore]) / MEGA == pytest.approx(42.0, rel=0.1)
