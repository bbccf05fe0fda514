"""Times of day in words."""

from __future__ import annotations

from datetime import UTC, datetime

from assistant.dialogue.wait_replies import clock, times_of_start

EIGHT = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)


def test_a_time_of_day_is_local_and_has_seconds_only_where_they_matter() -> None:
    assert clock(EIGHT, 120) == "10:30"
    assert clock(EIGHT.replace(second=15), -60) == "07:30:15"


def test_each_part_of_a_start_has_its_own_time_and_unknown_ones_are_left_out() -> None:
    parts = (
        ("compressor", EIGHT, EIGHT.replace(second=20)),
        ("outdoor fan", EIGHT.replace(second=30), None),
        ("indoor fan", None, None),
    )

    assert times_of_start(parts, 0) == (
        "By the clock: compressor 08:30 to 08:30:20; outdoor fan 08:30:30."
    )
    assert times_of_start((("compressor", None, None),), 0) == ""
