"""Units a document names: lists, ranges, blanks, serials; nothing that is none."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.library.types import Page, PageStatus, TableRow
from assistant.rules.patterns import can_match, pattern_mistake
from ingest.applies import proposals
from ingest.models import models_in


def _page(text: str, number: int = 1) -> Page:
    return Page(number, str(number), PageStatus.TEXT, text)


@pytest.mark.parametrize(
    ("text", "models"),
    [
        ("VEH-O26, VEH-O35", ("VEH-O26", "VEH-O35")),
        ("VEH-O26 with VEH-W26", ("VEH-O26", "VEH-W26")),
        ("VEH-O26/35/50", ("VEH-O26", "VEH-O35", "VEH-O50")),
        ("SKO-L25/35R", ("SKO-L25R", "SKO-L35R")),
        ("KX36A-1 / -2", ("KX36A-1", "KX36A-2")),
        ("VEH-O26*", ("VEH-O26*",)),
        ("VEH-Oxx", ("VEH-O??",)),
        ("KX-(24,36)A", ("KX-(24,36)A",)),
        ("R-32", ()),
        ("E4 and later", ()),
        ("Single phase 230 V, 50 Hz", ()),
        ("Safety before any work", ()),
    ],
)
def test_models_are_read_as_makers_write_them(
    text: str, models: tuple[str, ...]
) -> None:
    assert models_in(text, whole=True) == models


def test_a_range_spells_every_size_in_it_and_no_other() -> None:
    one, other = models_in("VET-O/VEB-O 42–60", whole=True)

    fitting = [n for n in range(30, 80) if can_match(one, f"VET-O{n}")]
    assert fitting == list(range(42, 61))
    assert can_match(other, "VEB-O42")
    assert not can_match(other, "VET-O42")


def test_a_name_that_is_not_read_to_its_end_is_none() -> None:
    assert models_in("KX24{6}A", whole=True) == ()


@given(st.text(alphabet="VEHO-/ 0123456789x*(),andto", max_size=40))
def test_whatever_is_read_is_a_pattern_that_can_be_stored(text: str) -> None:
    for model in models_in(text):
        assert pattern_mistake(model) is None
        assert can_match(model, model.replace("(", "").split(",")[0]) or "(" in model


@pytest.mark.parametrize(
    ("text", "models", "role"),
    [
        ("Applicable models: VEH-O26, VEH-O35", ("VEH-O26", "VEH-O35"), None),
        ("Outdoor units: SKO-L25R, SKO-L35R", ("SKO-L25R", "SKO-L35R"), "outdoor"),
        ("For: Lomvi outdoor units SKO-L25R. Issued 2023", ("SKO-L25R",), "outdoor"),
        ("Models\nVEH-O26 with VEH-W26\nDocument V-1", ("VEH-O26", "VEH-W26"), None),
        ("This manual covers models KX-24, not KX-30.", ("KX-24",), None),
    ],
)
def test_a_cover_names_its_units(
    text: str, models: tuple[str, ...], role: str | None
) -> None:
    (found,) = proposals([_page(text)], ())

    assert (found.scope.models, found.scope.unit_role) == (models, role)
    assert found.page == 1
    assert found.quote


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("serial no. 2231-00000 and later", "2231-00000", None),
        ("From serial week 2230 another board is fitted", "2230", None),
        ("Serial numbers 2130 to 2229", "2130", "2229"),
        ("up to serial 2229", None, "2229"),
        ("serial no. 2229 and earlier", None, "2229"),
    ],
)
def test_a_run_of_serials_is_read_with_its_ends(
    text: str, first: str | None, last: str | None
) -> None:
    (found,) = proposals([_page(text)], ())

    assert found.scope.serial is not None
    assert (found.scope.serial.first, found.scope.serial.last) == (first, last)


@pytest.mark.parametrize(
    "text",
    [
        "serial no. 2260-00000 and later",  # there is no week 60
        "The model is good. Models may vary.",
        "Spare models of the remote: see page 4",
        "Accessories: KX-24",
    ],
)
def test_what_is_no_statement_about_units_proposes_nothing(text: str) -> None:
    assert proposals([_page(text)], ()) == ()


def test_statements_deep_in_a_document_are_not_about_all_of_it() -> None:
    pages = [_page("Cover"), _page("", 2), _page("", 3), _page("Models: KX-24", 4)]

    assert proposals(pages, ()) == ()


def test_a_column_of_models_counts_in_front_or_under_applicable() -> None:
    front = TableRow(2, 1, 1, ("KX-24", "2.4 kW"), ("Model", "Capacity"))
    deep = TableRow(9, 1, 1, ("KX-36", "3.6 kW"), ("Model", "Capacity"))
    named = TableRow(9, 2, 1, ("KX-48", "board 3"), ("Applicable model", "Part"))

    found = proposals([_page("Cover")], [front, deep, named])

    assert [each.scope.models for each in found] == [("KX-24",), ("KX-48",)]
    assert [each.page for each in found] == [2, 9]
