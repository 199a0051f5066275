"""Every formula computes what the equation in its data sheet says, for floats and for arrays."""

from __future__ import annotations

import ast
import importlib
import inspect
import keyword
import math
import pkgutil
import random
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

import mountlimit.formulas as package
from mountlimit import worked

for _info in pkgutil.iter_modules(package.__path__):
    importlib.import_module(f"{package.__name__}.{_info.name}")

NAMES = sorted(worked.FORMULAS)
DRAWS = 20
TOLERANCE = 1e-12

# The elementary functions an equation may use; scalar ones, so that a slip in an array function
# of the package cannot hide in both places.
FUNCTIONS: dict[str, Any] = {
    "sin": math.sin, "cos": math.cos, "tan": math.tan,
    "asin": math.asin, "acos": math.acos, "atan": math.atan, "atan2": math.atan2,
    "sqrt": math.sqrt, "exp": math.exp, "log": math.log, "tanh": math.tanh,
    "pi": math.pi, "max": max, "min": min, "abs": abs,
}  # fmt: skip

# Ranges of arguments that may not be just any number from 0.1 to 10.
Range = tuple[float, float]
ANGLE: Range = (0.05, 1.2)
TEETH: Range = (9.0, 80.0)
RANGES: dict[str, dict[str, Range]] = {
    "alignment.stiffness_factor": {"teeth": (8.0, 20.0)},
    "bearings.reliability_factor": {"reliability": (0.9, 0.995)},
    "chain_length.centre_distance_from_length": {
        "length_in_pitches": (120.0, 200.0), "driving_teeth": (9.0, 25.0),
        "driven_teeth": (30.0, 90.0),
    },
    "chain_length.span": {
        "centre_distance": (5.0, 10.0), "driven_pitch_diameter": (2.0, 4.0),
        "driving_pitch_diameter": (0.5, 2.0),
    },
    "chain_length.wrap_angle": {
        "centre_distance": (5.0, 10.0), "driven_pitch_diameter": (2.0, 4.0),
        "driving_pitch_diameter": (0.5, 2.0),
    },
    "chain_length.wear_limit": {"teeth": (40.0, 300.0)},
    "chain_rating.link_plate_power": {"pitch": (0.006, 0.06)},
    "concentration.curved_bar_inside": {"mid_radius": (1.2, 8.0), "half_depth": (0.5, 1.0)},
    "flats.flat_width": {"shaft_diameter": (1.0, 10.0), "depth": (0.1, 0.9)},
    "flats.one_flat_torsion": {"shaft_diameter": (1.0, 10.0), "depth": (0.1, 0.3)},
    "flats.two_flat_torsion": {"shaft_diameter": (1.0, 10.0), "depth": (0.1, 0.3)},
    "joint.frustum_stiffness": {"diameter": (0.5, 1.0), "face_diameter": (1.2, 3.0)},
    "edge_screws.thread_stiffness": {"diameter": (0.5, 1.0), "thickness": (1.5, 9.0)},
    "member.span_twist_warping": {"place": (0.1, 0.9)},
    "sprocket.smallest_effective_radius": {"teeth": TEETH},
    "sprocket.pitch_diameter": {"teeth": TEETH},
    "sprocket.speed_variation": {"teeth": (5.0, 40.0)},
    "timber_screws.embedment_strength": {"diameter": (0.002, 0.03)},
    "tooth_jump.back_tension_ratio": {"teeth": TEETH},
    "traction.traction_force_rear_drive": {
        "wheelbase": (2.0, 3.0), "friction": (0.2, 1.0), "mass_centre_height": (0.3, 1.0),
    },
    "weld_fatigue.range_allowed": {"cycles": (10.0, 2e8)},
    "weld_fatigue.shear_range_allowed": {"cycles": (1e3, 2e8)},
}  # fmt: skip


def draw(name: str, sheet: worked.DataSheet, source: random.Random) -> dict[str, float]:
    """Give one random positive number per argument; angles stay below a right angle."""
    ranges = RANGES.get(name, {})
    numbers = {}
    for symbol in sheet.arguments:
        low, high = ranges.get(symbol.name, ANGLE if symbol.unit == "rad" else (0.1, 10.0))
        numbers[symbol.name] = source.uniform(low, high)
    return numbers


def right_side(sheet: worked.DataSheet) -> str:
    """Give the right side of the equation of the data sheet."""
    return sheet.equation.split("=", 1)[1].strip()


def by_equation(sheet: worked.DataSheet, numbers: dict[str, float]) -> float:
    """Evaluate the printed equation with the letters of the data sheet."""
    letters = {s.letter: numbers[s.name] for s in sheet.arguments}
    return float(eval(right_side(sheet), {"__builtins__": {}}, FUNCTIONS | letters))


def function(name: str) -> Callable[..., Any]:
    """Give a formula by its enrolled name."""
    return worked.FORMULAS[name]


def test_there_are_formulas() -> None:
    assert len(NAMES) > 150


def test_every_range_belongs_to_an_argument() -> None:
    for name, ranges in RANGES.items():
        arguments = {s.name for s in worked.data_sheet(function(name)).arguments}
        assert ranges.keys() <= arguments, name


@pytest.mark.parametrize("name", NAMES)
def test_arguments_are_those_of_the_signature(name: str) -> None:
    sheet = worked.data_sheet(function(name))
    assert [s.name for s in sheet.arguments] == list(inspect.signature(function(name)).parameters)


@pytest.mark.parametrize("name", NAMES)
def test_letters_are_unique_and_all_used(name: str) -> None:
    sheet = worked.data_sheet(function(name))
    letters = [s.letter for s in sheet.arguments]
    assert len(set(letters)) == len(letters)
    assert not [x for x in letters if keyword.iskeyword(x) or x in FUNCTIONS]
    tree = ast.parse(right_side(sheet), mode="eval")
    used = {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)}
    assert used - FUNCTIONS.keys() == set(letters)
    assert sheet.equation.split("=", 1)[0].strip() == sheet.result.letter


@pytest.mark.parametrize("name", NAMES)
def test_function_computes_its_equation(name: str) -> None:
    sheet, source = worked.data_sheet(function(name)), random.Random(name)
    for _ in range(DRAWS):
        numbers = draw(name, sheet, source)
        value = float(function(name)(**numbers))
        assert math.isfinite(value)
        assert value == pytest.approx(by_equation(sheet, numbers), rel=TOLERANCE, abs=1e-300), (
            numbers
        )


@pytest.mark.parametrize("name", NAMES)
def test_function_takes_arrays(name: str) -> None:
    sheet, source = worked.data_sheet(function(name)), random.Random(name)
    rows = [draw(name, sheet, source) for _ in range(3)]
    columns = {s.name: np.array([row[s.name] for row in rows]) for s in sheet.arguments}
    together = function(name)(**columns)
    alone = [float(function(name)(**row)) for row in rows]
    assert np.shape(together) == (3,)
    assert np.allclose(together, alone, rtol=TOLERANCE, atol=0.0)


@pytest.mark.parametrize("name", NAMES)
def test_function_leaves_a_step_on_the_tape(name: str) -> None:
    sheet = worked.data_sheet(function(name))
    numbers = draw(name, sheet, random.Random(name))
    with worked.recording() as tape:
        result = function(name)(**numbers)
    (step,) = tape.steps
    assert isinstance(result, worked.Traced)
    assert (step.equation, step.value) == (sheet.equation, float(result))
    assert [e.value for e in step.entries] == list(numbers.values())
