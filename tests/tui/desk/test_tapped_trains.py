"""Trains of flashes through the tap counter's own keys, at the times kept beside."""

from __future__ import annotations

import asyncio
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from ruamel.yaml import YAML
from textual import events
from textual.pilot import Pilot

from assistant.clock import FixedClock, SystemClock
from assistant.facts import LampFact
from assistant.settings import Settings
from assistant.signals.observation import Observation
from tests.desk_driver import START, desk_on, keys, settle, shown, type_in
from tui.desk.app import Desk
from tui.desk.bench import Bench
from tui.desk.screens.tap import WAYS, Tap

Train = dict[str, Any]
TRAINS: list[Train] = YAML(typ="safe").load(
    Path(__file__).with_name("tapped_trains.yaml")
)
LONG = "m"


async def press(pilot: Pilot[None], key: str) -> None:
    """Press a key and wait until it was handled, not until all is drawn."""
    desk, driver = pilot.app, pilot.app._driver
    assert isinstance(desk, Desk)
    assert driver is not None
    driver.send_message(events.Key(key, " " if key == "space" else key))
    await pilot.pause(0)
    while not desk.gate.idle:
        await asyncio.sleep(0)


async def tap_through(pilot: Pilot[None], clock: FixedClock, train: Train) -> None:
    """Open the counter, press its keys at the train's times, round by round."""
    await press(pilot, "t")
    for nth, times in enumerate(train["rounds"]):
        if nth:
            await press(pilot, "r")
        zero = clock.now()
        for time in str(times).split():
            clock.set(zero + timedelta(seconds=float(time.lstrip(LONG))))
            await press(pilot, LONG if time.startswith(LONG) else "space")
        clock.advance(timedelta(seconds=20))
    for _ in range(WAYS.index(train["window"]) if "window" in train else 0):
        await press(pilot, "w")
    await settle(pilot)


def best(tap: Tap) -> str:
    """Return what the counter holds for the likeliest, as the trains are noted."""
    result = tap.result
    if result.window_s is not None:
        return str(result.in_window[0].count)
    if result.train.digits is not None:
        digits = result.train.digits
        return f"{digits.short[0].count} quick {digits.long[0].count} long"
    return "even" if result.train.form == "even" else str(result.train.count)


def noted(seen: Observation) -> str:
    """Return what was entered, as the trains are noted."""
    count, long = (
        " or ".join(map(str, each)) for each in (seen.count, seen.long_count)
    )
    if seen.state == "short_long":
        return f"{count} quick {long} long"
    return count if seen.state == "count" else "even"


def on_main(desk: Desk) -> bool:
    """Say whether the counter is closed."""
    return desk.screen is desk.main


def entered(desk: Desk) -> list[Observation]:
    """Return the lamps of all turns, as the store keeps them."""
    assert desk.view is not None
    session = Bench(desk.engine.bench.settings, SystemClock(), 0).session
    turns = session.transcript(desk.view.job, first=0, count=len(TRAINS) + 1)
    facts = [fact for turn in turns for fact in getattr(turn.words, "facts", ())]
    return [fact.observation for fact in facts if isinstance(fact, LampFact)]


@pytest.mark.parametrize(
    "every", [pytest.param(15), pytest.param(1, marks=pytest.mark.slow)]
)
async def test_trains_tapped_by_key_are_read_and_entered_as_the_board_says(
    every: int, sample_places: Settings, tmp_path: Path
) -> None:
    trains = TRAINS[every - 1 :: every]
    clock = FixedClock(START)
    desk = desk_on(sample_places, tmp_path, clock)
    async with desk.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await type_in(pilot, "a lamp")
        await keys(pilot, "tab")
        for train in trains:
            await tap_through(pilot, clock, train)
            assert isinstance(desk.screen, Tap)
            assert best(desk.screen) == str(train["says"]), train["lamp"]
            await keys(pilot, "enter")
            assert on_main(desk), shown(pilot)
        told = [noted(seen) for seen in entered(desk)]

    assert told == [str(train["says"]) for train in trains]


def test_the_trains_are_thirty_and_begin_everywhere() -> None:
    assert len(TRAINS) == 30
    assert {train["begins"] for train in TRAINS} == {
        "at a group",
        "in mid-group",
        "late, in the pause",
    }
