"""Timers in words for narrow places. Pure."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import datetime, timedelta, tzinfo
from typing import TYPE_CHECKING

from tui.desk.views import JobLine, end_of, over, over_since, running

if TYPE_CHECKING:
    from assistant.dialogue.answer import WaitShown

MINUTE, HOUR, DAY = 60, 3600, 86400


def left(by: timedelta) -> str:
    """Return a time left as a clock shows it: ``4:05``, ``1:02:03``, ``2 d 3 h``.

    Examples
    --------
    >>> left(timedelta(minutes=4, seconds=5)), left(timedelta(seconds=-3))
    ('4:05', '0:00')
    """
    seconds = max(0, -(-by // timedelta(seconds=1)))
    if seconds >= DAY:
        return f"{seconds // DAY} d {seconds % DAY // HOUR} h"
    if seconds >= HOUR:
        hours, rest = divmod(seconds, HOUR)
        return f"{hours}:{rest // MINUTE:02}:{rest % MINUTE:02}"
    return f"{seconds // MINUTE}:{seconds % MINUTE:02}"


def clock(at: datetime, zone: tzinfo | None) -> str:
    """Return a time of day, without its zone: the pane has no room for it."""
    return f"{at.astimezone(zone):%H:%M}"


def wait_line(wait: WaitShown, now: datetime, zone: tzinfo | None) -> str:
    """Say how a timer stands; only a running one changes from second to second."""
    since = over_since(wait)
    if wait.latched is not None:
        return "LATCHED" if wait.latched == "yes" else "may have latched"
    if wait.state in ("ready", "overdue") and since is not None:
        word = "READY" if wait.state == "ready" else "OVERDUE"
        return f"{word} since {clock(since, zone)}"
    end = end_of(wait)
    if wait.state == "running" and end is not None:
        if end <= now and wait.holds:
            return f"time over, needs {wait.holds[0]}"
        if end <= now:
            return f"READY since {clock(end, zone)}"
        return f"{left(end - now)} left, ready at {clock(end, zone)}"
    if wait.state == "start_unknown":
        return "when did it begin? not known"
    return wait.state.replace("_", " ")


def bar(
    lines: Iterable[JobLine], job: str | None, now: datetime, zone: tzinfo | None
) -> str:
    """Return the timers of every job in one line: ended ones first, then the next."""
    ended: list[str] = []
    waiting: list[tuple[datetime, str]] = []
    for line in lines:
        whose = "" if line.job == job else f" {line.unit or line.job[-6:]}"
        for wait in over(line):
            ended.append(f"{wait_line(wait, now, zone)}{whose}: {wait.name}")
        for wait in running(line):
            end = end_of(wait)
            if end is not None:
                still = left(end - now)
                if end <= now and wait.holds:
                    still = wait_line(wait, now, zone)
                text = f"{still}{whose} {wait.name}"
                waiting.append((end, text))
    running_words = [text for _, text in sorted(waiting)]
    return " | ".join((*ended, *running_words))


def title(lines: Sequence[JobLine], zone: tzinfo | None) -> str:
    """Return what the terminal's title says: what is over, else the name alone."""
    ended = [
        f"READY {clock(since, zone)} {line.unit or line.job[-6:]}"
        for line in lines
        for wait in over(line)
        if (since := over_since(wait)) is not None
    ]
    return f"{'; '.join(ended)} - faultleaf" if ended else "faultleaf"
