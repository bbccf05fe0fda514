"""Forms give the facts that the same words typed would give, or say what is wrong."""

from __future__ import annotations

from dataclasses import replace

import pytest

from assistant.checks.kinds import MeterRange
from assistant.facts import ContextFact, ReadingFact, RoleFact, UnitFact
from assistant.language.understand import understand
from assistant.language.vocabulary import Vocabulary
from assistant.meters import MeterBook
from tests.desk_driver import START
from tui.desk.forms import (
    ReadingFields,
    UnitFields,
    WrongFieldsError,
    quantity,
    reading_facts,
    unit_facts,
)

WORDS = Vocabulary(sensors=(("discharge", ("TH3",)), ("outdoor", ("TH1",))))


def reading(fields: ReadingFields) -> ReadingFact:
    fact = reading_facts(fields, WORDS)[0][0]
    assert isinstance(fact, ReadingFact)
    return fact


@pytest.mark.parametrize(
    ("of", "value", "typed"),
    [
        ("TH3", "9 kohm", "TH3 reads 9 kohm"),
        ("discharge", "12.4 kohm", "discharge sensor reads 12.4 kohm"),
        ("supply", "231 V", "supply is 231 V"),
        ("bus", "18 V", "bus is 18 V"),
        ("suction pressure", "8 bar", "suction pressure is 8 bar"),
    ],
)
def test_a_form_gives_the_reading_that_typing_gives(
    of: str, value: str, typed: str
) -> None:
    said = understand(typed, now=START, vocabulary=WORDS).facts[0]
    assert isinstance(said, ReadingFact)
    assert said.value is not None

    entered = reading(ReadingFields(of=of, value=value))

    assert entered.value is not None
    assert (entered.of, entered.value.unit) == (said.of, said.value.unit)
    assert entered.value.value == pytest.approx(said.value.value)
    assert entered.origin == "form"


def test_what_a_verdict_needs_comes_with_the_reading() -> None:
    fields = ReadingFields(
        of="TH3",
        value="9 kohm",
        temperature="30 C",
        meter="0.5 % + 2",
        power="off",
        unplugged="yes",
    )

    facts, words = reading_facts(fields, WORDS)

    fact, apart = facts
    assert isinstance(fact, ReadingFact)
    assert fact.at_temperature is not None
    assert fact.at_temperature.value == pytest.approx(303.15)
    assert fact.power_state == "off"
    assert fact.meter is not None
    assert (fact.meter.percent, fact.meter.digits) == (0.5, 2)
    # A four-digit meter shows 9.000 kohm: its last digit is 1 ohm.
    assert fact.meter.resolution.value == pytest.approx(1.0)
    assert isinstance(apart, ContextFact)
    assert (apart.name, apart.value) == ("sensor unplugged", True)
    assert words == "TH3 9 kohm, at 30 C at the sensor, power off, unplugged, " + (
        "meter 0.5 % + 2"
    )


def test_an_open_line_is_no_number() -> None:
    fact = reading(ReadingFields(of="TH3", value="OL"))

    assert fact.open_line
    assert fact.value is None


@pytest.mark.parametrize(
    ("fields", "field", "reason"),
    [
        (ReadingFields(of="TH3", value="9"), "value", "no unit"),
        (ReadingFields(of="TH3", value="nine"), "value", "not a quantity"),
        (ReadingFields(of="TH3", value=""), "value", "with its unit"),
        (ReadingFields(of="", value="9 kohm"), "of", "what was measured"),
        (ReadingFields(of="the weather", value="9 kohm"), "of", "TH1, TH3"),
        (
            ReadingFields(of="TH3", value="9 kohm", temperature="9 ohm"),
            "temperature",
            "no temperature",
        ),
        (ReadingFields(of="TH3", value="9 kohm", meter="good"), "meter", "accuracy"),
        (ReadingFields(of="TH3", value="9 kohm", meter="-1"), "meter", "below zero"),
    ],
)
def test_a_wrong_entry_is_told_at_its_field(
    fields: ReadingFields, field: str, reason: str
) -> None:
    with pytest.raises(WrongFieldsError) as caught:
        reading_facts(fields, WORDS)

    assert list(caught.value.fields) == [field]
    assert reason in caught.value.fields[field]


def test_every_wrong_field_is_told_at_once() -> None:
    with pytest.raises(WrongFieldsError) as caught:
        reading_facts(ReadingFields(of="?", value="?", temperature="?"), WORDS)

    assert set(caught.value.fields) == {"of", "value", "temperature"}


def test_a_unit_form_gives_plate_and_role() -> None:
    fields = UnitFields(outdoor="KX-24", more="board=orange", role="technician")

    (unit, role), _ = unit_facts(fields)

    assert isinstance(unit, UnitFact)
    assert (unit.plate.outdoor_model, unit.plate.board_mark) == ("KX-24", "orange")
    assert isinstance(role, RoleFact)
    assert role.role == "technician"


def test_an_unknown_plate_item_is_told() -> None:
    with pytest.raises(WrongFieldsError, match="not a nameplate item"):
        unit_facts(UnitFields(outdoor="KX-24", more="paint=red"))
    with pytest.raises(WrongFieldsError, match="write the model"):
        unit_facts(UnitFields())


def test_a_saved_meter_is_taken_by_its_name_whatever_its_case() -> None:
    figures = MeterRange(percent=0.5, digits=2, resolution=quantity("0.1 V"))
    book = MeterBook().saving("Blue one", figures)
    fields = ReadingFields(of="supply", value="228 V", meter="blue  ONE")

    (reading,), _ = reading_facts(fields, WORDS, book)

    assert isinstance(reading, ReadingFact)
    assert reading.meter == book.find("Blue one")
    with pytest.raises(WrongFieldsError) as caught:
        reading_facts(replace(fields, meter="red one"), WORDS, book)
    assert "no saved meter and no accuracy" in caught.value.fields["meter"]
