"""Quantities are shown in a person's unit and read back as the same."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.units.parse import format_quantity, parse_quantity
from assistant.units.quantity import CANONICAL, Quantity


@pytest.mark.parametrize(
    ("value", "unit", "like", "text"),
    [
        (12400.0, "ohm", None, "12.4 kΩ"),
        (9999.6, "ohm", None, "10.0 kΩ"),
        (250e3, "ohm", None, "250 kΩ"),
        (3.2e6, "ohm", None, "3.20 MΩ"),
        (400.0, "ohm", "15 kohm", "0.400 kΩ"),
        (0.0, "ohm", None, "0 Ω"),
        (298.15, "K", None, "25.0 °C"),
        (298.15, "K", "70 F", "77.0 °F"),
        (298.15, "K", "degrees F", "77.0 °F"),
        (273.14, "K", None, "0.0 °C"),
        (268.15, "K", None, "-5.0 °C"),
        (298.15, "K", "15 kohm", "25.0 °C"),
        (5.0, "dK", None, "5.0 K difference"),
        (5.0, "dK", "70 F", "9.0 °F difference"),
        (8.0, "s", None, "8 s"),
        (0.5, "s", None, "0.500 s"),
        (2.5, "s", None, "2.5 s"),
        (200.0, "s", None, "3 min 20 s"),
        (7200.0, "s", "120 min", "2 h"),
        (90061.0, "s", None, "1 d 1 h 1 min 1 s"),
        (325.3, "V", None, "325 V"),
        (0.1, "1", None, "10.0 %"),
        (45e-6, "F", None, "45.0 µF"),
    ],
)
def test_a_quantity_is_shown_as_a_person_writes_it(
    value: float, unit: str, like: str | None, text: str
) -> None:
    assert format_quantity(Quantity(value=value, unit=unit), like=like) == text


@given(
    st.floats(min_value=0.01, max_value=9e5),
    st.sampled_from(sorted(CANONICAL.values())),
    st.sampled_from([None, "°F", "k", "psig", "min", "oz", "nonsense"]),
)
def test_what_is_shown_is_read_back(value: float, unit: str, like: str | None) -> None:
    text = format_quantity(Quantity(value=value, unit=unit), like=like, digits=5)

    found = parse_quantity(text)

    slack = 0.51 if unit == "s" else 0.005
    assert found.unit == unit
    assert found.value == pytest.approx(value, rel=1e-3, abs=slack)
