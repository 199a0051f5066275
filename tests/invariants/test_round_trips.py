"""What goes out and comes back in is the same: quantities, drive files, records, starter files."""

from __future__ import annotations

import json
import math
import tomllib
from pathlib import Path
from tempfile import TemporaryDirectory

import draw
import pytest
from click.testing import CliRunner
from hypothesis import given
from hypothesis import strategies as st
from invariant_kit import answer, depth, difference, drawn, file_of, looked, numbers
from other_units import UNITS

from conftest import toml_text
from mountlimit import limits, starter, units
from mountlimit.cli import main
from mountlimit.drivefile import fields_for, parse, rewritten
from mountlimit.mounts import FORMS
from mountlimit.resolve import resolve
from mountlimit.unit_kinds import KINDS

QUANTITIES = [k for k in KINDS if k != "ratio"]
sizes = st.floats(1e-6, 1e6)


@given(st.sampled_from(QUANTITIES), sizes, st.sampled_from(["metric", "inch"]), st.integers(2, 15))
@depth(ordinary=150, deep=1200)
def test_a_shown_quantity_reads_back(kind, value, system, digits):
    """As near as its digits say, in whatever unit it is shown."""
    text = units.show(value, kind, system, digits)
    back = units.parse(text, kind)
    zero = 300.0 if kind == "temperature" else 0.0  # digits are those of degrees
    step = 10.0 ** (1 - digits) * (abs(value) + zero)
    looked("quantities shown and read", abs(back - value) / step)
    assert abs(back - value) <= 0.5000001 * step, text


@given(st.sampled_from([(k, u) for k, us in UNITS.items() for u in us if u]), sizes)
@depth(ordinary=150, deep=1200)
def test_converted_and_read_back(unit, value):
    """To a unit and back, against factors of NIST SP 811 that stand in the tests."""
    kind, name = unit
    there = units.convert(value, kind, name)
    assert there == pytest.approx(value / UNITS[kind][name], rel=1e-12)
    back = units.parse(f"{there!r} {name}", kind)
    looked("units there and back", abs(back / value - 1))
    assert back == pytest.approx(value, rel=1e-12)


@given(numbers)
@depth(ordinary=6, deep=40)
def test_a_drive_rewritten_with_its_own_values_is_itself(number):
    """Every key set to what it is, by ``edited`` and by ``rewritten``: the same answer, to the last digit."""
    keys = drawn(number)
    file = file_of(keys)
    flat = {k: v for k, v in keys.items() if k in fields_for(keys["mount.form"])}
    plain = answer(file)
    by_edit = file.edited(**{k.replace(".", "__"): v for k, v in flat.items()})
    for other in (by_edit, rewritten(file, flat)):
        assert other.given == file.given
        off, where = difference(plain, answer(other))
        looked("rewritten with its own values", off)
        assert off == 0.0, where


@given(numbers)
@depth(ordinary=6, deep=40)
def test_a_value_changed_and_changed_back(number):
    """A key taken out and put back, another thickness and the old one: the drive of before."""
    file = file_of(drawn(number))
    thickness = file.given["mount.thickness"]
    there = file.edited(mount__thickness="9.7 mm", current__set="33 A")
    back = there.edited(mount__thickness=thickness, current__set=file.given["current.set"])
    assert dict(back.given) == dict(file.given)
    off, where = difference(answer(file), answer(back))
    looked("changed and changed back", off)
    assert off == 0.0, where


@given(numbers)
@depth(ordinary=1, deep=4)
def test_the_record_of_a_check_holds_its_limits(number):
    """``check --json`` read back: every limit as the search gave it, in amperes, infinity as none."""
    keys = drawn(number)
    with TemporaryDirectory() as folder:
        path = Path(folder) / "drive.toml"
        path.write_text(toml_text(draw.nested(keys)))
        answered = CliRunner().invoke(main, ["check", "--json", str(path)])
    assert answered.exit_code in (0, 1), answered.output
    record = json.loads(answered.output)
    written = {(x["check"], x["current"]): x for x in record["limits"]}
    found = limits.find(file_of(keys))
    for limit in found.limits:
        row = written[limit.check.name, limit.current_kind]
        gives = row["gives"] or {}
        for told, value in ((row["safe"]["value"], limit.safe), (gives.get("likely"), limit.gives)):
            if value is None or math.isinf(value):
                assert told is None
            else:
                looked("limits in the record", abs(told - value) / (value + 1e-9))
                assert told == pytest.approx(value, rel=1e-9)
    assert len(written) == len(found.limits)


@pytest.mark.parametrize("form", sorted(FORMS))
def test_a_starter_file_is_read_and_resolves(form):
    """What ``new FORM`` writes is TOML, is accepted, and says the form and keys it was asked for."""
    text = starter.text(form, "drive.toml")
    document = tomllib.loads(text)
    assert document["mount"]["form"] == form
    file = parse(text.encode(), "drive.toml")
    drive = resolve(file)
    assert drive.mount.form == form
    flat = {f"{s}.{k}": v for s, table in document.items() if isinstance(table, dict) for k, v in table.items()}  # fmt: skip
    assert set(flat) <= set(file.given)
    again = parse(toml_text(document).encode(), "again.toml")
    assert again.given == file.given
