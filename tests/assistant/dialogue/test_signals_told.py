"""Sentences about every scheme: what is read, asked, assumed and said beside it."""

from __future__ import annotations

import pytest

from tests.said_aloud import decoded, lines, said, slot

READ = (
    ("valve board lamps outside flash, taking turns", ["both-in-turn"]),
    ("valve board lamps outside blink at the same time", ["both-together"]),
    ("2 short and 3 long on P1", ["digits-23"]),
    ("A is off and B flashes 2 times", ["bank-off-2"]),
    ("the remote beeps 5 times", ["beeps-5"]),
    ("remote shows U2 with a small 02", ["main-u2-02"]),
    (
        "the outdoor display shows 4 blank 1",
        ["place-1-4", "place-2-blank", "place-3-1"],
    ),
    ("W4 on, W2 off, W1 lit", ["bits-5"]),
    ("H1 is kind of breathing, bright then dim", ["heart"]),
    ("R2 flashes once every 5 seconds", ["lone"]),
    ("S1 blinks 4 times", ["speed"]),
    ("R1 about 40 blinks in 10 seconds", ["fast"]),
    ("T goes 2 and U goes 4", ["tens-24"]),
    ("the alert light on the main board flashes 4 times, then a pause", ["window-4"]),
    ("the trip light outside flashes 4 times, then a pause", ["trip-4"]),
)


@pytest.mark.parametrize(("text", "rows"), READ, ids=[text for text, _ in READ])
def test_a_sentence_is_read_as_this_row(text: str, rows: list[str]) -> None:
    (answer,) = said(text)

    assert answer.decodes[0].verdict == "exact"
    assert decoded(answer) == rows


ASKED = (
    ("P1 flashes 5 times then a pause", "short", "2", ["digits-23"]),
    ("P1 flashes 5 times then a pause", "short", "three", ["digits-32"]),
    ("slow blink on R1", "rate", "about 5", ["slow"]),
    ("slow blink on R1", "rate", "40", ["fast"]),
    ("H2 is steady on", "context:compressor running", "yes", ["lit-running"]),
    ("H2 is steady on", "context:compressor running", "no", ["lit-locked"]),
    ("B flashes 2 times", "lamp:A", "steady", ["bank-on-2"]),
    ("F1 is flickering and F2 flashes 3", "display_level", "no", ["first-3"]),
    ("F1 is flickering and F2 flashes 3", "display_level", "yes", ["detail-3"]),
    ("remote shows U2", "sub", "01", ["main-u2-01"]),
    ("remote shows E4", "stored", "from the history", ["old-e4"]),
    ("remote shows E4", "stored", "its showing now", ["code-e4"]),
)


@pytest.mark.parametrize(("text", "asks", "reply", "rows"), ASKED)
def test_what_is_open_is_asked_and_the_answer_settles_it(
    text: str, asks: str, reply: str, rows: list[str]
) -> None:
    first, second = said(text, reply)

    assert first.decodes[0].verdict == "several"
    assert slot(first) == asks
    assert decoded(second) == rows
    assert second.decodes[0].verdict == "exact"


def test_what_was_assumed_is_printed() -> None:
    (answer,) = said("P1 flashes 5 times then a pause")

    assert "Assumed, not told: short, long" in lines(answer)


def test_a_code_not_seen_yet_is_answered_by_the_delay_before_anything_else() -> None:
    (answer,) = said("no code anywhere")

    first, second = answer.statements[:2]
    assert "200 s after the compressor has stopped" in first.text
    assert "taken back by a restart" in first.text
    assert "erased by power off for 10 min" in second.text


def test_history_says_what_erases_it_before_how_it_is_read() -> None:
    text = lines(said("remote shows E4", "from the history")[-1])

    assert "This is stored history, not what is wrong now." in text
    assert text.index("erased by") < text.index("hold CHECK for 5 s")


def test_codes_in_turn_are_all_read_and_never_called_the_only_fault() -> None:
    (answer,) = said("remote flips between A3 and A4 and round again")

    assert decoded(answer) == ["code-a3", "code-a4"]
    assert "shows several faults in turn" in lines(answer)


def test_one_code_of_a_display_in_turn_is_asked_for_the_others() -> None:
    first, second = said("remote shows A3", "yes, then C1 and A4")

    assert slot(first) == "codes"
    assert decoded(second) == ["code-a3", "code-a4"]
    assert slot(second) != "codes"
    assert "C1: not in this document" in lines(second)


@pytest.mark.parametrize("reply", ["no, it stays on that", "just the one", "A3 only"])
def test_a_display_that_shows_no_other_code_is_not_asked_about_again(
    reply: str,
) -> None:
    first, second = said("remote shows A3", reply)

    assert slot(first) == "codes"
    assert decoded(second) == ["code-a3"]
    assert slot(second) != "codes"


def test_twins_share_their_check_and_keep_their_meanings() -> None:
    text = lines(said("remote shows A3")[0])

    assert "drain level (fault)" in text
    assert "A3 and A4 share one check: drain pan." in text


def test_running_on_a_substitute_is_said_with_its_days() -> None:
    text = lines(said("alert light outside flashes 4 times and then a pause")[0])

    assert "It runs on a substitute for 3 days at most, then it stops." in text
    assert 'The same fault shows elsewhere as: remote: "E4".' in text


def test_what_looks_the_same_is_printed_with_the_candidate() -> None:
    text = lines(said("alert light outside flashes 5 times and then a pause")[0])

    assert "Easily confused with: the neighbouring lamp KL9" in text


def test_the_sum_of_tens_and_units_is_shown() -> None:
    text = lines(said("T goes 4 and U goes 4")[0])

    assert "44 less 30 is 14 of the outdoor unit" in text


def test_a_value_shows_raw_and_decoded_and_its_setting() -> None:
    text = lines(said("the outdoor display shows 0.7")[0])

    assert "'0.7' reads 107 °C" in text
    assert "switch SW3 on MONITOR" in text


def test_a_pair_that_no_row_has_is_not_in_the_manual() -> None:
    (answer,) = said("4 short and 4 long on P1")

    assert answer.decodes[0].verdict == "none"
    assert "4 quick and 4 long flashes: not in this document" in lines(answer)


def test_the_same_words_give_the_same_bytes() -> None:
    words = ("F1 is flickering and F2 flashes 3", "no")

    first, second = (
        [answer.model_dump_json() for answer in said(*words)] for _ in range(2)
    )

    assert first == second


def test_rows_whose_number_is_lost_are_named_and_never_numbered() -> None:
    (answer,) = said("R1 outside flashes 9 times then a pause")
    (other,) = said("remote shows C1")

    assert answer.decodes[0].verdict == "none"
    assert decoded(answer) == []
    assert "cannot be read: fan stuck; water flow too low." in lines(answer)
    assert "cannot be read" not in lines(other)
