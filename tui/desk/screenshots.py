"""Three pictures of the screen for the README, always of the same moment.

``python -m tui.desk.screenshots FOLDER`` plays the first case on the sample library
without a terminal and writes one SVG file a size.
"""

from __future__ import annotations

import asyncio
import os
import sys
import tempfile
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from assistant.clock import FixedClock
from assistant.settings import Settings, settings
from tui.desk.app import Desk
from tui.desk.bench import Bench
from tui.plain.console import Console

FOLDER = ".screenshots"
START = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)
WORDS = (
    (0, "main lodge has no cooling, the outdoor unit says VET-O50, I am a technician"),
    (2, "amber light LD2 on the outdoor board flashes 4 times, then a pause"),
    (1, "I reset it 2 minutes ago"),
)
SIZES = {
    "desk": (120, 40, ()),
    "page": (80, 24, ("tab", "s", "1")),
    "pocket": (40, 20, ("tab", "v")),
}
"""Name of a picture to its columns and lines, and the keys pressed at the end."""


async def picture(places: Settings, name: str, folder: Path) -> Path:
    """Play the case at one size and write its picture."""
    width, height, last = SIZES[name]
    clock = FixedClock(START)
    with tempfile.TemporaryDirectory() as aside:
        own = replace(places, jobs=Path(aside) / "jobs.sqlite", cache=Path(aside))
        desk = Desk(Bench(own, clock, 0), zone=UTC)
        async with desk.run_test(size=(width, height)) as pilot:
            for minutes, words in WORDS:
                clock.advance(timedelta(minutes=minutes))
                desk.say(words)
                await _settle(desk)
            for key in last:
                await pilot.press(key)
                await _settle(desk)
            await pilot.pause()
            path = folder / f"{name}.svg"
            path.write_text(desk.export_screenshot(title="faultleaf"), "utf-8")
    return path


async def _settle(desk: Desk) -> None:
    """Wait until the worker rests and its messages are drawn."""
    for _ in range(3):
        while not (desk.engine.started and desk.engine.idle):
            await asyncio.sleep(0.02)
        await asyncio.sleep(0.1)


def main(folder: Path) -> None:
    """Write every picture into a folder, making it."""
    from tui.samples import sample_library

    os.environ.pop("NO_COLOR", None)
    console = Console()
    places = settings()
    library = sample_library(places, console)
    folder.mkdir(parents=True, exist_ok=True)
    for name in SIZES:
        path = asyncio.run(picture(replace(places, library=library), name, folder))
        console.line(str(path))


if __name__ == "__main__":
    main(Path(sys.argv[1] if len(sys.argv) > 1 else FOLDER))
