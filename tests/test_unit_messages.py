"""The sentence a user gets for a text that is not the quantity asked for."""

import math

import pytest

from mountlimit.units import KINDS, UnitMistake, parse, parse_value

# text, kind asked for, what is wrong, what is offered
BAD = (
    ("6", "length", "has no unit", '"6 mm"'),
    ("1/4", "length", "has no unit", '"1/4 in"'),
    ("", "length", "is empty", '"6 mm"'),
    ("   ", "length", "is empty", '"6 mm"'),
    ("mm", "length", "has no number", '"6 mm"'),
    ("six mm", "length", "has no number", '"6 mm"'),
    ("mm 6", "length", "has no number", '"6 mm"'),
    ("6,5 mm", "length", "has a decimal comma", '"6.5 mm"'),
    ("10,000 N", "force", "has a comma in the number", '"10000 N" or "10.000 N"'),
    ("1,234.5 N", "force", "has a comma in the number", '"1234.5 N"'),
    ("10 000 N", "force", "has a space inside the number", '"10000 N"'),
    ("6 MM", "length", "has an unknown unit 'MM'", '"6 mm"'),
    ("6 mmm", "length", "has an unknown unit 'mmm'", '"6 mm"'),
    ("5 nm", "torque", "has an unknown unit 'nm'", '"5 Nm"'),
    ("5 nm", "length", "has an unknown unit 'nm'", '"5 mm"'),
    ("120 mpa", "stress", "has an unknown unit 'mpa'", '"120 MPa"'),
    ("6 mm thick", "length", "has an unknown unit 'thick'", '"6 mm"'),
    ("5 ft 3", "length", "has no unit after '3'", '"5 ft 3 in"'),
    ("5 ft-3 in", "length", "has a '-' between its parts", '"5 ft 3 in"'),
    ("1 - 3/8 in", "length", "has a '-' between its parts", '"1 3/8 in"'),
    ("5 kg", "force", "is a mass", '"5 kgf"'),
    ("2 lb", "force", "is a mass", '"2 lbf"'),
    ("5 lbf", "mass", "is a force", '"5 lb"'),
    ("5 N", "mass", "is a force", '"5.5 kg"'),
    ("20 lb*ft", "torque", "takes 'lb' as a mass", '"20 lbf*ft"'),
    ("20 ft-lb", "torque", "takes 'lb' as a mass", '"20 lbf*ft"'),
    ("20 lb-in", "torque", "takes 'lb' as a mass", '"20 lbf*in"'),
    ("20 ftlbs", "torque", "has an unknown unit 'ftlbs'", '"20 lbf*ft"'),
    ("-20 ft-lb", "torque", "takes 'lb' as a mass", '"-20 lbf*ft"'),
    ("40 oz in", "torque", "takes 'oz' as a mass", '"40 ozf*in"'),
    ("5 kg cm", "torque", "takes 'kg' as a mass", '"5 kgf*cm"'),
    ("5 J", "torque", "is an energy", '"12 N*m"'),
    ("100 lb/in", "stiffness", "is a mass per length", '"100 lbf/in"'),
    ("100 kg/cm2", "stress", "takes 'kg' as a mass", '"100 kgf/cm^2"'),
    ("79 KV", "speed_constant", "has an unknown unit 'KV'", '"79 rpm/V"'),
    ("79 rpm/V", "torque_constant", "is a speed constant", '"0.12 N*m/A"'),
    ("5 deg", "ratio", "is an angle", '"5 %"'),
    ("5 N*m", "rotational_stiffness", "is a torque", '"900 N*m/rad"'),
    ("3000 Hz", "rotational_speed", "is a frequency", '"3000 rpm"'),
    ("3 g", "length", "is a mass", '"6 mm"'),
    ("--5 mm", "length", "cannot be read from '-5 mm' on", '"6 mm"'),
    ("1/0 in", "length", "divides by zero", '"6 mm"'),
    ("0/0 in", "length", "divides by zero", '"6 mm"'),
    ("1 3/0 in", "length", "divides by zero", '"6 mm"'),
    ("1e999 mm", "length", "must be a finite number", '"6 mm"'),
    ("1e-999 mm", "length", "is too small a number", '"6 mm"'),
    ("nan mm", "length", "must be a finite number", '"6 mm"'),
    ("-inf A", "current", "must be a finite number", '"80 A"'),
    ("1e300 GPa", "stress", "must be a finite number", '"120 MPa"'),
    (
        "1111111111111111111111111111111 mm",
        "length",
        "has a number of more than 30 characters",
        '"6 mm"',
    ),
    ("6 mm +", "length", "ends in '+'", '"6 mm"'),
    ("6 mm +/- 1 mm", "length", "cannot be read from '/- 1 mm' on", '"6 mm"'),
    ("-1 in + 2 MM", "length", "has an unknown unit 'MM'", '"-1 in + 2 mm"'),
    ("5 kg/m*s", "density", "has a product after '/' (kg/m*s)", '"2700 kg/m^3"'),
    ("-300 degC", "temperature", "is below absolute zero", '"60 degC"'),
    ("20 degC 5 degC", "temperature", "has more than one number", '"60 degC"'),
    ("5 W/degC", "power", "multiplies a temperature with a zero point of its own", '"1500 W"'),
    ("1 % 2 %", "ratio", "has more than one number", '"5 %"'),
    ("6 мм", "length", "cannot be read from 'мм' on", '"6 mm"'),
    ("6 mm\n7", "length", "cannot be read from '\\n7' on", '"6 mm"'),
    ('"6 mm"', "length", "has no number", '"6 mm"'),
    ("4 x M6", "length", "has an unknown unit 'x'", '"4 mm"'),
    ("5 J0", "energy", "has an exponent of zero", '"20 J"'),
    ("5 GPa^9*GPa^9", "stress", "multiplies too many units", '"120 MPa"'),
    ("3 ft²", "length", "is an area", '"6 mm"'),
)


def message_of(text, kind):
    with pytest.raises(UnitMistake) as caught:
        parse(text, kind)
    return str(caught.value)


def test_whole_messages():
    assert message_of("6", "length") == "'6' has no unit; expected a length, for example \"6 mm\""
    assert (
        message_of("5 kg", "force") == "'5 kg' is a mass; expected a force, for example \"5 kgf\""
    )
    assert message_of("5 J", "angle") == (
        "'5 J' is an energy; expected an angle, for example \"0.5 deg\""
    )


@pytest.mark.parametrize(("text", "kind", "problem", "suggestion"), BAD)
def test_bad_text_gives_this_message(text, kind, problem, suggestion):
    with pytest.raises(UnitMistake) as caught:
        parse(text, kind)
    mistake = caught.value
    expected = KINDS[kind].label
    assert str(mistake) == f"{text!r} {problem}; expected {expected}, for example {suggestion}"
    assert (mistake.text, mistake.kind, mistake.problem) == (text, kind, problem)
    assert (mistake.expected, mistake.suggestion) == (expected, suggestion)


@pytest.mark.parametrize(("kind", "suggestion"), [(row[1], row[3]) for row in BAD])
def test_every_suggestion_can_be_read(kind, suggestion):
    for offer in suggestion[1:-1].split('" or "'):
        assert math.isfinite(parse(offer, kind))


def test_too_long_text_is_shortened_in_the_message():
    message = message_of("9" * 100_000 + " mm", "length")
    assert "has more than 200 characters" in message
    assert len(message) < 200


@pytest.mark.parametrize(("value", "read"), [(0.05, 0.05), (2, 2.0), ("5 %", 0.05), (0, 0.0)])
def test_plain_number_is_a_ratio(value, read):
    assert parse_value(value, "ratio") == pytest.approx(read, rel=1e-15)


@pytest.mark.parametrize(
    ("value", "kind", "found", "suggestion"),
    [
        (6, "length", "'6' has no unit", '"6 mm"'),
        (6.5, "force", "'6.5' has no unit", '"6.5 N"'),
        (True, "length", "'true' is not a quantity", '"6 mm"'),
        (True, "ratio", "'true' is not a quantity", '"5 %"'),
        (math.nan, "ratio", "'nan' must be a finite number", '"5 %"'),
        (math.inf, "force", "'inf' must be a finite number", '"800 N"'),
        ([6], "length", "'list' is not text with a unit", '"6 mm"'),
        (None, "ratio", "'NoneType' is not text with a unit", '"5 %"'),
        (10**400, "ratio", "'integer' is too large a number", '"5 %"'),
    ],
)
def test_other_values_are_mistakes(value, kind, found, suggestion):
    with pytest.raises(UnitMistake) as caught:
        parse_value(value, kind)
    expected = KINDS[kind].label
    assert str(caught.value) == f"{found}; expected {expected}, for example {suggestion}"
