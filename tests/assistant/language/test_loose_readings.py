"""Readings said loosely are read, or left open to be asked back; never guessed."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.facts import ReadingFact, TemperatureFact
from assistant.language.understand import understand
from assistant.units.quantity import Quantity

NOW = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)
PSI = 6894.757293168361


def told(text: str) -> dict[str, ReadingFact]:
    facts = understand(text, now=NOW).facts
    return {fact.of: fact for fact in facts if isinstance(fact, ReadingFact)}


def shown(values: tuple[Quantity, ...]) -> list[str]:
    return [value.text for value in values]


@pytest.mark.parametrize(
    "text", ["118 over 390 psi", "118 psi over 390 psi", "it is 390 over 118 psi"]
)
def test_two_gauges_with_a_unit_are_the_low_and_the_high_side(text: str) -> None:
    found = told(text)

    values = {of: fact.value.value for of, fact in found.items() if fact.value}
    assert values == {
        "suction pressure": pytest.approx(118 * PSI),
        "discharge pressure": pytest.approx(390 * PSI),
    }


def test_two_gauges_without_a_unit_stay_open_between_those_possible() -> None:
    found = told("gauges say 118 over 390")

    assert found["suction pressure"].value is None
    possible = shown(found["discharge pressure"].readings_possible)
    assert possible == ["390 psi", "390 kPa"]


@pytest.mark.parametrize(
    "text",
    [
        "it went over 300",
        "off for 3 over 4 hours",
        "230 over 208 V",
        "3 over 4",
        "118 over 118 psi",
    ],
)
def test_what_is_no_pair_of_gauges_is_not_read_as_one(text: str) -> None:
    assert "suction pressure" not in told(text)


@pytest.mark.parametrize(
    "text",
    [
        "bus is 300 and change",
        "300 and change on the bus",
        "bus 300 volts and change",
        "bus is 300-ish volts",
        "bus is 300 something",
        "three hundred and change on the bus",
    ],
)
def test_a_rough_figure_is_kept_as_rough_and_is_no_reading(text: str) -> None:
    fact = told(text)["bus"]

    assert fact.value is None
    assert fact.readings_possible == ()
    assert [near.value for near in fact.rough] == [300.0]


def test_a_rough_room_temperature_is_no_context() -> None:
    facts = understand("room is 70 and change", now=NOW).facts

    assert not any(isinstance(fact, TemperatureFact) for fact in facts)


@pytest.mark.parametrize(
    ("text", "kelvin"),
    [
        ("superheat is 10 K", 10.0),
        ("superheat is 18 F", 10.0),
        ("subcooling 9 degrees F", 5.0),
        ("subcooling is 5 C", 5.0),
    ],
)
def test_a_superheat_is_a_difference_and_no_temperature(
    text: str, kelvin: float
) -> None:
    (fact,) = told(text).values()

    assert fact.value is not None
    assert fact.value.unit == "dK"
    assert fact.value.value == pytest.approx(kelvin)


def test_a_superheat_without_a_scale_is_left_open() -> None:
    fact = told("superheat is 12")["superheat"]

    assert fact.value is None
    assert {value.unit for value in fact.readings_possible} == {"dK"}
    assert len(fact.readings_possible) == 2


def test_a_resistance_at_a_bare_temperature_does_not_guess_the_scale() -> None:
    fact = told("12.4k at 70")["resistance"]

    assert fact.value is not None
    assert fact.value.value == 12_400.0
    assert fact.at_temperature is None


@given(st.integers(10, 600), st.integers(10, 600))
def test_the_lower_of_a_pair_is_always_the_suction_side(a: int, b: int) -> None:
    found = told(f"{a} over {b} psi")

    if a == b:
        assert "suction pressure" not in found
        return
    low, high = found["suction pressure"].value, found["discharge pressure"].value
    assert low is not None
    assert high is not None
    assert low.value == pytest.approx(min(a, b) * PSI)
    assert high.value == pytest.approx(max(a, b) * PSI)
