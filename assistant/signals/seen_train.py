"""A train that was read, as an observation: what is not sure stays open. Pure."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.signals.observation import Observation
from assistant.signals.taps import TapCount, likely
from assistant.signals.train_reader import TrainReading

LAMP = ("box", "board", "label", "colour", "emitter")
"""Slots that say which lamp it is, not what it does."""


def observed(reading: TrainReading, whose: Observation | None = None) -> Observation:
    """Return what a reading says of a lamp.

    Parameters
    ----------
    reading : TrainReading
    whose : Observation, optional
        Whose box, board, label, colour and emitter it takes.

    Examples
    --------
    >>> from assistant.signals.train_reader import read_train
    >>> found = observed(read_train([[0, 0.5, 3, 3.5, 6, 6.5]]))
    >>> found.state, found.count, found.pause, found.counted
    ('count', (2,), 'seen', (2, 2, 2))
    """
    return _of(_pattern(reading), whose)


def observed_in_windows(
    counts: Sequence[TapCount],
    window_s: float,
    watched: int,
    whose: Observation | None = None,
) -> Observation:
    """Return what a count over a window says of a lamp.

    Parameters
    ----------
    counts : sequence of TapCount
    window_s : float
        The time counted over [s].
    watched : int
        How many windows, one after another, were watched.
    whose : Observation, optional
        As for `observed`.

    Examples
    --------
    >>> found = observed_in_windows([TapCount(5, 0.9)], 10.0, 2)
    >>> found.count, found.window_s, found.groups_watched
    ((5,), 10.0, 2)
    """
    told: dict[str, object] = {"state": "count", "count": likely(counts)}
    told |= {"window_s": window_s, "groups_watched": watched}
    return _of(told, whose)


def _of(told: dict[str, object], whose: Observation | None) -> Observation:
    lamp = {slot: getattr(whose, slot) for slot in LAMP} if whose is not None else {}
    return Observation.model_validate(told | lamp)


def _pattern(reading: TrainReading) -> dict[str, object]:
    if reading.digits is not None:
        return {
            "state": "short_long",
            "count": likely(reading.digits.short),
            "long_count": likely(reading.digits.long),
            "first": reading.digits.first,
        }
    if reading.form == "even":
        return {"state": "blink", "pause": "none", "rate_hz": reading.rate_hz}
    counts = likely(reading.counts)
    if not counts:
        return {"state": "blink"}
    return {
        "state": "count",
        "count": counts,
        "counted": tuple(count for count in reading.groups if count in counts),
        "pause": "seen" if reading.pause_s is not None else None,
        "window_s": reading.period_s,
    }
