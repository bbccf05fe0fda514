"""Every size has its layout, and nothing is lost on the way from one to another."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import OptionList

from assistant.clock import FixedClock
from assistant.settings import Settings
from tests.desk_driver import START, desk_on, keys, settle, shown, type_in
from tui.desk.app import Desk
from tui.desk.bench import OLDER, OPENED_WITH, Bench
from tui.desk.widgets.composer import Composer
from tui.desk.widgets.conversation import Block, Conversation

pytestmark = pytest.mark.model
SIZES = ((120, 40), (80, 24), (60, 20), (40, 20))
TURNS = 40


def first_in_view(pilot: Pilot[None]) -> str:
    """Return what the person said in the turn at the top of the conversation."""
    talk = pilot.app.query_one(Conversation)
    for block in talk.query(Block):
        if block.virtual_region.bottom > talk.scroll_y:
            return block.turn.words
    raise AssertionError("no turn is in view")


def assert_laid_out(pilot: Pilot[None]) -> None:
    """Assert that all parts lie within the screen, none over another."""
    desk = pilot.app
    wanted = ("#status", "#talk", "#question", "#write", "#keys")
    regions = [desk.screen.query_one(each).region for each in wanted]
    for region in regions:
        assert region.area > 0
        assert desk.screen.region.contains_region(region)
    for one, other in combinations(regions, 2):
        assert not one.overlaps(other)
    talk = desk.screen.query_one("#talk").region
    # Most of the screen is for the conversation: 7 lines are for all the rest.
    assert talk.height >= desk.size.height - 9
    assert max(map(len, shown(pilot).splitlines())) <= desk.size.width


async def a_long_job(places: Settings, folder: Path) -> Desk:
    """Return a screen over a job of many turns, made without it."""
    desk = desk_on(places, folder)
    bench = Bench(desk.engine.bench.settings, FixedClock(START), 0)
    bench.say("unit VET-O50, amber light LD2 flashes 4 times, then a pause")
    for nth in range(1, TURNS):
        bench.say(f"hello number {nth}")
    bench.shut()
    return desk


async def test_every_size_shows_all_parts_and_keeps_what_was_there(
    sample_places: Settings, tmp_path: Path
) -> None:
    desk = desk_on(sample_places, tmp_path)
    async with desk.run_test(size=SIZES[0]) as pilot:
        await settle(pilot)
        for words in ("unit VET-O50", "amber light LD2 flashes 4 times, then a pause"):
            await type_in(pilot, words)
        await type_in(pilot, "half a sentence", enter=False)
        await keys(pilot, "left", "left", "shift+left", "shift+left")
        line = desk.main.query_one(Composer)
        before = (line.value, line.selection)
        for size in (*SIZES, (20, 5), *reversed(SIZES)):
            await pilot.resize_terminal(*size)
            await settle(pilot)
            if size != (20, 5):
                assert_laid_out(pilot)
                assert "> amber light LD2 flashes" in shown(pilot)

        assert (line.value, line.selection) == before
        assert before[0] == "half a sentence"
        assert before[1].start != before[1].end


async def test_a_new_size_keeps_the_place_scrolled_to_and_the_row_chosen(
    sample_places: Settings, tmp_path: Path
) -> None:
    desk = await a_long_job(sample_places, tmp_path)
    async with desk.run_test(size=(120, 40)) as pilot:
        await settle(pilot)
        await keys(pilot, "tab", "o", "o", "up", "up", "up")
        here = first_in_view(pilot)
        for size in ((40, 20), (80, 24), (60, 20), (120, 40)):
            await pilot.resize_terminal(*size)
            await settle(pilot)
            assert first_in_view(pilot) == here
        await keys(pilot, "slash", "tab", "down", "down")
        rows = pilot.app.screen.query_one(OptionList)
        chosen = rows.highlighted
        await pilot.resize_terminal(40, 20)
        await settle(pilot)

        assert chosen
        assert rows.highlighted == chosen


async def test_older_turns_come_when_scrolled_to_until_the_first(
    sample_places: Settings, tmp_path: Path
) -> None:
    desk = await a_long_job(sample_places, tmp_path)
    async with desk.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        talk = desk.main.query_one(Conversation)
        assert len(talk.turns) == OPENED_WITH
        await keys(pilot, "tab", "home")
        here = first_in_view(pilot)
        await keys(pilot, "up")
        # What was at the top stays there; the older ones lie above it.
        assert len(talk.turns) == OPENED_WITH + OLDER
        assert first_in_view(pilot) == here
        for _ in range(2 * TURNS // OLDER):
            await keys(pilot, "home")

        words = [turn.words for turn in talk.turns]
        numbers = [f"hello number {nth}" for nth in range(1, TURNS)]
        assert words[1:] == numbers
        assert first_in_view(pilot).startswith("unit VET-O50")
        assert "older turns" not in shown(pilot)
        await keys(pilot, "o")
        assert "these are all turns of the job" in shown(pilot)
