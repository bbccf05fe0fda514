"""Drives the screen in tests: keys in, the text in view out, the worker waited for."""

from __future__ import annotations

import asyncio
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

from textual.keys import _character_to_key
from textual.pilot import Pilot

from assistant.clock import FixedClock
from assistant.settings import Settings
from tui.desk.app import Desk
from tui.desk.bench import Bench

START = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)
PATIENCE_S = 30.0


def desk_on(places: Settings, folder: Path, clock: FixedClock | None = None) -> Desk:
    """Return the screen over a library, its jobs in `folder`, searched by words only.

    The encoder is left out: its cache is a folder that is not there.
    """
    settings = replace(places, jobs=folder / "jobs.sqlite", cache=folder / "none")
    return Desk(Bench(settings, clock or FixedClock(START), 0), zone=UTC)


async def settle(pilot: Pilot[None]) -> None:
    """Wait until the worker has nothing to do and every message is handled."""
    desk = pilot.app
    assert isinstance(desk, Desk)
    for _ in range(int(PATIENCE_S / 0.02)):
        await pilot.pause()
        if desk.engine.idle:
            await pilot.pause()
            await pilot.pause()
            if desk.engine.idle:
                return
        await asyncio.sleep(0.02)
    raise AssertionError("the worker did not come to rest")


async def begin(pilot: Pilot[None]) -> None:
    """Wait until the worker has begun and opened what it opens by itself."""
    desk = pilot.app
    assert isinstance(desk, Desk)
    for _ in range(int(PATIENCE_S / 0.02)):
        await pilot.pause()
        if desk.engine.started and desk.engine.idle:
            break
        await asyncio.sleep(0.02)
    await settle(pilot)


async def keys(pilot: Pilot[None], *pressed: str) -> None:
    """Press keys by name, then wait for what comes of them."""
    await pilot.press(*pressed)
    await settle(pilot)


async def type_in(pilot: Pilot[None], text: str, *, enter: bool = True) -> None:
    """Type a text letter by letter, and Enter."""
    await pilot.press(*(_character_to_key(letter) for letter in text))
    if enter:
        await pilot.press("enter")
    await settle(pilot)


def shown(pilot: Pilot[None]) -> str:
    """Return the text in view, line by line."""
    strips = pilot.app.screen._compositor.render_strips()
    return "\n".join(strip.text.rstrip() for strip in strips)


def flat(text: str) -> str:
    """Return a text without its line breaks and runs of spaces."""
    return " ".join(text.split())
