"""Times as a person reads and writes them: local, with the offset from UTC. Pure."""

from __future__ import annotations

import re
from datetime import UTC, datetime, timedelta, tzinfo

from assistant.errors import UsageError

_CLOCK = re.compile(r"(?P<hour>\d{1,2}):(?P<minute>\d{2})(?::(?P<second>\d{2}))?")
_AGO = re.compile(
    r"(?P<number>\d+)\s*(?P<unit>s|sec|seconds?|min|minutes?|h|hours?)\s+ago"
)
_SECONDS = {"s": 1, "m": 60, "h": 3600}


def local_time(at: datetime, zone: tzinfo | None, now: datetime | None = None) -> str:
    """Return ``10:35 (UTC+02:00)``, with the date when it is not that of `now`.

    Seconds are shown when they are not zero. `zone` None is the machine's own.
    """
    there = at.astimezone(zone)
    clock = f"{there:%H:%M:%S}" if there.second else f"{there:%H:%M}"
    if now is not None and now.astimezone(zone).date() != there.date():
        clock = f"{there:%Y-%m-%d} {clock}"
    return f"{clock} ({offset(there)})"


def date_time(at: datetime, zone: tzinfo | None) -> str:
    """Return ``2031-06-14 10:35:07 (UTC+02:00)``."""
    there = at.astimezone(zone)
    return f"{there:%Y-%m-%d %H:%M:%S} ({offset(there)})"


def offset(at: datetime) -> str:
    """Return ``UTC`` or ``UTC+02:00``."""
    by = at.utcoffset() or timedelta(0)
    return "UTC" if not by else f"UTC{at:%z}"[:6] + ":" + f"{at:%z}"[3:5]


def length(by: timedelta) -> str:
    """Return a length of time in its two largest parts: ``3 min 20 s``."""
    seconds = max(0, round(by.total_seconds()))
    parts = []
    for name, size in (("d", 86400), ("h", 3600), ("min", 60), ("s", 1)):
        number, seconds = divmod(seconds, size)
        if number:
            parts.append(f"{number} {name}")
    return " ".join(parts[:2]) or "0 s"


def parse_at(text: str, now: datetime, zone: tzinfo | None = None) -> datetime:
    """Return the UTC instant that `text` names.

    Parameters
    ----------
    text : str
        ``2031-06-14T10:35Z`` (without an offset: local time), ``10:35`` (the last
        time it was so), or ``20 min ago``.
    now : datetime
        The present instant.
    zone : tzinfo, optional
        The local zone; None is the machine's own.

    Raises
    ------
    UsageError
        When it names no time.
    """
    asked = text.strip()
    ago = _AGO.fullmatch(asked)
    if ago:
        seconds = int(ago["number"]) * _SECONDS[ago["unit"][0]]
        return now - timedelta(seconds=seconds)
    try:
        if _CLOCK.fullmatch(asked):
            return _last_time(asked, now, zone)
        there = datetime.fromisoformat(asked)
    except (ValueError, OverflowError) as error:
        raise UsageError(
            f"{text!r} is not a time",
            "write 10:35, 2031-06-14T10:35Z or 20 min ago",
        ) from error
    if there.tzinfo is None:
        there = there.replace(tzinfo=zone) if zone else there.astimezone()
    return there.astimezone(UTC)


def _last_time(asked: str, now: datetime, zone: tzinfo | None) -> datetime:
    hour, minute, *second = (int(part) for part in asked.split(":"))
    here = now.astimezone(zone)
    at = here.replace(
        hour=hour, minute=minute, second=second[0] if second else 0, microsecond=0
    )
    return (at if at <= here else at - timedelta(days=1)).astimezone(UTC)
