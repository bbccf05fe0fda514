"""Open the screen: settle the terminal, run the app, leave within a second."""

from __future__ import annotations

import os
from datetime import timedelta
from typing import TYPE_CHECKING

from assistant.clock import Clock, SystemClock
from assistant.settings import Settings
from tui.desk.terminal import only_the_driver_writes, settle_environment

if TYPE_CHECKING:
    from tui.desk.app import Desk

LOG = "screen.log"


def make_desk(settings: Settings, clock: Clock) -> Desk:
    """Return the app over what lies at these places; nothing is opened yet."""
    from tui.desk.app import Desk
    from tui.desk.bench import Bench

    offset = clock.now().astimezone().utcoffset() or timedelta(0)
    minutes = round(offset.total_seconds() / 60)
    return Desk(Bench(settings, clock, minutes))


def open_screen(settings: Settings) -> int:
    """Run the screen on this terminal and return the exit code."""
    settle_environment(os.environ)
    with only_the_driver_writes(settings.jobs.parent / LOG):
        desk = make_desk(settings, SystemClock())
        desk.run()
        ended = desk.engine.stop()
    code = desk.return_code or 0
    if not ended:
        # A model that is being loaded cannot be asked to stop. Every event is on the
        # disk, so nothing is lost by leaving without it.
        os._exit(code)
    return code
