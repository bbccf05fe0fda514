"""The line of long work: documents, pages, passages, and about how long yet."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from assistant.clock import FixedClock
from ingest.progress import Progress, Tally
from tui.plain.pace import PaceLine

START = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)


def test_a_build_says_how_far_it_is_and_how_long_yet() -> None:
    clock = FixedClock(START)
    pace = PaceLine(clock)
    first = pace.line(Progress("read", 1, 30, "a.pdf", Tally(0, 12, 1, 400, 0)))
    clock.advance(timedelta(minutes=2))

    later = pace.line(Progress("read", 9, 30, "d.pdf", Tally(3, 12, 100, 400, 250)))

    assert first == (
        "reading: 0 of 12 documents, 1 of about 400 pages, 0 passages, a.pdf"
    )
    # 100 pages took 2 minutes, so 300 take 6.
    assert later == (
        "reading: 3 of 12 documents, 100 of about 400 pages, 250 passages, "
        "about 6 min left, d.pdf"
    )


def test_each_stage_has_its_own_time() -> None:
    clock = FixedClock(START)
    pace = PaceLine(clock)
    pace.line(Progress("look", 1, 2))
    clock.advance(timedelta(hours=1))
    pace.line(Progress("embed", 64, 6400))
    clock.advance(timedelta(seconds=90))

    line = pace.line(Progress("embed", 640, 6400))

    # 640 texts took 90 s, so 5,760 take 810 s.
    assert line == "embedding: 640 of 6400, about 14 min left"
