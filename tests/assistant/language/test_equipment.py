"""What is on the board and in the unit, as people say it."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from assistant.facts import UnitFact
from assistant.language.understand import understand
from assistant.language.vocabulary import Pending, Vocabulary
from assistant.rules.applicability import Plate

NOW = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)


def told(
    text: str, pending: Pending | None = None, words: Vocabulary | None = None
) -> list[Plate]:
    found = understand(text, now=NOW, pending=pending, vocabulary=words or Vocabulary())
    return [fact.plate for fact in found.facts if isinstance(fact, UnitFact)]


@pytest.mark.parametrize(
    ("text", "plate"),
    [
        ("SW3-2 is on", {"switch_settings": "SW3-2 on"}),
        ("dip switch 4 is off", {"switch_settings": "DIP4 off"}),
        ("jumper j5 is cut", {"switch_settings": "JP5 cut"}),
        ("board part number 17B-4021-C", {"board_pn": "17B-4021-C"}),
        ("p/n on the board is QM2231", {"board_pn": "QM2231"}),
        ("firmware v2.10", {"firmware": "2.10"}),
        ("software version 1.4b", {"firmware": "1.4b"}),
        ("print on the chip says V2", {"board_mark": "v2"}),
        ("it has the drain pump kit", {"fitted": "drain pump"}),
        ("wind baffle is fitted", {"fitted": "wind baffle"}),
        ("no drain pump on this one", {"not_fitted": "drain pump"}),
        ("its the 24k btu one", {"capacity_class": "24"}),
        ("18000 btu", {"capacity_class": "18"}),
        # A ton of refrigeration is 12,000 Btu/h (NIST SP 811, B.8; from memory).
        ("its a 3 ton unit", {"capacity_class": "36"}),
        ("2.5 ton system", {"capacity_class": "30"}),
        ("european model", {"market": "european"}),
        ("built in march 2023", {"built": "2023-03"}),
        ("manufactured 04/2023", {"built": "2023-04"}),
        ("made in 2021", {"built": "2021"}),
        ("s/n QX 0012345", {"serial": "QX0012345"}),
        ("date code 2314", {"serial": "2314"}),
        ("serial number 23C0042", {"serial": "23C0042"}),
    ],
)
def test_it_is_taken_as_a_plate_item(text: str, plate: dict[str, str]) -> None:
    assert told(text) == [Plate.model_validate(plate)]


@pytest.mark.parametrize(
    "text",
    [
        "does it have a drain pump?",
        "drain pump replaced yesterday",
        "changed sw3-2 to on",
        "the fan is on",
        "pressure switch is open",
        "power switch off",
        "24k on the sensor",
        "made in week 60 of 23",
        "manufactured 14/2023",
    ],
)
def test_what_is_no_plate_item_is_not_taken_for_one(text: str) -> None:
    assert told(text) == []


def test_a_series_and_an_option_of_the_packs_are_known_by_name() -> None:
    words = Vocabulary(series=("Heron",), fittings=("gull guard",))

    assert told("its the heron one with a gull guard", words=words) == [
        Plate(series="heron"),
        Plate(fitted="gull guard"),
    ]
    assert told("its the heron one with a gull guard") == []


@pytest.mark.parametrize(
    ("slot", "options", "text", "plate"),
    [
        ("unit:board_mark", (), "says V2", {"board_mark": "v2"}),
        ("unit:board_pn", (), "17b-4021", {"board_pn": "17B-4021"}),
        ("unit:firmware", (), "2.10", {"firmware": "2.10"}),
        ("unit:switch_settings", ("SW3-2 on", "SW3-2 off"), "its off",
         {"switch_settings": "SW3-2 off"}),
        ("unit:fitted", ("drain pump", "no drain pump"), "nope",
         {"not_fitted": "drain pump"}),
        ("unit:fitted", ("drain pump", "no drain pump"), "yep",
         {"fitted": "drain pump"}),
        ("unit:built", (), "made in 2021", {"built": "2021"}),
    ],
)  # fmt: skip
def test_a_bare_answer_is_read_as_the_item_asked_for(
    slot: str, options: tuple[str, ...], text: str, plate: dict[str, str]
) -> None:
    pending = Pending(slot=slot, options=options)

    assert told(text, pending) == [Plate.model_validate(plate)]
