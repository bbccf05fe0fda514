"""Trips that stay when a value was not back in time, even through a restart."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta
from typing import Literal

from assistant.timing.moment import Moment
from assistant.timing.started import comes_after
from assistant.timing.triggers import Trigger
from assistant.timing.values import Happening
from assistant.timing.wait_kinds.holds import Standby

BACK: frozenset[Trigger] = frozenset({"value_back", "power_restored"})
"""What says that the watched value came back, and when."""
Latch = Literal["ended", "open", "yes", "cannot_tell"]


def latch(
    wait: Standby,
    told: Sequence[Happening],
    started: Moment,
    place: int,
    now: datetime,
) -> Latch:
    """Say whether the value came back in time, or the trip stays.

    Parameters
    ----------
    wait : Standby
        One that latches.
    told : sequence of Happening
        In the order told.
    started : Moment
        When the value left its band.
    place : int
        Place of the start in `told`.
    now : datetime

    Returns
    -------
    Latch
        ``ended`` when it was surely back in time, or was cleared; ``yes`` when it
        surely came back too late; ``cannot_tell`` where the time of its return is
        not known, or may lie on either side; ``open`` before the time is up.
    """
    length = timedelta(seconds=wait.give_up.value if wait.give_up else 0)
    limit = started.plus(length)
    after = [
        one
        for number, one in enumerate(told)
        if comes_after(one, number, started, place)
    ]
    if any(_cleared(wait, one, limit) for one in after):
        return "ended"
    back = [one.at for one in after if one.trigger in BACK]
    found: Latch = "open"
    if back:
        found = _returned(back, limit)
    elif now > limit.earliest:
        found = "cannot_tell"
    return found


def _returned(back: Sequence[Moment | None], limit: Moment) -> Latch:
    known = [at for at in back if at is not None]
    if any(at.latest <= limit.earliest for at in known):
        return "ended"
    if len(known) == len(back) and all(at.earliest > limit.latest for at in known):
        return "yes"
    return "cannot_tell"


def _cleared(wait: Standby, one: Happening, limit: Moment) -> bool:
    """Return whether something ends the wait, or clears what it left.

    A restart ends it while it has not latched yet, later only where the document does
    not say that the trip survives it.
    """
    if one.trigger in wait.cleared_by:
        return True
    if one.trigger in BACK or one.trigger not in wait.enders:
        return False
    if not wait.survives_restart:
        return True
    return one.at is not None and one.at.latest <= limit.earliest
