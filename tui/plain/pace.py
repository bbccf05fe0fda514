"""The line that long work draws: how far, over what, and about how long yet."""

from __future__ import annotations

from assistant.clock import Clock
from ingest.progress import Progress, Tally, seconds_left

STAGES = {
    "look": "looking at files",
    "read": "reading",
    "ocr": "reading pictures",
    "store": "reading",
    "packs": "proving rule packs",
    "embed": "embedding",
}
_MINUTE = 60
_HOUR = 3600


class PaceLine:
    """Makes the line of each step; a stage's time runs from its first step.

    Parameters
    ----------
    clock : Clock
        What tells how long a stage has taken so far.
    """

    def __init__(self, clock: Clock) -> None:
        self._clock = clock
        self._stage = ""
        self._began = clock.now()

    def line(self, step: Progress) -> str:
        """Return the line of a step."""
        stage = STAGES.get(step.stage, step.stage)
        if stage != self._stage:
            self._stage, self._began = stage, self._clock.now()
        elapsed = (self._clock.now() - self._began).total_seconds()
        if step.tally is None or step.stage == "ocr":
            done, total = step.done, step.total
            parts = [f"{stage}: {done} of {total}"]
        else:
            done, total = step.tally.pages, step.tally.about
            parts = [f"{stage}: {_counted(step.tally)}"]
        parts.append(spoken(seconds_left(done, total, elapsed)))
        parts.append(step.note)
        return ", ".join(part for part in parts if part)


def _counted(tally: Tally) -> str:
    return (
        f"{tally.documents} of {tally.of} documents, "
        f"{tally.pages} of about {tally.about} pages, {tally.passages} passages"
    )


def spoken(seconds: float | None) -> str:
    """Return about how long is left, in words; nothing when nobody knows.

    Examples
    --------
    >>> spoken(42.0), spoken(200.0), spoken(7900.0), spoken(None)
    ('under a minute left', 'about 4 min left', 'about 2 h 12 min left', '')
    """
    if seconds is None:
        return ""
    if seconds < _MINUTE:
        return "under a minute left"
    minutes = -(-round(seconds) // _MINUTE)
    if seconds < _HOUR:
        return f"about {minutes} min left"
    return f"about {minutes // _MINUTE} h {minutes % _MINUTE} min left"
