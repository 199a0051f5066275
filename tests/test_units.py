"""Texts with units in, SI floats out, and back."""

import contextlib
import math
import subprocess
import sys
import time
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from mountlimit import units
from mountlimit.unit_meaning import _lines, spellings
from mountlimit.units import (
    KINDS,
    UnitMistake,
    convert,
    kind_of_unit,
    parse,
    show,
    show_both,
    system_of,
)

RELATIVE = 1e-12  # room for a few roundings of a float

GOOD = (
    ("6 mm", "length", 0.006),
    ("6mm", "length", 0.006),
    (".5 mm", "length", 0.0005),
    ("+6 mm", "length", 0.006),
    ("-6 mm", "length", -0.006),
    ("\u22126 mm", "length", -0.006),
    ("6\u00a0mm", "length", 0.006),
    ("5 um", "length", 5e-6),
    ("5 \u00b5m", "length", 5e-6),
    ("5 \u03bcm", "length", 5e-6),
    ("1/4 in", "length", 0.25 * 0.0254),
    ("3 / 16 in", "length", 3 / 16 * 0.0254),
    ("1/4-in", "length", 0.25 * 0.0254),
    ("1-3/8 in", "length", 1.375 * 0.0254),
    ("1\u20113/8 in", "length", 1.375 * 0.0254),
    ("1 3/8 in", "length", 1.375 * 0.0254),
    ("1⅜ inch", "length", 1.375 * 0.0254),
    ("-1-3/8 in", "length", -1.375 * 0.0254),
    ('0.25"', "length", 0.25 * 0.0254),
    ("0.25\u2033", "length", 0.25 * 0.0254),
    ("0.25''", "length", 0.25 * 0.0254),
    ("6 in.", "length", 6 * 0.0254),
    ("20 thou", "length", 0.02 * 0.0254),
    ("20 mil", "length", 0.02 * 0.0254),
    ("5 ft 3 in", "length", 63 * 0.0254),
    ("5' 3-1/2\"", "length", 63.5 * 0.0254),
    ("5'3\"", "length", 63 * 0.0254),
    ("-1 ft 3 in", "length", -15 * 0.0254),
    ("1 in + 2 mm", "length", 0.0274),
    ("-1 in + 2 mm", "length", -0.0234),
    ("25 mm 1/16 in", "length", 0.025 + 0.0254 / 16),
    ("5 lb 3 oz", "mass", 83 / 16 * 0.45359237),
    ("12 N*m", "torque", 12.0),
    ("12 Nm", "torque", 12.0),
    ("12 N m", "torque", 12.0),
    ("12 N.m", "torque", 12.0),
    ("12 N\u00b7m", "torque", 12.0),
    ("12 N-m", "torque", 12.0),
    ("20 lbf*ft", "torque", 20 * 4.4482216152605 * 0.3048),
    ("20 lbf ft", "torque", 20 * 4.4482216152605 * 0.3048),
    ("20 lbf-ft", "torque", 20 * 4.4482216152605 * 0.3048),
    ("20 ft*lbf", "torque", 20 * 4.4482216152605 * 0.3048),
    ("20 lbf*in", "torque", 20 * 4.4482216152605 * 0.0254),
    ("20 in-lbf", "torque", 20 * 4.4482216152605 * 0.0254),
    ("35 N/mm2", "stress", 35e6),
    ("35 N/mm^2", "stress", 35e6),
    ("35 N/mm**2", "stress", 35e6),
    ("35 N/mm\u00b2", "stress", 35e6),
    ("0.12 N*m/A", "torque_constant", 0.12),
    ("0.12 Nm/A", "torque_constant", 0.12),
    ("60 rpm/V", "speed_constant", 2 * math.pi),
    ("60 rpm per V", "speed_constant", 2 * math.pi),
    ("3 rad/(s*V)", "speed_constant", 3.0),
    ("60 degC", "temperature", 333.15),
    ("60 \u00b0C", "temperature", 333.15),
    ("60 deg C", "temperature", 333.15),
    ("60 C", "temperature", 333.15),
    ("140 F", "temperature", 333.15),
    ("140 degF", "temperature", 333.15),
    ("333 K", "temperature", 333.0),
    ("-40 degF", "temperature", 233.15),
    ("180\u00b0", "angle", math.pi),
    ("180 deg", "angle", math.pi),
    ("60 arcmin", "angle", math.pi / 180),
    ("5 %", "ratio", 0.05),
    ("5%", "ratio", 0.05),
    ("0.05", "ratio", 0.05),
    ("1/2", "ratio", 0.5),
    ("2 mm/m", "ratio", 0.002),
    ("3 g", "acceleration", 3 * 9.80665),
    ("9.81 m/s^2", "acceleration", 9.81),
    ("9.81 m\u00b7s\u207b\u00b2", "acceleration", 9.81),
    ("3 g", "mass", 0.003),
    ("1 N/g", "acceleration", 1000.0),
    ("1e-8 kg*m2", "inertia", 1e-8),
    ("2.7 g/cm3", "density", 2700.0),
    ("7 kg/m\u00b3", "density", 7.0),
    ("60 rpm", "rotational_speed", 2 * math.pi),
    ("1 kN/mm", "stiffness", 1e6),
    ("36 km/h", "speed", 10.0),
    ("2 h", "time", 7200.0),
    ("20 J", "energy", 20.0),
)


@pytest.mark.parametrize(("text", "kind", "value"), GOOD)
def test_reads(text, kind, value):
    assert parse(text, kind) == pytest.approx(value, rel=RELATIVE)


# --- the vocabulary ----------------------------------------------------------------------------


@cache
def default_registry():
    import pint

    return pint.UnitRegistry()


IN_DEFAULT = {  # our name: the same unit in pint's own vocabulary, where it is called otherwise
    "thou": "thou", "standard_gravity": "standard_gravity", "kilogram_force": "force_kilogram",
    "ounce_force": "force_ounce", "pound_force": "force_pound", "degree_celsius": "degC",
    "degree_fahrenheit": "degF", "pound_per_square_inch": "psi",
    "kilopound_per_square_inch": "kip_per_square_inch", "revolution_per_minute": "rpm",
    "newton_metre": "newton*metre", "newton_centimetre": "newton*centimetre",
    "newton_millimetre": "newton*millimetre", "kilonewton_metre": "kilonewton*metre",
}  # fmt: skip
NAMES = sorted(set(spellings().values()))
OFFSETS = ("degree_celsius", "degree_fahrenheit")


def kind_and_spelling(name):
    """Give the kind that a unit is read as, and one spelling that is read."""
    for spelling, full in spellings().items():
        if full != name:
            continue
        for kind in KINDS:
            try:
                parse(f"1 {spelling}", kind)
            except UnitMistake:
                continue
            if (kind, spelling) != ("acceleration", "g"):
                return kind, spelling
    raise AssertionError(f"no kind has the unit {name}")


@pytest.mark.parametrize("name", NAMES)
def test_unit_agrees_with_pints_default_vocabulary(name):
    kind, spelling = kind_and_spelling(name)
    theirs = default_registry().Quantity(2.5, IN_DEFAULT.get(name, name)).to_base_units()
    assert parse(f"2.5 {spelling}", kind) == pytest.approx(float(theirs.magnitude), rel=RELATIVE)


@pytest.mark.parametrize("name", NAMES)
def test_unit_round_trip(name):
    kind, spelling = kind_and_spelling(name)
    for number in (0.001, 1.0, 7.3, 12345.0):
        back = convert(parse(f"{number} {spelling}", kind), kind, spelling)
        room = 1e-12 if name in OFFSETS else 0.0  # the zero point is 273 away
        assert back == pytest.approx(number, rel=RELATIVE, abs=room)


def test_every_spelling_of_a_unit_means_the_same():
    for spelling, name in spellings().items():
        kind, first = kind_and_spelling(name)
        assert parse(f"3 {spelling}", kind) == parse(f"3 {first}", kind), spelling


def test_no_spelling_stands_for_two_units():
    seen = []
    for line in _lines():
        if "=" in line and not line.startswith("#"):
            name, _, *others = (part.strip() for part in line.split("="))
            seen += {name, *others} - {"_"}
    assert len(seen) == len(set(seen))


# --- kinds and display -------------------------------------------------------------------------


@pytest.mark.parametrize("kind", KINDS)
def test_kind_is_consistent(kind):
    known = KINDS[kind]
    assert kind_of_unit(known.si) == kind
    assert convert(1.7, kind, known.si) == pytest.approx(1.7, rel=RELATIVE)
    assert math.isfinite(parse(known.example, kind))
    for unit in (known.metric, known.inch):
        assert math.isfinite(convert(1.7, kind, unit))
    for steps in (known.metric_steps, known.inch_steps):
        assert [least for least, _ in steps] == sorted(least for least, _ in steps)
        for _, unit in steps:
            assert convert(1.7, kind, unit) > 0


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("system", ["metric", "inch"])
def test_shown_text_reads_back(kind, system):
    zero = 273.15 if kind == "temperature" else 0.0
    room = 6e-7 if zero else 0.0  # half of the ninth digit of some 300 degrees
    for power in range(-6, 10):
        value = zero + 3.14159 * 10.0**power
        text = show(value, kind, system, digits=9)
        assert parse(text, kind) == pytest.approx(value, rel=5.1e-9, abs=room)
        digits = text.split()[0].partition("e")[0]
        assert "." not in digits or digits[-1] not in "0."


SHOWN = (
    (0.006, "length", "metric", "6 mm", "6 mm"),
    (0.00635, "length", "inch", "0.25 in", "0.25 in (6.35 mm)"),
    (31300.0, "force", "metric", "31.3 kN", "31.3 kN"),
    (9990.0, "force", "metric", "9990 N", "9990 N"),
    (9999.6, "force", "metric", "10 kN", "10 kN"),
    (-31300.0, "force", "metric", "-31.3 kN", "-31.3 kN"),
    (27.1163, "torque", "metric", "27.1 N*m", "27.1 N*m (20 lbf*ft)"),
    (27.1163, "torque", "inch", "20 lbf*ft", "20 lbf*ft (27.1 N*m)"),
    (120e6, "stress", "metric", "120 MPa", "120 MPa"),
    (120e6, "stress", "inch", "17.4 ksi", "17.4 ksi (120 MPa)"),
    (205e9, "stress", "metric", "205 GPa", "205 GPa"),
    (1e-7, "second_moment", "metric", "100000 mm^4", "100000 mm^4"),
    (0.0, "length", "metric", "0 mm", "0 mm"),
    (-0.0, "length", "metric", "0 mm", "0 mm"),
    (80.0, "current", "inch", "80 A", "80 A"),
    (0.05, "ratio", "metric", "0.05", "0.05"),
    (333.15, "temperature", "inch", "140 degF", "140 degF (60 degC)"),
    (math.inf, "current", "metric", "inf A", "inf A"),
)


@pytest.mark.parametrize(("value", "kind", "system", "one", "both"), SHOWN)
def test_shows(value, kind, system, one, both):
    assert show(value, kind, system) == one
    assert show_both(value, kind, system) == both


def test_unit_of_another_kind_cannot_be_converted_to():
    with pytest.raises(UnitMistake, match="is a force; expected a length"):
        convert(1.0, "length", "N")
    with pytest.raises(UnitMistake, match="is not a unit"):
        convert(1.0, "length", "mm 2")


def test_unit_texts_without_a_kind():
    assert [kind_of_unit(text) for text in ("1/m", "N*m^2", "rev/s", "", "furlong")] == [""] * 5
    assert kind_of_unit("rad/(s*V)") == "speed_constant"
    assert kind_of_unit("m**3") == "section_modulus"


def test_system_follows_the_majority_of_lengths():
    assert system_of(["1/4 in", "3'", "6 mm"]) == "inch"
    assert system_of(["1/4 in", "6 mm", "20 lbf*ft", "30 psi"]) == "metric"
    assert system_of(["20 lbf*ft", "nonsense", "", "4 x M6"]) == "metric"
    assert system_of([]) == "metric"


# --- properties --------------------------------------------------------------------------------

NUMBERS = st.sampled_from(
    ["6", "6", "-2.5", "1/4", "1-3/8", "1e3", "1e999", "0/0", "9" * 40, "--", ".", ""]
)
NAMES_AND_MARKS = st.sampled_from(
    [
        *spellings(),
        "C",
        '"',
        "'",
        "°",
        "²",
        "·",
        "*",
        "/",
        "-",
        "+",
        " ",
        "^",
        "(",
        ")",
        ",",
        "**",
        "3",
        "0",
    ]
)
UNIT_LIKE = st.builds(
    lambda number, rest: number + " " + "".join(rest),
    NUMBERS,
    st.lists(NAMES_AND_MARKS, max_size=12),
)


@settings(max_examples=400, deadline=None)
@given(text=st.one_of(st.text(max_size=250), UNIT_LIKE), kind=st.sampled_from(sorted(KINDS)))
def test_any_text_is_read_or_refused_with_a_readable_suggestion(text, kind):
    mistake = None
    try:
        assert math.isfinite(parse(text, kind))
    except UnitMistake as refused:
        mistake = refused
    if mistake:
        assert len(str(mistake).splitlines()) == 1
        for offer in mistake.suggestion[1:-1].split('" or "'):
            assert math.isfinite(parse(offer, kind))


@settings(max_examples=200, deadline=None)
@given(text=st.one_of(st.text(max_size=250), UNIT_LIKE))
def test_any_unit_text_is_converted_or_refused(text):
    assert system_of([text]) in ("metric", "inch")
    assert isinstance(kind_of_unit(text), str)
    with contextlib.suppress(UnitMistake):  # any other exception fails the test
        assert math.isfinite(convert(1.0, "force", text))


@given(st.floats(min_value=1e-4, max_value=1e4))
def test_millimetre_and_inch_text_of_one_length_agree(inches):
    metric, inch = parse(f"{inches * 25.4!r} mm", "length"), parse(f"{inches!r} in", "length")
    assert metric == pytest.approx(inch, rel=1e-12)


@given(st.integers(0, 40), st.integers(0, 63))
def test_fraction_and_decimal_agree(whole, over):
    mixed = parse(f"{whole}-{over}/64 in", "length")
    assert mixed == pytest.approx(parse(f"{whole + over / 64!r} in", "length"), rel=1e-12)


@given(st.floats(min_value=-1e6, max_value=1e6), st.integers(1, 6))
def test_shown_digits_are_right_to_half_the_last(value, digits):
    value = value if abs(value) > 1e-6 else 0.0
    back = parse(show(value, "force", digits=digits), "force")
    assert abs(back - value) <= 0.5000001 * abs(value) * 10.0 ** (1 - digits)


# --- cost --------------------------------------------------------------------------------------


def test_importing_units_does_not_import_pint():
    source = Path(units.__file__).parents[1]
    code = (
        f"import sys; sys.path.insert(0, {str(source)!r}); import mountlimit.units;"
        "print('pint' in sys.modules, 'numpy' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["False", "False"]


def test_registry_is_quick_to_build():
    import pint

    spent = []
    for _ in range(5):
        start = time.process_time()
        pint.UnitRegistry(None).load_definitions(_lines())
        spent.append(time.process_time() - start)
    assert min(spent) < 0.030


def test_worst_texts_are_refused_quickly():
    worst = [
        "1 " * 100,
        "m*" * 100,
        "1-" * 100,
        "1/" * 100,
        " " * 200,
        "'" * 200,
        "1 m " * 50,
        "a" * 200,
    ]
    start = time.process_time()
    for text in worst:
        with pytest.raises(UnitMistake):
            parse(text, "force")
    assert time.process_time() - start < 1.0
