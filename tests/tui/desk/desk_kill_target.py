"""A screen without a terminal that types a written job, to be killed at any moment.

Run as ``python desk_kill_target.py LIBRARY JOBS``; says each turn that it shows.
"""

from __future__ import annotations

import asyncio
import os
import sys
from pathlib import Path

from assistant.clock import SystemClock
from assistant.settings import Settings
from tests.desk_driver import settle, type_in
from tui.desk.app import Desk
from tui.desk.bench import Bench

WORDS = (
    "unit VET-O50, I am a technician",
    "amber light LD2 flashes 4 times, then a pause",
    "I reset it just now",
    "plug CN12 is seated, isolated and measured dead",
    "power off, CN12 pulled, TH3 reads 9 kohm at 30 C at the sensor",
    "it is 31 C outside",
    "what next?",
    "the outdoor fan runs",
    "supply is 231 V",
    "no call at the thermostat",
    "what does the manual say about the discharge sensor",
    "cooling mode",
)


def say(line: str) -> None:
    """Tell the test at once: Textual holds back what is printed."""
    os.write(1, f"{line}\n".encode())


async def main(library: Path, jobs: Path) -> None:
    """Go on with the job where it was left, word after word."""
    places = Settings(library=library, jobs=jobs, cache=jobs.parent / "none")
    desk = Desk(Bench(places, SystemClock(), 0))
    async with desk.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        done = desk.view.turns if desk.view else 0
        say(f"open {done}")
        for nth in range(done, len(WORDS)):
            await type_in(pilot, WORDS[nth])
            await settle(pilot)
            assert desk.view is not None
            say(f"shown {desk.view.turns}")


if __name__ == "__main__":
    asyncio.run(main(Path(sys.argv[1]), Path(sys.argv[2])))
