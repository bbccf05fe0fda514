"""Whole jobs by keys alone, at every size, on the sample library."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest
from textual import events
from textual.pilot import Pilot

from assistant.clock import FixedClock
from assistant.settings import Settings
from tests.desk_driver import (
    START,
    desk_on,
    flat,
    keys,
    settle,
    shown,
    type_in,
)
from tui.desk.app import Desk
from tui.desk.screens.page import Page
from tui.desk.views import JobView
from tui.desk.widgets.composer import Composer
from tui.desk.widgets.conversation import Conversation

pytestmark = pytest.mark.model
SIZES = ((120, 40), (80, 24), (40, 20))
Places = Settings


def sizes(first: tuple[int, int]) -> pytest.MarkDecorator:
    """Run a job at every size: at one of them always, at the others with the slow."""
    others = [size for size in SIZES if size != first]
    slow = [pytest.param(size, marks=pytest.mark.slow) for size in others]
    return pytest.mark.parametrize("size", [first, *slow])


def view_of(pilot: Pilot[None]) -> JobView:
    assert isinstance(pilot.app, Desk)
    assert pilot.app.view is not None
    return pilot.app.view


@sizes((120, 40))
async def test_a_sensor_is_found_by_lamp_plug_and_reading(
    size: tuple[int, int], sample_places: Places, tmp_path: Path
) -> None:
    clock = FixedClock(START)
    desk = desk_on(sample_places, tmp_path, clock)
    async with desk.run_test(size=size) as pilot:
        await settle(pilot)
        await type_in(pilot, "outdoor unit VET-O50, I am a technician")
        await type_in(
            pilot, "amber light LD2 on the outdoor board flashes 4 times, then a pause"
        )

        # VSM-1522 Rev. B, PDF page 11: row 4 of table 6-2.
        view = view_of(pilot)
        assert [each.id for each in view.answer.decodes[0].candidates] == [
            "vellamere-tern/amber-4"
        ]
        # The open question and its keys are in view at every size.
        assert "(1) loose (2) seated" in flat(shown(pilot))
        await keys(pilot, "tab", "2")
        assert view_of(pilot).answer.causes[0].name.startswith("discharge sensor")
        await keys(pilot, "r")
        await type_in(pilot, "TH3", enter=False)
        await keys(pilot, "tab")
        await type_in(pilot, "9", enter=True)
        assert "! '9' has no unit" in flat(shown(pilot))
        await type_in(pilot, " kohm", enter=False)
        await keys(pilot, "tab")
        await type_in(pilot, "30 C", enter=False)
        await keys(pilot, "tab", "tab", "space", "tab", "space", "enter")

        # Table 8-3, PDF page 17: 372 kohm at 30 degrees.
        (verdict,) = view_of(pilot).answer.verdicts
        assert (verdict.check, verdict.result) == ("vellamere-tern/th3", "fail")
        assert "expected 372" in flat(shown(pilot))


@sizes((80, 24))
async def test_tapped_flashes_are_decoded_and_the_cited_page_opens(
    size: tuple[int, int], sample_places: Places, tmp_path: Path
) -> None:
    clock = FixedClock(START)
    desk = desk_on(sample_places, tmp_path, clock)
    async with desk.run_test(size=size) as pilot:
        await settle(pilot)
        await type_in(pilot, "unit VET-O50")
        await keys(pilot, "tab", "t")
        for _ in range(3):
            for _ in range(4):
                await pilot.press("space")
                clock.advance(timedelta(milliseconds=450))
            clock.advance(timedelta(milliseconds=1550))
        await settle(pilot)
        assert "Groups: 4, 4, 4" in shown(pilot)
        assert "= 4 (sure)" in shown(pilot)
        await keys(pilot, "l")
        await type_in(pilot, "amber LD2 outdoor")
        await keys(pilot, "enter")

        assert [each.id for each in view_of(pilot).answer.decodes[0].candidates] == [
            "vellamere-tern/amber-4"
        ]
        await keys(pilot, "s")
        if not isinstance(pilot.app.screen, Page):
            await keys(pilot, "1")
        # PDF page 11 holds the row; the next page the table's second half.
        assert "PDF page 11 of 23" in shown(pilot)
        assert "4  Discharge sensor TH3" in shown(pilot)
        await keys(pilot, "n")
        assert "PDF page 12 of 23" in shown(pilot)
        await keys(pilot, "o")
        assert "PDF page 12" in flat(shown(pilot))


@sizes((40, 20))
async def test_a_wait_runs_out_while_another_job_is_on_the_desk(
    size: tuple[int, int], sample_places: Places, tmp_path: Path
) -> None:
    clock = FixedClock(START)
    desk = desk_on(sample_places, tmp_path, clock)
    async with desk.run_test(size=size) as pilot:
        await settle(pilot)
        await type_in(pilot, "unit VET-O50, I reset it 2 minutes ago")
        first = view_of(pilot).job
        # 5 minutes after a reset (PDF page 9), of which 2 are gone.
        assert shown(pilot).startswith("3:00 ")
        await keys(pilot, "tab", "n")
        await keys(pilot, "tab")
        await type_in(pilot, "no heat in cabin 4")
        second = view_of(pilot).job
        assert second != first
        clock.advance(timedelta(minutes=4))
        desk.tick()
        await settle(pilot)

        assert shown(pilot).startswith("READY since 08:33 VET-O50")
        await keys(pilot, "tab", "j")
        assert "READY since 08:33" in shown(pilot).splitlines()[1]
        await keys(pilot, "enter")
        assert view_of(pilot).job == first
        await keys(pilot, "a")
        assert "READY" not in shown(pilot).splitlines()[0]
        await keys(pilot, "x")
        await type_in(pilot, "runs again")
        await keys(pilot, "j")
        assert "closed" in shown(pilot)
        await keys(pilot, "q", "c")
        assert "sent to the terminal's clipboard; also saved to" in flat(shown(pilot))
        assert list((tmp_path / "answers").glob(f"{first}-*.md"))


async def test_the_first_useful_line_takes_twelve_keys_at_most(
    sample_places: Places, tmp_path: Path
) -> None:
    desk = desk_on(sample_places, tmp_path)
    async with desk.run_test(size=(40, 20)) as pilot:
        await settle(pilot)
        pressed = [*"code", "space", *"e4", "enter"]
        await pilot.press(*pressed)
        await settle(pilot)

        assert len(pressed) <= 12
        assert view_of(pilot).answer.statements
        assert "> code e4" in shown(pilot)


@pytest.mark.parametrize("size", [(30, 20), (60, 9)])
async def test_a_terminal_too_small_says_what_to_do(
    size: tuple[int, int], sample_places: Places, tmp_path: Path
) -> None:
    desk = desk_on(sample_places, tmp_path)
    async with desk.run_test(size=size) as pilot:
        await settle(pilot)

        assert "faultleaf talk" in flat(shown(pilot))


async def test_a_new_size_in_the_middle_of_a_job_loses_nothing(
    sample_places: Places, tmp_path: Path
) -> None:
    desk = desk_on(sample_places, tmp_path)
    async with desk.run_test(size=(120, 40)) as pilot:
        await settle(pilot)
        await type_in(pilot, "unit VET-O50, I reset it 2 minutes ago")
        await type_in(pilot, "half a sentence", enter=False)
        for size in ((40, 20), (20, 5), (80, 24)):
            await pilot.resize_terminal(*size)
            await settle(pilot)

        text = shown(pilot)
        assert "> unit VET-O50, I reset it 2 minutes ago" in text
        assert "half a sentence" in text
        assert text.startswith("3:00 ")


async def test_what_was_typed_before_the_job_was_open_goes_to_it(
    sample_places: Places, tmp_path: Path
) -> None:
    first = desk_on(sample_places, tmp_path)
    async with first.run_test() as pilot:
        await settle(pilot)
        await type_in(pilot, "unit VET-O50")
        job = view_of(pilot).job
    again = desk_on(sample_places, tmp_path, FixedClock(START + timedelta(minutes=1)))
    async with again.run_test() as pilot:
        await pilot.press(*"hello", "enter")
        await settle(pilot)

        assert view_of(pilot).job == job
        assert view_of(pilot).turns == 2


async def test_a_job_of_yesterday_is_not_gone_on_with_unasked(
    sample_places: Places, tmp_path: Path
) -> None:
    first = desk_on(sample_places, tmp_path)
    async with first.run_test() as pilot:
        await settle(pilot)
        await type_in(pilot, "unit VET-O50")
    again = desk_on(sample_places, tmp_path, FixedClock(START + timedelta(days=1)))
    async with again.run_test() as pilot:
        await settle(pilot)

        assert again.view is None
        await keys(pilot, "tab", "j", "enter")
        assert view_of(pilot).turns == 1


async def test_a_letter_right_behind_tab_acts_and_is_not_written(
    sample_places: Places, tmp_path: Path
) -> None:
    desk = desk_on(sample_places, tmp_path)
    async with desk.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        # Both keys are on their way before either was handled.
        for key, character in (("tab", "\t"), ("l", "l")):
            desk.post_message(events.Key(key, character))
        await settle(pilot)
        await settle(pilot)

        assert shown(pilot).startswith("LIBRARY")


async def test_a_whole_job_in_one_burst_of_keys_loses_none(
    sample_places: Settings, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # The burst holds a q, which would not wait long for a slow machine.
    monkeypatch.setattr("tui.desk.gate.LEAVE_WITHIN", 20.0)
    desk = desk_on(sample_places, tmp_path)
    async with desk.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        burst = (
            *("unit VET-O50, I am a technician", "enter"),
            *("amber light LD2 flashes 4 times, then a pause", "enter"),
            *("tab", "2"),  # seated: asked only once the lamp is understood
            *("r", "TH3", "tab", "9 kohm", "enter"),
            *("l", "a", "/nowhere/manual", "shift+home", "delete", "enter", "q"),
            *("t", "space", "q"),
            *("slash", "help", "enter", "q"),
            *("tab", "last words"),
        )
        named = ("enter", "tab", "space", "slash", "shift+home", "delete")
        pressed = [key for each in burst for key in ([each] if each in named else each)]
        await keys(pilot, *pressed)

        turns = [turn.words for turn in desk.main.query_one(Conversation).turns]
        assert turns[0] == "unit VET-O50, I am a technician"
        assert turns[2:] == ["seated", "TH3 9 kohm"]
        assert desk.main.query_one(Composer).value == "last words"
        assert pilot.app.screen is desk.main


async def test_a_paste_of_several_lines_is_taken_in_whole(
    sample_places: Settings, tmp_path: Path
) -> None:
    desk = desk_on(sample_places, tmp_path)
    async with desk.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        desk.post_message(events.Paste("unit VET-O50,\namber light on\n"))
        await keys(pilot, "!", "enter")

        assert view_of(pilot).turns == 1
        assert "> unit VET-O50, amber light on!" in shown(pilot)
