"""The catalogue of published cases is whole, says the truth about itself, and stands in DEVELOPERS.md."""

from __future__ import annotations

import catalogue
import published_cases as cases
import pytest

import update_published_table


@pytest.fixture(scope="module")
def rows() -> tuple[catalogue.Row, ...]:
    return catalogue.rows()


def test_enough_cases() -> None:
    assert len(cases.CASES) >= 70
    assert not cases.CASES.keys() & cases.LEFT_OUT.keys()
    assert len(cases.CASES) + len(cases.LEFT_OUT) == 114


def test_every_case_is_run_in_the_file_of_one_source(rows) -> None:
    found = {case: {row.source for row in rows if case in row.ids} for case in cases.CASES}
    assert {case: files for case, files in found.items() if len(files) != 1} == {}


def test_every_test_compares_a_figure(rows) -> None:
    assert [row.name for row in rows if not row.notes] == []


@pytest.mark.parametrize("case", cases.CASES)
def test_case_runs_the_functions_it_proves(case: str, rows) -> None:
    called = frozenset().union(*(row.called for row in rows if case in row.ids))
    assert set(cases.CASES[case][2]) - called == set()


@pytest.mark.parametrize("case", cases.CASES)
def test_marks_agree(case: str, rows) -> None:
    """The list and the first words of the tests say the same of where a figure is from."""
    assert {row.mark for row in rows if case in row.ids} == {cases.CASES[case][1]}


def test_a_source_with_confirmed_figures_names_its_edition() -> None:
    """A year or an edition in the reference, so that it can be looked up."""
    for source in cases.KINDS:
        words = catalogue.reference(source)
        assert any(c.isdigit() for c in words), (source, words)


def test_table_for_developers_is_current() -> None:
    """``python tests/update_published_table.py`` writes it."""
    text = update_published_table.DEVELOPERS.read_text(encoding="utf-8")
    assert update_published_table.START in text
    assert update_published_table.stale(text) == []
