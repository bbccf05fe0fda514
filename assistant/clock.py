"""The one module that reads the time and makes identifiers from it."""

from __future__ import annotations

import secrets
import time
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Protocol

ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"


@dataclass(frozen=True, slots=True)
class Steady:
    """Seconds that run on whatever the wall clock is set to.

    Two can be compared only where `run`, the run of the program, is the same.
    """

    run: str
    seconds: float


class Clock(Protocol):
    """What the rest of the program may ask of time."""

    def now(self) -> datetime:
        """Return the present instant in UTC."""
        ...

    def new_id(self) -> str:
        """Return a fresh ULID: 26 characters, sortable by creation."""
        ...

    def steady(self) -> Steady | None:
        """Return the seconds that nobody can set, where there are such."""
        ...


def ulid(at: datetime, entropy: int) -> str:
    """Encode an instant and 80 bits of entropy as a ULID.

    The layout is that of the open ULID specification: 48 bits of Unix
    milliseconds, then 80 bits, in Crockford base 32.

    Examples
    --------
    >>> from datetime import UTC, datetime
    >>> ulid(datetime(1970, 1, 1, tzinfo=UTC), 1)
    '00000000000000000000000001'
    """
    value = (int(at.timestamp() * 1000) << 80) | (entropy & ((1 << 80) - 1))
    digits = [ALPHABET[(value >> (5 * place)) & 31] for place in range(26)]
    return "".join(reversed(digits))


class SystemClock:
    """The machine's own clock."""

    def __init__(self) -> None:
        self._run = secrets.token_hex(4)
        # Where there is one, a clock that runs on while the machine is suspended.
        self._counts = getattr(time, "CLOCK_BOOTTIME", None)

    def now(self) -> datetime:
        """Return the present instant in UTC, to the millisecond."""
        present = datetime.now(UTC)
        return present.replace(microsecond=present.microsecond // 1000 * 1000)

    def new_id(self) -> str:
        """Return a ULID of the present instant."""
        return ulid(self.now(), secrets.randbits(80))

    def steady(self) -> Steady:
        """Return the seconds since the machine started, by this run of the program."""
        counts = self._counts
        seconds = time.monotonic() if counts is None else time.clock_gettime(counts)
        return Steady(self._run, round(seconds, 3))


class FixedClock:
    """A clock that stands still until it is moved: for replays and tests.

    With `counting` it has steady seconds too, which `advance` moves and `set` does
    not: as on a machine whose wall clock somebody sets.
    """

    def __init__(self, start: datetime, *, counting: bool = False) -> None:
        self._now = start
        self._made = 0
        self._seconds = 0.0 if counting else None

    def now(self) -> datetime:
        """Return the instant the clock was last set to."""
        return self._now

    def new_id(self) -> str:
        """Return the next identifier of a fixed sequence."""
        self._made += 1
        return ulid(self._now, self._made)

    def advance(self, by: timedelta) -> None:
        """Move the clock by `by`, which may be negative."""
        self._now += by
        if self._seconds is not None:
            self._seconds += by.total_seconds()

    def steady(self) -> Steady | None:
        """Return the seconds counted, where it counts them."""
        return None if self._seconds is None else Steady("fixed", self._seconds)

    def set(self, to: datetime) -> None:
        """Set the clock to `to`."""
        self._now = to
