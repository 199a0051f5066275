"""The throw criterion: its worked example, and the simulation it was set with.

The criterion is a proposal without a published source.  The worked example (chain 40, 11 driving
60, centres 400 mm, ISO teeth, 1738 N, 2 % sag) was computed by hand; the simulation rows are
lumped-model onsets in degrees or millimetres, which the criterion should bracket.
"""

from __future__ import annotations

import numpy as np
import pytest
from scipy.optimize import brentq

from mountlimit.formulas import alignment, chain_drive

# Inner width, roller diameter, inner plate (mm), mass per metre, of the chains of the table.
CHAIN_40 = {
    "pitch": 0.0127,
    "inner_width": 0.00785,
    "roller": 0.00795,
    "plate": 0.0015,
    "mass": 0.62,
}


def walk(relief_share: float, edge: int, teeth: float, plate: float = 0.0015) -> float:
    """Give the walk-off angle of chain 40 in degrees for the low, likely or high edge."""
    p, b = CHAIN_40["pitch"], CHAIN_40["inner_width"]
    stiff = alignment.stiffness_factor(teeth) if edge == 2 else 1.0
    angle = alignment.walk_off_angle(
        chain_drive.tooth_side_relief(p, relief_share), alignment.edge_rounding(plate),
        alignment.WALK_PITCHES[edge], p, alignment.RIDE_SHARE[edge], b, stiff,
    )  # fmt: skip
    return float(np.degrees(angle))


def test_rub_of_the_worked_example() -> None:
    width = chain_drive.tooth_width(CHAIN_40["inner_width"], 0.93)
    clearance = alignment.side_clearance(CHAIN_40["inner_width"], width)
    assert clearance * 1000 == pytest.approx(0.55, abs=0.005)
    rub = np.degrees(alignment.rub_angle(clearance, CHAIN_40["pitch"]))
    assert rub == pytest.approx(0.62, abs=0.005)
    assert 0.55 <= rub <= 0.64  # simulated onset


@pytest.mark.parametrize(
    ("share", "teeth", "angles"),
    [(0.13, 11, (4.9, 7.7, 14.6)), (0.13, 15, (4.9, 7.7, 12.2)), (0.03, 15, (1.5, 4.3, 6.6))],
)
def test_walk_off_of_machined_and_flat_teeth(
    share: float, teeth: int, angles: tuple[float, float, float]
) -> None:
    assert [walk(share, edge, teeth) for edge in range(3)] == pytest.approx(angles, abs=0.05)


def test_jump_of_the_worked_example() -> None:
    p = CHAIN_40["pitch"]
    driving, driven = chain_drive.pitch_diameter(p, 11), chain_drive.pitch_diameter(p, 60)
    run = chain_drive.span(0.4, driven, driving)
    wrap = chain_drive.wrap_angle(0.4, driven, driving)
    assert run * 1000 == pytest.approx(388, abs=0.5)
    assert np.degrees(wrap) == pytest.approx(151, abs=0.5)
    height = alignment.tooth_height(p, CHAIN_40["roller"], 11)
    assert height * 1000 == pytest.approx(2.71, abs=0.005)
    room = alignment.jump_room(wrap, height, CHAIN_40["roller"])
    assert room * 1000 == pytest.approx(8.83, abs=0.02)  # the hand example rounds the wrap to 2.64
    engaged = alignment.engaged_pitches(wrap, 11)
    assert engaged == pytest.approx(4.63, abs=0.02)
    ratio = alignment.back_tension_ratio(11)
    assert ratio == pytest.approx(0.280, abs=0.0005)
    back = alignment.back_tension_needed(1738.0, ratio, engaged)
    assert back == pytest.approx(4.8, abs=0.05)
    lost = alignment.jump_by_tension(CHAIN_40["mass"], run, back)
    assert lost * 1000 == pytest.approx(3.9, abs=0.1)  # sag rounded to 24 mm by hand
    length = alignment.jump_length(room, lost, p)
    assert length == room
    # The shafts 4.2 mm nearer at 2 % sag: the slack run is as long as at the jump, and hangs 9 %.
    reached = alignment.slack_length(0.0042, 0.02 * run, run)
    assert reached == pytest.approx(length, abs=0.0001)  # 0.05 mm of approach counts twice
    deeper, shallower = (chain_drive.excess_from_sag(run, share * run) for share in (0.095, 0.085))
    assert shallower < reached < deeper


@pytest.mark.parametrize(
    ("teeth", "ratio"),
    [(9, 0.225), (11, 0.280), (13, 0.327), (15, 0.369), (17, 0.405), (21, 0.467)],
)
def test_back_tension_ratio(teeth: int, ratio: float) -> None:
    """Pressure angle 17 - 64/z degrees; The Complete Guide to Chain section 2.1.2 (computed)."""
    assert alignment.back_tension_ratio(teeth) == pytest.approx(ratio, abs=0.0005)


def test_jump_length_is_capped_where_the_room_is_small() -> None:
    assert alignment.jump_length(0.005, 0.1, 0.0127) == pytest.approx(2 * 0.0127)
    assert alignment.jump_length(0.030, 0.1, 0.0127) == pytest.approx(0.030)
    assert alignment.jump_length(0.005, 0.009, 0.0127) == pytest.approx(0.009)
    assert alignment.late_jump(0.010) == pytest.approx(alignment.JUMP_BAND[2] * 0.010)


@pytest.mark.parametrize(
    ("teeth", "factor"), [(9, 1.2), (12, 1.2), (13.5, 1.1), (15, 1.0), (30, 1.0)]
)
def test_stiffness_factor(teeth: float, factor: float) -> None:
    assert alignment.stiffness_factor(teeth) == pytest.approx(factor, rel=1e-12)


@pytest.mark.parametrize(
    ("share", "touch", "off"), [(0.13, 4.9, 9.3), (0.13, 5.1, 9.8), (0.03, 1.5, 6.5)]
)
def test_the_band_brackets_the_simulation(share: float, touch: float, off: float) -> None:
    """Chain 40, 15 teeth, worn 1.5 %, 800 N; flat teeth in the last row."""
    low, likely, high = (walk(share, edge, 15) for edge in range(3))
    assert low <= touch + 0.05
    assert low < likely < off < high + 0.15


def test_low_sum_reaches_one_at_either_limit_alone() -> None:
    assert alignment.low_sum(0.0855, 0.0855, 0.0, 0.008) == pytest.approx(1.0)
    assert alignment.low_sum(0.0, 0.0855, 0.004, 0.008) == pytest.approx(1.0)


def test_jump_by_tension_is_where_the_weight_gives_the_back_tension() -> None:
    """The excess length at which the sag tension has fallen to the back tension needed."""
    lost = alignment.jump_by_tension(0.62, 0.388, 4.8)
    sag = brentq(lambda s: chain_drive.sag_tension(0.62, 0.388, s) - 4.8, 0.001, 0.1, xtol=1e-14)
    assert lost == pytest.approx(chain_drive.excess_from_sag(0.388, sag), rel=1e-9)


def test_edge_rounding_is_a_tenth_of_the_plate() -> None:
    assert alignment.edge_rounding(0.0015) == pytest.approx(0.00015)
