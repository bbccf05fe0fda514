"""How the screen looks: few pictures, each looked at by eye before it is kept.

A picture that differs is opened (`pytest` writes a report beside it); when the new one
is meant, it is kept with `pytest --snapshot-update`. Textual is pinned: another version
draws otherwise, and these tests are then left out.
"""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
import textual
from textual.pilot import Pilot

from assistant.clock import FixedClock
from assistant.settings import Settings
from tests.desk_driver import START, desk_on, keys, settle, type_in

pytestmark = [
    pytest.mark.model,
    pytest.mark.skipif(textual.__version__ != "8.2.8", reason="pictures of 8.2.8"),
]
LAMP = "amber light LD2 on the outdoor board flashes 4 times, then a pause"


async def to_the_wait(pilot: Pilot[None]) -> None:
    """Tell unit, lamp and reset."""
    await settle(pilot)
    await type_in(pilot, "unit VET-O50, I am a technician")
    await type_in(pilot, LAMP)
    await type_in(pilot, "I reset it 2 minutes ago")


@pytest.mark.parametrize("size", [(120, 40), (80, 24), (40, 20)])
def test_a_job_in_the_middle(
    size: tuple[int, int], snap_compare: Any, sample_places: Settings, tmp_path: Path
) -> None:
    desk = desk_on(sample_places, tmp_path)

    assert snap_compare(desk, terminal_size=size, run_before=to_the_wait)


def test_the_tap_counter_after_three_groups(
    snap_compare: Any, sample_places: Settings, tmp_path: Path
) -> None:
    clock = FixedClock(START)
    desk = desk_on(sample_places, tmp_path, clock)

    async def tapped(pilot: Pilot[None]) -> None:
        await settle(pilot)
        await keys(pilot, "tab", "t")
        for _ in range(3):
            for _ in range(4):
                await keys(pilot, "space")
                clock.advance(timedelta(milliseconds=500))
            clock.advance(timedelta(seconds=2))

    assert snap_compare(desk, terminal_size=(60, 16), run_before=tapped)


def test_without_colour_a_cited_page_still_marks_its_words(
    snap_compare: Any,
    sample_places: Settings,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    desk = desk_on(sample_places, tmp_path)

    async def opened(pilot: Pilot[None]) -> None:
        await to_the_wait(pilot)
        await keys(pilot, "tab", "s", "1")

    assert snap_compare(desk, terminal_size=(80, 24), run_before=opened)
