"""The parts below the widgets: the table of actions, timers, viewers, environment."""

from __future__ import annotations

import ast
from collections import Counter
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.dialogue.answer import WaitShown
from assistant.signals.flashes import Flash
from tui.desk.actions import ACTIONS, CHOICES, at, found, key_name
from tui.desk.literal import literal, marked
from tui.desk.screens.page import find_span
from tui.desk.taps import strip
from tui.desk.terminal import settle_environment, title_sequence, viewer_command
from tui.desk.timers import bar, left, title, wait_line
from tui.desk.views import JobLine, looks_due, ordered
from tui.plain.text import clean

NOW = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)
DESK = Path(__file__).parents[3] / "tui" / "desk"


def wait(minutes: int | None, state: str, name: str = "w", **more: object) -> WaitShown:
    end = None if minutes is None else NOW + timedelta(minutes=minutes)
    known = {"id": name, "name": name, "started": None, "earliest": None}
    return WaitShown.model_validate(
        {**known, "usual": end, "give_up": None, "state": state, **more}
    )


def job(name: str, *waits: WaitShown, state: str = "open", ago: int = 0) -> JobLine:
    last = NOW - timedelta(minutes=ago)
    return JobLine(name, f"U{name}", "", state, last, waits)  # type: ignore[arg-type]


def test_no_two_actions_of_a_place_share_a_key_or_a_name() -> None:
    for what in ("key", "name"):
        counted = Counter((each.place, getattr(each, what)) for each in ACTIONS)
        assert [pair for pair, number in counted.items() if number > 1] == []
    assert not {each.key for each in at("desk")} & set(CHOICES)


def test_no_action_needs_a_key_that_may_never_arrive() -> None:
    for each in ACTIONS:
        assert len(key_name(each)) == 1 or each.key in {"tab", "space", "enter"}


def test_every_action_is_found_by_its_own_word() -> None:
    for each in at("desk"):
        assert found(f"/{each.name}", at("desk"))[0] == each
    assert found("", at("desk")) == list(at("desk"))
    assert found("zzz", at("desk")) == []


@given(st.text())
def test_literal_text_is_shown_as_it_is_written(text: str) -> None:
    content = literal(text)

    assert content.plain == clean(text)
    assert content.spans == []


@given(st.text(max_size=40), st.text(min_size=1, max_size=20), st.text(max_size=40))
def test_the_marked_span_is_the_one_meant(before: str, within: str, after: str) -> None:
    whole = before + within + after
    content = marked(whole, len(before), len(before) + len(within))

    assert content.plain == clean(whole)
    for span in content.spans:
        assert content.plain[span.start : span.end] == clean(within)


def test_foreign_text_can_reach_the_screen_through_one_door_only() -> None:
    doors = {"Static", "Label", "Option", "update", "notify", "replace_option_prompt"}
    wrong: list[str] = []
    for path in sorted(DESK.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if not isinstance(node, ast.Call):
                continue
            name = getattr(node.func, "id", getattr(node.func, "attr", ""))
            first = node.args[0] if node.args else None
            if name == "from_markup" or (
                name == "Content" and path.name != "literal.py"
            ):
                wrong.append(f"{path.name}:{node.lineno} {name}")
            if name in doors and isinstance(first, ast.Constant | ast.JoinedStr):
                wrong.append(f"{path.name}:{node.lineno} {name} of a bare text")

    assert wrong == []


@pytest.mark.parametrize(
    ("seconds", "text"),
    [(0, "0:00"), (59, "0:59"), (59.2, "1:00"), (3600, "1:00:00"), (90000, "1 d 1 h")],
)
def test_a_time_left_reads_as_on_a_clock(seconds: float, text: str) -> None:
    assert left(timedelta(seconds=seconds)) == text


def test_ended_waits_stand_first_in_the_bar_and_in_the_list() -> None:
    lines = [
        job("A", wait(5, "running")),
        job("B", wait(-3, "ready")),
        job("C", wait(-9, "ready"), ago=60),
        job("D", state="closed"),
    ]

    shown = bar(lines, "A", NOW, UTC)

    assert shown == "READY since 08:27 UB: w | READY since 08:21 UC: w | 5:00 w"
    assert [each.job for each in ordered(lines)] == ["C", "B", "A", "D"]
    assert title(lines, UTC).startswith("READY 08:27 UB; READY 08:21 UC")


def test_an_acknowledged_wait_leaves_bar_title_and_top() -> None:
    seen = JobLine("B", "UB", "", "open", NOW, (wait(-3, "ready"),), ("w",))

    assert bar([seen], None, NOW, UTC) == ""
    assert title([seen], UTC) == "faultleaf"


def test_only_a_running_wait_reads_otherwise_a_second_later() -> None:
    later = NOW + timedelta(seconds=1)
    for each in (wait(-3, "ready"), wait(None, "start_unknown")):
        assert wait_line(each, NOW, UTC) == wait_line(each, later, UTC)
    running = wait(3, "running")
    assert wait_line(running, NOW, UTC) == "3:00 left, ready at 08:33"
    assert wait_line(running, later, UTC) == "2:59 left, ready at 08:33"


def test_a_time_that_is_over_is_not_called_ready_while_a_value_is_open() -> None:
    needs = ({"text": "supply at or above 200 V", "met": None},)
    held = wait(1, "running", conditions=needs)
    after = NOW + timedelta(minutes=2)

    assert wait_line(held, after, UTC) == "time over, needs supply at or above 200 V"
    assert "READY" not in bar((job("A", held),), "A", after, UTC)
    met = wait(1, "running", conditions=({"text": "supply", "met": True},))
    assert wait_line(met, after, UTC) == "READY since 08:31"


def test_a_latched_trip_is_named_as_such() -> None:
    latched = wait(None, "overdue", latched="yes")

    assert wait_line(latched, NOW, UTC) == "LATCHED"
    assert "LATCHED: w" in bar((job("A", latched),), "A", NOW, UTC)


def test_a_mark_that_was_passed_or_a_clock_set_back_asks_for_a_new_look() -> None:
    lines = [job("A", wait(5, "running"))]

    assert not looks_due(lines, NOW, NOW + timedelta(minutes=4, seconds=59))
    assert looks_due(lines, NOW, NOW + timedelta(minutes=5))
    assert looks_due(lines, NOW, NOW - timedelta(hours=1))
    assert not looks_due(lines, NOW + timedelta(minutes=5), NOW + timedelta(minutes=6))


def test_a_quote_is_found_over_line_breaks() -> None:
    assert find_span("x  4  Discharge\nsensor", "4 Discharge sensor") == (3, 22)
    assert find_span("x", "") is None
    assert find_span("a.b", "a?b") is None


@pytest.mark.parametrize(
    ("platform", "programs", "screen", "command"),
    [
        ("linux", {"evince"}, True, ["evince", "--page-index=11", "/m.pdf"]),
        ("linux", {"xdg-open"}, True, ["xdg-open", "/m.pdf"]),
        ("linux", {"evince"}, False, None),
        ("linux", set(), True, None),
        ("darwin", set(), False, ["open", "/m.pdf"]),
        ("win32", set(), False, ["cmd", "/c", "start", "", "/m.pdf"]),
    ],
)
def test_a_viewer_opens_at_the_page_where_one_can(
    platform: str, programs: set[str], screen: bool, command: list[str] | None
) -> None:
    def which(name: str) -> str | None:
        return name if name in programs else None

    found_command, words = viewer_command(
        "/m.pdf", 11, platform=platform, which=which, screen=screen
    )

    assert found_command == command
    assert "11" in words


def test_an_empty_no_color_counts_as_none() -> None:
    environment = {"NO_COLOR": "", "TEXTUAL_ANIMATIONS": "full"}
    settle_environment(environment)

    assert "NO_COLOR" not in environment
    assert environment["TEXTUAL_ANIMATIONS"] == "full"
    kept = {"NO_COLOR": "1"}
    settle_environment(kept)
    assert kept["NO_COLOR"] == "1"


def test_a_title_cannot_end_its_own_sequence() -> None:
    assert title_sequence("a\x07b\x1b[31m") == "\x1b]2;ab[31m\x07"


@given(st.lists(st.floats(0, 50), min_size=1, max_size=40).map(sorted))
def test_a_strip_fits_its_line_and_ends_with_the_last_tap(times: list[float]) -> None:
    shown = strip([Flash(at) for at in times], 30)

    assert 1 <= len(shown) <= 30
    assert shown[-1] in "|#"
