"""Every scheme: its whole sight is read, and a common misreading is not forced.

Schemes and misreadings are those seen in service literature; numbers are invented.
"""

from __future__ import annotations

import pytest

from assistant.signals.decode import decode
from assistant.signals.observation import Match, Observation, SignalRow
from assistant.signals.sights import sight_of
from tests.scheme_pack import scheme_rows
from tests.signal_rows import ids

ROWS = scheme_rows()
BY_NAME = {row.gid.partition("/")[2]: row for row in ROWS}


def read(*seen: Observation) -> Match:
    return decode(seen, ROWS)


def asked(match: Match) -> str | None:
    return match.question.slot if match.question is not None else None


def notes(match: Match) -> str:
    return "; ".join(note for one in match.candidates for note in one.notes)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.gid)
def test_the_whole_sight_of_a_row_is_that_row(row: SignalRow) -> None:
    match = decode(sight_of(row.signal), ROWS)

    assert match.verdict == "exact"
    assert row.gid in [one.row.gid for one in match.candidates]
    assert all(one.assumed == () for one in match.candidates)


# 1: steady states, heartbeat


def test_a_lit_lamp_may_be_running_or_locked_out_and_that_is_asked() -> None:
    match = read(Observation(label=("H2",), state="on"))

    assert sorted(ids(match)) == ["lit-locked", "lit-running"]
    assert asked(match) == "context:compressor running"


def test_a_lamp_seen_while_the_compressor_runs_is_not_the_lockout() -> None:
    seen = Observation(label=("H2",), state="on", unit_state=("running",))

    assert ids(read(seen)) == ["lit-running"]


def test_a_heartbeat_called_blinking_is_offered_with_what_that_assumes() -> None:
    match = read(Observation(label=("H1",), state="blink", pause="none"))

    assert ids(match) == ["heart"]
    assert "state" in match.candidates[0].assumed


# 2, 5, 8: even blink, single flash, rate classes


def test_an_even_blink_of_another_rhythm_is_not_the_status_blink() -> None:
    seen = Observation(label=("H2",), state="blink", pause="none", rate_hz=(3.0, 3.0))

    assert read(seen).verdict == "none"


def test_a_single_flash_asks_for_the_seconds_and_is_no_slow_blink() -> None:
    match = read(Observation(label=("R2",), state="blink", rate="slow"))

    assert ids(match) == ["lone"]
    assert "window" in match.candidates[0].assumed


def test_one_flash_every_other_time_is_not_the_row_of_five_seconds() -> None:
    seen = Observation(label=("R2",), state="count", count=(1,), window_s=12.0)

    assert read(seen).verdict == "none"


def test_a_word_for_the_rate_keeps_the_other_class_and_asks_for_it() -> None:
    match = read(
        Observation(colour=("red",), label=("R1",), state="blink", rate="fast")
    )

    assert ids(match) == ["fast", "slow"]
    assert asked(match) == "rate"
    assert "rate" in match.candidates[0].assumed


@pytest.mark.parametrize(("blinks", "row"), [(5, ["slow"]), (41, ["fast"]), (15, [])])
def test_blinks_in_ten_seconds_go_by_the_documents_own_definition(
    blinks: int, row: list[str]
) -> None:
    hertz = (blinks / 10, blinks / 10)
    seen = Observation(label=("R1",), state="blink", pause="none", rate_hz=hertz)

    assert ids(read(seen)) == row


# 3, 14, 24: counts by colour, role and sound


def test_a_count_without_a_colour_keeps_every_lamp_and_asks() -> None:
    match = read(Observation(state="count", count=(4,), pause="seen"))

    assert {"window-4", "trip-4"} <= set(ids(match))
    assert asked(match) == "colour"


def test_the_role_of_a_lamp_is_as_good_as_its_print() -> None:
    seen = Observation(label=("trip",), state="count", count=(4,), pause="seen")

    assert ids(read(seen)) == ["trip-4"]


def test_beeps_are_no_flashes_and_flashes_no_beeps() -> None:
    beeps = Observation(emitter="buzzer", state="count", count=(5,), pause="seen")
    flashes = Observation(emitter="lamp", state="count", count=(5,), pause="seen")

    assert ids(read(beeps)) == ["beeps-5"]
    assert "beeps-5" not in ids(read(flashes))


# 6: quick and long flashes


def test_a_total_lists_every_pair_that_makes_it_and_asks_for_the_quick_ones() -> None:
    match = read(Observation(label=("P1",), state="count", count=(5,)))

    assert sorted(ids(match)) == ["digits-23", "digits-32"]
    assert asked(match) == "short"
    assert {"short", "long"} <= set(match.candidates[0].assumed)


def test_a_total_that_no_pair_makes_is_not_rounded() -> None:
    assert read(Observation(label=("P1",), state="count", count=(6,))).verdict == "none"


def test_the_quick_ones_with_the_total_settle_the_pair() -> None:
    seen = Observation(label=("P1",), state="short_long", count=(3,), total=(5,))

    assert ids(read(seen)) == ["digits-32"]


def test_long_before_quick_is_the_same_pair_with_its_order_assumed() -> None:
    seen = Observation(
        label=("P1",), state="short_long", count=(2,), long_count=(3,), first="long"
    )

    match = read(seen)

    assert ids(match) == ["digits-23"]
    assert "order" in match.candidates[0].assumed


def test_quick_and_long_flashes_without_numbers_cannot_be_read_yet() -> None:
    match = read(Observation(label=("P1",), state="blink"))

    assert match.verdict == "not_decodable"
    assert asked(match) == "short"


# 7: tens and units


def test_tens_and_units_with_unknown_lamps_keep_both_orders() -> None:
    rows = [BY_NAME["tens-24"], *_swapped()]
    seen = [
        Observation(state="count", count=(2,)),
        Observation(state="count", count=(4,)),
    ]

    assert sorted(ids(decode(seen, rows))) == ["tens-24", "tens-42"]


def _swapped() -> list[SignalRow]:
    one = BY_NAME["tens-24"]
    other = one.signal.model_copy(update={"id": "tens-42", "number": 42})
    return [SignalRow("schemes/tens-42", other, "confirmed", one.document)]


def test_the_offset_of_the_other_unit_is_shown_as_a_sum() -> None:
    match = read(
        Observation(label=("T",), state="count", count=(4,)),
        Observation(label=("U",), state="count", count=(4,)),
    )

    assert ids(match) == ["tens-14-outdoor"]
    assert "44 less 30 is 14 of the outdoor unit" in notes(match)


def test_one_of_two_digits_asks_for_the_other_lamp() -> None:
    match = read(Observation(label=("T",), state="count", count=(4,)))

    assert ids(match) == ["tens-14-outdoor"]
    assert "lamp:U" in match.candidates[0].assumed


# 9, 10: grids and weights


def test_lamps_counted_off_from_one_side_keep_their_order_or_are_reversed() -> None:
    states: tuple[str, ...] = ("on", "off", "off")
    seen = [
        Observation.model_validate(
            {
                "label": (f"{n} from the left",),
                "state": state,
                "box": ("thermostat",),
            }
        )
        for n, state in enumerate(states, start=1)
    ]
    rows = [BY_NAME["bits-4"], BY_NAME["bits-5"], *_one()]

    match = decode(seen, rows)

    assert ids(match) == ["bits-4", "bits-1"]
    assert all("order" in one.assumed for one in match.candidates)


def _one() -> list[SignalRow]:
    four = BY_NAME["bits-4"]
    one = four.signal.model_copy(update={"id": "bits-1", "number": 1})
    return [SignalRow("schemes/bits-1", one, "confirmed", four.document)]


# 11: phase


def test_both_flashing_is_never_read_without_the_phase() -> None:
    match = read(
        Observation(label=("V1",), state="blink"),
        Observation(label=("V2",), state="blink"),
    )

    assert sorted(ids(match)) == ["both-in-turn", "both-together"]
    assert asked(match) == "phase"


def test_lamps_that_take_turns_are_the_row_that_says_so() -> None:
    seen = Observation(
        box=("outdoor",), board=("valve board",), state="blink", phase="alternating"
    )

    assert ids(read(seen)) == ["both-in-turn"]


# 12, 13: bank lamp, flicker


def test_a_count_alone_gives_a_row_of_each_bank_and_asks_for_the_bank_lamp() -> None:
    match = read(Observation(label=("B",), state="count", count=(2,)))

    assert sorted(ids(match)) == ["bank-off-2", "bank-on-2"]
    assert asked(match) == "lamp:A"


def test_the_same_look_needs_the_level_of_the_display() -> None:
    flicker = Observation(label=("F1",), state="flicker")
    count = Observation(label=("F2",), state="count", count=(3,))

    match = read(flicker, count)

    assert sorted(ids(match)) == ["detail-3", "first-3"]
    assert asked(match) == "display_level"
    assert "press TEST once" in notes(match)


# 16 to 19, 22, 23: displays


def test_a_sub_code_not_told_is_asked_for() -> None:
    match = read(Observation(state="display", code="U2"))

    assert sorted(ids(match)) == ["main-u2-01", "main-u2-02"]
    assert asked(match) == "sub"


def test_a_sub_code_taken_for_the_code_finds_its_row_and_says_what_it_assumed() -> None:
    match = read(Observation(state="display", code="02", box=("remote",)))

    assert ids(match) == ["main-u2-02"]
    assert "sub" in match.candidates[0].assumed


def test_an_address_beside_a_code_says_where_and_changes_no_meaning() -> None:
    match = read(Observation(state="display", code="U4", sub="07"))

    assert ids(match) == ["main-u4"]
    assert "address: 07" in notes(match)


def test_each_place_of_a_display_is_read_by_its_own_table() -> None:
    match = read(Observation(state="display", code="4_1", box=("outdoor",)))

    assert match.verdict == "exact"
    assert ids(match) == ["place-1-4", "place-2-blank", "place-3-1"]


def test_a_value_past_the_display_shows_raw_and_decoded() -> None:
    match = read(Observation(state="display", code="0.7", box=("outdoor",)))

    assert ids(match) == ["value-discharge"]
    assert "'0.7' reads 107 °C" in notes(match)
    assert "precondition" in match.candidates[0].assumed


def test_a_value_outside_its_range_is_no_value() -> None:
    seen = Observation(state="display", code="155", box=("outdoor",))

    assert "value-discharge" not in ids(read(seen))


def test_a_setting_that_is_not_on_rules_the_row_out() -> None:
    seen = Observation(
        state="display", code="0.7", not_conditions=("Switch SW3 on MONITOR",)
    )

    assert read(seen).verdict == "none"


def test_history_is_not_what_is_shown_now_and_is_asked_for() -> None:
    match = read(Observation(state="display", code="E4"))

    assert sorted(ids(match)) == ["code-e4", "old-e4"]
    assert asked(match) == "stored"
    assert ids(read(Observation(state="display", code="E4", stored=True))) == ["old-e4"]


def test_the_beginning_of_a_code_keeps_every_code_that_begins_so() -> None:
    match = read(Observation(state="display", code_starts="A"))

    assert sorted(ids(match)) == ["code-a3", "code-a4"]
    assert asked(match) == "code"


# 25: a rate that follows a speed


def test_a_rate_that_follows_a_speed_is_never_a_count() -> None:
    match = read(Observation(label=("S1",), state="count", count=(4,)))

    assert ids(match) == ["speed"]
    assert "it is no count" in notes(match)


# groups counted several times


def test_a_count_seen_three_times_outweighs_one_and_the_dissent_stays() -> None:
    seen = Observation(
        label=("KL1",), state="count", count=(4, 5), counted=(4, 4, 5, 4)
    )

    match = read(seen)

    assert ids(match) == ["window-4", "window-5"]
    assert match.candidates[1].weight < 0.1 * match.candidates[0].weight
    assert asked(match) != "count"


def test_one_against_one_is_asked_again() -> None:
    seen = Observation(label=("KL1",), state="count", count=(4, 5), counted=(4, 5))

    assert asked(read(seen)) == "count"
