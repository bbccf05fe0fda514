"""Waits, stop limits and tables of pins as drafts."""

from __future__ import annotations

import pytest

from tests.drafted import by_id, drafted

WAITS: dict[str, tuple[str, str | None, dict[str, str | bool]]] = {
    "After the supply is switched on nothing turns for 20 seconds.": (
        "start_delay",
        "power_on",
        {"usual": "20 seconds"},
    ),
    "After every stop the compressor stays off for at least 3 minutes.": (
        "minimum_off",
        "compressor_stopped",
        {"minimum": "3 minutes"},
    ),
    "The number of flashes appears 15 seconds after the compressor has stopped.": (
        "display_delay",
        "compressor_stopped",
        {"usual": "15 seconds"},
    ),
    "Leave it off for at least 60 seconds, counted from the moment LD1 goes dark.": (
        "power_off_hold",
        "lamp_dark",
        {"minimum": "60 seconds"},
    ),
    "A defrost ends after 10 minutes at the latest.": (
        "defrost",
        "defrost_started",
        {"give_up": "10 minutes"},
    ),
    "After a second reset the unit waits about 15 minutes.": (
        "reset_delay",
        "second_reset",
        {"usual": "15 minutes", "approx": True},
    ),
    "A sensor must be out of range for 10 seconds before it counts.": (
        "detection_time",
        None,
        {"minimum": "10 seconds"},
    ),
    "Supply off: wait 10 minutes, then measure the bus, less than 42 V DC.": (
        "capacitor_bleed",
        "power_off",
        {"usual": "10 minutes", "below": "42 V DC"},
    ),
    "Leave the supply off for 40 seconds after H4 has gone dark.": (
        "power_off_hold",
        "lamp_dark",
        {"usual": "40 seconds"},
    ),
}


@pytest.mark.parametrize("sentence", WAITS)
def test_a_wait_is_read_from_its_sentence(sentence: str) -> None:
    kind, trigger, times = WAITS[sentence]

    (row,) = drafted(sentence)

    said = {key: row.fields.get(key) for key in ("kind", "trigger", *times)}
    assert said == {"kind": kind, "trigger": trigger, **times}
    assert (row.quote, row.doubts) == (sentence, {})


def test_a_wait_whose_start_is_not_said_is_a_doubt() -> None:
    (row,) = drafted("The unit waits 10 minutes.")

    assert set(row.doubts) == {"trigger"}
    assert "trigger" not in row.fields


def test_a_figure_beside_a_wait_is_a_doubt() -> None:
    (row,) = drafted("After a stop the unit waits 10 minutes, then 4 more.")

    assert set(row.doubts) == {"figures"}


def test_a_charge_whose_voltage_is_not_said_is_a_doubt() -> None:
    (row,) = drafted("Supply off: wait 10 minutes, then measure the bus.")

    assert set(row.doubts) == {"below"}


def test_a_second_reset_takes_the_time_within_which_it_counts() -> None:
    (row,) = drafted(
        "Waits", (("After", "Wait"), [("second reset in 30 min", "20 min")])
    )

    assert (row.fields["within"], row.fields["usual"]) == ("30 min", "20 min")
    assert row.doubts == {}


@pytest.mark.parametrize(
    ("said", "trigger"),
    [("end of defrost", "defrost_ended"), ("supply on", "power_on")],
)
def test_what_starts_a_wait_of_a_table_is_told_apart(said: str, trigger: str) -> None:
    (row,) = drafted("Waits", (("After", "Wait"), [(said, "60 s")]))

    assert row.fields["trigger"] == trigger


def test_two_things_that_may_start_a_wait_are_a_doubt() -> None:
    (row,) = drafted("Waits", (("After", "Wait"), [("stop or mode change", "3 min")]))

    assert set(row.doubts) == {"trigger"}


@pytest.mark.parametrize(
    "sentence",
    [
        "After a stop the unit waits 3 minutes, after a reset 4 minutes.",
        "After a stop the unit waits 3 to 5 minutes.",
    ],
)
def test_several_times_in_a_sentence_are_a_doubt(sentence: str) -> None:
    (row,) = drafted(sentence)

    assert "duration" in row.doubts
    assert not {"minimum", "usual", "give_up"} & set(row.fields)


@pytest.mark.parametrize(
    "sentence",
    [
        "Hold the button for 5 seconds after the supply is switched on.",
        "The lamp blinks slowly, 2 seconds lit and 2 seconds dark.",
        "The warranty runs from the day of delivery.",
    ],
)
def test_a_time_that_is_no_wait_is_not_drafted(sentence: str) -> None:
    assert drafted(sentence) == []


def test_a_wait_read_by_ocr_is_a_doubt() -> None:
    (row,) = drafted(
        "After every stop the compressor stays off for 3 minutes.", ocr=True
    )

    assert set(row.doubts) == {"ocr"}


def test_a_wait_that_takes_a_protection_out_is_a_doubt() -> None:
    (row,) = drafted(
        "After a stop bridge the pressure switch and the unit waits 3 minutes."
    )

    assert "step" in row.doubts


def test_a_table_of_waits_is_read_by_its_columns() -> None:
    rows = by_id(
        drafted(
            "Waits",
            (
                ("What starts it", "Least"),
                [("Supply switched on", "20 s"), ("Oil return", "see 5")],
            ),
        )
    )

    first, second = rows.values()
    assert (first.fields["trigger"], first.fields["minimum"]) == ("power_on", "20 s")
    assert set(second.doubts) == {"trigger", "duration"}


LOCKS = ("Function", "Locked out after")


def test_a_stop_limit_without_edge_and_reset_has_both_doubts() -> None:
    (row,) = drafted("Lockout", (LOCKS, [("High pressure", "6 in 60 minutes")]))

    assert set(row.doubts) == {"edge", "reset"}
    assert (row.fields["limit"], row.fields["window"]) == (6, "60 minutes")
    assert row.fields["event"] == "high pressure"


@pytest.mark.parametrize(
    ("says", "edge"),
    [
        ("A stop exactly at the edge still counts.", "counts"),
        ("A stop exactly at the edge no longer counts.", "does_not_count"),
    ],
)
def test_the_edge_rule_of_the_page_is_taken(says: str, edge: str) -> None:
    rows = drafted("Lockout", (LOCKS, [("High pressure", "6 in 60 minutes")]), says)

    assert rows[0].fields["edge"] == edge
    assert "edge" not in rows[0].doubts


def test_a_number_in_a_row_is_no_window() -> None:
    (row,) = drafted("Lockout", (LOCKS, [("Outdoor fan", "4 in a row")]))

    assert (row.fields["kind"], row.fields["limit"]) == ("consecutive", 4)
    assert "window" not in row.fields
    assert set(row.doubts) == {"clears_after", "reset"}


def test_the_run_that_begins_a_row_anew_is_taken_from_the_page() -> None:
    rows = drafted(
        "Lockout",
        (LOCKS, [("Failed starts", "8 in a row")]),
        "One run of 10 minutes sets the count to zero.",
    )

    assert rows[0].fields["kind"] == "failed_starts"
    assert rows[0].fields["clears_after"] == {"run": "10 minutes"}
    assert set(rows[0].doubts) == {"reset"}


def test_a_limit_in_a_sentence_names_its_protection() -> None:
    (row,) = drafted(
        "High pressure stops lock the unit out after 4 stops in 30 minutes."
    )

    assert row.fields["event"] == "high pressure"
    assert row.fields["limit"] == 4


def test_a_limit_of_no_named_protection_is_a_doubt() -> None:
    (row,) = drafted("The unit is locked out after 5 stops in 40 minutes.")

    assert "event" in row.doubts


PINS = ("Pin", "Voltage")


def test_a_band_at_a_pin_is_read_with_its_unit() -> None:
    (row,) = drafted("Plug X7", (PINS, [("1 to 2", "4.5 to 5.5 V DC")]))

    assert (row.fields["low"], row.fields["high"]) == ("4.5 V DC", "5.5 V DC")
    assert row.fields["needs"] == "live"
    assert set(row.doubts) == {"minutes"}


def test_an_ohm_band_is_measured_with_the_power_off() -> None:
    (row,) = drafted(
        "Windings", (("Terminals", "Resistance (ohm)"), [("U-V", "0.8 to 1.0")])
    )

    assert row.fields["low"] == "0.8 ohm"
    assert (row.fields["needs"], row.fields["requires"]) == ("power_off", ["power off"])


@pytest.mark.parametrize(
    ("text", "doubt"),
    [
        ("5 V DC", "band"),
        ("swings 0 to 18 V DC", "behaviour"),
        ("4.5 to 5.5", "unit"),
        ("see page 12", "band"),
    ],
)
def test_a_value_that_is_no_band_is_a_doubt(text: str, doubt: str) -> None:
    (row,) = drafted("Plug X7", (("Pin", "Right"), [("1 to 2", text)]))

    assert doubt in row.doubts


@pytest.mark.parametrize(
    ("text", "open_"),
    [
        ("2.1 to 2.4 MPa", True),
        ("2.1 to 2.4 MPa gauge", False),
        ("300 to 340 psig", False),
    ],
)
def test_a_pressure_neither_gauge_nor_absolute_is_a_doubt(
    text: str, open_: bool
) -> None:
    (row,) = drafted("Ports", (("Port", "Pressure"), [("Liquid", text)]))

    assert ("gauge" in row.doubts) is open_


def test_a_limit_in_a_column_of_a_code_table_is_drafted_beside_the_code() -> None:
    rows = by_id(
        drafted(
            "Faults",
            (
                ("Meaning", "Code", "Locked out after"),
                [("High pressure switch open", "J11", "4 stops in 30 minutes")],
            ),
        )
    )

    assert {row.file for row in rows.values()} == {"signals", "stops"}
    assert rows["code-j11"].doubts == {}
