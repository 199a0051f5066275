"""The sheet's data are as the schema in the package says; a wrong record is found out."""

from __future__ import annotations

import copy
import json
from functools import cache
from importlib.resources import files

import jsonschema
import pytest

from sheet.made import SAMPLE, data

SCHEMA = json.loads(
    files("mountlimit.sheet").joinpath("sheet.schema.json").read_text(encoding="utf-8")
)
CHECK = jsonschema.Draft202012Validator(SCHEMA)


def test_the_schema_is_one():
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize("name", SAMPLE)
def test_examples_are_as_the_schema_says(name):
    mistakes = [f"{m.json_path}: {m.message[:200]}" for m in CHECK.iter_errors(data(name))]
    assert not mistakes


@cache
def short():
    """A sound record with one section only: what is looked at below stands in it."""
    found = {**data(SAMPLE[0]), "sections": data(SAMPLE[0])["sections"][:1]}
    assert CHECK.is_valid(found)
    return found


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("schema",), "mountlimit-sheet-2"),
        (("result", "safe_current", "unit"), "mA"),
        (("result", "limits", 0, "safe"), 59.0),
        (("result", "limits", 0, "design_factor"), 0),
        (("result", "load_cases", 0, "at_fixings", "force", "value"), [1.0, 2.0]),
        (("result", "balance"), "small"),
        (("head", "date"), "2.1.2026"),
        (("sections", 0, "blocks", 0, "kind"), "paragraf"),
        (("sections", 0, "blocks", 0, "colour"), "red"),
        (("sections", 0, "blocks"), []),
    ],
)
def test_a_wrong_record_fails(path, value):
    wrong = copy.deepcopy(short())
    at = wrong
    for key in path[:-1]:
        at = at[key]
    at[path[-1]] = value
    assert not CHECK.is_valid(wrong)


@pytest.mark.parametrize("key", SCHEMA["$defs"]["result"]["required"])
def test_a_missing_part_of_the_result_fails(key):
    wrong = copy.copy(short())
    wrong["result"] = {k: v for k, v in wrong["result"].items() if k != key}
    assert not CHECK.is_valid(wrong)
