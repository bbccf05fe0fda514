"""Flash, code and lamp tables as drafts: what is read, and what stays a doubt."""

from __future__ import annotations

import pytest

from tests.drafted import drafted

TITLE = "Table 4 Faults shown by amber lamp LD2 of the outdoor board, every 10 seconds"
HEAD = ("Flashes", "Meaning")


def test_a_flash_row_takes_lamp_count_and_window_from_its_page() -> None:
    (row,) = drafted(TITLE, (HEAD, [("3", "Discharge sensor open")]))

    assert row.fields == {
        "kind": "count_per_window",
        "lamp": {"box": "outdoor", "label": "LD2", "colour": "amber"},
        "count": 3,
        "window": "10 seconds",
        "meaning": "Discharge sensor open",
        "is_fault": True,
    }
    assert (row.id, row.page, row.quote) == ("ld2-3", 3, "3 Discharge sensor open")
    assert row.doubts == {}


def test_a_pause_makes_groups_and_no_window() -> None:
    (row,) = drafted(
        "Faults: lamp LD2 flashes, then a pause of 2 s",
        (HEAD, [("3", "Discharge sensor open")]),
    )

    assert row.fields["kind"] == "group_then_pause"
    assert row.fields["pause"] == "2 s"


def test_a_lost_count_is_a_doubt_and_never_numbered_by_its_place() -> None:
    rows = drafted(
        TITLE,
        (HEAD, [("1", "Sensor open"), ("", "Fan blocked"), ("3", "Board failed")]),
    )

    lost = rows[1]
    assert "count" not in lost.fields
    assert lost.doubts == {"count": "the count is not on the page"}
    assert not any(character.isdigit() for character in lost.id.removeprefix("ld2"))


@pytest.mark.parametrize("cell", ["eight (5)", "6-7", "1O", "n", "?", "0", "120", "l2"])
def test_a_count_that_is_no_single_count_is_a_doubt(cell: str) -> None:
    rows = drafted(TITLE, (HEAD, [("1", "Sensor open"), (cell, "Fan blocked")]))

    assert "count" in rows[1].doubts
    assert "count" not in rows[1].fields


@pytest.mark.parametrize(
    ("cell", "count"),
    [("4 flashes", 4), ("seven", 7), ("five (5)", 5), ("12*", 12), ("3 x", 3)],
)
def test_a_count_is_read_in_the_ways_it_is_printed(cell: str, count: int) -> None:
    (row,) = drafted(TITLE, (HEAD, [(cell, "Fan blocked")]))

    assert row.fields["count"] == count


def test_two_rows_for_one_count_need_their_condition() -> None:
    rows = drafted(TITLE, (HEAD, [("6", "Overcurrent fault"), ("6", "Fan blocked")]))

    assert all("condition" in row.doubts for row in rows)
    assert len({row.id for row in rows}) == 2


def test_a_row_that_is_printed_twice_is_drafted_once() -> None:
    rows = drafted(TITLE, (HEAD, [("6", "Fan blocked"), ("6", "Fan blocked")]))

    assert [row.id for row in rows] == ["ld2-6"]


def test_a_lamp_that_is_not_named_is_a_doubt() -> None:
    (row,) = drafted("Table 4 Faults", (HEAD, [("3", "Discharge sensor open")]))

    assert "lamp" in row.doubts


def test_two_lamps_in_the_title_name_neither() -> None:
    (row,) = drafted(
        "Faults shown by lamps LD1 and LD2", (HEAD, [("3", "Discharge sensor open")])
    )

    assert row.fields["lamp"] == {}
    assert "lamp" in row.doubts


def test_a_row_that_may_be_no_fault_is_a_doubt() -> None:
    (row,) = drafted("Lamp LD2", (HEAD, [("3", "Oil equalising")]))

    assert "is_fault" in row.doubts
    assert "is_fault" not in row.fields


def test_a_normal_state_is_no_fault() -> None:
    (row,) = drafted("Lamp LD2", (HEAD, [("3", "Defrost, normal")]))

    assert row.fields["is_fault"] is False


def test_a_lost_meaning_is_a_doubt() -> None:
    rows = drafted(TITLE, (HEAD, [("3", ""), ("4", "Fan blocked")]))

    assert "meaning" in rows[0].doubts
    assert "meaning" not in rows[0].fields


def test_a_row_read_by_ocr_is_a_doubt() -> None:
    (row,) = drafted(TITLE, (HEAD, [("3", "Discharge sensor open")]), ocr=True)

    assert "ocr" in row.doubts
    assert row.confidence < 0.7


def test_a_sign_that_could_not_be_read_is_a_doubt() -> None:
    (row,) = drafted(TITLE, (HEAD, [("3", "Pressure \ufffd limit, switch open")]))

    assert "sign" in row.doubts


def test_a_step_the_engine_refuses_is_no_step() -> None:
    (row,) = drafted(
        TITLE,
        (
            ("Flashes", "Meaning", "What to do"),
            [("5", "High pressure switch open", "Bridge the high pressure switch")],
        ),
    )

    assert "Bridge" not in str(row.fields)
    assert row.left_out == [
        "`Bridge the high pressure switch`: it takes a protection out"
    ]


def test_a_meaning_that_is_never_said_is_a_doubt() -> None:
    (row,) = drafted(TITLE, (HEAD, [("5", "Fault, try one more reset")]))

    assert "meaning" in row.doubts
    assert "meaning" not in row.fields


def test_a_table_of_causes_is_no_table_of_flashes() -> None:
    rows = drafted(
        TITLE, (("Flashes", "Order", "Cause", "Check"), [("1", "1", "Plug", "page 16")])
    )

    assert rows == []


def test_quick_and_long_flashes_are_two_digits() -> None:
    (row,) = drafted(
        "Faults of lamp LD2",
        (("Short", "Long", "Meaning"), [("2", "1", "Fan blocked")]),
    )

    assert (row.fields["kind"], row.fields["short"], row.fields["long"]) == (
        "short_long",
        2,
        1,
    )


def test_long_flashes_that_stand_first_are_a_doubt() -> None:
    (row,) = drafted(
        "Faults of lamp LD2",
        (("Long", "Short", "Meaning"), [("2", "1", "Fan blocked")]),
    )

    assert "digit_order" in row.doubts


CODES = ("Code", "Meaning")


def test_a_display_code_takes_the_box_of_its_title() -> None:
    (row,) = drafted("Faults on the indoor display", (CODES, [("E4", "Sensor open")]))

    assert row.fields["code"] == "E4"
    assert row.fields["display"] == {"box": "indoor"}
    assert row.doubts == {}


def test_a_footnote_mark_glued_to_a_code_is_no_part_of_it() -> None:
    (row,) = drafted("Faults", (CODES, [("31*", "Sensor open")]))

    assert row.fields["code"] == "31"


@pytest.mark.parametrize("cell", ["", "E4 E5", "see 7"])
def test_a_code_that_is_no_single_code_is_a_doubt(cell: str) -> None:
    rows = drafted("Faults", (CODES, [("E4", "Sensor open"), (cell, "Fan blocked")]))

    assert "code" in rows[1].doubts


@pytest.mark.parametrize("code", ["EO", "El", "P1O"])
def test_a_letter_that_may_be_a_digit_is_a_doubt(code: str) -> None:
    rows = drafted("Faults", (CODES, [("E4", "Sensor open"), (code, "Fan blocked")]))

    assert {"glyph", "code"} & set(rows[1].doubts)


def test_one_code_with_two_meanings_needs_its_condition() -> None:
    rows = drafted("Faults", (CODES, [("E4", "Sensor open"), ("E4", "Fan blocked")]))

    assert all("condition" in row.doubts for row in rows)


LAMPS = ("LD1 green", "LD2 red", "Fault")


def test_several_lamps_are_read_by_their_columns() -> None:
    (row,) = drafted("Faults", (LAMPS, [("lit", "3", "Sensor open")]))

    assert row.fields["lamps"] == [
        {"lamp": {"label": "LD1", "colour": "green"}, "state": "on"},
        {"lamp": {"label": "LD2", "colour": "red"}, "state": "count", "count": 3},
    ]
    assert row.doubts == {}


def test_a_blank_lamp_cell_is_neither_above_nor_off() -> None:
    rows = drafted(
        "Faults", (LAMPS, [("lit", "off", "Sensor open"), ("", "lit", "Fan blocked")])
    )

    assert set(rows[1].doubts) == {"lamp-ld1"}
    assert "state" not in rows[1].fields["lamps"][0]


def test_a_glyph_with_its_legend_is_read_and_the_legend_named() -> None:
    (row,) = drafted("● lit   ○ dark", "Faults", (LAMPS, [("●", "○", "Sensor open")]))

    assert [lamp["state"] for lamp in row.fields["lamps"]] == ["on", "off"]
    assert row.fields["legend_source"] == "● lit ○ dark"


def test_a_glyph_without_a_legend_is_a_doubt() -> None:
    (row,) = drafted("Faults", (LAMPS, [("●", "○", "Out of range sensor")]))

    assert "legend" in row.doubts
    assert all("state" not in lamp for lamp in row.fields["lamps"])


def test_a_column_that_says_yes_or_no_to_a_fault_is_believed() -> None:
    rows = drafted(
        "Lamps",
        (
            ("LD1 green", "LD2 red", "State", "Fault"),
            [("lit", "off", "Oil return", "no"), ("off", "lit", "Ready", "yes")],
        ),
    )

    assert [row.fields["is_fault"] for row in rows] == [False, True]
    assert rows[0].fields["meaning"] == "Oil return"


def test_how_lamps_flash_beside_each_other_is_a_doubt() -> None:
    (row,) = drafted("Faults", (LAMPS, [("flash", "flash", "Sensor open, in turn")]))

    assert set(row.doubts) == {"phase"}


def test_whose_codes_they_are_does_not_say_where_they_are_shown() -> None:
    (row,) = drafted("Faults of the outdoor unit", (CODES, [("E4", "Sensor open")]))

    assert "display" not in row.fields


@pytest.mark.parametrize(
    ("sentence", "fields"),
    [
        (
            "LD2 flashes 5 times every 10 seconds: high pressure switch open.",
            {"lamp": {"label": "LD2"}, "count": 5, "window": "10 seconds"},
        ),
        (
            "Lamp H1 blinks seven times if the fan is blocked.",
            {"lamp": {"label": "H1"}, "count": 7, "kind": "group_then_pause"},
        ),
        (
            "Code E4 means no messages from the indoor unit.",
            {"code": "E4", "kind": "display_code"},
        ),
    ],
)
def test_a_sentence_that_gives_a_meaning_is_drafted(
    sentence: str, fields: dict[str, object]
) -> None:
    (row,) = drafted(sentence)

    assert fields.items() <= row.fields.items()
    assert (row.quote, row.doubts, row.fields["is_fault"]) == (sentence, {}, True)


def test_a_count_in_a_sentence_without_its_lamp_is_a_doubt() -> None:
    (row,) = drafted("6 flashes: outdoor fan blocked.")

    assert set(row.doubts) == {"lamp"}


@pytest.mark.parametrize(
    "sentence",
    [
        "6 flashes: film the lamp for 20 seconds.",
        "A lamp that flashes is no fault by itself.",
        "LD2: amber lamp of the main board.",
    ],
)
def test_a_step_or_a_remark_gives_no_meaning(sentence: str) -> None:
    assert drafted(sentence) == []


def test_a_table_without_column_names_is_read_by_its_first_cells() -> None:
    rows = drafted(
        TITLE, (("",), [("2 flashes", "Sensor open"), ("3 flashes", "Fan blocked")])
    )

    assert [row.fields["count"] for row in rows] == [2, 3]


def test_a_first_row_that_names_the_columns_is_no_row() -> None:
    rows = drafted(
        "Faults",
        (
            ("",),
            [
                ("D1 red", "D2 red", "Meaning"),
                ("ON", "OFF", "Sensor open"),
                ("FL", "OFF", "Fan blocked"),
            ],
        ),
    )

    assert [row.fields["meaning"] for row in rows] == ["Sensor open", "Fan blocked"]
    assert [set(row.doubts) for row in rows] == [set(), {"lamp-d1"}]


def test_a_sub_code_is_part_of_what_is_shown() -> None:
    rows = drafted(
        "Faults",
        (
            ("Code", "Then", "Meaning"),
            [("J14", "01", "Bus too low"), ("J14", "02", "Bus too high")],
        ),
    )

    assert [row.fields["sub"] for row in rows] == ["01", "02"]
    assert [row.doubts for row in rows] == [{}, {}]
    assert [row.id for row in rows] == ["code-j14-01", "code-j14-02"]


def test_lamps_that_make_a_number_are_a_doubt() -> None:
    (row,) = drafted(
        "Faults",
        (("D1 red", "D2 red", "Number", "Meaning"), [("1", "2", "12", "Fan blocked")]),
    )

    assert set(row.doubts) == {"number"}
