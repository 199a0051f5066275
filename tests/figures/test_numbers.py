"""The numbers in the figures are those of the pipeline."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
from test_figures import assessed

from mountlimit.checks.alignment import lean as lean_of
from mountlimit.checks.alignment import rub
from mountlimit.figures import lean, limit_bars, plate, section, use_curves
from mountlimit.figures.labels import spread
from mountlimit.figures.style import COLOURS, INK, PALE, PAPER, SOFT


@pytest.mark.parametrize("name", ["orchard_barrow", "hay_elevator"])
def test_sprocket_from_above(name):
    """Real millimetres and degrees are the pipeline's; only the drawing is exaggerated."""
    a = assessed(name)
    shown = lean.read(a)
    yaw, moved, near = (float(v) for v in lean_of(a.at_set))
    assert (shown.yaw, shown.moved, shown.near) == (yaw, moved, near)
    assert (shown.skew, shown.offset) == a.skew_at_set[:2]
    assert dict(shown.allowed)["plates first rub on the teeth"] == float(rub(a.at_set))
    assert shown.factor > 1
    alt = lean.alt(shown)
    assert f"{math.degrees(abs(yaw)):.2g} deg" in alt
    step = 0.0254 if name == "hay_elevator" else 0.01  # mm
    back = near * 1000 / (25.4 if name == "hay_elevator" else 1.0)
    unit = "in" if name == "hay_elevator" else "mm"
    words = next(w for w in alt.split(" and ") if f"{unit} nearer" in w)
    assert float(words.split()[0]) == pytest.approx(back, abs=step)


@pytest.mark.parametrize("name", ["orchard_barrow", "hay_elevator"])
def test_sprocket_is_drawn_with_the_factor_told(name):
    """The loaded sprocket's corners are turned and moved by the real numbers times the factor."""
    from matplotlib.patches import Polygon

    shown = lean.read(assessed(name))
    bodies = [p for p in lean.draw(shown).axes[0].patches if isinstance(p, Polygon)]
    loaded = next(p for p in bodies if p.get_hatch()).get_xy()
    along = loaded[1] - loaded[0]
    assert math.atan2(along[1], along[0]) == pytest.approx(shown.factor * shown.yaw, rel=1e-9)
    assert float(np.hypot(*along)) == pytest.approx(shown.diameter, rel=1e-9)
    middle = loaded[:4].mean(axis=0) / shown.factor
    assert middle == pytest.approx([shown.near, shown.moved], rel=1e-9, abs=1e-12)


@pytest.mark.parametrize("name", ["orchard_barrow", "hay_elevator"])
def test_section_peaks_at_the_pipelines_stress(name):
    """A mesh of its own over the whole section peaks within 1 % of the number the check uses."""
    shown = section.read(assessed(name))
    most = max(float(p.stress.max()) for p in shown.pieces)
    assert most == pytest.approx(shown.largest, rel=0.01)


@pytest.mark.parametrize("name", ["orchard_barrow", "hay_elevator"])
def test_full_solve_agrees_with_the_reduced_model(name):
    """Bolts and stress of the full solve are those of the reduced model in the checks."""
    a = assessed(name)
    shown = plate.read(a)
    sheared = [float(v) for v in a.at_set.response.bolts.shear]
    assert [math.hypot(*b.shear) for b in shown.bolts] == pytest.approx(sheared, rel=0.01)
    ring = next(s for s, words in shown.highest if "edge" not in words)
    assert ring < shown.stress.max()


def test_moved_sprocket_point_from_nodal_movement():
    """Nodes under the motor move as the rigid motor does in the checks, softness in."""
    a = assessed("orchard_barrow")
    shown = plate.read(a)
    part = a.at_set.response.displacements[0]
    under = np.unique(shown.mesh.triangles[shown.mesh.motor_bolt >= 0])
    turn = np.array([float(v) for v in part.turn])
    sprocket = np.array([0.0, 0.0, float(a.drive.shaft.face_overhang)])
    rigid = np.array([float(v) for v in part.move]) + np.cross(
        turn, shown.mesh.points[under] - sprocket
    )
    mine = shown.movement[under]
    own = np.linalg.norm(mine - rigid, axis=1).max()
    assert own < 0.01 * np.linalg.norm(rigid, axis=1).max()


@pytest.mark.parametrize("name", ["orchard_barrow", "hay_elevator"])
def test_use_reaches_100_at_the_safe_current(name):
    """Between samples every line crosses 100 % where the limit stands."""
    shown = use_curves.read(assessed(name))
    seen = 0
    for curve in shown.curves:
        if curve.safe < shown.currents[-1]:
            at = float(np.interp(curve.safe, shown.currents, curve.used))
            assert at == pytest.approx(100, abs=2.0), curve.name
            seen += 1
    assert seen


def test_bars_hold_every_limit_smallest_first():
    """Every limit has its bar, in order."""
    a = assessed("orchard_barrow")
    shown = limit_bars.read(a)
    assert [b.safe for b in shown.bars] == sorted(line.limit.safe for line in a.lines)


def test_spread_labels():
    """Labels keep their order, do not overlap, stay inside, and stay put where there is room."""
    wanted, heights = [0.2, 0.21, 0.22, 0.9, 0.98], [0.1] * 5
    found = spread(wanted, heights, 0.0, 1.0)
    assert all(b - a >= 0.1 - 1e-9 for a, b in pairwise(found))
    assert found[0] >= 0.05 - 1e-9
    assert found[-1] <= 0.95 + 1e-9
    assert spread([0.3, 0.7], [0.1, 0.1], 0.0, 1.0) == [0.3, 0.7]


def test_colours_stand_out_on_white():
    """Text colours have a contrast of 4.5 or more on paper (WCAG 2.1, 1.4.3), fills a light one."""

    def luminance(colour: str) -> float:
        parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
        line = [c / 12.92 if c <= 0.03928 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
        return 0.2126 * line[0] + 0.7152 * line[1] + 0.0722 * line[2]

    def contrast(one: str, two: str) -> float:
        high, low = sorted((luminance(one), luminance(two)), reverse=True)
        return (high + 0.05) / (low + 0.05)

    assert all(contrast(c, PAPER) >= 4.5 for c in (*COLOURS, INK, SOFT))
    assert contrast(INK, PALE) >= 4.5
