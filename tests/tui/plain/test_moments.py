"""Times are read and written as people do, and kept in UTC."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone

import pytest

from assistant.errors import UsageError
from tui.plain.moments import date_time, length, local_time, parse_at

NOW = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)
EAST = timezone(timedelta(hours=2))
WEST = timezone(-timedelta(hours=3, minutes=30))


@pytest.mark.parametrize(
    ("zone", "shown"),
    [
        (UTC, "08:30 (UTC)"),
        (EAST, "10:30 (UTC+02:00)"),
        (WEST, "05:00 (UTC-03:30)"),
    ],
)
def test_a_time_is_shown_where_it_is_read(zone: timezone, shown: str) -> None:
    assert local_time(NOW, zone) == shown


def test_another_day_and_odd_seconds_are_said() -> None:
    late = NOW + timedelta(hours=15, seconds=7)

    assert local_time(late, EAST, NOW) == "2031-06-15 01:30:07 (UTC+02:00)"
    assert local_time(late, UTC, NOW) == "23:30:07 (UTC)"
    assert date_time(NOW, EAST) == "2031-06-14 10:30:00 (UTC+02:00)"


@pytest.mark.parametrize(
    ("text", "instant"),
    [
        ("2031-06-14T07:15Z", datetime(2031, 6, 14, 7, 15, tzinfo=UTC)),
        ("2031-06-14T07:15", datetime(2031, 6, 14, 5, 15, tzinfo=UTC)),
        ("2031-06-14T07:15+05:00", datetime(2031, 6, 14, 2, 15, tzinfo=UTC)),
        ("10:15", datetime(2031, 6, 14, 8, 15, tzinfo=UTC)),
        ("23:00", datetime(2031, 6, 13, 21, 0, tzinfo=UTC)),
        ("9:05:30", datetime(2031, 6, 14, 7, 5, 30, tzinfo=UTC)),
        ("20 min ago", NOW - timedelta(minutes=20)),
        ("1 hour ago", NOW - timedelta(hours=1)),
        ("45 s ago", NOW - timedelta(seconds=45)),
    ],
)
def test_a_written_time_becomes_one_instant(text: str, instant: datetime) -> None:
    assert parse_at(text, NOW, EAST) == instant


@pytest.mark.parametrize("text", ["", "soon", "25:00", "10:61", "2031-13-01", "-5 min"])
def test_what_is_no_time_is_refused_with_examples(text: str) -> None:
    with pytest.raises(UsageError, match="not a time") as caught:
        parse_at(text, NOW, EAST)

    assert "10:35" in caught.value.hint


@pytest.mark.parametrize(
    ("seconds", "shown"),
    [
        (0, "0 s"),
        (-5, "0 s"),
        (59, "59 s"),
        (200, "3 min 20 s"),
        (3600, "1 h"),
        (90061, "1 d 1 h"),
    ],
)
def test_a_length_has_two_parts_at_most(seconds: int, shown: str) -> None:
    assert length(timedelta(seconds=seconds)) == shown
