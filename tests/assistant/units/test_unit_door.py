"""Rare units come through the one door to the library."""

from __future__ import annotations

import pytest

from assistant.units.door import convert
from assistant.units.parse import parse_quantity


@pytest.mark.parametrize(
    ("value", "unit", "expected", "canonical"),
    # Definitions of the units.
    [
        (3.0, "hPa", 300.0, "PaG"),
        (1.0, "fortnight", 14 * 86400.0, "s"),
        (1.0, "yard", 0.9144, "m"),
        (5.0, "delta_degree_Fahrenheit", 25 / 9, "dK"),
        (3.0, "gigaohm", 3e9, "ohm"),
    ],
)
def test_a_unit_of_the_library_is_converted(
    value: float, unit: str, expected: float, canonical: str
) -> None:
    found = convert(value, unit)

    assert found is not None
    assert found[0] == pytest.approx(expected)
    assert found[1] == canonical


@pytest.mark.parametrize(
    "unit", ["furry", "pi", "dozen", "liter", "joule", "x+y", "__import__", "1/s", "e"]
)
def test_what_the_core_does_not_compute_with_is_not_let_in(unit: str) -> None:
    assert convert(1.0, unit) is None


def test_the_reader_falls_back_to_the_door() -> None:
    assert parse_quantity("1.2 hPa").value == pytest.approx(120.0)
