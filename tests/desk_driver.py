"""Drives the screen in tests: keys in, the text in view out, the worker waited for."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from textual import events
from textual.keys import _character_to_key
from textual.pilot import Pilot

from assistant.clock import FixedClock
from assistant.settings import Settings
from tui.desk.app import Desk
from tui.desk.bench import Bench

START = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)
PATIENCE_S = 30.0
PAUSE_S = 0.005
RESTS = 4
"""Looks in a row that must find nothing going on; Textual takes in a new size late."""
CHARACTERS = {"space": " ", "enter": "\r", "tab": "\t", "slash": "/"}


def desk_on(places: Settings, folder: Path, clock: FixedClock | None = None) -> Desk:
    """Return the screen over a library, its jobs in `folder`, searched by words only.

    The encoder is left out: its cache is a folder that is not there.
    """
    settings = replace(places, jobs=folder / "jobs.sqlite", cache=folder / "none")
    return Desk(Bench(settings, clock or FixedClock(START), 0), zone=UTC)


async def settle(pilot: Pilot[None]) -> None:
    """Wait until every key was handled, the worker rests and all is drawn."""
    desk = pilot.app
    assert isinstance(desk, Desk)
    rested = 0
    for _ in range(int(PATIENCE_S / PAUSE_S)):
        await pilot.pause(PAUSE_S)
        begun = desk.engine.started and desk.engine.idle
        rested = rested + 1 if begun and desk.gate.idle else 0
        if rested == RESTS:
            return
    raise AssertionError("the screen did not come to rest")


async def keys(pilot: Pilot[None], *pressed: str) -> None:
    """Press keys by name, all at once as a paste does, and wait for what they do."""
    driver = pilot.app._driver
    assert driver is not None
    for key in pressed:
        name = key if len(key) > 1 else _character_to_key(key)
        character = CHARACTERS.get(key, key if len(key) == 1 else None)
        driver.send_message(events.Key(name, character))
    await settle(pilot)


async def type_in(pilot: Pilot[None], text: str, *, enter: bool = True) -> None:
    """Type a text, and Enter."""
    await keys(pilot, *text, *(["enter"] if enter else []))


def shown(pilot: Pilot[None]) -> str:
    """Return the text in view, line by line."""
    strips = pilot.app.screen._compositor.render_strips()
    return "\n".join(strip.text.rstrip() for strip in strips)


def flat(text: str) -> str:
    """Return a text without its line breaks and runs of spaces."""
    return " ".join(text.split())
